//! Numbers that count something or say how long, and name no trailer: 2 bubbles off, gimme 10, 4 stalls closed.

use super::Words;
use crate::words::concept::{Mark, Unit};
use crate::words::item::What;
use crate::words::senses::Sense;

impl Words<'_> {
    /// "its 2 bubbles off", "4 stalls closed": so many of what follows.
    pub(super) fn so_many_bubbles(&mut self, at: usize) {
        let counted = self.same_chunk(at, at + 1)
            && (self.says(at + 1, Sense::Bubbles)
                || self.items[at + 1].is(Mark::Idle)
                    && self.opens_with(at + 1, Sense::PlacesInside));
        if counted && self.bare_number(at).is_some() {
            self.items[at].what = What::Labelled;
        }
    }

    /// "gimme 10", "regreso en 10": minutes, where nothing more is said.
    pub(super) fn so_many_minutes(&mut self, at: usize) {
        let alone = self.bare_number(at).is_some() && self.ends(at);
        let one = at > 0 && self.same_chunk(at, at - 1) && self.says(at - 1, Sense::GiveMe);
        // "back in": two items
        let two = at > 1
            && self.same_chunk(at, at - 2)
            && self.senses.has(&self.spelt_from(at - 2, at), Sense::GiveMe);
        if alone && (one || two) {
            self.items[at].what = What::Labelled;
        }
    }

    /// "119 under load": the volts of the mains.
    pub(super) fn under_load(&mut self, at: usize) {
        let loaded = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::UnderLoad);
        let mains = self.bare_number(at).filter(|v| (90.0..=140.0).contains(v));
        if loaded
            && mains.is_some()
            && let What::Number(number) = &mut self.items[at].what
        {
            number.unit = Some(Unit::Volt);
        }
    }

    /// Returns the folded text from one item up to another.
    fn spelt_from(&self, from: usize, to: usize) -> String {
        let (first, last) = (&self.items[from], &self.items[to - 1]);
        let typed = &self.text[self.tokens[first.first].start..self.tokens[last.end - 1].end];
        typed.split_whitespace().collect::<Vec<_>>().join(" ")
    }
}
