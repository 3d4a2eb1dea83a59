//! The data directory: that it is one, that this release can read it, and that one process holds it.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::error::StoreError;

/// The layout that this release writes, and the newest that it reads.
const FORMAT: u64 = 1;

/// The file that marks a data directory and says its layout.
pub(super) const MARK: &str = "format";

/// How the mark begins.
const TITLE: &str = "hosebib data ";

/// The file whose lock means that the directory is held.
const LOCK: &str = "lock";

/// A data directory that this process holds until it is dropped.
#[derive(Debug)]
pub(super) struct Held {
    path: PathBuf,
    _lock: File,
}

impl Held {
    /// Takes hold of a data directory; an empty directory becomes one.
    pub(super) fn take(path: &Path) -> Result<Self, StoreError> {
        let fresh = match look(path) {
            Ok(()) => false,
            Err(StoreError::Empty(_)) => true,
            Err(error) => return Err(error),
        };
        let lock = lock(path)?;
        if fresh {
            mark(path)?;
        }
        Ok(Held {
            path: path.to_owned(),
            _lock: lock,
        })
    }

    /// Returns the directory.
    pub(super) fn path(&self) -> &Path {
        &self.path
    }
}

/// Checks, without a lock, that a path is a data directory that this release can read.
pub(super) fn look(path: &Path) -> Result<(), StoreError> {
    match fs::metadata(path) {
        Err(error) if error.kind() == ErrorKind::NotFound => {
            return Err(StoreError::Missing(path.to_owned()));
        }
        Err(error) => return Err(StoreError::io("open", path)(error)),
        Ok(found) if !found.is_dir() => return Err(StoreError::NotADirectory(path.to_owned())),
        Ok(_) => {}
    }
    let mark = path.join(MARK);
    let text = match fs::read_to_string(&mark) {
        Ok(text) => text,
        Err(error) if error.kind() == ErrorKind::NotFound => return Err(unmarked(path)?),
        Err(error) => return Err(StoreError::io("read", &mark)(error)),
    };
    let format: Option<u64> = text
        .strip_prefix(TITLE)
        .and_then(|rest| rest.trim_end().parse().ok());
    match format {
        Some(format) if format <= FORMAT => Ok(()),
        Some(found) => Err(StoreError::Newer {
            place: path.to_owned(),
            found,
            known: FORMAT,
        }),
        None => Err(StoreError::Foreign {
            dir: path.to_owned(),
            found: MARK.into(),
        }),
    }
}

/// Says what a directory without a mark is: empty, one of ours that was not finished, or somebody else's.
fn unmarked(path: &Path) -> Result<StoreError, StoreError> {
    let ours = |name: &str| name == LOCK || name == "lost+found" || name.starts_with(MARK);
    for entry in fs::read_dir(path).map_err(StoreError::io("list", path))? {
        let entry = entry.map_err(StoreError::io("list", path))?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if !ours(&name) {
            return Ok(StoreError::Foreign {
                dir: path.to_owned(),
                found: name,
            });
        }
    }
    Ok(StoreError::Empty(path.to_owned()))
}

fn lock(dir: &Path) -> Result<File, StoreError> {
    let path = dir.join(LOCK);
    let opened = OpenOptions::new()
        .read(true)
        .write(true)
        .create(true)
        .truncate(false)
        .open(&path);
    let mut file = opened.map_err(|error| unwritable(dir, &path, error))?;
    match lock_patiently(&file) {
        Ok(()) => {}
        Err(TryLockError::WouldBlock) => {
            let mut number = String::new();
            // the number is a courtesy; without it the sentence still holds
            let _ = file.read_to_string(&mut number);
            let by = match number.trim().parse::<u32>() {
                Ok(number) => format!(" (process {number})"),
                Err(_) => String::new(),
            };
            return Err(StoreError::Held {
                dir: dir.to_owned(),
                by,
            });
        }
        Err(TryLockError::Error(error)) => return Err(StoreError::io("lock", &path)(error)),
    }
    // A full disk must not keep the bot from starting over a courtesy.
    let _ = file
        .set_len(0)
        .and_then(|()| writeln!(file, "{}", std::process::id()));
    Ok(file)
}

/// Takes the lock, waiting a moment for whoever is just letting go of it: a process that ends, or a child that has not come
/// far enough to close what its parent had open.
fn lock_patiently(file: &File) -> Result<(), TryLockError> {
    for _ in 0..10 {
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => std::thread::sleep(Duration::from_millis(20)),
            outcome => return outcome,
        }
    }
    file.try_lock()
}

/// Marks an empty directory as ours, whole or not at all.
fn mark(dir: &Path) -> Result<(), StoreError> {
    let path = dir.join(MARK);
    let making = dir.join("format.new");
    let write = || {
        let mut file = File::create(&making)?;
        writeln!(file, "{TITLE}{FORMAT}")?;
        file.sync_all()?;
        fs::rename(&making, &path)?;
        File::open(dir)?.sync_all()
    };
    write().map_err(|error| unwritable(dir, &path, error))
}

fn unwritable(dir: &Path, path: &Path, error: std::io::Error) -> StoreError {
    match error.kind() {
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            StoreError::ReadOnly(dir.to_owned())
        }
        _ => StoreError::io("write", path)(error),
    }
}
