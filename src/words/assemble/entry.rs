//! The facts of one trailer, folded to its entry: cures, corrections, contradictions, times.

use super::{Assembled, Fact, Says, When};
use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, UnitName};
use crate::words::attach::Value;
use crate::words::pair::Outcome;

pub(super) fn one_unit(
    unit: Option<UnitName>,
    facts: &[&Fact],
    fixes: &[usize],
    out: &mut Assembled,
) {
    let corrected = |a: usize, b: usize| fixes.iter().any(|f| (a..=b).contains(f));
    let mut entry = Entry {
        unit: unit.clone(),
        ..Entry::default()
    };
    let mut later: Vec<Entry> = Vec::new();
    let mut lasting: Vec<Fault> = Vec::new(); // faults said to come again
    let mut values: Vec<(ReadingKey, f64, &Fact, bool)> = Vec::new(); // false once dropped
    let mut amps: Vec<(Option<u8>, f64, usize, bool)> = Vec::new();
    for fact in facts {
        match fact.says {
            Says::That(Outcome::Event(event)) => {
                // a cure after its fault ends it; one that did not hold is followed by the fault again
                let cured: &[Fault] = match event {
                    Event::BreakerReset => &[Fault::BreakerTrip, Fault::GfciTrip],
                    Event::FuseReplaced => &[Fault::FuseBlown],
                    Event::PowerBack => &[Fault::NoPower],
                    Event::WaterOn => &[Fault::NoWater],
                    Event::Leveled => &[Fault::NotLevel],
                    _ => &[],
                };
                for fault in cured {
                    if entry.faults.contains(fault) && !lasting.contains(fault) {
                        entry.faults.retain(|f| f != fault);
                        entry.cleared.push(*fault);
                    }
                }
                // "22 back in the yard, parked": one coming
                let home = event == Event::Arrived && entry.events.contains(&Event::Returned);
                if !home && !entry.events.contains(&event) {
                    entry.events.push(event);
                }
            }
            Says::That(Outcome::Fault(fault)) => {
                entry.cleared.retain(|c| *c != fault);
                if fact.again {
                    lasting.push(fault);
                }
                if !entry.faults.contains(&fault) {
                    entry.faults.push(fault);
                }
            }
            Says::That(Outcome::Clears(fault)) => {
                entry.faults.retain(|f| *f != fault);
                if !entry.cleared.contains(&fault) {
                    entry.cleared.push(fault);
                }
            }
            Says::Value(Value::Reading(key, value)) => {
                let old = values.iter_mut().find(|(k, _, f, _)| {
                    *k == key && (f.when == fact.when || f.when.is_none() || fact.when.is_none())
                });
                match old {
                    None => values.push((key, value, fact, true)),
                    Some(old) if same(old.1, value) => {}
                    Some(old) if corrected(old.2.at, fact.at) => *old = (key, value, fact, true),
                    Some(old) => {
                        old.3 = false;
                        out.unclear.push((fact.at, "two-values"));
                    }
                }
            }
            Says::Value(Value::Taps(taps)) => entry.readings.taps = Some(taps),
            Says::Value(Value::Live(bits)) => {
                let live = entry.readings.circuits_live.get_or_insert_default();
                live.extend((1..=4).filter(|n| bits & (1 << n) != 0));
                live.sort_unstable();
                live.dedup();
            }
            Says::Value(Value::Amps(circuit, value)) => match amps
                .iter_mut()
                .find(|a| a.0 == circuit)
            {
                None => amps.push((circuit, value, fact.at, true)),
                Some(old) if same(old.1, value) => {}
                Some(old) if corrected(old.2, fact.at) => *old = (circuit, value, fact.at, true),
                Some(old) => {
                    old.3 = false;
                    out.unclear.push((fact.at, "two-values"));
                }
            },
            _ => {}
        }
    }
    let mut first: Option<When> = None;
    for (key, value, fact, kept) in values {
        if !kept {
            continue;
        }
        if entry.readings.value(key).is_none() {
            entry.readings.set(key, value);
            first = first.or(fact.when);
        } else {
            let mut other = Entry {
                unit: unit.clone(),
                when: fact.when.map(When::said),
                ..Entry::default()
            };
            other.readings.set(key, value);
            later.push(other);
        }
    }
    // how a pressure was read, where none is logged
    let pressure = [ReadingKey::PressurePsi, ReadingKey::SupplyPsi];
    if pressure
        .iter()
        .all(|key| entry.readings.value(*key).is_none())
    {
        entry.readings.taps = None;
    }
    for (circuit, value, _, kept) in amps {
        if kept {
            entry.readings.amps.push(Amps {
                circuit,
                amps: crate::quantity::rounded(value),
            });
        }
    }
    // what was done this morning, beside a value of now, is told for now
    let of_now = facts
        .iter()
        .any(|f| f.when.is_none() && matches!(f.says, Says::Value(_)));
    entry.when = first
        .or_else(|| facts.iter().find_map(|f| f.when))
        .filter(|when| !(of_now && when.minutes.is_none()))
        .map(When::said);
    number_for_low(&mut entry);
    if !entry.is_empty() {
        out.entries.push(entry);
    }
    later.sort_by(|a, b| a.when.cmp(&b.when));
    out.entries.extend(later);
}

/// Below this a pressure itself tells that little water comes, psi: the least that the trailers' own files ask for.
const WEAK_PSI: f64 = 40.0;
/// The same of a flow, gpm (common practice, no source).
const WEAK_GPM: f64 = 1.0;
/// Below these a battery's own number tells that it is low: half of a lead battery's charge (common practice, no source).
const LOW_BATTERY_V: f64 = 12.2;
const LOW_BATTERY_PCT: f64 = 50.0;

/// "battery low, 11.4 volts", "water is pitiful, 18 psi": where the number is told, it is the reading and no fault beside
/// it. Little water at a good pressure, or dim lights on a full battery, are still faults.
fn number_for_low(entry: &mut Entry) {
    let value = |key| entry.readings.value(key);
    let battery = value(ReadingKey::BatteryV).is_some_and(|v| v < LOW_BATTERY_V)
        || value(ReadingKey::BatteryPct).is_some_and(|pct| pct < LOW_BATTERY_PCT);
    let water = value(ReadingKey::FlowGpm).is_some_and(|gpm| gpm < WEAK_GPM)
        || value(ReadingKey::PressurePsi).is_some_and(|psi| psi < WEAK_PSI);
    entry.faults.retain(|fault| match fault {
        Fault::BatteryLow => !battery,
        Fault::LowFlow => !water,
        _ => true,
    });
}

pub(super) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 0.001 * a.abs().max(1.0)
}
