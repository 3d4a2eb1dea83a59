//! A message on its way out, and what happened to it, as the journal keeps them.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::forget::Forget;
use crate::book::{MessageKey, Personal};
use crate::desk::Outgoing;
use crate::finding::Level;

/// Which outgoing message of which turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct ParcelId {
    /// The turn that put it out.
    pub turn: u64,
    /// Its place among that turn's messages, from 0.
    pub index: u32,
}

/// A message handed to a transport.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Parcel {
    /// What to say back to the clerk about it; none for a word that is not kept.
    pub id: Option<ParcelId>,
    /// The crew member it is for; empty for somebody who is not one.
    pub to: String,
    /// The chat to send it to; none where the person has none.
    pub chat: Option<i64>,
    /// The topic of that chat.
    pub topic: Option<i64>,
    /// What to say.
    pub text: String,
    /// How badly someone can be hurt by what it tells.
    pub level: Option<Level>,
    /// The message it answers.
    pub answers: Option<MessageKey>,
    /// How many parts of it were accepted before.
    pub parts_sent: u32,
    /// The likely answers.
    pub buttons: Vec<Button>,
    /// The number of the earlier message whose place it takes.
    pub edits: Option<i64>,
    /// The picture that is to be fetched, instead of saying something: its key, and the network's name for its file.
    pub fetch: Option<(String, String)>,
    /// The press that it answers, instead of saying something in a chat.
    pub press: Option<PressAnswer>,
}

/// What the network is told of a button that was pressed, so that it stops waiting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PressAnswer {
    /// The network's name for the press.
    pub id: String,
    /// What to show whoever pressed; nothing where it is empty.
    pub text: String,
}

/// A button under a message.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Button {
    /// What stands on it.
    pub label: String,
    /// The key that it carries: whoever has it can press, so it is kept like a person's own.
    pub key: Personal,
}

impl Parcel {
    /// Makes what takes a parcel back that a transport may still hold: its reader was shut out.
    pub(super) fn recall(id: ParcelId) -> Self {
        Parcel {
            id: Some(id),
            ..Parcel::default()
        }
    }

    /// Makes what asks for a picture.
    pub(super) fn fetch(key: String, file: String) -> Self {
        Parcel {
            fetch: Some((key, file)),
            ..Parcel::default()
        }
    }

    /// Makes what answers a press.
    pub(super) fn press(answer: PressAnswer) -> Self {
        Parcel {
            press: Some(answer),
            ..Parcel::default()
        }
    }

    /// Tells whether it takes back the parcel of its number, and says nothing itself.
    pub fn is_recall(&self) -> bool {
        self.id.is_some() && self.chat.is_none() && self.text.is_empty()
    }
}

/// An outgoing message as a line of the journal holds it: chat numbers are a person's own and can be taken out later.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Letter {
    pub(super) to: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) chat: Option<Personal>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) topic: Option<i64>,
    pub(super) text: Personal,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) level: Option<Level>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) answers: Option<Personal>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) buttons: Vec<Button>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) edits: Option<i64>,
}

impl Letter {
    pub(super) fn new(outgoing: Outgoing) -> Self {
        Letter {
            to: outgoing.to,
            chat: outgoing.chat.map(|chat| Personal::new(chat.to_string())),
            topic: outgoing.topic,
            text: outgoing.text,
            level: outgoing.level,
            answers: outgoing.answers.map(|key| Personal::new(key.0)),
            buttons: outgoing
                .choices
                .into_iter()
                .map(|choice| Button {
                    label: choice.label,
                    key: Personal::new(choice.key),
                })
                .collect(),
            edits: outgoing.edits,
        }
    }

    /// Returns the chat it names; none where it names none or was emptied.
    pub(super) fn chat(&self) -> Option<i64> {
        self.chat.as_ref()?.text().parse().ok()
    }

    pub(super) fn parcel(&self, id: ParcelId, chat: Option<i64>, parts_sent: u32) -> Parcel {
        Parcel {
            id: Some(id),
            to: self.to.clone(),
            chat,
            topic: self.topic,
            text: self.text.text().to_owned(),
            level: self.level,
            answers: self
                .answers
                .as_ref()
                .and_then(|key| key.personal.clone())
                .map(MessageKey),
            parts_sent,
            buttons: self.buttons.clone(),
            edits: self.edits,
            fetch: None,
            press: None,
        }
    }
}

/// What the clerk itself writes down, beside the desk's records.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "note")]
pub(super) enum Note {
    /// The network accepted one part of a message; `message` is its number there.
    Sent {
        id: ParcelId,
        part: u32,
        of: u32,
        message: Personal,
    },
    /// A message will not be sent any more.
    GivenUp { id: ParcelId, why: String },
    /// A message could not be worked through.
    SetAside {
        key: Personal,
        from: String,
        text: Personal,
    },
    /// A person, or a group by its number, cannot be written to.
    Unreachable { who: Personal },
    /// A person wrote again.
    Reachable { who: Personal },
    /// The texts of a person, or those from before an instant, are to be taken out.
    Forget {
        who: Option<String>,
        before: Option<DateTime<Utc>>,
    },
    /// Such a wish was carried out.
    Forgotten {
        who: Option<String>,
        before: Option<DateTime<Utc>>,
    },
    /// A picture is kept, in this file.
    PhotoKept { key: String, file: String },
    /// A picture is kept no more, or could not be.
    PhotoGone { key: String },
    /// A group got a new number.
    Moved { from: Personal, to: Personal },
}

impl Note {
    pub(super) fn forget(what: &Forget) -> Self {
        let (who, before) = what.parts();
        Note::Forget { who, before }
    }

    pub(super) fn forgotten(what: &Forget) -> Self {
        let (who, before) = what.parts();
        Note::Forgotten { who, before }
    }

    pub(super) fn value(&self) -> Value {
        serde_json::to_value(self).expect("a note is plain data")
    }
}
