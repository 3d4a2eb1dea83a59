//! A season of messages through the clerk and the real desk: memory stays flat, nothing is left waiting.
//!
//! `HOSEBIB_SOAK` sets how many messages (200 unless told); the figures are printed.

use std::collections::BTreeSet;
use std::ops::Range;
use std::time::{Duration, Instant};

use chrono::{DateTime, TimeDelta, Utc};
use fastrand::Rng;
use hosebib::book::MessageKey;
use hosebib::desk::{Desk, Inbound, Sender};
use hosebib::fleet::{self, FleetFiles};
use hosebib::store::Files;

use super::{Post, resident_kb, start};

const TRAILERS: usize = 60;
const PEOPLE: usize = 20;
/// How much later each message is written than the one before.
const APART: TimeDelta = TimeDelta::seconds(20);
/// From so many messages on the growth of memory is judged.
const JUDGED_FROM: usize = 100_000;

/// Half of the trailers stand at a long job, the others in the yard.
fn company() -> fleet::Fleet {
    let trailers: String = (1..=TRAILERS)
        .map(|n| format!("[[trailer]]\nid = \"{n}\"\n"))
        .collect();
    let crew: String = (0..PEOPLE)
        .map(|n| {
            let role = if n == 0 { "dispatcher" } else { "driver" };
            format!("[[crew]]\nid = \"p{n}\"\nname = \"P{n}\"\nrole = \"{role}\"\nlanguage = \"en\"\nchat_user = {}\n", 500 + n)
        })
        .collect();
    let away: Vec<String> = (1..=TRAILERS / 2).map(|n| format!("\"{n}\"")).collect();
    let jobs = format!(
        "[[site]]\nid = \"alder-yard\"\n[[job]]\nsite = \"alder-yard\"\ntrailers = [{}]\nfrom = 2027-01-17T06:00:00\nto = 2028-06-01T18:00:00\nguests = 900\n",
        away.join(", ")
    );
    let texts = FleetFiles {
        fleet: trailers,
        jobs,
        crew,
        ..FleetFiles::default()
    };
    fleet::read(&texts).expect("a sound fleet")
}

fn words(chance: &mut Rng) -> String {
    let unit = chance.usize(1..=TRAILERS);
    let quarter = chance.usize(0..=4);
    match chance.u8(..10) {
        0..4 => format!("{unit} waste {quarter}/4 fresh 1/2"),
        4 => format!("{unit} pressure {}", chance.u8(20..110)),
        5 => format!("{unit} pumped {} gal", chance.usize(100..300)),
        6 => format!("{unit} volts {}", chance.u8(100..126)),
        7 => format!("status {unit}"),
        8 => format!("done {}", chance.u32(1..5_000)),
        _ => format!("the left door of {unit} sticks a bit"),
    }
}

/// Lets the crew write, a message after the other, and the network accept what they are told.
fn write(post: &Post, numbers: Range<usize>, at: &mut DateTime<Utc>, chance: &mut Rng) {
    let batch = numbers.map(|number| {
        *at += APART;
        let user = 500 + chance.i64(0..PEOPLE as i64);
        Inbound {
            chat: Some(user),
            ..Inbound::says(
                MessageKey::new("telegram", user, number as i64, 0),
                Sender::ChatUser(user),
                *at,
                words(chance),
            )
        }
    });
    let batch = batch.collect();
    *post.clock.lock().unwrap() = *at;
    post.window.batch_blocking(batch).unwrap();
    post.accept();
}

/// `HOSEBIB_RETAIN` sets how many messages were written before (100 unless told); the longest wait of one is printed.
#[test]
fn people_write_on_while_old_texts_go() {
    let number = std::env::var("HOSEBIB_RETAIN").ok();
    let before: usize = number.and_then(|text| text.parse().ok()).unwrap_or(100);
    let dir = tempfile::tempdir().unwrap();
    let post = Post::with::<Desk>(dir.path(), Files, 5_000);
    let keeps = fleet::Fleet {
        keep_texts_days: Some(2),
        ..company()
    };
    post.window.load_blocking("soak".into(), keeps).unwrap();
    let mut chance = Rng::with_seed(12);
    let mut at: DateTime<Utc> = start();
    for first in (0..before).step_by(20) {
        write(&post, first..(first + 20).min(before), &mut at, &mut chance);
    }
    at += TimeDelta::days(3);
    *post.clock.lock().unwrap() = at;
    let window = post.window.clone();
    let began = Instant::now();
    let going = std::thread::spawn(move || super::retention::retain_through(&window));
    let (mut numbers, mut longest) = (before.., Duration::ZERO);
    while numbers.start < before + 10 || !going.is_finished() {
        let number = numbers.next().unwrap();
        let asked = Instant::now();
        write(&post, number..number + 1, &mut at, &mut chance);
        longest = longest.max(asked.elapsed());
        std::thread::sleep(Duration::from_millis(5));
    }
    let texts = going.join().unwrap().texts;
    println!(
        "{texts} texts of {before} messages gone in {:.1} s; one of {} written meanwhile waited {:.2} s at the most",
        began.elapsed().as_secs_f64(),
        numbers.start - before,
        longest.as_secs_f64()
    );
    assert!(texts > before, "{texts} texts of messages and answers");
    post.stop();
    assert_eq!(hosebib::store::verify(dir.path()).unwrap().damage, []);
    let (mut emptied, mut kept) = (0, 0);
    for line in hosebib::store::read_only(dir.path()).unwrap() {
        for record in line.unwrap().records {
            if record["record"] == "message" {
                let text = record["text"]["personal"].as_str();
                *(if text.is_some() {
                    &mut kept
                } else {
                    &mut emptied
                }) += 1;
            }
        }
    }
    assert_eq!((emptied, kept), (before, numbers.start - before));
}

#[test]
fn a_season_of_messages_keeps_memory_flat() {
    let number = std::env::var("HOSEBIB_SOAK").ok();
    let messages: usize = number.and_then(|text| text.parse().ok()).unwrap_or(200);
    let dir = tempfile::tempdir().unwrap();
    let post = Post::with::<Desk>(dir.path(), Files, 5_000);
    post.window.load_blocking("soak".into(), company()).unwrap();
    let mut chance = Rng::with_seed(11);
    let began = Instant::now();
    let mut resident = Vec::new();
    let mut at: DateTime<Utc> = start();
    for first in (0..messages).step_by(20) {
        write(
            &post,
            first..(first + 20).min(messages),
            &mut at,
            &mut chance,
        );
        if first % (messages / 20).max(100) < 20 {
            resident.push(resident_kb());
            println!(
                "{first} messages, {} kB resident, {:.0} s",
                resident_kb(),
                began.elapsed().as_secs_f64()
            );
        }
    }
    post.window.show_blocking().unwrap();
    post.accept();
    // what the clock brings may put out a last word meanwhile
    let shown = post.window.show_blocking().unwrap();
    let waiting = shown["waiting"].as_u64().unwrap();
    assert!(waiting < 50, "{waiting} messages wait");
    post.stop();
    let lines = hosebib::store::read_only(dir.path()).unwrap();
    let mut recorded = 0;
    let mut keys = BTreeSet::new();
    for key in lines.filter_map(|line| line.unwrap().key) {
        recorded += 1;
        if messages < JUDGED_FROM {
            keys.insert(key);
        }
    }
    assert_eq!(recorded, messages, "each once");
    assert!(keys.is_empty() || keys.len() == messages);
    println!(
        "{messages} messages, {} kB resident at the end",
        resident_kb()
    );
    if messages >= JUDGED_FROM {
        let (early, last) = (resident[resident.len() / 4], resident[resident.len() - 1]);
        assert!(
            last < early + early / 2,
            "{early} kB after a quarter, {last} kB at the end"
        );
    }
}
