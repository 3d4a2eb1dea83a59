//! What of two readings is compared, and the example files themselves.

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use serde_json::{Map, Value};
use std::fs;
use std::path::Path;

pub(super) fn examples(file: &str) -> Vec<Value> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("grammar/examples")
        .join(file);
    let text = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    text.lines()
        .filter(|l| !l.trim().is_empty())
        .map(|l| serde_json::from_str(l).unwrap())
        .collect()
}

/// The readings that are left out of comparing.
pub(super) const UNCOMPARED_READINGS: [&str; 10] = [
    "inside_f",
    "low_f",
    "humidity_pct",
    "slope_pct",
    "supply_psi",
    "taps",
    "circuits_live",
    "fuel_gal",
    "fuel_pct",
    "when",
];

pub(super) const UNCOMPARED_CODES: [&str; 27] = [
    "power-off",
    "heater-off",
    "unhitched",
    "jacks-up",
    "stowed",
    "lights-checked",
    "fuse-blown",
    "sink-clog",
    "out-of-supplies",
    "gas-illness",
    "hot-plug",
    "cord-damaged",
    "tire",
    "fire",
    "person-trapped",
    "person-hurt",
    "person-cold",
    "generator-inside",
    "no-backflow",
    "gas-smell",
    "breakaway-fault",
    "brake-fault",
    "coupler-fault",
    "chain-fault",
    "tow-lights-fault",
    "jack-fault",
    "runaway",
];

/// Leaves in an entry only what is compared; none where nothing is.
pub(super) fn compared(entry: &Value) -> Option<Value> {
    let codes = |key: &str| -> Vec<String> {
        let mut all: Vec<String> = entry[key]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(|c| c.as_str())
            .filter(|c| !UNCOMPARED_CODES.contains(c))
            .map(String::from)
            .collect();
        all.sort();
        all.dedup();
        all
    };
    let mut readings = Map::new();
    for (key, value) in entry["readings"].as_object().into_iter().flatten() {
        if !UNCOMPARED_READINGS.contains(&key.as_str()) {
            readings.insert(key.clone(), value.clone());
        }
    }
    let (events, faults) = (codes("events"), codes("faults"));
    if events.is_empty() && faults.is_empty() && readings.is_empty() {
        return None;
    }
    Some(
        serde_json::json!({"unit": entry["unit"], "events": events, "faults": faults, "readings": readings}),
    )
}

pub(super) fn close(key: &str, a: f64, b: f64) -> bool {
    let slack = if key.ends_with("_pct") {
        1.0
    } else {
        (0.01 * b.abs()).max(0.1)
    };
    (a - b).abs() <= slack + 1e-9
}

pub(super) fn same_reading(key: &str, a: &Value, b: &Value) -> bool {
    match (a.as_f64(), b.as_f64()) {
        (Some(a), Some(b)) => close(key, a, b),
        _ => {
            let list = |v: &Value| -> Vec<(i64, f64)> {
                let mut all: Vec<(i64, f64)> = v
                    .as_array()
                    .into_iter()
                    .flatten()
                    .map(|x| {
                        (
                            x["circuit"].as_i64().unwrap_or(0),
                            x["amps"].as_f64().unwrap_or(-1.0),
                        )
                    })
                    .collect();
                all.sort_by(|a, b| a.partial_cmp(b).unwrap());
                all
            };
            let (a, b) = (list(a), list(b));
            a.len() == b.len()
                && a.iter()
                    .zip(&b)
                    .all(|(x, y)| x.0 == y.0 && close(key, x.1, y.1))
        }
    }
}

pub(super) fn same_entries(got: &[Value], want: &[Value]) -> bool {
    if got.len() != want.len() {
        return false;
    }
    let mut left: Vec<&Value> = got.iter().collect();
    want.iter().all(|w| {
        let found = left.iter().position(|g| {
            let (gr, wr) = (
                g["readings"].as_object().unwrap(),
                w["readings"].as_object().unwrap(),
            );
            g["unit"] == w["unit"]
                && g["events"] == w["events"]
                && g["faults"] == w["faults"]
                && gr.len() == wr.len()
                && wr
                    .iter()
                    .all(|(k, v)| gr.get(k).is_some_and(|x| same_reading(k, x, v)))
        });
        found.map(|i| left.remove(i)).is_some()
    })
}

/// Returns the values logged that the gold has not got for that trailer.
pub(super) fn wrong_values(got: &[Value], want: &[Value]) -> Vec<String> {
    let mut wrong = Vec::new();
    for g in got {
        for (key, value) in g["readings"].as_object().unwrap() {
            let right = want.iter().any(|w| {
                w["unit"] == g["unit"]
                    && w["readings"]
                        .get(key)
                        .is_some_and(|x| same_reading(key, value, x))
            });
            if !right {
                wrong.push(format!("{} {key} {value}", g["unit"]));
            }
        }
    }
    wrong
}

pub(super) fn same_ask(got: &Value, want: &Value) -> bool {
    let uncompared = |v: &Value| matches!(v["about"].as_str(), Some("sum" | "command"));
    uncompared(got) && want.is_null() || uncompared(want) || got == want
}

pub(super) fn every_file() -> Vec<String> {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/examples");
    let mut files: Vec<String> = fs::read_dir(dir)
        .unwrap()
        .map(|e| e.unwrap().file_name().into_string().unwrap())
        .filter(|n| n.ends_with(".jsonl"))
        .collect();
    files.sort();
    files
}

/// The readings of a message as comparable text, by trailer.
pub(super) fn values(reader: &Reader, text: &str) -> Vec<String> {
    let got = to_json(text, &reader.hear(text, TemperatureScale::F));
    let mut all = Vec::new();
    for entry in got["entries"].as_array().unwrap() {
        for (key, value) in entry["readings"].as_object().unwrap() {
            // each circuit's current is a value of its own
            match value.as_array() {
                Some(list) => all.extend(
                    list.iter()
                        .map(|item| format!("{} {key} {item}", entry["unit"])),
                ),
                None => all.push(format!("{} {key} {value}", entry["unit"])),
            }
        }
    }
    all.sort();
    all
}

/// The whole compared meaning of a message.
pub(super) fn meaning(reader: &Reader, text: &str) -> (Vec<Value>, Value, bool) {
    let got = to_json(text, &reader.hear(text, TemperatureScale::F));
    let mut entries: Vec<Value> = got["entries"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(compared)
        .collect();
    entries.sort_by_key(|e| e["unit"].to_string());
    (
        entries,
        got["ask"].clone(),
        !got["unclear"].as_array().unwrap().is_empty(),
    )
}

pub(super) fn all_examples() -> Vec<(String, Value)> {
    every_file()
        .into_iter()
        .flat_map(|file| examples(&file).into_iter().map(move |e| (file.clone(), e)))
        .collect()
}

/// Tells whether two careful people could differ on a part of an example.
pub(super) fn soft(example: &Value, part: &str) -> bool {
    example["soft"]
        .as_array()
        .is_some_and(|parts| parts.iter().any(|p| p == part))
}
