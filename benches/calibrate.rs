//! Prints how right the tank forecast is over simulated events, and what one costs:
//! `cargo bench --bench calibrate [-- EVENTS [SEED]]`.
#![allow(missing_docs, clippy::print_stdout)]

#[path = "../tests/core/forecast/calibration.rs"]
mod calibration;
#[path = "../tests/core/forecast/events.rs"]
mod events;

use std::time::Instant;

use calibration::{Figures, Moment};

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|arg| arg.parse().ok());
    let count = numbers.next().unwrap_or(1000);
    let seed = numbers.next().unwrap_or(7);
    let count = count as usize;
    println!("at every reading:");
    println!(
        "{}",
        Figures::measure(seed, count, Moment::EveryReading, false)
    );
    println!("at the first reading of half or more:");
    println!("{}", Figures::measure(seed, count, Moment::FirstHalf, true));

    let mut rng = fastrand::Rng::with_seed(seed);
    let events: Vec<_> = (0..200)
        .map(|_| events::Event::simulate(&mut rng))
        .collect();
    let mut micros: Vec<f64> = events
        .iter()
        .map(|event| {
            let now = event.hours / 2.0;
            // The least of a few tells what it costs, not who else was busy.
            (0..5)
                .map(|_| {
                    let start = Instant::now();
                    std::hint::black_box(calibration::forecast(event, now));
                    start.elapsed().as_secs_f64() * 1e6
                })
                .fold(f64::MAX, f64::min)
        })
        .collect();
    micros.sort_by(f64::total_cmp);
    println!(
        "one forecast: median {:.0} us, longest of {} {:.0} us",
        micros[micros.len() / 2],
        micros.len(),
        micros[micros.len() - 1]
    );
}
