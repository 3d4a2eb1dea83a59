//! Quantities about fault finding.

use super::input::{Kind, input, num};
use super::nearest::nearest;
use super::{Quantity, SumError, code, found, maybe};
use crate::heard::Fault;
use crate::physics::trouble;
use crate::physics::units::{
    deg_f, gal, gpm, in_gpm, in_hours, in_milliamps, milliamps, ohms, seconds, volts, watts,
};

/// Other words for a fault than its code.
const ALIASES: [(&str, Fault); 8] = [
    ("tingle", Fault::Shock),
    ("gas", Fault::GasIllness),
    ("co", Fault::GasIllness),
    ("h2s", Fault::GasIllness),
    ("clog", Fault::ToiletClog),
    ("weak-water", Fault::LowFlow),
    ("no-12v", Fault::BatteryLow),
    ("pump-will-not-stop", Fault::PumpRunning),
];

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "body_current_mA",
        inputs: &[
            num("volts", "V", 0.0, 1_000.0),
            num("ohms", "ohm", 1.0, 1e9).or(trouble::WET_SKIN_OHM),
        ],
        unit: "mA",
        source: "Ohm's law; wet skin about 1,000 ohm (OSHA 3075)",
        compute: |g| {
            let current = trouble::body_current(volts(g.num("volts")), ohms(g.num("ohms")));
            found(in_milliamps(current))
        },
    },
    Quantity {
        name: "shock_effect",
        inputs: &[num("mA", "mA", 0.0, 1e6)],
        unit: "-",
        source: "OSHA 3075, table of effects of current",
        compute: |g| code(trouble::shock_effect(milliamps(g.num("mA"))).code()),
    },
    Quantity {
        name: "first_step",
        inputs: &[input("symptom", "", Kind::Text)],
        unit: "-",
        source: "OSHA 3075 (50 to 150 mA may kill), 29 CFR 1910.333 de-energise; other first steps common practice",
        compute: |g| {
            let symptom = g.word("symptom").to_lowercase().replace([' ', '_'], "-");
            let alias = ALIASES.iter().find(|(word, _)| *word == symptom);
            let fault = alias.map(|(_, fault)| *fault).or_else(|| {
                Fault::ALL
                    .iter()
                    .copied()
                    .find(|fault| fault.code() == symptom)
            });
            match fault {
                Some(fault) => code(trouble::first_step(fault)),
                None => {
                    let near = nearest(&symptom, Fault::ALL.iter().map(|fault| fault.code()));
                    let hint =
                        near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
                    Err(SumError::Together(format!(
                        "`{}` is no symptom known here{hint}",
                        g.word("symptom")
                    )))
                }
            }
        },
    },
    Quantity {
        name: "water_heater_reheat_h",
        inputs: &[
            num("gal", "gal", 0.0, 100_000.0),
            num("from_F", "°F", 32.0, 212.0),
            num("to_F", "°F", 32.0, 212.0),
            num("watts", "W", 1.0, 100_000.0),
        ],
        unit: "h",
        source: "heat balance, no loss",
        compute: |g| {
            let time = trouble::reheat_time(
                gal(g.num("gal")),
                deg_f(g.num("from_F")),
                deg_f(g.num("to_F")),
                watts(g.num("watts")),
            );
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "leak_gpm_from_pump_cycle",
        inputs: &[
            num("on_s", "s", 0.0, 86_400.0),
            num("off_s", "s", 0.0, 86_400.0),
            num("pump_gpm", "gpm", 0.0, 1_000.0).or(3.0),
        ],
        unit: "gpm",
        source: "duty cycle with all fixtures shut",
        compute: |g| {
            let leak = trouble::leak_from_cycle(
                seconds(g.num("on_s")),
                seconds(g.num("off_s")),
                gpm(g.num("pump_gpm")),
            );
            found(in_gpm(leak))
        },
    },
];
