//! Data directories that a command cannot use: one sentence that says which and what to do.

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::path::Path;

use hosebib::store::Store;

use super::{Folders, Ran, program, ran, run};
use crate::store::setup;
use crate::telegram::botapi::TOKEN;

/// Every command on a data directory; those that change something come last.
fn commands<'a>(data: &'a str, folders: &'a Folders, new: &'a str) -> Vec<Vec<&'a str>> {
    vec![
        vec!["verify", "--data", data],
        vec!["review", "--data", data],
        vec!["export", "tasks", "--csv", "--data", data],
        vec!["backup", new, "--data", data],
        vec!["fleet", "show", "--data", data],
        vec!["fleet", "load", folders.fleet(), "--data", data],
        vec!["forget", "dana", "--data", data],
        vec!["serve", "--data", data],
        vec!["chat", "--as", "dana", "--data", data],
    ]
}

/// How many of [`commands`] only read.
const READ_ONLY: usize = 5;

fn run_it(args: &[&str]) -> Ran {
    let output = program()
        .args(args)
        .env("HOSEBIB_TOKEN", TOKEN)
        .output()
        .unwrap();
    ran(&output)
}

#[track_caller]
fn says(ran: Ran, args: &[&str], dir: &Path, remedy: &str) {
    let said = ran.bad();
    let dir = dir.to_str().unwrap();
    assert!(said.contains(dir), "{args:?} names no directory: {said}");
    assert!(said.contains(remedy), "{args:?}: {said}");
}

#[test]
fn a_directory_that_is_missing_foreign_or_newer() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    let new = place.path().join("new");
    let foreign = place.path().join("foreign");
    fs::create_dir(&foreign).unwrap();
    fs::write(foreign.join("letter.txt"), "dear all").unwrap();
    let newer = place.path().join("newer");
    fs::create_dir(&newer).unwrap();
    fs::write(newer.join("format"), "hosebib data 9\n").unwrap();
    let missing = place.path().join("missing");
    for (dir, remedy) in [
        (&missing, "check the path"),
        (&foreign, "name the right one"),
        (&newer, "install that release"),
    ] {
        for args in commands(dir.to_str().unwrap(), &folders, new.to_str().unwrap()) {
            if args[0] == "chat" && dir == &missing {
                continue; // makes it
            }
            says(run_it(&args), &args, dir, remedy);
        }
        assert!(!new.exists());
    }
    // a console chat makes its directory, and then has no fleet to chat about
    let args = ["chat", "--as", "dana", "--data", missing.to_str().unwrap()];
    assert!(run_it(&args).bad().contains("give `--fleet DIR` once"));
}

#[test]
fn a_file_in_its_place() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    let file = place.path().join("file");
    fs::write(&file, "").unwrap();
    for args in commands(file.to_str().unwrap(), &folders, "/nowhere/new") {
        says(run_it(&args), &args, &file, "ame ");
    }
}

#[test]
fn a_directory_held_by_another_process_can_be_read_and_not_changed() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    folders.load();
    let (_store, _) = Store::open(folders.data.path(), setup()).unwrap();
    let new = place.path().join("new");
    let remedy = format!(
        "in use by another hosebib (process {}): stop that one first",
        std::process::id()
    );
    for (n, args) in commands(folders.data(), &folders, new.to_str().unwrap())
        .iter()
        .enumerate()
    {
        let ran = run_it(args);
        if n < READ_ONLY {
            assert_eq!(ran.code, Some(0), "{args:?}: {ran:?}");
        } else {
            says(ran, args, folders.data.path(), &remedy);
        }
    }
}

#[test]
fn a_directory_that_cannot_be_written_or_read() {
    let folders = Folders::new();
    folders.load();
    let open =
        |mode| fs::set_permissions(folders.data.path(), fs::Permissions::from_mode(mode)).unwrap();
    // what the lock has said stays, so that only the rights are in the way
    let _ = fs::remove_file(folders.data.path().join("lock"));
    open(0o555);
    for args in [
        ["serve", "--data", folders.data()],
        ["doctor", "--data", folders.data()],
    ] {
        let Some(ran) = as_nobody(&args) else {
            return;
        };
        let said = format!("{}{}", ran.out, ran.err);
        assert_eq!(ran.code, Some(1), "{said}");
        assert!(
            said.contains("is read-only: give this user the right to write there"),
            "{said}"
        );
    }
    let reads = as_nobody(&["verify", "--data", folders.data()]).unwrap();
    assert_eq!(reads.code, Some(0), "{reads:?}");
    open(0o700);
    let ran = as_nobody(&["verify", "--data", folders.data()]).unwrap();
    says(
        ran,
        &["verify"],
        folders.data.path(),
        "give this user the right to read it",
    );
}

/// Runs as a user without rights of their own, from a place they may run it; none where that cannot be done here.
fn as_nobody(args: &[&str]) -> Option<Ran> {
    let mut command = program();
    command.args(args).env("HOSEBIB_TOKEN", TOKEN);
    // the superuser may write anywhere
    if fs::metadata("/proc/self")
        .ok()
        .map(|me| std::os::unix::fs::MetadataExt::uid(&me))
        == Some(0)
    {
        command.uid(65_534).gid(65_534);
    }
    match command.output() {
        Ok(output) => Some(ran(&output)),
        Err(error) => {
            eprintln!("not tried: the program cannot be run by another user here: {error}");
            None
        }
    }
}

#[test]
fn an_empty_directory_holds_nothing_to_read() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    let dir = place.path();
    for args in &commands(dir.to_str().unwrap(), &folders, "/nowhere/new")[..READ_ONLY] {
        says(run(args), args, dir, "name the right one");
    }
}
