//! What a mended or edited report changes, said from what to what.

use chrono::{DateTime, Utc};

use super::super::answer::Reply;
use super::super::settle::{Settled, merge};
use super::Hearing;
use super::mend::Told;
use crate::heard::{Entry, UnitName};
use crate::reply::{Arg, Voice};

impl Hearing<'_> {
    /// Returns what the message that this one takes the place of reported.
    fn replaced_reports(&self) -> Vec<Told> {
        let sent = self.desk.book.sent(&self.member.id);
        self.replaced()
            .and_then(|key| sent.iter().find(|sent| sent.key == *key))
            .map(|sent| self.told_in(sent))
            .unwrap_or_default()
    }

    /// Says what a mended or edited message changes.
    pub(super) fn tell_changes(&self, settled: &Settled, reply: &mut Reply<'_>) {
        let lines = self.changes(settled, &reply.voice);
        if let Some(sent) = self.edited_at() {
            let key = if settled.reports.is_empty() && !lines.is_empty() {
                "edit-undone"
            } else {
                "edit-taken"
            };
            let line = reply.voice.say(key, &[("time", sent.into())]);
            reply.opening.push(line);
        }
        reply.opening.extend(lines);
    }

    /// Tells whether this is an edit that reports what was reported before and says no more: nobody is answered twice.
    pub(super) fn says_the_same(&self, settled: &Settled) -> bool {
        let heard = &self.heard;
        if self.edited.is_none()
            || settled.reports.is_empty()
            || heard.ask.is_some()
            || heard.command.is_some()
            || !heard.plans.is_empty()
            || !heard.unclear.is_empty()
        {
            return false;
        }
        let old = self.replaced_reports();
        old.len() == settled.reports.len()
            && old.iter().all(|(unit, at, entry)| {
                settled.reports.iter().any(|(of, told, now)| {
                    // without a time of its own a report is of when it was written
                    let when = told == at || *told == self.inbound.at;
                    of == unit && when && now == entry
                })
            })
    }

    /// Returns when the message that this one edits was written.
    fn edited_at(&self) -> Option<DateTime<Utc>> {
        let key = self.edited.as_ref()?;
        let mut sent = self.desk.book.sent(&self.member.id).iter();
        Some(sent.find(|sent| sent.key == *key)?.at)
    }

    fn changes(&self, settled: &Settled, voice: &Voice<'_>) -> Vec<String> {
        let old = self.replaced_reports();
        let new: Vec<(&UnitName, DateTime<Utc>, &Entry)> = settled
            .reports
            .iter()
            .map(|(unit, at, entry)| (unit, *at, entry))
            .collect();
        let mut lines = Vec::new();
        let on = |unit: &UnitName| new.iter().any(|(other, ..)| *other == unit);
        let had = |unit: &UnitName| old.iter().any(|(other, ..)| other == unit);
        let gone: Vec<&Told> = old.iter().filter(|(unit, ..)| !on(unit)).collect();
        let come: Vec<_> = new.iter().filter(|(unit, ..)| !had(unit)).collect();
        if let ([(from, ..)], [(to, ..)]) = (gone.as_slice(), come.as_slice()) {
            let args = [
                ("unit", Arg::from(to.as_str())),
                ("from", from.as_str().into()),
            ];
            lines.push(voice.say("changed-unit", &args));
        } else {
            for (unit, _, entry) in gone {
                lines.push(self.taken_back(unit, entry, voice));
            }
        }
        let mut seen: Vec<&UnitName> = Vec::new();
        for (unit, ..) in &old {
            if !on(unit) || seen.contains(&unit) {
                continue;
            }
            seen.push(unit);
            let before = whole(
                old.iter()
                    .filter(|(other, ..)| other == unit)
                    .map(|(.., entry)| entry),
            );
            let after = whole(
                new.iter()
                    .filter(|(other, ..)| *other == unit)
                    .map(|(.., entry)| *entry),
            );
            lines.extend(self.changed(unit, &before, &after, voice));
        }
        lines
    }

    /// Says that a report counts no more.
    pub(in crate::desk) fn taken_back(
        &self,
        unit: &UnitName,
        entry: &Entry,
        voice: &Voice<'_>,
    ) -> String {
        let what = voice.readings(entry, self.fleet.trailers.get(unit));
        voice.say(
            "changed-off",
            &[("unit", unit.as_str().into()), ("what", what.into())],
        )
    }

    /// Says how two reports on one trailer differ: value by value where names stay, else what goes.
    fn changed(
        &self,
        unit: &UnitName,
        before: &Entry,
        after: &Entry,
        voice: &Voice<'_>,
    ) -> Vec<String> {
        let spec = self.fleet.trailers.get(unit);
        let name = || ("unit", Arg::from(unit.as_str()));
        let mut lines = Vec::new();
        let mut gone = before.clone();
        let mut come = after.clone();
        for (key, was) in &before.readings.values {
            let Some(value) = after.readings.value(*key) else {
                continue;
            };
            gone.readings.values.remove(key);
            come.readings.values.remove(key);
            if (was - value).abs() > 1e-9 {
                let was = voice.reading(*key, *was, spec);
                let what = voice.reading(*key, value, spec);
                let args = [name(), ("was", was.into()), ("what", what.into())];
                lines.push(voice.say("changed-value", &args));
            }
        }
        gone.readings
            .amps
            .retain(|current| !after.readings.amps.contains(current));
        come.readings
            .amps
            .retain(|current| !before.readings.amps.contains(current));
        gone.events.retain(|event| !after.events.contains(event));
        come.events.retain(|event| !before.events.contains(event));
        gone.faults.retain(|fault| !after.faults.contains(fault));
        come.faults.retain(|fault| !before.faults.contains(fault));
        gone.cleared.retain(|fault| !after.cleared.contains(fault));
        come.cleared.retain(|fault| !before.cleared.contains(fault));
        if gone.readings.taps == after.readings.taps {
            gone.readings.taps = None;
            come.readings.taps = None;
        }
        if gone.readings.circuits_live == after.readings.circuits_live {
            gone.readings.circuits_live = None;
            come.readings.circuits_live = None;
        }
        match (gone.is_empty(), come.is_empty()) {
            (true, _) => {}
            (false, true) => lines.push(self.taken_back(unit, &gone, voice)),
            (false, false) => {
                let was = voice.readings(&gone, spec);
                let what = voice.readings(&come, spec);
                let args = [name(), ("was", was.into()), ("what", what.into())];
                lines.push(voice.say("changed-value", &args));
            }
        }
        lines
    }
}

/// Gathers several reports on one trailer into one.
fn whole<'e>(entries: impl Iterator<Item = &'e Entry>) -> Entry {
    let mut all = Entry::default();
    for entry in entries {
        merge(&mut all, entry);
    }
    all
}
