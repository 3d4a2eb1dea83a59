//! Prints how right the tank forecast is over simulated events, against the best possible one, and what one costs:
//! `cargo bench --bench calibrate [-- EVENTS [SEED [EVENTS_AGAINST_THE_BEST]]]`.
#![allow(missing_docs, clippy::print_stdout)]

#[path = "../tests/core/forecast/calibration.rs"]
mod calibration;
#[path = "../tests/core/forecast/events.rs"]
mod events;
#[path = "calibrate/ideal.rs"]
mod ideal;

use std::time::Instant;

use calibration::{Figures, Protocol, ours};
use ideal::Ideal;

/// What is asked of the forecast.
const ASKED: &str = "asked: inside 78 to 86 %, before p10 and after p90 7 to 13 % each; loss at most 0.35 of a straight \
line and 0.68 of the guests alone; truck before 95 % in at least 95 %, tank at least 76 % full when it comes";
/// How many courses the best possible forecast draws for each event.
const PATHS: usize = 4000;

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|arg| arg.parse().ok());
    let count: u64 = numbers.next().unwrap_or(1000);
    let seed = numbers.next().unwrap_or(7);
    let against = numbers.next().unwrap_or(200);
    println!("{count} simulated events, seed {seed}");
    println!("{ASKED}");
    for protocol in Protocol::ALL {
        println!("\n{}:", protocol.title());
        println!(
            "{}",
            Figures::measure(seed, count as usize, protocol, &mut ours)
        );
    }
    against_the_best(seed, against as usize);
    cost(seed);
}

/// Judges our forecast and the best possible one on the same events: where the second falls short, the asked figure is
/// beyond what the readings can tell.
fn against_the_best(seed: u64, count: usize) {
    println!(
        "\nthe same on the first {count} events, beside the best possible forecast there: it knows the simulated process \
         with all its spreads, and weighs {PATHS} courses drawn from it by what was told"
    );
    let mut drawn: Option<(Vec<f64>, Ideal)> = None;
    let mut best = |event: &events::Event, now: f64| {
        // the same event follows itself: its courses are drawn once
        if drawn
            .as_ref()
            .is_none_or(|(level, _)| *level != event.level)
        {
            let mut rng = fastrand::Rng::with_seed(seed ^ event.level.len() as u64);
            drawn = Some((event.level.clone(), Ideal::draw(event, PATHS, &mut rng)));
        }
        match &drawn {
            Some((_, ideal)) => ideal.forecast(event, now),
            None => [None; 3],
        }
    };
    for protocol in Protocol::ALL {
        println!("\n{}:", protocol.title());
        println!(
            "ours\n{}",
            Figures::measure(seed, count, protocol, &mut ours)
        );
        println!(
            "best possible\n{}",
            Figures::measure(seed, count, protocol, &mut best)
        );
    }
}

fn cost(seed: u64) {
    let mut rng = fastrand::Rng::with_seed(seed);
    let events: Vec<_> = (0..200)
        .map(|_| events::Event::simulate(&mut rng))
        .collect();
    let mut micros: Vec<f64> = events
        .iter()
        .map(|event| {
            let now = event.setting.hours / 2.0;
            // The least of a few tells what it costs, not who else was busy.
            (0..5)
                .map(|_| {
                    let start = Instant::now();
                    std::hint::black_box(ours(event, now));
                    start.elapsed().as_secs_f64() * 1e6
                })
                .fold(f64::MAX, f64::min)
        })
        .collect();
    micros.sort_by(f64::total_cmp);
    println!(
        "\none forecast: median {:.0} us, longest of {} {:.0} us",
        micros[micros.len() / 2],
        micros.len(),
        micros[micros.len() - 1]
    );
}
