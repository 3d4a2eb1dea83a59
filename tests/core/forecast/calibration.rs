//! How right a forecast is, over many simulated events.

use hosebib::physics::forecast::{Forecast, Observation, waste};

use super::events::{Event, volume_pct};

/// What a run over events came to.
#[derive(Debug, Default)]
pub struct Figures {
    pub events: usize,
    pub banded: usize,
    pub inside: usize,
    pub before_p10: usize,
    pub after_p90: usize,
    pub loss: f64,
    pub line_loss: f64,
    pub prior_loss: f64,
    pub could: usize,
    pub in_time: usize,
    pub trucks: usize,
    pub fill: f64,
}

impl Figures {
    pub fn measure(seed: u64, events: usize) -> Figures {
        let mut rng = fastrand::Rng::with_seed(seed);
        let mut figures = Figures::default();
        while figures.events < events {
            let event = Event::simulate(&mut rng);
            figures.band(&event);
            figures.truck(&event);
            figures.events += 1;
        }
        figures
    }

    pub fn share(&self, count: usize) -> f64 {
        count as f64 / self.banded.max(1) as f64
    }

    /// Holds one forecast against the truth. A limit that is not reached counts as reached at the job's end or later.
    fn band(&mut self, event: &Event) {
        let now = event.now_h;
        let end = event.hours;
        let truth = event.reaches(85.0, now);
        let forecast = forecast(event, now);
        if let (Some(p10), Some(p90)) = (forecast.p10, forecast.p90) {
            self.banded += 1;
            match truth {
                Some(truth) if truth < p10 => self.before_p10 += 1,
                Some(truth) if truth <= p90 => self.inside += 1,
                _ => self.after_p90 += 1,
            }
        }
        let truth = truth.unwrap_or(end);
        let ours = [forecast.p10, forecast.p50, forecast.p90].map(|p| p.unwrap_or(end));
        self.loss += pinball(ours, truth);
        self.line_loss += pinball([line(event, now).clamp(now, end); 3], truth);
        self.prior_loss += pinball(prior(event, now).map(|at| at.clamp(now, end)), truth);
    }

    /// Calls the truck as soon as p10 is no further off than it needs to come.
    fn truck(&mut self, event: &Event) {
        let from = event
            .told
            .iter()
            .filter(|(_, seen)| matches!(seen, Observation::Pumped { .. }))
            .map(|(at, _)| *at)
            .fold(0.0, f64::max);
        let Some(brim) = event.reaches(95.0, from) else {
            return;
        };
        if brim - from <= event.lead_h {
            return;
        }
        self.could += 1;
        let mut now = from;
        while now < event.hours {
            if forecast(event, now).p10.is_some_and(|p10| p10 - event.lead_h <= now) {
                let comes = now + event.lead_h;
                self.trucks += 1;
                self.in_time += usize::from(comes < brim);
                self.fill += event.level_at(comes).min(100.0);
                return;
            }
            now += 0.25;
        }
    }
}

impl std::fmt::Display for Figures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let per = |x: f64| x / self.events.max(1) as f64;
        let pct = |x: f64| 100.0 * x;
        writeln!(f, "events {}, both ends given {}", self.events, self.banded)?;
        writeln!(
            f,
            "inside p10..p90 {:.1} %   before p10 {:.1} %   after p90 {:.1} %",
            pct(self.share(self.inside)),
            pct(self.share(self.before_p10)),
            pct(self.share(self.after_p90)),
        )?;
        writeln!(
            f,
            "pinball loss {:.3} h   straight line {:.3} h (ratio {:.3})   guests only {:.3} h (ratio {:.3})",
            per(self.loss),
            per(self.line_loss),
            self.loss / self.line_loss,
            per(self.prior_loss),
            self.loss / self.prior_loss,
        )?;
        write!(
            f,
            "truck at p10 less lead: before 95 % in {} of {} ({:.1} %), mean fill then {:.1} %",
            self.in_time,
            self.could,
            pct(self.in_time as f64 / self.could.max(1) as f64),
            self.fill / self.trucks.max(1) as f64,
        )
    }
}

pub fn forecast(event: &Event, now: f64) -> Forecast {
    let open = [(0.0, event.hours)];
    let guests: Vec<_> = event
        .guests
        .iter()
        .copied()
        .filter(|(at, _)| *at <= now)
        .collect();
    let usage = event.usage(&open, &guests);
    waste(&event.tank, &usage, &event.known(now), now, 85.0)
}

/// A straight line through the last two reads, taken at the middle of what they stand for.
fn line(event: &Event, now: f64) -> f64 {
    use hosebib::fleet::GaugeKind;
    let emptied = event.emptied(now).unwrap_or(f64::MIN);
    let mut reads: Vec<(f64, f64)> = event
        .known(now)
        .iter()
        .filter_map(|seen| match *seen {
            Observation::Gauge { at_h, pct } if at_h > emptied => {
                let middle = match event.tank.gauge.kind {
                    GaugeKind::Sight => pct,
                    GaugeKind::Lamps => pct + event.tank.gauge.step_pct / 2.0,
                };
                Some((at_h.max(0.0), volume_pct(event.tank.shape, middle)))
            }
            _ => None,
        })
        .collect();
    reads.sort_by(|a, b| a.0.total_cmp(&b.0));
    if reads.len() < 2 {
        reads.insert(0, (emptied.max(0.0), 0.0));
    }
    let [.., (t1, y1), (t2, y2)] = reads[..] else {
        return f64::MAX;
    };
    if y2 >= 85.0 {
        return now;
    }
    if y2 <= y1 || t2 <= t1 {
        return f64::MAX;
    }
    t2 + (85.0 - y2) * (t2 - t1) / (y2 - y1)
}

/// What the guest count alone says, from the doors' opening or the last pump-out (handbook 7.1: coefficient of variation 0.4).
fn prior(event: &Event, now: f64) -> [f64; 3] {
    let from = event.emptied(now).unwrap_or(0.0);
    let spread = (1.0f64 + 0.4 * 0.4).ln().sqrt();
    [1.2816, 0.0, -1.2816].map(|z: f64| from + 85.0 / (event.prior_pct_per_h * (z * spread).exp()))
}

fn pinball(at: [f64; 3], truth: f64) -> f64 {
    at.iter()
        .zip([0.1, 0.5, 0.9])
        .map(|(at, q)| (q * (truth - at)).max((q - 1.0) * (truth - at)))
        .sum::<f64>()
        / 3.0
}
