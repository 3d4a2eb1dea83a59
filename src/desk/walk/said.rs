//! What a message says as an answer to the step of a guided check.
//!
//! An answer is taken only where it plainly answers this step's question. Where the step guards somebody, every word of
//! the message must be accounted for, and "ok" or "done" never say that it is safe.

use super::answers::{Answers, Own};
use super::phrase::{Phrases, Span, is_question};
use crate::dialogue::Check;
use crate::heard::{Entry, Fault, Heard};
use crate::rules::{Asks, Step};

/// A longer message is a report or a story, and no answer.
pub(super) const LONGEST: usize = 24;

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
    /// It tripped again, at a step that does not ask for it.
    Tripped,
    /// To be asked again, in full.
    Resume,
    /// To go on where the check was left, or to the step before.
    Back,
    /// To be asked again, shortly: it was meant as an answer and is none.
    Unclear,
    /// To end the check.
    Stop,
    /// An answer so long after the question that it is asked again before it counts.
    Paused,
}

/// A message that may answer a step.
pub(in crate::desk) struct Message<'a> {
    pub(in crate::desk) heard: &'a Heard,
    pub(in crate::desk) text: &'a str,
    /// What it reports on the trailer of the check.
    pub(in crate::desk) told: Option<&'a Entry>,
    /// The question of the step, in every language.
    pub(in crate::desk) question: &'a str,
    /// The fault and all the questions of its check, in every language: what the check is about.
    pub(in crate::desk) topic: &'a dyn Fn() -> String,
    /// The steps after the one that waits: a message may answer several.
    pub(in crate::desk) after: &'a [Step],
    /// Whether the question is the last thing that this person was told, and they stand at the trailer.
    pub(in crate::desk) fresh: bool,
}

impl Answers {
    /// Reads a message as an answer to a step; none where it is about something else.
    pub(in crate::desk) fn read(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
    ) -> Option<Said> {
        let Message { heard, told, .. } = *message;
        let words = Phrases::of(message.text);
        // "the other lights work" does not say that these do
        // nor does "thawed" say that nothing has split: it answers the step that asks for it
        let of_the_step = !check.mending && matches!(self.own(step.key, &words), Own::Yes(_));
        if told.is_some_and(|entry| entry.cleared.contains(&check.fault))
            && !self.any(&words, "others")
            && !of_the_step
        {
            return Some(Said::Mended);
        }
        if let Some(said) = self.order(&words, check) {
            return Some(said);
        }
        // a question is no answer: "can i turn it back on" must never close a check
        if heard.command.is_some() || heard.ask.is_some() || is_question(message.text) {
            return None;
        }
        let own = self.own(step.key, &words);
        let by_own = !check.mending && matches!(own, Own::Yes(_) | Own::No(_));
        let tripped = !by_own
            && is_trip(check.fault)
            && told.is_some_and(|entry| entry.faults.contains(&check.fault));
        if tripped && (check.mending || !asks_for_a_trip(step)) {
            return Some(if check.mending {
                Said::No
            } else {
                Said::Tripped
            });
        }
        // "somebody had it on the wrong one" is no slip of the pen
        if self.any(&words, "mistake") && !by_own {
            return None;
        }
        if let Asks::For { what, .. } = step.asks
            && !check.mending
        {
            if let Some(number) = self.number(message, what) {
                return Some(Said::Number(number));
            }
            if told.is_some_and(|entry| !entry.readings.is_empty()) {
                return None;
            }
        }
        if words.len() > LONGEST {
            return None;
        }
        if self.works_again(check, step, &words) {
            return Some(Said::Mended);
        }
        let said = self.verdict(message, check, step, words);
        // "tried 3 times": it trips, and there is no next reset
        let often = step.resets && !check.mending && self.resets_told(message.text) > 1;
        let said = match said {
            None | Some(Said::Unclear) if often => Said::Tripped,
            said => said?,
        };
        let grave = matches!(check.fault, Fault::Shock | Fault::Spill);
        // "yeah 10" says which trailer it is, and not that its power is off
        let which = check.fault == Fault::Shock && !heard.named.is_empty();
        if step.guards() && said == Said::Yes && which && !by_own {
            return Some(Said::Unclear);
        }
        if step.guards() && (said == Said::Done || said == Said::Mended && grave) {
            return Some(Said::Unclear);
        }
        Some(said)
    }

    /// Reads what a whole message orders of a check; none where it is no order.
    pub(in crate::desk) fn orders(&self, text: &str, check: &Check) -> Option<Said> {
        self.order(&Phrases::of(text), check)
    }

    /// Reads what a whole message orders of the check: to go on, back, again, to skip or to stop.
    fn order(&self, words: &Phrases, check: &Check) -> Option<Said> {
        let is = |list| self.is_all(words, list);
        // the Spanish word for a skip is also that of a breaker that trips
        let skips = (is("skip") || is("unknown"))
            && !(is_trip(check.fault) && words.len() == 1 && self.trips(words));
        // "it quit" is what ran on, and not the check
        Some(if is("stop") && !is("mended") {
            Said::Stop
        } else if is("back") {
            if check.waits {
                Said::Resume
            } else {
                Said::Back
            }
        } else if is("resume") || is("next") || is("repeat") && !is("yes") {
            Said::Resume
        } else if is("all") {
            Said::DidAll
        } else if skips {
            Said::Skip
        } else {
            return None;
        })
    }

    /// Tells whether the words of the fault's own say that it is over, at a step that asks for something else.
    fn works_again(&self, check: &Check, step: &Step, words: &Phrases) -> bool {
        if check.mending || step.guards() || is_trip(check.fault) || self.any(words, "others") {
            return false;
        }
        let asked = matches!(self.own(step.key, words), Own::Neither);
        match self.own(&format!("mended-{}", check.fault), words) {
            Own::Yes(spans) if asked && !self.any(words, "not") => {
                spans.iter().any(|span| self.weight(words, *span) > 1)
            }
            _ => false,
        }
    }

    fn trips(&self, words: &Phrases) -> bool {
        self.any(words, "trips")
    }

    /// Reads what a later step's own words say in a message, beside the words by which it answers the steps before.
    pub(in crate::desk) fn reads_on(
        &self,
        message: &Message<'_>,
        check: &Check,
        before: &[&Step],
        step: &Step,
    ) -> Option<Said> {
        // "still dark" does not say what was tried
        if step.asks == Asks::IfMended && !self.list(step.key, "like").is_empty() {
            return None;
        }
        let words = Phrases::of(message.text);
        let own = self.own(step.key, &words);
        let (spans, said) = match &own {
            Own::Yes(spans) => (spans, Said::Yes),
            Own::No(spans) => (spans, Said::No),
            _ => return None,
        };
        // "still running" says whether what was done has helped, and nothing of a later step
        let mended = format!("mended-{}", check.fault);
        let helps = before.iter().any(|step| step.asks == Asks::IfMended);
        let answered = before.iter().map(|step| step.key);
        let answered = answered.chain(helps.then_some(mended.as_str()));
        let used: Vec<Span> = answered
            .flat_map(|key| match self.own(key, &words) {
                Own::Yes(spans) | Own::No(spans) => spans,
                _ => Vec::new(),
            })
            .collect();
        let tells = message.told.is_some_and(|entry| {
            step.tells
                .is_some_and(|event| entry.events.contains(&event))
        });
        let fresh = |(from, to): &Span| {
            (to - from >= 2 || tells) && !used.iter().any(|(a, b)| from < b && a < to)
        };
        // done, but whether it helped is not said
        let done = step.asks == Asks::IfMended && said == Said::Yes;
        (!done && spans.iter().any(fresh)).then_some(said)
    }
}

impl Message<'_> {
    /// Tells whether a word is the name of the trailer that is reported on, or stands for it.
    pub(super) fn told_is(&self, word: &str) -> bool {
        let named = self.told.and_then(|entry| entry.unit.as_ref());
        matches!(word, "unit" | "trailer" | "unidad" | "remolque")
            || named.is_some_and(|unit| unit.as_str().to_lowercase() == word)
    }
}

/// Tells whether a fault is a trip: one may be told inside the check of the other.
pub(super) fn is_trip(fault: Fault) -> bool {
    matches!(fault, Fault::BreakerTrip | Fault::GfciTrip)
}

/// Tells whether "it tripped" answers the question of a step.
fn asks_for_a_trip(step: &Step) -> bool {
    step.resets || step.key == "step-plug-back"
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

#[cfg(test)]
mod tests {
    use super::super::super::phrases::plain;
    use super::*;
    use crate::dialogue::Course;
    use crate::rules::{course_steps, steps};

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
            course: None,
            ahead: Vec::new(),
            passed: 0,
        };
        let heard = crate::words::Reader::new().hear(text, crate::quantity::TemperatureScale::F);
        let message = Message {
            heard: &heard,
            text,
            told: heard.entries.first(),
            question: "",
            topic: &String::new,
            after: &[],
            fresh: true,
        };
        Answers::built_in().read(&message, &check, &step(key))
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
        let answers = Answers::built_in();
        let faults = Fault::ALL.iter().map(|fault| format!("mended-{fault}"));
        let faults: Vec<String> = faults.collect();
        for key in answers.0.keys().filter(|key| key.starts_with("mended-")) {
            assert!(faults.contains(key), "{key}");
        }
        for key in answers.0.keys().filter(|key| key.starts_with("step-")) {
            let mut all = Fault::ALL
                .iter()
                .flat_map(|fault| steps(*fault))
                .chain(course_steps(Course::Flicker));
            assert!(all.any(|step| step.key == key), "{key}");
        }
    }

    #[test]
    fn no_phrase_says_both_yes_and_no() {
        for (of, lists) in &Answers::built_in().0 {
            let no = lists.get("no").cloned().unwrap_or_default();
            for phrase in lists.get("yes").into_iter().flatten() {
                assert!(!no.contains(phrase), "{of}: {phrase}");
                assert_eq!(*phrase, plain(phrase), "{of}");
            }
        }
    }
}
