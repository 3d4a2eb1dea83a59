//! Random lives of a store, held against what was acknowledged.
//!
//! `HOSEBIB_LIVES=200` sets how many (6 unless told), `HOSEBIB_LIFE_SEED` repeats a run.

use hosebib::store::*;

use super::*;

/// What the outside knows of the store.
#[derive(Debug, Default)]
struct Known {
    /// The last turn that was committed with a sync.
    certain: u64,
    /// The last turn that was committed at all.
    last: u64,
    snapshot: Option<u64>,
}

#[test]
fn whatever_happens_in_a_life_what_was_acknowledged_is_there() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse().ok());
    let lives = number("HOSEBIB_LIVES").unwrap_or(6);
    let seed = number("HOSEBIB_LIFE_SEED").unwrap_or(7);
    let mut chance = fastrand::Rng::with_seed(seed);
    for life in 0..lives {
        eprintln!("HOSEBIB_LIFE_SEED={seed}, life {life}");
        let dir = tempfile::tempdir().unwrap();
        let mut known = Known::default();
        for _ in 0..chance.u32(1..6) {
            live(dir.path(), &mut known, &mut chance);
            // a store closed in good order has brought everything to the disk
            known.certain = known.last;
        }
        holds_exactly(dir.path(), known.last);
    }
}

fn live(dir: &Path, known: &mut Known, chance: &mut fastrand::Rng) {
    let disk = FaultyFiles::default();
    let faulty = Setup {
        disk: Box::new(disk.clone()),
        segment_bytes: chance.u64(1..6_000),
        ..setup()
    };
    let (mut store, opened) = Store::open(dir, faulty).unwrap();
    assert_eq!(opened.notes, []);
    folds(opened, known);
    for _ in 0..chance.u32(0..25) {
        match chance.u8(0..12) {
            0..=3 => commit(&mut store, known, chance, true).unwrap(),
            4 => commit(&mut store, known, chance, false).unwrap(),
            5 => {
                store.sync().unwrap();
                known.certain = known.last;
            }
            6 => assert_eq!(store.follow().unwrap(), []),
            7 if known.certain == known.last && known.last > 0 => {
                let head = store.head();
                store.save_snapshot(head, vec![5; 100]).unwrap();
                known.snapshot = Some(head.seq);
            }
            8 => {
                disk.fail(Faults {
                    room: Some(chance.u64(0..3_000)),
                    cuts: chance.bool(),
                    opens: chance.bool(),
                    syncs: false,
                });
                // it may still fit
                let _ = commit(&mut store, known, chance, true);
                disk.fail(Faults::default());
            }
            9 => {
                disk.fail(Faults {
                    syncs: true,
                    cuts: chance.bool(),
                    ..Faults::default()
                });
                commit(&mut store, known, chance, true).unwrap_err();
                disk.fail(Faults::default());
                // closing a segment may have synced what came before; never less is there than was certain
                assert!((known.certain..=known.last).contains(&store.head().seq));
                known.last = store.head().seq;
            }
            10 => {
                let certain = known.certain;
                folds(store.fold_anew().unwrap(), known);
                assert!(known.last >= certain);
            }
            _ => {
                for seq in [1, known.last, known.last + 1] {
                    let key = draft(seq).key.unwrap();
                    assert_eq!(store.seen(&key).unwrap(), (1..=known.last).contains(&seq));
                }
            }
        }
        assert_eq!(store.head().seq, known.last);
    }
}

fn commit(
    store: &mut Store,
    known: &mut Known,
    chance: &mut fastrand::Rng,
    sync: bool,
) -> Result<(), StoreError> {
    let count = chance.u64(1..5);
    let prepared = store.prepare(&drafts(known.last + 1..=known.last + count))?;
    let ack = if sync {
        store.commit(prepared)?
    } else {
        store.commit_unsynced(prepared)?
    };
    known.last += count;
    assert_eq!(ack.head.seq, known.last);
    if sync {
        known.certain = known.last;
    }
    Ok(())
}

fn folds(opened: Opened, known: &Known) {
    let from = opened.snapshot.map(|snapshot| snapshot.head.seq);
    assert_eq!(from, known.snapshot);
    let mut next = from.unwrap_or(0) + 1;
    for line in opened.lines {
        same_as_drafted(&line.unwrap(), next);
        next += 1;
    }
    assert_eq!(next - 1, known.last);
}
