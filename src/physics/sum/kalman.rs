//! Quantities about estimating a level from coarse readings.

use super::input::{Given, Input, Kind, input, num, whole};
use super::{Found, Quantity, SumError, found, maybe};
use crate::physics::kalman::{self, LevelFilter};
use crate::physics::tank;
use crate::physics::units::{gal, hours, in_hours};

const STEP: Input = num("step_pct", "%", 0.0, 100.0);
const READING: Input = num("reading_pct", "%", 0.0, 100.0);
const WANDER: Input = num("q", "%2/h3", 0.0, 1e6).or(0.02);
/// Hours from the start, and what the gauge showed.
const READINGS: Input = input(
    "readings",
    "",
    Kind::Rows(&[(0.0, 100_000.0), (-1_000.0, 1_000.0)], None),
);
const FILTER: &[Input] = &[
    READINGS,
    STEP,
    num("level0", "%", -1_000.0, 1_000.0).or(2.0),
    num("rate0", "%/h", -10_000.0, 10_000.0),
    num("var_level0", "%2", 0.0, 1e6).or(4.0),
    num("var_rate0", "%2/h2", 0.0, 1e6),
    WANDER,
];
const FILTER_SOURCE: &str =
    "Kalman 1960, constant rate with white-noise acceleration, reading variance step^2/12";

pub(super) const QUANTITIES: &[Quantity] = &[
    Quantity {
        name: "kf_level_pct",
        inputs: FILTER,
        unit: "%",
        source: FILTER_SOURCE,
        compute: |g| found(filtered(g)?.level),
    },
    Quantity {
        name: "kf_rate_pct_h",
        inputs: FILTER,
        unit: "%/h",
        source: FILTER_SOURCE,
        compute: |g| found(filtered(g)?.rate),
    },
    Quantity {
        name: "kf_var_level",
        inputs: FILTER,
        unit: "%^2",
        source: FILTER_SOURCE,
        compute: |g| found(filtered(g)?.var_level),
    },
    Quantity {
        name: "kf_cov",
        inputs: FILTER,
        unit: "%^2/h",
        source: FILTER_SOURCE,
        compute: |g| found(filtered(g)?.cov),
    },
    Quantity {
        name: "kf_var_rate",
        inputs: FILTER,
        unit: "%^2/h^2",
        source: FILTER_SOURCE,
        compute: |g| found(filtered(g)?.var_rate),
    },
    Quantity {
        name: "hours_to_level_quantile",
        inputs: &[
            input("state", "", Kind::List(-10_000.0, 10_000.0, Some(2))),
            input("cov", "", Kind::Rows(&[(-1e6, 1e6), (-1e6, 1e6)], Some(2))),
            WANDER,
            num("threshold_pct", "%", 0.0, 100.0).or(tank::STOP_PCT),
            num("p", "", 0.0001, 0.9999).or(0.5),
        ],
        unit: "h",
        source: "first root of m(h) + z(1-p) sd(h) = threshold; null where it could stay below",
        compute: |g| {
            let filter = stated(g)?;
            let time = filter.time_to(g.num("threshold_pct"), g.num("p"));
            maybe(time.map(in_hours))
        },
    },
    Quantity {
        name: "nearest_band_pct",
        inputs: &[READING, STEP],
        unit: "%",
        source: "gauge read to the nearest step, half a step either side",
        compute: |g| {
            band(kalman::nearest_band(
                g.num("reading_pct"),
                g.num("step_pct"),
            ))
        },
    },
    Quantity {
        name: "ladder_band_pct",
        inputs: &[READING, STEP],
        unit: "%",
        source: "a ladder of lamps shows the floor: reading to reading and a step",
        compute: |g| band(kalman::ladder_band(g.num("reading_pct"), g.num("step_pct"))),
    },
    Quantity {
        name: "quantisation_var",
        inputs: &[STEP],
        unit: "%^2",
        source: "uniform rounding noise, step^2/12",
        compute: |g| found(kalman::quantisation_var(g.num("step_pct"))),
    },
    Quantity {
        name: "interval_posterior_mean",
        inputs: &[
            num("prior_mean", "%", -1_000.0, 1_000.0),
            num("prior_sd", "%", 1e-6, 1_000.0),
            num("lo", "%", -1_000.0, 1_000.0),
            num("hi", "%", -1_000.0, 1_000.0),
        ],
        unit: "%",
        source: "mean of a truncated normal",
        compute: |g| {
            if g.num("lo") >= g.num("hi") {
                return Err(SumError::Together("`lo` must be less than `hi`".into()));
            }
            found(kalman::interval_posterior_mean(
                g.num("prior_mean"),
                g.num("prior_sd"),
                g.num("lo"),
                g.num("hi"),
            ))
        },
    },
    Quantity {
        name: "pinball_loss",
        inputs: &[
            num("q", "", 0.0, 1.0),
            num("forecast_h", "h", -100_000.0, 100_000.0),
            num("actual_h", "h", -100_000.0, 100_000.0),
        ],
        unit: "h",
        source: "definition, max(q (y - f), (q - 1)(y - f))",
        compute: |g| {
            let loss = kalman::pinball_loss(
                g.num("q"),
                hours(g.num("forecast_h")),
                hours(g.num("actual_h")),
            );
            found(in_hours(loss))
        },
    },
    Quantity {
        name: "coverage_tolerance",
        inputs: &[
            whole("n", "", 1.0, 1e9),
            num("nominal", "", 0.0, 1.0).or(0.8),
        ],
        unit: "-",
        source: "binomial, two sigma",
        compute: |g| found(kalman::coverage_tolerance(g.whole("n"), g.num("nominal"))),
    },
    Quantity {
        name: "prior_rate_pct_h",
        inputs: &[
            num("guests", "", 0.0, 1e6),
            num("uses_per_guest_h", "1/h", 0.0, 10.0).or(tank::USES_PER_GUEST_H),
            num("alcohol_factor", "", 0.1, 10.0).or(1.0),
            num("gal_use", "gal", 0.0, 100.0),
            num("tank_gal", "gal", 0.1, 100_000.0),
        ],
        unit: "%/h",
        source: "mass balance; gal_use is all that a use adds",
        compute: |g| {
            found(kalman::prior_rate_pct_h(
                g.num("guests"),
                g.num("uses_per_guest_h"),
                g.num("alcohol_factor"),
                gal(g.num("gal_use")),
                gal(g.num("tank_gal")),
            ))
        },
    },
];

fn filtered(g: &Given) -> Result<LevelFilter, SumError> {
    let readings: Vec<(f64, f64)> = g
        .rows("readings")
        .iter()
        .filter_map(|row| Some((*row.first()?, *row.get(1)?)))
        .collect();
    if readings.windows(2).any(|pair| pair[1].0 < pair[0].0) {
        return Err(SumError::Together(
            "`readings` must be in order of time".into(),
        ));
    }
    let mut filter = LevelFilter {
        level: g.num("level0"),
        rate: g.num("rate0"),
        var_level: g.num("var_level0"),
        cov: 0.0,
        var_rate: g.num("var_rate0"),
        q: g.num("q"),
    };
    filter.follow(&readings, g.num("step_pct"));
    Ok(filter)
}

fn stated(g: &Given) -> Result<LevelFilter, SumError> {
    match (g.list("state"), g.rows("cov")) {
        ([level, rate], [first, second]) => {
            let (var_level, cov, var_rate) = (first[0], (first[1] + second[0]) / 2.0, second[1]);
            if var_level < 0.0 || var_rate < 0.0 || cov * cov > var_level * var_rate * 1.000_1 {
                return Err(SumError::Together(
                    "`cov` is no covariance: its variances must not be negative, nor its covariance beyond them".into(),
                ));
            }
            Ok(LevelFilter {
                level: *level,
                rate: *rate,
                var_level,
                cov,
                var_rate,
                q: g.num("q"),
            })
        }
        _ => Err(SumError::Together(
            "`state` must have two numbers and `cov` two rows".into(),
        )),
    }
}

fn band((low, high): (f64, f64)) -> Result<Found, SumError> {
    Ok(Found::Band(low, high))
}
