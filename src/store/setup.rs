//! How a store is opened, and what it hands over.

use serde_json::Value;

use super::index::{IndexEntries, Snapshot};
use super::journal::Head;
#[cfg(feature = "store")]
use super::journal::SEGMENT_BYTES;
use super::line::Line;
use super::medium::Disk;
#[cfg(feature = "store")]
use super::medium::Files;
use super::note::Note;
use super::personal::Salt;
use super::reader::Lines;

/// Says which parts of a line are to be looked up.
pub type Entries = Box<dyn Fn(&Line) -> IndexEntries + Send>;

/// Where the index is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IndexKind {
    /// On disk, in sled.
    #[cfg(feature = "store")]
    Sled,
    /// In memory, made anew from the whole journal at every opening.
    Memory,
}

/// How a store is opened.
pub struct Setup {
    /// Where salts come from.
    pub salt: Box<dyn Salt>,
    /// Which parts of a line are to be looked up.
    pub entries: Entries,
    /// The book's snapshot format; a snapshot of any other is not handed over.
    pub snapshot_format: u32,
    /// The length in bytes from which a segment is closed.
    pub segment_bytes: u64,
    /// Where the index is kept.
    pub index: IndexKind,
    /// What the journal is written through.
    pub disk: Box<dyn Disk>,
}

impl Setup {
    /// Sets up a store as the bot runs it.
    #[cfg(feature = "store")]
    pub fn new(salt: Box<dyn Salt>, entries: Entries, snapshot_format: u32) -> Self {
        Setup {
            salt,
            entries,
            snapshot_format,
            segment_bytes: SEGMENT_BYTES,
            index: IndexKind::Sled,
            disk: Box::new(Files),
        }
    }
}

/// What opening hands over: fold `lines` into the book that `snapshot` holds, or into an empty one.
#[derive(Debug)]
pub struct Opened {
    /// The book's last snapshot.
    pub snapshot: Option<Snapshot>,
    /// The turns after it.
    pub lines: Lines,
    /// What was found and mended, for whoever runs the bot.
    pub notes: Vec<Note>,
}

/// What a commit has made certain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ack {
    /// The last turn of the batch, now the journal's last.
    pub head: Head,
}

/// A check-in as the log shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckIn {
    /// Its time in milliseconds since 1970 UTC.
    pub at: i64,
    /// The turn that logged it.
    pub seq: u64,
    /// What the caller's [`Entries`] made of it.
    pub value: Value,
}
