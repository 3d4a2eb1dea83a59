//! Dangers that nobody took note of: said again, once.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::lone;
use super::Round;
use super::alone::{of_alone, watchers};
use super::say::Answer;
use crate::book::{Alarm, AlarmChange, Record};
use crate::finding::Level;

/// How long a danger may go without an answer.
const PATIENCE: TimeDelta = TimeDelta::minutes(10);

/// Returns when a danger that nobody answered is said again.
pub(super) fn due(alarm: &Alarm) -> Option<DateTime<Utc>> {
    let open = alarm.level == Level::Danger && alarm.acknowledged.is_none();
    (open && alarm.said == alarm.raised).then(|| alarm.said + PATIENCE)
}

/// Says it again.
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
    let told = match of_alone(key) {
        Some(who) => watchers(round, who),
        None => round.dispatchers(),
    };
    for to in told {
        if let Some(voice) = round.voice(&to) {
            let what = lone::alarm_name(key, alarm, round.desk.book.tasks(), &voice);
            let signal = voice.word("signal-danger");
            let text = voice.say(
                "speak-unanswered",
                &[
                    ("signal", signal.into()),
                    ("what", what.into()),
                    ("time", alarm.raised.into()),
                ],
            );
            round.say.add(&to, Some(Level::Danger), text, Answer::GotIt);
        }
    }
}
