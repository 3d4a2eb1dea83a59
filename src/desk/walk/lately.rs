//! What was repaired on a trailer in the last days: said when a guided check starts, since it points to what failed again.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer::Reply;
use super::super::receive::Hearing;
use crate::book::{Task, TaskState};
use crate::finding::TaskKind;
use crate::heard::{Event, Fault, UnitName};

/// How far back a repair bears on what fails now.
const LATELY: TimeDelta = TimeDelta::days(7);
/// How many repairs are told.
const TOLD_AT_MOST: usize = 3;
/// Work on a trailer that no fault is told of.
const REPAIRS: &[Event] = &[
    Event::FuseReplaced,
    Event::FilterServiced,
    Event::RegulatorFitted,
];
/// Tasks whose end is a repair.
const WORK: &[TaskKind] = &[TaskKind::Repair, TaskKind::Electrician, TaskKind::Plumber];

/// Says what was repaired lately, what bears on this fault first.
pub(super) fn tell(hearing: &Hearing<'_>, unit: &UnitName, fault: Fault, reply: &mut Reply<'_>) {
    let since = hearing.now - LATELY;
    let lately = |at: DateTime<Utc>| (since..=hearing.now).contains(&at);
    let book = &hearing.desk.book;
    // when, whether it was this very fault, what
    let mut repairs: Vec<(bool, DateTime<Utc>, String)> = Vec::new();
    let kept = book.unit(unit).into_iter();
    for (at, _, entry) in kept
        .flat_map(|kept| kept.reports())
        .filter(|(at, ..)| lately(*at))
    {
        for event in entry.events.iter().filter(|event| REPAIRS.contains(event)) {
            repairs.push((false, at, reply.voice.event(*event)));
        }
        for mended in &entry.cleared {
            let name = reply.voice.fault(*mended);
            let what = reply.voice.say("walk-was-mended", &[("name", name.into())]);
            repairs.push((*mended == fault, at, what));
        }
    }
    let done = |task: &&Task| {
        task.unit.as_ref() == Some(unit)
            && task.state == TaskState::Done
            && WORK.contains(&task.kind)
    };
    for task in book.tasks().all().filter(done) {
        if let Some(at) = task.closed.filter(|at| lately(*at)) {
            repairs.push((false, at, reply.voice.task_head(task)));
        }
    }
    repairs.sort_by_key(|(same, at, _)| std::cmp::Reverse((*same, *at)));
    let mut told: Vec<String> = Vec::new();
    let mut named: Vec<&str> = Vec::new();
    for (_, at, what) in &repairs {
        if told.len() == TOLD_AT_MOST {
            break;
        }
        if !named.contains(&what.as_str()) {
            named.push(what);
            let age = reply.voice.age(*at);
            let args = [("what", what.as_str().into()), ("age", age.into())];
            told.push(reply.voice.say("walk-repaired-then", &args));
        }
    }
    if !told.is_empty() {
        let args = [
            ("unit", unit.as_str().into()),
            ("what", told.join("; ").into()),
        ];
        reply.say("walk-repaired", &args);
    }
}
