//! Whether the number after a place word is what a thing is at, and no trailer: "pressure at 50", "26F outside at 31".

use super::candidate::Candidate;
use super::near::{others, value};
use crate::words::attach::fits;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
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
        let goes_on = items.get(at + 1).is_some_and(|n| n.what == What::Sign(','))
            && items
                .get(at + 2)
                .is_some_and(|n| n.number().is_some() || n.is(Mark::And))
            && (self.named.is_empty() || !self.has_a_noun(at + 2));
        let asked = items[at..]
            .iter()
            .take_while(|i| i.sentence == self.item.sentence)
            .any(|i| i.what == What::Sign('?'));
        // "out here at 3, -8F": the air is told with its measure
        let told_otherwise = noun == Noun::Air
            && items.iter().enumerate().any(|(i, n)| {
                let degrees =
                    |n: Number| matches!(n.unit, Some(Unit::DegF | Unit::DegC | Unit::Deg));
                i != at && n.sentence == self.item.sentence && n.number().is_some_and(degrees)
            });
        place + 1 == at
            && !told_otherwise
            && has_such(noun, value(self.item))
            && !self.has_its_value(thing, noun)
            && !goes_on
            && !asked
            && (self.is_alone() || self.is_listed(thing))
    }

    /// "three quarters fresh in 26", "101 out here at 7": tells whether a thing has its value before it.
    fn has_its_value(&self, thing: usize, noun: Noun) -> bool {
        let before = thing.checked_sub(1).map(|i| &self.items[i]);
        let number = before
            .filter(|item| item.chunk == self.item.chunk)
            .and_then(Item::number);
        number.is_some_and(|n| {
            let measured = n.unit.is_some() || n.form == Form::Part;
            (measured || noun == Noun::Air) && fits(noun, n.unit, n.form == Form::Part)
        })
    }

    /// Tells whether the clause says nothing else that a trailer could be told of.
    fn is_alone(&self) -> bool {
        let (items, at) = (self.items, self.at);
        let here = |i: &usize| items[*i].chunk == self.item.chunk;
        let says_more = |i: usize| {
            let well = items[i].what == What::Is(Concept::State(State::Ok));
            let says = matches!(
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
            );
            !well && says || items[i].number().is_some() && i != at || items[i].is(Mark::Query)
        };
        let before = (0..at).rev().take_while(here);
        let mut near = before.chain((at + 1..items.len()).take_while(here));
        !near.any(says_more)
    }

    /// "12 chocked, winds at 22 and 2 cords live": tells whether it is one of several values of the trailer that was named.
    fn is_listed(&self, thing: usize) -> bool {
        let named = || !self.named.is_empty() || others(self.items, self.at);
        // "low pressure at 45", "no pressure at 45"
        let before = thing.checked_sub(1).map(|i| &self.items[i]);
        let before = before.filter(|item| item.chunk == self.item.chunk);
        let wrong = before.is_some_and(|item| {
            let state = matches!(item.what, What::Is(Concept::State(_) | Concept::Fault(_)));
            state || item.is(Mark::No) || item.is(Mark::Not)
        });
        named() && !wrong && self.another_value_follows()
    }

    /// Tells whether a number has a measure of its own, or a noun right behind it.
    fn has_a_noun(&self, at: usize) -> bool {
        let next = self.items.get(at + 1).and_then(Item::noun);
        self.items[at].number().is_some_and(|n| n.unit.is_some())
            || next.is_some_and(|n| n.reading().is_some())
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

/// Tells whether a thing can be at such a value.
fn has_such(noun: Noun, value: f64) -> bool {
    match noun {
        Noun::Pressure | Noun::Supply | Noun::AfterRegulator => (15.0..=250.0).contains(&value),
        Noun::Wind | Noun::Gust => value <= 120.0,
        Noun::Volts => (90.0..=260.0).contains(&value),
        Noun::Air => (-60.0..=130.0).contains(&value),
        Noun::Waste | Noun::Fresh => (15.0..=100.0).contains(&value),
        _ => false,
    }
}
