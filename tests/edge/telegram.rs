//! The live service end to end: the real binary against a loopback stand-in for the Bot API.

#[path = "botapi/mod.rs"]
pub(crate) mod botapi;

use std::path::Path;
use std::process::{Child, Command, Stdio};

use botapi::{BotApi, Fault, TOKEN};
use tempfile::TempDir;

use crate::small_fleet::{CREW, FLEET};

/// A bot that runs as its own process, with its folders.
struct Bot {
    child: Child,
}

struct Folders {
    data: TempDir,
    fleet: TempDir,
}

impl Folders {
    fn new() -> Self {
        let folders = Folders {
            data: TempDir::new().unwrap(),
            fleet: TempDir::new().unwrap(),
        };
        folders.write("fleet.toml", FLEET);
        folders.write("jobs.toml", "");
        folders.write("crew.toml", CREW);
        folders
    }

    fn write(&self, name: &str, text: &str) {
        std::fs::write(self.fleet.path().join(name), text).unwrap();
    }

    fn log(&self) -> String {
        std::fs::read_to_string(self.fleet.path().join("log")).unwrap_or_default()
    }

    #[track_caller]
    fn wait_for_log(&self, text: &str, times: usize) {
        for _ in 0..3000 {
            if self.log().matches(text).count() >= times {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(20));
        }
        panic!("never logged {times} times: {text}\n{}", self.log());
    }
}

impl Bot {
    fn start(api: &BotApi, folders: &Folders) -> Self {
        let log = std::fs::OpenOptions::new()
            .append(true)
            .create(true)
            .open(folders.fleet.path().join("log"))
            .unwrap();
        let child = command(&api.url(), folders.data.path())
            .args(["--fleet".as_ref(), folders.fleet.path().as_os_str()])
            .stderr(log)
            .spawn()
            .unwrap();
        Bot { child }
    }

    fn kill(mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }

    fn signal(&self, name: &str) {
        let sent = Command::new("kill")
            .args([&format!("-{name}"), &self.child.id().to_string()])
            .status()
            .unwrap();
        assert!(sent.success());
    }

    /// Stops it as a service manager would, and returns whether it ended well.
    fn stop(mut self) -> bool {
        self.signal("TERM");
        self.child.wait().unwrap().success()
    }
}

impl Drop for Bot {
    fn drop(&mut self) {
        // already gone after `kill` and `stop`
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn command(url: &str, data: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hosebib"));
    command
        .args(["serve", "--api-url", url, "--data"])
        .arg(data)
        .env("HOSEBIB_TOKEN", TOKEN)
        .env("NO_PROXY", "127.0.0.1")
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command
}

/// The messages that a data directory holds, by key, each as often as it is recorded.
fn recorded(data: &Path) -> Vec<String> {
    hosebib::store::read_only(data)
        .unwrap()
        .flat_map(|line| line.unwrap().key)
        .collect()
}

#[test]
fn a_message_is_answered_where_it_was_written() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 95 tank 3/4 temp -5");
    api.replies(77, 1);
    let sent = api.state().sent[0].clone();
    assert_eq!((sent.chat, sent.answers), (77, Some(number)));
    assert!(bot.stop());
    assert_eq!(recorded(folders.data.path()), ["telegram:77:1:0"]);
    assert!(
        api.state().offences.is_empty(),
        "{:?}",
        api.state().offences
    );
}

#[test]
fn a_message_is_recorded_once_however_often_it_comes() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(77, 1);
    // the same message under other numbers, and numbers that begin anew far below
    let again = serde_json::json!({"message": {"message_id": 1, "date": 1_800_000_000, "text": "unit 12 arrived",
        "from": {"id": 77, "is_bot": false, "first_name": "Dana"}, "chat": {"id": 77, "type": "private", "first_name": "Dana"}}});
    api.pushes(again.clone());
    api.pushes(again);
    api.wait("all confirmed", |state| state.updates.is_empty());
    api.state().next_update = 5;
    api.says(77, "unit 12 leveled");
    api.says(77, "unit 12 chocked");
    api.replies(77, 3);
    api.wait("all confirmed", |state| state.updates.is_empty());
    api.state().next_update = 2_000_000_000;
    api.says(77, "unit 12 power on");
    api.replies(77, 4);
    assert!(bot.stop());
    let keys: Vec<String> = [1, 3, 4, 7]
        .map(|number| format!("telegram:77:{number}:0"))
        .into();
    let mut recorded = recorded(folders.data.path());
    recorded.sort();
    recorded.dedup();
    assert_eq!(recorded.len(), 4, "{recorded:?} against {keys:?}");
    assert_eq!(api.state().texts(77).len(), 4);
    assert!(
        api.state().offences.is_empty(),
        "{:?}",
        api.state().offences
    );
}

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
    assert!(state.offences.is_empty(), "{:?}", state.offences);
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
    assert!(
        api.state().offences.is_empty(),
        "{:?}",
        api.state().offences
    );
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
fn the_token_is_in_no_log_and_no_name_or_text_is_at_info() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.faults(
        "sendMessage",
        [
            Fault::Reset,
            Fault::Torn,
            Fault::Status(401, "Unauthorized"),
        ],
    );
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 pressure 95");
    api.replies(77, 1);
    assert!(bot.stop());
    // nobody listens on this port any more
    let dead = BotApi::start().url();
    let log = std::fs::OpenOptions::new()
        .append(true)
        .open(folders.fleet.path().join("log"))
        .unwrap();
    let mut child = command(&dead, folders.data.path())
        .env("RUST_LOG", "trace")
        .stderr(log)
        .spawn()
        .unwrap();
    std::thread::sleep(std::time::Duration::from_millis(500));
    child.kill().unwrap();
    child.wait().unwrap();
    let log = folders.log();
    assert!(
        log.contains("serving") && log.contains("cannot be reached yet"),
        "{log}"
    );
    for secret in [
        TOKEN,
        TOKEN.split_once(':').unwrap().1,
        "Dana",
        "pressure 95",
    ] {
        assert!(!log.contains(secret), "`{secret}` in:\n{log}");
    }
}

#[test]
fn a_hang_up_loads_the_fleet_again_and_a_faulty_one_changes_nothing() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(99, "unit 12 arrived");
    let stranger = api.replies(99, 1)[0].clone();
    folders.write(
        "crew.toml",
        "[[crew]]\nid = 5\nname = 6\n[[crew]]\nid = \"dana\"\nrole = \"king\"\n",
    );
    bot.signal("HUP");
    folders.wait_for_log("stays in force", 1);
    assert!(
        folders.log().matches("crew.toml").count() >= 2,
        "all problems are said: {}",
        folders.log()
    );
    api.says(77, "unit 12 leveled");
    assert_ne!(api.replies(77, 1)[0], stranger);
    folders.write("crew.toml", &format!("{CREW}\n[[crew]]\nid = \"lu\"\nname = \"Lu\"\nrole = \"tech\"\nlanguage = \"es\"\nchat_user = 99\n"));
    bot.signal("HUP");
    folders.wait_for_log("the fleet is loaded", 2);
    api.says(99, "unit 12 arrived");
    assert_ne!(api.replies(99, 2)[1], stranger);
    assert!(bot.stop());
}

#[test]
fn a_fleet_is_loaded_into_a_running_bot_over_the_socket() {
    use hosebib::chat::socket::{Request, ask};
    let (api, folders) = (BotApi::start(), Folders::new());
    assert_eq!(
        ask(folders.data.path(), &Request::Show),
        Ok(None),
        "nobody runs there"
    );
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(77, 1);
    let shown = ask(folders.data.path(), &Request::Show).unwrap().unwrap();
    assert_eq!(
        (&shown["trailers"], &shown["crew"], &shown["logging"]),
        (&2.into(), &2.into(), &true.into())
    );
    let fleet = Box::new(hosebib::fleet::Fleet::default());
    let loaded = ask(
        folders.data.path(),
        &Request::Load {
            digest: "none".into(),
            fleet,
        },
    )
    .unwrap()
    .unwrap();
    assert_eq!(loaded["crew"], 0);
    let shown = ask(folders.data.path(), &Request::Show).unwrap().unwrap();
    assert_eq!(
        (&shown["crew"], &shown["fleet_digest"]),
        (&0.into(), &"none".into())
    );
    assert!(bot.stop());
    assert_eq!(ask(folders.data.path(), &Request::Show), Ok(None));
}

#[test]
fn stopping_waits_for_what_is_on_its_way() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.faults(
        "sendMessage",
        [Fault::Slow(std::time::Duration::from_millis(1500))],
    );
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.wait("the reply under way", |state| {
        state
            .asked
            .iter()
            .any(|(method, _)| method == "sendmessage")
    });
    assert!(bot.stop());
    assert_eq!(api.state().texts(77).len(), 1);
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 leveled");
    api.replies(77, 2);
    assert!(bot.stop());
    let answers: Vec<_> = api.state().sent.iter().map(|sent| sent.answers).collect();
    assert_eq!(
        answers.len(),
        2,
        "the first was not sent again: {answers:?}"
    );
}

#[test]
fn a_second_process_on_the_same_data_is_refused_in_one_sentence() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.says(77, "unit 12 arrived");
    api.replies(77, 1);
    let second = command(&api.url(), folders.data.path())
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    let said = String::from_utf8(second.stderr).unwrap();
    assert!(
        !second.status.success() && said.contains("in use by another hosebib"),
        "{said}"
    );
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

/// Where the system lets one process look at another's system calls; `strace` has to be installed.
#[test]
fn every_acknowledged_batch_was_synced_before() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let trace = folders.fleet.path().join("trace");
    let probe = Command::new("strace")
        .args(["-o", "/dev/null", "true"])
        .stderr(Stdio::null())
        .status();
    if !probe.is_ok_and(|status| status.success()) {
        println!("not checked here: `strace` does not run");
        return;
    }
    let mut strace = Command::new("strace");
    strace
        .args([
            "-f",
            "-s",
            "400",
            "-e",
            "trace=fdatasync,writev,sendto,write",
            "-o",
        ])
        .arg(&trace)
        .arg(env!("CARGO_BIN_EXE_hosebib"))
        .args(["serve", "--api-url", &api.url(), "--data"])
        .arg(folders.data.path())
        .arg("--fleet")
        .arg(folders.fleet.path())
        .env("HOSEBIB_TOKEN", TOKEN)
        .env("NO_PROXY", "127.0.0.1")
        .stderr(Stdio::null());
    let mut child = strace.spawn().unwrap();
    for round in 0..5 {
        api.says(77, "unit 12 arrived");
        api.says(88, "unit 14 arrived");
        api.replies(77, round + 1);
    }
    api.wait("all confirmed", |state| state.updates.is_empty());
    // the first line is the bot's own: its process number, then the call
    let bot = std::fs::read_to_string(&trace).unwrap();
    let bot = bot.split_whitespace().next().unwrap_or_default().to_owned();
    let sent = Command::new("kill").args(["-TERM", &bot]).status().unwrap();
    assert!(sent.success(), "no process `{bot}`");
    child.wait().unwrap();
    let (mut syncs, mut at_last_offset, mut batches) = (0, 0, 0);
    let mut last = None;
    for line in std::fs::read_to_string(&trace).unwrap().lines() {
        if line.contains("fdatasync") && line.ends_with("= 0") {
            syncs += 1;
        }
        let offset = line
            .split_once(r#"\"offset\":"#)
            .and_then(|(_, rest)| rest.split_once(','));
        let Some((offset, _)) = offset.filter(|_| line.contains("GetUpdates")) else {
            continue;
        };
        if last.as_deref() != Some(offset) {
            assert!(
                syncs > at_last_offset,
                "offset {offset} moved without a sync"
            );
            (at_last_offset, batches, last) = (syncs, batches + 1, Some(offset.to_owned()));
        }
    }
    assert!(batches > 0, "the trace shows polls with offsets");
    println!("{batches} acknowledged batches, {syncs} syncs");
}

/// So many kills; `HOSEBIB_KILLS` asks for another number.
fn kills() -> usize {
    std::env::var("HOSEBIB_KILLS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(8)
}

#[test]
fn kills_lose_no_message_and_no_reply() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let people: Vec<i64> = (200..220).collect();
    let crew: String = people
        .iter()
        .map(|user| format!("[[crew]]\nid = \"p{user}\"\nname = \"P{user}\"\nrole = \"driver\"\nlanguage = \"en\"\nchat_user = {user}\n"))
        .collect();
    folders.write("crew.toml", &crew);
    let mut random = fastrand::Rng::with_seed(7);
    let mut said = 0;
    for _ in 0..kills() {
        let bot = Bot::start(&api, &folders);
        let end = std::time::Instant::now() + std::time::Duration::from_millis(random.u64(30..700));
        while std::time::Instant::now() < end {
            let person = people[random.usize(0..people.len())];
            let waits = {
                let state = api.state();
                let said = state.said.get(&person).copied().unwrap_or(0);
                said > state.texts(person).len() + 6
            };
            // nobody writes on and on without an answer, and the limit of one reply a second a chat is waited for
            if !waits {
                api.says(person, "unit 12 arrived");
                said += 1;
            }
            std::thread::sleep(std::time::Duration::from_millis(random.u64(1..15)));
        }
        // a fault that nothing has met yet is enough
        let met = api
            .state()
            .faults
            .values()
            .all(std::collections::VecDeque::is_empty);
        if met && random.bool() {
            api.faults("sendMessage", [Fault::DoneAndTorn]);
        }
        bot.kill();
    }
    let bot = Bot::start(&api, &folders);
    api.wait("all confirmed", |state| state.updates.is_empty());
    let answered = |state: &botapi::State| {
        let pairs: std::collections::BTreeSet<(i64, i64)> = state
            .sent
            .iter()
            .map(|sent| (sent.chat, sent.answers.unwrap_or(0)))
            .collect();
        pairs.len()
    };
    api.wait("a reply to each", |state| answered(state) >= said);
    assert!(bot.stop());
    let mut keys = recorded(folders.data.path());
    keys.sort();
    let all = keys.len();
    keys.dedup();
    assert_eq!(
        (keys.len(), all),
        (said, said),
        "each recorded exactly once"
    );
    let state = api.state();
    for person in people {
        // a reply may come again, so it is the first time of each that counts
        let mut firsts = Vec::new();
        for answers in state
            .sent
            .iter()
            .filter(|sent| sent.chat == person)
            .filter_map(|sent| sent.answers)
        {
            if !firsts.contains(&answers) {
                firsts.push(answers);
            }
        }
        assert!(
            firsts.is_sorted(),
            "chat {person} got its replies in order: {firsts:?}"
        );
    }
    println!(
        "{} kills, {said} messages, {} replies sent again",
        kills(),
        state.sent.len() - said
    );
}
