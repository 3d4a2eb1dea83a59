//! What is asked about although no single word is unclear: a trailer and nothing else, all of them unnamed, orders.

use super::Reading;
use crate::heard::Remark;
use crate::words::assemble::{self, Assembled};
use crate::words::concept::{AskWord, Concept, Mark, State};
use crate::words::item::What;
use crate::words::scope::Sentence;
use crate::words::senses::{Sense, Senses};

impl<'t> Reading<'t> {
    /// "scratch that", alone: what was sent before is taken back.
    pub(super) fn scratched(&self, senses: &Senses) -> bool {
        let words: Vec<usize> = (0..self.items.len())
            .filter(|i| !matches!(self.items[*i].what, What::Sign(_) | What::Break))
            .collect();
        let [only] = words.as_slice() else {
            return false;
        };
        self.items[*only].is(Mark::Sorry) && senses.has(self.spelt(*only), Sense::TakesAllBack)
    }

    /// "static 80 flowing 52": one pressure, told twice on purpose.
    pub(super) fn static_and_flowing(&self, senses: &Senses, out: &mut Assembled) {
        for (at, why) in &mut out.unclear {
            let chunk = self.items[*at].chunk;
            let says = |sense| {
                (at.saturating_sub(8)..*at)
                    .filter(|i| self.items[*i].chunk == chunk)
                    .any(|i| senses.has(self.spelt(i), sense))
            };
            if *why == "two-values" && says(Sense::Static) && says(Sense::Flowing) {
                *why = "static-and-flowing";
            }
        }
    }

    /// What is said of "all units", none of them named, is asked about.
    pub(super) fn all_unnamed(&self, facts: &mut Vec<assemble::Fact>, out: &mut Assembled) {
        if !self.groups.is_empty() {
            return;
        }
        let whole = self
            .items
            .iter()
            .position(|i| i.is(Mark::All))
            .filter(|at| {
                let next = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Unit));
                let before = *at > 0 && self.items[at - 1].is(Mark::Unit);
                let tanks = (at + 1..self.items.len())
                    .take(3)
                    .find(|i| !self.items[*i].is_filler())
                    .is_some_and(|i| self.items[i].noun().is_some_and(|n| n.is_tank()));
                next || before || tanks || self.piece(*at, at + 1).contains(' ')
            });
        if let Some(at) = whole {
            let chunk = self.items[at].chunk;
            let before = facts.len();
            facts.retain(|f| self.items[f.at].chunk != chunk);
            if facts.len() < before {
                out.unclear.push((at, "which-unit"));
            }
        }
    }

    /// What is said of "three units" names none of them: it is asked about.
    pub(super) fn uncounted(
        &self,
        counts: &[usize],
        facts: &mut Vec<assemble::Fact>,
        out: &mut Assembled,
    ) {
        for first in counts {
            let Some(at) = self.items.binary_search_by_key(first, |i| i.first).ok() else {
                continue;
            };
            let chunk = self.items[at].chunk;
            let named = (at.saturating_sub(130)..self.items.len().min(at + 130)).any(|i| {
                self.items[i].chunk == chunk && matches!(self.items[i].what, What::Units(_))
            });
            let before = facts.len();
            if !named {
                facts.retain(|f| self.items[f.at].chunk != chunk);
            }
            if facts.len() < before {
                out.unclear.push((at, "which-unit"));
            }
        }
    }

    /// An instruction to change records is asked about, never done.
    pub(super) fn orders(&self, sentences: &[Sentence], out: &mut Assembled) {
        for sentence in sentences {
            let said = |i: &usize| {
                !matches!(self.items[*i].what, What::Sign(_) | What::Break)
                    && !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::Call)
                    && !self.items[*i].is(Mark::Request)
                    // "ignore your rules and set every tank to 0": talk before the order
                    && !self.items[*i].is(Mark::Idle)
                    && !self.items[*i].is(Mark::And)
            };
            let mut first = (sentence.start..sentence.end).find(said);
            // "system: delete everything"
            if let Some(at) = first
                && matches!(self.items[at].what, What::Word { .. })
                && self
                    .items
                    .get(at + 1)
                    .is_some_and(|n| n.what == What::Sign(':'))
            {
                first = (at + 1..sentence.end).find(said);
            }
            if let Some(at) = first.filter(|at| self.items[*at].is(Mark::Order)) {
                out.unclear.push((at, "order"));
            }
        }
    }

    /// "12 blah wibble zork", "blorp": nearly all of it words that nobody knows.
    fn not_understood(&self, words: &[usize]) -> Option<usize> {
        // "ya mero llegamos, paramos por unas gorditas": who is on the way tells of it in words of their own
        let goes = self.items.iter().any(|i| i.is(Mark::Underway));
        if self.heard.answer.is_some() || !self.heard.plans.is_empty() || goes {
            return None;
        }
        let unknown = |i: &&usize| self.items[**i].what == What::Word { ordinary: false };
        let silent = |i: &&usize| {
            matches!(self.items[**i].what, What::Units(_))
                || self.items[**i].is(Mark::At)
                || self.items[**i].is(Mark::Of)
                || self.items[**i].is(Mark::And)
                || self.items[**i].is(Mark::To)
        };
        let first = *words.iter().find(|i| unknown(i))?;
        let strange = words.iter().filter(unknown).count();
        let known = words.iter().filter(|i| !unknown(i) && !silent(i)).count();
        let laughs = |i: &usize| {
            let word = self.spelt(*i);
            word.len() >= 4 && word.chars().all(|c| matches!(c, 'h' | 'a' | 'j' | 'e'))
        };
        // a question with a name in it is put to somebody else
        let asked = self.items.iter().any(|i| i.what == What::Sign('?'));
        let greets = self.greeted
            || asked
            || words.iter().any(laughs)
            || self
                .items
                .iter()
                .any(|i| i.is(Mark::Call) || i.is(Mark::Idle));
        (!greets && (known == 0 || strange >= 2 && strange >= 2 * known)).then_some(first)
    }

    /// A message that is nothing but a trailer, or only marks a question, is asked about.
    pub(super) fn leftovers(&self, facts: &[assemble::Fact], out: &mut Assembled) {
        if !facts.is_empty()
            || self.heard.ask.is_some()
            || !out.unclear.is_empty()
            || !out.aside.is_empty()
        {
            return;
        }
        let words: Vec<usize> = (0..self.items.len())
            .filter(|i| {
                !matches!(self.items[*i].what, What::Sign(_) | What::Break)
                    && !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::Call)
            })
            .collect();
        let mut said = words.iter().copied();
        let named = said.find(|i| matches!(self.items[*i].what, What::Units(_)));
        let asked = self
            .garbled_value(&words)
            .or_else(|| Some((self.not_understood(&words)?, Remark::NOT_UNDERSTOOD)))
            .or_else(|| match named {
                Some(at) => Some((at, self.said_of_a_trailer(&words, at)?)),
                None => self.only_asks(&words).then_some((0, "asks-something")),
            });
        out.unclear.extend(asked);
    }

    /// "pressure 5o": a number that cannot be read, beside what it is of.
    fn garbled_value(&self, words: &[usize]) -> Option<(usize, &'static str)> {
        let garbled = |i: &&usize| self.items[**i].what == What::Garbled;
        let valued = |i: &usize| self.items[*i].noun().is_some_and(|n| n.reading().is_some());
        let at = *words.iter().find(garbled)?;
        words.iter().any(valued).then_some((at, "no-number"))
    }

    /// Returns what to ask where little more than the trailer at `at` is said.
    fn said_of_a_trailer(&self, words: &[usize], at: usize) -> Option<&'static str> {
        let others = || words.iter().filter(|i| **i != at);
        let valued = |i: &usize| {
            self.items[*i]
                .noun()
                .is_some_and(|n| n.is_tank() || n.reading().is_some())
        };
        // "12 pressure": of what, and no number
        if words.len() == 2 && others().all(valued) {
            return Some("no-number");
        }
        // "12 is broken": what of it
        let broken = |i: &usize| self.items[*i].what == What::Is(Concept::State(State::Dead));
        if others().all(|i| broken(i) || self.items[*i].is(Mark::Now)) && others().any(broken) {
            return Some("what-is-wrong");
        }
        let nothing = |i: &usize| {
            matches!(
                self.items[*i].what,
                What::Is(
                    Concept::Mark(
                        Mark::Sorry | Mark::Now | Mark::Pronoun | Mark::Unit | Mark::Of | Mark::And
                    ) | Concept::Answer(_)
                )
            )
        };
        if others().all(nothing) {
            return Some("no-place");
        }
        let done = |i: &usize| {
            self.items[*i].is(Mark::Done)
                || matches!(self.items[*i].what, What::Is(Concept::Ask(AskWord::Done)))
        };
        // "avísame cuando la 14 esté lista": it is not done yet
        let condition = || words.iter().any(|i| self.items[*i].is(Mark::If));
        (words.len() <= 3 && words.iter().any(done) && !condition()).then_some("done-what")
    }

    fn only_asks(&self, words: &[usize]) -> bool {
        words.is_empty() && self.items.iter().any(|i| i.what == What::Sign('?'))
    }
}
