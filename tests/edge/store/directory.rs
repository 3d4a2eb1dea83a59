//! Data directories that cannot be used, in one sentence each.

use std::fs;
use std::path::{Path, PathBuf};

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

#[test]
fn a_read_only_directory_is_refused_in_one_sentence_but_can_be_verified() {
    let dir = filled(12);
    let Some(_mounted) = mounted_read_only(dir.path()) else {
        eprintln!("not checked: this user can neither be denied writing nor mount read-only");
        return;
    };
    let said = error_of(dir.path()).to_string();
    assert!(
        said.contains("is read-only: give this user the right"),
        "{said}"
    );
    assert_eq!(verify(dir.path()).unwrap().turns, 12);
}

/// Takes the right to write away, where this user can be denied it.
fn mounted_read_only(dir: &Path) -> Option<ReadOnly> {
    use std::os::unix::fs::PermissionsExt;
    let set = |mode: u32, file_mode: u32| {
        fs::set_permissions(dir, fs::Permissions::from_mode(mode)).unwrap();
        for name in ["lock", "format"] {
            fs::set_permissions(dir.join(name), fs::Permissions::from_mode(file_mode)).unwrap();
        }
    };
    set(0o555, 0o444);
    let guard = ReadOnly(dir.to_owned());
    fs::OpenOptions::new()
        .write(true)
        .open(dir.join("lock"))
        .is_err()
        .then_some(guard)
}

struct ReadOnly(PathBuf);

impl Drop for ReadOnly {
    fn drop(&mut self) {
        use std::os::unix::fs::PermissionsExt;
        // so that the temporary directory can be deleted
        let _ = fs::set_permissions(&self.0, fs::Permissions::from_mode(0o755));
    }
}
