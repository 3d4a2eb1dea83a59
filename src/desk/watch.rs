//! Alarms that people ask for: "if 12 hits 3/4 call me".

use super::answer::Reply;
use super::inbound::Outgoing;
use super::receive::Hearing;
use super::situate::Case;
use crate::book::{Personal, Record};
use crate::dialogue::Watch;
use crate::finding::Level;
use crate::heard::{ReadingKey, UnitName};

/// Makes the record that sets a watch.
pub(super) fn set(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    key: ReadingKey,
    value: f64,
    below: bool,
) -> Record {
    let who = hearing.member.id.clone();
    Record::Watch {
        watch: Watch {
            who,
            unit: unit.clone(),
            key,
            value,
            below,
            since: hearing.now,
        },
    }
}

/// Tells whoever asked, when a report reaches what they watch.
pub(super) fn hits(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    for watch in hearing.desk.book.watches() {
        let Some(case) = cases.iter().find(|case| case.unit == watch.unit) else {
            continue;
        };
        let Some(value) = reached(watch, case) else {
            continue;
        };
        records.push(Record::Unwatch {
            watch: watch.clone(),
        });
        let Some(member) = hearing.fleet.crew.get(&watch.who) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let what = voice.reading(watch.key, value, case.spec());
        let by = voice.person(&hearing.member.id).into_owned();
        let text = voice.say(
            "watch-hit",
            &[
                ("unit", watch.unit.as_str().into()),
                ("what", what.into()),
                ("who", by.into()),
            ],
        );
        if watch.who == hearing.member.id {
            reply.opening.push(text);
        } else {
            reply.others.push(Outgoing {
                to: watch.who.clone(),
                chat: None,
                text: Personal::new(text),
                level: Some(Level::Notice),
                answers: None,
            });
        }
    }
}

fn reached(watch: &Watch, case: &Case) -> Option<f64> {
    let value = case.report.readings.value(watch.key)?;
    let hit = if watch.below {
        value <= watch.value
    } else {
        value >= watch.value
    };
    hit.then_some(value)
}
