//! Tasks: one open task a unit and kind, numbered from 1, numbers never used again.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::{MessageKey, Personal, TaskChange};
use crate::finding::{FindingId, TaskKind};
use crate::heard::UnitName;

/// What was asked for, or given a new time, this short a while ago is not late yet: nobody can have done it.
const ASKED_JUST_NOW: TimeDelta = TimeDelta::minutes(10);

/// Work to be done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Task {
    /// Its number.
    pub id: u32,
    /// The trailer, where it is about one.
    pub unit: Option<UnitName>,
    /// What has to be done.
    pub kind: TaskKind,
    /// When it must be done by; for a pump-out, when the truck must be on site.
    pub due: Option<DateTime<Utc>>,
    /// When the truck must be called by: due less the hauler's lead and an hour.
    pub call_by: Option<DateTime<Utc>>,
    /// When it was opened.
    pub opened: DateTime<Utc>,
    /// Who or what opened it: a crew id, or the finding's id.
    pub by: String,
    /// The finding that asked for it.
    pub finding: Option<FindingId>,
    /// The message that opened it, so that taking it back closes the task.
    pub cause: Option<MessageKey>,
    /// Who took it.
    pub taken_by: Option<String>,
    /// Who gave it to them, where they were given it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub given_by: Option<String>,
    /// When whoever does it was called, where somebody said so.
    #[serde(default)]
    pub called: Option<DateTime<Utc>>,
    /// When they promised to come.
    #[serde(default)]
    pub promised: Option<DateTime<Utc>>,
    /// Who said that they were called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub called_by: Option<String>,
    /// Since when whoever was called is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub here: Option<DateTime<Utc>>,
    /// Whether it is open.
    pub state: TaskState,
    /// The message that closed it.
    pub closed_cause: Option<MessageKey>,
    /// When the dispatcher was told that it is late.
    pub escalated: Option<DateTime<Utc>>,
    /// When it was due as the dispatcher was told.
    #[serde(default)]
    pub told_due: Option<DateTime<Utc>>,
    /// When its time last moved.
    #[serde(default)]
    pub moved: Option<DateTime<Utc>>,
    /// When somebody asked for it to be done by, at the latest: a forecast moves it to an earlier time only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wanted: Option<DateTime<Utc>>,
    /// What a guided check found, as the key of its text, such as `cause-element` or `load-water-heater`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub found: Option<String>,
    /// What has to be done, in the words of whoever opened it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<Personal>,
    /// When it was closed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed: Option<DateTime<Utc>>,
}

/// Whether a task is open, and how it ended.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TaskState {
    /// To be done.
    Open,
    /// Done.
    Done,
    /// Dropped, with the reason.
    Dropped(String),
}

impl TaskState {
    /// Returns the state's code, as C4 prints it.
    pub fn code(&self) -> &'static str {
        match self {
            TaskState::Open => "open",
            TaskState::Done => "done",
            TaskState::Dropped(_) => "dropped",
        }
    }
}

impl Task {
    /// Tells whether its time is what somebody asked for, and no limit that was foreseen.
    pub fn is_by_wish(&self) -> bool {
        self.wanted.is_some() && self.wanted == self.due
    }

    /// Tells whether its time is past and somebody could have done it by now.
    pub fn is_late(&self, now: DateTime<Utc>) -> bool {
        let asked = self.moved.max(Some(self.opened));
        let past = self.due.is_some_and(|due| due < now);
        let waits = self.is_open() && self.here.is_none();
        waits && past && asked.is_none_or(|asked| now - asked >= ASKED_JUST_NOW)
    }

    /// Returns when it must be done, seen from `now`: a truck that has not come in time is wanted at once.
    pub fn due_from(&self, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
        let waits = self.is_open() && self.kind == TaskKind::PumpOut;
        self.due.map(|due| if waits { due.max(now) } else { due })
    }

    /// Tells whether it is still to be done.
    pub fn is_open(&self) -> bool {
        self.state == TaskState::Open
    }
}

/// How long a closed task is kept at hand.
const KEPT: TimeDelta = TimeDelta::days(14);

/// All tasks, and which of them are open on which trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Tasks {
    all: BTreeMap<u32, Task>,
    open: BTreeMap<UnitName, BTreeSet<u32>>,
    last: u32,
}

impl Tasks {
    /// Returns the tasks of some trailers, and those numbered `also`, as a board to try changes on.
    pub fn of(&self, units: &BTreeSet<UnitName>, also: impl IntoIterator<Item = u32>) -> Tasks {
        let mut board = Tasks {
            last: self.last,
            ..Tasks::default()
        };
        let named = units
            .iter()
            .flat_map(|unit| self.open.get(unit).into_iter().flatten())
            .copied();
        for id in named.chain(also) {
            if let Some(task) = self.all.get(&id) {
                board.put(task.clone());
            }
        }
        board
    }

    /// Finds a task by number.
    pub fn task(&self, id: u32) -> Option<&Task> {
        self.all.get(&id)
    }

    /// Iterates over all tasks at hand, by number.
    pub fn all(&self) -> impl Iterator<Item = &Task> {
        self.all.values()
    }

    /// Iterates over the open tasks, by number.
    pub fn open(&self) -> impl Iterator<Item = &Task> {
        self.all.values().filter(|task| task.is_open())
    }

    /// Iterates over the open tasks of a trailer, by number.
    pub fn open_on<'a>(&'a self, unit: &UnitName) -> impl Iterator<Item = &'a Task> {
        self.open
            .get(unit)
            .into_iter()
            .flatten()
            .filter_map(|id| self.all.get(id))
    }

    /// Finds the open task of a kind on a trailer: there is one at most, but for those in somebody's own words.
    pub fn open_task(&self, unit: &UnitName, kind: TaskKind) -> Option<&Task> {
        self.open_on(unit)
            .find(|task| task.kind == kind && task.words.is_none())
    }

    /// Returns the number that the next task gets: numbers are never used again.
    pub fn next(&self) -> u32 {
        self.last + 1
    }

    /// Takes in a change.
    pub fn apply(&mut self, at: DateTime<Utc>, change: &TaskChange) {
        match change {
            TaskChange::Opened { task } => {
                self.last = self.last.max(task.id);
                self.put(task.clone());
                let stale = |task: &Task| !task.is_open() && at - task.opened > KEPT;
                self.all.retain(|_, task| !stale(task));
            }
            TaskChange::Redated { id, due, call_by } => self.with(*id, |task| {
                task.due = *due;
                task.call_by = *call_by;
                task.moved = Some(at);
            }),
            TaskChange::Wanted { id, by } => self.with(*id, |task| task.wanted = *by),
            TaskChange::Called { id, by, promised } => self.with(*id, |task| {
                task.called = Some(at);
                task.promised = *promised;
                task.called_by = Some(by.clone());
                task.here = None;
            }),
            TaskChange::Here { id, by } => self.with(*id, |task| {
                task.called = task.called.or(Some(at));
                task.called_by.get_or_insert_with(|| by.clone());
                task.here = Some(at);
            }),
            TaskChange::Uncalled { id, .. } => self.with(*id, |task| {
                task.called = None;
                task.promised = None;
                task.called_by = None;
                task.here = None;
                // the dispatchers hear of it anew
                task.escalated = None;
            }),
            TaskChange::Restored { task } => self.put(task.clone()),
            TaskChange::Taken { id, by, from } => self.with(*id, |task| {
                task.taken_by = Some(by.clone());
                task.given_by.clone_from(from);
            }),
            TaskChange::Done { id, cause, .. } => self.with(*id, |task| {
                task.state = TaskState::Done;
                task.closed = Some(at);
                task.closed_cause = cause.clone();
            }),
            TaskChange::Dropped {
                id, reason, cause, ..
            } => self.with(*id, |task| {
                task.state = TaskState::Dropped(reason.clone());
                task.closed = Some(at);
                task.closed_cause = cause.clone();
            }),
            TaskChange::Reopened { id } => self.with(*id, |task| {
                task.state = TaskState::Open;
                task.closed_cause = None;
                task.closed = None;
            }),
            TaskChange::Escalated { id } => self.with(*id, |task| {
                task.escalated = Some(at);
                task.told_due = task.due;
            }),
        }
    }

    fn with(&mut self, id: u32, change: impl FnOnce(&mut Task)) {
        if let Some(mut task) = self.all.remove(&id) {
            change(&mut task);
            self.put(task);
        }
    }

    fn put(&mut self, task: Task) {
        if let Some(unit) = &task.unit {
            let open = self.open.entry(unit.clone()).or_default();
            if task.is_open() {
                open.insert(task.id);
            } else {
                open.remove(&task.id);
                if open.is_empty() {
                    self.open.remove(unit);
                }
            }
        }
        self.all.insert(task.id, task);
    }
}
