//! Words that put what is told at another time: at 3, open it tomorrow, number 210 of a street.

use super::Words;
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Form, What};
use crate::words::senses::Sense;

impl Words<'_> {
    /// "tank was 1/2 at 3 now 5/8": the hour of what was, and no trailer.
    pub(super) fn hour_of_then(&mut self, at: usize) {
        let hour = self.items[at].is(Mark::At)
            && at > 0
            && self
                .bare_number(at + 1)
                .is_some_and(|n| (1.0..=12.0).contains(&n));
        let valued = |i: usize| {
            self.items[i]
                .number()
                .is_some_and(|n| n.form == Form::Part || n.unit.is_some())
        };
        let was = || {
            (0..at - 1)
                .rev()
                .take(4)
                .take_while(|i| self.same_chunk(at, *i))
                .any(|i| self.items[i].is(Mark::Past))
        };
        let now = || {
            let mut after = (at + 2..self.items.len())
                .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
                .filter(|i| !matches!(self.items[*i].what, What::Sign(_)));
            after.next().is_some_and(|i| self.items[i].is(Mark::Now))
                && after.next().is_some_and(valued)
                && after.next().is_none()
        };
        if hour && self.same_chunk(at, at - 1) && valued(at - 1) && was() && now() {
            self.items[at + 1].what = What::Labelled;
        }
    }

    /// "open 23 at 9am tomorrow": an order, and not done.
    pub(super) fn open_tomorrow(&mut self, at: usize) {
        let open = self.items[at].what == What::Is(Concept::State(State::Open))
            && self.says(at, Sense::OrderOpen)
            && (at == 0 || !self.same_chunk(at, at - 1));
        let tomorrow = (at + 1..self.items.len())
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| self.items[i].is(Mark::Plan) && self.says(i, Sense::Tomorrow));
        // "open 9 at 5 for the vip tent"
        let hour = self.names(at + 1)
            && self.same_chunk(at, at + 2)
            && self.items[at + 2].what == What::Is(Concept::Mark(Mark::At))
            && self.same_chunk(at, at + 3)
            && match self.items[at + 3].what {
                What::Clock(_) => true,
                _ => self
                    .bare_number(at + 3)
                    .is_some_and(|n| (1.0..=12.0).contains(&n)),
            };
        if open && (tomorrow || hour) {
            self.items[at].what = What::Is(Concept::Mark(Mark::Plan));
        }
    }

    /// "calle Juárez 210": the number of a house on a street whose kind stands first.
    pub(super) fn house_on_a_street(&mut self, at: usize) {
        if !self.says(at, Sense::StreetFirst) {
            return;
        }
        let house = (at + 1..self.items.len())
            .take(5)
            .take_while(|i| self.same_chunk(at, *i))
            .find(|i| {
                !self.items[*i].is_filler() && !matches!(self.items[*i].what, What::Word { .. })
            });
        if let Some(house) = house
            && house > at + 1
            // "en la carretera la 12"
            && !self.items[house - 1].is(Mark::Article)
            && self.bare_number(house).is_some()
            && self.ends(house)
        {
            self.items[house].what = What::Labelled;
        }
    }
}
