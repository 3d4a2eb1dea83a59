//! `hosebib serve`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib serve`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`serve` is not built yet".into()))
}
