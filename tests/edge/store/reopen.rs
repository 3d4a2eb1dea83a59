//! What was committed is there after reopening, and can be looked up.

use std::fs;
use std::path::Path;

use hosebib::store::*;
use serde_json::{Value, json};

use super::*;

#[test]
fn a_reopened_store_hands_over_what_was_committed() {
    let dir = filled(60);
    assert!(segments(dir.path()).len() > 3);
    holds_exactly(dir.path(), 60);
    let (mut store, opened) = open(dir.path());
    assert_eq!(opened.notes, []);
    fill(&mut store, 61..=80);
    drop(store);
    holds_exactly(dir.path(), 80);
}

#[test]
fn only_the_turns_after_the_snapshot_are_handed_over() {
    let dir = filled(30);
    let (mut store, _) = open(dir.path());
    let head = store.head();
    store.save_snapshot(head, b"the book".to_vec()).unwrap();
    fill(&mut store, 31..=40);
    drop(store);
    let (_store, opened) = open(dir.path());
    let snapshot = opened.snapshot.unwrap();
    assert_eq!(
        (snapshot.head, &snapshot.bytes[..]),
        (head, &b"the book"[..])
    );
    let seqs: Vec<u64> = opened.lines.map(|line| line.unwrap().seq).collect();
    assert_eq!(seqs, (31..=40).collect::<Vec<u64>>());
}

#[test]
fn a_snapshot_of_another_format_is_not_handed_over() {
    let dir = filled(30);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book".to_vec())
        .unwrap();
    drop(store);
    let newer = Setup {
        snapshot_format: 2,
        ..setup()
    };
    let (_store, opened) = Store::open(dir.path(), newer).unwrap();
    assert_eq!(opened.snapshot, None);
    assert_eq!(opened.lines.count(), 30);
    assert!(matches!(opened.notes[..], [Note::SnapshotUnusable { .. }]));
}

#[test]
fn check_ins_are_found_by_unit_and_time() {
    let dir = filled(30);
    let (mut store, _) = open(dir.path());
    let minute = |n: i64| NOON + n * 60_000;
    let psi = |found: Vec<hosebib::store::CheckIn>| -> Vec<i64> {
        found
            .iter()
            .map(|check_in| check_in.value["psi"].as_i64().unwrap())
            .collect()
    };
    let found = store.check_ins("14", minute(6)..minute(15), 100).unwrap();
    assert_eq!(psi(found), [6, 9, 12]);
    let found = store.check_ins("12", i64::MIN..i64::MAX, 3).unwrap();
    assert_eq!(psi(found), [26, 28, 29]);
    assert_eq!(store.check_ins("1", i64::MIN..i64::MAX, 9).unwrap(), []);
}

#[test]
fn several_check_ins_of_one_turn_are_all_found() {
    let dir = filled(1);
    let (mut store, _) = open(dir.path());
    let mut turn = draft(2);
    let record = |unit: &str, psi: u32| json!({"unit": unit, "at": NOON, "psi": psi});
    turn.records = vec![record("7", 40), record("7", 41), record("8", 42)];
    let prepared = store.prepare(&[turn]).unwrap();
    store.commit(prepared).unwrap();
    let found = store.check_ins("7", NOON..NOON + 1, 9).unwrap();
    let values: Vec<Value> = found.into_iter().map(|check_in| check_in.value).collect();
    assert_eq!(values, [record("7", 40), record("7", 41)]);
}

#[test]
fn the_last_fleet_is_kept() {
    let dir = filled(1);
    let (mut store, _) = open(dir.path());
    for (seq, trailers) in [(2, 4), (3, 5)] {
        let mut turn = draft(seq);
        turn.records = vec![json!({"fleet": {"trailers": trailers}})];
        let prepared = store.prepare(&[turn]).unwrap();
        store.commit(prepared).unwrap();
    }
    assert_eq!(store.fleet().unwrap(), Some(json!({"trailers": 5})));
    drop(store);
    let (mut store, opened) = open(dir.path());
    assert_eq!(opened.notes, []);
    assert_eq!(store.fleet().unwrap(), Some(json!({"trailers": 5})));
}

#[test]
fn a_message_is_not_recorded_twice() {
    let dir = filled(10);
    let (mut store, _) = open(dir.path());
    for batch in [vec![draft(4)], vec![draft(11), draft(11)]] {
        let error = store.prepare(&batch).unwrap_err();
        assert!(matches!(error, StoreError::KeyTwice(_)), "{error}");
    }
    let prepared = store.prepare(&[draft(11)]).unwrap();
    store.commit(prepared).unwrap();
    // not yet followed by the index
    assert!(store.prepare(&[draft(11)]).is_err());
}

#[test]
fn lines_prepared_for_another_place_are_refused() {
    let dir = filled(5);
    let (mut store, _) = open(dir.path());
    let early = store.prepare(&[draft(6)]).unwrap();
    let late = store.prepare(&[draft(6)]).unwrap();
    store.commit(early).unwrap();
    let error = store.commit(late).unwrap_err();
    assert!(
        matches!(error, StoreError::Stale { after: 5, head: 6 }),
        "{error}"
    );
}

#[test]
fn a_reader_beside_a_running_bot_sees_whole_lines_only() {
    let dir = filled(20);
    let (mut store, _) = open(dir.path());
    let mut reader = read_only(dir.path()).unwrap();
    for seq in 1..=10 {
        same_as_drafted(&reader.next().unwrap().unwrap(), seq);
    }
    fill(&mut store, 21..=45);
    let path = segments(dir.path()).pop().unwrap();
    let mut file = fs::OpenOptions::new().append(true).open(path).unwrap();
    std::io::Write::write_all(&mut file, b"{\"seq\":46,\"vers").unwrap();
    for seq in 11..=45 {
        same_as_drafted(&reader.next().unwrap().unwrap(), seq);
    }
    assert!(reader.next().is_none());
    let report = verify(dir.path()).unwrap();
    assert_eq!(
        (report.turns, report.unfinished, report.damage),
        (45, 15, vec![])
    );
}

#[test]
fn a_journal_of_the_first_release_opens() {
    let fixture = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/journal-v1");
    let dir = copied(&fixture);
    assert_eq!(verify(dir.path()).unwrap().damage, []);
    let (_store, opened) = open(dir.path());
    let lines: Vec<Line> = opened.lines.map(Result::unwrap).collect();
    assert_eq!(lines.len(), 12);
    for (seq, line) in (1..).zip(&lines) {
        assert_eq!((line.seq, line.version), (seq, 1));
        if seq != 2 {
            same_as_drafted(line, seq);
        }
    }
    // turn 2 was emptied by that release
    assert_eq!(lines[1].key, None);
    assert_eq!(lines[1].records[0]["said"], json!({"personal": null}));
    assert_eq!(lines[1].records[1]["psi"], json!(2));
}

#[test]
fn the_start_of_a_journal_is_the_same_in_every_release() {
    let dir = filled(1);
    let path = segments(dir.path()).pop().unwrap();
    let fixture = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data/journal-v1/journal/000000000001.jsonl");
    let ours = fs::read_to_string(path).unwrap();
    let theirs = fs::read_to_string(fixture).unwrap();
    assert_eq!(ours.lines().next(), theirs.lines().next());
    let (store, _) = open(dir.path());
    assert_ne!(store.head(), Head::EMPTY);
}
