//! Carries the belief through the observations to now, and on to the limit.

use super::gauge::{Dial, Likelihood};
use super::grid::{CELL_PCT, CELLS, Grid};
use super::usage::{Calendar, Usage};
use super::{Doubt, Forecast, HORIZON_H, Observation, Quantiles, ReadDoubt, Tank};

/// The moment's pace: spread of its logarithm and memory, h. Common practice, no source; held against simulated events.
const MOMENT_SD: f64 = 0.3;
const MOMENT_MEMORY_H: f64 = 1.0;
/// The event's pace drifts back to the promise with this memory, open h: afternoon and night are two crowds. Common
/// practice, no source.
const EVENT_MEMORY_H: f64 = 12.0;
/// How likely something unreported changed the level before a reading. Common practice, no source.
const UNREPORTED: f32 = 0.004;
/// A gauge is doubted when it stands still this long in use, h. Common practice, no source.
const STILL_H: f64 = 6.0;
/// How likely such a gauge is taken to be stuck.
const STUCK: f64 = 0.5;
/// So long before the first observation, or before now where there is none, the level could be anything.
const BACK_H: f64 = 24.0;
const BACK_UNSEEN_H: f64 = 96.0;
/// How many observations are looked at, the newest: what came before them is long forgotten.
const LOOKED_BACK: usize = 64;
/// About how many steps one forecast may take, and the length of a step, h.
const STEPS: f64 = 64.0;
const STEP_H: (f64, f64) = (0.25, 6.0);

pub(super) fn run(
    tank: &Tank,
    usage: &Usage<'_>,
    observations: &[Observation],
    now_h: f64,
    limit_pct: f64,
    falls: bool,
) -> Forecast {
    let now = if now_h.is_finite() { now_h } else { 0.0 };
    let limit = sound(limit_pct, 85.0).clamp(0.0, 100.0);
    let limit = if falls { 100.0 - limit } else { limit };
    let calendar = Calendar::new(usage, now);
    let seen = in_order(observations, now, falls);
    let until = calendar.end().map_or(now, |end| end.min(now + HORIZON_H));

    let doors = calendar.start().unwrap_or(now).min(now);
    let start = match seen.first().map(|(_, seen)| seen.at_h().min(now)) {
        Some(first) if first < doors => first,
        Some(first) => doors.max(first - BACK_H),
        None => doors.max(now - BACK_UNSEEN_H),
    };
    let hours = calendar.open_hours(start, now) + calendar.open_hours(now, until);
    let mut course = Course {
        grid: Grid::new(
            &arrived(start > doors),
            sound(usage.prior_spread, super::PRIOR_SPREAD).clamp(0.02, 1.5),
            MOMENT_SD,
        ),
        dial: Dial::new(tank.shape, tank.gauge, falls),
        calendar,
        capacity: sound(tank.capacity_gal, 0.0).max(0.0),
        promised: sound(usage.prior_pct_per_h, 0.0).clamp(0.0, 1e4),
        use_pct: 0.0,
        step: (hours / STEPS).clamp(STEP_H.0, STEP_H.1),
        at: start,
        undrifted: 0.0,
        falls,
        run: None,
        doubtful: Vec::new(),
    };
    if course.capacity > 0.0 {
        course.use_pct =
            (100.0 * sound(usage.gal_per_use, 1.0).max(0.0) / course.capacity).min(100.0);
    }
    for (index, seen) in seen {
        course.go_to(seen.at_h().min(now), |_, _| true);
        course.see(index, seen);
    }
    course.go_to(now, |_, _| true);
    course.ahead(until, limit)
}

/// The belief on its way through time.
struct Course {
    grid: Grid,
    dial: Dial,
    calendar: Calendar,
    capacity: f64,
    promised: f64,
    use_pct: f64,
    step: f64,
    at: f64,
    undrifted: f64,
    falls: bool,
    run: Option<Run>,
    doubtful: Vec<ReadDoubt>,
}

/// Readings in a row that show the same.
struct Run {
    pct: f64,
    since: f64,
    level: f64,
    rate: f64,
}

impl Course {
    /// Moves on to an instant; `each` is told the time and the belief after every step, and ends the way by `false`.
    fn go_to(&mut self, to: f64, mut each: impl FnMut(f64, &Grid) -> bool) {
        while self.at < to {
            let (turn, open) = match self.calendar.next_turn(self.at) {
                Some((turn, open)) => (turn.min(to), open),
                None => (to, false),
            };
            if turn <= self.at {
                break;
            }
            let parts = if open {
                ((turn - self.at) / self.step).ceil().clamp(1.0, 400.0)
            } else {
                1.0
            };
            let (from, length) = (self.at, (turn - self.at) / parts);
            for part in 0..parts as usize {
                let (a, b) = (
                    from + part as f64 * length,
                    from + (part + 1) as f64 * length,
                );
                if open {
                    let mean = self.promised * self.calendar.worth(a, b);
                    self.grid.fill(mean, self.use_pct);
                }
                self.grid.wander((-length / MOMENT_MEMORY_H).exp());
                self.undrifted += if open { length } else { 0.0 };
                if self.undrifted >= 1.5 {
                    self.grid.drift((-self.undrifted / EVENT_MEMORY_H).exp());
                    self.undrifted = 0.0;
                }
                self.at = b;
                if !each(b, &self.grid) {
                    return;
                }
            }
            self.at = turn;
        }
    }

    fn see(&mut self, index: usize, seen: &Observation) {
        match *seen {
            Observation::Gauge { pct, .. } => {
                let stuck = self.still(index, pct);
                let seen = self.dial.shown(pct, if stuck { STUCK } else { 0.0 });
                self.take(index, &seen, stuck);
                if self.run.as_ref().is_none_or(|run| run.pct != pct) {
                    self.doubtful.retain(|doubt| doubt.why != Doubt::Unchanged);
                    self.run = Some(Run {
                        pct,
                        since: self.at,
                        level: quantile(&self.grid.levels(), 0.5),
                        rate: self.promised * self.grid.event_pace(),
                    });
                }
            }
            Observation::Gallons { gal, .. } if self.capacity > 0.0 => {
                let level = self.on_grid(100.0 * gal / self.capacity);
                self.take(index, &Dial::known(level, false), false);
            }
            Observation::Pumped { gal, .. } => {
                if let Some(gal) = gal.filter(|gal| gal.is_finite() && self.capacity > 0.0) {
                    let seen = Dial::known(100.0 * gal / self.capacity, true);
                    self.take(index, &seen, false);
                }
                self.settle(0.0);
            }
            Observation::Filled { .. } => self.settle(0.0),
            Observation::Drained { .. } => self.settle(100.0),
            Observation::Gallons { .. } => {}
        }
    }

    fn take(&mut self, index: usize, seen: &Likelihood, stuck: bool) {
        let before = self.grid.levels();
        let odds = |of: &[f32; CELLS]| before.iter().zip(of).map(|(a, b)| a * b).sum::<f32>();
        let (all, right) = (odds(&seen.all), odds(&seen.sound));
        if !stuck && right < 0.5 * all {
            self.doubtful.push(ReadDoubt {
                index,
                why: Doubt::OutOfLine,
            });
        }
        self.grid.weigh(&before, &seen.all, UNREPORTED);
    }

    /// Puts the level near `level`, as after a pump-out: 2 % give or take 2. Common practice, no source.
    fn settle(&mut self, level: f64) {
        let near = if level > 50.0 { 98.0 } else { 2.0 };
        let mut odds = [0.0; CELLS];
        for (i, odds) in odds.iter_mut().enumerate() {
            let off = (i as f64 * CELL_PCT - near) / 2.0;
            *odds = (-off * off / 2.0).exp() as f32;
        }
        self.grid.reset(&odds);
        self.run = None;
    }

    /// Whether the gauge stands still though a step was due.
    fn still(&mut self, index: usize, pct: f64) -> bool {
        let at_end = if self.falls { pct <= 0.1 } else { pct >= 99.9 };
        let Some(run) = self.run.as_ref().filter(|run| run.pct == pct && !at_end) else {
            return false;
        };
        if self.calendar.open_hours(run.since, self.at) <= STILL_H {
            return false;
        }
        let grown = run.rate * self.calendar.worth(run.since, self.at);
        let due = self.dial.depth_at(run.level + grown) - self.dial.depth_at(run.level);
        let still = due.abs() >= self.dial.step();
        if still {
            self.doubtful.retain(|doubt| doubt.why != Doubt::Unchanged);
            self.doubtful.push(ReadDoubt {
                index,
                why: Doubt::Unchanged,
            });
        }
        still
    }

    fn on_grid(&self, level: f64) -> f64 {
        if self.falls { 100.0 - level } else { level }
    }

    fn ahead(mut self, until: f64, limit: f64) -> Forecast {
        let levels = self.grid.levels();
        let at = |p: f64| quantile(&levels, p);
        let level_now = if self.falls {
            Quantiles {
                p10: 100.0 - at(0.9),
                p50: 100.0 - at(0.5),
                p90: 100.0 - at(0.1),
            }
        } else {
            Quantiles {
                p10: at(0.1),
                p50: at(0.5),
                p90: at(0.9),
            }
        };
        let now = self.at;
        let rate_pct_h = self.promised * self.grid.event_pace() * self.calendar.crowd_at(now);
        let mut when = [None; 3];
        let mut last = (now, self.grid.reached(limit));
        for (when, share) in when.iter_mut().zip([0.1, 0.5, 0.9]) {
            if last.1 >= share {
                *when = Some(now);
            }
        }
        self.grid.cut_at(limit);
        self.go_to(until, |at, grid| {
            let reached = grid.reached(limit).max(last.1);
            for (when, share) in when.iter_mut().zip([0.1, 0.5, 0.9]) {
                if when.is_none() && reached >= share {
                    let part = (share - last.1) / (reached - last.1);
                    *when = Some(last.0 + part * (at - last.0));
                }
            }
            last = (at, reached);
            when[2].is_none()
        });
        Forecast {
            p10: when[0],
            p50: when[1],
            p90: when[2],
            level_now,
            rate_pct_h,
            chance: last.1.clamp(0.0, 1.0),
            doubtful: self.doubtful,
            could_stay_below: when[2].is_none(),
        }
    }
}

/// The observations that bear on the tank, in order of time, each with its place as given.
fn in_order(observations: &[Observation], now: f64, falls: bool) -> Vec<(usize, &Observation)> {
    let mut seen: Vec<_> = observations
        .iter()
        .enumerate()
        .filter(|(_, seen)| {
            seen.at_h().is_finite()
                && seen.at_h() > now - 20_000.0
                && match seen {
                    Observation::Gauge { pct, .. } => pct.is_finite(),
                    Observation::Gallons { gal, .. } => gal.is_finite(),
                    Observation::Pumped { .. } => !falls,
                    Observation::Filled { .. } | Observation::Drained { .. } => falls,
                }
        })
        .collect();
    seen.sort_by(|a, b| a.1.at_h().total_cmp(&b.1.at_h()));
    let old = seen.len().saturating_sub(LOOKED_BACK);
    seen.drain(..old);
    seen
}

/// The level of a tank that has just come, or of one that has been in use for who knows how long.
fn arrived(unknown: bool) -> [f32; CELLS] {
    let mut odds = [0.0; CELLS];
    let full = (100.0 / CELL_PCT) as usize;
    for (i, odds) in odds.iter_mut().enumerate().take(full + 1) {
        let empty = (-(i as f64) * CELL_PCT / 4.0).exp() * CELL_PCT / 4.0;
        let any = 1.0 / (full + 1) as f64;
        *odds = if unknown {
            any
        } else {
            0.9 * empty + 0.1 * any
        } as f32;
    }
    odds
}

fn quantile(levels: &[f32; CELLS], share: f64) -> f64 {
    let total: f64 = levels.iter().map(|l| f64::from(*l)).sum();
    let mut below = 0.0;
    for (i, mass) in levels.iter().enumerate() {
        let mass = f64::from(*mass) / total;
        if below + mass >= share && mass > 0.0 {
            let part = (share - below) / mass;
            return ((i as f64 - 0.5 + part) * CELL_PCT).clamp(0.0, 100.0);
        }
        below += mass;
    }
    100.0
}

fn sound(value: f64, otherwise: f64) -> f64 {
    if value.is_finite() { value } else { otherwise }
}
