//! What comes in and what goes out of a turn.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::book::{Bears, MessageKey, Personal, Record, Task};
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
    /// A button that was pressed.
    Press(Press),
    /// A place that was shared.
    Place(Place),
    /// A picture.
    Photo(Photo),
    /// Something the bot cannot read yet, by its name: `sticker`, `voice`.
    Other(String),
}

impl Body {
    /// Returns the words it carries; none where it carries none.
    pub fn words(&self) -> &str {
        match self {
            Body::Text(text) => text,
            Body::Photo(photo) => photo.caption.as_deref().unwrap_or_default(),
            Body::Press(_) | Body::Place(_) | Body::Other(_) => "",
        }
    }
}

/// A button that was pressed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Press {
    /// The key that the button carries: opaque, and not to be trusted.
    pub key: String,
    /// What the network calls this press, so that it can be told that it was taken.
    pub id: String,
}

/// A place that was shared.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// Whether it is one of many that a moving phone sends by itself.
    pub moves: bool,
}

/// A picture, as the network announces it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Photo {
    /// What the network calls the file.
    pub file: String,
    /// How large it says that it is, bytes.
    pub bytes: Option<u64>,
    /// What is written under it.
    pub caption: Option<String>,
    /// What the pictures of one album have in common.
    pub album: Option<String>,
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
    /// The topic of the chat, in a group that has topics.
    pub topic: Option<i64>,
    /// When it was written.
    pub at: DateTime<Utc>,
    /// When it was received.
    pub received: DateTime<Utc>,
    /// What it carries.
    pub body: Body,
    /// The message it replaces, when it is an edit.
    pub replaces: Option<MessageKey>,
}

impl Inbound {
    /// Makes a text, received when it was written and in no chat.
    pub fn says(key: MessageKey, from: Sender, at: DateTime<Utc>, text: impl Into<String>) -> Self {
        Inbound {
            key,
            from,
            chat: None,
            topic: None,
            at,
            received: at,
            body: Body::Text(text.into()),
            replaces: None,
        }
    }
}

/// One message to send.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Outgoing {
    /// The crew member it is for; empty for somebody who is not one.
    pub to: String,
    /// The chat to answer in; none where the transport finds it from `to`.
    pub chat: Option<i64>,
    /// The topic of that chat to answer in.
    pub topic: Option<i64>,
    /// What to say.
    pub text: Personal,
    /// How badly someone can be hurt by what it tells: dangers overtake the rest.
    pub level: Option<Level>,
    /// The message it answers.
    pub answers: Option<MessageKey>,
    /// The likely answers, offered as buttons.
    pub choices: Vec<Choice>,
    /// The network's number of the earlier message whose place it takes.
    pub edits: Option<i64>,
}

/// One likely answer to a message.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Choice {
    /// What stands on the button.
    pub label: String,
    /// What a person says by pressing it.
    pub says: String,
    /// What that bears on.
    pub bears: Bears,
    /// The key that the button carries; empty until the turn is whole.
    pub key: String,
}

impl Choice {
    /// Makes one that has no key yet.
    pub(super) fn new(label: String, says: String, bears: Bears) -> Self {
        Choice {
            label,
            says,
            bears,
            key: String::new(),
        }
    }
}

impl Outgoing {
    /// Makes a message to a person, in their own chat.
    pub fn to(who: &str, text: impl Into<String>) -> Self {
        Outgoing {
            to: who.to_owned(),
            chat: None,
            topic: None,
            text: Personal::new(text),
            level: None,
            answers: None,
            choices: Vec::new(),
            edits: None,
        }
    }

    /// Sends it where a message came in.
    pub fn in_chat_of(mut self, inbound: &Inbound) -> Self {
        self.chat = inbound.chat;
        self.topic = inbound.topic;
        self
    }

    /// Makes it the answer to a message, where that came in.
    pub fn answering(mut self, inbound: &Inbound) -> Self {
        self.answers = Some(inbound.key.clone());
        self.in_chat_of(inbound)
    }

    /// Offers likely answers.
    pub fn offering(mut self, choices: Vec<Choice>) -> Self {
        self.choices = choices;
        self
    }

    /// Says how badly someone can be hurt by what it tells.
    pub fn of_level(mut self, level: impl Into<Option<Level>>) -> Self {
        self.level = level.into();
        self
    }
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
    /// What to show whoever pressed a button, for a moment and only to them.
    pub toast: Option<String>,
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
            toast: None,
            heard: None,
            findings: Vec::new(),
            tasks: Vec::new(),
            forecast: BTreeMap::new(),
            unfinished: false,
        }
    }
}
