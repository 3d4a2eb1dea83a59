//! What a report changes in what is known of a trailer.

use super::{Latest, PressureRead, Stamp, TankNote, UnitState, Word};
use chrono::{DateTime, TimeDelta, Utc};

use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, Readings, Taps};

/// Events that a new arrival makes void.
const OF_ONE_STAND: &[Event] = &[
    Event::Leveled,
    Event::JacksDown,
    Event::Chocked,
    Event::PowerOn,
    Event::PowerLost,
    Event::PowerBack,
    Event::PowerOff,
    Event::WaterOn,
    Event::WaterOff,
    Event::InService,
    Event::Closed,
    Event::RegulatorFitted,
    Event::HeaterOn,
    Event::HeaterOff,
    Event::Hitched,
    Event::Unhitched,
    Event::JacksUp,
    Event::Stowed,
    Event::LightsChecked,
    Event::Left,
    Event::Returned,
    Event::BreakerReset,
    Event::FuseReplaced,
    Event::Winterized,
];

impl UnitState {
    /// Takes in one report: what `entry` says was so at `at`, told by `from`.
    pub fn take_in(&mut self, at: DateTime<Utc>, from: &str, entry: &Entry) {
        for event in &entry.events {
            self.take_event(at, *event);
        }
        self.take_readings(at, entry);
        for fault in &entry.cleared {
            self.faults.remove(fault);
            let counted = entry.readings.value(ReadingKey::StallsOut).is_some();
            if matches!(fault, Fault::ToiletClog | Fault::LockJam) && !counted {
                self.readings.remove(&ReadingKey::StallsOut);
            }
            // who ends the one ends the sign of it
            let sign = match fault {
                Fault::Odor => Some(Fault::GasSmell),
                Fault::Fire => Some(Fault::BurntSmell),
                Fault::GasIllness => Some(Fault::CoAlarm),
                _ => None,
            };
            if let Some(sign) = sign {
                self.faults.remove(&sign);
            }
        }
        for fault in &entry.faults {
            self.faults.entry(*fault).or_insert(at);
            if *fault == Fault::GaugeStuck {
                self.tanks.push((at, TankNote::GaugeStuck));
            }
        }
        for code in &entry.hazards_over {
            self.hazards.remove(code);
        }
        for code in &entry.hazards {
            self.hazards.entry(code.clone()).or_insert(at);
        }
        // what is ordered from afar is no word of the trailer
        if !entry.afar && self.last_word.as_ref().is_none_or(|word| word.at <= at) {
            self.last_word = Some(Word {
                at,
                from: from.to_owned(),
            });
        }
    }

    fn take_event(&mut self, at: DateTime<Utc>, event: Event) {
        if event == Event::Arrived && self.has_moved_since_arrival() {
            // what was said within the hour before belongs to this stand: crews text "chocked" and then "arrived"
            let fresh = at - TimeDelta::hours(1);
            self.done.retain(|event, stamp| {
                !OF_ONE_STAND.contains(event) || (stamp.at > fresh && !is_of_moving(*event))
            });
            self.pressures.clear();
            self.circuits_live = None;
            self.amps.clear();
            self.currents.clear();
            for key in [
                ReadingKey::Cords,
                ReadingKey::CordFt,
                ReadingKey::CordAwg,
                ReadingKey::HoseFt,
                ReadingKey::Volts,
                ReadingKey::VoltsHigh,
                ReadingKey::VoltsLow,
                ReadingKey::StallsOut,
                ReadingKey::FlowGpm,
            ] {
                self.readings.remove(&key);
            }
        }
        self.order += 1;
        self.done.insert(
            event,
            Stamp {
                at,
                order: self.order,
            },
        );
        match event {
            Event::WastePumped => self.tanks.push((at, TankNote::Pumped(None))),
            Event::FreshFilled => self.tanks.push((at, TankNote::Filled)),
            Event::FreshDrained => self.tanks.push((at, TankNote::Drained)),
            Event::WaterOff => self.pressures.clear(),
            Event::Left | Event::Returned => self.departed = self.departed.max(Some(at)),
            _ => {}
        }
        for fault in cured_unsaid(event) {
            self.faults.remove(fault);
        }
    }

    fn take_readings(&mut self, at: DateTime<Utc>, entry: &Entry) {
        let readings = &entry.readings;
        for (key, value) in &readings.values {
            let before = self
                .readings
                .get(key)
                .map(|latest| (latest.value, latest.at));
            self.readings.insert(
                *key,
                Latest {
                    value: *value,
                    at,
                    before,
                },
            );
            match key {
                ReadingKey::PressurePsi => self.take_pressure(at, *value, readings),
                ReadingKey::WastePct => self.tanks.push((at, TankNote::Waste(*value))),
                ReadingKey::WasteGal => self.tanks.push((at, TankNote::WasteGal(*value))),
                ReadingKey::FreshPct => self.tanks.push((at, TankNote::Fresh(*value))),
                ReadingKey::FreshGal => self.tanks.push((at, TankNote::FreshGal(*value))),
                ReadingKey::PumpedGal => self.note_hauled(at, *value),
                ReadingKey::Guests => self.guests.push((at, *value)),
                _ => {}
            }
            if matches!(key, ReadingKey::WastePct | ReadingKey::FreshPct) {
                self.faults.remove(&Fault::GaugeStuck);
            }
        }
        self.take_currents(at, &readings.amps);
        if let Some(circuits) = &readings.circuits_live {
            self.circuits_live = Some((circuits.clone(), at));
        }
    }

    fn take_pressure(&mut self, at: DateTime<Utc>, psi: f64, readings: &Readings) {
        let flow_gpm = readings.value(ReadingKey::FlowGpm);
        let runs = flow_gpm.filter(|flow| *flow > 0.0).map(|_| Taps::Running);
        self.pressures.push(PressureRead {
            at,
            psi,
            taps: readings.taps.or(runs),
            flow_gpm,
        });
        if self.pressures.len() > 8 {
            self.pressures.remove(0);
        }
    }

    fn take_currents(&mut self, at: DateTime<Utc>, currents: &[Amps]) {
        for current in currents {
            let circuit = current.circuit.unwrap_or(0);
            self.currents.push((at, circuit, current.amps));
            if self.currents.len() > 16 {
                self.currents.remove(0);
            }
            let before = self
                .amps
                .get(&circuit)
                .map(|latest| (latest.value, latest.at));
            self.amps.insert(
                circuit,
                Latest {
                    value: current.amps,
                    at,
                    before,
                },
            );
        }
    }

    /// Gives a pump-out its gallons: the one just told, or one told within the hour before.
    fn note_hauled(&mut self, at: DateTime<Utc>, gal: f64) {
        let recent = self.tanks.iter_mut().rev().find(|(when, note)| {
            matches!(note, TankNote::Pumped(_)) && at - *when <= TimeDelta::hours(1)
        });
        match recent {
            Some((_, TankNote::Pumped(hauled))) => *hauled = Some(gal),
            _ => self.tanks.push((at, TankNote::Pumped(Some(gal)))),
        }
    }

    fn has_moved_since_arrival(&self) -> bool {
        let arrived = self.done.get(&Event::Arrived);
        [Event::Hitched, Event::Left, Event::Returned]
            .iter()
            .any(|event| self.done.get(event) > arrived)
            || self.done.get(&Event::Arrived).is_some_and(|stamp| {
                self.last_word
                    .as_ref()
                    .is_some_and(|word| word.at - stamp.at > TimeDelta::days(30))
            })
    }

    /// Forgets what tells about tanks and guests before `at`, once it no longer matters.
    pub fn trim(&mut self, at: DateTime<Utc>) {
        self.tanks.retain(|(when, _)| *when >= at);
        self.guests.retain(|(when, _)| *when >= at);
    }
}

/// Faults that an event ended in journals of before reports said themselves what they end (`Event::cures`). What they mean
/// stays as it is.
fn cured_unsaid(event: Event) -> &'static [Fault] {
    match event {
        Event::PowerBack | Event::PowerOn => &[Fault::NoPower],
        Event::Leveled => &[Fault::NotLevel],
        Event::BreakerReset => &[Fault::BreakerTrip],
        Event::FuseReplaced => &[Fault::FuseBlown],
        Event::Restocked => &[Fault::OutOfSupplies],
        Event::LightsChecked => &[Fault::TowLightsFault],
        _ => &[],
    }
}

fn is_of_moving(event: Event) -> bool {
    matches!(
        event,
        Event::Hitched | Event::Left | Event::Returned | Event::JacksUp | Event::Stowed
    )
}
