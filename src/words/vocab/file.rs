//! Word files: their shape, what is wrong with one, and the choices that a spelling writes out.

use serde::Deserialize;
use thiserror::Error;

/// What is wrong with a word file.
#[derive(Debug, Error, PartialEq)]
pub enum WordsError {
    /// The file is no TOML of the right shape.
    #[error("{file} cannot be read: {message}")]
    Toml {
        /// The file.
        file: String,
        /// What the TOML reader said, with the line.
        message: String,
    },
    /// An entry names no known concept.
    #[error("{file}: `{is}` names nothing known, expected such as `fault leak` or `noun water`")]
    Unknown {
        /// The file.
        file: String,
        /// The entry's `is`.
        is: String,
    },
    /// A spelling is already taken for something else.
    #[error(
        "{file}: `{spelling}` is to be `{is}` and already means something else; take one of the two out"
    )]
    Clash {
        /// The file.
        file: String,
        /// The spelling.
        spelling: String,
        /// What it was to mean.
        is: String,
    },
}

/// One entry of a word file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WordEntry {
    /// What it stands for.
    pub is: String,
    /// Its spellings.
    pub say: Vec<String>,
    /// A sentence that shows it.
    #[serde(default, rename = "try")]
    pub sentence: Option<String>,
    /// Where it is said, for a regional word.
    #[serde(default)]
    pub region: Option<String>,
    /// True where the accent tells it from another word.
    #[serde(default)]
    pub accents: bool,
    /// True for a measure that is one only where it touches its number: `12a`, `3in`.
    #[serde(default)]
    pub glued: bool,
}

/// A word file.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WordFile {
    /// Ordinary words of the language that are never a slip for one of ours.
    #[serde(default)]
    pub ordinary: String,
    /// The entries.
    #[serde(default)]
    pub word: Vec<WordEntry>,
}

impl WordFile {
    /// Reads a word file.
    pub fn parse(file: &str, text: &str) -> Result<WordFile, WordsError> {
        toml::from_str(text).map_err(|error| WordsError::Toml {
            file: file.into(),
            message: error.to_string(),
        })
    }
}

/// Contractions and what they are short for.
const CONTRACTIONS: [(&str, &str); 13] = [
    ("isnt", "is not"),
    ("arent", "are not"),
    ("wasnt", "was not"),
    ("werent", "were not"),
    ("doesnt", "does not"),
    ("dont", "do not"),
    ("didnt", "did not"),
    ("wont", "will not"),
    ("cant", "can not"),
    ("couldnt", "could not"),
    ("wouldnt", "would not"),
    ("hasnt", "has not"),
    ("havent", "have not"),
];

/// Writes a phrase of several words without its contractions, where it has one: "water isnt hot", "water is not hot".
pub(super) fn written_out(phrase: &str) -> Option<String> {
    let short = |word: &str| CONTRACTIONS.iter().find(|(short, _)| *short == word);
    if !phrase.contains(' ') || !phrase.split(' ').any(|word| short(word).is_some()) {
        return None;
    }
    let words: Vec<&str> = phrase
        .split(' ')
        .map(|word| short(word).map_or(word, |(_, long)| long))
        .collect();
    Some(words.join(" "))
}

/// Splits a pattern at the spaces outside its brackets.
pub(super) fn pieces(pattern: &str) -> impl Iterator<Item = &str> {
    let mut inside = false;
    pattern.split(move |c| {
        match c {
            '(' | '[' => inside = true,
            ')' | ']' => inside = false,
            _ => {}
        }
        c == ' ' && !inside
    })
}

/// Writes out the choices of a pattern: `(a|b)` and `[c]`.
pub(in crate::words) fn expand(pattern: &str) -> Vec<String> {
    let Some(open) = pattern.find(['(', '[']) else {
        return vec![pattern.to_string()];
    };
    let close = match pattern.as_bytes()[open] {
        b'(' => pattern[open..].find(')'),
        _ => pattern[open..].find(']'),
    };
    let Some(close) = close.map(|c| open + c) else {
        return vec![pattern.to_string()];
    };
    let (before, inside, after) = (
        &pattern[..open],
        &pattern[open + 1..close],
        &pattern[close + 1..],
    );
    let mut choices: Vec<&str> = inside.split('|').collect();
    if pattern.as_bytes()[open] == b'[' {
        choices.push("");
    }
    let mut all = Vec::new();
    for rest in expand(after) {
        for choice in &choices {
            all.push(format!("{before}{choice}{rest}"));
        }
    }
    all
}
