//! What a message says to a fact of an incident that was asked; a report, a question or an order beside it goes first.

use chrono::TimeDelta;

use super::own;
use crate::desk::inbound::Inbound;
use crate::desk::phrases::{Phrases, is_marked};
use crate::desk::{Desk, settle};
use crate::dialogue::{About, Fact, Talk};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Entry, Fault, Heard};

/// What a message says to a fact that was asked.
pub(in crate::desk) enum Said {
    /// The fact, in the words of the message.
    Told(u32, Fact),
    /// Somebody is hurt or in danger there; the words are kept as the fact.
    Danger(u32, Fact, Box<Entry>),
    /// Nobody is hurt now: the facts can be asked.
    NobodyHurt(u32),
    /// It is not known.
    NotKnown(u32, Fact),
    /// The question is to be put again.
    GoOn(u32, Box<About>),
    /// No more now.
    Stop(u32),
}

impl Said {
    /// Returns what is to be acted on at once.
    pub(in crate::desk) fn danger(&self) -> Option<Entry> {
        match self {
            Said::Danger(.., entry) => Some((**entry).clone()),
            _ => None,
        }
    }
}

/// Reads what a message says to the fact that was asked last; none where none was, or it is another order or question.
pub(in crate::desk) fn said(
    desk: &Desk,
    fleet: &Fleet,
    inbound: &Inbound,
    member: &CrewMember,
    talk: &Talk,
    heard: &Heard,
    text: &str,
) -> Option<Said> {
    if let Some(said) = headed(desk, inbound, member, talk, text) {
        return Some(said);
    }
    let about = &talk.question_at(inbound.at)?.about;
    let now = matches!(about, About::HurtNow { .. });
    let (number, fact) = match about {
        About::IncidentFact { number, fact } => (*number, *fact),
        // words that are no yes or no tell the first fact at once
        About::HurtNow { number, .. } if desk.phrases.is("choice", "no", text) => {
            return Some(Said::NobodyHurt(*number));
        }
        About::HurtNow { .. } if desk.phrases.is("choice", "yes", text) => return None,
        About::HurtNow { number, .. } => {
            let incident = desk.book.incidents().incident(*number)?;
            (*number, incident.next()?)
        }
        _ => return None,
    };
    if inbound.replaces.is_some() || text.trim().is_empty() || member.role < Role::Dispatcher {
        return None;
    }
    if desk.phrases.is("incident", "stop", text) {
        return Some(Said::Stop(number));
    }
    if desk.phrases.is("incident", "goes-on", text) {
        return Some(Said::GoOn(number, Box::new(about.clone())));
    }
    if desk.phrases.is("incident", "skip", text) {
        // whether somebody is hurt was asked, and not the first fact
        let fact = if now { Fact::Injured } else { fact };
        return Some(Said::NotKnown(number, fact));
    }
    // what is told of a trailer that is named is a report, whatever was asked; so is a person in danger, where that is
    // not what was asked for
    let asks_of_it = !now && matches!(fact, Fact::What | Fact::Injured);
    let unit = &desk.book.incidents().incident(number)?.hold.unit;
    // a number that is no trailer is an age or a count
    let elsewhere = |entry: &Entry| {
        let named = entry.unit.as_ref();
        named.is_some_and(|name| settle::known(fleet, name).is_some_and(|known| known != unit))
    };
    let reports = heard.entries.iter().any(|entry| {
        let told =
            !(entry.readings.is_empty() && entry.events.is_empty() && entry.faults.is_empty());
        let named = entry.unit.as_ref();
        let known = named.is_some_and(|name| settle::known(fleet, name).is_some());
        told && known && (elsewhere(entry) || !in_danger(entry) || asks_of_it)
    });
    let asks = heard.ask.is_some()
        || desk.questions.of(heard, text).is_some()
        || desk.phrases.after("incident", "asks", text).is_some();
    // the words by which somebody hurt is told to be looked after end that, whatever was asked; so do others of a trailer
    let looked_after = desk.answers.says("ends", "hurt-over", text)
        || !heard.named.is_empty() && desk.answers.says("help", "over", text);
    // an order of fire or police is obeyed, and no fact that was asked for
    if desk.answers.tells_of_an_order(text) {
        return None;
    }
    let of_a_truck = tells_of_a_truck(desk.phrases, fact, text);
    let takes_over = desk.answers.takes_over(text);
    let ordered = heard.command.is_some() || takes_over;
    if reports || asks || looked_after || of_a_truck || is_marked(text) || ordered {
        return None;
    }
    let mut faults: Vec<Fault> = heard
        .entries
        .iter()
        .flat_map(|entry| &entry.faults)
        .copied()
        .collect();
    faults.retain(|fault| Fault::DANGERS.contains(fault));
    let says = |list| now && desk.phrases.after("incident", list, text).is_some();
    let fact = match says("denies") || says("affirms") {
        true => Fact::Injured,
        false => fact,
    };
    if faults.is_empty() && says("affirms") {
        faults.push(Fault::PersonHurt);
    }
    if faults.is_empty() || asks_of_it {
        return Some(Said::Told(number, fact));
    }
    let entry = Entry {
        unit: Some(unit.clone()),
        faults,
        ..Entry::default()
    };
    Some(Said::Danger(number, fact, Box::new(entry)))
}

/// Tells whether a message is an order about a truck: what happened may be of one too.
fn tells_of_a_truck(phrases: &Phrases, fact: Fact, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    let moves = ["called", "request", "late", "off", "absent", "here"];
    says("who") && (says("for") || fact != Fact::What && moves.into_iter().any(says))
}

/// Tells whether somebody is in danger by what is told of a trailer.
fn in_danger(entry: &Entry) -> bool {
    let mut faults = entry.faults.iter();
    faults.any(|fault| Fault::DANGERS.contains(fault))
}

/// Facts with a head of their own are of an incident that was opened lately, whatever waits for an answer.
const OPENED_LATELY: TimeDelta = TimeDelta::hours(6);

/// Reads "who: mrs kettle, 60s" as a fact of the incident that was opened last.
fn headed(
    desk: &Desk,
    inbound: &Inbound,
    member: &CrewMember,
    talk: &Talk,
    text: &str,
) -> Option<Said> {
    let asked = talk.question_at(inbound.at).map(|question| &question.about);
    let is_asked = matches!(
        asked,
        Some(About::IncidentFact { .. } | About::HurtNow { .. })
    );
    let other = is_asked || inbound.replaces.is_some() || member.role < Role::Dispatcher;
    if other || !own::is_headed(desk.phrases, text) {
        return None;
    }
    let (number, incident) = desk.book.incidents().standing().next_back()?;
    let lately = inbound.at >= incident.opened && inbound.at - incident.opened <= OPENED_LATELY;
    lately.then(|| Said::Told(number, incident.next().unwrap_or(Fact::What)))
}
