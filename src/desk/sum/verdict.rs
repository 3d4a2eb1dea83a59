//! What a voltage drop means: fine, long, or too much; and which cord would do.

use serde_json::{Map, Value, json};

use super::super::answer::Reply;
use crate::physics::sum::answer as compute;
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::{CORD_NOTE_PCT, CORD_WARN_PCT};

/// Cords that are to be had, thinnest first, AWG (common practice, no source).
const GAUGES: &[u32] = &[14, 12, 10, 8, 6];

/// The quantity that has a verdict.
pub(super) const JUDGED: &str = "voltage_drop_pct";

/// Says in words what a voltage drop comes to.
pub(super) fn tell(given: &Map<String, Value>, reply: &mut Reply<'_>) {
    let Some(pct) = worked_out(JUDGED, given) else {
        return;
    };
    let thicker = thicker(given);
    let better = |limit: f64| {
        let mut does = thicker.iter().filter(|(_, pct)| *pct <= limit);
        does.next().copied()
    };
    let limit = match pct > CORD_WARN_PCT {
        true => CORD_WARN_PCT,
        false => CORD_NOTE_PCT,
    };
    let mut args = vec![("limit", Arg::Number(limit, Measure::Pct))];
    let mut key = match pct {
        pct if pct > CORD_WARN_PCT => "sum-drop-too-much",
        pct if pct > CORD_NOTE_PCT => "sum-drop-long",
        _ => "sum-drop-fine",
    }
    .to_owned();
    if pct > CORD_NOTE_PCT {
        match better(limit) {
            Some((awg, pct)) => {
                key.push_str("-use");
                args.push(("count", awg.into()));
                args.push(("value", Arg::Number(pct, Measure::Pct)));
            }
            None => key.push_str("-shorter"),
        }
    }
    reply.say(&key, &args);
    if let Some((amps, most)) = amps(given).zip(worked_out("cord_ampacity_A", given))
        && amps > most
    {
        let args = [
            ("read", Arg::Number(amps, Measure::Amp)),
            ("limit", Arg::Number(most, Measure::Amp)),
        ];
        reply.say("sum-drop-over-rating", &args);
        let caution = reply.voice.caution(crate::finding::Caution::LocalCode);
        reply.lines.push(format!("  {caution}"));
    }
}

/// Returns the thicker cords that carry the load, each with what it would lose, %.
fn thicker(given: &Map<String, Value>) -> Vec<(u32, f64)> {
    let Some(awg) = given.get("awg").and_then(Value::as_f64) else {
        return Vec::new();
    };
    let thicker = GAUGES.iter().filter(|gauge| f64::from(**gauge) < awg);
    let with = |gauge: &u32| {
        let mut given = given.clone();
        given.insert("awg".into(), json!(gauge));
        let carries = amps(&given)? <= worked_out("cord_ampacity_A", &given)?;
        let pct = worked_out(JUDGED, &given)?;
        carries.then_some((*gauge, pct))
    };
    thicker.filter_map(with).collect()
}

fn amps(given: &Map<String, Value>) -> Option<f64> {
    given.get("amps").and_then(Value::as_f64)
}

fn worked_out(quantity: &str, given: &Map<String, Value>) -> Option<f64> {
    compute(quantity, given).ok()?.value.as_f64()
}
