//! Disks that fail or fill up: nothing of a failed batch counts, and later ones work.

use std::fs;
use std::path::PathBuf;

use hosebib::store::*;

use super::*;

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
        let (mut store, disk) = on_faulty_disk(dir.path());
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
            ..in_memory()
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
        holds_exactly_with(in_memory(), dir.path(), 4);
    }
}

#[test]
fn a_failed_sync_takes_back_what_was_written_unsynced_before() {
    let dir = tempfile::tempdir().unwrap();
    let (mut store, disk) = on_faulty_disk(dir.path());
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
        .args([
            "--exact",
            "store::disk::the_child_fills_its_disk",
            "--nocapture",
        ])
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
            .prepare(&drafts(last + 1..=last + 20))
            .and_then(|prepared| store.commit(prepared));
        match committed {
            Ok(_) => last += 20,
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
