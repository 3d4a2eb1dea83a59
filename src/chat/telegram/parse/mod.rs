//! One update, from raw JSON to a message for the clerk.
//!
//! Each update is read by itself with teloxide's types. One that they cannot read, because the network has learnt
//! something new, is searched for the few fields that matter, so that a crew's words are not lost to a novelty.

mod address;
mod body;
mod press;

use chrono::{DateTime, Utc};
use serde_json::Value;
use teloxide::types::{Message, MessageKind, Update, UpdateKind};

pub(super) use self::address::addressed;
use super::NETWORK;
use crate::book::MessageKey;
use crate::desk::{Body, Inbound, Sender};

/// What an update brings.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Brought {
    /// A message for the clerk.
    Message(Inbound),
    /// A group got a new number.
    Moved {
        /// The old one.
        from: i64,
        /// The new one.
        to: i64,
    },
    /// Nothing for us, and why.
    Nothing(&'static str),
}

/// Returns an update's own number; none where it has none.
pub(super) fn update_id(update: &Value) -> Option<i64> {
    update.get("update_id")?.as_i64()
}

/// Reads one update that was received at `received`; `username` is the bot's own.
pub(super) fn read(update: &Value, username: Option<&str>, received: DateTime<Utc>) -> Brought {
    if let Some(query) = update.get("callback_query") {
        return press::read(query, received);
    }
    let (message, edited) = match (update.get("message"), update.get("edited_message")) {
        (Some(message), _) => (message, false),
        (None, Some(message)) => (message, true),
        (None, None) => return Brought::Nothing("not a message"),
    };
    if message
        .get("migrate_to_chat_id")
        .or(message.get("migrate_from_chat_id"))
        .is_some()
    {
        return moved(message);
    }
    match serde_json::from_value::<Update>(update.clone()).map(|update| update.kind) {
        Ok(UpdateKind::Message(known) | UpdateKind::EditedMessage(known)) => {
            from_known(&known, message, edited, username, received)
        }
        _ => from_raw(message, edited, username, received),
    }
}

fn from_known(
    message: &Message,
    raw: &Value,
    edited: bool,
    username: Option<&str>,
    received: DateTime<Utc>,
) -> Brought {
    let MessageKind::Common(common) = &message.kind else {
        return Brought::Nothing("a service message");
    };
    let sender = message.from.as_ref().map(|user| (user.id.0, user.is_bot));
    let Ok(user) = sender.map(|(id, _)| i64::try_from(id)).transpose() else {
        return Brought::Nothing("a sender with an impossible number");
    };
    let facts = Facts {
        chat: message.chat.id.0,
        message: i64::from(message.id.0),
        topic: topic(raw),
        user,
        bot: sender.is_some_and(|(_, bot)| bot),
        veiled: message.sender_chat.is_some(),
        date: message.date,
        edit: common.edit_date,
        words: message.text().or(message.caption()),
        raw,
    };
    facts.inbound(edited, username, received)
}

fn from_raw(
    message: &Value,
    edited: bool,
    username: Option<&str>,
    received: DateTime<Utc>,
) -> Brought {
    let number = |path: &str| message.pointer(path).and_then(Value::as_i64);
    let instant =
        |path: &str| number(path).and_then(|seconds| DateTime::from_timestamp(seconds, 0));
    let words = message
        .get("text")
        .or(message.get("caption"))
        .and_then(Value::as_str);
    let (Some(chat), Some(id), Some(date)) =
        (number("/chat/id"), number("/message_id"), instant("/date"))
    else {
        return Brought::Nothing("an update of an unknown kind");
    };
    if words.is_none() && body::kind_of(message).is_none() {
        return Brought::Nothing("a message of an unknown kind");
    }
    let facts = Facts {
        chat,
        message: id,
        topic: topic(message),
        user: number("/from/id"),
        bot: message.pointer("/from/is_bot") == Some(&Value::Bool(true)),
        veiled: message.get("sender_chat").is_some(),
        date,
        edit: instant("/edit_date"),
        words,
        raw: message,
    };
    facts.inbound(edited, username, received)
}

/// Returns the topic that a message was written in; a thread of replies in a group without topics is none.
fn topic(message: &Value) -> Option<i64> {
    let in_topic = message.get("is_topic_message") == Some(&Value::Bool(true));
    let number = message.get("message_thread_id").and_then(Value::as_i64);
    number.filter(|_| in_topic)
}

/// A group that was upgraded: the old one says where it goes, the new one where it comes from.
fn moved(message: &Value) -> Brought {
    let number = |path: &str| message.pointer(path).and_then(Value::as_i64);
    let here = number("/chat/id");
    match (
        here,
        number("/migrate_to_chat_id"),
        number("/migrate_from_chat_id"),
    ) {
        (Some(from), Some(to), _) | (Some(to), None, Some(from)) => Brought::Moved { from, to },
        _ => Brought::Nothing("a move to nowhere"),
    }
}

/// What matters about a message.
struct Facts<'a> {
    chat: i64,
    message: i64,
    topic: Option<i64>,
    user: Option<i64>,
    bot: bool,
    /// Written under a chat's name: a channel, or an administrator who does not show who they are.
    veiled: bool,
    date: DateTime<Utc>,
    edit: Option<DateTime<Utc>>,
    words: Option<&'a str>,
    /// The whole message.
    raw: &'a Value,
}

impl Facts<'_> {
    fn inbound(self, edited: bool, username: Option<&str>, received: DateTime<Utc>) -> Brought {
        if self.veiled {
            // its `from` is a stand-in that anybody in the group might share
            return Brought::Nothing("written under a chat's name");
        }
        let Some(user) = self.user.filter(|_| !self.bot) else {
            return Brought::Nothing("not from a person");
        };
        let edit = self
            .edit
            .filter(|_| edited)
            .map_or(0, |date| date.timestamp());
        let words = self.words.map(|words| addressed(words, username));
        let body = body::of(self.raw, words, edited);
        // a place that moves with its phone is no edit of what was said
        let edited = edited && !matches!(body, Body::Place(_));
        Brought::Message(Inbound {
            key: MessageKey::new(NETWORK, self.chat, self.message, edit),
            from: Sender::ChatUser(user),
            chat: Some(self.chat),
            topic: self.topic,
            // an edit takes the place in time of the message it edits
            at: self.date.min(received),
            received,
            body,
            replaces: edited.then(|| MessageKey::new(NETWORK, self.chat, self.message, 0)),
        })
    }
}

/// Returns the number, in its chat, of the message that a key of this network names.
pub(super) fn message_number(key: &MessageKey, chat: i64) -> Option<i32> {
    let mut parts = key.0.split(':');
    let (network, of, message) = (parts.next()?, parts.next()?, parts.next()?);
    (network == NETWORK && of.parse() == Ok(chat)).then(|| message.parse().ok())?
}

#[cfg(test)]
mod tests;
