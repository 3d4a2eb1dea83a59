//! What something done ends, "power on" a power that was out: the report says so itself, so that it is judged, recorded and
//! told to its sender.

use super::super::settle::Settled;
use super::super::walk::Took;
use super::Hearing;
use crate::heard::{Event, Fault};

impl Hearing<'_> {
    /// Adds to each report the end of the faults that stand and that what it tells as done has cured. What answers a step
    /// of a check is held against that step alone: "on city water" tells how the selector stands, and of no water yet.
    pub(super) fn cured(&self, settled: &mut Settled, step: Option<&Took>) {
        let looked_into = step.and_then(|_| self.talk.checks.last());
        for (unit, at, entry) in &mut settled.reports {
            let Some(kept) = self.desk.book.unit(unit) else {
                continue;
            };
            let stood = |fault: &Fault| {
                let asked = looked_into.is_some_and(|it| it.unit == *unit && it.fault == *fault);
                let since = kept.state().faults.get(fault).filter(|_| !asked);
                since.is_some_and(|since| *since <= *at)
            };
            // a breaker that was reset holds or trips again: nobody mended it yet
            let mends = |event: &&Event| **event != Event::BreakerReset;
            let cured = entry.events.iter().filter(mends).flat_map(|it| it.cures());
            let cured: Vec<Fault> = cured.copied().filter(stood).collect();
            for fault in cured {
                if !entry.faults.contains(&fault) && !entry.cleared.contains(&fault) {
                    entry.cleared.push(fault);
                }
            }
        }
    }
}
