//! Words of coming, going and standing: got to 12, 90 gallons left, the truck came, va a la mitad.

use super::Words;
use crate::heard::{Event, Fault, Need};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, What};
use crate::words::senses::Sense;

/// What a truck takes out of a tank at the least, gallons, where the number has no measure.
const LEAST_LOAD_GAL: f64 = 50.0;

impl Words<'_> {
    /// "got to 12", "just got to unit 12": the sender arrived, and need do nothing.
    pub(super) fn got_to(&mut self, at: usize) {
        let plan = self.items[at].is(Mark::Plan) && self.says(at, Sense::GotTo);
        if !plan || !self.same_chunk(at, at + 1) {
            return;
        }
        let mut next = at + 1;
        while self.items.get(next).is_some_and(|n| n.is(Mark::Article)) {
            next += 1;
        }
        let valued = self
            .items
            .iter()
            .take(at)
            .rev()
            .take(6)
            .take_while(|i| i.chunk == self.items[at].chunk)
            .any(|i| i.noun().is_some_and(|n| n.reading().is_some()));
        if (self.names(next) || self.name_of_a_place(next)) && !valued {
            self.items[at].what = What::Is(Concept::Event(Event::Arrived));
        }
    }

    /// "got to Chickasqua Landing with 17": a name that is no word of the language, and then a trailer that came with it.
    fn name_of_a_place(&self, at: usize) -> bool {
        let place = || at..self.items.len().min(at + 5);
        let with = place().find(|i| self.items[*i].is(Mark::With));
        with.is_some_and(|with| {
            let words = &self.items[at..with];
            let trailer = (with + 1..self.items.len())
                .find(|i| !self.items[*i].is(Mark::Article) && !self.items[*i].is(Mark::Unit));
            words
                .iter()
                .all(|i| matches!(i.what, What::Word { .. }) && i.chunk == self.items[with].chunk)
                && words
                    .iter()
                    .any(|i| i.what == What::Word { ordinary: false })
                && trailer.is_some_and(|i| self.names(i))
        })
    }

    /// "12 closed, headed home": a person's own way, where no trailer stands beside it and none is hitched.
    fn homeward(&mut self, at: usize) {
        if self.items[at].what != What::Is(Concept::Event(Event::Left))
            || !self.says(at, Sense::Homeward)
        {
            return;
        }
        let weary = (0..at).any(|i| self.says(i, Sense::Weary));
        let of_home = !self.says(at, Sense::HeadingOut);
        let beside = at > 0 && self.same_chunk(at, at - 1) && self.names(at - 1)
            || self.same_chunk(at, at + 1)
                && (self.items[at + 1].is(Mark::With)
                    || self.items[at + 1].is(Mark::At)
                    || self.items[at + 1].what == What::Is(Concept::State(State::On)));
        let hitched = self.items.iter().any(|i| {
            matches!(
                i.what,
                What::Is(Concept::Event(Event::Hitched | Event::JacksUp))
            )
        });
        if weary || of_home && !beside && !hitched {
            self.items[at].what = What::Is(Concept::Mark(Mark::Idle));
        }
    }

    /// "90 gallons left" and "10 left in the fresh" remain, "left it in the truck" was forgotten: none is a departure.
    pub(super) fn left(&mut self, at: usize) {
        self.homeward(at);
        if self.items[at].what != What::Is(Concept::Event(Event::Left))
            || !self.says(at, Sense::Left)
        {
            return;
        }
        let before = at
            .checked_sub(1)
            .filter(|i| self.same_chunk(at, *i))
            .map(|i| self.items[i]);
        let remains = before.is_some_and(|b| {
            b.number()
                .is_some_and(|n| n.unit.is_some() || n.form != Form::Whole)
                || matches!(
                    b.what,
                    What::Is(
                        Concept::Level(_)
                            | Concept::Noun(Noun::Supplies | Noun::Water | Noun::Fuel)
                    )
                )
                || b.noun().is_some_and(Noun::is_tank)
        }) || self.so_much_of_it(at);
        let forgot = self.items.get(at + 1).is_some_and(|n| {
            n.chunk == self.items[at].chunk
                && n.is(Mark::Pronoun)
                && !(self.ends(at + 1)
                    || self
                        .items
                        .get(at + 2)
                        .is_some_and(|n| n.is(Mark::With) || n.is(Mark::And)))
        });
        let inside = self.in_a_tank(at);
        // "left toilet in 17 is clogged": the one on that side
        let side = self.same_chunk(at, at + 1)
            && self.items[at + 1].noun().is_some_and(|n| {
                matches!(
                    n,
                    Noun::Toilet
                        | Noun::Sink
                        | Noun::Door
                        | Noun::Lock
                        | Noun::Fan
                        | Noun::Wheels
                        | Noun::Jacks
                        | Noun::Tire
                        | Noun::TowLights
                        | Noun::Chains
                        | Noun::Brakes
                )
            });
        if remains || forgot || inside || side {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "the ac is working on 12": how a thing stands in a trailer, and no work that is under way.
    pub(super) fn works_there(&mut self, at: usize) {
        if !self.items[at].is(Mark::Plan) || !self.says(at, Sense::WorkingOn) {
            return;
        }
        let trailer = self.same_chunk(at, at + 1)
            && (self.names(at + 1) || self.items[at + 1].is(Mark::Article) && self.names(at + 2));
        let thing = (0..at)
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler())
            .and_then(|i| self.items[i].noun());
        let works = thing.is_some_and(|n| !matches!(n, Noun::Person | Noun::Guests | Noun::Truck));
        if trailer && works {
            self.items[at].what = What::Is(Concept::State(State::Ok));
        }
    }

    /// "winterized 44 an 45": and, where a number stands on either side.
    pub(super) fn an_for_and(&mut self, at: usize) {
        let between = at > 0
            && self.same_chunk(at - 1, at + 1)
            && self.bare_number(at - 1).is_some()
            && self.bare_number(at + 1).is_some();
        if between && self.says(at, Sense::An) {
            self.items[at].what = What::Is(Concept::Mark(Mark::And));
        }
    }

    /// "the whole county is here": who came is no trailer.
    pub(super) fn crowd_is_here(&mut self, at: usize) {
        let came = self.items[at].what == What::Is(Concept::Event(Event::Arrived));
        if !came || !self.says(at, Sense::IsHere) {
            return;
        }
        let before: Vec<usize> = (0..at)
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .collect();
        let somebody = before
            .first()
            .is_some_and(|i| matches!(self.items[*i].what, What::Word { .. }));
        let trailer = before.iter().any(|i| self.names(*i));
        if somebody && !trailer {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "they were off at the switch", "the lights were off": how things were, and nobody left.
    pub(super) fn were_off(&mut self, at: usize) {
        let left = self.items[at].what == What::Is(Concept::Event(Event::Left));
        if !left || !self.says(at, Sense::WereOff) {
            return;
        }
        let of_things = at.checked_sub(1).is_some_and(|i| {
            self.same_chunk(at, i)
                && (self.items[i].is(Mark::Pronoun)
                    || self.items[i].noun().is_some_and(|n| n != Noun::Guests))
        });
        let at_a_switch = (at + 1..self.items.len())
            .take(4)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| matches!(self.items[i].noun(), Some(Noun::Breaker | Noun::Circuit)));
        if of_things || at_a_switch {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "half a donut left": an amount of something, right before it.
    fn so_much_of_it(&self, at: usize) -> bool {
        let word = at
            .checked_sub(1)
            .is_some_and(|i| matches!(self.items[i].what, What::Word { .. }));
        let amount = (0..at.saturating_sub(1))
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is_filler());
        word && amount.is_some_and(|i| self.items[i].number().is_some_and(|n| n.form == Form::Part))
    }

    /// Tells whether "in the fresh" or the like follows.
    fn in_a_tank(&self, at: usize) -> bool {
        let mut next = at + 1;
        while self
            .items
            .get(next)
            .is_some_and(|n| n.is(Mark::At) || n.is(Mark::Article) || n.is(Mark::Filler))
        {
            next += 1;
        }
        let tank = self.items.get(next).and_then(Item::noun);
        next > at + 1 && self.same_chunk(at, next) && tank.is_some_and(Noun::is_tank)
    }

    /// "leaving the heater on": what stays behind, and no departure.
    pub(super) fn leaves_behind(&mut self, at: usize) {
        let one_word = self.items[at].end == self.items[at].first + 1;
        if self.items[at].what != What::Is(Concept::Event(Event::Left)) || !one_word {
            return;
        }
        let mut thing = at + 1;
        while self
            .items
            .get(thing)
            .is_some_and(|n| n.is(Mark::Article) || n.is(Mark::Filler))
        {
            thing += 1;
        }
        let thing_there =
            self.same_chunk(at, thing) && self.items.get(thing).is_some_and(|n| n.noun().is_some());
        let stays = (thing + 1..self.items.len())
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| {
                matches!(
                    self.items[i].what,
                    What::Is(Concept::State(
                        State::On
                            | State::TurnedOn
                            | State::Off
                            | State::Open
                            | State::Shut
                            | State::Closed
                            | State::Running
                            | State::Live
                            | State::PluggedIn
                    ))
                )
            });
        if thing_there && stays {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "llegó la pipa a la 12": the truck that was asked for came.
    pub(super) fn truck(&mut self, at: usize) {
        let need = matches!(self.items[at].what, What::Is(Concept::Need(Need::PumpOut)));
        if !need || !self.says(at, Sense::TheTruck) {
            return;
        }
        let moves = |i: &Item| {
            matches!(
                i.what,
                What::Is(Concept::Event(
                    Event::Arrived | Event::Left | Event::Returned
                ))
            )
        };
        let near = (at.saturating_sub(3)..self.items.len().min(at + 4))
            .filter(|i| self.same_chunk(at, *i))
            .any(|i| moves(&self.items[i]));
        if near {
            self.items[at].what = What::Is(Concept::Noun(Noun::Truck));
        }
    }

    /// "la 25 y la 29 limpias y surtidas": cleaned, and no tank.
    pub(super) fn clean_too(&mut self, at: usize) {
        let trailer = at > 0 && self.names(at - 1) && self.same_chunk(at, at - 1);
        let and = self.items.get(at + 1).is_some_and(|n| n.is(Mark::And));
        let done = self.items.get(at + 2).is_some_and(|n| {
            matches!(
                n.what,
                What::Is(
                    Concept::State(State::Stocked | State::Chocked | State::Closed | State::Level)
                        | Concept::Event(_)
                        | Concept::Mark(Mark::Done)
                )
            )
        });
        if self.says(at, Sense::CleanToo) && trailer && and && done {
            self.items[at].what = What::Is(Concept::State(State::Cleaned));
        }
    }

    /// "6 tanque 3/4 agua 1/4": beside the level of the waste, that of the water is the fresh tank's.
    pub(super) fn water_beside_waste(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Water) {
            return;
        }
        let part = |i: usize| {
            self.items
                .get(i)
                .and_then(Item::number)
                .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
        };
        let sentence = self.items[at].sentence;
        let beside = (at.saturating_sub(10)..self.items.len().min(at + 10)).any(|i| {
            self.items[i].sentence == sentence
                && matches!(self.items[i].noun(), Some(Noun::Tank | Noun::Waste))
                && part(i + 1)
        });
        if beside && part(at + 1) && self.same_chunk(at, at + 1) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Fresh));
        }
    }

    /// "dumped 350 gallons of black": taken out of the tank.
    pub(super) fn dumped(&mut self, at: usize) {
        let amount = self.items.get(at + 1).is_some_and(|n| {
            n.number()
                .is_some_and(|n| matches!(n.unit, Some(Unit::Gal | Unit::Litre)))
        });
        if self.says(at, Sense::Dumped) && amount && self.same_chunk(at, at + 1) {
            self.items[at].what = What::Is(Concept::State(State::Pumped));
        }
    }

    /// "8 pumped 90": the gallons, after the trailer that opens what is said.
    pub(super) fn pumped_so_much(&mut self, at: usize) {
        let pumped = self.items[at].what == What::Is(Concept::State(State::Pumped));
        let opens = at == 1 || at > 1 && !self.same_chunk(at, at - 2);
        let of_it = pumped
            && opens
            && self.same_chunk(at, at - 1)
            && self.names(at - 1)
            && !self.items[at - 1].is(Mark::Unit)
            && self.same_chunk(at, at + 1)
            && self.ends(at + 1);
        // two trailers' names may stand so: no list of them has a truck's load in it
        let load = self
            .bare_number(at + 1)
            .is_some_and(|v| v >= LEAST_LOAD_GAL);
        if of_it
            && load
            && let What::Number(number) = &mut self.items[at + 1].what
        {
            number.unit = Some(Unit::Gal);
        }
    }

    /// "pumped 12, 380 out": the gallons that were taken out of what was pumped.
    pub(super) fn so_much_out(&mut self, at: usize) {
        let opens = at
            .checked_sub(1)
            .is_some_and(|i| !self.same_chunk(at, i) || self.items[i].what == What::Sign(','));
        let load = self.bare_number(at).is_some_and(|v| v >= LEAST_LOAD_GAL);
        let out = self.same_chunk(at, at + 1)
            && self.items[at + 1].what == What::Is(Concept::State(State::Out))
            && self.ends(at + 1);
        let sentence = self.items[at].sentence;
        let pumped = || {
            let before = self.items[..at].iter().rev().take(8);
            before.take_while(|i| i.sentence == sentence).any(|i| {
                matches!(
                    i.what,
                    What::Is(
                        Concept::State(State::Pumped | State::Emptied)
                            | Concept::Event(Event::WastePumped)
                    )
                )
            })
        };
        if opens
            && load
            && out
            && pumped()
            && let What::Number(number) = &mut self.items[at].what
        {
            number.unit = Some(Unit::Gal);
        }
    }

    /// "truck comes at 3": the hour.
    pub(super) fn comes_at(&mut self, at: usize) {
        let comes = at > 0
            && self.items[at].what == What::Is(Concept::Mark(Mark::At))
            && self.same_chunk(at, at - 1)
            && self.says(at - 1, Sense::Comes);
        let hour = self
            .bare_number(at + 1)
            .filter(|v| (1.0..=12.0).contains(v));
        if comes && hour.is_some() && self.same_chunk(at, at + 1) && self.ends(at + 1) {
            self.items[at + 1].what = What::Labelled;
        }
    }

    /// "lights flicker when the pump runs": when it happens, and no pump that runs on.
    pub(super) fn whenever(&mut self, at: usize) {
        let runs = self.items[at].what == What::Is(Concept::Fault(Fault::PumpRunning));
        let when = || {
            let before = (0..at)
                .rev()
                .take(4)
                .take_while(|i| self.same_chunk(at, *i));
            before.into_iter().any(|i| self.says(i, Sense::Whenever))
        };
        if runs && when() {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "needle sits at 33", "gauge says 33": what it shows, whatever of, and no trailer.
    pub(super) fn needle_shows(&mut self, at: usize) {
        if self.bare_number(at).is_none() || !self.ends(at) {
            return;
        }
        let before: Vec<usize> = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.same_chunk(at, *i))
            .collect();
        let needle = before.iter().position(|i| self.says(*i, Sense::Needle));
        let Some(needle) = needle.filter(|between| *between > 0) else {
            return;
        };
        let shows = before[..needle].iter().all(|i| {
            self.items[*i].is_filler()
                || self.items[*i].is(Mark::Says)
                || self.items[*i].is(Mark::At)
        });
        if shows && let What::Number(number) = &mut self.items[at].what {
            // no trailer's name
            number.form = Form::Decimal;
        }
    }

    /// "la 9 va a un cuarto": how it stands, and nothing that will be done.
    pub(super) fn stands_at(&mut self, at: usize) {
        if !self.items[at].is(Mark::Plan) || !self.says(at, Sense::StandsAt) {
            return;
        }
        let level = (at + 1..self.items.len())
            .take(2)
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| {
                self.items[i]
                    .number()
                    .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
            });
        if level {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "ya casi está lleno": nearly full, and no plan.
    pub(super) fn nearly_there(&mut self, at: usize) {
        if !self.items[at].is(Mark::Plan) || !self.says(at, Sense::NearlyThere) {
            return;
        }
        let level = (at + 1..self.items.len())
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| {
                matches!(self.items[*i].what, What::Is(Concept::Level(_)))
                    || self.items[*i]
                        .number()
                        .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
            });
        let Some(level) = level else { return };
        self.items[at].what = What::Is(Concept::Mark(Mark::Bound));
        for i in at + 1..level {
            self.items[i].what = What::Is(Concept::Mark(Mark::Filler));
        }
        if let What::Number(n) = &mut self.items[level].what {
            n.bound = true;
        }
    }

    /// "8 here. chocked.", "22 home, parked": a trailer alone with the word.
    pub(super) fn here(&mut self, at: usize) {
        let home = self.says(at, Sense::Home);
        // "12 here, leveled" without its comma
        let done = self.same_chunk(at, at + 1)
            && matches!(
                self.items[at + 1].what,
                What::Is(Concept::Event(_) | Concept::State(State::Level | State::Chocked))
            );
        // "3 units here": counted, and none named
        let counted =
            at > 1 && self.items[at - 1].is(Mark::Unit) && self.bare_number(at - 2).is_some();
        if counted && self.says(at, Sense::Here) {
            self.items[at].what = What::Is(Concept::Event(Event::Arrived));
            return;
        }
        if !(home || self.says(at, Sense::Here)) || at == 0 || !(self.ends(at) || done) {
            return;
        }
        let start = (0..at)
            .rev()
            .take_while(|i| self.same_chunk(at, *i))
            .last()
            .unwrap_or(at);
        let trailer = self.names(at - 1) && !self.items[at - 1].is(Mark::Unit);
        let alone = (start..at - 1)
            .all(|i| self.items[i].is(Mark::Unit) || self.items[i].is(Mark::Article));
        if trailer && alone {
            let came = if home {
                Event::Returned
            } else {
                Event::Arrived
            };
            self.items[at].what = What::Is(Concept::Event(came));
        }
    }

    /// "gas smell near the genny by 11": beside what is wrong a place, and no hour.
    pub(super) fn by_a_place(&mut self, at: usize) {
        let by = self.items[at].is(Mark::Clock)
            && self.says(at, Sense::ByAPlace)
            && self.bare_number(at + 1).is_some()
            && (self.ends(at + 1) || self.items[at + 2].is(Mark::About));
        let here = |i: &usize| self.same_chunk(at, *i);
        let said: Vec<What> = (0..at)
            .rev()
            .take(12)
            .take_while(here)
            .map(|i| self.items[i].what)
            .collect();
        let wrong = said.iter().any(|what| match what {
            What::Is(Concept::Fault(_)) => true,
            What::Is(Concept::State(state)) => matches!(
                state,
                State::Leaking | State::Spilled | State::Smelly | State::Frozen | State::Damaged
            ),
            _ => false,
        });
        let timed = said.iter().any(|what| {
            matches!(
                what,
                What::Is(
                    Concept::Event(_)
                        | Concept::Need(_)
                        | Concept::Mark(Mark::Plan | Mark::Request | Mark::If)
                )
            )
        });
        if by && wrong && !timed {
            self.items[at].what = What::Is(Concept::Mark(Mark::At));
        }
    }

    /// "no pressure, take your time with 22": said of no water.
    pub(super) fn unhurried(&mut self, at: usize) {
        if !self.says(at, Sense::NoPressure) {
            return;
        }
        let beside = |i: usize| {
            self.items
                .get(i)
                .is_some_and(|n| n.sentence == self.items[at].sentence)
                && self.says(i, Sense::NoHurry)
        };
        let opens = at == 0 || !self.same_chunk(at, at - 1);
        let comma = |i: usize| {
            self.items
                .get(i)
                .is_some_and(|n| matches!(n.what, What::Sign(',' | '-')))
        };
        let after = opens && (beside(at + 1) || comma(at + 1) && beside(at + 2));
        let before = self.ends(at)
            && at
                .checked_sub(1)
                .is_some_and(|i| beside(i) || comma(i) && i.checked_sub(1).is_some_and(beside));
        if after || before {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }
}
