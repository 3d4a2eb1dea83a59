//! Messages that are edited: the answer takes the place of the one before, so that the chat tells the truth.

use super::*;

#[test]
fn an_edit_replaces_once_and_an_unchanged_one_does_nothing() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 95");
    api.replies(77, 1);
    folders.wait_until_noted();
    // the network sends such a one when only a link preview changed
    api.edits(77, number, 1_800_000_100, "unit 12 pressure 95");
    api.edits(77, number, 1_800_000_200, "unit 12 pressure 59");
    api.edits(77, number, 1_800_000_200, "unit 12 pressure 59");
    api.wait("answered in place", |state| state.last(77).edits == 1);
    folders.wait_until_noted();
    api.edits(77, number, 1_800_000_300, "unit 12 pressure 55");
    api.wait("answered in place", |state| state.last(77).edits == 2);
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    let texts = api.state().texts(77);
    assert_eq!(texts.len(), 1, "{texts:?}");
    assert!(texts[0].contains("55 psi"), "{texts:?}");
    let messages = records(folders.data.path(), "message");
    let original = format!("telegram:77:{number}:0");
    assert_eq!(messages.len(), 3);
    assert_eq!(messages[0]["network"]["personal"], original.as_str());
    assert!(messages[0]["replaces"].is_null());
    assert_eq!(messages[1]["replaces"], messages[0]["key"]);
    assert_eq!(messages[2]["replaces"], messages[1]["key"]);
    // what records refer to each other by names no chat
    assert!(!messages[0]["key"].as_str().unwrap().contains("77"));
}

#[test]
fn an_answer_is_found_for_its_edit_after_a_restart() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 battery 12.4");
    api.replies(77, 1);
    folders.wait_until_noted();
    assert!(bot.stop());
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 14 battery 12.6");
    api.replies(77, 2);
    api.edits(77, number, 1_800_000_100, "unit 12 battery 12.7");
    api.wait("answered in place", |state| {
        let first = state.sent.iter().find(|sent| sent.chat == 77);
        first.is_some_and(|sent| sent.edits == 1 && sent.text.contains("12.7"))
    });
    assert!(bot.stop());
    assert_eq!(api.state().texts(77).len(), 2);
}

#[test]
fn a_warning_comes_anew_and_the_old_answer_points_to_it() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 50");
    api.replies(77, 1);
    folders.wait_until_noted();
    api.edits(77, number, 1_800_000_100, "unit 12 pressure 95");
    let texts = api.replies(77, 2);
    assert!(texts[1].contains("WARNING"), "{texts:?}");
    api.wait("the old answer points on", |state| {
        state.texts(77)[0].contains("below")
    });
    assert!(bot.stop());
}

#[test]
fn an_answer_that_cannot_be_edited_is_given_anew() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 battery 12.4");
    api.replies(77, 1);
    folders.wait_until_noted();
    let gone = "Bad Request: message to edit not found";
    api.faults("editMessageText", [Fault::Status(400, gone)]);
    api.edits(77, number, 1_800_000_100, "unit 12 battery 12.5");
    let texts = api.replies(77, 2);
    assert!(texts[1].contains("12.5"), "{texts:?}");
    folders.wait_until_noted();
    // that it says so already is as good as done
    let same = "Bad Request: message is not modified";
    api.faults("editMessageText", [Fault::Status(400, same)]);
    api.edits(77, number, 1_800_000_200, "unit 12 battery 12.6");
    api.wait("tried", |state| state.faults["editmessagetext"].is_empty());
    folders.wait_until_noted();
    // a flood is sat out, and the order kept
    api.faults("editMessageText", [Fault::Flood(1)]);
    api.edits(77, number, 1_800_000_300, "unit 12 battery 12.7");
    api.says(77, "unit 14 battery 12.8");
    let texts = api.replies(77, 3);
    assert!(texts[1].contains("12.7"), "{texts:?}");
    assert!(texts[2].contains("12.8"), "{texts:?}");
    assert!(bot.stop());
    api.has_no_complaint();
}

#[test]
fn an_edit_that_comes_while_its_answer_is_on_its_way_is_answered_last() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let slow = std::time::Duration::from_millis(1500);
    api.faults("sendMessage", [Fault::Slow(slow)]);
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 battery 12.4");
    api.wait("the answer on its way", |state| {
        let mut asked = state.asked.iter();
        asked.any(|(method, _)| method == "sendmessage")
    });
    api.edits(77, number, 1_800_000_100, "unit 12 battery 12.7");
    let texts = api.replies(77, 2);
    assert!(texts[1].contains("12.7"), "{texts:?}");
    api.wait("the first points on", |state| {
        state.texts(77)[0].contains("below")
    });
    assert!(bot.stop());
}
