//! How a trailer stands by what is known of it: its power and water, its place in the round, its last pump-out.

use super::{PowerState, Stage, TankNote, UnitState, WaterState};
use chrono::{DateTime, Utc};

use crate::heard::{Event, Fault, ReadingKey};

impl UnitState {
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

    /// Tells whether a tank or bay heater was reported off, and not on since.
    pub fn heater_off(&self) -> bool {
        self.holds(Event::HeaterOff, &[Event::HeaterOn])
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

    /// Tells whether the waste gauge was read at half or more after a pump-out of `pumped`, which was told late then.
    pub fn filled_since(&self, pumped: DateTime<Utc>) -> bool {
        const HALF: f64 = 50.0;
        let reads = self.waste_reads();
        reads
            .last()
            .is_some_and(|(at, pct)| *at > pumped && *pct >= HALF)
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
