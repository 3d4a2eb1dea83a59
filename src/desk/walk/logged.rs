//! What an answer to a guided check reports beyond what the message says itself.

use super::super::settle::Settled;
use super::said::Said;
use super::{Outcome, outcome};
use crate::dialogue::Check;
use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, Taps};
use crate::rules::{Asks, Sought, Step, Then};

/// Adds to the reports what an answer says beyond them.
pub(super) fn report(
    settled: &mut Settled,
    check: &Check,
    step: &Step,
    said: Said,
    at: chrono::DateTime<chrono::Utc>,
) {
    let mut entry = Entry {
        unit: Some(check.unit.clone()),
        ..Entry::default()
    };
    match outcome(check, step, said) {
        Outcome::Mended => {
            entry.cleared.push(check.fault);
            // what froze meanwhile is looked for, however the power is told to be back
            if check.fault == Fault::NoPower {
                entry.events.push(Event::PowerBack);
            }
        }
        Outcome::RuledOut => entry.events.extend(step.tells),
        Outcome::Found => {
            if let Then::Report(fault) = step.then {
                entry.faults.push(fault);
            }
        }
        _ => {}
    }
    if let (Said::Number(number), Asks::For { what, .. }) = (said, step.asks) {
        match what {
            Sought::Reading(key) => {
                entry.readings.set(key, number);
                // seen with a light: it says nothing of the gauge
                if check.fault == Fault::GaugeStuck {
                    entry.faults.push(Fault::GaugeStuck);
                }
                if key == ReadingKey::PressurePsi {
                    entry.readings.taps = Some(Taps::Shut);
                }
            }
            Sought::Amps => entry.readings.amps.push(Amps {
                circuit: None,
                amps: number,
            }),
            Sought::Plain => {}
        }
    }
    let known = settled
        .reports
        .iter_mut()
        .find(|(unit, ..)| *unit == check.unit);
    match known {
        Some((.., told)) => {
            // dizzy from a shock is no gas
            if entry.faults.contains(&Fault::PersonHurt) {
                told.faults.retain(|fault| *fault != Fault::GasIllness);
            }
            let reads_already = !told.readings.is_empty();
            join(&mut told.cleared, &entry.cleared);
            join(&mut told.faults, &entry.faults);
            join(&mut told.events, &entry.events);
            if reads_already {
                told.readings.taps = told.readings.taps.or(entry.readings.taps);
            } else {
                told.readings = entry.readings;
            }
        }
        None if entry.is_empty() => {}
        None => settled.reports.push((check.unit.clone(), at, entry)),
    }
}

/// Adds what is not there yet.
fn join<T: PartialEq + Copy>(to: &mut Vec<T>, from: &[T]) {
    for one in from {
        if !to.contains(one) {
            to.push(*one);
        }
    }
}
