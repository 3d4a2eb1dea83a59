//! The index on disk, in sled 0.34.7.
//!
//! sled alone is not enough to lean on: a data file cut short opens with older contents and no error, a flipped byte
//! panics inside it or, rarely, drops entries in silence. So every call is fenced against panics, and a tally of all
//! entries (their number, and the sum of their hashes by exclusive or) is kept with the last turn and held against what
//! is there. Everything lies in one tree, so that one batch moves entries, tally and last turn together or not at all.

use std::collections::HashSet;
use std::ops::Range;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::time::Duration;

use sled::{Batch, Db, IVec};

use super::entries::{
    FLEET, META, Meta, SNAPSHOT, Tally, check_in_key, found_in, position_bytes, read_snapshot,
    seen_key, snapshot_bytes,
};
use super::{Found, Index, IndexError, Indexed, Snapshot};
use crate::store::journal::Head;

/// Pages that sled may keep in memory, in bytes as they lie on the disk; in memory they take a few times that. What is
/// asked for was mostly written lately, so more would only grow with the log.
const CACHE: u64 = 2 << 20;

/// The index on disk.
pub struct SledIndex {
    db: Db,
    meta: Meta,
    /// The check in progress: entries up to this key were counted.
    cursor: Option<IVec>,
    counted: Tally,
    checked: bool,
}

impl SledIndex {
    /// Opens an index, making it where it is missing.
    ///
    /// # Errors
    ///
    /// [`IndexError::Damaged`] where it has to be made anew, [`IndexError::Disk`] where the disk failed.
    pub fn open(path: &Path) -> Result<Self, IndexError> {
        fenced(|| {
            let db = open_patiently(path)?;
            let meta = match db.get(META)? {
                Some(bytes) => Meta::read(&bytes)
                    .ok_or_else(|| sled::Error::Unsupported("lacked its own state".into()))?,
                None if db.is_empty() => Meta {
                    last: Head::EMPTY,
                    tally: Tally::default(),
                },
                None => return Err(sled::Error::Unsupported("lacked its own state".into())),
            };
            Ok(SledIndex {
                db,
                meta,
                cursor: None,
                counted: Tally::default(),
                checked: false,
            })
        })
    }
}

/// Opens sled, waiting a moment for an earlier handle of this process to let go of its lock.
fn open_patiently(path: &Path) -> sled::Result<Db> {
    let config = sled::Config::new().path(path).cache_capacity(CACHE);
    for _ in 0..50 {
        match config.open() {
            Err(sled::Error::Io(error)) if error.to_string().contains("lock") => {
                std::thread::sleep(Duration::from_millis(20));
            }
            outcome => return outcome,
        }
    }
    config.open()
}

impl Index for SledIndex {
    fn last(&self) -> Result<Head, IndexError> {
        Ok(self.meta.last)
    }

    fn apply(&mut self, turns: &[Indexed]) -> Result<(), IndexError> {
        let Some(last) = turns.last() else {
            return Ok(());
        };
        let mut meta = self.meta;
        let mut counted = self.counted;
        let mut batch = Batch::default();
        let mut fleet = None;
        let mut fresh = HashSet::new();
        let mut put = |key: Vec<u8>, value: Vec<u8>| {
            meta.tally.flip(&key, &value, 1);
            if self.cursor.as_deref().is_some_and(|cursor| *key <= *cursor) {
                counted.flip(&key, &value, 1);
            }
            batch.insert(key, value);
        };
        for turn in turns {
            if let Some(key) = &turn.seen {
                // a key that is there already would be tallied twice and kept once
                let key = seen_key(key);
                if fresh.insert(key.clone()) && !fenced(|| self.db.contains_key(&key))? {
                    put(key, turn.head.seq.to_be_bytes().to_vec());
                }
            }
            for (number, (unit, at)) in (0..u16::MAX).zip(&turn.check_ins) {
                let key = check_in_key(unit, *at, turn.head.seq, number);
                put(key, position_bytes(turn.position));
            }
            if let Some(json) = &turn.fleet {
                fleet = Some(json);
            }
        }
        if let Some(json) = fleet {
            if let Some(old) = fenced(|| self.db.get(FLEET))? {
                meta.tally.flip(FLEET, &old, -1);
                if self.cursor.as_deref().is_some_and(|cursor| FLEET <= cursor) {
                    counted.flip(FLEET, &old, -1);
                }
            }
            meta.tally.flip(FLEET, json, 1);
            if self.cursor.as_deref().is_some_and(|cursor| FLEET <= cursor) {
                counted.flip(FLEET, json, 1);
            }
            batch.insert(FLEET, json.as_slice());
        }
        meta.last = last.head;
        batch.insert(META, meta.bytes());
        fenced(|| self.db.apply_batch(batch))?;
        self.meta = meta;
        self.counted = counted;
        Ok(())
    }

    fn seen(&self, key: &str) -> Result<bool, IndexError> {
        fenced(|| self.db.contains_key(seen_key(key)))
    }

    fn check_ins(
        &self,
        unit: &str,
        range: Range<i64>,
        limit: usize,
    ) -> Result<Vec<Found>, IndexError> {
        if range.is_empty() {
            return Ok(Vec::new());
        }
        let keys = check_in_key(unit, range.start, 0, 0)..check_in_key(unit, range.end, 0, 0);
        let mut found = fenced(|| {
            let mut found = Vec::new();
            for entry in self.db.range(keys).rev().take(limit) {
                let (key, value) = entry?;
                found
                    .push(found_in(&key, &value).ok_or_else(|| {
                        sled::Error::Unsupported("held a malformed entry".into())
                    })?);
            }
            Ok(found)
        })?;
        found.reverse();
        Ok(found)
    }

    fn fleet(&self) -> Result<Option<Vec<u8>>, IndexError> {
        Ok(fenced(|| self.db.get(FLEET))?.map(|json| json.to_vec()))
    }

    fn snapshot(&self) -> Result<Option<Snapshot>, IndexError> {
        match fenced(|| self.db.get(SNAPSHOT))? {
            None => Ok(None),
            Some(bytes) => read_snapshot(&bytes)
                .map(Some)
                .ok_or_else(|| IndexError::Damaged("held a damaged snapshot".into())),
        }
    }

    fn save_snapshot(&mut self, snapshot: &Snapshot) -> Result<(), IndexError> {
        fenced(|| self.db.insert(SNAPSHOT, snapshot_bytes(snapshot)))?;
        self.flush()
    }

    fn unchecked(&self) -> u64 {
        if self.checked {
            0
        } else {
            self.meta
                .tally
                .count
                .saturating_sub(self.counted.count)
                .max(1)
        }
    }

    fn check(&mut self, entries: u64) -> Result<(), IndexError> {
        if self.checked {
            return Ok(());
        }
        let mut left = entries;
        let start = match &self.cursor {
            Some(cursor) => std::ops::Bound::Excluded(cursor.clone()),
            None => std::ops::Bound::Unbounded,
        };
        let (counted, cursor) = (&mut self.counted, &mut self.cursor);
        fenced(|| {
            for entry in self.db.range((start, std::ops::Bound::Unbounded)) {
                if left == 0 {
                    return Ok(());
                }
                left -= 1;
                let (key, value) = entry?;
                if !key.starts_with(META) && !key.starts_with(SNAPSHOT) {
                    counted.flip(&key, &value, 1);
                }
                *cursor = Some(key);
            }
            Ok(())
        })?;
        if left == 0 {
            return Ok(());
        }
        if self.counted != self.meta.tally {
            return Err(IndexError::Damaged(format!(
                "held {} entries where {} were put in, or others",
                self.counted.count, self.meta.tally.count
            )));
        }
        self.checked = true;
        self.cursor = None;
        Ok(())
    }

    fn flush(&mut self) -> Result<(), IndexError> {
        fenced(|| self.db.flush())?;
        Ok(())
    }
}

/// Calls sled so that neither its errors nor its panics go further.
fn fenced<T>(call: impl FnOnce() -> sled::Result<T>) -> Result<T, IndexError> {
    use std::io::ErrorKind;
    match catch_unwind(AssertUnwindSafe(call)) {
        Ok(Ok(value)) => Ok(value),
        Ok(Err(sled::Error::Io(error)))
            if matches!(
                error.kind(),
                ErrorKind::StorageFull
                    | ErrorKind::QuotaExceeded
                    | ErrorKind::PermissionDenied
                    | ErrorKind::ReadOnlyFilesystem
            ) =>
        {
            Err(IndexError::Disk(error.to_string()))
        }
        Ok(Err(sled::Error::Unsupported(what))) => Err(IndexError::Damaged(what)),
        Ok(Err(error)) => Err(IndexError::Damaged(format!("was damaged ({error})"))),
        Err(_) => Err(IndexError::Damaged("was damaged".into())),
    }
}
