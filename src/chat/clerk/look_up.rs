//! Which parts of a line are looked up later: its key, its check-ins by unit and time, a loaded fleet.

use serde_json::{Value, json};

use crate::store::{IndexEntries, Line};

/// Says which parts of a line are to be looked up. Reads the JSON as it stands, so that a line which this release cannot
/// fold is still found by unit and time.
pub fn entries(line: &Line) -> IndexEntries {
    let mut entries = IndexEntries {
        seen: line.key.clone(),
        ..IndexEntries::default()
    };
    for record in &line.records {
        match record.get("record").and_then(Value::as_str) {
            Some("message") => entries.check_ins.extend(check_ins(record)),
            Some("fleet") => entries.fleet = record.get("fleet").cloned(),
            _ => {}
        }
    }
    entries
}

fn check_ins(message: &Value) -> Vec<(String, i64, Value)> {
    let reports = message
        .get("reports")
        .and_then(Value::as_array)
        .map_or(&[][..], Vec::as_slice);
    reports
        .iter()
        .filter_map(|report| {
            let unit = report.get("unit")?.as_str()?.to_owned();
            let at: chrono::DateTime<chrono::Utc> = report.get("at")?.as_str()?.parse().ok()?;
            let shown = json!({
                "at": report.get("at"),
                "unit": report.get("unit"),
                "from": message.get("from"),
                "text": message.get("text"),
                "entry": report.get("entry"),
                "key": message.get("key"),
            });
            Some((unit, at.timestamp_millis(), shown))
        })
        .collect()
}
