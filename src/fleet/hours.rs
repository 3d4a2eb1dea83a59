//! When a job's trailers are in use, and which job a trailer is at. (Provisional: replaced by the fleet loader's own.)

use chrono::{DateTime, TimeDelta, Utc};

use super::model::{Fleet, Job, OpenHours};
use crate::heard::UnitName;

impl Job {
    /// Tells whether people use the trailers at `at`.
    pub fn is_open(&self, at: DateTime<Utc>) -> bool {
        if at < self.from || at >= self.to {
            return false;
        }
        match self.open {
            OpenHours::Through => true,
            OpenHours::Daily(from, to) => {
                let local = at.with_timezone(&self.time_zone).time();
                if from <= to {
                    from <= local && local < to
                } else {
                    local >= from || local < to
                }
            }
        }
    }

    /// Returns the open hours between two instants.
    pub fn open_hours_between(&self, a: DateTime<Utc>, b: DateTime<Utc>) -> f64 {
        let mut minutes = 0;
        let mut at = a.max(self.from);
        while at < b.min(self.to) {
            minutes += i32::from(self.is_open(at));
            at += TimeDelta::minutes(1);
        }
        f64::from(minutes) / 60.0
    }

    /// Returns the instant when `hours` open hours have passed since `from`; none past the job's end.
    pub fn after_open_hours(&self, from: DateTime<Utc>, hours: f64) -> Option<DateTime<Utc>> {
        let mut left = (hours * 60.0).round() as i64;
        let mut at = from.max(self.from);
        while at < self.to {
            if left <= 0 {
                return Some(at);
            }
            left -= i64::from(self.is_open(at));
            at += TimeDelta::minutes(1);
        }
        (left <= 0).then_some(at)
    }
}

impl Fleet {
    /// Builds what is looked up by trailer.
    pub fn index(&mut self) {}

    /// Returns the job a trailer is at.
    pub fn job_of(
        &self,
        unit: &UnitName,
        at: DateTime<Utc>,
        left_at: Option<DateTime<Utc>>,
    ) -> Option<&Job> {
        let jobs: Vec<&Job> = self
            .jobs
            .iter()
            .filter(|job| job.trailers.contains(unit))
            .collect();
        let set_up = |job: &Job| job.from - TimeDelta::minutes((job.set_up_h * 60.0) as i64);
        let job = jobs.iter().rev().find(|job| set_up(job) <= at)?;
        left_at
            .is_none_or(|left| left < set_up(job) || left > at)
            .then_some(*job)
    }

    /// Returns a trailer's share of the guests, split over the job's trailers by their stalls.
    pub fn guests_share(&self, job: &Job, unit: &UnitName, guests: f64) -> f64 {
        let stalls = |unit: &UnitName| {
            self.trailers
                .get(unit)
                .map_or(0, |trailer| trailer.stalls())
        };
        let all: u32 = job.trailers.iter().map(stalls).sum();
        if all == 0 {
            guests
        } else {
            guests * f64::from(stalls(unit)) / f64::from(all)
        }
    }
}
