//! Numbers that the words after them tell from a trailer: 88 inside, 60 at 12, 26 outside.

use super::candidate::Verdict::{self, Likely, No};
use super::candidate::{Candidate, plain};
use super::near::{chunk_ends, counts, noun_earlier, value};
use crate::words::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use crate::words::item::{Item, What};

impl Candidate<'_> {
    /// Values that the words after them tell from a trailer: 88 inside, 60 at 12, 26 outside.
    pub(super) fn value_by_what_follows(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        let adjacent = self.next == Some(at + 1);
        if self.goes_on_a_series() {
            return Some(Likely);
        }
        let inside = adjacent
            && self.next_item().is_some_and(|n| n.is(Mark::Inside))
            && value(self.item) >= 30.0
            && chunk_ends(items, at + 1);
        let spoken_of = noun_earlier(items, at) || measured_earlier(items, at);
        if inside
            || self.reached()
            || self.of_now()
            || self.after_a_regulator()
            || self.before_its_place() && spoken_of
        {
            return Some(No);
        }
        if self.regulated() {
            return Some(Likely);
        }
        // "right now 41 outside 12"
        let now = (0..at)
            .rev()
            .take(3)
            .take_while(|i| items[*i].chunk == self.item.chunk)
            .any(|i| items[i].is(Mark::Now));
        let here = adjacent
            && now
            && self
                .next_item()
                .is_some_and(|n| n.noun() == Some(Noun::Air) && n.end == n.first + 1)
            && items
                .get(at + 2)
                .is_some_and(|n| n.number().is_some_and(plain))
            && chunk_ends(items, at + 2);
        if here {
            return Some(No);
        }
        if self.at_the_outlet() {
            return Some(No);
        }
        if self.outside_of() {
            return Some(Likely);
        }
        (self.aired() || outside(items, at)).then_some(No)
    }

    /// "if 12 hits 80 text me": what the trailer gets to, and no second one.
    fn reached(&self) -> bool {
        let gets_to = self
            .prior_item()
            .is_some_and(|p| p.what == What::Is(Concept::Ask(AskWord::Fill)) || p.is(Mark::To));
        gets_to
            && self.named_in_sentence()
            && value(self.item) <= 100.0
            && self.items[..self.at]
                .iter()
                .rev()
                .take_while(|i| i.sentence == self.item.sentence)
                .any(|i| i.is(Mark::If))
    }

    /// "nineteen degrees outside 15": the air was told before the word, and this is where.
    fn outside_of(&self) -> bool {
        let Some(air) = self.prior.filter(|p| {
            *p > 0
                && *p + 1 == self.at
                && self.items[*p].noun() == Some(Noun::Air)
                && self.items[*p].end == self.items[*p].first + 1
        }) else {
            return false;
        };
        let told = &self.items[air - 1];
        let opens = air < 2 || self.items[air - 2].chunk != told.chunk;
        told.chunk == self.item.chunk
            && told.number().is_some_and(|n| match n.unit {
                Some(Unit::Deg | Unit::DegF | Unit::DegC) => true,
                // "right now 41 outside 12"; in "la 18 temp 101" the first is the trailer
                None => {
                    !opens && self.items[air - 2].is(Mark::Now) && chunk_ends(self.items, self.at)
                }
                _ => false,
            })
    }

    /// "121 at the outlet".
    fn at_the_outlet(&self) -> bool {
        let place = self.items.get(self.at + 1).is_some_and(|n| n.is(Mark::At));
        place
            && self.items[self.at + 2..]
                .iter()
                .take(2)
                .find(|n| !n.is(Mark::Article))
                .is_some_and(|n| n.noun() == Some(Noun::Plug))
    }

    /// "12 is at 50 psi, 14 at 62": after a trailer that is at a value, another that is at one.
    fn goes_on_a_series(&self) -> bool {
        let at_word = |i: usize| self.items.get(i).is_some_and(|n| n.is(Mark::At));
        let number = |i: usize| self.items.get(i).and_then(Item::number);
        let opens = self.prior.is_none_or(|p| self.items[p].is(Mark::And));
        let here = opens
            && at_word(self.at + 1)
            && number(self.at + 2).is_some_and(|n| n.value >= 15.0)
            && chunk_ends(self.items, self.at + 2);
        here && self.named_in_sentence()
            && self.named.iter().rev().take(4).any(|n| {
                let value = (n.at + 1..self.at)
                    .take(4)
                    .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At));
                value.is_some_and(|i| i > n.at + 1 && number(i).is_some())
            })
    }

    /// "60 at 12 and 85 at 14": a number before the place of a trailer.
    fn before_its_place(&self) -> bool {
        let (items, at) = (self.items, self.at);
        let Some(n) = self.next.filter(|n| *n == at + 1) else {
            return false;
        };
        // "48 psi on 7 at 6": a place itself
        let placed = self.before.is_some_and(|b| {
            b.is(Mark::At) || b.is(Mark::Unit) || b.what == What::Is(Concept::State(State::On))
        });
        if placed {
            return false;
        }
        let at_word = items[n].is(Mark::At) || items[n].what == What::Is(Concept::State(State::On));
        // "closed 9 for the night": no trailer follows the article
        let the = items.get(n + 1).is_some_and(|u| u.is(Mark::Article))
            && items
                .get(n + 2)
                .is_some_and(|u| u.what == What::Code || u.is(Mark::Unit) || u.number().is_some());
        let trailer = the
            || items.get(n + 1).is_some_and(|u| {
                u.what == What::Code
                    || u.is(Mark::Unit)
                    || matches!(u.what, What::Number(n) if plain(n))
            });
        let counted = items
            .get(n + 2)
            .is_some_and(|c| c.noun().is_some_and(counts));
        at_word && trailer && !counted
    }

    /// "4.1 bar at 52 after the regulator": the value was said before.
    fn regulated(&self) -> bool {
        let after = matches!(
            self.next_item().and_then(Item::noun),
            Some(Noun::AfterRegulator | Noun::BeforeRegulator)
        );
        let measured = |i: usize| {
            self.items[i]
                .number()
                .is_some_and(|n| n.unit.is_some_and(Unit::is_pressure))
        };
        after
            && self.prior_item().is_some_and(|p| p.is(Mark::At))
            && (0..self.at)
                .rev()
                .take(6)
                .take_while(|i| self.items[*i].chunk == self.item.chunk)
                .any(measured)
    }

    /// "wind 18 mph, 26 outside": the air, where the words before gave another value.
    fn aired(&self) -> bool {
        let (items, at) = (self.items, self.at);
        self.next == Some(at + 1)
            && self.next_item().and_then(Item::noun) == Some(Noun::Air)
            && chunk_ends(items, at + 1)
            && items.get(at + 2).is_none_or(|n| n.number().is_none())
            && self.prior_item().is_none_or(|p| p.is(Mark::And))
            && items[..at]
                .iter()
                .rev()
                .take_while(|i| i.sentence == self.item.sentence)
                .any(|i| matches!(i.what, What::Number(_)))
    }

    /// "Midway row: 101 waste half, 102 waste 1/4": under a heading, where the next clause opens in the same way.
    pub(super) fn heads_a_list(&self) -> bool {
        let headed = self.at > 0 && self.items[self.at - 1].what == What::Sign(':');
        let chunk = self.item.chunk;
        let mut later = self.items[self.at..]
            .iter()
            .skip_while(|i| i.chunk == chunk);
        let another = later.find(|i| !matches!(i.what, What::Sign(_) | What::Break));
        let noun = self.items.get(self.at + 1).and_then(Item::noun);
        headed
            && self.opens_a_value()
            && another.and_then(Item::number).is_some_and(plain)
            && noun.is_some()
            && later.next().and_then(Item::noun) == noun
    }

    /// "44 now on 21": a value of now, where the trailer is named right behind it.
    pub(super) fn now_at_a_place(&self) -> bool {
        let here = |i: usize| {
            let item = self.items.get(i)?;
            (item.chunk == self.item.chunk).then_some(item)
        };
        let now = here(self.at + 1).is_some_and(|n| n.is(Mark::Now));
        let place = here(self.at + 2)
            .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)));
        let name =
            here(self.at + 3 + usize::from(here(self.at + 3).is_some_and(|n| n.is(Mark::Article))));
        let named = name.is_some_and(|n| n.what == What::Code || n.number().is_some_and(plain));
        now && place && named
    }
}

/// Tells whether a pressure or the like was told earlier in the sentence: "55 psi on 12, 60 on 14".
fn measured_earlier(items: &[Item], at: usize) -> bool {
    (0..at)
        .rev()
        .take(10)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| {
            items[i].number().is_some_and(|n| {
                n.unit
                    .is_some_and(|unit| unit == Unit::Volt || unit.is_pressure())
            })
        })
}

/// "26 outside" with no more in its sentence: the air, for no trailer is only outside.
fn outside(items: &[Item], at: usize) -> bool {
    items
        .get(at + 1)
        .is_some_and(|n| n.noun() == Some(Noun::Air) && n.end == n.first + 1)
        && items.get(at + 2).is_none_or(|n| {
            n.sentence != items[at].sentence || matches!(n.what, What::Sign(_) | What::Break)
        })
        && (at == 0 || items[at - 1].chunk != items[at].chunk || items[at - 1].is_filler())
        && (at > 0 && items[at - 1].chunk == items[at].chunk
            || items[at + 2..]
                .iter()
                .all(|i| matches!(i.what, What::Sign(_) | What::Break)))
}
