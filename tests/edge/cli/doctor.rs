//! `hosebib doctor`.

use std::fs;
use std::process::Stdio;
use std::sync::atomic::{AtomicBool, Ordering};

use super::{Bot, Folders, Ran, program, ran, run};
use crate::telegram::botapi::{BotApi, Fault, TOKEN};

/// Examines with a token, against a stand-in.
fn examined(api: &BotApi, args: &[&str]) -> Ran {
    let output = program()
        .args(["doctor", "--api-url", &api.url()])
        .args(args)
        .env("HOSEBIB_TOKEN", TOKEN)
        .stdin(Stdio::null())
        .output()
        .unwrap();
    ran(&output)
}

#[track_caller]
fn line<'a>(ran: &'a Ran, what: &str) -> &'a str {
    ran.out
        .lines()
        .find(|line| line[6..].starts_with(what))
        .unwrap_or_else(|| panic!("no line on {what}: {ran:?}"))
}

/// Examines as [`examined`] does, where the server sends a look for other programs away at once.
fn glanced_at(api: &BotApi) -> Ran {
    api.state().hurries = true;
    examined(api, &[])
}

#[test]
fn without_a_token_the_rest_is_checked_and_that_is_said() {
    let folders = Folders::new();
    folders.load();
    let ran = run([
        "doctor",
        "--data",
        folders.data(),
        "--fleet",
        folders.fleet(),
    ]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(line(&ran, "token").contains("the network is not checked"));
    assert!(line(&ran, "store").starts_with("ok"));
    assert!(line(&ran, "disk").contains("64 kB"));
    assert!(line(&ran, "time zone").contains("America/Halifax"));
    let left: Vec<_> = fs::read_dir(folders.data.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.starts_with("doctor"))
        .collect();
    assert!(left.is_empty(), "{left:?}");
}

#[test]
fn nothing_named_is_nothing_checked() {
    let ran = run(["doctor"]);
    assert_eq!(ran.code, Some(2), "{ran:?}");
    assert!(ran.err.contains("nothing was checked"), "{ran:?}");
}

#[test]
fn a_data_directory_that_others_can_read_is_told_of() {
    use std::os::unix::fs::PermissionsExt;
    let folders = Folders::new();
    folders.load();
    let open_to = |mode| {
        let mode = fs::Permissions::from_mode(mode);
        fs::set_permissions(folders.data.path(), mode).unwrap();
        run(["doctor", "--data", folders.data()])
    };
    let ran = open_to(0o755);
    assert!(
        ran.out.contains("chmod 700") && ran.out.contains("755"),
        "{ran:?}"
    );
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(!open_to(0o700).out.contains("chmod 700"));
}

#[test]
fn a_bot_in_good_order_is_found_so() {
    let api = BotApi::start();
    let folders = Folders::new();
    folders.load();
    {
        let mut state = api.state();
        state.reads_groups = true;
        state.ahead_s = Some(0);
    }
    let ran = examined(&api, &["--data", folders.data()]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    for what in [
        "bot",
        "store",
        "token",
        "network",
        "clock",
        "groups",
        "webhook",
        "second program",
    ] {
        assert!(line(&ran, what).starts_with("ok"), "{ran:?}");
    }
    api.has_no_complaint();
}

#[test]
fn privacy_mode_is_explained_and_is_no_fault() {
    let api = BotApi::start();
    let ran = glanced_at(&api);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    let said = line(&ran, "groups");
    assert!(
        said.starts_with("note") && said.contains("/setprivacy"),
        "{said}"
    );
}

#[test]
fn a_clock_that_is_off_is_said_with_its_remedy() {
    for (ahead, mark) in [(600, "BAD"), (-600, "BAD"), (20, "note"), (1, "ok")] {
        let api = BotApi::start();
        api.state().ahead_s = Some(ahead);
        let ran = glanced_at(&api);
        assert!(line(&ran, "clock").starts_with(mark), "{ahead}: {ran:?}");
        assert_eq!(ran.code, Some(i32::from(mark == "BAD")), "{ahead}: {ran:?}");
    }
}

#[test]
fn a_webhook_left_over_is_said_without_its_secret_path() {
    let api = BotApi::start();
    api.state().webhook = "https://hooks.example/secret-path".into();
    let ran = examined(&api, &[]);
    assert_eq!(ran.code, Some(1), "{ran:?}");
    let said = line(&ran, "webhook");
    assert!(
        said.contains("hooks.example")
            && !said.contains("secret")
            && said.contains("deleteWebhook"),
        "{said}"
    );
}

#[test]
fn another_program_that_polls_is_found() {
    let (api, done) = (BotApi::start(), AtomicBool::new(false));
    std::thread::scope(|scope| {
        scope.spawn(|| {
            // another bot, on another machine: it comes back after it was sent away
            while !done.load(Ordering::SeqCst) {
                api.polls_once(1);
            }
        });
        let ran = examined(&api, &[]);
        done.store(true, Ordering::SeqCst);
        assert_eq!(ran.code, Some(1), "{ran:?}");
        assert!(line(&ran, "second program").starts_with("BAD"), "{ran:?}");
    });
}

#[test]
fn the_bot_that_runs_here_is_not_disturbed() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let _bot = Bot::start(&api, folders.data.path());
    let ran = examined(&api, &["--data", folders.data()]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(line(&ran, "bot").contains("it runs here"), "{ran:?}");
    assert!(
        line(&ran, "second program").contains("not looked for"),
        "{ran:?}"
    );
}

#[test]
fn a_token_that_is_refused_or_none_is_said_and_never_repeated() {
    let api = BotApi::start();
    api.faults("getMe", [Fault::Status(401, "Unauthorized")]);
    let refused = examined(&api, &[]);
    assert_eq!(refused.code, Some(1), "{refused:?}");
    assert!(line(&refused, "network").contains("refuses the token"));

    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("token");
    fs::write(&file, "123456:not a token").unwrap();
    let none = run(["doctor", "--token-file", file.to_str().unwrap()]);
    assert_eq!(none.code, Some(1), "{none:?}");
    assert!(line(&none, "token").starts_with("BAD"));
    for ran in [&refused, &none] {
        let all = format!("{}{}", ran.out, ran.err);
        assert!(
            !all.contains(TOKEN) && !all.contains("not a token"),
            "{all}"
        );
    }
}

#[test]
fn a_network_that_is_away_is_said() {
    let ran = program()
        .args(["doctor", "--api-url", "http://127.0.0.1:1"])
        .env("HOSEBIB_TOKEN", TOKEN)
        .output()
        .unwrap();
    let ran = super::ran(&ran);
    assert_eq!(ran.code, Some(1), "{ran:?}");
    assert!(
        line(&ran, "network").contains("check this machine's way"),
        "{ran:?}"
    );
    assert!(!ran.out.contains(TOKEN));
}

#[test]
fn a_fleet_with_problems_or_nobody_in_it_is_bad() {
    let folders = Folders::new();
    folders.write("crew.toml", "");
    let nobody = run(["doctor", "--fleet", folders.fleet()]);
    assert_eq!(nobody.code, Some(1), "{nobody:?}");
    assert!(line(&nobody, "crew").contains("nobody is let in"));
    folders.write("jobs.toml", "[[job]]\n");
    let faulty = run(["doctor", "--fleet", folders.fleet()]);
    assert_eq!(faulty.code, Some(1), "{faulty:?}");
    assert!(line(&faulty, "fleet").contains("hosebib fleet check"));
}

#[test]
fn a_damaged_store_is_found_without_opening_it() {
    let folders = Folders::new();
    folders.load();
    folders.says("dana", "2027-01-16T12:00:00Z", "12 pressure 55\n");
    let segment = folders.data.path().join("journal/000000000001.jsonl");
    let text = fs::read_to_string(&segment).unwrap();
    fs::write(&segment, text.replacen("55", "65", 1)).unwrap();
    let ran = run(["doctor", "--data", folders.data()]);
    assert_eq!(ran.code, Some(1), "{ran:?}");
    assert!(line(&ran, "store").contains("damaged"), "{ran:?}");
}
