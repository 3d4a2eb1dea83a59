//! Which trailer each fact is about.

use std::ops::Range;

use super::{Fact, Says};
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};
use crate::words::pair::Outcome;
use crate::words::scope::{Scope, Sentence};

/// Gives each fact its trailers.
pub(in crate::words) fn assign(
    facts: &mut Vec<Fact>,
    items: &[Item],
    sentences: &[Sentence],
    scope: &[Scope],
) {
    let units: Vec<Place> = items
        .iter()
        .enumerate()
        .filter_map(|(at, item)| match item.what {
            What::Units(group) => Some(Place { at, group }),
            _ => None,
        })
        .collect();
    let mut assigning = Assigning {
        facts,
        items,
        scope,
        current: None,
        unplaced: Vec::new(),
        also: Vec::new(),
    };
    for sentence in sentences {
        let from = units.partition_point(|unit| unit.at < sentence.start);
        let to = units.partition_point(|unit| unit.at < sentence.end);
        assigning.sentence(sentence, &units[from..to]);
    }
    let Assigning { unplaced, also, .. } = assigning;
    // said before any trailer was named: clear only where the message names one group
    if let Some(first) = units.first()
        && units.iter().all(|unit| unit.group == first.group)
    {
        for fact in unplaced {
            facts[fact].group = Some(first.group);
        }
    }
    if !also.is_empty() {
        facts.extend(also);
        facts.sort_by_key(|fact| fact.at);
    }
}

/// Where a group of trailers is named.
#[derive(Clone, Copy)]
struct Place {
    at: usize,
    group: usize,
}

/// What is known on the way through a message.
struct Assigning<'a> {
    facts: &'a mut [Fact],
    items: &'a [Item],
    scope: &'a [Scope],
    /// The group that the last sentence with any named last.
    current: Option<usize>,
    /// Facts told before any trailer.
    unplaced: Vec<usize>,
    /// Facts that an "also" says of one more trailer.
    also: Vec<Fact>,
}

impl Assigning<'_> {
    fn sentence(&mut self, sentence: &Sentence, named: &[Place]) {
        let mut pending: Vec<usize> = Vec::new();
        let mut said_before: Vec<usize> = Vec::new();
        let mut in_sentence: Option<usize> = None;
        let mut at = sentence.start;
        while at < sentence.end {
            let chunk = self.items[at].chunk;
            let end = (at..sentence.end)
                .find(|i| self.items[*i].chunk != chunk)
                .unwrap_or(sentence.end);
            let from = self.facts.partition_point(|fact| fact.at < at);
            let to = self.facts.partition_point(|fact| fact.at < end);
            let units: Vec<Place> = named
                .iter()
                .filter(|unit| (at..end).contains(&unit.at))
                .copied()
                .collect();
            match (units.as_slice(), in_sentence) {
                ([], None) => pending.extend(from..to),
                ([], Some(group)) => self.give(from..to, group),
                ([first, ..], _) => {
                    self.by_place(at, from..to, &units, in_sentence.or(self.current));
                    // what was said before in this sentence without a trailer is about the one named last
                    let planned = units.iter().all(|unit| {
                        self.scope[unit.at].aside.is_some() || self.scope[unit.at].doubt
                    });
                    // "14 battery 12.0; 31 mph wind, 44: pressure 58": one that opens what follows takes nothing from before
                    let opens = from == to && self.is_told_something(*first, units.get(1));
                    if from == to && !planned && !opens || self.current.is_none() {
                        self.give(pending.drain(..), first.group);
                    }
                    in_sentence = units.last().map(|unit| unit.group);
                    if from == to && closes_with_also(self.items, at, end) {
                        self.say_again(&said_before, *first);
                    }
                }
            }
            if from < to {
                said_before = (from..to).filter(|fact| self.is_said(*fact)).collect();
            }
            at = end;
        }
        match self.current {
            Some(group) => self.give(pending, group),
            None => self.unplaced.extend(pending),
        }
        self.current = in_sentence.or(self.current);
    }

    fn give(&mut self, facts: impl IntoIterator<Item = usize>, group: usize) {
        for fact in facts {
            self.facts[fact].group = Some(group);
        }
    }

    /// Gives the facts of a chunk that starts at `start` to the trailers named in it, by what stands before what; `spoken_of`
    /// is the group that was spoken of before.
    fn by_place(
        &mut self,
        start: usize,
        mut facts: Range<usize>,
        units: &[Place],
        spoken_of: Option<usize>,
    ) {
        let first = units[0].at;
        if let Some(group) = spoken_of
            && let Some(and) = and_before(self.items, start, first)
        {
            let to = self.facts.partition_point(|fact| fact.at < and);
            let value = |fact: &usize| matches!(self.facts[*fact].says, Says::Value(_));
            // "9 leveled, chocked and 14" may say it of both, a value is of one
            let own = self.is_told_something(units[0], units.get(1))
                || (facts.start..to).all(|fact| value(&fact));
            if own {
                self.give(facts.start..to, group);
                facts.start = to;
            }
        }
        let opens = facts.is_empty() || first < self.facts[facts.start].at;
        // a number's noun counts as the fact's place: "pressure on 12 55"
        let leading = opens && !noun_before(self.items, start, first);
        for fact in &mut self.facts[facts] {
            let before = units.iter().rev().find(|unit| unit.at < fact.at);
            let after = units.iter().find(|unit| unit.at > fact.at);
            let told = before.is_some_and(|unit| is_told_of(self.items, unit.at, fact));
            let unit = match leading || told || units.len() == 1 {
                true => before.or(after),
                false => after.or(before),
            };
            fact.group = unit.map(|unit| unit.group);
        }
    }

    /// Tells whether something is said behind a trailer in its sentence, before the next one.
    fn is_told_something(&self, unit: Place, next: Option<&Place>) -> bool {
        let sentence = self.items[unit.at].sentence;
        let ends = |at: usize| {
            self.items[at].sentence != sentence
                || next.is_some_and(|next| at >= next.at)
                || at != unit.at && matches!(self.items[at].what, What::Units(_))
        };
        let end = (unit.at..self.items.len()).find(|at| ends(*at));
        let end = end.unwrap_or(self.items.len());
        self.facts
            .iter()
            .any(|fact| (unit.at + 1..end).contains(&fact.at))
    }

    /// Says of one more trailer what the clause before it said.
    fn say_again(&mut self, facts: &[usize], unit: Place) {
        let again = facts.iter().map(|fact| Fact {
            at: unit.at,
            group: Some(unit.group),
            ..self.facts[*fact]
        });
        self.also.extend(again);
    }

    fn is_said(&self, fact: usize) -> bool {
        matches!(
            self.facts[fact].says,
            Says::That(Outcome::Event(_) | Outcome::Fault(_))
        )
    }
}

/// "pressure on 12 is 55 and on 14 is 60": what stands right after its trailer; "el de la 18 está a tres cuartos y el de la
/// 19 a la mitad".
fn is_told_of(items: &[Item], unit: usize, fact: &Fact) -> bool {
    let between = &items[unit + 1..fact.at];
    let value = matches!(fact.says, Says::Value(_));
    between
        .iter()
        .all(|item| item.is_filler() || item.is(Mark::At) || item.is(Mark::To))
        && between
            .iter()
            .any(|item| item.is(Mark::Aux) || value && item.is(Mark::Filler))
}

/// "14, water on 41 psi and unit 31 outlet 125 volts": finds the "and" that opens what is said of the trailer at `unit`.
fn and_before(items: &[Item], start: usize, unit: usize) -> Option<usize> {
    let leads = |item: &Item| {
        item.is(Mark::Unit)
            || item.is(Mark::Article)
            || item.is(Mark::At)
            || matches!(
                item.what,
                What::Sign('#') | What::Is(Concept::State(State::On))
            )
    };
    let before = (start..unit).rev().find(|i| !leads(&items[*i]))?;
    items[before].is(Mark::And).then_some(before)
}

/// "25 is in the yard, 26 also": the clause says of its trailer what the one before said.
fn closes_with_also(items: &[Item], start: usize, end: usize) -> bool {
    items[start..end]
        .iter()
        .rev()
        .find(|i| !matches!(i.what, What::Sign(_) | What::Break))
        .is_some_and(|i| i.is(Mark::And))
}

/// Tells whether the chunk opens with a noun whose value comes after the trailer: "pressure on 12 is 60".
fn noun_before(items: &[Item], start: usize, unit: usize) -> bool {
    items[start..unit]
        .iter()
        .any(|i| i.noun().is_some_and(|n| n.reading().is_some()) || i.number().is_some())
}
