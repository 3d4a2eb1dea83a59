//! What can go wrong on the command line, in one sentence each.

use std::process::ExitCode;

use thiserror::Error;

/// A failure that ends a command.
#[derive(Debug, Error)]
pub enum CliError {
    /// Wrong usage that the argument parser cannot see.
    #[error("{0}")]
    Usage(String),
    /// Anything that failed while doing what was asked.
    #[error("{0}")]
    Failed(String),
    /// Standard input or output broke.
    #[error("standard input or output failed: {0}")]
    Stdio(#[from] std::io::Error),
}

impl CliError {
    /// Prints the error to standard error and returns the exit code: 2 for usage, 1 for the rest.
    #[allow(clippy::print_stderr)]
    pub fn report(&self) -> ExitCode {
        match self {
            // a reader that went away (`hosebib read | head`) is no failure of ours
            CliError::Stdio(error) if error.kind() == std::io::ErrorKind::BrokenPipe => {
                ExitCode::SUCCESS
            }
            CliError::Usage(_) => {
                eprintln!("hosebib: {self}");
                ExitCode::from(2)
            }
            _ => {
                eprintln!("hosebib: {self}");
                ExitCode::FAILURE
            }
        }
    }
}
