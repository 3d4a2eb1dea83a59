//! One update, from raw JSON to a message for the clerk.
//!
//! Each update is read by itself with teloxide's types. One that they cannot read, because the network has learnt
//! something new, is searched for the few fields that matter, so that a crew's words are not lost to a novelty.

use chrono::{DateTime, Utc};
use serde_json::Value;
use teloxide::types::{Message, MessageKind, Update, UpdateKind};

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
        kind: kind_of(raw).unwrap_or("other"),
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
    if words.is_none() && kind_of(message).is_none() {
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
        kind: kind_of(message).unwrap_or("other"),
    };
    facts.inbound(edited, username, received)
}

/// Returns what a message without words carries, by the field that carries it; none for something unheard of.
fn kind_of(message: &Value) -> Option<&'static str> {
    // the network fills in `document` beside `animation`, and `location` beside `venue`
    const KINDS: &[&str] = &[
        "animation",
        "audio",
        "contact",
        "document",
        "dice",
        "photo",
        "poll",
        "sticker",
        "story",
        "venue",
        "location",
        "video",
        "video_note",
        "voice",
    ];
    KINDS
        .iter()
        .find(|kind| message.get(kind).is_some())
        .copied()
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
    kind: &'a str,
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
        let body = match self.words {
            Some(words) => Body::Text(addressed(words, username).to_owned()),
            None => Body::Other(self.kind.to_owned()),
        };
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

/// Takes off what only addresses the bot: a mention before the words, the slash and the name of a command.
fn addressed<'a>(words: &'a str, username: Option<&str>) -> &'a str {
    let mut words = words.trim();
    let Some(name) = username else {
        return words.strip_prefix('/').unwrap_or(words);
    };
    if let Some(rest) = words
        .strip_prefix('@')
        .and_then(|rest| strip_name(rest, name))
    {
        words = rest.trim_start_matches([',', ':']).trim_start();
    }
    let Some(command) = words.strip_prefix('/') else {
        return words;
    };
    match command.split_once('@') {
        // `/digest@hosebib_bot` is nothing but the command
        Some((word, rest))
            if !word.contains(char::is_whitespace) && strip_name(rest, name) == Some("") =>
        {
            word
        }
        _ => command,
    }
}

/// Takes a name off the front where it stands as a whole word, in any case.
fn strip_name<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let head = text.get(..name.len())?;
    let rest = &text[name.len()..];
    let ends = rest
        .chars()
        .next()
        .is_none_or(|c| !c.is_alphanumeric() && c != '_');
    (head.eq_ignore_ascii_case(name) && ends).then_some(rest)
}

/// Returns the number, in its chat, of the message that a key of this network names.
pub(super) fn message_number(key: &MessageKey, chat: i64) -> Option<i32> {
    let mut parts = key.0.split(':');
    let (network, of, message) = (parts.next()?, parts.next()?, parts.next()?);
    (network == NETWORK && of.parse() == Ok(chat)).then(|| message.parse().ok())?
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn received() -> DateTime<Utc> {
        "2027-01-16T21:10:30Z".parse().unwrap()
    }

    /// The shapes follow the Bot API documentation, "Update", "Message", "User" and "Chat".
    fn update(kind: &str, extra: Value) -> Value {
        let mut message = json!({
            "message_id": 45,
            "from": {"id": 77, "is_bot": false, "first_name": "Dana"},
            "chat": {"id": 77, "type": "private", "first_name": "Dana"},
            "date": 1_800_133_800,
        });
        for (key, value) in extra.as_object().unwrap() {
            message[key] = value.clone();
        }
        json!({"update_id": 1001, kind: message})
    }

    fn message(update: &Value) -> Inbound {
        match read(update, Some("hosebib_bot"), received()) {
            Brought::Message(inbound) => inbound,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_text_is_a_message_with_both_times() {
        let inbound = message(&update("message", json!({"text": "unit 12 pressure 95"})));
        assert_eq!(inbound.key.0, "telegram:77:45:0");
        assert_eq!(inbound.from, Sender::ChatUser(77));
        assert_eq!(inbound.chat, Some(77));
        assert_eq!(
            inbound.at,
            DateTime::from_timestamp(1_800_133_800, 0).unwrap()
        );
        assert_eq!(inbound.received, received());
        assert_eq!(inbound.body, Body::Text("unit 12 pressure 95".into()));
        assert_eq!(inbound.replaces, None);
    }

    #[test]
    fn an_edit_names_what_it_replaces_and_keeps_its_place_in_time() {
        let inbound = message(&update(
            "edited_message",
            json!({"text": "unit 12 pressure 59", "edit_date": 1_800_133_820}),
        ));
        assert_eq!(inbound.key.0, "telegram:77:45:1800133820");
        assert_eq!(inbound.replaces.unwrap().0, "telegram:77:45:0");
        assert_eq!(inbound.at.timestamp(), 1_800_133_800);
    }

    #[test]
    fn other_kinds_come_by_name_and_captions_are_words() {
        let voice = json!({"voice": {"file_id": "a", "file_unique_id": "b", "duration": 2}});
        assert_eq!(
            message(&update("message", voice)).body,
            Body::Other("voice".into())
        );
        let photo = json!({"caption": "unit 12 gauge", "photo": [{"file_id": "a", "file_unique_id": "b", "width": 1, "height": 1}]});
        assert_eq!(
            message(&update("message", photo)).body,
            Body::Text("unit 12 gauge".into())
        );
    }

    #[test]
    fn who_writes_under_a_chats_name_is_nobody() {
        let group = json!({"id": -1001, "type": "supergroup", "title": "Crew"});
        let anonymous = json!({"text": "12 arrived", "chat": group, "sender_chat": group,
            "from": {"id": 1_087_968_824, "is_bot": true, "first_name": "Group", "username": "GroupAnonymousBot"}});
        assert!(matches!(
            read(&update("message", anonymous), None, received()),
            Brought::Nothing(_)
        ));
        let channel = json!({"text": "12 arrived", "chat": group, "sender_chat": {"id": -1002, "type": "channel", "title": "News"}});
        assert!(matches!(
            read(&update("message", channel), None, received()),
            Brought::Nothing(_)
        ));
    }

    #[test]
    fn a_novelty_does_not_cost_the_words() {
        let odd = json!({"text": "unit 12 arrived", "reply_to_message": {"hologram": true}, "chat": {"id": 77, "type": "holochat"}});
        assert_eq!(
            message(&update("message", odd)).body,
            Body::Text("unit 12 arrived".into())
        );
        for broken in [
            json!(null),
            json!([]),
            json!({"update_id": 7}),
            json!({"update_id": 7, "message": 5}),
            json!({"message": {"text": "x", "chat": {"id": "y"}}}),
            json!({"message": {"message_id": 1.5, "date": "now", "text": ""}}),
        ] {
            assert!(
                matches!(read(&broken, None, received()), Brought::Nothing(_)),
                "{broken}"
            );
        }
    }

    #[test]
    fn an_upgraded_group_is_followed_from_either_end() {
        let old = json!({"chat": {"id": -55, "type": "group", "title": "Crew"}, "migrate_to_chat_id": -10055});
        assert_eq!(
            read(&update("message", old), None, received()),
            Brought::Moved {
                from: -55,
                to: -10055
            }
        );
        let new = json!({"chat": {"id": -10055, "type": "supergroup", "title": "Crew"}, "migrate_from_chat_id": -55});
        assert_eq!(
            read(&update("message", new), None, received()),
            Brought::Moved {
                from: -55,
                to: -10055
            }
        );
    }

    #[test]
    fn mentions_and_slashes_are_taken_off() {
        let bot = Some("hosebib_bot");
        assert_eq!(
            addressed("@hosebib_bot unit 12 arrived", bot),
            "unit 12 arrived"
        );
        assert_eq!(addressed("@Hosebib_Bot: digest", bot), "digest");
        assert_eq!(addressed("/digest@hosebib_bot", bot), "digest");
        assert_eq!(addressed("/why", None), "why");
        assert_eq!(
            addressed("@hosebib_botany club", bot),
            "@hosebib_botany club"
        );
        assert_eq!(addressed("tank 3/4", bot), "tank 3/4");
    }

    #[test]
    fn a_reply_quotes_only_in_the_chat_it_answers() {
        let key = MessageKey::new(NETWORK, -1001, 45, 0);
        assert_eq!(message_number(&key, -1001), Some(45));
        assert_eq!(message_number(&key, 77), None);
        assert_eq!(message_number(&MessageKey("console:1:2:0".into()), 1), None);
    }

    /// Replaces one random part of a value by something else.
    fn spoil(value: &mut Value, random: &mut fastrand::Rng) {
        let parts = match value {
            Value::Array(items) => items.len(),
            Value::Object(map) => map.len(),
            _ => 0,
        };
        if parts > 0 && random.u8(..) < 220 {
            let at = random.usize(..parts);
            match value {
                Value::Array(items) => spoil(&mut items[at], random),
                Value::Object(map) => {
                    spoil(map.values_mut().nth(at).expect("it is that long"), random)
                }
                _ => {}
            }
            return;
        }
        *value = match random.u8(..9) {
            0 => Value::Null,
            1 => json!(random.i64(..)),
            2 => json!(random.u64(..)),
            3 => json!(random.f64() * 1e300),
            4 => json!([]),
            5 => json!({"from": {}, "chat": []}),
            6 => json!(true),
            7 => json!("@hosebib_bot /\u{0}é🚽"),
            _ => json!("@🚽"),
        };
    }

    #[test]
    fn no_update_at_all_breaks_the_reader() {
        let mut random = fastrand::Rng::with_seed(5);
        let group = json!({"text": "@hosebib_bot /digest@hosebib_bot", "chat": {"id": -1001, "type": "supergroup", "title": "Crew"},
            "reply_to_message": {"message_id": 3}, "entities": [{"type": "mention", "offset": 0, "length": 12}]});
        let bases = [
            update("message", json!({"text": "/start"})),
            update(
                "edited_message",
                json!({"text": "x", "edit_date": 1_800_133_820}),
            ),
            update("message", group),
            update("message", json!({"migrate_to_chat_id": -10055})),
        ];
        let mut messages = 0;
        for _ in 0..20_000 {
            let mut odd = random.choice(&bases).expect("there are some").clone();
            for _ in 0..random.u8(1..4) {
                spoil(&mut odd, &mut random);
            }
            if let Brought::Message(inbound) = read(&odd, Some("hosebib_bot"), received()) {
                messages += 1;
                assert!(inbound.key.0.starts_with("telegram:"), "{odd}");
            }
        }
        assert!(messages > 1000, "{messages}");
    }
}
