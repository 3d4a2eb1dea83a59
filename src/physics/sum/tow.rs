//! Quantities about towing and setting up.

use super::input::{Input, Kind, input, num};
use super::{Found, Quantity, found};
use crate::physics::tow::{self, Item};
use crate::physics::units::{
    deg_f, gal, in_ft, in_in2, in_inch, in_lb, in_lbf, in_psi, inch, lb, psi,
};

const GROSS: Input = num("gross_lb", "lb", 1.0, 1e6);

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "over_gvwr_lb",
        inputs: &[
            num("empty_lb", "lb", 0.0, 1e6),
            num("liquid_gal", "gal", 0.0, 100_000.0),
            num("gvwr_lb", "lb", 1.0, 1e6),
        ],
        unit: "lb",
        source: "weights, 8.34 lb/gal; positive is overloaded",
        compute: |g| {
            let over = tow::over_gvwr(
                lb(g.num("empty_lb")),
                gal(g.num("liquid_gal")),
                lb(g.num("gvwr_lb")),
            );
            found(in_lb(over))
        },
    },
    Quantity {
        name: "tongue_lb_from_cg",
        inputs: &[
            num("axle_in", "in", 1.0, 2_000.0),
            input(
                "items",
                "",
                Kind::Rows(&[(0.0, 1e6), (-2_000.0, 2_000.0)], None),
            ),
        ],
        unit: "lb",
        source: "moments about the axle group, items [lb, in behind the coupler]",
        compute: |g| {
            let items: Vec<Item> = g
                .rows("items")
                .iter()
                .map(|row| Item {
                    weight: lb(row[0]),
                    behind: inch(row[1]),
                })
                .collect();
            found(in_lb(tow::tongue_weight(inch(g.num("axle_in")), &items)))
        },
    },
    Quantity {
        name: "tongue_pct",
        inputs: &[GROSS, num("tongue_lb", "lb", -1e6, 1e6)],
        unit: "%",
        source: "ratio; under 10 % is a risk of sway (tow guides)",
        compute: |g| {
            found(tow::tongue_pct(
                lb(g.num("gross_lb")),
                lb(g.num("tongue_lb")),
            ))
        },
    },
    Quantity {
        name: "tongue_range_lb",
        inputs: &[GROSS],
        unit: "lb",
        source: "10 to 15 % of gross trailer weight (common practice; printed in tow guides)",
        compute: |g| {
            let (least, most) = tow::tongue_range(lb(g.num("gross_lb")));
            Ok(Found::Band(in_lb(least), in_lb(most)))
        },
    },
    Quantity {
        name: "tire_psi_after_temp",
        inputs: &[
            num("cold_psi", "psi", 0.0, 300.0),
            num("from_F", "°F", -100.0, 300.0),
            num("to_F", "°F", -100.0, 300.0),
        ],
        unit: "psi",
        source: "constant-volume gas law, gauge pressure at sea level",
        compute: |g| {
            let after = tow::tire_after(
                psi(g.num("cold_psi")),
                deg_f(g.num("from_F")),
                deg_f(g.num("to_F")),
            );
            found(in_psi(after))
        },
    },
    Quantity {
        name: "downhill_force_lb",
        inputs: &[
            num("weight_lb", "lb", 0.0, 1e6),
            num("grade_pct", "%", -100.0, 100.0),
        ],
        unit: "lb",
        source: "W sin(atan grade)",
        compute: |g| {
            let force = tow::downhill_force(lb(g.num("weight_lb")), g.num("grade_pct"));
            found(in_lbf(force))
        },
    },
    Quantity {
        name: "block_height_in",
        inputs: &[
            num("track_in", "in", 0.0, 1_000.0),
            num("slope_pct", "%", 0.0, 100.0),
        ],
        unit: "in",
        source: "geometry, track x slope",
        compute: |g| {
            let height = tow::block_height(inch(g.num("track_in")), g.num("slope_pct"));
            found(in_inch(height))
        },
    },
    Quantity {
        name: "jack_pad_in2",
        inputs: &[
            num("load_lb", "lb", 0.0, 1e6),
            num("soil_psf", "lb/ft2", 1.0, 1e6).or(1_500.0),
        ],
        unit: "in2",
        source: "load / presumptive bearing (IBC Table 1806.2: clay 1500, sand 2000 lb/ft2, from memory)",
        compute: |g| {
            let pad = tow::jack_pad(lb(g.num("load_lb")), g.num("soil_psf"));
            found(in_in2(pad))
        },
    },
    Quantity {
        name: "ramp_run_ft",
        inputs: &[num("rise_in", "in", 0.0, 1_000.0)],
        unit: "ft",
        source: "2010 ADA Standards 405.2, 1:12",
        compute: |g| found(in_ft(tow::ramp_run(inch(g.num("rise_in"))))),
    },
    Quantity {
        name: "cross_slope_max_pct",
        inputs: &[],
        unit: "%",
        source: "2010 ADA Standards 405.3, 1:48",
        compute: |_| found(tow::CROSS_SLOPE_MAX_PCT),
    },
    Quantity {
        name: "suction_lift_ft",
        inputs: &[num("vacuum_inHg", "in Hg", 0.0, 29.92)],
        unit: "ft",
        source: "hydrostatics, in Hg x 1.133 ft of water, less friction",
        compute: |g| found(tow::suction_lift_ft(g.num("vacuum_inHg"))),
    },
    Quantity {
        name: "breakaway_min_minutes",
        inputs: &[],
        unit: "min",
        source: "49 CFR 393.43(d) (15 min from memory)",
        compute: |_| found(tow::BREAKAWAY_MIN),
    },
];
