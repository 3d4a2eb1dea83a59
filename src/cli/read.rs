//! `hosebib read`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib read`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`read` is not built yet".into()))
}
