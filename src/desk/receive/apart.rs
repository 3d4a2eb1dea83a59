//! What only sounds like a report of the trailer talked about, and numbers that would be lost: which trailer a task's number
//! means, a door that somebody hit, a number of no trailer, somebody who goes and leaves their trailer.

use super::Hearing;
use crate::desk::phrases::plain;
use crate::desk::settle::{self, Settled};
use crate::heard::{Event, Fault, Plan, Remark, UnitName};

impl Hearing<'_> {
    /// Tells whether the message reports a reading.
    pub(super) fn reports_a_value(&self) -> bool {
        let mut entries = self.heard.entries.iter();
        entries.any(|entry| !entry.readings.is_empty())
    }

    /// "Called the truck, task 4": the task's number says of which trailer.
    pub(super) fn unit_of_a_task(&mut self) {
        let heard = &self.heard;
        if heard.ask.is_some() || heard.command.is_some() || !heard.named.is_empty() {
            return;
        }
        let folded = plain(self.text);
        let words: Vec<&str> = folded.split(' ').collect();
        let named = words.windows(2).find_map(|pair| {
            let task = matches!(pair[0], "task" | "tarea");
            task.then(|| pair[1].parse::<u32>().ok()).flatten()
        });
        let task = named.and_then(|id| self.desk.book.tasks().task(id));
        let Some(unit) = task.and_then(|task| task.unit.clone()) else {
            return;
        };
        let homeless = |plan: &&mut Plan| plan.unit.is_none();
        for plan in self.heard.plans.iter_mut().filter(homeless) {
            plan.unit = Some(unit.clone());
        }
        for entry in self
            .heard
            .entries
            .iter_mut()
            .filter(|entry| entry.unit.is_none())
        {
            entry.unit = Some(unit.clone());
        }
        self.heard.named.push(unit);
    }

    /// "Que se pegó con la puerta": what met the door is no lock that sticks.
    pub(super) fn door_that_was_met(&self, settled: &mut Settled) {
        if self.desk.phrases.holds("door", "met", self.text) {
            settled.amend_all(|_, entry| entry.faults.retain(|fault| *fault != Fault::LockJam));
        }
    }

    /// "3 cords and 119", "power 121": a number that was taken for a trailer, of which the fleet has none and nothing is told,
    /// is asked about and not lost.
    pub(super) fn numbers_of_no_trailer(&mut self, settled: &Settled) {
        let measured = 15.0..=150.0;
        let reported = |name: &UnitName| {
            let mut entries = self.heard.entries.iter();
            entries.any(|entry| entry.unit.as_ref() == Some(name))
        };
        let lost = self.heard.named.iter().filter(|name| {
            let number = name.as_str().parse::<f64>();
            settle::known(&self.fleet, name).is_none()
                && number.is_ok_and(|number| measured.contains(&number))
                && !reported(name)
        });
        let quoted = |name: &&UnitName| {
            !self
                .heard
                .unclear
                .iter()
                .any(|r| r.text.contains(name.as_str()))
        };
        let lost: Vec<UnitName> = lost.filter(quoted).cloned().collect();
        let speaks = self.heard.ask.is_some() || self.heard.command.is_some();
        if settled.reports.is_empty() || speaks || !self.heard.plans.is_empty() {
            return;
        }
        for name in lost {
            self.heard.unclear.push(Remark {
                text: name.as_str().to_owned(),
                why: "no-place".into(),
            });
        }
    }

    /// Tells whether the sender works alone by a clock, gets nothing ready to leave and names no trailer.
    pub(super) fn ends_alone(&self) -> bool {
        let alone = self.desk.book.ahead().alone(&self.member.id).is_some();
        alone && self.talk.round.is_none() && self.heard.named.is_empty()
    }

    /// Whoever works alone and goes, ends the clock with it: their trailer stays.
    pub(super) fn goes_alone(&self, settled: &mut Settled) {
        if !self.ends_alone() {
            return;
        }
        settled.amend_all(|_, entry| entry.events.retain(|event| *event != Event::Left));
        if settled.reports.is_empty() {
            settled.from_context = None;
        }
    }
}
