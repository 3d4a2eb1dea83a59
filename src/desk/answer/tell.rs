//! How a unit stands, what was reported on it, what is coming, which tasks are open.

use super::reply::Reply;
use crate::book::Task;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::standing;
use crate::fleet::CrewMember;
use crate::heard::PlanKind;
use crate::reply::{Past, Status};

/// How many reports a history tells.
const HISTORY_LINES: usize = 8;

pub(super) fn status(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let decided = standing::in_force(hearing, &case.unit, &reply.voice);
    reply.lines.extend(decided);
    for finding in case.findings() {
        if !reply
            .findings
            .iter()
            .any(|other| other.id == finding.id && other.unit == finding.unit)
        {
            reply.findings.push(finding);
        }
    }
    how_it_stands(case, reply);
}

/// Where it is, its last readings, what is wrong and what is coming, its tasks.
pub(super) fn how_it_stands(case: &Case, reply: &mut Reply<'_>) {
    let place = case.place();
    let text = reply.voice.status(&Status {
        unit: &case.unit,
        site: place.as_deref(),
        state: &case.now,
        spec: case.spec(),
        outlook: Some(&case.outlook),
        tasks: reply.board.tasks().open_on(&case.unit).collect(),
    });
    reply.lines.push(text);
}

pub(super) fn history(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let kept = hearing.desk.book.unit(&case.unit).into_iter();
    let mut past: Vec<Past<'_>> = kept
        .flat_map(|kept| kept.reports())
        .map(|(at, from, entry)| Past { at, from, entry })
        .collect();
    past.drain(..past.len().saturating_sub(HISTORY_LINES));
    let text = reply.voice.history(&case.unit, past, case.spec());
    reply.lines.push(text);
}

pub(super) fn forecast(_hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let unit = case.unit.as_str();
    if case.job().is_none() {
        reply.say("forecast-no-job", &[("unit", unit.into())]);
        return;
    }
    let text = reply.voice.forecast(&case.outlook);
    reply.say("forecast-of", &[("unit", unit.into())]);
    reply.lines.push(text);
    let pump_outs: Vec<Task> = reply
        .board
        .tasks()
        .open_on(&case.unit)
        .filter(|task| task.kind == crate::finding::TaskKind::PumpOut)
        .cloned()
        .collect();
    for task in &pump_outs {
        let line = reply.voice.task(task);
        reply.lines.push(line);
    }
}

/// Lists the open tasks: all of them, the sender's own, or those of the person who is named.
pub(super) fn tasks(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    reply.every_task = true;
    let mine = hearing
        .heard
        .plans
        .iter()
        .any(|plan| plan.kind == PlanKind::Mine);
    let mine = mine || hearing.desk.phrases.holds("tasks", "mine", hearing.text);
    let whose = if mine {
        Some(hearing.member)
    } else {
        person_named(hearing)
    };
    let open: Vec<&Task> = hearing
        .desk
        .book
        .tasks()
        .open()
        .filter(|task| whose.is_none_or(|member| task.taken_by.as_ref() == Some(&member.id)))
        .collect();
    match whose {
        Some(member) if open.is_empty() && member.id == hearing.member.id => {
            reply.say("tasks-none-mine", &[]);
        }
        Some(member) if open.is_empty() => {
            reply.say("tasks-none-of", &[("who", member.name.as_str().into())]);
        }
        _ => {
            let text = reply.voice.tasks(open);
            reply.lines.push(text);
        }
    }
}

/// Finds the person of the crew whom a message names: "tasks for Juno", "tareas de Lupe", "juno's tasks".
pub(super) fn person_named<'a>(hearing: &'a Hearing<'_>) -> Option<&'a CrewMember> {
    let text = plain(hearing.text);
    let says = |name: &str| {
        let name = plain(name);
        let words = format!(" {text} ");
        !name.is_empty()
            && (words.contains(&format!(" {name} ")) || words.contains(&format!(" {name}s ")))
    };
    let crew = hearing.fleet.crew.values();
    let mut named = crew.filter(|member| says(&member.id) || says(&member.name));
    named.next()
}
