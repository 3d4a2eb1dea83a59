//! `hosebib fleet load` and `show`.

use super::{Bot, FLEET, Folders, run};
use crate::telegram::botapi::BotApi;

#[test]
fn a_fleet_is_loaded_once_and_the_same_files_again_say_so() {
    let folders = Folders::new();
    assert!(
        folders
            .load()
            .contains("2 trailers, 0 sites, 0 jobs, 2 crew")
    );
    assert!(folders.load().contains("nothing to do"));
    folders.write("fleet.toml", &FLEET.replace("500", "450"));
    assert!(folders.load().starts_with("loaded into"));
    let shown = run(["fleet", "show", "12", "--data", folders.data()]).good();
    assert!(shown.contains("450 gal"), "{shown}");
}

#[test]
fn a_load_keeps_the_log() {
    let folders = Folders::new();
    folders.load();
    folders.says("dana", "2027-01-16T12:00:00Z", "12 waste 1/2\n");
    folders.write("fleet.toml", &FLEET.replace("500", "450"));
    folders.load();
    let shown = run(["fleet", "show", "12", "--data", folders.data()]).good();
    assert!(
        shown.contains("450 gal") && shown.contains("1/2"),
        "{shown}"
    );
    let table = run(["fleet", "show", "--data", folders.data()]).good();
    assert!(table.contains("2027-01-16 08:00 dana"), "{table}");
}

#[test]
fn what_a_pump_out_taught_stands_beside_what_is_stated_until_it_is_reset() {
    let folders = Folders::new();
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/demo-fleet");
    run(["fleet", "load", demo, "--data", folders.data()]).good();
    let show = || run(["fleet", "show", "12", "--data", folders.data()]).good();
    let stated = show();
    assert!(!stated.contains("learned"), "{stated}");
    folders.says(
        "tobin",
        "2027-01-23T18:00:00Z",
        "12 in service, waste empty\n",
    );
    folders.says("tobin", "2027-01-23T23:00:00Z", "12 waste 3/4\n");
    folders.says("tobin", "2027-01-23T23:10:00Z", "12 pumped 390 gal\n");
    let shown = show();
    let row = |key: &str| {
        let found = shown
            .lines()
            .find(|line| line.trim_start().starts_with(key));
        found.unwrap_or_else(|| panic!("no `{key}` in {shown}"))
    };
    let rate = row("use rate at sleigh-barn");
    assert!(
        rate.contains("1 times the guests' usual; learned "),
        "{rate}"
    );
    assert!(rate.ends_with("from 1 pump-out"), "{rate}");
    let gauge = row("waste_gauge.kind");
    assert!(
        gauge.contains("sight") && gauge.contains("; its log hints at ") && !gauge.contains("sure"),
        "{gauge}"
    );
    folders.says("nadia", "2027-01-23T23:20:00Z", "relearn 12\n");
    let reset = |text: String| {
        text.lines()
            .take_while(|line| !line.is_empty())
            .collect::<Vec<_>>()
            .join("\n")
    };
    assert_eq!(reset(show()), reset(stated));
}

#[test]
fn every_problem_is_said_and_nothing_is_half_loaded() {
    let folders = Folders::new();
    folders.load();
    folders.write(
        "fleet.toml",
        &FLEET.replace("500", "-5").replace("300", "-7"),
    );
    let ran = run(["fleet", "load", folders.fleet(), "--data", folders.data()]);
    assert_eq!(ran.out.lines().count(), 2, "{ran:?}");
    assert!(ran.bad().contains("2 problems"));
    let shown = run(["fleet", "show", "12", "--data", folders.data()]).good();
    assert!(shown.contains("500 gal"), "{shown}");
}

#[test]
fn a_running_bot_takes_a_fleet_over_its_socket() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let _bot = Bot::start(&api, folders.data.path());
    assert!(folders.load().starts_with("loaded into the running bot"));
    assert!(folders.load().contains("nothing to do"));
    api.says(77, "12 pressure 95");
    assert!(api.replies(77, 1)[0].contains("95 psi"));
    // the journal is read beside it
    let shown = run(["fleet", "show", "12", "--data", folders.data()]).good();
    assert!(shown.contains("95 psi"), "{shown}");
}

#[test]
fn a_trailer_that_is_none_is_answered_with_the_nearest() {
    let folders = Folders::new();
    let said = run(["fleet", "show", "41", "--fleet", folders.fleet()]).bad();
    assert!(
        said.contains("`41` is no trailer") && said.contains("`14`"),
        "{said}"
    );
}

#[test]
fn files_that_differ_from_the_last_load_are_said() {
    let folders = Folders::new();
    let both = [
        "fleet",
        "show",
        "--fleet",
        folders.fleet(),
        "--data",
        folders.data(),
    ];
    folders.load();
    assert!(!run(both).good().contains("differ"));
    folders.write("jobs.toml", "# changed\n");
    assert!(run(both).good().contains("differ from the last load"));
}

#[test]
fn where_no_fleet_was_loaded_the_command_that_loads_one_is_named() {
    let folders = Folders::new();
    std::fs::write(folders.data.path().join("format"), "hosebib data 1\n").unwrap();
    let said = run(["fleet", "show", "--data", folders.data()]).bad();
    assert!(
        said.contains("no fleet was ever loaded") && said.contains("fleet load DIR"),
        "{said}"
    );
}

#[test]
fn the_demo_fleet_is_shown_from_the_binary() {
    let table = run(["fleet", "show", "--demo"]).good();
    let first: Vec<&str> = table
        .lines()
        .skip(3)
        .filter_map(|line| line.split(' ').next())
        .collect();
    assert_eq!(first, ["4", "6", "8", "10", "12", "16", "23", "31", "B3"]);
}
