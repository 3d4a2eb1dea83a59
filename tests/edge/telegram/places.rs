//! Places that are shared.

use super::*;
use serde_json::json;

/// One job of both trailers that is on whenever the test runs.
fn jobs() -> String {
    let now = chrono::DateTime::<chrono::Utc>::from(std::time::SystemTime::now());
    let day = |days| (now + chrono::TimeDelta::days(days)).format("%Y-%m-%dT12:00:00");
    let (from, to) = (day(-2), day(20));
    format!(
        "{SITE}\n[[job]]\nsite = \"heron-mere\"\ntrailers = [\"12\", \"14\"]\nfrom = {from}\nto = {to}\n"
    )
}

const SITE: &str = r#"
[[site]]
id = "heron-mere"
name = "Heron Mere boathouse"
position = [44.65, -63.58]

"#;

#[test]
fn a_shared_place_asks_who_has_arrived_and_a_moving_one_is_quiet() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.write("jobs.toml", &jobs());
    let bot = Bot::start(&api, &folders);
    let at = |north: f64| json!({"location": {"latitude": north, "longitude": -63.58, "live_period": 900}});
    let number = api.sends(77, at(44.9));
    assert!(api.replies(77, 1)[0].contains("as the crow flies"));
    // the same message again and again, as the phone moves
    for (count, north) in [(1, 44.85), (2, 44.8), (3, 44.6501), (4, 44.6502)] {
        let mut moved = json!({"message_id": number, "date": 1_800_000_000, "edit_date": 1_800_000_000 + count,
            "from": {"id": 77, "is_bot": false, "first_name": "Dana"}, "chat": {"id": 77, "type": "private", "first_name": "Dana"}});
        moved["location"] = at(north)["location"].clone();
        api.pushes(json!({ "edited_message": moved }));
    }
    let asked = api.replies(77, 2)[1].clone();
    assert!(asked.contains("12") && asked.contains("14"), "{asked}");
    let question = api.state().last(77);
    let press = api.presses(77, 77, question.number, &question.key("12"));
    assert_eq!(api.toast(&press), "");
    assert!(api.replies(77, 3)[2].contains("arrived"));
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    assert_eq!(api.state().texts(77).len(), 3);
    let journal = std::fs::read_dir(folders.data.path().join("journal")).unwrap();
    for segment in journal {
        let text = std::fs::read_to_string(segment.unwrap().path()).unwrap();
        assert!(
            !text.contains("44.6501") && !text.contains("44.9"),
            "nobody's way is kept"
        );
    }
}
