//! The formulas against tables: what others computed, what is published, and what must hold everywhere.

#![allow(clippy::unwrap_used)] // a failed unwrap is a failed test

mod properties;
mod published;
mod questions;
mod weather;

use std::path::PathBuf;

use hosebib::physics::sum;
use serde_json::{Map, Value};

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{found} for {expected}"
    );
}

/// One row of a table, by its header.
pub(crate) struct Row(Vec<(String, String)>);

impl Row {
    fn field(&self, name: &str) -> &str {
        let found = self.0.iter().find(|(header, _)| header == name);
        found.map_or("", |(_, value)| value)
    }

    fn inputs(&self) -> Map<String, Value> {
        serde_json::from_str(self.field("inputs")).expect("inputs are a JSON object")
    }
}

/// Reads a comma-separated file of `tests/data` with quoted fields; none of ours holds a line break.
pub(crate) fn table(name: &str) -> Vec<Row> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data")
        .join(name);
    let text = std::fs::read_to_string(&path).expect("the table is committed");
    let mut lines = text.lines();
    let header = fields(lines.next().expect("the table has a header"));
    lines
        .map(|line| Row(header.iter().cloned().zip(fields(line)).collect()))
        .collect()
}

fn fields(line: &str) -> Vec<String> {
    let (mut out, mut field, mut quoted) = (Vec::new(), String::new(), false);
    let mut chars = line.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                field.push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => out.push(std::mem::take(&mut field)),
            other => field.push(other),
        }
    }
    out.push(field);
    out
}

/// Returns what is wrong with our answer to a row, if anything.
fn wrong(row: &Row) -> Option<String> {
    let (quantity, expected) = (row.field("quantity"), row.field("expected"));
    let answer = match sum::answer(quantity, &row.inputs()) {
        Ok(answer) => answer,
        Err(error) => return Some(format!("{quantity} {}: {error}", row.field("inputs"))),
    };
    let unit = row.field("unit");
    if !unit.is_empty() && unit != answer.unit {
        return Some(format!("{quantity} is in {}, not {unit}", answer.unit));
    }
    let agrees = match row.field("tolerance") {
        "exact" => {
            let expected = serde_json::from_str(expected).unwrap_or(Value::from(expected));
            answer.value == expected
        }
        tolerance => {
            let (expected, tolerance): (f64, f64) =
                (expected.parse().unwrap(), tolerance.parse().unwrap());
            let off = answer.value.as_f64().map(|value| (value - expected).abs());
            off.is_some_and(|off| off <= tolerance)
        }
    };
    let inputs = row.field("inputs");
    (!agrees).then(|| format!("{quantity} {inputs}: {} for {expected}", answer.value))
}

#[test]
fn every_check_value_is_met() {
    let rows = table("physics-checks.csv");
    let wrong: Vec<String> = rows.iter().filter_map(wrong).collect();
    assert!(rows.len() > 200, "{} rows", rows.len());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The table is written by `tests/reference/physics.py` from EPANET (wntr), fluids, ht, scipy, metpy, filterpy and
/// pyworkforce; each row names which.
#[test]
fn scientific_libraries_agree() {
    let rows = table("physics-reference.csv");
    let wrong: Vec<String> = rows.iter().filter_map(wrong).collect();
    assert!(rows.len() > 500, "{} rows", rows.len());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
