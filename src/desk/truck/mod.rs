//! Pump trucks: those that are called and at work, and those that do not come, or come at another time.

mod again;
mod anew;
mod booking;
mod marks;
mod reword;
mod says;
mod work;

use chrono::{DateTime, Timelike, Utc};
use chrono_tz::Tz;

pub(super) use self::again::{answered, may_be_a_trailer, spelled_out};
pub(super) use self::anew::{is_missing, is_overtaken, is_second, tell_replaced};
pub(super) use self::booking::{Coming, coming, put, put_off, wants_a_call};
pub(super) use self::reword::reworded;
pub(super) use self::says::{is_told_of, none_comes};
pub(super) use self::work::{Work, gone, has_come, loads_told, note_here, work_told};
use super::answer::{self, Reply};
use super::choices;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::receive::Hearing;
use super::settle;
use super::tasks::WORTH_MOVING;
use super::tick::alarm_of_task;
use super::when;
use crate::book::{Record, Task, TaskChange};

use crate::dialogue::About;
use crate::finding::{Level, TaskKind};
use crate::fleet::Role;
use crate::heard::{Entry, Event, Plan, PlanKind, UnitName};
use crate::reply::Arg;

/// Tells whether a message is about a truck of ours that is off or late. While a step of a check waits, and none was called,
/// "truck wont be here today" is an answer to that.
pub(super) fn is_of_ours(hearing: &Hearing<'_>) -> bool {
    let waits = !hearing.talk.checks.is_empty();
    is_told_of(hearing.desk.phrases, hearing.text)
        && (!waits || !all_called(hearing).is_empty() || !names(hearing).is_empty())
}

/// Takes back or moves what was booked, where the message says that the truck is off or late.
pub(super) fn told(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    let heard = &hearing.heard;
    if heard.command.is_none() && anew::moved_over(hearing, reply) {
        return;
    }
    // one that came early and has pumped is not late
    let pumped = |entry: &Entry| entry.events.contains(&Event::WastePumped);
    if heard.ask.is_some()
        || heard.command.is_some()
        || answer::is_question(hearing)
        || heard.entries.iter().any(pumped)
        || !is_of_ours(hearing)
    {
        return;
    }
    let given_up = says::is_given_up(phrases, text);
    if phrases.holds("truck", "absent", text) && !given_up {
        return match names(hearing).as_slice() {
            several @ [_, _, ..] => none_came(hearing, several, reply, records),
            _ => no_show(hearing, reply, records),
        };
    }
    let off = says::is_off(phrases, text);
    let late = says::is_late(phrases, text);
    let acted_on =
        |plan: &Plan| matches!(plan.kind, PlanKind::Booked { .. } | PlanKind::Need { .. });
    // "need a truck for 12 now" tells of none that is late
    if !off && heard.plans.iter().any(acted_on) {
        return;
    }
    // "the trucks for 23 and 10 are cancelled"
    if let (true, [_, _, ..]) = (off && !late, names(hearing).as_slice()) {
        return all_cancelled(hearing, &names(hearing), reply, records);
    }
    if off && !late && of_all(hearing) {
        return all_cancelled(hearing, &all_called(hearing), reply, records);
    }
    // one that is late is the one just spoken of; which one is off is asked
    let lately = || again::ordered_lately(hearing.desk, &hearing.member.id, hearing.now);
    let comes_later = late && !off && names(hearing).is_empty();
    // "the truck is late, 30 min" of several; a clock time tells which
    let counted = again::delay_told(phrases, text).is_some() && when::clock_in(text).is_none();
    let together = counted && again::several_lately(hearing.desk, &hearing.member.id, hearing.now);
    let lately = comes_later.then(lately).flatten().cloned();
    // a dispatcher has them all in hand: of several, none is the one talked about
    let unnamed = names(hearing).is_empty() && all_called(hearing).len() > 1;
    let any = unnamed && (off || together) && hearing.member.role == Role::Dispatcher;
    let meant = lately.or_else(|| booked(hearing, reply)).filter(|_| !any);
    let Some(task) = meant else {
        if (off || late) && reply.asks.is_none() {
            which(hearing, reply);
        }
        return;
    };
    if let Some(unit) = &task.unit
        && is_overtaken(hearing, unit, task.kind, reply)
    {
        return;
    }
    let zone = hearing.fleet.zone_at(task.unit.as_ref(), hearing.now);
    // "moved the truck to 8", where a trailer is called so, is asked
    let to = phrases.following("truck", "to", text).is_some();
    let behind = || again::behind_late(hearing.desk, text, hearing.now, zone).filter(|_| !to);
    let later = again::delay_told(phrases, text).filter(|_| when::clock_in(text).is_none());
    let comes = match later {
        Some(later) => {
            let shifted = task.promised.map(|promised| promised + later);
            shifted.filter(|at| *at > hearing.now)
        }
        None => says::until(phrases, text, hearing.now, zone)
            .or_else(|| moved_to(hearing, zone))
            .or_else(behind)
            .or_else(|| when::coming(text, hearing.now, zone)),
    };
    match (comes, off, late) {
        (Some(at), _, true) => {
            if let (Some(_), Some(was)) = (later, task.promised) {
                reply.say(
                    "truck-delay-counted",
                    &[("was", was.into()), ("time", at.into())],
                );
            }
            moved(hearing, &task, at, reply);
        }
        (_, true, _) => cancelled(hearing, &task, reply, records),
        (None, false, true) => {
            reply.asks = task.unit.map(|unit| About::TruckWhen { unit });
        }
        _ => {}
    }
}

/// Says that the truck comes after the tank may be full, or else after the time that somebody asked for.
pub(super) fn too_late(
    due: Option<DateTime<Utc>>,
    forecast: Option<Option<DateTime<Utc>>>,
    promised: Option<DateTime<Utc>>,
    reply: &mut Reply<'_>,
) {
    let too_late = |at: &DateTime<Utc>| promised.is_some_and(|promised| promised > *at);
    let full = forecast.flatten().filter(too_late);
    // where it is forecast that there is time, only the wish is missed
    if let (None, Some(_), Some(due), Some(promised)) = (full, forecast, due, promised)
        && promised > due
    {
        let args = [("due", due.into()), ("promised", promised.into())];
        return reply.say("booked-after-wanted", &args);
    }
    // a task is not moved by some minutes: then its own time is told
    let close = |full: &DateTime<Utc>| due.is_some_and(|due| (*full - due).abs() <= WORTH_MOVING);
    let due = full.filter(|full| !close(full)).or(due);
    if let (Some(promised), Some(due)) = (promised, due)
        && promised > due
    {
        if due <= reply.voice.now() {
            reply.say("booked-too-late-now", &[("promised", promised.into())]);
        } else {
            let args = [("due", due.into()), ("promised", promised.into())];
            reply.say("booked-too-late", &args);
        }
    }
}

/// Reads "moved the truck to 8": an hour, unless a trailer is called so.
fn moved_to(hearing: &Hearing<'_>, zone: Tz) -> Option<DateTime<Utc>> {
    let rest = hearing
        .desk
        .phrases
        .following("truck", "to", hearing.text)?;
    let word = rest
        .split_whitespace()
        .next()?
        .trim_end_matches(['.', '!', ',']);
    let hour = word
        .parse::<u32>()
        .ok()
        .filter(|hour| (1..=12).contains(hour))?;
    let is_a_trailer = settle::known(&hearing.fleet, &UnitName::new(word)).is_some();
    (!is_a_trailer).then(|| when::coming(&format!("at {hour}"), hearing.now, zone))?
}

/// Returns the trailers that a message names, but for the hours in it: "moved the truck to 8", "not til 8".
fn names(hearing: &Hearing<'_>) -> Vec<UnitName> {
    let to = hearing.desk.phrases.following("truck", "to", hearing.text);
    let hour = to.and_then(|rest| rest.split_whitespace().next());
    let hour = hour.map(|word| word.trim_end_matches(['.', '!', ',']));
    let now = hour_now(hearing);
    let until = says::hour_until(hearing.desk.phrases, hearing.text);
    let hours = [hour, now, until.as_deref()];
    let mut names = hearing.names();
    names.retain(|name| !hours.contains(&Some(name.as_str())));
    names
}

/// Returns the hour that it is by a message's own words: "not here yet, its 8".
fn hour_now<'h>(hearing: &'h Hearing<'_>) -> Option<&'h str> {
    let rest = hearing
        .desk
        .phrases
        .following("truck", "it-is", hearing.text)?;
    let word = rest.split_whitespace().next()?;
    let word = word.trim_end_matches(['.', '!', ',']);
    let told = word.parse::<u32>().ok()? % 12;
    let hour = hearing.now.with_timezone(&hearing.fleet.time_zone).hour();
    [hour, hour + 1]
        .iter()
        .any(|hour| hour % 12 == told)
        .then_some(word)
}

/// Finds the booking that is meant as the board has it: see [`noted`].
fn booked(hearing: &Hearing<'_>, reply: &Reply<'_>) -> Option<Task> {
    let task = match names(hearing).first() {
        Some(unit) => hearing.desk.book.tasks().open_task(unit, kind(hearing))?,
        None => noted(hearing)?,
    };
    reply.board.tasks().task(task.id).or(Some(task)).cloned()
}

/// Finds the truck that is noted as called and meant: for the trailer named, else the sender's, else the only one there is.
fn noted<'a>(hearing: &'a Hearing<'_>) -> Option<&'a Task> {
    let tasks = hearing.desk.book.tasks();
    let on = |unit: &UnitName| {
        let task = tasks.open_task(unit, kind(hearing));
        task.filter(|task| task.called.is_some())
    };
    if let Some(unit) = names(hearing).first() {
        return on(unit);
    }
    let known = hearing.talk.unit_at(hearing.inbound.at);
    if let Some(task) = known.and_then(on) {
        return Some(task);
    }
    let kind = kind(hearing);
    let mut called = tasks
        .open()
        .filter(|task| task.kind == kind && task.called.is_some());
    // a driver who has nothing to do with that trailer is asked
    let mine = |unit: &UnitName| {
        let sent = hearing.desk.book.sent(&hearing.member.id);
        hearing.member.role == Role::Dispatcher || sent.iter().any(|sent| sent.units.contains(unit))
    };
    match (called.next(), called.next()) {
        (Some(only), None) if only.unit.as_ref().is_some_and(mine) => Some(only),
        _ => None,
    }
}

/// Asks for which trailer the truck was; where nothing is booked, says so.
fn which(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let named = names(hearing);
    if let Some(unit) = named.first() {
        reply.say("truck-none", &[("unit", unit.as_str().into())]);
        return;
    }
    let mut likely = all_called(hearing);
    likely.truncate(4);
    if likely.is_empty() {
        reply.say("truck-none-booked", &[]);
        return;
    }
    reply.asks = Some(About::WhichUnitOf {
        text: hearing.text.to_owned(),
        likely,
    });
}

/// Returns the work of the trucks that a message speaks of.
fn kind(hearing: &Hearing<'_>) -> TaskKind {
    match hearing.desk.phrases.holds("truck", "water", hearing.text) {
        true => TaskKind::Refill,
        false => TaskKind::PumpOut,
    }
}

/// Tells whether a dispatcher speaks of every truck, and names no trailer.
fn of_all(hearing: &Hearing<'_>) -> bool {
    hearing.member.role == Role::Dispatcher
        && names(hearing).is_empty()
        && hearing.desk.phrases.holds("truck", "all", hearing.text)
        && !all_called(hearing).is_empty()
}

/// Returns the trailers for which a truck is called.
fn all_called(hearing: &Hearing<'_>) -> Vec<UnitName> {
    let kind = kind(hearing);
    let tasks = hearing.desk.book.tasks().open();
    tasks
        .filter(|task| task.kind == kind && task.called.is_some())
        .filter_map(|task| task.unit.clone())
        .collect()
}

fn cancelled(hearing: &Hearing<'_>, task: &Task, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let unit = task.unit.clone().unwrap_or_else(|| UnitName::new(""));
    if task.called.is_none() {
        reply.say("truck-none", &[("unit", unit.as_str().into())]);
        return;
    }
    reply.adopt(task);
    reply.board.change(TaskChange::Uncalled {
        id: task.id,
        by: hearing.member.id.clone(),
    });
    // a truck was on its way until now: nobody was late to call another
    if task.call_by.is_some_and(|call_by| call_by < hearing.now) {
        reply.board.change(TaskChange::Redated {
            id: task.id,
            due: task.due,
            call_by: Some(hearing.now),
        });
    }
    let unneeded = hearing
        .desk
        .phrases
        .holds("truck", "unneeded", hearing.text);
    let (key, told) = match unneeded {
        true => ("truck-unneeded", "truck-unneeded-told"),
        false => ("truck-off", "truck-off-told"),
    };
    reply.say(key, &[("unit", unit.as_str().into())]);
    if !unneeded {
        list_waste(hearing, &unit, reply);
    }
    tell(hearing, task.id, told, &[], reply);
    // where the call presses, this is the alarm of it: it is not told twice
    let pressing = task.call_by.is_some_and(|call_by| call_by <= hearing.now);
    if pressing && other_dispatchers(hearing).next().is_some() {
        reply.board.change(TaskChange::Escalated { id: task.id });
        let alarm = reply.board.tasks().task(task.id).and_then(alarm_of_task);
        let at = hearing.now;
        records.extend(alarm.map(|change| Record::Alarm { at, change }));
    }
}

/// Lists what holds of a waste tank whose truck does not come, and when it will be full: the words beside it tell it.
fn list_waste(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    let case = hearing.asked_about(unit);
    let mut findings = case.findings();
    findings.retain(|finding| finding.id.topic() == "waste");
    reply.listed.append(&mut findings);
    reply.foresee(&case);
}

fn all_cancelled(
    hearing: &Hearing<'_>,
    units: &[UnitName],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let tasks = hearing.desk.book.tasks();
    for unit in units {
        match tasks.open_task(unit, kind(hearing)) {
            Some(task) => cancelled(hearing, task, reply, records),
            None => reply.say("truck-none", &[("unit", unit.as_str().into())]),
        }
    }
}

/// Takes that the truck has not come: where it should have by now, the dispatchers hear of it.
fn no_show(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let Some(task) = booked(hearing, reply) else {
        if reply.asks.is_none() {
            which(hearing, reply);
        }
        return;
    };
    has_not_come(hearing, &task, reply, records);
}

/// Takes that none of several trucks has come.
fn none_came(
    hearing: &Hearing<'_>,
    units: &[UnitName],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let tasks = hearing.desk.book.tasks();
    for unit in units {
        match tasks.open_task(unit, kind(hearing)) {
            Some(task) => has_not_come(hearing, task, reply, records),
            None => reply.say("truck-none", &[("unit", unit.as_str().into())]),
        }
    }
}

fn has_not_come(
    hearing: &Hearing<'_>,
    task: &Task,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let unit = task.unit.as_ref().map_or("", UnitName::as_str);
    if task.called.is_none() {
        return reply.say("truck-none", &[("unit", unit.into())]);
    }
    if let Some(promised) = task.promised.filter(|at| *at > hearing.now) {
        let args = [("unit", unit.into()), ("time", promised.into())];
        return reply.say("truck-not-due", &args);
    }
    reply.adopt(task);
    match task.promised {
        Some(promised) => {
            let age = reply.voice.age(promised);
            let args = [
                ("unit", unit.into()),
                ("time", promised.into()),
                ("age", age.into()),
            ];
            reply.say("truck-no-show-late", &args);
        }
        None => reply.say("truck-no-show", &[("unit", unit.into())]),
    }
    tell(hearing, task.id, "truck-no-show-told", &[], reply);
    reply.board.change(TaskChange::Escalated { id: task.id });
    let alarm = reply.board.tasks().task(task.id).and_then(alarm_of_task);
    let at = hearing.now;
    records.extend(alarm.map(|change| Record::Alarm { at, change }));
}

fn moved(hearing: &Hearing<'_>, task: &Task, at: DateTime<Utc>, reply: &mut Reply<'_>) {
    reply.adopt(task);
    reply.board.change(TaskChange::Called {
        id: task.id,
        by: hearing.member.id.clone(),
        promised: Some(at),
    });
    let unit = task.unit.as_ref();
    let needed = unit.and_then(|unit| Some(hearing.asked_about(unit).outlook.waste?.p10));
    too_late(task.due, needed, Some(at), reply);
    if task.due.is_some_and(|due| at > due) {
        tell(
            hearing,
            task.id,
            "truck-late-told",
            &[("time", at.into())],
            reply,
        );
    }
}

/// Tells the other dispatchers, with the task as it stands now.
fn tell(
    hearing: &Hearing<'_>,
    id: u32,
    key: &str,
    more: &[(&str, Arg<'_>)],
    reply: &mut Reply<'_>,
) {
    let Some(task) = reply.board.tasks().task(id).cloned() else {
        return;
    };
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing) {
        let who = voice.person(me).into_owned();
        let unit = task.unit.as_ref().map_or("", UnitName::as_str);
        let mut args = vec![("who", who.into()), ("unit", unit.into())];
        args.extend(more.iter().cloned());
        let answer = voice.say("speak-answer-task", &[("id", task.id.into())]);
        let text = format!("{}\n{}\n{answer}", voice.say(key, &args), voice.task(&task));
        reply.others.push(
            choices::for_task(Outgoing::to(&to.id, text), &voice, task.id).of_level(Level::Notice),
        );
    }
}
