//! Amps: over a breaker, over what a circuit carries for hours, two loads on one circuit.

use chrono::TimeDelta;

use super::{LoadKind, USUAL_BREAKER_A, circuit_at, kind_of};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::Circuit;
use crate::heard::{LoadPair, PlanKind};
use crate::physics::power::max_continuous;
use crate::physics::units::{amps, in_amps};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// A load that lasts longer counts as continuous (NEC 210.20(A)).
const CONTINUOUS: TimeDelta = TimeDelta::hours(3);

/// The current on a circuit that the message bears on.
pub(super) struct Drawn {
    /// The circuit; 0 where it was not named.
    pub(super) circuit: u8,
    /// The current, A.
    pub(super) amps: f64,
}

/// Returns the currents that the message reads; asked, those of the last twelve hours.
pub(super) fn drawn(s: &Situation<'_>) -> Vec<Drawn> {
    if s.occasion == Occasion::Report {
        let read = s.report.readings.amps.iter();
        return read
            .map(|read| Drawn {
                circuit: read.circuit.unwrap_or(0),
                amps: read.amps,
            })
            .collect();
    }
    let recent = s.at - TimeDelta::hours(12);
    s.now
        .amps
        .iter()
        .filter(|(_, latest)| latest.at >= recent)
        .map(|(circuit, latest)| Drawn {
            circuit: *circuit,
            amps: latest.value,
        })
        .collect()
}

fn worst(s: &Situation<'_>, over: impl Fn(&Drawn) -> bool) -> Option<Drawn> {
    drawn(s)
        .into_iter()
        .filter(over)
        .max_by(|a, b| a.amps.total_cmp(&b.amps))
}

fn breaker_a(s: &Situation<'_>, circuit: u8) -> (f64, Origin) {
    match circuit_at(s, circuit) {
        Some(circuit) => (circuit.breaker_a, Origin::Spec),
        None => (USUAL_BREAKER_A, Origin::Assumed),
    }
}

fn continuous_a(s: &Situation<'_>, circuit: u8) -> f64 {
    in_amps(max_continuous(amps(breaker_a(s, circuit).0)))
}

/// Over the breaker: now. Over 80 % of it for more than 3 h: soon; newly so, plan, unless the circuit's loads say it all.
pub(super) fn over_current(s: &Situation<'_>) -> Option<Finding> {
    let drawn = worst(s, |drawn| drawn.amps > continuous_a(s, drawn.circuit))?;
    let (breaker, origin) = breaker_a(s, drawn.circuit);
    let limit = continuous_a(s, drawn.circuit);
    let since = s.now.over_since(drawn.circuit, limit);
    let long = since.is_some_and(|since| s.at - since > CONTINUOUS);
    let facts = Facts::new()
        .read("amps", drawn.amps, Measure::Amp)
        .number("breaker", breaker, Measure::Amp, origin)
        .limit("continuous", limit, Measure::Amp);
    let facts = match since {
        Some(since) if long => facts.time("since", since, Origin::Read),
        _ => facts,
    };
    let facts = facts.by("formula-continuous", "NEC 210.20(A); UL 489");
    let (level, urgency, says) = match drawn.amps {
        a if a > breaker => (Level::Warning, Urgency::Now, "power-over-current-act"),
        _ if long => (Level::Notice, Urgency::Soon, "power-over-current-soon"),
        _ if shared(s).is_some() => return None,
        _ => (Level::Notice, Urgency::Plan, "power-over-current-plan"),
    };
    Some(
        Finding::new(FindingId::PowerOverCurrent, level, urgency, facts)
            .says(says)
            .cautions(&[Caution::HotPlug]),
    )
}

/// A circuit of several loads read over what it carries for hours, or two of its loads reported on together that come to
/// more: soon, one at a time.
pub(super) fn shared_circuit(s: &Situation<'_>) -> Option<Finding> {
    let Some((drawn, circuit, says)) = shared(s) else {
        return told_together(s);
    };
    let listed: f64 = circuit.loads.iter().map(|load| load.amps).sum();
    let facts = Facts::new()
        .spec("circuit", f64::from(drawn.circuit), Measure::Count)
        .read("amps", drawn.amps, Measure::Amp)
        .spec("together", listed, Measure::Amp)
        .limit("continuous", continuous_a(s, drawn.circuit), Measure::Amp);
    Some(one_at_a_time(facts, says))
}

fn one_at_a_time(facts: Facts, says: &'static str) -> Finding {
    let facts = facts.by("formula-shared-circuit", "NEC 210.20(A)");
    Finding::new(
        FindingId::PowerSharedCircuit,
        Level::Notice,
        Urgency::Soon,
        facts,
    )
    .says(says)
    .cautions(&[Caution::HotPlug])
}

/// Two loads of one circuit that the message says run together, where they come to more than it carries for hours.
fn told_together(s: &Situation<'_>) -> Option<Finding> {
    let pair = s.plans.iter().find_map(|plan| match plan.kind {
        PlanKind::Together { pair } => Some(pair),
        _ => None,
    })?;
    let (kinds, says) = match pair {
        LoadPair::AirAndHeat => (
            [LoadKind::Cooling, LoadKind::Heat],
            "power-shared-circuit-air-told",
        ),
        LoadPair::TwoAir => (
            [LoadKind::Cooling, LoadKind::Cooling],
            "power-shared-circuit-two-air-told",
        ),
        LoadPair::HeaterAndConverter => (
            [LoadKind::WaterHeater, LoadKind::Converter],
            "power-shared-circuit-converter-told",
        ),
    };
    let (number, together) = (1_u8..)
        .zip(&s.spec.circuits)
        .find_map(|(number, circuit)| {
            let first = circuit
                .loads
                .iter()
                .position(|load| kind_of(load) == kinds[0])?;
            let second = (0..circuit.loads.len())
                .find(|at| *at != first && kind_of(&circuit.loads[*at]) == kinds[1])?;
            let together = circuit.loads[first].amps + circuit.loads[second].amps;
            (together > continuous_a(s, number)).then_some((number, together))
        })?;
    let facts = Facts::new()
        .spec("circuit", f64::from(number), Measure::Count)
        .spec("together", together, Measure::Amp)
        .limit("continuous", continuous_a(s, number), Measure::Amp);
    Some(one_at_a_time(facts, says))
}

fn shared<'a>(s: &Situation<'a>) -> Option<(Drawn, &'a Circuit, &'static str)> {
    let drawn = worst(s, |drawn| {
        drawn.amps > continuous_a(s, drawn.circuit)
            && circuit_at(s, drawn.circuit).is_some_and(|circuit| text(circuit).is_some())
    })?;
    let circuit = circuit_at(s, drawn.circuit)?;
    Some((drawn, circuit, text(circuit)?))
}

/// Returns what to say of a circuit whose loads should not run together; none for one load, or the cold package's, which
/// are meant to.
fn text(circuit: &Circuit) -> Option<&'static str> {
    let has = |kind| circuit.loads.iter().any(|load| kind_of(load) == kind);
    let cooling = circuit
        .loads
        .iter()
        .filter(|load| kind_of(load) == LoadKind::Cooling)
        .count();
    if has(LoadKind::WaterHeater) && has(LoadKind::Converter) {
        Some("power-shared-circuit-converter")
    } else if has(LoadKind::Cooling) && has(LoadKind::Heat) {
        Some("power-shared-circuit-air")
    } else if cooling > 1 {
        Some("power-shared-circuit-two-air")
    } else {
        None
    }
}
