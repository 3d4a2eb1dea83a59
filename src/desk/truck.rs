//! A pump truck that was called and does not come, or comes at another time.

use chrono::{DateTime, Utc};

use super::answer::Reply;
use super::inbound::Outgoing;
use super::receive::Hearing;
use super::tick::dispatchers;
use super::when;
use crate::book::{Personal, Task, TaskChange};
use crate::dialogue::About;
use crate::finding::{Level, TaskKind};
use crate::heard::{PlanKind, UnitName};
use crate::reply::Arg;

/// Takes back or moves what was booked, where the message says that the truck is off or late.
pub(super) fn told(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    let heard = &hearing.heard;
    let acted_on =
        |kind: &PlanKind| matches!(kind, PlanKind::Booked { .. } | PlanKind::Need { .. });
    if heard.ask.is_some()
        || heard.command.is_some()
        || heard.plans.iter().any(|plan| acted_on(&plan.kind))
        || text.trim_end().ends_with('?')
        || !phrases.holds("truck", "who", text)
        || phrases.holds("truck", "not", text)
    {
        return;
    }
    let off = phrases.holds("truck", "off", text);
    let late = phrases.holds("truck", "late", text);
    let Some(task) = booked(hearing, reply) else {
        if (off || late) && reply.asks.is_none() {
            which(hearing, reply);
        }
        return;
    };
    let zone = task
        .unit
        .as_ref()
        .and_then(|unit| hearing.fleet.job_of(unit, hearing.now, None))
        .map_or(hearing.fleet.time_zone, |job| job.time_zone);
    let comes = when::coming(text, hearing.now, zone);
    match (comes, off, late) {
        (Some(at), _, true) => moved(hearing, &task, at, reply),
        (_, true, _) => cancelled(hearing, &task, reply),
        (None, false, true) => {
            let unit = task.unit.as_ref().map_or("", UnitName::as_str).to_owned();
            reply.say("truck-late-when", &[("unit", unit.into())]);
        }
        _ => {}
    }
}

/// Says that the truck comes after the tank may be full.
pub(super) fn too_late(
    due: Option<DateTime<Utc>>,
    promised: Option<DateTime<Utc>>,
    reply: &mut Reply<'_>,
) {
    if let (Some(promised), Some(due)) = (promised, due)
        && promised > due
    {
        let args = [("due", due.into()), ("promised", promised.into())];
        reply.say("booked-too-late", &args);
    }
}

/// Finds the booking that is meant: on the trailer named, else the sender's, else the only one there is.
fn booked(hearing: &Hearing<'_>, reply: &Reply<'_>) -> Option<Task> {
    let tasks = hearing.desk.book.tasks();
    let on = |unit: &UnitName| {
        let task = tasks.open_task(unit, TaskKind::PumpOut)?;
        reply.board.tasks().task(task.id).or(Some(task)).cloned()
    };
    let named = hearing.names();
    if let Some(unit) = named.first() {
        return on(unit);
    }
    let known = hearing.talk.unit_at(hearing.inbound.at);
    if let Some(task) = known.and_then(on).filter(|task| task.called.is_some()) {
        return Some(task);
    }
    let mut called = tasks
        .open()
        .filter(|task| task.kind == TaskKind::PumpOut && task.called.is_some());
    match (called.next(), called.next()) {
        (Some(only), None) => Some(only.clone()),
        _ => None,
    }
}

/// Asks for which trailer the truck was; where nothing is booked, says so.
fn which(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let named = hearing.names();
    if let Some(unit) = named.first() {
        reply.say("truck-none", &[("unit", unit.as_str().into())]);
        return;
    }
    let tasks = hearing.desk.book.tasks().open();
    let likely: Vec<UnitName> = tasks
        .filter(|task| task.kind == TaskKind::PumpOut && task.called.is_some())
        .filter_map(|task| task.unit.clone())
        .take(4)
        .collect();
    if likely.is_empty() {
        reply.say("truck-none-booked", &[]);
        return;
    }
    reply.asks = Some(About::WhichUnitOf {
        text: hearing.text.to_owned(),
        likely,
    });
}

fn cancelled(hearing: &Hearing<'_>, task: &Task, reply: &mut Reply<'_>) {
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
    reply.say("truck-off", &[("unit", unit.as_str().into())]);
    tell(hearing, task.id, "truck-off-told", &[], reply);
}

fn moved(hearing: &Hearing<'_>, task: &Task, at: DateTime<Utc>, reply: &mut Reply<'_>) {
    reply.adopt(task);
    reply.board.change(TaskChange::Called {
        id: task.id,
        by: hearing.member.id.clone(),
        promised: Some(at),
    });
    too_late(task.due, Some(at), reply);
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
    for to in dispatchers(&hearing.fleet).filter(|to| to != me) {
        let Some(member) = hearing.fleet.crew.get(to) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let who = voice.person(me).into_owned();
        let unit = task.unit.as_ref().map_or("", UnitName::as_str);
        let mut args = vec![("who", who.into()), ("unit", unit.into())];
        args.extend(more.iter().cloned());
        let text = format!("{}\n{}", voice.say(key, &args), voice.task(&task));
        reply.others.push(Outgoing {
            to: to.to_owned(),
            chat: None,
            text: Personal::new(text),
            level: Some(Level::Notice),
            answers: None,
        });
    }
}
