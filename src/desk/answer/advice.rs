//! Yes or no, and the next thing to do: what somebody asks before they act.

use super::question::{numbered, to_do, warn};
use super::reply::Reply;
use chrono::{DateTime, Utc};

use crate::desk::phrases::{Phrases, plain};
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::when;
use crate::finding::{Caution, Finding, FindingId, Level, TaskKind, Urgency};
use crate::fleet::PressureLimits;
use crate::heard::{Entry, Event, Plan, PlanKind, ReadingKey};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules;
use crate::situation::Occasion;
use crate::words::psi_in;

/// Cold from which a cold package runs, °F (common practice, no source).
const PACKAGE_F: f64 = 40.0;
/// Freezing, °F.
const FREEZE_F: f64 = 32.0;
/// The pressure over which plumbing codes want a regulator, psi (IPC 604.8; UPC 608.2).
const CODE_PSI: f64 = 80.0;

/// Is that number all right? Holds it against the trailer's limits as if it had been reported; nothing is logged.
pub(super) fn is_ok(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let phrases = hearing.desk.phrases;
    if let Some(rated) = amps_asked(phrases, hearing.text) {
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
    let mut entry = Entry {
        unit: Some(case.unit.clone()),
        ..Entry::default()
    };
    entry.readings.set(key, value);
    let kept = hearing.desk.book.unit(&case.unit);
    let now = kept.map_or_else(Default::default, |kept| {
        kept.preview(&hearing.member.id, std::iter::once((hearing.now, &entry)))
    });
    let what = reply.voice.reading(key, value, case.spec());
    let supposed = Case::new(
        hearing.desk,
        &hearing.fleet,
        &case.unit,
        hearing.now,
        (case.now.clone(), now),
        entry,
        Vec::new(),
        Occasion::Report,
    );
    let mut found = supposed.findings();
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

/// What a circuit carries for hours, as a share of its rating (NEC 210.20(A)).
const LONG_SHARE: f64 = 0.8;
/// What one air conditioner or one heater of 1,500 W draws, A.
const ONE_LOAD_A: f64 = 12.5;

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
    let soon: Vec<String> = soon
        .map(|finding| reply.voice.name(finding.id, finding.level))
        .collect();
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

/// Does it need a regulator?
pub(super) fn regulator(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some(limits) = case.spec().map(|spec| spec.pressure_psi) else {
        return Vec::new();
    };
    let fitted = case.now.when(Event::RegulatorFitted);
    let read = case
        .now
        .pressures
        .last()
        .map(|read| read.psi)
        .filter(|_| fitted.is_none());
    let told = case
        .now
        .readings
        .get(&ReadingKey::SupplyPsi)
        .map(|latest| latest.value);
    let stated = case.site().and_then(|site| site.water.static_psi);
    let highest = [read, told, stated].into_iter().flatten().reduce(f64::max);
    let mut args = vec![
        ("unit", Arg::from(case.unit.as_str())),
        ("limit", Arg::Number(limits.max, Measure::Psi)),
        ("value", Arg::Number(limits.regulator, Measure::Psi)),
    ];
    let key = match highest {
        None => "answer-regulator-unread",
        Some(psi) => {
            args.push(("read", Arg::Number(psi, Measure::Psi)));
            match (fitted, psi > limits.max) {
                (Some(at), _) => {
                    args.push(("time", at.into()));
                    "answer-regulator-fitted"
                }
                (None, true) => "answer-regulator-yes",
                (None, false) => "answer-regulator-no",
            }
        }
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    match highest {
        Some(psi) if psi > CODE_PSI => warn(
            &[
                Caution::BurstHose,
                Caution::BleedFirst,
                Caution::PressureCode,
            ],
            reply,
        ),
        _ => warn(&[Caution::NightPressure], reply),
    }
    vec![FindingId::WaterOverPressure]
}

/// What must the regulator be set to?
pub(super) fn set_regulator(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    if let Some(spec) = case.spec() {
        let limits = spec.pressure_psi;
        let args = [
            ("unit", Arg::from(case.unit.as_str())),
            ("value", Arg::Number(limits.regulator, Measure::Psi)),
        ];
        let line = reply.voice.say("answer-set-regulator", &args);
        reply.first.push(line);
        let line = range(limits, reply);
        reply.first.push(line);
        warn(&[Caution::KeepRegulator], reply);
    }
    Vec::new()
}

/// Should the heaters be on?
pub(super) fn heater(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some((situation, spec)) = case.situation().zip(case.spec()) else {
        return Vec::new();
    };
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let coldest = coldest(case);
    let mut args = vec![unit];
    if let Some(circuit) = spec.cold.heater_circuit {
        args.push(("circuit", u32::from(circuit).into()));
    }
    args.extend(coldest.map(|cold| ("value", Arg::Number(cold, Measure::DegF))));
    let key = match coldest {
        _ if !spec.cold.package => match coldest {
            Some(cold) if cold <= FREEZE_F => "answer-heater-none-freezing",
            _ => "answer-heater-none",
        },
        _ if case.now.heater_on() => "answer-heater-is-on",
        None => "answer-heater-unread",
        Some(cold) if cold > PACKAGE_F => "answer-heater-no",
        Some(_) if situation.spec.cold.heater_circuit.is_some() => "answer-heater-yes",
        Some(_) => "answer-heater-yes-plain",
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    vec![FindingId::ColdTankHeaterOn, FindingId::ColdNoColdPackage]
}

/// Must it be drained?
pub(super) fn drain(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some(spec) = case.spec() else {
        return Vec::new();
    };
    let coldest = coldest(case);
    let mut args = vec![("unit", Arg::from(case.unit.as_str()))];
    args.extend(coldest.map(|cold| ("value", Arg::Number(cold, Measure::DegF))));
    let dead = case.now.power() != crate::book::PowerState::Unknown
        && !matches!(case.now.power(), crate::book::PowerState::On(_));
    let key = match coldest {
        None => "answer-drain-unread",
        Some(cold) if cold > PACKAGE_F => "answer-drain-no",
        Some(cold) if cold > FREEZE_F => "answer-drain-ready",
        Some(cold) if !spec.cold.package && cold <= 0.0 => "answer-drain-all",
        Some(_) if dead => "answer-drain-all",
        Some(_) if spec.cold.package => "answer-drain-hose",
        Some(_) => "answer-drain-wet-ends",
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    if coldest.is_some_and(|cold| cold <= FREEZE_F) {
        warn(
            &[Caution::HeaterDry, Caution::Antifreeze, Caution::IcePlug],
            reply,
        );
    }
    vec![FindingId::ColdWinterize, FindingId::ColdNoColdPackage]
}

/// How long until it freezes?
pub(super) fn freeze(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let found = case
        .findings()
        .into_iter()
        .find(|finding| finding.id == FindingId::ColdFreezeSoon);
    match found {
        Some(finding) => {
            let line = reply.voice.finding(&finding, false);
            reply.first.push(line);
        }
        None => {
            let key = if coldest(case).is_some() {
                "answer-freeze-no"
            } else {
                "answer-freeze-unread"
            };
            let line = reply.voice.say(key, &[("unit", case.unit.as_str().into())]);
            reply.first.push(line);
        }
    }
    vec![FindingId::ColdFreezeSoon]
}

/// How many cords, and into which circuits?
pub(super) fn cords(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some((situation, spec)) = case.situation().zip(case.spec()) else {
        return Vec::new();
    };
    let feed = rules::circuits_to_feed(&situation);
    let names: Vec<String> = feed.iter().map(u8::to_string).collect();
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("count", feed.len().into()),
        ("names", reply.voice.all_of(&names).into()),
        ("circuit", u32::from(spec.battery.converter_circuit).into()),
    ];
    let line = reply.voice.say("answer-cords", &args);
    reply.first.push(line);
    let offered = case.site().and_then(|site| site.power.cords);
    if let Some(offered) = offered {
        let line = reply
            .voice
            .say("answer-cords-offered", &[("count", offered.into())]);
        reply.first.push(line);
    }
    warn(&[Caution::NoBypass, Caution::LocalCode], reply);
    vec![FindingId::PowerTooFewCircuits]
}

/// May it be towed?
pub(super) fn tow(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let plan = Plan {
        unit: Some(case.unit.clone()),
        kind: PlanKind::Other,
        text: "tow".into(),
    };
    let asked = Case::new(
        hearing.desk,
        &hearing.fleet,
        &case.unit,
        case.at,
        (case.before.clone(), case.now.clone()),
        Entry::default(),
        vec![plan],
        Occasion::Asked,
    );
    let stops: Vec<Finding> = asked
        .findings()
        .into_iter()
        .filter(|finding| finding.id.topic() == "tow")
        .collect();
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let left = asked
        .situation()
        .map(|situation| rules::leaving(&situation))
        .unwrap_or_default();
    let key = match (stops.is_empty(), left.is_empty()) {
        (false, _) => "answer-tow-no",
        (true, false) => "answer-tow-not-yet",
        (true, true) => "answer-tow-yes",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    if !left.is_empty() {
        let names: Vec<String> = left
            .iter()
            .map(|code| reply.voice.word(&format!("value-{code}")))
            .collect();
        let line = reply
            .voice
            .say("answer-tow-left", &[("names", names.join(", ").into())]);
        reply.first.push(line);
    }
    if stops.is_empty() {
        warn(&[Caution::TowEmpty, Caution::Breakaway], reply);
    }
    reply.findings.extend(stops);
    Vec::new()
}

/// May guests be let in?
pub(super) fn open(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let findings = case.findings();
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let first: Vec<&Finding> = findings
        .iter()
        .filter(|finding| presses(finding) || finding.id == FindingId::SiteSetUpNext)
        .collect();
    let key = match (first.is_empty(), &case.now.last_word) {
        (false, _) => "answer-open-no",
        (true, None) => "answer-open-unread",
        (true, Some(_)) => "answer-open-yes",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    let steps: Vec<String> = first.iter().map(|finding| to_do(finding, reply)).collect();
    reply.first.extend(numbered(&steps));
    first.into_iter().map(|finding| finding.id).collect()
}

/// Does the tank last, or is a truck needed?
pub(super) fn pump_out(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let key = match &case.outlook.waste {
        None => "answer-pump-out-unread",
        Some(waste) if waste.likely_pct >= waste.limit_pct => "answer-pump-out-now",
        Some(waste) if waste.p50.is_some() && !waste.could_stay_below => "answer-pump-out-yes",
        Some(waste) if waste.p10.is_some() => "answer-pump-out-perhaps",
        Some(_) => "answer-pump-out-no",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    how_it_fills(case, reply)
}

/// Does the tank last, till the hour that is asked about where there is one?
pub(super) fn lasts(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let zone = case
        .job()
        .map_or(hearing.fleet.time_zone, |job| job.time_zone);
    let rest = hearing
        .desk
        .phrases
        .following("asked-value", "until", hearing.text);
    let named = |rest: &str| match plain(rest).split(' ').next() {
        Some("midnight" | "medianoche") => when::next("00:00", case.at, zone),
        Some("noon" | "mediodia") => when::next("12:00", case.at, zone),
        _ => when::coming(&format!("at {rest}"), case.at, zone),
    };
    let asked = rest.and_then(named);
    let (Some(at), Some(waste)) = (asked, &case.outlook.waste) else {
        return pump_out(case, reply);
    };
    let by = |reached: Option<DateTime<Utc>>| reached.is_some_and(|reached| reached <= at);
    let key = match waste.likely_pct >= waste.limit_pct {
        true => "answer-pump-out-now",
        false if by(waste.p50) => "answer-lasts-no",
        false if by(waste.p10) => "answer-lasts-perhaps",
        false => "answer-lasts-yes",
    };
    let args = [("unit", Arg::from(case.unit.as_str())), ("time", at.into())];
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    how_it_fills(case, reply)
}

fn how_it_fills(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    reply
        .first
        .extend(reply.voice.forecast_of("waste", &case.outlook));
    let task = reply
        .board
        .tasks()
        .open_task(&case.unit, TaskKind::PumpOut)
        .cloned();
    if let Some(task) = task {
        reply.first.push(reply.voice.task(&task));
    }
    vec![FindingId::WasteBookPumpOut]
}

/// Until when may the truck be called?
pub(super) fn truck_latest(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let task = reply.board.tasks().open_task(&case.unit, TaskKind::PumpOut);
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let line = match task.map(|task| (task.call_by, task.called)) {
        Some((_, Some(_))) | None => None,
        Some((Some(call_by), None)) if call_by > case.at => {
            let args = [unit, ("time", call_by.into())];
            Some(reply.voice.say("answer-truck-call-by", &args))
        }
        Some(_) => Some(reply.voice.say("answer-truck-call-now", &[unit])),
    };
    reply.first.extend(line);
    pump_out(case, reply)
}

/// What would be if something were so is not worked out, but what is known bears on it: how the tank fills, who is called.
pub(super) fn what_if(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let line = reply.voice.word("answer-cannot");
    reply.first.push(line);
    let of_the_truck = hearing
        .desk
        .phrases
        .holds("asked-value", "truck", hearing.text);
    if of_the_truck {
        return pump_out(case, reply);
    }
    Vec::new()
}

/// Tells whether a finding stands in the way of opening: somebody could get hurt, or it is to be done now.
fn presses(finding: &Finding) -> bool {
    finding.level >= Level::Warning
        || finding.urgency == Urgency::Now && finding.id != FindingId::ColdCrewCold
}

/// The coldest that was read today or is forecast, °F.
fn coldest(case: &Case) -> Option<f64> {
    let situation = case.situation()?;
    let low = situation.recent(ReadingKey::LowF, chrono::TimeDelta::hours(18));
    [situation.air_f(), low]
        .into_iter()
        .flatten()
        .reduce(f64::min)
}

fn range(limits: PressureLimits, reply: &Reply<'_>) -> String {
    let args = [
        ("first", Arg::Number(limits.min, Measure::Psi)),
        ("last", Arg::Number(limits.max, Measure::Psi)),
    ];
    reply.voice.say("answer-range", &args)
}

/// Finds the rating of an outlet that is asked about: "15 amp outlet only, is that ok".
fn amps_asked(phrases: &Phrases, text: &str) -> Option<f64> {
    if !phrases.holds("asked-value", "outlet", text) {
        return None;
    }
    let folded = text.to_lowercase();
    let words: Vec<&str> = folded
        .split(|c: char| !(c.is_alphanumeric() || c == '.'))
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().find_map(|(place, word)| {
        let digits = word.trim_end_matches(char::is_alphabetic);
        let label = match &word[digits.len()..] {
            "" => words.get(place + 1).copied().unwrap_or_default(),
            label => label,
        };
        let amps: f64 = digits.parse().ok()?;
        let rated = (5.0..=60.0).contains(&amps);
        (rated && phrases.is("asked-value", "a", label)).then_some(amps)
    })
}

/// Finds the number that is asked about, and what it is a reading of: by its unit of measure or its noun, else by what was
/// last talked about, else by its size. A trailer's own name is no such number.
fn number(
    phrases: &Phrases,
    text: &str,
    case: Option<&Case>,
    advice: &[Finding],
) -> Option<(ReadingKey, f64)> {
    let text = text.to_lowercase();
    let is_its_name = |digits: &str| case.is_some_and(|case| case.unit.as_str() == digits);
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || c == '?' || c == '¿' || c == ',')
        .filter(|word| !word.is_empty())
        .collect();
    let (place, value, rest) = words.iter().enumerate().find_map(|(place, word)| {
        let end = word
            .char_indices()
            .find(|(at, c)| !(c.is_ascii_digit() || *c == '.' || (*at == 0 && *c == '-')))
            .map_or(word.len(), |(at, _)| at);
        let (digits, rest) = word.split_at(end);
        let value: f64 = digits
            .trim_end_matches('.')
            .parse()
            .ok()
            .filter(|value: &f64| value.is_finite())?;
        (!(rest.is_empty() && is_its_name(digits))).then_some((place, value, rest))
    })?;
    let next = words.get(place + 1).copied().unwrap_or_default();
    let spoken_of = |list: &str| phrases.holds("asked-value", list, &text);
    // "15 amp", "16 gauge", "100 ft": of none of the readings that are judged here
    if phrases.is(
        "asked-value",
        "others",
        if rest.is_empty() { next } else { rest },
    ) {
        return None;
    }
    let measure = if rest.is_empty() { next } else { rest };
    let in_measure = |list: &str| measure == list || phrases.is("asked-value", list, measure);
    if let Some(psi) = psi_in(measure) {
        return Some((ReadingKey::PressurePsi, value * psi));
    }
    let battery = spoken_of("battery");
    let key = match () {
        () if phrases.is("asked-value", "pounds", measure) => ReadingKey::PressurePsi,
        () if in_measure("v") && (battery || value < 20.0) => ReadingKey::BatteryV,
        () if in_measure("v") => ReadingKey::Volts,
        () if in_measure("degrees") => ReadingKey::AirF,
        () if in_measure("percent") || measure == "%" => match spoken_of("fresh") {
            true => ReadingKey::FreshPct,
            false => ReadingKey::WastePct,
        },
        () if battery => ReadingKey::BatteryV,
        () if spoken_of("pressure") => ReadingKey::PressurePsi,
        () if spoken_of("volts") => ReadingKey::Volts,
        () => {
            let talked_of = advice.first().map(|finding| finding.id.topic());
            match value {
                v if (10.0..=15.0).contains(&v) => ReadingKey::BatteryV,
                v if (15.0..100.0).contains(&v) => ReadingKey::PressurePsi,
                v if (100.0..=140.0).contains(&v) && talked_of != Some("water") => {
                    ReadingKey::Volts
                }
                v if (100.0..=160.0).contains(&v) => ReadingKey::PressurePsi,
                _ => return None,
            }
        }
    };
    Some((key, value))
}
