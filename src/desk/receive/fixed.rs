//! What is told to be fixed and names no trailer: it is that of the trailer where it was wrong.

use super::super::settle::Settled;
use super::Hearing;
use crate::heard::{Entry, Fault, UnitName};

impl Hearing<'_> {
    /// Gives a fix that names no trailer to the one whose check is open for it, where the trailer last talked about has
    /// nothing of it; and drops it where nothing of it is wrong anywhere.
    pub(super) fn fixed_where_it_was_wrong(&self, settled: &mut Settled) {
        if !self.heard.named.is_empty() {
            return;
        }
        let wrong = |unit: &UnitName, fault: &Fault| self.has(unit, *fault);
        if let Some(entry) = settled.homeless.as_ref().filter(|entry| is_a_fix(entry)) {
            let mut fixed = entry.cleared.iter();
            let faulty = || self.desk.book.faulty_units().map(|(unit, _)| unit);
            let known = |fault| faulty().any(|unit| wrong(unit, fault));
            if !fixed.any(known) {
                settled.homeless = None;
            }
        }
        let Some(last) = settled.from_context.clone() else {
            return;
        };
        let [(unit, _, entry)] = settled.reports.as_mut_slice() else {
            return;
        };
        if *unit != last || !is_a_fix(entry) || entry.cleared.iter().any(|f| wrong(unit, f)) {
            return;
        }
        let of_it = |unit: &UnitName| entry.cleared.iter().all(|fault| wrong(unit, fault));
        let mut checks = self.talk.checks.iter().rev();
        if let Some(check) = checks.find(|check| of_it(&check.unit)) {
            *unit = check.unit.clone();
            entry.unit = Some(check.unit.clone());
            settled.from_context = Some(check.unit.clone());
        }
    }
}

/// Tells whether an entry says that something is fixed, and no more.
fn is_a_fix(entry: &Entry) -> bool {
    let only = Entry {
        unit: entry.unit.clone(),
        when: entry.when.clone(),
        cleared: entry.cleared.clone(),
        ..Entry::default()
    };
    !entry.cleared.is_empty() && *entry == only
}
