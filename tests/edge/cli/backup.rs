//! `hosebib backup` and `hosebib restore`.

use std::fs;

use hosebib::store::{read_only, verify};

use super::{Bot, Folders, run};
use crate::telegram::botapi::BotApi;

fn turns(dir: &std::path::Path) -> u64 {
    let report = verify(dir).unwrap();
    assert_eq!(report.damage, []);
    report.turns
}

#[test]
fn a_backup_beside_a_running_bot_holds_what_was_acknowledged_and_comes_back() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let bot = Bot::start(&api, folders.data.path());
    api.says(77, "12 pressure 95");
    api.replies(77, 1);
    let place = tempfile::tempdir().unwrap();
    let copy = place.path().join("copy");
    let said = run(["backup", copy.to_str().unwrap(), "--data", folders.data()]).good();
    assert!(said.contains("nothing is damaged"), "{said}");
    drop(bot);
    let keys: Vec<String> = read_only(&copy)
        .unwrap()
        .filter_map(|line| line.unwrap().key)
        .collect();
    assert_eq!(keys, ["telegram:77:1:0"]);

    let back = place.path().join("back");
    let args = [
        "restore",
        copy.to_str().unwrap(),
        "--data",
        back.to_str().unwrap(),
    ];
    let said = run(args).good();
    assert!(said.contains("nothing is damaged"), "{said}");
    assert_eq!(turns(&back), turns(&copy));
    // a bot serves from it as from the original
    let shown = run(["fleet", "show", "12", "--data", back.to_str().unwrap()]).good();
    assert!(shown.contains("95 psi"), "{shown}");
    assert!(
        run([
            "fleet",
            "load",
            folders.fleet(),
            "--data",
            back.to_str().unwrap()
        ])
        .good()
        .contains("nothing to do")
    );
}

#[test]
fn a_line_that_is_being_written_is_left_out() {
    let folders = Folders::new();
    folders.load();
    let before = turns(folders.data.path());
    let segment = folders.data.path().join("journal/000000000001.jsonl");
    let mut text = fs::read_to_string(&segment).unwrap();
    text.push_str("{\"seq\":2,\"versi");
    fs::write(&segment, text).unwrap();
    let place = tempfile::tempdir().unwrap();
    let copy = place.path().join("copy");
    let said = run(["backup", copy.to_str().unwrap(), "--data", folders.data()]).good();
    assert!(!said.contains("unfinished"), "{said}");
    assert_eq!(turns(&copy), before);
}

#[test]
fn what_lies_beside_the_journal_is_copied_but_for_what_belongs_to_the_bot() {
    let folders = Folders::new();
    folders.load();
    fs::create_dir(folders.data.path().join("photos")).unwrap();
    fs::write(folders.data.path().join("photos/1.jpg"), "jpg").unwrap();
    fs::write(folders.data.path().join("history.txt"), "12 waste 1/2").unwrap();
    let place = tempfile::tempdir().unwrap();
    let copy = place.path().join("copy");
    run(["backup", copy.to_str().unwrap(), "--data", folders.data()]).good();
    let mut names: Vec<String> = fs::read_dir(&copy)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(names, ["format", "journal", "photos"]);
    assert_eq!(fs::read(copy.join("photos/1.jpg")).unwrap(), b"jpg");
}

#[test]
fn nothing_is_copied_over_what_is_there() {
    let folders = Folders::new();
    folders.load();
    let full = tempfile::tempdir().unwrap();
    fs::write(full.path().join("letter.txt"), "dear all").unwrap();
    let to = full.path().to_str().unwrap();
    for args in [
        ["backup", to, "--data", folders.data()],
        ["restore", folders.data(), "--data", to],
    ] {
        let said = run(args).bad();
        assert!(
            said.contains("is not empty (it holds `letter.txt`)"),
            "{said}"
        );
    }
    assert_eq!(fs::read_dir(full.path()).unwrap().count(), 1);
}

#[test]
fn a_backup_into_the_data_directory_is_refused() {
    let folders = Folders::new();
    folders.load();
    let before = fs::read_dir(folders.data.path()).unwrap().count();
    let inside = folders.data.path().join("copies/today");
    for to in [inside.to_str().unwrap(), folders.data()] {
        let said = run(["backup", to, "--data", folders.data()]).bad();
        assert!(said.contains("name a folder outside it"), "{said}");
    }
    assert_eq!(fs::read_dir(folders.data.path()).unwrap().count(), before);
}

#[test]
fn a_damaged_journal_is_said_by_the_backup() {
    let folders = Folders::new();
    folders.load();
    folders.says("dana", "2027-01-16T12:00:00Z", "12 pressure 55\n");
    let segment = folders.data.path().join("journal/000000000001.jsonl");
    let text = fs::read_to_string(&segment).unwrap();
    fs::write(&segment, text.replacen("55", "65", 1)).unwrap();
    let place = tempfile::tempdir().unwrap();
    let copy = place.path().join("copy");
    let ran = run(["backup", copy.to_str().unwrap(), "--data", folders.data()]);
    assert_eq!(ran.code, Some(1), "{ran:?}");
    assert!(
        ran.out.contains("damaged:") && ran.out.contains("hosebib verify"),
        "{ran:?}"
    );
}

#[test]
fn what_is_no_data_directory_is_not_restored() {
    let place = tempfile::tempdir().unwrap();
    fs::write(place.path().join("letter.txt"), "dear all").unwrap();
    let to = place.path().join("new");
    let args = [
        "restore",
        place.path().to_str().unwrap(),
        "--data",
        to.to_str().unwrap(),
    ];
    assert!(run(args).bad().contains("is not a hosebib data directory"));
    assert!(!to.exists());
}
