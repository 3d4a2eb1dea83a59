//! Quantities about water.

use super::input::{Given, Input, Kind, input, num, whole, word};
use super::{Found, Quantity, found, maybe};
use crate::physics::units::{
    ft, ft2_per_s, gal, gpm, in_ft_s, in_gpm, in_minutes, in_psi, inch, psi,
};
use crate::physics::water::{self, FixtureGroup, Friction, Line, LossFormula};
use crate::quantity::{PSI_PER_BAR, PSI_PER_KPA};

const LENGTH: Input = num("length_ft", "ft", 0.0, 10_000.0);
const FLOW: Input = num("flow_gpm", "gpm", 0.0, 1_000.0);
const BORE: Input = num("id_in", "in", 0.1, 24.0);
const C: Input = num("C", "", 20.0, 200.0).or(water::C_SMOOTH);
const K: Input = num("K", "", 0.0, 1_000.0).or(water::FITTINGS_K);
const RISE: Input = num("rise_ft", "ft", -1_000.0, 1_000.0).or(0.0);
const STATIC: Input = num("static_psi", "psi", 0.0, 1_000.0);
const FLOWING: Input = num("flowing_psi", "psi", 0.0, 1_000.0);
const ROUGH: Input = num("rough_in", "in", 0.0, 1.0).or(6e-5);
const VISCOSITY: Input = num("nu_ft2_s", "ft2/s", 1e-6, 1e-3).or(1.1e-5);
const QUANTILE: Input = num("q", "", 0.0, 1.0).or(0.99);
/// Fixtures of a kind: how many, chance of running, gpm each.
const GROUPS: Input = input(
    "groups",
    "",
    Kind::Rows(&[(0.0, 1_000.0), (0.0, 1.0), (0.0, 1_000.0)], None),
);

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "hose_loss_hazen_williams_psi",
        inputs: &[LENGTH, FLOW, BORE, C],
        unit: "psi",
        source: "Hazen-Williams, 4.727 L q^1.852 / (C^1.852 D^4.871) (EPANET 2.2 User Manual)",
        compute: |g| {
            let loss = water::hose_loss(
                ft(g.num("length_ft")),
                gpm(g.num("flow_gpm")),
                inch(g.num("id_in")),
                g.num("C"),
            );
            found(in_psi(loss))
        },
    },
    Quantity {
        name: "hose_loss_darcy_psi",
        inputs: &[
            LENGTH,
            FLOW,
            BORE,
            ROUGH,
            VISCOSITY,
            word("engine", &["Colebrook", "EPANET D-W"]),
        ],
        unit: "psi",
        source: "Darcy-Weisbach, f by Colebrook 1939 (engine EPANET D-W: Swamee-Jain, EPANET 2.2 User Manual)",
        compute: |g| {
            let friction = match g.word("engine") {
                "EPANET D-W" => Friction::SwameeJain,
                _ => Friction::Colebrook,
            };
            let loss = water::hose_loss_darcy(
                ft(g.num("length_ft")),
                gpm(g.num("flow_gpm")),
                inch(g.num("id_in")),
                inch(g.num("rough_in")),
                ft2_per_s(g.num("nu_ft2_s")),
                friction,
            );
            found(in_psi(loss))
        },
    },
    Quantity {
        name: "hose_loss_ratio",
        inputs: &[
            num("id_a_in", "in", 0.1, 24.0),
            num("id_b_in", "in", 0.1, 24.0),
            word("flow", &["same"]),
        ],
        unit: "-",
        source: "Hazen-Williams, (D_b/D_a)^4.871 at the same flow (EPANET 2.2 User Manual)",
        compute: |g| {
            found(water::hose_loss_ratio(
                inch(g.num("id_a_in")),
                inch(g.num("id_b_in")),
            ))
        },
    },
    Quantity {
        name: "velocity_ft_s",
        inputs: &[FLOW, BORE],
        unit: "ft/s",
        source: "continuity, V = Q/A",
        compute: |g| {
            let v = water::velocity(gpm(g.num("flow_gpm")), inch(g.num("id_in")));
            found(in_ft_s(v))
        },
    },
    Quantity {
        name: "reynolds",
        inputs: &[FLOW, BORE, VISCOSITY],
        unit: "-",
        source: "definition, Re = V D / nu",
        compute: |g| {
            found(water::reynolds(
                gpm(g.num("flow_gpm")),
                inch(g.num("id_in")),
                ft2_per_s(g.num("nu_ft2_s")),
            ))
        },
    },
    Quantity {
        name: "minor_loss_psi",
        inputs: &[K, FLOW, BORE],
        unit: "psi",
        source: "K V^2/2g, definition; K = 10 for couplings, regulator and clean filter is common practice",
        compute: |g| {
            let loss = water::minor_loss(g.num("K"), gpm(g.num("flow_gpm")), inch(g.num("id_in")));
            found(in_psi(loss))
        },
    },
    Quantity {
        name: "elevation_loss_psi",
        inputs: &[num("rise_ft", "ft", -1_000.0, 1_000.0)],
        unit: "psi",
        source: "hydrostatics, 0.4333 psi/ft (EPANET 2.2)",
        compute: |g| found(in_psi(water::elevation_loss(ft(g.num("rise_ft"))))),
    },
    Quantity {
        name: "residual_at_trailer_psi",
        inputs: &[
            STATIC,
            LENGTH,
            FLOW,
            BORE,
            RISE,
            K,
            C,
            word("method", &["hazen_williams", "darcy"]),
        ],
        unit: "psi",
        source: "static less hose, fittings and rise (Hazen-Williams, EPANET 2.2 User Manual; method darcy: Colebrook)",
        compute: |g| {
            let formula = match g.word("method") {
                "darcy" => LossFormula::Darcy,
                _ => LossFormula::HazenWilliams,
            };
            let left = water::residual_by(
                formula,
                psi(g.num("static_psi")),
                &line(g),
                gpm(g.num("flow_gpm")),
            );
            found(in_psi(left))
        },
    },
    Quantity {
        name: "max_flow_gpm_at_residual",
        inputs: &[
            STATIC,
            LENGTH,
            BORE,
            RISE,
            K,
            C,
            num("residual_psi", "psi", 0.0, 1_000.0).or(20.0),
        ],
        unit: "gpm",
        source: "residual solved for the flow by bisection (Hazen-Williams, EPANET 2.2 User Manual)",
        compute: |g| {
            let flow = water::max_flow(
                psi(g.num("static_psi")),
                &line(g),
                psi(g.num("residual_psi")),
            );
            found(in_gpm(flow))
        },
    },
    Quantity {
        name: "simultaneous_fixtures_p99",
        inputs: &[
            whole("n", "", 0.0, 10_000.0),
            num("p", "", 0.0, 1.0),
            QUANTILE,
        ],
        unit: "fixtures",
        source: "binomial quantile, Hunter's method (NBS report BMS 65, 1940)",
        compute: |g| {
            let m = water::simultaneous_fixtures(g.whole("n"), g.num("p"), g.num("q"));
            found(f64::from(m))
        },
    },
    Quantity {
        name: "mixed_demand_p99_gpm",
        inputs: &[GROUPS, QUANTILE],
        unit: "gpm",
        source: "binomials of all groups convolved, after Hunter's method (NBS report BMS 65, 1940)",
        compute: |g| found(in_gpm(water::mixed_demand(&groups(g), g.num("q")))),
    },
    Quantity {
        name: "trailer_demand_p99_gpm",
        inputs: &[
            whole("stalls", "", 0.0, 1_000.0),
            whole("sinks", "", 0.0, 1_000.0),
        ],
        unit: "gpm",
        source: "binomials convolved, 3 gpm at 0.2 a stall (IRC Table P2903.1), 0.5 gpm at 0.15 a sink (common practice)",
        compute: |g| {
            let flow = water::trailer_demand(g.whole("stalls"), g.whole("sinks"));
            found(in_gpm(flow))
        },
    },
    Quantity {
        name: "wistort_p99_gpm",
        inputs: &[GROUPS, num("z", "", -6.0, 6.0).or(2.326)],
        unit: "gpm",
        source: "Wistort 1994 (from memory): normal approximation to the binomial",
        compute: |g| found(in_gpm(water::wistort_demand(&groups(g), g.num("z")))),
    },
    Quantity {
        name: "hunter_flush_tank_gpm",
        inputs: &[num("wsfu", "wsfu", 1.0, 250.0)],
        unit: "gpm",
        source: "IPC Appendix E Table E103.3(3), flush tanks, linear between its rows",
        compute: |g| found(in_gpm(water::hunter_flush_tank(g.num("wsfu")))),
    },
    Quantity {
        name: "prv_required",
        inputs: &[STATIC],
        unit: "bool",
        source: "IPC 604.8 and UPC 608.2: above 80 psi static",
        compute: |g| {
            let required = water::prv_required(psi(g.num("static_psi")));
            found(f64::from(u8::from(required)))
        },
    },
    Quantity {
        name: "regulator_outlet_psi",
        inputs: &[
            num("inlet_psi", "psi", 0.0, 1_000.0),
            num("set_psi", "psi", 0.0, 200.0).or(45.0),
            FLOW,
            num("fall_off_psi_gpm", "psi/gpm", 0.0, 20.0).or(1.25),
        ],
        unit: "psi",
        source: "lesser of inlet and set less fall-off; 1 to 1.5 psi/gpm for a small regulator from memory, the maker's curve wins",
        compute: |g| {
            let outlet = water::regulated(
                psi(g.num("inlet_psi")),
                psi(g.num("set_psi")),
                gpm(g.num("flow_gpm")),
                g.num("fall_off_psi_gpm"),
            );
            found(in_psi(outlet))
        },
    },
    Quantity {
        name: "fill_time_min",
        inputs: &[num("gal", "gal", 0.0, 100_000.0), FLOW],
        unit: "min",
        source: "V/Q",
        compute: |g| {
            let time = water::fill_time(gal(g.num("gal")), gpm(g.num("flow_gpm")));
            maybe(time.map(in_minutes))
        },
    },
    Quantity {
        name: "unexplained_loss_psi",
        inputs: &[STATIC, FLOWING, LENGTH, FLOW, BORE, RISE, K, C],
        unit: "psi",
        source: "expected less read (Hazen-Williams, EPANET 2.2 User Manual): filter, kink or half-shut valve",
        compute: |g| {
            let missing = water::unexplained_loss(
                psi(g.num("static_psi")),
                &line(g),
                gpm(g.num("flow_gpm")),
                psi(g.num("flowing_psi")),
            );
            found(in_psi(missing))
        },
    },
    Quantity {
        name: "restriction_cause",
        inputs: &[
            STATIC,
            FLOWING,
            num("expected_flowing_psi", "psi", -1_000.0, 1_000.0),
        ],
        unit: "-",
        source: "no flow, no friction loss: static under 40 psi is the supply, flowing 5 psi under expected a restriction (common practice)",
        compute: |g| {
            let cause = water::restriction_cause(
                psi(g.num("static_psi")),
                psi(g.num("flowing_psi")),
                psi(g.num("expected_flowing_psi")),
            );
            Ok(Found::Code(cause.code()))
        },
    },
    Quantity {
        name: "flow_after_filter_clog_gpm",
        inputs: &[
            num("clean_gpm", "gpm", 0.0, 1_000.0),
            num("dp_ratio_clogged", "", 1.0, 1e6),
        ],
        unit: "gpm",
        source: "turbulent restriction, Q ~ sqrt(dp/K) at the same dp",
        compute: |g| {
            let flow = water::flow_after_clog(gpm(g.num("clean_gpm")), g.num("dp_ratio_clogged"));
            found(in_gpm(flow))
        },
    },
    Quantity {
        name: "kpa_to_psi",
        inputs: &[num("kpa", "kPa", -101.325, 1e6)],
        unit: "psi",
        source: "unit definition",
        compute: |g| found(g.num("kpa") * PSI_PER_KPA),
    },
    Quantity {
        name: "bar_to_psi",
        inputs: &[num("bar", "bar", -1.013_25, 1e4)],
        unit: "psi",
        source: "unit definition",
        compute: |g| found(g.num("bar") * PSI_PER_BAR),
    },
];

fn line(g: &Given) -> Line {
    Line {
        fittings_k: g.num("K"),
        c: g.num("C"),
        ..Line::new(
            ft(g.num("length_ft")),
            inch(g.num("id_in")),
            ft(g.num("rise_ft")),
        )
    }
}

fn groups(g: &Given) -> Vec<FixtureGroup> {
    g.rows("groups")
        .iter()
        .filter_map(|row| match row[..] {
            [n, p, flow] => Some(FixtureGroup {
                n: n as u32,
                p,
                flow: gpm(flow),
            }),
            _ => None,
        })
        .collect()
}
