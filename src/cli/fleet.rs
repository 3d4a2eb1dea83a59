//! `hosebib fleet`.

mod learned;
mod load;
mod show;
mod stated;

use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::CliError;
use super::shown::counted;
use crate::fleet::{self, Fleet, FleetFile, FleetFiles};

/// Arguments of `hosebib fleet`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, clap::Subcommand)]
enum What {
    /// Read a fleet's files and print every problem with file and line, or one line of what is in them
    Check {
        /// The folder that holds fleet.toml, jobs.toml, crew.toml and, if you like, words.toml
        dir: PathBuf,
    },
    /// Check a fleet's files and put them in force, in a running bot too; with any problem nothing changes
    Load {
        /// The folder that holds fleet.toml, jobs.toml, crew.toml and, if you like, words.toml
        dir: PathBuf,
        /// The data directory; the log in it is kept
        #[arg(long, value_name = "DIR")]
        data: PathBuf,
    },
    /// Show the fleet as a table, or one trailer's spec in full
    Show(show::Args),
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    match &args.what {
        What::Check { dir } => check(dir),
        What::Load { dir, data } => load::run(dir, data),
        What::Show(args) => show::run(args),
    }
}

fn check(dir: &Path) -> Result<ExitCode, CliError> {
    let mut out = std::io::stdout().lock();
    let fleet = open(dir, &mut out)?;
    writeln!(out, "{}: {}", dir.display(), summary(&fleet))?;
    Ok(ExitCode::SUCCESS)
}

/// Reads and checks the fleet in a folder; each problem goes to `out` as a line.
///
/// # Errors
///
/// As [`files`], and how many problems there are.
pub(super) fn open(dir: &Path, out: &mut dyn Write) -> Result<Fleet, CliError> {
    checked(dir, &files(dir)?, out)
}

/// Checks the texts of the files in `dir`; each problem goes to `out` as a line.
fn checked(dir: &Path, files: &FleetFiles, out: &mut dyn Write) -> Result<Fleet, CliError> {
    fleet::read(files).or_else(|problems| {
        for problem in &problems {
            writeln!(out, "{problem}")?;
        }
        let count = counted(problems.len(), "problem");
        let message = format!(
            "the fleet in `{}` has {count}: nothing of it is loaded until all are mended",
            dir.display()
        );
        Err(CliError::Failed(message))
    })
}

/// Reads the texts of a fleet's files.
///
/// # Errors
///
/// One sentence for each file that is missing, unreadable or not UTF-8, with what to do.
pub(super) fn files(dir: &Path) -> Result<FleetFiles, CliError> {
    if !dir.is_dir() {
        let what = if dir.exists() {
            "no folder"
        } else {
            "not there"
        };
        let message = format!(
            "`{}` is {what}: name the folder that holds fleet.toml, jobs.toml and crew.toml",
            dir.display()
        );
        return Err(CliError::Failed(message));
    }
    let mut troubles = Vec::new();
    let [fleet, jobs, crew, words] = FleetFile::ALL.map(|file| {
        let path = dir.join(file.name());
        // a company need not have words of its own
        if file == FleetFile::Words && !path.exists() {
            return String::new();
        }
        text(&path).unwrap_or_else(|trouble| {
            troubles.push(trouble);
            String::new()
        })
    });
    if troubles.is_empty() {
        Ok(FleetFiles {
            fleet,
            jobs,
            crew,
            words,
        })
    } else {
        Err(CliError::Failed(troubles.join("\nhosebib: ")))
    }
}

/// Says in one line what a fleet holds.
pub(super) fn summary(fleet: &Fleet) -> String {
    let mut parts = vec![
        counted(fleet.trailers.len(), "trailer"),
        counted(fleet.sites.len(), "site"),
        counted(fleet.jobs.len(), "job"),
        counted(fleet.crew.len(), "crew member"),
    ];
    if !fleet.words.is_empty() {
        parts.push(counted(fleet.words.len(), "word") + " of its own");
    }
    parts.join(", ")
}

fn text(path: &Path) -> Result<String, String> {
    let name = path.display();
    let bytes = std::fs::read(path).map_err(|error| {
        let what = match error.kind() {
            ErrorKind::NotFound => {
                "is missing: fleet.toml, jobs.toml and crew.toml are needed, an empty one will do"
            }
            ErrorKind::IsADirectory => "is a folder: a text file of that name is needed",
            ErrorKind::PermissionDenied => {
                "may not be read: give the user who runs hosebib leave to read it"
            }
            _ => return format!("`{name}` cannot be read: {error}"),
        };
        format!("`{name}` {what}")
    })?;
    String::from_utf8(bytes).map_err(|error| {
        let good = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..good]
            .iter()
            .filter(|&&byte| byte == b'\n')
            .count()
            + 1;
        format!("`{name}` is not UTF-8 from line {line} on: save it as UTF-8 in your editor")
    })
}
