//! Guided checks: one step at a time, from a fault to its end in a fix, a task or a licensed trade.
//!
//! The steps are data of the rules. This module holds a message against the step that waits, says what the answer rules
//! out or finds, and asks the next. The place is kept with the person, so two people never cross and a restart loses
//! nothing.

mod answers;
mod ask;
mod bare;
mod begin;
mod beside;
mod culprit;
mod danger;
mod held;
pub(super) mod icy;
mod lately;
mod leave;
mod left_off;
mod logged;
mod no_source;
mod number;
mod over;
mod phrase;
mod plug_in;
mod report;
mod round;
mod said;
pub(super) mod stand;
mod take;
mod thing;
mod trips;
mod values;
mod verdict;

use chrono::TimeDelta;
use round::Round;

pub(super) use answers::Answers;
pub(super) use culprit::keep_off;
pub(super) use danger::{hold_back, hold_faults, list_standing};
pub(super) use held::{held, hold};
pub(super) use leave::{end_tasks, not_for_the_road, tell_left_anyway};
pub(super) use plug_in::tell as tell_plug_in;
use said::Said;
pub(super) use take::Took;
use take::names_its_unit;
pub(super) use take::{answers_in_own_words, take};
pub(super) use thing::asked as asks_of_a_thing;
pub(super) use values::{Values, written_out};

use super::answer::Reply;
use super::receive::Hearing;
use super::situate::Case;
use crate::book::Record;
use crate::dialogue::{CHECK_LASTS, Check, Talk};
use crate::heard::{Ask, CommandName};
use crate::rules::{Asks, Step, course_steps, steps};

/// A message of fewer words is an answer that was not read, and tells of nothing.
const TELLING: usize = 3;
/// What was done this short a time ago is not asked again.
const LATELY: TimeDelta = TimeDelta::hours(6);
/// A reading this fresh answers the step that asks for it.
const FRESH: TimeDelta = TimeDelta::minutes(30);
/// A reading so short a time before a trouble was told is of that trouble.
const JUST_BEFORE: TimeDelta = TimeDelta::minutes(10);
/// A reading so young is told without its age.
const JUST_NOW: TimeDelta = TimeDelta::minutes(3);
/// A bare yes so long after a question that guards somebody says nothing of now.
const GUARD_LASTS: TimeDelta = TimeDelta::minutes(30);
/// Resets of a breaker or GFCI in all.
const RESETS: u32 = 2;
/// How often a step that guards somebody is asked again of who would skip it; then the check is left to somebody else.
const PASSED: u32 = 2;
/// Checks that one person can have open.
const OPEN_AT_MOST: usize = 4;

/// What an answer means for a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    RuledOut,
    Found,
    Mended,
    /// It was done or tried: ask whether it helped.
    Tried,
    Skipped,
    /// It guards somebody and is not skipped.
    Guarded,
    /// It did not answer the question.
    Again,
}

fn outcome(check: &Check, step: &Step, said: Said) -> Outcome {
    if check.mending {
        return match said {
            Said::Yes | Said::Mended => Outcome::Mended,
            Said::No | Said::Skip | Said::DidAll => Outcome::Skipped,
            _ => Outcome::Again,
        };
    }
    match (said, step.asks) {
        (Said::Mended, _) => Outcome::Mended,
        (Said::Skip | Said::DidAll, _) if step.guards() => Outcome::Guarded,
        (Said::Skip | Said::DidAll, _) => Outcome::Skipped,
        (Said::Yes, Asks::IfGood) => Outcome::RuledOut,
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

/// Returns the steps that a check goes through.
fn course_of(check: &Check) -> &'static [Step] {
    match check.course {
        Some(course) => course_steps(course),
        None => steps(check.steps_of),
    }
}

fn step_of(check: &Check) -> Option<&'static Step> {
    course_of(check).get(check.step as usize)
}

/// Tells whether the step of a check that waits asks for a number.
pub(super) fn asks_for_a_number(talk: &Talk) -> bool {
    let step = talk.checks.last().and_then(step_of);
    step.is_some_and(|step| matches!(step.asks, Asks::For { .. }))
}

/// Carries the sender's checks on: says what the answer came to, starts checks for what is newly wrong, asks the next step.
pub(super) fn go_on(
    hearing: &Hearing<'_>,
    cases: &[Case],
    took: Option<&Took>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if hearing.inbound.replaces.is_some() {
        return;
    }
    plug_in::tell(cases, reply);
    no_source::tell(cases, reply);
    let mut round = Round {
        hearing,
        cases,
        checks: hearing.talk.checks.clone(),
        ended: Vec::new(),
        ruled_out: Vec::new(),
    };
    let at_hand = round.checks.last().cloned();
    round
        .checks
        .retain(|check| hearing.now - check.asked <= CHECK_LASTS);
    if round.is_dropped(took, reply) {
        reply.checks = Some(round.checks);
        return;
    }
    if let Some(over) = took.and_then(|took| took.over.as_ref()) {
        round.checks.push(over.hand_over(hearing, reply, records));
    }
    if let Some(took) = took {
        round.count_resets(took.resets);
        match &took.culprit {
            Some(load) => {
                if let Some(check) = round.checks.pop() {
                    culprit::found(hearing, &check, load, reply, records);
                    round.ended.push((check.unit, check.fault));
                }
            }
            None => round.take_all(took, reply),
        }
    }
    round.drop_what_is_over(reply);
    let started = round.start(reply);
    reply.walked = took.is_some() || started;
    let before = at_hand.filter(|_| took.is_some() && !started);
    round.carry_on(took, before.as_ref(), reply);
    danger::tell_what_waited(hearing, &round.checks, reply);
    reply.checks = Some(round.checks);
}

impl Round<'_> {
    /// Drops the check at hand where the message orders that; false where it does not.
    fn is_dropped(&mut self, took: Option<&Took>, reply: &mut Reply<'_>) -> bool {
        let hearing = self.hearing;
        let order = hearing.heard.command.as_ref();
        let dropped = order.is_some_and(|order| order.name == CommandName::NeverMind);
        let stopped = took.is_some_and(|took| took.is(Said::Stop));
        if !dropped && !stopped {
            return false;
        }
        if (stopped || hearing.talk.question.is_none())
            && let Some(check) = self.checks.pop()
        {
            let name = reply.voice.fault(check.fault);
            reply.say(
                "walk-dropped",
                &[("unit", check.unit.as_str().into()), ("name", name.into())],
            );
        }
        true
    }

    /// Asks the step that is next, or reminds of the one that waits; nothing beside the first words for somebody in danger.
    fn carry_on(&mut self, took: Option<&Took>, before: Option<&Check>, reply: &mut Reply<'_>) {
        let hearing = self.hearing;
        let asked = hearing.heard.ask.as_ref();
        let wants_more = matches!(asked, Some(Ask::Status { .. } | Ask::Why { .. }));
        let asked = asked.and_then(|ask| super::answer::unit_of(hearing, ask));
        let here = |check: &Check| wants_more && asked.as_ref() == Some(&check.unit);
        let interrupted = |check: &Check| danger::stands_between(hearing, check);
        if self.waits_for_people(reply) || self.checks.last().is_some_and(interrupted) {
            self.checks.iter_mut().for_each(|check| check.waits = true);
        } else if took.is_none() && thing::tell(hearing, reply) {
            self.ask(reply, before, true);
        } else if reply.walked || self.checks.last().is_some_and(here) {
            let shortly = took.is_some_and(|took| took.is(Said::Unclear));
            if matches!(hearing.heard.ask, Some(Ask::Why { .. })) {
                self.say_what_for(reply);
            }
            // where somebody is to be kept safe the question alone comes again, unless more was told than "ok"
            let step = self.checks.last().and_then(step_of);
            let guards = step.is_some_and(Step::guards) && !tells_more(hearing, reply);
            if shortly && !guards && reply.findings.is_empty() {
                reply.say("walk-unread", &[]);
            }
            if let Some(check) = at_hand_before(before, took) {
                let age = reply.voice.age(check.asked);
                reply.say("walk-paused", &[("age", age.into())]);
            }
            self.ask(reply, before, shortly);
        } else {
            self.remind(reply);
            if self.checks.is_empty() {
                left_off::tell(hearing, reply);
            }
            if self.checks.is_empty() && hearing.talk.round.is_none() {
                answers_without_a_check(hearing, reply);
            }
        }
    }
}

/// Tells whether a message says more than a word or two and nothing is answered to it: that it was not read is said.
pub(super) fn tells_more(hearing: &Hearing<'_>, reply: &Reply<'_>) -> bool {
    reply.lines.is_empty() && hearing.text.split_whitespace().count() >= TELLING
}

/// Answers who asks where a check stands, or what was asked, while none is open: with the question that waits, if any.
fn answers_without_a_check(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let asks = hearing.desk.answers.asks_for_the_question(hearing.text);
    let answered = !reply.findings.is_empty() || !reply.first.is_empty() || !reply.lines.is_empty();
    if !asks || answered || !hearing.heard.entries.is_empty() || hearing.heard.command.is_some() {
        return;
    }
    match hearing.talk.question_at(hearing.inbound.at) {
        Some(question) => reply.asks = Some(question.about.clone()),
        None => reply.say("walk-none", &[]),
    }
}

/// Returns the check whose question was asked too long ago for its answer to count.
fn at_hand_before<'a>(before: Option<&'a Check>, took: Option<&Took>) -> Option<&'a Check> {
    before.filter(|_| took.is_some_and(|took| took.is(Said::Paused)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::{Fault, Language};
    use crate::reply::Replies;
    use crate::rules::Then;

    #[test]
    fn every_step_has_its_texts_in_both_languages() {
        let replies = Replies::new();
        let mut missing = Vec::new();
        let faults = Fault::ALL.iter().filter(|fault| !steps(**fault).is_empty());
        for key in faults.map(|fault| format!("mended-{fault}")) {
            for language in [Language::En, Language::Es] {
                missing
                    .extend((!replies.has(language, &key)).then(|| format!("{language}: {key}")));
            }
        }
        let courses = course_steps(crate::dialogue::Course::Flicker);
        let all = Fault::ALL.iter().flat_map(|fault| steps(*fault));
        for step in all.chain(courses) {
            let mut keys = vec![step.key.to_owned()];
            let unspoken = matches!(step.then, Then::Report(_));
            if !unspoken && step.then != Then::Hold {
                keys.push(format!("cause-{}", step.cause));
            }
            if !unspoken && step.asks != Asks::IfMended {
                keys.push(format!("settles-{}", step.cause));
            }
            if step.then == Then::Mend {
                keys.push(format!("did-{}", step.cause));
            }
            for language in [Language::En, Language::Es] {
                let lacks = keys.iter().filter(|key| !replies.has(language, key));
                missing.extend(lacks.map(|key| format!("{language}: {key}")));
            }
        }
        assert!(missing.is_empty(), "{missing:?}");
    }
}
