//! Set phrases of talking with the bot (`grammar/talk.toml`): how a correction opens, how a choice is made, how people say
//! that the truck is not coming.

mod list;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use rustc_hash::FxHashMap;
use serde::Deserialize;
use unicode_normalization::char::{decompose_canonical, is_combining_mark};

pub(super) use self::list::{PhraseList, Words};

const TALK: &str = include_str!("../../grammar/talk.toml");

/// The phrases, by topic and list.
#[derive(Debug, Deserialize)]
#[serde(try_from = "BTreeMap<String, BTreeMap<String, PhraseList>>")]
pub(super) struct Phrases(FxHashMap<String, FxHashMap<String, PhraseList>>);

/// Lists that are held against a text as it was written, and not folded: signs, and halves of the day with their dots.
const AS_WRITTEN: &[(&str, &str)] = &[
    ("alone", "thumbs"),
    ("clock", "first-half"),
    ("clock", "second-half"),
];

impl TryFrom<BTreeMap<String, BTreeMap<String, PhraseList>>> for Phrases {
    type Error = String;

    fn try_from(topics: BTreeMap<String, BTreeMap<String, PhraseList>>) -> Result<Self, String> {
        for (topic, lists) in &topics {
            for (name, list) in lists {
                let folded = !AS_WRITTEN.contains(&(topic, name));
                let fold = |phrase: &str| match folded {
                    true => plain(phrase.strip_suffix('*').unwrap_or(phrase)),
                    false => phrase.to_owned(),
                };
                faultless(list.iter(), fold).map_err(|why| format!("[{topic}] {name}: {why}"))?;
            }
        }
        let topics = topics.into_iter();
        let topics = topics.map(|(topic, lists)| (topic, lists.into_iter().collect()));
        Ok(Phrases(topics.collect()))
    }
}

/// Refuses a list with a phrase that stands in it twice, or that no folded text can hold since folding changes it.
pub(super) fn faultless<'p>(
    phrases: impl Iterator<Item = &'p str>,
    fold: impl Fn(&str) -> String,
) -> Result<(), String> {
    let mut seen = BTreeSet::new();
    for phrase in phrases {
        let folded = fold(phrase);
        let fits = phrase.strip_suffix('*').unwrap_or(phrase) == folded;
        if !fits {
            return Err(format!(
                "{phrase:?} is never met: folding makes it {folded:?}"
            ));
        }
        if !seen.insert(phrase) {
            return Err(format!("{phrase:?} stands twice"));
        }
    }
    Ok(())
}

impl Phrases {
    /// Returns those of the built-in file, which is parsed once.
    pub(super) fn built_in() -> &'static Phrases {
        static BUILT_IN: LazyLock<Phrases> = LazyLock::new(|| {
            toml::from_str(TALK).expect("the built-in phrases are read by a test")
        });
        &BUILT_IN
    }

    /// Tells whether a text is one of a list's phrases and nothing else.
    pub(super) fn is(&self, topic: &str, list: &str, text: &str) -> bool {
        self.list(topic, list)
            .is_some_and(|list| list.has(&plain(text)))
    }

    /// Tells whether a text holds one of a list's phrases as whole words.
    pub(super) fn holds(&self, topic: &str, list: &str, text: &str) -> bool {
        let text = plain(text);
        let list = self.list(topic, list);
        list.is_some_and(|list| Words::of(&text).hold_any(list))
    }

    /// Tells whether a text holds one of a list's signs as it was written, such as a raised thumb.
    pub(super) fn shows(&self, topic: &str, list: &str, text: &str) -> bool {
        self.each(topic, list).any(|sign| text.contains(sign))
    }

    /// Tells whether a folded text opens with one of a list's phrases.
    pub(super) fn opens(&self, topic: &str, list: &str, folded: &str) -> bool {
        self.list(topic, list)
            .is_some_and(|list| list.opens(folded))
    }

    /// Returns a text, folded, without a list's phrases.
    pub(super) fn without(&self, topic: &str, list: &str, text: &str) -> String {
        let folded = plain(text);
        let Some(list) = self.list(topic, list) else {
            return folded;
        };
        let mut text = format!(" {folded} ");
        for phrase in list.beginning_in(&folded) {
            text = text.replace(&format!(" {phrase} "), " ");
        }
        text.trim().to_owned()
    }

    /// Takes the longest phrase of a list off the front of a text; none where it begins with none of them.
    pub(super) fn after<'t>(&self, topic: &str, list: &str, text: &'t str) -> Option<&'t str> {
        let list = self.list(topic, list)?;
        // hundreds of lists are asked in a turn, and most have no phrase that begins so
        let longest = list.longest_from(&plain(cut(text, 1)?.0))?;
        (1..=longest).rev().find_map(|count| {
            let (head, rest) = cut(text, count)?;
            list.has(&plain(head)).then_some(rest)
        })
    }

    /// Parts a text at the first of a list's phrases that has words before it.
    pub(super) fn parted<'t>(
        &self,
        topic: &str,
        list: &str,
        text: &'t str,
    ) -> Option<(&'t str, &'t str)> {
        let words = plain(text).split(' ').count();
        (1..words).find_map(|at| {
            let (head, rest) = cut(text, at)?;
            Some((head, self.after(topic, list, rest)?))
        })
    }

    /// Tells whether a text ends with one of a list's phrases.
    pub(super) fn ends(&self, topic: &str, list: &str, text: &str) -> bool {
        let text = plain(text);
        self.each(topic, list).any(|phrase| {
            let head = text.strip_suffix(phrase);
            head.is_some_and(|head| head.is_empty() || head.ends_with(' '))
        })
    }

    /// Tells whether a text says of a name that it is not that one: "not 23", "no la 23".
    pub(super) fn denies(&self, text: &str, name: &str) -> bool {
        let folded = plain(text);
        let words: Vec<&str> = folded.split(' ').collect();
        let name = plain(name);
        let no = |word: &str| self.is("mend", "not", word);
        words.iter().enumerate().any(|(at, word)| {
            let before = &words[at.saturating_sub(2)..at];
            let directly = before.last().is_some_and(|word| no(word));
            let over_an_article =
                before.len() == 2 && no(before[0]) && self.is("mend", "trailer", before[1]);
            *word == name && (directly || over_an_article)
        })
    }

    /// Returns what follows the first of a list's phrases, wherever it stands.
    pub(super) fn following<'t>(&self, topic: &str, list: &str, text: &'t str) -> Option<&'t str> {
        let words = plain(text).split(' ').count();
        (0..words).find_map(|at| {
            let rest = match at {
                0 => text,
                at => cut(text, at)?.1,
            };
            self.after(topic, list, rest)
        })
    }

    /// Takes the longest phrase of a list off the end of a text; none where it ends with none of them, or is no more.
    pub(super) fn before<'t>(&self, topic: &str, list: &str, text: &'t str) -> Option<&'t str> {
        let words = plain(text).split(' ').count();
        let list = self.list(topic, list)?;
        (1..=list.longest()).rev().find_map(|count| {
            let (head, tail) = cut(text, words.checked_sub(count).filter(|left| *left > 0)?)?;
            let known = list.has(&plain(tail));
            known.then(|| head.trim_end_matches([' ', ',', '.', ';']))
        })
    }

    /// Iterates over the phrases of a list.
    pub(super) fn each(&self, topic: &str, list: &str) -> impl Iterator<Item = &str> {
        self.list(topic, list)
            .into_iter()
            .flat_map(PhraseList::iter)
    }

    fn list(&self, topic: &str, list: &str) -> Option<&PhraseList> {
        self.0.get(topic)?.get(list)
    }
}

/// Cuts a text behind its first `count` words, and what separates them from the rest.
fn cut(text: &str, count: usize) -> Option<(&str, &str)> {
    let separates = |c: char| !(c.is_alphanumeric() || c == '\'' || c == '’' || is_mark(c));
    let mut words = 0;
    let mut inside = false;
    for (at, c) in text.char_indices() {
        if separates(c) {
            inside = false;
            if words == count {
                return Some((&text[..at], trim(&text[at..])));
            }
        } else if !inside {
            inside = true;
            words += 1;
        }
    }
    (words == count).then_some((text, ""))
}

/// Takes spaces and marks that join clauses off the front of a text; a sign before a number stays.
fn trim(text: &str) -> &str {
    text.trim_start_matches([' ', ',', ':', ';', '!', '…'])
        .trim_start_matches("...")
        .trim_start_matches("- ")
        .trim_start_matches("— ")
        .trim_start_matches(". ")
        .trim()
}

/// Tells whether a text holds the mark of a question, wherever it stands: "is it a false alarm? i still smell it".
pub(super) fn is_marked(text: &str) -> bool {
    text.contains(['?', '¿'])
}

/// Tells whether a character is an accent that is written apart from its letter. Most are plain, which needs no tables.
fn is_mark(c: char) -> bool {
    !c.is_ascii() && is_combining_mark(c)
}

/// Folds a text to lower-case words without accents, apostrophes and signs.
pub(super) fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut parted = false;
    let mut take = |c: char| {
        if is_mark(c) || matches!(c, '\'' | '’') {
            return;
        }
        if !c.is_alphanumeric() {
            parted = true;
            return;
        }
        if parted && !out.is_empty() {
            out.push(' ');
        }
        parted = false;
        out.push(c);
    };
    // every phrase list folds the text anew: most of it is plain letters, which need no tables
    for c in text.chars() {
        if c.is_ascii() {
            take(c.to_ascii_lowercase());
        } else {
            for lower in c.to_lowercase() {
                decompose_canonical(lower, &mut take);
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_phrase_that_is_never_met_or_stands_twice_is_refused() {
        let read = |list: &str| toml::from_str::<Phrases>(&format!("[alone]\n{list}")).is_ok();
        assert!(read(r#"fine = ["10 4", "freez*"]"#) && read(r#"thumbs = ["👍"]"#));
        for list in [
            r#"fine = ["10-4"]"#,
            r#"fine = ["Ok"]"#,
            r#"fine = ["im  ok"]"#,
            r#"fine = ["ok", "yes", "ok"]"#,
            r#"fine = ["👍"]"#,
        ] {
            assert!(!read(list), "{list}");
        }
    }

    #[test]
    fn what_follows_an_opening_keeps_its_signs() {
        let phrases = Phrases::built_in();
        for (text, rest) in [
            ("oops 52", Some("52")),
            ("Sorry, -5", Some("-5")),
            ("no wait... 3/4", Some("3/4")),
            ("Perdón, la 10", Some("la 10")),
            ("sorryish", None),
            ("I meant", Some("")),
        ] {
            assert_eq!(phrases.after("mend", "opens", text), rest, "{text}");
        }
    }

    #[test]
    fn what_stands_before_a_closing_keeps_its_signs() {
        let phrases = Phrases::built_in();
        for (text, rest) in [
            ("119, I mean", Some("119")),
            ("-5 perdón", Some("-5")),
            ("3/4 digo", Some("3/4")),
            ("i mean", None),
            ("119", None),
        ] {
            assert_eq!(phrases.before("mend", "closes", text), rest, "{text}");
        }
    }

    #[test]
    fn a_phrase_is_found_as_whole_words_whatever_its_accents() {
        let phrases = Phrases::built_in();
        assert!(phrases.holds("truck", "off", "el camión ya no viene hoy"));
        assert!(!phrases.holds("truck", "off", "cancelation fees"));
        assert!(
            phrases.ends("mend", "closes", "48, perdón")
                && !phrases.ends("mend", "closes", "xdigo")
        );
        assert_eq!(
            phrases.parted("mend", "between", "12, es la 14"),
            Some(("12", "la 14"))
        );
        assert_eq!(phrases.parted("mend", "between", "es la 14"), None);
        assert!(phrases.is("choice", "both", "Las dos."));
        assert!(!phrases.is("choice", "both", "both are fine"));
    }
}
