//! Incidents on disk: what they hold beats retention and `forget`, and can be exported whole.

use hosebib::store::verify;
use serde_json::{Value, json};

use super::{Folders, run};

/// Everything the journal's files hold.
fn bytes(folders: &Folders) -> String {
    let journal = folders.data.path().join("journal");
    std::fs::read_dir(journal)
        .unwrap()
        .map(|entry| std::fs::read_to_string(entry.unwrap().path()).unwrap())
        .collect()
}

fn exported(folders: &Folders) -> Vec<Value> {
    let out = run([
        "export",
        "incident",
        "1",
        "--jsonl",
        "--data",
        folders.data(),
    ])
    .good();
    out.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

/// A data directory in which something happened at trailer 14 on the 16th at noon, and is told half.
fn filled() -> Folders {
    let folders = Folders::new();
    folders.load();
    folders.says(
        "dana",
        "2020-01-02T12:00:00Z",
        "14 waste 1/4 by the poplar\n",
    );
    folders.says(
        "dana",
        "2020-01-15T12:00:00Z",
        "14 waste 1/2 by the willow\n",
    );
    folders.says(
        "dana",
        "2020-01-15T12:10:00Z",
        "12 waste 1/2 by the brook\n",
    );
    folders.says(
        "mo",
        "2020-01-16T16:00:00Z",
        "incident 14 a guest slipped on the alder step at 12:00\nleft of the door\nskip\nstop\n",
    );
    folders
}

#[test]
fn what_an_incident_holds_beats_forget_and_retention_until_it_is_released() {
    let folders = filled();
    let said = run(["forget", "dana", "--data", folders.data()]).good();
    assert!(said.contains("1 turn kept, held by an incident"), "{said}");
    let left = bytes(&folders);
    assert!(left.contains("willow"), "the trailer, within its time");
    assert!(!left.contains("brook"), "another trailer");
    assert!(!left.contains("poplar"), "long before");

    let old = ["forget", "--older-than", "1", "--data", folders.data()];
    run(old).good();
    let left = bytes(&folders);
    assert!(
        left.contains("willow") && left.contains("alder step") && left.contains("left of the door")
    );
    assert_eq!(verify(folders.data.path()).unwrap().damage, []);

    folders.says(
        "mo",
        "2020-01-20T12:00:00Z",
        "release incident 1 settled under the linden\n",
    );
    let said = run(old).good();
    assert!(!said.contains("held"), "{said}");
    let left = bytes(&folders);
    for gone in ["willow", "alder", "left of the door", "linden"] {
        assert!(!left.contains(gone), "{gone}");
    }
    assert_eq!(verify(folders.data.path()).unwrap().damage, []);
}

#[test]
fn an_incident_is_exported_with_what_was_never_recorded() {
    let folders = filled();
    run(["forget", "dana", "--data", folders.data()]).good();
    let rows = exported(&folders);
    let of = |kind: &'static str| rows.iter().filter(move |row| row["kind"] == kind);
    let check_ins: Vec<&Value> = of("check-in").collect();
    assert_eq!(check_ins.len(), 1, "{rows:#?}");
    let row = check_ins[0];
    assert_eq!(row["who"], "dana");
    assert_eq!(row["what"], json!(["waste_pct 50"]));
    assert_eq!(row["text"], "14 waste 1/2 by the willow");
    let written = row["written"].as_str().unwrap();
    assert!(written.starts_with("2020-01-15T08:00"), "{written}");
    assert!(row["received"].is_string(), "{row}");
    // what she was told then, though nobody knows that she read it
    let told = of("told").find(|row| row["who"] == "dana").unwrap();
    assert!(
        told["text"].as_str().unwrap().contains("Logged for 14"),
        "{told}"
    );
    assert!(of("told").any(|row| row["who"] == "mo"), "{rows:#?}");
    let facts: Vec<(&str, &str)> = of("fact")
        .map(|row| {
            (
                row["what"][0].as_str().unwrap(),
                row["stands"].as_str().unwrap(),
            )
        })
        .collect();
    assert_eq!(
        facts,
        [
            ("what", "told"),
            ("when", "told"),
            ("where", "told"),
            ("who", "asked, not known"),
            ("injured", "never recorded"),
            ("told", "never recorded"),
            ("witnesses", "never recorded"),
            ("photos", "never recorded"),
        ]
    );
    let never: Vec<&Value> = of("reading").map(|row| &row["what"][0]).collect();
    assert!(never.contains(&&json!("pressure_psi")) && !never.contains(&&json!("waste_pct")));
    // nothing of another trailer
    assert!(
        !rows.iter().any(|row| row.to_string().contains("brook")),
        "{rows:#?}"
    );
}

#[test]
fn an_incident_that_is_none_is_said() {
    let folders = Folders::new();
    folders.load();
    let args = |rest: &[&str]| {
        let mut args = vec!["export"];
        args.extend(rest);
        args.extend(["--csv", "--data", folders.data()]);
        run(args)
    };
    let said = args(&["incident", "7"]).bad();
    assert!(
        said.contains("there is no incident 7") && said.contains("\"incidents\""),
        "{said}"
    );
    assert_eq!(args(&["incident"]).code, Some(2));
    assert_eq!(args(&["tasks", "7"]).code, Some(2));
}
