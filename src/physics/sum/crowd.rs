//! Quantities about people.

use super::input::{Given, Input, Kind, input, num, whole};
use super::{Found, Outcome, Quantity, SumError, found, maybe};
use crate::physics::crowd::{self, Alcohol, Fixtures, Queue};
use crate::physics::units::{hours, in_minutes, in_seconds, seconds};

const PATRONS: Input = num("patrons", "", 0.0, 4_999.0);
const ALCOHOL: Input = input("alcohol", "", Kind::Flag);
const HOURS: Input = num("hours", "h", 0.0, 1_000.0);
const FEMA: &[Input] = &[PATRONS, ALCOHOL, HOURS];
const FEMA_SOURCE: &str = "FEMA Special Events Contingency Planning job aids (IS-15, 2005), rounded up after the duration factor";
const EMPLOYEES: Input = whole("employees", "", 0.0, 1e6);
const OSHA_SOURCE: &str = "29 CFR 1926.51(c)(1) Table D-1";
const SERVERS: Input = whole("servers", "", 1.0, 10_000.0);
const ARRIVALS: Input = num("arrivals_h", "1/h", 0.0, 1e6);
const SERVICE: Input = num("service_s", "s", 0.1, 86_400.0).or(90.0);

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "fema_male_toilets",
        inputs: FEMA,
        unit: "fixtures",
        source: FEMA_SOURCE,
        compute: |g| fema(g, |fixtures| fixtures.male_toilets),
    },
    Quantity {
        name: "fema_urinals",
        inputs: FEMA,
        unit: "fixtures",
        source: FEMA_SOURCE,
        compute: |g| fema(g, |fixtures| fixtures.urinals),
    },
    Quantity {
        name: "fema_male_sinks",
        inputs: FEMA,
        unit: "fixtures",
        source: FEMA_SOURCE,
        compute: |g| fema(g, |fixtures| fixtures.male_sinks),
    },
    Quantity {
        name: "fema_female_toilets",
        inputs: FEMA,
        unit: "fixtures",
        source: FEMA_SOURCE,
        compute: |g| fema(g, |fixtures| fixtures.female_toilets),
    },
    Quantity {
        name: "fema_female_sinks",
        inputs: FEMA,
        unit: "fixtures",
        source: FEMA_SOURCE,
        compute: |g| fema(g, |fixtures| fixtures.female_sinks),
    },
    Quantity {
        name: "osha_toilet_seats",
        inputs: &[EMPLOYEES],
        unit: "seats",
        source: OSHA_SOURCE,
        compute: |g| found(f64::from(crowd::osha_fixtures(g.whole("employees")).0)),
    },
    Quantity {
        name: "osha_urinals",
        inputs: &[EMPLOYEES],
        unit: "urinals",
        source: OSHA_SOURCE,
        compute: |g| found(f64::from(crowd::osha_fixtures(g.whole("employees")).1)),
    },
    Quantity {
        name: "ada_accessible_portables",
        inputs: &[whole("cluster_units", "", 0.0, 1e6)],
        unit: "units",
        source: "2010 ADA Standards 213.2 exception 3: 5 %, not fewer than one, of clustered single-user portable units",
        compute: |g| found(f64::from(crowd::ada_accessible(g.whole("cluster_units")))),
    },
    Quantity {
        name: "busy_share",
        inputs: &[SERVERS, ARRIVALS, SERVICE],
        unit: "-",
        source: "offered load over stalls, lambda s / c",
        compute: |g| found(queue(g).busy_share()),
    },
    Quantity {
        name: "erlang_c_wait_prob",
        inputs: &[SERVERS, ARRIVALS, SERVICE],
        unit: "-",
        source: "Erlang C 1917",
        compute: |g| found(settled(g)?.wait_chance()),
    },
    Quantity {
        name: "mmc_mean_wait_s",
        inputs: &[SERVERS, ARRIVALS, SERVICE],
        unit: "s",
        source: "M/M/c closed form",
        compute: |g| maybe(settled(g)?.mean_wait().map(in_seconds)),
    },
    Quantity {
        name: "mmc_p_wait_over",
        inputs: &[SERVERS, ARRIVALS, SERVICE, num("wait_s", "s", 0.0, 1e6)],
        unit: "-",
        source: "M/M/c waiting-time tail",
        compute: |g| found(settled(g)?.chance_over(seconds(g.num("wait_s")))),
    },
    Quantity {
        name: "servers_for_mean_wait",
        inputs: &[ARRIVALS, SERVICE, num("max_wait_s", "s", 0.0, 1e6)],
        unit: "stalls",
        source: "smallest c with an M/M/c mean wait within the limit",
        compute: |g| {
            let stalls = crowd::servers_for_mean_wait(
                g.num("arrivals_h"),
                seconds(g.num("service_s")),
                seconds(g.num("max_wait_s")),
            );
            stalls.map_or_else(
                || {
                    Err(SumError::Together(
                        "no number of stalls up to 10,000 keeps the wait within `max_wait_s`"
                            .into(),
                    ))
                },
                |stalls| found(f64::from(stalls)),
            )
        },
    },
    Quantity {
        name: "batch_clear_min",
        inputs: &[whole("people", "", 0.0, 1e6), SERVERS, SERVICE],
        unit: "min",
        source: "burst, ceil(N/c) x s",
        compute: |g| {
            let time = crowd::batch_clear(
                g.whole("people"),
                g.whole("servers"),
                seconds(g.num("service_s")),
            );
            maybe(time.map(in_minutes))
        },
    },
    Quantity {
        name: "paper_rolls_per_shift",
        inputs: &[
            num("uses", "", 0.0, 1e7),
            num("uses_per_roll", "", 1.0, 10_000.0).or(40.0),
        ],
        unit: "rolls",
        source: "common practice, no source (40 uses a roll)",
        compute: |g| found(crowd::paper_rolls(g.num("uses"), g.num("uses_per_roll"))),
    },
];

fn fema(g: &Given, pick: fn(Fixtures) -> u32) -> Outcome {
    let alcohol = if g.flag("alcohol") {
        Alcohol::Yes
    } else {
        Alcohol::No
    };
    let fixtures = crowd::fema_fixtures(g.num("patrons"), alcohol, hours(g.num("hours")));
    Ok(fixtures.map_or(Found::Never, |fixtures| {
        Found::Number(f64::from(pick(fixtures)))
    }))
}

fn queue(g: &Given) -> Queue {
    Queue {
        servers: g.whole("servers"),
        arrivals_h: g.num("arrivals_h"),
        service: seconds(g.num("service_s")),
    }
}

/// A queue that settles: the formulas hold only under a busy share of 1.
fn settled(g: &Given) -> Result<Queue, SumError> {
    let queue = queue(g);
    let busy = queue.busy_share();
    if busy < 1.0 {
        Ok(queue)
    } else {
        Err(SumError::Together(format!(
            "`arrivals_h` is more than `servers` can take (busy share {busy:.2}, it must be under 1): the line grows without end"
        )))
    }
}
