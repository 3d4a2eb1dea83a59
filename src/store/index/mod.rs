//! What is looked up rather than folded: seen keys, the check-in log by unit and time, the fleet, the book's snapshot.
//!
//! An index follows the journal and can be made from it again at any time. It holds where in the journal a check-in
//! stands, not a copy of it: so a look-up reads (and checks) the journal itself, and personal texts lie in one place.

#[cfg(feature = "store")]
mod entries;
mod memory;
#[cfg(feature = "store")]
mod sled;

use std::ops::Range;

use serde_json::Value;
use thiserror::Error;

pub use memory::MemoryIndex;
#[cfg(feature = "store")]
pub use sled::SledIndex;

use super::journal::{Head, Position};

/// What one line gives to look up.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct IndexEntries {
    /// The key under which a repeat of the message is known.
    pub seen: Option<String>,
    /// Its check-ins: unit, time in milliseconds since 1970 UTC, and what the log shows.
    pub check_ins: Vec<(String, i64, Value)>,
    /// The whole fleet, where the line loads one.
    pub fleet: Option<Value>,
}

/// What an index keeps of one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Indexed {
    /// The line's place and hash.
    pub head: Head,
    /// Where it stands.
    pub position: Position,
    /// The key under which a repeat of the message is known.
    pub seen: Option<String>,
    /// Its check-ins: unit, time in milliseconds.
    pub check_ins: Vec<(String, i64)>,
    /// The fleet as JSON.
    pub fleet: Option<Vec<u8>>,
}

/// A check-in found by unit and time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Found {
    /// Its time in milliseconds.
    pub at: i64,
    /// The turn that logged it.
    pub seq: u64,
    /// Where that line stands.
    pub position: Position,
}

/// The book at one turn, in a form that only the book reads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Snapshot {
    /// The book's own format number.
    pub format: u32,
    /// The turn it stands at.
    pub head: Head,
    /// The book.
    pub bytes: Vec<u8>,
}

/// Why an index cannot answer.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum IndexError {
    /// What it holds is damaged: it has to be made anew.
    #[error("{0}")]
    Damaged(String),
    /// The disk under it failed: it may work again later.
    #[error("{0}")]
    Disk(String),
}

/// A look-up store beside the journal.
pub trait Index: Send {
    /// Returns the last turn it holds; [`Head::EMPTY`] when new.
    ///
    /// # Errors
    ///
    /// [`IndexError`], as every method here.
    fn last(&self) -> Result<Head, IndexError>;

    /// Takes in the turns that follow [`Index::last`], all or none.
    #[allow(missing_docs)]
    fn apply(&mut self, turns: &[Indexed]) -> Result<(), IndexError>;

    /// Tells whether a message's key was recorded.
    fn seen(&self, key: &str) -> Result<bool, IndexError>;

    /// Finds a unit's check-ins with times in milliseconds in `range`, oldest first; at most `limit` of the newest.
    fn check_ins(
        &self,
        unit: &str,
        range: Range<i64>,
        limit: usize,
    ) -> Result<Vec<Found>, IndexError>;

    /// Returns the fleet loaded last, as JSON.
    fn fleet(&self) -> Result<Option<Vec<u8>>, IndexError>;

    /// Returns the snapshot saved last.
    fn snapshot(&self) -> Result<Option<Snapshot>, IndexError>;

    /// Replaces the snapshot.
    fn save_snapshot(&mut self, snapshot: &Snapshot) -> Result<(), IndexError>;

    /// Counts the entries whose check is still to be done; 0 when all were held against the tally.
    fn unchecked(&self) -> u64;

    /// Holds up to so many more entries against the tally kept beside them.
    fn check(&mut self, entries: u64) -> Result<(), IndexError>;

    /// Brings everything out of the process.
    fn flush(&mut self) -> Result<(), IndexError>;
}
