//! Letting people in and shutting them out, through the whole service.

use std::io::Write;
use std::process::Stdio;

use super::botapi::{BotApi, Fault};
use super::{Bot, Command, Folders};

/// What everybody is told who was not let in.
const STRANGER: &str = "This chat is for invited people only.";

/// Takes the code out of a link into the chat.
#[track_caller]
fn code(text: &str) -> String {
    let (_, rest) = text
        .split_once("?start=")
        .unwrap_or_else(|| panic!("no link: {text}"));
    rest.chars()
        .take_while(|c| c.is_ascii_alphanumeric())
        .collect()
}

#[track_caller]
fn well(api: &BotApi, bot: Bot) {
    assert!(bot.stop());
    api.has_no_complaint();
}

#[test]
fn an_invite_by_chat_lets_one_person_in_once() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(88, "invite tech Sam es");
    let told = api.replies(88, 2);
    let code = code(&told[1]);
    assert!(told[1].contains("https://t.me/"), "{told:?}");
    api.says(99, "hello");
    assert_eq!(api.replies(99, 1), [STRANGER]);
    api.says(99, &format!("/start {code}"));
    let greeted = api.replies(99, 2);
    assert!(greeted[1].starts_with("Hola Sam."), "{greeted:?}");
    assert!(api.replies(88, 3)[2].contains("Sam has joined"));
    api.says(99, "14 presión 50");
    let served = api.replies(99, 3);
    assert!(
        served[2].contains("Anotado para la 14: agua 50 psi"),
        "{served:?}"
    );
    // the same code on another phone
    api.says(100, &format!("/start {code}"));
    assert_eq!(api.replies(100, 1), [STRANGER]);
    api.says(100, "14 pressure 95");
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert_eq!(api.state().texts(100).len(), 1, "one line a day");
    well(&api, bot);
    let log = folders.log();
    assert!(!log.contains(&code), "the code is nobody's business");
}

#[test]
fn an_invite_that_ran_out_lets_nobody_in() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let program = || Command::new(env!("CARGO_BIN_EXE_hosebib"));
    let data = folders.data.path();
    let loaded = program()
        .args(["fleet", "load"])
        .arg(folders.fleet.path())
        .arg("--data")
        .arg(data)
        .output();
    assert!(loaded.unwrap().status.success());
    // made years ago, on the console
    let mut chat = program()
        .args([
            "chat",
            "--as",
            "mo",
            "--at",
            "2020-01-16T12:00:00Z",
            "--data",
        ])
        .arg(data)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    chat.stdin
        .take()
        .unwrap()
        .write_all(b"invite driver Kit en\n")
        .unwrap();
    let said = String::from_utf8(chat.wait_with_output().unwrap().stdout).unwrap();
    let (_, code) = said
        .split_once("/start ")
        .unwrap_or_else(|| panic!("{said}"));
    let code: String = code
        .chars()
        .take_while(|c| c.is_ascii_alphanumeric())
        .collect();
    let bot = Bot::start(&api, &folders);
    api.says(101, &format!("/start {code}"));
    assert_eq!(api.replies(101, 1), [STRANGER]);
    well(&api, bot);
}

#[test]
fn an_invite_from_the_command_line_goes_through_the_running_bot() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(88, "crew");
    api.replies(88, 1);
    let made = Command::new(env!("CARGO_BIN_EXE_hosebib"))
        .args([
            "invite",
            "--role",
            "dispatcher",
            "--name",
            "Ada",
            "--language",
            "en",
            "--data",
        ])
        .arg(folders.data.path())
        .output()
        .unwrap();
    assert!(made.status.success(), "{made:?}");
    let link = String::from_utf8(made.stdout).unwrap();
    assert!(link.starts_with("https://t.me/"), "{link}");
    api.says(102, &format!("/start {}", code(&link)));
    assert!(api.replies(102, 1)[0].starts_with("Hello Ada."));
    api.says(102, "crew");
    let crew = api.replies(102, 2);
    assert!(crew[1].contains("Ada (ada), dispatcher"), "{crew:?}");
    well(&api, bot);
}

#[test]
fn what_waits_for_a_phone_that_is_shut_out_is_not_sent() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.faults("sendMessage", [Fault::Flood(3)]);
    api.says(77, "12 pressure 50");
    api.wait("a reply that is told to wait", |state| {
        state
            .asked
            .iter()
            .any(|(method, _)| method == "sendmessage")
    });
    api.says(88, "shut out Dana");
    let told = api.replies(88, 1);
    assert!(told[0].contains("Dana"), "{told:?}");
    // from then on she is a stranger, and what she sends is no check-in; what waited would have come first
    api.says(77, "12 pressure 95");
    assert_eq!(api.replies(77, 1), [STRANGER]);
    api.says(88, "status 12");
    let status = api.replies(88, 2);
    assert!(!status[1].contains("95"), "{status:?}");
    well(&api, bot);
}

#[test]
fn the_list_of_the_crew_says_who_cannot_be_written_to() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().blocked.insert(77);
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(88, 1);
    api.says(88, "crew");
    let crew = &api.replies(88, 2)[1];
    let dana = crew.lines().find(|line| line.contains("Dana")).unwrap();
    assert!(dana.contains("Cannot be written to since"), "{crew}");
    let mo = crew.lines().find(|line| line.contains("Mo (")).unwrap();
    assert!(!mo.contains("Cannot"), "{crew}");
    well(&api, bot);
}
