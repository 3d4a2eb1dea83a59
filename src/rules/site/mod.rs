//! The stand: level, chocked, safe in the wind, and what to set up next.

pub(super) mod set_up;

use chrono::TimeDelta;

use super::Rule;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Urgency};
use crate::heard::{Event, Fault, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[not_level, not_chocked, wind, set_up::set_up_next];

/// Doors swing, gauge and drain are wrong over this, % (common practice, no source).
const SLOPE_PCT: f64 = 2.0;
/// Over this it must move, % (common practice, no source).
const STEEP_PCT: f64 = 3.0;
/// Awnings come in from here, mph.
const WINDY_MPH: f64 = 30.0;
/// Nobody works on steps or roof from here, mph.
const STORM_MPH: f64 = 40.0;

/// Over 2 % off level: soon; over 3 %: now. Told without a number: soon.
fn not_level(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(&[ReadingKey::SlopePct], &[], &[Fault::NotLevel]) || !s.stands() {
        return None;
    }
    let leveled = s.now.when(Event::Leveled);
    let slope = s
        .now
        .readings
        .get(&ReadingKey::SlopePct)
        .filter(|slope| leveled.is_none_or(|at| slope.at >= at))
        .filter(|slope| s.at - slope.at <= TimeDelta::hours(24))
        .map(|slope| slope.value.abs());
    let finding = |urgency, facts: Facts, says| {
        let facts = facts.by("formula-slope", super::COMMON_PRACTICE);
        Finding::new(FindingId::SiteNotLevel, Level::Notice, urgency, facts)
            .says(says)
            .cautions(&[Caution::RollAway, Caution::Stabilizers])
    };
    let state = |slope, limit| {
        Facts::new()
            .read("slope", slope, Measure::Pct)
            .limit("limit", limit, Measure::Pct)
    };
    match slope {
        Some(slope) if slope > STEEP_PCT => Some(finding(
            Urgency::Now,
            state(slope, STEEP_PCT),
            "site-not-level-act",
        )),
        Some(slope) if slope > SLOPE_PCT => Some(finding(
            Urgency::Soon,
            state(slope, SLOPE_PCT),
            "site-not-level-soon",
        )),
        _ if s.now.has(Fault::NotLevel) => {
            Some(finding(Urgency::Soon, Facts::new(), "site-not-level-told"))
        }
        _ => None,
    }
}

/// Unhitched and not chocked: now.
fn not_chocked(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[],
        &[
            Event::Unhitched,
            Event::JacksDown,
            Event::Leveled,
            Event::PowerOn,
            Event::WaterOn,
            Event::InService,
        ],
        &[],
    );
    let loose = s
        .now
        .holds(Event::Unhitched, &[Event::Hitched, Event::Left]);
    let chocked = s.now.when(Event::Chocked).is_some();
    let facts = Facts::new().by("formula-reported", super::COMMON_PRACTICE);
    (bears && loose && !chocked).then(|| {
        Finding::new(
            FindingId::SiteNotChocked,
            Level::Warning,
            Urgency::Now,
            facts,
        )
        .cautions(&[Caution::RollAway])
    })
}

/// Chocks that are out while nobody said that the trailer is on the hook: now, whatever else is told.
pub fn chocks_out(unit: &UnitName) -> Finding {
    let facts = Facts::new().by("formula-reported", super::COMMON_PRACTICE);
    let mut found = Finding::new(
        FindingId::SiteNotChocked,
        Level::Warning,
        Urgency::Now,
        facts,
    )
    .says("site-not-chocked-out")
    .cautions(&[Caution::RollAway]);
    found.unit = Some(unit.clone());
    found
}

/// Ice where people walk: steps, ramp, ground. Nothing on the trailer is frozen by that.
pub fn icy_steps(unit: Option<&UnitName>) -> Finding {
    let facts = Facts::new().by("formula-reported", super::COMMON_PRACTICE);
    let mut found = Finding::new(FindingId::SiteIcy, Level::Caution, Urgency::Now, facts)
        .cautions(&[Caution::Slip]);
    found.unit = unit.cloned();
    found
}

/// Something done or missing that can hurt people as it stands, by its code: now.
pub fn unsafe_act(unit: Option<&UnitName>, id: FindingId, code: &str, level: Level) -> Finding {
    let facts = Facts::new().by("formula-reported", super::COMMON_PRACTICE);
    let mut found = Finding::new(id, level, Urgency::Now, facts);
    found.action = format!("site-unsafe-{code}").into();
    found.unit = unit.cloned();
    found
}

/// From 30 mph: soon; from 40: now.
fn wind(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(&[ReadingKey::WindMph], &[], &[]) {
        return None;
    }
    let wind = s.wind_mph()?;
    let (urgency, limit, says) = match wind {
        w if w >= STORM_MPH => (Urgency::Now, STORM_MPH, "site-wind-act"),
        w if w >= WINDY_MPH => (Urgency::Soon, WINDY_MPH, "site-wind-soon"),
        _ => return None,
    };
    let facts = Facts::new()
        .read("wind", wind, Measure::Mph)
        .limit("limit", limit, Measure::Mph)
        .by("formula-reading-over-limit", super::COMMON_PRACTICE);
    Some(
        Finding::new(FindingId::SiteWind, Level::Caution, urgency, facts)
            .says(says)
            .cautions(&[Caution::RoofFall]),
    )
}
