//! `hosebib verify`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib verify`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`verify` is not built yet".into()))
}
