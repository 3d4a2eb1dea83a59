//! Setting up and leaving, one step at a time: the rules say which step is next, a bare answer reports it done.

use chrono::{DateTime, Utc};

use super::super::answer::Reply;
use super::super::inbound::Body;
use super::super::phrases::is_marked;
use super::super::receive::{self, Hearing, Texted};
use super::super::settle::Settled;
use super::super::situate::Case;
use super::super::standing;
use super::leave::{leave, tell_by_word};
use super::report::{events_of, number_of};
use super::said::{Said, of_opening};
use crate::book::Stage;
use crate::dialogue::{About, CHECK_LASTS, PAUSE, Round, Told, Way};
use crate::finding::{FactValue, Finding, FindingId, Level, Urgency};
use crate::heard::{CommandName, Entry, Event, Fault, ShortAnswer, UnitName};
use crate::reply::Arg;
use crate::rules;

/// Steps that guard somebody, beside what is to be mended before it is towed.
const GUARDS: &[&str] = &[
    "chock",
    "regulator",
    "waste",
    "fresh",
    "breakaway",
    "lights-checked",
];
/// Tells whether a step guards somebody: then it is never skipped.
pub(super) fn guards(step: &str) -> bool {
    GUARDS.contains(&step) || Fault::from_code(step).is_some()
}

/// Steps of leaving that no report tells of: a yes is kept with the person.
pub(super) const BY_WORD: &[&str] = &["chocks", "breakaway"];
/// Steps of setting up that no report tells of: a yes is kept with the round.
const SET_UP_BY_WORD: &[&str] = &["test", "photos"];

/// What a message says to the step that waits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::desk) enum Stood {
    Done,
    Not,
    Skipped,
    Again,
    /// Some is left in a tank, and two can be meant.
    WhichTank,
    /// A yes that may be said to a warning as well.
    Unsure,
    /// An answer so long after the question that it is asked again before it counts.
    Paused,
    Stopped,
}

/// Holds a bare message against the step that waits; what it reports joins the reports.
pub(in crate::desk) fn take(
    hearing: &mut Hearing<'_>,
    settled: &mut Settled,
    taken: bool,
) -> Option<Stood> {
    let round = waiting(hearing, taken)?;
    let at = hearing.inbound.at;
    let ordered = match asks_what_is_open(hearing, &round) {
        true => Some(Said::Resume),
        false => hearing.desk.answers.orders_on(hearing.text),
    };
    // what was told since, or another trailer talked about, is what a bare word answers
    let home = bring_home(hearing, settled, &round);
    if ordered.is_none() && !home && is_elsewhere(hearing, &round) {
        return None;
    }
    let some_left = leaves_some(hearing, settled, &round);
    let own = by_own_words(hearing, settled, &round);
    // "cant get it off" says more of the hose than that it cannot be told
    let ordered = ordered.filter(|said| {
        let less = *said == Said::Skip && own == Some(Said::No);
        !(less || *said == Said::DidAll && own == Some(Said::Yes))
    });
    let said = match ordered {
        Some(said) => {
            // "what's next" asks for the step, not how things stand
            hearing.heard.ask = None;
            hearing.heard.command = None;
            said
        }
        None if round.step == "photos" && shows(hearing, &round) => return Some(Stood::Done),
        None if some_left => Said::No,
        None if calls_it_empty(hearing, &round) => Said::Number(0.0),
        None if chocks_both_sides(hearing, &round) => {
            // "de los 2 lados" names no trailer
            settled
                .findings
                .retain(|found| found.id != FindingId::DeskUnknownUnit);
            Said::Yes
        }
        None => match own.or_else(|| level_told(hearing, &round)) {
            Some(said) => said,
            None => bare(hearing, settled, &round)?,
        },
    };
    // "on the ball, jacks up" says more than that step's own report
    let hitched = round.step == "jacks-up"
        && (settled.reports.iter()).any(|(.., entry)| entry.events.contains(&Event::Hitched));
    if ordered.is_none() && at - round.asked > PAUSE {
        hearing.heard.unclear.clear();
        return (said != Said::Unclear).then_some(Stood::Paused);
    }
    // "that's done" behind what nothing was read of may be said of that: the step is asked again
    if round.unread && guards(&round.step) && said == Said::Yes && !is_bare_yes(hearing) {
        settled.reports.clear();
        settled.from_context = None;
        hearing.heard.unclear.clear();
        return Some(Stood::Again);
    }
    // a yes to "stop, chock both sides" is no word that they are chocked
    if round.step == "chock" && said == Said::Yes && is_bare_yes(hearing) && warned(hearing, &round)
    {
        settled.reports.clear();
        settled.from_context = None;
        hearing.heard.unclear.clear();
        return Some(Stood::Unsure);
    }
    let entry = match said {
        Said::Number(number) => number_of(&round, number)?,
        Said::Yes => events_of(&round, false),
        Said::DidAll => events_of(&round, true),
        _ => Entry::default(),
    };
    settled.reports.clear();
    settled.homeless = None;
    settled
        .findings
        .retain(|finding| finding.id.topic() != "desk");
    settled.from_context = None;
    hearing.heard.unclear.clear();
    hearing.heard.set_aside.clear();
    let needs_a_number = entry.is_empty() && !BY_WORD.contains(&round.step.as_str());
    if !entry.is_empty() {
        let mut entry = entry;
        if hitched {
            entry.events.insert(0, Event::Hitched);
        }
        entry.unit = Some(round.unit.clone());
        settled.reports.push((round.unit.clone(), at, entry));
    }
    Some(match said {
        Said::Skip => Stood::Skipped,
        Said::Stop => Stood::Stopped,
        Said::No if some_left && round.step == "fresh" && just_pumped(hearing) => Stood::WhichTank,
        Said::No => Stood::Not,
        Said::Yes if SET_UP_BY_WORD.contains(&round.step.as_str()) => Stood::Done,
        Said::Yes | Said::DidAll | Said::Number(_) if !needs_a_number => Stood::Done,
        _ => Stood::Again,
    })
}

/// Tells whether the message asks what is still to be done before the trailer leaves.
fn asks_what_is_open(hearing: &Hearing<'_>, round: &Round) -> bool {
    let names = hearing.names();
    round.way == Way::Leaving
        && hearing.desk.phrases.holds("leave", "asks", hearing.text)
        && names.iter().all(|unit| *unit == round.unit)
}

/// Tells whether the message says that some is left in a tank which is asked to be empty, and not how much.
fn leaves_some(hearing: &Hearing<'_>, settled: &Settled, round: &Round) -> bool {
    let of_a_tank = matches!(round.step.as_str(), "waste" | "fresh");
    let ordered = hearing.heard.command.is_some() || is_marked(hearing.text);
    let named = hearing.text == hearing.written && super::names_its_unit(hearing);
    if !of_a_tank || round.way != Way::Leaving || ordered || named {
        return false;
    }
    let has = |list| hearing.desk.phrases.holds("pumped", list, hearing.written);
    // "still full" right after "pumped" may be said of either
    if round.step == "fresh" && has("still") && !has("of-fresh") && just_pumped(hearing) {
        return true;
    }
    let number = hearing.heard.answer.as_ref();
    let number = number.is_some_and(|answer| answer.number.is_some());
    !number && settled.reports.is_empty() && has("either-tank")
}

/// Tells whether the waste of the trailer that is packed up was called pumped out a moment ago.
fn just_pumped(hearing: &Hearing<'_>) -> bool {
    let message = Texted {
        desk: hearing.desk,
        fleet: &hearing.fleet,
        talk: &hearing.talk,
        heard: &hearing.heard,
        who: &hearing.member.id,
        text: hearing.text,
        at: hearing.inbound.at,
    };
    receive::just_pumped(&message).is_some()
}

/// Tells whether the message calls the tank that is asked for empty, and says no more.
fn calls_it_empty(hearing: &Hearing<'_>, round: &Round) -> bool {
    round.way == Way::Leaving
        && matches!(round.step.as_str(), "waste" | "fresh")
        && hearing.desk.phrases.is("leave", "empty", hearing.text)
}

/// Tells whether the message says that both sides are chocked, where that is asked, and no more.
fn chocks_both_sides(hearing: &Hearing<'_>, round: &Round) -> bool {
    round.step == "chock" && hearing.desk.phrases.is("leave", "both-sides", hearing.text)
}

/// Tells whether the message is a yes and no more.
fn is_bare_yes(hearing: &Hearing<'_>) -> bool {
    let answer = hearing.heard.answer.as_ref();
    answer.is_some_and(|answer| answer.word == Some(ShortAnswer::Yes))
}

/// Tells whether the sender was warned that the trailer is not chocked since the step before.
fn warned(hearing: &Hearing<'_>, round: &Round) -> bool {
    let of_it = |told: &Told| {
        told.id == FindingId::SiteNotChocked && told.unit.as_ref() == Some(&round.unit)
    };
    let lately = |told: &Told| hearing.now - told.at <= PAUSE;
    hearing
        .talk
        .told
        .iter()
        .any(|told| of_it(told) && lately(told))
}

/// Returns the round whose step waits for this message; none where something newer does.
fn waiting(hearing: &Hearing<'_>, taken: bool) -> Option<Round> {
    let round = hearing.talk.round.clone()?;
    let at = hearing.inbound.at;
    let late = at < round.asked || at - round.asked > CHECK_LASTS;
    let check = hearing.talk.checks.last();
    let check = check.is_some_and(|check| check.asked >= round.asked);
    if taken || late || check || hearing.inbound.replaces.is_some() {
        return None;
    }
    let answers = &hearing.desk.answers;
    // a newer question takes the bare answer, unless that can only be meant for the step
    let rival = hearing
        .talk
        .question_at(at)
        .filter(|question| question.asked > round.asked);
    let no_answer =
        |about: &About| matches!(about, About::WhatValue { .. }) && answers.is_done(hearing.text);
    let rival =
        rival.is_some_and(|rival| !answers.goes_on(hearing.text) && !no_answer(&rival.about));
    (!rival).then_some(round)
}

/// Tells whether another trailer was talked about since the step was asked, or something urgent told.
fn is_elsewhere(hearing: &Hearing<'_>, round: &Round) -> bool {
    let talked_of = hearing.talk.unit.as_ref();
    let elsewhere =
        talked_of.is_some_and(|(unit, since)| *unit != round.unit && *since > round.asked);
    let urgent = |told: &Told| told.at > round.asked && told.urgency == Urgency::Now;
    elsewhere || hearing.talk.told.iter().any(urgent)
}

/// Reads a bare message as an answer to the step.
fn bare(hearing: &Hearing<'_>, settled: &Settled, round: &Round) -> Option<Said> {
    let mut reports = settled.reports.iter();
    let told = reports.all(|(unit, _, entry)| *unit == round.unit && of_opening(entry));
    let heard = &hearing.heard;
    let asks = heard.ask.is_some() || heard.command.is_some() || settled.homeless.is_some();
    // "salgo ya" is no "ya"
    let goes = hearing.desk.phrases.holds("leave", "says", hearing.text);
    // "packing up 12" is no 12 % off level
    if !told || asks || goes || super::names_its_unit(hearing) || hearing.packs_up() {
        return None;
    }
    let answers = &hearing.desk.answers;
    let of = (round.unit.as_str(), key_of(round));
    answers.bare(heard, hearing.text, (of.0, &of.1), guards(&round.step))
}

/// Returns the name of the lists by which crews answer a step.
fn key_of(round: &Round) -> String {
    let way = match round.way {
        Way::SetUp => "set-up",
        Way::Leaving => "leave",
    };
    format!("{way}-{}", round.step)
}

/// Reads a message as an answer to the step that waits where its words are all of the step's own, whatever they report
/// elsewhere: "still on the ball" puts no trailer on the hook, "no traigo medidor" tells of no gauge.
fn by_own_words(hearing: &Hearing<'_>, settled: &Settled, round: &Round) -> Option<Said> {
    let answers = &hearing.desk.answers;
    let step_itself = events_of(round, false).events;
    let of_it = |entry: &Entry| {
        let tells = |event: &Event| step_itself.contains(event);
        let danger = |fault: &Fault| Fault::DANGERS.contains(fault);
        let told = entry.events.iter().any(tells);
        !told && entry.readings.is_empty() && !entry.faults.iter().any(danger)
    };
    let mut told = settled.reports.iter();
    let others = told.all(|(unit, _, entry)| *unit == round.unit && of_it(entry));
    let named = super::names_its_unit(hearing) || !hearing.heard.named.is_empty();
    let orders = hearing.heard.command.is_some() || hearing.packs_up();
    if !others || named || orders {
        return None;
    }
    let said = answers.by_own_words_alone(hearing.text, &key_of(round), guards(&round.step))?;
    // what guards somebody is done by the report of it, or a plain word
    let more = |(.., entry): &(UnitName, DateTime<Utc>, Entry)| {
        let gauge = entry.faults.iter().all(|fault| *fault == Fault::GaugeStuck);
        !entry.events.is_empty() || !entry.cleared.is_empty() || !gauge
    };
    let yes_to_more = said == Said::Yes && guards(&round.step) && settled.reports.iter().any(more);
    (!yes_to_more).then_some(said)
}

/// Tells whether a message answers the step that waits in words of its own: "meter is in the other truck" is of no truck.
pub(in crate::desk) fn is_answered(hearing: &Hearing<'_>, settled: &Settled) -> bool {
    let round = waiting(hearing, false);
    round.is_some_and(|round| by_own_words(hearing, settled, &round).is_some())
}

/// Gives what names no trailer to the one that is set up or leaves, where it answers the step that waits in words of its own:
/// "jacks are up" after a word on another trailer. Returns whether it did.
fn bring_home(hearing: &Hearing<'_>, settled: &mut Settled, round: &Round) -> bool {
    let elsewhere = settled
        .from_context
        .as_ref()
        .is_some_and(|unit| *unit != round.unit);
    let late = hearing.inbound.at - round.asked > PAUSE;
    let named = !hearing.heard.named.is_empty() || super::names_its_unit(hearing);
    let plain = |(.., entry): &(UnitName, DateTime<Utc>, Entry)| {
        entry.readings.is_empty() && entry.faults.is_empty() && entry.cleared.is_empty()
    };
    if !elsewhere || late || named || !settled.reports.iter().all(plain) {
        return false;
    }
    let answers = &hearing.desk.answers;
    let own = answers.by_own_words_alone(hearing.text, &key_of(round), guards(&round.step));
    if own.is_none() {
        return false;
    }
    for (unit, _, entry) in &mut settled.reports {
        *unit = round.unit.clone();
        entry.unit = Some(round.unit.clone());
    }
    settled.from_context = Some(round.unit.clone());
    true
}

/// Reads "about half", "como 1 por ciento" where the step asks for a level or a slope.
fn level_told(hearing: &Hearing<'_>, round: &Round) -> Option<Said> {
    let phrases = hearing.desk.phrases;
    let asks = matches!(
        (round.way, round.step.as_str()),
        (Way::SetUp, "level") | (Way::Leaving, "waste" | "fresh")
    );
    let bare = hearing.heard.entries.is_empty() && hearing.heard.named.is_empty();
    if !asks || !bare || hearing.heard.command.is_some() || is_marked(hearing.text) {
        return None;
    }
    let rest = phrases.without("pumped", "about", hearing.text);
    let rest = phrases.without("pumped", "at-a-level", &rest);
    let number = match round.step.as_str() {
        "level" => rest.parse().ok(),
        _ if rest.split(' ').count() <= 2 => receive::level_in(phrases, &rest),
        _ => None,
    };
    number.map(Said::Number)
}

/// Carries setting up or leaving on, and starts it.
pub(in crate::desk) fn go_on(
    hearing: &Hearing<'_>,
    cases: &[Case],
    stood: Option<Stood>,
    reply: &mut Reply<'_>,
) {
    if hearing.inbound.replaces.is_some() {
        return;
    }
    let order = hearing.heard.command.as_ref().map(|order| order.name);
    let mut round = hearing.talk.round.clone();
    if order == Some(CommandName::NeverMind) && hearing.talk.checks.is_empty() && round.is_some() {
        reply.round = Some(None);
        return;
    }
    for case in cases {
        start(case, &mut round, hearing);
    }
    for case in cases.iter().filter(|case| has_left(case)) {
        if !reply.held.contains(&case.unit) && !standing::is_ordered(hearing, &case.unit) {
            tell_by_word(hearing, case, reply);
        }
    }
    let Some(mut round) = round else { return };
    // beside the first words for somebody in danger no step is asked
    let in_danger = reply
        .findings
        .iter()
        .any(|finding| finding.level == Level::Danger);
    if in_danger && stood.is_none() && hearing.talk.round.is_some() {
        return;
    }
    if stood == Some(Stood::Stopped) {
        reply.say("round-dropped", &[("unit", round.unit.as_str().into())]);
        reply.round = Some(None);
        return;
    }
    let here = cases.iter().find(|case| case.unit == round.unit);
    let confirmed = |(unit, _): &(UnitName, String)| *unit == round.unit;
    let by_word = round.way == Way::Leaving && reply.confirmed.iter().any(confirmed);
    // what was told done is taken back: its step is open again
    let taken_back = hearing.mends() && here.is_none() && round.way == Way::Leaving;
    if taken_back && hearing.inbound.at - round.asked <= PAUSE {
        reply.say("leave-do-it", &[]);
    } else if here.is_none() && stood.is_none() && !by_word {
        then_the_step(hearing, &round, reply);
        return;
    }
    if stood == Some(Stood::Paused) {
        let age = reply.voice.age(round.asked);
        reply.say("walk-paused", &[("age", age.into())]);
    }
    match stood {
        Some(Stood::Unsure) => reply.say("chocks-sure", &[]),
        Some(Stood::WhichTank) => {
            reply.say("leave-which-tank", &[("unit", round.unit.as_str().into())]);
        }
        Some(Stood::Skipped) if guards(&round.step) => {
            reply.say("set-up-not-skipped", &[]);
        }
        Some(Stood::Skipped) => round.skipped.push(round.step.clone()),
        Some(Stood::Done) if BY_WORD.contains(&round.step.as_str()) => {
            // told in more than a yes, it is said back what it was taken for
            if !hearing.desk.answers.is_plain(hearing.text) {
                let says = format!("confirmed-{}", round.step);
                reply.say(&says, &[("unit", round.unit.as_str().into())]);
            }
            round.confirmed.push(round.step.clone());
            reply
                .confirmed
                .push((round.unit.clone(), round.step.clone()));
        }
        Some(Stood::Done) if SET_UP_BY_WORD.contains(&round.step.as_str()) => {
            round.confirmed.push(round.step.clone());
        }
        Some(Stood::Not) if round.way == Way::Leaving => reply.say("leave-do-it", &[]),
        _ => {}
    }
    let standing_case;
    let case = match here {
        Some(case) => case,
        None => {
            let replaced = hearing.replaced_keys();
            let without = hearing.without(&round.unit, replaced.iter());
            let taken_back = without.filter(|_| taken_back);
            standing_case = taken_back.unwrap_or_else(|| hearing.asked_about(&round.unit));
            &standing_case
        }
    };
    let goes_on = match round.way {
        Way::SetUp => set_up(hearing, case, &mut round, stood, reply),
        // what is gone goes through no list
        Way::Leaving if has_left(case) && !reply.held.contains(&case.unit) => false,
        Way::Leaving => {
            let asked = taken_back
                || matches!(stood, Some(Stood::Again | Stood::Not | Stood::Paused))
                || case.leaves()
                || has_left(case);
            leave(hearing, case, &mut round, asked, reply)
        }
    };
    round.asked = hearing.now;
    // "that's done" behind a lamp that is dead may be said of the lamp
    round.unread =
        round.way == Way::Leaving && here.is_some_and(|case| !case.report.faults.is_empty());
    reply.round = Some(goes_on.then_some(round));
}

/// Tells whether the message tells that a trailer left.
fn has_left(case: &Case) -> bool {
    case.report.events.contains(&Event::Left)
}

/// Says the step that waits again, in a line, under the answer to a question on something else.
fn then_the_step(hearing: &Hearing<'_>, round: &Round, reply: &mut Reply<'_>) {
    let answered = !reply.first.is_empty() && reply.findings.is_empty() && reply.asks.is_none();
    let fresh = hearing.inbound.at - round.asked <= PAUSE;
    let other = hearing.names().iter().any(|unit| *unit != round.unit);
    if !answered || !fresh || other || reply.step.is_some() || round.step.is_empty() {
        return;
    }
    let what = match round.way {
        Way::Leaving => reply.voice.word(&format!("leave-{}", round.step)),
        Way::SetUp => {
            let case = hearing.asked_about(&round.unit);
            let skipped = [&round.skipped[..], &round.confirmed[..]].concat();
            let next = case
                .situation()
                .and_then(|situation| rules::set_up(&situation, &skipped));
            let Some(next) = next else { return };
            reply.voice.action(&next)
        }
    };
    let args = [
        ("unit", Arg::from(round.unit.as_str())),
        ("what", what.into()),
    ];
    reply.step = Some(reply.voice.say("round-then", &args));
}

/// Starts setting up at an arrival, and leaving once the trailer is on the hook.
fn start(case: &Case, round: &mut Option<Round>, hearing: &Hearing<'_>) {
    let says = |event| case.report.events.contains(&event);
    let way = if says(Event::Arrived) {
        Way::SetUp
    } else if (says(Event::Hitched) || says(Event::Left) || case.leaves())
        && !standing::is_ordered(hearing, &case.unit)
    {
        Way::Leaving
    } else {
        return;
    };
    if round
        .as_ref()
        .is_some_and(|round| round.unit == case.unit && round.way == way)
    {
        return;
    }
    *round = Some(Round {
        unit: case.unit.clone(),
        way,
        step: String::new(),
        asked: hearing.now,
        skipped: Vec::new(),
        confirmed: Vec::new(),
        unread: false,
    });
}

/// Ends the round that began with what is taken back: a trailer that never was on the hook is not leaving.
pub(in crate::desk) fn began_with(
    hearing: &Hearing<'_>,
    told: &[(UnitName, DateTime<Utc>, Entry)],
    reply: &mut Reply<'_>,
) {
    let Some(round) = &hearing.talk.round else {
        return;
    };
    let begins: &[Event] = match round.way {
        Way::SetUp => &[Event::Arrived],
        Way::Leaving => &[Event::Hitched, Event::Left],
    };
    let begun = |(unit, _, entry): &(UnitName, DateTime<Utc>, Entry)| {
        *unit == round.unit && entry.events.iter().any(|event| begins.contains(event))
    };
    if told.iter().any(begun) {
        reply.round = Some(None);
        reply.say("round-undone", &[("unit", round.unit.as_str().into())]);
    }
}

/// Puts the step of the rules in the place of the finding, past what was skipped; false where nothing is left.
fn set_up(
    hearing: &Hearing<'_>,
    case: &Case,
    round: &mut Round,
    stood: Option<Stood>,
    reply: &mut Reply<'_>,
) -> bool {
    let is_this = |finding: &Finding| {
        finding.id == FindingId::SiteSetUpNext && finding.unit.as_ref() == Some(&case.unit)
    };
    let mut skipped = [&round.skipped[..], &round.confirmed[..]].concat();
    if super::culprit::heater_kept_off(hearing, case).is_some() {
        skipped.push("heater".to_owned());
    }
    let next = case
        .situation()
        .and_then(|situation| rules::set_up(&situation, &skipped));
    let told = reply.findings.iter().position(is_this);
    let first = round.step.is_empty();
    let Some(mut next) = next else {
        reply.findings.retain(|finding| !is_this(finding));
        if stood.is_some() && case.now.stage() == Stage::SettingUp {
            reply.say("set-up-open-now", &[("unit", case.unit.as_str().into())]);
        }
        return false;
    };
    next.unit = Some(case.unit.clone());
    let code = code_of(&next);
    match told {
        Some(place) => reply.findings[place] = next,
        // asked once; it is not asked again after a report on something else
        None if stood.is_some() || code != round.step => reply.findings.push(next),
        None => {}
    }
    if told.is_some() || stood.is_some() {
        reply.step_answers = match code.as_str() {
            "volts" | "pressure" => &["skip"],
            code if guards(code) => &["ready"],
            _ => &["ready", "skip"],
        };
    }
    reply.findings.sort_by_key(Finding::order);
    round.step = code;
    if first || matches!(stood, Some(Stood::Again | Stood::Paused)) {
        reply.say("set-up-answer", &[]);
    }
    true
}

/// Tells whether the message is a picture, and no other trailer is talked about.
fn shows(hearing: &Hearing<'_>, round: &Round) -> bool {
    let names = hearing.names();
    matches!(hearing.inbound.body, Body::Photo(_)) && names.iter().all(|unit| *unit == round.unit)
}

fn code_of(finding: &Finding) -> String {
    match finding.facts.find("next").map(|fact| &fact.value) {
        Some(FactValue::Text(code)) => code.clone(),
        _ => String::new(),
    }
}
