//! What incidents hold: which lines of the journal are about a trailer, in a time.

use chrono::{DateTime, Utc};
use serde_json::Value;

use crate::book::Hold;
use crate::store::Line;

/// Tells whether one of these holds keeps a line as it is.
pub(super) fn is_held(line: &Line, holds: &[Hold]) -> bool {
    holds.iter().any(|hold| is_held_by(line, hold))
}

/// Tells whether a hold keeps a line as it is: the incident's own lines, and those of its time that are about its trailer.
pub fn is_held_by(line: &Line, hold: &Hold) -> bool {
    let own = |record: &Value| record["record"] == "incident" && record["number"] == hold.number;
    line.records.iter().any(own)
        || times(line).any(|at| hold.holds(at)) && is_about(line, hold.unit.as_str())
}

/// Iterates over the times that a line bears: when it was written down, and when what it tells was written and was so.
fn times(line: &Line) -> impl Iterator<Item = DateTime<Utc>> {
    let of = |value: &Value| value["at"].as_str()?.parse().ok();
    let reports = line.records.iter().flat_map(reports);
    let told = line.records.iter().chain(reports).filter_map(of);
    std::iter::once(line.at).chain(told)
}

/// Tells whether a line is about a trailer: by what it reports, finds and changes, by what is talked about after it, or,
/// where it reports nothing at all, by the trailer's name in its words. Rather a line too many is held than one too few.
fn is_about(line: &Line, unit: &str) -> bool {
    line.records.iter().any(|record| match kind(record) {
        "fleet" => false,
        "talk" => record["talk"]["unit"][0] == unit,
        "message" | "set-aside" => {
            let found = record["findings"].as_array().into_iter().flatten();
            let units: Vec<&Value> = reports(record).chain(found).map(|of| &of["unit"]).collect();
            units.iter().any(|of| **of == unit)
                || units.is_empty() && is_named(&record["text"], unit)
        }
        _ => names(record, unit),
    })
}

/// Returns what kind of record or note a value is.
pub(super) fn kind(record: &Value) -> &str {
    let tag = record.get("record").or(record.get("note"));
    tag.and_then(Value::as_str).unwrap_or_default()
}

fn reports(record: &Value) -> impl Iterator<Item = &Value> {
    record["reports"].as_array().into_iter().flatten()
}

/// Tells whether a text has the trailer's name as a word of its own.
fn is_named(text: &Value, unit: &str) -> bool {
    let text = text["personal"].as_str().unwrap_or_default();
    let mut words = text.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    words.any(|word| word.eq_ignore_ascii_case(unit))
}

/// Tells whether a record names the trailer anywhere as a unit.
fn names(value: &Value, unit: &str) -> bool {
    match value {
        Value::Array(items) => items.iter().any(|item| names(item, unit)),
        Value::Object(map) => map.iter().any(|(key, value)| match key.as_str() {
            "unit" => value == unit,
            _ => names(value, unit),
        }),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::UnitName;
    use crate::store::Hash;
    use serde_json::json;

    fn line(at: &str, records: Vec<Value>) -> Line {
        Line {
            seq: 7,
            version: 1,
            key: None,
            at: at.parse().unwrap(),
            records,
            outgoing: Vec::new(),
            prev: Hash::START,
            hash: Hash::START,
        }
    }

    fn hold() -> Hold {
        Hold {
            number: 3,
            unit: UnitName::new("14"),
            from: "2027-01-13T12:00:00Z".parse().unwrap(),
            to: "2027-01-19T12:00:00Z".parse().unwrap(),
        }
    }

    fn message(text: &str, units: &[&str]) -> Value {
        let reports: Vec<Value> = units.iter().map(|unit| json!({"unit": unit})).collect();
        json!({"record": "message", "text": {"personal": text}, "reports": reports})
    }

    #[test]
    fn a_line_is_held_for_its_trailer_and_its_time() {
        let held = |at: &str, record: Value| is_held_by(&line(at, vec![record]), &hold());
        let within = "2027-01-16T12:00:00Z";
        assert!(held(within, message("14 pressure 50", &["14"])));
        assert!(held(within, message("is the step on 14 mended?", &[])));
        assert!(held(within, json!({"record": "alarm", "unit": "14"})));
        assert!(held(
            within,
            json!({"record": "task", "task": {"unit": "14"}})
        ));
        assert!(!held(within, message("12 pressure 14", &["12"])));
        assert!(!held(
            within,
            json!({"record": "fleet", "fleet": {"unit": "14"}})
        ));
        assert!(!held(
            "2027-01-20T12:00:00Z",
            message("14 pressure 50", &["14"])
        ));
    }

    #[test]
    fn what_came_late_is_held_by_when_it_was_so_and_the_incident_by_its_number() {
        let mut late = message("14 pressure 50", &["14"]);
        late["at"] = "2027-01-19T11:00:00Z".into();
        assert!(is_held_by(
            &line("2027-01-20T12:00:00Z", vec![late]),
            &hold()
        ));
        let told = |number: u32| json!({"record": "incident", "number": number, "unit": "14"});
        assert!(is_held_by(
            &line("2027-03-01T12:00:00Z", vec![told(3)]),
            &hold()
        ));
        assert!(!is_held_by(
            &line("2027-03-01T12:00:00Z", vec![told(4)]),
            &hold()
        ));
    }
}
