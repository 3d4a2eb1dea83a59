//! What a message means once it is held against what is open with its sender: a bare answer, a mended report.

use super::super::answer;
use super::super::phrases::plain;
use super::super::settle::{self, Settled};
use super::super::withdrawn;
use super::Hearing;
use super::bare::{self, Answered};
use super::mend::{self, Mending};
use crate::book::{MessageKey, Report};
use crate::dialogue::Mend;
use crate::fleet::Role;
use crate::heard::{Ask, Command, CommandName, Entry, Heard, ReadingKey, Remark, UnitName};

impl Hearing<'_> {
    /// Settles what the message means: an answer to what was asked, a correction of what was sent, else a report.
    pub(super) fn settle(&mut self) -> Settled {
        if let Some(answered) = self.answered()
            && let Some(settled) = self.take_answer(answered)
        {
            return settled;
        }
        if self.heard.ask == Some(Ask::Undo)
            && self.takes_back.is_none()
            && let Some(correction) = answer::correction(self)
        {
            let (key, before) = (correction.key.clone(), correction.corrects.clone());
            return self.take_back_correction(key, before);
        }
        // "false alarm": the report of a danger is taken back as a whole
        if let Some(sent) = withdrawn::meant(self) {
            let key = sent.key.0.clone();
            return self
                .take_answer(Answered::TakeBack(key))
                .unwrap_or_default();
        }
        if let Some((key, way)) = self.danger_placed() {
            return self.mend(key, &[way]);
        }
        match self.mending() {
            Some(Mending::Plain(key, ways)) => return self.mend(key, &ways),
            Some(Mending::Either(about)) => {
                self.set_alone(Heard::default());
                self.asks = Some(*about);
                return Settled::default();
            }
            Some(Mending::Unknown) => {
                let remark = Remark {
                    text: self.text.trim().to_owned(),
                    why: "which-to-mend".into(),
                };
                self.set_alone(Heard {
                    unclear: vec![remark],
                    ..Heard::default()
                });
                return Settled::default();
            }
            None => {}
        }
        settle::settle(&self.heard, &self.fleet, Some(&self.talk), self.inbound.at)
    }

    /// Takes a bare answer for what it means; none where it turns out to mean nothing.
    fn take_answer(&mut self, answered: Answered) -> Option<Settled> {
        match answered {
            Answered::Report {
                mut entries,
                at,
                instead,
            } => {
                if let (true, [entry]) = (instead, entries.as_mut_slice()) {
                    let sent = self.desk.book.sent(&self.member.id).iter().rev();
                    let last = sent.clone().find(|sent| {
                        entry
                            .unit
                            .as_ref()
                            .is_some_and(|unit| sent.units.contains(unit))
                    });
                    self.instead_of = last.map(|sent| sent.key.clone());
                    *entry = self.with_the_rest(std::mem::take(entry));
                }
                self.set_alone(Heard {
                    entries,
                    ..Heard::default()
                });
                let mut settled = self.settled_alone();
                settled
                    .reports
                    .iter_mut()
                    .for_each(|(_, told, _)| *told = at);
                Some(settled)
            }
            Answered::Reread(ways, unit, at) => {
                let scale = self.fleet.style.temperature;
                let mut reread = ways.iter().map(|text| self.desk.reader.hear(text, scale));
                let whole = |heard: &Heard| !heard.entries.is_empty() && heard.unclear.is_empty();
                let mut reread = reread.find(whole)?;
                for entry in &mut reread.entries {
                    entry.unit = entry.unit.take().or_else(|| unit.clone());
                }
                self.set_alone(reread);
                let mut settled = self.settled_alone();
                settled
                    .reports
                    .iter_mut()
                    .for_each(|(_, told, _)| *told = at);
                Some(settled)
            }
            Answered::Mends(key, way) => Some(self.mend(MessageKey(key), &[way])),
            Answered::Tasks(ids) => {
                let (first, others) = ids.split_first()?;
                self.set_alone(bare::done(*first));
                self.also_done = others.to_vec();
                Some(Settled::default())
            }
            Answered::TakeBack(key) => {
                self.set_alone(Heard {
                    ask: Some(Ask::Undo),
                    ..Heard::default()
                });
                self.takes_back = Some(MessageKey(key));
                Some(Settled::default())
            }
            Answered::TakeBackNext => {
                self.set_alone(Heard {
                    ask: Some(Ask::Undo),
                    ..Heard::default()
                });
                self.talk.undone = false;
                Some(Settled::default())
            }
            Answered::Shows(unit) => {
                self.set_alone(Heard::default());
                self.talk.question = None;
                self.talk.unit = Some((unit.clone(), self.inbound.at));
                self.photo_of = Some(unit);
                Some(Settled::default())
            }
            Answered::Dropped => {
                self.set_alone(Heard {
                    command: Some(Command {
                        name: CommandName::NeverMind,
                        task: None,
                        rest: String::new(),
                    }),
                    ..Heard::default()
                });
                // the order to drop it finds the question still open
                self.talk.question = self.desk.book.talk(&self.member.id)?.question.clone();
                Some(Settled::default())
            }
        }
    }

    /// Puts the mended report in the place of the sender's report under `key`.
    fn mend(&mut self, key: MessageKey, ways: &[Mend]) -> Settled {
        let sent = self.desk.book.sent(&self.member.id);
        let told = sent.iter().find(|sent| sent.key == key);
        let told = told.map(|sent| self.told_in(sent)).unwrap_or_default();
        let reports = mend::apply(ways, told);
        self.set_alone(Heard {
            entries: reports.iter().map(|(.., entry)| entry.clone()).collect(),
            ..Heard::default()
        });
        self.instead_of = Some(key);
        let mut settled = self.settled_alone();
        // in the order told, less what cannot be true of the trailer
        let mut times = reports.iter();
        for (unit, at, _) in &mut settled.reports {
            if let Some((_, told, _)) = times.find(|(of, ..)| of == unit) {
                *at = *told;
            }
        }
        settled
    }

    /// Puts what the sender's correction mended in its place again.
    fn take_back_correction(&mut self, key: MessageKey, before: Vec<Report>) -> Settled {
        self.set_alone(Heard {
            entries: before
                .iter()
                .map(|report| Entry {
                    unit: Some(report.unit.clone()),
                    ..report.entry.clone()
                })
                .collect(),
            ..Heard::default()
        });
        self.instead_of = Some(key);
        self.uncorrects = true;
        let mut settled = self.settled_alone();
        for ((_, at, _), report) in settled.reports.iter_mut().zip(&before) {
            *at = report.at;
        }
        settled
    }

    /// Takes the message for this and nothing else; what was asked is answered by it.
    fn set_alone(&mut self, heard: Heard) {
        let language = self.heard.language;
        self.heard = Heard { language, ..heard };
        self.talk.question = None;
    }

    fn settled_alone(&self) -> Settled {
        settle::settle(&self.heard, &self.fleet, Some(&self.talk), self.inbound.at)
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
        // "rolling in ten": a number in words beside a report is a count, or minutes
        let text = plain(self.text);
        let typed = |unit: &UnitName| {
            let name = unit.as_str().to_lowercase();
            settled.reports.is_empty() || text.contains(&name)
        };
        let mut units: Vec<UnitName> = Vec::new();
        for name in &self.heard.named {
            if let Some(unit) = settle::known(&self.fleet, name)
                && !reported(unit)
                && typed(unit)
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
    pub(in crate::desk) fn replaced(&self) -> Option<&MessageKey> {
        self.edited.as_ref().or(self.instead_of.as_ref())
    }
}
