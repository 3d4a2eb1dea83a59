//! The vocabulary, compiled from the word files: which phrase stands for what, and which word a slip was meant to be.
//!
//! A phrase of the word files is one or more words, where `(a|b)` is either, `[a]` may be left out, and `*` stands for
//! up to three words that are read by themselves.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

use serde::Deserialize;
use thiserror::Error;

use super::concept::{Concept, Mark, Noun, Spoken, Unit};
use super::lex::Letters;
use super::normal::plain;
use super::spell::Speller;
use crate::heard::Language;

/// A word of the vocabulary.
pub(super) type WordId = u32;

/// Stands for a word or number that is not in the vocabulary, but may stand where a phrase has `*`.
pub(super) const UNKNOWN: WordId = WordId::MAX;

/// A map with a fast hash: keys are short words of our own files, not chosen by an attacker.
pub(super) type FastMap<K, V> = HashMap<K, V, BuildHasherDefault<Fx>>;

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

/// What is known of a word.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Known {
    /// Counts for the language of the message: 1 English, 2 Spanish, 3 both.
    pub languages: u8,
    /// The trie node a phrase that opens with it leads to.
    root: Option<u32>,
}

#[derive(Debug, Default)]
struct Node {
    next: Vec<(WordId, u32)>,
    gap: Option<u32>,
    concept: Option<Concept>,
}

/// The compiled vocabulary.
#[derive(Debug, Default)]
pub(super) struct Vocab {
    ids: FastMap<Box<str>, WordId>,
    known: Vec<Known>,
    nodes: Vec<Node>,
    glued: FastMap<Box<str>, Unit>,
    speller: Speller,
}

/// A phrase found in a message.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Match {
    /// What it stands for.
    pub concept: Concept,
    /// Which of the words from the first on belong to it, one bit each.
    pub mask: u64,
}

impl Match {
    /// Returns how many words belong to the phrase.
    pub(super) fn words(&self) -> u32 {
        self.mask.count_ones()
    }
}

impl Vocab {
    /// Adds a word file in `language`.
    pub(super) fn add(
        &mut self,
        file: &str,
        words: &WordFile,
        language: Option<Language>,
    ) -> Result<(), WordsError> {
        let bit = bit(language);
        for entry in &words.word {
            let concept = Concept::parse(&entry.is).ok_or_else(|| WordsError::Unknown {
                file: file.into(),
                is: entry.is.clone(),
            })?;
            if let (true, Concept::Unit(unit)) = (entry.glued, concept) {
                self.glued
                    .extend(entry.say.iter().map(|word| (word.as_str().into(), unit)));
                continue;
            }
            for spelling in &entry.say {
                for phrase in expand(spelling) {
                    self.add_phrase(&phrase, concept, bit, entry.accents)
                        .map_err(|spelling| WordsError::Clash {
                            file: file.into(),
                            spelling,
                            is: entry.is.clone(),
                        })?;
                }
            }
        }
        self.add_ordinary(&words.ordinary, language);
        Ok(())
    }

    /// Adds words that are never a slip for one of ours.
    pub(super) fn add_ordinary(&mut self, words: &str, language: Option<Language>) {
        for word in words.split_whitespace() {
            let id = self.intern(&plain(word));
            self.known[id as usize].languages |= bit(language);
        }
    }

    /// Builds what mends spellings. Call once, after the last `add`.
    pub(super) fn finish(&mut self) {
        let mut keywords = Vec::new();
        for (word, id) in &self.ids {
            let concept = self.known[*id as usize]
                .root
                .and_then(|node| self.nodes[node as usize].concept);
            if let Some(concept) = concept
                && word.is_ascii()
                && is_mendable(&concept)
            {
                keywords.push((word.clone(), *id, concept));
            }
        }
        keywords.sort_by(|a, b| a.0.cmp(&b.0));
        self.speller = Speller::new(&keywords);
    }

    /// Finds the word spelt exactly so.
    pub(super) fn id(&self, word: &str) -> Option<WordId> {
        self.ids.get(word).copied()
    }

    /// Tells the languages of a word: 1 English, 2 Spanish, 3 both.
    pub(super) fn languages(&self, id: WordId) -> u8 {
        self.known[id as usize].languages
    }

    /// Returns what the word means by itself.
    pub(super) fn meaning(&self, id: WordId) -> Option<Concept> {
        self.known[id as usize]
            .root
            .and_then(|node| self.nodes[node as usize].concept)
    }

    /// Finds the one keyword that an unknown word is clearly a slip for.
    pub(super) fn mend(&self, word: &str) -> Option<(WordId, &str)> {
        self.speller.nearest(word)
    }

    /// Finds the longest phrase that starts at the first of `words`; each word may have several spellings, none for a
    /// token that breaks phrases.
    pub(super) fn longest(&self, words: &[[Option<WordId>; 3]]) -> Option<Match> {
        let mut best: Option<Match> = None;
        for id in words.first()?.iter().flatten() {
            if let Some(node) = self.known.get(*id as usize).and_then(|k| k.root) {
                self.walk(node, words, 1, 1, &mut best);
            }
        }
        best
    }

    fn walk(
        &self,
        node: u32,
        words: &[[Option<WordId>; 3]],
        at: usize,
        mask: u64,
        best: &mut Option<Match>,
    ) {
        let node = &self.nodes[node as usize];
        if let Some(concept) = node.concept
            && best.is_none_or(|b| mask.count_ones() > b.words())
        {
            *best = Some(Match { concept, mask });
        }
        if at >= words.len() || at >= 24 {
            return;
        }
        for id in words[at].iter().flatten() {
            if let Some((_, next)) = node.next.iter().find(|(word, _)| word == id) {
                self.walk(*next, words, at + 1, mask | (1 << at), best);
            }
        }
        if let Some(gap) = node.gap {
            let gap = &self.nodes[gap as usize];
            for skip in 1..=3 {
                let Some(target) = words.get(at + skip) else {
                    break;
                };
                if words[at + skip - 1][0].is_none() && words[at + skip - 1][1].is_none() {
                    break;
                }
                for id in target.iter().flatten() {
                    if let Some((_, next)) = gap.next.iter().find(|(word, _)| word == id) {
                        self.walk(*next, words, at + skip + 1, mask | (1 << (at + skip)), best);
                    }
                }
            }
        }
    }

    fn intern(&mut self, word: &str) -> WordId {
        if let Some(id) = self.ids.get(word) {
            return *id;
        }
        let id = self.known.len() as WordId;
        self.ids.insert(word.into(), id);
        self.known.push(Known::default());
        id
    }

    fn add_phrase(
        &mut self,
        phrase: &str,
        concept: Concept,
        bit: u8,
        accents: bool,
    ) -> Result<(), String> {
        self.add_spelling(phrase, concept, bit)?;
        let bare = plain(phrase);
        if !accents && bare != phrase {
            self.add_spelling(&bare, concept, bit)?;
        }
        Ok(())
    }

    fn add_spelling(&mut self, phrase: &str, concept: Concept, bit: u8) -> Result<(), String> {
        let mut node: Option<u32> = None;
        for word in phrase.split_whitespace() {
            if word == "*" {
                let here = node.ok_or_else(|| phrase.to_string())? as usize;
                let gap = match self.nodes[here].gap {
                    Some(gap) => gap,
                    None => {
                        let gap = self.node();
                        self.nodes[here].gap = Some(gap);
                        gap
                    }
                };
                node = Some(gap);
                continue;
            }
            let id = self.intern(word);
            self.known[id as usize].languages |= bit;
            node = Some(match node {
                None => match self.known[id as usize].root {
                    Some(root) => root,
                    None => {
                        let root = self.node();
                        self.known[id as usize].root = Some(root);
                        root
                    }
                },
                Some(here) => {
                    let found = self.nodes[here as usize]
                        .next
                        .iter()
                        .find(|(w, _)| *w == id)
                        .map(|(_, n)| *n);
                    match found {
                        Some(next) => next,
                        None => {
                            let next = self.node();
                            self.nodes[here as usize].next.push((id, next));
                            next
                        }
                    }
                }
            });
        }
        let Some(node) = node else { return Ok(()) };
        let slot = &mut self.nodes[node as usize].concept;
        match slot {
            Some(there) if *there != concept => Err(phrase.to_string()),
            _ => {
                *slot = Some(concept);
                Ok(())
            }
        }
    }

    fn node(&mut self) -> u32 {
        self.nodes.push(Node::default());
        (self.nodes.len() - 1) as u32
    }
}

impl Vocab {
    /// Returns the measure that a word is where it touches its number.
    pub(super) fn glued(&self, word: &str) -> Option<Unit> {
        self.glued.get(word).copied()
    }

    fn alone(&self, word: &str) -> Option<Concept> {
        self.id(word)
            .or_else(|| self.id(word.strip_suffix('s')?))
            .and_then(|id| self.meaning(id))
    }
}

impl Letters for Vocab {
    fn is_measure(&self, word: &str) -> bool {
        self.glued(word).is_some()
            || match self.alone(word) {
                Some(Concept::Unit(_)) => true,
                Some(Concept::Noun(noun)) => noun.reading().is_some() || noun == Noun::Amps,
                Some(Concept::Mark(Mark::LabelAfter)) => true,
                _ => false,
            }
    }

    fn is_prefix(&self, word: &str) -> bool {
        !matches!(self.alone(word), None | Some(Concept::Spoken(_)))
    }

    fn is_unit(&self, word: &str) -> bool {
        matches!(self.alone(word), Some(Concept::Mark(Mark::Unit)))
    }
}

/// The bit that stands for a language.
fn bit(language: Option<Language>) -> u8 {
    match language {
        Some(Language::En) => 1,
        Some(Language::Es) => 2,
        None => 0,
    }
}

/// Only words that carry a meaning of their own are worth mending a spelling for.
fn is_mendable(concept: &Concept) -> bool {
    matches!(
        concept,
        Concept::Noun(_)
            | Concept::State(_)
            | Concept::Event(_)
            | Concept::Fault(_)
            | Concept::Unit(_)
            | Concept::Ask(_)
            | Concept::Need(_)
            | Concept::Level(_)
            | Concept::Spoken(Spoken::Number(_) | Spoken::Hundred | Spoken::Thousand)
            | Concept::Mark(
                Mark::Unit
                    | Mark::Yesterday
                    | Mark::Bound
                    | Mark::Between
                    | Mark::Minus
                    | Mark::Below
                    | Mark::Sorry
            )
    )
}

/// Writes out the choices of a pattern: `(a|b)` and `[c]`.
fn expand(pattern: &str) -> Vec<String> {
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

/// The multiply-rotate hash that compilers use for short keys.
#[derive(Debug, Default, Clone, Copy)]
pub(super) struct Fx(u64);

impl Hasher for Fx {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let mut word = [0; 8];
            word[..chunk.len()].copy_from_slice(chunk);
            self.0 = (self.0.rotate_left(5) ^ u64::from_le_bytes(word))
                .wrapping_mul(0x517c_c1b7_2722_0a95);
        }
    }
}
