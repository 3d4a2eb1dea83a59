use std::ops::Range;
use std::path::Path;

use serde_json::json;

use super::*;
use crate::store::{Draft, Files, Found, IndexEntries};

/// An index that fails in one way, whatever it is asked.
struct Failing(IndexError);

impl Index for Failing {
    fn last(&self) -> Result<Head, IndexError> {
        Err(self.0.clone())
    }
    fn apply(&mut self, _: &[Indexed]) -> Result<(), IndexError> {
        Err(self.0.clone())
    }
    fn seen(&self, _: &str) -> Result<bool, IndexError> {
        Err(self.0.clone())
    }
    fn check_ins(&self, _: &str, _: Range<i64>, _: usize) -> Result<Vec<Found>, IndexError> {
        Err(self.0.clone())
    }
    fn fleet(&self) -> Result<Option<Vec<u8>>, IndexError> {
        Err(self.0.clone())
    }
    fn snapshot(&self) -> Result<Option<Snapshot>, IndexError> {
        Err(self.0.clone())
    }
    fn save_snapshot(&mut self, _: &Snapshot) -> Result<(), IndexError> {
        Err(self.0.clone())
    }
    fn unchecked(&self) -> u64 {
        1
    }
    fn check(&mut self, _: u64) -> Result<(), IndexError> {
        Err(self.0.clone())
    }
    fn flush(&mut self) -> Result<(), IndexError> {
        Err(self.0.clone())
    }
}

fn opened(dir: &Path) -> Store {
    let setup = Setup {
        salt: Box::new(|| [7; 16]),
        entries: Box::new(|line: &Line| IndexEntries {
            seen: line.key.clone(),
            check_ins: vec![("12".into(), line.seq as i64, line.records[0].clone())],
            fleet: None,
        }),
        snapshot_format: 1,
        segment_bytes: 2_000,
        #[cfg(feature = "store")]
        index: IndexKind::Sled,
        #[cfg(not(feature = "store"))]
        index: IndexKind::Memory,
        disk: Box::new(Files),
    };
    Store::open(dir, setup).unwrap().0
}

fn log(store: &mut Store, number: u64) {
    let draft = Draft {
        key: Some(number.to_string()),
        at: chrono::DateTime::from_timestamp(1_800_000_000, 0).unwrap(),
        records: vec![json!({ "number": number })],
        outgoing: Vec::new(),
    };
    let prepared = store.prepare(&[draft]).unwrap();
    store.commit(prepared).unwrap();
}

#[track_caller]
fn holds(store: &mut Store, numbers: u64) {
    let found = store.check_ins("12", 0..i64::MAX, usize::MAX).unwrap();
    let found: Vec<u64> = found.iter().map(|check_in| check_in.seq).collect();
    assert_eq!(found, (1..=numbers).collect::<Vec<u64>>());
    assert!(store.seen("1").unwrap() && store.seen(&numbers.to_string()).unwrap());
}

#[test]
fn an_index_that_turns_out_damaged_while_running_is_rebuilt() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = opened(dir.path());
    (1..=20).for_each(|number| log(&mut store, number));
    let damaged = || Some(Box::new(Failing(IndexError::Damaged("was damaged".into()))) as _);
    store.index = damaged();
    let notes = store.follow().unwrap();
    assert!(
        matches!(notes[..], [Note::IndexRebuilt { turns: 20, .. }]),
        "{notes:?}"
    );
    holds(&mut store, 20);
    // whatever is asked first meets the damage
    store.index = damaged();
    assert!(store.seen("20").unwrap());
    store.index = damaged();
    holds(&mut store, 20);
    store.index = damaged();
    store.save_snapshot(store.head(), vec![1]).unwrap();
    store.index = damaged();
    log(&mut store, 21);
    holds(&mut store, 21);
}

#[test]
fn an_index_whose_disk_failed_is_opened_again_and_brought_up() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = opened(dir.path());
    (1..=20).for_each(|number| log(&mut store, number));
    store.index = Some(Box::new(Failing(IndexError::Disk("full".into()))));
    assert_eq!(store.follow().unwrap(), []);
    holds(&mut store, 20);
}
