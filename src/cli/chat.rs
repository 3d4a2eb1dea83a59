//! `hosebib chat`.

use std::process::ExitCode;

use super::CliError;

/// Arguments of `hosebib chat`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {}

pub(super) fn run(_args: &Args) -> Result<ExitCode, CliError> {
    Err(CliError::Failed("`chat` is not built yet".into()))
}
