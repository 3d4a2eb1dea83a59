//! Power: shock, volts, amps, cords, circuits, the battery and the generator.

mod battery;
mod circuits;
pub(super) mod cord;
mod current;
mod generator;
pub(super) mod plug_in;
mod voltage;

pub use circuits::circuits_to_feed;
pub(in crate::rules) use circuits::cold_package_due;
pub use generator::{GeneratorSize, generator_size};

use super::Rule;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, TaskKind, Urgency};
use crate::fleet::{Circuit, Load};
use crate::heard::{Event, Fault};
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[
    shock,
    voltage::low_voltage,
    voltage::high_voltage,
    current::over_current,
    current::shared_circuit,
    cord::drop_too_large,
    cord::cord_overloaded,
    circuits::too_few_circuits,
    battery::on_battery,
    battery::battery_low,
    generator::generator,
    generator::generator_inside,
];

/// Supply voltage that loads are rated at, V.
const RATED_V: f64 = 120.0;
/// What a circuit is taken to carry where the trailer's card has none, A.
const USUAL_BREAKER_A: f64 = 20.0;

/// Somebody felt a tingle or a shock: now, and power off at the source.
fn shock(s: &Situation<'_>) -> Option<Finding> {
    let facts = Facts::new().by("formula-shock", "OSHA 3075; 29 CFR 1910.333");
    // power that is told on while a shock stands is the danger itself
    let on = [
        Event::PowerOn,
        Event::PowerBack,
        Event::BreakerReset,
        Event::HeaterOn,
    ];
    let live = s.now.has(Fault::Shock) && on.iter().any(|event| s.says(*event));
    (s.tells(Fault::Shock) || live).then(|| {
        Finding::new(FindingId::PowerShock, Level::Danger, Urgency::Now, facts)
            .cautions(&[
                Caution::KillPowerAtSource,
                Caution::EmergencyCall,
                Caution::Electrician,
            ])
            .task(TaskKind::Electrician, Some(s.at))
    })
}

/// What a load is, by the words of its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum LoadKind {
    Cooling,
    Heat,
    WaterHeater,
    Converter,
    ColdPackage,
    Other,
}

fn kind_of(load: &Load) -> LoadKind {
    let name = load.name.to_lowercase();
    let names = |word: &str| {
        name.split(|c: char| !c.is_alphanumeric())
            .any(|part| part == word)
    };
    if names("water") && (names("heater") || names("heat")) {
        LoadKind::WaterHeater
    } else if names("tank") || names("bay") || names("cold") {
        LoadKind::ColdPackage
    } else if names("converter") || names("charger") {
        LoadKind::Converter
    } else if names("ac") || names("air") || names("cooling") || load.start_amps.is_some() {
        LoadKind::Cooling
    } else if names("heat") || names("heater") || names("furnace") {
        LoadKind::Heat
    } else {
        LoadKind::Other
    }
}

/// Returns a trailer's circuit by its number, counted from 1; none for 0, which stands for "not named".
fn circuit_at<'a>(s: &Situation<'a>, number: u8) -> Option<&'a Circuit> {
    s.spec.circuits.get(usize::from(number).checked_sub(1)?)
}

/// Returns the circuits, counted from 1, that carry nothing but the cold package.
fn is_cold_package(circuit: &Circuit) -> bool {
    !circuit.loads.is_empty()
        && circuit
            .loads
            .iter()
            .all(|load| kind_of(load) == LoadKind::ColdPackage)
}
