//! The vocabulary, compiled from the word files: which phrase stands for what, and which word a slip was meant to be.
//!
//! A phrase of the word files is one or more words, where `(a|b)` is either, `[a]` may be left out, and `*` stands for
//! up to three words that are read by themselves.

mod file;

use std::collections::BTreeSet;

use rustc_hash::FxHashMap;

use crate::heard::Language;
use crate::words::concept::{Concept, Mark, Noun, Spoken, Unit};
use crate::words::lex::Letters;
use crate::words::normal::plain;
use crate::words::senses::{Sense, Senses};
use crate::words::spell::Speller;
pub(super) use file::expand;
pub use file::{WordFile, WordsError};
use file::{pieces, written_out};

/// A word of the vocabulary.
pub(super) type WordId = u32;

/// Stands for a word or number that is not in the vocabulary, but may stand where a phrase has `*`.
pub(super) const UNKNOWN: WordId = WordId::MAX;

/// What is known of a word.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Known {
    /// Counts for the language of the message: 1 English, 2 Spanish, 3 both.
    pub languages: u8,
    /// True where some phrase has it.
    ours: bool,
    /// The trie node a phrase that opens with it leads to.
    root: Option<u32>,
}

#[derive(Debug, Clone, Default)]
struct Node {
    next: Vec<(WordId, u32)>,
    gap: Option<u32>,
    concept: Option<Concept>,
}

/// The compiled vocabulary.
#[derive(Debug, Clone, Default)]
pub(super) struct Vocab {
    ids: FxHashMap<Box<str>, WordId>,
    known: Vec<Known>,
    nodes: Vec<Node>,
    glued: FxHashMap<Box<str>, Unit>,
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
        let mut spelt_out: Vec<(String, Concept, u8)> = Vec::new();
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
                self.add_pattern(spelling, concept, bit, entry.accents)
                    .map_err(|spelling| WordsError::Clash {
                        file: file.into(),
                        spelling,
                        is: entry.is.clone(),
                    })?;
                // every contraction ends so
                if spelling.contains("nt") {
                    let long = expand(spelling)
                        .into_iter()
                        .filter_map(|it| written_out(&it));
                    spelt_out.extend(long.map(|long| (long, concept, bit)));
                }
            }
        }
        // what the file says of the long form itself stands
        for (long, concept, bit) in spelt_out {
            let _ = self.add_pattern(&long, concept, bit, false);
        }
        self.add_ordinary(&words.ordinary, language);
        Ok(())
    }

    /// Adds words that are never a slip for one of ours.
    pub(super) fn add_ordinary(&mut self, words: &str, language: Option<Language>) {
        for word in words.split_ascii_whitespace() {
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

    /// Tells whether the word stands in a phrase of the word files.
    pub(super) fn is_ours(&self, word: &str) -> bool {
        self.id(word).is_some_and(|id| self.in_a_phrase(id))
    }

    /// Tells whether the word stands in a phrase of the word files.
    pub(super) fn in_a_phrase(&self, id: WordId) -> bool {
        self.known[id as usize].ours
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

    /// Returns what a whole phrase stands for, in small letters.
    pub(super) fn phrase(&self, phrase: &str) -> Option<Concept> {
        let words: Vec<[Option<WordId>; 3]> = phrase
            .split_whitespace()
            .map(|word| [Some(self.id(word).unwrap_or(UNKNOWN)), None, None])
            .collect();
        let longest = self.longest(&words)?;
        (longest.words() as usize == words.len()).then_some(longest.concept)
    }

    /// Adds a phrase after `finish`, and mends slips for it from then on; an occupied one stays as it is.
    pub(super) fn teach(&mut self, phrase: &str, concept: Concept) {
        if self.add_pattern(phrase, concept, 0, false).is_err() || phrase.contains(' ') {
            return;
        }
        for word in BTreeSet::from([phrase.to_owned(), plain(phrase)]) {
            if word.is_ascii()
                && is_mendable(&concept)
                && let Some(id) = self.id(&word)
            {
                self.speller.add(&word, id, concept);
            }
        }
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
                if words[at + skip - 1].iter().all(Option::is_none) {
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

    /// Adds what a pattern writes out; an error is a phrase of it that already means something else.
    fn add_pattern(
        &mut self,
        pattern: &str,
        concept: Concept,
        bit: u8,
        accents: bool,
    ) -> Result<(), String> {
        self.add_spelling(pattern, concept, bit)?;
        if !accents && !pattern.is_ascii() {
            self.add_spelling(&plain(pattern), concept, bit)?;
        }
        Ok(())
    }

    /// Goes down the trie by all choices of a pattern at once: each piece of it is looked up once, however many phrases
    /// it is part of.
    fn add_spelling(&mut self, pattern: &str, concept: Concept, bit: u8) -> Result<(), String> {
        let mut ends: Vec<Option<u32>> = vec![None];
        for piece in pieces(pattern) {
            let mut reached = Vec::new();
            for choice in expand(piece) {
                let words = self.words_of(&choice, bit);
                for start in &ends {
                    let mut at = *start;
                    for word in &words {
                        at = Some(match word {
                            Some(id) => self.after_word(at, *id),
                            None => self.after_gap(at.ok_or_else(|| pattern.to_string())?),
                        });
                    }
                    reached.push(at);
                }
            }
            ends = reached;
        }
        for end in ends.into_iter().flatten() {
            let slot = &mut self.nodes[end as usize].concept;
            if slot.is_some_and(|there| there != concept) {
                return Err(self.taken(pattern, concept));
            }
            *slot = Some(concept);
        }
        Ok(())
    }

    /// Returns the words of a choice as ids, none for `*`.
    fn words_of(&mut self, choice: &str, bit: u8) -> Vec<Option<WordId>> {
        let mut words = Vec::new();
        for word in choice.split_ascii_whitespace() {
            words.push((word != "*").then(|| {
                let id = self.intern(word);
                let known = &mut self.known[id as usize];
                known.languages |= bit;
                known.ours = true;
                id
            }));
        }
        words
    }

    /// Returns the node that a word leads to, from the start of a phrase or from a node.
    fn after_word(&mut self, at: Option<u32>, id: WordId) -> u32 {
        let there = match at {
            None => self.known[id as usize].root,
            Some(node) => {
                let next = &self.nodes[node as usize].next;
                next.iter().find(|(word, _)| *word == id).map(|(_, n)| *n)
            }
        };
        there.unwrap_or_else(|| {
            let new = self.node();
            match at {
                None => self.known[id as usize].root = Some(new),
                Some(node) => self.nodes[node as usize].next.push((id, new)),
            }
            new
        })
    }

    /// Returns the node behind the gap at a node.
    fn after_gap(&mut self, node: u32) -> u32 {
        self.nodes[node as usize].gap.unwrap_or_else(|| {
            let gap = self.node();
            self.nodes[node as usize].gap = Some(gap);
            gap
        })
    }

    /// Names the phrase of a pattern that already means something else.
    fn taken(&self, pattern: &str, concept: Concept) -> String {
        let mut phrases = expand(pattern).into_iter();
        phrases
            .find(|phrase| self.phrase(phrase).is_some_and(|there| there != concept))
            .unwrap_or_else(|| pattern.to_string())
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

    /// Returns the measure that a word is, whether it touches its number or not.
    pub(super) fn measure(&self, word: &str) -> Option<Unit> {
        self.glued(word).or(match self.alone(word) {
            Some(Concept::Unit(unit)) => Some(unit),
            _ => None,
        })
    }

    /// Returns what a word or its singular means by itself.
    pub(super) fn alone(&self, word: &str) -> Option<Concept> {
        self.id(word)
            .or_else(|| self.id(word.strip_suffix('s')?))
            .and_then(|id| self.meaning(id))
    }
}

/// What the lexer asks of the spellings.
pub(super) struct Spellings<'a> {
    pub(super) vocab: &'a Vocab,
    pub(super) senses: &'a Senses,
}

impl Letters for Spellings<'_> {
    fn is_measure(&self, word: &str) -> bool {
        self.vocab.glued(word).is_some()
            || match self.vocab.alone(word) {
                Some(Concept::Unit(_)) => true,
                Some(Concept::Noun(noun)) => noun.reading().is_some() || noun == Noun::Amps,
                Some(Concept::Mark(Mark::LabelAfter)) => true,
                _ => false,
            }
    }

    fn is_prefix(&self, word: &str) -> bool {
        !matches!(self.vocab.alone(word), None | Some(Concept::Spoken(_)))
    }

    fn is_unit(&self, word: &str) -> bool {
        matches!(self.vocab.alone(word), Some(Concept::Mark(Mark::Unit)))
    }

    fn is_word(&self, word: &str) -> bool {
        self.vocab.is_ours(word)
    }

    fn has(&self, word: &str, sense: Sense) -> bool {
        self.senses.has(word, sense)
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
                    | Mark::LastNight
                    | Mark::Morning
                    | Mark::Past
                    | Mark::Doubt
                    | Mark::Expected
                    | Mark::Forwarded
                    | Mark::Bound
                    | Mark::Between
                    | Mark::Minus
                    | Mark::Below
                    | Mark::Sorry
            )
    )
}
