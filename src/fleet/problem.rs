//! What can be wrong with a fleet's files, said so that the person can mend it.

use std::fmt;

use serde::{Deserialize, Serialize};

/// One of the files.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum FleetFile {
    /// `fleet.toml`: the company and its trailers.
    Fleet,
    /// `jobs.toml`: sites and jobs.
    Jobs,
    /// `crew.toml`: the people.
    Crew,
    /// `words.toml`: the company's own words. The only one that may be missing.
    Words,
}

impl FleetFile {
    /// All of them, in the order they are read.
    pub const ALL: [FleetFile; 4] = [
        FleetFile::Fleet,
        FleetFile::Jobs,
        FleetFile::Crew,
        FleetFile::Words,
    ];

    /// Returns the file's name in the fleet's folder.
    pub const fn name(self) -> &'static str {
        match self {
            FleetFile::Fleet => "fleet.toml",
            FleetFile::Jobs => "jobs.toml",
            FleetFile::Crew => "crew.toml",
            FleetFile::Words => "words.toml",
        }
    }
}

impl fmt::Display for FleetFile {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// One thing wrong in one place.
///
/// Displays as one line: `jobs.toml:12: job at tarn, guests: expected a number from 0 to 1000000, found `-5``.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Problem {
    /// The file.
    pub file: FleetFile,
    /// The line, counted from 1.
    pub line: usize,
    /// The column in characters, counted from 1.
    pub column: usize,
    /// What it is about: `trailer 12, waste_gal`; empty where the file as a whole is.
    pub place: String,
    /// What should stand there.
    pub expected: String,
    /// What stands there, the person's text in backticks.
    pub found: String,
    /// How to mend it, where that can be told.
    pub hint: Option<String>,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: ", self.file, self.line)?;
        if !self.place.is_empty() {
            write!(f, "{}: ", self.place)?;
        }
        write!(f, "expected {}, found {}", self.expected, self.found)?;
        match &self.hint {
            Some(hint) => write!(f, "; {hint}"),
            None => Ok(()),
        }
    }
}

impl std::error::Error for Problem {}

/// Quotes a person's text in backticks, on one line and cut to what fits one.
pub(super) fn quoted(text: &str) -> String {
    const LONGEST: usize = 48;
    let mut line = String::from("`");
    for (i, c) in text.chars().enumerate() {
        if i == LONGEST {
            line.push('…');
            break;
        }
        line.push(match c {
            '`' => '\'',
            c if c.is_control() || c.is_whitespace() => ' ',
            // direction marks would turn the rest of the line around
            '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {
                '\u{fffd}'
            }
            c => c,
        });
    }
    line.push('`');
    line
}

/// Finds the candidate that a misspelt `word` most likely meant, if one is near.
pub(super) fn nearest<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    // names are short; a longer one is no slip of ours, and the distance costs the product of the lengths
    if word.chars().count() > 64 {
        return None;
    }
    let lower = word.to_lowercase();
    candidates
        .into_iter()
        .map(|candidate| {
            let distance = strsim::osa_distance(&lower, &candidate.to_lowercase());
            (distance, candidate)
        })
        .filter(|(distance, candidate)| {
            let length = candidate.chars().count().max(1);
            *distance <= 1 + length / 4 && *distance < length
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
