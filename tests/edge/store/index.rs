//! The lookup index: whatever happens to it, it is made again from the journal.

use std::fs;
use std::path::Path;
use std::time::Duration;

use hosebib::store::*;

use super::*;

#[test]
fn a_missing_emptied_or_cut_index_is_rebuilt() {
    let dir = filled_with_snapshot(60);
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
    let rounds = std::env::var("HOSEBIB_FLIPS").map_or(12, |text| text.parse().unwrap());
    for round in 0..rounds {
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

fn turn(seq: u64) -> Indexed {
    let unit = if seq.is_multiple_of(2) { "12" } else { "é" };
    Indexed {
        head: Head {
            seq,
            hash: Hash::of(&[&seq.to_be_bytes()]),
        },
        position: Position {
            segment: 1,
            offset: seq * 100,
            length: 99,
        },
        seen: Some(format!("tg:{seq}")),
        check_ins: vec![(unit.into(), -5 + seq as i64)],
        fleet: seq.is_multiple_of(5).then(|| seq.to_string().into_bytes()),
    }
}

#[test]
fn both_indexes_answer_alike() {
    let dir = tempfile::tempdir().unwrap();
    let sled = SledIndex::open(&dir.path().join("index")).unwrap();
    let indexes: [Box<dyn Index>; 2] = [Box::new(MemoryIndex::default()), Box::new(sled)];
    for mut index in indexes {
        assert_eq!(index.last(), Ok(Head::EMPTY));
        assert_eq!((index.fleet(), index.snapshot()), (Ok(None), Ok(None)));
        let turns: Vec<Indexed> = (1..=12).map(turn).collect();
        index.apply(&turns[..7]).unwrap();
        index.apply(&turns[7..]).unwrap();
        assert_eq!(index.last(), Ok(turns[11].head));
        assert_eq!(index.seen("tg:12"), Ok(true));
        assert_eq!(index.seen("tg:1"), Ok(true));
        assert_eq!(index.seen("tg:"), Ok(false));
        assert_eq!(index.fleet(), Ok(Some(b"10".to_vec())));
        let seqs = |unit: &str, range, limit| -> Vec<u64> {
            let found = index.check_ins(unit, range, limit).unwrap();
            found.iter().map(|found| found.seq).collect()
        };
        assert_eq!(seqs("12", i64::MIN..i64::MAX, 99), [2, 4, 6, 8, 10, 12]);
        assert_eq!(seqs("12", -1..5, 99), [4, 6, 8]);
        assert_eq!(seqs("12", -1..5, 2), [6, 8]);
        assert_eq!(seqs("é", -4..-3, 99), [1]);
        assert_eq!(seqs("1", i64::MIN..i64::MAX, 99), [0; 0]);
        #[allow(clippy::reversed_empty_ranges)]
        let backwards = 5..-1;
        assert_eq!(seqs("12", backwards, 99), [0; 0]);
        let snapshot = Snapshot {
            format: 2,
            head: turns[3].head,
            bytes: vec![3; 100_000],
        };
        index.save_snapshot(&snapshot).unwrap();
        assert_eq!(index.snapshot(), Ok(Some(snapshot)));
    }
}

#[test]
fn an_index_checked_bit_by_bit_while_it_grows_is_found_whole() {
    let dir = tempfile::tempdir().unwrap();
    let mut index = SledIndex::open(dir.path()).unwrap();
    for seq in 1..=40 {
        index.apply(&[turn(seq)]).unwrap();
    }
    drop(index);
    let mut index = SledIndex::open(dir.path()).unwrap();
    let mut seq = 40;
    while index.unchecked() > 0 {
        index.check(3).unwrap();
        seq += 1;
        assert!(seq < 200, "the check never catches up");
        index.apply(&[turn(seq)]).unwrap();
    }
    assert!(seq > 60, "the check was over at once");
}

/// Opens the index's own database, once its last owner has let go of it: a closed one is let go a moment later.
fn opened_beside(path: &Path) -> sled::Db {
    for _ in 0..250 {
        match sled::open(path) {
            Err(sled::Error::Io(error)) if error.to_string().contains("lock") => {
                std::thread::sleep(Duration::from_millis(20));
            }
            opened => return opened.unwrap(),
        }
    }
    panic!("{} stays locked", path.display());
}

#[test]
fn an_entry_too_few_too_many_or_changed_in_silence_is_found() {
    type Change = fn(&sled::Db);
    let changes: [Change; 3] = [
        |db| drop(db.remove("ktg:7").unwrap()),
        |db| drop(db.insert("ktg:99", &[0; 8]).unwrap()),
        |db| drop(db.insert("ktg:7", &[0; 8]).unwrap()),
    ];
    for change in changes {
        let dir = tempfile::tempdir().unwrap();
        let mut index = SledIndex::open(dir.path()).unwrap();
        index
            .apply(&(1..=20).map(turn).collect::<Vec<_>>())
            .unwrap();
        drop(index);
        let db = opened_beside(dir.path());
        change(&db);
        drop(db);
        let mut index = SledIndex::open(dir.path()).unwrap();
        let error = loop {
            match index.check(5) {
                Ok(()) => assert!(index.unchecked() > 0, "the check passed"),
                Err(error) => break error,
            }
        };
        assert!(matches!(error, IndexError::Damaged(_)), "{error}");
    }
}

#[test]
fn an_index_with_a_malformed_entry_is_set_aside_and_rebuilt() {
    let dir = filled(30);
    let db = opened_beside(&dir.path().join("index"));
    // the first of a unit's entries, now too short to say where its line stands
    let (key, _) = db.scan_prefix("c").next().unwrap().unwrap();
    db.insert(key, &[1]).unwrap();
    drop(db);
    let (_, opened) = open(dir.path());
    assert!(matches!(
        opened.notes[..],
        [Note::IndexRebuilt { turns: 30, .. }]
    ));
    assert!(dir.path().join("index.damaged-1").exists());
    holds_exactly(dir.path(), 30);
}
