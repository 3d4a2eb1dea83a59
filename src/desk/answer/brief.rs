//! A status in short: what is wrong, what to do and by when, and how the trailer stands. "more" tells the rest.
//!
//! What could kill is told in full; so are the cautions that this person was not told lately.

use super::question::to_do;
use super::reply::Reply;
use crate::desk::receive::Hearing;
use crate::desk::repeat;
use crate::desk::situate::Case;
use crate::desk::standing;
use crate::desk::truck;
use crate::finding::{Caution, Finding, FindingId, Level, TaskKind};
use crate::reply::{Arg, Status};

/// How many findings have a line of their own.
const ROWS: usize = 6;

/// Tells how a trailer is, in a few lines.
pub(super) fn status(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let mut findings = case.findings();
    findings.retain(|finding| {
        let told = |other: &Finding| other.id == finding.id && other.unit == finding.unit;
        !reply.findings.iter().any(told)
    });
    findings.sort_by_key(|finding| (finding.order(), finding.id));
    let (deadly, rest): (Vec<Finding>, Vec<Finding>) = findings
        .into_iter()
        .partition(|finding| finding.level == Level::Danger);
    let mut lines: Vec<String> = standing::in_force(hearing, &case.unit, &reply.voice)
        .into_iter()
        .collect();
    lines.extend(rows(hearing, &rest, reply));
    lines.push(how_it_stands(case, reply));
    lines.push(coming(case, reply));
    lines.extend(other_tasks(case, &rest, reply));
    if !rest.is_empty() {
        let unit = ("unit", Arg::from(case.unit.as_str()));
        lines.push(reply.voice.say("status-more", &[unit]));
    }
    lines.retain(|line| !line.is_empty());
    reply.first.extend(lines);
    reply.findings.extend(deadly);
    reply.beside.extend(rest);
}

/// Where it is, who spoke of it last, and what they read.
fn how_it_stands(case: &Case, reply: &Reply<'_>) -> String {
    let place = case.place();
    let status = Status {
        unit: &case.unit,
        site: place.as_deref(),
        state: &case.now,
        spec: case.spec(),
        outlook: None,
        tasks: Vec::new(),
    };
    reply.voice.status_in_short(&status)
}

/// A line for each finding, worst first, with the cautions that this person was not told lately under it.
fn rows(hearing: &Hearing<'_>, findings: &[Finding], reply: &Reply<'_>) -> Vec<String> {
    let mut warned: Vec<Caution> = Vec::new();
    let mut rows = Vec::new();
    for (place, finding) in findings.iter().enumerate() {
        // what can hurt somebody is never left out
        if place >= ROWS && finding.level == Level::Notice {
            continue;
        }
        rows.push(row(finding, reply));
        if repeat::told_lately(finding, &hearing.talk, hearing.now) {
            continue;
        }
        for caution in &finding.cautions {
            if !warned.contains(caution) {
                warned.push(*caution);
                rows.push(format!("  {}", reply.voice.caution(*caution)));
            }
        }
    }
    rows
}

/// What is wrong, what to do and by when: `Now pump-out to book. Call the pump truck. By 17:26. Nobody called yet: task 4.`
fn row(finding: &Finding, reply: &Reply<'_>) -> String {
    let voice = &reply.voice;
    let name = voice.name(finding.id, finding.level);
    let task = finding.unit.as_ref().zip(finding.task.as_ref());
    let task = task.and_then(|(unit, wish)| reply.board.tasks().open_task(unit, wish.kind));
    let called = task.filter(|task| task.called.is_some());
    let pumps = finding.unit.as_ref();
    let pumps = pumps.and_then(|unit| reply.board.tasks().open_task(unit, TaskKind::PumpOut));
    let here = pumps.is_some_and(|task| task.here.is_some());
    let does = match (finding.id, called) {
        (FindingId::WasteBookPumpOut, Some(_)) if here => voice.word("do-truck-here"),
        (FindingId::WasteCloseNow, _) if here => voice.word("do-waste-close-now-here"),
        (FindingId::WasteBookPumpOut, Some(task)) if truck::is_missing(task, voice.now()) => {
            voice.word("do-truck-missing")
        }
        (FindingId::WasteBookPumpOut, Some(_)) => voice.word("do-truck-called"),
        (FindingId::WasteCloseNow, _) if pumps.is_none_or(|task| task.called.is_none()) => {
            voice.word("do-waste-close-now-uncalled")
        }
        _ => to_do(finding, reply),
    };
    let name = match called {
        Some(_) => reply.name(finding),
        None => name,
    };
    if does == name {
        // it has no short words: its action says what to do
        let mut full = finding.clone();
        full.cautions.clear();
        return voice.finding(&full, false);
    }
    let args = [
        (
            "signal",
            Arg::from(voice.opening(finding.level, finding.urgency)),
        ),
        ("name", name.into()),
        ("what", does.into()),
    ];
    // where somebody can be hurt the trailer is named beside the signal word
    let mut row = match &finding.unit {
        Some(unit) if finding.level >= Level::Caution => {
            let unit = [("unit", Arg::from(unit.as_str()))];
            voice.say("status-row-signal", &[&args[..], &unit].concat())
        }
        _ => voice.say("status-row", &args),
    };
    if let Some(task) = task {
        row.push(' ');
        row.push_str(&voice.task_in_short(task));
    }
    row
}

/// What is coming for its tanks and its battery.
fn coming(case: &Case, reply: &Reply<'_>) -> String {
    match case.outlook == crate::outlook::Outlook::default() {
        true => String::new(),
        false => reply.voice.forecast(&case.outlook),
    }
}

/// The open tasks that no finding has told.
fn other_tasks(case: &Case, findings: &[Finding], reply: &Reply<'_>) -> Vec<String> {
    let told = |kind| {
        let wishes = findings.iter().filter_map(|finding| finding.task.as_ref());
        wishes.into_iter().any(|wish| wish.kind == kind)
    };
    let open = reply.board.tasks().open_on(&case.unit);
    open.filter(|task| !told(task.kind))
        .map(|task| {
            let task = reply.voice.task(task);
            reply.voice.say("task-stands", &[("task", task.into())])
        })
        .collect()
}
