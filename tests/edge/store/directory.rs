//! Data directories that cannot be used, in one sentence each.

use std::fs;
use std::path::PathBuf;

use hosebib::store::*;

use super::*;

#[test]
fn a_directory_that_cannot_be_used_is_refused_in_one_sentence() {
    let dir = filled(3);
    let (_store, _) = open(dir.path());
    let said = error_of(dir.path()).to_string();
    let process = std::process::id();
    assert!(
        said.ends_with(&format!(
            "is in use by another hosebib (process {process}): stop that one first"
        )),
        "{said}"
    );

    let missing = dir.path().join("nowhere");
    let said = error_of(&missing).to_string();
    assert!(
        said.contains("nowhere` does not exist: check the path"),
        "{said}"
    );

    let file = dir.path().join("format");
    assert!(error_of(&file).to_string().contains("is not a directory"));

    let foreign = tempfile::tempdir().unwrap();
    fs::write(foreign.path().join("letter.txt"), "dear all").unwrap();
    let said = error_of(foreign.path()).to_string();
    assert!(
        said.contains("is not a hosebib data directory (it holds `letter.txt`)"),
        "{said}"
    );
    assert_eq!(fs::read_dir(foreign.path()).unwrap().count(), 1);

    let newer = filled(1);
    fs::write(newer.path().join("format"), "hosebib data 7\n").unwrap();
    let said = error_of(newer.path()).to_string();
    assert!(
        said.contains("was written by a newer hosebib (version 7, this one knows 1)"),
        "{said}"
    );

    let empty = tempfile::tempdir().unwrap();
    assert!(matches!(read_only(empty.path()), Err(StoreError::Empty(_))));
}

#[test]
fn a_line_of_a_newer_release_is_refused_and_left_alone() {
    let dir = filled(3);
    let path = segments(dir.path()).pop().unwrap();
    let mut text = fs::read_to_string(&path).unwrap();
    text.push_str("{\"seq\":4,\"version\":2,\"shape\":\"unheard of\"}\n");
    fs::write(&path, &text).unwrap();
    let error = error_of(dir.path());
    assert!(
        matches!(error, StoreError::Newer { found: 2, .. }),
        "{error}"
    );
    assert!(matches!(verify(dir.path()), Err(StoreError::Newer { .. })));
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
}

/// Names a data directory on a read-only disk to a child process.
const READ_ONLY: &str = "HOSEBIB_TEST_READ_ONLY";

#[test]
fn a_read_only_directory_is_refused_in_one_sentence_but_can_be_verified() {
    let dir = filled(12);
    // a mount of its own, in a namespace of its own, is read-only for the superuser too
    let mount = "mount --bind \"$1\" \"$1\" 2>/dev/null && mount -o remount,bind,ro \"$1\" 2>/dev/null || exit 77; shift; exec \"$@\"";
    let outcome = std::process::Command::new("unshare")
        .args(["--map-root-user", "--mount", "sh", "-c", mount, "sh"])
        .arg(dir.path())
        .arg(std::env::current_exe().unwrap())
        .args([
            "--exact",
            "store::directory::the_child_meets_a_read_only_disk",
        ])
        .env(READ_ONLY, dir.path())
        .output();
    match outcome {
        Ok(output) if output.status.success() => {}
        Ok(output) if output.status.code() == Some(101) => {
            panic!("{}", String::from_utf8_lossy(&output.stdout));
        }
        _ => eprintln!("not checked: this system lets nobody mount a directory read-only"),
    }
}

#[test]
fn the_child_meets_a_read_only_disk() {
    let Some(dir) = std::env::var_os(READ_ONLY).map(PathBuf::from) else {
        return; // only ever run by the test above
    };
    let said = error_of(&dir).to_string();
    assert!(
        said.contains("is read-only: give this user the right to write there"),
        "{said}"
    );
    assert_eq!(verify(&dir).unwrap().turns, 12);
    assert_eq!(read_only(&dir).unwrap().map(Result::unwrap).count(), 12);
}
