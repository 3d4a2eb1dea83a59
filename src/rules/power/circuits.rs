//! How many circuits a trailer needs, against how many cords it has.

use chrono::TimeDelta;

use super::{LoadKind, kind_of};
use crate::finding::{Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::Source;
use crate::heard::{Event, ReadingKey};
use crate::physics::power::services_needed;
use crate::quantity::Measure;
use crate::situation::Situation;

/// The cold package's circuit is needed from here down, °F (common practice, no source).
const COLD_PACKAGE_F: f64 = 40.0;

/// Fewer cords than the trailer's loads need in this weather: soon.
pub(super) fn too_few_circuits(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(&[ReadingKey::Cords], &[Event::PowerOn], &[]) || s.touches_circuits();
    if !bears || !s.stands() {
        return None;
    }
    let (cords, origin) = cords(s)?;
    let air_conditioners = count(s, LoadKind::Cooling).max(count(s, LoadKind::Heat));
    let water_heater = count(s, LoadKind::WaterHeater) > 0;
    let needed = services_needed(air_conditioners, water_heater, cold_package_due(s));
    let needed = f64::from(needed).min(s.spec.circuits.len() as f64);
    if cords >= needed {
        return None;
    }
    let facts = Facts::new()
        .number("cords", cords, Measure::Count, origin)
        .computed("cords_needed", needed, Measure::Count)
        .spec(
            "converter_circuit",
            f64::from(s.spec.battery.converter_circuit),
            Measure::Count,
        )
        .by("formula-services", "common practice, no source");
    let says = if cold_package_due(s) {
        "power-too-few-circuits-cold"
    } else {
        "power-too-few-circuits"
    };
    Some(
        Finding::new(
            FindingId::PowerTooFewCircuits,
            Level::Notice,
            Urgency::Soon,
            facts,
        )
        .says(says),
    )
}

/// Tells whether the trailer's cold package must run: fitted, on a circuit, and 40 °F or less outside or tonight.
pub(in crate::rules) fn cold_package_due(s: &Situation<'_>) -> bool {
    let low = s.recent(ReadingKey::LowF, TimeDelta::hours(18));
    s.spec.cold.package
        && s.spec.cold.heater_circuit.is_some()
        && [s.air_f(), low]
            .into_iter()
            .flatten()
            .any(|f| f <= COLD_PACKAGE_F)
}

/// The cords as read or named, else those the site offers.
fn cords(s: &Situation<'_>) -> Option<(f64, Origin)> {
    let named = s
        .now
        .circuits_live
        .as_ref()
        .map(|(circuits, _)| circuits.len() as f64);
    if let Some(read) = s.now.value(ReadingKey::Cords).or(named) {
        return Some((read, Origin::Read));
    }
    let power = &s.site?.power;
    let offered = power.cords.filter(|_| power.source != Source::None)?;
    Some((f64::from(offered), Origin::Spec))
}

fn count(s: &Situation<'_>, kind: LoadKind) -> u32 {
    let circuits = s.spec.circuits.iter();
    circuits
        .filter(|circuit| circuit.loads.iter().any(|load| kind_of(load) == kind))
        .count() as u32
}
