//! A pump that stopped: where it would not stop before, that is over; else it is dead.

use super::super::settle::Settled;
use super::Hearing;
use crate::heard::Fault;

impl Hearing<'_> {
    /// Takes "pump stopped" for the end of a pump that would not stop, on each trailer where that stands.
    pub(super) fn pump_stopped(&self, settled: &mut Settled) {
        let says = |list| self.desk.phrases.holds("stopped", list, self.text);
        if !says("pump") || says("not") {
            return;
        }
        let book = &self.desk.book;
        settled.amend_all(|unit, entry| {
            let runs = book
                .unit(unit)
                .is_some_and(|kept| kept.state().has(Fault::PumpRunning));
            if runs && entry.faults.contains(&Fault::PumpDead) {
                entry.faults.retain(|fault| *fault != Fault::PumpDead);
                entry.cleared.push(Fault::PumpRunning);
            }
        });
    }
}
