//! Words that only sound like a report: a note that is left, a gate that is closed, a phone that is plugged in, a table
//! for twelve people.

use super::Words;
use crate::heard::{Event, Fault};
use crate::words::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use crate::words::item::{Item, What};
use crate::words::senses::Sense;

/// How far, in items, such words look around in their clause.
const NEAR: usize = 6;

impl Words<'_> {
    /// Takes what is no report out of the reading.
    pub(super) fn only_talk(&mut self, at: usize) {
        self.table_for(at);
        self.leaves_a_thing(at);
        self.closes_a_gate(at);
        self.plugs_in_a_phone(at);
        self.thing_on_the_hitch(at);
        self.flat_number(at);
        self.battery_by_its_volts(at);
        self.never_so_bad(at);
        self.everything_shut(at);
        self.lamp_of_full(at);
        self.at_a_mile(at);
        self.heading(at);
        self.sick_guests(at);
        self.staff_of_a_bar(at);
        self.tell_me_when(at);
    }

    /// Returns the items before `at` in its clause, the nearest first.
    fn before(&self, at: usize) -> impl Iterator<Item = usize> + '_ {
        (0..at)
            .rev()
            .take(NEAR)
            .take_while(move |i| self.same_chunk(at, *i))
    }

    /// Returns the items behind `at` in its clause.
    fn behind(&self, at: usize) -> impl Iterator<Item = usize> + '_ {
        (at + 1..self.items.len())
            .take(NEAR)
            .take_while(move |i| self.same_chunk(at, *i))
    }

    /// "reservation for 12 people", "tacos para 20 personas": who eats there, and nobody on the site.
    fn table_for(&mut self, at: usize) {
        let people = self.same_chunk(at, at + 1)
            && matches!(self.items[at + 1].noun(), Some(Noun::Guests | Noun::Person));
        let led = at > 0 && self.items[at - 1].is(Mark::At);
        let table = |i: usize| self.says(i, Sense::TableFor);
        if self.bare_number(at).is_some() && people && led && self.before(at).any(table) {
            self.items[at].what = What::Labelled;
        }
    }

    /// "leaving a note on 14's door": a thing stays behind, and nobody departs.
    fn leaves_a_thing(&mut self, at: usize) {
        let left = self.items[at].what == What::Is(Concept::Event(Event::Left))
            && self.items[at].end == self.items[at].first + 1;
        let thing = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::SomeThing);
        // "left a wedding with 12"
        let with = || {
            let led = |i: usize| self.items[i].is(Mark::With);
            self.behind(at).any(|i| led(i) && self.names(i + 1))
        };
        // "left a minute ago"
        let ago = || self.behind(at).any(|i| self.items[i].is(Mark::Ago));
        if left && thing && !with() && !ago() {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "closed the site gate behind me", "cerré el portón": no trailer was closed or opened.
    fn closes_a_gate(&mut self, at: usize) {
        let closed = matches!(
            self.items[at].what,
            What::Is(Concept::State(State::Closed | State::Shut | State::Open))
        );
        // "closed the water valve" says it of the water, "opened the valve" too
        let shut = self.items[at].what == What::Is(Concept::State(State::Closed));
        let gate = |i: usize| {
            let valve = self.items[i].noun() == Some(Noun::Pipe);
            self.says(i, Sense::Gate) || self.says(i, Sense::Part) && (shut || !valve)
        };
        // "12 closed and locked the gate" tells of the trailer first
        let goes_on = |i: &usize| {
            let item = &self.items[*i];
            !(self.names(*i)
                || item.is(Mark::And)
                || item.noun() == Some(Noun::Water)
                || matches!(item.what, What::Is(Concept::State(_) | Concept::Event(_))))
        };
        let behind = || self.behind(at).take(4).take_while(goes_on).any(gate);
        if closed && behind() {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "plugged in to the charger at the motel": somebody's own, where no trailer stands in the clause.
    fn plugs_in_a_phone(&mut self, at: usize) {
        let plugged = matches!(
            self.items[at].what,
            What::Is(
                Concept::State(State::PluggedIn | State::TurnedOn) | Concept::Event(Event::PowerOn)
            )
        );
        let own = |i: usize| self.says(i, Sense::OwnDevice);
        let named = |i: usize| self.names(i);
        // "plugged the phone in"
        let spelt = self.spelt(at);
        let inside = spelt
            .split(' ')
            .any(|word| self.senses.has(word, Sense::OwnDevice));
        if plugged
            && (inside || self.before(at).chain(self.behind(at)).any(own))
            && !self.before(at).chain(self.behind(at)).any(named)
        {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "7 thermometer on the hitch says 0F": where a thing hangs, and nothing was hitched.
    fn thing_on_the_hitch(&mut self, at: usize) {
        let hitched = self.items[at].what == What::Is(Concept::Event(Event::Hitched))
            && self.says(at, Sense::OnTheHitch);
        let thing = self.before(at).find(|i| !self.items[*i].is_filler());
        let hangs = thing.is_some_and(|i| match self.items[i].what {
            What::Is(Concept::Noun(noun)) => noun != Noun::Trailer,
            What::Word { .. } => true,
            _ => false,
        });
        if hitched && hangs {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "0F flat": so much to the degree, and no damage, where no tire is spoken of.
    fn flat_number(&mut self, at: usize) {
        let measured = at > 0
            && self.same_chunk(at, at - 1)
            && self.items[at - 1]
                .number()
                .is_some_and(|n| n.unit.is_some());
        let tire = |i: usize| self.items[i].noun() == Some(Noun::Tire);
        if measured && self.says(at, Sense::Flat) && !self.before(at).any(tire) {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "the 12 volt battery is low": which battery, and how it stands.
    fn battery_by_its_volts(&mut self, at: usize) {
        let low = matches!(
            self.items[at].what,
            What::Is(Concept::State(
                State::Low | State::Weak | State::Dead | State::Down | State::Gone
            ))
        );
        let battery = self
            .before(at)
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| self.says(i, Sense::BatteryByItsVolts));
        if low && battery {
            self.items[at].what = What::Is(Concept::Fault(Fault::BatteryLow));
        }
    }

    /// "I never saw a toilet plugged up that bad": it is, and as bad as never before.
    fn never_so_bad(&mut self, at: usize) {
        let never = self.items[at].is(Mark::Not) && self.says(at, Sense::Never);
        let saw = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::Saw);
        let so = |i: usize| self.says(i, Sense::SoBad);
        if never
            && saw
            && (at + 2..self.items.len())
                .take(12)
                .take_while(|i| self.same_chunk(at, *i))
                .any(so)
        {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
            self.items[at + 1].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "14 is 45 psi, everything closed", "45 psi cerrado todo": beside a pressure the taps, all of them.
    fn everything_shut(&mut self, at: usize) {
        let shut = matches!(
            self.items[at].what,
            What::Is(Concept::State(State::Closed | State::Shut | State::Off))
        );
        if !shut {
            return;
        }
        let beside = [at.checked_sub(1), Some(at + 1)];
        let all = beside
            .into_iter()
            .flatten()
            .find(|i| self.same_chunk(at, *i) && self.says(*i, Sense::Everything));
        let Some(all) = all else { return };
        let sentence = self.items[at].sentence;
        let pressure = |i: &Item| {
            i.noun() == Some(Noun::Pressure)
                || i.number()
                    .is_some_and(|n| n.unit.is_some_and(|u| u.is_pressure()))
        };
        let near = at.saturating_sub(12)..self.items.len().min(at + 12);
        let near = |test: &dyn Fn(&Item) -> bool| {
            let mut items = self.items[near.clone()].iter();
            items.any(|i| i.sentence == sentence && test(i))
        };
        if near(&pressure) {
            self.items[all].what = What::Is(Concept::Noun(Noun::Taps));
            self.items[at].what = What::Is(Concept::State(State::Shut));
        } else if near(&|i| i.noun() == Some(Noun::Pump)) {
            // "the pump keeps running with everything closed": the taps are, and the trailer is not
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "al campo, km 54": a place on a road, where the measure stands before the number that ends its clause.
    fn at_a_mile(&mut self, at: usize) {
        let measure = self.items[at].what == What::Is(Concept::Unit(Unit::Other));
        let measured =
            at > 0 && self.same_chunk(at, at - 1) && self.items[at - 1].number().is_some();
        let number = self.same_chunk(at, at + 1) && self.bare_number(at + 1).is_some();
        if measure && !measured && number && self.ends(at + 1) {
            self.items[at + 1].what = What::Labelled;
        }
    }

    /// "Midway row: 101 waste half, 102 waste 1/4": what heads a list of trailers is no label of the first.
    fn heading(&mut self, at: usize) {
        let colon = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.what == What::Sign(':'));
        let first = at + 2;
        let noun = |i: usize| {
            let noun = self.items.get(i).and_then(Item::noun);
            noun.filter(|noun| noun.reading().is_some())
        };
        if !self.items[at].is(Mark::Label) || !colon || self.bare_number(first).is_none() {
            return;
        }
        let chunk = self.items[first].chunk;
        let next = (first + 1..self.items.len()).take(NEAR).find(|i| {
            self.items[*i].chunk != chunk
                && !matches!(self.items[*i].what, What::Sign(_) | What::Break)
        });
        let alike = next.is_some_and(|i| {
            self.bare_number(i).is_some() && noun(i + 1).is_some() && noun(i + 1) == noun(first + 1)
        });
        if alike {
            self.items[at].what = What::Word { ordinary: true };
        }
    }

    /// "3 guests sick at 12": who is ill is no count of a crowd.
    fn sick_guests(&mut self, at: usize) {
        // "20 sick guests"
        let ill = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::Sick);
        let who = at + 1 + usize::from(ill);
        let guests = self.same_chunk(at, who) && self.items[who].noun() == Some(Noun::Guests);
        let sick = || {
            let near = (at + 2..self.items.len()).take(4);
            near.take_while(|i| self.same_chunk(at, *i))
                .any(|i| self.says(i, Sense::Sick))
        };
        if guests && self.bare_number(at).is_some() && (ill || sick()) {
            self.items[at].what = What::Labelled;
        }
    }

    /// "two bar staff": people of a bar, and no pressure.
    fn staff_of_a_bar(&mut self, at: usize) {
        let bars = self.items[at]
            .number()
            .is_some_and(|n| n.unit == Some(Unit::Bar));
        let staff = self.same_chunk(at, at + 1)
            && self.says(at + 1, Sense::OfABar)
            && !self
                .before(at)
                .any(|i| self.items[i].noun() == Some(Noun::Pressure));
        if bars && staff {
            self.items[at].what = What::Labelled;
        }
    }

    /// "can somebody tell me when the tank on 9 will be full?": asked, and no wish to be told then.
    fn tell_me_when(&mut self, at: usize) {
        let when = self.items[at].is(Mark::If) && self.says(at, Sense::TellMeWhen);
        let asked = at > 0
            && self.same_chunk(at, at - 1)
            && (self.items[at - 1].is(Mark::Request) || self.items[at - 1].is(Mark::Who));
        let will = || {
            let here = (at + 1..self.items.len()).take(2 * NEAR);
            here.take_while(|i| self.same_chunk(at, *i))
                .any(|i| self.items[i].is(Mark::Plan))
        };
        if when && asked && will() {
            self.items[at - 1].what = What::Is(Concept::Mark(Mark::Query));
            self.items[at].what = What::Is(Concept::Ask(AskWord::When));
        }
    }

    /// "prendió la lámpara de lleno, tanque de negras": the lamp that shows a level is a gauge, and no light of a room.
    fn lamp_of_full(&mut self, at: usize) {
        let lamp = matches!(self.items[at].noun(), Some(Noun::Lights | Noun::Mains))
            && self.says(at, Sense::LevelLamp);
        let level = (at + 1..self.items.len())
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| !self.items[*i].is(Mark::Of) && !self.items[*i].is(Mark::Article))
            .is_some_and(|i| matches!(self.items[i].what, What::Is(Concept::Level(_))));
        let of = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Of));
        // "the full light came on"
        let full = at > 0
            && self.same_chunk(at, at - 1)
            && matches!(self.items[at - 1].what, What::Is(Concept::Level(_)));
        if lamp && (of && level || full) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Gauge));
        }
    }
}
