//! Tasks called done, and reports taken back.

use chrono::TimeDelta;

use super::reply::Reply;
use crate::book::{MessageKey, Record, TaskChange, TaskState};
use crate::desk::receive::Hearing;
use crate::desk::teach;
use crate::reply::Arg;

/// How far back a person can take a message back.
const UNDO_REACH: TimeDelta = TimeDelta::hours(24);

pub(super) fn done(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) {
    match reply.board.tasks().task(id).map(|task| task.state.clone()) {
        None => reply.say("task-unknown", &[("id", Arg::Count(i64::from(id)))]),
        Some(TaskState::Open) => {
            let change = TaskChange::Done {
                id,
                by: hearing.member.id.clone(),
                cause: Some(hearing.key.clone()),
            };
            reply.board.change(change);
        }
        Some(_) => reply.say("task-already-closed", &[("id", Arg::Count(i64::from(id)))]),
    }
}

pub(super) fn undo(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let sent = hearing
        .desk
        .book
        .sent(&hearing.member.id)
        .iter()
        .rev()
        .find(|sent| sent.at <= hearing.now && !sent.units.is_empty());
    let taught = hearing.desk.book.taught().iter().rev();
    let taught = taught
        .filter(|taught| taught.by == hearing.member.id && taught.at <= hearing.now)
        .find(|taught| hearing.now - taught.at <= UNDO_REACH);
    if let Some(taught) = taught.filter(|taught| sent.is_none_or(|sent| sent.at < taught.at)) {
        return teach::take_back(hearing, taught, reply, records);
    }
    match sent.filter(|sent| hearing.now - sent.at <= UNDO_REACH) {
        None => reply.say("undo-nothing", &[]),
        Some(sent) => {
            take_back(hearing, &sent.key, reply, records);
            let units: Vec<String> = sent.units.iter().map(|unit| unit.to_string()).collect();
            let units = reply.voice.all_of(&units);
            reply.say(
                "undone",
                &[("time", sent.at.into()), ("units", units.into())],
            );
        }
    }
}

fn take_back(
    hearing: &Hearing<'_>,
    key: &MessageKey,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    records.push(Record::Undone {
        at: hearing.now,
        by: hearing.member.id.clone(),
        key: key.clone(),
    });
    reply.board.revert(key);
}
