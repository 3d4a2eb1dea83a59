//! Everything the clerk knows, folded from snapshot and journal: the desk's part and its own.

use serde_json::Value;

use super::letter::{Letter, Note};
use super::outbox::Outbox;
use super::turns::Turns;
use crate::book::Record;
use crate::store::{Line, Opened, StoreError};

pub(super) struct State<T> {
    pub(super) turns: T,
    pub(super) outbox: Outbox,
}

impl<T: Turns> State<T> {
    /// Knows nothing yet.
    pub(super) fn empty() -> Result<Self, String> {
        Ok(State {
            turns: T::restore(None)?,
            outbox: Outbox::default(),
        })
    }

    /// Folds what an opened store hands over.
    ///
    /// # Errors
    ///
    /// Says which turn cannot be read, and why.
    pub(super) fn fold(opened: Opened) -> Result<Self, String> {
        let mut state = match opened.snapshot {
            Some(snapshot) => Self::restore(&snapshot.bytes)?,
            None => Self::empty()?,
        };
        for line in opened.lines {
            state.take_in(&line.map_err(|error: StoreError| error.to_string())?)?;
        }
        // what followed from these stands in the lines after them
        state.outbox.stale();
        Ok(state)
    }

    /// Returns both parts as one run of bytes: the length of the first, the first, the second.
    pub(super) fn snapshot(&self) -> Vec<u8> {
        let outbox = serde_json::to_vec(&self.outbox).expect("the outbox is plain data");
        let mut bytes = (outbox.len() as u64).to_be_bytes().to_vec();
        bytes.extend(outbox);
        bytes.extend(self.turns.snapshot());
        bytes
    }

    fn restore(bytes: &[u8]) -> Result<Self, String> {
        let unreadable = || "the snapshot cannot be read".to_owned();
        let (length, rest) = bytes.split_first_chunk::<8>().ok_or_else(unreadable)?;
        let length = usize::try_from(u64::from_be_bytes(*length)).map_err(|_| unreadable())?;
        let (outbox, desk) = rest.split_at_checked(length).ok_or_else(unreadable)?;
        let outbox = serde_json::from_slice(outbox)
            .map_err(|error| format!("the snapshot cannot be read: {error}"))?;
        Ok(State {
            turns: T::restore(Some(desk))?,
            outbox,
        })
    }

    /// Takes in one turn of the journal.
    ///
    /// # Errors
    ///
    /// Says what of it cannot be read, and why.
    pub(super) fn take_in(&mut self, line: &Line) -> Result<(), String> {
        let unreadable = |what: &str, error: serde_json::Error| {
            format!(
                "turn {} holds {what} that this release cannot read: {error}",
                line.seq
            )
        };
        let mut records = Vec::with_capacity(line.records.len());
        for value in &line.records {
            match content(value).map_err(|error| unreadable("a record", error))? {
                Content::Record(record) => records.push(*record),
                Content::Note(note) => self.outbox.note(line.at, &note),
            }
        }
        self.turns.apply(&records);
        self.outbox.remember(&records);
        let letters = line
            .outgoing
            .iter()
            .map(|value| serde_json::from_value(value.clone()))
            .collect::<Result<Vec<Letter>, _>>()
            .map_err(|error| unreadable("a message", error))?;
        self.outbox.put(line.seq, line.at, &letters);
        Ok(())
    }
}

/// One value among a line's records.
pub(super) enum Content {
    Record(Box<Record>),
    Note(Note),
}

/// Reads one value among a line's records: the desk's carry a `record`, the clerk's own a `note`.
pub(super) fn content(value: &Value) -> Result<Content, serde_json::Error> {
    if value.get("note").is_some() {
        serde_json::from_value(value.clone()).map(Content::Note)
    } else {
        serde_json::from_value(value.clone()).map(|record| Content::Record(Box::new(record)))
    }
}
