//! The cold package: fitted and running, or the trailer is drained.

use super::{CHILL_F, Cold, DEEP_F, FREEZE_F, bears, wind};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, TaskKind, Urgency};
use crate::heard::{Amps, Event, Fault, PlanKind};
use crate::physics::cold::{PIPE_ALERT_F, Tank};
use crate::physics::units::{deg_f, gal, in_watts, inch, mph, watts};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// What the tank heater holds, °F (common practice, no source).
const HOLD_F: f64 = 40.0;
/// Below this a heater's circuit counts as dead, A: clamp meters do not read zero exactly.
const DEAD_A: f64 = 0.05;
/// Under this share of what the smallest heater draws something is out: low volts alone leave more (common practice, no
/// source).
const WEAK_SHARE: f64 = 0.5;

/// A package is fitted: soon to 32 °F where its heater was not reported on; now where it was and its circuit reads 0 A.
pub(super) fn tank_heater_on(s: &Situation<'_>) -> Option<Finding> {
    if !s.spec.cold.package {
        return None;
    }
    let circuit = s.spec.cold.heater_circuit;
    let cold = Cold::of(s);
    if s.now.heater_on() {
        return heater_draws_little(s, circuit?);
    }
    let cold = cold?;
    // without power there is nothing to switch on; the freeze clock says what to do
    let of_no_use = s.without_power() || s.winterized() || s.is_going();
    if cold.air_f > FREEZE_F || of_no_use {
        return None;
    }
    if let Some(found) = circuit.and_then(|circuit| reads_nothing(s, &cold, circuit)) {
        return Some(found);
    }
    if !bears(s) {
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
        .state(s, Facts::new())
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
    // in hard frost it cannot wait until somebody has time for it
    let hard = !cold.tonight && cold.air_f <= PIPE_ALERT_F;
    let (says, due) = match hard {
        true if s.now.heater_off() => ("cold-tank-heater-on-off", Some(s.at)),
        true if s.now.has(Fault::NoHeat) => (says, Some(s.at)),
        _ => (says, None),
    };
    Some(
        Finding::new(
            FindingId::ColdTankHeaterOn,
            Level::Notice,
            Urgency::Soon,
            facts,
        )
        .says(says)
        .task(TaskKind::Heater, due),
    )
}

/// It freezes, nobody said that the heater is on, and what was read of it is nothing: now.
fn reads_nothing(s: &Situation<'_>, cold: &Cold, circuit: u8) -> Option<Finding> {
    if s.occasion != Occasion::Report {
        return None;
    }
    let of_it = |amps: &&Amps| match amps.circuit {
        Some(named) => named == circuit,
        None => reads_the_heaters(s),
    };
    let read = s.report.readings.amps.iter().find(of_it)?;
    if read.amps > DEAD_A {
        return None;
    }
    let facts = cold
        .state(s, Facts::new())
        .spec("circuit", f64::from(circuit), Measure::Count)
        .read("amps", read.amps, Measure::Amp);
    Some(dead_heater(s, facts, "cold-tank-heater-on-none"))
}

/// A heater that should be on draws nothing or too little: now.
fn dead_heater(s: &Situation<'_>, facts: Facts, says: &'static str) -> Finding {
    let facts = facts.by("formula-heater-dead", "common practice, no source");
    let (level, urgency) = (Level::Notice, Urgency::Now);
    Finding::new(FindingId::ColdTankHeaterOn, level, urgency, facts)
        .says(says)
        .cautions(&[Caution::Electrician])
        .task(TaskKind::Heater, Some(s.at))
}

/// Tells whether the amps that the message reads on no circuit are those of the cold package's heaters.
fn reads_the_heaters(s: &Situation<'_>) -> bool {
    s.plans.iter().any(|plan| plan.kind == PlanKind::ColdHeater)
}

/// The heater was reported on, and its circuit reads nothing, or far less than the smallest of its heaters draws: now.
fn heater_draws_little(s: &Situation<'_>, circuit: u8) -> Option<Finding> {
    let says_on = s.says(Event::HeaterOn) && s.occasion == Occasion::Report;
    let told = s.report.readings.amps.iter();
    let names_it = |amps: &&Amps| amps.circuit == Some(circuit);
    // "heater on, 1 amp" reads the heater's own circuit
    let of_it = says_on || s.occasion == Occasion::Report && reads_the_heaters(s);
    let unnamed = told.clone().find(|amps| of_it && amps.circuit.is_none());
    let read_here = s.touches_amps()
        && (s.occasion != Occasion::Report || told.clone().any(|amps| names_it(&amps)));
    let read = match (unnamed, s.now.amps.get(&circuit)) {
        (Some(read), _) => read.amps,
        (None, Some(read)) if read.at >= s.now.when(Event::HeaterOn)? => read.value,
        _ => return None,
    };
    let mild = s.air_f().is_some_and(|air| air > CHILL_F);
    let expected = least_load(s, circuit);
    let weak = expected.is_some_and(|least| read < WEAK_SHARE * least);
    let heard = unnamed.is_some() || read_here || says_on || bears(s);
    if mild || !heard || !(read <= DEAD_A || weak) {
        return None;
    }
    let facts = Facts::new()
        .spec("circuit", f64::from(circuit), Measure::Count)
        .read("amps", read, Measure::Amp);
    let (facts, says) = match expected {
        Some(least) if read > DEAD_A => (
            facts.spec("load", least, Measure::Amp),
            "cold-tank-heater-on-weak",
        ),
        _ => (facts, "cold-tank-heater-on-dead"),
    };
    Some(dead_heater(s, facts, says))
}

/// Returns what the smallest heater on a circuit draws by the fleet's files, A.
fn least_load(s: &Situation<'_>, circuit: u8) -> Option<f64> {
    let feeds = s.spec.circuits.get(usize::from(circuit).checked_sub(1)?)?;
    let heaters = feeds.loads.iter().filter(|load| load.name.contains("heat"));
    heaters.map(|load| load.amps).min_by(f64::total_cmp)
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
        f if f <= DEEP_F => (Urgency::Now, "cold-no-cold-package-tonight"),
        f if f <= FREEZE_F && cold.tonight => (Urgency::Soon, "cold-no-cold-package-tonight"),
        f if f <= FREEZE_F => (Urgency::Soon, "cold-no-cold-package-soon"),
        f if f <= CHILL_F => (Urgency::Plan, "cold-no-cold-package-plan"),
        _ => return None,
    };
    let facts = cold
        .state(s, Facts::new())
        .limit("limit", limit_of(urgency), Measure::DegF)
        .by("formula-no-package", "common practice, no source");
    Some(Finding::new(FindingId::ColdNoColdPackage, Level::Notice, urgency, facts).says(says))
}

/// No package and 0 °F or less, read or foretold: stop, drain, winterize or withdraw.
pub(super) fn winterize(s: &Situation<'_>) -> Option<Finding> {
    if s.spec.cold.package || !bears(s) || s.winterized() {
        return None;
    }
    let cold = Cold::of(s).filter(|cold| cold.air_f <= DEEP_F)?;
    let facts = cold
        .state(s, Facts::new())
        .limit("limit", DEEP_F, Measure::DegF)
        .by("formula-no-package", "common practice, no source");
    Some(
        Finding::new(FindingId::ColdWinterize, Level::Notice, Urgency::Now, facts)
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
