//! What is asked of the crew: who has which work, what somebody is at, whether they have read what was sent.

use chrono::{DateTime, Utc};

use super::reply::Reply;
use super::tell::person_named;
use super::whole::{everybody, whereabouts};
use crate::book::Task;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::standing;
use crate::fleet::CrewMember;
use crate::reply::Arg;

/// Answers a question about people; false where this is none of them.
pub(super) fn answer(hearing: &Hearing<'_>, topic: &str, reply: &mut Reply<'_>) -> bool {
    match topic {
        "where-person" => {
            if let Some(member) = person_named(hearing) {
                let line = where_they_are(hearing, member, reply);
                reply.first.push(line);
            }
        }
        // "what's up with 12" asks after the trailer
        "how-person" => {
            let Some(member) = person_named(hearing) else {
                return false;
            };
            let line = where_they_are(hearing, member, reply);
            reply.first.push(line);
            theirs(hearing, member, reply);
        }
        "who-has-what" => {
            everybody(hearing, reply);
            let open = hearing.desk.book.tasks().open();
            let text = reply.voice.tasks(open);
            reply.first.push(text);
        }
        "has-read" => {
            let Some(member) = person_named(hearing) else {
                return false;
            };
            let args = [("who", Arg::from(member.name.as_str()))];
            let line = reply.voice.say("answer-has-read", &args);
            reply.first.push(line);
            let line = where_they_are(hearing, member, reply);
            reply.first.push(line);
        }
        "overrides" => overrides(hearing, reply),
        "who-can-go" => {
            everybody(hearing, reply);
            let line = reply.voice.word("answer-who-can-go");
            reply.first.push(line);
        }
        "did-today" => {
            let Some(member) = person_named(hearing) else {
                return false;
            };
            did_today(hearing, member, reply);
        }
        _ => return false,
    }
    true
}

/// Says where somebody is by their own words, or that nobody knows.
pub(in crate::desk) fn where_they_are(
    hearing: &Hearing<'_>,
    member: &CrewMember,
    reply: &Reply<'_>,
) -> String {
    whereabouts(hearing, member, reply).unwrap_or_else(|| {
        let args = [("who", Arg::from(member.name.as_str()))];
        reply.voice.say("answer-where-none", &args)
    })
}

/// Lists the open tasks that somebody has.
fn theirs(hearing: &Hearing<'_>, member: &CrewMember, reply: &mut Reply<'_>) {
    let tasks = hearing.desk.book.tasks();
    let has = |task: &&Task| task.taken_by.as_ref() == Some(&member.id);
    let mut lines: Vec<String> = tasks
        .open()
        .filter(has)
        .map(|task| reply.voice.task(task))
        .collect();
    if lines.is_empty() {
        let args = [("who", Arg::from(member.name.as_str()))];
        lines.push(reply.voice.say("answer-has-no-task", &args));
    }
    reply.first.append(&mut lines);
}

/// Lists what somebody of the crew reported today, where they are named and no trailer is; tells whether it did.
pub(super) fn asked_of_a_day(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let member = person_named(hearing).filter(|_| hearing.names().is_empty());
    if let Some(member) = member {
        did_today(hearing, member, reply);
    }
    member.is_some()
}

/// How many of a day's reports are told.
const REPORTS: usize = 12;

/// Lists what somebody reported today, by the clock of the fleet.
fn did_today(hearing: &Hearing<'_>, member: &CrewMember, reply: &mut Reply<'_>) {
    let zone = hearing.fleet.time_zone;
    let day = |at: DateTime<Utc>| at.with_timezone(&zone).date_naive();
    let sent = hearing.desk.book.sent(&member.id).iter();
    let today = sent.filter(|sent| sent.at <= hearing.now && day(sent.at) == day(hearing.now));
    let told = today.flat_map(|sent| hearing.told_in(sent));
    let mut lines: Vec<String> = told
        .map(|(unit, at, entry)| {
            let spec = hearing.fleet.trailers.get(&unit);
            reply.voice.report_line(&unit, at, &entry, spec)
        })
        .collect();
    let who = ("who", Arg::from(member.name.as_str()));
    if lines.is_empty() {
        let line = reply.voice.say("answer-did-nothing", &[who]);
        return reply.first.push(line);
    }
    let first = lines.len().saturating_sub(REPORTS);
    reply
        .first
        .push(reply.voice.say("answer-did-today", &[who]));
    reply.first.extend(lines.drain(first..));
}

/// Lists the decisions against the advice that are in force.
fn overrides(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let units = hearing.fleet.trailers.keys();
    let mut lines: Vec<String> = units
        .filter_map(|unit| standing::in_force(hearing, unit, &reply.voice))
        .collect();
    if lines.is_empty() {
        lines.push(reply.voice.word("answer-no-override"));
    }
    reply.first.append(&mut lines);
}

/// Returns the open or closed task whose number a question gives: "who has task 6".
pub(super) fn task_named<'h>(hearing: &'h Hearing<'_>) -> Option<&'h Task> {
    let folded = plain(hearing.text);
    let words: Vec<&str> = folded.split(' ').collect();
    let number = words.windows(2).find_map(|pair| {
        let of_a_task = matches!(pair[0], "task" | "tarea" | "job");
        of_a_task.then(|| pair[1].parse::<u32>().ok())?
    })?;
    hearing.desk.book.tasks().task(number)
}

/// Tells whether "it" alone is asked for, as after a task was handed to somebody: "who has it".
pub(super) fn asks_for_it(hearing: &Hearing<'_>) -> bool {
    let folded = plain(hearing.text);
    let last = folded.split(' ').next_back().unwrap_or_default();
    ["it", "la tiene", "lo tiene"]
        .iter()
        .any(|it| last == *it || folded.ends_with(it))
}

/// Lists the open tasks that somebody has.
pub(super) fn taken(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let open = hearing.desk.book.tasks().open();
    let taken: Vec<&Task> = open.filter(|task| task.taken_by.is_some()).collect();
    let text = match taken.is_empty() {
        true => reply.voice.word("answer-nobody-has-any"),
        false => reply.voice.tasks(taken),
    };
    reply.first.push(text);
}
