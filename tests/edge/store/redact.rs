//! Emptying personal texts in closed segments.

use std::fs;

use hosebib::store::*;
use serde_json::{Value, json};

use super::*;

#[test]
fn emptied_texts_leave_the_chain_whole() {
    let dir = filled(40);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book knows cold hands".to_vec())
        .unwrap();
    let head = store.head();
    fs::create_dir(dir.path().join("index.damaged-1")).unwrap();
    let emptied = store
        .redact(|line| {
            if line.seq <= 30 {
                line.key = None;
                line.records[0]["said"]["personal"] = Value::Null;
                line.records[1]["note"]["personal"] = Value::Null;
                line.outgoing[0]["to"]["personal"] = Value::Null;
            }
        })
        .unwrap();
    assert_eq!(emptied, 30 * 4);
    assert_eq!(store.head(), head);
    fill(&mut store, 41..=50);
    let found = store.check_ins("14", i64::MIN..i64::MAX, 99).unwrap();
    let psi: Vec<_> = found.iter().map(|c| c.value["psi"].clone()).collect();
    assert_eq!(psi, (1..=16).map(|n| json!(n * 3)).collect::<Vec<_>>());
    assert_eq!(found[0].value["note"], json!({"personal": null}));
    assert_eq!(found[15].value["note"], json!({"personal": "cold hands"}));
    drop(store);

    assert_eq!(verify(dir.path()).unwrap().damage, []);
    let (mut store, opened) = open(dir.path());
    assert_eq!((opened.notes, opened.snapshot), (vec![], None));
    assert_eq!(opened.lines.map(Result::unwrap).count(), 50);
    assert!(!store.seen(&draft(3).key.unwrap()).unwrap());
    assert!(store.seen(&draft(33).key.unwrap()).unwrap());
    assert!(!dir.path().join("index.damaged-1").exists());
    let bytes: Vec<u8> = segments(dir.path())
        .iter()
        .flat_map(|path| fs::read(path).unwrap())
        .collect();
    let text = String::from_utf8(bytes).unwrap();
    assert!(!text.contains("unit 14 pressure 3\"") && !text.contains(":3:0"));
    assert!(text.contains("unit 14 pressure 33\""));
}

#[test]
fn only_personal_texts_can_be_emptied() {
    let dir = filled(40);
    let (mut store, _) = open(dir.path());
    let before: Vec<_> = segments(dir.path());
    let error = store
        .redact(|line| line.records[1]["psi"] = json!(1))
        .unwrap_err();
    assert!(matches!(error, StoreError::Redaction(_)), "{error}");
    drop(store);
    assert_eq!(segments(dir.path()), before);
    holds_exactly(dir.path(), 40);
}

#[test]
fn a_rewriting_that_was_interrupted_leaves_the_old_segment_and_no_copy() {
    let dir = filled(30);
    let old = segments(dir.path());
    let text = fs::read_to_string(&old[1]).unwrap();
    let half = old[1].with_extension("jsonl.new");
    fs::write(&half, &text[..text.len() / 2]).unwrap();
    holds_exactly(dir.path(), 30);
    assert_eq!(segments(dir.path()), old);
}

#[test]
fn emptying_again_finds_nothing_left() {
    let dir = filled(20);
    let (mut store, _) = open(dir.path());
    let edit = |line: &mut Line| line.records[0]["said"]["personal"] = Value::Null;
    assert_eq!(store.redact(edit).unwrap(), 20);
    assert_eq!(store.redact(edit).unwrap(), 0);
}
