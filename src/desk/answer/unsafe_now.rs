//! Answers that stop somebody: water without a regulator, people who would go back into a danger.

use chrono::TimeDelta;

use super::question::warn;
use super::ready::open;
use super::reply::Reply;
use crate::desk::receive::{Hearing, closing_words};
use crate::desk::situate::Case;
use crate::finding::{Caution, FindingId};
use crate::heard::{Fault, ReadingKey};
use crate::quantity::Measure;
use crate::reply::Arg;

/// The water is on, or about to be, and no regulator is: the tap is shut until one is, or the pressure is known to be low.
pub(super) fn no_regulator(
    hearing: &Hearing<'_>,
    case: &Case,
    reply: &mut Reply<'_>,
) -> Vec<FindingId> {
    let Some(limits) = case.spec().map(|spec| spec.pressure_psi) else {
        return Vec::new();
    };
    // what was read here counts, and it is told what that asks for
    let read = |key| case.now.value_since(key, case.at - TimeDelta::hours(24));
    let told = read(ReadingKey::PressurePsi).or(read(ReadingKey::SupplyPsi));
    let pressures = [ReadingKey::PressurePsi, ReadingKey::SupplyPsi];
    let mut entries = hearing.heard.entries.iter();
    let in_this = entries.any(|entry| {
        let mut read = pressures.iter();
        read.any(|key| entry.readings.value(*key).is_some())
    });
    if told.is_some_and(|psi| psi > limits.max) && in_this {
        return Vec::new();
    }
    let mut args = vec![
        ("unit", Arg::from(case.unit.as_str())),
        ("limit", Arg::Number(limits.max, Measure::Psi)),
        ("value", Arg::Number(limits.regulator, Measure::Psi)),
    ];
    let stated = case.site().and_then(|site| site.water.static_psi);
    // what was read there before, with a regulator or without, is what the site gives at least
    let stated = stated.into_iter().chain(told).reduce(f64::max);
    let key = match stated {
        Some(psi) => {
            args.push(("read", Arg::Number(psi, Measure::Psi)));
            "answer-no-regulator"
        }
        None => "answer-no-regulator-unread",
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    warn(
        &[
            Caution::BurstHose,
            Caution::BleedFirst,
            Caution::NightPressure,
        ],
        reply,
    );
    vec![FindingId::WaterOverPressure]
}

/// May people go back in? Not while anything stands that can kill.
pub(super) fn back_in(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let mut open_ones = Fault::DANGERS.to_vec();
    open_ones.retain(|fault| case.now.has(*fault));
    if !open_ones.is_empty() {
        let line = reply
            .voice
            .say("answer-back-in", &[("unit", case.unit.as_str().into())]);
        reply.first.push(line);
        let ends = closing_words(&reply.voice, &case.unit, &open_ones);
        reply.first.extend(ends);
        return Vec::new();
    }
    open(case, reply)
}
