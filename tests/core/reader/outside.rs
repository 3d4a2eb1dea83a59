//! What general-purpose quantity parsers make of the example messages, beside ours: `tests/reference/quantities.py` asks
//! them, their answers are committed.
//!
//! They find quantities and no trailers, events or faults, so only values are compared, and leniently: a bare number may
//! be any reading of the message, a fraction any level; "F" read as farad is a degree; lengths in inches, times and bare
//! numbers are never held against them. A value that stands in the message and is none of its readings is: a plan, a
//! past value, a price taken for a measure, half of a number.

use std::collections::HashMap;
use std::fs;
use std::path::Path;

use serde_json::Value;

use super::compare::close;

/// A parser whose answers stand beside ours.
pub(super) struct Outside {
    /// Its name and version.
    pub(super) name: &'static str,
    answers: HashMap<String, Vec<(f64, String)>>,
}

/// How many values of messages a parser found.
#[derive(Debug, Default, Clone, Copy)]
pub(super) struct Found {
    /// Messages compared.
    pub(super) messages: usize,
    /// Their readings.
    pub(super) readings: usize,
    /// Of these, found.
    pub(super) found: usize,
    /// Messages with every reading found and no stray value.
    pub(super) right: usize,
    /// Messages with a value that is none of their readings.
    pub(super) stray: usize,
}

impl Found {
    /// Takes in one message: its readings, how many were found, whether anything else was.
    pub(super) fn take_in(&mut self, readings: usize, found: usize, stray: bool) {
        self.messages += 1;
        self.readings += readings;
        self.found += found;
        self.right += usize::from(found == readings && !stray);
        self.stray += usize::from(stray);
    }
}

/// Returns the parsers whose answers are committed.
pub(super) fn parsers() -> [Outside; 2] {
    [
        Outside::read("quantulum3 0.10.0", "quantulum3.jsonl"),
        Outside::read("recognizers-text 1.3.1", "recognizers-text.jsonl"),
    ]
}

impl Outside {
    fn read(name: &'static str, file: &str) -> Outside {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("tests/data/outside-parsers")
            .join(file);
        let text = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let answers = text.lines().map(|line| {
            let line: Value = serde_json::from_str(line).unwrap();
            let found = line["found"].as_array().unwrap().iter();
            let found = found
                .map(|pair| {
                    (
                        pair[0].as_f64().unwrap(),
                        pair[1].as_str().unwrap().to_lowercase(),
                    )
                })
                .collect();
            (line["id"].as_str().unwrap().to_owned(), found)
        });
        Outside {
            name,
            answers: answers.collect(),
        }
    }

    /// Holds a message's answers against its readings; none where the parser was not asked about it.
    pub(super) fn compare(&self, id: &str, gold: &[(String, f64)]) -> Option<(usize, bool)> {
        let answers = self.answers.get(id)?;
        let mut taken = vec![false; gold.len()];
        let mut stray = false;
        let (bare, measured): (Vec<_>, Vec<_>) = answers
            .iter()
            .partition(|(_, unit)| measure(unit).is_none());
        for (value, unit) in measured {
            let (kind, factor) = measure(unit).expect("parted by it");
            let values = match kind {
                // "4 degrees" is of either scale
                Kind::Degrees => vec![*value, value * 1.8 + 32.0],
                _ => vec![value * factor],
            };
            let is = |(key, want): &(String, f64)| {
                kind.keys().contains(&key.as_str()) && values.iter().any(|v| close(key, *v, *want))
            };
            let free = (0..gold.len()).find(|i| !taken[*i] && is(&gold[*i]));
            if let Some(free) = free {
                taken[free] = true;
            }
            stray |= kind.counts() && !gold.iter().any(is);
        }
        for (value, unit) in bare {
            let is_bare = ["", "dimensionless", "count"].contains(&unit.as_str());
            let is = |(key, want): &(String, f64)| {
                close(key, *value, *want)
                    || key.ends_with("_pct") && close(key, value * 100.0, *want)
            };
            if let Some(free) = (0..gold.len()).find(|i| is_bare && !taken[*i] && is(&gold[*i])) {
                taken[free] = true;
            }
        }
        Some((taken.iter().filter(|taken| **taken).count(), stray))
    }
}

/// What a unit of measure can be a reading of.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind {
    Pressure,
    Volume,
    Share,
    Volts,
    Amps,
    Length,
    Wind,
    Flow,
    Time,
    Degrees,
}

impl Kind {
    fn keys(self) -> &'static [&'static str] {
        match self {
            Kind::Pressure => &["pressure_psi"],
            Kind::Volume => &["waste_gal", "fresh_gal", "pumped_gal"],
            Kind::Share => &["waste_pct", "fresh_pct", "battery_pct"],
            Kind::Volts => &["volts", "battery_v"],
            Kind::Amps => &["amps"],
            Kind::Length => &["cord_ft", "hose_ft"],
            Kind::Wind => &["wind_mph"],
            Kind::Flow => &["flow_gpm"],
            Kind::Time => &["eta_min"],
            Kind::Degrees => &["air_f"],
        }
    }

    /// Tells whether a value that is no reading is held against a parser.
    fn counts(self) -> bool {
        self != Kind::Time
    }
}

/// The parsers' names for units of measure, with what one of them is in the reading's unit; the first that fits counts.
const MEASURES: [(&str, Kind, f64); 26] = [
    ("pound per square inch", Kind::Pressure, 1.0),
    ("bar", Kind::Pressure, 14.5038),
    ("kilopascal", Kind::Pressure, 0.145_038),
    ("kilogram per square centi", Kind::Pressure, 14.2233),
    ("gallon per minute", Kind::Flow, 1.0),
    ("litre per minute", Kind::Flow, 0.264_172),
    ("gallon", Kind::Volume, 1.0),
    ("galón", Kind::Volume, 1.0),
    ("litr", Kind::Volume, 0.264_172),
    ("percent", Kind::Share, 1.0),
    ("volt", Kind::Volts, 1.0),
    ("ampere", Kind::Amps, 1.0),
    ("foot", Kind::Length, 1.0),
    ("pie", Kind::Length, 1.0),
    ("mile per hour", Kind::Wind, 1.0),
    ("kilometre per hour", Kind::Wind, 0.621_371),
    ("kilómetro por hora", Kind::Wind, 0.621_371),
    ("metre", Kind::Length, 3.280_84),
    ("meter", Kind::Length, 3.280_84),
    ("metro", Kind::Length, 3.280_84),
    ("minute", Kind::Time, 1.0),
    ("hour", Kind::Time, 60.0),
    ("degree", Kind::Degrees, 1.0),
    ("farad", Kind::Degrees, 1.0),
    ("coulomb", Kind::Degrees, 1.0),
    ("kelvin", Kind::Degrees, 1.0),
];

fn measure(unit: &str) -> Option<(Kind, f64)> {
    // "barye" and "minute of arc" are no measures of ours, but what a slip of the parser made of one is
    MEASURES
        .iter()
        .find(|(name, _, _)| unit.starts_with(name))
        .map(|(_, kind, factor)| (*kind, *factor))
}
