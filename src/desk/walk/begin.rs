//! Which checks a message starts, and which are over without another word.

use super::super::answer::Reply;
use super::round::{Round, no_reset};
use super::said::is_trip;
use super::{OPEN_AT_MOST, culprit, lately, left_off};
use crate::dialogue::{Check, Course};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::Role;
use crate::heard::{Event, Fault, UnitName};
use crate::rules::steps;

impl Round<'_> {
    /// Drops the checks whose fault no longer stands.
    pub(super) fn drop_what_is_over(&mut self, reply: &mut Reply<'_>) {
        let checks = std::mem::take(&mut self.checks);
        for check in checks {
            if self.is_out_of(&check.unit, check.fault) {
                continue;
            }
            if self.state(&check.unit).has(check.fault) {
                self.checks.push(check);
            } else if self
                .cases
                .iter()
                .any(|case| case.unit == check.unit && case.before.has(check.fault))
            {
                self.say_over(&check, reply);
            }
        }
    }

    /// Starts a check for each fault newly reported, the worst last, so that it is at hand.
    pub(super) fn start(&mut self, reply: &mut Reply<'_>) -> bool {
        // who passes on what another says is not there to be led through it
        let hearing = self.hearing;
        let relayed = hearing.desk.phrases.holds("tell", "relayed", hearing.text);
        if hearing.member.role == Role::Dispatcher && relayed {
            return false;
        }
        let mut new: Vec<(UnitName, Fault)> = Vec::new();
        for finding in &reply.findings {
            for case in self
                .cases
                .iter()
                .filter(|case| finding.unit.as_ref() == Some(&case.unit))
            {
                let of = |fault: &&Fault| FindingId::of_fault(**fault) == finding.id;
                new.extend(
                    case.report
                        .faults
                        .iter()
                        .find(of)
                        .map(|fault| (case.unit.clone(), *fault)),
                );
            }
        }
        let mut started = false;
        for (unit, fault) in new.into_iter().rev() {
            if self.ended.contains(&(unit.clone(), fault))
                || self.is_known(&unit, fault)
                || self.is_out_of(&unit, fault)
            {
                continue;
            }
            let place = self
                .checks
                .iter()
                .position(|check| check.unit == unit && check.fault == fault);
            if place.is_none() && self.tripped_after_a_reset(&unit, fault) {
                reply.say("walk-reset-once", &[]);
                let action = match fault {
                    Fault::GfciTrip => "trouble-gfci-trip-leave-off",
                    _ => "trouble-breaker-trip-leave-off",
                };
                no_reset(&unit, fault, action, reply);
                let check = self.new_check(unit, fault, None);
                let what = format!("fault-{fault}");
                self.call(&check, TaskKind::Electrician, &what, reply);
                self.ended.push((check.unit, check.fault));
            } else if place.is_none() && self.is_left_off(&unit, fault) {
                let check = self.new_check(unit, fault, None);
                self.no_third(&check, reply);
                self.ended.push((check.unit, check.fault));
            } else if place.is_none() && is_trip(fault) && self.state(&unit).has(Fault::Shock) {
                // what is live is found by an electrician, and not by a reset
                let action = match fault {
                    Fault::GfciTrip => "trouble-gfci-trip-leave-off",
                    _ => "trouble-breaker-trip-leave-off",
                };
                no_reset(&unit, fault, action, reply);
                self.ended.push((unit, fault));
            } else if let Some(place) = place {
                // said again: it keeps its place, and its first words are not said twice
                let check = self.checks.remove(place);
                self.checks.push(check);
                let id = FindingId::of_fault(fault);
                let repeated = |finding: &Finding| {
                    finding.id == id
                        && finding.unit.as_ref() == Some(&unit)
                        && finding.level < crate::finding::Level::Warning
                };
                let findings = std::mem::take(&mut reply.findings);
                let (again, rest): (Vec<_>, Vec<_>) = findings.into_iter().partition(repeated);
                reply.findings = rest;
                reply.listed.extend(again);
                started = true;
            } else if !steps(fault).is_empty() {
                let course = self.course(&unit, fault, reply);
                // beside a danger nothing is said that can wait
                if !(Fault::DANGERS.contains(&fault) || fault == Fault::Spill) {
                    lately::tell(self.hearing, &unit, fault, reply);
                }
                self.checks.push(self.new_check(unit, fault, course));
                started = true;
            }
        }
        let over = self.checks.len().saturating_sub(OPEN_AT_MOST);
        self.checks.drain(..over);
        started
    }

    fn new_check(&self, unit: UnitName, fault: Fault, course: Option<Course>) -> Check {
        Check {
            unit,
            fault,
            steps_of: fault,
            course,
            step: 0,
            ahead: Vec::new(),
            passed: 0,
            mending: false,
            resets: 0,
            asked: self.hearing.now,
            waits: false,
        }
    }

    /// Tells whether a breaker or a GFCI that trips again was left to an electrician already, or is told to have been reset
    /// as often as it may be: it is not reset any more.
    fn is_left_off(&self, unit: &UnitName, fault: Fault) -> bool {
        let mut cases = self.cases.iter();
        let stood = cases.any(|case| case.unit == *unit && case.before.has(fault));
        let answers = &self.hearing.desk.answers;
        let twice = || answers.says("trip", "reset-twice", self.hearing.text);
        is_trip(fault) && (stood && left_off::waits_for_one(self.hearing, unit) || twice())
    }

    /// Tells whether a breaker or a GFCI is told to have tripped again after it was reset: it is not reset once more.
    fn tripped_after_a_reset(&self, unit: &UnitName, fault: Fault) -> bool {
        let (answers, text) = (&self.hearing.desk.answers, self.hearing.text);
        let mut cases = self.cases.iter();
        let done = cases
            .any(|case| case.unit == *unit && case.report.events.contains(&Event::BreakerReset));
        is_trip(fault)
            && (done || answers.resets_told(text) > 0)
            && answers.says("trip", "after-reset", text)
            && !answers.says("trip", "reset-twice", text)
    }

    /// Finds the course of its own that a check takes by the words of the message, and says its first words.
    fn course(&self, unit: &UnitName, fault: Fault, reply: &mut Reply<'_>) -> Option<Course> {
        let of_lights = matches!(fault, Fault::BatteryLow | Fault::NoLights);
        let answers = &self.hearing.desk.answers;
        if !of_lights || !answers.says("flicker", "says", self.hearing.text) {
            return None;
        }
        let id = FindingId::of_fault(fault);
        let of_it =
            |finding: &&mut Finding| finding.id == id && finding.unit.as_ref() == Some(unit);
        for finding in reply.findings.iter_mut().filter(of_it) {
            finding.action = "power-battery-low-flicker".into();
        }
        Some(Course::Flicker)
    }

    /// Tells whether a smell is to be left alone: nobody goes in for a drain or a fan while gas has made somebody ill.
    fn is_out_of(&self, unit: &UnitName, fault: Fault) -> bool {
        let state = self.state(unit);
        fault == Fault::Odor && (state.has(Fault::GasIllness) || state.has(Fault::GasSmell))
    }

    /// Tells whether a fault is what a heater that must stay off leads to: no check would end but with that heater on.
    fn is_known(&self, unit: &UnitName, fault: Fault) -> bool {
        let case = self.cases.iter().find(|case| case.unit == *unit);
        matches!(fault, Fault::NoHeat | Fault::NoHotWater)
            && case.is_some_and(|case| culprit::heater_kept_off(self.hearing, case).is_some())
    }
}
