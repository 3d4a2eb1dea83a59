//! A waste hose that came off while nothing ran out: no spill, and a look before it goes back on.

use super::super::answer::Reply;
use super::super::settle::Settled;
use super::Hearing;
use crate::finding::Caution;
use crate::heard::{Fault, UnitName};

impl Hearing<'_> {
    /// Takes the spill out of a report that says that nothing ran out. Returns its trailer.
    pub(super) fn hose_off_dry(&mut self, settled: &mut Settled) -> Option<UnitName> {
        let says = |list| self.desk.phrases.holds("hose-off", list, self.text);
        let off = says("hose") && says("off") && says("dry");
        if !off || says("wet") || self.heard.ask.is_some() {
            return None;
        }
        let spills = |(.., entry): &&(UnitName, _, _)| -> bool {
            let entry: &crate::heard::Entry = entry;
            entry.faults.contains(&Fault::Spill)
        };
        let unit = settled.reports.iter().find(spills)?.0.clone();
        let stood = self.desk.book.unit(&unit);
        // one that is known is not called dry by a word on a hose
        if stood.is_some_and(|kept| kept.state().has(Fault::Spill)) {
            return None;
        }
        settled.amend(&unit, |entry| {
            entry.faults.retain(|fault| *fault != Fault::Spill);
        });
        Some(unit)
    }
}

/// Says how it is put back on.
pub(super) fn tell(unit: &UnitName, reply: &mut Reply<'_>) {
    let line = reply
        .voice
        .say("hose-off-dry", &[("unit", unit.as_str().into())]);
    reply.first.push(line);
    let caution = reply.voice.caution(Caution::SewageHygiene);
    reply.first.push(format!("  {caution}"));
}
