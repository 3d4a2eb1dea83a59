//! Units in service of which nobody has said a word for too long: 4 open hours, 2 h in deep cold (common practice, no source).

use chrono::{DateTime, TimeDelta, Utc};

use super::super::others::last_word_there;
use super::super::situate::Case;
use super::Round;
use super::quiet;
use super::rounds::is_long_stay;
use super::say::Answer;
use crate::book::{AlarmChange, Book, HeldOf, Record, UnitState, Word};
use crate::finding::{FindingId, Level, TaskKind, Urgency};
use crate::fleet::{Fleet, Job};
use crate::heard::{ReadingKey, UnitName};
use crate::rules::{self, Silence};
use crate::situation::Occasion;

/// How long an alarm that nobody answered waits before it is said again, once.
const AGAIN: TimeDelta = TimeDelta::hours(2);
/// How long taking note of it keeps an alarm in deep cold quiet.
const NOTED: TimeDelta = TimeDelta::hours(8);
/// A long stay that somebody wrote about within this long is looked after.
const LOOKED_AFTER: TimeDelta = TimeDelta::hours(24);

/// Returns the key of the alarm about a silent unit.
pub(in super::super) fn silence_key(unit: &UnitName) -> String {
    format!("{}:{unit}", FindingId::CrewLateCheckIn)
}

/// How long a unit is silent in deep cold before that is late.
const DEEP_COLD: TimeDelta = TimeDelta::hours(2);
/// Air that was read so long before counts then.
const READ_LATELY: TimeDelta = TimeDelta::hours(4);

/// Returns the coldest that is known at an instant beside what was read at the trailer: at another of its job, or foretold
/// for the night.
fn cold_told(book: &Book, job: &Job, unit: &UnitName, at: DateTime<Utc>) -> Option<f64> {
    let low = book.ahead().weather(Some(&job.id.site), at);
    let low = low.filter(|low| low.air || rules::is_night(job, at));
    let others = job.trailers.iter().filter(|other| *other != unit);
    let read = others.filter_map(|other| {
        let air = book.unit(other)?.state().readings.get(&ReadingKey::AirF)?;
        let lately = air.at <= at && at - air.at <= READ_LATELY;
        lately.then_some(air.value)
    });
    read.chain(low.map(|low| low.low_f)).reduce(f64::min)
}

/// Returns when a unit in service is to be asked after.
pub(super) fn due(
    book: &Book,
    fleet: &Fleet,
    unit: &UnitName,
    state: &UnitState,
    spoke: Option<DateTime<Utc>>,
) -> Option<DateTime<Utc>> {
    let word = state.last_word.as_ref().map(|word| word.at);
    let word = word.or(state.in_service())?;
    let last = word.max(state.in_service().unwrap_or(word));
    let job = fleet.job_of(unit, last, None)?;
    let cold = cold_told(book, job, unit, last + DEEP_COLD);
    let Silence {
        late, deep_cold, ..
    } = rules::silence_in(job, state, cold)?;
    // how one stands that nobody called open is asked for by itself
    if state.in_service().is_none() && !deep_cold {
        return None;
    }
    if is_long_stay(job) && !(deep_cold && late - word <= LOOKED_AFTER) {
        return None; // on the daily list
    }
    let key = silence_key(unit);
    let alarm = book.alarms().get(&key);
    let at = match alarm.filter(|alarm| alarm.raised >= word) {
        None => late,
        Some(alarm) if alarm.acknowledged.is_none() && alarm.said == alarm.raised => {
            alarm.said + AGAIN
        }
        // in deep cold it is said as long as nobody takes note, and anew where that helped nothing
        Some(alarm) if deep_cold => {
            let noted = alarm.acknowledged.as_ref().map(|(_, at)| *at + NOTED);
            noted.map_or(alarm.said + AGAIN * 2, |noted| {
                noted.max(alarm.said + AGAIN * 2)
            })
        }
        Some(_) => return None,
    };
    let at = quiet::paced(spoke, at);
    let at = if deep_cold {
        at
    } else {
        quiet::awake(fleet, at, None)
    };
    // nobody is asked after a unit that stands shut
    if deep_cold || job.is_open(at) {
        (at <= job.to).then_some(at)
    } else {
        job.opens_next(at)
    }
}

/// Asks after a silent unit.
pub(super) fn silence(round: &mut Round<'_>, unit: &UnitName, at: DateTime<Utc>) {
    let now = round.now;
    let case = Case::standing(round.desk, &round.fleet, unit, now, Occasion::Tick);
    let finding = case
        .findings()
        .into_iter()
        .find(|finding| finding.id == FindingId::CrewLateCheckIn);
    let key = silence_key(unit);
    let again = round.desk.book.alarms().contains_key(&key);
    let raised = AlarmChange::Raised {
        key: key.clone(),
        id: FindingId::CrewLateCheckIn,
        unit: Some(unit.clone()),
        level: finding
            .as_ref()
            .map_or(Level::Notice, |finding| finding.level),
    };
    round.turn.records.push(Record::Alarm {
        at: now,
        change: raised,
    });
    let Some(finding) = finding else {
        // the rules see nothing amiss: it is settled until the next word
        let by = "clock".to_owned();
        let change = AlarmChange::Acknowledged { key, by };
        round.turn.records.push(Record::Alarm { at: now, change });
        return;
    };
    if finding.task.is_some() {
        round.board.open(
            unit,
            TaskKind::CheckIn,
            Some(at),
            TimeDelta::zero(),
            Some(finding.id),
        );
    }
    // a dispatcher who wrote of it is not there
    let word = last_word_there(round.desk, &round.fleet, unit, now);
    let elsewhere = word.as_ref().and_then(|word| writes_elsewhere(round, word));
    let mut told: Vec<(String, Answer)> = Vec::new();
    // who writes about other units has only forgotten this one: ask them, and the dispatcher when that does not help
    let person_first = elsewhere.is_some() && !again && finding.urgency != Urgency::Now;
    if !person_first {
        told.extend(
            round
                .dispatchers()
                .into_iter()
                .map(|to| (to, Answer::GotIt)),
        );
    }
    if let Some(word) = word.as_ref().filter(|_| !again)
        && !told.iter().any(|(to, _)| *to == word.from)
    {
        told.insert(0, (word.from.clone(), Answer::InText));
    }
    for (to, answer) in told {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let mut text = voice.finding(&finding, true);
        // nobody is told what they wrote themselves
        if let (Answer::GotIt, Some(word)) = (answer, &word)
            && word.from != to
        {
            let who = voice.person(&word.from).into_owned();
            let key = match elsewhere {
                Some(_) => "speak-silent-unit",
                None => "speak-silent-person",
            };
            text.push(' ');
            text.push_str(&voice.say(
                key,
                &[
                    ("who", who.into()),
                    ("time", elsewhere.unwrap_or(word.at).into()),
                    ("since", word.at.into()),
                ],
            ));
        }
        let of = Some(HeldOf::Finding(unit.clone(), finding.id));
        let says = (Some(finding.level), answer);
        round.say.add_of(&to, says, text, of);
    }
    round
        .turn
        .forecast
        .insert(unit.clone(), case.outlook.clone());
    round.turn.findings.push(finding);
}

/// Returns when the person who last spoke of a unit last wrote, where that was later and of something else.
fn writes_elsewhere(round: &Round<'_>, word: &Word) -> Option<DateTime<Utc>> {
    let last = round.desk.book.heard().last.get(&word.from)?;
    (*last > word.at).then_some(*last)
}
