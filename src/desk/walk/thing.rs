//! "Which one is the converter", "how do i know if its tripped": what is asked about a step while it waits is explained, and
//! the step keeps its place.

use std::sync::LazyLock;

use serde::Deserialize;

use super::super::answer::{self, Reply};
use super::super::phrases::{PhraseList, Words, plain};
use super::super::receive::Hearing;
use super::step_of;
use crate::dialogue::PAUSE;
use crate::heard::{Entry, Fault};

const THINGS: &str = include_str!("../../../grammar/walk/things.toml");
/// A longer message tells more than it asks.
const LONGEST: usize = 14;
/// In so few words "that" is what the step speaks of.
const SHORT: usize = 6;

/// What can be asked about, and how.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Things {
    opens: PhraseList,
    thing: Vec<Thing>,
}

/// One thing that steps speak of.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Thing {
    name: String,
    words: PhraseList,
    steps: Vec<String>,
}

fn known() -> &'static Things {
    static KNOWN: LazyLock<Things> =
        LazyLock::new(|| toml::from_str(THINGS).expect("the built-in things are read by a test"));
    &KNOWN
}

/// Returns the text that explains what is asked about the step which waits; none where nothing waits, or something else
/// is asked.
pub(in crate::desk) fn asked(hearing: &Hearing<'_>) -> Option<String> {
    let at = hearing.inbound.at;
    let check = hearing.talk.checks.last();
    let check = check.filter(|check| at >= check.asked && at - check.asked <= PAUSE);
    let round = hearing.talk.round.as_ref();
    let round = round.filter(|round| at >= round.asked && at - round.asked <= PAUSE);
    let step = match (check.and_then(step_of), round) {
        (Some(step), _) => step.key,
        (None, Some(round)) => round.step.as_str(),
        (None, None) => return None,
    };
    // "how do i know if its tripped" holds a word of the fault that is looked into, and reports none
    let of_it = |entry: &Entry| {
        let known = |fault: &Fault| check.is_some_and(|check| check.fault == *fault);
        entry.readings.is_empty() && entry.events.is_empty() && entry.faults.iter().all(known)
    };
    let reports = !hearing.heard.entries.iter().all(of_it);
    let orders = hearing.heard.command.is_some() || hearing.inbound.replaces.is_some();
    // "whats left", "whats next" ask for the list and the step
    let of_all = hearing.desk.phrases.holds("leave", "asks", hearing.text)
        || hearing.desk.answers.orders_on(hearing.text).is_some()
        || check.is_some_and(|check| hearing.desk.answers.orders(hearing.text, check).is_some());
    if reports || orders || of_all || !hearing.names().is_empty() {
        return None;
    }
    let folded = plain(hearing.text);
    let words = Words::of(&folded);
    let things = known();
    // "ok, where do i find that"
    let mut clauses = hearing.text.split([',', ';', '.', '-']);
    let asks = clauses.any(|clause| things.opens.opens(&plain(clause)));
    if folded.split(' ').count() > LONGEST || !asks {
        return None;
    }
    let is_of_step = |thing: &&Thing| thing.steps.iter().any(|of| of == step);
    let mut told = things
        .thing
        .iter()
        .filter(|thing| words.hold_any(&thing.words));
    // "level" is the slope where that is asked, and else a tank's
    let named = told.clone().find(is_of_step).or_else(|| told.next());
    // what another topic answers is asked of that, unless the step speaks of it
    if answer::is_question(hearing) && !named.as_ref().is_some_and(is_of_step) {
        return None;
    }
    let short = folded.split(' ').count() <= SHORT;
    let of_step = || things.thing.iter().find(is_of_step).filter(|_| short);
    match named.or_else(of_step) {
        Some(thing) => Some(format!("thing-{}", thing.name)),
        None => (short && check.is_some()).then(|| "thing-none".to_owned()),
    }
}

/// Explains what is asked about the step which waits; false where nothing of the kind is.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let Some(key) = asked(hearing).filter(|_| reply.first.is_empty()) else {
        return false;
    };
    let line = reply.voice.word(&key);
    reply.first.push(line);
    true
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::Language;
    use crate::reply::Replies;
    use crate::rules::steps;

    #[test]
    fn every_thing_is_explained_in_both_languages() {
        let replies = Replies::new();
        for thing in &known().thing {
            let key = format!("thing-{}", thing.name);
            for language in [Language::En, Language::Es] {
                assert!(replies.has(language, &key), "{language}: {key}");
            }
        }
    }

    #[test]
    fn a_thing_is_asked_for_by_steps_that_are_there() {
        let of_checks = Fault::ALL.iter().flat_map(|fault| steps(*fault));
        let checks: Vec<&str> = of_checks.map(|step| step.key).collect();
        for thing in &known().thing {
            let own = thing.steps.iter().filter(|step| step.starts_with("step-"));
            for step in own {
                let flicker = step == "step-ground-screw";
                assert!(flicker || checks.contains(&step.as_str()), "{step}");
            }
        }
    }
}
