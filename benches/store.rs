//! The store's budgets, printed as a table: a commit against a bare append and fdatasync of the same bytes in the same
//! run, and opening with a long history behind a snapshot.
//!
//! `cargo bench --bench store`. `HOSEBIB_BENCH_RECORDS` sets the length of the history (1,000,000 turns unless told),
//! `HOSEBIB_BENCH_DIR` where it is written (the temporary directory unless told).

#![allow(clippy::print_stdout)]

use std::fs::{File, OpenOptions};
use std::io::Write;
use std::path::Path;
use std::time::{Duration, Instant};

use chrono::DateTime;
use hosebib::store::{Draft, IndexEntries, Line, Setup, Store, StoreError};
use serde_json::json;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    // `cargo test` runs benches too, with this argument; there is nothing to test here
    if !std::env::args().any(|argument| argument == "--bench") {
        return Ok(());
    }
    let base = std::env::var_os("HOSEBIB_BENCH_DIR");
    let scratch = || match &base {
        Some(base) => tempfile::tempdir_in(base),
        None => tempfile::tempdir(),
    };
    for (name, batch, rounds, budget) in [
        ("commit, one turn", 1, 2_000, 1.3),
        ("commit, batch of 100", 100, 300, 1.5),
    ] {
        let dir = scratch()?;
        commit_against_bare(dir.path(), name, batch, rounds, budget)?;
    }
    let records = std::env::var("HOSEBIB_BENCH_RECORDS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(1_000_000);
    let dir = scratch()?;
    opening(dir.path(), records)?;
    Ok(())
}

fn setup() -> Setup {
    let mut next = 0u128;
    let salt = move || {
        next += 1;
        next.to_be_bytes()
    };
    Setup::new(Box::new(salt), Box::new(entries), 1)
}

fn entries(line: &Line) -> IndexEntries {
    let unit = line.records[0]["unit"].as_str().unwrap_or_default();
    IndexEntries {
        seen: line.key.clone(),
        check_ins: vec![(
            unit.to_owned(),
            line.at.timestamp_millis(),
            line.records[0].clone(),
        )],
        fleet: None,
    }
}

fn draft(number: u64) -> Draft {
    Draft {
        key: Some(format!("tg:-100200300{}:{number}:0", number % 60)),
        at: DateTime::from_timestamp(1_800_000_000 + number as i64 * 20, 0)
            .expect("the century is not over"),
        records: vec![json!({
            "check-in": {"from": "dana", "readings": {"pressure_psi": 95.0, "waste_pct": 75.0, "air_f": -5.0}},
            "unit": format!("{}", number % 200),
            "said": {"personal": "unit 12 pressure 95 tank 3/4 temp -5"},
        })],
        outgoing: vec![json!({
            "to": "dana",
            "text": {"personal": "WARNING 12: water 95 psi, limit 60. Is that before or after the regulator?"},
        })],
    }
}

fn commit_against_bare(
    dir: &Path,
    name: &str,
    batch: u64,
    rounds: u64,
    budget: f64,
) -> Result<(), Box<dyn std::error::Error>> {
    let data = dir.join("data");
    std::fs::create_dir(&data)?;
    let (mut store, _) = Store::open(&data, setup())?;
    let path = dir.join("bare");
    let mut bare = OpenOptions::new().append(true).create(true).open(path)?;
    let (mut prepares, mut bares, mut commits) = (Vec::new(), Vec::new(), Vec::new());
    let mut bytes = 0;
    for round in 0..rounds {
        let drafts: Vec<Draft> = (round * batch..(round + 1) * batch).map(draft).collect();
        let start = Instant::now();
        let prepared = store.prepare(&drafts)?;
        prepares.push(start.elapsed());
        bytes = prepared.bytes().len();
        // whichever goes second may find the disk warmer, so they take turns
        if round % 2 == 0 {
            bares.push(append(&mut bare, prepared.bytes())?);
            commits.push(timed(|| store.commit(prepared))?);
        } else {
            let copy = prepared.bytes().to_vec();
            commits.push(timed(|| store.commit(prepared))?);
            bares.push(append(&mut bare, &copy)?);
        }
        store.follow()?;
    }
    let (bare, commit) = (Spread::of(bares), Spread::of(commits));
    println!("{name} ({bytes} bytes, {rounds} rounds)");
    println!("  prepare             {}", Spread::of(prepares));
    println!("  append + fdatasync  {bare}");
    println!("  commit              {commit}");
    println!(
        "  ratio               median {:.2}, mean {:.2}   (budget {budget})",
        commit.median / bare.median,
        commit.mean / bare.mean
    );
    Ok(())
}

fn append(file: &mut File, bytes: &[u8]) -> std::io::Result<Duration> {
    let start = Instant::now();
    file.write_all(bytes)?;
    file.sync_data()?;
    Ok(start.elapsed())
}

fn timed<T>(work: impl FnOnce() -> Result<T, StoreError>) -> Result<Duration, StoreError> {
    let start = Instant::now();
    work()?;
    Ok(start.elapsed())
}

fn opening(dir: &Path, records: u64) -> Result<(), Box<dyn std::error::Error>> {
    let start = Instant::now();
    let (mut store, _) = Store::open(dir, setup())?;
    let drafts: Vec<u64> = (0..records).collect();
    for chunk in drafts.chunks(1_000) {
        let batch: Vec<Draft> = chunk.iter().copied().map(draft).collect();
        let prepared = store.prepare(&batch)?;
        store.commit_unsynced(prepared)?;
        store.sync()?;
        store.follow()?;
    }
    let head = store.head();
    store.save_snapshot(head, vec![b'x'; 8 << 20])?;
    for number in records..records + 100 {
        let prepared = store.prepare(&[draft(number)])?;
        store.commit(prepared)?;
    }
    drop(store);
    println!(
        "{records} turns behind an 8 MiB snapshot, 100 after it: written in {:.1?}, journal {} MB, index {} MB",
        start.elapsed(),
        size(&dir.join("journal"))? >> 20,
        size(&dir.join("index"))? >> 20,
    );
    let mut opens = Vec::new();
    for _ in 0..5 {
        let start = Instant::now();
        let (mut store, opened) = Store::open(dir, setup())?;
        let after = opened.lines.count();
        opens.push(start.elapsed());
        let start = Instant::now();
        let check_ins = store.check_ins("12", i64::MIN..i64::MAX, 50)?;
        println!(
            "  opened with {after} turns to fold, notes {:?}; the last {} check-ins of a unit in {:.1?}; resident {}",
            opened.notes,
            check_ins.len(),
            start.elapsed(),
            resident()
        );
    }
    println!("  opening             {}   (budget 1 s)", Spread::of(opens));
    std::fs::rename(dir.join("index"), dir.join("index.away"))?;
    let start = Instant::now();
    let (store, opened) = Store::open(dir, setup())?;
    println!(
        "  rebuilding the index {:.1?} ({} note)",
        start.elapsed(),
        opened.notes.len()
    );
    drop((store, opened));
    let start = Instant::now();
    let report = hosebib::store::verify(dir)?;
    println!(
        "  verify              {:.1?}, {} turns, {} damaged",
        start.elapsed(),
        report.turns,
        report.damage.len()
    );
    Ok(())
}

fn size(dir: &Path) -> std::io::Result<u64> {
    let mut total = 0;
    for entry in std::fs::read_dir(dir)? {
        let entry = entry?;
        total += if entry.file_type()?.is_dir() {
            size(&entry.path())?
        } else {
            entry.metadata()?.len()
        };
    }
    Ok(total)
}

fn resident() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    status
        .lines()
        .find_map(|line| line.strip_prefix("VmRSS:"))
        .map_or("unknown".into(), |value| value.trim().into())
}

/// How durations are spread, in microseconds.
struct Spread {
    median: f64,
    p99: f64,
    mean: f64,
}

impl Spread {
    fn of(mut times: Vec<Duration>) -> Self {
        times.sort();
        let micros = |time: Duration| time.as_secs_f64() * 1e6;
        let total: Duration = times.iter().sum();
        Spread {
            median: micros(times[times.len() / 2]),
            p99: micros(times[times.len() * 99 / 100]),
            mean: micros(total) / times.len() as f64,
        }
    }
}

impl std::fmt::Display for Spread {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "median {:>9.1} µs, p99 {:>9.1} µs, mean {:>9.1} µs",
            self.median, self.p99, self.mean
        )
    }
}
