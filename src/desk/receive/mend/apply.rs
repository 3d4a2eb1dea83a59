//! Ways of mending applied to a report.

use super::Told;
use crate::dialogue::Mend;
use crate::heard::{Entry, Event, ReadingKey};

/// Applies ways of mending to a report.
pub(in crate::desk::receive) fn apply(ways: &[Mend], told: Vec<Told>) -> Vec<Told> {
    told.into_iter()
        .map(|(unit, at, mut entry)| {
            entry.when = None;
            let mut of = unit.clone();
            for way in ways {
                match way {
                    Mend::Off { unit: off } if *off == unit => entry = Entry::default(),
                    Mend::Event { unit: on, event } if *on == unit => {
                        entry.events.retain(|other| other != event);
                        // what was not pumped has no gallons either
                        if *event == Event::WastePumped {
                            entry.readings.values.remove(&ReadingKey::PumpedGal);
                        }
                    }
                    // told as over, so that a check that was begun for it ends
                    Mend::Fault { unit: on, fault } if *on == unit => {
                        entry.faults.retain(|other| other != fault);
                        entry.cleared.push(*fault);
                    }
                    Mend::Circuit { unit: on, from, to } if *on == unit => {
                        let mut all = entry.readings.amps.iter_mut();
                        if let Some(current) = all.find(|current| current.circuit == Some(*from)) {
                            current.circuit = Some(*to);
                        }
                    }
                    Mend::Unit { from, to } if *from == unit => of = to.clone(),
                    Mend::Value {
                        unit: on,
                        key,
                        was,
                        value,
                    } if *on == unit
                        && (entry.readings.value(*key))
                            .is_some_and(|old| (old - was).abs() < 0.001) =>
                    {
                        entry.readings.set(*key, *value);
                    }
                    Mend::Amps {
                        unit: on,
                        circuit,
                        amps,
                    } if *on == unit => {
                        let mut all = entry.readings.amps.iter_mut();
                        if let Some(current) = all.find(|current| current.circuit == *circuit) {
                            current.amps = *amps;
                        }
                    }
                    Mend::Label {
                        unit: on, from, to, ..
                    } if *on == unit => {
                        if let Some(value) = entry.readings.values.remove(from) {
                            entry.readings.set(*to, value);
                        }
                    }
                    _ => {}
                }
            }
            entry.unit = Some(of.clone());
            (of, at, entry)
        })
        .filter(|(.., entry)| !entry.is_empty())
        .collect()
}
