//! Quantities about the battery and the fresh tank.

use super::input::{Given, Input, num};
use super::{Quantity, found, maybe};
use crate::physics::battery::{self, Bank, Living};
use crate::physics::units::{amps, deg_f, gal, gpm, hours, in_amps, in_hours, volts};

const CAPACITY: Input = num("C_Ah", "Ah", 1.0, 10_000.0).or(90.0);
const EXPONENT: Input = num("k", "", 1.0, 2.0).or(1.2);
const DEPTH: Input = num("dod", "", 0.0, 1.0).or(0.5);
const RATED: Input = num("H", "h", 0.1, 1_000.0).or(20.0);
const USES: Input = num("uses_per_h", "1/h", 0.0, 100_000.0);
const PER_USE: Input = num("gal_use", "gal", 0.0, 100.0).or(1.0);
const STANDBY: Input = num("standby_A", "A", 0.0, 1_000.0).or(0.8);
const ROOMS: Input = num("rooms", "", 0.0, 100.0).or(2.0);
const ROOM: Input = num("room_A", "A", 0.0, 1_000.0).or(6.5);
const HOLD: Input = num("hold_h", "h", 0.0, 24.0).or(0.083_333);
const PUMP: Input = num("pump_A", "A", 0.0, 1_000.0).or(9.0);
const PUMP_FLOW: Input = num("pump_gpm", "gpm", 0.1, 1_000.0).or(3.0);
const PUMPS: Input = num("pumps", "", 0.0, 100.0).or(2.0);

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "peukert_hours",
        inputs: &[
            CAPACITY,
            num("H_h", "h", 0.1, 1_000.0).or(20.0),
            num("amps", "A", 0.001, 10_000.0),
            EXPONENT,
        ],
        unit: "h",
        source: "Peukert 1897, t = H (C/(I H))^k",
        compute: |g| {
            let bank = Bank {
                amp_hours: g.num("C_Ah"),
                rated: hours(g.num("H_h")),
                k: g.num("k"),
                depth: 1.0,
            };
            maybe(battery::peukert_time(&bank, amps(g.num("amps"))).map(in_hours))
        },
    },
    Quantity {
        name: "load_amps_at_uses",
        inputs: &[
            STANDBY, ROOMS, ROOM, HOLD, PUMP, PUMP_FLOW, PER_USE, PUMPS, USES,
        ],
        unit: "A",
        source: "standby, rooms lit by random arrivals, pumps by gallons (a model, no published source)",
        compute: |g| {
            found(in_amps(battery::load_at_uses(
                &living(g),
                g.num("uses_per_h"),
            )))
        },
    },
    Quantity {
        name: "battery_hours_at_uses",
        inputs: &[
            STANDBY, ROOMS, ROOM, HOLD, PUMP, PUMP_FLOW, PER_USE, CAPACITY, RATED, EXPONENT, DEPTH,
            PUMPS, USES,
        ],
        unit: "h",
        source: "load model (no published source) and Peukert 1897, to the usable depth",
        compute: |g| {
            let time = battery::hours_at_uses(&bank(g), &living(g), g.num("uses_per_h"));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "battery_hours_left",
        inputs: &[
            num("soc_pct", "%", 0.0, 100.0),
            num("amps", "A", 0.001, 10_000.0),
            CAPACITY,
            RATED,
            EXPONENT,
            DEPTH,
        ],
        unit: "h",
        source: "Peukert 1897, the share between the charge and the usable depth",
        compute: |g| {
            let time = battery::hours_left(&bank(g), g.num("soc_pct"), amps(g.num("amps")));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "soc_pct_from_rest_V",
        inputs: &[num("volts", "V", 0.0, 20.0)],
        unit: "%",
        source: "linear between 12.65/12.45/12.24/12.06/11.89 V (widely printed table, from memory)",
        compute: |g| found(battery::soc_from_rest(volts(g.num("volts")))),
    },
    Quantity {
        name: "battery_cold_factor",
        inputs: &[num("air_F", "°F", -80.0, 140.0)],
        unit: "-",
        source: "IEEE 485 Table 1 (from memory), linear between its rows, its 25 °F held below",
        compute: |g| found(battery::cold_factor(deg_f(g.num("air_F")))),
    },
    Quantity {
        name: "fresh_hours_at_uses",
        inputs: &[num("fresh_gal", "gal", 0.0, 100_000.0), USES, PER_USE],
        unit: "h",
        source: "V/Q",
        compute: |g| {
            let time = battery::fresh_time(
                gal(g.num("fresh_gal")),
                g.num("uses_per_h"),
                gal(g.num("gal_use")),
            );
            maybe(time.map(in_hours))
        },
    },
];

fn bank(g: &Given) -> Bank {
    Bank {
        amp_hours: g.num("C_Ah"),
        rated: hours(g.num("H")),
        k: g.num("k"),
        depth: g.num("dod"),
    }
}

fn living(g: &Given) -> Living {
    Living {
        standby: amps(g.num("standby_A")),
        rooms: g.num("rooms"),
        room: amps(g.num("room_A")),
        hold: hours(g.num("hold_h")),
        pump: amps(g.num("pump_A")),
        pump_flow: gpm(g.num("pump_gpm")),
        per_use: gal(g.num("gal_use")),
        pumps: g.num("pumps"),
    }
}
