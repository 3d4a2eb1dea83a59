//! One trailer as the rules see it: its spec, its site and job, what was known before, what is known now, and what the
//! message at hand says about it.

use chrono::{DateTime, TimeDelta, Timelike, Utc};
use chrono_tz::Tz;

use crate::book::{Task, UnitState};
use crate::fleet::{Fleet, Job, Site, Trailer};
use crate::heard::{Entry, Event, Fault, Plan, ReadingKey, UnitName};
use crate::outlook::Outlook;

/// What a message does that makes a rule speak about a trailer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Occasion {
    /// A message reports on the trailer: rules speak where the report bears on them.
    Report,
    /// A message asks about the trailer: every rule that holds speaks.
    Asked,
    /// Nobody wrote; the clock came round: every rule that holds speaks, and the desk picks what is worth saying.
    Tick,
}

/// Everything a rule may look at.
#[derive(Debug, Clone, Copy)]
pub struct Situation<'a> {
    /// The fleet in force.
    pub fleet: &'a Fleet,
    /// The trailer's spec.
    pub spec: &'a Trailer,
    /// The job it is at, or is being brought to.
    pub job: Option<&'a Job>,
    /// That job's site.
    pub site: Option<&'a Site>,
    /// What was known before this message.
    pub before: &'a UnitState,
    /// What is known after it.
    pub now: &'a UnitState,
    /// What this message says about the trailer; empty for a question or a tick.
    pub report: &'a Entry,
    /// Requests, plans and conditions of this message that name the trailer.
    pub plans: &'a [Plan],
    /// Why the rules are asked.
    pub occasion: Occasion,
    /// The time written: the time the rules judge at.
    pub at: DateTime<Utc>,
    /// The guest counts told by any unit of the job, oldest first; the job's own count where nobody told one.
    pub guests: &'a [(DateTime<Utc>, f64)],
    /// The open tasks of the trailer.
    pub tasks: &'a [Task],
    /// What is coming: tanks and battery.
    pub outlook: &'a Outlook,
    /// The air, °F, as it was read at another trailer of the job, and at which; where nobody read it here.
    pub air_near: Option<(&'a UnitName, f64)>,
    /// When the wind was reported, where it is that of a weather report and nobody read it on site since.
    pub wind_reported: Option<DateTime<Utc>>,
}

impl<'a> Situation<'a> {
    /// Returns the zone in which this trailer's local times are meant.
    pub fn zone(&self) -> Tz {
        self.job
            .map(|job| job.time_zone)
            .or(self.site.and_then(|site| site.time_zone))
            .unwrap_or(self.fleet.time_zone)
    }

    /// Returns the people on the whole site, as last counted, or as booked.
    pub fn guests_on_site(&self) -> Option<f64> {
        self.guests
            .last()
            .map(|(_, guests)| *guests)
            .or(self.job.map(|job| job.guests))
    }

    /// Returns the people this trailer serves: the site's guests split over the job's trailers by their stalls.
    pub fn guests_here(&self) -> Option<f64> {
        let guests = self.guests_on_site()?;
        Some(match self.job {
            Some(job) => self.fleet.guests_share(job, &self.spec.id, guests),
            None => guests,
        })
    }

    /// Tells whether this message bears on any of the given readings, events or faults (or asks about the whole unit).
    pub fn touches(&self, readings: &[ReadingKey], events: &[Event], faults: &[Fault]) -> bool {
        self.occasion != Occasion::Report
            || readings
                .iter()
                .any(|key| self.report.readings.values.contains_key(key))
            || events
                .iter()
                .any(|event| self.report.events.contains(event))
            || faults
                .iter()
                .any(|fault| self.report.faults.contains(fault))
    }

    /// Tells whether this message itself reports the event.
    pub fn says(&self, event: Event) -> bool {
        self.report.events.contains(&event)
    }

    /// Returns the last value of a reading, if it was taken within `age` before now.
    pub fn recent(&self, key: ReadingKey, age: TimeDelta) -> Option<f64> {
        self.now.value_since(key, self.at - age)
    }

    /// Returns the outside air temperature, °F, where it was read on the local day of the message; else as it was read at
    /// another trailer of the job.
    ///
    /// An air temperature that was not read today is not guessed.
    pub fn air_f(&self) -> Option<f64> {
        air_today(self.now, self.at, self.zone()).or(self.air_near.map(|(_, air)| air))
    }

    /// Returns the frost of the evening, °F, and when it was read, in the night after it and the morning: no warmer word came
    /// since. None where the air was read today.
    pub fn frost_held(&self) -> Option<(f64, DateTime<Utc>)> {
        let read = self.now.readings.get(&ReadingKey::AirF)?;
        let night = self.at.with_timezone(&self.zone()).hour() < NIGHT_ENDS;
        let lasts = read.at <= self.at && self.at - read.at <= FROST_LASTS;
        let held = read.value <= FROST_F && night && lasts && self.air_f().is_none();
        held.then_some((read.value, read.at))
    }

    /// Returns the trailer whose air counts for this one, where nobody read it here.
    pub fn air_taken_from(&self) -> Option<&'a UnitName> {
        let own = air_today(self.now, self.at, self.zone());
        self.air_near
            .filter(|_| own.is_none())
            .map(|(unit, _)| unit)
    }

    /// Returns the wind, mph, where it was read within six hours.
    pub fn wind_mph(&self) -> Option<f64> {
        self.recent(ReadingKey::WindMph, TimeDelta::hours(6))
    }
}

/// Water freezes, °F (0 °C, the ice point).
const FROST_F: f64 = 32.0;
/// Frost that was read in the evening lasts until this hour, and no longer than so long (common practice, no source).
const NIGHT_ENDS: u32 = 10;
const FROST_LASTS: TimeDelta = TimeDelta::hours(18);

/// Returns the air that was read at a trailer on the local day of an instant, or shortly before, °F.
pub fn air_today(state: &UnitState, at: DateTime<Utc>, zone: Tz) -> Option<f64> {
    let latest = state.readings.get(&ReadingKey::AirF)?;
    let day = |at: DateTime<Utc>| at.with_timezone(&zone).date_naive();
    let lasts = day(latest.at) == day(at) || at - latest.at <= TimeDelta::hours(4);
    (latest.at <= at && lasts).then_some(latest.value)
}
