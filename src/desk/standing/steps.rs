//! Steps of leaving that no report tells of: chocks out, breakaway tested. Who said that they are done, and when.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::settle;
use crate::book::Record;
use crate::heard::{Event, Fault, UnitName};
use crate::rules;

/// Steps of leaving that no report tells of, by their codes.
const BY_WORD: [&str; 2] = ["chocks", "breakaway"];

/// Takes the steps of leaving that a message calls done in its own words: "breakaway tested, chocks out".
pub(in crate::desk) fn confirm(hearing: &Hearing<'_>, at_a_step: bool, reply: &mut Reply<'_>) {
    let said: Vec<&str> = told_done(hearing).collect();
    if said.is_empty() || hearing.heard.ask.is_some() || hearing.heard.command.is_some() {
        return;
    }
    let round = hearing.talk.round.as_ref().map(|round| round.unit.clone());
    let last = || {
        let unit = hearing.talk.unit_at(hearing.inbound.at)?;
        settle::known(&hearing.fleet, unit).cloned()
    };
    let Some(unit) = hearing.names().first().cloned().or(round).or_else(last) else {
        return;
    };
    for step in said {
        // the step that waits is answered by it
        let asked = hearing.talk.round.as_ref().map(|round| round.step.as_str());
        if at_a_step && asked == Some(step) {
            continue;
        }
        if step == "chocks" && stands_loose(hearing, &unit) {
            reply.findings.push(rules::chocks_out(&unit));
            continue;
        }
        reply.say(
            &format!("confirmed-{step}"),
            &[("unit", unit.as_str().into())],
        );
        reply.confirmed.push((unit.clone(), step.to_owned()));
    }
}

/// Returns the steps of leaving that a message calls done in its own words.
pub(in crate::desk) fn told_done(hearing: &Hearing<'_>) -> impl Iterator<Item = &'static str> {
    let phrases = &hearing.desk.phrases;
    // what is reported bad was tested and did not pass
    let mut faults = hearing.heard.entries.iter().flat_map(|entry| &entry.faults);
    let failed = faults.any(|fault| matches!(fault, Fault::BreakawayFault | Fault::BrakeFault));
    let told = BY_WORD
        .into_iter()
        .filter(move |step| !(failed && *step == "breakaway"));
    told.filter(|step| {
        let not = phrases.holds("confirm", &format!("not-{step}"), hearing.text);
        phrases.holds("confirm", step, hearing.text) && !not
    })
}

/// Tells whether a trailer stands on a site and nobody said that it is on the hook.
fn stands_loose(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let state = hearing.asked_about(unit).now;
    let on_site = state.stage().is_on_site();
    let hooks = [Event::Hitched, Event::Left];
    let mut told = hearing.heard.entries.iter();
    let hitched = told.any(|entry| entry.events.iter().any(|event| hooks.contains(event)));
    on_site && !hitched && state.holds(Event::Unhitched, &hooks)
}

/// Writes down the steps of leaving that were done in this turn.
pub(in crate::desk) fn keep_confirmed(
    hearing: &Hearing<'_>,
    reply: &Reply<'_>,
    records: &mut Vec<Record>,
) {
    for (unit, step) in &reply.confirmed {
        records.push(Record::Confirmed {
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            unit: unit.clone(),
            step: step.clone(),
        });
    }
}

/// Tells whether a step of leaving was done, by anybody, since the trailer last stood open or arrived.
pub(in crate::desk) fn is_confirmed(hearing: &Hearing<'_>, unit: &UnitName, step: &str) -> bool {
    let kept = hearing.desk.book.unit(unit);
    let stood = kept.and_then(|kept| {
        let state = kept.state();
        state.when(Event::Arrived).max(state.when(Event::InService))
    });
    hearing.desk.book.standing().is_confirmed(unit, step, stood)
}
