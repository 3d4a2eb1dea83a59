//! Simulated events, by a process that is not the forecast's own model: guests who arrive and leave along S curves, meals
//! and intervals at hidden times, drink that tells later in the evening, parties who come in bunches, uses of unequal size,
//! gauges of both kinds on tanks of both shapes, reads that are late, wrong, or stamped with a round time.
//!
//! The numbers are plausible, not measured (common practice, no source).

use hosebib::fleet::{Gauge, GaugeKind, TankShape};
use hosebib::physics::forecast::{Observation, PRIOR_SPREAD, Tank, Usage};

/// Between two points of a simulated course, h.
pub(crate) const TICK_H: f64 = 1.0 / 12.0;

/// The share of requests for a reading that are answered, and the mean time until they are, h: common practice, no source.
const ANSWERED: f64 = 0.67;
const ANSWER_H: f64 = 0.25;

/// What is known of an event before it begins.
#[derive(Clone)]
pub(crate) struct Setting {
    pub(crate) tank: Tank,
    pub(crate) lead_h: f64,
    pub(crate) hours: f64,
    pub(crate) drink: bool,
    /// The guests the job states.
    pub(crate) guests: f64,
    pub(crate) prior_pct_per_h: f64,
}

/// One event, with what happened and what was told.
#[derive(Clone)]
pub(crate) struct Event {
    pub(crate) setting: Setting,
    /// The guests as they were told: the job's own, and a count.
    pub(crate) guests: Vec<(f64, f64)>,
    /// The level at every tick from the doors' opening on, % by volume, as if nobody pumped but where told.
    pub(crate) level: Vec<f64>,
    /// What was told, with the time at which it came in.
    pub(crate) told: Vec<(f64, Observation)>,
}

impl Setting {
    fn draw(rng: &mut fastrand::Rng) -> Setting {
        let gallons = [120.0, 150.0, 200.0, 240.0, 300.0, 400.0, 500.0, 600.0][rng.usize(..8)];
        let shape = if rng.f64() < 0.3 {
            TankShape::Cylinder {
                diameter_in: 36.0,
                length_in: gallons * 231.0 / (std::f64::consts::PI * 18.0 * 18.0),
            }
        } else {
            TankShape::Box
        };
        let gauge = Gauge {
            kind: if rng.bool() {
                GaugeKind::Sight
            } else {
                GaugeKind::Lamps
            },
            step_pct: if rng.bool() { 12.5 } else { 25.0 },
        };
        let hours = (10.0 + 18.0 * rng.f64()).round() / 2.0;
        let drink = rng.f64() < 0.6;
        let stated_fill = 0.6 + 1.8 * rng.f64();
        let per_guest_hour = 0.25 * if drink { 1.35 } else { 1.0 };
        let guests = (stated_fill * gallons / (per_guest_hour * 1.1 * hours))
            .round()
            .max(5.0);
        Setting {
            tank: Tank {
                capacity_gal: gallons,
                shape,
                gauge,
            },
            lead_h: [1.5, 2.0, 2.5, 3.0][rng.usize(..4)],
            hours,
            drink,
            guests,
            prior_pct_per_h: 100.0 * guests * per_guest_hour * 1.1 / gallons,
        }
    }
}

/// How an event goes, which nobody knows before.
pub(crate) struct Course {
    came: f64,
    need: f64,
    gal: f64,
    day: Day,
    bunching: f64,
    start: f64,
}

impl Course {
    pub(crate) fn draw(rng: &mut fastrand::Rng, setting: &Setting) -> Course {
        Course {
            came: setting.guests * (0.25 * normal(rng)).exp(),
            need: (0.2 * normal(rng)).exp(),
            gal: 1.1 * (0.15 * normal(rng)).exp(),
            day: Day::new(rng, setting.hours, setting.drink),
            bunching: 2.0 + 4.0 * rng.f64(),
            start: 3.0 * rng.f64(),
        }
    }

    /// Runs the event: the level at every tick, and what was aboard when it was pumped out at `pumped`, %.
    pub(crate) fn run(
        &self,
        rng: &mut fastrand::Rng,
        setting: &Setting,
        pumped: Option<f64>,
    ) -> (Vec<f64>, f64) {
        let ticks = (setting.hours / TICK_H).round() as usize;
        let mut level = Vec::with_capacity(ticks + 1);
        level.push(self.start);
        let (mut bunch, mut aboard, mut now) = (1.0, 0.0, self.start);
        for tick in 0..ticks {
            let at = tick as f64 * TICK_H;
            if tick % 3 == 0 {
                bunch = gamma(rng, self.bunching) / self.bunching;
            }
            let mean = self.came * 0.25 * self.need * self.day.pace(at) * bunch * TICK_H;
            for _ in 0..poisson(rng, mean) {
                now += 100.0 * self.gal * (0.5 + rng.f64()) / setting.tank.capacity_gal;
            }
            if pumped.is_some_and(|when| at <= when && when < at + TICK_H) {
                aboard = now.min(100.0);
                now = 2.0 * rng.f64();
            }
            level.push(now);
        }
        (level, aboard)
    }

    /// The guests there at an instant.
    pub(crate) fn present(&self, at: f64) -> f64 {
        self.came * self.day.present(at)
    }
}

impl Event {
    pub(crate) fn simulate(rng: &mut fastrand::Rng) -> Event {
        let setting = Setting::draw(rng);
        let course = Course::draw(rng, &setting);
        let hours = setting.hours;
        let pumped = (rng.f64() < 0.15).then(|| hours * (0.2 + 0.4 * rng.f64()));
        let (level, aboard) = course.run(rng, &setting, pumped);
        let mut told = Vec::new();
        if let Some(when) = pumped {
            let hauled = setting.tank.capacity_gal * aboard / 100.0 * (1.0 + 0.015 * normal(rng));
            let gal = (rng.f64() < 0.6).then(|| (hauled / 5.0).round() * 5.0);
            told.push((when, Observation::Pumped { at_h: when, gal }));
        }
        let mut guests = vec![(0.0, setting.guests)];
        if rng.f64() < 0.3 {
            let at = hours * (0.25 + 0.4 * rng.f64());
            let there = course.present(at) * (1.0 + 0.1 * normal(rng));
            guests.push((at, (there / 10.0).round().max(1.0) * 10.0));
        }
        let mut event = Event {
            setting,
            guests,
            level,
            told,
        };
        event.read(rng);
        event
    }

    /// Crews look in at uneven times; some tell later, some tell wrong.
    fn read(&mut self, rng: &mut fastrand::Rng) {
        if rng.bool() {
            let shown = self.shown(0.0);
            let at_h = -0.5 - rng.f64();
            self.told
                .push((at_h, Observation::Gauge { at_h, pct: shown }));
        }
        let mut at = 0.5 + 1.5 * rng.f64();
        while at < self.setting.hours {
            let pct = self.read_off(rng, at);
            let said = if rng.f64() < 0.3 {
                (at * 4.0).round() / 4.0
            } else {
                at
            };
            let came = if rng.f64() < 0.1 {
                at + 2.0 * rng.f64()
            } else {
                at.max(said)
            };
            self.told
                .push((came, Observation::Gauge { at_h: said, pct }));
            at += 0.6 + 1.9 * rng.f64();
        }
    }

    /// What somebody tells who looks at the gauge: now and then a step off, or anything at all.
    fn read_off(&self, rng: &mut fastrand::Rng, at: f64) -> f64 {
        let pct = self.shown(at);
        let step = self.setting.tank.gauge.step_pct;
        match rng.f64() {
            x if x < 0.02 => (pct + step).min(100.0),
            x if x < 0.04 => (pct - step).max(0.0),
            x if x < 0.045 => (rng.f64() * 100.0 / step).floor() * step,
            _ => pct,
        }
    }

    /// Somebody is asked at `at` to look at the gauge: two in three do, some minutes later, and tell what they read then.
    /// Returns whether they do.
    pub(crate) fn ask(&mut self, rng: &mut fastrand::Rng, at: f64) -> bool {
        let looks = rng.f64() < ANSWERED;
        let when = at - ANSWER_H * (1.0 - rng.f64()).ln();
        let pct = self.read_off(rng, when);
        if looks && when < self.setting.hours {
            let seen = Observation::Gauge { at_h: when, pct };
            self.told.push((when, seen));
        }
        looks
    }

    fn shown(&self, at: f64) -> f64 {
        shown(&self.setting.tank, self.level_at(at))
    }

    pub(crate) fn level_at(&self, at: f64) -> f64 {
        let tick = (at / TICK_H).clamp(0.0, (self.level.len() - 1) as f64);
        let low = tick as usize;
        let high = (low + 1).min(self.level.len() - 1);
        if self.level[high] < self.level[low] {
            return self.level[low];
        }
        self.level[low] + (tick - low as f64) * (self.level[high] - self.level[low])
    }

    /// When a level is first reached after `from`, if before the doors close.
    pub(crate) fn reaches(&self, pct: f64, from: f64) -> Option<f64> {
        let mut tick = (from / TICK_H).ceil().max(0.0) as usize;
        if self.level_at(from) >= pct {
            return Some(from);
        }
        while tick < self.level.len() {
            if self.level[tick] >= pct {
                let before = self.level[tick.max(1) - 1].min(pct);
                let part = (pct - before) / (self.level[tick] - before).max(1e-9);
                return Some(((tick as f64 - 1.0 + part) * TICK_H).max(from));
            }
            tick += 1;
        }
        None
    }

    /// What had come in by `now`.
    pub(crate) fn known(&self, now: f64) -> Vec<Observation> {
        self.told
            .iter()
            .filter(|(came, seen)| *came <= now && seen.at_h() <= now)
            .map(|(_, seen)| *seen)
            .collect()
    }

    /// When the tank was pumped out last, as far as known by `now`.
    pub(crate) fn emptied(&self, now: f64) -> Option<f64> {
        self.known(now)
            .iter()
            .filter(|seen| matches!(seen, Observation::Pumped { .. }))
            .map(Observation::at_h)
            .reduce(f64::max)
    }

    pub(crate) fn usage<'a>(&self, open: &'a [(f64, f64)], guests: &'a [(f64, f64)]) -> Usage<'a> {
        Usage {
            prior_pct_per_h: self.setting.prior_pct_per_h,
            prior_spread: PRIOR_SPREAD,
            gal_per_use: 1.1,
            open,
            guests,
        }
    }
}

/// What a gauge shows when it works.
pub(crate) fn shown(tank: &Tank, level: f64) -> f64 {
    let depth = depth_pct(tank.shape, level.min(100.0));
    let marks = depth / tank.gauge.step_pct;
    let mark = match tank.gauge.kind {
        GaugeKind::Sight => marks.round(),
        GaugeKind::Lamps => marks.floor(),
    };
    (mark * tank.gauge.step_pct).min(100.0)
}

/// How a day goes: who is there, and when they go.
struct Day {
    hours: f64,
    arrive: (f64, f64),
    leave: (f64, f64),
    drink: Option<f64>,
    turns: Vec<(f64, f64, f64)>,
}

impl Day {
    fn new(rng: &mut fastrand::Rng, hours: f64, drink: bool) -> Day {
        let mut turns = Vec::new();
        for _ in 0..rng.usize(1..=3) {
            let at = hours * (0.15 + 0.7 * rng.f64());
            let width = 0.15 + 0.2 * rng.f64();
            turns.push((at, width, 0.6 + 1.0 * rng.f64()));
            // While it is on, few go; when it breaks, many do.
            turns.push((at - 2.2 * width, width, -0.2 - 0.3 * rng.f64()));
        }
        Day {
            hours,
            arrive: (0.3 + 0.8 * rng.f64(), 0.15 + 0.25 * rng.f64()),
            leave: (0.2 + 0.8 * rng.f64(), 0.15 + 0.25 * rng.f64()),
            drink: drink.then(|| 0.2 + 0.3 * rng.f64()),
            turns,
        }
    }

    fn present(&self, at: f64) -> f64 {
        let rise = 1.0 / (1.0 + (-(at - self.arrive.0) / self.arrive.1).exp());
        let left = self.hours - self.leave.0;
        let fall = 1.0 / (1.0 + ((at - left) / self.leave.1).exp());
        rise * fall
    }

    fn pace(&self, at: f64) -> f64 {
        let drink = self
            .drink
            .map_or(1.0, |late| 1.35 + late * (2.0 * at / self.hours - 1.0));
        let turns: f64 = self
            .turns
            .iter()
            .map(|(when, width, much)| much * (-((at - when) / width).powi(2) / 2.0).exp())
            .sum();
        self.present(at) * drink * (1.0 + turns).max(0.1)
    }
}

/// Depth from volume by bisection, from the segment's formula; not the forecast's table.
fn depth_pct(shape: TankShape, volume: f64) -> f64 {
    if shape == TankShape::Box {
        return volume;
    }
    let (mut low, mut high) = (0.0f64, 100.0f64);
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if volume_pct(shape, middle) < volume {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// Volume from depth: the segment of a circle.
pub(crate) fn volume_pct(shape: TankShape, depth: f64) -> f64 {
    if shape == TankShape::Box {
        return depth;
    }
    let h = (depth / 50.0).clamp(0.0, 2.0);
    let area = (1.0 - h).acos() - (1.0 - h) * (2.0 * h - h * h).max(0.0).sqrt();
    100.0 * area / std::f64::consts::PI
}

fn normal(rng: &mut fastrand::Rng) -> f64 {
    let radius = (-2.0 * (1.0 - rng.f64()).ln()).sqrt();
    radius * (2.0 * std::f64::consts::PI * rng.f64()).cos()
}

/// Marsaglia and Tsang's method, for a shape of at least 1.
fn gamma(rng: &mut fastrand::Rng, shape: f64) -> f64 {
    let d = shape - 1.0 / 3.0;
    loop {
        let x = normal(rng);
        let v = (1.0 + x / (9.0 * d).sqrt()).powi(3);
        if v > 0.0 && (1.0 - rng.f64()).ln() < 0.5 * x * x + d - d * v + d * v.ln() {
            return d * v;
        }
    }
}

fn poisson(rng: &mut fastrand::Rng, mean: f64) -> usize {
    let (limit, mut product, mut count) = ((-mean).exp(), rng.f64(), 0);
    while product > limit {
        product *= rng.f64();
        count += 1;
    }
    count
}
