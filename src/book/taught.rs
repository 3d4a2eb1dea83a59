//! Words that were taught in chat: kept until they are taken back, beside those of the fleet's files.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::words::TaughtWord;

/// A word that somebody taught.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Taught {
    /// The word and what it is said for.
    pub word: TaughtWord,
    /// When.
    pub at: DateTime<Utc>,
    /// Who.
    pub by: String,
}

/// The words that were taught, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct TaughtWords(Vec<Taught>);

impl TaughtWords {
    /// Iterates over them, oldest first.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &Taught> {
        self.0.iter()
    }

    /// Finds the word that is said so.
    pub fn find(&self, say: &str) -> Option<&Taught> {
        self.iter().find(|taught| taught.word.is_said_as(say))
    }

    /// Takes a word in, in place of one that is said alike.
    pub(super) fn learn(&mut self, taught: &Taught) {
        self.forget(&taught.word.say);
        self.0.push(taught.clone());
    }

    /// Forgets the word that is said so.
    pub(super) fn forget(&mut self, say: &str) {
        self.0.retain(|taught| !taught.word.is_said_as(say));
    }
}
