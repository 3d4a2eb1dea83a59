//! Answers to what people ask.

mod back;
mod brief;
mod cold;
mod cords;
mod duty;
mod finish;
mod freezing;
mod is_ok;
mod nearest;
mod people;
mod places;
mod plan_ahead;
mod pressure;
mod question;
mod ready;
mod reply;
mod several;
mod site;
mod sought;
mod tank_lasts;
mod tell;
mod topic;
mod unplaced;
mod unsafe_now;
mod value_asked;
mod well;
mod whole;
mod why;

pub(super) use back::correction;
pub(super) use cords::{asked_to_hook_up, hook_up};
pub(super) use nearest::of_the_plan;
pub(super) use people::where_they_are;
pub(super) use places::{answer as of_places, asks_which};
pub(super) use reply::Reply;
pub(super) use several::{answer as several, parts};
pub(super) use site::answer as of_a_site;
pub(super) use tell::person_named;
pub(super) use topic::Questions;
pub(super) use topic::reworded;
pub(super) use topic::sounds_like_one as sounds_like_a_question;
pub(super) use topic::{asks_leave, told_beside};
pub(super) use unplaced::is_talk_alone;
pub(super) use whole::tasks_in_hand;
pub(super) use why::WhyWords;

use super::digest;
use super::phrases::{is_marked, plain};
use super::receive::Hearing;
use super::settle::{self, Settled};
use super::situate::Case;
use crate::book::Record;
use crate::fleet::Role;
use crate::heard::{Ask, Fault, UnitName};
use crate::situation::Occasion;

/// The words that ask for a status: English, Spanish.
const STATUS_WORDS: &[&str] = &["status", "sitrep", "estado", "estatus"];

/// Returns the known trailer that a question is about: the one named, or the sender's last.
pub(super) fn unit_of(hearing: &Hearing<'_>, ask: &Ask) -> Option<UnitName> {
    let named = match ask {
        Ask::Status { unit }
        | Ask::History { unit }
        | Ask::Forecast { unit }
        | Ask::Why { unit } => unit.as_ref(),
        _ => return None,
    };
    // "can I wait till 9 with the truck for 12": beside a trailer the hour is none
    let hour = |name: &UnitName| settle::known(&hearing.fleet, name).is_none();
    let hour = is_question(hearing) && named.is_some_and(hour);
    let name = match named {
        Some(_) if hour => {
            let mut known = hearing.heard.named.iter();
            known.find(|name| settle::known(&hearing.fleet, name).is_some())
        }
        Some(name) => Some(name),
        None if hearing.heard.named.len() == 1 => hearing.heard.named.first(),
        None => hearing.talk.unit_at(hearing.inbound.at),
    };
    settle::known(&hearing.fleet, name?).cloned()
}

/// Returns the known trailer that the message asks about, by a word of asking or by a question.
pub(super) fn asked(hearing: &Hearing<'_>) -> Option<UnitName> {
    match &hearing.heard.ask {
        Some(ask) => unit_of(hearing, ask),
        None if is_question(hearing) => meant(hearing),
        None => None,
    }
}

/// Tells whether the message is a question that is answered by its topic.
pub(super) fn is_question(hearing: &Hearing<'_>) -> bool {
    topic_of(hearing).is_some()
}

/// Tells whether the message asks about something by more than a set phrase, as "more" is.
pub(super) fn asks_of_something(hearing: &Hearing<'_>) -> bool {
    topic_of(hearing).is_some_and(|topic| !topic.is_set_phrase(hearing.text))
}

/// Tells whether the message asks whether some work is needed: then it does not order it.
pub(super) fn asks_whether(hearing: &Hearing<'_>) -> bool {
    const WORK: &[&str] = &[
        "regulator",
        "heater",
        "pump-out",
        "drain",
        "cords",
        "truck-latest",
        "what-if",
    ];
    topic_of(hearing).is_some_and(|topic| WORK.contains(&topic.topic.as_str()))
}

/// Tells whether the answer to what is asked, or about to be done, is a caution: no step of a check takes its place.
pub(super) fn is_warned_of(hearing: &Hearing<'_>) -> bool {
    topic_of(hearing).is_some_and(|topic| !topic.cautions.is_empty())
}

/// Answers a question by its topic; false where the message is none.
pub(super) fn question(hearing: &Hearing<'_>, settled: &Settled, reply: &mut Reply<'_>) -> bool {
    if super::walk::asks_of_a_thing(hearing).is_some() {
        return false;
    }
    let Some(topic) = topic_of(hearing) else {
        return false;
    };
    if whole::answer(hearing, &topic.topic, reply) {
        return true;
    }
    let named = match &hearing.heard.ask {
        Some(Ask::Status { unit } | Ask::Forecast { unit }) => unit.as_ref(),
        _ => None,
    };
    // "is 55 ok": a number that is no trailer is what is asked about
    let mut others = hearing.heard.named.iter();
    let another = others.any(|name| settle::known(&hearing.fleet, name).is_some());
    // "can I wait till 9 with the truck for 12": the hour is no trailer beside one
    let unknown = named.filter(|name| !another && settle::known(&hearing.fleet, name).is_none());
    let of_a_number = match topic.topic.as_str() {
        "is-ok" => true,
        "pump-out" => meant(hearing).is_some(),
        // "a 30 amp fuse instead of 15": the answer is the same on every trailer
        _ if !topic.cautions.is_empty() => true,
        _ => false,
    };
    if let Some(name) = unknown.filter(|_| !of_a_number) {
        let finding = settle::unknown_unit(&hearing.fleet, name);
        reply.findings.push(finding);
        return true;
    }
    let unit = asked(hearing).or_else(|| meant(hearing));
    if is_for_the_step(hearing, topic) {
        let case = unit.map(|unit| case_of(hearing, settled, &unit));
        reply.beside.extend(case.iter().flat_map(Case::findings));
        return true;
    }
    question::answer(hearing, settled, topic, unit, reply);
    true
}

/// Finds the topic of a question.
fn topic_of<'a>(hearing: &Hearing<'a>) -> Option<&'a topic::Question> {
    let questions = hearing.desk.questions;
    // while something is thawed a torch is for that, whether they say so or not
    let mut checks = hearing.talk.checks.iter();
    if checks.any(|check| check.fault == Fault::Frozen) {
        let of_ice = questions.of(&hearing.heard, &format!("{} frozen", hearing.text));
        if let Some(topic) = of_ice.filter(|topic| !topic.cautions.is_empty()) {
            return Some(topic);
        }
    }
    let topic = questions.of(&hearing.heard, hearing.text)?;
    // "what's up with 12" asks after no person
    let of_a_person = ["how-person", "has-read", "did-today"].contains(&topic.topic.as_str());
    // "everything ok?" of a dispatcher is of them all; of a driver, and without its mark, it is of the trailer at hand
    let of_all = topic.topic == "all-well";
    let asks_of_all = || hearing.member.role == Role::Dispatcher && is_marked(hearing.text);
    let not_meant =
        of_a_person && tell::person_named(hearing).is_none() || of_all && !asks_of_all();
    (!not_meant).then_some(topic)
}

/// Tells whether it is asked who is with a trailer, or where somebody is: the sender is at another.
pub(super) fn asks_who_or_where(hearing: &Hearing<'_>) -> bool {
    let of_people = [
        "who-has",
        "who-has-what",
        "who-is-where",
        "send-someone",
        "who-can-go",
        "did-today",
    ];
    topic_of(hearing).is_some_and(|topic| of_people.contains(&topic.topic.as_str()))
}

/// Tells whether "what now" is asked in the middle of a guided check, or of setting up: its next step is the answer.
fn is_for_the_step(hearing: &Hearing<'_>, topic: &topic::Question) -> bool {
    let walks = !hearing.talk.checks.is_empty() || hearing.talk.round.is_some();
    topic.topic == "next" && walks && hearing.heard.named.is_empty()
}

/// Returns the known trailer that a message means: the one it names, or the sender's last.
fn meant(hearing: &Hearing<'_>) -> Option<UnitName> {
    let named: Vec<&UnitName> = hearing
        .heard
        .named
        .iter()
        .filter_map(|name| settle::known(&hearing.fleet, name))
        .collect();
    let last = || settle::known(&hearing.fleet, hearing.talk.unit_at(hearing.inbound.at)?);
    match named.as_slice() {
        [one] => Some((*one).clone()),
        _ => last().cloned(),
    }
}

/// Answers what the sender asks.
pub(super) fn ask(
    hearing: &Hearing<'_>,
    settled: &Settled,
    ask: &Ask,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match ask {
        Ask::Status { unit } => about_unit(hearing, settled, unit.as_ref(), ask, reply, status),
        // "what did lupe do today"
        Ask::History { unit: None } if people::asked_of_a_day(hearing, reply) => {}
        Ask::History { unit } => {
            about_unit(hearing, settled, unit.as_ref(), ask, reply, tell::history)
        }
        Ask::Forecast { unit } => {
            about_unit(hearing, settled, unit.as_ref(), ask, reply, tell::forecast)
        }
        Ask::Digest => digest::tell(hearing, reply, records),
        Ask::Tasks => tell::tasks(hearing, reply),
        Ask::Help => {
            let key = format!("help-{}", digest::role_code(hearing.member.role));
            reply.lines.push(reply.voice.word(&key));
        }
        Ask::Undo => back::undo(hearing, reply, records),
        Ask::Why { .. } => why::why(hearing, ask, reply),
        Ask::Done { task } => back::done(hearing, *task, reply),
        Ask::Sum => super::sum::answer(hearing, reply),
        Ask::Command { .. } => {} // obeyed as an order
    }
}

/// A status where one is asked for by that word; else how the trailer is, without what this person knows already.
fn status(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    // what is asked about the step that waits is explained there
    if super::walk::asks_of_a_thing(hearing).is_some() {
        return;
    }
    let text = plain(hearing.text);
    let by_word = text.split(' ').any(|word| STATUS_WORDS.contains(&word));
    if by_word {
        brief::status(hearing, case, reply);
    } else if hearing.heard.entries.iter().any(|entry| !entry.is_empty()) {
        // the report is answered by its own findings
        question::beside(hearing, case, reply, &[]);
    } else if topic::asks_to_act(hearing.text) {
        // how the trailer stands says nothing of what may be done
        reply.first.push(reply.voice.word("answer-cannot-tell"));
    } else {
        question::in_passing(hearing, case, reply);
    }
}

fn about_unit(
    hearing: &Hearing<'_>,
    settled: &Settled,
    named: Option<&UnitName>,
    ask: &Ask,
    reply: &mut Reply<'_>,
    tell: impl Fn(&Hearing<'_>, &Case, &mut Reply<'_>),
) {
    match (unit_of(hearing, ask), named) {
        (Some(unit), _) => {
            let case = case_of(hearing, settled, &unit);
            reply.foresee(&case);
            tell(hearing, &case, reply);
        }
        (None, Some(name)) => reply
            .findings
            .push(settle::unknown_unit(&hearing.fleet, name)),
        (None, None) => reply.asks = Some(hearing.which_unit()),
    }
}

/// Opens the case of a trailer that is asked about; a report in the same message already counts.
fn case_of(hearing: &Hearing<'_>, settled: &Settled, unit: &UnitName) -> Case {
    let case = hearing.asked_about(unit);
    match hearing.reported(unit, settled) {
        None => case,
        Some(now) => Case::new(
            hearing.desk,
            &hearing.fleet,
            unit,
            hearing.now,
            (case.before, now),
            case.report,
            case.plans,
            Occasion::Asked,
        ),
    }
}
