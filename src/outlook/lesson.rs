//! What a pump-out with told gallons teaches, read off the trailer's state once it is reported.

use chrono::{DateTime, TimeDelta, Utc};

use super::compute::{Case, Prospect, runs_on_tank};
use crate::book::{Lesson, MessageKey, TankNote, UnitState};
use crate::fleet::{Job, Trailer};
use crate::heard::Event;
use crate::physics::forecast::promised_pct;
use crate::physics::tank::BODY_GAL;

/// A gauge read so long before a pump-out shows the level it found.
const JUST_BEFORE: TimeDelta = TimeDelta::minutes(45);
/// A tank that nobody told of for so long after its job began may have been pumped unseen.
const UNSEEN: TimeDelta = TimeDelta::hours(36);
/// Less than this was promised, % of the tank: too little to tell a pace by.
const TOO_LITTLE_PCT: f64 = 8.0;
/// A tank this full may have been full for long, % of its volume.
const BRIM_PCT: f64 = 97.0;

impl Lesson {
    /// Reads what the last pump-out with told gallons teaches; none where none was told, or at no job.
    pub fn read(prospect: &Prospect<'_>, key: &MessageKey) -> Option<Lesson> {
        let job = prospect.job?;
        let spec = prospect.spec;
        let tanks = &prospect.state.tanks;
        let (place, at, hauled_gal) =
            tanks
                .iter()
                .enumerate()
                .rev()
                .find_map(|(i, note)| match note {
                    (at, TankNote::Pumped(Some(gal))) => Some((i, *at, *gal)),
                    _ => None,
                })?;
        if !(hauled_gal > 0.0 && hauled_gal <= 1.05 * spec.waste_gal) {
            return None;
        }
        let before = &tanks[..place];
        let emptied = emptied(before, job, at);
        let promised_gal = emptied
            .filter(|_| 100.0 * hauled_gal < BRIM_PCT * spec.waste_gal)
            .and_then(|since| promised_gal(prospect, since, at));
        Some(Lesson {
            unit: spec.id.clone(),
            site: job.id.site.clone(),
            at,
            key: key.clone(),
            hauled_gal,
            promised_gal,
            fresh_gal: emptied.and_then(|since| fresh_used(prospect, before, since, at)),
            shown_pct: before
                .iter()
                .rev()
                .take_while(|(when, _)| at - *when <= JUST_BEFORE)
                .find_map(|(_, note)| match note {
                    TankNote::Waste(pct) => Some(*pct),
                    _ => None,
                }),
        })
    }
}

/// Returns when the waste tank was last empty before `at`: pumped out at this job, or come empty to it.
fn emptied(
    before: &[(DateTime<Utc>, TankNote)],
    job: &Job,
    at: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let set_up = job.from - TimeDelta::minutes((job.set_up_h * 60.0) as i64);
    let here = before.iter().filter(|(when, _)| *when >= set_up);
    let pumped = here
        .clone()
        .rev()
        .find_map(|(when, note)| matches!(note, TankNote::Pumped(_)).then_some(*when));
    if pumped.is_some() {
        return pumped;
    }
    let waste = |note: &TankNote| match note {
        TankNote::Waste(value) | TankNote::WasteGal(value) => Some(*value),
        _ => None,
    };
    let mut told = here.filter_map(|(when, note)| Some((*when, waste(note)?)));
    let came_full = told
        .clone()
        .any(|(when, level)| when <= job.from && level > 0.0);
    let first = told.next().map_or(at, |(when, _)| when);
    (!came_full && first - job.from <= UNSEEN).then_some(job.from)
}

/// Returns what the job promised between two instants by the stated values, gal.
fn promised_gal(prospect: &Prospect<'_>, since: DateTime<Utc>, at: DateTime<Utc>) -> Option<f64> {
    let spec = prospect.spec;
    let by_the_file = Prospect {
        lessons: &[],
        ..*prospect
    };
    let case = Case::of(&by_the_file)?;
    let usage = case.usage(spec.gal_per_use + BODY_GAL, spec.waste_gal, case.open());
    let (from, to) = (case.axis().hours(since), case.axis().hours(at));
    let pct = promised_pct(&usage, from, to);
    (pct >= TOO_LITTLE_PCT).then_some(pct * spec.waste_gal / 100.0)
}

/// Returns the fresh water used between two instants and its standard deviation, gal; none where site water ran, or where a
/// reading is missing.
fn fresh_used(
    prospect: &Prospect<'_>,
    before: &[(DateTime<Utc>, TankNote)],
    since: DateTime<Utc>,
    at: DateTime<Utc>,
) -> Option<(f64, f64)> {
    let state: &UnitState = prospect.state;
    let site_water = state.when(Event::WaterOn).is_some_and(|on| on >= since);
    if site_water || !runs_on_tank(state, prospect.site) {
        return None;
    }
    let size = prospect.spec.fresh_gal;
    let (mut used, mut variance) = (0.0, 0.0);
    let mut level: Option<(f64, f64)> = None;
    let mut read = None;
    for (when, note) in before.iter().filter(|(when, _)| *when <= at) {
        let Some(next) = fresh_level(prospect.spec, note) else {
            continue;
        };
        if *note == TankNote::Filled {
            // how low it was when it was filled: read just before, or nobody knows
            if *when > since && read.is_none_or(|read| *when - read > JUST_BEFORE) {
                return None;
            }
        } else if let Some((was, sd)) = level.filter(|_| *when > since) {
            used += was - next.0;
            variance += sd * sd + next.1 * next.1;
        }
        read = (*note != TankNote::Filled).then_some(*when);
        level = Some(next);
    }
    let told_late = read.is_some_and(|read| at - read <= JUST_BEFORE && read > since);
    (told_late && used > 0.1 * size).then_some((used, f64::sqrt(variance)))
}

/// Returns the level that a note on the fresh tank tells, and its standard deviation, gal.
fn fresh_level(spec: &Trailer, note: &TankNote) -> Option<(f64, f64)> {
    let size = spec.fresh_gal;
    match *note {
        TankNote::Filled => Some((size, 0.02 * size)),
        TankNote::Drained => Some((0.0, 0.02 * size)),
        TankNote::FreshGal(gal) => Some((gal, 0.03 * size)),
        // anywhere within the step that a mark stands for; between marks somebody looked closer
        TankNote::Fresh(pct) => {
            let step = spec.waste_gauge.step_pct;
            let on_mark = (pct / step).fract() == 0.0;
            let within = if on_mark { step } else { step.min(12.5) };
            Some((pct / 100.0 * size, within / 100.0 * size / 12f64.sqrt()))
        }
        _ => None,
    }
}
