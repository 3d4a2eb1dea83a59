//! Every task, a row each, with who did what to it when.

use std::collections::BTreeMap;
use std::io::Write;

use chrono::{DateTime, Utc};

use super::sheet::{Cell, Sheet};
use super::span::Span;
use super::{CliError, Walk};
use crate::book::{Record, Task, TaskChange, TaskState};

const COLUMNS: [&str; 17] = [
    "task",
    "unit",
    "kind",
    "opened",
    "opened_by",
    "finding",
    "due",
    "call_by",
    "called",
    "called_by",
    "promised",
    "taken_by",
    "told_dispatcher",
    "state",
    "closed",
    "closed_by",
    "reason",
];

/// A task with what the book does not keep.
struct Told {
    task: Task,
    called_by: Option<String>,
    closed: Option<(DateTime<Utc>, String)>,
}

pub(super) fn export<W: Write>(
    walk: &Walk<'_>,
    span: &Span,
    sheet: &mut Sheet<W>,
) -> Result<(), CliError> {
    let mut tasks: BTreeMap<u32, Told> = BTreeMap::new();
    walk.records(&["task"], |_, record| {
        if let Record::Task { at, change } = record {
            take_in(&mut tasks, at, change);
        }
        Ok(())
    })?;
    sheet.head(&COLUMNS, &[])?;
    for told in tasks.values().filter(|told| span.holds(told.task.opened)) {
        sheet.row(cells(told))?;
    }
    Ok(())
}

fn take_in(tasks: &mut BTreeMap<u32, Told>, at: DateTime<Utc>, change: TaskChange) {
    let mut with = |id: u32, change: &dyn Fn(&mut Told)| {
        if let Some(told) = tasks.get_mut(&id) {
            change(told);
        }
    };
    match change {
        TaskChange::Opened { task } => {
            let told = Told {
                called_by: None,
                closed: None,
                task,
            };
            tasks.insert(told.task.id, told);
        }
        TaskChange::Redated { id, due, call_by } => with(id, &|told| {
            told.task.due = due;
            told.task.call_by = call_by;
        }),
        TaskChange::Wanted { id, by } => with(id, &|told| told.task.wanted = by),
        TaskChange::Called { id, by, promised } => with(id, &|told| {
            told.task.called = Some(at);
            told.task.promised = promised;
            told.called_by = Some(by.clone());
        }),
        TaskChange::Here { id, by } => with(id, &|told| {
            told.task.called = told.task.called.or(Some(at));
            told.task.here = Some(at);
            told.called_by.get_or_insert_with(|| by.clone());
        }),
        TaskChange::Uncalled { id, .. } => with(id, &|told| {
            told.task.called = None;
            told.task.promised = None;
            told.called_by = None;
        }),
        TaskChange::Restored { task } => with(task.id, &|told| told.task = task.clone()),
        TaskChange::Taken { id, by, .. } => with(id, &|told| told.task.taken_by = Some(by.clone())),
        TaskChange::Done { id, by, .. } => with(id, &|told| {
            told.task.state = TaskState::Done;
            told.closed = Some((at, by.clone()));
        }),
        TaskChange::Dropped { id, by, reason, .. } => with(id, &|told| {
            told.task.state = TaskState::Dropped(reason.clone());
            told.closed = Some((at, by.clone()));
        }),
        TaskChange::Reopened { id } => with(id, &|told| {
            told.task.state = TaskState::Open;
            told.closed = None;
        }),
        TaskChange::Escalated { id } => with(id, &|told| told.task.escalated = Some(at)),
    }
}

fn cells(told: &Told) -> Vec<Cell> {
    let task = &told.task;
    let time = |at: Option<DateTime<Utc>>| Cell::maybe(at, Cell::Time);
    let words = |text: Option<&str>| Cell::text(text.unwrap_or_default());
    let reason = match &task.state {
        TaskState::Dropped(reason) => reason.as_str(),
        _ => "",
    };
    let unit = task.unit.as_ref().map(|unit| unit.as_str());
    vec![
        Cell::Count(task.id.into()),
        words(unit),
        Cell::text(task.kind.code()),
        Cell::Time(task.opened),
        Cell::text(&task.by),
        words(task.finding.map(|finding| finding.code())),
        time(task.due),
        time(task.call_by),
        time(task.called),
        words(told.called_by.as_deref()),
        time(task.promised),
        words(task.taken_by.as_deref()),
        time(task.escalated),
        Cell::text(task.state.code()),
        time(told.closed.as_ref().map(|(at, _)| *at)),
        words(told.closed.as_ref().map(|(_, by)| by.as_str())),
        Cell::text(reason),
    ]
}
