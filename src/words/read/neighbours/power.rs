//! Words that count cords, or tell the volts of the mains, by what stands beside them.

use super::Words;
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::senses::Sense;

/// Two values of one reading that are told after each other lie within this ratio.
const ALIKE: f64 = 1.8;

impl Words<'_> {
    /// "both cords hot", "los dos cables vivos": two of them.
    pub(super) fn both_cords(&mut self, at: usize) {
        let both = self.items[at].is(Mark::All) && self.says(at, Sense::Both);
        // "both 20 A cords"
        let rated = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.number().is_some_and(|n| n.unit == Some(Unit::Amp)));
        let cords = at + 1 + usize::from(rated);
        let of_cords = self
            .items
            .get(cords)
            .is_some_and(|n| matches!(n.noun(), Some(Noun::Cords | Noun::Cord)));
        if !both || !of_cords {
            return;
        }
        let live = (at + 1..self.items.len())
            .take(6)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| {
                matches!(
                    self.items[i].what,
                    What::Is(
                        Concept::State(
                            State::Live | State::On | State::TurnedOn | State::PluggedIn
                        ) | Concept::Event(Event::PowerOn)
                    )
                ) || self.items[i].noun() == Some(Noun::Cords)
                    && self.items[i].end > self.items[i].first + 1
            });
        if live {
            self.items[at].what = What::Number(Number {
                value: 2.0,
                // no trailer's name
                form: Form::Decimal,
                unit: None,
                bound: false,
            });
            self.items[at + 1].what = What::Gone;
            self.items[cords].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }

    /// "plugged 12 into gen", "plugged into the wall": on power, and no clog.
    pub(super) fn plugged_into(&mut self, at: usize) {
        let clogged = self.items[at].what == What::Is(Concept::State(State::Clogged));
        if !clogged || !self.says(at, Sense::Plugged) {
            return;
        }
        let chunk = self.items[at].chunk;
        // "toilet plugged"
        let of_a_drain = self.items[..at]
            .iter()
            .rev()
            .take_while(|i| i.chunk == chunk)
            .any(|i| matches!(i.noun(), Some(Noun::Toilet | Noun::Sink)));
        let here = |i: &usize| self.same_chunk(at, *i);
        // the trailer may stand between: "plugged unit 12 into"
        let into = (at + 1..self.items.len())
            .take(4)
            .take_while(here)
            .find(|i| self.says(*i, Sense::Into));
        let Some(into) = into.filter(|_| !of_a_drain) else {
            return;
        };
        let fed = (into + 1..self.items.len())
            .take(3)
            .take_while(here)
            .any(|i| {
                self.says(i, Sense::Feeds)
                    || matches!(
                        self.items[i].noun(),
                        Some(
                            Noun::Generator
                                | Noun::Power
                                | Noun::Circuit
                                | Noun::Breaker
                                | Noun::Plug
                        )
                    )
            });
        if fed {
            self.items[at].what = What::Is(Concept::Event(Event::PowerOn));
        }
    }

    /// "los cords de la 21 están live, los tres", "cords hot, all 3": how many of them, where a count is said last.
    pub(super) fn all_of_them(&mut self, at: usize) {
        let whole = self.items[at].is(Mark::All) || self.says(at, Sense::TheyAll);
        let count = self.bare_number(at + 1).filter(|n| (1.0..=4.0).contains(n));
        if !whole || count.is_none() || !self.ends(at + 1) || !self.same_chunk(at, at + 1) {
            return;
        }
        let sentence = self.items[at].sentence;
        let said = || {
            self.items[..at]
                .iter()
                .rev()
                .take(40)
                .take_while(|i| i.sentence == sentence)
        };
        let live = said().any(|i| {
            matches!(
                i.what,
                What::Is(
                    Concept::State(State::Live | State::On | State::TurnedOn | State::PluggedIn)
                        | Concept::Event(Event::PowerOn)
                )
            )
        });
        let cords = said().any(|i| matches!(i.noun(), Some(Noun::Cords | Noun::Cord)));
        if live && cords {
            self.items[at].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }

    /// "118V, then 104 when the ac kicked in": a later value in the same measure, and no trailer. It stands.
    pub(super) fn then_another(&mut self, at: usize) {
        let Some(value) = self
            .bare_number(at + 1)
            .filter(|_| self.says(at, Sense::Then))
        else {
            return;
        };
        let last = self.ends(at + 1)
            || self.items.get(at + 2).is_some_and(|n| {
                n.is(Mark::Query) || n.is(Mark::Idle) || matches!(n.what, What::Word { .. })
            });
        let before = self.items[..at]
            .iter()
            .rev()
            .take(6)
            .take_while(|i| i.sentence == self.items[at].sentence)
            .find_map(|i| i.number());
        let Some(before) = before.filter(|_| last) else {
            return;
        };
        let measured = before
            .unit
            .is_some_and(|unit| matches!(unit, Unit::Volt | Unit::Pct) || unit.is_pressure());
        let alike = value > before.value / ALIKE && value < before.value * ALIKE;
        if measured && alike {
            if let What::Number(number) = &mut self.items[at + 1].what {
                number.unit = before.unit;
            }
            self.items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }

    /// "9 was 30 psi now 52": what is now is a clause of its own, as if a comma stood before it.
    pub(super) fn now_after_was(&mut self, at: usize) {
        let told = self.items[at].is(Mark::Now)
            && at > 1
            && self.same_chunk(at, at - 1)
            && self.items[at - 1].number().is_some()
            && self.same_chunk(at, at + 1)
            && self.items[at + 1].number().is_some()
            && self.ends(at + 1);
        let was = || {
            let before = (0..at - 1).rev().take(6);
            before
                .take_while(|i| self.same_chunk(at, *i))
                .any(|i| self.items[i].is(Mark::Past))
        };
        if told && was() {
            for item in &mut self.items[at..] {
                item.chunk += 1;
            }
        }
    }

    /// "reset 3 on 9": the breaker of that number, where its trailer follows.
    pub(super) fn breaker_by_number(&mut self, at: usize) {
        let reset = self.items[at].what == What::Is(Concept::State(State::Reset));
        let number = self.bare_number(at + 1).filter(|n| (1.0..=4.0).contains(n));
        let place = self
            .items
            .get(at + 2)
            .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)));
        if reset
            && place
            && self.same_chunk(at, at + 3)
            && self.names(at + 3)
            && let Some(number) = number
        {
            self.items[at + 1].what = What::Circuit(number as u8);
        }
    }

    /// "10 47 psi, no 12 47 psi": the same value again, of the trailer that was meant.
    fn no_that_trailer(&mut self, at: usize) {
        let opens = at > 0 && !self.same_chunk(at, at - 1) && self.items[at].is(Mark::No);
        let told = |i: usize| self.items.get(i).and_then(Item::number);
        if !opens || !self.names(at + 1) || !self.same_chunk(at, at + 2) {
            return;
        }
        let Some(value) = told(at + 2).filter(|n| n.unit.is_some()) else {
            return;
        };
        let sentence = self.items[at].sentence;
        let again = (0..at)
            .rev()
            .take_while(|i| self.items[*i].sentence == sentence)
            .any(|i| told(i).is_some_and(|n| n.unit == value.unit && n.value == value.value));
        if again {
            self.items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }

    /// "waste 60 no 70", "50 psi, no 55": the second of two such values stands.
    pub(super) fn no_another(&mut self, at: usize) {
        self.no_that_trailer(at);
        if !self.items[at].is(Mark::No) || !self.says(at, Sense::PlainNo) || !self.ends(at + 1) {
            return;
        }
        let sentence = self.items[at].sentence;
        let number = |i: usize| {
            let item = self.items.get(i)?;
            item.number().filter(|_| item.sentence == sentence)
        };
        let before = (0..at)
            .rev()
            .find(|i| !matches!(self.items[*i].what, What::Sign(',')));
        let (Some(first), Some(second)) = (before.and_then(number), number(at + 1)) else {
            return;
        };
        let alike = (first.form == Form::Part) == (second.form == Form::Part)
            && (first.unit == second.unit || second.unit.is_none());
        // "leak on 12 no 14" mends the trailer, "12 no 14" may deny
        let noun = before
            .and_then(|i| (0..i).rev().find(|i| !self.items[*i].is_filler()))
            .and_then(|i| self.items[i].noun());
        let measure = first.unit.or(match noun {
            Some(noun) if noun.is_tank() && first.value >= 5.0 => Some(Unit::Pct),
            Some(Noun::Pressure) if first.value >= 15.0 => Some(Unit::Psi),
            Some(Noun::Volts) if first.value >= 90.0 => Some(Unit::Volt),
            _ => None,
        });
        if alike && (measure.is_some() || first.form == Form::Part) {
            for i in before.into_iter().chain([at + 1]) {
                if let What::Number(number) = &mut self.items[i].what {
                    number.unit = measure;
                }
            }
            self.items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }

    /// "14.2 A", "14.2 A on circuit 1": amperes, as no article ends what is said.
    pub(super) fn amperes(&mut self, at: usize) {
        let number = self.bare_number(at).filter(|n| (0.0..=60.0).contains(n));
        let letter = self.same_chunk(at, at + 1)
            && self.items[at + 1].end == self.items[at + 1].first + 1
            && self.says(at + 1, Sense::A);
        if number.is_none() || !letter {
            return;
        }
        let on_circuit = self
            .items
            .get(at + 2)
            .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)))
            && self.items.get(at + 3).is_some_and(|n| {
                matches!(n.what, What::Circuit(_)) || n.noun() == Some(Noun::Circuit)
            });
        let and = self.items.get(at + 2).is_some_and(|n| n.is(Mark::And));
        let decimal = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Decimal);
        if !(on_circuit || decimal && (self.ends(at + 1) || and)) {
            return;
        }
        if let What::Number(n) = &mut self.items[at].what {
            n.unit = Some(Unit::Amp);
        }
        self.items[at + 1].what = What::Is(Concept::Mark(Mark::Filler));
    }

    /// "118 ac", "ac 118": the volts of the mains, and no cooler.
    pub(super) fn alternating(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Ac) || !self.says(at, Sense::Current) {
            return;
        }
        let mains = |v: f64| (90.0..=260.0).contains(&v);
        let before = at
            .checked_sub(1)
            .filter(|i| self.same_chunk(at, *i) && self.bare_number(*i).is_some_and(mains));
        let after = Some(at + 1)
            .filter(|i| self.same_chunk(at, *i) && self.bare_number(*i).is_some_and(mains));
        let place = |i: usize| {
            self.items.get(i).is_some_and(|n| {
                n.is(Mark::At)
                    || n.is(Mark::And)
                    || n.what == What::Is(Concept::State(State::On)) && self.names(i + 1)
            })
        };
        let denied =
            at > 0 && (self.items[at - 1].is(Mark::No) || self.items[at - 1].is(Mark::Not));
        let number = match (before, after) {
            (Some(i), _) if self.ends(at) || place(at + 1) => i,
            (None, Some(i)) if !denied && (self.ends(i) || place(i + 1)) => i,
            _ => return,
        };
        if let What::Number(n) = &mut self.items[number].what {
            n.unit = Some(Unit::Volt);
        }
        self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
    }
}
