//! Rows on their way out, as CSV or as JSON lines.

use std::io::{self, Write};

use chrono::{DateTime, SecondsFormat, Utc};
use chrono_tz::Tz;
use serde_json::{Map, Value, json};

use crate::cli::CliError;

/// How rows are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Format {
    Csv,
    Jsonl,
}

/// One value of a row.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cell {
    /// Words, which may be a person's.
    Text(String),
    Number(f64),
    Count(u64),
    Time(DateTime<Utc>),
    List(Vec<String>),
    /// Not told.
    Nothing,
}

impl Cell {
    pub(super) fn text(text: &str) -> Self {
        match text.is_empty() {
            true => Cell::Nothing,
            false => Cell::Text(text.to_owned()),
        }
    }

    pub(super) fn maybe<T>(value: Option<T>, cell: impl FnOnce(T) -> Cell) -> Self {
        value.map_or(Cell::Nothing, cell)
    }
}

/// A table being printed.
pub(super) struct Sheet<W: Write> {
    out: Out<W>,
    zone: Tz,
    columns: Vec<String>,
    never: Vec<String>,
    rows: u64,
}

enum Out<W: Write> {
    Csv(Box<csv::Writer<W>>),
    Jsonl(io::BufWriter<W>),
}

impl<W: Write> Sheet<W> {
    pub(super) fn new(format: Format, out: W, zone: Tz) -> Self {
        Sheet {
            out: match format {
                Format::Csv => Out::Csv(Box::new(
                    csv::WriterBuilder::new()
                        .terminator(csv::Terminator::CRLF)
                        .from_writer(out),
                )),
                Format::Jsonl => Out::Jsonl(io::BufWriter::new(out)),
            },
            zone,
            columns: Vec::new(),
            never: Vec::new(),
            rows: 0,
        }
    }

    /// Prints the head: the columns that rows fill, and those that were never recorded and stay empty.
    pub(super) fn head(&mut self, columns: &[&str], never: &[&str]) -> Result<(), CliError> {
        let owned = |names: &[&str]| names.iter().map(|&name| name.to_owned()).collect();
        (self.columns, self.never) = (owned(columns), owned(never));
        if let Out::Csv(out) = &mut self.out {
            let marked = never.iter().map(|name| format!("{name} (never recorded)"));
            let head = columns.iter().map(|&name| name.to_owned()).chain(marked);
            out.write_record(head).map_err(broken)?;
        }
        Ok(())
    }

    /// Prints a row, a cell for each column.
    pub(super) fn row(&mut self, cells: Vec<Cell>) -> Result<(), CliError> {
        assert_eq!(cells.len(), self.columns.len());
        self.rows += 1;
        let zone = self.zone;
        match &mut self.out {
            Out::Csv(out) => {
                let empty = self.never.iter().map(|_| String::new());
                let cells = cells.into_iter().map(|cell| cell.csv(zone)).chain(empty);
                out.write_record(cells).map_err(broken)
            }
            Out::Jsonl(out) => {
                let mut object: Map<String, Value> = self
                    .columns
                    .iter()
                    .cloned()
                    .zip(cells.into_iter().map(|cell| cell.json(zone)))
                    .collect();
                if !self.never.is_empty() {
                    object.extend(self.never.iter().map(|name| (name.clone(), Value::Null)));
                    object.insert("never_recorded".into(), json!(self.never));
                }
                Ok(writeln!(out, "{}", Value::Object(object))?)
            }
        }
    }

    /// Prints what is left, and returns how many rows there were.
    pub(super) fn finish(self) -> Result<u64, CliError> {
        match self.out {
            Out::Csv(mut out) => out.flush()?,
            Out::Jsonl(mut out) => out.flush()?,
        }
        Ok(self.rows)
    }
}

impl Cell {
    fn csv(self, zone: Tz) -> String {
        match self {
            Cell::Text(text) => harmless(text),
            Cell::List(items) => harmless(items.join("; ")),
            Cell::Number(number) => number.to_string(),
            Cell::Count(count) => count.to_string(),
            Cell::Time(at) => printed(at, zone),
            Cell::Nothing => String::new(),
        }
    }

    fn json(self, zone: Tz) -> Value {
        match self {
            Cell::Text(text) => text.into(),
            Cell::List(items) => items.into(),
            Cell::Number(number) => json!(number),
            Cell::Count(count) => count.into(),
            Cell::Time(at) => printed(at, zone).into(),
            Cell::Nothing => Value::Null,
        }
    }
}

/// Puts an apostrophe before words that a spreadsheet would run as a formula (OWASP, "CSV Injection").
fn harmless(text: String) -> String {
    let runs = |c: char| {
        matches!(
            c,
            '=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '＝' | '＋' | '－' | '＠'
        )
    };
    // some programs drop blanks before they look
    match text.starts_with(runs) || text.trim_start().starts_with(runs) {
        true => format!("'{text}"),
        false => text,
    }
}

fn printed(at: DateTime<Utc>, zone: Tz) -> String {
    at.with_timezone(&zone)
        .to_rfc3339_opts(SecondsFormat::Secs, true)
}

fn broken(error: csv::Error) -> CliError {
    match error.into_kind() {
        csv::ErrorKind::Io(error) => CliError::Stdio(error),
        other => CliError::Failed(format!("a row cannot be printed: {other:?}")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn csv(text: &str) -> String {
        Cell::Text(text.to_owned()).csv(Tz::UTC)
    }

    #[test]
    fn what_a_spreadsheet_would_run_is_made_harmless() {
        for text in [
            "=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "  =1", "＝1",
        ] {
            assert_eq!(csv(text), format!("'{text}"));
        }
        for text in ["12 pressure 95", "a = b", ""] {
            assert_eq!(csv(text), text);
        }
    }

    #[test]
    fn a_number_below_zero_stays_a_number() {
        assert_eq!(Cell::Number(-5.0).csv(Tz::UTC), "-5");
    }

    #[test]
    fn times_are_local_with_their_offset() {
        let at = "2027-01-16T12:00:00Z".parse().unwrap();
        let zone = chrono_tz::America::Halifax;
        assert_eq!(Cell::Time(at).csv(zone), "2027-01-16T08:00:00-04:00");
    }
}
