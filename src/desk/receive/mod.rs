//! One message: heard, settled, checked, answered. A file a step, in the order of [`Hearing::work`].

mod also;
mod apart;
mod arrive;
mod asked;
mod at_site;
mod bare;
mod bore;
mod cases;
mod changes;
mod cured;
mod danger;
mod earlier;
mod ends;
mod fixed;
mod gas;
mod hear;
mod hose;
mod in_use;
mod leave;
mod likely;
mod loads;
mod meaning;
mod meant;
mod mend;
mod open;
mod part;
mod plans;
mod power_again;
mod pumped;
mod pumped_after;
mod reopened;
mod stopped;
mod timed;
mod work;
mod written;

use std::sync::Arc;

use chrono::{DateTime, Utc};

pub(super) use self::asked::{asked_by_somebody, is_level};
pub(super) use self::bare::LATE;
pub(super) use self::ends::closing_words;
pub(super) use self::in_use::{keeps_out, say_first};
pub(super) use self::meaning::Texted;
use self::meaning::{Came, Meaning};
pub(super) use self::mend::Told;
pub(super) use self::part::level_in;
pub(super) use self::plans::lead;
pub(super) use self::pumped_after::just_pumped;
use super::inbound::{Body, Inbound, Turn};
use super::settle::{self, Settled};
use super::when;
use super::{Desk, ahead, answer, choices, door, incident, lone, photo, place, truck, worry};
use crate::book::{Bears, MessageKey, UnitBook, UnitState};
use crate::dialogue::{About, Talk};
use crate::finding::FindingId;
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Command, Heard, UnitName};

/// One message with what is known about its sender.
pub(super) struct Hearing<'a> {
    pub(super) desk: &'a Desk,
    pub(super) inbound: &'a Inbound,
    /// What the message says; with what it completes, where it is a bare answer.
    pub(super) text: &'a str,
    pub(super) written: &'a str,
    pub(super) member: &'a CrewMember,
    pub(super) fleet: Arc<Fleet>,
    pub(super) heard: Heard,
    pub(super) talk: Talk,
    /// The instant to judge at: the time written, or the time received where the message came late.
    pub(super) now: DateTime<Utc>,
    /// The key under which the book keeps this message.
    pub(super) key: MessageKey,
    /// The message that this one edits, by the book's key.
    edited: Option<MessageKey>,
    /// The sender's earlier message that this one mends.
    instead_of: Option<MessageKey>,
    /// The question that this message raises before anything else does.
    pub(super) asks: Option<About>,
    /// Further tasks that an answer calls done.
    pub(super) also_done: Vec<u32>,
    /// Further orders that the message gives.
    pub(super) also_ordered: Vec<Command>,
    /// Words of it that are no order which can be obeyed beside the others.
    left: Vec<String>,
    /// The older message that is to be taken back.
    pub(super) takes_back: Option<MessageKey>,
    /// The trailer that the sender's last pictures are said to show.
    pub(super) photo_of: Option<UnitName>,
    /// Whether it takes back the sender's correction, so that what that mended stands again.
    uncorrects: bool,
    /// The trailer that it says stands at a site, and that site's id.
    stands: Option<(UnitName, String)>,
    /// What it says of an incident whose facts are being asked.
    pub(super) fact: Option<incident::Said>,
    /// The site, by id, by whose name it tells which trailer it means.
    pub(super) site: Option<String>,
    /// The site, by id, that a danger is told of beside a trailer which stands at another.
    pub(super) elsewhere: Option<String>,
}

/// Works through one message.
pub(super) fn receive(desk: &Desk, inbound: &Inbound) -> Turn {
    let Some(member) = desk.crew_of(&inbound.from) else {
        return door::knock(desk, inbound);
    };
    if place::is_in_passing(desk, inbound, &member) {
        return Turn::empty(inbound.at);
    }
    let Body::Press(press) = &inbound.body else {
        return hear(desk, inbound, &member, None);
    };
    match choices::pressed(desk, inbound, &member, press) {
        Ok(word) => {
            // a press is as good as the words it stands for
            let said = Inbound {
                body: Body::Text(word.says),
                ..inbound.clone()
            };
            let takes_back = match word.bears {
                Bears::Message(key) => Some(key),
                _ => None,
            };
            let mut turn = hear(desk, &said, &member, takes_back);
            turn.records.insert(0, word.record);
            turn
        }
        Err(refused) => *refused,
    }
}

/// Hears one of the crew; `takes_back` is the message that a press wants taken back.
fn hear(
    desk: &Desk,
    inbound: &Inbound,
    member: &CrewMember,
    takes_back: Option<MessageKey>,
) -> Turn {
    let scanned = match door::opened(desk, inbound, member) {
        Some(door::Opened::Turn(turn)) => return *turn,
        Some(door::Opened::Asks(words)) => Some(words),
        None => None,
    };
    let fleet = desk.fleet_at(inbound.at);
    let (written, unreadable) = match &inbound.body {
        Body::Other(kind) => ("", Some(kind.as_str())),
        body => (body.words(), None),
    };
    let reworded = truck::reworded(desk, &fleet, written)
        .or_else(|| ahead::reworded(desk.phrases, &fleet, written))
        .or_else(|| lone::reworded(desk.phrases, written))
        .or_else(|| answer::reworded(desk.phrases, &fleet, written))
        .or_else(|| timed::without_the_other_tank(desk.phrases, written))
        .or_else(|| timed::reworded(desk.phrases, &fleet, written, inbound.at));
    let text = reworded.as_deref().unwrap_or(written);
    let came = Came {
        desk,
        inbound,
        member,
        fleet: &fleet,
        text,
    };
    let meaning = Meaning::of(&came, scanned);
    let late = inbound.received - inbound.at > LATE;
    let hearing = Hearing {
        desk,
        inbound,
        // an incident's words are kept as they are: nothing else is read out of them
        text: match meaning.is_of_an_incident() {
            true => "",
            false => meaning.whole.as_deref().unwrap_or(text),
        },
        written,
        member,
        fleet: Arc::clone(&fleet),
        heard: meaning.heard,
        talk: meaning.talk,
        now: if late { inbound.received } else { inbound.at },
        key: MessageKey(format!("m{}", desk.book.messages() + 1)),
        edited: inbound.replaces.as_ref().and_then(|network| {
            let mut sent = desk.book.sent(&member.id).iter();
            Some(sent.find(|sent| sent.is_of(network))?.key.clone())
        }),
        instead_of: None,
        asks: meaning.asks,
        also_done: meaning.also_done,
        also_ordered: meaning.also_ordered,
        left: meaning.left,
        takes_back,
        photo_of: None,
        uncorrects: false,
        stands: None,
        fact: meaning.fact,
        site: meaning.site,
        elsewhere: meaning.elsewhere,
    };
    hearing.work(unreadable)
}

impl Hearing<'_> {
    fn work(mut self, unreadable: Option<&str>) -> Turn {
        let (mut settled, taken) = self.take();
        if self.member.role == Role::Dispatcher {
            settled.amend_all(|_, entry| entry.afar = entry.is_an_opening());
        }
        let mut records = Vec::new();
        let mut reply = self.open(&settled, &taken, unreadable, &mut records);
        ahead::weather_told(&self, &mut settled, &mut reply, &mut records);
        let cases = self.check(&mut settled, &mut reply);
        self.obey(&settled, &cases, &taken, &mut reply, &mut records);
        self.answer(&settled, &taken, &mut reply, &mut records);
        let safety = taken.bears_on_safety();
        self.go_on(&settled, &cases, taken, &mut reply, &mut records);
        worry::ask(&self, &settled, safety, &mut reply);
        photo::take(&self, &settled, &mut reply, &mut records);
        let mut talk = self.talk_after(&settled, &mut reply, &records);
        place::note(&self, &mut talk);
        photo::note(&self, &mut talk);
        self.finish(settled, cases, reply, records, talk)
    }

    /// Returns this message as if it asked one thing only, in these words.
    pub(super) fn asking<'b>(&'b self, text: &'b str, heard: Heard) -> Hearing<'b> {
        Hearing {
            desk: self.desk,
            inbound: self.inbound,
            text,
            written: text,
            member: self.member,
            fleet: Arc::clone(&self.fleet),
            heard,
            talk: self.talk.clone(),
            now: self.now,
            key: self.key.clone(),
            edited: None,
            instead_of: None,
            asks: None,
            also_done: Vec::new(),
            also_ordered: Vec::new(),
            left: Vec::new(),
            takes_back: None,
            photo_of: None,
            uncorrects: false,
            stands: None,
            fact: None,
            site: None,
            elsewhere: None,
        }
    }

    /// Returns the voice the sender is answered in.
    pub(super) fn voice(&self) -> crate::reply::Voice<'_> {
        self.desk
            .voice_for(self.member, self.heard.language, &self.fleet, self.now)
    }

    /// Returns the state of a trailer after what this message reports on it, if it reports on it at all.
    pub(super) fn reported(&self, unit: &UnitName, settled: &Settled) -> Option<UnitState> {
        let told = || {
            settled
                .reports
                .iter()
                .filter(move |(other, ..)| other == unit)
        };
        told().next()?;
        let fresh = UnitBook::default();
        let kept = self.desk.book.unit(unit).unwrap_or(&fresh);
        Some(kept.preview(&self.member.id, told().map(|(_, at, entry)| (*at, entry))))
    }

    /// Returns the known trailers that the message names anywhere, in order.
    pub(super) fn names(&self) -> Vec<UnitName> {
        let mut named: Vec<UnitName> = Vec::new();
        let words = self
            .text
            .split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '/'))
            .filter(|word| !is_a_fraction(word))
            .flat_map(|word| word.split('/'));
        let typed: Vec<UnitName> = words.map(|word| UnitName::new(owner(word))).collect();
        // a word that is a trailer's name, unless it is the hour of a clock time: "chocks out at 10" has none
        let clock = when::clock_words(self.text);
        let hours = self.desk.phrases.holds("clock", "of-hours", self.text);
        let placed = |name: &UnitName| !hours && self.heard.named.contains(name);
        for name in self.heard.named.iter().chain(&typed) {
            if let Some(unit) = settle::known(&self.fleet, name)
                && !named.contains(unit)
                && (placed(name) || !clock.contains(&name.as_str().to_lowercase()))
            {
                named.push(unit.clone());
            }
        }
        named
    }

    /// Tells whether the message only mends an earlier one.
    pub(super) fn mends(&self) -> bool {
        self.instead_of.is_some()
    }

    /// Tells whether the message came in long after it was written.
    pub(super) fn late(&self) -> bool {
        self.inbound.received - self.inbound.at > LATE
    }
}

/// Tells whether a word is a level as gauges have it: the 8 of "7/8" is no trailer.
fn is_a_fraction(word: &str) -> bool {
    let parts = word.split_once('/');
    parts.is_some_and(|(top, bottom)| {
        let top = top.parse::<u32>();
        matches!(bottom, "2" | "3" | "4" | "8" | "16")
            && top.is_ok_and(|top| bottom.parse().is_ok_and(|bottom: u32| top < bottom))
    })
}

/// Takes the ending off a number that owns what follows it: "12s truck".
fn owner(word: &str) -> &str {
    let number = word.strip_suffix(['s', 'S']);
    let digits = |word: &&str| word.chars().all(|c| c.is_ascii_digit());
    number.filter(digits).unwrap_or(word)
}

/// Tells whether a finding speaks of the message rather than of a trailer.
pub(super) fn of_the_message(id: FindingId) -> bool {
    id.topic() == "desk"
}
