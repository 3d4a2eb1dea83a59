//! What the words of an answer come to at a step: by the step's own words, else by those that fit every step, and only
//! where what is left of the message does not speak of something else.

use super::super::phrases::plain;
use super::answers::{Answers, Own};
use super::phrase::Phrases;
use super::said::{Message, Said, of_opening};
use crate::dialogue::Check;
use crate::heard::Event;
use crate::rules::{Asks, Step, Then};

/// Words that may be left over beside the words of a step's own.
pub(super) const LEFT_BESIDE_OWN: usize = 4;
/// Words that may be left over where it cannot be told: what it is that is missing, or out of reach.
pub(super) const LEFT_BESIDE_SKIP: usize = 6;
/// Words that may be left over beside a plain yes or no.
pub(super) const LEFT_BESIDE_PLAIN: usize = 3;

/// An answer as it was first read, with the words that are not accounted for yet.
struct Weighed {
    said: Said,
    /// The step's own words say it, in more than a word.
    plainly: bool,
    /// The step's own words say it.
    by_own: bool,
    words: Phrases,
}

/// What stands in a message beside its answer.
struct Beside {
    left: usize,
    /// Something that the step does not ask about.
    another_thing: bool,
    later: bool,
    but: bool,
    unsure: bool,
    other_fault: bool,
}

impl Answers {
    /// Weighs a message as the answer to a step; none where it is about something else.
    pub(super) fn verdict(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
        words: Phrases,
    ) -> Option<Said> {
        let guards = step.guards() && !check.mending;
        let weighed = self.weigh(message, check, step, words)?;
        let (said, by_own, plainly) = (weighed.said, weighed.by_own, weighed.plainly);
        let beside = self.beside(message, check, step, weighed.words);
        match guards {
            true => guarded(said, by_own || message.fresh, step, &beside),
            false => {
                let done = told_done(message, step);
                open(said, by_own, plainly || done, reports(message), &beside)
            }
        }
    }

    /// Reads the answer: by the step's own words, else by those that fit every step.
    fn weigh(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
        mut words: Phrases,
    ) -> Option<Weighed> {
        let guards = step.guards() && !check.mending;
        let helped = check.mending || step.asks == Asks::IfMended;
        let leading = self.leading(&words);
        let solely = self.any(&words, "solely");
        let own = self.own_words(check, step, helped, &words);
        let spans = match &own {
            Own::Yes(spans) | Own::No(spans) | Own::Denied(spans) => spans.as_slice(),
            _ => &[],
        };
        let plainly = spans.iter().any(|span| self.weight(&words, *span) > 1);
        words.cover(spans);
        // "the fuse is good, still no water"
        if helped && let Own::No(stands) = self.own(&format!("mended-{}", check.fault), &words) {
            words.cover(&stands);
        }
        let unknown = !self.unknown(step.key, &words).is_empty();
        if !helped {
            self.cover_what_stands(check, &mut words);
        }
        let bare = words.find_uncovered(self.list("any", "bare"));
        words.cover(&bare);
        let denied = !words
            .find_before(self.list("any", "denies"), spans)
            .is_empty();
        let doubtful = self.has_uncovered(&words, "denies");
        let aside = guards
            && !words
                .find_uncovered(self.list(step.key, "aside"))
                .is_empty();
        let by_own = match &own {
            Own::Both => Some(Said::Unclear),
            Own::Neither if aside => Some(Said::Unclear),
            // "not locked" is not yet safe
            Own::Denied(_) if guards => Some(Said::Unclear),
            Own::Denied(_) => Some(Said::Yes),
            // "no, just one lamp": the no is none to "one lamp only"
            Own::Yes(_) if denied && leading == Some(false) && solely => Some(Said::Unclear),
            Own::Yes(_) if denied => Some(Said::No),
            Own::Yes(_) if doubtful => Some(Said::Unclear),
            Own::Yes(_) => Some(Said::Yes),
            Own::No(_) if guards && leading == Some(true) => Some(Said::Unclear),
            Own::No(_) => Some(Said::No),
            Own::Neither if unknown && leading != Some(true) => Some(Said::Skip),
            Own::Neither => None,
        };
        let said = match by_own {
            Some(said) => said,
            None => self.by_general_words(message, check, step, &words)?,
        };
        Some(Weighed {
            said,
            plainly,
            by_own: by_own.is_some(),
            words,
        })
    }

    /// Finds the words of the step's own; where it is asked whether something helped, those of the fault.
    fn own_words(&self, check: &Check, step: &Step, helped: bool, words: &Phrases) -> Own {
        let own = match check.mending {
            false => self.own(step.key, words),
            true => Own::Neither,
        };
        match own {
            Own::Neither if helped => self.own(&format!("mended-{}", check.fault), words),
            own => own,
        }
    }

    /// Reads the words that fit every step, held against what the message reports.
    fn by_general_words(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
        words: &Phrases,
    ) -> Option<Said> {
        let helped = check.mending || step.asks == Asks::IfMended;
        let leading = self.leading(words);
        let mut said = self.general(words, leading, helped, step);
        let told = message.told;
        if said == Some(Said::Mended) && self.is_of_another_thing(message, check) {
            said = Some(Said::Unclear);
        }
        let still = helped && told.is_some_and(|entry| entry.faults.contains(&check.fault));
        if still {
            said = Some(Said::No);
        }
        let done = told_done(message, step);
        if done && !matches!(said, Some(Said::Mended | Said::No)) {
            said = Some(Said::Done);
        } else if tried(said, helped, message) {
            // "cleaned it, works now", "reset it, nothing": the work is told with what it came to
        } else if reports(message) && !done && !still && leading != Some(true) {
            // an ordinary report is an answer only by the step's own words
            return None;
        }
        said
    }

    /// Tells whether what is said to work is not what the check is about: "the light over the door works" beside a heater.
    fn is_of_another_thing(&self, message: &Message<'_>, check: &Check) -> bool {
        let over = message.told.map(|entry| entry.cleared.as_slice());
        let cleared = over.is_some_and(|over| !over.is_empty() && !over.contains(&check.fault));
        let topic = Phrases::of(&(message.topic)());
        let foreign = |thing: &&String| topic.find(std::slice::from_ref(*thing)).is_empty();
        let things = self.list("any", "fixtures").iter().filter(foreign);
        let words = Phrases::of(message.text);
        cleared
            || things
                .into_iter()
                .any(|thing| !words.find(std::slice::from_ref(thing)).is_empty())
    }

    /// Reads the words that fit every step.
    fn general(
        &self,
        words: &Phrases,
        leading: Option<bool>,
        helped: bool,
        step: &Step,
    ) -> Option<Said> {
        let has = |list| self.any(words, list);
        let not = self.has_uncovered(words, "not");
        if helped && has("unchanged") {
            return Some(Said::No);
        }
        if self.says_mended(words) {
            return Some(match (not, helped) {
                _ if has("others") => Said::Unclear,
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
                _ if helped || not => Said::Unclear,
                Asks::IfGood => Said::Yes,
                Asks::IfBad => Said::No,
                _ => Said::Unclear,
            });
        }
        if has("done") {
            let tried = helped && !not;
            return Some(if tried { Said::Done } else { Said::Unclear });
        }
        (has("ack") || has("unchanged") || has("later")).then_some(Said::Unclear)
    }

    /// Accounts for words by which the fault that is looked into still stands: "yes but cold" of no hot water.
    fn cover_what_stands(&self, check: &Check, words: &mut Phrases) {
        let key = format!("mended-{}", check.fault);
        let key = self.list(&key, "like").first().unwrap_or(&key);
        let stands = words.find_uncovered(self.list(key, "no"));
        if stands.is_empty() {
            return;
        }
        words.cover(&stands);
        for list in ["but", "still"] {
            let spans = words.find_before(self.list("any", list), &stands);
            words.cover(&spans);
        }
    }

    /// Accounts for what says nothing against the answer, and tells what is left.
    fn beside(
        &self,
        message: &Message<'_>,
        check: &Check,
        step: &Step,
        mut words: Phrases,
    ) -> Beside {
        let guards = step.guards() && !check.mending;
        self.cover_what_is_clear(&mut words, message.question, guards);
        for step in message.after {
            if let Own::Yes(spans) | Own::No(spans) = self.own(step.key, &words) {
                words.cover(&spans);
            }
        }
        let unit = plain(check.unit.as_str());
        words.cover_words(|word| word == unit);
        let beside = words.find(self.list(step.key, "beside"));
        words.cover(&beside);
        let other_fault = message.told.is_some_and(|entry| {
            entry
                .faults
                .iter()
                .any(|fault| *fault != check.fault && step.then != Then::Report(*fault))
        });
        Beside {
            left: words.left().filter(|word| !message.told_is(word)).count(),
            another_thing: self.has_uncovered(&words, "things"),
            later: self.has_uncovered(&words, "later"),
            but: self.has_uncovered(&words, "but"),
            unsure: self.has_uncovered(&words, "unsure"),
            other_fault,
        }
    }
}

/// What is taken at a step that guards somebody: what is safe only where every word is accounted for.
fn guarded(said: Said, plainly: bool, step: &Step, beside: &Beside) -> Option<Said> {
    let safe = (said == Said::Yes) == (step.asks == Asks::IfGood);
    let sure = match safe {
        true => {
            beside.left == 0
                && !beside.later
                && !beside.but
                && !beside.unsure
                && !beside.other_fault
        }
        // what is not safe is believed sooner
        false => beside.left <= LEFT_BESIDE_OWN && !beside.later,
    };
    Some(match said {
        Said::Yes | Said::No if sure && plainly => said,
        Said::Skip | Said::Mended => said,
        _ if beside.left > LEFT_BESIDE_OWN => return None,
        _ => Said::Unclear,
    })
}

/// What is taken at any other step.
fn open(said: Said, by_own: bool, plainly: bool, reports: bool, beside: &Beside) -> Option<Said> {
    if beside.later && said != Said::Skip {
        return Some(Said::Unclear);
    }
    let bound = match by_own {
        // "dont have a spare one on the truck": what it is does not matter
        _ if said == Said::Skip => LEFT_BESIDE_SKIP,
        true => LEFT_BESIDE_OWN,
        false => LEFT_BESIDE_PLAIN,
    };
    if beside.left > bound && !reports {
        return None;
    }
    // "yes its wet outside" does not say whether two cords hang on one GFCI
    let yes_or_no = matches!(said, Said::Yes | Said::No);
    let doubtful =
        yes_or_no && beside.another_thing && !plainly || beside.but && !by_own && said != Said::No;
    Some(if doubtful { Said::Unclear } else { said })
}

/// Tells whether the message reports more than that something is open or closed.
fn reports(message: &Message<'_>) -> bool {
    let told = message.told;
    told.is_some_and(|entry| !entry.is_empty() && !of_opening(entry))
}

/// Tells whether a message says what work it reports came to.
fn tried(said: Option<Said>, helped: bool, message: &Message<'_>) -> bool {
    let only_done = message.told.is_some_and(|entry| {
        entry.readings.is_empty() && entry.faults.is_empty() && entry.cleared.is_empty()
    });
    match said {
        Some(Said::Mended) => tells_of_work(message),
        Some(Said::No) => helped && only_done && !names_a_trailer(message),
        _ => false,
    }
}

/// Tells whether the message reports work alone, and names no trailer with it.
fn tells_of_work(message: &Message<'_>) -> bool {
    // what is "back on" may be the power, and not what is looked into
    let work = [
        Event::Cleaned,
        Event::FilterServiced,
        Event::FuseReplaced,
        Event::RegulatorFitted,
        Event::Restocked,
    ];
    let work = message.told.is_some_and(|entry| {
        let only = entry.events.iter().all(|event| work.contains(event));
        only && entry.readings.is_empty() && entry.faults.is_empty() && entry.cleared.is_empty()
    });
    work && !names_a_trailer(message)
}

fn names_a_trailer(message: &Message<'_>) -> bool {
    let mut entries = message.heard.entries.iter();
    entries.any(|entry| entry.unit.is_some())
}

/// Tells whether the message reports what the step says to do.
fn told_done(message: &Message<'_>, step: &Step) -> bool {
    let told = message.told;
    told.is_some_and(|entry| step.by.is_some_and(|event| entry.events.contains(&event)))
}
