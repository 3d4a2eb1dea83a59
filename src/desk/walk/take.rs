//! One message held against the step of a check that waits for its sender.

use super::super::receive::Hearing;
use super::super::settle::{self, Settled};
use super::answers::Answers;
use super::logged::report;
use super::said::{self, Message, Said};
use super::trips::{dizzy_from_a_shock, locked_in_is_out, same_trip};
use super::{GUARD_LASTS, Outcome, outcome, over, phrase, step_of};
use crate::dialogue::{CHECK_LASTS, Check, STEP_LASTS};
use crate::fleet::Role;
use crate::heard::{Ask, Entry, Event, Fault, Language, PlanKind, UnitName};
use crate::rules::{Asks, Sought, Step, steps};

/// What a message says to the step that waits, and to those after it.
pub(in crate::desk) struct Took {
    pub(super) said: Vec<Said>,
    /// The load that was found at fault.
    pub(super) culprit: Option<String>,
    /// How many resets the message tells of.
    pub(super) resets: u32,
    /// The check of another person that is taken over.
    pub(super) over: Option<over::Over>,
}

/// Holds a message against the sender's open step. What it reports by that, a reading, a fix or a person hurt, joins what
/// the message reports.
pub(in crate::desk) fn take(hearing: &mut Hearing<'_>, settled: &mut Settled) -> Option<Took> {
    same_trip(hearing, settled);
    locked_in_is_out(hearing, settled);
    if let Some(over) = over::from_another(hearing) {
        return Some(Took {
            said: Vec::new(),
            culprit: None,
            resets: 0,
            over: Some(over),
        });
    }
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
    if rival.is_some() || asked_after(hearing, &check) {
        return None;
    }
    let step = step_of(&check)?;
    // "stop check" holds a word that the reader may take for more
    let orders = hearing.desk.answers.orders(hearing.text, &check);
    if orders.is_none() && names_another(hearing, settled, &check) {
        return None;
    }
    dizzy_from_a_shock(hearing, settled, &check);
    adopt(settled, &check, step);
    let told = told_of(settled, &check).cloned();
    // "12 open" is a report, "both open" an answer
    let of_the_unit = told
        .as_ref()
        .is_some_and(|entry| !entry.is_empty() && said::of_opening(entry));
    if of_the_unit && names_its_unit(hearing) {
        return None;
    }
    let question = questions(hearing, step);
    let on_site = hearing.member.role != Role::Dispatcher;
    let message = Message {
        heard: &hearing.heard,
        text: hearing.text,
        told: told.as_ref(),
        question: &question,
        after: steps(check.steps_of)
            .get(check.step as usize + 1..)
            .unwrap_or_default(),
        fresh: !check.waits && on_site && at - check.asked <= GUARD_LASTS,
    };
    let answers = &hearing.desk.answers;
    let culprit = culprit(answers, &message, &check, step);
    let said = match &culprit {
        Some(_) => Said::No,
        None => answers.read(&message, &check, step)?,
    };
    let said = match said {
        // long after the question a bare word may mean anything
        Said::Number(_) | Said::Mended | Said::Resume | Said::Stop | Said::Back | Said::Tripped => {
            said
        }
        _ if at - check.asked > STEP_LASTS => Said::Resume,
        // thanks and the like, after a word on something else
        Said::Unclear if check.waits => return None,
        said => said,
    };
    settled.from_context = None;
    let mut all = vec![said];
    if culprit.is_none() {
        all.extend(read_on(hearing, &message, &check, step, said));
    }
    let resets = answers.resets_told(hearing.text);
    if orders.is_some() {
        // "what?" asks for the step, not how things stand
        hearing.heard.ask = None;
        hearing.heard.command = None;
    }
    let aside = matches!(
        said,
        Said::Resume | Said::Unclear | Said::Back | Said::Stop | Said::Tripped
    );
    if !aside || orders.is_some() {
        // "open" and "closed" mean a valve here, unless the step asks for the trailer
        let means_it = steps(check.steps_of)
            .iter()
            .skip(check.step as usize)
            .take(all.len())
            .any(|step| step.tells.is_some());
        let skip = said == Said::Skip || orders.is_some();
        settled.reports.retain(|(unit, _, entry)| {
            *unit != check.unit || !(skip || !means_it && said::of_opening(entry))
        });
        hearing.heard.unclear.clear();
        hearing.heard.set_aside.clear();
    }
    if culprit.is_some() {
        // it was taken off for the test, and it stays off
        for (.., entry) in settled
            .reports
            .iter_mut()
            .filter(|(unit, ..)| *unit == check.unit)
        {
            entry.events.retain(|event| *event != Event::HeaterOff);
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
    }
    let mut place = check.clone();
    for said in &all {
        if let Some(step) = step_of(&place) {
            report(settled, &place, step, *said, at);
        }
        place.step += 1;
        place.mending = false;
    }
    Some(Took {
        said: all,
        culprit: culprit.map(str::to_owned),
        resets,
        over: None,
    })
}

/// Returns what a message reports on the trailer of the check.
fn told_of<'a>(settled: &'a Settled, check: &Check) -> Option<&'a Entry> {
    let mut reports = settled.reports.iter();
    let (.., entry) = reports.find(|(unit, ..)| *unit == check.unit)?;
    Some(entry)
}

/// Returns the question of a step in every language: its words say nothing against an answer.
fn questions(hearing: &Hearing<'_>, step: &Step) -> String {
    let desk = hearing.desk;
    let ask = |language| {
        let (fleet, now) = (&hearing.fleet, hearing.now);
        let voice = desk
            .replies
            .voice(language, fleet.style, fleet.time_zone, now);
        voice.word(step.key)
    };
    [Language::En, Language::Es].map(ask).join(" ")
}

/// Tells whether the bot asked this person after their safety since the step was asked: a bare word answers that.
fn asked_after(hearing: &Hearing<'_>, check: &Check) -> bool {
    let clock = hearing.desk.book.ahead().alone(&hearing.member.id);
    clock.is_some_and(|clock| clock.asked.is_some_and(|asked| asked > check.asked))
}

/// Finds the load at fault: the one without which it holds, or with which it trips.
fn culprit<'a>(
    answers: &'a Answers,
    message: &Message<'_>,
    check: &Check,
    step: &Step,
) -> Option<&'a str> {
    // a breaker that holds with less on it was overloaded, and no load is at fault
    if check.fault != Fault::GfciTrip || phrase::is_question(message.text) {
        return None;
    }
    let load = answers.load(message.text)?;
    let held = answers.holds(message.text);
    let without = answers.takes_off(message.text) && held == Some(true);
    let with = step.key == "step-plug-back"
        && held != Some(true)
        && answers.names_a_trip(step, message.text);
    (without || with).then_some(load)
}

/// Reads a message on, past the step it answers: "power is off, nobody hurt, unit closed".
fn read_on(
    hearing: &Hearing<'_>,
    message: &Message<'_>,
    check: &Check,
    step: &Step,
    said: Said,
) -> Vec<Said> {
    let mut read = Vec::new();
    let mut before = vec![step];
    let mut outcome = outcome(check, step, said);
    let mut place = check.clone();
    while outcome == Outcome::RuledOut {
        place.step += 1;
        place.mending = false;
        let Some(next) = step_of(&place) else { break };
        let Some(said) = hearing.desk.answers.reads_on(message, &before, next) else {
            break;
        };
        outcome = self::outcome(&place, next, said);
        read.push(said);
        before.push(next);
    }
    read
}

/// Tells whether the message names the trailer it reports on.
pub(super) fn names_its_unit(hearing: &Hearing<'_>) -> bool {
    let mut entries = hearing.heard.entries.iter();
    entries.any(|entry| entry.unit.is_some())
}

/// Tells whether the message speaks of another trailer, or asks or orders something.
fn names_another(hearing: &Hearing<'_>, settled: &Settled, check: &Check) -> bool {
    let elsewhere = settled.reports.iter().any(|(unit, ..)| *unit != check.unit);
    let known = |name: &UnitName| settle::known(&hearing.fleet, name);
    let mut named = hearing.heard.named.iter().filter_map(known);
    let other = named.any(|unit| *unit != check.unit);
    let advice = matches!(&hearing.heard.ask, None | Some(Ask::Status { unit: None }));
    elsewhere
        || other
        || !advice
        || hearing.heard.command.is_some()
        || hearing
            .heard
            .plans
            .iter()
            .any(|plan| plan.kind != PlanKind::Well)
            && hearing.heard.answer.is_none()
            && !hearing.desk.answers.resumes(hearing.text)
            && !hearing.desk.answers.is_plain(hearing.text)
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
