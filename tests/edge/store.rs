//! The store: what was acknowledged is there again, whatever happens to the files.

use std::fs;
use std::path::{Path, PathBuf};

use chrono::DateTime;
use hosebib::store::{
    Draft, Faults, FaultyFiles, Head, IndexEntries, IndexKind, Line, Note, Opened, Setup, Store,
    StoreError, read_only, verify,
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

/// A directory with turns 1 to `turns`, closed in good order.
fn filled(turns: u64) -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    let (mut store, _) = open(dir.path());
    fill(&mut store, 1..=turns);
    dir
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
    let report = verify(dir).unwrap();
    assert_eq!(report.damage, []);
    assert_eq!(report.turns, last);
    let (mut store, opened) = open(dir);
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
fn a_torn_last_line_is_cut_off_wherever_it_is_torn() {
    let dir = filled(9);
    let last = segments(dir.path()).pop().unwrap();
    let name = last.file_name().unwrap();
    let bytes = fs::read(&last).unwrap();
    let start = bytes[..bytes.len() - 1]
        .iter()
        .rposition(|&byte| byte == b'\n')
        .map_or(0, |at| at + 1);
    for length in start + 1..bytes.len() - 1 {
        let torn = copied(dir.path());
        fs::remove_dir_all(torn.path().join("index")).unwrap();
        let path = torn.path().join("journal").join(name);
        fs::write(&path, &bytes[..length]).unwrap();
        let memory = Setup {
            index: IndexKind::Memory,
            ..setup()
        };
        let (mut store, opened) = Store::open(torn.path(), memory).unwrap();
        let expected = Note::TornLine {
            file: path,
            bytes: (length - start) as u64,
        };
        assert_eq!(opened.notes, [expected], "cut to {length}");
        assert_eq!(opened.lines.count(), 8);
        fill(&mut store, 9..=9);
        drop(store);
        assert_eq!(verify(torn.path()).unwrap().turns, 9);
    }
    // only the newline is missing, or something else stands in its place: the turn itself is whole and stays
    for ending in [&b""[..], b"\x0b"] {
        let torn = copied(dir.path());
        let path = torn.path().join("journal").join(name);
        fs::write(&path, [&bytes[..bytes.len() - 1], ending].concat()).unwrap();
        let (_, opened) = open(torn.path());
        assert_eq!(opened.notes, [Note::NewlineMended { file: path }]);
        holds_exactly(torn.path(), 9);
    }
}

#[test]
fn a_batch_torn_between_its_lines_keeps_the_whole_ones() {
    let dir = tempfile::tempdir().unwrap();
    let (mut store, _) = open(dir.path());
    let prepared = store.prepare(&drafts(1..=5)).unwrap();
    let bytes = prepared.bytes().to_vec();
    store.commit(prepared).unwrap();
    drop(store);
    let path = segments(dir.path()).pop().unwrap();
    fs::write(path, &bytes[..bytes.len() * 7 / 10]).unwrap();
    holds_exactly(dir.path(), 3);
}

#[test]
fn damage_after_the_snapshot_is_refused_by_opening() {
    let dir = filled(60);
    let paths = segments(dir.path());
    for path in [&paths[0], &paths[2], &paths[paths.len() - 1]] {
        let bytes = fs::read(path).unwrap();
        for place in [0, bytes.len() / 3, bytes.len() / 2, bytes.len() - 40] {
            let bad = copied(dir.path());
            let path = bad.path().join("journal").join(path.file_name().unwrap());
            let mut bytes = bytes.clone();
            bytes[place] ^= 4;
            fs::write(&path, bytes).unwrap();
            let error = error_of(bad.path());
            let said = error.to_string();
            assert!(matches!(error, StoreError::Damaged(_)), "{said}");
            assert!(said.contains(path.to_str().unwrap()), "{said}");
            assert!(said.contains("restore that file from a backup"), "{said}");
        }
    }
}

#[test]
fn damage_before_the_snapshot_is_found_by_verify_by_a_rebuild_and_by_reading_it() {
    let dir = filled(60);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book".to_vec())
        .unwrap();
    drop(store);
    let path = segments(dir.path())[1].clone();
    let mut bytes = fs::read(&path).unwrap();
    let line = String::from_utf8(bytes.clone()).unwrap();
    let at = line.find("cold hands").unwrap();
    bytes[at] ^= 1;
    fs::write(&path, bytes).unwrap();

    let report = verify(dir.path()).unwrap();
    assert_eq!(report.damage.len(), 1);
    assert_eq!(
        (&report.damage[0].file, report.damage[0].line),
        (&path, Some(1))
    );
    assert_eq!(report.turns, 59);

    // opening needs nothing from there, but reading the check-in does
    let (mut store, opened) = open(dir.path());
    assert_eq!(opened.notes, []);
    let damaged = |error: StoreError| matches!(error, StoreError::Damaged(d) if d.file == path);
    let all = i64::MIN..i64::MAX;
    let errors = ["12", "14"].map(|unit| store.check_ins(unit, all.clone(), 999).err());
    assert!(errors.into_iter().flatten().any(damaged));
    drop(store);
    assert!(
        read_only(dir.path())
            .unwrap()
            .filter_map(Result::err)
            .any(damaged)
    );

    fs::remove_dir_all(dir.path().join("index")).unwrap();
    assert!(damaged(error_of(dir.path())));
}

#[test]
fn verify_finds_every_flipped_byte_of_a_closed_segment() {
    let dir = filled(12);
    let path = segments(dir.path())[0].clone();
    let good = fs::read(&path).unwrap();
    for at in 0..good.len() {
        let mut bad = good.clone();
        bad[at] ^= 1 << (at % 8);
        fs::write(&path, &bad).unwrap();
        assert!(!verify(dir.path()).unwrap().damage.is_empty(), "byte {at}");
    }
    fs::write(&path, &good).unwrap();
    assert_eq!(verify(dir.path()).unwrap().damage, []);
}

#[test]
fn a_short_long_or_missing_closed_segment_is_refused() {
    let dir = filled(60);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book".to_vec())
        .unwrap();
    drop(store);
    type Change = fn(&Path);
    let changes: [(&str, Change); 4] = [
        ("cut", |path| {
            let bytes = fs::read(path).unwrap();
            fs::write(path, &bytes[..bytes.len() / 2]).unwrap();
        }),
        ("line gone", |path| {
            let text = fs::read_to_string(path).unwrap();
            fs::write(path, text.split_once('\n').unwrap().1).unwrap();
        }),
        ("emptied", |path| fs::write(path, "").unwrap()),
        ("deleted", |path| fs::remove_file(path).unwrap()),
    ];
    for (name, change) in changes {
        let bad = copied(dir.path());
        change(&segments(bad.path())[1]);
        let error = error_of(bad.path());
        assert!(matches!(error, StoreError::Damaged(_)), "{name}: {error}");
        assert!(!verify(bad.path()).unwrap().damage.is_empty(), "{name}");
    }
}

#[test]
fn verify_finds_a_message_that_is_recorded_twice() {
    let dir = filled(3);
    let (mut store, _) = open(dir.path());
    let forgetful = Setup {
        entries: Box::new(|_| IndexEntries::default()),
        index: IndexKind::Memory,
        ..setup()
    };
    store.follow().unwrap();
    drop(store);
    let (mut store, _) = Store::open(dir.path(), forgetful).unwrap();
    let prepared = store.prepare(&[draft(2)]).unwrap();
    store.commit(prepared).unwrap();
    drop(store);
    let report = verify(dir.path()).unwrap();
    assert_eq!(report.damage.len(), 1);
    assert_eq!(report.damage[0].line, Some(4));
}

#[test]
fn a_missing_emptied_or_cut_index_is_rebuilt() {
    let dir = filled(60);
    let (mut store, _) = open(dir.path());
    store
        .save_snapshot(store.head(), b"the book".to_vec())
        .unwrap();
    drop(store);
    let data = |dir: &Path| dir.join("index").join("db");
    type Change = fn(&Path, &Path);
    let changes: [(&str, Change); 5] = [
        ("deleted", |index, _| fs::remove_dir_all(index).unwrap()),
        ("emptied", |index, _| {
            fs::remove_dir_all(index).unwrap();
            fs::create_dir(index).unwrap();
        }),
        ("data file emptied", |_, data| fs::write(data, "").unwrap()),
        ("cut to half", |_, data| {
            let bytes = fs::read(data).unwrap();
            let written = bytes.iter().rposition(|&byte| byte != 0).unwrap();
            fs::write(data, &bytes[..written / 2]).unwrap();
        }),
        ("not a directory", |index, _| {
            fs::remove_dir_all(index).unwrap();
            fs::write(index, "something else").unwrap();
        }),
    ];
    for (name, change) in changes {
        let bad = copied(dir.path());
        change(&bad.path().join("index"), &data(bad.path()));
        let (store, opened) = open(bad.path());
        assert!(
            matches!(&opened.notes[..], [Note::IndexRebuilt { turns: 60, .. }]),
            "{name}: {:?}",
            opened.notes
        );
        drop(store);
        holds_exactly(bad.path(), 60);
    }
}

#[test]
fn a_flipped_byte_anywhere_in_the_index_loses_nothing() {
    let dir = filled(60);
    let bytes = fs::read(dir.path().join("index").join("db")).unwrap();
    let written = bytes.iter().rposition(|&byte| byte != 0).unwrap() + 1;
    let mut chance = fastrand::Rng::with_seed(20270116);
    for round in 0..60 {
        let place = chance.usize(0..written);
        let bad = copied(dir.path());
        let mut bytes = bytes.clone();
        bytes[place] ^= 1 << chance.u8(0..8);
        fs::write(bad.path().join("index").join("db"), bytes).unwrap();
        eprintln!("round {round}: byte {place} of {written}");
        holds_exactly(bad.path(), 60);
    }
}

#[test]
fn an_index_ahead_of_the_journal_or_of_another_journal_is_rebuilt() {
    let older = filled(20);
    let newer = copied(older.path());
    let (mut store, _) = open(newer.path());
    fill(&mut store, 21..=30);
    drop(store);
    // an older journal put back under a newer index
    fs::remove_dir_all(newer.path().join("journal")).unwrap();
    copy(&older.path().join("journal"), &newer.path().join("journal"));
    let (store, opened) = open(newer.path());
    assert_eq!(opened.notes.len(), 1);
    let said = opened.notes[0].to_string();
    assert!(
        said.contains("stood at turn 30 where the journal ends at 20"),
        "{said}"
    );
    drop(store);
    holds_exactly(newer.path(), 20);

    // a longer journal with other turns under an index that is not ahead of it
    let other = tempfile::tempdir().unwrap();
    let (mut store, _) = Store::open(
        other.path(),
        Setup {
            salt: Box::new(|| [9; 16]),
            ..setup()
        },
    )
    .unwrap();
    fill(&mut store, 1..=25);
    drop(store);
    fs::remove_dir_all(other.path().join("index")).unwrap();
    fs::remove_file(other.path().join("index.closed")).unwrap();
    copy(&older.path().join("index"), &other.path().join("index"));
    let (store, opened) = open(other.path());
    let said = opened.notes[0].to_string();
    assert!(said.contains("was made from another turn"), "{said}");
    drop(store);
    holds_exactly(other.path(), 25);
}

#[test]
fn a_failed_write_or_sync_changes_nothing_and_later_commits_work() {
    let full = |room| Faults {
        room: Some(room),
        ..Faults::default()
    };
    let syncs = Faults {
        syncs: true,
        ..Faults::default()
    };
    let stuck = Faults {
        cuts: true,
        ..full(100)
    };
    for faults in [full(0), full(1), full(700), syncs, stuck] {
        let dir = tempfile::tempdir().unwrap();
        let disk = FaultyFiles::default();
        let faulty = Setup {
            disk: Box::new(disk.clone()),
            ..setup()
        };
        let (mut store, _) = Store::open(dir.path(), faulty).unwrap();
        fill(&mut store, 1..=3);
        let head = store.head();
        disk.fail(faults.clone());
        for _ in 0..3 {
            let prepared = store.prepare(&drafts(4..=6)).unwrap();
            let error = store.commit(prepared).unwrap_err();
            assert!(error.to_string().contains("nothing was logged"), "{error}");
            assert_eq!(store.head(), head, "{faults:?}");
            assert!(!store.seen(&draft(4).key.unwrap()).unwrap());
            assert_eq!(store.fold_anew().unwrap().lines.count(), 3);
        }
        disk.fail(Faults::default());
        fill(&mut store, 4..=30);
        drop(store);
        holds_exactly(dir.path(), 30);
    }
}

#[test]
fn a_disk_that_fails_while_a_segment_is_closed_loses_nothing() {
    for room in 0..60 {
        let dir = tempfile::tempdir().unwrap();
        let disk = FaultyFiles::default();
        let faulty = Setup {
            disk: Box::new(disk.clone()),
            segment_bytes: 1,
            index: IndexKind::Memory,
            ..setup()
        };
        let (mut store, _) = Store::open(dir.path(), faulty).unwrap();
        fill(&mut store, 1..=1);
        // room for part of the seal, all of it, or some of the line after it; then the new segment cannot be made
        disk.fail(Faults {
            room: Some(room * 20),
            opens: room % 2 == 0,
            ..Faults::default()
        });
        let prepared = store.prepare(&[draft(2)]).unwrap();
        let logged = store.commit(prepared).is_ok();
        disk.fail(Faults::default());
        if !logged {
            fill(&mut store, 2..=2);
        }
        fill(&mut store, 3..=4);
        drop(store);
        holds_exactly(dir.path(), 4);
    }
}

#[test]
fn a_failed_sync_takes_back_what_was_written_unsynced_before() {
    let dir = tempfile::tempdir().unwrap();
    let disk = FaultyFiles::default();
    let faulty = Setup {
        disk: Box::new(disk.clone()),
        ..setup()
    };
    let (mut store, _) = Store::open(dir.path(), faulty).unwrap();
    fill(&mut store, 1..=2);
    let prepared = store.prepare(&[draft(3)]).unwrap();
    assert_eq!(store.commit_unsynced(prepared).unwrap().head.seq, 3);
    store.follow().unwrap();
    disk.fail(Faults {
        syncs: true,
        ..Faults::default()
    });
    let prepared = store.prepare(&[draft(4)]).unwrap();
    assert!(store.commit(prepared).is_err());
    assert_eq!(store.head().seq, 2);
    assert!(!store.seen(&draft(3).key.unwrap()).unwrap());
    disk.fail(Faults::default());
    fill(&mut store, 3..=5);
    drop(store);
    holds_exactly(dir.path(), 5);
}

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
fn a_directory_that_cannot_be_used_is_refused_in_one_sentence() {
    let dir = filled(3);
    let (_store, _) = open(dir.path());
    let said = error_of(dir.path()).to_string();
    let process = std::process::id();
    assert!(
        said.ends_with(&format!(
            "is in use by another hosebib (process {process}): stop that one first"
        )),
        "{said}"
    );

    let missing = dir.path().join("nowhere");
    let said = error_of(&missing).to_string();
    assert!(
        said.contains("nowhere` does not exist: check the path"),
        "{said}"
    );

    let file = dir.path().join("format");
    assert!(error_of(&file).to_string().contains("is not a directory"));

    let foreign = tempfile::tempdir().unwrap();
    fs::write(foreign.path().join("letter.txt"), "dear all").unwrap();
    let said = error_of(foreign.path()).to_string();
    assert!(
        said.contains("is not a hosebib data directory (it holds `letter.txt`)"),
        "{said}"
    );
    assert_eq!(fs::read_dir(foreign.path()).unwrap().count(), 1);

    let newer = filled(1);
    fs::write(newer.path().join("format"), "hosebib data 7\n").unwrap();
    let said = error_of(newer.path()).to_string();
    assert!(
        said.contains("was written by a newer hosebib (version 7, this one knows 1)"),
        "{said}"
    );

    let empty = tempfile::tempdir().unwrap();
    assert!(matches!(read_only(empty.path()), Err(StoreError::Empty(_))));
}

#[test]
fn a_line_of_a_newer_release_is_refused_and_left_alone() {
    let dir = filled(3);
    let path = segments(dir.path()).pop().unwrap();
    let mut text = fs::read_to_string(&path).unwrap();
    text.push_str("{\"seq\":4,\"version\":2,\"shape\":\"unheard of\"}\n");
    fs::write(&path, &text).unwrap();
    let error = error_of(dir.path());
    assert!(
        matches!(error, StoreError::Newer { found: 2, .. }),
        "{error}"
    );
    assert!(matches!(verify(dir.path()), Err(StoreError::Newer { .. })));
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
}

#[test]
fn a_read_only_directory_is_refused_in_one_sentence_but_can_be_verified() {
    let dir = filled(12);
    let Some(_mounted) = mounted_read_only(dir.path()) else {
        eprintln!("not checked: this user can neither be denied writing nor mount read-only");
        return;
    };
    let said = error_of(dir.path()).to_string();
    assert!(
        said.contains("is read-only: give this user the right"),
        "{said}"
    );
    assert_eq!(verify(dir.path()).unwrap().turns, 12);
}

/// Takes the right to write away, where this user can be denied it.
fn mounted_read_only(dir: &Path) -> Option<ReadOnly> {
    use std::os::unix::fs::PermissionsExt;
    let set = |mode: u32, file_mode: u32| {
        fs::set_permissions(dir, fs::Permissions::from_mode(mode)).unwrap();
        for name in ["lock", "format"] {
            fs::set_permissions(dir.join(name), fs::Permissions::from_mode(file_mode)).unwrap();
        }
    };
    set(0o555, 0o444);
    let guard = ReadOnly(dir.to_owned());
    fs::OpenOptions::new()
        .write(true)
        .open(dir.join("lock"))
        .is_err()
        .then_some(guard)
}

struct ReadOnly(PathBuf);

impl Drop for ReadOnly {
    fn drop(&mut self) {
        use std::os::unix::fs::PermissionsExt;
        // so that the temporary directory can be deleted
        let _ = fs::set_permissions(&self.0, fs::Permissions::from_mode(0o755));
    }
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

/// Names the small file system that a child process fills.
const SMALL_DISK: &str = "HOSEBIB_TEST_SMALL_DISK";

#[test]
fn a_full_disk_is_survived_and_recovered_from() {
    let dir = tempfile::tempdir().unwrap();
    // a mount of its own, in a namespace of its own, needs no rights on most systems
    let mount = "mount -t tmpfs -o size=6m tmpfs \"$1\" 2>/dev/null || exit 77; shift; exec \"$@\"";
    let outcome = std::process::Command::new("unshare")
        .args(["--map-root-user", "--mount", "sh", "-c", mount, "sh"])
        .arg(dir.path())
        .arg(std::env::current_exe().unwrap())
        .args(["--exact", "store::the_child_fills_its_disk", "--nocapture"])
        .env(SMALL_DISK, dir.path())
        .output();
    match outcome {
        Ok(output) if output.status.success() => {
            let said = String::from_utf8_lossy(&output.stdout).into_owned();
            assert!(said.contains("1 passed"), "{said}");
            assert!(said.contains("full after"), "{said}");
        }
        Ok(output) if output.status.code() == Some(101) => {
            panic!("{}", String::from_utf8_lossy(&output.stderr));
        }
        _ => eprintln!("not checked: this system lets nobody mount a small file system"),
    }
}

#[test]
fn the_child_fills_its_disk() {
    let Some(disk) = std::env::var_os(SMALL_DISK).map(PathBuf::from) else {
        return; // only ever run by the test above
    };
    let data = disk.join("data");
    fs::create_dir(&data).unwrap();
    fs::write(disk.join("ballast"), vec![1; 1 << 20]).unwrap();
    let (mut store, _) = open(&data);
    let mut last = 0;
    let error = loop {
        // the index may meet the full disk first; that costs no turn
        let _ = store.follow();
        let committed = store
            .prepare(&drafts(last + 1..=last + 5))
            .and_then(|prepared| store.commit(prepared));
        match committed {
            Ok(_) => last += 5,
            Err(error) => break error,
        }
        assert!(last < 100_000, "the disk never filled");
    };
    println!("full after {last} turns: {error}");
    assert_eq!(store.head().seq, last);
    assert_eq!(verify(&data).unwrap().turns, last);
    // whoever fills the rest makes sure that the journal meets the full disk too
    let mut filler = fs::File::create(disk.join("filler")).unwrap();
    while std::io::Write::write_all(&mut filler, &[1; 512]).is_ok() {}
    for _ in 0..3 {
        let committed = store
            .prepare(&drafts(last + 1..=last + 50))
            .and_then(|prepared| store.commit(prepared));
        println!("while full: {}", committed.unwrap_err());
        assert_eq!(store.head().seq, last);
    }
    fs::remove_file(disk.join("ballast")).unwrap();
    fill(&mut store, last + 1..=last + 50);
    store.follow().unwrap();
    drop(store);
    holds_exactly(&data, last + 50);
}
