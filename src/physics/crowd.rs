//! People: how many fixtures rules ask for, and how long people wait.

use uom::si::f64::Time;

use super::units::{in_seconds, seconds, within};

/// Whether alcohol is served, which the FEMA table splits by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Alcohol {
    /// None.
    No,
    /// Served.
    Yes,
}

/// Fixture counts for a crowd, half men, half women.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fixtures {
    /// Toilets for men.
    pub male_toilets: u32,
    /// Urinals.
    pub urinals: u32,
    /// Sinks for men.
    pub male_sinks: u32,
    /// Toilets for women.
    pub female_toilets: u32,
    /// Sinks for women.
    pub female_sinks: u32,
}

/// Crowds under so many, then counts without and with alcohol: men's toilets, urinals, sinks, women's toilets, sinks.
///
/// Source: FEMA Special Events Contingency Planning job aids (IS-15, 2005), counts seen in a council's reproduction.
const FEMA: [(f64, [u32; 5], [u32; 5]); 5] = [
    (500.0, [1, 2, 2, 6, 2], [3, 8, 2, 13, 2]),
    (1000.0, [2, 4, 4, 9, 4], [5, 10, 4, 16, 4]),
    (2000.0, [4, 8, 6, 12, 6], [9, 15, 7, 18, 7]),
    (3000.0, [6, 15, 10, 18, 10], [10, 20, 14, 22, 14]),
    (5000.0, [8, 25, 17, 30, 17], [12, 30, 20, 40, 20]),
];

/// Returns the fixtures for a crowd and an event's hours, rounded up after the duration factor; none from 5,000 people,
/// where the table ends.
///
/// Source: FEMA job aids; factors 1.00 over 8 h, 0.80 from 6, 0.75 from 4, 0.70 under (its table of durations, seen in a
/// reproduction). Meant for crowds of
/// hundreds: below about 250 use [`mean_wait`] with twice the mean arrivals.
pub fn fema_fixtures(patrons: f64, alcohol: Alcohol, event: Time) -> Option<Fixtures> {
    let (_, without, with) = FEMA.iter().find(|(limit, ..)| patrons < *limit)?;
    let row = match alcohol {
        Alcohol::No => without,
        Alcohol::Yes => with,
    };
    let pct = match in_seconds(event) / 3600.0 {
        h if h > 8.0 => 100,
        h if h >= 6.0 => 80,
        h if h >= 4.0 => 75,
        _ => 70,
    };
    let [
        male_toilets,
        urinals,
        male_sinks,
        female_toilets,
        female_sinks,
    ] = row.map(|count| (count * pct).div_ceil(100));
    Some(Fixtures {
        male_toilets,
        urinals,
        male_sinks,
        female_toilets,
        female_sinks,
    })
}

/// Returns toilet seats and urinals for workers as the rule prints them: to 20 one seat, then one of each for 40, from 200
/// one of each for 50, rounded up.
///
/// Source: 29 CFR 1926.51(c)(1) Table D-1. As printed it falls from 5 and 5 at 199 to 4 and 4 at 200.
pub fn osha_fixtures(employees: u32) -> (u32, u32) {
    match employees {
        0 => (0, 0),
        1..=20 => (1, 0),
        21..=199 => (employees.div_ceil(40), employees.div_ceil(40)),
        _ => (employees.div_ceil(50), employees.div_ceil(50)),
    }
}

/// Returns how many of a cluster of single-user portable units must be accessible: 5 %, rounded up, not fewer than one.
///
/// Source: 2010 ADA Standards 213.2 exception 3 and 104.2.
pub fn ada_accessible(cluster: u32) -> u32 {
    cluster.div_ceil(20)
}

/// A group of stalls with one line before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Queue {
    /// Stalls in service, up to 10,000.
    pub servers: u32,
    /// People arriving an hour.
    pub arrivals_h: f64,
    /// Mean time one takes.
    pub service: Time,
}

impl Queue {
    /// Offered load λ·s: the mean number of stalls that would be busy.
    fn offered(&self) -> f64 {
        within(self.arrivals_h, 0.0, 1e9) / 3600.0 * in_seconds(self.service).max(0.0)
    }

    fn stalls(&self) -> u32 {
        self.servers.min(10_000)
    }

    /// Returns the share of the time a stall is busy, ρ = λ·s/c. From 1 the line grows without end; with no stall and
    /// anyone to come it is infinite.
    pub fn busy_share(&self) -> f64 {
        match (self.offered(), self.stalls()) {
            (offered, 0) if offered > 0.0 => f64::INFINITY,
            (_, 0) => 0.0,
            (offered, stalls) => offered / f64::from(stalls),
        }
    }

    /// Returns the chance that someone must wait (Erlang C, 1917); 1 from a busy share of 1.
    pub fn wait_chance(&self) -> f64 {
        let (a, c) = (self.offered(), self.stalls());
        let rho = self.busy_share();
        if rho >= 1.0 {
            return 1.0;
        }
        let mut b = 1.0;
        for k in 1..=c {
            b = a * b / (f64::from(k) + a * b);
        }
        within(b / (1.0 - rho + rho * b), 0.0, 1.0)
    }

    /// People the stalls can take beyond those who come, a second.
    fn spare_rate(&self) -> Option<f64> {
        let service = in_seconds(self.service).max(1e-6);
        let spare = f64::from(self.stalls()) / service - within(self.arrivals_h, 0.0, 1e9) / 3600.0;
        (spare > 0.0).then_some(spare)
    }

    /// Returns the mean wait; none where the line grows without end.
    ///
    /// Source: M/M/c, P_wait/(c/s − λ).
    pub fn mean_wait(&self) -> Option<Time> {
        Some(seconds(self.wait_chance() / self.spare_rate()?))
    }

    /// Returns the chance of waiting longer than `limit`; 1 where the line grows without end.
    ///
    /// Source: M/M/c, P_wait·e^(−(c/s − λ)·t).
    pub fn chance_over(&self, limit: Time) -> f64 {
        match self.spare_rate() {
            Some(spare) => self.wait_chance() * (-spare * in_seconds(limit).max(0.0)).exp(),
            None => 1.0,
        }
    }
}

/// Returns the mean wait at `servers` stalls ([`Queue::mean_wait`]).
pub fn mean_wait(servers: u32, arrivals_h: f64, service: Time) -> Option<Time> {
    Queue {
        servers,
        arrivals_h,
        service,
    }
    .mean_wait()
}

/// Returns the smallest number of stalls whose busy share is under 1 and whose mean wait is within `limit`; none beyond
/// 10,000.
pub fn servers_for_mean_wait(arrivals_h: f64, service: Time, limit: Time) -> Option<u32> {
    let queue = |servers| Queue {
        servers,
        arrivals_h,
        service,
    };
    let fits = |servers| {
        queue(servers)
            .mean_wait()
            .is_some_and(|wait| in_seconds(wait) <= in_seconds(limit))
    };
    // waits fall with every stall, so the bound can be halved
    let (mut low, mut high) = (0, 1);
    while !fits(high) {
        if high >= 10_000 {
            return None;
        }
        (low, high) = (high, (high * 2).min(10_000));
    }
    while high - low > 1 {
        let middle = u32::midpoint(low, high);
        if fits(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(high)
}

/// Returns the time to clear a burst of people all at once: ceil(N/c)·s; none with no stall.
pub fn batch_clear(people: u32, servers: u32, service: Time) -> Option<Time> {
    (servers > 0).then(|| service * f64::from(people.div_ceil(servers)))
}

/// Returns the rolls of paper for `uses`, rounded up (40 uses a roll: common practice, no source); zero for no uses.
pub fn paper_rolls(uses: f64, uses_per_roll: f64) -> f64 {
    (uses.max(0.0) / uses_per_roll.max(1.0)).ceil()
}
