//! A button that was pressed.

use chrono::{DateTime, Utc};
use serde_json::Value;

use super::super::NETWORK;
use super::{Brought, topic};
use crate::book::MessageKey;
use crate::desk::{Body, Inbound, Press, Sender};

/// The longest key that a button can carry, in bytes (Bot API, InlineKeyboardButton).
const LONGEST_KEY: usize = 64;

/// Reads a `callback_query` (Bot API): the press has its own name, and the message under which the button stands.
pub(super) fn read(query: &Value, received: DateTime<Utc>) -> Brought {
    let number = |path: &str| query.pointer(path).and_then(Value::as_i64);
    let text = |path: &str| query.pointer(path).and_then(Value::as_str);
    let (Some(id), Some(user), Some(chat), Some(message)) = (
        text("/id"),
        number("/from/id"),
        number("/message/chat/id"),
        number("/message/message_id"),
    ) else {
        return Brought::Nothing("a press of no button of ours");
    };
    if query.pointer("/from/is_bot") == Some(&Value::Bool(true)) {
        return Brought::Nothing("not from a person");
    }
    // what is longer than the network allows was never a key of ours: it is refused like any other
    let key = text("/data").filter(|key| key.len() <= LONGEST_KEY);
    Brought::Message(Inbound {
        body: Body::Press(Press {
            key: key.unwrap_or_default().to_owned(),
            id: id.to_owned(),
        }),
        chat: Some(chat),
        topic: query.get("message").and_then(topic),
        // the network does not tell when it was pressed
        ..Inbound::says(
            MessageKey(format!("{NETWORK}:{chat}:{message}:press-{id}")),
            Sender::ChatUser(user),
            received,
            "",
        )
    })
}
