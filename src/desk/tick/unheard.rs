//! Trailers whose doors are open and of which nobody has said so: the one that is known least is watched, too.

use chrono::{DateTime, TimeDelta, Utc};

use super::Round;
use super::quiet;
use super::say::Answer;
use crate::book::{AlarmChange, Book, HeldOf, Record};
use crate::finding::{FindingId, Level};
use crate::fleet::{Fleet, Job};
use crate::heard::UnitName;
use crate::reply::Arg;

/// How long after the doors open somebody is asked after.
const AFTER_DOORS: TimeDelta = TimeDelta::minutes(30);
/// Who wrote of the trailer within this long is taken to be there still.
const STILL_THERE: TimeDelta = TimeDelta::hours(2);

/// What such an alarm's key begins with.
pub(super) const KEY: &str = "unheard";

fn key_of(unit: &UnitName, job: &Job) -> String {
    format!("{KEY}:{}:{unit}", job.id)
}

/// Returns the trailer that a key is about, as it stands behind [`KEY`].
pub(super) fn unit_in(key: &str) -> Option<UnitName> {
    let (_, unit) = key.rsplit_once(':')?;
    Some(UnitName::new(unit))
}

/// Returns when dispatchers hear that nobody called a trailer open whose doors are.
pub(super) fn due(
    book: &Book,
    fleet: &Fleet,
    unit: &UnitName,
    spoke: Option<DateTime<Utc>>,
) -> Option<DateTime<Utc>> {
    let (job, word) = unheard(book, fleet, unit)?;
    let at = job.from + AFTER_DOORS;
    let at = word.map_or(at, |word| at.max(word + STILL_THERE));
    let at = quiet::awake(fleet, quiet::paced(spoke, at), None);
    (at < job.to).then_some(at)
}

/// Finds the first job of a trailer of which nobody said since its doors opened how it stands, with the last word since
/// its set-up began. Where the doors were open when the last list went out, or the first message came, it was in that.
fn unheard<'f>(
    book: &Book,
    fleet: &'f Fleet,
    unit: &UnitName,
) -> Option<(&'f Job, Option<DateTime<Utc>>)> {
    let ahead = book.ahead();
    // a list that went out since told of it; and a bot that was new then knew of nothing
    let first = book.heard().first?;
    let listed = ahead
        .digest()
        .max(ahead.patrol())
        .unwrap_or(first)
        .max(first);
    let state = book.unit(unit).map(|kept| kept.state());
    let called = state.and_then(|state| state.in_service());
    let word = state.and_then(|state| Some(state.last_word.as_ref()?.at));
    fleet.jobs_of(unit).find_map(|job| {
        let begins = fleet.set_up_of(unit, &job.id)?;
        // silence is told apart; what was called open for the job before is not open for this one
        if called.is_some_and(|called| called >= begins) {
            return None;
        }
        let word = word.filter(|word| *word >= begins);
        let open = word.is_some_and(|word| word >= job.from);
        let told = || book.alarms().contains_key(&key_of(unit, job));
        (!open && job.from > listed && !told()).then_some((job, word))
    })
}

/// Tells the dispatchers of a trailer that nobody called open, once a job.
pub(super) fn tell(round: &mut Round<'_>, unit: &UnitName) {
    let fleet = std::sync::Arc::clone(&round.fleet);
    let Some((job, word)) = unheard(&round.desk.book, &fleet, unit) else {
        return;
    };
    let change = AlarmChange::Raised {
        key: key_of(unit, job),
        id: FindingId::CrewLateCheckIn,
        unit: Some(unit.clone()),
        level: Level::Caution,
    };
    round.turn.records.push(Record::Alarm {
        at: round.now,
        change,
    });
    // after a time down the job may be over: nobody phones about it any more
    if round.now >= job.to {
        return;
    }
    for to in round.dispatchers() {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let crew: Vec<String> = job
            .crew
            .iter()
            .filter(|who| **who != to)
            .map(|who| voice.person(who).into_owned())
            .collect();
        let site = fleet.site_of(job).map(|site| site.name.clone());
        let mut args = vec![
            ("unit", Arg::from(unit.as_str())),
            ("site", site.unwrap_or_default().into()),
            ("time", job.from.into()),
        ];
        let key = match word {
            Some(word) => {
                args.push(("since", word.into()));
                "speak-unheard-since"
            }
            None => "speak-unheard",
        };
        let mut text = voice.say(key, &args);
        text.push(' ');
        match crew.is_empty() {
            true => text.push_str(&voice.word("speak-unheard-who")),
            false => {
                let names = voice.all_of(&crew);
                text.push_str(&voice.say("speak-unheard-ask", &[("names", names.into())]));
            }
        }
        let says = (Some(Level::Caution), Answer::GotIt);
        let of = Some(HeldOf::Unheard(unit.clone()));
        round.say.add_of(&to, says, text, of);
    }
}
