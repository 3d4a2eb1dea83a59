//! A season of messages through the clerk and the real desk: memory stays flat, nothing is left waiting.
//!
//! `HOSEBIB_SOAK` sets how many messages (200 unless told); the figures are printed.

use std::collections::BTreeSet;
use std::sync::{Arc, Mutex, mpsc};

use chrono::{DateTime, TimeDelta, Utc};
use fastrand::Rng;
use hosebib::book::MessageKey;
use hosebib::chat::clerk::{Clerk, Parcel, Setup};
use hosebib::chat::metrics::Metrics;
use hosebib::desk::{Desk, Inbound, Sender};
use hosebib::fleet::{self, FleetFiles};
use hosebib::store::Files;

use super::{resident_kb, start};

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

#[test]
fn a_season_of_messages_keeps_memory_flat() {
    let number = std::env::var("HOSEBIB_SOAK").ok();
    let messages: usize = number.and_then(|text| text.parse().ok()).unwrap_or(200);
    let dir = tempfile::tempdir().unwrap();
    let (out, parcels) = mpsc::channel::<Parcel>();
    let clock = Arc::new(Mutex::new(start()));
    let reading = clock.clone();
    let mut salt = 0_u128;
    let setup = Setup {
        salt: Box::new(move || {
            salt += 1;
            salt.to_be_bytes()
        }),
        clock: Box::new(move || *reading.lock().unwrap()),
        deliver: Box::new(move |parcel| drop(out.send(parcel))),
        comes_again: true,
        disk: Box::new(Files),
        snapshot_every: 5_000,
        metrics: Metrics::default(),
    };
    let (clerk, _) = Clerk::open::<Desk>(dir.path(), setup).unwrap();
    let window = clerk.window();
    window.load_blocking("soak".into(), company()).unwrap();
    let mut chance = Rng::with_seed(11);
    let began = std::time::Instant::now();
    let mut resident = Vec::new();
    let mut at: DateTime<Utc> = start();
    let accept = || {
        for parcel in parcels.try_iter() {
            window.sent(parcel.id.unwrap(), 0, 1, 1);
        }
    };
    for first in (0..messages).step_by(20) {
        let batch = (first..(first + 20).min(messages)).map(|number| {
            at += APART;
            let user = 500 + chance.i64(0..PEOPLE as i64);
            Inbound {
                chat: Some(user),
                ..Inbound::says(
                    MessageKey::new("telegram", user, number as i64, 0),
                    Sender::ChatUser(user),
                    at,
                    words(&mut chance),
                )
            }
        });
        let batch = batch.collect();
        *clock.lock().unwrap() = at;
        window.batch_blocking(batch).unwrap();
        accept();
        if first % (messages / 20).max(100) < 20 {
            resident.push(resident_kb());
            println!(
                "{first} messages, {} kB resident, {:.0} s",
                resident_kb(),
                began.elapsed().as_secs_f64()
            );
        }
    }
    window.show_blocking().unwrap();
    accept();
    // what the clock brings may put out a last word meanwhile
    let waiting = window.show_blocking().unwrap()["waiting"].as_u64().unwrap();
    assert!(waiting < 50, "{waiting} messages wait");
    clerk.stop().unwrap();
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
