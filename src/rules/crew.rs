//! The crew themselves: someone hurt, someone silent.

use super::{COMMON_PRACTICE, Rule};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::Fault;
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

pub(super) const RULES: &[Rule] = &[late_check_in, person_hurt];

/// Silence in open hours that is late, h.
const LATE_H: f64 = 4.0;
/// Silence that is late in deep cold, h.
const LATE_IN_COLD_H: f64 = 2.0;
/// Deep cold, °F.
const DEEP_F: f64 = 0.0;

/// A unit in service of which nobody has said a word: 4 open hours, soon; 2 h at 0 °F or less, now.
fn late_check_in(s: &Situation<'_>) -> Option<Finding> {
    if s.occasion == Occasion::Report {
        return None;
    }
    let opened = s.now.in_service()?;
    let last = s.now.last_word.as_ref().map(|word| word.at)?.max(opened);
    let job = s.job?;
    let deep_cold = s.air_f().filter(|air| *air <= DEEP_F);
    let silent = (s.at - last).as_seconds_f64() / 3600.0;
    let silent_open = job.open_hours_between(last, s.at);
    let facts = |hours, limit| {
        Facts::new()
            .time("last_word", last, Origin::Read)
            .computed("silent", hours, Measure::Hour)
            .limit("silence_limit", limit, Measure::Hour)
    };
    let by = |facts: Facts| facts.by("formula-silence", COMMON_PRACTICE);
    let (facts, urgency, says) = match deep_cold {
        Some(air) if silent >= LATE_IN_COLD_H => (
            by(facts(silent, LATE_IN_COLD_H).read("air", air, Measure::DegF)),
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
    Some(
        Finding::new(FindingId::CrewLateCheckIn, Level::Notice, urgency, facts)
            .says(says)
            .task(TaskKind::CheckIn, Some(s.at)),
    )
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
