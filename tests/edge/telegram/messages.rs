//! Messages come in and are answered once.

use super::*;

#[test]
fn a_message_is_answered_where_it_was_written() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 95 tank 3/4 temp -5");
    api.replies(77, 1);
    let sent = api.state().sent[0].clone();
    assert_eq!((sent.chat, sent.answers), (77, Some(number)));
    assert!(bot.stop());
    let key = "telegram:77:1:0".to_owned();
    assert_eq!(recorded(folders.data.path()), [key].into());
    api.has_no_complaint();
}

#[test]
fn a_message_is_recorded_once_however_often_it_comes() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let mut numbers = vec![api.says(77, "unit 12 arrived")];
    api.replies(77, 1);
    // the same message under other numbers, and numbers that begin anew far below
    let again = serde_json::json!({"message": {"message_id": 1, "date": 1_800_000_000, "text": "unit 12 arrived",
        "from": {"id": 77, "is_bot": false, "first_name": "Dana"}, "chat": {"id": 77, "type": "private", "first_name": "Dana"}}});
    api.pushes(again.clone());
    api.pushes(again);
    api.wait("all confirmed", |state| state.updates.is_empty());
    api.state().next_update = 5;
    numbers.push(api.says(77, "unit 12 leveled"));
    numbers.push(api.says(77, "unit 12 chocked"));
    api.replies(77, 3);
    api.wait("all confirmed", |state| state.updates.is_empty());
    api.state().next_update = 2_000_000_000;
    numbers.push(api.says(77, "unit 12 power on"));
    api.replies(77, 4);
    assert!(bot.stop());
    let key = |number: &i64| format!("telegram:77:{number}:0");
    assert_eq!(
        recorded(folders.data.path()),
        numbers.iter().map(key).collect()
    );
    assert_eq!(api.state().texts(77).len(), 4);
    api.has_no_complaint();
}

#[test]
fn odd_updates_do_not_cost_their_neighbours() {
    let (api, folders) = (BotApi::start(), Folders::new());
    {
        let mut state = api.state();
        for odd in [
            serde_json::json!({"hologram": {"id": 5}}),
            serde_json::json!({"message": {"message_id": "five"}}),
            serde_json::json!({"message": 7}),
            serde_json::json!({"edited_message": null}),
        ] {
            let id = state.next_update;
            let mut odd = odd;
            odd["update_id"] = id.into();
            state.updates.push_back((id, odd));
            state.next_update += 1;
        }
    }
    api.says(77, "unit 12 arrived");
    let bot = Bot::start(&api, &folders);
    api.replies(77, 1);
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
}
