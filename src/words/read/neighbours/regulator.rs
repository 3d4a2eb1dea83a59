//! The side of the regulator that a pressure was read at, where only the words around say that there is one.

use super::Words;
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Item, What};
use crate::words::senses::Sense;

/// What taps of a site give, psi; fewer may as well be a trailer.
const SOURCE_PSI: std::ops::RangeInclusive<f64> = 30.0..=200.0;
/// What regulators of trailers can be set to, psi.
const REGULATED_PSI: std::ops::RangeInclusive<f64> = 20.0..=90.0;

impl Words<'_> {
    /// "the reg on 16 is bad": where it is, and not that it was fitted.
    pub(super) fn regulator_on(&mut self, at: usize) {
        let fitted = self.items[at].what == What::Is(Concept::Event(Event::RegulatorFitted))
            && self.says(at, Sense::RegulatorOn);
        let is = self.items.get(at + 2).is_some_and(|n| {
            let says = n.is(Mark::Aux)
                || matches!(n.what, What::Is(Concept::State(_) | Concept::Fault(_)));
            says && self.same_chunk(at, at + 2)
        });
        if fitted && self.names(at + 1) && is {
            self.items[at].what = What::Is(Concept::Noun(Noun::Regulator));
        }
    }

    /// "reg set 45": where it is set, and no trailer.
    pub(super) fn regulator_set(&mut self, at: usize) {
        let set = at > 0
            && self.says(at, Sense::RegulatorSet)
            && self.items[at - 1].noun() == Some(Noun::Regulator)
            && self.same_chunk(at, at - 1)
            && self.same_chunk(at, at + 1);
        let to = self
            .bare_number(at + 1)
            .is_some_and(|v| REGULATED_PSI.contains(&v));
        if set && to {
            self.items[at + 1].what = What::Labelled;
        }
    }

    /// "3.2 bar after the regulator, 6 bar before", "450 kPa before I fitted the reg, 330 after".
    pub(super) fn regulator_side(&mut self, at: usize) {
        let before = self.says(at, Sense::BeforeIt);
        let after = self.says(at, Sense::AfterIt);
        if !(before || after)
            || !matches!(
                self.items[at].what,
                What::Is(Concept::Mark(Mark::Clock | Mark::Plan) | Concept::Answer(_))
            )
        {
            return;
        }
        let pressure = |i: &Item| {
            i.number()
                .is_some_and(|n| n.unit.is_some_and(Unit::is_pressure))
        };
        let sentence = self.items[at].sentence;
        let near = |i: &Item| i.sentence == sentence;
        let around = at.saturating_sub(40)..self.items.len().min(at + 40);
        let spoken_of = self.items[around].iter().filter(|i| near(i)).any(|i| {
            matches!(
                i.noun(),
                Some(Noun::Regulator | Noun::BeforeRegulator | Noun::AfterRegulator)
            ) || i.what == What::Is(Concept::Event(Event::RegulatorFitted))
        });
        let told = self.items[..at]
            .iter()
            .rev()
            .take(5)
            .any(|i| near(i) && (pressure(i) || i.number().is_some() && after))
            || at > 0 && self.bare_number(at - 1).is_some_and(|v| v >= 15.0);
        let clause = self.says(at, Sense::BeforeI);
        // "95 psi before and 48 after the regulator"
        let and = self.items.get(at + 1).is_some_and(|n| n.is(Mark::And));
        let next_value = self.bare_number(at + 1 + usize::from(and)).is_some();
        if !spoken_of || !told || !(clause || self.ends(at) || next_value) {
            return;
        }
        let noun = if before {
            Noun::BeforeRegulator
        } else {
            Noun::AfterRegulator
        };
        self.items[at].what = What::Is(Concept::Noun(noun));
        // a number without a measure has that of the number it is held against
        let own = |i: &usize| {
            !clause
                && self.bare_number(*i).is_some()
                && !i.checked_sub(1).is_some_and(|b| {
                    self.items[b].is(Mark::At)
                        || self.items[b].is(Mark::Unit)
                        || self.items[b].what == What::Is(Concept::State(State::On))
                })
        };
        let Some(number) = at.checked_sub(1).filter(own) else {
            return;
        };
        let measure = self.items[..number]
            .iter()
            .rev()
            .take(40)
            .find(|i| near(i) && pressure(i))
            .and_then(|i| i.number()?.unit);
        if let What::Number(n) = &mut self.items[number].what {
            n.unit = measure;
        }
    }

    /// "85 psi at the spigot, 50 after the regulator": the first was read before it.
    pub(super) fn at_the_source(&mut self, at: usize) {
        let a_word = matches!(
            self.items[at].what,
            What::Word { .. } | What::Is(Concept::Noun(_))
        );
        if !a_word || !self.says(at, Sense::Source) {
            return;
        }
        let sentence = self.items[at].sentence;
        let psi = |i: &Item| {
            i.number()
                .is_some_and(|n| n.unit.is_some_and(Unit::is_pressure))
        };
        let lead = (0..at)
            .rev()
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !(self.items[*i].is(Mark::At) || self.items[*i].is_filler()));
        let told = lead.is_some_and(|i| psi(&self.items[i]));
        let other_side = (at + 1..self.items.len())
            .take(12)
            .take_while(|i| self.items[*i].sentence == sentence)
            .any(|i| self.items[i].noun() == Some(Noun::AfterRegulator));
        if told && other_side {
            self.items[at].what = What::Is(Concept::Noun(Noun::BeforeRegulator));
        }
    }

    /// "spigot 95 at 16", "the spigot reads like 110": a pressure of the site, where no measure is said.
    pub(super) fn source_reads(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Water) || !self.says(at, Sense::Source) {
            return;
        }
        let number = (at + 1..self.items.len())
            .take(4)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler());
        let Some(number) = number else { return };
        let psi = self
            .bare_number(number)
            .is_some_and(|value| SOURCE_PSI.contains(&value));
        let told_alone = self.ends(number)
            || self.items.get(number + 1).is_some_and(|n| n.is(Mark::At))
            || self
                .items
                .get(number + 1)
                .is_some_and(|n| n.what == What::Is(Concept::State(State::On)));
        if psi && told_alone {
            self.items[at].what = What::Is(Concept::Noun(Noun::Supply));
        }
    }

    /// "static 80 flowing 52": the second is a pressure too, and no trailer.
    pub(super) fn flowing(&mut self, at: usize) {
        let told = self.says(at, Sense::Flowing)
            && self.same_chunk(at, at + 1)
            && self.bare_number(at + 1).is_some();
        if !told {
            return;
        }
        let beside_static = (0..at)
            .rev()
            .take(4)
            .any(|i| self.says(i, Sense::Static) && self.items[i].noun() == Some(Noun::Pressure));
        if beside_static {
            self.items[at].what = What::Is(Concept::Noun(Noun::Pressure));
        }
    }
}
