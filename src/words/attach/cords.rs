//! Cords: a number of them is a reading only where it counts those that have power.

use super::surroundings::chunk;
use super::unmeasured::is_small;
use super::{Placer, Value};
use crate::heard::{Event, Fault};
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::What;

/// A circuit that is told of a cord stands this near behind it, in words.
const NEAR: usize = 12;

impl Placer<'_> {
    /// Returns what a number of cords is where it does not count those that have power.
    pub(super) fn none_live(&self, at: usize) -> Option<Value> {
        // "unplugged that one cord": which one, and none of those that are live; "unplugged 2 cords": how many are left
        if self.just_cut(at) {
            let several = self.items[at].number().is_some_and(|n| n.value > 1.0);
            return Some(match several {
                true => Value::Unclear("cords-live"),
                false => Value::Label,
            });
        }
        // "2 cords dead": how many are live is not said by it
        if self.not_live(at) {
            return Some(Value::Unclear("cords-live"));
        }
        // "2 cords frayed": how many are, which the fault tells
        if self.spoilt(at) {
            return Some(Value::Label);
        }
        // "borrowed 2 cords from 12"
        self.otherwise_told(at)
            .then_some(Value::Unclear("cords-live"))
    }

    /// Tells whether the number right after a word for switching off says how many were cut.
    fn just_cut(&self, at: usize) -> bool {
        (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::Pronoun))
            .is_some_and(|i| {
                // "pulled 2 cords"
                self.items[i].what == What::Is(Concept::State(State::Off))
                    || self.items[i].is(Mark::Away)
            })
    }

    /// "2 cords dead", "lost 2 cords", "4 cords, 2 of them dead": tells whether the number counts cords without power, or
    /// others among them have none.
    fn not_live(&self, at: usize) -> bool {
        let cord = |i: usize| matches!(self.items[i].noun(), Some(Noun::Cord | Noun::Cords));
        let Some(noun) = (at + 1..self.items.len()).take(4).find(|i| cord(*i)) else {
            return false;
        };
        let sentence = self.items[at].sentence;
        let after = (noun + 1..self.items.len())
            .take(8)
            .take_while(|i| self.items[*i].sentence == sentence);
        let (here, beyond): (Vec<usize>, Vec<usize>) =
            after.partition(|i| self.items[*i].chunk == self.items[at].chunk);
        // another thing that is told of takes the state for itself
        let said_of_cords = |at: &[usize]| {
            at.iter()
                .take_while(|i| self.items[**i].noun().is_none() || cord(**i))
                .find_map(|i| self.has_power(*i))
        };
        // "3 cords live, 1 dead": how many are live is told
        let live = self.says_live(noun) == Some(true);
        match said_of_cords(&here) {
            _ if live => return false,
            Some(powered) => return !powered,
            None => {}
        }
        let lost = (0..at)
            .rev()
            .take(3)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .take_while(|i| !matches!(self.items[*i].what, What::Units(_)))
            .any(|i| self.has_power(i) == Some(false) || i + 1 == at && self.is_gone(i));
        let some_of_them = beyond
            .iter()
            .find(|i| !matches!(self.items[**i].what, What::Sign(_)))
            .is_some_and(|i| self.items[*i].number().is_some_and(is_small));
        lost || some_of_them && said_of_cords(&beyond) == Some(false)
    }

    /// Tells whether the cords that are counted are said to be damaged or hot.
    fn spoilt(&self, at: usize) -> bool {
        chunk(self.items, at).any(|i| {
            matches!(
                self.items[i].what,
                What::Is(
                    Concept::State(State::Damaged | State::Melted)
                        | Concept::Fault(Fault::CordDamaged | Fault::HotPlug)
                )
            )
        })
    }

    /// Tells whether a clause that counts cords says of them what is not known, and does not say that they are live.
    fn otherwise_told(&self, at: usize) -> bool {
        let here = || chunk(self.items, at);
        let live = here().any(|i| {
            self.has_power(i) == Some(true)
                || matches!(
                    self.items[i].what,
                    What::Is(
                        Concept::State(State::PluggedIn | State::Fitted)
                            | Concept::Event(Event::PowerOn)
                    )
                )
                || self.says_live(i) == Some(true)
        });
        let odd = |i: usize| {
            self.says_live(i) == Some(false)
                || matches!(
                    self.items[i].what,
                    What::Word { .. }
                        | What::Is(Concept::Event(Event::Left) | Concept::State(State::Stuck))
                )
        };
        // "tripped over 2 cords"
        let idle = at > 0 && self.items[at - 1].is(Mark::Idle);
        // "they gave me 1 cord, it's on circuit 1"
        let sentence = self.items[at].sentence;
        let on_a_circuit = || {
            self.items[at..]
                .windows(2)
                .take(NEAR)
                .take_while(|pair| pair[0].sentence == sentence)
                .any(|pair| {
                    pair[0].what == What::Is(Concept::State(State::On))
                        && pair[1].noun() == Some(Noun::Circuit)
                })
        };
        !live && (idle || here().any(odd)) && !on_a_circuit()
    }

    /// "2 cords hot", "2 cords in": tells whether the words for cords say that they are live; not where a place follows, as
    /// in "2 cords in the truck". None where they say nothing of it.
    fn says_live(&self, at: usize) -> Option<bool> {
        let item = &self.items[at];
        let more = item.noun() == Some(Noun::Cords) && item.end > item.first + 1;
        let place = self.items.get(at + 1).is_some_and(|n| {
            n.chunk == item.chunk && (n.is(Mark::Article) || n.noun() == Some(Noun::Truck))
        });
        more.then_some(!place)
    }

    /// "missing 2 cords", "out of cords".
    fn is_gone(&self, at: usize) -> bool {
        self.items[at].what == What::Is(Concept::State(State::Gone))
    }

    /// Tells whether what stands at `at` says that something has power, or that it has none.
    fn has_power(&self, at: usize) -> Option<bool> {
        // "2 cords hot out of 4"; "lost 2 cords" has no power, whatever their number
        let out_of = self.items[at].what != What::Is(Concept::State(State::Lost))
            && (self.items.get(at + 1)).is_some_and(|n| n.is(Mark::Of) || n.number().is_some());
        match self.items[at].what {
            What::Is(Concept::State(
                State::Off
                | State::Dead
                | State::Gone
                | State::Lost
                | State::Out
                | State::Down
                | State::Tripped
                | State::KeepsTripping,
            )) if !out_of => Some(self.scope[at].denied),
            What::Is(Concept::Fault(Fault::NoPower)) => Some(self.scope[at].denied),
            What::Is(Concept::State(state))
                if matches!(state, State::On | State::TurnedOn | State::Live | State::Ok) =>
            {
                let place = self.items.get(at + 1);
                let of_a_trailer =
                    state == State::On && place.is_some_and(|n| matches!(n.what, What::Units(_)));
                (!of_a_trailer).then_some(!self.scope[at].denied)
            }
            _ => None,
        }
    }
}
