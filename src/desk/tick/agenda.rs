//! What will fall due as things stand, each with its instant: read off the book, so that it survives a restart.

use chrono::{DateTime, Days, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::super::Desk;
use super::{alone, late, quiet, refused, rest, road, silence, unanswered};
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// When the list of long stays goes out in a fleet that states no time for its digest.
const PATROL_AT: (u32, u32) = (8, 0);

/// Something the desk has to do at an instant; the more pressing first.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Duty {
    /// A lone worker's clock is up.
    Alone(String),
    /// Nobody answered a danger.
    Unanswered(String),
    /// Somebody on the road should have arrived.
    Road(String),
    /// A trailer's forecast may have reached a limit.
    Look(UnitName),
    /// A unit in service has been silent for too long.
    Silence(UnitName),
    /// A task is past its due or its call-by time.
    LateTask(u32),
    /// Somebody's own quiet hours are over.
    Rested(String),
    /// The dispatchers hear what was refused.
    Refused,
    /// The digest goes out.
    Digest,
    /// The list of long stays goes out.
    Patrol,
}

impl Duty {
    /// Tells whether the duty works out a trailer's forecast.
    pub(super) fn looks_into_a_trailer(&self) -> bool {
        matches!(self, Duty::Look(_) | Duty::Silence(_))
    }

    /// Tells whether the duty always has something to say, so that lateness is worth a word.
    pub(super) fn speaks(&self) -> bool {
        !matches!(
            self,
            Duty::Look(_) | Duty::Road(_) | Duty::Rested(_) | Duty::Refused
        )
    }
}

/// Iterates over everything that will fall due.
pub(super) fn duties(desk: &Desk) -> impl Iterator<Item = (DateTime<Utc>, Duty)> + '_ {
    let ahead = desk.book.ahead();
    let fleet = desk.book.fleet();
    let spoke = ahead.spoke();
    let alone = ahead
        .all_alone()
        .filter_map(|(who, clock)| Some((alone::due(clock)?, Duty::Alone(who.to_owned()))));
    let unanswered =
        desk.book.alarms().iter().filter_map(|(key, alarm)| {
            Some((unanswered::due(alarm)?, Duty::Unanswered(key.clone())))
        });
    let roads = ahead
        .roads()
        .map(|(who, road)| (road::due(road), Duty::Road(who.to_owned())));
    let looks = ahead
        .looks()
        .map(|(unit, at)| (at, Duty::Look(unit.clone())));
    let silences = fleet.into_iter().flat_map(move |fleet| {
        desk.book.open_units().filter_map(move |(unit, kept)| {
            let at = silence::due(desk, fleet, unit, kept.state(), spoke)?;
            Some((at, Duty::Silence(unit.clone())))
        })
    });
    let tasks = fleet.into_iter().flat_map(move |fleet| {
        desk.book.tasks().open().filter_map(move |task| {
            let at = quiet::paced(spoke, late::due(desk, task)?);
            let at = quiet::awake(fleet, at, late::harm(fleet, task, at));
            Some((at, Duty::LateTask(task.id)))
        })
    });
    let refused = fleet.and_then(|fleet| {
        let at = refused::due(desk.book.refusals())?;
        Some((quiet::awake(fleet, at, None), Duty::Refused))
    });
    let rested = fleet
        .into_iter()
        .flat_map(move |fleet| rest::due(desk, fleet).map(|(at, who)| (at, Duty::Rested(who))));
    let rounds = fleet.and_then(|fleet| {
        let first = desk.book.heard().first?;
        let since = |last: Option<DateTime<Utc>>| last.unwrap_or(first).max(first);
        let digest = next_of(fleet, &fleet.digest_at, since(ahead.digest()));
        let morning = fleet.digest_at.first().copied().or_else(|| {
            let (hour, minute) = PATROL_AT;
            NaiveTime::from_hms_opt(hour, minute, 0)
        });
        let patrol = morning.and_then(|at| next_of(fleet, &[at], since(ahead.patrol())));
        Some([
            digest.map(|at| (at, Duty::Digest)),
            patrol.map(|at| (at, Duty::Patrol)),
        ])
    });
    alone
        .chain(unanswered)
        .chain(roads)
        .chain(looks)
        .chain(silences)
        .chain(tasks)
        .chain(rested)
        .chain(refused)
        .chain(rounds.into_iter().flatten().flatten())
}

/// Returns the first instant after `since` at which a clock shows one of `times`.
fn next_of(fleet: &Fleet, times: &[NaiveTime], since: DateTime<Utc>) -> Option<DateTime<Utc>> {
    let zone = fleet.time_zone;
    let today = since.with_timezone(&zone).date_naive();
    (0..3).find_map(|days| {
        let day = today.checked_add_days(Days::new(days))?;
        times
            .iter()
            .filter_map(|time| instant(zone, day.and_time(*time)))
            .filter(|at| *at > since)
            .min()
    })
}

/// Makes an instant of a local time: of two the first; of one that the clocks skip, an hour later.
fn instant(zone: Tz, local: chrono::NaiveDateTime) -> Option<DateTime<Utc>> {
    zone.from_local_datetime(&local)
        .earliest()
        .or_else(|| {
            zone.from_local_datetime(&(local + TimeDelta::hours(1)))
                .earliest()
        })
        .map(|at| at.to_utc())
}
