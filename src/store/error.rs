//! What can go wrong between the bot and its disk: one sentence each, with the place and what to do.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use thiserror::Error;

/// Where a journal is damaged, and how.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Damage {
    /// The segment's file.
    pub file: PathBuf,
    /// The line in it, counted from 1; `None` when the file as a whole is meant.
    pub line: Option<u64>,
    /// What is wrong there.
    pub what: String,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}`", self.file.display())?;
        if let Some(line) = self.line {
            write!(f, " line {line}")?;
        }
        write!(f, ": {}", self.what)
    }
}

/// A failure of the store.
#[derive(Debug, Error)]
pub enum StoreError {
    /// The data directory is not there.
    #[error(
        "data directory `{0}` does not exist: check the path and that its disk is mounted, or make it with `mkdir -m 700`"
    )]
    Missing(PathBuf),
    /// The path names something that is not a directory.
    #[error("`{0}` is not a directory: name the data directory")]
    NotADirectory(PathBuf),
    /// The directory holds something else.
    #[error(
        "`{dir}` is not a hosebib data directory (it holds `{found}`): name the right one, or an empty directory to start a new one"
    )]
    Foreign {
        /// The directory.
        dir: PathBuf,
        /// One of the files in it.
        found: String,
    },
    /// Nothing was ever written there, and the caller only reads.
    #[error("`{0}` is empty, not a hosebib data directory: name the right one")]
    Empty(PathBuf),
    /// Something stands where a copy is to go.
    #[error("`{dir}` is not empty (it holds `{found}`): name a new or an empty folder")]
    NotEmpty {
        /// The directory.
        dir: PathBuf,
        /// One of the files in it.
        found: String,
    },
    /// A copy was to go into what it is a copy of.
    #[error("`{dir}` lies in the data directory `{of}`: name a folder outside it")]
    Within {
        /// Where the copy was to go.
        dir: PathBuf,
        /// The data directory.
        of: PathBuf,
    },
    /// A newer release wrote it.
    #[error(
        "`{place}` was written by a newer hosebib (version {found}, this one knows {known}): install that release"
    )]
    Newer {
        /// The file or directory.
        place: PathBuf,
        /// The version found.
        found: u64,
        /// The newest version that this release reads.
        known: u64,
    },
    /// Another process holds the directory.
    #[error("data directory `{dir}` is in use by another hosebib{by}: stop that one first")]
    Held {
        /// The directory.
        dir: PathBuf,
        /// ` (process 123)`, or nothing where it is not known.
        by: String,
    },
    /// The directory cannot be written.
    #[error(
        "data directory `{0}` is read-only: give this user the right to write there, or mount its disk for writing"
    )]
    ReadOnly(PathBuf),
    /// Something in the directory cannot be read.
    #[error("`{0}` may not be read: give this user the right to read it")]
    Forbidden(PathBuf),
    /// The journal is damaged.
    #[error(
        "the journal is damaged, {0}: restore it from a backup (`hosebib verify` lists every damaged place)"
    )]
    Damaged(Damage),
    /// A write failed; nothing of it counts.
    #[error(
        "cannot write to the journal, so nothing was logged: {source}: free or repair the disk that holds `{file}`, then try again"
    )]
    Write {
        /// The segment.
        file: PathBuf,
        /// The system's reason.
        source: io::Error,
    },
    /// A sync failed; nothing of it counts, and turns written without a sync of their own may be gone with it.
    #[error(
        "cannot bring the journal to the disk, so nothing was logged: {source}: check the disk that holds `{file}`, then try again"
    )]
    Sync {
        /// The segment.
        file: PathBuf,
        /// The system's reason.
        source: io::Error,
    },
    /// Lines were prepared for another place in the journal.
    #[error("lines prepared to follow turn {after} cannot follow turn {head}: prepare them again")]
    Stale {
        /// The turn they were prepared to follow.
        after: u64,
        /// The journal's last turn.
        head: u64,
    },
    /// A message was to be recorded a second time.
    #[error("message `{0}` is recorded already: it is not recorded twice")]
    KeyTwice(String),
    /// A record cannot be written as a line that would read back the same.
    #[error("a record cannot be written: {0}")]
    Unwritable(String),
    /// The lookup index failed in a way that a rebuild did not mend.
    #[error(
        "the lookup index beside the journal failed: {0}: free or repair its disk; it is rebuilt from the journal at the next start"
    )]
    Index(String),
    /// A change of personal texts was asked for that changes something else.
    #[error("only personal texts of closed segments can be emptied: {0}")]
    Redaction(String),
    /// Any other failure of the file system.
    #[error("cannot {doing} `{path}`: {source}")]
    Io {
        /// What was being done: "read", "list".
        doing: &'static str,
        /// To what.
        path: PathBuf,
        /// The system's reason.
        source: io::Error,
    },
}

impl StoreError {
    /// Makes a damage report of a place and what is wrong there.
    pub(super) fn damaged(file: &Path, line: Option<u64>, what: impl Into<String>) -> Self {
        StoreError::Damaged(Damage {
            file: file.to_owned(),
            line,
            what: what.into(),
        })
    }

    /// Wraps a file-system failure.
    pub(super) fn io<'a>(
        doing: &'static str,
        path: &'a Path,
    ) -> impl FnOnce(io::Error) -> Self + 'a {
        move |source| match (doing, source.kind()) {
            ("open" | "read" | "list", io::ErrorKind::PermissionDenied) => {
                StoreError::Forbidden(path.to_owned())
            }
            _ => StoreError::Io {
                doing,
                path: path.to_owned(),
                source,
            },
        }
    }
}
