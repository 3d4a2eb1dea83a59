//! When and how fast people use a unit, as far as the job tells.

/// How far on either side of now anything counts, h.
const REACH_H: f64 = 20_000.0;
/// Use gathers pace for this long after the doors open, h, from [`OPENING`] of its full pace. Common practice, no source.
const GATHER_H: f64 = 1.25;
const OPENING: f64 = 0.2;
/// Use thins out for this long before the doors close, h, to [`CLOSING`] of its full pace. Common practice, no source.
const THIN_H: f64 = 1.0;
const CLOSING: f64 = 0.3;
/// Use rises through an event of at most [`EVENING_H`] hours, from this much under its mean to as much over: people drink.
/// Common practice, no source.
const RISE: f64 = 0.2;
const EVENING_H: f64 = 16.0;

/// What the job promises of a tank's use.
#[derive(Debug, Clone, Copy)]
pub struct Usage<'a> {
    /// The mean rate while open, % of the tank an hour, at the job's guest count (mass balance:
    /// 100 x guests x uses per guest-hour x alcohol factor x gallons per use / tank).
    pub prior_pct_per_h: f64,
    /// How sure that is: the standard deviation of its logarithm. [`super::PRIOR_SPREAD`] where nothing was learned.
    pub prior_spread: f64,
    /// What one use brings or takes, gal.
    pub gal_per_use: f64,
    /// The open intervals, h, in order, from before the first observation to the job's end. Nobody uses a unit outside.
    pub open: &'a [(f64, f64)],
    /// Guest counts as they came: when, h, and how many. The first is the job's own.
    pub guests: &'a [(f64, f64)],
}

/// Returns what the job promises to bring or take between two instants, % of the tank.
pub fn promised_pct(usage: &Usage<'_>, from_h: f64, to_h: f64) -> f64 {
    if !(from_h.is_finite() && to_h.is_finite() && usage.prior_pct_per_h.is_finite()) {
        return 0.0;
    }
    Calendar::new(usage, from_h).worth(from_h, to_h) * usage.prior_pct_per_h.max(0.0)
}

/// Open hours, made sound: in order, apart, within reach, and worth a mean of 1 each hour.
pub(super) struct Calendar {
    open: Vec<Open>,
    crowd: Vec<(f64, f64)>,
}

struct Open {
    from: f64,
    to: f64,
    gather: f64,
    thin: f64,
    full: f64,
    rise: f64,
}

impl Calendar {
    /// Takes the open hours and guest counts as seen from `now`.
    pub(super) fn new(usage: &Usage<'_>, now: f64) -> Self {
        let mut open: Vec<Open> = Vec::with_capacity(usage.open.len());
        let mut until = now - REACH_H;
        for &(from, to) in usage.open {
            let from = from.max(until);
            let to = to.min(now + REACH_H);
            if to > from {
                open.push(Open::new(from, to));
                until = to;
            }
        }
        Calendar {
            crowd: crowd(usage.guests, &open),
            open,
        }
    }

    /// Returns where the doors close for good, if they are ever open.
    pub(super) fn end(&self) -> Option<f64> {
        self.open.last().map(|open| open.to)
    }

    /// Returns where the doors first open, if they ever do.
    pub(super) fn start(&self) -> Option<f64> {
        self.open.first().map(|open| open.from)
    }

    /// Returns the open hours between two instants.
    pub(super) fn open_hours(&self, from: f64, to: f64) -> f64 {
        self.open
            .iter()
            .map(|open| (open.to.min(to) - open.from.max(from)).max(0.0))
            .sum()
    }

    /// Returns the hours of mean use at the job's guest count that are worth the time between two instants.
    pub(super) fn worth(&self, from: f64, to: f64) -> f64 {
        let mut sum = 0.0;
        for (i, &(since, crowd)) in self.crowd.iter().enumerate() {
            let from = if i == 0 { from } else { from.max(since) };
            let to = self.crowd.get(i + 1).map_or(to, |next| to.min(next.0));
            if to > from {
                sum += crowd
                    * self
                        .open
                        .iter()
                        .map(|open| open.worth(from, to))
                        .sum::<f64>();
            }
        }
        sum
    }

    /// Returns the crowd at an instant, as a multiple of the job's guest count.
    pub(super) fn crowd_at(&self, at: f64) -> f64 {
        self.crowd
            .iter()
            .take_while(|(since, _)| *since <= at)
            .last()
            .or(self.crowd.first())
            .map_or(1.0, |(_, crowd)| *crowd)
    }

    /// Returns the next instant after `at` where the doors open or close, with whether they are open until then.
    pub(super) fn next_turn(&self, at: f64) -> Option<(f64, bool)> {
        self.open.iter().find_map(|open| {
            if at < open.from {
                Some((open.from, false))
            } else if at < open.to {
                Some((open.to, true))
            } else {
                None
            }
        })
    }
}

impl Open {
    fn new(from: f64, to: f64) -> Self {
        let length = to - from;
        let gather = GATHER_H.min(length / 4.0);
        let thin = THIN_H.min(length / 5.0);
        let lost = gather * (1.0 - OPENING) / 2.0 + thin * (1.0 - CLOSING) / 2.0;
        Open {
            from,
            to,
            gather,
            thin,
            full: length / (length - lost),
            rise: if length <= EVENING_H { RISE } else { 0.0 },
        }
    }

    fn worth(&self, from: f64, to: f64) -> f64 {
        if to <= self.from || from >= self.to {
            return 0.0;
        }
        let (from, to) = (from.max(self.from), to.min(self.to));
        let middle = ((from + to) / 2.0 - self.from) / (self.to - self.from);
        self.full * (self.until(to) - self.until(from)) * (1.0 + self.rise * (2.0 * middle - 1.0))
    }

    /// Use from the opening to `at`, in hours of the full pace.
    fn until(&self, at: f64) -> f64 {
        let gathering = (at - self.from).min(self.gather);
        let thinning = (at - (self.to - self.thin)).max(0.0);
        (at - self.from)
            - (1.0 - OPENING) * gathering * (1.0 - gathering / (2.0 * self.gather))
            - (1.0 - CLOSING) * thinning * thinning / (2.0 * self.thin)
    }
}

/// Guest counts as multiples of the job's. A count holds from half way between it and the one before; the job's own figure
/// stands for a count at the doors' first opening.
fn crowd(guests: &[(f64, f64)], open: &[Open]) -> Vec<(f64, f64)> {
    let Some((&(_, job), counts)) = guests.split_first() else {
        return vec![(f64::MIN, 1.0)];
    };
    // a count that is no number tells nothing
    if job.is_nan() || job <= 0.0 {
        return vec![(f64::MIN, 1.0)];
    }
    let mut crowd = vec![(f64::MIN, 1.0)];
    let mut before = open.first().map_or(f64::MIN, |open| open.from);
    for &(at, count) in counts
        .iter()
        .filter(|(at, count)| at.is_finite() && count.is_finite())
    {
        let since = if at <= before {
            at
        } else {
            before / 2.0 + at / 2.0
        };
        if crowd.last().is_some_and(|last| since >= last.0) {
            crowd.push((since, (count / job).clamp(0.0, 20.0)));
            before = at;
        }
    }
    crowd
}

#[cfg(test)]
mod tests {
    use super::*;

    fn usage<'a>(open: &'a [(f64, f64)], guests: &'a [(f64, f64)]) -> Usage<'a> {
        Usage {
            prior_pct_per_h: 10.0,
            prior_spread: 0.4,
            gal_per_use: 1.1,
            open,
            guests,
        }
    }

    #[test]
    fn an_open_interval_is_worth_its_length() {
        let calendar = Calendar::new(&usage(&[(2.0, 10.0), (26.0, 26.5)], &[]), 0.0);
        assert!((calendar.worth(0.0, 12.0) - 8.0).abs() < 1e-9);
        assert!((calendar.worth(20.0, 30.0) - 0.5).abs() < 1e-9);
        assert_eq!(calendar.worth(11.0, 20.0), 0.0);
        assert!(calendar.worth(2.0, 3.0) < calendar.worth(5.0, 6.0));
    }

    #[test]
    fn a_count_holds_from_half_way_since_the_one_before() {
        let calendar = Calendar::new(&usage(&[(0.0, 10.0)], &[(0.0, 100.0), (4.0, 200.0)]), 4.0);
        assert_eq!(calendar.crowd_at(1.9), 1.0);
        assert_eq!(calendar.crowd_at(2.1), 2.0);
        let plain = Calendar::new(&usage(&[(0.0, 10.0)], &[]), 4.0);
        assert!((calendar.worth(5.0, 6.0) - 2.0 * plain.worth(5.0, 6.0)).abs() < 1e-9);
    }
}
