//! Works the outlook out of what is known of a trailer and its job.

use chrono::{DateTime, TimeDelta, Utc};

use super::learned::{Habits, tank};
use super::{BatteryOutlook, Outlook, TankOutlook};
use crate::book::{Lesson, PowerState, Stage, TankNote, UnitState, WaterState};
use crate::fleet::{Fleet, GaugeKind, Job, Site, Source, TankShape, Trailer};
use crate::heard::{Event, Fault, ReadingKey};
use crate::physics::battery::{Bank, Living, hours_left, load_at_uses, soc_from_rest};
use crate::physics::forecast::{self, Doubt, Forecast, Observation, Tank, Usage};
use crate::physics::tank::{BODY_GAL, cylinder_fill, usual_uses_per_h};
use crate::physics::units::{gal, in_amps, in_hours, volts};

/// The level at which a waste tank is to be stopped, % by volume: 15 % covers gauge error, slope and surge.
pub const WASTE_LIMIT_PCT: f64 = 85.0;
/// The level at which a fresh tank is to be filled, % by volume.
pub const FRESH_LIMIT_PCT: f64 = 10.0;
/// The charge to which a battery may be run, %.
pub const BATTERY_LIMIT_PCT: f64 = 50.0;

/// What was read this lately is how it is, h.
const JUST_READ_H: f64 = 0.25;
/// A level only moves on from what was read this lately, h.
const LATELY_READ_H: f64 = 1.0;

/// Returns the volume, %, at which a waste gauge shows `gauge_pct`.
pub fn waste_volume(spec: &Trailer, gauge_pct: f64) -> f64 {
    match spec.waste_tank {
        TankShape::Box => gauge_pct,
        TankShape::Cylinder { .. } => 100.0 * cylinder_fill(gauge_pct / 100.0),
    }
}

/// What the outlook is worked out of.
#[derive(Debug, Clone, Copy)]
pub struct Prospect<'a> {
    /// The fleet in force.
    pub fleet: &'a Fleet,
    /// The trailer's spec.
    pub spec: &'a Trailer,
    /// The job it is at.
    pub job: Option<&'a Job>,
    /// That job's site.
    pub site: Option<&'a Site>,
    /// What is known of it.
    pub state: &'a UnitState,
    /// The guest counts told for the whole site, oldest first.
    pub guests: &'a [(DateTime<Utc>, f64)],
    /// What its log taught.
    pub lessons: &'a [Lesson],
    /// The instant to look ahead from.
    pub at: DateTime<Utc>,
}

impl Outlook {
    /// Works out what is coming.
    pub fn of(prospect: &Prospect<'_>) -> Outlook {
        let Some(case) = Case::of(prospect) else {
            return Outlook::default();
        };
        Outlook {
            waste: Some(case.waste()),
            fresh: runs_on_tank(prospect.state, prospect.site).then(|| case.fresh()),
            battery: runs_on_battery(prospect.state, prospect.spec, prospect.site)
                .then(|| case.battery()),
        }
    }
}

/// Tells whether a unit takes its water from its own tank: the site has none, or it was turned off.
pub fn runs_on_tank(state: &UnitState, site: Option<&Site>) -> bool {
    if state.stage() == Stage::Hitched {
        return false;
    }
    match state.water() {
        WaterState::On(_) => false,
        WaterState::Off(_) => state.in_service().is_some(),
        WaterState::Unknown => site.is_some_and(|site| site.water.source == Source::None),
    }
}

/// Tells whether the 12 V system lives on the battery: no site power, or the converter's circuit named dead.
pub fn runs_on_battery(state: &UnitState, spec: &Trailer, site: Option<&Site>) -> bool {
    let none_here = site.is_some_and(|site| site.power.source == Source::None);
    match state.power() {
        PowerState::Lost(_) => true,
        PowerState::Off(_) => state.in_service().is_some(),
        PowerState::Unknown if none_here => true,
        PowerState::On(_) | PowerState::Unknown => {
            state.circuits_live.as_ref().is_some_and(|(live, _)| {
                !live.is_empty() && !live.contains(&spec.battery.converter_circuit)
            })
        }
    }
}

/// Turns instants into hours from now and back to whole minutes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    zero: DateTime<Utc>,
}

impl Axis {
    pub(super) fn hours(self, at: DateTime<Utc>) -> f64 {
        (at - self.zero).num_seconds() as f64 / 3600.0
    }

    fn instant(self, hours: f64) -> DateTime<Utc> {
        let minutes = (hours * 60.0).round() as i64;
        // from the whole minute on, so that recorded times are whole minutes
        let zero = self.zero
            - TimeDelta::nanoseconds(
                self.zero
                    .timestamp_nanos_opt()
                    .unwrap_or(0)
                    .rem_euclid(60_000_000_000),
            );
        zero + TimeDelta::minutes(minutes)
    }
}

/// A trailer at a job, with its hours and guests on one axis.
pub(super) struct Case<'a> {
    prospect: &'a Prospect<'a>,
    job: &'a Job,
    axis: Axis,
    open: Vec<(f64, f64)>,
    guests: Vec<(f64, f64)>,
    booked: f64,
    habits: Habits,
}

impl<'a> Case<'a> {
    /// Opens the case of a trailer; none at no job.
    pub(super) fn of(prospect: &'a Prospect<'a>) -> Option<Case<'a>> {
        let job = prospect.job?;
        let axis = Axis { zero: prospect.at };
        // whoever is shut before the doors close is used no more that day
        let shut = prospect.state.when(Event::Closed);
        let shut = shut.filter(|_| prospect.state.stage() == Stage::Closed);
        let open = job
            .windows(job.from)
            .map(|(from, to)| match shut {
                Some(shut) if from <= shut && shut < to => (from, shut),
                _ => (from, to),
            })
            .map(|(from, to)| (axis.hours(from), axis.hours(to)))
            .collect();
        let share = |guests| {
            let fleet = prospect.fleet;
            fleet.guests_share(job, &prospect.spec.id, guests)
        };
        let booked = share(job.guests);
        let mut guests = vec![(axis.hours(job.from).min(0.0) - 1.0, booked)];
        guests.extend(
            prospect
                .guests
                .iter()
                .map(|(at, count)| (axis.hours(*at), share(*count))),
        );
        let site = Some(job.id.site.as_str());
        Some(Case {
            prospect,
            job,
            axis,
            open,
            guests,
            booked,
            habits: Habits::learn(prospect.spec, site, prospect.lessons),
        })
    }

    /// Returns the open intervals, h from now.
    pub(super) fn open(&self) -> &[(f64, f64)] {
        &self.open
    }

    /// Returns the axis that hours are counted on.
    pub(super) fn axis(&self) -> Axis {
        self.axis
    }

    fn waste(&self) -> TankOutlook {
        let spec = self.prospect.spec;
        let tank = tank(spec, self.habits.gauge(spec.waste_gauge));
        let observations = self.observations(false);
        let open = self.open_for(&observations);
        let per_use = self.habits.gal_per_use.value + BODY_GAL;
        let usage = self.usage(per_use, spec.waste_gal, &open);
        let forecast = forecast::waste(&tank, &usage, &observations, 0.0, WASTE_LIMIT_PCT);
        self.tank(forecast, WASTE_LIMIT_PCT, &observations)
    }

    fn fresh(&self) -> TankOutlook {
        let spec = self.prospect.spec;
        // a fresh tank's gauge and walls are as the waste tank's, but no trailer states a lying fresh tank
        let tank = Tank {
            capacity_gal: spec.fresh_gal,
            shape: TankShape::Box,
            gauge: spec.waste_gauge,
        };
        let observations = self.observations(true);
        let open = self.open_for(&observations);
        let usage = self.usage(self.habits.gal_per_use.value, spec.fresh_gal, &open);
        let forecast = forecast::fresh(&tank, &usage, &observations, 0.0, FRESH_LIMIT_PCT);
        self.tank(forecast, FRESH_LIMIT_PCT, &observations)
    }

    /// Returns the open hours that count for a tank. Where a stay had run for over a day before anybody told of the tank,
    /// nobody knows what was pumped before: the first word on it is where counting begins.
    fn open_for(&self, observations: &[Observation]) -> Vec<(f64, f64)> {
        let start = self.axis.hours(self.job.from);
        let first = observations
            .iter()
            .map(Observation::at_h)
            .fold(f64::INFINITY, f64::min);
        if !first.is_finite() || first - start <= 24.0 {
            return self.open.clone();
        }
        let just_after = first + 1e-3;
        self.open
            .iter()
            .filter(|(_, to)| *to > just_after)
            .map(|(from, to)| (from.max(just_after), *to))
            .collect()
    }

    /// Returns what the job promises of a tank, of whose water each use takes or brings `per_use` gallons.
    pub(super) fn usage<'b>(
        &'b self,
        per_use: f64,
        capacity: f64,
        open: &'b [(f64, f64)],
    ) -> Usage<'b> {
        let uses = self.uses(self.booked) * self.habits.uses();
        Usage {
            prior_pct_per_h: 100.0 * uses * per_use / capacity.max(1.0),
            prior_spread: self.habits.spread,
            gal_per_use: per_use,
            open,
            guests: &self.guests,
        }
    }

    fn uses(&self, guests: f64) -> f64 {
        usual_uses_per_h(guests, self.job.alcohol)
    }

    /// Returns what was told of one tank, from the last thing known before this job's set-up on.
    fn observations(&self, fresh: bool) -> Vec<Observation> {
        let mut found = Vec::new();
        let set_up = self.job.from - TimeDelta::minutes((self.job.set_up_h * 60.0) as i64);
        for (at, note) in &self.prospect.state.tanks {
            let at_h = self.axis.hours(*at);
            let observation = match (fresh, *note) {
                (false, TankNote::Waste(pct)) | (true, TankNote::Fresh(pct)) => {
                    Observation::Gauge { at_h, pct }
                }
                (false, TankNote::WasteGal(gal)) | (true, TankNote::FreshGal(gal)) => {
                    Observation::Gallons { at_h, gal }
                }
                (false, TankNote::Pumped(gal)) => Observation::Pumped { at_h, gal },
                (true, TankNote::Filled) => Observation::Filled { at_h },
                (true, TankNote::Drained) => Observation::Drained { at_h },
                _ => continue,
            };
            if *at < set_up {
                // of all that came before this job only the last word on the level counts
                found.clear();
            }
            found.push(observation);
        }
        found
    }

    fn tank(
        &self,
        forecast: Forecast,
        limit_pct: f64,
        observations: &[Observation],
    ) -> TankOutlook {
        // what was pumped, filled or told in gallons after a reading leaves nothing of its doubts
        let last = observations
            .len()
            .checked_sub(1)
            .filter(|last| matches!(observations[*last], Observation::Gauge { .. }));
        let doubt = |why| {
            forecast
                .doubtful
                .iter()
                .any(|doubt| doubt.why == why && Some(doubt.index) == last)
        };
        let at = |hours: Option<f64>| hours.map(|hours| self.axis.instant(hours));
        let misread = doubt(Doubt::OutOfLine);
        let sticks = self.prospect.state.has(Fault::GaugeStuck);
        let told = observations.last().filter(|_| !misread && !sticks);
        TankOutlook {
            limit_pct,
            likely_pct: self.likely(forecast.level_now.p50, limit_pct, told),
            p10: at(forecast.p10),
            p50: at(forecast.p50),
            p90: at(forecast.p90),
            level_pct: [
                forecast.level_now.p10,
                forecast.level_now.p50,
                forecast.level_now.p90,
            ],
            rate_pct_h: forecast.rate_pct_h,
            could_stay_below: forecast.could_stay_below,
            stuck: doubt(Doubt::Unchanged),
            misread,
            unread: observations.is_empty(),
        }
    }

    /// Returns the level as people are told it: two figures for one tank within minutes are believed by nobody.
    fn likely(&self, middle: f64, limit_pct: f64, told: Option<&Observation>) -> f64 {
        let spec = self.prospect.spec;
        let falls = limit_pct < 50.0;
        let (at_h, read) = match told {
            Some(Observation::Gauge { at_h, pct }) if falls => (*at_h, *pct),
            Some(Observation::Gauge { at_h, pct }) => (*at_h, waste_volume(spec, *pct)),
            Some(Observation::Gallons { at_h, gal }) => {
                let whole = if falls {
                    spec.fresh_gal
                } else {
                    spec.waste_gal
                };
                (*at_h, 100.0 * gal / whole.max(1.0))
            }
            _ => return middle,
        };
        // a lamp is the least it can be: the middle is what is likely
        let floor = spec.waste_gauge.kind == GaugeKind::Lamps && !falls;
        match -at_h {
            age if age <= JUST_READ_H && !floor => read,
            age if age <= LATELY_READ_H && falls => middle.min(read),
            age if age <= LATELY_READ_H => middle.max(read),
            _ => middle,
        }
    }

    fn battery(&self) -> BatteryOutlook {
        let Prospect {
            spec,
            state,
            site,
            at,
            ..
        } = *self.prospect;
        let guests = self
            .guests
            .last()
            .map_or(self.booked, |(_, guests)| *guests);
        let uses = self.uses(guests) * self.habits.uses();
        let bank = Bank::of_kind(spec.battery.ah, &spec.battery.kind);
        let living = Living {
            rooms: spec.rooms.len() as f64,
            per_use: gal(self.habits.gal_per_use.value),
            // on site pressure the pumps rest
            pumps: if runs_on_tank(state, site) { 2.0 } else { 0.0 },
            ..Living::default()
        };
        // a charge read while the charger fed the battery tells nothing
        let since = state
            .when(Event::PowerLost)
            .unwrap_or(at - TimeDelta::hours(12));
        let told = |key: ReadingKey| state.readings.get(&key).filter(|read| read.at >= since);
        let read = told(ReadingKey::BatteryPct)
            .map(|read| (read.value, read.at))
            .or(told(ReadingKey::BatteryV)
                .filter(|read| read.value < 13.0)
                .map(|read| (soc_from_rest(volts(read.value)), read.at)));
        // full when the power went, or when the unit opened where there is none
        let (charge, from) = read.unwrap_or_else(|| {
            let lost = match state.power() {
                PowerState::Lost(lost) | PowerState::Off(lost) => Some(lost),
                PowerState::On(_) | PowerState::Unknown => state.in_service(),
            };
            (100.0, lost.unwrap_or(at))
        });
        // what was drawn since then, while people used it
        let used_h = self.job.open_hours_between(from, at);
        let load = load_at_uses(&living, uses);
        let left = |factor: f64| {
            let whole = hours_left(&bank, charge, load * factor).map_or(f64::INFINITY, in_hours);
            (whole - used_h).max(0.0)
        };
        let within = |hours: f64| (hours <= forecast::HORIZON_H).then(|| self.axis.instant(hours));
        BatteryOutlook {
            p10: within(left(1.5)),
            p50: within(left(1.0)),
            p90: within(left(1.0 / 1.5)),
            hours: left(1.0),
            amps: in_amps(load),
            uses_per_h: uses,
        }
    }
}
