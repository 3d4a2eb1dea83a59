//! Whether the number after a place word is what a thing is at, and no trailer: "pressure at 50", "26F outside at 31".

use super::candidate::Candidate;
use super::near::{others, value};
use crate::words::attach::fits;
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Form, Item, Number, What};

impl Candidate<'_> {
    /// "pressure at 50", "winds at 30": alone in its clause the number is what the thing is at; of a trailer it would say
    /// nothing.
    pub(super) fn is_at_a_value(&self, place: usize) -> bool {
        let (items, at) = (self.items, self.at);
        let here = |i: &usize| items[*i].chunk == self.item.chunk;
        let thing = (0..place)
            .rev()
            .take_while(here)
            .find(|i| !items[*i].is_filler());
        let Some((thing, noun)) = thing.and_then(|i| Some((i, items[i].noun()?))) else {
            return false;
        };
        // "three quarters fresh in 26", "101 out here at 7": it has its value before it
        let told = thing.checked_sub(1).filter(here).is_some_and(|i| {
            let fits = |n: Number| fits(noun, n.unit, n.form == Form::Part);
            items[i].number().is_some_and(|n| {
                let measured = n.unit.is_some() || n.form == Form::Part;
                (measured || noun == Noun::Air) && fits(n)
            })
        });
        let v = value(self.item);
        let has_such = match noun {
            Noun::Pressure | Noun::Supply | Noun::AfterRegulator => (15.0..=250.0).contains(&v),
            Noun::Wind | Noun::Gust => v <= 120.0,
            Noun::Volts => (90.0..=260.0).contains(&v),
            Noun::Air => (-60.0..=130.0).contains(&v),
            Noun::Waste | Noun::Fresh => (15.0..=100.0).contains(&v),
            _ => false,
        };
        let says_more = |i: usize| {
            let well = items[i].what == What::Is(Concept::State(State::Ok));
            !well
                && matches!(
                    items[i].what,
                    What::Is(
                        Concept::State(_)
                            | Concept::Event(_)
                            | Concept::Fault(_)
                            | Concept::Level(_)
                            | Concept::Ask(_)
                            | Concept::Need(_)
                    ) | What::Code
                        | What::Units(_)
                )
                || items[i].number().is_some() && i != at
                || items[i].is(Mark::Query)
        };
        let near = (0..at)
            .rev()
            .take_while(here)
            .chain((at + 1..items.len()).take_while(here));
        let alone = !near.into_iter().any(says_more);
        let valued = |i: usize| {
            let next = items.get(i + 1).and_then(Item::noun);
            items[i].number().is_some_and(|n| n.unit.is_some())
                || next.is_some_and(|n| n.reading().is_some())
        };
        let goes_on = items.get(at + 1).is_some_and(|n| n.what == What::Sign(','))
            && items
                .get(at + 2)
                .is_some_and(|n| n.number().is_some() || n.is(Mark::And))
            && (self.named.is_empty() || !valued(at + 2));
        let asked = items[at..]
            .iter()
            .take_while(|i| i.sentence == self.item.sentence)
            .any(|i| i.what == What::Sign('?'));
        // "12 chocked, winds at 22 and 2 cords live": one of several values of the trailer that was named
        let named = || !self.named.is_empty() || others(items, at);
        // "low pressure at 45", "no pressure at 45"
        let wrong = thing.checked_sub(1).filter(here).is_some_and(|i| {
            items[i].is(Mark::No)
                || items[i].is(Mark::Not)
                || matches!(
                    items[i].what,
                    What::Is(Concept::State(_) | Concept::Fault(_))
                )
        });
        let listed = || named() && !wrong && self.another_value_follows();
        has_such && !told && place + 1 == at && !goes_on && !asked && (alone || listed())
    }

    /// Tells whether the number is followed by a value with a noun or a measure of its own, or by nothing.
    fn another_value_follows(&self) -> bool {
        let here = |i: &usize| self.items[*i].chunk == self.item.chunk;
        let mut after = (self.at + 1..self.items.len())
            .take_while(here)
            .skip_while(|i| self.items[*i].is_filler() && !self.items[*i].is(Mark::Article));
        let Some(next) = after.next().filter(|i| !self.items[*i].is(Mark::And)) else {
            return true;
        };
        let valued = |i: usize| {
            let noun = self.items.get(i).and_then(Item::noun);
            noun.is_some_and(|noun| noun.reading().is_some())
        };
        match self.items[next].what {
            What::Sign(_) => true,
            What::Number(n) => n.unit.is_some() || valued(next + 1),
            _ if self.items[next].is(Mark::Article) || self.items[next].is(Mark::Unit) => true,
            _ => {
                let told = |i: &usize| {
                    self.items[*i].number().is_some()
                        || matches!(self.items[*i].what, What::Is(Concept::Level(_)))
                };
                valued(next)
                    && (next + 1..self.items.len())
                        .take(3)
                        .take_while(here)
                        .any(|i| told(&i))
            }
        }
    }

    /// "26F outside at 31": the noun before the place word has its value before it, in a measure.
    pub(super) fn told_before_its_noun(&self, place: usize) -> bool {
        let Some(noun) = (0..place).rev().find(|i| !self.items[*i].is_filler()) else {
            return false;
        };
        let value = noun.checked_sub(1).map(|i| &self.items[i]);
        let told = value
            .filter(|v| v.chunk == self.item.chunk)
            .and_then(Item::number);
        let fits = |noun| told.is_some_and(|n| n.unit.is_some() && fits(noun, n.unit, false));
        self.items[noun].noun().is_some_and(fits)
    }
}
