//! What will fall due as things stand, each with its instant: read off the book, so that it survives a restart, and kept
//! in order of time, so that nobody goes through all trailers to find the next.
//!
//! The order holds the instant before which each duty cannot fall due. How often dispatchers are spoken to moves it further
//! out, and that is worked out only for what comes first.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, Days, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::{alone, late, quiet, refused, rest, road, silence, unanswered, unheard};
use crate::book::{AheadChange, AlarmChange, Book, MessageKey, Record, Weather};
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
    /// A reading of a trailer's waste tank is worth asking for.
    Read(UnitName),
    /// A unit in service has been silent for too long.
    Silence(UnitName),
    /// The doors of a trailer are open, and nobody said how it stands.
    Unheard(UnitName),
    /// A task is past its due or its call-by time.
    LateTask(u32),
    /// Somebody's own quiet hours are over.
    Rested(String),
    /// The dispatchers hear what was refused.
    Refused,
    /// A digest that somebody asked for is gathered.
    Asked,
    /// The digest goes out.
    Digest,
    /// The list of long stays goes out.
    Patrol,
}

impl Duty {
    /// Tells whether the duty always has something to say, so that lateness is worth a word.
    pub(super) fn speaks(&self) -> bool {
        !matches!(
            self,
            Duty::Look(_)
                | Duty::Read(_)
                | Duty::Unheard(_)
                | Duty::Road(_)
                | Duty::Rested(_)
                | Duty::Refused
                | Duty::Asked
        )
    }

    /// Returns the trailer that the duty is about, where it may open a task on it.
    pub(super) fn unit(&self) -> Option<&UnitName> {
        match self {
            Duty::Look(unit) | Duty::Read(unit) | Duty::Silence(unit) => Some(unit),
            _ => None,
        }
    }

    /// Tells whether the duty waits for its turn where dispatchers were spoken to just now.
    fn is_paced(&self) -> bool {
        matches!(
            self,
            Duty::Silence(_) | Duty::Unheard(_) | Duty::LateTask(_)
        )
    }
}

/// Everything that will fall due but the lists (see `lists`).
#[derive(Debug, Clone, Default)]
pub(in super::super) struct Agenda {
    earliest: BTreeMap<Duty, DateTime<Utc>>,
    order: BTreeSet<(DateTime<Utc>, Duty)>,
}

impl Agenda {
    /// Reads off a book what will fall due.
    pub(in super::super) fn of(book: &Book) -> Agenda {
        let mut agenda = Agenda::default();
        let ahead = book.ahead();
        let alone = ahead
            .all_alone()
            .map(|(who, _)| Duty::Alone(who.to_owned()));
        let alarms = book.alarms().keys().cloned().map(Duty::Unanswered);
        let roads = ahead.roads().map(|(who, _)| Duty::Road(who.to_owned()));
        let looks = ahead.looks().map(|(unit, _)| Duty::Look(unit.clone()));
        let reads = ahead.reads().map(|(unit, _)| Duty::Read(unit.clone()));
        let silences = book.units().map(|(unit, _)| Duty::Silence(unit.clone()));
        let tasks = book.tasks().open().map(|task| Duty::LateTask(task.id));
        let fleet = book.fleet().into_iter();
        let unheard = fleet.flat_map(|fleet| fleet.trailers.keys().cloned().map(Duty::Unheard));
        let all = alone
            .chain(alarms)
            .chain(roads)
            .chain(looks)
            .chain(reads)
            .chain(silences)
            .chain(unheard)
            .chain(tasks);
        all.for_each(|duty| agenda.keep(book, duty));
        agenda
    }

    /// Applies a record to the book, and keeps what it bears on in its place.
    pub(in super::super) fn apply(&mut self, book: &mut Book, record: &Record) {
        let mut touched = touched(book, record);
        let unused = book.heard().first.is_none();
        book.apply(record);
        // what is asked after counts from the first message on
        let begins = unused && book.heard().first.is_some();
        if begins || matches!(record, Record::Fleet { .. }) {
            *self = Agenda::of(book);
        }
        if let Some(at) = lists_sent(record) {
            // what a list told of needs no word of its own any more
            let told = self.order.iter().take_while(|(due, _)| *due <= at);
            let told = told.filter(|(_, duty)| matches!(duty, Duty::Unheard(_)));
            touched.extend(told.map(|(_, duty)| duty.clone()));
        }
        touched.sort();
        touched.dedup();
        touched.into_iter().for_each(|duty| self.keep(book, duty));
    }

    fn keep(&mut self, book: &Book, duty: Duty) {
        if let Some(was) = self.earliest.remove(&duty) {
            self.order.remove(&(was, duty.clone()));
        }
        if let Some(at) = falls_due(book, &duty, None) {
            self.order.insert((at, duty.clone()));
            self.earliest.insert(duty, at);
        }
    }

    /// Returns the next instant at which something falls due.
    pub(super) fn next(&self, book: &Book) -> Option<DateTime<Utc>> {
        let spoke = book.ahead().spoke();
        let mut next = lists(book).map(|(at, _)| at).min();
        for (earliest, duty) in &self.order {
            if next.is_some_and(|next| next <= *earliest) {
                break;
            }
            let waits = not_before(duty, *earliest, spoke);
            if next.is_none_or(|next| waits < next) {
                let at = falls_due(book, duty, spoke);
                next = next.into_iter().chain(at).min();
            }
        }
        next
    }

    /// Lists what is due by `now`, the longest due first, for as long as there is `room`; and tells whether more is due.
    ///
    /// What waits for another slice is not worked out: with hundreds due at once, each slice would go through them all.
    pub(super) fn due(
        &self,
        book: &Book,
        now: DateTime<Utc>,
        mut room: impl FnMut(&Duty) -> bool,
    ) -> (Vec<(DateTime<Utc>, Duty)>, bool) {
        let spoke = book.ahead().spoke();
        let kept = self
            .order
            .iter()
            .take_while(|(earliest, _)| *earliest <= now)
            .filter(|(earliest, duty)| not_before(duty, *earliest, spoke) <= now)
            .filter_map(|(_, duty)| Some((falls_due(book, duty, spoke)?, duty.clone())));
        let mut due = Vec::new();
        let mut more = false;
        for (at, duty) in lists(book).chain(kept).filter(|(at, _)| *at <= now) {
            if !room(&duty) {
                more = true;
                break;
            }
            due.push((at, duty));
        }
        due.sort();
        (due, more)
    }
}

/// Returns the instant before which a duty waits, whatever else holds.
fn not_before(duty: &Duty, earliest: DateTime<Utc>, spoke: Option<DateTime<Utc>>) -> DateTime<Utc> {
    match duty.is_paced() {
        true => quiet::paced(spoke, earliest),
        false => earliest,
    }
}

/// Returns when a duty falls due, where dispatchers were last spoken to at `spoke`.
fn falls_due(book: &Book, duty: &Duty, spoke: Option<DateTime<Utc>>) -> Option<DateTime<Utc>> {
    let ahead = book.ahead();
    match duty {
        Duty::Alone(who) => alone::due(ahead.alone(who)?),
        Duty::Unanswered(key) => unanswered::due(key, book.alarms().get(key)?),
        Duty::Road(who) => {
            let mut roads = ahead.roads();
            roads
                .find(|(other, _)| other == who)
                .map(|(_, road)| road::due(road))
        }
        Duty::Look(unit) => ahead.look(unit),
        Duty::Read(unit) => ahead.read(unit),
        Duty::Silence(unit) => {
            silence::due(book, book.fleet()?, unit, book.unit(unit)?.state(), spoke)
        }
        Duty::Unheard(unit) => unheard::due(book, book.fleet()?, unit, spoke),
        Duty::LateTask(id) => {
            let fleet = book.fleet()?;
            let task = book.tasks().task(*id).filter(|task| task.is_open())?;
            let at = late::due(book, task)?;
            // whoever asked for that time is not put off
            if task.words.is_some() {
                return Some(at);
            }
            let at = quiet::paced(spoke, at);
            Some(quiet::awake(fleet, at, late::harm(fleet, task, at)))
        }
        Duty::Rested(_) | Duty::Refused | Duty::Asked | Duty::Digest | Duty::Patrol => None,
    }
}

/// Returns the duties that a record bears on, as the book stands before it.
fn touched(book: &Book, record: &Record) -> Vec<Duty> {
    match record {
        Record::Message(message) => {
            let reported = message.reports.iter().map(|report| report.unit.clone());
            let replaced = message.replaces.iter();
            let before = replaced.flat_map(|key| reported_on(book, &message.from, key));
            reported.chain(before).flat_map(of_words).collect()
        }
        Record::Undone { key, by, .. } => reported_on(book, by, key)
            .into_iter()
            .flat_map(of_words)
            .collect(),
        Record::Crew { change, .. } => {
            let who = change.shuts_out().map(str::to_owned);
            who.map(Duty::Road).into_iter().collect()
        }
        Record::Task { change, .. } => vec![Duty::LateTask(change.id())],
        Record::Alarm { at, change } => {
            let (AlarmChange::Raised { key, .. }
            | AlarmChange::Acknowledged { key, .. }
            | AlarmChange::Over { key }) = change;
            let forgotten = book.forgotten_alarms(*at);
            let keys = forgotten.chain(std::iter::once(key.as_str()));
            keys.flat_map(about).collect()
        }
        Record::Ahead { change, .. } => match change {
            AheadChange::Look { unit, .. } => vec![Duty::Look(unit.clone())],
            AheadChange::Read { unit, .. } | AheadChange::AskedToRead { unit } => {
                vec![Duty::Read(unit.clone())]
            }
            AheadChange::Road { who, .. } => vec![Duty::Road(who.clone())],
            AheadChange::Alone { who, .. } => vec![Duty::Alone(who.clone())],
            // in deep cold silence is late sooner
            AheadChange::Weather { weather } | AheadChange::WeatherBack { weather } => {
                units_in_cold(book, weather)
            }
            _ => Vec::new(),
        },
        _ => Vec::new(),
    }
}

/// Returns the duties of the trailers at the site of a low, or of all that are at a job.
fn units_in_cold(book: &Book, weather: &Weather) -> Vec<Duty> {
    let Some(fleet) = book.fleet() else {
        return Vec::new();
    };
    let site = weather.site.as_ref();
    let jobs = fleet.jobs_between(weather.at, weather.at + TimeDelta::hours(18));
    let jobs = jobs.filter(|job| site.is_none_or(|site| *site == job.id.site));
    let units = jobs.flat_map(|job| job.trailers.iter().cloned());
    units.map(Duty::Silence).collect()
}

/// Returns the duties that a word about a trailer bears on.
fn of_words(unit: UnitName) -> [Duty; 2] {
    [Duty::Silence(unit.clone()), Duty::Unheard(unit)]
}

/// Returns when a list went out, where a record says that one did.
fn lists_sent(record: &Record) -> Option<DateTime<Utc>> {
    match record {
        Record::Ahead {
            at,
            change: AheadChange::Digest | AheadChange::Patrol,
        } => Some(*at),
        _ => None,
    }
}

/// Returns the trailers that a message of a person reports on.
fn reported_on(book: &Book, who: &str, key: &MessageKey) -> Vec<UnitName> {
    let sent = book.sent(who).iter().find(|sent| sent.key == *key);
    sent.map_or(Vec::new(), |sent| sent.units.clone())
}

/// Returns the duties that an alarm bears on.
fn about(key: &str) -> impl Iterator<Item = Duty> {
    let unanswered = Duty::Unanswered(key.to_owned());
    let (head, rest) = key.split_once(':').unwrap_or((key, ""));
    let other = if head == "task" {
        rest.parse().ok().map(Duty::LateTask)
    } else if head == unheard::KEY {
        unheard::unit_in(rest).map(Duty::Unheard)
    } else {
        let unit = UnitName::new(rest);
        (silence::silence_key(&unit) == key).then_some(Duty::Silence(unit))
    };
    std::iter::once(unanswered).chain(other)
}

/// Iterates over the lists and what was held back or refused, each with when it next goes out: few, so never kept.
fn lists(book: &Book) -> impl Iterator<Item = (DateTime<Utc>, Duty)> {
    let ahead = book.ahead();
    let lists = book.fleet().and_then(|fleet| {
        let first = book.heard().first?;
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
    let asked = ahead.asked().map(|(_, at)| at).min();
    let refused = book.fleet().and_then(|fleet| {
        let at = refused::due(book.refusals())?;
        Some((quiet::awake(fleet, at, None), Duty::Refused))
    });
    let rested = book
        .fleet()
        .into_iter()
        .flat_map(move |fleet| rest::due(book, fleet).map(|(at, who)| (at, Duty::Rested(who))));
    lists
        .into_iter()
        .flatten()
        .flatten()
        .chain(asked.map(|at| (at, Duty::Asked)))
        .chain(refused)
        .chain(rested)
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
