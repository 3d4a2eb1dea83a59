//! The fresh tank, while the trailer lives from it.

use super::super::tanks::{fresh_told, reads_fresh};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault, ReadingKey};
use crate::physics::battery::fresh_time;
use crate::physics::units::{gal, in_hours};
use crate::quantity::Measure;
use crate::situation::Situation;

/// Warn at this level or below, % (common practice, no source).
const WARN_PCT: f64 = 25.0;
/// Act at this level or below, %: the pump must not run dry (common practice, no source).
const ACT_PCT: f64 = 10.0;

/// Running from the tank: soon from 25 % down, now from 10 % down, plan where it will not see the job out.
pub(super) fn fresh_endurance(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[
            ReadingKey::FreshPct,
            ReadingKey::FreshGal,
            ReadingKey::Guests,
        ],
        &[Event::WaterOff, Event::FreshFilled, Event::InService],
        &[Fault::PumpRunning, Fault::PumpDead, Fault::ToiletRunning],
    );
    // who packs up or has drained it fills nothing
    if !bears || !s.runs_from_tank() || s.is_going() || s.is_drained() {
        return None;
    }
    let (level, origin) = fresh_level(s)?;
    let runs_out = s.outlook.fresh.as_ref().and_then(|fresh| fresh.p50);
    let urgency = match level {
        pct if pct <= ACT_PCT => Urgency::Now,
        pct if pct <= WARN_PCT => Urgency::Soon,
        _ if runs_out.is_some() => Urgency::Plan,
        _ => return None,
    };
    let left = gal(s.spec.fresh_gal * level / 100.0);
    let hours = s
        .uses_per_h()
        .and_then(|uses| fresh_time(left, uses, gal(s.spec.gal_per_use)));
    let mut facts = Facts::new()
        .number("fresh", level, Measure::Pct, origin)
        .limit("fresh_warn", WARN_PCT, Measure::Pct)
        .limit("fresh_act", ACT_PCT, Measure::Pct);
    if let Some(uses) = s.uses_per_h() {
        facts = facts.computed("uses", uses, Measure::PerHour).spec(
            "per_use",
            s.spec.gal_per_use,
            Measure::Gal,
        );
    }
    if let Some(hours) = hours {
        facts = facts.computed("fresh_hours", in_hours(hours), Measure::Hour);
    }
    if let Some(at) = runs_out {
        facts = facts.time("fresh_at", at, Origin::Computed);
    }
    let facts = facts.by(
        "formula-fresh-hours",
        "common practice; uses from a city's special-event chart (West Fargo ND)",
    );
    // by the crowd alone nobody knows: it is read before it is filled
    let unread = fresh_told(s).is_none() && origin == Origin::Computed;
    let says = match (urgency, hours.is_some()) {
        (Urgency::Now | Urgency::Soon, _) if unread => "water-fresh-endurance-unread",
        (Urgency::Now, _) => "water-fresh-endurance-act",
        (Urgency::Soon, true) => "water-fresh-endurance-soon",
        (Urgency::Soon, false) => "water-fresh-endurance-low",
        (Urgency::Plan, _) => "water-fresh-endurance-plan",
    };
    let due = match urgency {
        Urgency::Now => Some(s.at),
        _ => s
            .outlook
            .fresh
            .as_ref()
            .and_then(|fresh| fresh.p10)
            .map(|at| at.max(s.at)),
    };
    let finding = Finding::new(
        FindingId::WaterFreshEndurance,
        Level::Notice,
        urgency,
        facts,
    )
    .says(says)
    .cautions(&[Caution::PumpDry]);
    // a full tank that will not see the job out is worth knowing; it is no work yet
    Some(match urgency {
        Urgency::Plan => finding,
        _ => finding.task(TaskKind::Refill, due),
    })
}

/// The level this message tells; else the forecast's; else the last told.
fn fresh_level(s: &Situation<'_>) -> Option<(f64, Origin)> {
    let told = fresh_told(s);
    let forecast = s.outlook.fresh.as_ref().map(|fresh| fresh.level_pct[1]);
    match (told, forecast) {
        (Some(told), _) if reads_fresh(s) => Some((told.pct, Origin::Read)),
        (_, Some(pct)) => Some((pct, Origin::Computed)),
        (Some(told), None) => Some((told.pct, Origin::Read)),
        (None, None) => None,
    }
}
