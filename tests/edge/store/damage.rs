//! Torn and damaged journals: cut off where nothing was acknowledged, refused with the place everywhere else.

use std::fs;
use std::path::Path;

use hosebib::store::*;

use super::*;

#[test]
fn a_torn_last_line_is_cut_off_wherever_it_is_torn() {
    let dir = filled(2);
    let last = segments(dir.path()).pop().unwrap();
    let bytes = fs::read(&last).unwrap();
    let start = bytes[..bytes.len() - 1]
        .iter()
        .rposition(|&byte| byte == b'\n')
        .map_or(0, |at| at + 1);
    // copied without its index, which is most of it
    let bare = copied(dir.path());
    fs::remove_dir_all(bare.path().join("index")).unwrap();
    for length in start + 1..bytes.len() - 1 {
        let torn = copied(bare.path());
        let path = torn.path().join("journal").join(last.file_name().unwrap());
        fs::write(&path, &bytes[..length]).unwrap();
        let (mut store, opened) = Store::open(torn.path(), in_memory()).unwrap();
        let expected = Note::TornLine {
            file: path,
            bytes: (length - start) as u64,
        };
        assert_eq!(opened.notes, [expected], "cut to {length}");
        assert_eq!(opened.lines.count(), 1);
        fill(&mut store, 2..=2);
        drop(store);
        assert_eq!(verify(torn.path()).unwrap().turns, 2);
    }
    // only the newline is missing, or something else stands in its place: the turn itself is whole and stays
    for ending in [&b""[..], b"\x0b"] {
        let torn = copied(dir.path());
        let path = torn.path().join("journal").join(last.file_name().unwrap());
        fs::write(&path, [&bytes[..bytes.len() - 1], ending].concat()).unwrap();
        let (_, opened) = open(torn.path());
        assert_eq!(opened.notes, [Note::NewlineMended { file: path }]);
        holds_exactly(torn.path(), 2);
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
            assert!(said.contains("restore it from a backup"), "{said}");
        }
    }
}

#[test]
fn damage_before_the_snapshot_is_found_by_verify_by_a_rebuild_and_by_reading_it() {
    let dir = filled_with_snapshot(60);
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
    let dir = tempfile::tempdir().unwrap();
    // closed after a line or two: short, since each of its bytes has its turn
    let short = Setup {
        segment_bytes: 1_000,
        ..in_memory()
    };
    let (mut store, _) = Store::open(dir.path(), short).unwrap();
    for seq in 1..=3 {
        fill(&mut store, seq..=seq);
    }
    drop(store);
    let path = segments(dir.path())[0].clone();
    assert!(segments(dir.path()).len() > 1, "the first is closed");
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
    let dir = filled_with_snapshot(60);
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
        ..in_memory()
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
fn a_journal_that_is_gone_altogether_is_refused() {
    let dir = filled(30);
    fs::remove_dir_all(dir.path().join("journal")).unwrap();
    let said = error_of(dir.path()).to_string();
    assert!(
        said.contains("all its 30 turns are missing: restore it from a backup"),
        "{said}"
    );
}

#[test]
fn the_command_says_every_damaged_place_and_exits_1() {
    let verified = |dir: &Path| {
        let output = std::process::Command::new(env!("CARGO_BIN_EXE_hosebib"))
            .args(["verify", "--data"])
            .arg(dir)
            .output()
            .unwrap();
        let said = String::from_utf8(output.stdout).unwrap();
        let errors = String::from_utf8(output.stderr).unwrap();
        (output.status.code(), said, errors)
    };
    let dir = filled(30);
    let (code, said, _) = verified(dir.path());
    assert_eq!(code, Some(0));
    assert!(
        said.contains("30 turns in 5 segments, the last at 2027-01-16T12:30:00"),
        "{said}"
    );
    assert!(said.ends_with("nothing is damaged\n"), "{said}");

    let paths = segments(dir.path());
    for path in [&paths[0], &paths[3]] {
        let mut bytes = fs::read(path).unwrap();
        let place = bytes.iter().position(|&byte| byte == b'\n').unwrap() + 40;
        bytes[place] ^= 8;
        fs::write(path, bytes).unwrap();
    }
    let (code, said, _) = verified(dir.path());
    assert_eq!(code, Some(1));
    for path in [&paths[0], &paths[3]] {
        let place = format!("damaged: `{}` line 2: ", path.display());
        assert!(said.contains(&place), "{said}");
    }
    assert!(
        said.ends_with("2 places are damaged: restore each file named above from a backup\n"),
        "{said}"
    );

    let (code, _, errors) = verified(&dir.path().join("nowhere"));
    assert_eq!(code, Some(1));
    assert!(
        errors.contains("does not exist: check the path"),
        "{errors}"
    );
}

#[test]
fn what_a_power_cut_leaves_of_an_unfinished_write_is_cut_off() {
    let dir = filled(9);
    let last = segments(dir.path()).pop().unwrap();
    let bytes = fs::read(&last).unwrap();
    // a file system may have made room for a write whose bytes never came
    for left in [&[0; 700][..], b"{\"seq\":10,\"ver\0\0\0\0\0\0\0\0"] {
        fs::write(&last, [&bytes, left].concat()).unwrap();
        let (_, opened) = open(dir.path());
        assert!(
            matches!(opened.notes[..], [Note::TornLine { .. }]),
            "{:?}",
            opened.notes
        );
        holds_exactly(dir.path(), 9);
    }
}
