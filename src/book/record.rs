//! What a turn decided, as the journal keeps it.

use std::fmt;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::ahead::AheadChange;
use super::incidents::IncidentChange;
use super::lessons::Lesson;
use super::offers::Offer;
use super::people::CrewChange;
use super::refusals::Attempt;
use super::standing::{Override, StandingNote, TakesBack};
use super::tasks::Task;
use super::taught::Taught;
use crate::dialogue::{Talk, Watch};
use crate::finding::{Finding, FindingId, Level};
use crate::fleet::Fleet;
use crate::heard::{Entry, UnitName};

/// Text that belongs to a person: what they wrote, what was written to them, a name, an address on a network.
///
/// It stands in a record as `{"personal": "..."}`. The store salts it, so that it can be taken out later while the
/// journal's chain of hashes still holds; then it reads as none.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Personal {
    /// The text; none once it was forgotten.
    pub personal: Option<String>,
}

impl Personal {
    /// Wraps a text.
    pub fn new(text: impl Into<String>) -> Self {
        Personal {
            personal: Some(text.into()),
        }
    }

    /// Returns the text, or nothing once it was forgotten.
    pub fn text(&self) -> &str {
        self.personal.as_deref().unwrap_or_default()
    }
}

/// What identifies a message on its network, so that it is recorded once: network, chat, message, edit date or 0.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct MessageKey(pub String);

impl MessageKey {
    /// Makes a key.
    pub fn new(network: &str, chat: i64, message: i64, edit: i64) -> Self {
        MessageKey(format!("{network}:{chat}:{message}:{edit}"))
    }

    /// Returns the key of the same message without its edit date: what an edit replaces.
    pub fn unedited(&self) -> &str {
        self.0
            .rsplit_once(':')
            .map_or(self.0.as_str(), |(head, _)| head)
    }
}

impl fmt::Display for MessageKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A part of a message that was not logged, and why.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Unread {
    /// The sender's words.
    pub text: Personal,
    /// A stable code of the reason.
    pub why: String,
}

/// What a message reports on one known trailer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Report {
    /// The trailer.
    pub unit: UnitName,
    /// When it was so: the time written, or the earlier time the sender gave.
    pub at: DateTime<Utc>,
    /// What was reported.
    pub entry: Entry,
    /// True when the report is older than what the book keeps, so that it was logged and changed nothing.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub too_old: bool,
}

/// One message from one person: what it said, what was made of it, what was answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Message {
    /// Its key among all messages of this book: what undo, edits and tasks refer to. It names nobody.
    pub key: MessageKey,
    /// Its key on the network, which may hold a person's chat number.
    #[serde(default)]
    pub network: Personal,
    /// Who sent it.
    pub from: String,
    /// When it was written.
    pub at: DateTime<Utc>,
    /// When it was received.
    pub received: DateTime<Utc>,
    /// What was written.
    pub text: Personal,
    /// What it reports.
    pub reports: Vec<Report>,
    /// What was not understood, and is asked back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub unclear: Vec<Unread>,
    /// What was understood and deliberately not logged.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_aside: Vec<Unread>,
    /// What followed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub findings: Vec<Finding>,
    /// What was answered.
    pub reply: Personal,
    /// The message this one replaces, when it is an edit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub replaces: Option<MessageKey>,
    /// The tasks that it changed, as they stood before, so that taking it back can put them back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tasks_before: Vec<Task>,
}

/// A change to a task.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "change")]
#[allow(missing_docs)] // the fields are those of `Task`
pub enum TaskChange {
    /// A task was opened.
    Opened { task: Task },
    /// Its due time moved.
    Redated {
        id: u32,
        due: Option<DateTime<Utc>>,
        call_by: Option<DateTime<Utc>>,
    },
    /// Somebody asked for it by a time, or for no time any more.
    Wanted { id: u32, by: Option<DateTime<Utc>> },
    /// Somebody said that whoever does it was called, and perhaps when they come.
    Called {
        id: u32,
        by: String,
        promised: Option<DateTime<Utc>>,
    },
    /// Whoever was called for it is there.
    Here { id: u32, by: String },
    /// Whoever was called for it does not come.
    Uncalled { id: u32, by: String },
    /// Somebody took it, or was given it by a dispatcher.
    Taken {
        id: u32,
        by: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        from: Option<String>,
    },
    /// It was done, by a person's word or by an event that does it.
    Done {
        id: u32,
        by: String,
        cause: Option<MessageKey>,
    },
    /// It was dropped.
    Dropped {
        id: u32,
        by: String,
        #[serde(with = "crate::fleet::personal::text")]
        reason: String,
        cause: Option<MessageKey>,
    },
    /// It was opened again, because what closed it was taken back.
    Reopened { id: u32 },
    /// It stands again as it did before a message that was taken back.
    Restored { task: Task },
    /// The dispatcher was told that it is late.
    Escalated { id: u32 },
}

impl TaskChange {
    /// Returns the number of the task that changes.
    pub fn id(&self) -> u32 {
        match self {
            TaskChange::Opened { task } | TaskChange::Restored { task } => task.id,
            TaskChange::Redated { id, .. }
            | TaskChange::Called { id, .. }
            | TaskChange::Wanted { id, .. }
            | TaskChange::Here { id, .. }
            | TaskChange::Uncalled { id, .. }
            | TaskChange::Taken { id, .. }
            | TaskChange::Done { id, .. }
            | TaskChange::Dropped { id, .. }
            | TaskChange::Reopened { id }
            | TaskChange::Escalated { id } => *id,
        }
    }
}

/// A change to an alarm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "change")]
#[allow(missing_docs)] // the fields are those of `Alarm`
pub enum AlarmChange {
    /// It was raised, or said again.
    Raised {
        key: String,
        id: FindingId,
        unit: Option<UnitName>,
        level: Level,
    },
    /// Somebody took note of it.
    Acknowledged { key: String, by: String },
    /// What set it off is over.
    Over { key: String },
}

/// One thing that was decided.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "record")]
#[allow(
    clippy::large_enum_variant,
    reason = "records are made one by one and written down at once"
)]
pub enum Record {
    /// A fleet was loaded.
    Fleet {
        /// When.
        at: DateTime<Utc>,
        /// A digest of the files it came from, to tell whether they changed since.
        digest: String,
        /// What they said.
        fleet: Box<Fleet>,
    },
    /// A message came in and was worked through.
    Message(Box<Message>),
    /// A message was taken back by its sender, or replaced by its edit.
    Undone {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// Which message.
        key: MessageKey,
    },
    /// A task changed.
    Task {
        /// When.
        at: DateTime<Utc>,
        /// How.
        #[serde(flatten)]
        change: TaskChange,
    },
    /// What is open with a person changed.
    Talk {
        /// Who.
        who: String,
        /// What is open now.
        talk: Box<Talk>,
    },
    /// Somebody asked for an alarm.
    Watch {
        /// What to watch.
        watch: Watch,
    },
    /// A watch was answered or dropped.
    Unwatch {
        /// What it watched.
        watch: Watch,
    },
    /// An alarm changed.
    Alarm {
        /// When.
        at: DateTime<Utc>,
        /// How.
        #[serde(flatten)]
        change: AlarmChange,
    },
    /// Somebody who is not on the crew list wrote, or one of the crew tried what they may not do.
    Refused {
        /// When.
        at: DateTime<Utc>,
        /// Their address on the network; the crew id of one of the crew.
        who: Personal,
        /// Whether they were answered with the one neutral line.
        answered: bool,
        /// What they tried.
        #[serde(default)]
        tried: Attempt,
    },
    /// The dispatchers were told what was refused since they last were.
    RefusedTold {
        /// When.
        at: DateTime<Utc>,
    },
    /// A picture came in.
    Photo {
        /// When it was taken up.
        at: DateTime<Utc>,
        /// From whom.
        by: String,
        /// The book's key of its message.
        key: MessageKey,
        /// The trailer it shows, where that is known.
        unit: Option<UnitName>,
        /// What the network calls the file.
        file: Personal,
    },
    /// Somebody said which trailer their last pictures show.
    PhotoOf {
        /// When.
        at: DateTime<Utc>,
        /// Who.
        by: String,
        /// The trailer.
        unit: UnitName,
    },
    /// Buttons were offered with a message.
    Offered {
        /// When.
        at: DateTime<Utc>,
        /// To whom.
        who: String,
        /// In which chat.
        #[serde(with = "crate::fleet::personal::number")]
        chat: Option<i64>,
        /// The buttons.
        offers: Vec<Offer>,
    },
    /// A button was pressed, and the press counts.
    Pressed {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        who: String,
        /// The digest of the button's key.
        digest: String,
    },
    /// Who works here changed, or how somebody is served.
    Crew {
        /// When.
        at: DateTime<Utc>,
        /// By whom, a crew id; empty for the command line.
        by: String,
        /// How.
        #[serde(flatten)]
        change: CrewChange,
    },
    /// An incident was opened, told of, or released.
    Incident {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// How.
        #[serde(flatten)]
        change: IncidentChange,
    },
    /// A note was left on a trailer.
    Note {
        /// The note.
        note: StandingNote,
    },
    /// The notes on a trailer were cleared.
    NotesCleared {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// The trailer.
        unit: UnitName,
    },
    /// Somebody did a step of leaving that no report tells of: chocks out, breakaway tested.
    Confirmed {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// The trailer.
        unit: UnitName,
        /// The step, by its code.
        step: String,
    },
    /// Somebody decided against the advice, or passed on an order of fire or police.
    Override {
        /// What was decided.
        decided: Override,
    },
    /// What stood with a trailer was taken back by whoever put it there.
    TakenBack {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// What.
        what: TakesBack,
    },
    /// What the bot has to speak of by itself changed.
    Ahead {
        /// When.
        at: DateTime<Utc>,
        /// How.
        #[serde(flatten)]
        change: AheadChange,
    },
    /// A pump-out taught something of a trailer.
    Lesson {
        /// What.
        lesson: Lesson,
    },
    /// Somebody taught a word of the company's own.
    Taught {
        /// Which, when and by whom.
        #[serde(flatten)]
        taught: Taught,
    },
    /// A taught word was taken back.
    Untaught {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// How it is said.
        say: String,
    },
    /// What a trailer's log taught was forgotten.
    Relearn {
        /// When.
        at: DateTime<Utc>,
        /// By whom.
        by: String,
        /// The trailer.
        unit: UnitName,
    },
    /// Ticks were worked through up to this instant.
    Ticked {
        /// The instant.
        at: DateTime<Utc>,
    },
}
