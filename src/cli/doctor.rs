//! `hosebib doctor`: what could keep a bot from serving, each with its remedy.

mod disk;
mod fleet;
mod network;

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use super::CliError;
use crate::store::StoreError;

/// Arguments of `hosebib doctor`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// The folder with fleet.toml, jobs.toml and crew.toml
    #[arg(long, value_name = "DIR")]
    fleet: Option<PathBuf>,
    #[command(flatten)]
    bot: super::bot::Bot,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let mut report = Report::default();
    if let Some(dir) = &args.data {
        disk::check(dir, &mut report)?;
    } else {
        report.note("data", "not checked: name the data directory with `--data`")?;
    }
    fleet::check(args, &mut report)?;
    network::check(args, &mut report)?;
    report.end()
}

/// What was found, printed as it is found.
#[derive(Default)]
struct Report {
    good: usize,
    bad: usize,
    notes: usize,
}

impl Report {
    /// Says that something is as it should be.
    fn good(&mut self, what: &str, said: impl AsRef<str>) -> Result<(), CliError> {
        self.good += 1;
        print("ok  ", what, said.as_ref())
    }

    /// Says something that is worth knowing and keeps nothing from working.
    fn note(&mut self, what: &str, said: impl AsRef<str>) -> Result<(), CliError> {
        self.notes += 1;
        print("note", what, said.as_ref())
    }

    /// Says what is wrong and what to do.
    fn bad(&mut self, what: &str, said: impl AsRef<str>) -> Result<(), CliError> {
        self.bad += 1;
        print("BAD ", what, said.as_ref())
    }

    fn end(self) -> Result<ExitCode, CliError> {
        let mut out = std::io::stdout();
        if self.bad + self.good == 0 {
            return Err(CliError::Usage(
                "nothing was checked: name what there is, as the lines above say".into(),
            ));
        }
        if self.bad == 0 {
            writeln!(out, "nothing is wrong, {} to know", self.notes)?;
            return Ok(ExitCode::SUCCESS);
        }
        writeln!(out, "{} wrong: do what each line marked BAD says", self.bad)?;
        Ok(ExitCode::FAILURE)
    }
}

fn print(mark: &str, what: &str, said: &str) -> Result<(), CliError> {
    writeln!(std::io::stdout(), "{mark}  {what}: {said}")?;
    Ok(())
}

/// Puts a store's failure into a line.
fn failed(error: &StoreError) -> String {
    error.to_string()
}
