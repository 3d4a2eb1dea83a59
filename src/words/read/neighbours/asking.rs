//! Words that ask, or set a condition, only where they open: once, is, does.

use super::Words;
use crate::heard::ShortAnswer;
use crate::words::concept::{AskWord, Concept, Mark, State};
use crate::words::item::What;
use crate::words::senses::Sense;

impl Words<'_> {
    /// "nope got water in it", "no we have power": an answer, and then a clause of which it denies nothing.
    pub(super) fn refusal(&mut self, at: usize) {
        // "thought the pump was dead but nope it's working"
        let opens = at == 0
            || self.items[at - 1].sentence != self.items[at].sentence
            || self.items[at - 1].is(Mark::But) && self.says(at, Sense::Refuses);
        if !self.items[at].is(Mark::No) || !opens || !self.same_chunk(at, at + 1) {
            return;
        }
        let next = &self.items[at + 1];
        // "nope leaking" may deny the leak
        let clause = next.is(Mark::Aux)
            || next.is(Mark::Pronoun)
            || self.names(at + 1)
            || next.noun().is_some() && !self.ends(at + 1);
        let answers = self.says(at, Sense::Refuses) && clause || self.says(at + 1, Sense::Subject);
        if answers {
            self.items[at].what = What::Is(Concept::Answer(ShortAnswer::No));
        }
    }

    /// "once 20 is pumped I'll close it": a condition, and not eleven.
    pub(super) fn once(&mut self, at: usize) {
        let Some(next) = self.items.get(at + 1) else {
            return;
        };
        let opens = at == 0 || self.items[at - 1].chunk != self.items[at].chunk;
        // "holler at me once 44 is over half"
        let called =
            (at.saturating_sub(3)..at).any(|i| self.same_chunk(at, i) && self.says(i, Sense::Me));
        if (opens || called)
            && self.says(at, Sense::Once)
            && matches!(self.items[at].what, What::Word { .. })
            && (self.names(at + 1) || next.is(Mark::Article))
        {
            self.items[at].what = What::Is(Concept::Mark(Mark::If));
        }
    }

    /// "ya no enfría nada": it says again what is wrong, and denies nothing.
    pub(super) fn nothing_at_all(&mut self, at: usize) {
        let said = self.items[at].is(Mark::Not) && self.says(at, Sense::NothingAtAll);
        let wrong = at.checked_sub(1).is_some_and(|i| {
            self.same_chunk(at, i)
                && matches!(
                    self.items[i].what,
                    What::Is(Concept::Fault(_) | Concept::State(State::Dead))
                )
        });
        if said && wrong {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "ni fuga ni mal olor": the first of them denies what follows.
    pub(super) fn nor(&mut self, at: usize) {
        if !self.items[at].is(Mark::Or) || !self.says(at, Sense::Nor) {
            return;
        }
        let denied = (0..at)
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| self.items[i].is(Mark::No) || self.items[i].is(Mark::Not));
        if !denied {
            self.items[at].what = What::Is(Concept::Mark(Mark::No));
        } else if self.names(at + 1) && at > 0 && self.names(at - 1) {
            // "pumped neither 9 nor 11": of both it is denied
            self.items[at].what = What::Is(Concept::Mark(Mark::And));
        }
    }

    /// "is the leak on 17 fixed yet", without its mark: nobody reports in that order.
    pub(super) fn asked(&mut self, at: usize) {
        // "12 is 104 volts ok": a trailer, and whether its value will do
        let of_a_trailer = at > 0
            && self.says(at, Sense::Is)
            && self.names(at - 1)
            && self
                .items
                .get(at + 1)
                .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some()))
            && self
                .items
                .get(at + 2)
                .is_some_and(|n| n.what == What::Is(Concept::State(State::Ok)))
            && self.ends(at + 2);
        let opens = self.items[..at - usize::from(of_a_trailer)]
            .iter()
            .rev()
            .take_while(|i| i.sentence == self.items[at].sentence)
            .all(|i| {
                i.is(Mark::Call)
                    || i.is(Mark::Unit)
                    || i.is(Mark::Article)
                    || matches!(i.what, What::Sign(_) | What::Break)
            });
        if !opens || !self.items[at].is(Mark::Aux) {
            return;
        }
        let verb = self.says(at, Sense::Asks);
        // "is 62 psi too much for 9"
        let value = self.says(at, Sense::Is)
            && self
                .items
                .get(at + 1)
                .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some()));
        if value {
            self.items[at].what = What::Is(Concept::Ask(AskWord::Advice));
            return;
        }
        let next = self.items.get(at + 1);
        let subject =
            next.is_some_and(|n| n.is(Mark::Article) || n.is(Mark::Unit)) || self.names(at + 1);
        if verb && subject && self.same_chunk(at, at + 1) {
            self.items[at].what = What::Is(Concept::Mark(Mark::Query));
        }
    }
}
