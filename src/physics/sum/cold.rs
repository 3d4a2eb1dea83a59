//! Quantities about cold and heat.

use super::input::{Given, Input, OPTIONAL, num};
use super::{Quantity, SumError, found, maybe};
use crate::physics::cold::{self, Pipe, Standing, Tank};
use crate::physics::units::{
    deg_f, ft, ft2, gal, gpm, in_deg_f, in_hours, in_lb, in_w_m2k, in_w_mk, in_watts, inch, mph,
    w_m2k, w_mk, watts,
};

const AIR: Input = num("air_F", "°F", -80.0, 140.0);
const WIND: Input = num("wind_mph", "mph", 0.0, 200.0);
const USUAL_WIND: Input = num("wind_mph", "mph", 0.0, 200.0).or(10.0);
const SURFACE: Input = num("surface_F", "°F", -80.0, 250.0).or(32.0);
const BORE: Input = num("id_in", "in", 0.1, 24.0);
const OUTSIDE: Input = num("od_in", "in", 0.1, 30.0);
const USUAL_OUTSIDE: Input = num("od_in", "in", 0.1, 30.0).or(OPTIONAL);
const WATER: Input = num("water_F", "°F", 32.0, 212.0).or(50.0);
const FILM: Input = num("h_total_W_m2K", "W/m2K", 0.1, 1_000.0);
const WALL_K: Input = num("k_wall_W_mK", "W/mK", 0.01, 500.0).or(0.16);
const FOAM: Input = num("insulation_in", "in", 0.0, 24.0).or(0.0);
const FOAM_K: Input = num("k_ins_W_mK", "W/mK", 0.005, 10.0).or(0.04);
const GALLONS: Input = num("gal", "gal", 0.0, 100_000.0);
const AREA: Input = num("area_ft2", "ft2", 0.1, 100_000.0);
const R: Input = num("R_ft2Fh_Btu", "ft2 h °F/Btu", 0.05, 200.0);
const START: Input = num("start_F", "°F", 32.0, 212.0).or(50.0);
const HEATER: Input = num("heater_W", "W", 0.0, 100_000.0).or(0.0);
const TANK: &[Input] = &[GALLONS, AREA, R, START, AIR, HEATER];
const PIPE: &[Input] = &[BORE, OUTSIDE, WATER, AIR, FILM, WALL_K, FOAM, FOAM_K];
const HOSE: &[Input] = &[
    BORE,
    AIR,
    USUAL_WIND,
    WATER,
    FOAM,
    USUAL_OUTSIDE,
    WALL_K,
    FOAM_K,
];

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "tank_equilibrium_F",
        inputs: TANK,
        unit: "F",
        source: "lumped heat balance, Ta + 3.412 W/UA; at 32 °F or more it never freezes",
        compute: |g| found(in_deg_f(tank(g).equilibrium(air(g)))),
    },
    Quantity {
        name: "tank_hours_to_32F",
        inputs: TANK,
        unit: "h",
        source: "lumped heat capacity; null where it never gets there",
        compute: |g| {
            let time = tank(g).time_to_32f(deg_f(g.num("start_F")), air(g));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "tank_hours_more_to_10pct_ice",
        inputs: TANK,
        unit: "h",
        source: "latent heat 143.5 Btu/lb, 10 % frozen (common practice: valves block); null where it never freezes",
        compute: |g| maybe(tank(g).time_to_ice(cold::ICE_SHARE, air(g)).map(in_hours)),
    },
    Quantity {
        name: "heater_W_to_hold",
        inputs: &[AREA, R, num("hold_F", "°F", -80.0, 212.0).or(40.0), AIR],
        unit: "W",
        source: "UA dT/3.412",
        compute: |g| {
            let tank = Tank {
                contents: gal(0.0),
                area: ft2(g.num("area_ft2")),
                resistance: g.num("R_ft2Fh_Btu"),
                heater: watts(0.0),
            };
            found(in_watts(
                tank.heater_to_hold(deg_f(g.num("hold_F")), air(g)),
            ))
        },
    },
    Quantity {
        name: "pipe_hours_to_32F",
        inputs: PIPE,
        unit: "h",
        source: "lumped ln form (ASHRAE Fundamentals ch. 23 eq. 1) with film and wall; null where it never gets there",
        compute: |g| {
            let water = deg_f(g.num("water_F"));
            let time = cold::pipe_time_to_32f(&pipe(g)?, film(g), water, air(g));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "pipe_hours_more_to_solid",
        inputs: PIPE,
        unit: "h",
        source: "latent heat at constant resistance; null where it never freezes",
        compute: |g| maybe(cold::pipe_time_to_solid(&pipe(g)?, film(g), air(g)).map(in_hours)),
    },
    Quantity {
        name: "ashrae_pipe_hours",
        inputs: &[
            num("d1_in", "in", 0.1, 60.0),
            num("d2_in", "in", 0.1, 60.0),
            num("d3_in", "in", 0.1, 120.0),
            num("k_Btuin_hft2F", "Btu in/(h ft2 °F)", 0.01, 100.0),
            num("ti_F", "°F", -80.0, 212.0),
            num("tf_F", "°F", -80.0, 212.0).or(32.0),
            num("ta_F", "°F", -80.0, 140.0),
        ],
        unit: "h",
        source: "ASHRAE Fundamentals ch. 23 eq. 1, insulation only; null where it never gets there",
        compute: |g| {
            let time = cold::ashrae_pipe_time(
                g.num("d1_in"),
                g.num("d2_in"),
                g.num("d3_in"),
                g.num("k_Btuin_hft2F"),
                deg_f(g.num("ti_F")),
                deg_f(g.num("tf_F")),
                deg_f(g.num("ta_F")),
            );
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "hose_hours_to_32F",
        inputs: HOSE,
        unit: "h",
        source: "ASHRAE Fundamentals ch. 23 eq. 1, films by Churchill and Bernstein 1977, Churchill and Chu 1975; null at or above 32 °F",
        compute: |g| maybe(hose(g)?.map(|hose| in_hours(hose.to_32f))),
    },
    Quantity {
        name: "hose_hours_to_blocked",
        inputs: HOSE,
        unit: "h",
        source: "ASHRAE Fundamentals ch. 23 eq. 1 and films; a quarter of the time to solid (common practice, no source); null at or above 32 °F",
        compute: |g| maybe(hose(g)?.map(|hose| in_hours(hose.blocked))),
    },
    Quantity {
        name: "hose_hours_to_solid",
        inputs: HOSE,
        unit: "h",
        source: "ASHRAE Fundamentals ch. 23 eq. 1 and films; latent heat at constant resistance; null at or above 32 °F",
        compute: |g| maybe(hose(g)?.map(|hose| in_hours(hose.solid))),
    },
    Quantity {
        name: "hose_W_per_ft_to_hold",
        inputs: &[
            BORE,
            AIR,
            USUAL_WIND,
            num("hold_F", "°F", -80.0, 212.0).or(40.0),
            FOAM,
            USUAL_OUTSIDE,
            WALL_K,
            FOAM_K,
        ],
        unit: "W/ft",
        source: "dT/R with films by Churchill and Bernstein 1977, Churchill and Chu 1975",
        compute: |g| {
            found(cold::watts_per_ft_to_hold(
                &pipe(g)?,
                deg_f(g.num("hold_F")),
                air(g),
                mph(g.num("wind_mph")),
            ))
        },
    },
    Quantity {
        name: "trickle_outlet_F",
        inputs: &[
            num("inlet_F", "°F", 32.0, 212.0).or(50.0),
            AIR,
            num("length_ft", "ft", 0.0, 10_000.0),
            num("flow_gpm", "gpm", 0.0, 1_000.0),
            num("R_mK_W", "m K/W", 1e-3, 1_000.0),
        ],
        unit: "F",
        source: "exponential approach, steady flow",
        compute: |g| {
            let outlet = cold::trickle_outlet(
                deg_f(g.num("inlet_F")),
                air(g),
                ft(g.num("length_ft")),
                gpm(g.num("flow_gpm")),
                g.num("R_mK_W"),
            );
            found(in_deg_f(outlet))
        },
    },
    Quantity {
        name: "air_conductivity_W_mK",
        inputs: &[AIR],
        unit: "W/mK",
        source: "US Standard Atmosphere 1976",
        compute: |g| found(in_w_mk(cold::air_conductivity(air(g)))),
    },
    Quantity {
        name: "h_crossflow_W_m2K",
        inputs: &[OUTSIDE, WIND, AIR, SURFACE],
        unit: "W/m2K",
        source: "Churchill & Bernstein 1977, no radiation; air US Standard Atmosphere 1976, 101325 Pa",
        compute: |g| {
            let h = cold::crossflow_film(
                inch(g.num("od_in")),
                mph(g.num("wind_mph")),
                air(g),
                deg_f(g.num("surface_F")),
            );
            found(in_w_m2k(h))
        },
    },
    Quantity {
        name: "h_natural_W_m2K",
        inputs: &[OUTSIDE, AIR, SURFACE],
        unit: "W/m2K",
        source: "Churchill & Chu 1975, no radiation; air US Standard Atmosphere 1976, 101325 Pa",
        compute: |g| {
            let h = cold::natural_film(inch(g.num("od_in")), air(g), deg_f(g.num("surface_F")));
            found(in_w_m2k(h))
        },
    },
    Quantity {
        name: "wind_chill_F",
        inputs: &[AIR, WIND],
        unit: "F",
        source: "NWS 2001; the air temperature above 50 °F or under 3 mph",
        compute: |g| found(in_deg_f(cold::wind_chill(air(g), mph(g.num("wind_mph"))))),
    },
    Quantity {
        name: "heat_index_F",
        inputs: &[AIR, num("rh_pct", "%", 0.0, 100.0)],
        unit: "F",
        source: "NWS SR 90-23 (Rothfusz)",
        compute: |g| found(in_deg_f(cold::heat_index(air(g), g.num("rh_pct")))),
    },
    Quantity {
        name: "propylene_glycol_freeze_F",
        inputs: &[num("vol_pct", "%", 0.0, 50.0)],
        unit: "F",
        source: "Lange's Handbook of Chemistry Table 5.13, linear between its rows",
        compute: |g| found(in_deg_f(cold::glycol_freezes(g.num("vol_pct")))),
    },
    Quantity {
        name: "nacl_freeze_F",
        inputs: &[num("wt_pct", "%", 0.0, 23.3)],
        unit: "F",
        source: "Lange's Handbook of Chemistry Table 5.13, linear between its rows",
        compute: |g| found(in_deg_f(cold::brine_freezes(g.num("wt_pct")))),
    },
    Quantity {
        name: "salt_lb_for_brine",
        inputs: &[GALLONS, num("wt_pct", "%", 0.0, 26.0)],
        unit: "lb",
        source: "mass balance, w 8.34 gal/(1 - w)",
        compute: |g| {
            found(in_lb(cold::salt_for_brine(
                gal(g.num("gal")),
                g.num("wt_pct"),
            )))
        },
    },
    Quantity {
        name: "pipe_alert_F",
        inputs: &[],
        unit: "F",
        source: "Building Research Council, University of Illinois: temperature alert threshold for pipes in a building",
        compute: |_| found(cold::PIPE_ALERT_F),
    },
];

fn air(g: &Given) -> uom::si::f64::ThermodynamicTemperature {
    deg_f(g.num("air_F"))
}

fn film(g: &Given) -> uom::si::f64::HeatTransfer {
    w_m2k(g.num("h_total_W_m2K"))
}

fn tank(g: &Given) -> Tank {
    Tank {
        contents: gal(g.num("gal")),
        area: ft2(g.num("area_ft2")),
        resistance: g.num("R_ft2Fh_Btu"),
        heater: watts(g.num("heater_W")),
    }
}

fn pipe(g: &Given) -> Result<Pipe, SumError> {
    let mut pipe = Pipe::hose(inch(g.num("id_in")), inch(g.num("insulation_in")));
    if g.has("od_in") {
        pipe.outside = inch(g.num("od_in"));
    }
    pipe.wall = w_mk(g.num("k_wall_W_mK"));
    pipe.foam = w_mk(g.num("k_ins_W_mK"));
    if pipe.outside < pipe.bore {
        return Err(SumError::Together(
            "`od_in` is smaller than `id_in`; the outside diameter must be the larger".into(),
        ));
    }
    Ok(pipe)
}

fn hose(g: &Given) -> Result<Option<Standing>, SumError> {
    let (water, wind) = (deg_f(g.num("water_F")), mph(g.num("wind_mph")));
    Ok(cold::standing_hose(&pipe(g)?, water, air(g), wind))
}
