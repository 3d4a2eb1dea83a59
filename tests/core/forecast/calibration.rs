//! How right a forecast is, over many simulated events, judged in four ways, each told apart.

use hosebib::fleet::GaugeKind;
use hosebib::physics::forecast::{Observation, waste};

use super::events::{Event, volume_pct};

/// A forecast as it is judged: p10, p50 and p90 of the time to 85 %, h.
pub(crate) type Band = [Option<f64>; 3];

/// When forecasts are held against the truth. None knows the future, save that the limit is not reached yet and that nobody
/// pumps before it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Protocol {
    /// At every reading that comes in with the doors open.
    EveryReading,
    /// Once an event: at the first reading of half or more, when a truck wants thinking of.
    HalfFull,
    /// Once an event, as the bot itself would call: each reading makes the forecast anew, and the truck is called at the
    /// first moment that lies within its lead of p10, from the doors' opening or the last pump-out on.
    AsCalled,
    /// The same, where the bot asks for a reading before it calls: once an event, some time before the call, where the
    /// band is wide and nobody has read the tank just then. Some answer, some do not, all late; the gauges err as ever.
    AsAsked,
}

impl Protocol {
    pub(crate) const ALL: [Protocol; 4] = [
        Protocol::EveryReading,
        Protocol::HalfFull,
        Protocol::AsCalled,
        Protocol::AsAsked,
    ];

    fn calls(self) -> bool {
        matches!(self, Protocol::AsCalled | Protocol::AsAsked)
    }

    pub(crate) fn title(self) -> &'static str {
        match self {
            Protocol::EveryReading => "at every reading with the doors open",
            Protocol::HalfFull => "once an event, at its first reading of half or more",
            Protocol::AsCalled => {
                "once an event, when the truck is called: the first moment within its lead of the latest p10"
            }
            Protocol::AsAsked => {
                "the same, where the bot asks for a reading some time before the call"
            }
        }
    }
}

/// When the bot asks for a reading: so long before the truck is called at the latest, where the last is older than this,
/// and where the band's lower half is at least so wide, h.
const AHEAD_H: f64 = 0.75;
const FRESH_H: f64 = 0.5;
const WIDE_H: f64 = 0.5;
/// How often it asks in one event.
const MOST_ASKED: usize = 1;

/// What a run over events came to.
#[derive(Debug, Default)]
pub(crate) struct Figures {
    pub(crate) events: usize,
    /// Forecasts with both ends, and where the truth lay.
    pub(crate) banded: usize,
    pub(crate) inside: usize,
    pub(crate) before_p10: usize,
    pub(crate) after_p90: usize,
    /// Losses where both ends are given; a limit that is not reached counts as reached at the job's end.
    pub(crate) losses: Losses,
    /// The truck that comes at p10, or after its lead where that is later.
    pub(crate) trucks: Trucks,
    /// Requests for a reading, and how many were answered.
    pub(crate) asked: usize,
    pub(crate) answered: usize,
}

/// Sums of pinball losses, h: of the forecast, of a straight line through the last two reads, and of the guest count alone.
/// None of them looks past the job's end.
#[derive(Debug, Default)]
pub(crate) struct Losses {
    pub(crate) forecast: f64,
    pub(crate) line: f64,
    pub(crate) guests: f64,
}

/// How trucks fared.
#[derive(Debug, Default)]
pub(crate) struct Trucks {
    pub(crate) could: usize,
    pub(crate) came: usize,
    pub(crate) in_time: usize,
    pub(crate) fill: f64,
}

impl Figures {
    /// Simulates events from a seed and judges what `forecast` says of each, given the event and the time.
    pub(crate) fn measure(
        seed: u64,
        events: usize,
        protocol: Protocol,
        forecast: &mut dyn FnMut(&Event, f64) -> Band,
    ) -> Figures {
        let mut rng = fastrand::Rng::with_seed(seed);
        let mut figures = Figures::default();
        for number in 0..events {
            let mut event = Event::simulate(&mut rng);
            if protocol == Protocol::AsAsked {
                // chance of its own: the events stay those of the other protocols
                let mut rng = fastrand::Rng::with_seed(seed ^ (number as u64 + 1) << 20);
                figures.ask(&mut event, &mut rng, forecast);
            }
            let moments = match protocol {
                Protocol::EveryReading => readings(&event, 0.0),
                Protocol::HalfFull => readings(&event, 49.0).into_iter().take(1).collect(),
                Protocol::AsCalled | Protocol::AsAsked => {
                    called(&event, forecast).into_iter().collect()
                }
            };
            figures.events += usize::from(!moments.is_empty());
            for now in moments {
                let band = forecast(&event, now);
                figures.judge(&event, now, band, protocol);
            }
            if protocol.calls() {
                figures.missed(&event, forecast);
            }
        }
        figures
    }

    /// Returns a count as a share of the forecasts with both ends.
    pub(crate) fn share(&self, count: usize) -> f64 {
        count as f64 / self.banded.max(1) as f64
    }

    fn judge(&mut self, event: &Event, now: f64, band: Band, protocol: Protocol) {
        let truth = event.reaches(85.0, now);
        let end = event.setting.hours;
        if let [Some(p10), _, Some(p90)] = band {
            self.banded += 1;
            match truth {
                Some(truth) if truth < p10 => self.before_p10 += 1,
                Some(truth) if truth <= p90 => self.inside += 1,
                // A limit that is not reached at all is later than any p90.
                _ => self.after_p90 += 1,
            }
            let truth = truth.unwrap_or(end);
            let at_most = |at: f64| at.clamp(now, end);
            self.losses.forecast += pinball(band.map(|at| at.unwrap_or(end)), truth);
            self.losses.line += pinball([at_most(line(event, now)); 3], truth);
            self.losses.guests += pinball(guests_alone(event, now).map(at_most), truth);
        }
        let from = match protocol {
            protocol if protocol.calls() => since(event),
            _ => now,
        };
        let lead = event.setting.lead_h;
        if let Some(brim) = event.reaches(95.0, from)
            && brim > from + lead
        {
            self.trucks.could += 1;
            if let Some(p10) = band[0] {
                let comes = p10.max(now + lead);
                self.trucks.came += 1;
                self.trucks.in_time += usize::from(comes < brim);
                self.trucks.fill += event.level_at(comes).min(100.0);
            }
        }
    }

    /// Goes through an event as the bot does and asks for a reading where it is worth one; the answers join what is told.
    fn ask(
        &mut self,
        event: &mut Event,
        rng: &mut fastrand::Rng,
        forecast: &mut dyn FnMut(&Event, f64) -> Band,
    ) {
        let mut now = since(event);
        let mut left = MOST_ASKED;
        while left > 0 && now < event.setting.hours {
            let words = readings(event, 0.0);
            let next = words.iter().copied().find(|came| *came > now);
            let next = next.unwrap_or(event.setting.hours);
            if let [Some(p10), Some(p50), _] = forecast(event, now) {
                let call = p10 - event.setting.lead_h;
                let seen = words.iter().copied().rfind(|came| *came <= now);
                let last = seen.map_or(now, |seen| seen + FRESH_H);
                let ask = (call - AHEAD_H).max(last).max(now);
                if p50 - p10 >= WIDE_H && ask < call && ask < next {
                    left -= 1;
                    self.asked += 1;
                    self.answered += usize::from(event.ask(rng, ask));
                    now = ask;
                    continue;
                }
                if call < next {
                    return;
                }
            }
            now = next;
        }
    }

    /// Counts a truck that was never called though the tank ran full.
    fn missed(&mut self, event: &Event, forecast: &mut dyn FnMut(&Event, f64) -> Band) {
        let could = event
            .reaches(95.0, since(event))
            .is_some_and(|brim| brim > since(event) + event.setting.lead_h);
        if could && called(event, forecast).is_none() {
            self.trucks.could += 1;
        }
    }
}

impl std::fmt::Display for Figures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let pct = |count| 100.0 * self.share(count);
        let Losses {
            forecast,
            line,
            guests,
        } = self.losses;
        let trucks = &self.trucks;
        writeln!(
            f,
            "  band: inside {:.1} %, before p10 {:.1} %, after p90 {:.1} % ({} forecasts with both ends, {} events)",
            pct(self.inside),
            pct(self.before_p10),
            pct(self.after_p90),
            self.banded,
            self.events,
        )?;
        writeln!(
            f,
            "  loss: {:.3} h; {:.2} of a straight line, {:.2} of the guests alone",
            forecast / self.banded.max(1) as f64,
            forecast / line,
            forecast / guests,
        )?;
        if self.asked > 0 {
            writeln!(
                f,
                "  asked for {} readings, {} answered",
                self.asked, self.answered
            )?;
        }
        write!(
            f,
            "  truck: before 95 % in {} of {} ({:.1} %), tank {:.1} % full when it comes",
            trucks.in_time,
            trucks.could,
            100.0 * trucks.in_time as f64 / trucks.could.max(1) as f64,
            trucks.fill / trucks.came.max(1) as f64,
        )
    }
}

/// What the bot's own forecast says of an event at a time.
pub(crate) fn ours(event: &Event, now: f64) -> Band {
    let open = [(0.0, event.setting.hours)];
    let guests: Vec<_> = event
        .guests
        .iter()
        .copied()
        .filter(|(at, _)| *at <= now)
        .collect();
    let usage = event.usage(&open, &guests);
    let forecast = waste(&event.setting.tank, &usage, &event.known(now), now, 85.0);
    [forecast.p10, forecast.p50, forecast.p90]
}

/// From when on nobody pumps any more.
fn since(event: &Event) -> f64 {
    event.emptied(f64::MAX).unwrap_or(0.0).max(0.0)
}

/// When gauge readings of at least `pct` come in with the doors open, after the last pump-out and before the limit.
fn readings(event: &Event, pct: f64) -> Vec<f64> {
    let limit = event.reaches(85.0, since(event));
    let limit = limit.unwrap_or(event.setting.hours);
    let counts = |seen: &Observation| match seen {
        Observation::Gauge { pct: shown, .. } => *shown >= pct,
        _ => false,
    };
    let mut came: Vec<f64> = event
        .told
        .iter()
        .filter(|(came, seen)| *came > since(event) && *came < limit && counts(seen))
        .map(|(came, _)| *came)
        .collect();
    came.sort_by(f64::total_cmp);
    came
}

/// When the forecast is made by which the truck is called: the first whose p10, less the lead, comes before the next word.
fn called(event: &Event, forecast: &mut dyn FnMut(&Event, f64) -> Band) -> Option<f64> {
    let mut words = vec![since(event)];
    words.extend(readings(event, 0.0));
    words.push(event.setting.hours);
    words.windows(2).find_map(|pair| {
        let p10 = forecast(event, pair[0])[0]?;
        (p10 - event.setting.lead_h < pair[1]).then_some(pair[0])
    })
}

/// A straight line through the last two reads, taken at the middle of what they stand for.
fn line(event: &Event, now: f64) -> f64 {
    let tank = &event.setting.tank;
    let emptied = event.emptied(now).unwrap_or(f64::MIN);
    let mut reads: Vec<(f64, f64)> = event
        .known(now)
        .iter()
        .filter_map(|seen| match *seen {
            Observation::Gauge { at_h, pct } if at_h > emptied => {
                let middle = match tank.gauge.kind {
                    GaugeKind::Sight => pct,
                    GaugeKind::Lamps => pct + tank.gauge.step_pct / 2.0,
                };
                Some((at_h.max(0.0), volume_pct(tank.shape, middle)))
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
fn guests_alone(event: &Event, now: f64) -> [f64; 3] {
    let from = event.emptied(now).unwrap_or(0.0);
    let spread = (1.0f64 + 0.4 * 0.4).ln().sqrt();
    let rate = event.setting.prior_pct_per_h;
    [1.2816, 0.0, -1.2816].map(|z: f64| from + 85.0 / (rate * (z * spread).exp()))
}

fn pinball(at: [f64; 3], truth: f64) -> f64 {
    at.iter()
        .zip([0.1, 0.5, 0.9])
        .map(|(at, q)| (q * (truth - at)).max((q - 1.0) * (truth - at)))
        .sum::<f64>()
        / 3.0
}
