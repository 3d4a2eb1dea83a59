//! "Is 55 ok on 12?", "is 12 all right?": a number held against the limits, a trailer against what is open. Nothing is logged.

use super::pressure::{CODE_PSI, range};
use super::question::{presses, warn};
use super::reply::Reply;
use super::value_asked::{amps, number};
use crate::desk::phrases::Phrases;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::finding::{Caution, Finding, FindingId, Level, Urgency};
use crate::heard::ReadingKey;
use crate::quantity::Measure;
use crate::reply::Arg;

/// What a circuit carries for hours, as a share of its rating (NEC 210.20(A)).
const LONG_SHARE: f64 = 0.8;
/// What one air conditioner or one heater of 1,500 W draws, A.
const ONE_LOAD_A: f64 = 12.5;

/// Is that number all right? Holds it against the trailer's limits as if it had been reported; nothing is logged.
pub(super) fn is_ok(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let phrases = hearing.desk.phrases;
    if let Some(rated) = amps(phrases, hearing.text) {
        let args = [
            ("value", Arg::Number(rated, Measure::Amp)),
            ("limit", Arg::Number(rated * LONG_SHARE, Measure::Amp)),
        ];
        let key = match rated * LONG_SHARE < ONE_LOAD_A {
            true => "answer-amp-outlet-small",
            false => "answer-amp-outlet",
        };
        let line = reply.voice.say(key, &args);
        reply.first.push(line);
        warn(&[Caution::HotPlug], reply);
        return Vec::new();
    }
    let Some((key, value)) = number(phrases, hearing.text, Some(case), &hearing.talk.advice) else {
        // "is it ok to jump it from my truck": what is reported says nothing of that
        if phrases.holds("asked-value", "act", hearing.text) {
            let line = reply.voice.word("answer-act-unknown");
            reply.first.push(line);
        } else if is_of_something_else(hearing, case) {
            let line = reply.voice.word("answer-cannot");
            reply.first.push(line);
        } else {
            how_it_is(case, reply);
        }
        return Vec::new();
    };
    let what = reply.voice.reading(key, value, case.spec());
    let mut found = hearing.as_if_reported(case, key, value).findings();
    found.retain(|finding| judges(key, finding.id));
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let verdict = verdict(phrases, hearing.text, found.first());
    let line = reply.voice.say(verdict, &[unit, ("what", what.into())]);
    reply.first.push(line);
    if let Some(limits) = case
        .spec()
        .map(|spec| spec.pressure_psi)
        .filter(|_| key == ReadingKey::PressurePsi)
    {
        let line = range(limits, reply);
        reply.first.push(line);
    }
    for finding in &found {
        let line = reply.voice.finding(finding, false);
        reply.first.push(line);
    }
    reply.first.push(reply.voice.word("answer-not-logged"));
    Vec::new()
}

/// Says yes or no to what was asked: to "is it too much" the yes is the bad news.
fn verdict(phrases: &Phrases, text: &str, worst: Option<&Finding>) -> &'static str {
    let asks = |list| phrases.holds("asked-value", list, text);
    let over = worst.map(|worst| is_over(worst.id));
    match (over, worst) {
        _ if asks("not-too") => {}
        (None, _) if asks("too-high") => return "answer-too-high-no",
        (None, _) if asks("too-low") => return "answer-too-low-no",
        (None, _) if asks("no-good") => return "answer-bad-no",
        (Some(true), _) if asks("too-high") => return "answer-too-high-yes",
        (Some(false), _) if asks("too-high") => return "answer-but-too-low",
        (Some(false), _) if asks("too-low") => return "answer-too-low-yes",
        (Some(true), _) if asks("too-low") => return "answer-but-too-high",
        (Some(_), _) if asks("no-good") => return "answer-bad-yes",
        _ => {}
    }
    match worst {
        None => "answer-ok",
        Some(worst) if worst.urgency == Urgency::Plan && worst.level == Level::Notice => {
            "answer-ok-nearly"
        }
        Some(_) => "answer-not-ok",
    }
}

/// Tells whether a finding says that a value is too high; else it is too low.
fn is_over(id: FindingId) -> bool {
    use FindingId as F;
    id.topic() == "heat"
        || matches!(
            id,
            F::WaterOverPressure
                | F::PowerHighVoltage
                | F::PowerOverCurrent
                | F::WasteBookPumpOut
                | F::WasteCloseNow
        )
}

/// Tells whether a finding judges a reading of this kind itself, and not what it also bears on.
fn judges(key: ReadingKey, id: FindingId) -> bool {
    use FindingId as F;
    match key {
        ReadingKey::PressurePsi => {
            matches!(
                id,
                F::WaterOverPressure | F::WaterUnderPressure | F::WaterBackflow
            )
        }
        ReadingKey::Volts => matches!(id, F::PowerLowVoltage | F::PowerHighVoltage),
        ReadingKey::BatteryV => matches!(id, F::PowerBatteryLow | F::PowerHighVoltage),
        ReadingKey::WastePct => matches!(id, F::WasteBookPumpOut | F::WasteCloseNow),
        ReadingKey::FreshPct => id == F::WaterFreshEndurance,
        ReadingKey::AirF => matches!(id.topic(), "cold" | "heat"),
        _ => true,
    }
}

/// Answers for no trailer in particular, by the usual limits; false where the question needs one.
pub(super) fn in_general(hearing: &Hearing<'_>, topic: &str, reply: &mut Reply<'_>) -> bool {
    let asked = number(
        hearing.desk.phrases,
        hearing.text,
        None,
        &hearing.talk.advice,
    );
    let pressure = match (topic, asked) {
        ("is-ok", Some((ReadingKey::PressurePsi, value))) => Some(value),
        ("is-ok", _) => return false,
        _ => None,
    };
    reply
        .first
        .push(reply.voice.word("answer-general-pressure"));
    match pressure {
        Some(psi) if psi <= CODE_PSI => warn(&[Caution::NightPressure], reply),
        _ => warn(&[Caution::PressureCode, Caution::NightPressure], reply),
    }
    true
}

/// Tells whether it is asked of something else than how the trailer is: "is it ok to jump it from my truck" is more than
/// "is 12 ok tonight".
fn is_of_something_else(hearing: &Hearing<'_>, case: &Case) -> bool {
    let rest = hearing
        .desk
        .phrases
        .without("asked-value", "how-it-is", hearing.text);
    let more = |word: &&str| !word.is_empty() && *word != case.unit.as_str().to_lowercase();
    rest.split(' ').any(|word| more(&word))
}

/// Is it all right as it stands? Never yes while something is open.
fn how_it_is(case: &Case, reply: &mut Reply<'_>) {
    let findings = case.findings();
    let pressing = findings.iter().any(presses);
    let unit = ("unit", Arg::from(case.unit.as_str()));
    // what has to be done soon is no yes either
    let soon = findings
        .iter()
        .filter(|finding| finding.urgency == Urgency::Soon);
    let soon: Vec<String> = soon.map(|finding| reply.name(finding)).collect();
    if !pressing && !soon.is_empty() && case.now.last_word.is_some() {
        let args = [unit, ("names", reply.voice.all_of(&soon).into())];
        let line = reply.voice.say("answer-well-until", &args);
        return reply.first.push(line);
    }
    let open =
        |finding: &Finding| finding.urgency != Urgency::Plan || finding.level > Level::Notice;
    let open = findings.iter().any(open);
    let key = match (pressing, open, &case.now.last_word) {
        (true, ..) => "answer-not-well",
        (false, _, None) => "answer-no-word",
        (false, true, Some(_)) => "answer-partly",
        (false, false, Some(_)) => "answer-well",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
}
