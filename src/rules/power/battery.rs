//! The 12 V side: living on the battery, and a battery that is low.

use chrono::TimeDelta;

use super::super::tanks::fresh_told;
use crate::book::PowerState;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault, PlanKind, ReadingKey};
use crate::physics::battery::{Bank, Living, fresh_time, hours_left, load_at_uses, soc_from_rest};
use crate::physics::units::{amps, gal, in_amps, in_hours, volts};
use crate::quantity::Measure;
use crate::rules::FREEZE_F;
use crate::situation::Situation;

/// From these volts up a charger holds the battery, and its charge cannot be read (common practice, no source).
const CHARGING_V: f64 = 13.2;
/// Less than this is no time to speak of, h.
const NO_MORE_H: f64 = 0.1;
/// Full charge is taken where nothing was read, %.
const FULL_PCT: f64 = 100.0;

/// The 12 V side lives on the battery: site power lost or none, the converter's circuit dead, or fewer cords than circuits
/// and nobody named which. Soon, with the hours left, and whether the water or the battery ends first.
pub(super) fn on_battery(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[
            ReadingKey::Cords,
            ReadingKey::BatteryV,
            ReadingKey::BatteryPct,
            ReadingKey::Guests,
        ],
        &[
            Event::PowerLost,
            Event::PowerOn,
            Event::PowerBack,
            Event::InService,
        ],
        &[Fault::NoPower, Fault::BatteryLow],
    ) || s.touches_circuits()
        || named_dead(s);
    if !bears || s.battery_charging() {
        return None;
    }
    let circuit = s.spec.battery.converter_circuit;
    let dead = converter(s)?;
    let facts = Facts::new().spec("converter_circuit", f64::from(circuit), Measure::Count);
    let facts =
        match dead {
            Dead::Unnamed(cords, origin) => facts
                .number("cords", cords, Measure::Count, origin)
                .spec("circuits", s.spec.circuits.len() as f64, Measure::Count),
            Dead::NoPower | Dead::Circuit => facts,
        };
    let (facts, lasts) = endurance(s, facts);
    let facts = facts.by(
        "formula-battery-hours",
        "Peukert 1897; load model fitted to the trade's rule of thumb",
    );
    let says = match (dead, lasts) {
        (Dead::Unnamed(..), None | Some(Lasts::NoMore)) => "power-on-battery-ask-plain",
        (Dead::Unnamed(..), Some(_)) => "power-on-battery-ask",
        (Dead::Circuit, None | Some(Lasts::NoMore)) => "power-on-battery-circuit-plain",
        (Dead::Circuit, Some(_)) => "power-on-battery-circuit",
        (Dead::NoPower, Some(Lasts::NoMore)) => "power-on-battery-down",
        (Dead::NoPower, None) => "power-on-battery-plain",
        (Dead::NoPower, Some(Lasts::Battery)) => "power-on-battery",
        (Dead::NoPower, Some(Lasts::FreshFirst)) => "power-on-battery-fresh-first",
        (Dead::NoPower, Some(Lasts::BatteryFirst)) => "power-on-battery-battery-first",
    };
    Some(
        Finding::new(
            FindingId::PowerOnBattery,
            Level::Notice,
            Urgency::Soon,
            facts,
        )
        .says(says),
    )
}

/// Why the converter has no power.
#[derive(Debug, Clone, Copy)]
enum Dead {
    /// The site gives none.
    NoPower,
    /// Its circuit was not among those named live.
    Circuit,
    /// There are fewer cords than circuits, and nobody said which are fed.
    Unnamed(f64, Origin),
}

/// Tells whether the message names the converter's circuit dead.
fn named_dead(s: &Situation<'_>) -> bool {
    let dead = PlanKind::DeadCircuit {
        circuit: s.spec.battery.converter_circuit,
    };
    s.plans.iter().any(|plan| plan.kind == dead)
}

fn converter(s: &Situation<'_>) -> Option<Dead> {
    if s.without_power() {
        return Some(Dead::NoPower);
    }
    if !s.stands() {
        return None;
    }
    if named_dead(s) {
        return Some(Dead::Circuit);
    }
    if let Some((live, _)) = &s.now.circuits_live {
        let dead = !live.contains(&s.spec.battery.converter_circuit);
        return dead.then_some(Dead::Circuit);
    }
    // a site known to offer too few is asked about once power is on
    let offered = s
        .site
        .filter(|_| matches!(s.now.power(), PowerState::On(_)))
        .and_then(|site| site.power.cords)
        .map(|cords| (f64::from(cords), Origin::Spec));
    let read = s.now.value(ReadingKey::Cords);
    let (cords, origin) = read.map(|cords| (cords, Origin::Read)).or(offered)?;
    if cords < 1.0 {
        return Some(Dead::NoPower);
    }
    (cords < s.spec.circuits.len() as f64).then_some(Dead::Unnamed(cords, origin))
}

/// Which ends first.
#[derive(Debug, Clone, Copy)]
enum Lasts {
    /// Only the battery's hours are known.
    Battery,
    FreshFirst,
    BatteryFirst,
    /// The battery is down already.
    NoMore,
}

/// Adds the battery's hours at the expected load, and the fresh tank's where the trailer lives from it.
fn endurance(s: &Situation<'_>, facts: Facts) -> (Facts, Option<Lasts>) {
    let Some(uses) = s.uses_per_h() else {
        return (facts, None);
    };
    let (charge, origin) = charge(s);
    let bank = Bank::of_kind(s.spec.battery.ah, &s.spec.battery.kind);
    let living = Living {
        rooms: s.spec.rooms.len().max(1) as f64,
        per_use: gal(s.spec.gal_per_use),
        pumps: if s.runs_from_tank() { 2.0 } else { 0.0 },
        ..Living::default()
    };
    let reckoned = || {
        let load = load_at_uses(&living, uses);
        let hours = hours_left(&bank, charge, load)?;
        Some((in_hours(hours), in_amps(load)))
    };
    let outlook = s.outlook.battery.as_ref();
    let Some((hours, load)) = outlook
        .map(|battery| (battery.hours, battery.amps))
        .or_else(reckoned)
    else {
        return (facts, None);
    };
    let facts = facts
        .spec("battery_ah", s.spec.battery.ah, Measure::AmpHour)
        .number("charge", charge, Measure::Pct, origin)
        .computed("uses", uses, Measure::PerHour)
        .computed("load", in_amps(amps(load)), Measure::Amp)
        .computed("battery_hours", hours, Measure::Hour);
    if hours < NO_MORE_H {
        return (facts, Some(Lasts::NoMore));
    }
    match fresh_hours(s, uses) {
        Some(fresh) => {
            let facts = facts.computed("fresh_hours", fresh, Measure::Hour);
            if fresh < hours {
                (facts, Some(Lasts::FreshFirst))
            } else {
                (facts, Some(Lasts::BatteryFirst))
            }
        }
        None => (facts, Some(Lasts::Battery)),
    }
}

fn fresh_hours(s: &Situation<'_>, uses: f64) -> Option<f64> {
    if !s.runs_from_tank() {
        return None;
    }
    let forecast = s.outlook.fresh.as_ref().map(|fresh| fresh.level_pct[1]);
    let level = forecast.or(fresh_told(s).map(|told| told.pct))?;
    let left = gal(s.spec.fresh_gal * level / 100.0);
    fresh_time(left, uses, gal(s.spec.gal_per_use)).map(in_hours)
}

/// The charge, %, from a reading of the last hours, else full.
fn charge(s: &Situation<'_>) -> (f64, Origin) {
    let hours = TimeDelta::hours(4);
    if let Some(pct) = s.recent(ReadingKey::BatteryPct, hours) {
        return (pct, Origin::Read);
    }
    match s.recent(ReadingKey::BatteryV, hours) {
        Some(v) if v < CHARGING_V => (soc_from_rest(volts(v)), Origin::Computed),
        _ => (FULL_PCT, Origin::Assumed),
    }
}

/// Under 75 % at rest (12.45 V): plan; under half (12.24 V): soon; under a quarter (12.06 V): now. A battery called low
/// without a number: soon.
pub(super) fn battery_low(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::BatteryV, ReadingKey::BatteryPct],
        &[],
        &[Fault::BatteryLow],
    );
    if !bears {
        return None;
    }
    let source = "lead-acid rest-voltage table (widely printed, from memory)";
    let facts = |facts: Facts| facts.by("formula-charge", source);
    let recent = TimeDelta::hours(12);
    let by_volts = s.recent(ReadingKey::BatteryV, recent).and_then(|v| {
        let charge = soc_from_rest(volts(v));
        let (urgency, says, limit) = match v {
            v if v < 11.9 => (Urgency::Now, "power-battery-low-flat", 11.9),
            v if v < 12.06 => (Urgency::Now, "power-battery-low-act", 12.06),
            v if v < 12.24 => (Urgency::Soon, "power-battery-low-soon", 12.24),
            v if v < 12.45 => (Urgency::Plan, "power-battery-low-plan", 12.45),
            _ => return None,
        };
        let stated = Facts::new()
            .read("volts", v, Measure::Volt)
            .computed("charge", charge, Measure::Pct)
            .limit("limit", limit, Measure::Volt);
        Some((urgency, says, facts(stated)))
    });
    let by_charge = s.recent(ReadingKey::BatteryPct, recent).and_then(|pct| {
        let (urgency, says, limit) = match pct {
            p if p < 25.0 => (Urgency::Now, "power-battery-low-act-charge", 25.0),
            p if p < 50.0 => (Urgency::Soon, "power-battery-low-soon-charge", 50.0),
            p if p < 75.0 => (Urgency::Plan, "power-battery-low-plan-charge", 75.0),
            _ => return None,
        };
        let stated =
            Facts::new()
                .read("charge", pct, Measure::Pct)
                .limit("limit", limit, Measure::Pct);
        Some((urgency, says, facts(stated)))
    });
    let told = s.now.has(Fault::BatteryLow).then(|| {
        (
            Urgency::Soon,
            "power-battery-low-told",
            Facts::new().by("formula-reported", source),
        )
    });
    let (urgency, says, facts) = by_volts.or(by_charge).or(told)?;
    let found = Finding::new(FindingId::PowerBatteryLow, Level::Notice, urgency, facts)
        .says(says)
        .cautions(&[Caution::BatteryGas]);
    let found = if s.air_f().is_some_and(|air| air <= FREEZE_F) {
        found.cautions(&[Caution::BatteryFreeze])
    } else {
        found
    };
    Some(if urgency == Urgency::Now {
        found.task(TaskKind::Repair, Some(s.at))
    } else {
        found
    })
}
