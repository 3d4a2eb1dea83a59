//! Guided checks: one step at a time, from a fault to its end in a fix, a task or a licensed trade.
//!
//! The steps are data of the rules. This module holds a message against the step that waits, says what the answer rules
//! out or finds, and asks the next. The place is kept with the person, so two people never cross and a restart loses
//! nothing.

mod plug_in;
mod round;
mod said;
pub(super) mod stand;

use chrono::TimeDelta;
use round::Round;

pub(super) use said::{Answers, Said, plain};

use super::answer::Reply;
use super::receive::Hearing;
use super::settle::Settled;
use super::situate::Case;
use crate::dialogue::{CHECK_LASTS, Check, STEP_LASTS};
use crate::heard::{Amps, Ask, CommandName, Entry, Fault, PlanKind, ReadingKey, Taps};
use crate::rules::{Asks, Sought, Step, Then, steps};

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
    // "12 open" is a report, "both open" an answer
    let of_the_unit = told.is_some_and(|entry| !entry.is_empty() && said::of_opening(entry));
    if of_the_unit && names_its_unit(hearing) {
        return None;
    }
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
    Some(Took { said })
}

/// Tells whether the message names the trailer it reports on.
fn names_its_unit(hearing: &Hearing<'_>) -> bool {
    let mut entries = hearing.heard.entries.iter();
    entries.any(|entry| entry.unit.is_some())
}

/// Tells whether the message reports on another trailer, or asks or orders something.
fn names_another(hearing: &Hearing<'_>, settled: &Settled, check: &Check) -> bool {
    let elsewhere = settled.reports.iter().any(|(unit, ..)| *unit != check.unit);
    let advice = matches!(&hearing.heard.ask, None | Some(Ask::Status { unit: None }));
    elsewhere
        || !advice
        || hearing.heard.command.is_some()
        || hearing
            .heard
            .plans
            .iter()
            .any(|plan| plan.kind != PlanKind::Well)
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
