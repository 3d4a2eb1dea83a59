//! Quantities about power.

use super::input::{Given, Input, Kind, input, num, whole, word};
use super::{Found, Outcome, Quantity, SumError, code, found, maybe};
use crate::physics::power::{
    self, Conductor, Derate, GENERATOR_DISTANCE_FT, GeneratorLoad, Gfci, Material, Strand,
};
use crate::physics::units::{
    amps, deg_f, ft, in_amps, in_ft, in_milliamps, in_seconds, in_volts, in_watts, ohms, volts,
    watts,
};

const AMPS: Input = num("amps", "A", 0.0, 1_000.0);
const AWG: Input = whole("awg", "AWG", 2.0, 18.0);
const ONE_WAY: Input = num("one_way_ft", "ft", 0.0, 10_000.0);
const SUPPLY: Input = num("volts", "V", 1.0, 600.0).or(120.0);
const READING: Input = num("volts", "V", 0.0, 600.0);
const RATED_V: Input = num("rated_V", "V", 1.0, 600.0).or(120.0);
const AC_V: Input = num("ac_V", "V", 1.0, 600.0).or(120.0);
const DC_V: Input = num("dc_V", "V", 0.0, 60.0).or(13.8);
const EFFICIENCY: Input = num("eff", "", 0.05, 1.0).or(0.85);
const RUNNING: Input = input("running_W", "W", Kind::List(0.0, 1e6, None));
const STARTING: Input = input("starting_W", "W", Kind::List(0.0, 1e6, None));

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "max_continuous_amps",
        inputs: &[num("breaker_A", "A", 1.0, 6_000.0)],
        unit: "A",
        source: "NEC 210.20(A): 125 % of continuous load, so 0.8 of the breaker",
        compute: |g| found(in_amps(power::max_continuous(amps(g.num("breaker_A"))))),
    },
    Quantity {
        name: "min_breaker_for_mixed",
        inputs: &[
            num("continuous_A", "A", 0.0, 6_000.0),
            num("noncontinuous_A", "A", 0.0, 6_000.0).or(0.0),
        ],
        unit: "A",
        source: "NEC 210.20(A): 1.25 x continuous + noncontinuous",
        compute: |g| {
            let least =
                power::min_breaker(amps(g.num("continuous_A")), amps(g.num("noncontinuous_A")));
            found(in_amps(least))
        },
    },
    Quantity {
        name: "breaker_must_trip_s",
        inputs: &[
            num("rating_A", "A", 1.0, 6_000.0),
            num("amps", "A", 0.0, 100_000.0),
        ],
        unit: "s",
        source: "UL 489: 135 % within 1 h to 50 A, 200 % within 2 min to 30 A (larger breakers from memory); null where it need not trip",
        compute: |g| {
            let time = power::breaker_must_trip(amps(g.num("rating_A")), amps(g.num("amps")));
            maybe(time.map(in_seconds))
        },
    },
    Quantity {
        name: "gfci_must_trip_mA",
        inputs: &[word("cls", &["A", "B", "C", "D", "E"])],
        unit: "mA",
        source: "UL 943 Class A (4-6 mA); classes B and, by UL 943C, C to E from memory",
        compute: |g| {
            let class = match g.word("cls") {
                "A" => Gfci::A,
                "B" => Gfci::B,
                _ => Gfci::C,
            };
            found(in_milliamps(class.must_trip()))
        },
    },
    Quantity {
        name: "conductor_ohm_per_kft",
        inputs: &[
            AWG,
            word("material", &["Cu", "Al", "copper", "aluminum", "aluminium"]),
            word(
                "strand",
                &[
                    "stranded uncoated",
                    "stranded coated",
                    "solid uncoated",
                    "solid coated",
                    "stranded",
                    "solid",
                ],
            ),
            num("temp_C", "°C", -60.0, 250.0).or(75.0),
        ],
        unit: "ohm/kft",
        source: "NEC (NFPA 70) Chapter 9 Table 8, direct current",
        compute: |g| {
            let conductor = Conductor {
                awg: g.whole("awg"),
                material: match g.word("material") {
                    "Cu" | "copper" => Material::Copper,
                    _ => Material::Aluminium,
                },
                strand: match g.word("strand") {
                    "stranded coated" => Strand::StrandedCoated,
                    "solid uncoated" | "solid" => Strand::Solid,
                    "solid coated" => Strand::SolidCoated,
                    _ => Strand::Stranded,
                },
                celsius: g.num("temp_C"),
            };
            by_gauge(power::ohm_per_kft(conductor))
        },
    },
    Quantity {
        name: "voltage_drop_V",
        inputs: &[AMPS, ONE_WAY, AWG],
        unit: "V",
        source: "2 L I R/1000 with NEC Chapter 9 Table 8",
        compute: |g| {
            let drop =
                power::cord_drop(amps(g.num("amps")), ft(g.num("one_way_ft")), g.whole("awg"));
            by_gauge(drop.map(in_volts))
        },
    },
    Quantity {
        name: "voltage_drop_pct",
        inputs: &[AMPS, ONE_WAY, AWG, SUPPLY],
        unit: "%",
        source: "2 L I R/1000 with NEC Chapter 9 Table 8; 3 % and 5 % are the NEC 210.19(A) informational note",
        compute: |g| {
            by_gauge(power::cord_drop_pct(
                amps(g.num("amps")),
                ft(g.num("one_way_ft")),
                g.whole("awg"),
                volts(g.num("volts")),
            ))
        },
    },
    Quantity {
        name: "cord_end_V",
        inputs: &[AMPS, ONE_WAY, AWG, SUPPLY],
        unit: "V",
        source: "supply less 2 L I R/1000, NEC Chapter 9 Table 8",
        compute: |g| {
            let left = power::cord_end_voltage(
                volts(g.num("volts")),
                amps(g.num("amps")),
                ft(g.num("one_way_ft")),
                g.whole("awg"),
            );
            by_gauge(left.map(in_volts))
        },
    },
    Quantity {
        name: "max_cord_ft",
        inputs: &[
            num("amps", "A", 0.01, 1_000.0),
            AWG,
            num("drop_pct", "%", 0.0, 100.0).or(3.0),
            SUPPLY,
        ],
        unit: "ft",
        source: "2 L I R/1000 solved for the length, NEC Chapter 9 Table 8",
        compute: |g| {
            let length = power::max_cord_length(
                amps(g.num("amps")),
                g.whole("awg"),
                g.num("drop_pct"),
                volts(g.num("volts")),
            );
            by_gauge(length.map(in_ft))
        },
    },
    Quantity {
        name: "cord_ampacity_A",
        inputs: &[AWG, whole("current_carrying", "", 1.0, 20.0).or(2.0)],
        unit: "A",
        source: "NEC Table 400.5(A)(1), column B for two conductors, A for three (10 AWG and column A from memory)",
        compute: |g| {
            let limit = power::cord_ampacity(g.whole("awg"), g.whole("current_carrying"));
            by_gauge(limit.map(in_amps))
        },
    },
    Quantity {
        name: "converter_ac_amps",
        inputs: &[num("dc_A", "A", 0.0, 1_000.0), DC_V, EFFICIENCY, AC_V],
        unit: "A",
        source: "power balance",
        compute: |g| found(converter(g, "dc_A")),
    },
    Quantity {
        name: "circuit2_total_amps",
        inputs: &[
            num("heater_W", "W", 0.0, 100_000.0),
            AC_V,
            num("converter_dc_A", "A", 0.0, 1_000.0),
            DC_V,
            EFFICIENCY,
        ],
        unit: "A",
        source: "water heater and converter added up (power balance); 16 A is the continuous limit of a 20 A breaker",
        compute: |g| {
            let supply = volts(g.num("ac_V"));
            let heater = power::resistive_current(watts(g.num("heater_W")), supply, supply);
            found(in_amps(heater) + converter(g, "converter_dc_A"))
        },
    },
    Quantity {
        name: "resistive_power_fraction",
        inputs: &[READING, RATED_V],
        unit: "-",
        source: "V^2/R",
        compute: |g| {
            found(power::resistive_power_fraction(
                volts(g.num("volts")),
                volts(g.num("rated_V")),
            ))
        },
    },
    Quantity {
        name: "heater_amps",
        inputs: &[num("watts", "W", 0.0, 100_000.0), RATED_V, READING],
        unit: "A",
        source: "resistive element, amps follow volts (Ohm's law)",
        compute: |g| {
            let current = power::resistive_current(
                watts(g.num("watts")),
                volts(g.num("rated_V")),
                volts(g.num("volts")),
            );
            found(in_amps(current))
        },
    },
    Quantity {
        name: "services_needed",
        inputs: &[
            whole("ac", "", 0.0, 10.0),
            input("water_heater", "", Kind::Flag),
            input("cold_pkg", "", Kind::Flag),
        ],
        unit: "circuits",
        source: "common practice, no source; with air conditioners alone the converter has no power",
        compute: |g| {
            let circuits =
                power::services_needed(g.whole("ac"), g.flag("water_heater"), g.flag("cold_pkg"));
            found(f64::from(circuits))
        },
    },
    Quantity {
        name: "generator_rated_W",
        inputs: &[
            RUNNING,
            STARTING,
            num("altitude_ft", "ft", -1_500.0, 20_000.0).or(0.0),
            num("air_F", "°F", -80.0, 140.0).or(70.0),
            num("alt_pct_per_kft", "%/kft", 0.0, 20.0).or(3.5),
            num("temp_pct_per_10F_over_85F", "%/10F", 0.0, 20.0).or(1.0),
        ],
        unit: "W",
        source: "sum of running + largest start increment, derated; derates are common practice, the maker's data win",
        compute: generator,
    },
    Quantity {
        name: "generator_min_distance_ft",
        inputs: &[],
        unit: "ft",
        source: "CPSC portable generator safety alert",
        compute: |_| found(GENERATOR_DISTANCE_FT),
    },
    Quantity {
        name: "open_neutral_leg_volts",
        inputs: &[
            num("line_V", "V", 1.0, 600.0).or(240.0),
            num("load_a_ohm", "ohm", 1e-3, 1e9),
            num("load_b_ohm", "ohm", 1e-3, 1e9),
        ],
        unit: "V on a",
        source: "series divider after a lost neutral",
        compute: |g| {
            let leg = power::open_neutral_leg(
                volts(g.num("line_V")),
                ohms(g.num("load_a_ohm")),
                ohms(g.num("load_b_ohm")),
            );
            found(in_volts(leg))
        },
    },
    Quantity {
        name: "voltage_band",
        inputs: &[READING],
        unit: "-",
        source: "ANSI C84.1 utilization voltage, 2016 on (from memory)",
        compute: |g| code(power::voltage_band(volts(g.num("volts"))).code()),
    },
];

fn converter(g: &Given, dc: &str) -> f64 {
    in_amps(power::converter_current(
        amps(g.num(dc)),
        volts(g.num("dc_V")),
        g.num("eff"),
        volts(g.num("ac_V")),
    ))
}

fn generator(g: &Given) -> Outcome {
    let (running, starting) = (g.list("running_W"), g.list("starting_W"));
    if running.len() != starting.len() {
        return Err(SumError::Together(format!(
            "`running_W` has {} loads and `starting_W` has {}; give one starting figure for each load",
            running.len(),
            starting.len()
        )));
    }
    let loads: Vec<GeneratorLoad> = running
        .iter()
        .zip(starting)
        .map(|(running, starting)| GeneratorLoad {
            running: watts(*running),
            starting: watts(*starting),
        })
        .collect();
    let rating = power::generator_rating(
        &loads,
        ft(g.num("altitude_ft")),
        deg_f(g.num("air_F")),
        Derate {
            pct_per_kft: g.num("alt_pct_per_kft"),
            pct_per_10f: g.num("temp_pct_per_10F_over_85F"),
        },
    );
    found(in_watts(rating))
}

/// A figure from a table by gauge, or a word that the table has no such row.
fn by_gauge(value: Option<f64>) -> Outcome {
    value.map(Found::Number).ok_or_else(|| {
        SumError::Together(
            "the table has no such conductor: `awg` must be 18, 16, 14, 12, 10, 8, 6, 4 or 2, solid only to 8".into(),
        )
    })
}
