//! What a message says as an answer to the step of a guided check.
//!
//! An answer is taken only where it plainly answers this step's question. Where the step guards somebody, every word of
//! the message must be accounted for, and "ok" or "done" never say that it is safe.

use super::answers::{Answers, Own};
use super::phrase::{Phrases, Span, is_question};
use crate::dialogue::Check;
use crate::heard::{Entry, Fault, Heard};
use crate::rules::{Asks, Step, Then};

/// A longer message is a report or a story, and no answer.
pub(super) const LONGEST: usize = 24;
/// Words that may be left over beside the words of a step's own.
const LEFT_BESIDE_OWN: usize = 4;
/// Words that may be left over beside a plain yes or no.
pub(super) const LEFT_BESIDE_PLAIN: usize = 3;

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
}

/// A message that may answer a step.
pub(in crate::desk) struct Message<'a> {
    pub(in crate::desk) heard: &'a Heard,
    pub(in crate::desk) text: &'a str,
    /// What it reports on the trailer of the check.
    pub(in crate::desk) told: Option<&'a Entry>,
    /// The question of the step, in every language.
    pub(in crate::desk) question: &'a str,
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
        if told.is_some_and(|entry| entry.cleared.contains(&check.fault)) {
            return Some(Said::Mended);
        }
        let words = Phrases::of(message.text);
        if let Some(said) = self.order(&words, check) {
            return Some(said);
        }
        // a question is no answer: "can i turn it back on" must never close a check
        if heard.command.is_some() || heard.ask.is_some() || is_question(message.text) {
            return None;
        }
        let tripped =
            is_trip(check.fault) && told.is_some_and(|entry| entry.faults.contains(&check.fault));
        if tripped && (check.mending || !asks_for_a_trip(step)) {
            return Some(if check.mending {
                Said::No
            } else {
                Said::Tripped
            });
        }
        if self.any(&words, "mistake") {
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
        let said = self.verdict(message, check, step, words)?;
        let grave = matches!(check.fault, Fault::Shock | Fault::Spill);
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
        let skips = is("skip") && !(is_trip(check.fault) && words.len() == 1 && self.trips(words));
        Some(if is("stop") {
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

    fn trips(&self, words: &Phrases) -> bool {
        self.any(words, "trips")
    }

    fn verdict(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
        mut words: Phrases,
    ) -> Option<Said> {
        let told = message.told;
        let guards = step.guards() && !check.mending;
        let asks_whether_it_helped = check.mending || step.asks == Asks::IfMended;
        let own = match check.mending {
            false => self.own(step.key, &words),
            true => Own::Neither,
        };
        let own = match own {
            Own::Neither if asks_whether_it_helped => {
                self.own(&format!("mended-{}", check.fault), &words)
            }
            own => own,
        };
        let leading = self.leading(&words);
        let mut said = match &own {
            Own::Both => Some(Said::Unclear),
            // "not locked" is not yet safe
            Own::Denied(_) if guards => Some(Said::Unclear),
            Own::Denied(spans) => {
                words.cover(spans);
                Some(Said::Yes)
            }
            Own::Yes(spans) => {
                words.cover(spans);
                let not = !words.find_uncovered(self.list("any", "not")).is_empty();
                Some(if not { Said::No } else { Said::Yes })
            }
            Own::No(spans) => {
                words.cover(spans);
                let odd = guards && leading == Some(true);
                Some(if odd { Said::Unclear } else { Said::No })
            }
            Own::Neither => None,
        };
        let by_own = said.is_some();
        let reports = told.is_some_and(|entry| !entry.is_empty() && !of_opening(entry));
        if !by_own {
            said = self.general(&words, leading, asks_whether_it_helped, step);
            let still = told.is_some_and(|entry| entry.faults.contains(&check.fault));
            if still && asks_whether_it_helped {
                said = Some(Said::No);
            }
            let done = told
                .is_some_and(|entry| step.by.is_some_and(|event| entry.events.contains(&event)));
            if done && !matches!(said, Some(Said::Mended | Said::No)) {
                said = Some(Said::Done);
            } else if reports && !done && !still && leading != Some(true) {
                // an ordinary report is an answer only by the step's own words
                return None;
            }
        }
        let said = said?;
        self.cover_what_is_clear(&mut words, message.question, guards);
        for step in message.after {
            if let Own::Yes(spans) | Own::No(spans) = self.own(step.key, &words) {
                words.cover(&spans);
            }
        }
        let beside = words.find(self.list(step.key, "beside"));
        words.cover(&beside);
        let later = self.has_uncovered(&words, "later");
        let but = self.has_uncovered(&words, "but");
        let left = words.left().filter(|word| !message.told_is(word)).count();
        let reported_else = told.is_some_and(|entry| {
            entry
                .faults
                .iter()
                .any(|fault| *fault != check.fault && step.then != Then::Report(*fault))
        });
        if guards {
            let unsure = self.has_uncovered(&words, "unsure");
            let safe = (said == Said::Yes) == (step.asks == Asks::IfGood);
            let sure = match safe {
                true => left == 0 && !later && !but && !unsure && !reported_else,
                // what is not safe is believed sooner
                false => left <= LEFT_BESIDE_OWN && !later,
            };
            let plainly = by_own || message.fresh;
            return Some(match said {
                Said::Yes | Said::No if sure && plainly => said,
                Said::Skip | Said::Mended => said,
                _ if left > LEFT_BESIDE_OWN => return None,
                _ => Said::Unclear,
            });
        }
        if later && !matches!(said, Said::Skip) {
            return Some(Said::Unclear);
        }
        let bound = if by_own {
            LEFT_BESIDE_OWN
        } else {
            LEFT_BESIDE_PLAIN
        };
        if left > bound && !reports {
            return None;
        }
        Some(if but && !by_own && said != Said::No {
            Said::Unclear
        } else {
            said
        })
    }

    /// Reads the words that fit every step.
    fn general(
        &self,
        words: &Phrases,
        leading: Option<bool>,
        asks_whether_it_helped: bool,
        step: &Step,
    ) -> Option<Said> {
        let has = |list| self.any(words, list);
        let not = has("not");
        if asks_whether_it_helped && has("unchanged") {
            return Some(Said::No);
        }
        if has("mended") {
            return Some(match (not, asks_whether_it_helped) {
                (false, _) => Said::Mended,
                (true, true) => Said::No,
                (true, false) => Said::Unclear,
            });
        }
        if has("skip") {
            return Some(Said::Skip);
        }
        match leading {
            Some(true) if not => return Some(Said::Unclear),
            Some(true) => return Some(Said::Yes),
            Some(false) => return Some(Said::No),
            None => {}
        }
        if has("fine") && !step.guards() {
            return Some(match step.asks {
                _ if asks_whether_it_helped || not => Said::Unclear,
                Asks::IfGood => Said::Yes,
                Asks::IfBad => Said::No,
                _ => Said::Unclear,
            });
        }
        if has("done") {
            let tried = asks_whether_it_helped && !not;
            return Some(if tried { Said::Done } else { Said::Unclear });
        }
        (has("ack") || has("unchanged") || has("later")).then_some(Said::Unclear)
    }

    /// Reads what a later step's own words say in a message that has answered the step before.
    pub(in crate::desk) fn reads_on(
        &self,
        message: &Message<'_>,
        before: &[&Step],
        step: &Step,
    ) -> Option<Said> {
        let words = Phrases::of(message.text);
        let own = self.own(step.key, &words);
        let (spans, said) = match &own {
            Own::Yes(spans) => (spans, Said::Yes),
            Own::No(spans) => (spans, Said::No),
            _ => return None,
        };
        let used: Vec<Span> = before
            .iter()
            .flat_map(|step| match self.own(step.key, &words) {
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
        spans.iter().any(fresh).then_some(said)
    }
}

impl Message<'_> {
    /// Tells whether a word is the name of the trailer that is reported on, or stands for it.
    fn told_is(&self, word: &str) -> bool {
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
        let message = Message {
            heard: &heard,
            text,
            told: heard.entries.first(),
            question: "",
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
            let known = Fault::ALL
                .iter()
                .any(|fault| steps(*fault).iter().any(|step| step.key == key));
            assert!(known, "{key}");
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
