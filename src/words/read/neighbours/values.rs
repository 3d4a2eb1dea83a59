//! What a value is of, where the word that says so stands behind it or far from it: tank 1/2 fresh, 19 amps on 2.

use super::Words;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, What};
use crate::words::senses::Sense;

const FILLER: What = What::Is(Concept::Mark(Mark::Filler));

impl Words<'_> {
    /// "23 tank 1/2 fresh", "tank's got water half": what is in the tank tells which it is.
    pub(super) fn fresh_is_in_it(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Tank) {
            return;
        }
        let level = |n: &Item| {
            n.number()
                .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
                || matches!(n.what, What::Is(Concept::Level(_)))
        };
        let between =
            |n: &Item| n.is_filler() || n.is(Mark::Aux) || n.is(Mark::Of) || n.is(Mark::At);
        let next = |from: usize| {
            (from + 1..self.items.len())
                .take_while(|i| self.same_chunk(at, *i))
                .find(|i| !between(&self.items[*i]) && !self.items[*i].is(Mark::Article))
        };
        let Some(first) = next(at) else { return };
        let is = |i: usize, noun: Noun| self.items[i].noun() == Some(noun);
        if is(first, Noun::Water) {
            if next(first).is_some_and(|i| level(&self.items[i])) {
                self.items[at].what = FILLER;
                self.items[first].what = What::Is(Concept::Noun(Noun::Fresh));
            }
            return;
        }
        let fresh = next(first).filter(|i| level(&self.items[first]) && is(*i, Noun::Fresh));
        let Some(fresh) = fresh else { return };
        // "tank 1/2 fresh 3/4": a level of its own
        let placed = self.items.get(fresh + 1).is_some_and(|n| {
            n.is(Mark::At) || n.is(Mark::Of) || n.what == What::Is(Concept::State(State::On))
        }) && next(fresh + 1).is_some_and(|i| self.ends(i) && !level(&self.items[i]));
        if self.ends(fresh) || placed {
            self.items[at].what = What::Is(Concept::Noun(Noun::Fresh));
            self.items[fresh].what = FILLER;
        }
    }

    /// "power on 4 cord 117 volts": so many cords.
    pub(super) fn on_so_many_cords(&mut self, at: usize) {
        let some = self
            .bare_number(at)
            .is_some_and(|n| (2.0..=4.0).contains(&n) && n.fract() == 0.0);
        let cord = self.same_chunk(at, at + 1) && self.items[at + 1].noun() == Some(Noun::Cord);
        let powered = at > 1
            && self.same_chunk(at, at - 2)
            && self.items[at - 2].noun() == Some(Noun::Power)
            && matches!(
                self.items[at - 1].what,
                What::Is(Concept::State(State::On | State::TurnedOn))
            );
        // "on 4 cord 50 ft" tells how long it is
        let long = self.items.get(at + 2).is_some_and(|n| {
            n.number()
                .is_some_and(|n| matches!(n.unit, None | Some(Unit::Ft | Unit::Metre)))
        });
        if some && cord && powered && !long {
            self.items[at + 1].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }

    /// "12 amps 19 on 2": the circuit, where the trailer opened what is said.
    pub(super) fn amps_on_a_circuit(&mut self, at: usize) {
        let amps = self.items[at]
            .number()
            .is_some_and(|n| n.unit == Some(Unit::Amp));
        let on = self.same_chunk(at, at + 2)
            && (self.items[at + 1].is(Mark::At)
                || self.items[at + 1].what == What::Is(Concept::State(State::On)));
        let circuit = self
            .bare_number(at + 2)
            .filter(|n| (1.0..=4.0).contains(n) && n.fract() == 0.0);
        let opens = (0..at)
            .take_while(|i| *i < 3)
            .find(|i| !self.items[*i].is(Mark::Article))
            .is_some_and(|i| self.names(i) && self.same_chunk(at, i));
        // "19 amps on 12, 14 amps on 4": each its trailer
        let alone = (0..at)
            .filter(|i| self.items[*i].number().is_some())
            .count()
            <= 1;
        if let Some(circuit) = circuit
            && amps
            && on
            && opens
            && alone
            && self.ends(at + 2)
        {
            self.items[at + 1].what = FILLER;
            self.items[at + 2].what = What::Circuit(circuit as u8);
        }
    }

    /// "7way plugged brake lights ok": what is plugged is in, and not clogged.
    pub(super) fn plug_is_in(&mut self, at: usize) {
        let clogged = self.items[at].what == What::Is(Concept::State(State::Clogged));
        let plug = at > 0 && self.same_chunk(at, at - 1) && self.says(at - 1, Sense::TrailerPlug);
        if clogged && plug {
            self.items[at].what = FILLER;
        }
    }

    /// "hace un calorón, 101": how hot it is.
    pub(super) fn so_hot(&mut self, at: usize) {
        let Some(value) = self.bare_number(at) else {
            return;
        };
        let before = at
            .checked_sub(1)
            .filter(|i| self.items[*i].what == What::Sign(','));
        let hot = before.and_then(|i| i.checked_sub(1)).is_some_and(|i| {
            let said = self.spelt(i);
            let mut hot = self.senses.of(Sense::HotAir).iter();
            hot.any(|hot| said.contains(&**hot))
        });
        if hot
            && self.ends(at)
            && (60.0..=125.0).contains(&value)
            && let What::Number(number) = &mut self.items[at].what
        {
            number.unit = Some(Unit::Deg);
        }
    }

    /// "12 psi 50 was wrong its 55": the second counts, where it can be of the same thing.
    pub(super) fn was_wrong(&mut self, at: usize) {
        const ALIKE: f64 = 3.0;
        let Some(first) = self.items[at].number().filter(|_| at > 0) else {
            return;
        };
        let wrong = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Past))
            && self.items.len() > at + 3
            && self.says(at + 2, Sense::WasWrong);
        let of_a_noun = first.unit.is_some() || self.items[at - 1].noun().is_some();
        if !wrong || !of_a_noun {
            return;
        }
        let second = (at + 3..self.items.len()).take(5).find(|i| {
            !self.items[*i].is_filler()
                && !self.items[*i].is(Mark::Aux)
                && !self.items[*i].is(Mark::Now)
                && self.items[*i].what != What::Sign(',')
        });
        let Some(second) = second.filter(|i| self.ends(*i)) else {
            return;
        };
        let Some(number) = self.items[second].number() else {
            return;
        };
        let alike = first.value > 0.0
            && number.value > 0.0
            && (first.value / number.value).max(number.value / first.value) <= ALIKE;
        let measured = number.unit.is_none() || number.unit == first.unit;
        if alike && measured && number.form != Form::Part {
            if let What::Number(there) = &mut self.items[at].what {
                there.value = number.value;
                there.form = number.form;
            }
            for item in &mut self.items[at + 1..=second] {
                item.what = FILLER;
            }
        }
    }

    /// "cayó la presión de 55 a 38 psi": the verb stands before the thing that moved, and where it came to counts.
    pub(super) fn moved_to(&mut self, at: usize) {
        let Some(to) = self.items[at].number() else {
            return;
        };
        let from = (0..at)
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler());
        let Some(from) = from.filter(|from| *from > 1 && from + 1 < at) else {
            return;
        };
        let Some(was) = self.items[from].number() else {
            return;
        };
        let led = self.items[from - 1].is(Mark::Of);
        // "la presión se cayó de 55 a 38": the verb behind the thing
        let verb = self.says(from - 2, Sense::Moves);
        let thing = (0..from - 1)
            .rev()
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| {
                self.items[*i]
                    .noun()
                    .is_some_and(|noun| noun.reading().is_some())
            });
        let Some(thing) = thing.filter(|_| led) else {
            return;
        };
        let mut before = (0..thing).rev().take(3);
        let moves = verb || before.any(|i| self.same_chunk(at, i) && self.says(i, Sense::Moves));
        let alike = was.unit.is_none() || to.unit.is_none() || was.unit == to.unit;
        if moves && alike {
            for item in &mut self.items[from - 1..at] {
                item.what = What::Gone;
            }
        }
    }

    /// "se cayó la presión": a thing that is read has fallen, and nothing has come off.
    pub(super) fn a_value_fell(&mut self, at: usize) {
        let damaged = self.items[at].what == What::Is(Concept::State(State::Damaged));
        let value = self.same_chunk(at, at + 1)
            && self.items[at + 1]
                .noun()
                .is_some_and(|noun| noun.reading().is_some());
        if damaged && value && self.says(at, Sense::Moves) {
            self.items[at].what = FILLER;
        }
    }

    /// "12 at 3 tonight, tank 1/2": behind a number that can be the trailer, an hour.
    pub(super) fn hour_of_tonight(&mut self, at: usize) {
        let hour = self.bare_number(at).is_some_and(|n| n <= 12.0);
        let led = at > 1 && self.same_chunk(at, at - 2) && self.items[at - 1].is(Mark::At);
        let behind = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::PartOfToday);
        if hour && led && behind && self.bare_number(at - 2).is_some() {
            self.items[at].what = What::Labelled;
        }
    }

    /// "3 cords off the generator": where they get their power.
    pub(super) fn off_a_source(&mut self, at: usize) {
        let off = self.items[at].what == What::Is(Concept::State(State::Off));
        let cords = at > 1
            && self.same_chunk(at, at - 2)
            && matches!(self.items[at - 1].noun(), Some(Noun::Cords | Noun::Cord))
            && self.bare_number(at - 2).is_some();
        let the = self.same_chunk(at, at + 1) && self.items[at + 1].is(Mark::Article);
        let source = at + 1 + usize::from(the);
        let source = the && self.same_chunk(at, source) && self.says(source, Sense::PowerSource);
        if off && cords && source {
            self.items[at].what = What::Is(Concept::Mark(Mark::Of));
        }
    }
}
