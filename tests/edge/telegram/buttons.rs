//! Buttons: offered, pressed, and pressed by those who may not.

use super::*;

/// What the journal holds of one kind of record.
fn records(folders: &Folders, kind: &str) -> Vec<serde_json::Value> {
    hosebib::store::read_only(folders.data.path())
        .unwrap()
        .flat_map(|line| line.unwrap().records)
        .filter(|record| record["record"] == kind)
        .collect()
}

/// How many presses were refused and counted.
fn refused(folders: &Folders) -> usize {
    let refused = records(folders, "refused");
    refused
        .iter()
        .filter(|record| record["tried"] == "press")
        .count()
}

/// Dana reports a pressure that asks for a task; returns what the bot answered.
fn over_pressure(api: &BotApi) -> botapi::Sent {
    let before = api.state().texts(77).len();
    api.says(77, "unit 12 pressure 95, after the regulator");
    api.replies(77, before + 1);
    api.state().last(77)
}

#[test]
fn a_press_says_what_could_have_been_written_and_says_it_once() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let reply = over_pressure(&api);
    assert!(reply.text.contains("Task 1"), "{reply:?}");
    assert!(reply.buttons.len() <= 4, "{reply:?}");
    let press = api.presses(77, 77, reply.number, &reply.key("Done 1"));
    assert_eq!(api.toast(&press), "");
    let done = api.replies(77, 2)[1].clone();
    assert!(done.contains("done"), "{done}");
    assert_eq!(
        api.state().last(77).answers,
        Some(reply.number),
        "it quotes the message that was pressed under"
    );
    let again = api.presses(77, 77, reply.number, &reply.key("Done 1"));
    assert!(api.toast(&again).contains("counts once"));
    // why can be asked as often as one likes
    for count in 3..5 {
        let why = api.presses(77, 77, reply.number, &reply.key("Why?"));
        assert_eq!(api.toast(&why), "");
        assert!(api.replies(77, count)[count - 1].contains("limit"));
    }
    assert!(bot.stop());
    assert_eq!(refused(&folders), 0);
    let said: Vec<_> = records(&folders, "message")
        .iter()
        .map(|message| message["text"]["personal"].as_str().unwrap().to_owned())
        .collect();
    assert_eq!(said[1..], ["done 1", "why 12", "why 12"]);
    api.has_no_complaint();
}

#[test]
fn forged_and_foreign_presses_change_nothing_and_are_counted() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let reply = over_pressure(&api);
    let key = reply.key("Done 1");
    let mut forged = key.clone();
    let last = forged.pop().unwrap();
    forged.push(if last == '0' { '1' } else { '0' });
    for key in [
        forged.as_str(),
        "",
        "done 1",
        &"f".repeat(64),
        &"f".repeat(65),
    ] {
        let press = api.presses(77, 77, reply.number, key);
        assert!(api.toast(&press).contains("does nothing"), "{key}");
    }
    // Mo is a dispatcher, and still it is not Mo's button
    let foreign = api.presses(88, 88, reply.number, &key);
    assert!(api.toast(&foreign).contains("somebody else"));
    let elsewhere = api.presses(77, -1001, reply.number, &key);
    assert!(api.toast(&elsewhere).contains("somebody else"));
    // a stranger is shown nothing, and told the one line that all are told
    let stranger = api.presses(500, 500, reply.number, &key);
    assert_eq!(api.toast(&stranger), "");
    api.replies(500, 1);
    let in_group = api.presses(501, -1001, reply.number, &key);
    assert_eq!(api.toast(&in_group), "");
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    assert_eq!(refused(&folders), 9);
    assert_eq!(records(&folders, "message").len(), 1);
    let state = api.state();
    assert_eq!(state.texts(500).len(), 1);
    assert!(state.texts(-1001).is_empty() && state.texts(77).len() == 1);
}

#[test]
fn buttons_outlive_a_restart() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let reply = over_pressure(&api);
    bot.kill();
    let bot = Bot::start(&api, &folders);
    let press = api.presses(77, 77, reply.number, &reply.key("Done 1"));
    assert_eq!(api.toast(&press), "");
    api.replies(77, 2);
    bot.kill();
    let bot = Bot::start(&api, &folders);
    let again = api.presses(77, 77, reply.number, &reply.key("Done 1"));
    assert!(api.toast(&again).contains("counts once"));
    assert!(bot.stop());
}

#[test]
fn buttons_die_with_a_phone_that_is_shut_out() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let reply = over_pressure(&api);
    api.says(88, "shut out Dana");
    api.wait("shut out", |state| {
        state.texts(88).iter().any(|text| text.contains("Dana"))
    });
    let press = api.presses(77, 77, reply.number, &reply.key("Done 1"));
    assert_eq!(api.toast(&press), "");
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    assert_eq!(refused(&folders), 1);
    assert!(records(&folders, "pressed").is_empty());
}

#[test]
fn what_was_not_right_is_taken_back_and_not_what_came_after() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 battery 12.6");
    api.replies(77, 1);
    let reply = api.state().last(77);
    api.says(77, "unit 14 battery 12.7");
    api.replies(77, 2);
    let press = api.presses(77, 77, reply.number, &reply.key("Not right"));
    assert_eq!(api.toast(&press), "");
    let answer = api.replies(77, 3)[2].clone();
    assert!(
        answer.contains("12.6") && !answer.contains("12.7"),
        "{answer}"
    );
    assert!(bot.stop());
}

#[test]
fn a_reply_goes_to_the_topic_it_was_asked_in() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let group =
        serde_json::json!({"id": -1001, "type": "supergroup", "title": "Crew", "is_forum": true});
    let mut in_topic = serde_json::json!({"message": {"message_id": 9, "date": 1_800_000_000, "text": "unit 12 arrived", "chat": group,
        "message_thread_id": 4, "is_topic_message": true, "from": {"id": 77, "is_bot": false, "first_name": "Dana"}}});
    api.pushes(in_topic.clone());
    api.replies(-1001, 1);
    assert_eq!(api.state().last(-1001).topic, Some(4));
    // a thread of replies in a group without topics is no topic, and naming it would be refused
    in_topic["message"]["is_topic_message"] = false.into();
    in_topic["message"]["message_id"] = 11.into();
    in_topic["message"]["text"] = "unit 12 leveled".into();
    api.pushes(in_topic);
    api.replies(-1001, 2);
    assert_eq!(api.state().last(-1001).topic, None);
    assert!(bot.stop());
}
