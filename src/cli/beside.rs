//! Reading a data directory's journal beside the bot that may be writing it: no lock, up to the last whole line.

use std::path::Path;

use serde::Deserialize;
use serde_json::Value;

use super::{CliError, progress};
use crate::book::{Book, Record};
use crate::fleet::Fleet;
use crate::store::{self, Line, StoreError};

/// Walks the journal's turns from the first, and shows somebody who watches how far it has come.
///
/// # Errors
///
/// The sentence that says why the directory cannot be read, and for each turn why it cannot.
pub(super) fn lines(
    dir: &Path,
) -> Result<impl Iterator<Item = Result<Line, CliError>> + use<>, CliError> {
    let lines = store::read_only(dir).map_err(unreadable)?;
    let bar = progress::over(dir);
    Ok(bar.wrap_iter(lines).map(|line| line.map_err(unreadable)))
}

/// Folds everything the journal holds.
///
/// # Errors
///
/// As [`lines`], and which turn holds a record that this release cannot read.
pub(super) fn book(dir: &Path) -> Result<Book, CliError> {
    let mut book = Book::default();
    for line in lines(dir)? {
        let line = line?;
        for value in &line.records {
            if let Some(record) = record(&line, value)? {
                book.apply(&record);
            }
        }
    }
    Ok(book)
}

/// Returns the fleet in force; none before any was loaded.
///
/// # Errors
///
/// As [`book`].
pub(super) fn fleet(dir: &Path) -> Result<Option<Fleet>, CliError> {
    let mut last = None;
    for line in lines(dir)? {
        let line = line?;
        for value in &line.records {
            if value["record"] == "fleet"
                && let Some(Record::Fleet { fleet, .. }) = record(&line, value)?
            {
                last = Some(*fleet);
            }
        }
    }
    Ok(last)
}

/// Reads one of a turn's records; none where it is the service's own note.
///
/// # Errors
///
/// Which turn it stands in, and what to do.
pub(super) fn record(line: &Line, value: &Value) -> Result<Option<Record>, CliError> {
    if value.get("record").is_none() {
        return Ok(None);
    }
    Record::deserialize(value)
        .map(Some)
        .map_err(|error| {
            CliError::Failed(format!(
                "turn {} holds a record that this release cannot read: {error}: install the release that wrote it",
                line.seq
            ))
        })
}

fn unreadable(error: StoreError) -> CliError {
    CliError::Failed(error.to_string())
}
