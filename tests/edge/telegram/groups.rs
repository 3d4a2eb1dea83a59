//! Strangers, and groups.

use super::*;

#[test]
fn strangers_are_told_one_line_a_day_and_change_nothing() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(500, "unit 12 arrived");
    api.says(500, "who works here?");
    api.says(501, "unit 12 pressure 95");
    let group = serde_json::json!({"id": -1001, "type": "supergroup", "title": "Crew"});
    api.pushes(serde_json::json!({"message": {"message_id": 9, "date": 1_800_000_000, "text": "12 left", "chat": group,
        "sender_chat": group, "from": {"id": 77, "is_bot": false, "first_name": "Group"}}}));
    api.says_in(-1001, 502, "nice weather");
    api.says(77, "unit 14 arrived");
    api.replies(77, 1);
    api.replies(500, 1);
    let line = api.replies(501, 1)[0].clone();
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    let state = api.state();
    assert_eq!(
        state.texts(500),
        std::slice::from_ref(&line),
        "the same line, once"
    );
    assert!(!line.contains("12") && !line.contains("Saltbox"), "{line}");
    assert!(state.texts(-1001).is_empty());
    assert_eq!(state.sent.len(), 3, "{:?}", state.sent);
}

#[test]
fn an_upgraded_group_is_followed() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().moved.insert(-55, -10055);
    let bot = Bot::start(&api, &folders);
    api.says_in(-55, 77, "unit 12 arrived");
    api.replies(-10055, 1);
    assert!(bot.stop());
    let bot = Bot::start(&api, &folders);
    api.says_in(-55, 77, "unit 12 leveled");
    api.replies(-10055, 2);
    assert!(bot.stop());
    let old = |(method, body): &&(String, serde_json::Value)| {
        method == "sendmessage" && body["chat_id"] == -55
    };
    assert_eq!(
        api.state().asked.iter().filter(old).count(),
        1,
        "the new number outlives the process"
    );
}
