//! Values that belong to another thing than the reading they would be taken for: how cold the bay is, the truck's own
//! tank, what was used of a tank and not what is in it.

use super::Reading;
use crate::heard::ReadingKey;
use crate::words::attach::{Placed, Value};
use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Item, What};
use crate::words::senses::{Sense, Senses};

/// How many words are looked at behind a number, or behind a thing.
const FEW: usize = 4;
/// How far, in items, the tank of a level may stand before it.
const REACH: usize = 6;

/// A reading with the senses of its words.
struct Around<'a> {
    reading: &'a Reading<'a>,
    items: &'a [Item],
    senses: &'a Senses,
}

/// Asks about such values, or leaves them out.
pub(super) fn settle(reading: &Reading<'_>, senses: &Senses, placed: &mut [Placed]) {
    let spelt = Around {
        reading,
        items: &reading.items,
        senses,
    };
    for p in placed {
        let Value::Reading(key, _) = p.value else {
            continue;
        };
        let at = p.at;
        p.value = match key {
            ReadingKey::AirF if spelt.below_freezing(at) => Value::Unclear("below-what"),
            ReadingKey::AirF if spelt.of_a_part(at) => Value::Unclear("of-a-part"),
            ReadingKey::WastePct if spelt.is_how_warm(at) => Value::Unclear("of-a-part"),
            ReadingKey::WastePct | ReadingKey::WasteGal if spelt.of_the_truck(at) => Value::Label,
            ReadingKey::WastePct
            | ReadingKey::WasteGal
            | ReadingKey::FreshPct
            | ReadingKey::FreshGal
                if spelt.was_used(at) =>
            {
                Value::Unclear("done-in-part")
            }
            ReadingKey::WastePct | ReadingKey::FreshPct if spelt.is_from_the_top(at) => {
                Value::Unclear("percent-or-gallons")
            }
            ReadingKey::PressurePsi if spelt.names_a_range(at) => Value::Label,
            _ => continue,
        };
    }
}

impl Around<'_> {
    fn says(&self, at: usize, sense: Sense) -> bool {
        self.senses.has(self.reading.spelt(at), sense)
    }

    /// Returns the items before `at` in its clause, the nearest first.
    fn before(&self, at: usize) -> impl Iterator<Item = usize> {
        let chunk = self.items[at].chunk;
        (0..at)
            .rev()
            .take_while(move |i| self.items[*i].chunk == chunk)
    }

    /// Returns the items behind `at` in its clause.
    fn behind(&self, at: usize) -> impl Iterator<Item = usize> {
        let chunk = self.items[at].chunk;
        (at + 1..self.items.len()).take_while(move |i| self.items[*i].chunk == chunk)
    }

    fn noun_before(&self, at: usize) -> Option<usize> {
        self.before(at)
            .take(4)
            .find(|i| self.items[*i].noun().is_some())
    }

    /// "12 20 below freezing": how far below, and of which scale is not said.
    fn below_freezing(&self, at: usize) -> bool {
        // the words that made it minus twenty are no items any more
        let (_, end) = self.reading.token_range(self.items[at].end - 1);
        let after = &self.reading.folded()[end..];
        let after: Vec<&str> = after.split_whitespace().take(FEW).collect();
        let after = after.join(" ");
        let mut below = self.senses.of(Sense::Freezing).iter();
        below.any(|words| after.starts_with(&**words))
    }

    /// "12 bay temp 34", "fridge at -2".
    fn of_a_part(&self, at: usize) -> bool {
        let part = |i: usize| {
            self.says(i, Sense::OfAPart)
                || matches!(
                    self.items[i].noun(),
                    Some(Noun::Waste | Noun::Fresh | Noun::Tank | Noun::Hose | Noun::Pipe)
                )
        };
        let air = self
            .noun_before(at)
            .filter(|i| self.items[*i].noun() == Some(Noun::Air));
        match air {
            Some(air) => air
                .checked_sub(1)
                .is_some_and(|i| self.items[i].chunk == self.items[at].chunk && part(i)),
            None => {
                let mut before = self.before(at).filter(|i| !self.items[*i].is(Mark::At));
                before.next().is_some_and(|i| self.says(i, Sense::OfAPart))
            }
        }
    }

    /// "la temperatura del tanque 34".
    fn is_how_warm(&self, at: usize) -> bool {
        let of = |i: usize| i > 1 && self.items[i - 1].is(Mark::Of);
        let tank = self.noun_before(at).filter(|i| of(*i));
        tank.is_some_and(|i| self.items[i - 2].noun() == Some(Noun::Air))
    }

    /// "12 truck tank is full", "el tanque de la troca está lleno".
    fn of_the_truck(&self, at: usize) -> bool {
        let is_tank = |i: &usize| self.items[*i].noun().is_some_and(Noun::is_tank);
        let Some(tank) = self.before(at).take(REACH).find(is_tank) else {
            return false;
        };
        let led = tank
            .checked_sub(1)
            .is_some_and(|i| self.says(i, Sense::PumpTruck));
        let mut behind = self.behind(tank).take(FEW);
        let of = behind.next().is_some_and(|i| self.items[i].is(Mark::Of));
        led || of && behind.any(|i| self.says(i, Sense::PumpTruck))
    }

    /// "used 100 gal of fresh", "fresh down 50 gal", "fresh 1/4 used": what went or came, and not what there is.
    fn was_used(&self, at: usize) -> bool {
        let measured = self.items[at]
            .number()
            .is_some_and(|n| matches!(n.unit, Some(Unit::Gal | Unit::Litre)));
        let mut before = self.before(at).filter(|i| !self.items[*i].is(Mark::About));
        let led = before.next().is_some_and(|i| {
            self.says(i, Sense::Used) || measured && self.says(i, Sense::UsedSoMuch)
        });
        let follows = self
            .behind(at)
            .next()
            .is_some_and(|i| self.says(i, Sense::Used));
        led || follows
    }

    /// "waste 6 inches from the top": of a ruler, and no level.
    fn is_from_the_top(&self, at: usize) -> bool {
        self.behind(at)
            .next()
            .is_some_and(|i| self.says(i, Sense::InchesFrom))
    }

    /// "12 psi 45-50": the number that opens is the trailer, and the range the pressure.
    fn names_a_range(&self, at: usize) -> bool {
        let psi = self.items[at]
            .number()
            .is_some_and(|n| n.unit == Some(Unit::Psi));
        let first = self.before(at).next().is_none();
        let range = self.items.get(at + 1).is_some_and(|n| {
            n.chunk == self.items[at].chunk && matches!(n.what, What::Range(_, _, None))
        });
        let alone = !self
            .behind(at)
            .any(|i| matches!(self.items[i].what, What::Is(Concept::Noun(_))));
        psi && first && range && alone
    }
}
