//! Tasks: one open task a unit and kind, numbered from 1, numbers never used again.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::record::MessageKey;
use crate::finding::{FindingId, TaskKind};
use crate::heard::UnitName;

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
    /// Whether it is open.
    pub state: TaskState,
    /// The message that closed it.
    pub closed_cause: Option<MessageKey>,
    /// When the dispatcher was told that it is late.
    pub escalated: Option<DateTime<Utc>>,
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
    /// Tells whether it is still to be done.
    pub fn is_open(&self) -> bool {
        self.state == TaskState::Open
    }
}
