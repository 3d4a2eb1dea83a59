//! How right a forecast is, over many simulated events.

use hosebib::physics::forecast::{Forecast, Observation, waste};

use super::events::{Event, volume_pct};

/// What a run over events came to.
#[derive(Debug, Default)]
pub(crate) struct Figures {
    pub(crate) events: usize,
    /// Forecasts with both ends, and where the truth lay.
    pub(crate) banded: usize,
    pub(crate) inside: usize,
    pub(crate) before_p10: usize,
    pub(crate) after_p90: usize,
    /// Losses over the events that reach the limit.
    pub(crate) reaching: Losses,
    /// Losses where both ends are given; a limit that is not reached counts as reached at the job's end.
    pub(crate) given: Losses,
    /// The truck called by the one forecast, and by whichever forecast first asks for it.
    pub(crate) once: Trucks,
    pub(crate) rolling: Trucks,
}

/// Sums of pinball losses, h: of the forecast, of a straight line through the last two reads, and of the guest count alone.
/// None of them looks past the job's end.
#[derive(Debug, Default)]
pub(crate) struct Losses {
    pub(crate) count: usize,
    pub(crate) ours: f64,
    pub(crate) line: f64,
    pub(crate) guests: f64,
}

impl Losses {
    fn add(&mut self, event: &Event, now: f64, forecast: &Forecast, truth: f64) {
        let end = event.hours;
        let ours = [forecast.p10, forecast.p50, forecast.p90].map(|p| p.unwrap_or(end));
        self.count += 1;
        self.ours += pinball(ours, truth);
        self.line += pinball([line(event, now).clamp(now, end); 3], truth);
        self.guests += pinball(prior(event, now).map(|at| at.clamp(now, end)), truth);
    }

    pub(crate) fn to_line(&self) -> f64 {
        self.ours / self.line
    }

    pub(crate) fn to_guests(&self) -> f64 {
        self.ours / self.guests
    }
}

impl std::fmt::Display for Losses {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let per = |x: f64| x / self.count.max(1) as f64;
        write!(
            f,
            "{:.3} h; straight line {:.3} h, ratio {:.3}; guests only {:.3} h, ratio {:.3} ({} forecasts)",
            per(self.ours),
            per(self.line),
            self.to_line(),
            per(self.guests),
            self.to_guests(),
            self.count,
        )
    }
}

/// How trucks fared.
#[derive(Debug, Default)]
pub(crate) struct Trucks {
    pub(crate) could: usize,
    pub(crate) came: usize,
    pub(crate) in_time: usize,
    pub(crate) fill: f64,
}

/// When forecasts are held against the truth. Neither knows the future, save that the limit is not reached yet and that
/// nobody pumps before it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Moment {
    /// At every reading that comes in with the doors open.
    EveryReading,
    /// At the first reading of half or more, when a truck wants thinking of.
    FirstHalf,
}

impl Figures {
    /// Simulates events from a seed and forecasts each at its moments; `rolling` also tries the truck at every quarter of
    /// an hour.
    pub(crate) fn measure(seed: u64, events: usize, moment: Moment, rolling: bool) -> Figures {
        let mut rng = fastrand::Rng::with_seed(seed);
        let mut figures = Figures::default();
        while figures.events < events {
            let event = Event::simulate(&mut rng);
            let moments = moments(&event, moment);
            if moments.is_empty() {
                continue;
            }
            figures.events += 1;
            for now in moments {
                figures.forecast(&event, now);
            }
            if rolling {
                figures.roll(&event);
            }
        }
        figures
    }

    pub(crate) fn share(&self, count: usize) -> f64 {
        count as f64 / self.banded.max(1) as f64
    }

    /// Holds one forecast against the truth.
    fn forecast(&mut self, event: &Event, now: f64) {
        let truth = event.reaches(85.0, now);
        let forecast = forecast(event, now);
        if let (Some(p10), Some(p90)) = (forecast.p10, forecast.p90) {
            self.banded += 1;
            match truth {
                Some(truth) if truth < p10 => self.before_p10 += 1,
                Some(truth) if truth <= p90 => self.inside += 1,
                // A limit that is not reached at all is later than any p90.
                _ => self.after_p90 += 1,
            }
            self.given
                .add(event, now, &forecast, truth.unwrap_or(event.hours));
        }
        if let Some(truth) = truth {
            self.reaching.add(event, now, &forecast, truth);
        }
        if let Some(brim) = event.reaches(95.0, now)
            && brim > now + event.lead_h
        {
            let comes = forecast.p10.map(|p10| p10.max(now + event.lead_h));
            self.once.count(event, comes, brim);
        }
    }

    /// Calls the truck as soon as p10 is no further off than the truck needs to come.
    fn roll(&mut self, event: &Event) {
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
        let mut now = from;
        let mut comes = None;
        while now < event.hours && comes.is_none() {
            if forecast(event, now)
                .p10
                .is_some_and(|p10| p10 - event.lead_h <= now)
            {
                comes = Some(now + event.lead_h);
            }
            now += 0.25;
        }
        self.rolling.count(event, comes, brim);
    }
}

impl Trucks {
    fn count(&mut self, event: &Event, comes: Option<f64>, brim: f64) {
        self.could += 1;
        if let Some(comes) = comes {
            self.came += 1;
            self.in_time += usize::from(comes < brim);
            self.fill += event.level_at(comes).min(100.0);
        }
    }
}

impl std::fmt::Display for Trucks {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "before 95 % in {} of {} ({:.1} %), mean fill then {:.1} %",
            self.in_time,
            self.could,
            100.0 * self.in_time as f64 / self.could.max(1) as f64,
            self.fill / self.came.max(1) as f64,
        )
    }
}

impl std::fmt::Display for Figures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let pct = |x: f64| 100.0 * x;
        writeln!(
            f,
            "events {}, forecasts with both ends {}",
            self.events, self.banded
        )?;
        writeln!(
            f,
            "inside p10..p90 {:.1} %   before p10 {:.1} %   after p90 {:.1} %",
            pct(self.share(self.inside)),
            pct(self.share(self.before_p10)),
            pct(self.share(self.after_p90)),
        )?;
        writeln!(f, "pinball loss where both ends are given {}", self.given)?;
        writeln!(
            f,
            "pinball loss where the limit is reached {}",
            self.reaching
        )?;
        write!(f, "truck at p10 less lead: {}", self.once)?;
        if self.rolling.could > 0 {
            write!(
                f,
                "\n  called as soon as any forecast asks: {}",
                self.rolling
            )?;
        }
        Ok(())
    }
}

fn moments(event: &Event, moment: Moment) -> Vec<f64> {
    let pumped = event.emptied(f64::MAX).unwrap_or(f64::MIN);
    let limit = event.reaches(85.0, pumped.max(0.0)).unwrap_or(event.hours);
    let mut came: Vec<f64> = event
        .told
        .iter()
        .filter(|(came, seen)| {
            *came > 0.0
                && *came < limit
                && *came > pumped
                && match seen {
                    Observation::Gauge { pct, .. } => {
                        moment == Moment::EveryReading || *pct >= 49.0
                    }
                    _ => false,
                }
        })
        .map(|(came, _)| *came)
        .collect();
    came.sort_by(f64::total_cmp);
    if moment == Moment::FirstHalf {
        came.truncate(1);
    }
    came
}

pub(crate) fn forecast(event: &Event, now: f64) -> Forecast {
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

/// What the guest count alone says, from the doors' opening or the last pump-out (coefficient of variation 0.4).
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
