//! `words.toml`: words of the company's own, checked against what the reader knows and the fleet's names.

use std::collections::BTreeMap;

use super::given_twice;
use crate::fleet::model::Fleet;
use crate::fleet::section::Section;
use crate::fleet::sheet::{Sheet, Spot};
use crate::heard::Language;
use crate::words::{LONGEST, MOST_WORDS, NameOf, Reader, TaughtWord, TeachError, common_keywords};

pub(super) fn read(section: &mut Section<'_, '_>, fleet: &mut Fleet, sheet: &Sheet<'_>) {
    let sections = section.tables("word", "a word").unwrap_or_default();
    // compiling the vocabulary is not for nothing
    let reader = match sections.is_empty() {
        true => return,
        false => Reader::new(),
    };
    let mut lines: BTreeMap<String, usize> = BTreeMap::new();
    for mut section in sections {
        section.needs("say", "what crews say, as in say = [\"honey tank\"]");
        section.needs("means", "a keyword it is said for, as in means = \"waste\"");
        let means = section.text("means").unwrap_or_default();
        let place = section.place().to_owned();
        let mut wrong_keyword = false;
        for (say, spot) in section.texts("say") {
            let word = TaughtWord::new(say, means);
            let spotted = |field: &str, spot: Spot, expected: String, found: &str, hint| {
                let place = format!("{place}, {field}");
                let found = crate::fleet::problem::quoted(found);
                sheet.report(spot, place, expected, found, hint);
            };
            if let Some(first) = lines.get(&word.say) {
                let found = given_twice(say, *first);
                sheet.report(spot, format!("{place}, say"), "each word once", found, None);
                continue;
            }
            lines.insert(word.say.clone(), sheet.line(spot));
            if !section.has("means") {
                continue;
            }
            match reader.check_word(&word, fleet.names()) {
                Ok(()) => fleet.words.push(word),
                Err(error @ (TeachError::UnknownKeyword(_) | TeachError::NoSuchUse)) => {
                    // said once for all words of the entry
                    if !wrong_keyword {
                        let (expected, hint) = said(&error);
                        spotted("means", section.spot_of("means"), expected, means, hint);
                    }
                    wrong_keyword = true;
                }
                Err(error) => {
                    let (expected, hint) = said(&error);
                    spotted("say", spot, expected, say, hint);
                }
            }
        }
        section.finish();
    }
}

/// Says what was expected in place of a word, and how to mend it.
fn said(error: &TeachError) -> (String, Option<String>) {
    let quoted = |words: &[String]| {
        let words: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
        words.join(", ")
    };
    let (expected, hint) = match error {
        TeachError::NoWord => (
            format!("a word or up to {MOST_WORDS}, of letters, at most {LONGEST} characters"),
            None,
        ),
        TeachError::UnknownKeyword(near) if near.is_empty() => {
            let common = common_keywords(Language::En)
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>();
            (
                "a keyword that hosebib knows".into(),
                Some(format!("known are, among others, {}", quoted(&common))),
            )
        }
        TeachError::UnknownKeyword(near) => (
            "a keyword that hosebib knows".into(),
            Some(format!("did you mean {}?", quoted(near))),
        ),
        TeachError::NoSuchUse => (
            "a thing, a state, an event, a fault or a unit of measure".into(),
            Some("numbers, yes and no, and orders to the bot have no other words".into()),
        ),
        TeachError::Number => ("a word that is no number".into(), None),
        TeachError::Ordinary => (
            "a word that says nothing in other messages".into(),
            Some("it is an ordinary word: add a word that only this company uses".into()),
        ),
        TeachError::Same => (
            "a word that is not known yet".into(),
            Some("it means that already: leave it out".into()),
        ),
        TeachError::Known(keyword) => (
            "a word that has no meaning yet".into(),
            Some(format!("it already means `{keyword}`")),
        ),
        TeachError::SlipOf(keyword) => (
            "a word that is no slip of the thumb for another".into(),
            Some(format!("it is too near `{keyword}`")),
        ),
        TeachError::Name(of) => (
            "a word that is no name".into(),
            Some(format!(
                "it is the name of a {}",
                match of {
                    NameOf::Trailer => "trailer",
                    NameOf::Site => "site",
                    NameOf::Person => "person",
                }
            )),
        ),
    };
    (expected, hint)
}
