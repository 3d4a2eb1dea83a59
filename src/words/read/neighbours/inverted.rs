//! Questions that are told by the order of their words alone: has 12 been pumped, was the hose thawed, did 10 get
//! cleaned. Crews leave the question mark out, and what only asks must not close a task.

use super::Words;
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::What;
use crate::words::senses::Sense;

/// How far a subject and its verb are looked for: "did the hose on the back side of 12 freeze".
const NEAR: usize = 8;

/// Whom or what a question speaks of, and where that ends.
struct Subject {
    /// A person: somebody, they, juno.
    person: bool,
    /// Told with its article, as things are that somebody has: the heater.
    article: bool,
    /// Opened by a word of no meaning here: "has the same leak" asks of none.
    word: bool,
    /// The item after it.
    end: usize,
}

impl Words<'_> {
    /// "has 12 been pumped", "any leaks on 12": a sentence that opens as only questions do.
    pub(super) fn inverted(&mut self, at: usize) {
        if !self.opens_a_sentence(at) {
            return;
        }
        let any = self.says(at, Sense::AnyOf)
            && self.same_chunk(at, at + 1)
            && (self.items[at + 1].noun().is_some() || self.is_said_of(at + 1));
        // "is power back": the thing and what is said of it are one phrase
        let fused = self.says(at, Sense::Asks)
            && self.is_said_of(at + 1)
            && self.same_chunk(at, at + 1)
            && self.opens_with(at + 1, Sense::AskedOf);
        if any || fused || self.verb_first(at) {
            self.items[at].what = What::Is(Concept::Mark(Mark::Query));
        }
    }

    /// "12 pumped yet": asked, where nothing is denied.
    pub(super) fn yet_at_the_end(&mut self, at: usize) {
        let sentence = self.items[at].sentence;
        let ends = self.items[at + 1..]
            .iter()
            .take_while(|n| n.sentence == sentence)
            .all(|n| matches!(n.what, What::Sign(c) if c != ',') || n.what == What::Break);
        if !self.items[at].is(Mark::Yet) || !self.says(at, Sense::PlainYet) || !ends {
            return;
        }
        let before = || {
            let all = (0..at).rev();
            all.take_while(|i| self.items[*i].sentence == sentence)
        };
        let denied = before().any(|i| {
            let item = &self.items[i];
            [Mark::Not, Mark::No, Mark::Plan, Mark::Doubt, Mark::Or]
                .iter()
                .any(|mark| item.is(*mark))
        });
        // "the worst smell yet"; "pumped 12 yet": the trailer may stand last
        let mut last = before().filter(|i| !self.items[*i].is_filler());
        let said = last.find(|i| !self.names(*i)).is_some_and(|i| {
            self.is_said_of(i) && !matches!(self.items[i].what, What::Is(Concept::Fault(_)))
        });
        if said && !denied {
            self.items[at].what = What::Is(Concept::Mark(Mark::AskedYet));
        }
    }

    /// Tells whether only a greeting and the like stand before `at` in its sentence.
    fn opens_a_sentence(&self, at: usize) -> bool {
        let sentence = self.items[at].sentence;
        let mut before = self.items[..at]
            .iter()
            .rev()
            .take_while(|i| i.sentence == sentence);
        before.all(|i| {
            i.is(Mark::Call)
                || i.is(Mark::And)
                || i.is(Mark::So)
                || matches!(i.what, What::Sign(_) | What::Break | What::Gone)
        })
    }

    /// Tells whether a phrase of several words at `at` opens with one of `sense`.
    pub(super) fn opens_with(&self, at: usize, sense: Sense) -> bool {
        let spelt = self.spelt(at);
        let mut words = spelt.split(' ');
        words
            .next()
            .is_some_and(|word| self.senses.has(word, sense))
            && words.next().is_some()
    }

    /// Tells whether a verb at `at` stands before its subject, and what is said of that after both.
    fn verb_first(&self, at: usize) -> bool {
        let Some(subject) = self.subject(at) else {
            return false;
        };
        let Subject {
            person,
            article,
            word,
            end,
        } = subject;
        let been = self.same_chunk(at, end) && self.items[end].is(Mark::Aux);
        let asked = self.says(at, Sense::Asks) && (person || self.is_said_of(end));
        let was = self.says(at, Sense::AsksWas) && (been || self.is_said_of(end));
        // "has the heater on" tells of a trailer, "has the heater been turned on" asks
        let adjective = self.is_adjective(end) && (article || !person);
        let came = article && self.same_chunk(at, end) && self.items[end].is(Mark::Idle);
        let told = came || self.is_said_of(end) && !adjective;
        let has = self.says(at, Sense::AsksHas) && (been || told && !word);
        // "have 12 pumped" may be told by who had it done
        let have = self.says(at, Sense::AsksHave) && (been || person);
        let did = self.says(at, Sense::AsksDid)
            && (been || self.is_said_of(end) || (person || article) && self.is_a_word(at, end));
        let can = self.says(at, Sense::AsksCan);
        asked || was || has || have || did || can
    }

    /// Finds the subject behind a verb: a trailer, a thing, somebody.
    fn subject(&self, verb: usize) -> Option<Subject> {
        let mut at = verb + 1;
        let here = |i: usize| self.same_chunk(verb, i) && i <= verb + NEAR;
        let article = here(at) && self.items[at].is(Mark::Article);
        at += usize::from(article);
        if !here(at) {
            return None;
        }
        let first = at;
        let person = !article && self.is_somebody(at);
        if person {
            return Some(Subject {
                person,
                article,
                word: false,
                end: at + 1,
            });
        }
        let counts =
            self.bare_number(at).is_some() && here(at + 1) && self.items[at + 1].noun().is_some();
        if counts {
            return None;
        }
        // "12 and 14", "the heater in 12", "12's pump"
        while here(at) && self.belongs_to_a_subject(at, first, article) {
            at += 1;
        }
        (at > first).then_some(Subject {
            person,
            article,
            word: matches!(self.items[first].what, What::Word { .. }),
            end: at,
        })
    }

    /// Tells whether an item goes on with a subject that began at `first`.
    fn belongs_to_a_subject(&self, at: usize, first: usize, article: bool) -> bool {
        let item = &self.items[at];
        // "is the leak on 17 fixed": what is wrong may be what is spoken of
        let wrong = article
            && at == first
            && matches!(
                item.what,
                What::Is(Concept::Fault(_) | Concept::State(State::Leaking | State::Spilled))
            );
        let named = |i: usize| self.names(i) && self.same_chunk(first, i);
        let place = at > first
            && (item.is(Mark::At) || item.what == What::Is(Concept::State(State::On)))
            && self.same_chunk(first, at + 1)
            && (named(at + 1)
                || self.items[at + 1].is(Mark::Article)
                || self.items[at + 1].is(Mark::Label)
                || self.items[at + 1].noun().is_some());
        let and = at > first && item.is(Mark::And) && named(at + 1);
        let possessive = at > first && matches!(item.what, What::Sign('\''));
        let of = at > first && (item.is(Mark::Of) || item.is(Mark::Article));
        let word = article && at == first && matches!(item.what, What::Word { .. });
        // "the light in stall 2"
        let inside = at > first && (item.is(Mark::Label) || item.what == What::Labelled);
        item.noun().is_some()
            || inside
            || named(at)
            || wrong
            || place
            || and
            || possessive
            || of
            || word
    }

    /// Tells whether somebody, or nobody knows who or what, is at `at`: anyone, they, juno, anything.
    fn is_somebody(&self, at: usize) -> bool {
        let item = &self.items[at];
        // "has juno arrived": a name, where something is said of it
        let name = item.what == (What::Word { ordinary: false })
            && (self.is_said_of(at + 1) || self.items.get(at + 1).is_some_and(|n| n.is(Mark::Aux)));
        item.noun() == Some(Noun::Person)
            || item.is(Mark::Pronoun)
            || item.is(Mark::Who)
            || name
            || self.says(at, Sense::Somebody)
    }

    /// Tells whether something that could be reported is said at `at`; "on 12" is a place.
    fn is_said_of(&self, at: usize) -> bool {
        let Some(item) = self.items.get(at) else {
            return false;
        };
        let place = item.what == What::Is(Concept::State(State::On)) && !self.ends(at) && {
            let next = &self.items[at + 1];
            self.names(at + 1) || next.is(Mark::Article)
        };
        !place
            && matches!(
                item.what,
                What::Is(
                    Concept::State(_) | Concept::Event(_) | Concept::Fault(_) | Concept::Clears(_)
                )
            )
    }

    /// Tells whether what is said at `at` is how a thing stands, and nothing that was done: on, down, open.
    fn is_adjective(&self, at: usize) -> bool {
        self.items.get(at).is_some_and(|item| {
            matches!(
                item.what,
                What::Is(Concept::State(
                    State::On
                        | State::Off
                        | State::Up
                        | State::Down
                        | State::Out
                        | State::Ok
                        | State::Live
                        | State::Low
                        | State::Level
                        | State::OnSite
                ))
            )
        })
    }

    /// Tells whether a word of no other meaning stands at `at`: "did the truck come".
    fn is_a_word(&self, verb: usize, at: usize) -> bool {
        self.same_chunk(verb, at)
            && (matches!(self.items[at].what, What::Word { .. })
                || self.items[at].is(Mark::Idle)
                || self.items[at].noun().is_some())
    }
}
