//! The cold package: fitted and running, or the trailer is drained.

use super::{CHILL_F, Cold, DEEP_F, FREEZE_F, bears, wind};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, TaskKind, Urgency};
use crate::heard::Event;
use crate::physics::cold::Tank;
use crate::physics::units::{deg_f, gal, in_watts, inch, mph, watts};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// What the tank heater holds, °F (common practice, no source).
const HOLD_F: f64 = 40.0;
/// Below this a heater's circuit counts as dead, A: clamp meters do not read zero exactly.
const DEAD_A: f64 = 0.05;

/// A package is fitted: soon to 32 °F where its heater was not reported on; now where it was and its circuit reads 0 A.
pub(super) fn tank_heater_on(s: &Situation<'_>) -> Option<Finding> {
    if !s.spec.cold.package {
        return None;
    }
    let circuit = s.spec.cold.heater_circuit;
    let cold = Cold::of(s);
    if s.now.heater_on() {
        let circuit = circuit?;
        let says_on = s.says(Event::HeaterOn) && s.occasion == Occasion::Report;
        let read = s.now.amps.get(&circuit)?;
        let read_here = s.touches_amps()
            && (s.occasion != Occasion::Report
                || s.report
                    .readings
                    .amps
                    .iter()
                    .any(|amps| amps.circuit == Some(circuit)));
        let on_since = s.now.when(Event::HeaterOn)?;
        let mild = s.air_f().is_some_and(|air| air > CHILL_F);
        let dead = read.value <= DEAD_A && read.at >= on_since && !mild;
        if !dead || !(read_here || says_on || bears(s)) {
            return None;
        }
        let facts = Facts::new()
            .spec("circuit", f64::from(circuit), Measure::Count)
            .read("amps", read.value, Measure::Amp)
            .by("formula-heater-dead", "common practice, no source");
        return Some(
            Finding::new(
                FindingId::ColdTankHeaterOn,
                Level::Notice,
                Urgency::Now,
                facts,
            )
            .says("cold-tank-heater-on-dead")
            .cautions(&[Caution::Electrician])
            .task(TaskKind::Heater, Some(s.at)),
        );
    }
    let cold = cold?;
    // without power there is nothing to switch on; the freeze clock says what to do
    if !bears(s) || cold.air_f > FREEZE_F || s.without_power() || s.winterized() {
        return None;
    }
    let (wind_mph, origin) = wind(s);
    let tank = Tank::outdoors(
        gal(s.spec.waste_gal),
        50.0,
        inch(s.spec.cold.insulation_in),
        mph(wind_mph),
        watts(0.0),
    );
    let needed = tank.heater_to_hold(deg_f(HOLD_F), deg_f(cold.air_f));
    let facts = cold
        .state(Facts::new())
        .number("wind", wind_mph, Measure::Mph, origin)
        .limit("freezing", FREEZE_F, Measure::DegF)
        .spec("heater", s.spec.cold.tank_heater_w, Measure::Watt)
        .computed("heater_needed", in_watts(needed), Measure::Watt);
    let (facts, says) = match circuit {
        Some(circuit) => (
            facts.spec("circuit", f64::from(circuit), Measure::Count),
            if cold.tonight {
                "cold-tank-heater-on-tonight"
            } else {
                "cold-tank-heater-on"
            },
        ),
        None => (facts, "cold-tank-heater-on-plain"),
    };
    let facts = facts.by("formula-heater-hold", "ASHRAE surface films; heat balance");
    Some(
        Finding::new(
            FindingId::ColdTankHeaterOn,
            Level::Notice,
            Urgency::Soon,
            facts,
        )
        .says(says)
        .task(TaskKind::Heater, None),
    )
}

/// Tells whether the heater was reported on and its circuit read as dead since.
pub(super) fn heater_dead(s: &Situation<'_>) -> bool {
    let on_since = s.now.when(Event::HeaterOn);
    let read = s
        .spec
        .cold
        .heater_circuit
        .and_then(|circuit| s.now.amps.get(&circuit));
    read.zip(on_since)
        .is_some_and(|(read, on_since)| read.value <= DEAD_A && read.at >= on_since)
}

/// No package: plan to 40 °F, soon to 32, now to 0.
pub(super) fn no_cold_package(s: &Situation<'_>) -> Option<Finding> {
    if s.spec.cold.package || !bears(s) || s.winterized() {
        return None;
    }
    let cold = Cold::of(s)?;
    let (urgency, says) = match cold.air_f {
        f if f <= DEEP_F && !cold.tonight => (Urgency::Now, "cold-no-cold-package-now"),
        f if f <= FREEZE_F && cold.tonight => (Urgency::Soon, "cold-no-cold-package-tonight"),
        f if f <= FREEZE_F => (Urgency::Soon, "cold-no-cold-package-soon"),
        f if f <= CHILL_F => (Urgency::Plan, "cold-no-cold-package-plan"),
        _ => return None,
    };
    let facts = cold
        .state(Facts::new())
        .limit("limit", limit_of(urgency), Measure::DegF)
        .by("formula-no-package", "common practice, no source");
    Some(Finding::new(FindingId::ColdNoColdPackage, Level::Notice, urgency, facts).says(says))
}

/// No package and 0 °F or less: stop, drain, winterize or withdraw. A low to come tonight: soon.
pub(super) fn winterize(s: &Situation<'_>) -> Option<Finding> {
    if s.spec.cold.package || !bears(s) || s.winterized() {
        return None;
    }
    let cold = Cold::of(s).filter(|cold| cold.air_f <= DEEP_F)?;
    let urgency = if cold.tonight {
        Urgency::Soon
    } else {
        Urgency::Now
    };
    let facts = cold
        .state(Facts::new())
        .limit("limit", DEEP_F, Measure::DegF)
        .by("formula-no-package", "common practice, no source");
    Some(
        Finding::new(FindingId::ColdWinterize, Level::Notice, urgency, facts)
            .cautions(&[
                Caution::HeaterDry,
                Caution::Scald,
                Caution::Antifreeze,
                Caution::IcePlug,
            ])
            .task(TaskKind::Drain, (!cold.tonight).then_some(s.at)),
    )
}

fn limit_of(urgency: Urgency) -> f64 {
    match urgency {
        Urgency::Now => DEEP_F,
        Urgency::Soon => FREEZE_F,
        Urgency::Plan => CHILL_F,
    }
}
