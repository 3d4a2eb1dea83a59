//! Guided checks: one step at a time, from a fault to its end in a fix, a task or a licensed trade.
//!
//! The steps are data of the rules. This module holds a message against the step that waits, says what the answer rules
//! out or finds, and asks the next. The place is kept with the person, so two people never cross and a restart loses
//! nothing.

mod plug_in;
mod said;
pub(super) mod stand;

use chrono::TimeDelta;

pub(super) use said::{Answers, Said};

use super::answer::Reply;
use super::receive::Hearing;
use super::settle::Settled;
use super::situate::Case;
use crate::book::UnitState;
use crate::dialogue::{CHECK_LASTS, Check, STEP_LASTS};
use crate::finding::{FindingId, Level, TaskKind};
use crate::heard::{Amps, Ask, CommandName, Entry, Event, Fault, ReadingKey, Taps, UnitName};
use crate::outlook::runs_on_tank;
use crate::reply::Arg;
use crate::rules::{Asks, Sought, Step, Then, WaterFrom, last_resort, steps};
use crate::situation::Occasion;

/// What was done this short a time ago is not asked again.
const LATELY: TimeDelta = TimeDelta::hours(6);
/// A reading this fresh answers the step that asks for it.
const FRESH: TimeDelta = TimeDelta::minutes(30);
/// Resets of a breaker or GFCI in all.
const RESETS: u32 = 2;
/// Checks that one person can have open.
const OPEN_AT_MOST: usize = 4;

/// What a message says to the step that waits.
pub(super) struct Took {
    pub(super) unit: UnitName,
    said: Said,
}

/// Holds a message against the sender's open step. What it reports by that, a reading, a fix or a person hurt, joins what
/// the message reports.
pub(super) fn take(hearing: &mut Hearing<'_>, settled: &mut Settled) -> Option<Took> {
    let check = hearing.talk.checks.last()?.clone();
    let at = hearing.inbound.at;
    if hearing.inbound.replaces.is_some() || at < check.asked || at - check.asked > CHECK_LASTS {
        return None;
    }
    // so does a step of setting up or leaving that was asked later
    if hearing
        .talk
        .round
        .as_ref()
        .is_some_and(|round| round.asked > check.asked)
    {
        return None;
    }
    // a newer question of another kind takes the bare answer
    let rival = hearing
        .talk
        .question_at(at)
        .filter(|question| question.asked > check.asked);
    if rival.is_some() || names_another(hearing, settled, &check) {
        return None;
    }
    let step = step_of(&check)?;
    adopt(settled, &check, step);
    let told = settled
        .reports
        .iter()
        .find(|(unit, ..)| *unit == check.unit)
        .map(|(.., entry)| entry);
    let said = hearing
        .desk
        .answers
        .read(&hearing.heard, hearing.text, &check, step, told)?;
    let said = match said {
        Said::Next if check.waits => Said::Resume,
        Said::Next => Said::Skip,
        // long after the question a bare word may mean anything
        Said::Number(_) | Said::Mended | Said::Resume => said,
        _ if at - check.asked > STEP_LASTS => Said::Resume,
        said => said,
    };
    if said != Said::Resume {
        // "open" and "closed" mean a valve here, unless the step asks for the trailer
        let means_it = step.tells.is_some();
        let skip = said == Said::Skip;
        settled.reports.retain(|(unit, _, entry)| {
            *unit != check.unit || !(skip || !means_it && said::of_opening(entry))
        });
        hearing.heard.unclear.clear();
        hearing.heard.set_aside.clear();
        settled.from_context = None;
    }
    report(settled, &check, step, said, at);
    Some(Took {
        unit: check.unit,
        said,
    })
}

/// Tells whether the message reports on another trailer, or asks or orders something.
fn names_another(hearing: &Hearing<'_>, settled: &Settled, check: &Check) -> bool {
    let elsewhere = settled.reports.iter().any(|(unit, ..)| *unit != check.unit);
    let advice = matches!(&hearing.heard.ask, None | Some(Ask::Status { unit: None }));
    elsewhere
        || !advice
        || hearing.heard.command.is_some()
        || !hearing.heard.plans.is_empty()
            && hearing.heard.answer.is_none()
            && !hearing.desk.answers.resumes(hearing.text)
}

/// Takes a report without a trailer for the one at hand, where the step asks for what it tells.
fn adopt(settled: &mut Settled, check: &Check, step: &Step) {
    let Asks::For {
        what: Sought::Reading(key),
        ..
    } = step.asks
    else {
        return;
    };
    let fits = settled
        .homeless
        .as_ref()
        .is_some_and(|entry| entry.readings.value(key).is_some());
    if fits && let Some(mut entry) = settled.homeless.take() {
        entry.unit = Some(check.unit.clone());
        settled
            .reports
            .push((check.unit.clone(), check.asked, entry));
    }
}

/// Adds to the reports what an answer says beyond them.
fn report(
    settled: &mut Settled,
    check: &Check,
    step: &Step,
    said: Said,
    at: chrono::DateTime<chrono::Utc>,
) {
    let mut entry = Entry {
        unit: Some(check.unit.clone()),
        ..Entry::default()
    };
    match outcome(check, step, said) {
        Outcome::Mended => entry.cleared.push(check.fault),
        Outcome::RuledOut => entry.events.extend(step.tells),
        Outcome::Found => {
            if let Then::Report(fault) = step.then {
                entry.faults.push(fault);
            }
        }
        _ => {}
    }
    if let (Said::Number(number), Asks::For { what, .. }) = (said, step.asks) {
        match what {
            Sought::Reading(key) => {
                entry.readings.set(key, number);
                if key == ReadingKey::PressurePsi {
                    entry.readings.taps = Some(Taps::Shut);
                }
            }
            Sought::Amps => entry.readings.amps.push(Amps {
                circuit: None,
                amps: number,
            }),
            Sought::Plain => {}
        }
    }
    let known = settled
        .reports
        .iter_mut()
        .find(|(unit, ..)| *unit == check.unit);
    match known {
        Some((.., told)) => {
            // dizzy from a shock is no gas
            if entry.faults.contains(&Fault::PersonHurt) {
                told.faults.retain(|fault| *fault != Fault::GasIllness);
            }
            let reads_already = !told.readings.is_empty();
            told.cleared.extend(
                entry
                    .cleared
                    .iter()
                    .filter(|fault| !told.cleared.contains(fault))
                    .copied()
                    .collect::<Vec<_>>(),
            );
            told.faults.extend(&entry.faults);
            told.events.extend(
                entry
                    .events
                    .iter()
                    .filter(|event| !told.events.contains(event))
                    .copied()
                    .collect::<Vec<_>>(),
            );
            if reads_already {
                told.readings.taps = told.readings.taps.or(entry.readings.taps);
            } else {
                told.readings = entry.readings;
            }
        }
        None if entry.is_empty() => {}
        None => settled.reports.push((check.unit.clone(), at, entry)),
    }
}

/// What an answer means for a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    RuledOut,
    Found,
    Mended,
    /// It was done or tried: ask whether it helped.
    Tried,
    Skipped,
    /// It did not answer the question.
    Again,
}

fn outcome(check: &Check, step: &Step, said: Said) -> Outcome {
    let held = step.then == Then::Hold;
    if check.mending {
        return match said {
            Said::Yes | Said::Mended => Outcome::Mended,
            Said::No | Said::Skip | Said::DidAll | Said::Done => Outcome::Skipped,
            _ => Outcome::Again,
        };
    }
    match (said, step.asks) {
        (Said::Mended, _) => Outcome::Mended,
        (Said::Skip | Said::DidAll, _) if held => Outcome::Found,
        (Said::Skip | Said::DidAll, _) => Outcome::Skipped,
        (Said::Yes | Said::Done, Asks::IfGood) => Outcome::RuledOut,
        (Said::No, Asks::IfGood) => Outcome::Found,
        (Said::No, Asks::IfBad) => Outcome::RuledOut,
        (Said::Yes, Asks::IfBad) => Outcome::Found,
        (Said::Yes, Asks::IfMended) => Outcome::Mended,
        (Said::No, Asks::IfMended) => Outcome::RuledOut,
        (Said::Done, Asks::IfMended) => Outcome::Tried,
        (Said::Number(number), Asks::For { least, most, .. }) => {
            if (least..=most).contains(&number) {
                Outcome::RuledOut
            } else {
                Outcome::Found
            }
        }
        _ => Outcome::Again,
    }
}

fn step_of(check: &Check) -> Option<&'static Step> {
    steps(check.steps_of).get(check.step as usize)
}

/// Carries the sender's checks on: says what the answer came to, starts checks for what is newly wrong, asks the next step.
pub(super) fn go_on(
    hearing: &Hearing<'_>,
    cases: &[Case],
    took: Option<&Took>,
    reply: &mut Reply<'_>,
) {
    if hearing.inbound.replaces.is_some() {
        return;
    }
    plug_in::tell(cases, reply);
    let mut round = Round {
        hearing,
        cases,
        checks: hearing.talk.checks.clone(),
    };
    let at_hand = round.checks.last().cloned();
    round
        .checks
        .retain(|check| hearing.now - check.asked <= CHECK_LASTS);
    let dropped = hearing
        .heard
        .command
        .as_ref()
        .is_some_and(|order| order.name == CommandName::NeverMind);
    if dropped {
        if hearing.talk.question.is_none()
            && let Some(check) = round.checks.pop()
        {
            let name = reply.voice.fault(check.fault);
            reply.say(
                "walk-dropped",
                &[("unit", check.unit.as_str().into()), ("name", name.into())],
            );
        }
        reply.checks = Some(round.checks);
        return;
    }
    if let Some(took) = took {
        round.answer(took.said, reply);
    }
    round.drop_what_is_over(reply);
    let started = round.start(reply);
    let asked = hearing.heard.ask.as_ref();
    let asked = asked.and_then(|ask| super::answer::unit_of(hearing, ask));
    let here = |check: &Check| {
        cases.iter().any(|case| case.unit == check.unit) || asked.as_ref() == Some(&check.unit)
    };
    reply.walked = took.is_some() || started;
    if round.waits_for_people(reply) {
        // nothing is asked beside the first words for somebody in danger
        round.checks.iter_mut().for_each(|check| check.waits = true);
    } else if reply.walked || round.checks.last().is_some_and(here) {
        let before = at_hand.filter(|_| took.is_some() && !started);
        round.ask(reply, before.as_ref());
    } else {
        round.remind(reply);
    }
    reply.checks = Some(round.checks);
}

/// One turn of a person's checks.
struct Round<'a> {
    hearing: &'a Hearing<'a>,
    cases: &'a [Case],
    checks: Vec<Check>,
}

impl Round<'_> {
    /// Says what an answer came to and moves on.
    fn answer(&mut self, said: Said, reply: &mut Reply<'_>) {
        let Some(mut check) = self.checks.pop() else {
            return;
        };
        let Some(step) = step_of(&check) else {
            return;
        };
        let outcome = outcome(&check, step, said);
        if step.resets
            && !check.mending
            && matches!(
                outcome,
                Outcome::RuledOut | Outcome::Found | Outcome::Mended
            )
        {
            check.resets += 1;
        }
        if self.settle(&mut check, step, outcome, reply) {
            if said == Said::DidAll && outcome == Outcome::Skipped {
                reply.say("walk-skipped", &[]);
                skip_what_needs_nothing(&mut check);
            }
            self.checks.push(check);
        }
    }

    /// Tells whether the reply tells of a danger that has no check, or one that is not the check at hand.
    fn waits_for_people(&self, reply: &Reply<'_>) -> bool {
        let at_hand = self.checks.last();
        let shocked = at_hand.is_some_and(|check| check.fault == Fault::Shock);
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
                self.call(check, kind, reply);
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
    fn call(&self, check: &Check, kind: TaskKind, reply: &mut Reply<'_>) {
        let key = match kind {
            TaskKind::Electrician => "walk-calls-electrician",
            TaskKind::Plumber => "walk-calls-plumber",
            _ => "walk-calls-repair",
        };
        reply.say(key, &[("unit", check.unit.as_str().into())]);
        let finding = Some(FindingId::of_fault(check.fault));
        reply
            .board
            .open(&check.unit, kind, None, TimeDelta::zero(), finding);
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
    fn drop_what_is_over(&mut self, reply: &mut Reply<'_>) {
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
    fn start(&mut self, reply: &mut Reply<'_>) -> bool {
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

    /// Asks the step at hand, past those that need no asking; ends the check where none is left.
    fn ask(&mut self, reply: &mut Reply<'_>, before: Option<&Check>) {
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
                reply.step = step_of(&check).map(|step| question(&check, step, reply));
                self.checks.push(check);
                return;
            }
        }
    }

    /// Reminds of the check at hand, once, after a message on something else.
    fn remind(&mut self, reply: &mut Reply<'_>) {
        let asks = matches!(self.hearing.heard.ask, None | Some(Ask::Status { .. }));
        let silent = self.cases.is_empty()
            && self.hearing.heard.ask.is_none()
            && self.hearing.heard.command.is_none()
            && self.hearing.heard.plans.is_empty();
        if let Some(check) = self.checks.last_mut().filter(|check| !check.waits)
            && asks
        {
            check.waits = true;
            if silent && let Some(step) = step_of(check) {
                reply.say("walk-unread", &[]);
                reply.step = Some(question(check, step, reply));
                return;
            }
            let name = reply.voice.fault(check.fault);
            let args = [
                ("unit", Arg::from(check.unit.as_str())),
                ("name", name.into()),
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
                self.call(check, last_resort(check.fault), reply);
                return false;
            };
            if step.water_from.is_some_and(|wanted| wanted != from) {
                advance(check);
                continue;
            }
            if step.resets && check.resets.max(self.resets_lately(&check.unit)) >= RESETS {
                let id = FindingId::of_fault(check.fault);
                for finding in &mut reply.findings {
                    if finding.id == id && finding.unit.as_ref() == Some(&check.unit) {
                        finding.action = "trouble-trips-again".into();
                    }
                }
                reply.say("walk-two-resets", &[]);
                self.call(check, TaskKind::Electrician, reply);
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

/// Puts the question of a step into words, with the answers it takes.
fn question(check: &Check, step: &Step, reply: &Reply<'_>) -> String {
    let (what, answers) = if check.mending {
        ("walk-mended-now", "walk-answer-word")
    } else {
        let answers = match step.asks {
            Asks::For { .. } => "walk-answer-number",
            _ if step.then == Then::Hold => "walk-answer-safe",
            _ => "walk-answer-word",
        };
        (step.key, answers)
    };
    let what = format!("{} {}", reply.voice.word(what), reply.voice.word(answers));
    let name = reply.voice.fault(check.steps_of);
    reply.voice.say(
        "walk-step",
        &[
            ("unit", check.unit.as_str().into()),
            ("name", name.into()),
            ("count", Arg::Count(i64::from(check.step) + 1)),
            ("what", what.into()),
        ],
    )
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::Language;
    use crate::reply::Replies;

    #[test]
    fn every_step_has_its_texts_in_both_languages() {
        let replies = Replies::new();
        let mut missing = Vec::new();
        for step in Fault::ALL.iter().flat_map(|fault| steps(*fault)) {
            let mut keys = vec![step.key.to_owned()];
            let unspoken = matches!(step.then, Then::Report(_));
            if !unspoken && step.then != Then::Hold {
                keys.push(format!("cause-{}", step.cause));
            }
            if !unspoken && step.asks != Asks::IfMended {
                keys.push(format!("settles-{}", step.cause));
            }
            for language in [Language::En, Language::Es] {
                let lacks = keys.iter().filter(|key| !replies.has(language, key));
                missing.extend(lacks.map(|key| format!("{language}: {key}")));
            }
        }
        assert!(missing.is_empty(), "{missing:?}");
    }
}
