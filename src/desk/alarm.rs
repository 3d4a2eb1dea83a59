//! Tells every dispatcher when a message reports a danger, and keeps the alarm open until somebody takes note of it.

use super::answer::Reply;
use super::choices;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::receive::Hearing;
use super::situate::Case;
use super::tick::silence_key;
use crate::book::{AlarmChange, Record};

use crate::finding::{Finding, Level, Urgency};
use crate::heard::UnitName;

/// Ends the alarms that a word about a unit answers: it was silent, and now it is not.
pub(super) fn end_silence(
    hearing: &Hearing<'_>,
    cases: &[Case],
    words: &[UnitName],
    records: &mut Vec<Record>,
) {
    for unit in cases.iter().map(|case| &case.unit).chain(words) {
        let key = silence_key(unit);
        if hearing.desk.book.alarms().contains_key(&key) {
            records.push(Record::Alarm {
                at: hearing.now,
                change: AlarmChange::Over { key },
            });
        }
    }
}

/// Raises an alarm for each danger among the findings. One that stands already is not raised again.
pub(super) fn raise(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let dangers: Vec<Finding> = reply
        .findings
        .iter()
        .filter(|finding| finding.level == Level::Danger && finding.urgency == Urgency::Now)
        .cloned()
        .collect();
    for finding in dangers {
        let key = match &finding.unit {
            Some(unit) => format!("{}:{unit}", finding.id),
            None => format!("{}:{}", finding.id, hearing.member.id),
        };
        let stands = hearing
            .desk
            .book
            .alarms()
            .get(&key)
            .is_some_and(|alarm| (hearing.now - alarm.said).num_minutes() < 30);
        if stands {
            continue;
        }
        let change = AlarmChange::Raised {
            key,
            id: finding.id,
            unit: finding.unit.clone(),
            level: finding.level,
        };
        records.push(Record::Alarm {
            at: hearing.now,
            change,
        });
        let place = finding
            .unit
            .as_ref()
            .and_then(|unit| cases.iter().find(|case| case.unit == *unit))
            .and_then(Case::place);
        for (other, voice) in other_dispatchers(hearing) {
            let mut args = vec![
                ("signal", voice.word("signal-danger").into()),
                ("who", hearing.member.name.as_str().into()),
                ("what", voice.name(finding.id, finding.level).into()),
            ];
            let mut key = "alarm-person";
            if let Some(unit) = &finding.unit {
                args.push(("unit", unit.as_str().into()));
                key = "alarm-danger-no-site";
            }
            if let Some(place) = &place {
                args.push(("site", place.as_str().into()));
                key = "alarm-danger";
            }
            let text = format!("{}\n{}", voice.say(key, &args), voice.word("alarm-answer"));
            reply.others.push(
                Outgoing::to(&other.id, text)
                    .of_level(Level::Danger)
                    .offering(vec![choices::got_it(&voice)]),
            );
        }
    }
}
