//! One turn of a person's checks: what an answer came to, what is newly wrong, which step is next.

use std::cmp::Ordering;

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::situate::{Case, site_told};
use super::danger;
use super::said::is_trip;
use super::take::{EMPTY_STEP, Took, tank_is_no_help};
use super::{LATELY, Outcome, PASSED, RESETS, Said, outcome, step_of};
use crate::book::UnitState;
use crate::dialogue::Check;
use crate::finding::{FindingId, Level, TaskKind};
use crate::fleet::Role;
use crate::heard::{Event, Fault, UnitName};
use crate::reply::Arg;
use crate::rules::{Asks, Step, Then, last_resort};

/// One turn of a person's checks.
pub(super) struct Round<'a> {
    pub(super) hearing: &'a Hearing<'a>,
    pub(super) cases: &'a [Case],
    pub(super) checks: Vec<Check>,
    /// The checks that ended in this turn: the same report does not start them again.
    pub(super) ended: Vec<(UnitName, Fault)>,
    /// What this message has ruled out and the reply has not said yet.
    pub(super) ruled_out: Vec<String>,
}

impl Round<'_> {
    /// Takes every answer of a message: to the step that waits, and to steps after it.
    pub(super) fn take_all(&mut self, took: &Took, reply: &mut Reply<'_>) {
        let Some(first) = self.checks.last().cloned() else {
            return;
        };
        for (number, said) in &took.said {
            let here = self.checks.last().filter(|check| {
                let same = check.unit == first.unit && check.fault == first.fault;
                same && check.steps_of == first.steps_of
            });
            let Some(here) = here else { break };
            match here.step.cmp(number) {
                Ordering::Equal => self.answer(*said, reply),
                Ordering::Less if !here.mending => self.answer_ahead(*number, *said, reply),
                _ => {}
            }
        }
    }

    /// Takes the answer to a step that was not asked yet: what it rules out is not asked, and what it finds comes first.
    fn answer_ahead(&mut self, number: u32, said: Said, reply: &mut Reply<'_>) {
        let Some(mut check) = self.checks.pop() else {
            return;
        };
        let place = Check {
            step: number,
            mending: false,
            ..check.clone()
        };
        let Some(step) = step_of(&place) else {
            self.checks.push(check);
            return;
        };
        match outcome(&place, step, said) {
            Outcome::RuledOut => {
                self.rule_out(step);
                check.ahead.push(number);
            }
            // logged as it is, and what comes before it is asked all the same
            Outcome::Found if matches!(step.then, Then::Report(_)) => {}
            // somebody may be near it: that is said, and the step that guards them first still waits
            Outcome::Found
                if step.then == Then::Hold && step_of(&check).is_some_and(Step::guards) =>
            {
                let text = reply.voice.word(&format!("settles-{}", step.cause));
                reply.lines.push(text);
            }
            Outcome::Found => {
                check = place;
                if !self.settle(&mut check, step, Outcome::Found, reply) {
                    self.ended.push((check.unit, check.fault));
                    return;
                }
            }
            _ => {}
        }
        self.checks.push(check);
    }

    /// Says what an answer came to and moves on.
    pub(super) fn answer(&mut self, said: Said, reply: &mut Reply<'_>) {
        let Some(mut check) = self.checks.pop() else {
            return;
        };
        let Some(step) = step_of(&check) else {
            return;
        };
        let outcome = outcome(&check, step, said);
        let answered = matches!(
            outcome,
            Outcome::RuledOut | Outcome::Found | Outcome::Mended
        );
        let reset = step.resets && !check.mending && answered
            || said == Said::Tripped
            || check.mending && is_trip(check.fault) && matches!(said, Said::No | Said::Mended);
        if reset && !self.counted(&check) {
            check.resets += 1;
        }
        match said {
            Said::Tripped | Said::No
                if self.resets(&check) >= RESETS
                    && reset
                    && (check.mending || said == Said::Tripped) =>
            {
                self.no_third(&check, reply);
                self.ended.push((check.unit, check.fault));
                return;
            }
            Said::Tripped => reply.say("walk-tripped", &[]),
            Said::Back => step_back(&mut check),
            Said::Resume if self.tank_is_no_help(&check) => {
                reply.say("walk-tank-empty", &[("unit", check.unit.as_str().into())]);
            }
            // it runs on over an empty tank: off with it first
            Said::Resume if check.mending && step.key == EMPTY_STEP => {
                let what = format!("settles-{}", step.cause);
                reply.lines.push(reply.voice.word(&what));
            }
            Said::Unclear if self.hearing.member.role == Role::Dispatcher && step.guards() => {
                reply.say("walk-not-there", &[]);
            }
            _ => {}
        }
        check.passed = match outcome {
            Outcome::Guarded => check.passed + 1,
            _ => 0,
        };
        if self.settle(&mut check, step, outcome, reply) {
            if said == Said::DidAll && outcome == Outcome::Skipped {
                reply.say("walk-skipped", &[]);
                skip_what_needs_nothing(&mut check);
            }
            self.checks.push(check);
        } else {
            self.ended.push((check.unit, check.fault));
        }
    }

    /// Tells whether the message tells that the tank is empty of a trailer that does not run from it.
    fn tank_is_no_help(&self, check: &Check) -> bool {
        let told = self.cases.iter().find(|case| case.unit == check.unit);
        let told = told.map(|case| &case.report);
        tank_is_no_help(self.hearing, check, told)
    }

    /// Says what the step at hand is for.
    pub(super) fn say_what_for(&self, reply: &mut Reply<'_>) {
        let Some(step) = self.checks.last().and_then(step_of) else {
            return;
        };
        if matches!(step.then, Then::Hold) {
            let text = reply.voice.word(&format!("settles-{}", step.cause));
            reply.lines.push(text);
        } else if !step.guards() {
            let what = reply.voice.word(&format!("cause-{}", step.cause));
            reply.say("walk-why", &[("what", what.into())]);
        }
    }

    /// Counts the resets that a message tells of.
    pub(super) fn count_resets(&mut self, resets: u32) {
        if let Some(check) = self.checks.last_mut() {
            check.resets += resets;
        }
    }

    /// Tells whether the message counted its reset already.
    fn counted(&self, check: &Check) -> bool {
        let before = self.hearing.talk.checks.last();
        before.is_some_and(|before| before.resets < check.resets)
    }

    pub(super) fn resets(&self, check: &Check) -> u32 {
        check.resets.max(self.resets_lately(&check.unit))
    }

    /// Ends a check at its second reset.
    pub(super) fn no_third(&mut self, check: &Check, reply: &mut Reply<'_>) {
        no_reset(&check.unit, check.fault, "trouble-trips-again", reply);
        reply.say("walk-two-resets", &[]);
        let fault = format!("fault-{}", check.fault);
        self.call(check, TaskKind::Electrician, &fault, reply);
    }

    /// Tells whether the reply tells of a danger that has no check, or one that is not the check at hand.
    pub(super) fn waits_for_people(&self, reply: &Reply<'_>) -> bool {
        let at_hand = self.checks.last();
        // who helps somebody hurt by a shock must know that the power is off
        let shocked = at_hand.is_some_and(|check| check.fault == Fault::Shock && check.step == 0);
        let of_another = |id| at_hand.is_none_or(|check| FindingId::of_fault(check.fault) != id);
        reply.findings.iter().any(|finding| {
            finding.level == Level::Danger
                && of_another(finding.id)
                && !(shocked && finding.id == FindingId::CrewPersonHurt)
        })
    }

    /// Moves a check on by one outcome; false where that ends it.
    pub(super) fn settle(
        &mut self,
        check: &mut Check,
        step: &Step,
        outcome: Outcome,
        reply: &mut Reply<'_>,
    ) -> bool {
        match outcome {
            Outcome::Again => {}
            // whoever cannot look leaves it off and shut, and to somebody who can
            Outcome::Guarded if check.passed >= PASSED && !is_grave(check.fault) => {
                reply.say("walk-left-safe", &[]);
                let fault = format!("fault-{}", check.fault);
                self.call(check, last_resort(check.fault), &fault, reply);
                return false;
            }
            Outcome::Guarded if step.then == Then::Hold => {
                return self.found(check, step, reply);
            }
            Outcome::Guarded => reply.say("set-up-not-skipped", &[]),
            Outcome::Tried => check.mending = true,
            Outcome::Skipped => advance(check),
            Outcome::RuledOut => {
                self.rule_out(step);
                advance(check);
            }
            Outcome::Mended => {
                self.say_over(check, reply);
                return false;
            }
            Outcome::Found => return self.found(check, step, reply),
        }
        true
    }

    /// Notes what a step has ruled out.
    fn rule_out(&mut self, step: &Step) {
        if !matches!(step.then, Then::Hold | Then::Report(_)) {
            self.ruled_out.push(format!("cause-{}", step.cause));
        }
    }

    /// Says in one line what this message has ruled out so far.
    pub(super) fn tell_ruled_out(&mut self, reply: &mut Reply<'_>) {
        let causes = std::mem::take(&mut self.ruled_out);
        let names: Vec<String> = causes.iter().map(|cause| reply.voice.word(cause)).collect();
        if !names.is_empty() {
            let what = reply.voice.one_of(&names);
            reply.say("walk-not", &[("what", what.into())]);
        }
    }

    fn found(&mut self, check: &mut Check, step: &Step, reply: &mut Reply<'_>) -> bool {
        self.tell_ruled_out(reply);
        if !matches!(step.then, Then::Report(_)) {
            let text = reply.voice.word(&format!("settles-{}", step.cause));
            reply.lines.push(text);
        }
        match step.then {
            Then::Mend => check.mending = true,
            Then::Hold => {
                if step.key == "step-they-answer"
                    && let Some(address) = self.address(&check.unit)
                {
                    reply.say("walk-emergency-at", &[("site", address.into())]);
                }
            }
            Then::Call(kind) => {
                if is_trip(check.fault) && kind == TaskKind::Electrician {
                    no_reset(
                        &check.unit,
                        check.fault,
                        "trouble-breaker-trip-leave-off",
                        reply,
                    );
                }
                let cause = format!("cause-{}", step.cause);
                self.call(check, kind, &cause, reply);
                return false;
            }
            Then::Turn(fault) => {
                check.steps_of = fault;
                check.course = None;
                check.step = 0;
                check.ahead.clear();
            }
            // whoever is hurt by a shock, the others must still be kept off; else the other fault takes over
            Then::Report(Fault::PersonHurt) => advance(check),
            Then::Report(_) => return false,
            Then::Over => return false,
        }
        true
    }

    /// Hands the fault over to whose work it is.
    pub(super) fn call(
        &mut self,
        check: &Check,
        kind: TaskKind,
        cause: &str,
        reply: &mut Reply<'_>,
    ) {
        self.tell_ruled_out(reply);
        let key = match kind {
            TaskKind::Electrician => "walk-calls-electrician",
            TaskKind::Plumber => "walk-calls-plumber",
            _ => "walk-calls-repair",
        };
        reply.say(key, &[("unit", check.unit.as_str().into())]);
        let finding = FindingId::of_fault(check.fault);
        reply
            .board
            .open_found(&check.unit, kind, finding, cause.to_owned());
    }

    pub(super) fn say_over(&self, check: &Check, reply: &mut Reply<'_>) {
        let told = self.cases.iter().filter(|case| case.unit == check.unit);
        let reset = |case: &Case| case.report.events.contains(&Event::BreakerReset);
        let name = reply.voice.fault(check.fault);
        let args = [
            ("unit", Arg::from(check.unit.as_str())),
            ("name", name.into()),
        ];
        let dangers = danger::standing(self.hearing, &check.unit, reply);
        if !dangers.is_empty() && !Fault::DANGERS.contains(&check.fault) {
            let what = reply.voice.all_of(&dangers);
            let [unit, name] = args;
            reply.say("walk-fixed-danger", &[unit, name, ("what", what.into())]);
            danger::list_standing(self.hearing, &check.unit, reply);
        } else if told.into_iter().any(reset) {
            reply.say("walk-reset", &[]);
        } else {
            reply.say("walk-fixed", &args);
        }
    }

    fn resets_lately(&self, unit: &UnitName) -> u32 {
        let since = self.hearing.now - LATELY;
        let kept = self.hearing.desk.book.unit(unit).into_iter();
        let before = kept
            .flat_map(|kept| kept.reports())
            .filter(|(at, _, entry)| *at >= since && entry.events.contains(&Event::BreakerReset));
        let told = self
            .cases
            .iter()
            .filter(|case| case.unit == *unit && case.report.events.contains(&Event::BreakerReset));
        let resets = (before.count() + told.count()) as u32;
        // who was told that an electrician goes on from here resets it no more
        let tasks = self.hearing.desk.book.tasks();
        let called = tasks.open_task(unit, TaskKind::Electrician).is_some();
        match resets > 0 && called {
            true => resets.max(RESETS),
            false => resets,
        }
    }

    pub(super) fn state(&self, unit: &UnitName) -> UnitState {
        match self.cases.iter().find(|case| case.unit == *unit) {
            Some(case) => case.now.clone(),
            None => self
                .hearing
                .desk
                .book
                .unit(unit)
                .map(|kept| kept.state().clone())
                .unwrap_or_default(),
        }
    }

    pub(super) fn site(&self, unit: &UnitName) -> Option<&crate::fleet::Site> {
        let fleet = &self.hearing.fleet;
        let (desk, now) = (self.hearing.desk, self.hearing.now);
        let departed = desk.book.unit(unit).and_then(|kept| kept.state().departed);
        if let Some(told) = site_told(desk, unit, now, departed) {
            return fleet.sites.get(&told);
        }
        let job = fleet.job_of(unit, now, None)?;
        fleet.sites.get(&job.id.site)
    }

    fn address(&self, unit: &UnitName) -> Option<String> {
        self.site(unit)?.emergency_address.clone()
    }
}

/// Tells whether somebody is in danger until the check is gone through: no step of it is left to others.
fn is_grave(fault: Fault) -> bool {
    Fault::DANGERS.contains(&fault) || fault == Fault::Spill
}

/// Puts an order to leave a breaker off in the place of the first words of its trip, which have it reset.
pub(super) fn no_reset(unit: &UnitName, fault: Fault, action: &'static str, reply: &mut Reply<'_>) {
    let id = FindingId::of_fault(fault);
    let told = reply.findings.iter_mut();
    for finding in told.filter(|told| told.id == id && told.unit.as_ref() == Some(unit)) {
        finding.action = action.into();
    }
}

/// Goes back by one step, or to the question before it was asked whether that helped.
fn step_back(check: &mut Check) {
    let reads = step_of(check).is_some_and(|step| matches!(step.asks, Asks::For { .. }));
    if !std::mem::take(&mut check.mending) || reads {
        check.step = check.step.saturating_sub(1);
    }
}

pub(super) fn advance(check: &mut Check) {
    check.step += 1;
    check.mending = false;
}

/// Goes past the steps that "did all that" covers: up to one that reads a value or guards somebody.
fn skip_what_needs_nothing(check: &mut Check) {
    while let Some(step) = step_of(check) {
        let stays = matches!(step.asks, Asks::For { .. })
            || matches!(step.then, Then::Hold | Then::Call(_) | Then::Report(_));
        if stays {
            return;
        }
        check.step += 1;
    }
}
