//! Which noun a number belongs to: right before it, right after it, or farther in its chunk.

use super::surroundings::chunk;
use super::{Placer, REACH};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, What};

impl Placer<'_> {
    /// Finds the noun a number belongs to: right before it, right after it, or farther in the chunk.
    pub(super) fn noun_for(
        &self,
        at: usize,
        unit: Option<Unit>,
        part: bool,
    ) -> Option<(usize, Noun)> {
        if let Some(side) = self.side_after(at) {
            return Some(side);
        }
        if let Some(told) = self.told_before_each(at) {
            return Some(told);
        }
        let fits = |noun: Noun| fits(noun, unit, part);
        let mut best: Option<(f32, usize, Noun)> = None;
        let mut consider = |i: usize, cost: f32| {
            if let Some(noun) = self.items[i].noun()
                && fits(noun)
                && best.is_none_or(|(least, ..)| cost < least)
            {
                best = Some((cost, i, noun));
            }
        };
        let mut cost = 0.0;
        for i in (0..at).rev().take(REACH) {
            if self.items[i].chunk != self.items[at].chunk {
                break;
            }
            cost += match self.items[i].what {
                _ if self.items[i].is_filler() => 0.3,
                What::Units(_) => 0.5,
                _ if self.leads_to_trailer(i) => 0.2,
                What::Number(_) | What::Range(..) => 3.0,
                What::Is(Concept::Mark(Mark::And)) => 2.0,
                _ => 1.0,
            };
            // "opened to guests at ten": the hour
            let hour = self.items[i].noun() == Some(Noun::Guests)
                && self.items[at - 1].is(Mark::At)
                && self.items[at].number().is_some_and(|n| n.value <= 12.0);
            if hour {
                continue;
            }
            // a noun that has its number already is no longer free
            let free = match self.taken[i] {
                None => 0.0,
                Some(_) => 6.0,
            };
            consider(i, cost + free);
        }
        let mut cost = 0.9;
        for i in (at + 1..self.items.len()).take(REACH - 2) {
            if self.items[i].chunk != self.items[at].chunk {
                break;
            }
            cost += match self.items[i].what {
                _ if self.items[i].is_filler() => 0.3,
                What::Number(_) | What::Range(..) => break,
                What::Units(_) => 2.5,
                What::Is(Concept::Mark(Mark::And)) => 4.0,
                _ => 1.0,
            };
            let own = self.owns(i, at);
            consider(i, cost + if own { 8.0 } else { 0.0 });
        }
        // "guest count at the reservoir is 180": the one noun of its chunk
        let lone = at > 0
            && self.items[at - 1].is(Mark::Aux)
            && chunk(self.items, at)
                .all(|i| !matches!(self.items[i].what, What::Units(_) | What::Number(_)));
        let reach = match unit {
            _ if part => 9.0,
            Some(_) => 9.0,
            None if lone => 8.0,
            None => 3.6,
        };
        best.filter(|(cost, ..)| *cost < reach)
            .map(|(_, i, noun)| (i, noun))
    }

    /// "80 before 55 after": the side of the regulator that stands right after each of two numbers.
    fn side_after(&self, at: usize) -> Option<(usize, Noun)> {
        let side = |i: usize| {
            self.items
                .get(i)
                .and_then(|n| n.noun())
                .filter(|n| matches!(n, Noun::BeforeRegulator | Noun::AfterRegulator))
        };
        let number = |i: usize| self.items.get(i).is_some_and(|n| n.number().is_some());
        let here = side(at + 1)?;
        let first = number(at + 2) && side(at + 3).is_some();
        let second = at >= 2 && side(at - 1).is_some() && number(at - 2);
        (first || second).then_some((at + 1, here))
    }

    /// "50% waste 70% fresh on 12": each value right before its noun, from the first, which no noun stands before, to the
    /// last noun, which no value follows.
    fn told_before_each(&self, at: usize) -> Option<(usize, Noun)> {
        let pair = |i: usize| {
            let number = self.items.get(i)?.number()?;
            let next = self
                .items
                .get(i + 1)
                .filter(|n| n.chunk == self.items[at].chunk)?;
            let noun = next.noun()?;
            let measured = number.unit.is_some() || number.form == Form::Part;
            (measured && fits(noun, number.unit, number.form == Form::Part)).then_some(noun)
        };
        let here = pair(at)?;
        let mut first = at;
        while first >= 2 && pair(first - 2).is_some() {
            first -= 2;
        }
        let mut last = at;
        while pair(last + 2).is_some() {
            last += 2;
        }
        let noun_before = first > 0
            && self.items[first - 1].chunk == self.items[at].chunk
            && self.items[first - 1].noun().is_some();
        let more = (self.items.get(last + 2))
            .is_some_and(|n| n.chunk == self.items[at].chunk && n.number().is_some());
        (first < last && !noun_before && !more).then_some((at + 1, here))
    }

    /// Tells whether a word only leads to the trailer after it: on, at, unit.
    pub(super) fn leads_to_trailer(&self, at: usize) -> bool {
        let leads = |i: usize| {
            let item = &self.items[i];
            item.is(Mark::At)
                || item.is(Mark::Unit)
                || item.what == What::Is(Concept::State(State::On))
        };
        let trailer = |i: usize| {
            self.items
                .get(i)
                .is_some_and(|n| matches!(n.what, What::Units(_)))
        };
        leads(at)
            && (trailer(at + 1) || at + 1 < self.items.len() && leads(at + 1) && trailer(at + 2))
    }

    /// Tells whether the noun at `noun` has another number right after it.
    pub(super) fn owns(&self, noun: usize, not: usize) -> bool {
        (noun + 1..self.items.len())
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[noun].chunk)
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| {
                i != not
                    && match self.items[i].what {
                        What::Number(n) => self.items[noun]
                            .noun()
                            .is_some_and(|noun| fits(noun, n.unit, n.form == Form::Part)),
                        What::Range(_, _, unit) => self.items[noun]
                            .noun()
                            .is_some_and(|noun| fits(noun, unit, false)),
                        What::Is(Concept::Level(_)) => {
                            self.items[noun].noun().is_some_and(Noun::is_tank)
                        }
                        _ => false,
                    }
            })
    }
}

/// Tells whether a noun can have a number in this measure.
pub(in crate::words) fn fits(noun: Noun, unit: Option<Unit>, part: bool) -> bool {
    match unit {
        None if part => noun.is_tank() || noun == Noun::Battery,
        None => noun.reading().is_some() || noun == Noun::Amps,
        Some(Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2 | Unit::Kilo | Unit::Lb) => {
            matches!(
                noun,
                Noun::Pressure
                    | Noun::Supply
                    | Noun::BeforeRegulator
                    | Noun::AfterRegulator
                    | Noun::Tire
            )
        }
        Some(Unit::Gal | Unit::Litre) => matches!(
            noun,
            Noun::Waste
                | Noun::Fresh
                | Noun::Tank
                | Noun::Fuel
                | Noun::Water
                | Noun::WaterHeater
                | Noun::Sewage
                | Noun::Generator
        ),
        Some(Unit::Pct) => {
            noun.is_tank()
                || matches!(
                    noun,
                    Noun::Battery | Noun::Humidity | Noun::Slope | Noun::Generator
                )
        }
        Some(Unit::DegC | Unit::DegF | Unit::Deg) => matches!(
            noun,
            Noun::Air | Noun::Inside | Noun::Low | Noun::HotWater | Noun::WaterHeater | Noun::Slope
        ),
        Some(Unit::Volt) => matches!(
            noun,
            Noun::Volts | Noun::Battery | Noun::Lights | Noun::Power | Noun::Generator
        ),
        Some(Unit::Amp) => matches!(
            noun,
            Noun::Breaker
                | Noun::Fuse
                | Noun::Cord
                | Noun::Cords
                | Noun::Plug
                | Noun::Amps
                | Noun::Gfci
        ),
        Some(Unit::Ft | Unit::Metre) => matches!(noun, Noun::Hose | Noun::Cord | Noun::Cords),
        Some(Unit::Gpm | Unit::Lpm) => noun == Noun::Flow,
        Some(Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot) => {
            matches!(noun, Noun::Wind | Noun::Gust)
        }
        Some(Unit::Minute | Unit::Hour) => noun == Noun::Eta,
        Some(Unit::Other) => false,
    }
}
