//! One trailer's part of the book: its reports in the order they were so, and the state folded from them.

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::MessageKey;
use super::state::UnitState;
use crate::heard::{Entry, Event};

/// How far back reports are kept at least, so that a late message can take its place.
const KEPT: TimeDelta = TimeDelta::hours(72);
/// How far back they are kept at most: a long stay without a pump-out must not grow for ever.
const KEPT_AT_MOST: TimeDelta = TimeDelta::days(45);

/// A report with what it takes to put it in its place and to take it back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Kept {
    at: DateTime<Utc>,
    key: MessageKey,
    from: String,
    entry: Entry,
}

/// What the book keeps of one trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct UnitBook {
    /// The state before the oldest report kept.
    base: UnitState,
    /// Nothing older than this can change the state any more.
    since: Option<DateTime<Utc>>,
    /// The reports kept, oldest first.
    reports: Vec<Kept>,
    /// The state after the newest.
    state: UnitState,
}

impl UnitBook {
    /// Returns the state after everything reported.
    pub fn state(&self) -> &UnitState {
        &self.state
    }

    /// Tells whether a report of `at` is too old to change the state.
    pub fn too_old(&self, at: DateTime<Utc>) -> bool {
        self.since.is_some_and(|since| at < since)
    }

    /// Returns the state as it was just before `at`, folded again from what is kept.
    pub fn state_before(&self, at: DateTime<Utc>) -> UnitState {
        if self.reports.last().is_none_or(|last| last.at <= at) {
            return self.state.clone();
        }
        let mut state = self.base.clone();
        for kept in self.reports.iter().take_while(|kept| kept.at <= at) {
            state.take_in(kept.at, &kept.from, &kept.entry);
        }
        state
    }

    /// Returns the state as it would be after further reports, each with its time; `from` tells who made them.
    pub fn preview<'a>(
        &self,
        from: &str,
        reports: impl Iterator<Item = (DateTime<Utc>, &'a Entry)>,
    ) -> UnitState {
        let mut reports: Vec<_> = reports.filter(|(at, _)| !self.too_old(*at)).collect();
        reports.sort_by_key(|(at, _)| *at);
        let newest = self.reports.last().map(|kept| kept.at);
        if reports
            .first()
            .is_none_or(|(at, _)| newest.is_none_or(|newest| newest <= *at))
        {
            let mut state = self.state.clone();
            reports
                .iter()
                .for_each(|(at, entry)| state.take_in(*at, from, entry));
            return state;
        }
        let mut state = self.base.clone();
        let mut rest = reports.into_iter().peekable();
        for kept in &self.reports {
            while let Some((at, entry)) = rest.next_if(|(at, _)| *at < kept.at) {
                state.take_in(at, from, entry);
            }
            state.take_in(kept.at, &kept.from, &kept.entry);
        }
        rest.for_each(|(at, entry)| state.take_in(at, from, entry));
        state
    }

    /// Iterates over the reports kept, oldest first: when, by whom, what.
    pub fn reports(&self) -> impl Iterator<Item = (DateTime<Utc>, &str, &Entry)> {
        self.reports
            .iter()
            .map(|kept| (kept.at, kept.from.as_str(), &kept.entry))
    }

    /// Iterates over what one message reported.
    pub fn reports_of<'a>(
        &'a self,
        key: &'a MessageKey,
    ) -> impl Iterator<Item = (DateTime<Utc>, &'a Entry)> {
        self.reports
            .iter()
            .filter(move |kept| kept.key == *key)
            .map(|kept| (kept.at, &kept.entry))
    }

    /// Returns when the newest report was so.
    pub fn newest(&self) -> Option<DateTime<Utc>> {
        self.reports.last().map(|kept| kept.at)
    }

    /// Puts a report in its place and folds it in.
    pub fn take_in(&mut self, at: DateTime<Utc>, key: &MessageKey, from: &str, entry: &Entry) {
        if self.too_old(at) {
            return;
        }
        let place = self.reports.partition_point(|kept| kept.at <= at);
        let newest = place == self.reports.len();
        self.reports.insert(
            place,
            Kept {
                at,
                key: key.clone(),
                from: from.to_owned(),
                entry: entry.clone(),
            },
        );
        if newest {
            self.state.take_in(at, from, entry);
            self.trim();
        } else {
            self.fold();
        }
    }

    /// Takes back what one message reported.
    pub fn take_back(&mut self, key: &MessageKey) {
        let before = self.reports.len();
        self.reports.retain(|kept| kept.key != *key);
        if self.reports.len() != before {
            self.fold();
        }
    }

    /// Returns a copy without what one message reported.
    pub fn without(&self, key: &MessageKey) -> UnitBook {
        let mut copy = self.clone();
        copy.take_back(key);
        copy
    }

    fn fold(&mut self) {
        self.state = self.base.clone();
        for kept in &self.reports {
            self.state.take_in(kept.at, &kept.from, &kept.entry);
        }
    }

    /// Moves reports into the base once they are older than 72 h and than the last pump-out or arrival.
    fn trim(&mut self) {
        let Some(newest) = self.reports.last().map(|kept| kept.at) else {
            return;
        };
        let pumped = self.state.last_pumped().map(|(at, _)| at);
        let arrived = self.state.when(Event::Arrived);
        let anchor = pumped.max(arrived).unwrap_or(newest - KEPT_AT_MOST);
        let keep_from = anchor.min(newest - KEPT).max(newest - KEPT_AT_MOST);
        let stale = self.reports.partition_point(|kept| kept.at < keep_from);
        // in batches, so that a long stay does not pay for it on every message
        if stale < 16 {
            return;
        }
        for kept in self.reports.drain(..stale) {
            self.base.take_in(kept.at, &kept.from, &kept.entry);
        }
        self.base.trim(keep_from - KEPT);
        self.since = Some(keep_from);
        self.fold();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::ReadingKey;

    fn at(minutes: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_800_000_000 + minutes * 60, 0).expect("a valid instant")
    }

    fn pressure(psi: f64) -> Entry {
        let mut entry = Entry::default();
        entry.readings.set(ReadingKey::PressurePsi, psi);
        entry
    }

    fn key(n: i64) -> MessageKey {
        MessageKey::new("test", 1, n, 0)
    }

    #[test]
    fn a_late_report_takes_its_place_in_the_past() {
        let mut unit = UnitBook::default();
        unit.take_in(at(0), &key(1), "dana", &pressure(50.0));
        unit.take_in(at(120), &key(2), "dana", &pressure(30.0));
        unit.take_in(at(60), &key(3), "dana", &pressure(45.0));
        let pressure = &unit.state().readings[&ReadingKey::PressurePsi];
        assert_eq!(pressure.value, 30.0);
        assert_eq!(pressure.before, Some((45.0, at(60))));
        assert_eq!(
            unit.state_before(at(90)).value(ReadingKey::PressurePsi),
            Some(45.0)
        );
    }

    #[test]
    fn a_preview_is_the_state_after_taking_in() {
        for (late, minutes) in [(false, 90), (true, 30), (true, 60)] {
            let mut unit = UnitBook::default();
            unit.take_in(at(0), &key(1), "dana", &pressure(50.0));
            unit.take_in(at(60), &key(2), "dana", &pressure(45.0));
            let entry = pressure(95.0);
            let previewed = unit.preview("wren", [(at(minutes), &entry)].into_iter());
            unit.take_in(at(minutes), &key(3), "wren", &entry);
            assert_eq!(previewed.readings, unit.state().readings, "late: {late}");
        }
    }

    #[test]
    fn taking_back_a_report_restores_what_stood_before() {
        let mut unit = UnitBook::default();
        unit.take_in(at(0), &key(1), "dana", &pressure(50.0));
        let before = unit.state().clone();
        unit.take_in(at(10), &key(2), "dana", &pressure(95.0));
        unit.take_back(&key(2));
        assert_eq!(unit.state(), &before);
    }

    #[test]
    fn old_reports_fold_into_the_base_without_changing_the_state() {
        let mut unit = UnitBook::default();
        let mut plain = UnitState::default();
        for day in 0..200 {
            let entry = pressure(40.0 + (day % 20) as f64);
            unit.take_in(at(day * 1440), &key(day), "dana", &entry);
            plain.take_in(at(day * 1440), "dana", &entry);
        }
        assert_eq!(unit.state().readings, plain.readings);
        assert!(
            unit.reports.len() < 70,
            "{} reports kept",
            unit.reports.len()
        );
        assert!(unit.too_old(at(0)));
    }
}
