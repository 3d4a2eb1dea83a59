//! `hosebib fleet`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib fleet`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`fleet` is not built yet".into()))
}
