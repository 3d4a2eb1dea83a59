//! Pressure above what the plumbing is meant for.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::COMMON_PRACTICE;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, ReadingKey};
use crate::physics::units::psi;
use crate::physics::water::{PRV_LIMIT_PSI, prv_required};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// Supplies of this pressure exist; nothing is connected to one (common practice, no source).
const STOP_PSI: f64 = 100.0;

/// Above the trailer's limit: plan; above 80 psi, the codes' limit: now; from 100 psi nothing is connected.
pub(super) fn over_pressure(s: &Situation<'_>) -> Option<Finding> {
    let limits = s.spec.pressure_psi;
    let (pressure, origin) = held_against(s)?;
    let urgent = prv_required(psi(pressure));
    if !urgent && pressure <= limits.max {
        return None;
    }
    let facts = Facts::new()
        .number("pressure", pressure, Measure::Psi, origin)
        .limit("limit", limits.max.min(PRV_LIMIT_PSI), Measure::Psi)
        .spec("regulator", limits.regulator, Measure::Psi);
    if !urgent {
        let facts = facts.by("formula-reading-over-limit", COMMON_PRACTICE);
        return Some(
            Finding::new(
                FindingId::WaterOverPressure,
                Level::Notice,
                Urgency::Plan,
                facts,
            )
            .says("water-over-pressure-plan")
            .cautions(&[Caution::NightPressure])
            .task(TaskKind::Regulator, None),
        );
    }
    let facts = facts
        .limit("code_limit", PRV_LIMIT_PSI, Measure::Psi)
        .by("formula-reading-over-limit", "IPC 604.8; UPC 608.2");
    let says = if s.regulated() {
        "water-over-pressure-regulated"
    } else if s.says(Event::WaterOn) && origin == Origin::Read && super::pressure(s).is_none() {
        "water-over-pressure-hooked"
    } else if pressure >= STOP_PSI {
        "water-over-pressure-stop"
    } else if super::pressure(s).is_none() {
        // what is judged was read before the regulator, or is what the site is known to give
        "water-over-pressure-site"
    } else {
        "water-over-pressure-act"
    };
    Some(
        Finding::new(
            FindingId::WaterOverPressure,
            Level::Warning,
            Urgency::Now,
            facts,
        )
        .says(says)
        .cautions(&[
            Caution::BurstHose,
            Caution::BleedFirst,
            Caution::PressureCode,
        ])
        .task(TaskKind::Regulator, Some(s.at)),
    )
}

/// The pressure to judge: what was read at the trailer since its regulator was fitted; before it, where nothing else was
/// read; or what the site is known to give, once the water is hooked up and nobody has read it.
fn held_against(s: &Situation<'_>) -> Option<(f64, Origin)> {
    let fitted = s.now.when(Event::RegulatorFitted);
    let since_fitted = |at: DateTime<Utc>| fitted.is_none_or(|fitted| at >= fitted);
    if let Some(read) = super::pressure(s) {
        return since_fitted(read.at).then_some((read.psi, Origin::Read));
    }
    // what was read before counts again as soon as the water is hooked up
    let hooks_up = s.says(Event::WaterOn) && fitted.is_none();
    // guests come in while what was read is too high still
    let opens = s.says(Event::InService)
        && s.now.holds(Event::WaterOn, &[Event::WaterOff])
        && s.now
            .pressures
            .last()
            .is_some_and(|read| since_fitted(read.at));
    let day = TimeDelta::hours(24);
    let last = s.now.pressures.last().filter(|read| s.at - read.at <= day);
    if let Some(read) = last.filter(|_| hooks_up || opens) {
        return Some((read.psi, Origin::Read));
    }
    let reads_supply = s.touches(&[ReadingKey::SupplyPsi], &[Event::WaterOn], &[]);
    if reads_supply
        && fitted.is_none()
        && let Some(supply) = s.recent(ReadingKey::SupplyPsi, day)
    {
        return Some((supply, Origin::Read));
    }
    let hooked_up = s.now.holds(Event::WaterOn, &[Event::WaterOff]);
    let says_so = s.says(Event::WaterOn) || s.occasion == Occasion::Asked;
    let unread = s.now.pressures.is_empty();
    (hooked_up && says_so && unread && fitted.is_none())
        .then(|| s.site?.water.static_psi)
        .flatten()
        .map(|site| (site, Origin::Spec))
}
