//! What a number takes from the words before: the noun of the clause before it, the tank or hose spoken of.

use super::Placer;
use super::surroundings::chunk;
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Number, What};

impl Placer<'_> {
    /// "waste was 95% yesterday, 40% now", "fresh 80% at 11, 35% at 3": said of a later time, with no noun of its own,
    /// a level is that of the one tank the sentence spoke of.
    pub(super) fn still(&self, at: usize, number: Number) -> Option<(usize, Noun)> {
        let level = matches!(number.form, Form::Part | Form::Level)
            || number.unit == Some(Unit::Pct)
            || number.value == 0.0 && number.unit.is_none();
        let timed = chunk(self.items, at)
            .any(|i| self.items[i].is(Mark::Now) || matches!(self.items[i].what, What::Clock(_)));
        let bare = chunk(self.items, at).all(|i| {
            self.items[i].noun().is_none()
                && !matches!(
                    self.items[i].what,
                    What::Word { .. } | What::Units(_) | What::Is(Concept::State(_))
                )
        });
        if !(level && bare) {
            return None;
        }
        let mut found: Option<(usize, Noun)> = None;
        for i in (0..at)
            .rev()
            .take(24)
            .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
        {
            let noun = match self.items[i].what {
                What::Is(Concept::Noun(noun)) if noun.is_tank() => noun,
                What::Is(Concept::Event(Event::FreshFilled | Event::FreshDrained)) => Noun::Fresh,
                What::Is(Concept::Event(Event::WastePumped)) => Noun::Waste,
                _ => continue,
            };
            match found {
                None => found = Some((i, noun)),
                Some((_, other)) if other == noun => {}
                Some(_) => return None,
            }
        }
        // "filled the fresh tank on 33, it stood at 100%": what was just done to it says which
        let done = |at: usize| {
            matches!(self.items[at].what, What::Is(Concept::Event(_)))
                || chunk(self.items, at)
                    .any(|i| self.items[i].what == What::Is(Concept::State(State::Filled)))
        };
        found.filter(|(i, noun)| timed || *noun == Noun::Fresh && done(*i))
    }

    /// "filled the fresh on 20 to 90 percent": the level that what was filled came to.
    pub(super) fn filled_to(&self, at: usize) -> Option<(usize, Noun)> {
        let to = at.checked_sub(1).filter(|i| self.items[*i].is(Mark::To))?;
        chunk(self.items, to)
            .find(|i| self.items[*i].what == What::Is(Concept::Event(Event::FreshFilled)))
            .filter(|i| *i < to)
            .map(|i| (i, Noun::Fresh))
    }

    /// A number with no noun of its own takes the one before it where the clauses run alike: "12 has 4 cords, 14 has 2".
    pub(super) fn carried(&self, at: usize) -> Option<Noun> {
        let (before, noun, form) = self.last?;
        if self.items[before].sentence != self.items[at].sentence {
            return None;
        }
        let level = |form: Form| matches!(form, Form::Part | Form::Level);
        let here = match self.items[at].what {
            What::Number(number) => number.form,
            What::Is(Concept::Level(_)) => Form::Level,
            _ => return None,
        };
        if level(form) != level(here) {
            return None;
        }
        // a trailer must stand between them, or right after this one
        let between = (before + 1..at).any(|i| matches!(self.items[i].what, What::Units(_)));
        let after = (at + 1..self.items.len())
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At));
        let after = after.is_some_and(|i| matches!(self.items[i].what, What::Units(_)));
        let own = chunk(self.items, at).all(|i| i <= before || self.items[i].noun().is_none());
        ((between || after) && own).then_some(noun)
    }

    /// "yesterday 5 had 60 psi, today 48": the number of now has the measure of the one that was.
    pub(super) fn once_more(&self, at: usize, number: Number) -> Option<(Number, Option<Noun>)> {
        let now = chunk(self.items, at).any(|i| self.items[i].is(Mark::Now))
            && chunk(self.items, at).all(|i| {
                self.items[i].noun().is_none_or(|n| n.reading().is_none())
                    && !matches!(
                        self.items[i].what,
                        What::Number(_) | What::Range(..) | What::Units(_) | What::Code
                    )
            });
        if !now {
            return None;
        }
        let before = self.items[..at]
            .iter()
            .enumerate()
            .rev()
            .take(16)
            .take_while(|(_, i)| i.sentence == self.items[at].sentence)
            .find(|(_, i)| matches!(i.what, What::Number(_)))?;
        let past = self.scope[before.0].was || self.scope[before.0].aside.is_some();
        // without a measure it takes the noun that the other had
        let unit = before.1.number()?.unit;
        let noun = self.out.iter().rev().find(|p| p.at == before.0)?.noun;
        let known = unit.is_some() || noun.is_some();
        (past && known && number.form != Form::Part).then_some((Number { unit, ..number }, noun))
    }

    /// "6 bar before the regulator, 3.4 after it": the measure of the pressure told just before.
    pub(super) fn metric_before(&self, at: usize) -> Option<Unit> {
        self.items[..at]
            .iter()
            .rev()
            .take(10)
            .take_while(|i| i.sentence == self.items[at].sentence)
            .find_map(|i| i.number()?.unit)
            .filter(|unit| matches!(unit, Unit::Bar | Unit::KgCm2))
    }

    /// Tells whether a trailer is named for certain near the number, so that the number cannot be one.
    pub(super) fn trailer_named(&self, at: usize) -> bool {
        (at.saturating_sub(12)..self.items.len().min(at + 8)).any(|i| {
            matches!(self.items[i].what, What::Units(_))
                && self.items[i].sentence + 3 > self.items[at].sentence
        })
    }

    /// Finds the tank that the sentence spoke of before: "filled the fresh tank, now at 150 gal".
    pub(super) fn tank_before(&self, at: usize) -> Option<Noun> {
        self.tank_within(at, 12)
    }

    /// As [`Placer::tank_before`], within so many items: what a gauge shows may be told long after its tank.
    pub(super) fn tank_within(&self, at: usize, reach: usize) -> Option<Noun> {
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        (0..at)
            .rev()
            .take(reach)
            .take_while(here)
            .find_map(|i| match self.items[i].what {
                What::Is(Concept::Noun(noun)) if noun.is_tank() && noun != Noun::Fuel => Some(noun),
                What::Is(Concept::Event(Event::FreshFilled)) => Some(Noun::Fresh),
                _ => None,
            })
    }

    /// Finds the tank that is named without a level of its own right behind a lamp or gauge that shows one.
    pub(super) fn tank_after(&self, at: usize) -> Option<(usize, Noun)> {
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        let tank = (at + 1..self.items.len())
            .take(10)
            .take_while(here)
            .find_map(|i| Some((i, self.items[i].noun().filter(|noun| noun.is_tank())?)));
        tank.filter(|(i, _)| !self.owns(*i, at))
    }

    /// Finds the hose or cord that the sentence spoke of before: "the hose on 9, 50 ft of it".
    pub(super) fn run_before(&self, at: usize) -> Option<Noun> {
        let plain = chunk(self.items, at).all(|i| {
            self.items[i].noun().is_none() && !matches!(self.items[i].what, What::Word { .. })
        });
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        (0..at).rev().take(12).take_while(here).find_map(|i| {
            self.items[i]
                .noun()
                .filter(|n| matches!(n, Noun::Hose | Noun::Cord))
                .filter(|_| self.taken[i].is_none() && plain)
        })
    }
}
