//! What is said of one trailer and holds for another: "12 is leaking and so is 10", "la 12 no tiene agua, y la 10 tampoco".

use super::Reading;
use crate::words::assemble::{Fact, Says};
use crate::words::concept::Mark;
use crate::words::item::What;
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
