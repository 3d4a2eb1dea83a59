//! A message that does no more than mend the sender's last report: `*3/4`, `oops 52`, `no, la 10`, `not 12, 14`.
//!
//! What it means is found by trying: each reading of that report is read again with the new number in its place. One
//! way is taken; where it could mean either, it is asked. The mended report takes the place of the old one, which the
//! journal keeps.

mod apply;
mod placed;
mod said;
mod tried;
mod ways;

use chrono::{DateTime, TimeDelta, Utc};

pub(super) use self::apply::apply;
use self::said::Said;
use self::ways::labelled;
use super::super::phrases::is_marked;
use super::Hearing;
use crate::book::{MessageKey, Sent};
use crate::desk::settle::known;
use crate::desk::walk;
use crate::dialogue::{About, Mend};
use crate::heard::{Entry, ReadingKey, UnitName};

/// A correction comes within this long of what it mends.
const MENDS_WITHIN: TimeDelta = TimeDelta::minutes(90);
/// A longer message is a report of its own.
const LONGEST: usize = 9;
/// A number behind "no" mends the one before it within this share of it.
const NEARLY: f64 = 0.3;

/// A report of a sender as it stands in the book.
pub(in crate::desk) type Told = (UnitName, DateTime<Utc>, Entry);

/// What a correction comes to.
pub(super) enum Mending {
    /// It mends the report under a key in this way.
    Plain(MessageKey, Vec<Mend>),
    /// It could mean one or the other.
    Either(Box<About>),
    /// It mends something, and nobody can tell what.
    Unknown,
}

impl Hearing<'_> {
    /// Returns what this message mends of the sender's last report; none where it is no correction alone.
    pub(super) fn mending(&self) -> Option<Mending> {
        let heard = &self.heard;
        if heard.ask.is_some()
            || heard.command.is_some()
            || self.text.split_whitespace().count() > LONGEST
            || is_marked(self.text)
        {
            return None;
        }
        let said = self.correction()?;
        // "no tingle now": what is felt no more was still told right
        if self.desk.answers.says("tingle", "gone", self.text)
            || self.desk.answers.says("gas", "gone", self.text)
        {
            return None;
        }
        // "nope, still leaking" answers the step that asked whether it is
        if !said.sure && walk::answers_in_own_words(self) {
            return None;
        }
        let mut within = self.within_reach();
        let (sent, told) = within.next()?;
        let untrue = self.untrue(&said, &told);
        if !untrue.is_empty() {
            return Some(Mending::Plain(sent.key.clone(), untrue));
        }
        // "oops, not pumped": of the report that called it so, whatever was told since
        let earlier = |(sent, told): (&Sent, Vec<Told>)| {
            let untrue = self.untrue(&said, &told);
            (!untrue.is_empty()).then(|| Mending::Plain(sent.key.clone(), untrue))
        };
        if said.sure
            && said.denied
            && let Some(mending) = self.within_reach().find_map(earlier)
        {
            return Some(mending);
        }
        let ways = |told: &[Told]| {
            if said.wrong.is_some() {
                Some(self.ways(&said, told))
            } else if heard.entries.is_empty() {
                Some(self.firmly_meant(&said, self.ways(&said, told)))
            } else if said.sure {
                let again = self.said_again(told);
                Some(again.unwrap_or_else(|| self.ways(&said, told)))
            } else {
                // "no water", "no, 46 psi now": a report of its own
                None
            }
        };
        let of_the_last = (sent, ways(&told)?);
        // what the last report has not got was told in one before it: "12 frozen hose", then "it was 380"
        let of_a_number = |ways: &[Mend]| {
            let number = |way: &Mend| matches!(way, Mend::Value { .. } | Mend::Amps { .. });
            !ways.is_empty() && ways.iter().all(number)
        };
        let mut earlier = within.filter_map(|(sent, told)| Some((sent, ways(&told)?)));
        let (sent, ways) = match of_the_last {
            (_, ways) if ways.is_empty() => earlier
                .find(|(_, ways)| of_a_number(ways))
                .unwrap_or((sent, ways)),
            found => found,
        };
        let either = |ways| {
            Mending::Either(Box::new(About::WhichMend {
                key: sent.key.0.clone(),
                ways,
            }))
        };
        match ways.len() {
            // "not 12, 14", where there is no 14
            0 if bare_number(said.right)
                && said.wrong.is_some_and(|wrong| self.was_told_of(wrong)) =>
            {
                Some(Mending::Unknown)
            }
            0 if !said.sure || self.says_more(&said) => None,
            0 => Some(Mending::Unknown),
            // "it was 55": how it stood before, or what should have been written; what was done has one number
            1 if said.weak && said.past && !of_what_was_done(&ways[0]) => Some(either(ways)),
            1 => Some(Mending::Plain(sent.key.clone(), ways)),
            _ => Some(either(ways)),
        }
    }

    /// Tells whether the sender's last report is of the trailer that these words name.
    fn was_told_of(&self, name: &str) -> bool {
        let unit = self.names_a_unit(name);
        let last = self.within_reach().next();
        last.is_some_and(|(_, told)| told.iter().any(|(of, ..)| Some(of) == unit))
    }

    /// Keeps of the ways those that a mark such as "no" or "its" alone can mean.
    fn firmly_meant(&self, said: &Said<'_>, ways: Vec<Mend>) -> Vec<Mend> {
        let of_a_unit = |way: &Mend| matches!(way, Mend::Unit { .. } | Mend::Off { .. });
        // "no the pressure was 60": of a thing that was told
        if said.sure || self.meant_of_a_thing(said.right).is_some() {
            return ways;
        }
        // "it was 380": what was told wrong; at a step that asks for a number, its answer
        if said.weak && said.past && bare_number(said.right) && !self.waits_for_a_number() {
            return ways;
        }
        let near = |way: &Mend| match way {
            Mend::Value { was, value, .. } => (was - value).abs() <= NEARLY * was.abs(),
            _ => false,
        };
        let one_near = bare_number(said.right) && ways.len() == 1 && near(&ways[0]);
        // "its 28" after "22 psi": the one number that it can be
        if said.weak && !said.past && one_near && !self.waits_for_a_number() {
            return ways;
        }
        // "its 14": as well a new reading as another trailer
        if said.weak {
            return match self.explicit(said.right) && ways.iter().all(of_a_unit) {
                true => ways,
                false => Vec::new(),
            };
        }
        // beside a step that waits for an answer, "no, 46" answers it
        let waits = !self.talk.checks.is_empty() || self.talk.round.is_some();
        // save where it is near the number that was told a moment ago: "115", then "no 118"
        let again =
            said.denied && one_near && (self.talk.round.is_some() || !self.waits_for_a_number());
        if waits && !again && !ways.iter().all(of_a_unit) {
            return Vec::new();
        }
        ways
    }

    /// "oops, 12 pressure 52": the whole report again, with another number or another trailer; none where it tells more.
    fn said_again(&self, told: &[Told]) -> Option<Vec<Mend>> {
        let [entry] = self.heard.entries.as_slice() else {
            return None;
        };
        let ([(unit, _, old)], Some(named)) = (told, &entry.unit) else {
            return None;
        };
        let named = known(&self.fleet, named)?;
        let bare = entry.events.is_empty() && entry.faults.is_empty() && entry.cleared.is_empty();
        let values = &entry.readings.values;
        if !bare || values.is_empty() || !entry.readings.amps.is_empty() {
            return Some(Vec::new());
        }
        if named == unit && values.keys().all(|key| old.readings.value(*key).is_some()) {
            return Some(labelled(entry, told));
        }
        let same = values
            .iter()
            .all(|(key, value)| old.readings.value(*key) == Some(*value));
        if named != unit && same && values.len() == old.readings.values.len() {
            return Some(vec![Mend::Unit {
                from: unit.clone(),
                to: named.clone(),
            }]);
        }
        Some(Vec::new())
    }

    /// Returns the sender's reports that a correction can mean, the latest first: the one this message edits, or those within
    /// reach.
    fn within_reach(&self) -> impl Iterator<Item = (&Sent, Vec<Told>)> {
        let sent = self.desk.book.sent(&self.member.id);
        let at = self.inbound.at;
        let meant = move |sent: &&Sent| match &self.edited {
            Some(key) => sent.key == *key,
            None => sent.at <= at && at - sent.at <= MENDS_WITHIN,
        };
        let told = |sent| (sent, self.told_in(sent));
        let found = sent.iter().rev().filter(meant).map(told);
        found.filter(|(_, told)| !told.is_empty())
    }

    /// Tells whether a step is open that takes a number for its answer.
    fn waits_for_a_number(&self) -> bool {
        walk::asks_for_a_number(&self.talk) || self.talk.round.is_some()
    }

    /// Returns what a message of the sender reported, a word without a reading left out.
    pub(in crate::desk) fn told_in(&self, sent: &Sent) -> Vec<Told> {
        let mut told = Vec::new();
        for unit in &sent.units {
            let Some(kept) = self.desk.book.unit(unit) else {
                continue;
            };
            if told.iter().any(|(other, ..): &Told| other == unit) {
                continue;
            }
            let reports = kept
                .reports_of(&sent.key)
                .filter(|(_, entry)| !entry.is_empty());
            told.extend(reports.map(|(at, entry)| (unit.clone(), at, entry.clone())));
        }
        told
    }

    /// Tells whether what follows the mark is a message of its own: a report, a plan, a longer word.
    fn says_more(&self, said: &Said<'_>) -> bool {
        let heard = &self.heard;
        !heard.entries.is_empty()
            || !heard.plans.is_empty()
            || !said.right.is_empty() && !said.right.chars().any(|c| c.is_ascii_digit())
    }
}

/// Tells whether a way mends the number of something that was done once, and not of how things stand.
fn of_what_was_done(way: &Mend) -> bool {
    matches!(
        way,
        Mend::Value {
            key: ReadingKey::PumpedGal,
            ..
        }
    )
}

fn bare_number(text: &str) -> bool {
    let text = text.trim().trim_end_matches(['.', '!']);
    !text.is_empty()
        && text
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/'))
}
