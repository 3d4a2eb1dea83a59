//! A whole turn without the disk, with 10,000 trailers and 1,000,000 records behind it: `cargo bench --bench turn`.
//!
//! Prints the median and the 99th percentile of a turn with and without a forecast in it, and of finding the next instant at
//! which something is due; then what ticks cost when everything falls due at once, and when the digest does: in all, and
//! the longest slice, between two of which turns run. `HOSEBIB_TRAILERS` and `HOSEBIB_RECORDS` set the sizes.

#![allow(clippy::print_stdout)] // a bench is read on the screen

use std::fmt::Write;
use std::hint::black_box;
use std::time::{Duration, Instant};

use chrono::{DateTime, TimeDelta, Utc};
use hosebib::book::{Message, MessageKey, Personal, Record, Report};
use hosebib::desk::{Desk, Inbound, Sender};
use hosebib::fleet::{self, FleetFiles};
use hosebib::heard::{Entry, Event, ReadingKey, UnitName};

fn main() {
    let trailers = size("HOSEBIB_TRAILERS", 10_000);
    let records = size("HOSEBIB_RECORDS", 1_000_000);
    let started = Instant::now();
    let mut desk = Desk::default();
    let fleet = fleet::read(&files(trailers)).unwrap_or_else(|problems| panic!("{}", problems[0]));
    let turn = desk.load(DateTime::UNIX_EPOCH, "bench", fleet);
    desk.apply(&turn.records);
    for n in 0..records {
        desk.apply(&[report(n, trailers, records)]);
    }
    println!(
        "{trailers} trailers, {records} records folded in {:.1} s",
        started.elapsed().as_secs_f64()
    );

    let now = instant(records, records);
    let forecast = [
        "unit {} pressure 95 tank 3/4 temp -5",
        "{} waste 1/2, guests 180",
        "when will {} be full?",
    ];
    let plain = [
        "yard {} pressure 55",
        "{} leveled and chocked",
        "why",
        "{} no lights in room A",
        "thanks, all good",
    ];
    table(
        "a turn at a job (with its forecast)",
        &forecast,
        &desk,
        |n| n * 20 % trailers,
        now,
    );
    table(
        "a turn in the yard (no forecast)",
        &plain,
        &desk,
        |n| (n * 20 + 7) % trailers,
        now,
    );
    let times: Vec<Duration> = (0..200).map(|_| timed(|| desk.next_due())).collect();
    print("finding the next due instant", times);
    let open = trailers.div_ceil(20);
    for n in 0..open {
        let turn = desk.receive(&says(n, format!("{} waste 1/4", n * 20), now));
        desk.apply(&turn.records);
    }
    let times: Vec<Duration> = (0..200).map(|_| timed(|| desk.next_due())).collect();
    print(&format!("the same, {open} trailers just heard of"), times);
    let later = now + TimeDelta::hours(1);
    ticks(&mut desk, "an hour later, all that fell due", later);
    let digest: DateTime<Utc> = "2027-01-17T02:00:00Z".parse().expect("an instant");
    ticks(
        &mut desk,
        "three quarters of an hour on, and the digest",
        digest,
    );
    let asked = digest + TimeDelta::minutes(1);
    let inbound = Inbound {
        from: Sender::Crew("dot".into()),
        ..says(1_000_000, "digest".into(), asked)
    };
    let mut turn = None;
    let took = timed(|| turn = Some(desk.receive(&inbound)));
    desk.apply(&turn.expect("a turn").records);
    println!(
        "{:<46} {:>6.1} ms",
        "the turn of a dispatcher who asks for a digest",
        took.as_secs_f64() * 1e3
    );
    ticks(&mut desk, "that digest", asked);
}

/// Ticks until nothing is due any more at `now`, and prints what that took.
fn ticks(desk: &mut Desk, what: &str, now: DateTime<Utc>) {
    let (mut times, mut said) = (Vec::new(), 0);
    while desk.next_due().is_some_and(|due| due <= now) {
        let mut turn = None;
        times.push(timed(|| turn = Some(desk.tick(now))));
        let turn = turn.expect("a tick makes a turn");
        said += turn.outgoing.len();
        times.push(timed(|| desk.apply(&turn.records)));
        assert!(times.len() < 10_000, "the clock does not come to rest");
    }
    let all: Duration = times.iter().sum();
    let longest = times.iter().max().copied().unwrap_or_default();
    println!(
        "{what:<46} {:>6.0} ms in {} slices, the longest {:.1} ms; {said} messages",
        all.as_secs_f64() * 1e3,
        times.len() / 2,
        longest.as_secs_f64() * 1e3,
    );
}

/// Makes a message of the bench's one driver.
fn says(n: usize, text: String, at: DateTime<Utc>) -> Inbound {
    Inbound::says(
        MessageKey::new("bench", 1, n as i64, 0),
        Sender::Crew("dana".into()),
        at,
        text,
    )
}

/// Times turns over messages, `{}` standing for the trailer.
fn table(
    what: &str,
    texts: &[&str],
    desk: &Desk,
    unit: impl Fn(usize) -> usize,
    now: DateTime<Utc>,
) {
    let mut times = Vec::new();
    for n in 0..4_000 {
        let text = texts[n % texts.len()].replace("{}", &unit(n / texts.len()).to_string());
        let inbound = says(n, text, now + TimeDelta::seconds(n as i64));
        times.push(timed(|| desk.receive(&inbound)));
    }
    print(what, times);
}

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let started = Instant::now();
    black_box(work());
    started.elapsed()
}

fn print(what: &str, mut times: Vec<Duration>) {
    times.sort_unstable();
    let micros =
        |share: f64| times[((times.len() - 1) as f64 * share) as usize].as_secs_f64() * 1e6;
    println!(
        "{what:<40} median {:>9.1} µs   99th {:>9.1} µs   (n = {})",
        micros(0.5),
        micros(0.99),
        times.len()
    );
}

fn size(name: &str, usual: usize) -> usize {
    std::env::var(name)
        .ok()
        .and_then(|value| value.parse().ok())
        .unwrap_or(usual)
}

/// Makes a fleet of which every twentieth trailer is at a job.
fn files(trailers: usize) -> FleetFiles {
    let mut fleet = String::from(
        "company = \"Bench Lane\"\ntime_zone = \"America/Denver\"\ndigest_at = [\"19:00\"]\n",
    );
    let mut jobs = String::new();
    for n in 0..trailers {
        write!(fleet, "[[trailer]]\nid = \"{n}\"\n").expect("a string");
        if n % 20 == 0 {
            write!(
                jobs,
                "[[site]]\nid = \"green-{n}\"\n[[job]]\nsite = \"green-{n}\"\ntrailers = [\"{n}\"]\nfrom = 2027-01-16T12:00:00\nto = 2027-01-16T23:30:00\nguests = {}\nalcohol = true\n",
                100 + n % 200
            )
            .expect("a string");
        }
    }
    FleetFiles {
        fleet,
        jobs,
        crew: "[[crew]]\nid = \"dana\"\nrole = \"driver\"\n[[crew]]\nid = \"dot\"\nrole = \"dispatcher\"\n".into(),
        ..FleetFiles::default()
    }
}

/// The records end at 17:10 on the day of the jobs.
fn instant(n: usize, records: usize) -> DateTime<Utc> {
    let end: DateTime<Utc> = "2027-01-17T00:10:00Z".parse().expect("an instant");
    end - TimeDelta::seconds((records - n) as i64 * 7)
}

fn report(n: usize, trailers: usize, records: usize) -> Record {
    let unit = n % trailers;
    let round = n / trailers;
    let at = instant(n, records);
    let mut entry = Entry {
        unit: Some(UnitName::new(&unit.to_string())),
        ..Entry::default()
    };
    match round % 5 {
        0 => entry.events = vec![Event::Arrived, Event::Leveled, Event::Chocked],
        1 => entry.events = vec![Event::PowerOn, Event::WaterOn, Event::InService],
        2 => entry
            .readings
            .set(ReadingKey::WastePct, 12.5 * (round % 7) as f64),
        3 => entry
            .readings
            .set(ReadingKey::PressurePsi, 45.0 + (round % 9) as f64),
        _ => entry.events = vec![Event::WastePumped],
    }
    let key = MessageKey::new("bench", 0, n as i64, 0);
    let report = Report {
        unit: UnitName::new(&unit.to_string()),
        at,
        entry,
        too_old: false,
    };
    Record::Message(Box::new(Message {
        key,
        network: Personal::default(),
        // a person of a crew of 400 wrote it: nobody looks after 10,000 trailers alone
        from: format!("crew-{}", unit % 400),
        at,
        received: at,
        text: Personal::new("as it was written"),
        reports: vec![report],
        unclear: Vec::new(),
        set_aside: Vec::new(),
        findings: Vec::new(),
        reply: Personal::new("as it was answered"),
        replaces: None,
        tasks_before: Vec::new(),
    }))
}
