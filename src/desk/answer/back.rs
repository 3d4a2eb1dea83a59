//! Tasks called done, and reports taken back.

use std::collections::BTreeSet;

use chrono::{DateTime, TimeDelta, Utc};

use super::reply::Reply;
use super::tell;
use crate::book::{MessageKey, Record, Sent, Task, TaskChange, TaskState};

use crate::desk::inbound::Outgoing;
use crate::desk::others::other_dispatchers;
use crate::desk::receive::Hearing;
use crate::desk::standing;
use crate::desk::teach;
use crate::desk::walk;
use crate::desk::withdrawn;
use crate::dialogue::{About, Hauled};
use crate::finding::{Level, TaskKind};
use crate::heard::{Entry, Event, UnitName};
use crate::reply::Arg;

/// How far back a person can take a message back.
const UNDO_REACH: TimeDelta = TimeDelta::hours(24);

/// A message this old is named and asked about before it is taken back.
const MEANT: TimeDelta = TimeDelta::hours(1);

pub(super) fn done(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) {
    for id in [id].iter().chain(&hearing.also_done) {
        let number = Arg::Count(i64::from(*id));
        match reply.board.tasks().task(*id).map(|task| task.state.clone()) {
            None => reply.unknown_task(hearing, *id),
            Some(TaskState::Open) if comes_later(hearing, *id, reply) => {}
            Some(TaskState::Open) => {
                let change = TaskChange::Done {
                    id: *id,
                    by: hearing.member.id.clone(),
                    cause: Some(hearing.key.clone()),
                };
                reply.board.change(change);
                pumped(hearing, *id, reply);
            }
            Some(_) => reply.say("task-already-closed", &[("id", number)]),
        }
    }
}

/// A truck that is promised for this much later has not pumped yet.
const LATER: TimeDelta = TimeDelta::hours(2);

/// Says that a pump-out stays open whose truck is yet to come: closed, nobody would wait for it.
fn comes_later(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) -> bool {
    let task = reply.board.tasks().task(id);
    let task = task.filter(|task| task.kind == TaskKind::PumpOut);
    let promised = task.and_then(|task| task.promised.filter(|at| *at - hearing.now > LATER));
    let Some((promised, unit)) = promised.zip(task.and_then(|task| task.unit.clone())) else {
        return false;
    };
    let args = [
        ("id", Arg::Count(i64::from(id))),
        ("unit", unit.as_str().into()),
        ("time", promised.into()),
    ];
    reply.say("done-truck-to-come", &args);
    true
}

/// Asks for the gallons of a pump-out that is called done and was not reported; the dispatchers hear who said so: their
/// list of trucks to call is shorter by it.
fn pumped(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) {
    let task = reply.board.tasks().task(id).cloned();
    let Some(task) = task.filter(|task| task.kind == TaskKind::PumpOut) else {
        return;
    };
    let Some(unit) = task.unit.clone() else {
        return;
    };
    let kept = hearing.desk.book.unit(&unit);
    let last = kept.and_then(|kept| kept.state().last_pumped());
    if last.is_some_and(|(at, _)| at >= task.opened) {
        return;
    }
    reply.asks = Some(About::HowMuch {
        unit: unit.clone(),
        after: Hauled::Done,
    });
    for (to, voice) in other_dispatchers(hearing) {
        let args = [
            ("who", voice.person(&hearing.member.id).into_owned().into()),
            ("task", voice.task_head(&task).into()),
        ];
        let text = voice.say("done-unpumped-told", &args);
        let letter = Outgoing::to(&to.id, text).of_level(Level::Notice);
        reply.others.push(letter);
    }
}

/// Takes the sender's last report or task back. After that it asks before it takes an older one.
pub(super) fn undo(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    // what was told of an incident is kept as it was told: an older order is not what was meant
    let open = hearing.talk.question_at(hearing.inbound.at);
    let of_a_fact = open.is_some_and(|open| matches!(open.about, About::IncidentFact { .. }));
    if of_a_fact && hearing.takes_back.is_none() {
        return reply.say("undo-fact", &[]);
    }
    // each takes back their own
    let other = tell::person_named(hearing).filter(|other| other.id != hearing.member.id);
    if let Some(other) = other.filter(|_| hearing.takes_back.is_none()) {
        let who = reply.voice.person(&other.id).into_owned();
        return reply.say("undo-not-yours", &[("who", who.into())]);
    }
    let mut undoable = undoable(hearing);
    let sent = match &hearing.takes_back {
        Some(key) => undoable.find(|sent| sent.key == *key),
        None => undoable.next(),
    };
    let newer = |at: DateTime<Utc>| sent.is_none_or(|sent| sent.at < at);
    let fixed = for_good(hearing).filter(|at| hearing.takes_back.is_none() && newer(*at));
    let newer = |at: DateTime<Utc>| newer(at) && fixed.is_none_or(|fixed| fixed < at);
    let taught = hearing.desk.book.taught().iter().rev().find(|taught| {
        taught.by == hearing.member.id
            && taught.at <= hearing.now
            && hearing.now - taught.at <= UNDO_REACH
    });
    if let Some(taught) = taught.filter(|taught| hearing.takes_back.is_none() && newer(taught.at)) {
        return teach::take_back(hearing, taught, reply, records);
    }
    let reach = (
        hearing.now - UNDO_REACH,
        sent.map(|sent| sent.at).max(fixed),
    );
    if hearing.takes_back.is_none() && standing::take_back(hearing, reach, reply, records) {
        return;
    }
    if fixed.is_some() {
        reply.undone = true;
        return reply.say("undo-for-good", &[]);
    }
    let Some(sent) = sent else {
        reply.say("undo-nothing", &[]);
        return;
    };
    let what = what_of(hearing, sent, reply);
    let asks = match hearing.talk.undone {
        true => Some("undo-older"),
        // what was sent this long ago may not be what is meant
        false => (hearing.now - sent.at > MEANT).then_some("undo-old"),
    };
    if let Some(asks) = asks.filter(|_| hearing.takes_back.is_none()) {
        reply.say(asks, &[("time", sent.at.into()), ("what", what.into())]);
        reply.asks = Some(About::UndoOlder {
            key: sent.key.0.clone(),
        });
        return;
    }
    records.push(Record::Undone {
        at: hearing.now,
        by: hearing.member.id.clone(),
        key: sent.key.clone(),
    });
    reply.undone = true;
    let keys: Vec<MessageKey> = sent.keys().cloned().collect();
    // "done 4" and then the gallons are one pump-out
    let mut closed_by = keys.clone();
    closed_by.extend(done_before_the_load(hearing, sent));
    reply.board.reopen(&closed_by);
    reply.board.take_back(&keys, |_| false);
    let worked: (DateTime<Utc>, DateTime<Utc>) = (sent.at, sent.worked.unwrap_or(sent.at));
    reply.board.restore(&sent.tasks_before, worked);
    tell_untaken(hearing, reply);
    tell_unassigned(hearing, reply);
    standing::went_with(hearing, sent.at, reply, records);
    let told = hearing.told_in(sent);
    if told.is_empty() {
        let args = [("time", sent.at.into()), ("what", what.into())];
        reply.say("undone-task", &args);
        return;
    }
    let dangers = withdrawn::dangers_in(&told);
    withdrawn::tell(hearing, &dangers, None, reply, records);
    withdrawn::ask(&dangers, reply);
    reply.say("undone", &[("time", sent.at.into()), ("what", what.into())]);
    // what holds again, and when the tank fills by what is left
    let units: BTreeSet<&UnitName> = told.iter().map(|(unit, ..)| unit).collect();
    for case in units
        .iter()
        .filter_map(|unit| hearing.without(unit, sent.keys()))
    {
        reply.beside.extend(case.findings());
        reply.foresee(&case);
    }
    walk::stand::began_with(hearing, &told, reply);
}

/// Returns the sender's word that called a pump-out done whose gallons are taken back: the answer to how many there were.
fn done_before_the_load(hearing: &Hearing<'_>, sent: &Sent) -> Option<MessageKey> {
    let pumped = |entry: &Entry| entry.events.contains(&Event::WastePumped);
    let told = hearing.told_in(sent);
    let units: Vec<&UnitName> = told
        .iter()
        .filter(|(.., entry)| pumped(entry))
        .map(|(unit, ..)| unit)
        .collect();
    let lately = |at: DateTime<Utc>| at <= sent.at && sent.at - at <= MEANT;
    let of_it = |task: &&Task| {
        let unit = task.unit.as_ref();
        task.kind == TaskKind::PumpOut
            && unit.is_some_and(|unit| units.contains(&unit))
            && task.state == TaskState::Done
            && task.closed.is_some_and(lately)
    };
    let task = hearing.desk.book.tasks().all().find(of_it)?;
    let cause = task.closed_cause.clone()?;
    let mut mine = hearing.desk.book.sent(&hearing.member.id).iter();
    mine.any(|one| one.key == cause).then_some(cause)
}

/// Returns when the sender last gave an order that no undo takes back.
fn for_good(hearing: &Hearing<'_>) -> Option<DateTime<Utc>> {
    let at = hearing.talk.fixed?;
    (hearing.now - at <= UNDO_REACH).then_some(at)
}

/// Iterates over the sender's messages that can be taken back, the newest first.
fn undoable<'a>(hearing: &'a Hearing<'_>) -> impl Iterator<Item = &'a Sent> {
    let changed =
        |sent: &&Sent| !sent.tasks_before.is_empty() || opened(hearing, sent).next().is_some();
    let sent = hearing.desk.book.sent(&hearing.member.id).iter().rev();
    sent.filter(move |sent| {
        sent.at <= hearing.now
            && hearing.now - sent.at <= UNDO_REACH
            && (!hearing.told_in(sent).is_empty() || !sent.corrects.is_empty() || changed(sent))
    })
}

/// Returns the correction that an undo takes back first: the sender's last message, where it is one.
pub(in crate::desk) fn correction<'a>(hearing: &'a Hearing<'_>) -> Option<&'a Sent> {
    let last = undoable(hearing).next()?;
    let mut taught = hearing.desk.book.taught().iter();
    let newer = taught.any(|taught| taught.by == hearing.member.id && taught.at >= last.at)
        || for_good(hearing).is_some_and(|at| at >= last.at);
    (!newer && !hearing.talk.undone && !last.corrects.is_empty()).then_some(last)
}

/// Tells the dispatchers whose task is nobody's again: they were told that somebody has it.
fn tell_untaken(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let me = &hearing.member.id;
    let freed: Vec<Task> = reply
        .board
        .changes()
        .iter()
        .filter_map(|change| match change {
            TaskChange::Restored { task } if task.taken_by.is_none() => Some(task.clone()),
            _ => None,
        })
        .filter(|task| {
            let before = hearing.desk.book.tasks().task(task.id);
            before.is_some_and(|before| before.taken_by.as_ref() == Some(me))
        })
        .collect();
    for (to, voice) in other_dispatchers(hearing) {
        for task in &freed {
            let args = [
                ("who", voice.person(me).into_owned().into()),
                ("task", voice.task(task).into()),
            ];
            reply
                .others
                .push(Outgoing::to(&to.id, voice.say("speak-untaken", &args)));
        }
    }
}

/// Tells those who were given a task by what is taken back that it is theirs no more.
fn tell_unassigned(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let me = &hearing.member.id;
    let mut told = Vec::new();
    for change in reply.board.changes() {
        let TaskChange::Restored { task } = change else {
            continue;
        };
        let had = hearing.desk.book.tasks().task(task.id);
        let had = had.and_then(|before| before.taken_by.as_ref());
        let lost = had.filter(|who| *who != me && task.taken_by.as_ref() != Some(who));
        let Some(member) = lost.and_then(|who| hearing.fleet.crew.get(who)) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let args = [
            ("who", voice.person(me).into_owned().into()),
            ("task", voice.task(task).into()),
        ];
        told.push(Outgoing::to(
            &member.id,
            voice.say("assign-taken-back", &args),
        ));
    }
    reply.others.append(&mut told);
}

/// Says what a message reported and which tasks it changed.
fn what_of(hearing: &Hearing<'_>, sent: &Sent, reply: &Reply<'_>) -> String {
    let voice = &reply.voice;
    let mut parts: Vec<String> = hearing
        .told_in(sent)
        .iter()
        .map(|(unit, _, entry)| {
            let what = voice.readings(entry, hearing.fleet.trailers.get(unit));
            format!("{unit} {what}")
        })
        .collect();
    if parts.is_empty() {
        let tasks = hearing.desk.book.tasks();
        let changed = sent.tasks_before.iter().map(|task| task.id);
        let ids = changed.chain(opened(hearing, sent));
        parts.extend(
            ids.filter_map(|id| tasks.task(id))
                .map(|task| voice.task_head(task)),
        );
    }
    parts.join("; ")
}

/// Returns the open tasks that a message opened.
fn opened<'a>(hearing: &'a Hearing<'_>, sent: &'a Sent) -> impl Iterator<Item = u32> + 'a {
    let by_it = |key: &MessageKey| sent.keys().any(|other| other == key);
    hearing
        .desk
        .book
        .tasks()
        .open()
        .filter(move |task| task.cause.as_ref().is_some_and(by_it))
        .map(|task| task.id)
}
