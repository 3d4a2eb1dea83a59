//! Tasks in words. A task is not a truck: it says that nobody called until someone did.

use chrono::{DateTime, DurationRound, TimeDelta, Utc};

use super::voice::{Arg, Voice};
use crate::book::{Task, TaskState};
use crate::finding::{FindingId, TaskKind};
use crate::heard::UnitName;

/// A call that is so much behind its time is late.
const LATE: TimeDelta = TimeDelta::minutes(10);
/// Nobody drives to the minute: a truck that is called at once is there to the next of these.
const TEN_MINUTES: TimeDelta = TimeDelta::minutes(10);

/// The reason by which a task was dropped because the message that opened it was taken back.
pub const TAKEN_BACK: &str = "undo";
/// The reason under which a task is dropped whose trailer has left the site.
pub const HAS_LEFT: &str = "left";
/// The reason under which draining is dropped where the power is back.
pub const NO_NEED: &str = "power-back";

/// What happened to a task in this turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TaskTurn {
    /// It was opened.
    Opened,
    /// It stood open before, and its time moved.
    Moved,
    /// It stood open before, and this turn asks for it again.
    Stands,
    /// Somebody took it.
    Taken,
    /// It was done, or dropped.
    Closed,
    /// It was opened again.
    Reopened,
}

/// A task that a reply speaks of.
#[derive(Debug, Clone, Copy)]
pub struct TaskNote<'a> {
    /// The task, as it stands after this turn.
    pub task: &'a Task,
    /// What happened to it.
    pub turn: TaskTurn,
}

impl Voice<'_> {
    /// Says a task on one line: `41 pump-out 12: truck on site by 19:15, call by 15:45. Nobody called yet.`
    pub fn task(&self, task: &Task) -> String {
        let mut out = self.task_head(task);
        if let Some(due) = task.due {
            out.push_str(": ");
            let key = if task.kind == TaskKind::PumpOut {
                "task-truck-by"
            } else {
                "task-by"
            };
            self.write(&mut out, key, &[("time", due.into())]);
            if let Some(wanted) = task.wanted.filter(|wanted| *wanted - due >= LATE) {
                self.write(&mut out, "task-wanted-by", &[("time", wanted.into())]);
            }
            self.write_call(&mut out, task);
        }
        out.push_str(". ");
        self.write_standing(&mut out, task);
        // one that was promised and did not come is late by the promise
        let past = |at: &DateTime<Utc>| *at + LATE <= self.now();
        let waits = task.is_open() && task.called.is_some() && task.here.is_none();
        let missed = task.promised.filter(past).filter(|_| waits);
        if let Some(promised) = missed {
            out.push(' ');
            let age = self.age(promised);
            self.write(&mut out, "task-truck-is-over", &[("age", age.into())]);
        } else if let Some(due) = task.due.filter(|_| task.is_late(self.now())) {
            out.push(' ');
            self.write(&mut out, "task-is-late", &[("age", self.age(due).into())]);
        }
        self.write_too_late(&mut out, task);
        out
    }

    /// Says by when the truck must be called, or how long ago that was.
    fn write_call(&self, out: &mut String, task: &Task) {
        let Some(call_by) = task.call_by.filter(|_| task.called.is_none()) else {
            return;
        };
        out.push_str(", ");
        let overdue = self.now() - call_by;
        if overdue < TimeDelta::zero() {
            self.write(out, "task-call-by", &[("time", call_by.into())]);
        } else if overdue < LATE || task.is_late(self.now()) {
            self.write(out, "task-call-now", &[]);
        } else {
            let args = [("age", self.age(call_by).into())];
            self.write(out, "task-call-late", &args);
        }
    }

    /// Says of a truck that nobody called and that can no more come in time when it would come, and to be ready.
    fn write_too_late(&self, out: &mut String, task: &Task) {
        let Some(here) = self.truck_too_late(task) else {
            return;
        };
        let missed = task.due.is_some_and(|due| due <= self.now());
        let key = match missed {
            // what somebody wished is no limit of the tank
            _ if task.is_by_wish() => "task-truck-after-wish",
            // nobody uses what is on the hook
            _ if task.finding == Some(FindingId::TowWasteAboard) => "task-truck-to-tow",
            true => "task-truck-too-late",
            false => "task-truck-may-be-late",
        };
        out.push(' ');
        self.write(out, key, &[("time", here.into())]);
    }

    /// Returns when a truck would come that nobody has called yet, where that is after it is due.
    pub fn truck_too_late(&self, task: &Task) -> Option<DateTime<Utc>> {
        let waits = task.is_open() && task.kind == TaskKind::PumpOut && task.called.is_none();
        let due = task.due.filter(|_| waits)?;
        let here = self.now() + self.truck_notice(task.unit.as_ref()?)?;
        let here = (here + TEN_MINUTES - TimeDelta::nanoseconds(1))
            .duration_trunc(TEN_MINUTES)
            .unwrap_or(here);
        (here > due).then_some(here)
    }

    /// Says by when a task is due, and who has it: `By 17:26. Nobody called yet: task 4.`
    pub fn task_in_short(&self, task: &Task) -> String {
        let mut out = String::new();
        // a truck that is there is late no more
        if let Some(due) = task.due.filter(|_| task.here.is_none()) {
            let late = task.is_open() && due < self.now();
            match late {
                true => {
                    let args = [("time", due.into()), ("age", self.age(due).into())];
                    self.write(&mut out, "task-was-due", &args);
                }
                false => self.write(&mut out, "task-due-by", &[("time", due.into())]),
            }
        }
        self.write_task_tail(&mut out, task);
        self.write_too_late(&mut out, task);
        out.trim_start().to_owned()
    }

    /// Returns the notice that the hauler wants at the site of a trailer.
    fn truck_notice(&self, unit: &UnitName) -> Option<TimeDelta> {
        let fleet = self.fleet()?;
        let site = fleet.site_of(fleet.job_of(unit, self.now(), None)?)?;
        Some(site.pump_truck.notice())
    }

    /// Says the open tasks, one a line, soonest first; those without a time come last.
    pub fn tasks<'t>(&self, tasks: impl IntoIterator<Item = &'t Task>) -> String {
        let mut tasks: Vec<&Task> = tasks.into_iter().collect();
        if tasks.is_empty() {
            return self.word("tasks-none");
        }
        tasks.sort_by_key(|task| (task.due.is_none(), task.due, task.id));
        let mut out = self.say("tasks-head", &[("count", tasks.len().into())]);
        for task in tasks {
            out.push('\n');
            out.push_str(&self.task(task));
        }
        out
    }

    /// Says what happened to a task in this turn.
    pub fn task_note(&self, note: TaskNote<'_>) -> String {
        let task = note.task;
        let head = self.task_head(task);
        match note.turn {
            TaskTurn::Opened => self.say("task-opened", &[("task", self.task(task).into())]),
            TaskTurn::Moved => self.say("task-moved", &[("task", self.task(task).into())]),
            TaskTurn::Stands => self.say("task-stands", &[("task", self.task(task).into())]),
            TaskTurn::Reopened => self.say("task-reopened", &[("task", self.task(task).into())]),
            TaskTurn::Taken => {
                let who = task.taken_by.as_deref().unwrap_or("?");
                let args = [("task", Arg::from(head)), ("who", self.person(who).into())];
                self.say("task-taken", &args)
            }
            TaskTurn::Closed => match &task.state {
                TaskState::Dropped(reason) if reason == TAKEN_BACK => {
                    self.say("task-taken-back", &[("task", head.into())])
                }
                TaskState::Dropped(reason) if reason == HAS_LEFT => {
                    self.say("task-has-left", &[("task", head.into())])
                }
                TaskState::Dropped(reason) if reason == NO_NEED => {
                    self.say("task-no-need", &[("task", head.into())])
                }
                TaskState::Dropped(reason) => {
                    let args = [
                        ("task", Arg::from(head)),
                        ("reason", self.quote(reason).into()),
                    ];
                    self.say("task-dropped", &args)
                }
                _ => self.say("task-done", &[("task", head.into())]),
            },
        }
    }

    /// Says, at the end of a finding, which task stands for it and who has it: `Nobody called yet: task 41.`
    pub(super) fn write_task_tail(&self, out: &mut String, task: &Task) {
        out.push(' ');
        if let Some(here) = task.here {
            let args = [("id", Arg::Count(task.id.into())), ("time", here.into())];
            return self.write(out, "tail-here", &args);
        }
        if task.called.is_some() {
            let id = ("id", Arg::Count(task.id.into()));
            match task.promised {
                Some(at) => self.write(out, "tail-called-for", &[id, ("time", at.into())]),
                None => self.write(out, "tail-called", &[id]),
            }
            return;
        }
        match (&task.taken_by, task.kind) {
            (Some(who), _) => {
                let args = [
                    ("id", Arg::Count(task.id.into())),
                    ("who", self.person(who).into()),
                ];
                self.write(out, "tail-taken", &args);
            }
            (None, TaskKind::PumpOut) => {
                self.write(
                    out,
                    "tail-nobody-called",
                    &[("id", Arg::Count(task.id.into()))],
                );
            }
            (None, _) => self.write(out, "tail-task", &[("id", Arg::Count(task.id.into()))]),
        }
    }

    /// Says number, kind and unit: `41 pump-out 12`.
    pub fn task_head(&self, task: &Task) -> String {
        let mut out = task.id.to_string();
        out.push(' ');
        out.push_str(&self.coded("task", task.kind.code()));
        if let Some(unit) = &task.unit {
            out.push(' ');
            out.push_str(unit.as_str());
        }
        if let Some(found) = &task.found {
            let what = self.word(found);
            self.write(&mut out, "task-found", &[("what", what.into())]);
        }
        if let Some(words) = &task.words {
            out.push_str(", ");
            out.push_str(&self.quote(words.text()));
        }
        out
    }

    /// Says that whoever does it was called, on whose word, and when they come.
    fn write_called(&self, out: &mut String, task: &Task) {
        if let Some(here) = task.here {
            return self.write(out, "task-is-here", &[("time", here.into())]);
        }
        let mut key = String::from("task-called");
        let mut args = Vec::new();
        if let Some(who) = &task.called_by {
            key.push_str("-by");
            args.push(("who", Arg::from(self.person(who))));
        }
        if let Some(at) = task.promised {
            key.push_str("-for");
            args.push(("time", at.into()));
        }
        self.write(out, &key, &args);
    }

    fn write_standing(&self, out: &mut String, task: &Task) {
        match (&task.state, &task.taken_by) {
            (TaskState::Done, _) => self.write(out, "task-is-done", &[]),
            (TaskState::Dropped(_), _) => self.write(out, "task-is-dropped", &[]),
            (TaskState::Open, Some(who)) => {
                self.write(out, "task-has-it", &[("who", self.person(who).into())]);
                if task.called.is_some() {
                    out.push(' ');
                    self.write_called(out, task);
                } else if needs_a_call(task.kind) {
                    out.push(' ');
                    self.write(out, "task-nobody-called", &[]);
                }
            }
            (TaskState::Open, None) if task.called.is_some() => self.write_called(out, task),
            (TaskState::Open, None) if needs_a_call(task.kind) => {
                self.write(out, "task-nobody-called", &[]);
            }
            (TaskState::Open, None) => self.write(out, "task-nobody-has-it", &[]),
        }
    }
}

/// Tells whether someone from outside has to be called for it.
fn needs_a_call(kind: TaskKind) -> bool {
    matches!(
        kind,
        TaskKind::PumpOut | TaskKind::Electrician | TaskKind::Plumber
    )
}
