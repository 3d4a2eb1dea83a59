//! `hosebib forget`.

use hosebib::store::{read_only, verify};

use super::{Bot, CREW, FLEET, Folders, run};
use crate::telegram::botapi::BotApi;

/// Everything the journal's files hold.
fn bytes(folders: &Folders) -> String {
    let journal = folders.data.path().join("journal");
    std::fs::read_dir(journal)
        .unwrap()
        .map(|entry| std::fs::read_to_string(entry.unwrap().path()).unwrap())
        .collect()
}

#[track_caller]
fn whole(folders: &Folders) {
    assert_eq!(verify(folders.data.path()).unwrap().damage, []);
}

#[test]
fn a_persons_words_go_their_readings_stay_and_the_chain_verifies() {
    let folders = Folders::new();
    folders.load();
    folders.says(
        "dana",
        "2027-01-16T12:00:00Z",
        "12 waste 1/2 by the old willow\n",
    );
    folders.says("mo", "2027-01-16T12:10:00Z", "14 waste 1/4 by the brook\n");
    let said = run(["forget", "dana", "--data", folders.data()]).good();
    assert!(
        said.contains("Backups made before keep the words"),
        "{said}"
    );
    assert!(said.contains("still on the crew list"), "{said}");
    let left = bytes(&folders);
    assert!(!left.contains("willow") && left.contains("brook"));
    assert!(left.contains(r#""note":"forget""#) && left.contains(r#""who":"dana""#));
    whole(&folders);
    let shown = run(["fleet", "show", "12", "--data", folders.data()]).good();
    assert!(shown.contains("1/2"), "{shown}");
    let out = run(["export", "check-ins", "--jsonl", "--data", folders.data()]).good();
    let first: serde_json::Value = serde_json::from_str(out.lines().next().unwrap()).unwrap();
    assert_eq!(
        (&first["waste_pct"], &first["text"]),
        (&50.0.into(), &serde_json::Value::Null)
    );
    // the log goes on, with the snapshot made anew
    folders.says("dana", "2027-01-16T13:00:00Z", "12 waste 3/4\n");
    whole(&folders);
}

#[test]
fn questions_reasons_and_what_others_were_told_go_too() {
    let folders = Folders::new();
    folders.load();
    let texts = "the willow on 12 is at 40\n12 waste 3/4\ndrop 1 willow was wrong\ntell mo the willow fell\nneed a pump-out on 12 before noon by the willow\n12 someone is hurt by the willow\n";
    folders.says("dana", "2027-01-16T12:00:00Z", texts);
    assert!(bytes(&folders).contains("willow"));
    let history = folders.data.path().join("history.txt");
    std::fs::write(&history, texts).unwrap();
    run(["forget", "dana", "--data", folders.data()]).good();
    assert!(!history.exists());
    let left = bytes(&folders);
    let at = left
        .find("willow")
        .map(|at| &left[at.saturating_sub(200)..at + 20]);
    assert_eq!(at, None);
    whole(&folders);
    let index: Vec<u8> = std::fs::read(folders.data.path().join("index/db")).unwrap();
    assert!(!index.windows(6).any(|bytes| bytes == b"willow"));
}

#[test]
fn a_name_goes_once_the_crew_file_is_loaded_without_it() {
    let folders = Folders::new();
    folders.write("crew.toml", &CREW.replace("\"Dana\"", "\"Danadoe\""));
    folders.load();
    folders.write("crew.toml", &CREW[CREW.rfind("[[crew]]").unwrap()..]);
    folders.load();
    assert!(bytes(&folders).contains("Danadoe"));
    let said = run(["forget", "dana", "--data", folders.data()]).good();
    assert!(!said.contains("still on"), "{said}");
    assert!(!bytes(&folders).contains("Danadoe"));
    whole(&folders);
}

#[test]
fn a_running_bot_forgets_over_its_socket_and_serves_on() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let bot = Bot::start(&api, folders.data.path());
    api.says(77, "12 waste 1/2 by the old willow");
    api.replies(77, 1);
    run(["forget", "dana", "--data", folders.data()]).good();
    assert!(!bytes(&folders).contains("willow"));
    api.says(77, "12 waste 3/4");
    api.replies(77, 2);
    drop(bot);
    whole(&folders);
    // nothing forgotten is sent again, empty
    let _bot = Bot::start(&api, folders.data.path());
    api.says(77, "12 pressure 55");
    api.replies(77, 3);
    api.has_no_complaint();
}

#[test]
fn old_texts_go_and_young_ones_stay() {
    let folders = Folders::new();
    folders.load();
    folders.says(
        "dana",
        "2020-01-16T12:00:00Z",
        "12 waste 1/2 by the old willow\n",
    );
    let now = "2999-01-01T00:00:00Z";
    folders.says("dana", now, "14 waste 1/2 by the brook\n");
    let said = run(["forget", "--older-than", "30", "--data", folders.data()]).good();
    assert!(said.contains("taken out"), "{said}");
    let left = bytes(&folders);
    assert!(!left.contains("willow") && left.contains("brook"));
    whole(&folders);
}

#[test]
fn the_fleets_own_limit_is_applied_when_asked_and_when_a_bot_starts() {
    let folders = Folders::new();
    folders.load();
    let asked = ["forget", "--data", folders.data(), "--older-than"];
    assert!(run(asked).bad().contains("sets no keep_texts_days"));

    folders.write("fleet.toml", &format!("keep_texts_days = 30\n{FLEET}"));
    folders.load();
    folders.says(
        "dana",
        "2020-01-16T12:00:00Z",
        "12 waste 1/2 by the old willow\n",
    );
    run(asked).good();
    assert!(!bytes(&folders).contains("willow"));

    let other = Folders::new();
    other.write("fleet.toml", &format!("keep_texts_days = 30\n{FLEET}"));
    other.load();
    other.says(
        "dana",
        "2020-01-16T12:00:00Z",
        "12 waste 1/2 by the old willow\n",
    );
    let api = BotApi::start();
    let _bot = Bot::start(&api, other.data.path());
    assert!(!bytes(&other).contains("willow"));
}

#[test]
fn a_person_goes_by_their_name_in_any_case() {
    let folders = Folders::new();
    folders.load();
    let at = "2027-01-16T12:00:00Z";
    folders.says("dana", at, "12 waste 1/2 by the old willow\n");
    let said = run(["forget", "DANA", "--data", folders.data()]).good();
    assert!(said.contains("of `dana` taken out"), "{said}");
    assert!(!bytes(&folders).contains("willow"));
}

#[test]
fn somebody_unknown_is_said() {
    let folders = Folders::new();
    folders.load();
    let said = run(["forget", "dnaa", "--data", folders.data()]).bad();
    assert!(
        said.contains("no text of `dnaa`") && said.contains("check the id"),
        "{said}"
    );
    let turns = read_only(folders.data.path()).unwrap().count();
    assert!(turns > 0);
}
