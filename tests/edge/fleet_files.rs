//! `hosebib fleet check` on folders of every kind.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use tempfile::TempDir;

fn check(dir: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_hosebib"))
        .args(["fleet", "check"])
        .arg(dir)
        .output()
        .expect("the program starts")
}

fn out(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn err(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn folder(fleet: &[u8], jobs: &[u8], crew: &[u8]) -> TempDir {
    let dir = TempDir::new().expect("a folder");
    for (name, text) in [
        ("fleet.toml", fleet),
        ("jobs.toml", jobs),
        ("crew.toml", crew),
    ] {
        fs::write(dir.path().join(name), text).expect("a file");
    }
    dir
}

#[test]
fn a_good_fleet_is_summed_up_in_one_line() {
    for (dir, holds) in [
        (
            "demo-fleet",
            "9 trailers, 11 sites, 12 jobs, 6 crew members, 5 words of its own",
        ),
        (
            "tests/data/fleets/sample",
            "8 trailers, 19 sites, 20 jobs, 6 crew members",
        ),
        (
            "tests/data/fleets/every-key",
            "2 trailers, 2 sites, 2 jobs, 2 crew members",
        ),
    ] {
        let output = check(&Path::new(env!("CARGO_MANIFEST_DIR")).join(dir));
        assert_eq!(output.status.code(), Some(0), "{}", err(&output));
        let text = out(&output);
        assert!(text.lines().count() == 1 && text.contains(holds), "{text}");
        assert_eq!(err(&output), "");
    }
}

#[test]
fn every_problem_of_every_file_is_a_line_and_the_exit_code_is_1() {
    let dir = folder(
        b"unit = \"us\"\n[[trailer]]\nid = \"1\"\nwaste_gal = -5\n",
        b"[[job]]\nsite = \"x\"\ntrailers = [\"2\"]\nfrom = 2027-06-05T12:00:00\nto = 2027-06-05T20:00:00\n",
        b"[[crew]\n",
    );
    let output = check(dir.path());
    assert_eq!(output.status.code(), Some(1));
    let text = out(&output);
    let places: Vec<&str> = text
        .lines()
        .filter_map(|line| line.split(": ").next())
        .collect();
    assert_eq!(
        places,
        [
            "fleet.toml:1",
            "fleet.toml:4",
            "jobs.toml:2",
            "jobs.toml:3",
            "crew.toml:1"
        ]
    );
    assert!(err(&output).contains("has 5 problems"), "{}", err(&output));
}

#[test]
fn missing_files_are_named_each() {
    let dir = folder(b"", b"", b"");
    fs::remove_file(dir.path().join("jobs.toml")).expect("it was there");
    let output = check(dir.path());
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(1), ""));
    let text = err(&output);
    assert!(
        text.contains("jobs.toml` is missing") && !text.contains("crew.toml` is missing"),
        "{text}"
    );

    let empty = TempDir::new().expect("a folder");
    assert_eq!(err(&check(empty.path())).matches("is missing").count(), 3);
}

#[test]
fn a_folder_that_is_none_is_said() {
    let dir = folder(b"", b"", b"");
    let absent = check(&dir.path().join("nowhere"));
    assert_eq!(absent.status.code(), Some(1));
    assert!(
        err(&absent).contains("is not there: name the folder"),
        "{}",
        err(&absent)
    );
    let file = check(&dir.path().join("crew.toml"));
    assert!(
        err(&file).contains("is no folder: name the folder"),
        "{}",
        err(&file)
    );
}

#[test]
fn bytes_that_are_not_utf8_are_named_with_their_line() {
    let dir = folder(b"", b"# first\n# caf\xe9\n", b"");
    let output = check(dir.path());
    assert_eq!(output.status.code(), Some(1));
    assert!(
        err(&output).contains("jobs.toml` is not UTF-8 from line 2 on"),
        "{}",
        err(&output)
    );
}

#[test]
fn a_folder_in_the_place_of_a_file_is_said() {
    let dir = folder(b"", b"", b"");
    fs::remove_file(dir.path().join("crew.toml")).expect("it was there");
    fs::create_dir(dir.path().join("crew.toml")).expect("a folder");
    let output = check(dir.path());
    assert!(
        err(&output).contains("crew.toml` is a folder"),
        "{}",
        err(&output)
    );
}

#[test]
fn no_folder_named_is_wrong_usage() {
    let output = Command::new(env!("CARGO_BIN_EXE_hosebib"))
        .args(["fleet", "check"])
        .output()
        .expect("the program starts");
    assert_eq!(output.status.code(), Some(2));
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let mut lines = String::new();
    for _ in 0..20_000 {
        lines.push_str("[[trailer]]\nwaste_gal = -1\n");
    }
    let dir = folder(lines.as_bytes(), b"", b"");
    let shell = format!(
        "'{}' fleet check '{}' | head -n 1",
        env!("CARGO_BIN_EXE_hosebib"),
        dir.path().display()
    );
    let output = Command::new("sh")
        .args(["-c", &shell])
        .output()
        .expect("a shell");
    assert!(
        out(&output).starts_with("fleet.toml:1: "),
        "{}",
        out(&output)
    );
    assert_eq!(err(&output), "");
}
