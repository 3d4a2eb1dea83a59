//! What a message means once it is held against what is open with its sender: a bare answer, a mended report.

use super::super::answer;
use super::super::settle::{self, Answered, Settled};
use super::Hearing;
use crate::book::MessageKey;
use crate::fleet::Role;
use crate::heard::{Entry, Heard, ReadingKey, UnitName};

impl Hearing<'_> {
    pub(super) fn settle(&mut self) -> Settled {
        let at = self.inbound.at;
        if self.heard.entries.is_empty() && self.heard.ask.is_none() && self.heard.command.is_none()
        {
            let pressure = |unit: &UnitName| {
                self.desk
                    .book
                    .unit(unit)?
                    .state()
                    .pressures
                    .last()
                    .map(|read| read.psi)
            };
            match settle::answered(
                &self.heard,
                self.text,
                &self.talk,
                &self.fleet,
                at,
                pressure,
            ) {
                Some(Answered::Report(entry, told)) => {
                    self.heard = Heard {
                        entries: vec![entry],
                        ..Heard::default()
                    };
                    self.talk.question = None;
                    let mut settled =
                        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                    settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                    return settled;
                }
                Some(Answered::Instead(entry, told)) => {
                    let unit = entry.unit.clone();
                    let last = self.desk.book.sent(&self.member.id).iter().rev();
                    let last = last
                        .clone()
                        .find(|sent| unit.as_ref().is_some_and(|unit| sent.units.contains(unit)));
                    self.instead_of = last.map(|sent| sent.key.clone());
                    self.heard = Heard {
                        entries: vec![self.with_the_rest(entry)],
                        ..Heard::default()
                    };
                    self.talk.question = None;
                    let mut settled =
                        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                    settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                    return settled;
                }
                Some(Answered::Reread(text, unit, told)) => {
                    let mut reread = self.desk.reader.hear(&text, self.fleet.style.temperature);
                    if !reread.entries.is_empty() && reread.unclear.is_empty() {
                        for entry in &mut reread.entries {
                            entry.unit = entry.unit.take().or_else(|| unit.clone());
                        }
                        self.heard = reread;
                        self.talk.question = None;
                        let mut settled =
                            settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                        settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                        return settled;
                    }
                }
                None => {}
            }
        }
        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at)
    }

    /// Returns the trailers that somebody of the crew says a word about without a report: "12 all good", "leaving in 20
    /// with 14". A question is no word from the unit, nor is what the dispatcher writes.
    pub(super) fn words_about(&self, settled: &Settled) -> Vec<UnitName> {
        if self.heard.ask.is_some()
            || answer::is_question(self)
            || self.heard.command.is_some()
            || self.member.role == Role::Dispatcher
            || !self.heard.unclear.is_empty()
        {
            return Vec::new();
        }
        let reported = |unit: &UnitName| settled.reports.iter().any(|(other, ..)| other == unit);
        // a bare number that opens a message of good news is a trailer where there is one of that name
        let opening = self.text.split_whitespace().next().map(|word| {
            let bare = word
                .trim_start_matches('#')
                .trim_end_matches([':', ',', '.']);
            UnitName::new(bare)
        });
        let opening = opening.filter(|name| self.fleet.trailers.contains_key(name));
        let mut units: Vec<UnitName> = Vec::new();
        for name in self.heard.named.iter().chain(&opening) {
            if let Some(unit) = settle::known(&self.fleet, name)
                && !reported(unit)
                && !units.contains(unit)
            {
                units.push(unit.clone());
            }
        }
        units
    }

    /// Adds to a mended report what else the message it takes the place of said.
    pub(super) fn with_the_rest(&self, mut entry: Entry) -> Entry {
        let Some((unit, key)) = entry.unit.as_ref().zip(self.instead_of.as_ref()) else {
            return entry;
        };
        let Some(kept) = self.desk.book.unit(unit) else {
            return entry;
        };
        for (_, told) in kept.reports_of(key) {
            let mut rest = told.clone();
            rest.readings.values.remove(&ReadingKey::PressurePsi);
            settle::merge(&mut entry, &rest);
        }
        entry
    }

    /// Returns the message whose reports this one takes the place of: the one it edits, or the one it mends.
    pub(super) fn replaced(&self) -> Option<&MessageKey> {
        self.edited.as_ref().or(self.instead_of.as_ref())
    }
}
