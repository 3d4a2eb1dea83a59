//! How many fixtures run at once, and what they draw together.

use statrs::distribution::{Binomial, Discrete};
use uom::si::f64::VolumeRate;

use super::super::units::{gpm, in_gpm, interpolate, within};

/// Fixtures of one kind: how many, how likely each is to be running, and what it draws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixtureGroup {
    /// How many, up to 10,000.
    pub n: u32,
    /// Chance that one is running at a moment in the peak: run seconds a use × uses an hour ÷ 3600.
    pub p: f64,
    /// Draw of one.
    pub flow: VolumeRate,
}

/// Chance that a toilet or urinal of a busy trailer is refilling, and its draw, gpm (3 gpm: IRC Table P2903.1).
const STALL: (f64, f64) = (0.2, 3.0);
/// Chance that a tap runs, and its draw, gpm (metering taps, common practice).
const SINK: (f64, f64) = (0.15, 0.5);
/// Most points a distribution of flows keeps; beyond it the grid is coarsened upward.
const MOST_POINTS: usize = 2048;
/// Chance below which a count is left out of a distribution; the total left out stays far under any quantile asked.
const NEGLIGIBLE: f64 = 1e-12;

/// Returns the fixtures of a trailer in its peak: 3 gpm at p = 0.2 a stall, 0.5 gpm at p = 0.15 a sink.
pub fn trailer_fixtures(stalls: u32, sinks: u32) -> [FixtureGroup; 2] {
    [(stalls, STALL), (sinks, SINK)].map(|(n, (p, flow))| FixtureGroup {
        n,
        p,
        flow: gpm(flow),
    })
}

/// Returns the flow a trailer stays within 99 % of its peak ([`mixed_demand`] of [`trailer_fixtures`]).
pub fn trailer_demand(stalls: u32, sinks: u32) -> VolumeRate {
    mixed_demand(&trailer_fixtures(stalls, sinks), 0.99)
}

/// Returns the smallest number of fixtures m with P(Bin(n, p) ≤ m) ≥ q.
///
/// Source: Hunter's method (NBS report BMS 65, 1940). `p` is held to 0..1, `q` to 0..1, `n` to 10,000.
pub fn simultaneous_fixtures(n: u32, p: f64, q: f64) -> u32 {
    let mut total = 0.0;
    for (count, chance) in busy(n, p) {
        total += chance;
        if reached(total, q) {
            return count;
        }
    }
    n
}

/// Returns the smallest flow with a cumulative chance of at least `q`: the binomials of all groups convolved.
///
/// Exact to 0.001 gpm up to 2,048 different flows; beyond, the grid is coarsened upward.
pub fn mixed_demand(groups: &[FixtureGroup], q: f64) -> VolumeRate {
    let mut points = vec![(0_u64, 1.0_f64)];
    for group in groups {
        let draw = (within(in_gpm(group.flow), 0.0, 1e6) * 1000.0).round() as u64;
        let counts = busy(group.n, group.p);
        let mut next = Vec::with_capacity(points.len() * counts.len());
        for (flow, chance) in &points {
            for (count, also) in &counts {
                next.push((flow + u64::from(*count) * draw, chance * also));
            }
        }
        points = merged(next);
    }
    let mut total = 0.0;
    for (flow, chance) in &points {
        total += chance;
        if reached(total, q) {
            return gpm(*flow as f64 / 1000.0);
        }
    }
    gpm(points.last().map_or(0.0, |(flow, _)| *flow as f64 / 1000.0))
}

/// Returns the quick estimate Σnpf + z·√Σnp(1−p)f², f the draw of one.
///
/// Source: Wistort 1994 (from memory): the normal approximation to the binomial.
pub fn wistort_demand(groups: &[FixtureGroup], z: f64) -> VolumeRate {
    let (mut mean, mut variance) = (0.0, 0.0);
    for group in groups {
        let (n, p, f) = (
            f64::from(group.n),
            within(group.p, 0.0, 1.0),
            in_gpm(group.flow),
        );
        mean += n * p * f;
        variance += n * p * (1.0 - p) * f * f;
    }
    gpm((mean + z * variance.sqrt()).max(0.0))
}

/// Water-supply fixture units against gpm, systems with flush tanks.
///
/// Source: IPC Appendix E Table E103.3(3); 1, 2, 4, 8, 15, 30 and 50 seen in a reproduced table, the rest from memory.
const HUNTER_FLUSH_TANK: [(f64, f64); 38] = [
    (1.0, 3.0),
    (2.0, 5.0),
    (3.0, 6.5),
    (4.0, 8.0),
    (5.0, 9.4),
    (6.0, 10.7),
    (7.0, 11.8),
    (8.0, 12.8),
    (9.0, 13.7),
    (10.0, 14.6),
    (11.0, 15.4),
    (12.0, 16.0),
    (13.0, 16.5),
    (14.0, 17.0),
    (15.0, 17.5),
    (16.0, 18.0),
    (17.0, 18.4),
    (18.0, 18.8),
    (19.0, 19.2),
    (20.0, 19.6),
    (25.0, 21.5),
    (30.0, 23.3),
    (35.0, 24.9),
    (40.0, 26.3),
    (45.0, 27.7),
    (50.0, 29.1),
    (60.0, 32.0),
    (70.0, 35.0),
    (80.0, 38.0),
    (90.0, 41.0),
    (100.0, 43.5),
    (120.0, 48.0),
    (140.0, 52.5),
    (160.0, 57.0),
    (180.0, 61.0),
    (200.0, 65.0),
    (225.0, 70.0),
    (250.0, 75.0),
];

/// Returns the demand of `wsfu` fixture units by Hunter's curve for flush tanks, linear between the table's rows; 1 to
/// 250 units, values beyond take the end's.
///
/// For a trailer it gives about twice what the exact binomial does: prefer [`mixed_demand`].
pub fn hunter_flush_tank(wsfu: f64) -> VolumeRate {
    gpm(interpolate(&HUNTER_FLUSH_TANK, wsfu))
}

/// Returns each count of running fixtures that is not negligible, with its chance.
fn busy(n: u32, p: f64) -> Vec<(u32, f64)> {
    let n = n.min(10_000);
    let Ok(binomial) = Binomial::new(within(p, 0.0, 1.0), u64::from(n)) else {
        return vec![(0, 1.0)];
    };
    (0..=n)
        .map(|count| (count, binomial.pmf(u64::from(count))))
        .filter(|(_, chance)| *chance > NEGLIGIBLE)
        .collect()
}

/// Tells whether a cumulative chance has come to `q`, forgiving what was left out as negligible.
fn reached(total: f64, q: f64) -> bool {
    total >= within(q, 0.0, 1.0) - 1e-9
}

/// Orders flows, adds up the chances of equal ones, and keeps their number bounded.
fn merged(mut points: Vec<(u64, f64)>) -> Vec<(u64, f64)> {
    points.sort_unstable_by_key(|(flow, _)| *flow);
    let highest = points.last().map_or(0, |(flow, _)| *flow);
    let mut step = 1;
    loop {
        let mut kept: Vec<(u64, f64)> = Vec::with_capacity(points.len());
        for (flow, chance) in &points {
            let flow = flow.div_ceil(step) * step;
            match kept.last_mut() {
                Some((last, sum)) if *last == flow => *sum += chance,
                _ => kept.push((flow, *chance)),
            }
        }
        if kept.len() <= MOST_POINTS {
            return kept;
        }
        step = highest.div_ceil(MOST_POINTS as u64 - 1).max(step * 2);
    }
}
