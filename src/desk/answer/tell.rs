//! How a unit stands, what was reported on it, what is coming, which tasks are open.

use super::reply::Reply;
use crate::book::Task;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::standing;
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

pub(super) fn tasks(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    reply.every_task = true;
    let mine = hearing
        .heard
        .plans
        .iter()
        .any(|plan| plan.kind == PlanKind::Mine);
    let me = Some(&hearing.member.id);
    let open: Vec<&Task> = hearing
        .desk
        .book
        .tasks()
        .open()
        .filter(|task| !mine || task.taken_by.as_ref() == me)
        .collect();
    let text = reply.voice.tasks(open);
    reply.lines.push(text);
}
