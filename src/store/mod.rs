//! What outlives the process: the journal, which is the truth, and beside it an index of what is looked up.
//!
//! A turn is [prepared](Store::prepare), [committed](Store::commit) (one append, one fdatasync) and only then
//! acknowledged; the index [follows](Store::follow) after that. Whatever happens to the index, it is made again from the
//! journal; whatever happens to the journal is found, said with its place, and never skipped. Nothing here knows what a
//! record means: the caller says which parts of a line are to be looked up.

mod closed;
mod copy;
mod directory;
mod error;
mod glance;
mod hash;
mod index;
mod journal;
mod line;
mod medium;
mod note;
mod personal;
mod reader;
mod recover;
mod redact;
mod segment;
mod setup;
mod tail;
mod verify;

use std::collections::{HashSet, VecDeque};
use std::ops::Range;
use std::path::Path;

use serde_json::Value;

pub use copy::duplicate;
pub use error::{Damage, StoreError};
pub use glance::{Glance, glance, holder, turns};
pub use hash::Hash;
#[cfg(feature = "store")]
pub use index::SledIndex;
pub use index::{Found, Index, IndexEntries, IndexError, Indexed, MemoryIndex, Snapshot};
pub use journal::{Head, Journal, Position, Prepared, SEGMENT_BYTES};
pub use line::{Draft, Line, VERSION};
pub use medium::{Appending, Disk, Faults, FaultyFiles, Files};
pub use note::Note;
pub use personal::Salt;
pub use reader::Lines;
pub use redact::Redaction;
pub use setup::{Ack, CheckIn, Entries, IndexKind, Opened, Setup};
pub use verify::{Report, verify};

use directory::Held;

/// So many lines go into the index at once.
const BATCH: usize = 1_000;

/// So many index entries are held against their tally while opening; a larger index is checked bit by bit afterwards.
const CHECKED_AT_OPEN: u64 = 100_000;

/// So many more are checked each time that the index follows: about a millisecond's worth.
const CHECKED_A_TIME: u64 = 1_000;

/// A data directory, held by this process.
pub struct Store {
    held: Held,
    journal: Journal,
    kind: IndexKind,
    /// `None` while the disk under it fails.
    index: Option<Box<dyn Index>>,
    entries: Entries,
    salt: Box<dyn Salt>,
    snapshot_format: u32,
    /// Committed lines that the index has not taken in.
    pending: VecDeque<(Line, Position)>,
    pending_keys: HashSet<String>,
}

impl Store {
    /// Opens a data directory and holds it; an empty directory becomes one.
    ///
    /// Checks every closed segment's seal and length and every turn after the snapshot, brings the index up, and
    /// rebuilds it where it is missing, short, damaged or ahead of the journal.
    ///
    /// # Errors
    ///
    /// Every [`StoreError`] but those of writing.
    pub fn open(dir: &Path, setup: Setup) -> Result<(Self, Opened), StoreError> {
        recover::open(dir, setup)
    }

    /// Returns the data directory.
    pub fn path(&self) -> &Path {
        self.held.path()
    }

    /// Returns the journal's last turn.
    pub fn head(&self) -> Head {
        self.journal.head()
    }

    /// Draws 16 bytes of chance from where salts come from: nobody can guess them.
    pub fn chance(&mut self) -> [u8; 16] {
        self.salt.salt()
    }

    /// Serialises, salts and hashes turns to be written next. Costs what the commit should not.
    ///
    /// # Errors
    ///
    /// [`StoreError::KeyTwice`] when a turn's key was recorded before or comes twice; [`StoreError::Unwritable`].
    pub fn prepare(&mut self, drafts: &[Draft]) -> Result<Prepared, StoreError> {
        let mut batch = HashSet::new();
        for key in drafts.iter().filter_map(|draft| draft.key.as_deref()) {
            if !batch.insert(key) || self.seen(key)? {
                return Err(StoreError::KeyTwice(key.to_owned()));
            }
        }
        self.journal.prepare(drafts, self.salt.as_mut())
    }

    /// Appends a prepared batch with one write and one fdatasync. When it returns `Ok`, the batch may be acknowledged.
    ///
    /// # Errors
    ///
    /// [`StoreError::Write`], [`StoreError::Sync`]: nothing of the batch counts, nor does anything written by
    /// [`Store::commit_unsynced`] since the last sync when the sync failed. Fold the book anew ([`Store::fold_anew`]) and
    /// try again later. [`StoreError::Stale`] when something else was committed since it was prepared.
    pub fn commit(&mut self, prepared: Prepared) -> Result<Ack, StoreError> {
        self.append(prepared, true)
    }

    /// Appends a prepared batch without a sync of its own: what may be lost by a power cut, such as an accepted send. The
    /// next [`Store::commit`] makes it certain.
    ///
    /// # Errors
    ///
    /// As [`Store::commit`].
    pub fn commit_unsynced(&mut self, prepared: Prepared) -> Result<Ack, StoreError> {
        self.append(prepared, false)
    }

    /// Brings to the disk what was committed without a sync.
    ///
    /// # Errors
    ///
    /// [`StoreError::Sync`], as [`Store::commit`].
    pub fn sync(&mut self) -> Result<(), StoreError> {
        let outcome = self.journal.sync();
        self.drop_taken_back();
        outcome
    }

    /// Brings the index up to the last turn that is on the disk for certain.
    ///
    /// An index that turns out to be damaged is set aside and rebuilt, with a note. Call it after acknowledging.
    ///
    /// # Errors
    ///
    /// [`StoreError::Index`] while the disk under it fails: nothing is lost, call again later. [`StoreError::Damaged`]
    /// when a rebuild met a damaged place in the journal.
    pub fn follow(&mut self) -> Result<Vec<Note>, StoreError> {
        recover::follow(self)
    }

    /// Tells whether a message's key was recorded.
    ///
    /// # Errors
    ///
    /// As [`Store::follow`].
    pub fn seen(&mut self, key: &str) -> Result<bool, StoreError> {
        if self.pending_keys.contains(key) {
            return Ok(true);
        }
        recover::ask(self, |index| index.seen(key))
    }

    /// Saves the book as it stood at a turn that was committed and synced.
    ///
    /// # Errors
    ///
    /// As [`Store::follow`]; [`StoreError::Stale`] for a turn that is not certain yet.
    pub fn save_snapshot(&mut self, head: Head, bytes: Vec<u8>) -> Result<(), StoreError> {
        let synced = self.journal.synced();
        if head.seq > synced.seq {
            return Err(StoreError::Stale {
                after: head.seq,
                head: synced.seq,
            });
        }
        self.follow()?;
        let snapshot = Snapshot {
            format: self.snapshot_format,
            head,
            bytes,
        };
        recover::ask(self, |index| index.save_snapshot(&snapshot))
    }

    /// Finds a unit's check-ins with times in milliseconds in `range`, oldest first; at most `limit` of the newest.
    ///
    /// Each is read from the journal and checked on the way.
    ///
    /// # Errors
    ///
    /// As [`Store::follow`].
    pub fn check_ins(
        &mut self,
        unit: &str,
        range: Range<i64>,
        limit: usize,
    ) -> Result<Vec<CheckIn>, StoreError> {
        self.sync()?;
        self.follow()?;
        let found = recover::ask(self, |index| index.check_ins(unit, range.clone(), limit))?;
        let mut check_ins = Vec::with_capacity(found.len());
        let mut last: Option<(Found, usize)> = None;
        for found in found {
            // several check-ins of one unit at one time in one line follow each other
            let nth = match last {
                Some((before, nth)) if before == found => nth + 1,
                _ => 0,
            };
            last = Some((found, nth));
            let line = reader::line_at(self.held.path(), found.seq, found.position)?;
            let value = (self.entries)(&line)
                .check_ins
                .into_iter()
                .filter(|(of, at, _)| of == unit && *at == found.at)
                .nth(nth);
            check_ins.extend(value.map(|(_, at, value)| CheckIn {
                at,
                seq: found.seq,
                value,
            }));
        }
        Ok(check_ins)
    }

    /// Returns the fleet loaded last.
    ///
    /// # Errors
    ///
    /// As [`Store::follow`].
    pub fn fleet(&mut self) -> Result<Option<Value>, StoreError> {
        self.sync()?;
        self.follow()?;
        match recover::ask(self, |index| index.fleet())? {
            None => Ok(None),
            Some(json) => serde_json::from_slice(&json)
                .map(Some)
                .map_err(|_| StoreError::Index("it held a damaged fleet".into())),
        }
    }

    /// Hands over snapshot and later turns again, for a book that has to be folded anew after a failed commit.
    ///
    /// # Errors
    ///
    /// As [`Store::follow`].
    pub fn fold_anew(&mut self) -> Result<Opened, StoreError> {
        let notes = self.follow().unwrap_or_default();
        recover::hand_over(self, notes)
    }

    /// Begins to empty personal texts, as retention and a person's wish ask, in every turn committed so far: the open
    /// segment is closed for it. Go on with [`Store::redact`]; turns can be written in between.
    ///
    /// # Errors
    ///
    /// Those of writing and [`Store::follow`].
    pub fn begin_redaction(&mut self) -> Result<Redaction, StoreError> {
        Redaction::begin(self)
    }

    /// Goes through at most so many turns; false when there are no more. `edit` sets `{"personal": null}` in a line's
    /// records and outgoing messages, or its key to `None`, and may change nothing else; after it, `read` is shown each
    /// turn as it will read, and then those written since the redaction began. Nothing changes on the disk that anybody
    /// reads.
    ///
    /// # Errors
    ///
    /// [`StoreError::Redaction`] when `edit` changes anything else; those of reading and writing. The redaction is over
    /// then; begin anew.
    pub fn redact(
        &self,
        redaction: &mut Redaction,
        lines: usize,
        mut edit: impl FnMut(&mut Line),
        mut read: impl FnMut(&Line),
    ) -> Result<bool, StoreError> {
        redaction.slice(self, lines, &mut edit, &mut read)
    }

    /// Puts what was emptied in place; returns how many texts that is.
    ///
    /// The chain still verifies. The index is changed for one without the texts and what was set aside before is deleted,
    /// since both may hold them; so is the snapshot, but for the given one: the book folded from the turns that `read` was
    /// shown. Use that one from here on, and record the wish itself as a turn of its own.
    ///
    /// # Errors
    ///
    /// [`StoreError::Stale`] where turns were committed that the redaction has not gone through; those of reading and
    /// writing, and [`Store::follow`]. What had come as far as taking the old places is finished by itself, here or at the
    /// next opening: fold the book anew ([`Store::fold_anew`]).
    pub fn finish_redaction(
        &mut self,
        redaction: Redaction,
        snapshot: Option<Vec<u8>>,
    ) -> Result<usize, StoreError> {
        redaction.finish(self, snapshot)
    }

    fn append(&mut self, prepared: Prepared, sync: bool) -> Result<Ack, StoreError> {
        let outcome = self.journal.commit(&prepared, sync);
        self.drop_taken_back();
        let positions = outcome?;
        let ack = Ack {
            head: self.journal.head(),
        };
        for (line, position) in prepared.into_lines().into_iter().zip(positions) {
            self.pending_keys.extend(line.key.clone());
            self.pending.push_back((line, position));
        }
        Ok(ack)
    }

    /// Seals the open segment, so that everything committed so far stands in closed ones.
    fn close_segment(&mut self) -> Result<(), StoreError> {
        let outcome = self.journal.close_segment();
        self.drop_taken_back();
        outcome
    }

    /// Forgets pending lines that a failed sync has taken out of the journal.
    fn drop_taken_back(&mut self) {
        let head = self.journal.head().seq;
        while let Some((line, _)) = self.pending.pop_back_if(|(line, _)| line.seq > head) {
            if let Some(key) = line.key {
                self.pending_keys.remove(&key);
            }
        }
    }
}

impl Drop for Store {
    fn drop(&mut self) {
        // Best effort: what is missed here is caught up from the journal at the next opening.
        let _ = self.journal.sync();
        let _ = self.follow();
        if let Some(mut index) = self.index.take()
            && index.flush().is_ok()
            && let Ok(last) = index.last()
        {
            drop(index);
            closed::leave(self.held.path(), last.seq);
        }
    }
}

/// Walks a data directory's turns from the first, without a lock, also beside a running bot: up to the last whole line.
///
/// # Errors
///
/// The sentence that says why the directory cannot be read.
pub fn read_only(dir: &Path) -> Result<Lines, StoreError> {
    directory::look(dir)?;
    Lines::after(dir, Head::EMPTY, u64::MAX)
}
