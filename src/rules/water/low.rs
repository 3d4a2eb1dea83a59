//! Pressure too low or falling: supply, hose or restriction?

use super::super::COMMON_PRACTICE;
use super::supply::{Feed, feed};
use super::{flowing, pressure, static_read};
use crate::book::PressureRead;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault};
use crate::physics::units::{gpm, in_psi, psi};
use crate::physics::water::{
    Restriction, expected_flowing_pressure, restriction_cause, unexplained_loss,
};
use crate::quantity::{Measure, rounded};
use crate::situation::Situation;

/// A toilet's tank needs this while it fills, psi; a main below it is open to backsiphonage (IRC Table P2903.1).
const NEEDED_PSI: f64 = 20.0;
/// A fall from the last check that counts, psi (common practice, no source).
const FALL_PSI: f64 = 10.0;
/// What runs when a crew says "taps running": one toilet filling and two taps, gpm (common practice, no source).
const TAPS_RUNNING_GPM: f64 = 5.0;
/// Flows that differ by less are the same flow, gpm.
const SAME_FLOW_GPM: f64 = 0.5;

/// Under the trailer's least: soon; under 20 psi: now. With water running and more missing than hose and fittings explain,
/// the filter comes first.
pub(super) fn under_pressure(s: &Situation<'_>) -> Option<Finding> {
    let read = pressure(s)?;
    let least = s.spec.pressure_psi.min;
    let loss = Loss::of(s, read);
    // a pressure in order is called too low by what was read alone, never by a flow that was taken
    let restricted = loss.as_ref().is_some_and(|loss| {
        let read = loss.feed.origin == Origin::Read && loss.flow_origin == Origin::Read;
        loss.cause == Restriction::Restriction && read
    });
    let urgency = match read.psi {
        p if p < NEEDED_PSI => Urgency::Now,
        p if p < least => Urgency::Soon,
        _ if restricted => Urgency::Plan,
        _ => return None,
    };
    let facts = Facts::new()
        .read("pressure", read.psi, Measure::Psi)
        .limit("limit", least, Measure::Psi)
        .limit("needed", NEEDED_PSI, Measure::Psi);
    let finding = |facts: Facts, formula, source| {
        let facts = facts.by(formula, source);
        Finding::new(FindingId::WaterUnderPressure, Level::Notice, urgency, facts)
            .cautions(&[Caution::KeepRegulator])
    };
    let plain = "IRC Table P2903.1";
    Some(match (flowing(read), loss) {
        (Some(true), Some(loss)) => {
            let restriction = loss.cause == Restriction::Restriction;
            let says = match (restriction, loss.cause, urgency) {
                (true, ..) => "water-under-pressure-restriction",
                (_, Restriction::Supply, Urgency::Now) => "water-under-pressure-act",
                (_, Restriction::Supply, _) => "water-under-pressure-supply",
                (_, _, Urgency::Now) => "water-under-pressure-act",
                _ => "water-under-pressure-hose",
            };
            let facts = loss.state(facts);
            let source = "EPANET 2.2 (Hazen-Williams); no flow, no friction";
            let found = finding(facts, "formula-unexplained-loss", source).says(says);
            if restriction {
                found
                    .cautions(&[Caution::BleedFirst])
                    .task(TaskKind::Filter, due(s, urgency))
            } else {
                found
            }
        }
        (taps, _) => {
            let says = match (taps, urgency) {
                (_, Urgency::Now) => "water-under-pressure-act",
                (Some(true), _) => "water-under-pressure-flowing",
                (Some(false), _) => "water-under-pressure-supply",
                (None, _) => "water-under-pressure-ask",
            };
            finding(facts, "formula-reading-under-limit", plain).says(says)
        }
    })
}

/// Under 20 psi a main can suck back what a hose end lies in: now.
pub(super) fn backflow(s: &Situation<'_>) -> Option<Finding> {
    let read = pressure(s)?;
    let facts = Facts::new()
        .read("pressure", read.psi, Measure::Psi)
        .limit("needed", NEEDED_PSI, Measure::Psi)
        .by(
            "formula-reading-under-limit",
            "EPA Cross-Connection Control Manual 816-R-03-002; IPC 608",
        );
    (read.psi < NEEDED_PSI).then(|| {
        Finding::new(
            FindingId::WaterBackflow,
            Level::Caution,
            Urgency::Now,
            facts,
        )
        .cautions(&[Caution::Backflow])
    })
}

/// No vacuum breaker or backflow preventer at the tap, or a broken one: soon, before the supply is opened.
pub(super) fn no_backflow_device(s: &Situation<'_>) -> Option<Finding> {
    s.tells(Fault::NoBackflow).then(|| {
        let facts = Facts::new().by(
            "formula-reported",
            "EPA Cross-Connection Control Manual 816-R-03-002; IPC 608",
        );
        Finding::new(
            FindingId::WaterBackflow,
            Level::Caution,
            Urgency::Soon,
            facts,
        )
        .says("water-backflow-no-device")
        .cautions(&[Caution::Backflow])
    })
}

/// From 10 psi less than at the last check: soon, unless both readings say their flow and it differs, or a regulator came
/// between.
pub(super) fn pressure_falling(s: &Situation<'_>) -> Option<Finding> {
    let last = pressure(s)?;
    let before = s.now.pressures.iter().rev().nth(1)?;
    let fall = rounded(before.psi - last.psi);
    let limits = s.spec.pressure_psi;
    // a pressure brought down from over the limit into the right range was mended, not lost
    let mended = before.psi > limits.max && last.psi >= limits.min;
    let between = |event| {
        s.now
            .when(event)
            .is_some_and(|at| at >= before.at && at <= last.at)
    };
    let serviced = s
        .now
        .when(Event::FilterServiced)
        .is_some_and(|at| at > last.at);
    if fall < FALL_PSI
        || differ(before, last)
        || mended
        || between(Event::RegulatorFitted)
        || serviced
    {
        return None;
    }
    let facts = Facts::new()
        .read("before", before.psi, Measure::Psi)
        .read("pressure", last.psi, Measure::Psi)
        .computed("fall", fall, Measure::Psi)
        .limit("fall_limit", FALL_PSI, Measure::Psi)
        .by("formula-fall", COMMON_PRACTICE);
    Some(
        Finding::new(
            FindingId::WaterPressureFalling,
            Level::Notice,
            Urgency::Soon,
            facts,
        )
        .cautions(&[Caution::BleedFirst])
        .task(TaskKind::Filter, None),
    )
}

/// Tells whether both readings say how much flowed, and it was not the same.
fn differ(a: &PressureRead, b: &PressureRead) -> bool {
    match (flowing(a), flowing(b)) {
        (Some(a_flows), Some(b_flows)) if a_flows != b_flows => true,
        (Some(true), Some(true)) => match (a.flow_gpm, b.flow_gpm) {
            (Some(a), Some(b)) => (a - b).abs() >= SAME_FLOW_GPM,
            _ => false,
        },
        _ => false,
    }
}

/// What hose and fittings explain of a flowing pressure.
struct Loss {
    feed: Feed,
    flow: f64,
    flow_origin: Origin,
    expected: f64,
    unexplained: f64,
    cause: Restriction,
}

impl Loss {
    fn of(s: &Situation<'_>, read: &PressureRead) -> Option<Loss> {
        if flowing(read) != Some(true) {
            return None;
        }
        let feed = feed(s, static_read(s))?;
        let (flow, flow_origin) = match read.flow_gpm {
            Some(flow) => (flow, Origin::Read),
            None => (TAPS_RUNNING_GPM, Origin::Assumed),
        };
        let line = feed.line();
        let supply = psi(feed.static_psi);
        let expected = expected_flowing_pressure(supply, &line, gpm(flow));
        let unexplained = unexplained_loss(supply, &line, gpm(flow), psi(read.psi));
        Some(Loss {
            cause: restriction_cause(supply, psi(read.psi), expected),
            expected: in_psi(expected),
            unexplained: in_psi(unexplained),
            feed,
            flow,
            flow_origin,
        })
    }

    fn state(&self, facts: Facts) -> Facts {
        self.feed
            .state(facts)
            .number("flow", self.flow, Measure::Gpm, self.flow_origin)
            .computed("expected", self.expected, Measure::Psi)
            .computed("unexplained", self.unexplained, Measure::Psi)
    }
}

fn due(s: &Situation<'_>, urgency: Urgency) -> Option<chrono::DateTime<chrono::Utc>> {
    (urgency == Urgency::Now).then_some(s.at)
}
