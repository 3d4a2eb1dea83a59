//! What a trailer's log taught, beside what the fleet's file states.

use std::collections::BTreeSet;

use crate::book::Lesson;
use crate::fleet::{GaugeKind, Trailer};
use crate::outlook::Habits;
use crate::physics::forecast::learn::Learned;

/// How sure the kind of a gauge is is told from so many pump-outs on.
const ENOUGH: usize = 3;
/// Nothing that a log tells of a gauge is surer.
const SUREST: f64 = 0.99;

/// Returns what was learned of the key `key`, to be printed after its stated value; nothing where nothing was.
pub(super) fn beside(key: &str, trailer: &Trailer, lessons: &[Lesson]) -> String {
    let habits = Habits::learn(trailer, None, lessons);
    match key {
        "gal_per_use" if habits.gal_per_use.entries > 0 => {
            format!("; learned {}", with_range(&habits.gal_per_use, " gal"))
        }
        "waste_gauge.kind" if habits.gauge_entries > 0 => {
            let (kind, sure) = match habits.lamps >= 0.5 {
                true => ("lamps", habits.lamps),
                false => ("sight", 1.0 - habits.lamps),
            };
            let read = match habits.gauge(trailer.waste_gauge).kind {
                GaugeKind::Lamps => "lamps",
                GaugeKind::Sight => "sight",
            };
            let from = pump_outs(habits.gauge_entries);
            // one reading that fits both kinds badly makes neither certain
            match habits.gauge_entries >= ENOUGH {
                true => format!(
                    "; its log looks like {kind}, {:.0} % sure, from {from}; read as {read}",
                    100.0 * sure.min(SUREST),
                ),
                false => format!("; its log hints at {kind}, from {from} only; read as {read}"),
            }
        }
        _ => String::new(),
    }
}

/// Lists the use rate learned at each site, as multiples of what the stated values promise: the key and the value.
pub(super) fn rates(trailer: &Trailer, lessons: &[Lesson]) -> Vec<(String, String)> {
    let sites: BTreeSet<&str> = lessons.iter().map(|lesson| lesson.site.as_str()).collect();
    let rate = |site: &str| {
        let habits = Habits::learn(trailer, Some(site), lessons);
        let here = |lesson: &&Lesson| lesson.site == site && lesson.promised_gal.is_some();
        let learned = Learned {
            entries: lessons.iter().filter(here).count(),
            ..habits.pace
        };
        let value = format!(
            "1 times the guests' usual; learned {}",
            with_range(&learned, "")
        );
        (learned.entries > 0).then(|| (format!("use rate at {site}"), value))
    };
    sites.into_iter().filter_map(rate).collect()
}

fn with_range(learned: &Learned, unit: &str) -> String {
    format!(
        "{:.2}{unit} ({:.2} to {:.2}, 8 times in 10), from {}",
        learned.value,
        learned.p10,
        learned.p90,
        pump_outs(learned.entries)
    )
}

fn pump_outs(count: usize) -> String {
    format!("{count} pump-out{}", if count == 1 { "" } else { "s" })
}
