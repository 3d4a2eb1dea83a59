//! One turn of a person's checks: what an answer came to, what is newly wrong, which step is next.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::situate::Case;
use super::said::is_trip;
use super::{FRESH, LATELY, OPEN_AT_MOST, Outcome, RESETS, Said, outcome, step_of};
use super::{culprit, lately};
use crate::book::UnitState;
use crate::dialogue::{Check, STEP_LASTS};
use crate::finding::{FindingId, Level, TaskKind};
use crate::fleet::Role;
use crate::heard::{Ask, Event, Fault, PlanKind, UnitName};
use crate::outlook::runs_on_tank;
use crate::reply::Arg;
use crate::rules::{Asks, Sought, Step, Then, WaterFrom, last_resort, steps};

/// One turn of a person's checks.
pub(super) struct Round<'a> {
    pub(super) hearing: &'a Hearing<'a>,
    pub(super) cases: &'a [Case],
    pub(super) checks: Vec<Check>,
    /// The checks that ended in this turn: the same report does not start them again.
    pub(super) ended: Vec<(UnitName, Fault)>,
}

impl Round<'_> {
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
            Said::Unclear if self.hearing.member.role == Role::Dispatcher && step.guards() => {
                reply.say("walk-not-there", &[]);
            }
            _ => {}
        }
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

    fn resets(&self, check: &Check) -> u32 {
        check.resets.max(self.resets_lately(&check.unit))
    }

    /// Ends a check at its second reset.
    fn no_third(&self, check: &Check, reply: &mut Reply<'_>) {
        let id = FindingId::of_fault(check.fault);
        for finding in &mut reply.findings {
            if finding.id == id && finding.unit.as_ref() == Some(&check.unit) {
                finding.action = "trouble-trips-again".into();
            }
        }
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
    fn settle(
        &self,
        check: &mut Check,
        step: &Step,
        outcome: Outcome,
        reply: &mut Reply<'_>,
    ) -> bool {
        match outcome {
            Outcome::Again => {}
            Outcome::Guarded if step.then == Then::Hold => {
                return self.found(check, step, reply);
            }
            Outcome::Guarded => reply.say("set-up-not-skipped", &[]),
            Outcome::Tried => check.mending = true,
            Outcome::Skipped => advance(check),
            Outcome::RuledOut => {
                if !matches!(step.then, Then::Hold | Then::Report(_)) {
                    let what = reply.voice.word(&format!("cause-{}", step.cause));
                    reply.say("walk-not", &[("what", what.into())]);
                }
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

    fn found(&self, check: &mut Check, step: &Step, reply: &mut Reply<'_>) -> bool {
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
                let cause = format!("cause-{}", step.cause);
                self.call(check, kind, &cause, reply);
                return false;
            }
            Then::Turn(fault) => {
                check.steps_of = fault;
                check.step = 0;
            }
            // whoever is hurt by a shock, the others must still be kept off; else the other fault takes over
            Then::Report(Fault::PersonHurt) => advance(check),
            Then::Report(_) => return false,
            Then::Over => return false,
        }
        true
    }

    /// Hands the fault over to whose work it is.
    fn call(&self, check: &Check, kind: TaskKind, cause: &str, reply: &mut Reply<'_>) {
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

    fn say_over(&self, check: &Check, reply: &mut Reply<'_>) {
        let told = self.cases.iter().filter(|case| case.unit == check.unit);
        let reset = |case: &Case| case.report.events.contains(&Event::BreakerReset);
        let name = reply.voice.fault(check.fault);
        let args = [
            ("unit", Arg::from(check.unit.as_str())),
            ("name", name.into()),
        ];
        if told.into_iter().any(reset) {
            reply.say("walk-reset", &[]);
        } else {
            reply.say("walk-fixed", &args);
        }
    }

    /// Drops the checks whose fault no longer stands.
    pub(super) fn drop_what_is_over(&mut self, reply: &mut Reply<'_>) {
        let checks = std::mem::take(&mut self.checks);
        for check in checks {
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
            if self.ended.contains(&(unit.clone(), fault)) || self.is_known(&unit, fault) {
                continue;
            }
            let place = self
                .checks
                .iter()
                .position(|check| check.unit == unit && check.fault == fault);
            if let Some(place) = place {
                // said again: it keeps its place, and its first words are not said twice
                let check = self.checks.remove(place);
                self.checks.push(check);
                let id = FindingId::of_fault(fault);
                let repeated = |finding: &crate::finding::Finding| {
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
                lately::tell(self.hearing, &unit, fault, reply);
                self.checks.push(Check {
                    unit,
                    fault,
                    steps_of: fault,
                    step: 0,
                    mending: false,
                    resets: 0,
                    asked: self.hearing.now,
                    waits: false,
                });
                started = true;
            }
        }
        let over = self.checks.len().saturating_sub(OPEN_AT_MOST);
        self.checks.drain(..over);
        started
    }

    /// Tells whether a fault is what a heater that must stay off leads to: no check would end but with that heater on.
    fn is_known(&self, unit: &UnitName, fault: Fault) -> bool {
        let case = self.cases.iter().find(|case| case.unit == *unit);
        matches!(fault, Fault::NoHeat | Fault::NoHotWater)
            && case.is_some_and(|case| culprit::heater_kept_off(self.hearing, case).is_some())
    }

    /// Asks the step at hand, past those that need no asking; ends the check where none is left.
    pub(super) fn ask(&mut self, reply: &mut Reply<'_>, before: Option<&Check>, shortly: bool) {
        while let Some(mut check) = self.checks.pop() {
            let other = before
                .is_some_and(|before| before.unit != check.unit || before.fault != check.fault);
            if other {
                let name = reply.voice.fault(check.fault);
                reply.say(
                    "walk-back",
                    &[("unit", check.unit.as_str().into()), ("name", name.into())],
                );
            }
            if self.pass_known(&mut check, reply) {
                check.asked = self.hearing.now;
                check.waits = false;
                if let Some(step) = step_of(&check) {
                    reply.step = Some(question(&check, step, reply, shortly));
                    reply.step_answers = answers(&check, step);
                }
                self.checks.push(check);
                return;
            }
        }
    }

    /// Reminds of the check at hand, once, after a message on something else. A step that guards somebody is asked again
    /// after every message that says nothing.
    pub(super) fn remind(&mut self, reply: &mut Reply<'_>) {
        let asks = matches!(self.hearing.heard.ask, None | Some(Ask::Status { .. }));
        let silent = self.cases.is_empty()
            && self.hearing.heard.ask.is_none()
            && self.hearing.heard.command.is_none()
            && reply.findings.is_empty()
            && self.hearing.heard.unclear.is_empty()
            && self
                .hearing
                .heard
                .plans
                .iter()
                .all(|plan| plan.kind == PlanKind::Well);
        let now = self.hearing.now;
        let Some(check) = self.checks.last_mut() else {
            return;
        };
        let Some(step) = step_of(check) else { return };
        let guards = step.guards() && !check.mending && now - check.asked <= STEP_LASTS;
        if silent && (guards || !check.waits) {
            if !guards {
                reply.say("walk-unread", &[]);
            }
            // asked again, it is the last thing said
            check.waits = !guards;
            check.asked = now;
            reply.step = Some(question(check, step, reply, true));
            return;
        }
        if asks && !check.waits {
            check.waits = true;
            let name = reply.voice.fault(check.fault);
            let args = [
                ("unit", Arg::from(check.unit.as_str())),
                ("name", name.into()),
                ("count", Arg::Count(i64::from(check.step) + 1)),
            ];
            let line = reply.voice.say("walk-waits", &args);
            reply.step = Some(line);
        }
    }

    /// Goes past the steps that are answered already; false where that ends the check.
    fn pass_known(&self, check: &mut Check, reply: &mut Reply<'_>) -> bool {
        let state = self.state(&check.unit);
        let now = self.hearing.now;
        let from = if runs_on_tank(&state, self.site(&check.unit)) {
            WaterFrom::Tank
        } else {
            WaterFrom::Site
        };
        loop {
            if check.mending {
                return true;
            }
            let Some(step) = step_of(check) else {
                reply.say("walk-no-more", &[]);
                let fault = format!("fault-{}", check.fault);
                self.call(check, last_resort(check.fault), &fault, reply);
                return false;
            };
            if step.water_from.is_some_and(|wanted| wanted != from) {
                advance(check);
                continue;
            }
            if matches!(step.then, Then::Report(fault) if state.has(fault)) {
                advance(check);
                continue;
            }
            if step.resets && self.resets(check) >= RESETS {
                self.no_third(check, reply);
                return false;
            }
            let lately = step.by.and_then(|event| Some((event, state.when(event)?)));
            if let Some((event, at)) = lately.filter(|(_, at)| now - *at <= LATELY) {
                let what = reply.voice.event(event);
                let age = reply.voice.age(at);
                reply.say("walk-lately", &[("what", what.into()), ("age", age.into())]);
                advance(check);
                continue;
            }
            let Asks::For {
                what: Sought::Reading(key),
                least,
                most,
            } = step.asks
            else {
                return true;
            };
            let Some(value) = state.value_since(key, now - FRESH) else {
                return true;
            };
            let outcome = if (least..=most).contains(&value) {
                Outcome::RuledOut
            } else {
                Outcome::Found
            };
            if !self.settle(check, step, outcome, reply) {
                return false;
            }
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
        (before.count() + told.count()) as u32
    }

    fn state(&self, unit: &UnitName) -> UnitState {
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

    fn site(&self, unit: &UnitName) -> Option<&crate::fleet::Site> {
        let fleet = &self.hearing.fleet;
        let job = fleet.job_of(unit, self.hearing.now, None)?;
        fleet.sites.get(&job.id.site)
    }

    fn address(&self, unit: &UnitName) -> Option<String> {
        self.site(unit)?.emergency_address.clone()
    }
}

/// Puts the question of a step into words, with the answers it takes; shortly, only what it asks.
/// Returns the likely answers to a step, by their codes.
fn answers(check: &Check, step: &Step) -> &'static [&'static str] {
    match step.asks {
        _ if check.mending => &["yes", "no", "skip"],
        Asks::For { .. } => &["skip"],
        _ if step.guards() => &["yes", "no"],
        _ => &["yes", "no", "skip"],
    }
}

fn question(check: &Check, step: &Step, reply: &Reply<'_>, shortly: bool) -> String {
    let voice = &reply.voice;
    let (what, answers) = if check.mending {
        let did = voice.word(&format!("did-{}", step.cause));
        let works = voice.word(&format!("mended-{}", check.fault));
        let args = [("what", did.into()), ("words", works.into())];
        (voice.say("walk-mended-now", &args), "walk-answer-word")
    } else {
        let answers = match step.asks {
            Asks::For { .. } => "walk-answer-number",
            _ if step.guards() => "walk-answer-safe",
            _ => "walk-answer-word",
        };
        let what = voice.word(step.key);
        let what = if shortly { last_question(&what) } else { what };
        (what, answers)
    };
    let what = format!("{what} {}", voice.word(answers));
    let name = voice.fault(check.steps_of);
    voice.say(
        "walk-step",
        &[
            ("unit", check.unit.as_str().into()),
            ("name", name.into()),
            ("count", Arg::Count(i64::from(check.step) + 1)),
            ("what", what.into()),
        ],
    )
}

/// Returns the last sentence of a text that asks; the whole where none does.
fn last_question(text: &str) -> String {
    let Some(end) = text.rfind('?') else {
        return text.to_owned();
    };
    let start = text[..end].rfind(['.', '?']).map_or(0, |at| at + 1);
    text[start..=end].trim().to_owned()
}

/// Goes back by one step, or to the question before it was asked whether that helped.
fn step_back(check: &mut Check) {
    let reads = step_of(check).is_some_and(|step| matches!(step.asks, Asks::For { .. }));
    if !std::mem::take(&mut check.mending) || reads {
        check.step = check.step.saturating_sub(1);
    }
}

fn advance(check: &mut Check) {
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
