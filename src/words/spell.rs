//! Which keyword a misspelt word was meant to be: the one that is clearly nearest, or none.
//!
//! Distance is one edit, weighed by how easily a thumb makes it: a neighbouring key, a doubled or dropped letter, two
//! letters swapped. Candidates are found through the spellings that one deletion leaves, so the search does not grow
//! with the vocabulary.

use rustc_hash::FxHashMap;

use super::concept::{Concept, Mark, Spoken};
use super::normal::plain;
use super::vocab::WordId;

/// The rows of the keyboard, for neighbouring keys.
const ROWS: [&[u8]; 3] = [b"qwertyuiop", b"asdfghjkl", b"zxcvbnm"];
/// The dearest edit that is still taken.
const DEAREST: f32 = 1.3;
/// How much nearer the best must be than the next keyword with another meaning.
const CLEARLY: f32 = 0.35;
/// Shorter words are left alone: too many are one edit apart.
const SHORTEST: usize = 4;

/// Finds the keyword a slip was meant to be.
#[derive(Debug, Clone, Default)]
pub(super) struct Speller {
    words: Vec<(Box<str>, WordId, Option<Concept>)>,
    deletions: FxHashMap<Box<[u8]>, Vec<u32>>,
    /// The keyword that a spelling without vowels stands for, none where several do.
    bare: FxHashMap<Box<[u8]>, Option<u32>>,
}

impl Speller {
    /// Prepares for the given keywords, which are ASCII.
    pub(super) fn new(keywords: &[(Box<str>, WordId, Concept)]) -> Speller {
        let mut speller = Speller::default();
        for (word, id, concept) in keywords {
            speller.add(word, *id, *concept);
        }
        speller
    }

    /// Prepares for one more keyword.
    pub(super) fn add(&mut self, word: &str, id: WordId, concept: Concept) {
        // a short number word is too near too many others
        let least = match concept {
            Concept::Spoken(Spoken::Number(n)) if n < 20.0 => 6,
            Concept::Spoken(_) => 5,
            // what sets a value aside
            Concept::Mark(Mark::Past | Mark::Doubt | Mark::Expected | Mark::Forwarded) => 5,
            _ => SHORTEST,
        };
        if word.len() < least {
            return;
        }
        let index = self.words.len() as u32;
        self.words.push((word.into(), id, Some(concept)));
        self.note(word.as_bytes(), index);
        for left in deletions(word.as_bytes()) {
            self.note(&left, index);
        }
        if !matches!(
            concept,
            Concept::Spoken(_) | Concept::Unit(_) | Concept::Mark(_)
        ) {
            self.note_bare(word.as_bytes(), index);
        }
    }

    /// Returns the one keyword that `word` is clearly a slip for.
    pub(super) fn nearest(&self, word: &str) -> Option<(WordId, &str)> {
        let typed = word.as_bytes();
        if typed.len() < SHORTEST || typed.len() > 24 || !typed.iter().all(u8::is_ascii_alphabetic)
        {
            return None;
        }
        if let Some(Some(index)) = self.bare.get(typed)
            && typed[1..].iter().all(|c| !is_vowel(*c))
        {
            let (meant, id, _) = &self.words[*index as usize];
            return Some((*id, meant.as_ref()));
        }
        let mut best: Option<(f32, u32)> = None;
        let mut second = f32::MAX; // nearest with another meaning
        let mut consider = |index: u32| {
            let (candidate, _, concept) = &self.words[index as usize];
            let Some(cost) = edit_cost(typed, candidate.as_bytes()) else {
                return;
            };
            match best {
                Some((_, b)) if b == index => {}
                Some((least, b)) => {
                    let same = self.words[b as usize].2 == *concept;
                    if cost < least {
                        if !same {
                            second = second.min(least);
                        }
                        best = Some((cost, index));
                    } else if !same {
                        second = second.min(cost);
                    }
                }
                None => best = Some((cost, index)),
            }
        };
        for index in self.deletions.get(typed).into_iter().flatten() {
            consider(*index);
        }
        for left in deletions(typed) {
            for index in self.deletions.get(left.as_slice()).into_iter().flatten() {
                consider(*index);
            }
        }
        let (cost, index) = best?;
        let (candidate, id, _) = &self.words[index as usize];
        let short = candidate.len().min(typed.len()) <= 4;
        let limit = if short { 0.85 } else { DEAREST };
        (cost <= limit && second - cost >= CLEARLY).then_some((*id, candidate.as_ref()))
    }

    /// Notes a keyword under its spelling without vowels, as hurried people write it: clnd, rstckd, frzn.
    fn note_bare(&mut self, word: &[u8], index: u32) {
        let concept = self.words[index as usize].2;
        for bare in [without_vowels(word, false), without_vowels(word, true)] {
            if bare.len() < SHORTEST || bare.len() == word.len() {
                continue;
            }
            let words = &self.words;
            self.bare
                .entry(bare.into())
                .and_modify(|there| {
                    let alike = there.is_some_and(|t| words[t as usize].2 == concept);
                    *there = there.filter(|_| alike);
                })
                .or_insert(Some(index));
        }
    }

    fn note(&mut self, spelling: &[u8], index: u32) {
        let list = self.deletions.entry(spelling.into()).or_default();
        if !list.contains(&index) {
            list.push(index);
        }
    }
}

/// Takes the vowels out of a word, but for the first letter; `single` makes one of double letters too.
fn without_vowels(word: &[u8], single: bool) -> Vec<u8> {
    let mut bare: Vec<u8> = Vec::with_capacity(word.len());
    for (i, c) in word.iter().enumerate() {
        let double = single && bare.last() == Some(c);
        if (i == 0 || !is_vowel(*c)) && !double {
            bare.push(*c);
        }
    }
    bare
}

fn deletions(word: &[u8]) -> impl Iterator<Item = Vec<u8>> + '_ {
    (0..word.len()).map(move |i| {
        let mut left = Vec::with_capacity(word.len());
        left.extend_from_slice(&word[..i]);
        left.extend_from_slice(&word[i + 1..]);
        left
    })
}

/// Weighs the one edit that makes `meant` into `typed`; none if it takes more than one.
fn edit_cost(typed: &[u8], meant: &[u8]) -> Option<f32> {
    let head = typed.iter().zip(meant).take_while(|(a, b)| a == b).count();
    let tail = typed[head..]
        .iter()
        .rev()
        .zip(meant[head..].iter().rev())
        .take_while(|(a, b)| a == b)
        .count();
    let (t, m) = (
        &typed[head..typed.len() - tail],
        &meant[head..meant.len() - tail],
    );
    let first = if head == 0 { 0.4 } else { 0.0 }; // people rarely miss the first letter
    let cost = match (t, m) {
        ([], []) => 0.0,
        ([a], [b]) => {
            if neighbours(*a, *b) {
                0.8
            } else {
                1.1
            }
        }
        ([a, b], [c, d]) if a == d && b == c => 0.7,
        ([a], []) => {
            // a letter too many: doubled, or a neighbour struck along
            let beside = [head.checked_sub(1), Some(head)]
                .into_iter()
                .flatten()
                .filter_map(|i| meant.get(i))
                .any(|near| near == a || neighbours(*near, *a));
            if beside { 0.7 } else { 1.1 }
        }
        ([], [b]) => {
            let double = head > 0 && meant[head - 1] == *b || meant.get(head + 1) == Some(b);
            if double {
                0.6
            } else if is_vowel(*b) {
                0.8
            } else {
                0.9
            }
        }
        _ => return None,
    };
    Some(cost + first)
}

/// Returns the words that one wrong keystroke turns into `typed`: a neighbour key, a key left out, struck twice, or swapped
/// with the next. Only those that `is_word` knows.
pub(super) fn one_keystroke(typed: &str, is_word: impl Fn(&str) -> bool) -> Vec<String> {
    let typed = plain(typed);
    let mut found: Vec<String> = Vec::new();
    let letters = typed.as_bytes();
    if !letters.iter().all(u8::is_ascii_lowercase) || letters.len() > 24 {
        return found;
    }
    // one buffer for all of them: there are hundreds, and nearly none is a word
    let mut consider = |word: &[u8]| {
        let word = std::str::from_utf8(word).unwrap_or_default();
        if word != typed && is_word(word) && !found.iter().any(|f| f == word) {
            found.push(word.to_owned());
        }
    };
    let mut longer = vec![0; letters.len() + 1];
    let mut word = letters.to_vec();
    for at in 0..=letters.len() {
        longer[..at].copy_from_slice(&letters[..at]);
        longer[at + 1..].copy_from_slice(&letters[at..]);
        for c in b'a'..=b'z' {
            longer[at] = c;
            consider(&longer);
        }
        let Some(here) = letters.get(at).copied() else {
            continue;
        };
        for c in (b'a'..=b'z').filter(|c| neighbours(*c, here)) {
            word[at] = c;
            consider(&word);
        }
        word[at] = here;
        if letters.get(at + 1) == Some(&here) {
            let mut shorter = letters.to_vec();
            shorter.remove(at);
            consider(&shorter);
        }
        if at + 1 < letters.len() {
            word.swap(at, at + 1);
            consider(&word);
            word.swap(at, at + 1);
        }
    }
    found
}

fn is_vowel(c: u8) -> bool {
    matches!(c, b'a' | b'e' | b'i' | b'o' | b'u')
}

fn place(c: u8) -> Option<(i32, i32)> {
    ROWS.iter().enumerate().find_map(|(row, keys)| {
        keys.iter()
            .position(|key| *key == c)
            .map(|column| (row as i32, 2 * column as i32 + row as i32))
    })
}

fn neighbours(a: u8, b: u8) -> bool {
    match (place(a), place(b)) {
        (Some((ra, ca)), Some((rb, cb))) => (ra - rb).abs() <= 1 && (ca - cb).abs() <= 2,
        _ => false,
    }
}
