//! How fast the bot may send: about one message a second a chat, 20 a minute a group, 30 a second overall (Bot API FAQ,
//! "My bot is hitting limits").

use std::time::Duration;

use tokio::time::Instant;

/// How fast to send.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Of one chat.
    pub chat: Rate,
    /// Of one group, beside that of a chat.
    pub group: Rate,
    /// Of all chats together.
    pub overall: Rate,
}

/// So many at once, and then so many a second.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// How many may go at once after a quiet time.
    pub burst: f64,
    /// How many a second after that.
    pub per_second: f64,
}

impl Default for Limits {
    /// The network's limits; each burst and what is added within the network's own span stay below them together.
    fn default() -> Self {
        Limits {
            chat: Rate {
                burst: 3.0,
                per_second: 1.0,
            },
            group: Rate {
                burst: 5.0,
                per_second: 15.0 / 60.0,
            },
            overall: Rate {
                burst: 5.0,
                per_second: 25.0,
            },
        }
    }
}

/// A supply of permissions to send that fills up with time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Supply {
    rate: Rate,
    left: f64,
    at: Instant,
}

impl Supply {
    pub(super) fn new(rate: Rate, now: Instant) -> Self {
        Supply {
            rate,
            left: rate.burst,
            at: now,
        }
    }

    /// Returns when the next message may go.
    pub(super) fn next(&self, now: Instant) -> Instant {
        let left = self.at(now);
        if left >= 1.0 {
            now
        } else {
            now + Duration::from_secs_f64((1.0 - left) / self.rate.per_second)
        }
    }

    /// Takes one permission, also where none is left: a danger does not wait, and what follows waits longer.
    pub(super) fn take(&mut self, now: Instant) {
        self.left = (self.at(now) - 1.0).max(-self.rate.burst);
        self.at = now;
    }

    fn at(&self, now: Instant) -> f64 {
        // a hair more than was waited for, so that rounding never asks for one more wait of no time
        let filled =
            now.saturating_duration_since(self.at).as_secs_f64() * self.rate.per_second + 1e-6;
        (self.left + filled).min(self.rate.burst)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Sends as fast as a supply lets, and returns when each went, in seconds from the start.
    fn times(rate: Rate, count: usize) -> Vec<f64> {
        let start = Instant::now();
        let mut supply = Supply::new(rate, start);
        let mut now = start;
        let mut times = Vec::new();
        for _ in 0..count {
            now = supply.next(now);
            supply.take(now);
            times.push((now - start).as_secs_f64());
        }
        times
    }

    fn most_within(times: &[f64], span: f64) -> usize {
        times
            .iter()
            .map(|start| {
                times
                    .iter()
                    .filter(|at| **at >= *start && **at < start + span)
                    .count()
            })
            .max()
            .unwrap_or(0)
    }

    #[test]
    fn no_span_holds_more_than_the_network_allows() {
        let limits = Limits::default();
        assert!(most_within(&times(limits.overall, 500), 1.0) <= 30);
        assert!(most_within(&times(limits.group, 100), 60.0) <= 20);
        let chat = times(limits.chat, 60);
        assert!(chat[59] >= 56.0, "about one a second: {}", chat[59]);
    }

    #[test]
    fn what_goes_without_waiting_is_paid_for_later() {
        let now = Instant::now();
        let mut supply = Supply::new(
            Rate {
                burst: 1.0,
                per_second: 1.0,
            },
            now,
        );
        supply.take(now);
        supply.take(now);
        assert!(supply.next(now) - now > Duration::from_millis(1900));
    }
}
