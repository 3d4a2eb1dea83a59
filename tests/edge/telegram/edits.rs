//! Messages that are edited.

use super::*;

#[test]
fn an_edit_replaces_once_and_an_unchanged_one_does_nothing() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 95");
    api.replies(77, 1);
    // the network sends such a one when only a link preview changed
    api.edits(77, number, 1_800_000_100, "unit 12 pressure 95");
    api.edits(77, number, 1_800_000_200, "unit 12 pressure 59");
    api.edits(77, number, 1_800_000_200, "unit 12 pressure 59");
    api.edits(77, number, 1_800_000_300, "unit 12 pressure 55");
    api.replies(77, 3);
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    assert_eq!(api.state().texts(77).len(), 3);
    let messages: Vec<_> = hosebib::store::read_only(folders.data.path())
        .unwrap()
        .flat_map(|line| line.unwrap().records)
        .filter(|record| record["record"] == "message")
        .collect();
    let original = format!("telegram:77:{number}:0");
    assert_eq!(messages.len(), 3);
    assert_eq!(messages[0]["network"]["personal"], original.as_str());
    assert!(messages[0]["replaces"].is_null());
    assert_eq!(messages[1]["replaces"], messages[0]["key"]);
    assert_eq!(messages[2]["replaces"], messages[1]["key"]);
    // what records refer to each other by names no chat
    assert!(!messages[0]["key"].as_str().unwrap().contains("77"));
}
