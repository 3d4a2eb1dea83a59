//! Dangers that nobody took note of are said again, and then to the techs too; somebody who works alone is asked after until
//! they are found.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::alarm::is_of_no_heat;
use super::super::lone;
use super::super::others::next_to_help;
use super::Round;
use super::alone::{alone_key, of_alone, watchers};
use super::say::Answer;
use crate::book::{Alarm, AlarmChange, HeldOf, Record};
use crate::finding::Level;

/// How long a danger may go without an answer.
const PATIENCE: TimeDelta = TimeDelta::minutes(10);

/// How long water that freezes without heat may go without an answer.
const FROST_PATIENCE: TimeDelta = TimeDelta::minutes(30);

/// Returns when a danger that nobody answered is said again. Taking note of somebody who works alone does not find them.
pub(super) fn due(key: &str, alarm: &Alarm) -> Option<DateTime<Utc>> {
    if of_alone(key).is_some() {
        let noted = alarm.acknowledged.as_ref().map(|(_, at)| *at);
        return Some(noted.map_or(alarm.said, |at| at.max(alarm.said)) + PATIENCE);
    }
    // water that freezes is said again as long as it may help
    if is_of_no_heat(key) {
        let open = alarm.acknowledged.is_none() && alarm.said - alarm.raised < FROST_PATIENCE * 2;
        return open.then(|| alarm.said + FROST_PATIENCE);
    }
    let open = alarm.level == Level::Danger && alarm.acknowledged.is_none();
    (open && !techs_were_told(alarm)).then(|| alarm.said + PATIENCE)
}

/// Tells whether a danger was said a third time: first to the dispatchers, again to them, and at last to the techs too.
fn techs_were_told(alarm: &Alarm) -> bool {
    alarm.said - alarm.raised >= PATIENCE * 2
}

/// Says it again: to the dispatchers, and where they were told twice to the techs as well.
pub(super) fn again(round: &mut Round<'_>, key: &str) {
    let Some(alarm) = round.desk.book.alarms().get(key) else {
        return;
    };
    let change = AlarmChange::Raised {
        key: key.to_owned(),
        id: alarm.id,
        unit: alarm.unit.clone(),
        level: alarm.level,
    };
    round.turn.records.push(Record::Alarm {
        at: round.now,
        change,
    });
    if let Some(who) = of_alone(key) {
        return ask_after(round, who, alarm);
    }
    let mut told = round.dispatchers();
    // a bot that was down says it the second time as late as the third
    if alarm.said > alarm.raised || round.now - alarm.raised >= PATIENCE * 2 {
        // whoever wrote of it last is there and knows
        let kept = alarm
            .unit
            .as_ref()
            .and_then(|unit| round.desk.book.unit(unit));
        let word = kept.and_then(|kept| kept.state().last_word.as_ref());
        let there = word.map_or("", |word| word.from.as_str());
        told.extend(next_to_help(&round.fleet, there));
    }
    for to in told {
        if let Some(voice) = round.voice(&to) {
            let what = lone::alarm_name(key, alarm, round.desk.book.tasks(), &voice);
            let signal = match alarm.level {
                Level::Danger => voice.word("signal-danger"),
                _ => voice.word("signal-warning"),
            };
            let text = voice.say(
                "speak-unanswered",
                &[
                    ("signal", signal.into()),
                    ("what", what.into()),
                    ("time", alarm.raised.into()),
                ],
            );
            let says = (Some(alarm.level), Answer::GotIt);
            let of = Some(HeldOf::Alarm(key.to_owned()));
            round.say.add_of(&to, says, text, of);
        }
    }
}

/// Asks again whether somebody who works alone was found: those who watch, and from the third time on the techs too, where
/// nobody took note.
fn ask_after(round: &mut Round<'_>, who: &str, alarm: &Alarm) {
    let noted = alarm.acknowledged.is_some();
    let mut told = watchers(round, who);
    if !noted && alarm.said > alarm.raised {
        told.extend(next_to_help(&round.fleet, who));
        told.sort();
        told.dedup();
    }
    let key = match noted {
        true => "speak-alone-found-yet",
        false => "speak-alone-unanswered",
    };
    for to in told {
        if let Some(voice) = round.voice(&to) {
            let args = [
                ("signal", voice.word("signal-danger").into()),
                ("who", voice.person(who).into_owned().into()),
                ("time", alarm.raised.into()),
            ];
            let text = voice.say(key, &args);
            let says = (Some(Level::Danger), Answer::GotIt);
            let of = Some(HeldOf::Alarm(alone_key(who)));
            round.say.add_of(&to, says, text, of);
        }
    }
}
