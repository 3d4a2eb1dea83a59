//! Updates as the network sends them, and as it does not.

use super::*;
use crate::desk::Photo;
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
        Body::Photo(Photo {
            file: "a".into(),
            bytes: None,
            caption: Some("unit 12 gauge".into()),
            album: None,
        })
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
            Value::Object(map) => spoil(map.values_mut().nth(at).expect("it is that long"), random),
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
