//! How many circuits a trailer needs, against how many cords it has.

use chrono::TimeDelta;

use super::{LoadKind, circuit_at, kind_of};
use crate::finding::{Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::Source;
use crate::heard::{Event, ReadingKey};
use crate::physics::power::services_needed;
use crate::quantity::Measure;
use crate::situation::Situation;

/// The cold package's circuit is needed from here down, °F (common practice, no source).
const COLD_PACKAGE_F: f64 = 40.0;

/// Returns the circuits that the trailer's loads need in this weather, the converter's first, counted from 1.
pub fn circuits_to_feed(s: &Situation<'_>) -> Vec<u8> {
    split(s, needed(s)).0
}

/// Fewer cords than the trailer's loads need in this weather: soon.
pub(super) fn too_few_circuits(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(&[ReadingKey::Cords], &[Event::PowerOn], &[]) || s.touches_circuits();
    if !bears || !s.stands() {
        return None;
    }
    let (cords, origin) = cords(s)?;
    let needed = needed(s) as f64;
    // with no cord at all the battery's rule has said it
    if cords >= needed || cords < 1.0 {
        return None;
    }
    let (fed, left_out) = plan(s, cords as usize);
    let facts = Facts::new()
        .number("cords", cords, Measure::Count, origin)
        .computed("cords_needed", needed, Measure::Count)
        .spec(
            "converter_circuit",
            f64::from(s.spec.battery.converter_circuit),
            Measure::Count,
        )
        .text("feed", fed, Origin::Computed)
        .computed("feed_count", cords.min(needed), Measure::Count)
        .text("left_out", left_out, Origin::Computed)
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

/// How many circuits the trailer's loads need in this weather.
fn needed(s: &Situation<'_>) -> usize {
    let air_conditioners = count(s, LoadKind::Cooling).max(count(s, LoadKind::Heat));
    let water_heater = count(s, LoadKind::WaterHeater) > 0;
    let needed = services_needed(air_conditioners, water_heater, cold_package_due(s));
    (needed as usize).min(s.spec.circuits.len())
}

/// Returns which circuits to feed with so many cords (the converter's first, then the cold package's where it must run, then
/// in order), and the loads that are left out, as the trailer's card names them.
fn plan(s: &Situation<'_>, cords: usize) -> (String, String) {
    let (fed, rest) = split(s, cords);
    let heaters = s.spec.cold.heater_circuit;
    let fed: Vec<String> = fed.iter().map(u8::to_string).collect();
    let left_out: Vec<&str> = rest
        .iter()
        .filter(|circuit| cold_package_due(s) || Some(**circuit) != heaters)
        .filter_map(|circuit| circuit_at(s, *circuit))
        .flat_map(|circuit| circuit.loads.iter())
        .filter(|load| wanted_in_this_weather(s, kind_of(load)))
        .map(|load| load.name.as_str())
        .collect();
    (fed.join(", "), left_out.join(", "))
}

/// Nobody misses the heat in warm air, nor the air conditioner in cold; where the air was not read, either counts.
fn wanted_in_this_weather(s: &Situation<'_>, kind: LoadKind) -> bool {
    match kind {
        LoadKind::Cooling => s.air_f().is_none_or(|air| air > 50.0),
        LoadKind::Heat => s.air_f().is_none_or(|air| air < 75.0),
        _ => true,
    }
}

/// Splits the circuits into those to feed with so many cords and the rest: the converter's first, then the cold package's
/// where it must run, then in order.
pub(super) fn split(s: &Situation<'_>, cords: usize) -> (Vec<u8>, Vec<u8>) {
    let mut order: Vec<u8> = (1..=s.spec.circuits.len() as u8).collect();
    let heaters = s.spec.cold.heater_circuit;
    order.sort_by_key(|circuit| match *circuit {
        c if c == s.spec.battery.converter_circuit => 0,
        c if Some(c) == heaters => {
            if cold_package_due(s) {
                1
            } else {
                3
            }
        }
        _ => 2,
    });
    let rest = order.split_off(cords.min(order.len()));
    (order, rest)
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
    // one that is named alone is not said to be the only one
    let named = s
        .now
        .circuits_live
        .as_ref()
        .map(|(circuits, _)| circuits.len() as f64)
        .filter(|named| *named > 1.0);
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
