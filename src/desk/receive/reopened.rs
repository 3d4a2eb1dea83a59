//! "No wait, its still dead": what the sender called mended a short while ago is broken still.

use chrono::TimeDelta;

use super::super::settle::Settled;
use super::Hearing;
use crate::heard::{Entry, Fault};

/// A longer message is a report of its own.
const LONGEST: usize = 9;
/// So long after it "still" speaks of the fix.
const LATELY: TimeDelta = TimeDelta::hours(1);

impl Hearing<'_> {
    /// Puts the faults back that the sender's last report cleared, where the message says no more than that they stand.
    pub(super) fn not_mended_after_all(&self, settled: &mut Settled) {
        let heard = &self.heard;
        let says = self.desk.phrases.holds("still", "says", self.text);
        let named = heard.entries.iter().any(|entry| entry.unit.is_some());
        let orders = heard.command.is_some() || heard.ask.is_some();
        let long = self.text.split_whitespace().count() > LONGEST;
        if !says || named || orders || long || self.inbound.replaces.is_some() {
            return;
        }
        let Some(last) = self.desk.book.sent(&self.member.id).last() else {
            return;
        };
        if self.now - last.at > LATELY {
            return;
        }
        for (unit, _, entry) in self.told_in(last) {
            let kept = self.desk.book.unit(&unit);
            let over = |fault: &Fault| kept.is_some_and(|kept| !kept.state().has(*fault));
            let mut faults = entry.cleared;
            faults.retain(over);
            if faults.is_empty() {
                continue;
            }
            // "dead" alone was read of something else
            settled.reports.clear();
            settled.homeless = None;
            let entry = Entry {
                unit: Some(unit.clone()),
                faults,
                ..Entry::default()
            };
            settled.reports.push((unit, self.inbound.at, entry));
            return;
        }
    }
}
