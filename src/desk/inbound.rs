//! What comes in and what goes out of a turn.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::book::{MessageKey, Record, Task};
use crate::finding::{Finding, Level};
use crate::heard::{Heard, UnitName};
use crate::outlook::Outlook;

/// Who sent a message, as its network tells.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sender {
    /// A crew id.
    Crew(String),
    /// A user's number on the chat network.
    ChatUser(i64),
}

/// What a message carries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Body {
    /// Words.
    Text(String),
    /// Something the bot cannot read yet, by its name: `sticker`, `voice`.
    Other(String),
}

/// One message as it came in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Inbound {
    /// What identifies it on its network.
    pub key: MessageKey,
    /// Who sent it.
    pub from: Sender,
    /// The chat it came in; none on the console.
    pub chat: Option<i64>,
    /// When it was written.
    pub at: DateTime<Utc>,
    /// When it was received.
    pub received: DateTime<Utc>,
    /// What it carries.
    pub body: Body,
    /// The message it replaces, when it is an edit.
    pub replaces: Option<MessageKey>,
}

/// One message to send.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Outgoing {
    /// The crew member it is for; empty for somebody who is not one.
    pub to: String,
    /// The chat to answer in; none where the transport finds it from `to`.
    pub chat: Option<i64>,
    /// What to say.
    pub text: crate::book::Personal,
    /// How badly someone can be hurt by what it tells: dangers overtake the rest.
    pub level: Option<Level>,
    /// The message it answers.
    pub answers: Option<MessageKey>,
}

/// What a message or the clock brought about.
#[derive(Debug, Clone, PartialEq)]
pub struct Turn {
    /// When it was written, or the tick's instant.
    pub at: DateTime<Utc>,
    /// Who sent it; none for a tick.
    pub from: Option<String>,
    /// What was decided, to be written down.
    pub records: Vec<Record>,
    /// What to say.
    pub outgoing: Vec<Outgoing>,
    /// How the message was read.
    pub heard: Option<Heard>,
    /// What holds for the units it bears on.
    pub findings: Vec<Finding>,
    /// The open tasks of those units, and any that this turn opened, changed or closed.
    pub tasks: Vec<Task>,
    /// What is coming for those of them that are at a job.
    pub forecast: BTreeMap<UnitName, Outlook>,
    /// Whether a tick left for another what was due: turns run in between.
    pub unfinished: bool,
}

impl Turn {
    /// Returns a turn that changes and says nothing.
    pub fn empty(at: DateTime<Utc>) -> Self {
        Turn {
            at,
            from: None,
            records: Vec::new(),
            outgoing: Vec::new(),
            heard: None,
            findings: Vec::new(),
            tasks: Vec::new(),
            forecast: BTreeMap::new(),
            unfinished: false,
        }
    }
}
