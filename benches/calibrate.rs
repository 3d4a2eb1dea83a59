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

use calibration::{Figures, Losses, Protocol, ours};
use ideal::Ideal;

/// How many courses the best possible forecast draws for each event.
const PATHS: usize = 4000;

fn main() {
    let mut numbers = std::env::args().skip(1).filter_map(|arg| arg.parse().ok());
    let count: u64 = numbers.next().unwrap_or(1000);
    let seed = numbers.next().unwrap_or(7);
    let against = numbers.next().unwrap_or(200);
    println!("{count} simulated events, seed {seed}");
    let all = Protocol::ALL.map(|protocol| {
        let figures = Figures::measure(seed, count as usize, protocol, &mut ours);
        (protocol, figures)
    });
    held_against_what_is_asked(&all);
    for (protocol, figures) in &all {
        println!("\n{}:", protocol.title());
        println!("{figures}");
    }
    against_the_best(seed, against as usize);
    cost(seed);
}

/// Prints what is asked of the forecast beside what it came to: bands and losses of every forecast that a reading gives,
/// trucks once an event, called by the reading that opens their task.
fn held_against_what_is_asked(all: &[(Protocol, Figures)]) {
    let of = |wanted| all.iter().find(|(protocol, _)| *protocol == wanted);
    let (Some((_, every)), Some((_, booked))) =
        (of(Protocol::EveryReading), of(Protocol::HalfFull))
    else {
        return;
    };
    let Losses {
        forecast,
        line,
        guests,
    } = every.losses;
    let trucks = &booked.trucks;
    let pct = |count| 100.0 * every.share(count);
    println!(
        "  every forecast by a reading, where both ends are given ({} of them):",
        every.banded
    );
    println!(
        "    inside the 80 % band      {:5.1} %  (asked: 78 to 86)",
        pct(every.inside)
    );
    println!(
        "    before p10                {:5.1} %  (7 to 13)",
        pct(every.before_p10)
    );
    println!(
        "    after p90                 {:5.1} %  (7 to 13)",
        pct(every.after_p90)
    );
    println!(
        "    loss, of a straight line  {:5.2}    (at most 0.35)",
        forecast / line
    );
    println!(
        "    loss, of guests alone     {:5.2}    (at most 0.68)",
        forecast / guests
    );
    println!(
        "  the truck of every event, called by p10 at the first reading of half or more, which opens its task:"
    );
    println!(
        "    there before 95 %         {:5.1} %  (at least 95, of the {} events where it could)",
        100.0 * trucks.in_time as f64 / trucks.could.max(1) as f64,
        trucks.could
    );
    println!(
        "    how full the tank is then {:5.1} %  (at least 76)",
        trucks.fill / trucks.came.max(1) as f64
    );
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
