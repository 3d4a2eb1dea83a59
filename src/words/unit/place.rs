//! What the word before a number makes of it: first in its chunk, after a place word, after a noun.

use super::candidate::Candidate;
use super::candidate::Verdict::{self, Likely, No};
use super::near::{
    chunk_ends, chunk_has_value_noun, counts, noun_earlier, others, owns_number, risky, value,
    valued_before,
};
use crate::heard::Event;
use crate::words::attach::fits;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, What};

/// Tells whether a bare "at" or the like stands at `place`.
fn at_word_of(items: &[Item], place: usize) -> bool {
    items[place].what == What::Is(Concept::Mark(Mark::At))
}

impl Candidate<'_> {
    /// Decides by the nearest word before the candidate.
    pub(super) fn by_what_stands_before(&self) -> Verdict {
        let Some(prior) = self.prior_item() else {
            return self.first_of_its_chunk();
        };
        match prior.what {
            What::Is(Concept::Mark(mark)) => self.after_a_mark(mark),
            What::Is(Concept::State(state)) => self.after_a_state(state),
            What::Is(Concept::Noun(noun)) => self.after_a_noun(noun),
            What::Word { ordinary } => self.after_a_word(ordinary),
            // "12 waste 1/2 14 waste 3/4": after a value of its own, a number before the next noun
            What::Number(n)
                if (n.form == Form::Part || n.unit.is_some())
                    && (self.opens_a_value() || self.opens_a_clause()) =>
            {
                Likely
            }
            What::Clock(_)
            | What::Is(
                Concept::Event(_)
                | Concept::Fault(_)
                | Concept::Clears(_)
                | Concept::Ask(_)
                | Concept::Need(_)
                | Concept::Level(_)
                | Concept::Answer(_)
                | Concept::Command(_),
            ) => Likely,
            _ => No,
        }
    }

    fn after_a_mark(&self, mark: Mark) -> Verdict {
        match mark {
            Mark::Bound => self.after_a_bound(),
            Mark::At | Mark::For | Mark::With | Mark::Inside | Mark::Of | Mark::From | Mark::To => {
                self.after_a_place_word()
            }
            // "the client at the job says 14": who says it, and what about
            Mark::Label if self.reported() || self.heads_a_list() => Likely,
            // "died at the quarry job so 26 has no power"
            Mark::Label if self.before.is_some_and(|b| b.is(Mark::So)) => Likely,
            // "28 degrees out here by 37": no hour
            Mark::Clock
                if self.before.is_some_and(|b| b.is(Mark::Clock))
                    && (25.0..100.0).contains(&value(self.item)) =>
            {
                Likely
            }
            Mark::Clock | Mark::Label | Mark::Between | Mark::Minus => No,
            Mark::All if self.is_count_of_all() => No,
            // "23 fresh was at 80 last night"
            Mark::Past if self.named_in_sentence() && noun_earlier(self.items, self.at) => No,
            Mark::Call if self.is_risky() && chunk_has_value_noun(self.items, self.at) => No,
            Mark::And
            | Mark::Or
            | Mark::But
            | Mark::Not
            | Mark::Yet
            | Mark::If
            | Mark::Query
            | Mark::Aux
            | Mark::Sorry
            | Mark::Plan
            | Mark::Underway
            | Mark::Request
            | Mark::Doubt
            | Mark::All
            | Mark::Past
            | Mark::Now
            | Mark::Call
            | Mark::Morning
            | Mark::Ago
            | Mark::Yesterday
            | Mark::LastNight
            | Mark::Order
            | Mark::Pronoun
            | Mark::Done
            | Mark::Idle => Likely,
            _ => No,
        }
    }

    fn after_a_state(&self, state: State) -> Verdict {
        match state {
            State::Pumped | State::Emptied | State::Filled if self.is_so_much() => No,
            State::On if self.ends_with_water_on() => No,
            State::Ok if self.ends_what_stands() => No,
            _ => Likely,
        }
    }

    fn after_a_word(&self, ordinary: bool) -> Verdict {
        // "finisshed 11: filter changed"
        if !ordinary && self.opens_with_a_colon() || self.heads_a_list() {
            return Likely;
        }
        // "Trey says 21 is at 3/4 waste": whoever says it
        if self.reported() && self.next.is_some() {
            return Likely;
        }
        // "both cords, seeing 121"
        if chunk_ends(self.items, self.at) && self.perhaps_volts() {
            return No;
        }
        // a word nobody knows may be a slip for what gave the number its place
        match self.is_risky() && (!ordinary || self.named_in_chunk()) {
            true => No,
            false => Likely,
        }
    }

    fn is_risky(&self) -> bool {
        risky(self.items, self.at)
    }

    /// "22 has all 4 ...", "all four arrived": a count.
    fn is_count_of_all(&self) -> bool {
        let all = self.before.is_some_and(|b| b.is(Mark::All)) && value(self.item) <= 4.0;
        let after_a_name =
            self.named_in_chunk() && self.named.last().is_some_and(|n| n.at + 1 < self.at);
        all || after_a_name
    }

    /// "12 done, pumped 250", "pumped 300": gallons as well as a trailer.
    fn is_so_much(&self) -> bool {
        let round = self.named.is_empty() && value(self.item) % 10.0 == 0.0;
        value(self.item) >= 100.0 && (self.beside_a_small_name() || round)
    }

    /// "12 water on 55": the water is on, and 55 is no second trailer for certain.
    fn ends_with_water_on(&self) -> bool {
        let water = self.prior.is_some_and(|p| {
            p > 0 && matches!(self.items[p - 1].noun(), Some(Noun::Water | Noun::Power))
        });
        water && self.named_in_chunk() && chunk_ends(self.items, self.at)
    }

    /// "12 was at 110 psi, now 55": a value of now that ends its chunk, after one that was.
    pub(super) fn of_now(&self) -> bool {
        let now = (0..self.at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.item.chunk)
            .any(|i| self.items[i].is(Mark::Now));
        let before = || {
            (0..self.at)
                .rev()
                .take(16)
                .take_while(|i| self.items[*i].sentence == self.item.sentence)
        };
        // "was 88 psi, 60 now": it opens its chunk, and the word stands right after it
        let after = self.prior.is_none()
            && self
                .items
                .get(self.at + 1)
                .is_some_and(|n| n.is(Mark::Now) && n.chunk == self.item.chunk);
        // "now 35 after the truck came"
        let then = self.before.is_some_and(|b| b.is(Mark::Now))
            && self
                .items
                .get(self.at + 1)
                .is_some_and(|n| n.is(Mark::Clock) && n.chunk == self.item.chunk);
        (now && (chunk_ends(self.items, self.at) || then) || after)
            && self.named_in_sentence()
            && before().any(|i| {
                self.items[i].is(Mark::Past)
                    || self.items[i].is(Mark::Yesterday)
                    || self.items[i].is(Mark::LastNight)
            })
            && before().any(|i| {
                self.items[i].number().is_some_and(|n| n.unit.is_some())
                    || self.items[i].noun().is_some_and(|n| n.reading().is_some())
            })
    }

    /// Tells whether the trailer named last in the sentence has a number below 100.
    fn beside_a_small_name(&self) -> bool {
        self.named_in_sentence()
            && self.named.last().is_some_and(|n| {
                n.names
                    .iter()
                    .all(|name| name.as_str().parse::<u32>().is_ok_and(|n| n < 100))
            })
    }

    /// Tells whether a noun with a number of its own comes next.
    pub(super) fn opens_a_value(&self) -> bool {
        self.next == Some(self.at + 1)
            && self
                .next_item()
                .and_then(Item::noun)
                .is_some_and(|n| n.reading().is_some() && !counts(n))
            && owns_number(self.items, self.next)
    }

    /// "twelve is at forty psi fourteen is at fifty five psi": what it is follows, in a measure.
    fn opens_a_clause(&self) -> bool {
        let is = |i: usize| {
            self.items.get(i).is_some_and(|n| {
                n.chunk == self.item.chunk && (n.is(Mark::Aux) || n.is(Mark::Filler))
            })
        };
        is(self.at + 1)
            && (self.at + 2..self.items.len())
                .take(2)
                .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At))
                .is_some_and(|i| self.items[i].number().is_some_and(|n| n.unit.is_some()))
    }

    /// "pressure is steady 57": how a thing stands, and then its value, where the trailer was named.
    fn ends_what_stands(&self) -> bool {
        let Some(state) = self.prior else {
            return false;
        };
        let noun = (0..state)
            .rev()
            .take_while(|i| self.items[*i].chunk == self.item.chunk)
            .find(|i| !self.items[*i].is_filler());
        self.named_in_sentence()
            && chunk_ends(self.items, self.at)
            && noun.is_some_and(|i| {
                self.items[i]
                    .noun()
                    .is_some_and(|n| n.reading().is_some() && !n.is_tank())
            })
    }

    /// Tells whether a word of reporting stands right before it.
    fn reported(&self) -> bool {
        self.before.is_some_and(|b| b.is(Mark::Says))
    }

    /// Tells whether a word opens the sentence and the candidate ends in a colon.
    fn opens_with_a_colon(&self) -> bool {
        self.items
            .get(self.at + 1)
            .is_some_and(|n| n.what == What::Sign(':'))
            && self
                .prior
                .is_some_and(|p| p == 0 || self.items[p - 1].sentence != self.item.sentence)
    }

    fn first_of_its_chunk(&self) -> Verdict {
        let opens = self.before.is_none_or(|b| {
            b.chunk != self.item.chunk
                || b.is_filler()
                || b.is(Mark::Call)
                || b.what == What::Sign('\u{fffd}')
        });
        if !opens || self.left_over() || self.now_at_a_place() {
            return No;
        }
        if self.next.is_some() {
            return Likely;
        }
        if self.perhaps_volts() {
            return No;
        }
        if self.perhaps_a_pressure() {
            return No;
        }
        let second = self.named_in_sentence();
        let likely = second && (self.mends_the_trailer() || self.elided())
            || value(self.item) < 10_000.0 && !second;
        if likely { Likely } else { No }
    }

    /// "37 leveled. 48": a number left over at the end.
    fn left_over(&self) -> bool {
        let said = |i: &&Item| !matches!(i.what, What::Sign(_) | What::Break);
        let another = self
            .named
            .last()
            .is_some_and(|n| self.items[n.at].sentence != self.item.sentence);
        let nothing_more = self.items[self.at + 1..].iter().filter(said).all(|i| {
            matches!(i.what, What::Word { .. })
                || i.is(Mark::Call)
                || i.is_filler()
                || i.is(Mark::Idle)
        });
        // "7: nothing to report"
        let headed = self
            .items
            .get(self.at + 1)
            .is_some_and(|n| n.what == What::Sign(':'));
        another && nothing_more && !headed && !self.takes_back()
    }

    /// Tells whether a word of correction is the last before it.
    fn takes_back(&self) -> bool {
        self.items[..self.at]
            .iter()
            .rev()
            .find(|i| !matches!(i.what, What::Sign(_) | What::Break))
            .is_some_and(|i| i.is(Mark::Sorry))
    }

    /// "in with 14 - oops, 41": mends the trailer where no value stands to mend.
    fn mends_the_trailer(&self) -> bool {
        let after_a_correction = self.items[..self.at]
            .iter()
            .rev()
            .find(|i| !matches!(i.what, What::Sign(_)))
            .is_some_and(|i| i.is(Mark::Sorry));
        after_a_correction
            && self
                .items
                .iter()
                .enumerate()
                .filter(|(_, i)| i.sentence == self.item.sentence)
                .all(|(i, x)| {
                    i == self.at
                        || self.named.iter().any(|n| n.at == i)
                        || !matches!(x.what, What::Number(_) | What::Range(..))
                })
    }

    /// "20 doesnt leak, 21 does".
    fn elided(&self) -> bool {
        let yes = What::Is(Concept::Answer(crate::heard::ShortAnswer::Yes));
        self.items
            .get(self.at + 1)
            .is_some_and(|n| n.is(Mark::Aux) || n.is(Mark::If) || n.what == yes)
            && self.items[..self.at]
                .iter()
                .rev()
                .take(10)
                .any(|i| i.is(Mark::Not) || i.is(Mark::No))
    }

    /// "under 50 psi" bounds a value, "under 12" is a place; so is "over 12 sitting at a quarter tank", for a whole
    /// number is no level.
    fn after_a_bound(&self) -> Verdict {
        let chunk = || {
            (self.at + 1..self.items.len())
                .take(12)
                .take_while(|i| self.items[*i].chunk == self.item.chunk)
        };
        let leveled = chunk().any(|i| self.items[i].number().is_some_and(|n| n.form == Form::Part))
            && chunk().all(|i| {
                self.items[i]
                    .noun()
                    .is_none_or(|n| n.is_tank() || n.reading().is_none())
            });
        if leveled || !chunk_has_value_noun(self.items, self.at) {
            Likely
        } else {
            No
        }
    }

    fn after_a_place_word(&self) -> Verdict {
        let (items, at) = (self.items, self.at);
        let Some(place) = self.prior else { return No };
        let range = matches!(self.item.what, What::Range(..));
        // "101 out here at 7": the air was told before its word
        let air_told = place > 1
            && place + 1 == at
            && at_word_of(items, place)
            && items[place - 1].noun() == Some(Noun::Air)
            && items[place - 2].chunk == self.item.chunk
            && items[place - 2]
                .number()
                .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
            && chunk_ends(items, at);
        if air_told {
            return Likely;
        }
        // "water's on at 51": what it is at, where the trailer was named
        let water_at = at_word_of(items, place)
            && !self.placed_like_the_last()
            && value(self.item) >= 30.0
            && self.named_in_sentence()
            && chunk_ends(items, at)
            && !self.named_in_chunk()
            && (0..place)
                .rev()
                .take(4)
                .take_while(|i| items[*i].chunk == self.item.chunk)
                .any(|i| {
                    items[i].noun() == Some(Noun::Water)
                        || items[i].what == What::Is(Concept::Event(Event::WaterOn))
                });
        if water_at {
            return No;
        }
        // "8 inside 88, outside 95": how warm it is in the trailer that was named
        let in_there = items[place].is(Mark::Inside)
            && place + 1 == at
            && value(self.item) >= 30.0
            && self.named.last().is_some_and(|n| n.at + 1 == place)
            && chunk_ends(items, at);
        if in_there {
            return No;
        }
        let at_word = items[place].is(Mark::At);
        // "batería 12 con 2": the first may be the trailer and this its value
        let with_a_value = items[place].is(Mark::With)
            && place > 1
            && items[place - 1].number().is_some_and(|n| n.unit.is_none())
            && items[place - 2]
                .noun()
                .is_some_and(|n| n.reading().is_some() && !counts(n));
        if with_a_value {
            return No;
        }
        if range && self.next.is_none() && valued_before(items, place) {
            return No;
        }
        // nobody writes 1:02 as 102
        let minutes = value(self.item) % 100.0;
        let clock = (100.0..=2359.0).contains(&value(self.item))
            && minutes < 60.0
            && !(value(self.item) < 1000.0 && (1.0..10.0).contains(&minutes));
        let valued_next = self
            .next_item()
            .is_some_and(|n| n.noun().is_some_and(|n| n.reading().is_some()));
        if clock && !valued_next {
            return No;
        }
        // "12 at 95, regulator on": what the trailer is at
        let of_the_trailer = at_word
            && place + 1 == at
            && value(self.item) >= 30.0
            && self.named.last().is_some_and(|n| n.at + 1 == place);
        if of_the_trailer {
            return No;
        }
        if at_word && !range && (self.an_hour(place) || self.ends_at(place)) {
            return No;
        }
        if at_word && self.is_at_a_value(place) {
            return No;
        }
        // "pressure at 55", "pressure came up from 32 to 50": the value, where no number follows and another trailer is named
        if (at_word || items[place].is(Mark::From))
            && valued_before(items, place)
            && !self.told_before_its_noun(place)
            && self.next_item().is_none_or(|n| n.number().is_none())
            && others(items, at)
        {
            return No;
        }
        Likely
    }

    /// "water off at 35, water on at 36": as the trailer before, which ends its clause after a place word.
    fn placed_like_the_last(&self) -> bool {
        self.named.last().is_some_and(|n| {
            n.at > 0
                && at_word_of(self.items, n.at - 1)
                && self.items[n.at + 1..]
                    .iter()
                    .take(1)
                    .all(|next| matches!(next.what, What::Sign(_)))
                && self.items[..n.at]
                    .iter()
                    .rev()
                    .take_while(|i| i.chunk == self.items[n.at].chunk)
                    .any(|i| i.noun() == Some(Noun::Water))
        })
    }

    /// "23 fresh wsa at 80", "12 pressure holding steady at 55": the value of a noun that has none yet, after its trailer.
    fn ends_at(&self, place: usize) -> bool {
        let from = self.named.last().map_or(place, |n| n.at + 1);
        let Some(noun) = (from..place)
            .rev()
            .find(|i| self.items[*i].noun().is_some_and(|n| n.reading().is_some()))
        else {
            return false;
        };
        self.named_in_chunk()
            && self.items[noun].chunk == self.item.chunk
            && (noun + 1..place).all(|i| {
                !matches!(
                    self.items[i].what,
                    What::Number(_)
                        | What::Range(..)
                        | What::Is(
                            Concept::Level(_)
                                | Concept::State(_)
                                | Concept::Event(_)
                                | Concept::Fault(_)
                        )
                )
            })
    }

    /// "opened 12 at 4": beside a trailer, what was done at a small number was done at that hour.
    fn an_hour(&self, place: usize) -> bool {
        let told = self.named_in_chunk()
            && value(self.item) <= 12.0
            && self.next_item().is_none_or(|n| n.what == What::Sign(','))
            && place + 1 == self.at;
        told && (0..place)
            .rev()
            .take(8)
            .take_while(|i| self.items[*i].chunk == self.item.chunk)
            .any(|i| {
                // "the truck is coming to 12 at 3"
                matches!(
                    self.items[i].what,
                    What::Is(
                        Concept::Event(_)
                            | Concept::Need(_)
                            | Concept::Mark(Mark::Plan | Mark::Request | Mark::Booked)
                            | Concept::State(
                                State::Open
                                    | State::Closed
                                    | State::Pumped
                                    | State::Cleaned
                                    | State::Stocked
                            )
                    )
                )
            })
    }

    /// "pressure: 39 has 47, 40 has 51": under a heading, before what it has.
    fn under_a_heading(&self) -> bool {
        let headed = self
            .prior
            .is_some_and(|p| self.items[p + 1].what == What::Sign(':') && p + 2 == self.at);
        let has = self.items.get(self.at + 1).is_some_and(|n| n.is(Mark::Aux));
        let valued = (self.items.get(self.at + 2)).is_some_and(|n| n.number().is_some());
        headed && has && valued
    }

    fn after_a_noun(&self, noun: Noun) -> Verdict {
        if self.under_a_heading() {
            return Likely;
        }
        // "toilet 2 won't flush": a place inside a trailer
        let inside = matches!(
            noun,
            Noun::Toilet | Noun::Sink | Noun::Taps | Noun::Lock | Noun::Door | Noun::Plug
        ) && self.prior.is_some_and(|p| p + 1 == self.at)
            && (value(self.item) <= 4.0 || value(self.item) <= 12.0 && self.named_in_sentence());
        if inside {
            return No;
        }
        let valued =
            noun.reading().is_some() || matches!(noun, Noun::Circuit | Noun::Breaker | Noun::Amps);
        // a trailer has four cords at most
        let more = noun == Noun::Cords && value(self.item) > 4.0;
        // "70F inside at 11": the noun that takes the place word with it was told before
        let told = matches!(noun, Noun::Inside | Noun::Air)
            && self
                .prior
                .is_some_and(|p| p + 1 == self.at && self.told_before_its_noun(self.at))
            && chunk_ends(self.items, self.at);
        if !valued
            || more
            || told
            || self.before_its_level(noun)
            || self.before_its_value(noun)
            || self.of_a_mishap(noun)
            || self.pulled(noun)
            || self.told_to(noun)
        {
            Likely
        } else {
            No
        }
    }

    /// "se derramó el tanque 12", "fell in tank 12": what happened to a tank was at its trailer.
    fn of_a_mishap(&self, noun: Noun) -> bool {
        let wrong = |i: &Item| {
            matches!(
                i.what,
                What::Is(Concept::Fault(_) | Concept::State(State::Spilled | State::Damaged))
            )
        };
        let tank = self.prior.filter(|p| p + 1 == self.at && noun.is_tank());
        let led = tank.is_some_and(|p| {
            let lead = self.items[..p].iter().rev().find(|i| !i.is(Mark::Article));
            lead.is_some_and(|i| {
                i.chunk == self.item.chunk && (i.is(Mark::At) || i.is(Mark::Inside))
            })
        });
        let here = |i: &&Item| i.chunk == self.item.chunk;
        let said = self.items[..self.at]
            .iter()
            .rev()
            .take(8)
            .take_while(here)
            .any(wrong);
        tank.is_some() && (said || led) && chunk_ends(self.items, self.at)
    }

    /// "battery 23 12.1v", "pressure 12 55 psi": the value follows in its measure, and the first is none that such a thing
    /// has.
    fn before_its_value(&self, noun: Noun) -> bool {
        let own = value(self.item);
        let right_before = self.prior.is_some_and(|p| p + 1 == self.at);
        let told = self
            .next_item()
            .filter(|_| self.next == Some(self.at + 1))
            .and_then(Item::number);
        let Some(told) = told.filter(|_| right_before && !counts(noun)) else {
            return false;
        };
        let none_of_its = match told.unit {
            Some(Unit::Psi) => own < 15.0,
            Some(Unit::Volt) if told.value < 20.0 => own > 16.0,
            Some(Unit::Volt) => own < 90.0,
            _ => false,
        };
        none_of_its && fits(noun, told.unit, false) && !self.named_in_sentence()
    }

    /// "tank 12 full": a whole number is no level.
    fn before_its_level(&self, noun: Noun) -> bool {
        noun.is_tank()
            && self.next_item().is_some_and(|n| {
                n.number()
                    .is_some_and(|n| n.form != Form::Whole || n.unit.is_some())
                    || matches!(
                        n.what,
                        What::Is(
                            Concept::Level(_)
                                | Concept::State(_)
                                | Concept::Mark(Mark::Full | Mark::Empty)
                        )
                    )
            })
    }

    /// "folks 37 is pumped": people are spoken to, and the number is what something is said of.
    fn told_to(&self, noun: Noun) -> bool {
        noun == Noun::Guests
            && self.prior.is_some_and(|p| {
                p + 1 == self.at && (p == 0 || self.items[p - 1].chunk != self.item.chunk)
            })
            && self.items.get(self.at + 1).is_some_and(|n| n.is(Mark::Aux))
            && self.items.get(self.at + 2).is_some_and(|n| {
                matches!(n.what, What::Is(Concept::State(state)) if state != State::Ok)
                    || matches!(n.what, What::Is(Concept::Event(_)))
            })
    }

    /// "pulling 29 in": what is pulled is the trailer where no circuit is spoken of.
    fn pulled(&self, noun: Noun) -> bool {
        noun == Noun::Amps
            && self.next == Some(self.at + 1)
            && self.next_item().is_some_and(|n| {
                n.is(Mark::At)
                    || matches!(
                        n.what,
                        What::Is(Concept::State(
                            State::Out | State::Off | State::Up | State::On | State::Gone
                        ))
                    )
            })
            && !self.items.iter().any(|i| {
                matches!(i.what, What::Circuit(_))
                    || matches!(i.noun(), Some(Noun::Circuit | Noun::Breaker))
            })
    }
}
