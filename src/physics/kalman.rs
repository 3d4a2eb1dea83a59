//! A plain two-state filter of level and rate, and the interval sums beside it: the quick estimate, and the yardstick that
//! better forecasts are held against.

use statrs::distribution::{Continuous, ContinuousCDF, Normal};
use uom::si::f64::{Time, Volume};

use super::tank::{fill_rate_pct_h, uses_per_h};
use super::units::{gal, hours, in_hours, within};

/// A tank's level and rate, and how unsure both are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelFilter {
    /// Level, %.
    pub level: f64,
    /// Rate, %/h.
    pub rate: f64,
    /// Variance of the level, %².
    pub var_level: f64,
    /// Covariance of level and rate, %²/h.
    pub cov: f64,
    /// Variance of the rate, %²/h².
    pub var_rate: f64,
    /// How fast the rate wanders, %²/h³.
    pub q: f64,
}

impl LevelFilter {
    /// Moves `dt` ahead at a constant rate; time does not run backward.
    ///
    /// F = [[1, Δt], [0, 1]], Q = q·[[Δt³/3, Δt²/2], [Δt²/2, Δt]] (white-noise acceleration).
    pub fn predict(&mut self, dt: Time) {
        let t = in_hours(dt).max(0.0);
        self.level += self.rate * t;
        self.var_level += 2.0 * t * self.cov + t * t * self.var_rate + self.q * t.powi(3) / 3.0;
        self.cov += t * self.var_rate + self.q * t * t / 2.0;
        self.var_rate += self.q * t;
    }

    /// Takes in a reading of the level with variance `noise` (Kalman 1960); a noise of nothing on a sure level changes
    /// nothing.
    pub fn update(&mut self, reading: f64, noise: f64) {
        let spread = self.var_level + noise;
        if spread <= 0.0 {
            return;
        }
        let (gain_level, gain_rate) = (self.var_level / spread, self.cov / spread);
        let miss = reading - self.level;
        self.level += gain_level * miss;
        self.rate += gain_rate * miss;
        self.var_rate -= gain_rate * self.cov;
        self.cov *= 1.0 - gain_level;
        self.var_level *= 1.0 - gain_level;
    }

    /// Runs through readings of a gauge with steps of `step_pct`, each `(hours from the start, %)`: predict, then update
    /// with the variance of rounding. The first step runs from hour 0; one that goes back in time is taken at once.
    pub fn follow(&mut self, readings: &[(f64, f64)], step_pct: f64) {
        let mut at = 0.0;
        for (when, reading) in readings {
            self.predict(hours(when - at));
            self.update(*reading, quantisation_var(step_pct));
            at = when.max(at);
        }
    }

    /// Returns the time by which the level is at `threshold` with chance `p`; zero where it is by now, none where it could
    /// stay below for 10,000 h.
    ///
    /// The first root of m(h) + z(1−p)·sd(h) = threshold, m and sd of [`Self::predict`]. `p` is held to 0.0001..0.9999.
    pub fn time_to(&self, threshold: f64, p: f64) -> Option<Time> {
        let z = standard_normal().inverse_cdf(1.0 - within(p, 1e-4, 0.9999));
        let short = |h: f64| {
            let var = self.var_level
                + 2.0 * h * self.cov
                + h * h * self.var_rate
                + self.q * h.powi(3) / 3.0;
            self.level + self.rate * h + z * var.max(0.0).sqrt() - threshold
        };
        if short(0.0) >= 0.0 {
            return Some(hours(0.0));
        }
        let (mut low, mut high) = (0.0_f64, 0.0_f64);
        while short(high) < 0.0 {
            if high >= 10_000.0 {
                return None;
            }
            (low, high) = (high, high + (high * 0.02).max(0.05));
        }
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            if short(middle) < 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(hours(f64::midpoint(low, high)))
    }
}

/// Returns the variance of rounding to steps: step²/12 (uniform).
pub fn quantisation_var(step_pct: f64) -> f64 {
    step_pct * step_pct / 12.0
}

/// Returns the levels for which a gauge read to the nearest step shows `reading`: half a step either side, within 0..100.
pub fn nearest_band(reading_pct: f64, step_pct: f64) -> (f64, f64) {
    let half = step_pct.abs() / 2.0;
    (
        within(reading_pct - half, 0.0, 100.0),
        within(reading_pct + half, 0.0, 100.0),
    )
}

/// Returns the levels for which a ladder of lamps shows `reading`: the lit lamp is the floor, so a step up from it, within
/// 0..100.
pub fn ladder_band(reading_pct: f64, step_pct: f64) -> (f64, f64) {
    (
        within(reading_pct, 0.0, 100.0),
        within(reading_pct + step_pct.abs(), 0.0, 100.0),
    )
}

/// Returns the mean of a normal prior cut to `low..high`: m + s·(φ(α) − φ(β))/(Φ(β) − Φ(α)). Where the prior has no weight
/// there, the nearer end.
pub fn interval_posterior_mean(mean: f64, sd: f64, low: f64, high: f64) -> f64 {
    let (low, high) = (low.min(high), low.max(high));
    if sd <= 0.0 || high - low <= 0.0 {
        return within(mean, low, high);
    }
    let normal = standard_normal();
    let (mut a, mut b) = ((low - mean) / sd, (high - mean) / sd);
    // the right tail is mirrored to the left, where the cumulative has its digits
    let mirrored = a > 0.0;
    if mirrored {
        (a, b) = (-b, -a);
    }
    let mass = normal.cdf(b) - normal.cdf(a);
    if mass < 1e-280 {
        return within(mean, low, high);
    }
    let shift = (normal.pdf(a) - normal.pdf(b)) / mass;
    let shift = if mirrored { -shift } else { shift };
    within(mean + sd * shift, low, high)
}

/// Returns the pinball loss of a forecast quantile: max(q·(y − f), (q − 1)·(y − f)) (definition).
pub fn pinball_loss(q: f64, forecast: Time, actual: Time) -> Time {
    let miss = in_hours(actual) - in_hours(forecast);
    hours((q * miss).max((q - 1.0) * miss))
}

/// Returns how far the cover of a band may stray from `nominal` in `n` trials: 2·√(p(1−p)/n) (binomial, two sigma).
pub fn coverage_tolerance(n: u32, nominal: f64) -> f64 {
    let p = within(nominal, 0.0, 1.0);
    2.0 * (p * (1.0 - p) / f64::from(n.max(1))).sqrt()
}

/// Returns the rate expected before any reading, %/h: guests × uses × alcohol × gallons a use over the tank (mass
/// balance).
pub fn prior_rate_pct_h(
    guests: f64,
    uses_per_guest_h: f64,
    alcohol_factor: f64,
    per_use: Volume,
    tank: Volume,
) -> f64 {
    let uses = uses_per_h(guests, uses_per_guest_h, alcohol_factor);
    fill_rate_pct_h(uses, per_use, gal(0.0), tank)
}

fn standard_normal() -> Normal {
    Normal::new(0.0, 1.0).expect("a standard deviation of one is valid")
}
