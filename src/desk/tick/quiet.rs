//! Quiet hours, and the pace at which dispatchers are spoken to: what can wait, waits.

use chrono::{DateTime, Days, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use crate::fleet::Fleet;

/// What can wait a little is said at most this often, so that dispatchers get about one alarm in ten minutes (EEMUA 191).
const PACE: TimeDelta = TimeDelta::minutes(10);

/// Returns the end of the quiet hours that `at` falls in; none outside them.
pub(super) fn ends(fleet: &Fleet, at: DateTime<Utc>) -> Option<DateTime<Utc>> {
    end_of(fleet.quiet_hours?, fleet.time_zone, at)
}

/// Returns the end of local quiet hours that `at` falls in; none outside them.
pub(super) fn end_of(
    (from, to): (NaiveTime, NaiveTime),
    zone: Tz,
    at: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let local = at.with_timezone(&zone);
    let time = local.time();
    let within = if from <= to {
        (from..to).contains(&time)
    } else {
        time >= from || time < to
    };
    if !within {
        return None;
    }
    let day = local.date_naive();
    let day = if time < to {
        day
    } else {
        day.checked_add_days(Days::new(1))?
    };
    // a local time that the clocks skip: an hour later there is one
    let local = day.and_time(to);
    zone.from_local_datetime(&local)
        .earliest()
        .or_else(|| {
            zone.from_local_datetime(&(local + TimeDelta::hours(1)))
                .earliest()
        })
        .map(|end| end.to_utc())
}

/// Returns when something due at `at` is said where a few minutes do not matter.
pub(super) fn paced(spoke: Option<DateTime<Utc>>, at: DateTime<Utc>) -> DateTime<Utc> {
    match spoke {
        Some(spoke) if at < spoke + PACE => spoke + PACE,
        _ => at,
    }
}

/// Returns when something due at `at` is said that can wait out the quiet hours, unless `harm` comes before their end.
pub(super) fn awake(
    fleet: &Fleet,
    at: DateTime<Utc>,
    harm: Option<DateTime<Utc>>,
) -> DateTime<Utc> {
    match ends(fleet, at) {
        Some(end) if harm.is_none_or(|harm| harm >= end) => end,
        _ => at,
    }
}
