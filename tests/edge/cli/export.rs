//! `hosebib export`.

use serde_json::{Value, json};

use super::{Folders, run};

const JOBS: &str = r#"
[[site]]
id = "heron-mere"
name = "Heron Mere boathouse"
emergency_address = "1 Mere Road"

[[job]]
site = "heron-mere"
trailers = ["12"]
from = 2027-01-16T12:00:00
to = 2027-01-16T23:30:00
"#;

fn filled() -> Folders {
    let folders = Folders::new();
    folders.write("jobs.toml", JOBS);
    folders.load();
    folders.says(
        "dana",
        "2027-01-16T17:00:00Z",
        "12 waste 3/4, 5 below outside\n",
    );
    folders.says("dana", "2027-01-16T18:00:00Z", "12 pumped\n");
    folders.says("dana", "2027-01-16T18:20:00Z", "12 hauled 320 gal\n");
    folders.says("dana", "2027-01-17T18:20:00Z", "14 waste 1/2\nundo\n");
    folders
}

fn rows(folders: &Folders, args: &[&str]) -> Vec<Value> {
    let mut all = vec!["export"];
    all.extend(args);
    all.extend(["--jsonl", "--data", folders.data()]);
    let out = run(all).good();
    out.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

#[test]
fn check_ins_carry_times_places_readings_and_words() {
    let folders = filled();
    let rows = rows(&folders, &["check-ins"]);
    assert_eq!(rows.len(), 4, "{rows:#?}");
    let first = &rows[0];
    assert_eq!(first["at"], "2027-01-16T13:00:00-04:00");
    assert_eq!(first["unit"], "12");
    assert_eq!(first["site"], "Heron Mere boathouse");
    assert_eq!(first["waste_pct"], 75.0);
    assert_eq!(first["air_f"], -5.0);
    assert_eq!(first["text"], "12 waste 3/4, 5 below outside");
    assert_eq!(first["stands"], "stands");
    assert_eq!(rows[1]["events"], json!(["waste-pumped"]));
    assert_eq!(rows[3]["stands"], "taken back");
}

#[test]
fn pump_outs_have_their_gallons_and_say_what_was_never_recorded() {
    let folders = filled();
    let rows = rows(&folders, &["pump-outs"]);
    assert_eq!(rows.len(), 1, "{rows:#?}");
    let row = &rows[0];
    assert_eq!(row["picked_up"], "2027-01-16T14:00:00-04:00");
    assert_eq!(
        (&row["gallons"], &row["gauge_before_pct"]),
        (&json!(320.0), &json!(75.0))
    );
    assert_eq!(row["street_address"], "1 Mere Road");
    assert_eq!(row["words"], json!(["12 pumped", "12 hauled 320 gal"]));
    assert_eq!(row["hauler"], Value::Null);
    assert!(
        row["never_recorded"]
            .as_array()
            .unwrap()
            .contains(&json!("hauler"))
    );

    let ran = run(["export", "pump-outs", "--csv", "--data", folders.data()]);
    let head = ran.out.lines().next().unwrap().to_owned();
    assert!(head.contains("ticket_no (never recorded)"), "{head}");
    assert!(ran.err.contains("hauler's ticket"), "{ran:?}");
}

#[test]
fn tasks_tell_who_did_what_when() {
    let folders = filled();
    let rows = rows(&folders, &["tasks"]);
    let pump_out = rows.iter().find(|row| row["kind"] == "pump-out").unwrap();
    assert_eq!(pump_out["unit"], "12");
    assert_eq!(pump_out["state"], "done");
    assert_eq!(pump_out["closed"], "2027-01-16T14:00:00-04:00");
}

#[test]
fn only_the_days_asked_for_are_printed() {
    let folders = filled();
    for (args, count) in [
        (vec!["check-ins", "--from", "2027-01-17"], 1),
        (vec!["check-ins", "--to", "2027-01-16"], 3),
        (vec!["check-ins", "--from", "2027-01-18"], 0),
        (
            vec![
                "check-ins",
                "--from",
                "2027-01-16T18:00:00Z",
                "--to",
                "2027-01-16T18:10:00Z",
            ],
            1,
        ),
        (vec!["pump-outs", "--from", "2027-01-17"], 0),
    ] {
        assert_eq!(rows(&folders, &args).len(), count, "{args:?}");
    }
    let wrong = [
        "export",
        "tasks",
        "--csv",
        "--from",
        "2027-01-17",
        "--to",
        "2027-01-16",
        "--data",
        folders.data(),
    ];
    assert_eq!(run(wrong).code, Some(2));
}

#[test]
fn a_cell_that_a_spreadsheet_would_run_is_made_harmless_and_numbers_are_not() {
    let folders = Folders::new();
    folders.load();
    folders.says(
        "dana",
        "2027-01-16T17:00:00Z",
        "=HYPERLINK(\"http://x\",\"y\") 12 waste 1/2\n12 temp -5 outside\n",
    );
    let out = run(["export", "check-ins", "--csv", "--data", folders.data()]).good();
    assert!(
        out.contains("\"'=HYPERLINK(\"\"http://x\"\",\"\"y\"\") 12 waste 1/2\""),
        "{out}"
    );
    assert!(out.contains(",-5,") && !out.contains(",'-5"), "{out}");
}

#[test]
fn nothing_of_a_progress_bar_reaches_a_pipe() {
    let folders = filled();
    let ran = run(["export", "check-ins", "--csv", "--data", folders.data()]);
    assert_eq!(ran.err, "4 rows\n");
}
