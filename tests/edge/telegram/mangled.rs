//! Updates as the network sends them with pieces changed, dropped, doubled and retyped: none panics.
//!
//! `HOSEBIB_FUZZ` sets how many (5,000 unless told), `HOSEBIB_FUZZ_SEED` repeats a run.

use chrono::{DateTime, Utc};
use fastrand::Rng;
use hosebib::chat::telegram;
use serde_json::{Map, Value, json};

/// One update of each kind, in the shapes of the Bot API's own documentation, with invented people.
fn recorded() -> Vec<Value> {
    let from = json!({"id": 77, "is_bot": false, "first_name": "Dana", "last_name": "Å", "username": "dana", "language_code": "es"});
    let private = json!({"id": 77, "type": "private", "first_name": "Dana", "username": "dana"});
    let group = json!({"id": -100_200, "type": "supergroup", "title": "Crew 🚽", "is_forum": true});
    let photo = json!([
        {"file_id": "AAa", "file_unique_id": "a", "width": 90, "height": 67, "file_size": 1200},
        {"file_id": "AAb", "file_unique_id": "b", "width": 1280, "height": 960, "file_size": 180_000},
    ]);
    let message = |chat: &Value, more: Value| {
        let mut message =
            json!({"message_id": 5, "from": from, "chat": chat, "date": 1_800_000_000});
        merge(&mut message, more);
        message
    };
    let entities = json!([{"type": "bot_command", "offset": 0, "length": 6}, {"type": "mention", "offset": 7, "length": 9}]);
    let updates = [
        json!({"message": message(&private, json!({"text": "12 pressure 95 tank 3/4 temp -5"}))}),
        json!({"message": message(&private, json!({"text": "/start u-12", "entities": entities}))}),
        json!({"message": message(&group, json!({"text": "/status@hosebib_bot 12", "entities": entities, "message_thread_id": 9, "is_topic_message": true}))}),
        json!({"message": message(&private, json!({"photo": photo, "caption": "12 tank 1/2", "media_group_id": "9"}))}),
        json!({"message": message(&private, json!({"location": {"latitude": 44.6, "longitude": -63.6, "horizontal_accuracy": 20.0, "live_period": 900}}))}),
        json!({"message": message(&private, json!({"voice": {"file_id": "v", "duration": 4, "mime_type": "audio/ogg"}}))}),
        json!({"message": message(&private, json!({"document": {"file_id": "d", "file_name": "../x.jpg", "mime_type": "image/jpeg", "file_size": 9}}))}),
        json!({"message": message(&private, json!({"text": "done", "reply_to_message": message(&private, json!({"text": "task 1"}))}))}),
        json!({"message": message(&group, json!({"migrate_to_chat_id": -100_300}))}),
        json!({"message": message(&group, json!({"text": "12 ok", "sender_chat": {"id": -100_200, "type": "supergroup", "title": "Crew"}}))}),
        json!({"edited_message": message(&private, json!({"text": "12 pressure 59", "edit_date": 1_800_000_050}))}),
        json!({"callback_query": {"id": "4382", "from": from, "message": message(&private, json!({"text": "done?"})), "chat_instance": "-31", "data": "k1f"}}),
        json!({"channel_post": {"message_id": 6, "chat": {"id": -100_400, "type": "channel", "title": "News"}, "date": 1_800_000_000, "text": "x"}}),
        json!({"my_chat_member": {"chat": private, "from": from, "date": 1_800_000_000}}),
    ];
    (1000..)
        .zip(updates)
        .map(|(id, mut update)| {
            update["update_id"] = id.into();
            update
        })
        .collect()
}

fn merge(into: &mut Value, from: Value) {
    if let (Value::Object(into), Value::Object(from)) = (into, from) {
        into.extend(from);
    }
}

/// Counts the values in a tree, the tree itself among them.
fn size(value: &Value) -> usize {
    1 + match value {
        Value::Array(items) => items.iter().map(size).sum(),
        Value::Object(map) => map.values().map(size).sum::<usize>(),
        _ => 0,
    }
}

/// Returns the value at a place in a tree, counted depth first.
fn at(value: &mut Value, place: usize) -> &mut Value {
    if place == 0 {
        return value;
    }
    let mut left = place - 1;
    let children: Vec<&mut Value> = match value {
        Value::Array(items) => items.iter_mut().collect(),
        Value::Object(map) => map.values_mut().collect(),
        _ => unreachable!("the place is within the tree"),
    };
    for child in children {
        let held = size(child);
        if left < held {
            return at(child, left);
        }
        left -= held;
    }
    unreachable!("the place is within the tree")
}

/// What stands where something else is expected.
fn odd(chance: &mut Rng) -> Value {
    match chance.u8(..14) {
        0 => Value::Null,
        1 => json!(chance.bool()),
        2 => json!(i64::MIN),
        3 => json!(i64::MAX),
        4 => json!(u64::MAX),
        5 => json!(-1),
        6 => json!(1e308),
        7 => json!(0),
        8 => json!(""),
        9 => json!("\u{202e}\u{0}=1+1 🚽".repeat(chance.usize(1..40))),
        10 => json!("9".repeat(chance.usize(1..400))),
        11 => json!([[[[[]]]]]),
        12 => json!({"": {"": []}}),
        _ => json!(chance.i64(-3_000_000_000..3_000_000_000)),
    }
}

/// Changes one thing in an update.
fn change(update: &mut Value, others: &[Value], chance: &mut Rng) {
    let place = chance.usize(..size(update));
    let spot = at(update, place);
    match (chance.u8(..5), spot) {
        (0, Value::Object(map)) if !map.is_empty() => {
            let key = map
                .keys()
                .nth(chance.usize(..map.len()))
                .cloned()
                .unwrap_or_default();
            map.remove(&key);
        }
        (1, Value::Object(map)) => {
            // what another update holds at such a place
            let mut other = others[chance.usize(..others.len())].clone();
            let place = chance.usize(..size(&other));
            let taken = at(&mut other, place).clone();
            match taken {
                Value::Object(more) => map.extend(more),
                other => drop(map.insert(
                    ["text", "date", "chat", "from", "photo"][chance.usize(..5)].into(),
                    other,
                )),
            }
        }
        (2, Value::String(text)) => {
            let mut chars: Vec<char> = text.chars().collect();
            if !chars.is_empty() {
                let place = chance.usize(..chars.len());
                match chance.u8(..3) {
                    0 => drop(chars.remove(place)),
                    1 => chars[place] = chance.char(..),
                    _ => chars.insert(place, chance.char(..)),
                }
            }
            *text = chars.into_iter().collect();
        }
        (3, Value::Array(items)) if !items.is_empty() => {
            let copy = items[chance.usize(..items.len())].clone();
            items.push(copy);
        }
        (_, spot) => *spot = odd(chance),
    }
}

#[test]
fn no_mangled_update_panics() {
    let number = |name: &str| {
        std::env::var(name)
            .ok()
            .and_then(|text| text.parse::<u64>().ok())
    };
    let count = number("HOSEBIB_FUZZ").unwrap_or(5_000);
    let seed = number("HOSEBIB_FUZZ_SEED").unwrap_or(7);
    println!("HOSEBIB_FUZZ_SEED={seed}");
    let mut chance = Rng::with_seed(seed);
    let recorded = recorded();
    let received: DateTime<Utc> = "2027-01-16T12:00:00Z".parse().unwrap();
    let mut brought = 0_u64;
    for _ in 0..count {
        let mut update = recorded[chance.usize(..recorded.len())].clone();
        for _ in 0..chance.usize(1..5) {
            change(&mut update, &recorded, &mut chance);
        }
        if chance.u8(..16) == 0 {
            // bytes on the wire: what still is JSON is read
            let mut bytes = serde_json::to_vec(&update).unwrap();
            let place = chance.usize(..bytes.len());
            bytes[place] = chance.u8(..);
            update = serde_json::from_slice(&bytes).unwrap_or(Value::Object(Map::new()));
        }
        brought += u64::from(telegram::inbound(&update, Some("hosebib_bot"), received).is_some());
    }
    println!("{count} updates, {brought} of them read as messages");
    assert!(
        brought > count / 20,
        "most are mangled past reading: the storm tests little"
    );
}
