//! Words that a company teaches: each is said for a keyword that the reader knows, and is checked before it is used, so
//! that no message is read otherwise than before but for the new word.

use std::collections::BTreeSet;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::concept::{Concept, Mark};
use super::normal::plain;
use super::vocab::{Vocab, WordFile, expand};
use super::{ENGLISH, Reader, SPANISH};
use crate::heard::Language;
use crate::quantity::TemperatureScale;

/// The most words that a taught phrase may have.
pub const MOST_WORDS: usize = 4;

/// The longest taught phrase, characters.
pub const LONGEST: usize = 40;

/// A word or short phrase of a company's own, and the keyword it is said for.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct TaughtWord {
    /// What crews say, in small letters.
    pub say: String,
    /// A keyword of the reader, in small letters.
    pub means: String,
}

/// What a name that crews write is a name of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NameOf {
    /// A trailer.
    Trailer,
    /// A site.
    Site,
    /// A person of the crew.
    Person,
}

/// Why a word is not taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TeachError {
    /// No word, too many, or one with digits or signs in it.
    NoWord,
    /// The keyword is not known; these are near it.
    UnknownKeyword(Vec<String>),
    /// The keyword is none that another word can be said for: a number, yes and no, an order to the bot.
    NoSuchUse,
    /// The new word is a number.
    Number,
    /// The new word says nothing or something else in ordinary speech.
    Ordinary,
    /// The new word already stands for the keyword.
    Same,
    /// The new word already stands for this other keyword.
    Known(String),
    /// The new word is what this keyword becomes by a slip.
    SlipOf(String),
    /// The new word is a name of the company's.
    Name(NameOf),
}

impl TaughtWord {
    /// Makes a word of what was typed: small letters, single spaces, no quotation marks.
    pub fn new(say: &str, means: &str) -> TaughtWord {
        let folded = |text: &str| {
            let text = text.to_lowercase();
            let bare = text.trim_matches(|c: char| !c.is_alphanumeric());
            bare.split_whitespace().collect::<Vec<_>>().join(" ")
        };
        TaughtWord {
            say: folded(say),
            means: folded(means),
        }
    }

    /// Tells whether both are said alike.
    pub fn is_said_as(&self, say: &str) -> bool {
        plain(&self.say) == plain(&TaughtWord::new(say, "").say)
    }
}

impl Reader {
    /// Makes a reader that also knows words of a company's own. One that [`Reader::check_word`] refuses is left out.
    pub fn with_words(words: &[TaughtWord]) -> Reader {
        let mut reader = Reader::new();
        for word in words {
            if check(&reader, word).is_ok()
                && let Some(concept) = meaning(&reader, &word.means)
            {
                Arc::make_mut(&mut reader.vocab).teach(&word.say, concept);
            }
        }
        reader
    }

    /// Makes the reader pass over these names of sites: "23 at windlass flat" has no flat tire.
    #[must_use]
    pub fn with_places(mut self, names: &[String]) -> Reader {
        for name in names {
            Arc::make_mut(&mut self.vocab).teach(name, Concept::Mark(Mark::Filler));
        }
        self
    }

    /// Returns those of a company's site names that hold a word which says something by itself, in small letters. A name of
    /// one word is none: the word would be lost to what crews report.
    pub fn misleading_places<'n>(names: impl IntoIterator<Item = &'n str>) -> Vec<String> {
        let reader = Reader::new();
        let says = |word: &str| {
            let id = reader.vocab.id(word);
            let meaning = id.and_then(|id| reader.vocab.meaning(id));
            matches!(
                meaning,
                Some(
                    Concept::Noun(_)
                        | Concept::State(_)
                        | Concept::Event(_)
                        | Concept::Fault(_)
                        | Concept::Level(_)
                )
            )
        };
        let mut out = Vec::new();
        for name in names {
            // "Sleigh Barn at Dovecote Farm", "Conduit Yard, the new water works": what crews say comes first
            let name = name.to_lowercase().replace('-', " ");
            let first = name.split(',').next().unwrap_or_default();
            let first = first.split(" at ").next().unwrap_or_default();
            let words: Vec<&str> = first.split_whitespace().collect();
            let letters = |word: &&str| word.chars().all(char::is_alphabetic);
            let phrase = words.join(" ");
            if (2..=MOST_WORDS).contains(&words.len())
                && words.iter().all(letters)
                && words.iter().any(|word| says(&plain(word)))
                && !out.contains(&phrase)
            {
                out.push(phrase);
            }
        }
        out
    }

    /// Tells whether a word may be taught; `names` are the company's own.
    ///
    /// # Errors
    ///
    /// Why it may not.
    pub fn check_word<'n>(
        &self,
        word: &TaughtWord,
        names: impl IntoIterator<Item = (&'n str, NameOf)>,
    ) -> Result<(), TeachError> {
        if let Some((_, of)) = names.into_iter().find(|(name, _)| word.is_said_as(name)) {
            return Err(TeachError::Name(of));
        }
        check(self, word)
    }
}

fn check(reader: &Reader, word: &TaughtWord) -> Result<(), TeachError> {
    let words: Vec<&str> = word.say.split(' ').collect();
    let letters = |word: &&str| {
        !word.is_empty() && word.chars().all(|c| c.is_alphabetic() || "-'’".contains(c))
    };
    if !words.iter().all(letters) || words.len() > MOST_WORDS || word.say.chars().count() > LONGEST
    {
        let number = meaning(reader, &word.say).is_some_and(is_number);
        let number = number || word.say.chars().any(|c| c.is_ascii_digit());
        return Err(match number {
            true => TeachError::Number,
            false => TeachError::NoWord,
        });
    }
    let Some(meant) = meaning(reader, &word.means) else {
        return Err(TeachError::UnknownKeyword(near(&word.means)));
    };
    if !is_keyword(meant) {
        return Err(TeachError::NoSuchUse);
    }
    match meaning(reader, &word.say) {
        Some(number) if is_number(number) => return Err(TeachError::Number),
        Some(there) if there == meant => return Err(TeachError::Same),
        Some(there) if is_keyword(there) => {
            return Err(TeachError::Known(keyword_for(there, &word.say)));
        }
        Some(_) => return Err(TeachError::Ordinary),
        None => {}
    }
    if words.len() > 1 {
        // "the tank" and "no water" are read by what their words mean: one of them has to be new
        return match words.iter().any(|word| is_new(&reader.vocab, word)) {
            true => Ok(()),
            false => Err(TeachError::Ordinary),
        };
    }
    let (vocab, bare) = (&reader.vocab, plain(&word.say));
    if vocab.id(&bare).is_some() || vocab.id(&word.say).is_some() {
        return Err(TeachError::Ordinary);
    }
    match vocab
        .mend(&bare)
        .map(|(id, keyword)| (vocab.meaning(id), keyword))
    {
        Some((other, keyword)) if other != Some(meant) => {
            Err(TeachError::SlipOf(keyword.to_owned()))
        }
        _ => Ok(()),
    }
}

/// Returns what a whole phrase stands for: as the word files have it, or as the one event or fault it is read as.
fn meaning(reader: &Reader, phrase: &str) -> Option<Concept> {
    let vocab = &reader.vocab;
    vocab
        .phrase(phrase)
        .or_else(|| vocab.phrase(&plain(phrase)))
        .or_else(|| read_as(reader, phrase))
}

fn read_as(reader: &Reader, phrase: &str) -> Option<Concept> {
    let heard = reader.hear(phrase, TemperatureScale::F);
    let [entry] = &heard.entries[..] else {
        return None;
    };
    let bare = entry.unit.is_none() && entry.readings.values.is_empty();
    let mut events = entry.events.iter().map(|event| Concept::Event(*event));
    let mut faults = entry.faults.iter().map(|fault| Concept::Fault(*fault));
    match (
        bare && heard.unclear.is_empty(),
        events.next(),
        faults.next(),
    ) {
        (true, one, None) | (true, None, one) if events.next().or(faults.next()).is_none() => one,
        _ => None,
    }
}

/// Tells whether a word of a phrase carries no meaning of its own that the phrase would hide.
fn is_new(vocab: &Vocab, word: &str) -> bool {
    const SMALL: [&str; 8] = [
        "un", "una", "nuestro", "nuestra", "their", "his", "her", "your",
    ];
    let bare = plain(word);
    let meant = vocab.phrase(word).or_else(|| vocab.phrase(&bare));
    !SMALL.contains(&bare.as_str())
        && matches!(meant, None | Some(Concept::Mark(Mark::Call | Mark::Label)))
}

fn is_number(concept: Concept) -> bool {
    matches!(concept, Concept::Spoken(_))
}

/// Tells whether another word can be said for it.
fn is_keyword(concept: Concept) -> bool {
    matches!(
        concept,
        Concept::Noun(_)
            | Concept::State(_)
            | Concept::Event(_)
            | Concept::Fault(_)
            | Concept::Clears(_)
            | Concept::Unit(_)
            | Concept::Need(_)
            | Concept::Level(_)
            | Concept::Ask(_)
    )
}

/// Lists every keyword with what it stands for, as the word files spell it; first of each those that are called what they
/// stand for.
fn keywords() -> Vec<(String, Concept)> {
    let mut all = Vec::new();
    for (file, text) in [("en.toml", ENGLISH), ("es.toml", SPANISH)] {
        let words =
            WordFile::parse(file, text).expect("the built-in word files are read by a test");
        for entry in words.word.iter().filter(|entry| !entry.glued) {
            let Some(concept) = Concept::parse(&entry.is).filter(|concept| is_keyword(*concept))
            else {
                continue;
            };
            let name = entry
                .is
                .split_once(' ')
                .map_or("", |(_, name)| name)
                .replace('-', " ");
            let spelt = entry.say.iter().filter(|say| !say.contains('*'));
            let spelt = spelt.flat_map(|say| expand(say));
            all.extend(spelt.map(|say| (say == name, say, concept)));
        }
    }
    all.sort_by_key(|(named, ..)| !named);
    all.into_iter()
        .map(|(_, say, concept)| (say, concept))
        .collect()
}

/// Finds up to three keywords near what was typed, each of another meaning.
fn near(typed: &str) -> Vec<String> {
    let bare = plain(typed);
    let length = bare.chars().count();
    // a long text is no slip of a keyword, and the distance costs the product of the lengths
    if length == 0 || length > LONGEST {
        return Vec::new();
    }
    let mut found: Vec<(usize, String, Concept)> = keywords()
        .into_iter()
        .filter_map(|(keyword, concept)| {
            let words = |text: &str| -> BTreeSet<String> { text.split(' ').map(plain).collect() };
            let shared = words(&bare)
                .intersection(&words(&keyword))
                .any(|word| word.len() > 3);
            let distance = strsim::osa_distance(&bare, &plain(&keyword));
            let near = distance <= 1 + length / 4 && distance < length;
            let rank = if near { distance } else { 10 + distance };
            (near || shared).then_some((rank, keyword, concept))
        })
        .collect();
    found.sort_by(|a, b| (a.0, &a.1).cmp(&(b.0, &b.1)));
    let mut chosen: Vec<(String, Concept)> = Vec::new();
    for (_, keyword, concept) in found {
        if chosen.len() < 3 && !chosen.iter().any(|(_, other)| *other == concept) {
            chosen.push((keyword, concept));
        }
    }
    chosen.into_iter().map(|(keyword, _)| keyword).collect()
}

/// Finds a keyword that stands for a concept.
fn keyword_for(concept: Concept, say: &str) -> String {
    let mut all = keywords().into_iter();
    all.find(|(_, other)| *other == concept)
        .map_or_else(|| say.to_owned(), |(keyword, _)| keyword)
}

/// Returns a few keywords that companies most often have words of their own for.
pub fn common_keywords(language: Language) -> [&'static str; 5] {
    match language {
        Language::En => ["waste", "fresh", "pressure", "battery", "leak"],
        Language::Es => ["negras", "limpia", "presión", "batería", "fuga"],
    }
}
