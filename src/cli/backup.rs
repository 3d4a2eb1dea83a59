//! `hosebib backup` and `hosebib restore`: a plain folder copy, which is a data directory itself.
//!
//! A folder rather than an archive: `hosebib verify` walks it as it is, and any tool can carry it elsewhere.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{CliError, verify};
use crate::store;

/// Arguments of `hosebib backup`.
#[derive(Debug, clap::Args)]
pub(super) struct BackUp {
    /// The folder to make: a data directory of its own, without the lookup index
    #[arg(value_name = "FOLDER")]
    to: PathBuf,
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

/// Arguments of `hosebib restore`.
#[derive(Debug, clap::Args)]
pub(super) struct Restore {
    /// The folder that `hosebib backup` made
    #[arg(value_name = "FOLDER")]
    from: PathBuf,
    /// The data directory to make: new or empty
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

pub(super) fn back_up(args: &BackUp) -> Result<ExitCode, CliError> {
    let remedy = format!(
        "see whether `hosebib verify --data {}` finds the same in the original; if not, back up again onto another disk",
        args.data.display()
    );
    copied(&args.data, &args.to, "backed up to", &remedy)
}

pub(super) fn restore(args: &Restore) -> Result<ExitCode, CliError> {
    let remedy = "restore from another backup";
    copied(&args.from, &args.data, "restored to", remedy)
}

fn copied(from: &Path, to: &Path, done: &str, remedy: &str) -> Result<ExitCode, CliError> {
    let bytes = store::duplicate(from, to).map_err(|error| CliError::Failed(error.to_string()))?;
    let mut out = std::io::stdout();
    writeln!(
        out,
        "{done} `{}`: {} kB",
        to.display(),
        bytes.div_ceil(1000)
    )?;
    Ok(match verify::report(to, remedy)? {
        true => ExitCode::SUCCESS,
        false => ExitCode::FAILURE,
    })
}
