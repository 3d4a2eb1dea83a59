//! The best any forecast could do: one that knows the simulated process itself, code and spreads and all, and weighs many
//! courses drawn from it by what was told. What it does not reach, nothing can that knows only what a crew tells.

use hosebib::physics::forecast::Observation;

use crate::calibration::Band;
use crate::events::{Course, Event, TICK_H, shown};

/// Courses that an event might have taken, as far as anybody knew before it.
pub(crate) struct Ideal {
    paths: Vec<Path>,
}

struct Path {
    level: Vec<f32>,
    /// What was aboard when it was pumped out, %.
    aboard: f64,
    /// The guests there when they were counted.
    there: Option<f64>,
}

impl Ideal {
    /// Draws courses for what is known of an event's setting and of when it was pumped out.
    pub(crate) fn draw(event: &Event, paths: usize, rng: &mut fastrand::Rng) -> Ideal {
        let pumped = event.emptied(f64::MAX);
        let counted = event.guests.get(1).map(|(at, _)| *at);
        let paths = (0..paths).map(|_| {
            let course = Course::draw(rng, &event.setting);
            let (level, aboard) = course.run(rng, &event.setting, pumped);
            Path {
                level: level.into_iter().map(|level| level as f32).collect(),
                aboard,
                there: counted.map(|at| course.present(at)),
            }
        });
        Ideal {
            paths: paths.collect(),
        }
    }

    /// Forecasts from what had come in by `now`.
    pub(crate) fn forecast(&self, event: &Event, now: f64) -> Band {
        let known = event.known(now);
        let since = event
            .emptied(now)
            .map_or(0, |at| (at / TICK_H).ceil() as usize + 1);
        let mut total = 0.0;
        let mut reached: Vec<(f64, f64)> = Vec::new();
        for path in &self.paths {
            let weight = path.weight(event, &known, now);
            total += weight;
            let past = path
                .level
                .iter()
                .skip(since)
                .position(|level| *level >= 85.0);
            if let Some(tick) = past.filter(|_| weight > 0.0) {
                reached.push((((since + tick) as f64 * TICK_H).max(now), weight));
            }
        }
        reached.sort_by(|a, b| a.0.total_cmp(&b.0));
        [0.1, 0.5, 0.9].map(|share| {
            let mut below = 0.0;
            let mut courses = reached.iter();
            let at = courses.find(|(_, weight)| {
                below += weight;
                below >= share * total
            });
            at.map(|(at, _)| *at)
        })
    }
}

impl Path {
    /// How likely what was told is on this path.
    fn weight(&self, event: &Event, known: &[Observation], now: f64) -> f64 {
        let bell = |off: f64, sd: f64| (-(off / sd).powi(2) / 2.0).exp() / sd;
        let mut weight = 1.0;
        for seen in known {
            match *seen {
                Observation::Gauge { at_h, pct } => weight *= self.shows(event, at_h, pct),
                Observation::Pumped { gal: Some(gal), .. } => {
                    let aboard = event.setting.tank.capacity_gal * self.aboard / 100.0;
                    weight *= bell(gal - aboard, (0.015 * aboard).hypot(1.5)) + 1e-9;
                }
                _ => {}
            }
        }
        if let (Some(&(at, told)), Some(there)) = (event.guests.get(1), self.there)
            && at <= now
        {
            weight *= bell(told - there, (0.1 * there).hypot(3.0)) + 1e-9;
        }
        weight
    }

    /// How likely a reading is: wrong as often as the crews of the simulation are, and stamped with a round time as often.
    fn shows(&self, event: &Event, when: f64, pct: f64) -> f64 {
        let tank = &event.setting.tank;
        let step = tank.gauge.step_pct;
        let is = |value: f64| f64::from(u8::from((pct - value).abs() < 0.1));
        let at = |when: f64| {
            let right = shown(tank, self.at(when));
            0.955 * is(right)
                + 0.02 * is((right + step).min(100.0))
                + 0.02 * is((right - step).max(0.0))
                + 0.005 * step / 100.0
        };
        let quarters = when * 4.0;
        if when > 0.0 && (quarters - quarters.round()).abs() < 1e-9 {
            [-0.1, -0.05, 0.0, 0.05, 0.1]
                .map(|off| at(when + off))
                .iter()
                .sum::<f64>()
                / 5.0
        } else {
            at(when)
        }
    }

    fn at(&self, when: f64) -> f64 {
        let last = self.level.len() - 1;
        let tick = (when / TICK_H).clamp(0.0, last as f64);
        let low = tick as usize;
        let (a, b) = (
            f64::from(self.level[low]),
            f64::from(self.level[(low + 1).min(last)]),
        );
        if b < a {
            a
        } else {
            a + (tick - low as f64) * (b - a)
        }
    }
}
