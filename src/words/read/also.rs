//! What is said of one trailer and holds for another: "12 is leaking and so is 10", "la 12 no tiene agua, y la 10 tampoco".

use super::Reading;
use crate::words::assemble::{Fact, Says};
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};
use crate::words::pair::Outcome;
use crate::words::scope::Scope;
use crate::words::senses::{Sense, Senses};

impl Reading<'_> {
    /// Adds, for each trailer of which only that is said, what was done or wrong at the one before it.
    pub(super) fn also(&self, facts: &mut Vec<Fact>, scopes: &[Scope], senses: &Senses) {
        for (at, scope) in scopes.iter().enumerate().skip(1) {
            let What::Units(group) = self.items[at].what else {
                continue;
            };
            let own = facts.iter().any(|fact| fact.group == Some(group));
            if own || scope.aside.is_some() || scope.doubt {
                continue;
            }
            if !self.says_also(at, senses) {
                continue;
            }
            let sentence = self.items[at].sentence;
            let before = |fact: &&Fact| {
                fact.at < at && self.items[fact.at].sentence == sentence && fact.group.is_some()
            };
            let Some(last) = facts.iter().rfind(before) else {
                continue;
            };
            let of = last.group;
            let holds = |fact: &&Fact| {
                let told = matches!(fact.says, Says::That(Outcome::Event(_) | Outcome::Fault(_)));
                told && fact.group == of
            };
            let same: Vec<Fact> = facts
                .iter()
                .filter(before)
                .filter(holds)
                .map(|fact| Fact {
                    group: Some(group),
                    ..*fact
                })
                .collect();
            facts.extend(same);
        }
    }

    /// "12 leveled. 14 leveled. both 55 psi": what a clause without a trailer of its own says of both holds for the only two
    /// that were named before it, each in a clause of its own.
    pub(super) fn both(&self, facts: &mut Vec<Fact>, senses: &Senses) {
        let trailers: Vec<(usize, usize)> = (0..self.items.len())
            .filter_map(|i| match self.items[i].what {
                What::Units(group) => Some((i, group)),
                _ => None,
            })
            .collect();
        // "26 and 27 arrived; 26 at 44 psi, 27 at 51 psi; both ...": those that were named alone, and no others
        let single = |(_, group): &&(usize, usize)| self.groups[*group].names.len() == 1;
        let mut alone = trailers.iter().rev().filter(single);
        let Some((last, two)) = alone.next() else {
            return;
        };
        let names = |group: &usize| &self.groups[*group].names;
        let Some((_, one)) = alone.find(|(_, group)| names(group) != names(two)) else {
            return;
        };
        let known = |(_, group): &(usize, usize)| {
            let pair = [&names(one)[0], &names(two)[0]];
            names(group).iter().all(|name| pair.contains(&name))
        };
        if !trailers.iter().all(known) {
            return;
        }
        let both = (last + 1..self.items.len())
            .find(|i| self.items[*i].is(Mark::All) && senses.has(self.spelt(*i), Sense::Both));
        let Some(both) = both else { return };
        let chunk = self.items[both].chunk;
        // "both pumps are dead": two things of the trailer named last
        let of_things = (self.items.get(both + 1)).is_some_and(|n| n.noun().is_some());
        let opens = both == 0 || self.items[both - 1].chunk != chunk;
        // "fresh full on both"
        let goes_on = |i: &Item| i.chunk == chunk && !matches!(i.what, What::Sign(_) | What::Break);
        let closes = both > 0
            && (self.items[both - 1].is(Mark::At)
                || self.items[both - 1].what == What::Is(Concept::State(State::On)))
            && !self.items.get(both + 1).is_some_and(goes_on);
        if of_things || !opens && !closes {
            return;
        }
        let beside = |fact: &&Fact| {
            fact.at > *last && self.items[fact.at].chunk == chunk && (closes || fact.at > both)
        };
        let said: Vec<Fact> = facts.iter().filter(beside).copied().collect();
        facts.retain(|fact| !beside(&fact));
        for group in [*one, *two] {
            facts.extend(said.iter().map(|fact| Fact {
                group: Some(group),
                ..*fact
            }));
        }
    }

    /// Tells whether the words beside a trailer say that the same holds for it.
    fn says_also(&self, at: usize, senses: &Senses) -> bool {
        let chunk = self.items[at].chunk;
        let says = |i: usize, sense| {
            self.items.get(i).is_some_and(|item| item.chunk == chunk)
                && senses.has(self.spelt(i), sense)
        };
        let led = at > 1 && self.items[at - 1].is(Mark::Aux) && says(at - 2, Sense::SoIs);
        led || says(at + 1, Sense::AlsoHolds)
    }
}
