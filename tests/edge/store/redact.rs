//! Emptying personal texts in closed segments.

use std::fs;
use std::path::{Path, PathBuf};

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
    let edit = |line: &mut Line| {
        if line.seq <= 30 {
            line.key = None;
            line.records[0]["said"]["personal"] = Value::Null;
            line.records[1]["note"]["personal"] = Value::Null;
            line.outgoing[0]["to"]["personal"] = Value::Null;
        }
    };
    let emptied = redact(&mut store, edit, None).unwrap();
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
    let edit = |line: &mut Line| line.records[1]["psi"] = json!(1);
    let error = redact(&mut store, edit, None).unwrap_err();
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
    assert_eq!(redact(&mut store, edit, None).unwrap(), 20);
    assert_eq!(redact(&mut store, edit, None).unwrap(), 0);
}

/// Empties what was said.
fn unsaid(line: &mut Line) {
    line.records[0]["said"]["personal"] = Value::Null;
}

/// Counts the turns of which what was said is still there.
fn said(dir: &Path) -> usize {
    let lines = read_only(dir).unwrap().map(Result::unwrap);
    lines
        .filter(|line| line.records[0]["said"]["personal"].is_string())
        .count()
}

/// A directory of 40 turns, and a redaction that has gone through them all.
fn gone_through() -> (TempDir, Store, Redaction) {
    let dir = filled(40);
    let (mut store, _) = open(dir.path());
    let mut redaction = store.begin_redaction().unwrap();
    while store.redact(&mut redaction, 5, unsaid, |_| {}).unwrap() {}
    (dir, store, redaction)
}

/// Lists the copies that wait to be put in place.
fn copies(dir: &Path) -> Vec<PathBuf> {
    let is_copy = |path: &PathBuf| path.extension().is_some_and(|end| end == "new");
    segments(dir).into_iter().filter(is_copy).collect()
}

/// Copies a data directory just as it lies on the disk.
fn as_a_power_cut_leaves(dir: &Path) -> TempDir {
    fn copy(from: &Path, to: &Path) {
        fs::create_dir_all(to).unwrap();
        for entry in fs::read_dir(from).unwrap().map(Result::unwrap) {
            let (from, to) = (entry.path(), to.join(entry.file_name()));
            match from.is_dir() {
                true => copy(&from, &to),
                false => drop(fs::copy(&from, &to).unwrap()),
            }
        }
    }
    let cut = tempfile::tempdir().unwrap();
    copy(dir, cut.path());
    cut
}

#[test]
fn turns_are_written_and_found_between_slices() {
    for setup in [setup, in_memory] {
        let dir = filled(40);
        let (mut store, _) = Store::open(dir.path(), setup()).unwrap();
        let mut redaction = store.begin_redaction().unwrap();
        let mut next = 41;
        let mut read = Vec::new();
        while store
            .redact(&mut redaction, 5, unsaid, |line| read.push(line.seq))
            .unwrap()
        {
            if next > 52 {
                continue;
            }
            fill(&mut store, next..=next);
            next += 1;
            assert!(store.seen(&draft(next - 1).key.unwrap()).unwrap());
            assert_eq!(said(dir.path()), next as usize - 1, "none is gone yet");
        }
        let last = next - 1;
        assert!(last > 45, "there were slices");
        assert_eq!(read, (1..=last).collect::<Vec<_>>());
        let emptied = store.finish_redaction(redaction, Some(b"the book".to_vec()));
        assert_eq!(emptied.unwrap(), 40);
        assert_eq!(said(dir.path()) as u64, last - 40, "what came later stays");
        let anew = store.fold_anew().unwrap();
        assert_eq!(
            anew.snapshot.map(|book| (book.head.seq, book.bytes)),
            Some((last, b"the book".to_vec()))
        );
        assert_eq!(anew.lines.count(), 0);
        let found = store.check_ins("14", i64::MIN..i64::MAX, 99).unwrap();
        assert_eq!(found.len() as u64, last / 3);
        for seq in 1..=last {
            assert!(store.seen(&draft(seq).key.unwrap()).unwrap(), "key {seq}");
        }
        drop(store);
        assert_eq!(verify(dir.path()).unwrap().damage, []);
    }
}

#[test]
fn what_broke_off_before_the_mark_is_as_if_it_had_never_begun() {
    let (dir, store, redaction) = gone_through();
    let cut = as_a_power_cut_leaves(dir.path());
    assert_eq!(copies(cut.path()).len(), segments(dir.path()).len() / 2);
    drop((redaction, store));
    for dir in [dir, cut] {
        assert_eq!(said(dir.path()), 40);
        holds_exactly(dir.path(), 40);
        assert_eq!(copies(dir.path()).len(), 0);
        assert!(!dir.path().join("index.new").exists());
    }
}

#[test]
fn what_broke_off_after_the_mark_is_finished_at_the_next_opening() {
    let (dir, store, redaction) = gone_through();
    let cut = as_a_power_cut_leaves(dir.path());
    drop((redaction, store));
    let dir = cut;
    // it came when the first of the copies was in its place
    fs::write(dir.path().join("index.swap"), "with index\n").unwrap();
    let first = copies(dir.path()).swap_remove(0);
    fs::rename(&first, first.with_extension("")).unwrap();
    let (mut store, _) = open(dir.path());
    assert_eq!((said(dir.path()), copies(dir.path()).len()), (0, 0));
    let found = store.check_ins("14", i64::MIN..i64::MAX, 99).unwrap();
    assert_eq!(found.len(), 13);
    assert!(!dir.path().join("index.swap").exists() && !dir.path().join("index.new").exists());
    drop(store);
    assert_eq!(verify(dir.path()).unwrap().damage, []);
}

#[test]
fn a_redaction_that_follows_one_whose_end_failed_puts_its_copies_in_place_first() {
    let (dir, mut store, redaction) = gone_through();
    // the mark was left, and then the disk failed
    fs::write(dir.path().join("index.swap"), "with index\n").unwrap();
    drop(redaction);
    fill(&mut store, 41..=45);
    let other = |line: &mut Line| line.records[1]["note"]["personal"] = Value::Null;
    assert_eq!(redact(&mut store, other, None).unwrap(), 45);
    assert_eq!(said(dir.path()), 5, "those written since");
    drop(store);
    assert_eq!(verify(dir.path()).unwrap().damage, []);
    let (mut store, opened) = open(dir.path());
    assert_eq!(opened.notes, []);
    assert_eq!(opened.lines.map(Result::unwrap).count(), 45);
    assert!(store.seen(&draft(45).key.unwrap()).unwrap());
}

#[test]
fn turns_that_it_has_not_gone_through_stop_its_end() {
    let (dir, mut store, redaction) = gone_through();
    fill(&mut store, 41..=41);
    let error = store.finish_redaction(redaction, None).unwrap_err();
    assert!(
        matches!(
            error,
            StoreError::Stale {
                after: 40,
                head: 41
            }
        ),
        "{error}"
    );
    drop(store);
    holds_exactly(dir.path(), 41);
}
