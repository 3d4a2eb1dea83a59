//! Copying a data directory beside a bot that may be writing it, for backups and for bringing one back.
//!
//! A copy is a data directory itself: the journal up to its last whole line and whatever else is kept beside it. The
//! lookup index is left out, since it is made again from the journal. The mark that makes a folder a data directory is
//! written last, so that a copy that broke off is not taken for one.

use std::fs::{self, File};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use super::directory;
use super::error::StoreError;
use super::segment;

/// Copies a data directory into a folder that is empty or not there yet; returns how many bytes were written.
///
/// The journal is read without a lock. Every file and folder is brought to the disk before this returns.
///
/// # Errors
///
/// Why the directory cannot be read; [`StoreError::NotEmpty`]; [`StoreError::Within`]; those of writing, after which what
/// was copied is taken away again.
pub fn duplicate(from: &Path, to: &Path) -> Result<u64, StoreError> {
    directory::look(from)?;
    if lies_in(to, from) {
        return Err(StoreError::Within {
            dir: to.to_owned(),
            of: from.to_owned(),
        });
    }
    let made = !to.exists();
    fs::create_dir_all(to).map_err(StoreError::io("make", to))?;
    if let Some(found) = entries(to)?.into_iter().find(|name| name != "lost+found") {
        return Err(StoreError::NotEmpty {
            dir: to.to_owned(),
            found,
        });
    }
    copy_all(from, to).inspect_err(|_| take_away(to, made))
}

/// Tells whether a path, which need not be there yet, lies in a folder or is that folder.
fn lies_in(path: &Path, folder: &Path) -> bool {
    let Ok(folder) = folder.canonicalize() else {
        return false;
    };
    let there = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let real = there.ancestors().find_map(|part| part.canonicalize().ok());
    real.is_some_and(|real| real.starts_with(folder))
}

fn copy_all(from: &Path, to: &Path) -> Result<u64, StoreError> {
    let mut written = 0;
    let (source, target) = (segment::folder(from), segment::folder(to));
    fs::create_dir(&target).map_err(StoreError::io("make", &target))?;
    // listed once: what is begun after this is left to the next backup
    for first in segment::list(&source)? {
        let path = segment::path(&source, first);
        let mut bytes = fs::read(&path).map_err(StoreError::io("read", &path))?;
        let whole = bytes.iter().rposition(|&byte| byte == b'\n');
        bytes.truncate(whole.map_or(0, |at| at + 1));
        written += write(&segment::path(&target, first), &bytes)?;
    }
    sync(&target)?;
    for name in entries(from)? {
        if !belongs_to_the_running_bot(&name) && name != directory::MARK && name != "journal" {
            written += copy_beside(&from.join(&name), &to.join(&name))?;
        }
    }
    let mark = from.join(directory::MARK);
    let bytes = fs::read(&mark).map_err(StoreError::io("read", &mark))?;
    written += write(&to.join(directory::MARK), &bytes)?;
    sync(to)?;
    Ok(written)
}

/// Tells what has no place in a copy: the lock, the socket, the index and what was set aside of it, the console's history.
fn belongs_to_the_running_bot(name: &str) -> bool {
    name.starts_with("index")
        || name.ends_with(".new")
        || matches!(name, "lock" | "control.sock" | "history.txt" | "lost+found")
}

/// Copies a file, or a folder with all that is in it; anything else is left out.
fn copy_beside(from: &Path, to: &Path) -> Result<u64, StoreError> {
    let kind = fs::symlink_metadata(from)
        .map_err(StoreError::io("read", from))?
        .file_type();
    if kind.is_file() {
        let bytes = fs::read(from).map_err(StoreError::io("read", from))?;
        return write(to, &bytes);
    }
    if !kind.is_dir() {
        return Ok(0);
    }
    fs::create_dir(to).map_err(StoreError::io("make", to))?;
    let mut written = 0;
    for name in entries(from)? {
        match copy_beside(&from.join(&name), &to.join(&name)) {
            // it was there a moment ago: retention has just deleted it
            Err(StoreError::Io { source, .. }) if source.kind() == ErrorKind::NotFound => {}
            outcome => written += outcome?,
        }
    }
    sync(to)?;
    Ok(written)
}

fn write(path: &Path, bytes: &[u8]) -> Result<u64, StoreError> {
    let write = || {
        let mut file = File::create_new(path)?;
        file.write_all(bytes)?;
        file.sync_all()
    };
    write().map_err(StoreError::io("write", path))?;
    Ok(bytes.len() as u64)
}

fn sync(folder: &Path) -> Result<(), StoreError> {
    File::open(folder)
        .and_then(|folder| folder.sync_all())
        .map_err(StoreError::io("sync", folder))
}

fn entries(folder: &Path) -> Result<Vec<String>, StoreError> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder).map_err(StoreError::io("list", folder))? {
        let entry = entry.map_err(StoreError::io("list", folder))?;
        names.push(entry.file_name().to_string_lossy().into_owned());
    }
    names.sort_unstable();
    Ok(names)
}

/// Takes away a copy that broke off; the folder held nothing before. What cannot be taken away is no data directory, since
/// its mark is missing.
fn take_away(to: &Path, made: bool) {
    if made {
        let _ = fs::remove_dir_all(to);
        return;
    }
    for name in entries(to).unwrap_or_default() {
        let path: PathBuf = to.join(&name);
        if name != "lost+found" {
            let _ = fs::remove_dir_all(&path).or_else(|_| fs::remove_file(&path));
        }
    }
}
