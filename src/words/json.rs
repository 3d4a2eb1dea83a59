//! The JSON object that stands for a message's meaning in the outside world.

use serde_json::{Map, Value, json};

use crate::heard::{Ask, Entry, Heard, ReadingKey, Readings, Remark};

/// Returns the JSON object for a message: its text, entries, ask, what is unclear and what was set aside.
pub fn to_json(text: &str, heard: &Heard) -> Value {
    json!({
        "text": text,
        "entries": heard.entries.iter().map(entry).collect::<Vec<_>>(),
        "ask": heard.ask.as_ref().map(ask),
        "unclear": remarks(&heard.unclear),
        "set_aside": remarks(&heard.set_aside),
    })
}

/// Prints a whole number without a point.
fn number(value: f64) -> Value {
    if value.fract() == 0.0 && value.abs() < 9e15 {
        json!(value as i64)
    } else {
        json!(value)
    }
}

fn remarks(remarks: &[Remark]) -> Vec<Value> {
    remarks
        .iter()
        .map(|r| json!({"text": r.text, "why": r.why}))
        .collect()
}

fn entry(entry: &Entry) -> Value {
    let mut object = Map::new();
    object.insert(
        "unit".into(),
        json!(entry.unit.as_ref().map(|u| u.as_str())),
    );
    if let Some(when) = &entry.when {
        object.insert("when".into(), json!(when));
    }
    object.insert("events".into(), json!(entry.events));
    object.insert("readings".into(), readings(&entry.readings));
    let further = values(&entry.readings, |key| FURTHER.contains(&key));
    if !further.is_empty() {
        object.insert("further".into(), Value::Object(further));
    }
    object.insert("faults".into(), json!(entry.faults));
    object.insert("cleared".into(), json!(entry.cleared));
    Value::Object(object)
}

/// Readings of ours that whoever compares messages by their JSON does not know: they stand apart.
const FURTHER: [ReadingKey; 4] = [
    ReadingKey::StallsOut,
    ReadingKey::VoltsHigh,
    ReadingKey::VoltsLow,
    ReadingKey::CordAwg,
];

fn values(readings: &Readings, wanted: impl Fn(ReadingKey) -> bool) -> Map<String, Value> {
    let values = readings.values.iter();
    let values = values.filter(|(key, _)| wanted(**key));
    values
        .map(|(key, value)| (key.code().into(), number(*value)))
        .collect()
}

fn readings(readings: &Readings) -> Value {
    let mut object = values(readings, |key| !FURTHER.contains(&key));
    if !readings.amps.is_empty() {
        let amps: Vec<Value> = readings
            .amps
            .iter()
            .map(|a| json!({"circuit": a.circuit, "amps": number(a.amps)}))
            .collect();
        object.insert("amps".into(), json!(amps));
    }
    if let Some(taps) = readings.taps {
        object.insert("taps".into(), json!(taps));
    }
    if let Some(live) = &readings.circuits_live {
        object.insert("circuits_live".into(), json!(live));
    }
    Value::Object(object)
}

fn ask(ask: &Ask) -> Value {
    match ask {
        Ask::Command { name } => json!({"about": "command", "name": name}),
        other => json!(other),
    }
}
