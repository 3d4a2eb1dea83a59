//! What a message says as an answer to the step of a guided check.

use std::collections::BTreeMap;

use serde::Deserialize;
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use crate::dialogue::Check;
use crate::heard::{Entry, Fault, Heard, ReadingKey, ShortAnswer};
use crate::rules::{Asks, Sought, Step};

const ANSWERS: &str = include_str!("../../../grammar/walk/answers.toml");
/// A longer message is a report or a story, and no answer.
const LONGEST: usize = 14;

/// An answer to a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::desk) enum Said {
    Yes,
    No,
    /// It was done; whether it helped was not said.
    Done,
    /// The fault is over.
    Mended,
    Skip,
    /// This and the next steps were done already.
    DidAll,
    Number(f64),
    /// To be asked again.
    Resume,
    /// "next": a skip right after the question, later the wish to go on.
    Next,
}

/// How crews answer, by step.
#[derive(Debug, Deserialize)]
#[serde(transparent)]
pub(in crate::desk) struct Answers(BTreeMap<String, BTreeMap<String, Vec<String>>>);

impl Default for Answers {
    fn default() -> Self {
        toml::from_str(ANSWERS).expect("the built-in answers are read by a test")
    }
}

impl Answers {
    /// Reads a message as an answer to a step; none where it is about something else.
    pub(in crate::desk) fn read(
        &self,
        heard: &Heard,
        text: &str,
        check: &Check,
        step: &Step,
        told: Option<&Entry>,
    ) -> Option<Said> {
        if told.is_some_and(|entry| entry.cleared.contains(&check.fault)) {
            return Some(Said::Mended);
        }
        // the Spanish word for a skip is also that of a breaker that trips
        let trips = matches!(check.fault, Fault::BreakerTrip | Fault::GfciTrip);
        if !trips && self.is_skip(text) {
            return Some(Said::Skip);
        }
        // a question is no answer: "can i turn it back on" must never close a check
        if heard.command.is_some() || heard.ask.is_some() || is_question(text) {
            return None;
        }
        if let Asks::For { what, .. } = step.asks
            && !check.mending
            && let Some(number) = number(heard, told, what)
        {
            return Some(Said::Number(number));
        }
        if told.is_some_and(|entry| step.by.is_some_and(|event| entry.events.contains(&event))) {
            return Some(Said::Done);
        }
        let text = plain(text);
        if text.split_whitespace().count() > LONGEST {
            return None;
        }
        let own = if check.mending {
            None
        } else {
            self.longest(step.key, &text, &["yes", "no"])
        };
        if let Some((list, _)) = own
            && !(list == "yes" && self.says_not(&text) && !step_says_not(self, step.key, &text))
        {
            return Some(if list == "yes" { Said::Yes } else { Said::No });
        }
        if let Some("resume") = self
            .longest("any", &text, &["resume"])
            .map(|(list, _)| list)
        {
            return Some(Said::Resume);
        }
        match heard.answer.as_ref().and_then(|answer| answer.word) {
            Some(ShortAnswer::DidAll) => return Some(Said::DidAll),
            Some(ShortAnswer::No) => return Some(Said::No),
            Some(ShortAnswer::Skip) if self.longest("any", &text, &["next"]).is_some() => {
                return Some(Said::Next);
            }
            Some(ShortAnswer::Skip) => return Some(Said::Skip),
            _ => {}
        }
        let general = ["all", "mended", "no", "yes", "done", "skip", "next"];
        let said = match self.longest("any", &text, &general) {
            Some(("all", _)) => Some(Said::DidAll),
            Some(("mended", _)) if self.says_not(&text) => Some(Said::No),
            Some(("mended", _)) => Some(Said::Mended),
            Some(("no", _)) => Some(Said::No),
            Some(("yes", _)) if self.says_not(&text) => Some(Said::No),
            Some(("yes", _)) => Some(Said::Yes),
            Some(("done", _)) if self.says_not(&text) => Some(Said::No),
            Some(("done", _)) => Some(Said::Done),
            Some(("skip", _)) => Some(Said::Skip),
            Some(("next", _)) => Some(Said::Next),
            _ => None,
        };
        // an ordinary report is an answer only by the step's own words
        let bare = told.is_none_or(|entry| entry.is_empty() || of_opening(entry));
        let word = heard.answer.as_ref().and_then(|answer| answer.word);
        said.filter(|_| bare).or(match word {
            Some(ShortAnswer::Yes | ShortAnswer::Ok) => Some(Said::Yes),
            _ => None,
        })
    }

    /// Reads a bare message as an answer to a step of setting up or leaving.
    pub(in crate::desk) fn bare(&self, heard: &Heard, text: &str) -> Option<Said> {
        let text = plain(text);
        if text.split_whitespace().count() > LONGEST {
            return None;
        }
        let answer = heard.answer.as_ref();
        match answer.and_then(|answer| answer.word) {
            Some(ShortAnswer::DidAll) => return Some(Said::DidAll),
            Some(ShortAnswer::No) => return Some(Said::No),
            _ => {}
        }
        let lists = [
            "resume", "all", "next", "no", "done", "yes", "skip", "mended",
        ];
        match self.longest("any", &text, &lists).map(|(list, _)| list) {
            Some("resume" | "next") => Some(Said::Resume),
            Some("all") => Some(Said::DidAll),
            Some("no") => Some(Said::No),
            Some("skip") => Some(Said::Skip),
            Some("done" | "yes" | "mended") if self.says_not(&text) => Some(Said::No),
            Some("done" | "yes" | "mended") => Some(Said::Yes),
            _ => answer.and_then(|answer| answer.number).map(Said::Number),
        }
    }

    /// Tells whether a message says that fire or police ordered something.
    pub(in crate::desk) fn tells_of_an_order(&self, text: &str) -> bool {
        let text = plain(text);
        let says = |list| self.longest("order", &text, &[list]).is_some();
        let orders = says("what") || says("tells") && says("moves");
        !self.says_not(&text) && says("who") && orders
    }

    /// Tells whether a message is a skip and nothing else.
    fn is_skip(&self, text: &str) -> bool {
        let text = plain(text);
        let skips = self.0.get("any").and_then(|any| any.get("skip"));
        skips.is_some_and(|skips| skips.contains(&text))
    }

    /// Tells whether a message asks to go on where a check stopped.
    pub(in crate::desk) fn resumes(&self, text: &str) -> bool {
        let text = plain(text);
        text.split_whitespace().count() <= 8
            && self.longest("any", &text, &["resume", "next"]).is_some()
    }

    /// Finds the longest phrase of the given lists in a text, and the list it is from; the earlier list where two tie.
    fn longest<'a>(&self, of: &str, text: &str, lists: &[&'a str]) -> Option<(&'a str, usize)> {
        let phrases = self.0.get(of)?;
        let padded = format!(" {text} ");
        let mut best: Option<(&str, usize)> = None;
        for list in lists {
            for phrase in phrases.get(*list).into_iter().flatten() {
                let words = phrase.split(' ').count();
                if padded.contains(&format!(" {phrase} "))
                    && best.is_none_or(|(_, longest)| words > longest)
                {
                    best = Some((list, words));
                }
            }
        }
        best
    }

    fn says_not(&self, text: &str) -> bool {
        self.longest("any", text, &["not"]).is_some()
    }
}

/// Tells whether the matched words of the step hold the negation themselves, as in "no answer".
fn step_says_not(answers: &Answers, step: &str, text: &str) -> bool {
    answers
        .longest(step, text, &["yes"])
        .is_some_and(|(_, words)| words > 2)
}

/// Tells whether an entry holds nothing but "open" or "closed", which beside a step mean a valve and not the trailer.
pub(super) fn of_opening(entry: &Entry) -> bool {
    use crate::heard::Event::{Closed, InService};
    entry.readings.is_empty()
        && entry.faults.is_empty()
        && entry.cleared.is_empty()
        && entry
            .events
            .iter()
            .all(|event| matches!(event, InService | Closed))
}

/// Finds the number that a step asks for: as it was reported, else as a bare answer.
fn number(heard: &Heard, told: Option<&Entry>, what: Sought) -> Option<f64> {
    let reported = told.and_then(|entry| match what {
        Sought::Reading(key) => entry.readings.value(key),
        Sought::Amps => entry.readings.amps.last().map(|current| current.amps),
        Sought::Plain => None,
    });
    if reported.is_some() {
        return reported;
    }
    if told.is_some_and(|entry| !entry.is_empty()) {
        return None;
    }
    let bare = heard.answer.as_ref()?.number?;
    match what {
        Sought::Reading(key) if is_level(key) && bare.fract() != 0.0 && bare < 1.0 => {
            Some(bare * 100.0)
        }
        Sought::Reading(key) => plausible(key).contains(&bare).then_some(bare),
        Sought::Amps => (0.0..=100.0).contains(&bare).then_some(bare),
        Sought::Plain => Some(bare),
    }
}

fn is_level(key: ReadingKey) -> bool {
    matches!(key, ReadingKey::WastePct | ReadingKey::FreshPct)
}

fn plausible(key: ReadingKey) -> std::ops::RangeInclusive<f64> {
    match key {
        ReadingKey::PressurePsi => 0.0..=300.0,
        ReadingKey::Volts => 0.0..=300.0,
        ReadingKey::BatteryV => 0.0..=20.0,
        ReadingKey::SlopePct => 0.0..=20.0,
        _ => 0.0..=100.0,
    }
}

/// Folds a text to lower-case words without accents, apostrophes and signs.
/// Folds a text: lower case, without accents and apostrophes, its words one blank apart.
pub(in crate::desk) fn plain(text: &str) -> String {
    let folded: String = text
        .to_lowercase()
        .nfd()
        .filter(|c| !is_combining_mark(*c) && !matches!(c, '\'' | '’'))
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .collect();
    folded.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Tells whether a text asks rather than tells: by its mark, or by the words it opens with.
fn is_question(text: &str) -> bool {
    const OPENINGS: &[&str] = &[
        "can i",
        "can we",
        "could i",
        "should i",
        "should we",
        "shall i",
        "may i",
        "is it ok",
        "is it safe",
        "is it fine",
        "do i",
        "do we",
        "what",
        "how",
        "when",
        "why",
        "which",
        "where",
        "who",
        "puedo",
        "podemos",
        "se puede",
        "debo",
        "es seguro",
        "esta bien si",
        "como",
        "cuando",
        "que hago",
        "por que",
        "cual",
        "donde",
    ];
    let text = plain(text);
    // "where were we" asks for the step itself
    let asks_for_the_step = [
        "where were we",
        "where was i",
        "where did we stop",
        "what was next",
        "donde ibamos",
    ]
    .iter()
    .any(|phrase| text.contains(phrase));
    let opens = |opening: &&str| {
        text.strip_prefix(*opening)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    !asks_for_the_step && (text.ends_with('?') || OPENINGS.iter().any(opens))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::steps;

    fn step(key: &str) -> Step {
        let all = Fault::ALL.iter().flat_map(|fault| steps(*fault));
        *all.into_iter()
            .find(|step| step.key == key)
            .expect("a step")
    }

    fn said(key: &str, text: &str) -> Option<Said> {
        let check = Check {
            unit: crate::heard::UnitName::new("12"),
            fault: Fault::NoLights,
            steps_of: Fault::NoLights,
            step: 0,
            mending: false,
            resets: 0,
            asked: chrono::DateTime::UNIX_EPOCH,
            waits: false,
        };
        let heard = crate::words::Reader::new().hear(text, crate::quantity::TemperatureScale::F);
        let told = heard.entries.first();
        Answers::default().read(&heard, text, &check, &step(key), told)
    }

    #[test]
    fn a_step_is_answered_in_own_words() {
        assert_eq!(
            said("step-other-room", "both rooms are dark"),
            Some(Said::No)
        );
        assert_eq!(
            said("step-other-room", "yep other room is fine"),
            Some(Said::Yes)
        );
        assert_eq!(said("step-supply-open", "it was shut"), Some(Said::No));
        assert_eq!(said("step-clean-water", "foul, it stinks"), Some(Said::No));
        assert_eq!(said("step-trips-at-once", "right away"), Some(Said::Yes));
    }

    #[test]
    fn nobody_hurt_is_not_a_person_hurt() {
        assert_eq!(said("step-person-hurt", "nobody is hurt"), Some(Said::No));
        assert_eq!(said("step-person-hurt", "no one hurt"), Some(Said::No));
        assert_eq!(
            said("step-person-hurt", "yes, Juno is dizzy"),
            Some(Said::Yes)
        );
    }

    #[test]
    fn what_is_not_fixed_is_not_mended() {
        assert_eq!(said("step-motion-switch", "works now"), Some(Said::Mended));
        assert_eq!(
            said("step-motion-switch", "still not fixed"),
            Some(Said::No)
        );
        assert_eq!(said("step-motion-switch", "no change"), Some(Said::No));
    }

    #[test]
    fn a_value_is_taken_where_the_step_wants_one() {
        assert_eq!(
            said("step-static-pressure", "static 30"),
            Some(Said::Number(30.0))
        );
        assert_eq!(said("step-static-pressure", "0"), Some(Said::Number(0.0)));
        assert_eq!(
            said("step-battery-volts", "12.1 v"),
            Some(Said::Number(12.1))
        );
        assert_eq!(said("step-static-pressure", "skip"), Some(Said::Skip));
    }

    #[test]
    fn every_step_named_in_the_answers_exists() {
        for key in Answers::default()
            .0
            .keys()
            .filter(|key| !["any", "order"].contains(&key.as_str()))
        {
            let known = Fault::ALL
                .iter()
                .any(|fault| steps(*fault).iter().any(|step| step.key == key));
            assert!(known, "{key}");
        }
    }
}
