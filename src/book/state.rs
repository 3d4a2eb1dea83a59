//! What is known of one trailer at one time, folded from what was reported.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use crate::heard::{Entry, Event, Fault, ReadingKey, Taps};

/// The last value of a reading, and the one before it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Latest {
    /// The value, in the unit its key names.
    pub value: f64,
    /// When it was so.
    pub at: DateTime<Utc>,
    /// The value before, and when that was so.
    pub before: Option<(f64, DateTime<Utc>)>,
}

/// One reading of the water pressure.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PressureRead {
    /// When.
    pub at: DateTime<Utc>,
    /// psi at the trailer.
    pub psi: f64,
    /// How the taps stood, where the sender said.
    pub taps: Option<Taps>,
    /// What was flowing, gpm, where the sender said.
    pub flow_gpm: Option<f64>,
}

/// One thing that tells about a tank.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TankNote {
    /// The waste gauge, % as shown.
    Waste(f64),
    /// Waste aboard, gal.
    WasteGal(f64),
    /// Waste pumped out, with the gallons where they were told.
    Pumped(Option<f64>),
    /// The fresh gauge, % as shown.
    Fresh(f64),
    /// Fresh water aboard, gal.
    FreshGal(f64),
    /// The fresh tank was filled.
    Filled,
    /// The fresh tank was drained.
    Drained,
    /// The waste gauge cannot be trusted.
    GaugeStuck,
}

/// The last word from the crew about a unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Word {
    /// When it was written.
    pub at: DateTime<Utc>,
    /// By whom.
    pub from: String,
}

/// When an event was last so, with its place in the order of telling.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Stamp {
    /// When.
    pub at: DateTime<Utc>,
    /// Its place among events of the same instant.
    pub order: u32,
}

/// Whether site power reaches the trailer, as last reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PowerState {
    /// Nobody said.
    Unknown,
    /// Connected and on, since then.
    On(DateTime<Utc>),
    /// Lost or missing, since then.
    Lost(DateTime<Utc>),
    /// Switched off by the crew, at that time.
    Off(DateTime<Utc>),
}

/// Whether site water is connected, as last reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaterState {
    /// Nobody said.
    Unknown,
    /// Hooked up and on, since then.
    On(DateTime<Utc>),
    /// Off, since then.
    Off(DateTime<Utc>),
}

/// Where a trailer stands in its round from yard to yard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// Nothing reported yet.
    Unknown,
    /// Back in the yard.
    Yard,
    /// On the hook or on the road.
    Hitched,
    /// On site, being set up.
    SettingUp,
    /// Open for guests.
    InService,
    /// On site, out of service.
    Closed,
}

/// Everything known of one trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct UnitState {
    /// The last value of each reading.
    pub readings: BTreeMap<ReadingKey, Latest>,
    /// The last pressures, oldest first, since water was hooked up.
    pub pressures: Vec<PressureRead>,
    /// The last current on each circuit, A; circuit 0 where none was named.
    pub amps: BTreeMap<u8, Latest>,
    /// The last currents, oldest first, with their circuit, A.
    #[serde(default)]
    pub currents: Vec<(DateTime<Utc>, u8, f64)>,
    /// Which circuits have power, and when that was said.
    pub circuits_live: Option<(Vec<u8>, DateTime<Utc>)>,
    /// When each event was last reported since the trailer arrived.
    pub done: BTreeMap<Event, Stamp>,
    /// What is wrong, and since when.
    pub faults: BTreeMap<Fault, DateTime<Utc>>,
    /// What tells about the tanks, oldest first.
    pub tanks: Vec<(DateTime<Utc>, TankNote)>,
    /// The guest counts told with this unit, oldest first.
    pub guests: Vec<(DateTime<Utc>, f64)>,
    /// The last word about it.
    pub last_word: Option<Word>,
    /// When it last left a site or came back to the yard: an arrival does not make that undone.
    #[serde(default)]
    pub departed: Option<DateTime<Utc>>,
    /// Counts events, to keep the order of those of one instant.
    order: u32,
}

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
        if self.last_word.as_ref().is_none_or(|word| word.at <= at) {
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
        for fault in cured_by(event) {
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
                ReadingKey::PressurePsi => {
                    let flow_gpm = readings.value(ReadingKey::FlowGpm);
                    let taps = readings
                        .taps
                        .or(flow_gpm.filter(|flow| *flow > 0.0).map(|_| Taps::Running));
                    self.pressures.push(PressureRead {
                        at,
                        psi: *value,
                        taps,
                        flow_gpm,
                    });
                    if self.pressures.len() > 8 {
                        self.pressures.remove(0);
                    }
                }
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
        for current in &readings.amps {
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
        if let Some(circuits) = &readings.circuits_live {
            self.circuits_live = Some((circuits.clone(), at));
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

    /// Returns the last value of a reading.
    pub fn value(&self, key: ReadingKey) -> Option<f64> {
        self.readings.get(&key).map(|latest| latest.value)
    }

    /// Returns the last value of a reading that was taken at `since` or later.
    pub fn value_since(&self, key: ReadingKey, since: DateTime<Utc>) -> Option<f64> {
        self.readings
            .get(&key)
            .filter(|latest| latest.at >= since)
            .map(|latest| latest.value)
    }

    /// Returns when an event was last reported since the trailer arrived.
    pub fn when(&self, event: Event) -> Option<DateTime<Utc>> {
        self.done.get(&event).map(|stamp| stamp.at)
    }

    /// Tells whether `event` was reported, and later than each of `undone_by`.
    pub fn holds(&self, event: Event, undone_by: &[Event]) -> bool {
        self.done.get(&event).is_some_and(|stamp| {
            undone_by
                .iter()
                .all(|other| self.done.get(other).is_none_or(|undone| undone < stamp))
        })
    }

    /// Tells whether `event` was reported later than `other`, or `other` never.
    pub fn later(&self, event: Event, other: Event) -> bool {
        self.holds(event, &[other])
    }

    /// Tells whether a fault stands.
    pub fn has(&self, fault: Fault) -> bool {
        self.faults.contains_key(&fault)
    }

    /// Tells whether site power reaches the trailer.
    pub fn power(&self) -> PowerState {
        let last = [
            Event::PowerOn,
            Event::PowerBack,
            Event::PowerLost,
            Event::PowerOff,
        ]
        .iter()
        .filter_map(|event| self.done.get(event).map(|stamp| (*stamp, *event)))
        .max();
        let told = match last {
            Some((stamp, Event::PowerOn | Event::PowerBack)) => PowerState::On(stamp.at),
            Some((stamp, Event::PowerLost)) => PowerState::Lost(stamp.at),
            Some((stamp, _)) => PowerState::Off(stamp.at),
            None => PowerState::Unknown,
        };
        let live = self
            .readings
            .get(&ReadingKey::Cords)
            .filter(|cords| cords.value > 0.0)
            .map(|cords| cords.at);
        match (told, self.faults.get(&Fault::NoPower)) {
            (PowerState::On(_) | PowerState::Unknown, Some(since)) => PowerState::Lost(*since),
            (PowerState::Unknown, None) => live.map_or(PowerState::Unknown, PowerState::On),
            (told, _) => told,
        }
    }

    /// Tells whether site water is connected.
    pub fn water(&self) -> WaterState {
        match (
            self.done.get(&Event::WaterOn),
            self.done.get(&Event::WaterOff),
        ) {
            (Some(on), off) if off.is_none_or(|off| off < on) => WaterState::On(on.at),
            (_, Some(off)) => WaterState::Off(off.at),
            _ => WaterState::Unknown,
        }
    }

    /// Returns since when every current read on a circuit was over `limit`, A; none where the last was not.
    pub fn over_since(&self, circuit: u8, limit: f64) -> Option<DateTime<Utc>> {
        self.currents
            .iter()
            .rev()
            .filter(|(_, of, _)| *of == circuit)
            .take_while(|(_, _, amps)| *amps > limit)
            .last()
            .map(|(at, ..)| *at)
    }

    /// Tells whether a tank or bay heater was reported on, and not off since.
    pub fn heater_on(&self) -> bool {
        self.holds(Event::HeaterOn, &[Event::HeaterOff])
    }

    /// Returns since when the unit is open for guests.
    pub fn in_service(&self) -> Option<DateTime<Utc>> {
        let undone = [Event::Closed, Event::Hitched, Event::Left, Event::Returned];
        self.holds(Event::InService, &undone)
            .then(|| self.when(Event::InService))
            .flatten()
    }

    /// Tells where the trailer stands in its round.
    pub fn stage(&self) -> Stage {
        let last = self.done.iter().filter(|(event, _)| {
            matches!(
                event,
                Event::Arrived
                    | Event::InService
                    | Event::Closed
                    | Event::Hitched
                    | Event::Unhitched
                    | Event::Left
                    | Event::Returned
            )
        });
        match last
            .max_by_key(|(_, stamp)| **stamp)
            .map(|(event, _)| *event)
        {
            None => Stage::Unknown,
            Some(Event::Returned) => Stage::Yard,
            Some(Event::Hitched | Event::Left) => Stage::Hitched,
            Some(Event::InService) => Stage::InService,
            Some(Event::Closed) => Stage::Closed,
            Some(_) => Stage::SettingUp,
        }
    }

    /// Returns when waste was last pumped, and the gallons where they were told.
    pub fn last_pumped(&self) -> Option<(DateTime<Utc>, Option<f64>)> {
        self.tanks.iter().rev().find_map(|(at, note)| match note {
            TankNote::Pumped(gal) => Some((*at, *gal)),
            _ => None,
        })
    }

    /// Returns the waste gauge readings, % as shown, since the last pump-out, oldest first.
    pub fn waste_reads(&self) -> Vec<(DateTime<Utc>, f64)> {
        let since = self.last_pumped().map(|(at, _)| at);
        self.tanks
            .iter()
            .filter(|(at, _)| since.is_none_or(|since| *at >= since))
            .filter_map(|(at, note)| match note {
                TankNote::Waste(pct) => Some((*at, *pct)),
                _ => None,
            })
            .collect()
    }
}

/// Faults that an event cures without further words.
fn cured_by(event: Event) -> &'static [Fault] {
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
