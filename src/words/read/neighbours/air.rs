//! Words that speak of the weather beside a number: it is 21 out, 27 and dropping.

use super::Words;
use crate::heard::Fault;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, What};
use crate::words::senses::Sense;

impl Words<'_> {
    /// "wind picking up, 30 gusts 45 at 12": the wind before its gusts, of which the gusts count.
    pub(super) fn wind_before_gusts(&mut self, at: usize) {
        let gusts = self.same_chunk(at, at + 1)
            && self.items[at + 1].noun() == Some(Noun::Gust)
            && (at + 2..self.items.len())
                .take(3)
                .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At))
                .is_some_and(|i| match (self.items[i].number(), self.bare_number(at)) {
                    (Some(gust), Some(wind)) => gust.value > wind && wind >= 5.0,
                    _ => false,
                });
        let placed = at > 0
            && (self.items[at - 1].is(Mark::At)
                || self.items[at - 1].is(Mark::Unit)
                || self.items[at - 1].what == What::Is(Concept::State(State::On)));
        let sentence = self.items[at].sentence;
        let wind = self.items[..at]
            .iter()
            .rev()
            .take(8)
            .take_while(|i| i.sentence == sentence)
            .any(|i| i.noun() == Some(Noun::Wind));
        // "wind 30 gusts 45" is read as it stands
        let right_before = at > 0 && self.items[at - 1].noun() == Some(Noun::Wind);
        if gusts && wind && !placed && !right_before {
            self.items[at].what = What::Labelled;
        }
    }

    /// "fuse keeps blowing at 23", "smoke blowing out": no wind, where nothing says that it is one.
    pub(super) fn blows(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Wind) || !self.says(at, Sense::Blowing) {
            return;
        }
        let sentence = self.items[at].sentence;
        let windy = (0..self.items.len()).any(|i| {
            i != at
                && self.items[i].sentence == sentence
                && (matches!(self.items[i].noun(), Some(Noun::Wind | Noun::Gust))
                    || self.items[i].number().is_some_and(|n| {
                        n.unit.is_some_and(|unit| {
                            matches!(unit, Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot)
                        })
                    }))
        });
        let subject = at.checked_sub(1).filter(|i| self.same_chunk(at, *i));
        let it = subject.is_none_or(|i| {
            self.says(i, Sense::AirIs)
                || self.items[i].is(Mark::Pronoun)
                || self.items[i].number().is_some()
        });
        // "its blowing 30 here"
        let told = it
            && (at + 1..self.items.len())
                .take_while(|i| self.same_chunk(at, *i))
                .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::About))
                .is_some_and(|i| self.bare_number(i).is_some());
        if !windy && !told {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "someone puked outside 21": what a person did there, and no temperature.
    pub(super) fn outside_of_it(&mut self, at: usize) {
        let outside = self.items[at].noun() == Some(Noun::Air)
            && self.says(at, Sense::Outside)
            && at > 0
            && self.same_chunk(at, at - 1)
            && matches!(self.items[at - 1].what, What::Word { .. });
        let person = (0..at)
            .rev()
            .take(6)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| matches!(self.items[i].noun(), Some(Noun::Person | Noun::Guests)));
        if outside && person && self.names(at + 1) {
            self.items[at].what = What::Is(Concept::Mark(Mark::At));
        }
    }

    /// "it's 21 out": the air.
    pub(super) fn it_is_out(&mut self, at: usize) {
        if at == 0 || self.items[at].what != What::Is(Concept::State(State::Out)) {
            return;
        }
        // "heater on, 45F out"
        let measured = self.items[at - 1].number().and_then(|n| n.unit);
        if measured.is_some_and(|unit| matches!(unit, Unit::DegF | Unit::DegC))
            && self.same_chunk(at, at - 1)
        {
            self.items[at].what = What::Is(Concept::Noun(Noun::Air));
            return;
        }
        let Some(value) = self.bare_number(at - 1) else {
            return;
        };
        let its = at > 1 && self.says(at - 2, Sense::AirIs);
        let ends = self.ends(at)
            || self.items.get(at + 1).is_some_and(|n| n.is_filler()) && self.ends(at + 1);
        // "52 psi, 121v 18 out": the last of several values, right after one with its measure
        let listed = at > 1
            && self.ends(at)
            && self.same_chunk(at, at - 2)
            && self.items[at - 2].number().is_some_and(|n| {
                n.unit
                    .is_some_and(|unit| unit == Unit::Volt || unit.is_pressure())
            });
        let beside = listed
            || self.ends(at)
                && (self.hot_or_cold_beside(at, value) || self.told_of_a_trailer(at, value));
        // "its 104 out and 20 percent humidity"
        let more = self.items.get(at + 1).is_some_and(|n| n.is(Mark::And))
            && (at + 2..self.items.len())
                .take(4)
                .any(|i| matches!(self.items[i].noun(), Some(Noun::Humidity | Noun::Wind)));
        if (its && (ends || more) || beside) && (-60.0..=130.0).contains(&value) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Air));
        }
    }

    /// "its 97 out here ac wont cool": the air, where it opens what is said and no comma parts it from what follows.
    pub(super) fn it_is_so_out(&mut self, at: usize) {
        let its = self.says(at, Sense::AirIs)
            && (at == 0 || !self.same_chunk(at, at - 1) || self.items[at - 1].is(Mark::And))
            && self.same_chunk(at, at + 2);
        let air = self
            .items
            .get(at + 2)
            .is_some_and(|n| n.noun() == Some(Noun::Air));
        let degrees = self
            .bare_number(at + 1)
            .is_some_and(|v| (-60.0..=130.0).contains(&v));
        // "its 12 outside 14": a place
        let place = self.names(at + 3) && self.same_chunk(at, at + 3);
        if !(its && air && degrees) || place {
            return;
        }
        if let What::Number(number) = &mut self.items[at + 1].what {
            // no trailer's name
            number.form = Form::Decimal;
        }
    }

    /// "ac not cooling in 20, 97 out": a chunk of its own beside what keeps the room warm or cool, after the trailer.
    fn hot_or_cold_beside(&self, at: usize, value: f64) -> bool {
        let number = at - 1;
        let opens = number > 0
            && self.items[number - 1].sentence == self.items[at].sentence
            && !self.same_chunk(at, number - 1);
        let said = || {
            self.items[..number]
                .iter()
                .rev()
                .take(24)
                .take_while(|i| i.sentence == self.items[at].sentence)
        };
        let trailer = said().any(|i| {
            i.what == What::Code
                || i.number()
                    .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
        });
        let room = said().any(|i| {
            matches!(i.noun(), Some(Noun::Ac | Noun::Heat | Noun::Heater))
                || matches!(
                    i.what,
                    What::Is(Concept::Fault(
                        Fault::NoCooling | Fault::NoHeat | Fault::Frozen
                    ))
                )
        });
        opens && trailer && room && !(0.0..60.0).contains(&value)
    }

    /// "7 79 out, wind 29 mph", "4 -22 out": right behind the trailer that opens the message, beside other weather.
    fn told_of_a_trailer(&self, at: usize, value: f64) -> bool {
        let trailer = at == 2 && self.same_chunk(at, 0) && self.names(0);
        let weather = (at + 1..self.items.len()).any(|i| {
            matches!(
                self.items[i].noun(),
                Some(Noun::Wind | Noun::Gust | Noun::Humidity | Noun::Ac | Noun::TankHeater)
            )
        });
        trailer && (value < 0.0 || weather)
    }

    /// "-12 tonight": how cold it is going to be.
    pub(super) fn cold_tonight(&mut self, at: usize) {
        let below = at > 0
            && self.says(at, Sense::Tonight)
            && self.same_chunk(at, at - 1)
            && self.bare_number(at - 1).is_some_and(|v| v < 0.0);
        if below {
            self.items[at].what = What::Is(Concept::Noun(Noun::Low));
        }
    }

    /// "it's 27 and dropping", "it's 15 and windy": the air.
    pub(super) fn weather(&mut self, at: usize) {
        if at == 0 || !self.items[at].is(Mark::And) || at + 1 >= self.items.len() {
            return;
        }
        let number = self.bare_number(at - 1).is_some();
        let its = at > 1 && self.says(at - 2, Sense::ItIs);
        let said = self.says(at + 1, Sense::Weather);
        // "its 34 and falling here at 9"
        let ends = self.ends(at + 1)
            || self
                .items
                .get(at + 2)
                .is_some_and(|n| n.is(Mark::At) || n.is(Mark::Filler));
        if number && its && said && ends {
            self.items[at].what = What::Is(Concept::Noun(Noun::Air));
            self.items[at + 1].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "AC and heater both on": beside the cooler, the heater is that of the room.
    pub(super) fn heats_the_room(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Heater) {
            return;
        }
        let is = |i: Option<usize>, noun: Noun| {
            i.and_then(|i| self.items.get(i))
                .is_some_and(|n| n.noun() == Some(noun))
        };
        let and = |i: Option<usize>| {
            i.and_then(|i| self.items.get(i))
                .is_some_and(|n| n.is(Mark::And))
        };
        let before = and(at.checked_sub(1)) && is(at.checked_sub(2), Noun::Ac);
        let after = and(Some(at + 1))
            && (is(Some(at + 2), Noun::Ac)
                || self.items.get(at + 2).is_some_and(|n| n.is(Mark::Article))
                    && is(Some(at + 3), Noun::Ac));
        let the = at > 2
            && self.items[at - 1].is(Mark::Article)
            && and(Some(at - 2))
            && is(Some(at - 3), Noun::Ac);
        if before || after || the {
            self.items[at].what = What::Is(Concept::Noun(Noun::Heat));
        }
    }
}
