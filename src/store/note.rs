//! What opening a store has to say besides success.

use std::fmt;
use std::path::PathBuf;

/// One thing that was found and mended, for whoever runs the bot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Note {
    /// The last line was unfinished and was cut off; it had not been acknowledged.
    TornLine {
        /// The segment.
        file: PathBuf,
        /// How many bytes went.
        bytes: u64,
    },
    /// The last line was whole but for its newline, which was put back.
    NewlineMended {
        /// The segment.
        file: PathBuf,
    },
    /// The lookup index was not usable and was rebuilt from the journal.
    IndexRebuilt {
        /// What was wrong with it.
        why: String,
        /// Where the old one lies; `None` where there was none.
        aside: Option<PathBuf>,
        /// How many turns it was rebuilt from.
        turns: u64,
    },
    /// The book's snapshot could not be used; everything is folded anew.
    SnapshotUnusable {
        /// What was wrong with it.
        why: String,
    },
}

impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Note::TornLine { file, bytes } => write!(
                f,
                "the last line of `{}` was unfinished ({bytes} bytes, never acknowledged) and was cut off",
                file.display()
            ),
            Note::NewlineMended { file } => write!(
                f,
                "the last line of `{}` was whole but did not end in a newline; it does now",
                file.display()
            ),
            Note::IndexRebuilt { why, aside, turns } => {
                write!(
                    f,
                    "the lookup index {why}; it was rebuilt from {turns} turns"
                )?;
                match aside {
                    Some(aside) => write!(f, " and the old one set aside as `{}`", aside.display()),
                    None => Ok(()),
                }
            }
            Note::SnapshotUnusable { why } => {
                write!(f, "the snapshot {why}; the whole journal is folded anew")
            }
        }
    }
}
