//! Gathers what the rules look at for one trailer, and asks them.

use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use super::{Desk, hazard};
use crate::book::{Latest, Lesson, MessageKey, Stage, Task, UnitState};
use crate::finding::{Finding, Level, Urgency};
use crate::fleet::{Fleet, Job, Site, Trailer};
use crate::heard::{Entry, Event, Plan, PlanKind, ReadingKey, UnitName};
use crate::outlook::{Outlook, Prospect};
use crate::rules;
use crate::situation::{Occasion, Situation, air_today};

/// How long before its doors a job may be set up by a crew that comes early.
const EARLIEST: TimeDelta = TimeDelta::days(7);

/// How long it counts where somebody said that a trailer stands, against the plan.
const TOLD_LASTS: TimeDelta = TimeDelta::days(3);

/// One trailer at one time, with everything the rules want to know, owned.
#[derive(Clone)]
pub(super) struct Case {
    pub(super) fleet: Arc<Fleet>,
    pub(super) unit: UnitName,
    pub(super) at: DateTime<Utc>,
    pub(super) before: UnitState,
    pub(super) now: UnitState,
    pub(super) report: Entry,
    pub(super) plans: Vec<Plan>,
    pub(super) occasion: Occasion,
    guests: Vec<(DateTime<Utc>, f64)>,
    tasks: Vec<Task>,
    /// The site that somebody named, where the plan has another.
    stands_at: Option<String>,
    pub(super) outlook: Outlook,
    /// The air at another trailer of the job, °F, where nobody read it at this one.
    air_near: Option<(UnitName, f64)>,
    /// When the wind was reported, where it is that of a weather report.
    wind_reported: Option<DateTime<Utc>>,
}

/// Returns the site that somebody said a trailer stands at, against the plan, as long as it has not left since.
pub(super) fn site_told(
    desk: &Desk,
    unit: &UnitName,
    at: DateTime<Utc>,
    departed: Option<DateTime<Utc>>,
) -> Option<String> {
    let (site, since) = desk.book.ahead().stands_at(unit)?;
    let gone = departed.is_some_and(|left| left >= since);
    (!gone && at - since <= TOLD_LASTS).then(|| site.to_owned())
}

impl Case {
    /// Opens the case of a trailer as it stands, with nothing new reported.
    pub(super) fn standing(
        desk: &Desk,
        fleet: &Arc<Fleet>,
        unit: &UnitName,
        at: DateTime<Utc>,
        occasion: Occasion,
    ) -> Case {
        let state = desk
            .book
            .unit(unit)
            .map(|unit| unit.state().clone())
            .unwrap_or_default();
        Case::new(
            desk,
            fleet,
            unit,
            at,
            (state.clone(), state),
            Entry::default(),
            Vec::new(),
            occasion,
        )
    }

    /// Opens the case of a trailer after a report.
    #[allow(clippy::too_many_arguments)] // each is a field of the situation, and there is no smaller whole
    pub(super) fn new(
        desk: &Desk,
        fleet: &Arc<Fleet>,
        unit: &UnitName,
        at: DateTime<Utc>,
        (before, now): (UnitState, UnitState),
        report: Entry,
        plans: Vec<Plan>,
        occasion: Occasion,
    ) -> Case {
        let mut case = Case {
            fleet: Arc::clone(fleet),
            unit: unit.clone(),
            at,
            before,
            now,
            report,
            plans,
            occasion,
            guests: Vec::new(),
            tasks: desk.book.tasks().open_on(unit).cloned().collect(),
            stands_at: None,
            outlook: Outlook::default(),
            air_near: None,
            wind_reported: None,
        };
        case.stands_at = site_told(desk, unit, at, case.before.departed);
        case.guests = case.guests_told(desk);
        case.expect_weather(desk);
        case.air_near = case.air_beside(desk);
        if let Some(spec) = case.spec() {
            // what this very pump-out teaches counts at once
            let lessons = desk.book.lessons();
            let taught = case
                .lesson(&MessageKey(String::new()))
                .map(|lesson| lessons.with(lesson));
            let lessons = taught.as_deref().unwrap_or(lessons.of(unit));
            case.outlook = Outlook::of(&case.prospect(spec, lessons));
        }
        case
    }

    /// Takes the site for the trailer's that this very message names.
    pub(super) fn standing_at(mut self, site: &str) -> Case {
        self.stands_at = Some(site.to_owned());
        self
    }

    /// Returns what its outlook is worked out of.
    fn prospect<'a>(&'a self, spec: &'a Trailer, lessons: &'a [Lesson]) -> Prospect<'a> {
        Prospect {
            fleet: &self.fleet,
            spec,
            job: self.job(),
            site: self.site(),
            state: &self.now,
            guests: &self.guests,
            lessons,
            at: self.at,
        }
    }

    /// Reads what a pump-out just reported teaches of the trailer.
    pub(super) fn lesson(&self, key: &MessageKey) -> Option<Lesson> {
        self.report.readings.value(ReadingKey::PumpedGal)?;
        Lesson::read(&self.prospect(self.spec()?, &[]), key)
    }

    /// Tells whether the message says that the trailer is about to go.
    pub(super) fn leaves(&self) -> bool {
        self.plans.iter().any(|plan| plan.kind == PlanKind::Leave)
    }

    /// Returns the trailer's spec.
    pub(super) fn spec(&self) -> Option<&Trailer> {
        self.fleet.trailers.get(&self.unit)
    }

    /// Returns the time zone at the trailer: of its job, else the company's.
    pub(super) fn zone(&self) -> Tz {
        self.job().map_or(self.fleet.time_zone, |job| job.time_zone)
    }

    /// Returns the job the trailer is at, or is being brought to. Leaving with this very message still counts as being
    /// there; having arrived somewhere after it left a job, it is at its next one, however early.
    pub(super) fn job(&self) -> Option<&Job> {
        let left = self.before.departed;
        let arrived = self.now.when(Event::Arrived);
        let here = self.fleet.job_of(&self.unit, self.at, left);
        match (here, arrived) {
            (Some(job), _) => Some(job),
            (None, Some(arrived)) if left.is_none_or(|left| left < arrived) => self
                .fleet
                .next_job_of(&self.unit, self.at)
                .filter(|job| job.from - self.at <= EARLIEST),
            _ => None,
        }
    }

    /// Returns the site it stands at: the one somebody named, else that of the job.
    pub(super) fn site(&self) -> Option<&Site> {
        let told = self.stands_at.as_ref();
        if let Some(site) = told.and_then(|site| self.fleet.sites.get(site)) {
            return Some(site);
        }
        self.fleet.sites.get(&self.job()?.id.site)
    }

    /// Returns the place to name for the trailer: its site's name, unless it is home.
    pub(super) fn place(&self) -> Option<String> {
        let home = self.now.stage() == Stage::Yard;
        self.site().filter(|_| !home).map(|site| site.name.clone())
    }

    /// Asks the rules.
    pub(super) fn findings(&self) -> Vec<Finding> {
        let Some(situation) = self.situation() else {
            return Vec::new();
        };
        let mut findings = rules::check(&situation);
        for finding in &mut findings {
            finding.unit.get_or_insert_with(|| self.unit.clone());
        }
        self.add_hazards(&mut findings);
        findings
    }

    /// Returns what stands on the trailer, reported now or before, that is to be done at once or could hurt somebody.
    pub(super) fn pressing(&self) -> Vec<Finding> {
        let Some(situation) = self.situation() else {
            return Vec::new();
        };
        let mut findings = rules::check(&Situation {
            occasion: Occasion::Asked,
            ..situation
        });
        findings.extend(hazard::findings(&self.unit, self.now.hazards.keys()));
        findings
            .retain(|finding| finding.urgency == Urgency::Now || finding.level >= Level::Warning);
        findings
    }

    /// Adds what stands of what can hurt somebody and is no fault; of a report only what it tells. What a rule says of the
    /// same is said once.
    fn add_hazards(&self, findings: &mut Vec<Finding>) {
        let told: Vec<&String> = match self.occasion {
            Occasion::Report => self.report.hazards.iter().collect(),
            _ => self.now.hazards.keys().collect(),
        };
        let untold: Vec<&String> = told
            .into_iter()
            .filter(|code| !hazard::is_said_by(code, findings))
            .collect();
        for found in hazard::findings(&self.unit, untold.into_iter()) {
            findings.retain(|other| other.id != found.id || other.action == found.action);
            findings.push(found);
        }
    }

    /// Returns what the rules look at; none for a trailer the fleet has not got.
    pub(super) fn situation(&self) -> Option<Situation<'_>> {
        Some(Situation {
            fleet: &self.fleet,
            spec: self.spec()?,
            job: self.job(),
            site: self.site(),
            before: &self.before,
            now: &self.now,
            report: &self.report,
            plans: &self.plans,
            occasion: self.occasion,
            at: self.at,
            guests: &self.guests,
            tasks: &self.tasks,
            outlook: &self.outlook,
            air_near: self.air_near.as_ref().map(|(unit, air)| (unit, *air)),
            wind_reported: self.wind_reported,
        })
    }

    /// Returns the air at the trailer, °F, as the rules take it: read here today, else beside it; else the frost of the evening,
    /// else the low of this night.
    pub(super) fn air_f(&self) -> Option<f64> {
        let situation = self.situation()?;
        let held = situation.frost_held().map(|(air, _)| air);
        let low = || situation.recent(ReadingKey::LowF, TimeDelta::hours(18));
        situation.air_f().or(held).or_else(low)
    }

    /// Finds the air that was read last at another trailer of the job, where this one stands at its site, too.
    fn air_beside(&self, desk: &Desk) -> Option<(UnitName, f64)> {
        let zone = self.zone();
        let elsewhere = self.stands_at.is_some() || !self.now.stage().is_on_site();
        if elsewhere || air_today(&self.now, self.at, zone).is_some() {
            return None;
        }
        let others = self.job()?.trailers.iter();
        let others = others.filter(|unit| **unit != self.unit);
        let read = others.filter_map(|unit| {
            let state = desk.book.unit(unit)?.state();
            let air = air_today(state, self.at, zone)?;
            let at = state.readings.get(&ReadingKey::AirF)?.at;
            state.stage().is_on_site().then(|| (at, unit.clone(), air))
        });
        let newest = read.max_by_key(|(at, ..)| *at);
        newest.map(|(_, unit, air)| (unit, air))
    }

    /// Adds the low forecast for the site, where nobody told this trailer a later one.
    fn expect_weather(&mut self, desk: &Desk) {
        let Some(site) = self.job().map(|job| job.id.site.clone()) else {
            return;
        };
        let air = desk
            .book
            .ahead()
            .weather_of_kind(true, Some(&site), self.at);
        if let Some((air, wind)) = air.and_then(|air| Some((air, air.wind_mph?))) {
            let told = self.now.readings.get(&ReadingKey::WindMph);
            if told.is_none_or(|told| told.at < air.at) {
                let wind = Latest {
                    value: wind,
                    at: air.at,
                    before: None,
                };
                self.now.readings.insert(ReadingKey::WindMph, wind);
                self.wind_reported = Some(air.at);
            }
        }
        let Some(weather) = desk.book.ahead().weather(Some(&site), self.at) else {
            return;
        };
        let told = self.now.readings.get(&ReadingKey::LowF);
        if told.is_none_or(|told| told.at < weather.at) {
            let low = Latest {
                value: weather.low_f,
                at: weather.at,
                before: None,
            };
            self.now.readings.insert(ReadingKey::LowF, low);
        }
    }

    /// Collects the guest counts told since this job's set-up by any of its trailers.
    fn guests_told(&self, desk: &Desk) -> Vec<(DateTime<Utc>, f64)> {
        let Some(job) = self.job() else {
            return Vec::new();
        };
        let set_up = job.from - TimeDelta::minutes((job.set_up_h * 60.0) as i64);
        let others = job
            .trailers
            .iter()
            .filter(|unit| **unit != self.unit)
            .filter_map(|unit| desk.book.unit(unit));
        let mut told: Vec<_> = others
            .flat_map(|unit| unit.state().guests.iter())
            .chain(&self.now.guests)
            .copied()
            .collect();
        told.retain(|(at, _)| *at >= set_up);
        told.sort_by_key(|(at, _)| *at);
        told
    }
}
