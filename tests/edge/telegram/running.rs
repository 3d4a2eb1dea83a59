//! The bot as a process: its log, its signals, its data directory.

use super::*;

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
    folders.wait_for_log("cannot be reached yet", 1);
    child.kill().unwrap();
    child.wait().unwrap();
    let log = folders.log();
    assert!(log.contains("serving"), "{log}");
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
