//! The hours in which a job's trailers are in use: nothing fills outside them.
//!
//! All of it is in instants; local times of day are turned into instants day by day, so that a night on which the
//! clocks change is as long as it really is.

use chrono::{
    DateTime, Days, Duration, LocalResult, NaiveDate, NaiveDateTime, NaiveTime, TimeZone, Utc,
};
use chrono_tz::Tz;

use super::model::{Job, OpenHours};

const MS_PER_H: f64 = 3_600_000.0;

impl Job {
    /// Tells whether people use the trailers at this instant.
    pub fn is_open(&self, at: DateTime<Utc>) -> bool {
        self.windows(at).next().is_some_and(|(from, _)| from <= at)
    }

    /// Returns the open hours between two instants; 0 where the second is not the later.
    pub fn open_hours_between(&self, a: DateTime<Utc>, b: DateTime<Utc>) -> f64 {
        self.windows(a)
            .take_while(|(from, _)| *from < b)
            .map(|(from, to)| hours(to.min(b) - from.max(a)).max(0.0))
            .sum()
    }

    /// Returns the instant at which `hours` open hours have passed since `from`, or `None` past the job's end.
    ///
    /// No hours at all is `from` itself; less than none, or not a number, is `None`.
    pub fn after_open_hours(&self, from: DateTime<Utc>, hours_open: f64) -> Option<DateTime<Utc>> {
        if hours_open.is_nan() || hours_open < 0.0 {
            return None;
        }
        if hours_open == 0.0 {
            return (from <= self.to).then_some(from);
        }
        let mut left = hours_open;
        for (opens, closes) in self.windows(from) {
            let starts = opens.max(from);
            let length = hours(closes - starts);
            // a hair for what summing floats loses
            if left <= length + 1e-9 {
                let step = Duration::milliseconds((left.min(length) * MS_PER_H).round() as i64);
                return Some(starts + step);
            }
            left -= length;
        }
        None
    }

    /// Returns the next instant at or after `at` when the doors open; `None` when they do not any more.
    pub fn opens_next(&self, at: DateTime<Utc>) -> Option<DateTime<Utc>> {
        self.windows(at)
            .map(|(from, _)| from)
            .find(|from| *from >= at)
    }

    /// Returns when the doors close for good.
    pub fn ends(&self) -> DateTime<Utc> {
        self.to
    }

    /// Lists the stretches of open hours that end after `after`, in order, as opening and closing instants.
    pub fn windows(&self, after: DateTime<Utc>) -> Windows<'_> {
        let day = after
            .clamp(self.from, self.from.max(self.to))
            .with_timezone(&self.time_zone)
            .date_naive();
        // a stretch past midnight began the day before
        let day = day.checked_sub_days(Days::new(1));
        Windows {
            job: self,
            after,
            day,
        }
    }
}

/// The stretches of a job's open hours; see [`Job::windows`].
#[derive(Debug, Clone)]
pub struct Windows<'a> {
    job: &'a Job,
    after: DateTime<Utc>,
    day: Option<NaiveDate>,
}

impl Iterator for Windows<'_> {
    type Item = (DateTime<Utc>, DateTime<Utc>);

    fn next(&mut self) -> Option<Self::Item> {
        let job = self.job;
        let (opens, closes) = match job.open {
            OpenHours::Through => {
                self.day.take()?;
                return (job.to > self.after && job.to > job.from).then_some((job.from, job.to));
            }
            OpenHours::Daily(opens, closes) => (opens, closes),
        };
        while let Some(day) = self.day {
            let (from, to) = window(job.time_zone, day, opens, closes)?;
            if from >= job.to {
                self.day = None;
                return None;
            }
            self.day = day.checked_add_days(Days::new(1));
            let (from, to) = (from.max(job.from), to.min(job.to));
            if from < to && to > self.after {
                return Some((from, to));
            }
        }
        None
    }
}

fn window(
    zone: Tz,
    day: NaiveDate,
    opens: NaiveTime,
    closes: NaiveTime,
) -> Option<(DateTime<Utc>, DateTime<Utc>)> {
    let last = if closes <= opens {
        day.checked_add_days(Days::new(1))?
    } else {
        day
    };
    Some((
        instant(zone, day.and_time(opens)),
        instant(zone, last.and_time(closes)),
    ))
}

/// Makes an instant of a local time: of two the first; of one that the clocks skip, the end of the gap.
fn instant(zone: Tz, local: NaiveDateTime) -> DateTime<Utc> {
    match zone.from_local_datetime(&local) {
        LocalResult::Single(at) | LocalResult::Ambiguous(at, _) => at.with_timezone(&Utc),
        LocalResult::None => gap_end(zone, local),
    }
}

/// Finds the instant at which the clocks have skipped past a local time that does not exist.
pub(super) fn gap_end(zone: Tz, local: NaiveDateTime) -> DateTime<Utc> {
    // no offset is beyond 14 h and no gap longer than a day
    let mut before = local.and_utc() - Duration::hours(40);
    let mut after = local.and_utc() + Duration::hours(40);
    while after - before > Duration::seconds(1) {
        let middle = before + Duration::seconds((after - before).num_seconds() / 2);
        if middle.with_timezone(&zone).naive_local() < local {
            before = middle;
        } else {
            after = middle;
        }
    }
    after
}

/// Finds the first instant at which both jobs are open.
pub(super) fn clash(a: &Job, b: &Job) -> Option<DateTime<Utc>> {
    let start = a.from.max(b.from);
    let (mut of_a, mut of_b) = (a.windows(start), b.windows(start));
    let (mut x, mut y) = (of_a.next()?, of_b.next()?);
    loop {
        let meets = x.0.max(y.0);
        if meets < x.1.min(y.1) {
            return Some(meets);
        }
        if x.1 <= y.1 {
            x = of_a.next()?;
        } else {
            y = of_b.next()?;
        }
    }
}

fn hours(span: Duration) -> f64 {
    span.num_milliseconds() as f64 / MS_PER_H
}
