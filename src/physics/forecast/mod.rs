//! When a tank reaches its limit, from sparse and coarse readings, with how sure that is.
//!
//! A reading is a band of depths, not a number; the pace of use is not known, wanders, and can only be told from how the
//! readings follow each other and from what the job promised. So the forecast carries a belief (`grid`) from event to
//! event (`filter`) and reports when a tenth, a half and nine tenths of it have reached the limit. It draws nothing by
//! chance: the same observations give the same answer to the bit.
//!
//! Why not a constant rate: a filter that takes the rate as nearly constant is far too sure of itself on events with
//! arrivals, meals and a last hour. How right this one is: `cargo bench --bench calibrate`.

mod chain;
mod filter;
mod gauge;
mod grid;
pub mod learn;
mod usage;

use crate::fleet::{Gauge, TankShape};

pub use usage::{Usage, promised_pct};

/// The spread of an event's pace around what its guest count promises (standard deviation of the logarithm) where nothing
/// was learned yet: a coefficient of variation of 0.4. Common practice, no source.
pub const PRIOR_SPREAD: f64 = 0.385;
/// How far ahead anything is forecast, h.
pub const HORIZON_H: f64 = 72.0;

/// A tank and how it is read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tank {
    /// What it holds, gal.
    pub capacity_gal: f64,
    /// Its shape: a gauge shows depth, a limit is of volume.
    pub shape: TankShape,
    /// How its gauge reads.
    pub gauge: Gauge,
}

/// One thing known about a tank, at an instant in hours on the axis that all arguments share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Observation {
    /// The gauge, as shown.
    Gauge {
        /// When, h.
        at_h: f64,
        /// What it showed, % of depth.
        pct: f64,
    },
    /// A stated number of gallons aboard.
    Gallons {
        /// When, h.
        at_h: f64,
        /// How many, gal.
        gal: f64,
    },
    /// The waste tank was pumped out.
    Pumped {
        /// When, h.
        at_h: f64,
        /// What was hauled, gal: it tells the level just before.
        gal: Option<f64>,
    },
    /// The fresh tank was filled.
    Filled {
        /// When, h.
        at_h: f64,
    },
    /// The fresh tank was drained.
    Drained {
        /// When, h.
        at_h: f64,
    },
}

impl Observation {
    /// Returns when it was, h.
    pub fn at_h(&self) -> f64 {
        match *self {
            Observation::Gauge { at_h, .. }
            | Observation::Gallons { at_h, .. }
            | Observation::Pumped { at_h, .. }
            | Observation::Filled { at_h }
            | Observation::Drained { at_h } => at_h,
        }
    }
}

/// A tenth, a half and nine tenths of a belief.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quantiles {
    /// One chance in ten that it is less.
    pub p10: f64,
    /// As likely more as less.
    pub p50: f64,
    /// One chance in ten that it is more.
    pub p90: f64,
}

/// A reading that does not go with the rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadDoubt {
    /// Which of the observations, as given.
    pub index: usize,
    /// What is wrong with it.
    pub why: Doubt,
}

/// What can be wrong with a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// It is far from what the readings before it and the job make likely.
    OutOfLine,
    /// The gauge has shown the same for over 6 open hours though at least a step was due.
    Unchanged,
}

/// When a tank reaches its limit.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// One chance in ten that the limit is reached by then, h on the shared axis; none where it is not within
    /// [`HORIZON_H`] or before the job's end.
    pub p10: Option<f64>,
    /// As likely before as after, h.
    pub p50: Option<f64>,
    /// Nine chances in ten by then, h.
    pub p90: Option<f64>,
    /// The level now, % by volume.
    pub level_now: Quantiles,
    /// The mean rate while open at the present guest count, % of the tank an hour (positive for a fresh tank too).
    pub rate_pct_h: f64,
    /// The chance that the limit is reached within [`HORIZON_H`] and before the job's end, 0 to 1; at least 0.9 where `p90`
    /// is given, as nobody looks past it.
    pub chance: f64,
    /// Readings that do not go with the rest, in order of time.
    pub doubtful: Vec<ReadDoubt>,
    /// Whether more than one chance in ten is left that the limit is never reached within that time.
    pub could_stay_below: bool,
}

/// Forecasts when the waste tank reaches `limit_pct` of its volume. `Filled` and `Drained` are not about it.
pub fn waste(
    tank: &Tank,
    usage: &Usage<'_>,
    observations: &[Observation],
    now_h: f64,
    limit_pct: f64,
) -> Forecast {
    filter::run(tank, usage, observations, now_h, limit_pct, false)
}

/// Forecasts when the fresh tank falls to `limit_pct` of its volume, by a unit that runs from it. `Pumped` is not about it.
pub fn fresh(
    tank: &Tank,
    usage: &Usage<'_>,
    observations: &[Observation],
    now_h: f64,
    limit_pct: f64,
) -> Forecast {
    filter::run(tank, usage, observations, now_h, limit_pct, true)
}
