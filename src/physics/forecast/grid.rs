//! The belief about a tank: how likely each level is together with each pace of use.
//!
//! Three things are not known: the level, the event's own pace against what its guest count promised, and where the pace
//! stands at the moment (a meal, an interval, a lull). The belief is a table over all three. Both paces are logarithms that
//! move as the sum of fair coins, each kept or tossed anew as time goes by (Rouwenhorst's chain, which has exactly the
//! mean, the spread and the memory of the Gaussian process it stands for). A tank in use only fills, so the share at or
//! above a limit is the share that has reached it.

use super::chain::{coins, tossed};

/// Paces of the event as a whole.
const EVENT: usize = 9;
/// Paces of the moment.
const MOMENT: usize = 3;
/// Pairs of them.
const ROWS: usize = EVENT * MOMENT;
/// Levels, at multiples of [`CELL_PCT`] from nothing to a little over full.
pub(super) const CELLS: usize = 124;
/// Between two levels, % of the tank.
pub(super) const CELL_PCT: f64 = 5.0 / 6.0;

/// The belief, and room to move it.
pub(super) struct Grid {
    mass: Vec<[f32; CELLS]>,
    spare: Vec<[f32; CELLS]>,
    /// What each pair of paces multiplies the promised use by.
    pace: [f32; ROWS],
    /// The first level that may hold any mass.
    low: usize,
    /// The level that keeps whatever passes it.
    top: usize,
}

impl Grid {
    /// Starts with these weights of the levels, an event's pace spread by `event_sd` and a moment's by `moment_sd`
    /// (both of the logarithm; the moment's is 1 on the mean).
    pub(super) fn new(level: &[f32; CELLS], event_sd: f64, moment_sd: f64) -> Self {
        let event = coins::<EVENT>();
        let moment = coins::<MOMENT>();
        let place = |i: usize, n: usize, sd: f64| {
            sd * (2.0 * i as f64 - (n - 1) as f64) / ((n - 1) as f64).sqrt()
        };
        let mean: f64 = (0..MOMENT)
            .map(|j| f64::from(moment[j]) * place(j, MOMENT, moment_sd).exp())
            .sum();
        let mut grid = Grid {
            mass: vec![[0.0; CELLS]; ROWS],
            spare: vec![[0.0; CELLS]; ROWS],
            pace: [0.0; ROWS],
            low: 0,
            top: CELLS - 1,
        };
        for (row, (cells, pace)) in grid.mass.iter_mut().zip(&mut grid.pace).enumerate() {
            let (i, j) = (row / MOMENT, row % MOMENT);
            let log = place(i, EVENT, event_sd) + place(j, MOMENT, moment_sd);
            *pace = (log.exp() / mean) as f32;
            for (cell, weight) in cells.iter_mut().zip(level) {
                *cell = event[i] * moment[j] * weight;
            }
        }
        grid.normalise();
        grid
    }

    /// Moves the levels up: `mean_pct` is the promised use, `use_pct` what a single one brings, both in % of the tank.
    pub(super) fn fill(&mut self, mean_pct: f64, use_pct: f64) {
        if mean_pct <= 0.0 {
            return;
        }
        let (low, top) = (self.low, self.top);
        let cells = (mean_pct / CELL_PCT).min(1e6) as f32;
        let grain = (use_pct / CELL_PCT) as f32;
        let mut least = top;
        for ((from, to), pace) in self.mass.iter().zip(&mut self.spare).zip(self.pace) {
            to.fill(0.0);
            to[top] = from[top];
            for (shift, share) in leaps(cells * pace, grain) {
                if share <= 0.0 {
                    continue;
                }
                least = least.min(low + shift);
                let stay = top.saturating_sub(shift).max(low);
                add(
                    &mut to[(low + shift).min(top)..top],
                    share,
                    &from[low..stay],
                );
                to[top] += share * total(&from[stay..top]);
            }
        }
        std::mem::swap(&mut self.mass, &mut self.spare);
        self.low = least.min(top);
    }

    /// Lets the moment's pace wander: `kept` is how much of it is remembered, 0 to 1.
    pub(super) fn wander(&mut self, kept: f64) {
        let turn = tossed::<MOMENT>(kept);
        let (low, top) = (self.low, self.top);
        let span = low..top + 1;
        for (from, to) in self
            .mass
            .chunks_exact(MOMENT)
            .zip(self.spare.chunks_exact_mut(MOMENT))
        {
            for (j, row) in to.iter_mut().enumerate() {
                row[..low].fill(0.0);
                let row = &mut row[span.clone()];
                row.fill(0.0);
                for (odds, other) in turn.iter().zip(from) {
                    add(row, odds[j], &other[span.clone()]);
                }
            }
        }
        std::mem::swap(&mut self.mass, &mut self.spare);
    }

    /// Lets the event's pace drift back to what its guest count promises: `kept` as in [`Grid::wander`].
    pub(super) fn drift(&mut self, kept: f64) {
        let turn = tossed::<EVENT>(kept);
        let (low, top) = (self.low, self.top);
        for (at, row) in self.spare.iter_mut().enumerate() {
            let (j, moment) = (at / MOMENT, at % MOMENT);
            row.fill(0.0);
            for (i, odds) in turn.iter().enumerate() {
                // From one end to the other in so short a time: next to never.
                if odds[j] < 1e-5 {
                    continue;
                }
                let other = &self.mass[i * MOMENT + moment];
                add(&mut row[low..=top], odds[j], &other[low..=top]);
            }
        }
        std::mem::swap(&mut self.mass, &mut self.spare);
    }

    /// Weighs each level by `likelihood`, with `unreported` the chance that the level is anything at all, by something
    /// nobody told of; `levels` is what [`Grid::levels`] gives. Nothing changes where that would leave no mass at all.
    pub(super) fn weigh(
        &mut self,
        levels: &[f32; CELLS],
        likelihood: &[f32; CELLS],
        unreported: f32,
    ) {
        let full = (100.0 / CELL_PCT) as usize;
        let seen: f32 = levels.iter().zip(likelihood).map(|(a, b)| a * b).sum();
        let anything = likelihood[..=full].iter().sum::<f32>() / (full + 1) as f32;
        let left = (1.0 - unreported) * seen + unreported * total(levels) * anything;
        if !left.is_finite() || left < 1e-12 {
            return;
        }
        let kept = likelihood.map(|weight| weight * (1.0 - unreported) / left);
        let mut thrown = [0.0; CELLS];
        for (thrown, weight) in thrown[..=full].iter_mut().zip(likelihood) {
            *thrown = weight * unreported / (left * (full + 1) as f32);
        }
        for row in &mut self.mass {
            let sum = total(row);
            for ((cell, kept), thrown) in row.iter_mut().zip(&kept).zip(&thrown) {
                *cell = *cell * kept + sum * thrown;
            }
        }
        self.low = 0;
    }

    /// Puts the level where `level` says and keeps the paces, the event's less surely (its variance grows by half).
    pub(super) fn reset(&mut self, level: &[f32; CELLS]) {
        let sum = total(level);
        for rows in self.mass.chunks_exact_mut(MOMENT) {
            let event: f32 = rows.iter().map(|row| total(row)).sum();
            let softer = if event > 0.0 {
                event.powf(-1.0 / 3.0)
            } else {
                0.0
            };
            for row in rows {
                let kept = total(row) * softer / sum;
                for (cell, weight) in row.iter_mut().zip(level) {
                    *cell = kept * weight;
                }
            }
        }
        self.low = 0;
        self.normalise();
    }

    /// Keeps from here on only what is below `limit_pct`, and counts the rest.
    pub(super) fn cut_at(&mut self, limit_pct: f64) {
        let top = ((limit_pct / CELL_PCT + 0.5).floor().max(0.0) as usize + 1).min(CELLS - 1);
        for row in &mut self.mass {
            let past = total(&row[top..]);
            row[top..].fill(0.0);
            row[top] = past;
        }
        for row in &mut self.spare {
            row[top..].fill(0.0);
        }
        self.top = top;
        self.low = self.low.min(top);
    }

    /// Returns the share at or above `limit_pct`.
    pub(super) fn reached(&self, limit_pct: f64) -> f64 {
        let at = limit_pct / CELL_PCT;
        let cell = ((at + 0.5).floor().max(0.0) as usize).min(CELLS - 1);
        let part = (cell as f64 + 0.5 - at).clamp(0.0, 1.0);
        let (mut above, mut inside) = (0.0f32, 0.0f32);
        for row in &self.mass {
            above += total(row.get(cell + 1..=self.top).unwrap_or(&[]));
            inside += row[cell];
        }
        f64::from(above) + part * f64::from(inside)
    }

    /// Returns how likely each level is.
    pub(super) fn levels(&self) -> [f32; CELLS] {
        let mut sum = [0.0; CELLS];
        for row in &self.mass {
            for (total, cell) in sum.iter_mut().zip(row) {
                *total += cell;
            }
        }
        sum
    }

    /// Returns the mean pace of the event, as a multiple of what its guest count promised.
    pub(super) fn event_pace(&self) -> f64 {
        let coins = coins::<MOMENT>();
        let mut mean = 0.0;
        for (rows, paces) in self
            .mass
            .chunks_exact(MOMENT)
            .zip(self.pace.chunks_exact(MOMENT))
        {
            let weight: f32 = rows.iter().map(|row| total(row)).sum();
            let pace: f32 = paces.iter().zip(coins).map(|(a, b)| a * b).sum();
            mean += f64::from(weight * pace);
        }
        mean
    }

    fn normalise(&mut self) {
        let sum: f32 = self.mass.iter().map(|row| total(row)).sum();
        if sum > 0.0 {
            let by = 1.0 / sum;
            for cell in self.mass.iter_mut().flatten() {
                *cell *= by;
            }
        }
    }
}

/// Adds so many times `from` to `to`, cell by cell, as far as both go.
///
/// This and [`total`] are where a forecast's time goes. Plain counting is as fast as iterators in a release, and several
/// times as fast in a build that is not optimised, in which the tests make thousands of forecasts.
fn add(to: &mut [f32], times: f32, from: &[f32]) {
    let cells = to.len().min(from.len());
    let (to, from) = (&mut to[..cells], &from[..cells]);
    let mut cell = 0;
    while cell < cells {
        to[cell] += times * from[cell];
        cell += 1;
    }
}

/// Adds up, eight at a time, always in the same order.
fn total(cells: &[f32]) -> f32 {
    let mut lanes = [0.0f32; 8];
    let eights = cells.chunks_exact(8);
    let rest: f32 = eights.remainder().iter().sum();
    for eight in eights {
        let mut lane = 0;
        while lane < 8 {
            lanes[lane] += eight[lane];
            lane += 1;
        }
    }
    lanes.iter().sum::<f32>() + rest
}

/// Spreads a use of `mean` cells, in single uses of `grain` cells, over at most three whole numbers of cells, with the mean
/// and (but for what a coarse grid adds) the variance of a Poisson count.
fn leaps(mean: f32, grain: f32) -> [(usize, f32); 3] {
    let mean = mean.min(2.0 * CELLS as f32);
    let variance = mean * grain;
    let middle = mean.round();
    let off = mean - middle;
    let spread = (variance + off * off).sqrt().ceil().max(1.0);
    if middle < spread {
        let one = (mean + grain).round().max(mean.ceil()).max(1.0);
        return [(0, 1.0 - mean / one), (one as usize, mean / one), (0, 0.0)];
    }
    let even = ((variance + off * off) / (spread * spread)).max(off.abs() / spread);
    let tilt = off / spread;
    [
        ((middle - spread) as usize, (even - tilt) / 2.0),
        (middle as usize, 1.0 - even),
        ((middle + spread) as usize, (even + tilt) / 2.0),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leap_keeps_its_mean_and_at_least_its_variance() {
        for mean in [0.01f32, 0.3, 0.5, 0.99, 1.0, 1.7, 4.4, 7.5, 31.2] {
            for grain in [0.1f32, 0.28, 1.15, 2.0] {
                let leaps = leaps(mean, grain);
                let total: f32 = leaps.iter().map(|l| l.1).sum();
                let got: f32 = leaps.iter().map(|l| l.0 as f32 * l.1).sum();
                let square: f32 = leaps.iter().map(|l| (l.0 as f32).powi(2) * l.1).sum();
                let variance = square - got * got;
                assert!(
                    leaps.iter().all(|l| l.1 >= -1e-6),
                    "{mean} {grain}: {leaps:?}"
                );
                assert!((total - 1.0).abs() < 1e-5);
                assert!(
                    (got - mean).abs() < 1e-4 * mean.max(1.0),
                    "{mean} {grain}: {got}"
                );
                assert!(
                    variance > mean * grain - 0.5 * mean - 0.01
                        && variance < mean * grain + mean.min(0.5),
                    "{mean} {grain}: {variance}"
                );
            }
        }
    }
}
