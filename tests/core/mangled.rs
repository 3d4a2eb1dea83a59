//! Crews' messages with pieces changed, dropped, spliced and put in between: none panics, through the reader and the whole
//! desk, and what the reader makes of each holds. `HOSEBIB_FUZZ` says how many, `HOSEBIB_FUZZ_SEED` repeats a run. What
//! is led by the code that a message reaches is `cargo fuzz` (see DEVELOPERS.md).

#[path = "../../fuzz/fuzz_targets/check.rs"]
mod check;
#[path = "../../fuzz/fuzz_targets/mangle.rs"]
mod mangle;

use std::time::{Duration, Instant};

use chrono::TimeDelta;
use hosebib::book::MessageKey;
use hosebib::desk::{Inbound, Sender};
use hosebib::fleet::demo;
use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

/// Takes a number from the environment.
fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name).map_or(usual, |text| {
        text.parse()
            .unwrap_or_else(|_| panic!("{name}: expected a number, found `{text}`"))
    })
}

/// Draws a message: up to a dozen changes.
fn message(chance: &mut fastrand::Rng) -> String {
    let bytes: Vec<u8> = (0..2 + 3 * chance.usize(..12))
        .map(|_| chance.u8(..))
        .collect();
    mangle::message(&bytes)
}

/// The storm's seed. It stands still, so that a change fails by what it changes; a search for more gives its own.
fn seed() -> u64 {
    let seed = number("HOSEBIB_FUZZ_SEED", 7);
    println!("HOSEBIB_FUZZ_SEED={seed}");
    seed
}

#[test]
fn what_is_read_of_a_mangled_message_holds() {
    let reader = Reader::new();
    let mut chance = fastrand::Rng::with_seed(seed());
    let count = number("HOSEBIB_FUZZ", 5_000);
    let (began, mut slowest) = (Instant::now(), (Duration::ZERO, String::new()));
    for turn in 0..count {
        let text = message(&mut chance);
        let scale = match turn % 2 {
            0 => TemperatureScale::F,
            _ => TemperatureScale::C,
        };
        let start = Instant::now();
        check::reading(&reader, &text, scale);
        let took = start.elapsed();
        if took > slowest.0 {
            slowest = (took, text);
        }
    }
    // printed for whoever reads it: how long it took is no promise
    println!(
        "{count} executions in {:.0?}; the slowest took {:.0?}: {:?}",
        began.elapsed(),
        slowest.0,
        slowest.1.chars().take(200).collect::<String>()
    );
}

#[test]
fn no_mangled_message_stops_the_desk() {
    let mut chance = fastrand::Rng::with_seed(seed());
    let crew: Vec<String> = demo::fleet().crew.into_keys().collect();
    let mut desk = crate::desks::at_work(demo::fleet());
    let mut at = demo::starts();
    for number in 0..number("HOSEBIB_FUZZ", 3_000) / 20 {
        at += TimeDelta::minutes(chance.i64(1..40));
        let tick = desk.tick(at);
        desk.apply(&tick.records);
        let inbound = Inbound::says(
            MessageKey(format!("mangled:{number}")),
            Sender::Crew(crew[chance.usize(..crew.len())].clone()),
            at,
            message(&mut chance),
        );
        let turn = desk.receive(&inbound);
        desk.apply(&turn.records);
    }
}
