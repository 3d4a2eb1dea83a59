//! The store under SIGKILL: a child process commits turns and says on a pipe what was acknowledged, the parent kills it at
//! random instants and then looks for every acknowledged turn.
//!
//! `HOSEBIB_KILLS=200` sets how often (10 unless told), `HOSEBIB_KILL_SEED` repeats a run.

use std::io::{BufRead, BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use hosebib::store::{Line, Store, read_only, verify};
use serde_json::json;

use crate::store::{draft, filled, holds_exactly, redact, same_as_drafted, setup};

/// Names the data directory to the child.
const DIRECTORY: &str = "HOSEBIB_TEST_KILL_DIRECTORY";

/// Seeds the child.
const SEED: &str = "HOSEBIB_TEST_KILL_CHILD_SEED";

/// A directory serves so many kills; the next starts empty, so that a run's length stays linear.
const KILLS_A_DIRECTORY: u32 = 10;

#[test]
fn a_kill_at_any_instant_loses_nothing_acknowledged_and_halves_no_turn() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse().ok());
    let kills = number("HOSEBIB_KILLS").map_or(10, |kills: u64| u32::try_from(kills).unwrap());
    let seed = number("HOSEBIB_KILL_SEED").unwrap_or_else(|| fastrand::u64(..));
    eprintln!("{kills} kills, HOSEBIB_KILL_SEED={seed}");
    let mut chance = fastrand::Rng::with_seed(seed);
    let mut figures = Figures::default();
    let mut dir = tempfile::tempdir().unwrap();
    let mut acknowledged = 0;
    for kill in 0..kills {
        if kill % KILLS_A_DIRECTORY == 0 {
            dir = tempfile::tempdir().unwrap();
            acknowledged = 0;
        }
        let before = acknowledged;
        acknowledged = acknowledged.max(killed_child(dir.path(), &mut chance));
        figures.acknowledged += acknowledged - before;
        let report = verify(dir.path());
        let Ok(report) = report else {
            // killed before it had made a data directory of it
            assert_eq!(acknowledged, 0);
            figures.early += 1;
            continue;
        };
        assert_eq!(report.damage, [], "kill {kill}");
        assert!(
            report.turns >= acknowledged,
            "kill {kill}: turn {acknowledged} was acknowledged, {} are there",
            report.turns
        );
        let lines: Vec<Line> = read_only(dir.path()).unwrap().map(Result::unwrap).collect();
        for (seq, line) in (1..).zip(&lines) {
            same_as_drafted(line, seq);
        }
        figures.unacknowledged += report.turns - acknowledged;
        figures.torn += u32::from(report.unfinished > 0);
        if kill % KILLS_A_DIRECTORY == KILLS_A_DIRECTORY - 1 {
            holds_exactly(dir.path(), report.turns);
        }
    }
    eprintln!("{kills} kills: {figures}, lost 0, halved 0");
    assert!(figures.acknowledged > 0);
}

/// What a run met.
#[derive(Debug, Default)]
struct Figures {
    acknowledged: u64,
    /// Written whole, but killed before the acknowledgement.
    unacknowledged: u64,
    /// A last line was torn.
    torn: u32,
    /// Killed before there was a data directory.
    early: u32,
}

impl std::fmt::Display for Figures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "{} turns acknowledged, {} written and not acknowledged, {} torn lines, {} killed at the start",
            self.acknowledged, self.unacknowledged, self.torn, self.early
        )
    }
}

/// Starts a child, kills it after a random while, and returns the last turn that it acknowledged.
fn killed_child(dir: &Path, chance: &mut fastrand::Rng) -> u64 {
    let said = killed(dir, "kill::the_child_commits_until_it_is_killed", chance);
    said.lines()
        // a line that the kill cut short has lost its end mark
        .filter_map(|line| {
            line.strip_prefix("ack ")?
                .strip_suffix(" end")?
                .parse()
                .ok()
        })
        .max()
        .unwrap_or(0)
}

/// Runs one of the children below, kills it after a random while, and returns what it had printed.
fn killed(dir: &Path, child: &str, chance: &mut fastrand::Rng) -> String {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", child, "--nocapture"])
        .env(DIRECTORY, dir)
        .env(SEED, chance.u64(..).to_string())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut said = String::new();
    let mut out = BufReader::new(child.stdout.take().unwrap());
    if chance.u8(0..4) > 0 {
        // mostly while it works, sometimes while it opens
        while !said.ends_with("ready\n") && out.read_line(&mut said).unwrap() > 0 {}
    }
    std::thread::sleep(Duration::from_micros(chance.u64(0..80_000)));
    child.kill().unwrap();
    let output = child.wait_with_output().unwrap();
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(!errors.contains("panicked"), "{errors}");
    out.read_to_string(&mut said).unwrap();
    said
}

#[test]
fn a_kill_while_texts_are_emptied_breaks_no_chain_and_loses_no_turn() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse().ok());
    let kills = number("HOSEBIB_KILLS").map_or(5, |kills| kills / 2);
    let seed = number("HOSEBIB_KILL_SEED").unwrap_or_else(|| fastrand::u64(..));
    eprintln!("{kills} kills, HOSEBIB_KILL_SEED={seed}");
    let mut chance = fastrand::Rng::with_seed(seed);
    let mut dir = filled(TO_EMPTY);
    let mut emptied = 0;
    for kill in 0..kills {
        if kill % 10 == 9 {
            dir = filled(TO_EMPTY);
        }
        killed(dir.path(), "kill::the_child_empties_texts", &mut chance);
        let report = verify(dir.path()).unwrap();
        assert_eq!(
            (report.turns, report.damage),
            (TO_EMPTY, vec![]),
            "kill {kill}"
        );
        for (seq, line) in (1..).zip(read_only(dir.path()).unwrap()) {
            let mut line = line.unwrap();
            if line.records[0]["said"] == json!({"personal": null}) {
                emptied += 1;
                line.records[0]["said"] = draft(seq).records[0]["said"].clone();
            }
            same_as_drafted(&line, seq);
        }
        if kill % 10 == 8 || kill + 1 == kills {
            let (mut store, _) = Store::open(dir.path(), setup()).unwrap();
            let found = store
                .check_ins("12", i64::MIN..i64::MAX, usize::MAX)
                .unwrap();
            assert_eq!(found.len() as u64, TO_EMPTY - TO_EMPTY / 3);
        }
    }
    eprintln!("{kills} kills: {emptied} texts found emptied, damaged 0, lost 0");
}

/// So many turns are there to empty.
const TO_EMPTY: u64 = 60;

#[test]
fn the_child_empties_texts() {
    let Some(dir) = std::env::var_os(DIRECTORY).map(PathBuf::from) else {
        return; // only ever run by the test above
    };
    let seed = std::env::var(SEED).unwrap().parse().unwrap();
    let mut chance = fastrand::Rng::with_seed(seed);
    let (mut store, _) = Store::open(&dir, setup()).unwrap();
    println!("ready");
    loop {
        let chosen = chance.u64(1..=TO_EMPTY);
        let edit = |line: &mut Line| {
            if line.seq == chosen {
                line.records[0]["said"] = json!({"personal": null});
            }
        };
        redact(&mut store, edit, Some(b"the book")).unwrap();
    }
}

#[test]
fn the_child_commits_until_it_is_killed() {
    let Some(dir) = std::env::var_os(DIRECTORY).map(PathBuf::from) else {
        return; // only ever run by the test above
    };
    let seed = std::env::var(SEED).unwrap().parse().unwrap();
    let mut chance = fastrand::Rng::with_seed(seed);
    let (mut store, opened) = Store::open(&dir, setup()).unwrap();
    let mut next = opened.snapshot.map_or(0, |snapshot| snapshot.head.seq) + 1;
    for line in opened.lines {
        same_as_drafted(&line.unwrap(), next);
        next += 1;
    }
    let mut out = std::io::stdout();
    writeln!(out, "ready").unwrap();
    loop {
        let count = chance.u64(1..=6);
        let batch: Vec<_> = (next..next + count).map(draft).collect();
        let prepared = store.prepare(&batch).unwrap();
        next += count;
        if chance.u8(0..5) == 0 {
            store.commit_unsynced(prepared).unwrap();
            continue;
        }
        let head = store.commit(prepared).unwrap().head;
        writeln!(out, "ack {} end", head.seq).unwrap();
        out.flush().unwrap();
        if chance.bool() {
            store.follow().unwrap();
        }
        if chance.u8(0..20) == 0 {
            store.save_snapshot(head, vec![7; 5_000]).unwrap();
        }
    }
}
