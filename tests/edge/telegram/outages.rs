//! What goes wrong between the bot and the network.

use super::*;

#[test]
fn floods_outages_and_torn_answers_are_sat_out() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.faults("getMe", [Fault::Status(502, "Bad Gateway"), Fault::Garbage]);
    api.faults(
        "getUpdates",
        [
            Fault::Torn,
            Fault::Status(500, "Internal Server Error"),
            Fault::Garbage,
            Fault::Flood(1),
        ],
    );
    api.faults(
        "sendMessage",
        [Fault::Flood(2), Fault::Reset, Fault::Torn, Fault::Garbage],
    );
    let bot = Bot::start(&api, &folders);
    for text in ["unit 12 arrived", "unit 12 leveled", "unit 12 chocked"] {
        api.says(77, text);
    }
    api.replies(77, 3);
    assert!(bot.stop());
    let state = api.state();
    let answered: Vec<_> = state.sent.iter().map(|sent| sent.answers).collect();
    assert_eq!(
        answered,
        [Some(1), Some(2), Some(3)],
        "in order, none twice: {:?}",
        state.sent
    );
    drop(state);
    api.has_no_complaint();
    assert_eq!(recorded(folders.data.path()).len(), 3);
}

#[test]
fn a_flooded_chat_is_left_alone_and_the_others_are_served() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.faults("sendMessage", [Fault::Flood(3)]);
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.wait("the flood answer", |state| {
        state
            .asked
            .iter()
            .any(|(method, _)| method == "sendmessage")
    });
    api.state().floods.insert(
        77,
        std::time::Instant::now() + std::time::Duration::from_millis(2500),
    );
    api.says(88, "unit 14 arrived");
    api.replies(88, 1);
    assert!(
        api.state().texts(77).is_empty(),
        "the other chat was served first"
    );
    api.replies(77, 1);
    api.has_no_complaint();
    assert!(bot.stop());
}

#[test]
fn a_blocked_chat_is_told_to_the_dispatcher_once() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().blocked.insert(77);
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    let told = api.replies(88, 1);
    assert!(told[0].contains("Dana"), "{told:?}");
    api.says(77, "unit 12 leveled");
    // Dana can be reached again, and is
    api.wait("all confirmed", |state| state.updates.is_empty());
    std::thread::sleep(std::time::Duration::from_millis(300));
    api.state().blocked.clear();
    api.says(77, "unit 12 chocked");
    api.replies(77, 1);
    assert!(bot.stop());
}

#[test]
fn a_second_poller_is_waited_out_and_said() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.faults(
        "getUpdates",
        [Fault::Status(
            409,
            "Conflict: terminated by other getUpdates request",
        )],
    );
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(77, 1);
    assert!(bot.stop());
    assert!(
        folders.log().contains("another program fetches"),
        "{}",
        folders.log()
    );
}

#[test]
fn a_server_that_holds_no_poll_open_is_not_asked_on_and_on() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().hurries = true;
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(77, 1);
    let (before, began) = (api.state().polls, std::time::Instant::now());
    std::thread::sleep(std::time::Duration::from_secs(2));
    let polls = api.state().polls - before;
    // one a second; however slow this machine is, more are only made where nothing holds them back
    assert!(
        polls <= began.elapsed().as_secs() + 2,
        "{polls} polls in {:?}",
        began.elapsed()
    );
    api.says(77, "unit 12 leveled");
    api.replies(77, 2);
    assert!(bot.stop());
}

#[test]
fn a_refused_token_ends_the_start_with_what_to_do() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let output = command(&api.url(), folders.data.path())
        .env("HOSEBIB_TOKEN", "999999:AAnot_the_token")
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        !output.status.success() && said.contains("refuses the bot's token"),
        "{said}"
    );
    assert!(!said.contains("AAnot_the_token"), "{said}");
}
