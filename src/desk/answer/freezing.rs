//! What to do about the cold at one trailer: heaters, draining, how long until it freezes.

use super::question::warn;
use super::reply::Reply;
use crate::book::PowerState;
use crate::desk::situate::Case;
use crate::finding::{Caution, FindingId};
use crate::heard::ReadingKey;
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::FREEZE_F;
use chrono::TimeDelta;

/// Cold from which a cold package runs, °F (common practice, no source).
const PACKAGE_F: f64 = 40.0;

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
    let dead =
        case.now.power() != PowerState::Unknown && !matches!(case.now.power(), PowerState::On(_));
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

/// The coldest that was read today or is forecast, °F.
fn coldest(case: &Case) -> Option<f64> {
    let situation = case.situation()?;
    let low = situation.recent(ReadingKey::LowF, TimeDelta::hours(18));
    let held = situation.frost_held().map(|(air, _)| air);
    [situation.air_f(), held, low]
        .into_iter()
        .flatten()
        .reduce(f64::min)
}
