//! `hosebib export`: the log as a table for other programs.

mod check_ins;
mod incident;
mod pump_outs;
mod sheet;
mod span;
mod tasks;

use std::collections::HashMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use chrono_tz::Tz;
use clap::ValueEnum;

use super::shown::counted;
use super::{CliError, beside};
use crate::book::{MessageKey, Record};
use crate::store::Line;
use sheet::{Format, Sheet};
use span::{Span, When};

/// Arguments of `hosebib export`.
#[derive(Debug, clap::Args)]
#[command(group(clap::ArgGroup::new("format").required(true).args(["csv", "jsonl"])))]
pub(super) struct Args {
    /// What to export
    what: What,
    /// Which incident
    #[arg(value_name = "NUMBER", required_if_eq("what", "incident"))]
    number: Option<u32>,
    /// Print comma-separated values with a header (RFC 4180)
    #[arg(long)]
    csv: bool,
    /// Print one JSON object a line
    #[arg(long)]
    jsonl: bool,
    /// Leave out what was before this day or instant (2027-01-16, or RFC 3339)
    #[arg(long, value_name = "TIME")]
    from: Option<When>,
    /// Leave out what was after this day or instant
    #[arg(long, value_name = "TIME")]
    to: Option<When>,
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum What {
    /// Every report on a trailer, with its words, times and readings
    CheckIns,
    /// Every task, with who did what to it when
    Tasks,
    /// Every pump-out, with the fields that a hauling record asks for
    PumpOuts,
    /// One incident: its facts, who reported and was told what of its trailer and when, and what was never recorded
    Incident,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let walk = Walk { data: &args.data };
    let known = Known::read(&walk)?;
    let span = Span::new(args.from.as_ref(), args.to.as_ref(), known.zone)?;
    let format = match args.csv {
        true => Format::Csv,
        false => Format::Jsonl,
    };
    let number = match (args.what, args.number) {
        (What::Incident, number) => number.unwrap_or_default(),
        (_, None) => 0,
        (_, Some(number)) => {
            return Err(CliError::Usage(format!(
                "a number goes with `incident` only, found `{number}`"
            )));
        }
    };
    let mut sheet = Sheet::new(format, std::io::stdout().lock(), known.zone);
    match args.what {
        What::CheckIns => check_ins::export(&walk, &known, &span, &mut sheet)?,
        What::Tasks => tasks::export(&walk, &span, &mut sheet)?,
        What::Incident => incident::export(number, &walk, &known, &mut sheet)?,
        What::PumpOuts => pump_outs::export(&walk, &known, &span, &mut sheet)?,
    }
    let rows = sheet.finish()?;
    let rows = usize::try_from(rows).unwrap_or(usize::MAX);
    writeln!(std::io::stderr(), "{}", counted(rows, "row"))?;
    Ok(ExitCode::SUCCESS)
}

/// What has to be known of the whole journal before its first line can be printed.
struct Known {
    /// The zone that times are printed in: that of the fleet in force.
    zone: Tz,
    /// What became of messages that do not stand any more.
    gone: HashMap<MessageKey, &'static str>,
}

impl Known {
    fn read(walk: &Walk<'_>) -> Result<Self, CliError> {
        let mut known = Known {
            zone: Tz::UTC,
            gone: HashMap::new(),
        };
        walk.records(&["fleet", "undone", "message"], |_, record| {
            match record {
                Record::Fleet { fleet, .. } => known.zone = fleet.time_zone,
                Record::Undone { key, .. } => {
                    known.gone.entry(key).or_insert("taken back");
                }
                Record::Message(message) => {
                    if let Some(replaced) = message.replaces {
                        known.gone.insert(replaced, "replaced by an edit");
                    }
                }
                _ => {}
            }
            Ok(())
        })?;
        Ok(known)
    }
}

/// A walk over the journal's records.
struct Walk<'a> {
    data: &'a Path,
}

impl Walk<'_> {
    /// Hands over every record of the kinds named, in the order they were written.
    fn records(
        &self,
        kinds: &[&str],
        mut take: impl FnMut(&Line, Record) -> Result<(), CliError>,
    ) -> Result<(), CliError> {
        for line in beside::lines(self.data)? {
            let line = line?;
            for value in &line.records {
                let kind = value["record"].as_str();
                if kind.is_some_and(|kind| kinds.contains(&kind))
                    && let Some(record) = beside::record(&line, value)?
                {
                    take(&line, record)?;
                }
            }
        }
        Ok(())
    }
}
