//! `hosebib replay`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib replay`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`replay` is not built yet".into()))
}
