//! Where the danger was that was told last: "its at 23 not 12", or a bare name where the trailer was taken from the talk.

use chrono::TimeDelta;

use crate::book::MessageKey;
use crate::desk::phrases::{is_marked, plain};
use crate::desk::receive::Hearing;
use crate::desk::settle;
use crate::dialogue::Mend;
use crate::heard::{Entry, Fault, UnitName};

/// So long after a danger a place alone is its place.
const PLACED_WITHIN: TimeDelta = TimeDelta::minutes(15);

impl Hearing<'_> {
    /// Returns how this message mends the place of the danger that its sender told last; none where it says anything else.
    pub(in crate::desk::receive) fn danger_placed(&self) -> Option<(MessageKey, Mend)> {
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        if asks || self.heard.command.is_some() || self.inbound.replaces.is_some() {
            return None;
        }
        let (sent, told) = self.within_reach().next()?;
        let [(from, _, entry)] = told.as_slice() else {
            return None;
        };
        if !is_danger(entry) || self.inbound.at - sent.at > PLACED_WITHIN {
            return None;
        }
        let (to, denied) = self.place_alone(from)?;
        // a bare number at a step of a check may answer it, and so may "no"; "no, at 23" says where
        let steps = !self.talk.checks.is_empty();
        if steps && !self.desk.phrases.holds("place", "moves", self.text) {
            return None;
        }
        let way = Mend::Unit {
            from: from.clone(),
            to,
        };
        (denied || self.talk.guessed).then(|| (sent.key.clone(), way))
    }

    /// Returns the one other trailer that the message names and nothing else beside it, and whether it says that the first was
    /// wrong.
    fn place_alone(&self, from: &UnitName) -> Option<(UnitName, bool)> {
        let folded = plain(self.text);
        let (mut to, mut denied) = (None, false);
        for word in folded.split(' ') {
            if let Some(unit) = settle::known(&self.fleet, &UnitName::new(word)) {
                match unit == from {
                    true => denied = true,
                    false if to.is_some() => return None,
                    false => to = Some(unit.clone()),
                }
            } else if !self.desk.phrases.is("place", "beside", word) {
                denied = true;
                if !self.desk.phrases.is("place", "wrong", word) {
                    return None;
                }
            }
        }
        Some((to?, denied))
    }
}

/// Tells whether a report is of a danger, or of a hazard that is no fault.
fn is_danger(entry: &Entry) -> bool {
    let mut faults = entry.faults.iter();
    faults.any(|fault| Fault::DANGERS.contains(fault)) || !entry.hazards.is_empty()
}
