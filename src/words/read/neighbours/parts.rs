//! Words of a trailer's parts: a relay that is open, 2 of 4 chocks, cord 1, the 1/4 lamp, one outlet without power.

use super::Words;
use crate::heard::{Event, Fault};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, What};
use crate::words::senses::Sense;

impl Words<'_> {
    /// "the relay is open", "open neutral": a part that is open lets no guest in.
    pub(super) fn open_part(&mut self, at: usize) {
        if self.items[at].what != What::Is(Concept::State(State::Open)) {
            return;
        }
        let subject = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| {
                !self.items[*i].is_filler() && !self.items[*i].is(Mark::Aux) && !self.again(*i)
            });
        let of_a_part = subject.is_some_and(|i| {
            self.says(i, Sense::Part) || self.items[i].noun().is_some_and(is_part)
        });
        let next = self.same_chunk(at, at + 1)
            && (self.says(at + 1, Sense::Part) || self.items[at + 1].noun() == Some(Noun::Pipe));
        if of_a_part || next {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "room A closed", "closed the ladies side", "the gate at 12 is closed": one part is closed, and the trailer is not.
    pub(super) fn closed_part(&mut self, at: usize) {
        let closed = [
            What::Is(Concept::State(State::Closed)),
            What::Is(Concept::State(State::Shut)),
            What::Is(Concept::Event(Event::Closed)),
        ];
        if !closed.contains(&self.items[at].what) {
            return;
        }
        let between = |i: usize| {
            self.items[i].is_filler()
                || self.items[i].is(Mark::Aux)
                || self.items[i].is(Mark::At)
                || self.items[i].is(Mark::Of)
                || self.items[i].is(Mark::Article)
                || self.items[i].is(Mark::Label)
                || self.bare_number(i).is_some()
        };
        let part = |i: usize| self.says(i, Sense::OnePart);
        let before = (0..at)
            .rev()
            .take(6)
            .take_while(|i| self.same_chunk(at, *i) && (between(*i) || part(*i)))
            .find(|i| part(*i));
        let article = |i: usize| self.items.get(i).is_some_and(|n| n.is(Mark::Article));
        let next = at + 1 + usize::from(article(at + 1));
        let behind = self.same_chunk(at, next) && part(next);
        let Some(found) = before.or(behind.then_some(next)) else {
            return;
        };
        // "both sides closed", "mens and ladies closed": all of it
        let all = (found.saturating_sub(4)..self.items.len().min(found + 4))
            .filter(|i| self.same_chunk(found, *i))
            .any(|i| {
                let both = self.items[i].is(Mark::All);
                let two = self.items[i].is(Mark::And) && i > found.saturating_sub(4) && part(i + 1);
                both || two && (part(i - 1) || i > 1 && part(i - 2))
            });
        if !all {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "12 plugged into circuit 2", "la 7 conectada al circuito 1": on power.
    pub(super) fn on_a_circuit(&mut self, at: usize) {
        let connected = self.items[at].what == What::Is(Concept::State(State::TurnedOn));
        let to = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.is(Mark::At) || n.is(Mark::To));
        let circuit = (at + 2..self.items.len())
            .take(2)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| self.items[i].noun() == Some(Noun::Circuit));
        if connected && to && circuit {
            self.items[at].what = What::Is(Concept::Event(Event::PowerOn));
        }
    }

    /// "12 3 of 4 chocks froze", "2 of 4 breakers won't stay on": how many of how many, and no trailer.
    pub(super) fn so_many_of(&mut self, at: usize) {
        let of = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Of));
        let some = self.bare_number(at).filter(|_| of);
        let Some(some) = some.filter(|_| self.same_chunk(at, at + 1)) else {
            return;
        };
        // "two of the catering girls", "3 of us": so many of somebody
        let whose = at + 2;
        let somebody = self.same_chunk(at, whose)
            && some <= 10.0
            && (self.items[whose].is(Mark::Article) || self.items[whose].is(Mark::Pronoun))
            && (whose + 1..self.items.len())
                .take(3)
                .take_while(|i| self.same_chunk(at, *i) && self.bare_number(*i).is_none())
                .any(|i| matches!(self.items[i].noun(), Some(Noun::Person | Noun::Guests)));
        let of_us =
            self.same_chunk(at, whose) && some <= 10.0 && self.items[whose].is(Mark::Pronoun);
        if somebody || of_us {
            self.items[at].what = What::Labelled;
            return;
        }
        let all = (at + 2..self.items.len())
            .take(2)
            .find(|i| !self.items[*i].is(Mark::Article))
            .filter(|i| self.same_chunk(at, *i));
        let Some(all) =
            all.filter(|i| self.bare_number(*i).is_some_and(|n| some <= n && n <= 20.0))
        else {
            return;
        };
        // "3 of 4 trailers arrived": the count of them names none
        if self.same_chunk(at, all + 1) && self.items[all + 1].is(Mark::Unit) {
            self.items[at].what = What::Gone;
            self.items[at + 1].what = What::Gone;
            return;
        }
        let tripped = What::Is(Concept::Fault(Fault::BreakerTrip));
        let things = self.same_chunk(at, all + 1)
            && (self.items[all + 1].what == tripped
                || self.items[all + 1].noun().is_some_and(|n| {
                    is_part(n) && n != Noun::Cords
                        || matches!(
                            n,
                            Noun::Wheels
                                | Noun::Jacks
                                | Noun::Lights
                                | Noun::Tire
                                | Noun::Door
                                | Noun::Toilet
                                | Noun::Sink
                        )
                }));
        if things {
            self.items[at].what = What::Labelled;
            self.items[all].what = What::Labelled;
        }
    }

    /// "150 ft of 3/4 hose", "150 pies de manguera de 3/4": the length is the hose's, and its bore is none of a tank.
    pub(super) fn bore_of_a_hose(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Hose) {
            return;
        }
        let bore = |i: usize| {
            self.same_chunk(at, i)
                && self.items[i].number().is_some_and(|n| {
                    n.unit == Some(Unit::Other) || n.form == Form::Part && n.unit.is_none()
                })
        };
        let of = |i: usize| self.items[i].is(Mark::Of) || self.items[i].is_filler();
        let long = |i: usize| {
            let number = self.items[i].number();
            number.is_some_and(|n| matches!(n.unit, Some(Unit::Ft | Unit::Metre)))
        };
        if at > 2 && bore(at - 1) && of(at - 2) && long(at - 3) {
            self.items[at - 1].what = What::Gone;
            self.items[at - 2].what = What::Gone;
        } else if at + 2 < self.items.len() && of(at + 1) && bore(at + 2) {
            self.items[at + 1].what = What::Gone;
            self.items[at + 2].what = What::Gone;
        }
    }

    /// "cord 1 reading 121 volts", "el cable 2 está cortado": which cord, and neither how many nor how long.
    pub(super) fn cord_by_number(&mut self, at: usize) {
        let number = self
            .bare_number(at + 1)
            .is_some_and(|n| (1.0..=4.0).contains(&n) && n.fract() == 0.0);
        if self.items[at].noun() != Some(Noun::Cord) || !number || !self.same_chunk(at, at + 1) {
            return;
        }
        let told = (at + 2..self.items.len())
            .take(10)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| {
                self.items[i]
                    .number()
                    .is_some_and(|n| n.unit == Some(Unit::Volt))
                    || matches!(
                        self.items[i].what,
                        What::Is(
                            Concept::State(
                                State::Damaged | State::Melted | State::Dead | State::Lost
                            ) | Concept::Fault(Fault::CordDamaged | Fault::HotPlug)
                        )
                    )
            });
        if told {
            self.items[at + 1].what = What::Labelled;
        }
    }

    /// "they only gave me 1 cord": so many, where a word that is no trailer's stands before.
    pub(super) fn one_cord(&mut self, at: usize) {
        let one = self.bare_number(at) == Some(1.0)
            && self.same_chunk(at, at + 1)
            && self.items[at + 1].noun() == Some(Noun::Cord)
            && self.ends(at + 1);
        let word = at > 0
            && self.same_chunk(at, at - 1)
            && (matches!(self.items[at - 1].what, What::Word { .. })
                || self.items[at - 1].is_filler() && !self.items[at - 1].is(Mark::Article));
        if one && word {
            self.items[at + 1].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }

    /// "7 still on the 1/4 lamp": the lamp that is lit shows the level.
    pub(super) fn level_lamp(&mut self, at: usize) {
        let part = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Part);
        let the = at > 1
            && self.items[at - 1].is(Mark::Article)
            && self.same_chunk(at, at - 2)
            && (self.items[at - 2].what == What::Is(Concept::State(State::On))
                || self.items[at - 2].is(Mark::At));
        let lamp = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::LevelLamp);
        if part && the && lamp {
            self.items[at + 1].what = What::Is(Concept::Noun(Noun::Waste));
        }
    }

    /// "la 14 drenaje a 7/8": what has a level is the tank.
    pub(super) fn drain_level(&mut self, at: usize) {
        let level = (at + 1..self.items.len())
            .take(2)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At))
            .is_some_and(|i| {
                self.items[i]
                    .number()
                    .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
            });
        if level && self.says(at, Sense::DrainTank) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Waste));
        }
    }

    /// "fresh is dry": nothing in it.
    pub(super) fn dry_tank(&mut self, at: usize) {
        let tank = (0..at)
            .rev()
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::Aux))
            .is_some_and(|i| self.items[i].noun() == Some(Noun::Fresh));
        if tank && self.says(at, Sense::Dry) {
            self.items[at].what = What::Is(Concept::Level(0.0));
        }
    }

    /// "one outlet has no power": the trailer may have it all the same.
    pub(super) fn one_outlet(&mut self, at: usize) {
        let dead = self.items[at].what == What::Is(Concept::Fault(Fault::NoPower));
        let outlet = || {
            (0..at)
                .rev()
                .take(8)
                .take_while(|i| self.same_chunk(at, *i))
                .any(|i| self.says(i, Sense::OneOutlet))
        };
        if dead && outlet() {
            self.items[at].what = What::Is(Concept::State(State::Dead));
        }
    }

    fn again(&self, at: usize) -> bool {
        self.items[at].is(Mark::Again) || self.items[at].is(Mark::Now)
    }
}

/// Tells whether a thing is a part that has states of its own, and no guests go in by it.
fn is_part(noun: Noun) -> bool {
    matches!(
        noun,
        Noun::Pipe
            | Noun::WaterHeater
            | Noun::Breaker
            | Noun::Gfci
            | Noun::Fuse
            | Noun::Plug
            | Noun::Cord
            | Noun::Cords
            | Noun::Lock
            | Noun::Gauge
            | Noun::Regulator
            | Noun::Heater
            | Noun::Heat
            | Noun::TankHeater
            | Noun::Fan
            | Noun::Pump
            | Noun::Filter
            | Noun::Circuit
            | Noun::Backflow
    )
}
