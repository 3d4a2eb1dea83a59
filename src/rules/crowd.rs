//! Stalls against people: a stall out of order is a queue matter, not only a repair.

use super::Rule;
use crate::finding::{Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::heard::{Event, Fault, ReadingKey};
use crate::physics::crowd::Queue;
use crate::physics::units::{in_minutes, seconds};
use crate::quantity::{Measure, rounded};
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[under_served];

/// The peak against the mean: around breaks people come two to three times as fast (common practice, no source).
const PEAK: f64 = 2.0;
/// A use takes this long, s (Ghent University queueing study, 2017, press account: 60 to 90 s).
const USE_S: f64 = 90.0;
/// Faults that each take one stall.
const STALL_OUT: &[Fault] = &[Fault::ToiletClog, Fault::LockJam, Fault::PersonTrapped];

/// Busy share of the stalls in the peak: plan over 0.75, soon over 0.85, now from 1.
fn under_served(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::Guests, ReadingKey::StallsOut],
        &[Event::InService],
        STALL_OUT,
    );
    if !bears || !s.stands() {
        return None;
    }
    let uses = s.uses_per_h()?;
    let out = stalls_out(s);
    let stalls = s.spec.stalls().saturating_sub(out);
    let queue = Queue {
        servers: stalls,
        arrivals_h: PEAK * uses,
        service: seconds(USE_S),
    };
    let busy = rounded(100.0 * queue.busy_share());
    let (urgency, limit) = match busy {
        b if b >= 100.0 => (Urgency::Now, 100.0),
        b if b > 85.0 => (Urgency::Soon, 85.0),
        b if b > 75.0 => (Urgency::Plan, 75.0),
        _ => return None,
    };
    let read = s.guests.last().is_some();
    let origin = if read { Origin::Read } else { Origin::Spec };
    let mut facts = Facts::new()
        .number("guests", s.guests_here()?, Measure::Count, origin)
        .computed("uses", uses, Measure::PerHour)
        .assumed("peak", PEAK, Measure::Count)
        .assumed("use_time", USE_S, Measure::Second)
        .computed("stalls", f64::from(stalls), Measure::Count)
        .read("stalls_out", f64::from(out), Measure::Count)
        .computed("busy", busy.min(999.0), Measure::Pct)
        .limit("busy_limit", limit, Measure::Pct);
    if let Some(wait) = queue.mean_wait() {
        facts = facts.computed("wait", in_minutes(wait), Measure::Minute);
    }
    let facts = facts.by(
        "formula-queue",
        "Erlang 1917 (M/M/c); uses from a city's special-event chart (West Fargo ND)",
    );
    let says = match (urgency, out > 0) {
        (Urgency::Now, false) => "crowd-under-served-act",
        (Urgency::Now, true) => "crowd-under-served-act-stall-out",
        (_, false) => "crowd-under-served",
        (_, true) => "crowd-under-served-stall-out",
    };
    Some(Finding::new(FindingId::CrowdUnderServed, Level::Notice, urgency, facts).says(says))
}

/// How many stalls are out: as many as were counted, at least one for each fault that takes one.
fn stalls_out(s: &Situation<'_>) -> u32 {
    let faults = STALL_OUT.iter().filter(|fault| s.now.has(**fault)).count() as u32;
    let counted = s.now.value(ReadingKey::StallsOut).unwrap_or(0.0) as u32;
    faults.max(counted)
}
