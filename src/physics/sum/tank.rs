//! Quantities about tanks and what is in them.

use super::input::{Input, num, word};
use super::{Quantity, SumError, found, maybe};
use crate::physics::battery;
use crate::physics::tank;
use crate::physics::units::{gal, hours, in_gal, in_hours, in_lb, inch};

const SIZE: Input = num("tank_gal", "gal", 0.1, 100_000.0);
const FRESH: Input = num("fresh_gal", "gal", 0.0, 100_000.0);
const LEVEL: Input = num("level_pct", "%", 0.0, 100.0);
const USES: Input = num("uses_per_h", "1/h", 0.0, 100_000.0);
const PER_USE: Input = num("gal_use", "gal", 0.0, 100.0).or(1.0);
const BODY: Input = num("body_gal", "gal", 0.0, 10.0).or(tank::BODY_GAL);
const STOP: Input = num("stop_pct", "%", 0.0, 100.0).or(tank::STOP_PCT);
const LENGTH: Input = num("length_in", "in", 0.0, 10_000.0);
const DIAMETER: Input = num("diameter_in", "in", 0.1, 10_000.0);
const HEIGHT: Input = num("level_in", "in", 0.0, 10_000.0);
const INDUSTRY: Input = word("industry", &["general", "construction"]);

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "rect_gal",
        inputs: &[LENGTH, num("width_in", "in", 0.0, 10_000.0), HEIGHT],
        unit: "gal",
        source: "L W h / 231 in3",
        compute: |g| {
            let volume = tank::box_volume(
                inch(g.num("length_in")),
                inch(g.num("width_in")),
                inch(g.num("level_in")),
            );
            found(in_gal(volume))
        },
    },
    Quantity {
        name: "cyl_gal",
        inputs: &[DIAMETER, LENGTH, HEIGHT],
        unit: "gal",
        source: "circular segment, flat ends, 231 in3/gal",
        compute: |g| {
            if g.num("level_in") > g.num("diameter_in") {
                return Err(SumError::Together(
                    "`level_in` is more than `diameter_in`; the level lies within the tank".into(),
                ));
            }
            let volume = tank::cylinder_volume(
                inch(g.num("diameter_in")),
                inch(g.num("length_in")),
                inch(g.num("level_in")),
            );
            found(in_gal(volume))
        },
    },
    Quantity {
        name: "cyl_pct_full_at_depth_fraction",
        inputs: &[
            DIAMETER.or(36.0),
            LENGTH.or(96.0),
            num("depth_fraction", "", 0.0, 1.0),
        ],
        unit: "%",
        source: "circular segment; depth is not volume in a lying cylinder",
        compute: |g| found(100.0 * tank::cylinder_fill(g.num("depth_fraction"))),
    },
    Quantity {
        name: "cyl_depth_fraction_at_pct_full",
        inputs: &[num("pct_full", "%", 0.0, 100.0)],
        unit: "-",
        source: "circular segment, solved for the depth",
        compute: |g| found(tank::cylinder_depth(g.num("pct_full") / 100.0)),
    },
    Quantity {
        name: "liquid_lb",
        inputs: &[num("gal", "gal", 0.0, 100_000.0)],
        unit: "lb",
        source: "8.34 lb/gal (EPA operator arithmetic)",
        compute: |g| found(in_lb(tank::liquid_weight(gal(g.num("gal"))))),
    },
    Quantity {
        name: "uses_per_h",
        inputs: &[
            num("guests", "", 0.0, 1e6),
            num("uses_per_guest_h", "1/h", 0.0, 10.0).or(tank::USES_PER_GUEST_H),
            num("alcohol_factor", "", 0.1, 10.0).or(1.0),
        ],
        unit: "1/h",
        source: "a city's special-event chart: one use in 4 h, 30 to 40 % more with food and alcohol",
        compute: |g| {
            found(tank::uses_per_h(
                g.num("guests"),
                g.num("uses_per_guest_h"),
                g.num("alcohol_factor"),
            ))
        },
    },
    Quantity {
        name: "waste_rate_pct_h",
        inputs: &[SIZE, USES, PER_USE, BODY],
        unit: "%/h",
        source: "mass balance",
        compute: |g| {
            found(tank::fill_rate_pct_h(
                g.num("uses_per_h"),
                gal(g.num("gal_use")),
                gal(g.num("body_gal")),
                gal(g.num("tank_gal")),
            ))
        },
    },
    Quantity {
        name: "waste_hours_to_stop",
        inputs: &[SIZE, LEVEL, USES, PER_USE, BODY, STOP],
        unit: "h",
        source: "mass balance; null where nothing is used",
        compute: |g| {
            let time = tank::time_to_stop(
                gal(g.num("tank_gal")),
                g.num("level_pct"),
                g.num("uses_per_h"),
                gal(g.num("gal_use")),
                gal(g.num("body_gal")),
                g.num("stop_pct"),
            );
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "hours_until_must_book",
        inputs: &[
            LEVEL,
            num("rate_pct_h", "%/h", 0.0, 10_000.0),
            num("lead_h", "h", 0.0, 1_000.0).or(2.5),
            num("safety_h", "h", 0.0, 1_000.0).or(tank::SAFETY_H),
            STOP,
        ],
        unit: "h",
        source: "(stop - level)/rate - lead - safety; negative is late already, null where the level does not rise",
        compute: |g| {
            let time = tank::time_to_book(
                g.num("level_pct"),
                g.num("rate_pct_h"),
                hours(g.num("lead_h")),
                hours(g.num("safety_h")),
                g.num("stop_pct"),
            );
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "fresh_hours",
        inputs: &[FRESH, LEVEL.or(100.0), USES, PER_USE],
        unit: "h",
        source: "V/Q; null where nothing is used",
        compute: |g| {
            let left = gal(g.num("fresh_gal") * g.num("level_pct") / 100.0);
            let time = battery::fresh_time(left, g.num("uses_per_h"), gal(g.num("gal_use")));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "h2s_idlh_ppm",
        inputs: &[],
        unit: "ppm",
        source: "NIOSH IDLH",
        compute: |_| found(tank::H2S_IDLH_PPM),
    },
    Quantity {
        name: "h2s_ceiling_ppm",
        inputs: &[INDUSTRY],
        unit: "ppm",
        source: "29 CFR 1910.1000 Table Z-2 (general industry)",
        compute: |g| match g.word("industry") {
            "general" => found(tank::H2S_CEILING_PPM),
            _ => Err(SumError::Together(
                "29 CFR 1926.55 has no ceiling for `construction`; ask `h2s_twa_ppm`".into(),
            )),
        },
    },
    Quantity {
        name: "h2s_peak_ppm",
        inputs: &[],
        unit: "ppm",
        source: "29 CFR 1910.1000 Table Z-2, 10 min once if there is no other exposure (general industry)",
        compute: |_| found(tank::H2S_PEAK_PPM),
    },
    Quantity {
        name: "h2s_twa_ppm",
        inputs: &[word("industry", &["construction", "general"])],
        unit: "ppm",
        source: "29 CFR 1926.55 App. A (construction)",
        compute: |g| match g.word("industry") {
            "construction" => found(tank::H2S_CONSTRUCTION_TWA_PPM),
            _ => Err(SumError::Together(
                "29 CFR 1910.1000 has no 8 h average for `general` industry; ask `h2s_ceiling_ppm`"
                    .into(),
            )),
        },
    },
    Quantity {
        name: "septage_log_years",
        inputs: &[word("use", &["land application"])],
        unit: "years",
        source: "40 CFR 503.17(b) (five years)",
        compute: |_| found(tank::SEPTAGE_LOG_YEARS),
    },
];
