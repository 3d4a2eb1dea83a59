//! Which facts of an incident a message tells, whatever was asked: by the words it opens with, and by what it speaks of.

use crate::desk::phrases::{Phrases, plain};
use crate::dialogue::Fact;

/// The facts with the list of words by which each is told.
const SPEAKS_OF: &[(Fact, &str)] = &[
    (Fact::Photos, "of-photos"),
    (Fact::Witnesses, "of-witnesses"),
    (Fact::Injured, "of-injured"),
    (Fact::Told, "of-told"),
];

/// The facts with the words that head each: "where: ramp side".
const HEADS: &[(Fact, &str)] = &[
    (Fact::What, "head-what"),
    (Fact::When, "head-when"),
    (Fact::Where, "head-where"),
    (Fact::Who, "head-who"),
    (Fact::Injured, "head-injured"),
    (Fact::Told, "head-told"),
    (Fact::Witnesses, "head-witnesses"),
    (Fact::Photos, "head-photos"),
];

/// Parts what a message tells into facts, each in its own words; what no word places goes with `asked`, or with the part
/// before it.
pub(super) fn parts(phrases: &Phrases, text: &str, asked: Fact) -> Vec<(Fact, String)> {
    let mut told: Vec<(Fact, String)> = Vec::new();
    for piece in pieces(text) {
        let own = headed(phrases, piece).or_else(|| spoken_of(phrases, piece, asked));
        let last = told.last().map(|(fact, _)| *fact);
        let fact = own.or(last).unwrap_or(asked);
        match told.iter_mut().find(|(other, _)| *other == fact) {
            Some((_, words)) => {
                words.push_str("; ");
                words.push_str(piece);
            }
            None => told.push((fact, piece.to_owned())),
        }
    }
    told
}

/// Tells whether a message opens with the head of a fact, so that it is one whatever else waits: "who: mrs kettle, 60s".
pub(super) fn is_headed(phrases: &Phrases, text: &str) -> bool {
    let Some((head, words)) = text.split_once(':') else {
        return false;
    };
    let is_head = |(_, list): &(Fact, &str)| phrases.is("incident", list, head.trim());
    // "18:40" is a time
    HEADS.iter().any(is_head) && !words.trim().is_empty()
}

/// Cuts a message at the ends of its sentences and where a new head stands.
fn pieces(text: &str) -> Vec<&str> {
    let mut pieces = Vec::new();
    for line in text.split(['\n', ';']) {
        // "Mr. Pell" and "18.40" end no sentence
        let mut from = 0;
        for (at, _) in line.match_indices(". ") {
            let word = line[..at].rsplit(' ').next().unwrap_or_default();
            if word.chars().count() > 3 || word.ends_with(|c: char| c.is_ascii_digit()) {
                pieces.push(&line[from..=at]);
                from = at + 1;
            }
        }
        pieces.push(&line[from..]);
    }
    let trimmed = pieces.into_iter().map(str::trim);
    trimmed.filter(|piece| !plain(piece).is_empty()).collect()
}

/// Reads the head of a piece: "where: ...", "witnesses Hollis and a bridesmaid".
fn headed(phrases: &Phrases, piece: &str) -> Option<Fact> {
    let head = piece.split_once(':').map(|(head, _)| head.trim());
    let is_head = |list: &str| head.is_some_and(|head| phrases.is("incident", list, head));
    HEADS
        .iter()
        .find(|(_, list)| is_head(list))
        .map(|(fact, _)| *fact)
}

/// Finds the one fact that a piece speaks of; none where it may be of what was asked.
fn spoken_of(phrases: &Phrases, piece: &str, asked: Fact) -> Option<Fact> {
    let speaks = SPEAKS_OF
        .iter()
        .filter(|(_, list)| phrases.holds("incident", list, piece))
        .map(|(fact, _)| *fact);
    let found: Vec<Fact> = speaks.collect();
    match found.as_slice() {
        _ if found.contains(&asked) => Some(asked),
        // what happened tells who was hurt, too
        [Fact::Injured] if asked == Fact::What => None,
        [fact, ..] => Some(*fact),
        [] => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn facts_are_told_in_any_order_and_several_at_once() {
        let phrases = Phrases::built_in();
        for (text, asked, wanted) in [
            ("bottom step, B side", Fact::Where, vec![Fact::Where]),
            (
                "ramp side steps, room B; witnesses Hollis and a bridesmaid",
                Fact::Where,
                vec![Fact::Where, Fact::Witnesses],
            ),
            (
                "where: ramp side. who: mrs kettle. told: the bride",
                Fact::Injured,
                vec![Fact::Where, Fact::Who, Fact::Told],
            ),
            ("broken wrist", Fact::Where, vec![Fact::Injured]),
            ("told the bride", Fact::Injured, vec![Fact::Told]),
            ("no photos", Fact::Witnesses, vec![Fact::Photos]),
            ("Rue has 3 photos", Fact::Photos, vec![Fact::Photos]),
            ("A guest, Mr. Pell, about 60", Fact::Who, vec![Fact::Who]),
            ("client told 18:55", Fact::Told, vec![Fact::Told]),
            ("se quebró la muñeca", Fact::Who, vec![Fact::Injured]),
            ("avisamos a la novia", Fact::Where, vec![Fact::Told]),
            ("she fell and broke her wrist", Fact::What, vec![Fact::What]),
        ] {
            let told: Vec<Fact> = parts(phrases, text, asked)
                .iter()
                .map(|(f, _)| *f)
                .collect();
            assert_eq!(told, wanted, "{text}");
        }
    }

    #[test]
    fn a_head_makes_a_fact_of_a_message_and_a_time_does_not() {
        let phrases = Phrases::built_in();
        for (text, wanted) in [
            ("who: mrs kettle, 60s", true),
            ("told: the bride and the barn office", true),
            ("dónde: en la rampa", true),
            ("12: pressure 50", false),
            ("18:40", false),
            ("who:", false),
        ] {
            assert_eq!(is_headed(phrases, text), wanted, "{text}");
        }
    }
}
