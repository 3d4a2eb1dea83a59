//! What to set up next, in the order that keeps people safe, from what this trailer and this site have.

use super::super::power::cold_package_due;
use crate::book::Stage;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::Source;
use crate::heard::{Event, ReadingKey};
use crate::quantity::Measure;
use crate::rules::FREEZE_F;
use crate::situation::Situation;

/// What a crew reports while it sets up.
const EVENTS: &[Event] = &[
    Event::Arrived,
    Event::Leveled,
    Event::Chocked,
    Event::Unhitched,
    Event::JacksDown,
    Event::PowerOn,
    Event::RegulatorFitted,
    Event::WaterOn,
    Event::FreshFilled,
    Event::HeaterOn,
];

/// One step of setting up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Step {
    Level,
    Chock,
    Unhitch,
    Jacks,
    Power,
    Volts,
    Regulator,
    Water,
    Fill,
    Pressure,
    Heater,
    Test,
    Photos,
}

/// The order: the trailer stands before it is fed, and is fed before it is filled (common practice, no source).
const ORDER: &[Step] = &[
    Step::Level,
    Step::Chock,
    Step::Unhitch,
    Step::Jacks,
    Step::Power,
    Step::Volts,
    Step::Regulator,
    Step::Water,
    Step::Fill,
    Step::Pressure,
    Step::Heater,
    Step::Test,
    Step::Photos,
];

/// After an arrival and each step reported, until it is in service: the next step, and what follows it.
pub(super) fn set_up_next(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::Volts, ReadingKey::SlopePct, ReadingKey::Cords],
        EVENTS,
        &[],
    );
    bears.then(|| set_up(s, &[])).flatten()
}

/// Returns the next step of setting up past those that were skipped, by their codes; none where nothing is left, or the
/// trailer is not being set up.
pub fn set_up(s: &Situation<'_>, skipped: &[String]) -> Option<Finding> {
    if s.now.stage() != Stage::SettingUp {
        return None;
    }
    let left: Vec<Step> = ORDER
        .iter()
        .copied()
        .filter(|step| step.is_for(s) && !step.is_done(s))
        .filter(|step| !skipped.iter().any(|code| code == step.code()))
        .collect();
    let (next, then) = left.split_first()?;
    let facts = Facts::new().text("next", next.code(), Origin::Computed);
    let facts = if then.is_empty() {
        facts
    } else {
        let codes: Vec<&str> = then.iter().map(|step| step.code()).collect();
        facts.text("then", codes.join(", "), Origin::Computed)
    };
    let facts = next
        .state(s, facts)
        .by("formula-set-up", "common practice, no source");
    Some(
        Finding::new(
            FindingId::SiteSetUpNext,
            Level::Notice,
            Urgency::Plan,
            facts,
        )
        .says(next.text(s))
        .cautions(&next.cautions(s)),
    )
}

impl Step {
    fn code(self) -> &'static str {
        match self {
            Step::Level => "level",
            Step::Chock => "chock",
            Step::Unhitch => "unhitch",
            Step::Jacks => "jacks",
            Step::Power => "power",
            Step::Volts => "volts",
            Step::Regulator => "regulator",
            Step::Water => "water",
            Step::Fill => "fill",
            Step::Pressure => "pressure",
            Step::Heater => "heater",
            Step::Test => "test",
            Step::Photos => "photos",
        }
    }

    /// Tells whether this trailer at this site has the step at all.
    fn is_for(self, s: &Situation<'_>) -> bool {
        match self {
            Step::Power | Step::Volts => power_source(s) != Source::None,
            Step::Regulator => water_source(s) != Source::None && static_over(s).is_some(),
            Step::Water | Step::Pressure => water_source(s) != Source::None,
            Step::Fill => water_source(s) == Source::None,
            // at freezing the heater is asked for by a rule of its own
            Step::Heater => cold_package_due(s) && s.air_f().is_none_or(|air| air > FREEZE_F),
            _ => true,
        }
    }

    fn is_done(self, s: &Situation<'_>) -> bool {
        let told = |event| s.now.when(event).is_some();
        let fed = told(Event::PowerOn) || told(Event::WaterOn);
        let since = s.now.when(Event::Arrived).unwrap_or(s.at);
        let read = |key| s.now.value_since(key, since).is_some();
        match self {
            Step::Level => {
                told(Event::Leveled) || told(Event::JacksDown) || fed || read(ReadingKey::SlopePct)
            }
            Step::Chock => told(Event::Chocked),
            Step::Unhitch => told(Event::Unhitched) || told(Event::JacksDown) || fed,
            Step::Jacks => told(Event::JacksDown) || fed,
            Step::Power => {
                told(Event::PowerOn)
                    || s.now.circuits_live.is_some()
                    || read(ReadingKey::Cords)
                    || read(ReadingKey::Volts)
                    || read(ReadingKey::VoltsHigh)
            }
            Step::Volts => read(ReadingKey::Volts) || read(ReadingKey::VoltsHigh),
            Step::Regulator => s.regulated() || !s.now.pressures.is_empty(),
            Step::Water => told(Event::WaterOn) || !s.now.pressures.is_empty(),
            Step::Fill => {
                told(Event::FreshFilled) || read(ReadingKey::FreshPct) || read(ReadingKey::FreshGal)
            }
            Step::Pressure => !s.now.pressures.is_empty(),
            Step::Heater => s.now.heater_on(),
            // a trailer that comes again is tested again
            Step::Test | Step::Photos => s.now.when(Event::InService) > s.now.when(Event::Arrived),
        }
    }

    fn text(self, s: &Situation<'_>) -> &'static str {
        match self {
            Step::Level => "site-set-up-next-level",
            Step::Chock => "site-set-up-next-chock",
            Step::Unhitch => "site-set-up-next-unhitch",
            Step::Jacks => "site-set-up-next-jacks",
            Step::Power if power_source(s) == Source::Generator => {
                "site-set-up-next-power-generator"
            }
            Step::Power => "site-set-up-next-power",
            Step::Volts => "site-set-up-next-volts",
            Step::Regulator => "site-set-up-next-regulator",
            Step::Water if water_source(s) == Source::Hydrant => "site-set-up-next-water-hydrant",
            Step::Water => "site-set-up-next-water",
            Step::Fill if power_source(s) == Source::None => "site-set-up-next-fill-no-power",
            Step::Fill => "site-set-up-next-fill",
            Step::Pressure => "site-set-up-next-pressure",
            Step::Heater => "site-set-up-next-heater",
            Step::Test => "site-set-up-next-test",
            Step::Photos => "site-set-up-next-photos",
        }
    }

    fn cautions(self, s: &Situation<'_>) -> Vec<Caution> {
        match self {
            Step::Level => vec![Caution::Overhead, Caution::RollAway],
            Step::Chock | Step::Unhitch => vec![Caution::RollAway],
            Step::Jacks => vec![Caution::Stabilizers],
            Step::Power if power_source(s) == Source::Generator => {
                vec![Caution::CarbonMonoxide, Caution::GeneratorHandling]
            }
            Step::Power => vec![Caution::NoBypass],
            Step::Regulator => vec![Caution::BurstHose],
            Step::Water if water_source(s) == Source::Hydrant => {
                vec![
                    Caution::HydrantPermission,
                    Caution::Backflow,
                    Caution::NotDrinking,
                ]
            }
            Step::Water => vec![Caution::Backflow, Caution::NotDrinking],
            Step::Fill => vec![Caution::AirGap, Caution::NotDrinking],
            Step::Heater | Step::Test => vec![Caution::HeaterDry],
            Step::Volts | Step::Pressure | Step::Photos => Vec::new(),
        }
    }

    /// Adds the numbers its text needs.
    fn state(self, s: &Situation<'_>, facts: Facts) -> Facts {
        let limits = s.spec.pressure_psi;
        match self {
            Step::Power => facts.spec(
                "converter_circuit",
                f64::from(s.spec.battery.converter_circuit),
                Measure::Count,
            ),
            Step::Regulator => facts
                .spec("static", static_over(s).unwrap_or(limits.max), Measure::Psi)
                .limit("limit", limits.max, Measure::Psi)
                .spec("regulator", limits.regulator, Measure::Psi),
            Step::Pressure => facts.spec("least", limits.min, Measure::Psi).limit(
                "limit",
                limits.max,
                Measure::Psi,
            ),
            Step::Fill => facts.spec("fresh_gal", s.spec.fresh_gal, Measure::Gal),
            Step::Heater => {
                let circuit = s.spec.cold.heater_circuit.unwrap_or(0);
                facts.spec("circuit", f64::from(circuit), Measure::Count)
            }
            _ => facts,
        }
    }
}

/// The site's static pressure where it is more than the trailer may take.
fn static_over(s: &Situation<'_>) -> Option<f64> {
    let stated = s.site?.water.static_psi?;
    (stated > s.spec.pressure_psi.max).then_some(stated)
}

fn power_source(s: &Situation<'_>) -> Source {
    s.site.map_or(Source::House, |site| site.power.source)
}

fn water_source(s: &Situation<'_>) -> Source {
    s.site.map_or(Source::House, |site| site.water.source)
}
