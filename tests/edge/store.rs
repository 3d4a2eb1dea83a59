//! The store: what was acknowledged is there again, whatever happens to the files.

mod damage;
mod directory;
mod disk;
mod index;
mod life;
mod redact;
mod reopen;

use std::fs;
use std::path::{Path, PathBuf};

use chrono::DateTime;
use hosebib::store::{
    Draft, FaultyFiles, IndexEntries, IndexKind, Line, Opened, Setup, Store, StoreError, verify,
};
use serde_json::{Value, json};
use tempfile::TempDir;

/// 2027-01-16T12:00:00Z in milliseconds.
const NOON: i64 = 1_800_100_800_000;

/// Gives salts that a test can foresee.
pub(crate) fn counting_salt() -> impl FnMut() -> [u8; 16] + Send {
    let mut next = 0u128;
    move || {
        next += 1;
        next.to_be_bytes()
    }
}

/// Looks up what [`draft`] writes.
pub(crate) fn entries(line: &Line) -> IndexEntries {
    let check_ins = line
        .records
        .iter()
        .filter_map(|record| {
            Some((
                record.get("unit")?.as_str()?.to_owned(),
                record["at"].as_i64()?,
                record.clone(),
            ))
        })
        .collect();
    let fleet = line
        .records
        .iter()
        .find_map(|record| record.get("fleet").cloned());
    IndexEntries {
        seen: line.key.clone(),
        check_ins,
        fleet,
    }
}

/// Sets a store up with small segments, so that a few turns fill several.
pub(crate) fn setup() -> Setup {
    Setup {
        segment_bytes: 4_000,
        ..Setup::new(Box::new(counting_salt()), Box::new(entries), 1)
    }
}

/// The same with an index that no file holds.
fn in_memory() -> Setup {
    Setup {
        index: IndexKind::Memory,
        ..setup()
    }
}

/// The turn that stands at `seq` in every test's journal.
pub(crate) fn draft(seq: u64) -> Draft {
    let at = NOON + i64::try_from(seq).unwrap() * 60_000;
    let unit = if seq.is_multiple_of(3) { "14" } else { "12" };
    Draft {
        key: Some(format!("tg:-100200300:{seq}:0")),
        at: DateTime::from_timestamp_millis(at).unwrap(),
        records: vec![
            json!({"said": {"personal": format!("unit {unit} pressure {seq}")}, "from": "dana"}),
            json!({"unit": unit, "at": at, "psi": seq, "note": {"personal": "cold hands"}}),
        ],
        outgoing: vec![json!({"to": {"personal": "tg:777"}, "text": {"personal": "Logged."}})],
    }
}

fn drafts(range: std::ops::RangeInclusive<u64>) -> Vec<Draft> {
    range.map(draft).collect()
}

/// Commits the turns of a range, several a batch.
fn fill(store: &mut Store, range: std::ops::RangeInclusive<u64>) {
    for batch in drafts(range).chunks(7) {
        let prepared = store.prepare(batch).unwrap();
        store.commit(prepared).unwrap();
    }
}

fn open(dir: &Path) -> (Store, Opened) {
    Store::open(dir, setup()).unwrap_or_else(|error| panic!("{error}"))
}

/// Takes out what `edit` empties, in slices of three turns, and keeps this as the book.
pub(crate) fn redact(
    store: &mut Store,
    mut edit: impl FnMut(&mut Line),
    book: Option<&[u8]>,
) -> Result<usize, StoreError> {
    let mut redaction = store.begin_redaction()?;
    while store.redact(&mut redaction, 3, &mut edit, |_| {})? {}
    store.finish_redaction(redaction, book.map(<[u8]>::to_vec))
}

/// A directory with turns 1 to `turns`, closed in good order.
pub(crate) fn filled(turns: u64) -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    let (mut store, _) = open(dir.path());
    fill(&mut store, 1..=turns);
    dir
}

/// A directory with turns 1 to `turns` and a snapshot of the book after the last, closed in good order.
fn filled_with_snapshot(turns: u64) -> TempDir {
    let dir = filled(turns);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book".to_vec())
        .unwrap();
    dir
}

/// A store on a disk that can be told to fail.
fn on_faulty_disk(dir: &Path) -> (Store, FaultyFiles) {
    let disk = FaultyFiles::default();
    let setup = Setup {
        disk: Box::new(disk.clone()),
        ..setup()
    };
    let (store, _) = Store::open(dir, setup).unwrap();
    (store, disk)
}

fn error_of(dir: &Path) -> StoreError {
    match Store::open(dir, setup()) {
        Ok(_) => panic!("the store opened"),
        Err(error) => error,
    }
}

fn segments(dir: &Path) -> Vec<PathBuf> {
    let mut paths: Vec<PathBuf> = fs::read_dir(dir.join("journal"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    paths.sort();
    paths
}

/// Checks that exactly the turns 1 to `last` are there, whole, and can be looked up.
#[track_caller]
pub(crate) fn holds_exactly(dir: &Path, last: u64) {
    holds_exactly_with(setup(), dir, last);
}

#[track_caller]
fn holds_exactly_with(setup: Setup, dir: &Path, last: u64) {
    let report = verify(dir).unwrap();
    assert_eq!(report.damage, []);
    assert_eq!(report.turns, last);
    let (mut store, opened) = Store::open(dir, setup).unwrap();
    let from = opened.snapshot.map_or(0, |snapshot| snapshot.head.seq);
    let lines: Vec<Line> = opened.lines.map(Result::unwrap).collect();
    assert_eq!(lines.len() as u64, last - from);
    for (seq, line) in (from + 1..).zip(&lines) {
        same_as_drafted(line, seq);
    }
    for seq in 1..=last {
        assert!(store.seen(&draft(seq).key.unwrap()).unwrap(), "key {seq}");
    }
    assert!(!store.seen("tg:-100200300:0:0").unwrap());
    for unit in ["12", "14"] {
        let found = store
            .check_ins(unit, i64::MIN..i64::MAX, usize::MAX)
            .unwrap();
        let expected: Vec<Value> = (1..=last)
            .map(|seq| draft(seq).records[1].clone())
            .filter(|record| record["unit"] == unit)
            .collect();
        let found: Vec<Value> = found.into_iter().map(|check_in| check_in.value).collect();
        assert_eq!(found, expected);
    }
}

#[track_caller]
pub(crate) fn same_as_drafted(line: &Line, seq: u64) {
    let draft = draft(seq);
    assert_eq!(line.seq, seq);
    assert_eq!(line.key, draft.key);
    assert_eq!(line.at, draft.at);
    assert_eq!(line.records, draft.records);
    assert_eq!(line.outgoing, draft.outgoing);
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            fs::copy(entry.path(), target).unwrap();
        }
    }
}

fn copied(from: &Path) -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    copy(from, dir.path());
    dir
}
