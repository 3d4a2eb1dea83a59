//! One message: heard, settled, checked, answered. A file a step, in the order of [`Hearing::work`].

mod cases;
mod meant;
mod open;
mod plans;
mod written;

use std::sync::Arc;

use chrono::{DateTime, Utc};

pub(super) use self::plans::lead;
use super::answer::Reply;
use super::inbound::{Body, Inbound, Turn};
use super::settle::{LATE, Settled};
use super::{Desk, ahead, alarm, answer, command, standing, walk, watch};
use crate::book::{MessageKey, Record, UnitBook, UnitState};
use crate::dialogue::Talk;
use crate::finding::FindingId;
use crate::fleet::{CrewMember, Fleet};
use crate::heard::{Heard, UnitName};

/// One message with what is known about its sender.
pub(super) struct Hearing<'a> {
    pub(super) desk: &'a Desk,
    pub(super) inbound: &'a Inbound,
    pub(super) text: &'a str,
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
}

/// Works through one message.
pub(super) fn receive(desk: &Desk, inbound: &Inbound) -> Turn {
    let Some(member) = desk.crew_of(&inbound.from) else {
        return super::stranger::refuse(desk, inbound);
    };
    let fleet = desk.fleet_at(inbound.at);
    let empty = String::new();
    let (text, unreadable) = match &inbound.body {
        Body::Text(text) => (text, None),
        Body::Other(kind) => (&empty, Some(kind.as_str())),
    };
    let heard = desk.reader.hear(text, fleet.style.temperature);
    let late = inbound.received - inbound.at > LATE;
    let hearing = Hearing {
        desk,
        inbound,
        text,
        member: &member,
        fleet,
        heard,
        talk: desk.book.talk(&member.id).cloned().unwrap_or_default(),
        now: if late { inbound.received } else { inbound.at },
        key: MessageKey(format!("m{}", desk.book.messages() + 1)),
        edited: inbound.replaces.as_ref().and_then(|network| {
            let mut sent = desk.book.sent(&member.id).iter();
            let edited = sent.find(|sent| sent.network.text() == network.0)?;
            Some(edited.key.clone())
        }),
        instead_of: None,
    };
    hearing.work(unreadable)
}

impl Hearing<'_> {
    fn work(mut self, unreadable: Option<&str>) -> Turn {
        // what it means: a bare answer, a report, a step of a guided check
        let mut settled = self.settle();
        let took = walk::take(&mut self, &mut settled);
        let stood = walk::stand::take(&mut self, &mut settled, took.is_some());
        settled.words = self.words_about(&settled);
        let mut units = self.units(&settled);
        units.extend(self.talk.checks.iter().map(|check| check.unit.clone()));
        units.extend(self.talk.round.iter().map(|round| round.unit.clone()));
        let board = self.board(&units);
        let mut reply = Reply::new(&self, board);
        if self.late() {
            reply.late = true;
        }
        if let Some(kind) = unreadable {
            reply.unreadable(kind);
        }

        // what follows from it: findings and the tasks they ask for
        let mut records = Vec::new();
        ahead::weather_told(&self, &mut settled, &mut reply, &mut records);
        let cases = self.check(&mut settled, &mut reply);

        // what it asks for: work, alarms, orders, questions
        self.plan(&mut reply, &cases, &mut records);
        watch::hits(&self, &cases, &mut reply, &mut records);
        alarm::end_silence(&self, &cases, &settled.words, &mut records);
        alarm::raise(&self, &cases, &mut reply, &mut records);
        let lessons = cases.iter().filter_map(|case| case.lesson(&self.key));
        records.extend(lessons.map(|lesson| Record::Lesson { lesson }));
        if let Some(order) = self.heard.command.clone() {
            command::obey(&self, &order, &mut reply, &mut records);
        }
        let answered = took.is_none() && answer::question(&self, &settled, &mut reply);
        if let Some(ask) = self.heard.ask.clone().filter(|_| !answered) {
            answer::ask(&self, &settled, &ask, &mut reply, &mut records);
        }

        // what goes with it: orders of fire or police, the site's card, the next step, what the bot will speak of
        standing::ordered(&self, &settled, &mut reply, &mut records);
        standing::greet(&self, &cases, &mut reply);
        standing::beside_the_advice(&self, &cases, &mut reply);
        walk::stand::go_on(&self, &cases, stood, &mut reply);
        walk::go_on(&self, &cases, took.as_ref(), &mut reply);
        ahead::note(&self, &settled, &cases, &mut reply, &mut records);

        // what stays open, and the whole turn as it is written down
        let talk = self.talk_after(&settled, &mut reply);
        self.finish(settled, cases, reply, records, talk)
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

    /// Tells whether the message came in long after it was written.
    pub(super) fn late(&self) -> bool {
        self.inbound.received - self.inbound.at > LATE
    }
}

/// Tells whether a finding speaks of the message rather than of a trailer.
pub(super) fn of_the_message(id: FindingId) -> bool {
    id.topic() == "desk"
}
