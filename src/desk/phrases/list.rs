//! Lists of phrases, and texts held against them: a list is found by the words of the text, not read through.

use rustc_hash::FxHashMap;
use serde::Deserialize;

/// Phrases, folded as [`super::plain`] folds a text.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(from = "Vec<String>")]
pub(in crate::desk) struct PhraseList {
    phrases: Vec<String>,
    /// Where the phrases stand that begin with a word.
    by_first: FxHashMap<Box<str>, Vec<usize>>,
    /// Where those stand whose first word may go on, "burn*".
    stems: Vec<usize>,
    /// How many words the longest has.
    longest: usize,
}

impl From<Vec<String>> for PhraseList {
    fn from(phrases: Vec<String>) -> Self {
        let mut list = PhraseList::default();
        for (at, phrase) in phrases.iter().enumerate() {
            let first = first_word(phrase);
            match first.ends_with('*') {
                true => list.stems.push(at),
                false => list.by_first.entry(first.into()).or_default().push(at),
            }
            list.longest = list.longest.max(phrase.split(' ').count());
        }
        list.phrases = phrases;
        list
    }
}

impl From<PhraseList> for Vec<String> {
    fn from(list: PhraseList) -> Self {
        list.phrases
    }
}

impl PhraseList {
    /// Iterates over the phrases, in the order of the file.
    pub(in crate::desk) fn iter(&self) -> impl Iterator<Item = &str> {
        self.phrases.iter().map(String::as_str)
    }

    /// Tells whether a folded text is one of the phrases.
    pub(in crate::desk) fn has(&self, folded: &str) -> bool {
        self.of(first_word(folded)).any(|phrase| phrase == folded)
    }

    /// Tells whether a folded text opens with one of the phrases, as whole words.
    pub(in crate::desk) fn opens(&self, folded: &str) -> bool {
        let mut phrases = self.of(first_word(folded));
        phrases.any(|phrase| {
            let rest = folded.strip_prefix(phrase);
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
        })
    }

    /// Returns how many words the longest phrase has.
    pub(super) fn longest(&self) -> usize {
        self.longest
    }

    /// Returns how many words the longest phrase has that begins with a word; none where none does.
    pub(super) fn longest_from(&self, first: &str) -> Option<usize> {
        self.of(first).map(|phrase| phrase.split(' ').count()).max()
    }

    /// Iterates over the phrases that begin with a word of a folded text, in the order of the file.
    pub(super) fn beginning_in(&self, folded: &str) -> impl Iterator<Item = &str> {
        let words = folded.split(' ');
        let places = words.filter_map(|word| self.by_first.get(word));
        let mut places: Vec<usize> = places.flatten().copied().collect();
        places.sort_unstable();
        places.dedup();
        places.into_iter().map(|at| self.phrases[at].as_str())
    }

    /// Iterates over the phrases that begin with a word.
    fn of(&self, first: &str) -> impl Iterator<Item = &str> {
        let places = self.by_first.get(first).into_iter().flatten();
        places.map(|at| self.phrases[*at].as_str())
    }

    /// Iterates over the phrases whose first word may go on.
    fn stems(&self) -> impl Iterator<Item = &str> {
        self.stems.iter().map(|at| self.phrases[*at].as_str())
    }
}

/// The words of a folded text, to be searched for many phrases.
pub(in crate::desk) struct Words<'t> {
    /// Each word, and the text from there on.
    words: Vec<(&'t str, &'t str)>,
}

impl<'t> Words<'t> {
    pub(in crate::desk) fn of(folded: &'t str) -> Self {
        let starts = std::iter::once(0).chain(folded.match_indices(' ').map(|(at, _)| at + 1));
        let from = |at: usize| (first_word(&folded[at..]), &folded[at..]);
        Words {
            words: starts.map(from).collect(),
        }
    }

    /// Tells whether the text holds a phrase as whole words.
    pub(in crate::desk) fn hold(&self, phrase: &str) -> bool {
        self.words.iter().any(|(_, rest)| begins(rest, phrase))
    }

    /// Tells whether the text holds one of these phrases as whole words; a `*` at a phrase's end lets its last word go on.
    pub(in crate::desk) fn hold_any(&self, list: &PhraseList) -> bool {
        self.words.iter().any(|(first, rest)| {
            let mut known = list.of(first).chain(list.stems());
            known.any(|phrase| begins(rest, phrase))
        })
    }
}

/// Tells whether a folded text begins with a phrase.
fn begins(text: &str, phrase: &str) -> bool {
    let (phrase, goes_on) = match phrase.strip_suffix('*') {
        Some(stem) => (stem, true),
        None => (phrase, false),
    };
    let rest = text.strip_prefix(phrase).filter(|_| !phrase.is_empty());
    rest.is_some_and(|rest| goes_on || rest.is_empty() || rest.starts_with(' '))
}

fn first_word(text: &str) -> &str {
    text.split_once(' ').map_or(text, |(first, _)| first)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_phrase_is_held_as_whole_words() {
        let holds = |text: &str, phrase: &str| {
            let list = PhraseList::from(vec!["another phrase".to_owned(), phrase.to_owned()]);
            Words::of(text).hold_any(&list)
        };
        assert!(holds("is it on fire", "on"));
        assert!(!holds("is it gone", "on"));
        assert!(holds("is it on fire", "on fire"));
        assert!(!holds("is it on fires", "on fire"));
        assert!(holds("the hose is freezing", "freez*"));
        assert!(!holds("the antifreeze", "freez*"));
        assert!(holds("only chocked drivers side", "chocked driver*"));
        assert!(!holds("", "on") && !holds("on", ""));
    }

    #[test]
    fn a_list_is_asked_for_whole_texts_and_openings() {
        let list = PhraseList::from(vec!["no".to_owned(), "no wait".to_owned()]);
        assert!(list.has("no wait") && !list.has("wait") && !list.has("no wait now"));
        assert!(list.opens("no wait now") && list.opens("no") && !list.opens("nope"));
        assert_eq!(list.longest(), 2);
        assert_eq!(list.longest_from("no"), Some(2));
        assert_eq!(list.longest_from("wait"), None);
    }
}
