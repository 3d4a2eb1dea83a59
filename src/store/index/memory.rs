//! An index in memory, for tests and for builds without sled: made anew at every start.

use std::collections::{BTreeMap, HashSet};
use std::ops::Range;

use super::{Found, Index, IndexError, Indexed, Snapshot};
use crate::store::journal::{Head, Position};

/// An index in memory.
#[derive(Debug)]
pub struct MemoryIndex {
    last: Head,
    seen: HashSet<String>,
    check_ins: BTreeMap<(String, i64, u64), Position>,
    fleet: Option<Vec<u8>>,
    snapshot: Option<Snapshot>,
}

impl Default for MemoryIndex {
    fn default() -> Self {
        MemoryIndex {
            last: Head::EMPTY,
            seen: HashSet::new(),
            check_ins: BTreeMap::new(),
            fleet: None,
            snapshot: None,
        }
    }
}

impl Index for MemoryIndex {
    fn last(&self) -> Result<Head, IndexError> {
        Ok(self.last)
    }

    fn apply(&mut self, turns: &[Indexed]) -> Result<(), IndexError> {
        for turn in turns {
            self.seen.extend(turn.seen.clone());
            for (unit, at) in &turn.check_ins {
                self.check_ins
                    .insert((unit.clone(), *at, turn.head.seq), turn.position);
            }
            if turn.fleet.is_some() {
                self.fleet.clone_from(&turn.fleet);
            }
            self.last = turn.head;
        }
        Ok(())
    }

    fn seen(&self, key: &str) -> Result<bool, IndexError> {
        Ok(self.seen.contains(key))
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
        let keys = (unit.to_owned(), range.start, 0)..(unit.to_owned(), range.end, 0);
        let mut found: Vec<Found> = self
            .check_ins
            .range(keys)
            .rev()
            .take(limit)
            .map(|((_, at, seq), position)| Found {
                at: *at,
                seq: *seq,
                position: *position,
            })
            .collect();
        found.reverse();
        Ok(found)
    }

    fn fleet(&self) -> Result<Option<Vec<u8>>, IndexError> {
        Ok(self.fleet.clone())
    }

    fn snapshot(&self) -> Result<Option<Snapshot>, IndexError> {
        Ok(self.snapshot.clone())
    }

    fn save_snapshot(&mut self, snapshot: &Snapshot) -> Result<(), IndexError> {
        self.snapshot = Some(snapshot.clone());
        Ok(())
    }

    fn unchecked(&self) -> u64 {
        0
    }

    fn check(&mut self, _entries: u64) -> Result<(), IndexError> {
        Ok(())
    }

    fn flush(&mut self) -> Result<(), IndexError> {
        Ok(())
    }
}
