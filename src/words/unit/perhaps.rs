//! Whether a number that stands alone may as well be a value as a trailer: volts behind cords, a pressure behind a regulator.

use super::candidate::Candidate;
use super::near::{chunk_ends, value};
use crate::heard::{Event, MAINS_V};
use crate::words::concept::{Concept, Mark, Noun};
use crate::words::item::{Item, What};

impl Candidate<'_> {
    /// "2 cords, 119": alone after what carries them, it may as well be volts.
    pub(super) fn perhaps_volts(&self) -> bool {
        MAINS_V.contains(&value(self.item))
            && self.items[..self.at]
                .iter()
                .rev()
                .take_while(|i| i.sentence == self.item.sentence)
                .any(|i| {
                    matches!(
                        i.noun(),
                        Some(Noun::Cords | Noun::Cord | Noun::Power | Noun::Volts | Noun::Circuit)
                    ) || i.what == What::Is(Concept::Event(Event::PowerOn))
                })
    }

    /// "regulator's on, turned it down, 50 now": the pressure behind it, also where no trailer is named.
    pub(super) fn after_a_regulator(&self) -> bool {
        /// Fewer psi than this are no pressure that a regulator leaves.
        const LEAST_PSI: f64 = 30.0;
        let fitted = What::Is(Concept::Event(Event::RegulatorFitted));
        let now = |i: usize| (self.items.get(i)).is_some_and(|n| n.is(Mark::Now));
        let alone = self.prior.is_none() && now(self.at + 1) && chunk_ends(self.items, self.at + 1);
        alone
            && value(self.item) >= LEAST_PSI
            && (0..self.at)
                .rev()
                .take(16)
                .take_while(|i| self.items[*i].sentence == self.item.sentence)
                .any(|i| self.items[i].what == fitted)
    }

    /// "regulator swapped, 48": alone behind what a pressure hangs on, it may as well be that.
    pub(super) fn perhaps_a_pressure(&self) -> bool {
        let fitted = |i: &Item| {
            i.noun() == Some(Noun::Regulator)
                || i.what == What::Is(Concept::Event(Event::RegulatorFitted))
        };
        (30.0..=150.0).contains(&value(self.item))
            && self.named.is_empty()
            && self.items[..self.at]
                .iter()
                .rev()
                .take(6)
                .take_while(|i| i.sentence == self.item.sentence)
                .any(fitted)
    }
}
