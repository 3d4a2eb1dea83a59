//! A bare level after the bot asked for one: "3/4" is then of the trailer and the tank that it asked about.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::Desk;
use super::super::phrases::{Phrases, plain};
use super::super::settle;
use super::meaning::Texted;
use crate::dialogue::{Talk, Way};
use crate::fleet::Fleet;
use crate::heard::{Entry, UnitName};

/// An answer is taken for one for this long.
const LASTS: TimeDelta = TimeDelta::minutes(45);

/// Returns the report that a bare level stands for; none where nobody was asked, or it says more than a level.
pub(super) fn level(message: &Texted<'_>) -> Option<String> {
    let Texted {
        desk,
        fleet,
        talk,
        heard,
        who,
        text,
        at,
    } = *message;
    let reports = heard.entries.iter().any(|entry| !Entry::is_empty(entry));
    if let Some(told) = of_the_step(message).filter(|_| !reports) {
        return Some(told);
    }
    let busy = talk.question_at(at).is_some() || !talk.checks.is_empty() || talk.round.is_some();
    if reports
        || busy
        || heard.ask.is_some()
        || heard.command.is_some()
        || !is_level(desk.phrases, text)
    {
        return None;
    }
    let asked = desk.book.ahead().asked_to_be_read();
    let mut theirs = asked.filter(|(unit, asked)| {
        let lately = *asked <= at && at - *asked <= LASTS;
        lately && was_asked(desk, fleet, unit, who, at)
    });
    let Some((unit, _)) = theirs.next() else {
        let (unit, tank) = asked_by_somebody(desk.phrases, fleet, talk, at)?;
        return Some(format!("{unit}: {tank} {text}"));
    };
    theirs
        .next()
        .is_none()
        .then(|| format!("{unit}: waste {text}"))
}

/// "No, queda un cuarto" where leaving asks whether a tank is empty: the level is that tank's.
fn of_the_step(message: &Texted<'_>) -> Option<String> {
    let Texted {
        desk,
        talk,
        heard,
        text,
        at,
        ..
    } = *message;
    let round = talk.round.as_ref()?;
    let asked_since = |asked: DateTime<Utc>| asked >= round.asked;
    let question = talk.question_at(at);
    let rival = question.is_some_and(|question| asked_since(question.asked))
        || talk
            .checks
            .last()
            .is_some_and(|check| asked_since(check.asked));
    let fresh = at >= round.asked && at - round.asked <= LASTS;
    let orders = heard.ask.is_some() || heard.command.is_some() || !heard.named.is_empty();
    if round.way != Way::Leaving || rival || !fresh || orders {
        return None;
    }
    let tank = match round.step.as_str() {
        step @ ("waste" | "fresh") => step,
        _ => return None,
    };
    let left = |word: &&str| !desk.phrases.is("level", "left", &plain(word));
    let words: Vec<&str> = text.split_whitespace().filter(left).collect();
    let level = words.join(" ");
    let is_more = words.len() < text.split_whitespace().count();
    (is_more && is_level(desk.phrases, &level)).then(|| format!("{}: {tank} {level}", round.unit))
}

/// Returns the trailer and the tank of which a level was asked in words that were passed on: "how full is 12".
pub(in crate::desk) fn asked_by_somebody(
    phrases: &Phrases,
    fleet: &Fleet,
    talk: &Talk,
    at: DateTime<Utc>,
) -> Option<(UnitName, &'static str)> {
    let passed = talk.passed.as_ref()?;
    let lately = passed.at <= at && at - passed.at <= LASTS;
    let asks = phrases.holds("level", "asks", &passed.words);
    let fresh = phrases.holds("asked-value", "fresh", &passed.words);
    let words = passed
        .words
        .split(|c: char| !(c.is_alphanumeric() || c == '-'));
    let mut units = words.filter_map(|word| settle::known(fleet, &UnitName::new(word)));
    let unit = units.next().filter(|_| lately && asks)?.clone();
    let alone = units.all(|other| *other == unit);
    alone.then_some((unit, if fresh { "fresh" } else { "waste" }))
}

/// Tells whether somebody is the one who is asked about a trailer: who wrote of it last, or is on its job.
fn was_asked(desk: &Desk, fleet: &Fleet, unit: &UnitName, who: &str, at: DateTime<Utc>) -> bool {
    let kept = desk.book.unit(unit);
    let last = kept.and_then(|kept| kept.state().last_word.as_ref());
    let of_the_job = || {
        let job = fleet.job_of(unit, at, None);
        job.is_some_and(|job| job.crew.iter().any(|crew| crew == who))
    };
    last.is_some_and(|word| word.from == who) || of_the_job()
}

/// Tells whether a text is a level and nothing else: "3/4", "about 60%", "half", "la mitad".
pub(in crate::desk) fn is_level(phrases: &Phrases, text: &str) -> bool {
    let level = |word: &str| {
        let fraction = word.split_once('/').is_some_and(|(top, bottom)| {
            let digit = |part: &str| part.len() == 1 && part.bytes().all(|b| b.is_ascii_digit());
            digit(top) && digit(bottom)
        });
        let percent = word
            .strip_suffix('%')
            .is_some_and(|digits| digits.parse::<f64>().is_ok());
        fraction || percent || phrases.is("level", "words", word)
    };
    let words: Vec<&str> = text
        .split_whitespace()
        .map(|word| word.trim_end_matches(['.', ',', '!']))
        .collect();
    let levels = words.iter().filter(|word| level(word)).count();
    let known = |word: &&str| level(word) || phrases.is("level", "beside", word);
    levels == 1 && words.len() <= 5 && words.iter().all(known)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_level_is_told_alone_or_it_is_none() {
        for text in [
            "3/4",
            "its at 3/4",
            "60%",
            "half",
            "está a la mitad",
            "about 7/8 now",
        ] {
            assert!(is_level(Phrases::built_in(), text), "{text}");
        }
        for text in [
            "",
            "fresh 3/4",
            "3/4 and 1/2",
            "52",
            "12",
            "full of guests",
            "3/4 hose",
        ] {
            assert!(!is_level(Phrases::built_in(), text), "{text}");
        }
    }
}
