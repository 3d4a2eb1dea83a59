//! Whether all is well on a trailer after a report, and what stands there that the report does not touch.

use chrono::{DateTime, Utc};

use super::reply::Reply;
use crate::book::Task;
use crate::desk::receive::Hearing;
use crate::desk::settle::Settled;
use crate::desk::situate::Case;
use crate::heard::{Entry, ReadingKey, UnitName};
use crate::reply::Arg;

/// How many things are named that stand beside a report in good order.
const STANDING: usize = 3;

impl Reply<'_> {
    /// Returns the trailers on which all is well after a report. Where only what was read is within its limits, and other
    /// things stand, that is said instead.
    pub(super) fn in_good_order<'s>(
        &mut self,
        hearing: &Hearing<'_>,
        settled: &'s Settled,
        cases: &[Case],
    ) -> Vec<&'s UnitName> {
        let mut well = Vec::new();
        let mut lines = Vec::new();
        for (unit, at, entry) in &settled.reports {
            let advised = self
                .findings
                .iter()
                .any(|finding| finding.unit.as_ref() == Some(unit));
            // what was so before newer reports says nothing of now
            let overtaken = hearing
                .desk
                .book
                .unit(unit)
                .and_then(|kept| kept.newest())
                .is_some_and(|newest| newest > *at);
            if advised || !was_checked(entry) || self.walked || overtaken || well.contains(&unit) {
                continue;
            }
            let case = cases.iter().find(|case| case.unit == *unit);
            let stands = self.stands_on(hearing, unit, case);
            if stands.is_empty() {
                well.push(unit);
            } else if hearing.heard.unclear.is_empty() {
                let args = [
                    ("unit", Arg::from(unit.as_str())),
                    ("names", stands.join("; ").into()),
                ];
                let line = self.voice.say("read-well", &args);
                if !lines.contains(&line) {
                    lines.push(line);
                }
            }
        }
        self.lines.splice(..0, lines);
        well
    }

    /// Names what stands on a trailer that the message does not touch: what is to be done now, what could hurt somebody,
    /// and work that is late or must be called for.
    fn stands_on(
        &self,
        hearing: &Hearing<'_>,
        unit: &UnitName,
        case: Option<&Case>,
    ) -> Vec<String> {
        let found = case.map(Case::pressing).unwrap_or_default();
        let kinds: Vec<_> = found
            .iter()
            .filter_map(|finding| Some(finding.task.as_ref()?.kind))
            .collect();
        let named = found
            .iter()
            .map(|finding| self.voice.name(finding.id, finding.level));
        let tasks = self
            .board
            .tasks()
            .open_on(unit)
            .filter(|task| presses(task, hearing.now) && !kinds.contains(&task.kind))
            .map(|task| self.voice.task_head(task));
        named.chain(tasks).take(STANDING).collect()
    }
}

/// Tells whether a task is late, or its call is: then not all is well.
fn presses(task: &Task, now: DateTime<Utc>) -> bool {
    let uncalled = task.called.is_none() && task.taken_by.is_none();
    task.due.is_some_and(|due| due < now)
        || uncalled && task.call_by.is_some_and(|call_by| call_by <= now)
}

/// Tells whether a report holds a number that the rules hold against a limit.
fn was_checked(entry: &Entry) -> bool {
    let beside = |key: &ReadingKey| {
        matches!(
            key,
            ReadingKey::EtaMin
                | ReadingKey::Guests
                | ReadingKey::PumpedGal
                | ReadingKey::HoseFt
                | ReadingKey::CordFt
                | ReadingKey::CordAwg
                | ReadingKey::FlowGpm
                | ReadingKey::FuelGal
                | ReadingKey::FuelPct
                | ReadingKey::StallsOut
        )
    };
    !entry.readings.amps.is_empty() || entry.readings.values.keys().any(|key| !beside(key))
}
