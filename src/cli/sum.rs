//! `hosebib sum`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib sum`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`sum` is not built yet".into()))
}
