//! Whether a trailer needs a regulator, and what it is set to.

use super::question::warn;
use super::reply::Reply;
use crate::desk::situate::Case;
use crate::finding::{Caution, FindingId};
use crate::fleet::PressureLimits;
use crate::heard::{Event, ReadingKey};
use crate::quantity::Measure;
use crate::reply::Arg;

/// The pressure over which plumbing codes want a regulator, psi (IPC 604.8; UPC 608.2).
pub(super) const CODE_PSI: f64 = 80.0;

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

/// Says which pressures a trailer takes.
pub(super) fn range(limits: PressureLimits, reply: &Reply<'_>) -> String {
    let args = [
        ("first", Arg::Number(limits.min, Measure::Psi)),
        ("last", Arg::Number(limits.max, Measure::Psi)),
    ];
    reply.voice.say("answer-range", &args)
}
