//! A smell of gas that is said to be gone: the danger stands until the fire service or the gas utility has cleared it.

use chrono::TimeDelta;

use super::super::settle::{self, Settled};
use super::Hearing;
use crate::heard::{Fault, UnitName};

/// A smell that was known so long ago is told anew.
const A_DAY: TimeDelta = TimeDelta::hours(24);

impl Hearing<'_> {
    /// Takes a smell that is gone out of the report of a trailer with a smell of gas, unless those cleared it who may.
    /// Returns the trailer on which the danger stays.
    pub(super) fn gas_stays(&mut self, settled: &mut Settled) -> Option<UnitName> {
        let says = |list| self.desk.answers.says("gas", list, self.text);
        let gas = |unit: &UnitName| {
            let kept = self.desk.book.unit(unit);
            kept.is_some_and(|kept| kept.state().has(Fault::GasSmell))
        };
        let cleared = says("who") && says("clears") && !says("not") && self.heard.ask.is_none();
        if cleared {
            self.gas_is_cleared(settled, gas);
            return None;
        }
        let smells = [Fault::Odor, Fault::GasSmell];
        let mut stays = None;
        let went = says("went") && self.heard.ask.is_none();
        for (unit, _, entry) in &mut settled.reports {
            // one that nobody had told of is no older for being gone
            if went && entry.cleared.contains(&Fault::GasSmell) && !self.gas_known(unit) {
                entry.cleared.retain(|fault| !smells.contains(fault));
                entry.faults.push(Fault::GasSmell);
            }
        }
        for (unit, _, entry) in &mut settled.reports {
            if gas(unit) && entry.cleared.iter().any(|fault| smells.contains(fault)) {
                entry.cleared.retain(|fault| !smells.contains(fault));
                stays = Some(unit.clone());
            }
            // a word of the smell that went is no second smell
            if gas(unit) && says("gone") {
                entry.faults.retain(|fault| *fault != Fault::Odor);
                stays = Some(unit.clone());
            }
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
        stays.or_else(|| self.gas_elsewhere(settled))
    }

    /// Tells whether a smell of gas on a trailer was told or cleared within the day.
    fn gas_known(&self, unit: &UnitName) -> bool {
        let kept = self.desk.book.unit(unit).into_iter();
        let mut reports = kept.flat_map(|kept| kept.reports());
        reports.any(|(at, _, entry)| {
            let told = entry.faults.iter().chain(&entry.cleared);
            self.now - at <= A_DAY && told.into_iter().any(|fault| *fault == Fault::GasSmell)
        })
    }

    /// "Its the food trucks gas, they fixed it" after a word on another trailer: it is of the gas, and mends nothing there.
    fn gas_elsewhere(&self, settled: &mut Settled) -> Option<UnitName> {
        let says = |list| self.desk.answers.says("gas", list, self.text);
        let last = self.talk.unit_at(self.inbound.at);
        if !says("source") || !says("ended") || !self.heard.named.is_empty() {
            return None;
        }
        let sent = self.desk.book.sent(&self.member.id).iter().rev();
        let mut units = sent.flat_map(|sent| &sent.units);
        let unit = units.find(|unit| {
            let kept = self.desk.book.unit(unit);
            kept.is_some_and(|kept| kept.state().has(Fault::GasSmell))
        })?;
        for (.., entry) in &mut settled.reports {
            if entry.unit.as_ref() == last || settled.from_context.is_some() {
                entry.cleared.clear();
            }
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
        settled.homeless = None;
        Some(unit.clone())
    }

    /// Ends the danger on the one trailer that the message can mean.
    fn gas_is_cleared(&self, settled: &mut Settled, gas: impl Fn(&UnitName) -> bool) {
        let named = settled.reports.first().map(|(unit, ..)| unit);
        let named = named.or_else(|| self.heard.named.first());
        let meant = named.or_else(|| self.talk.unit_at(self.inbound.at));
        let unit = meant.and_then(|name| settle::known(&self.fleet, name));
        let Some(unit) = unit.filter(|unit| gas(unit)).cloned() else {
            return;
        };
        settled.homeless = None;
        let entry = settled.report_on(&unit, self.inbound.at);
        entry.faults.retain(|fault| *fault != Fault::Odor);
        entry.cleared.extend([Fault::GasSmell, Fault::Odor]);
    }
}
