//! The mark that a store leaves when it is closed in good order: how far its index reached and how long its file was.
//!
//! A data file of sled that was cut short opens with older contents and no error. After a kill that is just what a lagging
//! index looks like, and the journal fills it up; after an orderly close it is damage, and this mark tells the two apart.

use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::error::StoreError;
use super::recover::index_path;

/// How an index was left.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Closed {
    /// The last turn it held.
    last: u64,
    /// The length of its data file in bytes.
    length: u64,
    /// The length it had when the mark was read.
    #[serde(skip)]
    found: u64,
}

impl Closed {
    /// Says how an index that now reaches to `last` differs from the one that was left.
    pub(super) fn misfit(&self, last: u64) -> Option<String> {
        if self.found < self.length {
            Some(format!(
                "was short ({} bytes of {})",
                self.found, self.length
            ))
        } else if last < self.last {
            Some(format!(
                "was short (it stood at turn {last}, having been closed at turn {})",
                self.last
            ))
        } else {
            None
        }
    }
}

/// Leaves the mark, once the index is closed. Without one nothing is lost but the warning.
pub(super) fn leave(dir: &Path, last: u64) {
    let mark = Closed {
        last,
        length: data_length(dir),
        found: 0,
    };
    if let Ok(text) = serde_json::to_vec(&mark) {
        let _ = fs::write(path(dir), text);
    }
}

/// Takes the mark away and returns it; call it before the index is opened.
pub(super) fn take(dir: &Path) -> Result<Option<Closed>, StoreError> {
    let path = path(dir);
    let text = match fs::read(&path) {
        Ok(text) => text,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(StoreError::io("read", &path)(error)),
    };
    fs::remove_file(&path).map_err(StoreError::io("delete", &path))?;
    let mark: Option<Closed> = serde_json::from_slice(&text).ok();
    Ok(mark.map(|mark| Closed {
        found: data_length(dir),
        ..mark
    }))
}

fn path(dir: &Path) -> PathBuf {
    dir.join("index.closed")
}

fn data_length(dir: &Path) -> u64 {
    fs::metadata(index_path(dir).join("db")).map_or(0, |data| data.len())
}
