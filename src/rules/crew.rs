//! The crew themselves: someone hurt, someone silent.

use chrono::{DateTime, TimeDelta, Timelike, Utc};

use super::{COMMON_PRACTICE, Rule};
use crate::book::{Stage, UnitState};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::fleet::Job;
use crate::heard::{Event, Fault, ReadingKey};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

pub(super) const RULES: &[Rule] = &[late_check_in, person_hurt];

/// Silence in open hours that is late, h.
const LATE_H: f64 = 4.0;
/// Silence that is late in deep cold.
const LATE_IN_COLD: TimeDelta = TimeDelta::hours(2);
/// Deep cold, °F.
const DEEP_F: f64 = 0.0;
/// Deep cold that was read this long before silence is late still holds then.
const COLD_LASTS: TimeDelta = TimeDelta::hours(4);

/// Returns when silence that began at an instant is late, and whether deep cold makes it so: whoever asks after silent
/// units, unasked or asked, goes by this.
fn late_at(
    job: &Job,
    state: &UnitState,
    since: DateTime<Utc>,
    cold_f: Option<f64>,
) -> Option<(DateTime<Utc>, bool)> {
    let in_cold = since + LATE_IN_COLD;
    let air = state.readings.get(&ReadingKey::AirF);
    let day = |at: DateTime<Utc>| at.with_timezone(&job.time_zone).date_naive();
    let deep = air.is_some_and(|air| {
        air.value <= DEEP_F && (day(air.at) == day(in_cold) || in_cold - air.at <= COLD_LASTS)
    });
    let told = cold_f.is_some_and(|air| air <= DEEP_F);
    match deep || told {
        true => Some((in_cold, true)),
        false => Some((job.after_open_hours(since, LATE_H)?, false)),
    }
}

/// Tells whether a low that was foretold for a night holds at an instant: from 18:00 to 09:00 (common practice, no source).
pub fn is_night(job: &Job, at: DateTime<Utc>) -> bool {
    let hour = at.with_timezone(&job.time_zone).hour();
    !(9..18).contains(&hour)
}

/// How long nobody has said a word of a trailer, and from when on that is late.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Silence {
    /// Since when nobody has.
    pub since: DateTime<Utc>,
    /// From when on that is late.
    pub late: DateTime<Utc>,
    /// Whether deep cold makes it so.
    pub deep_cold: bool,
}

/// Returns the silence of a trailer at a job: one that is open, or of which nobody told how it stands; in deep cold also one
/// that is set up or shut, while there may be water in it. Alarm, rule, digest and "who is silent" share it.
pub fn silence(job: &Job, state: &UnitState) -> Option<Silence> {
    silence_in(job, state, None)
}

/// The same where the air is known beside what was read at the trailer itself, °F: read at another of its site, or foretold.
pub fn silence_in(job: &Job, state: &UnitState, cold_f: Option<f64>) -> Option<Silence> {
    let word = state.last_word.as_ref().map(|word| word.at);
    let word = word.or(state.in_service())?;
    let since = match state.stage() {
        Stage::InService => word.max(state.in_service()?),
        Stage::Unknown | Stage::SettingUp | Stage::Closed => word,
        Stage::Yard | Stage::Hitched => return None,
    };
    let (late, deep_cold) = late_at(job, state, since, cold_f)?;
    let dry = [Event::FreshDrained, Event::Winterized]
        .iter()
        .any(|event| state.holds(*event, &[Event::FreshFilled, Event::WaterOn]));
    let watched = match state.stage() {
        Stage::InService => true,
        Stage::Unknown => !dry,
        _ => deep_cold && !dry,
    };
    watched.then_some(Silence {
        since,
        late,
        deep_cold,
    })
}

/// A unit of which nobody has said a word: 4 open hours, soon; 2 h at 0 °F or less, now.
fn late_check_in(s: &Situation<'_>) -> Option<Finding> {
    if s.occasion == Occasion::Report {
        return None;
    }
    let job = s.job?;
    let low = s.recent(ReadingKey::LowF, TimeDelta::hours(18));
    let low = low.filter(|_| is_night(job, s.at));
    let near = s.air_near.map(|(_, air)| air);
    let cold = [low, near].into_iter().flatten().reduce(f64::min);
    let silence = silence_in(job, s.now, cold)?;
    let last = silence.since;
    let own = s.now.value(ReadingKey::AirF);
    let air = own.filter(|air| *air <= DEEP_F).or(cold);
    let deep_cold = air.filter(|_| silence.deep_cold);
    let hours = |span: TimeDelta| span.as_seconds_f64() / 3600.0;
    let (silent, late_in_cold) = (hours(s.at - last), hours(LATE_IN_COLD));
    let silent_open = job.open_hours_between(last, s.at);
    let facts = |hours, limit| {
        Facts::new()
            .time("last_word", last, Origin::Read)
            .computed("silent", hours, Measure::Hour)
            .limit("silence_limit", limit, Measure::Hour)
    };
    let by = |facts: Facts| facts.by("formula-silence", COMMON_PRACTICE);
    let (facts, urgency, says) = match deep_cold {
        Some(air) if silent >= late_in_cold => (
            by(facts(silent, late_in_cold).read("air", air, Measure::DegF)),
            Urgency::Now,
            "crew-late-check-in-cold",
        ),
        _ if job.is_open(s.at) && silent_open >= LATE_H => (
            by(facts(silent_open, LATE_H)),
            Urgency::Soon,
            "crew-late-check-in",
        ),
        _ => return None,
    };
    let found = Finding::new(FindingId::CrewLateCheckIn, Level::Notice, urgency, facts).says(says);
    // one that is not open is asked after, and nobody's task
    Some(match s.now.in_service() {
        Some(_) => found.task(TaskKind::CheckIn, Some(s.at)),
        None => found,
    })
}

/// Somebody is down, bleeding or stuck by a needle: now, and never a unit's problem.
fn person_hurt(s: &Situation<'_>) -> Option<Finding> {
    if !s.tells(Fault::PersonHurt) {
        return None;
    }
    let (facts, says) = match s.emergency_address() {
        Some(address) => (
            Facts::new().text("address", address, Origin::Spec),
            "crew-person-hurt-at",
        ),
        None => (Facts::new(), "crew-person-hurt"),
    };
    let facts = facts.by("formula-reported", COMMON_PRACTICE);
    Some(
        Finding::new(
            FindingId::CrewPersonHurt,
            Level::Danger,
            Urgency::Now,
            facts,
        )
        .says(says)
        .cautions(&[Caution::EmergencyCall, Caution::FirstAid, Caution::NoEntry]),
    )
}
