//! `hosebib verify`.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use chrono::SecondsFormat;

use super::CliError;
use super::shown::counted;
use crate::store;

/// Arguments of `hosebib verify`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// The data directory
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let whole = report(&args.data, "restore each file named above from a backup")?;
    Ok(match whole {
        true => ExitCode::SUCCESS,
        false => ExitCode::FAILURE,
    })
}

/// Walks a data directory, prints what was found, and tells whether all of it is whole; `remedy` is what to do if not.
///
/// # Errors
///
/// Why it cannot be read.
pub(super) fn report(data: &Path, remedy: &str) -> Result<bool, CliError> {
    let report = store::verify(data).map_err(|error| CliError::Failed(error.to_string()))?;
    let mut out = std::io::stdout().lock();
    for damage in &report.damage {
        writeln!(out, "damaged: {damage}")?;
    }
    if report.unfinished > 0 {
        writeln!(
            out,
            "the last line is unfinished ({} bytes): it is being written, or the next start cuts it off",
            report.unfinished
        )?;
    }
    let until = match report.last {
        Some(at) => format!(
            ", the last at {}",
            at.to_rfc3339_opts(SecondsFormat::Secs, true)
        ),
        None => String::new(),
    };
    writeln!(
        out,
        "{} in {}{until}",
        counted(usize::try_from(report.turns).unwrap_or(usize::MAX), "turn"),
        counted(report.segments, "segment")
    )?;
    if report.damage.is_empty() {
        writeln!(out, "nothing is damaged")?;
        return Ok(true);
    }
    writeln!(
        out,
        "{} damaged: {remedy}",
        match report.damage.len() {
            1 => "1 place is".to_owned(),
            count => format!("{count} places are"),
        }
    )?;
    Ok(false)
}
