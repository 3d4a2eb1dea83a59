//! What the clerk does when something cannot be written down, or somebody cannot be reached.

use std::collections::{BTreeMap, HashSet};

use chrono::{DateTime, TimeDelta, Utc};
use tracing::warn;

use super::GivenUp;
use super::letter::{Note, Parcel, ParcelId};
use super::turns::Turns;
use super::work::Work;
use crate::book::{MessageKey, Personal};
use crate::desk::{Inbound, Outgoing};
use crate::finding::Level;
use crate::fleet::Role;

/// How often one chat is told that nothing is logged.
const TOLD_EVERY: TimeDelta = TimeDelta::hours(1);

/// Whether logging fails at present, and who was told so.
pub(super) struct Trouble {
    comes_again: bool,
    lasts: bool,
    told: BTreeMap<String, DateTime<Utc>>,
    warned: HashSet<MessageKey>,
}

impl Trouble {
    pub(super) fn new(comes_again: bool) -> Self {
        Trouble {
            comes_again,
            lasts: false,
            told: BTreeMap::new(),
            warned: HashSet::new(),
        }
    }

    /// Notes that logging fails; tells whether it worked until now.
    pub(super) fn begins(&mut self) -> bool {
        !std::mem::replace(&mut self.lasts, true)
    }

    /// Notes that logging works; tells whether it failed until now.
    pub(super) fn is_over(&mut self) -> bool {
        self.warned.clear();
        std::mem::replace(&mut self.lasts, false)
    }

    pub(super) fn lasts(&self) -> bool {
        self.lasts
    }

    /// Tells whether a person may be told now, and notes that they were. On a console every message has to be sent again,
    /// so every one is answered.
    fn tell(&mut self, who: &str, now: DateTime<Utc>) -> bool {
        if self.comes_again
            && self
                .told
                .get(who)
                .is_some_and(|told| now - *told < TOLD_EVERY)
        {
            return false;
        }
        self.told.insert(who.to_owned(), now);
        true
    }
}

impl<T: Turns> Work<T> {
    /// Says first words for dangers, and to each sender that nothing is logged, when a batch could not be written.
    pub(super) fn say_not_logged(
        &mut self,
        inbound: &[Inbound],
        dangers: Vec<(MessageKey, Outgoing)>,
    ) {
        let now = (self.clock)();
        let fresh: Vec<_> = dangers
            .into_iter()
            .filter(|(key, _)| !self.trouble.warned.contains(key))
            .collect();
        for (key, danger) in fresh {
            self.trouble.warned.insert(key);
            let fleet = self.state.turns.fleet();
            let member = fleet.and_then(|fleet| fleet.crew.get(&danger.to)).cloned();
            let language = member
                .as_ref()
                .map_or(crate::heard::Language::En, |member| {
                    self.language_of(member)
                });
            let chat = danger.chat.or(member.and_then(|member| member.chat_user));
            let parcel = Parcel {
                id: None,
                to: danger.to,
                chat: chat.map(|chat| self.state.outbox.current(chat)),
                topic: danger.topic,
                text: self.phrases.danger_not_logged(language, danger.text.text()),
                level: danger.level,
                answers: danger.answers,
                ..Parcel::default()
            };
            (self.deliver)(parcel);
        }
        for inbound in inbound {
            let Some(member) = self.member(&inbound.from) else {
                continue;
            };
            if !self.trouble.tell(&member.id, now) {
                continue;
            }
            let text = self
                .phrases
                .not_logged(self.language_of(&member), !self.trouble.comes_again)
                .to_owned();
            let chat = inbound.chat.or(member.chat_user);
            let answers = Some(inbound.key.clone());
            (self.deliver)(Parcel {
                to: member.id,
                chat,
                topic: inbound.topic,
                text,
                answers,
                ..Parcel::default()
            });
        }
    }

    /// Takes a message out of the outbox that will not be sent, and tells the dispatchers where a person must be phoned.
    pub(super) fn give_up(&mut self, id: ParcelId, why: &GivenUp) {
        let Some(letter) = self.state.outbox.letter(id).cloned() else {
            return;
        };
        let reason = match why {
            GivenUp::Unreachable => "unreachable",
            GivenUp::Refused(what) => what.as_str(),
        };
        warn!(
            "message {} of turn {} is given up: {reason}",
            id.index, id.turn
        );
        let mut notes = vec![Note::GivenUp {
            id,
            why: reason.to_owned(),
        }];
        let group = letter.chat().filter(|chat| *chat < 0);
        let who = group.map_or_else(|| letter.to.clone(), |chat| chat.to_string());
        let newly = *why == GivenUp::Unreachable
            && !who.is_empty()
            && !self.state.outbox.is_unreachable(&who);
        if newly {
            notes.push(Note::Unreachable {
                who: Personal::new(&*who),
            });
        }
        let mut outgoing = Vec::new();
        let fleet = self.state.turns.fleet().cloned();
        if let (Some(fleet), false) = (fleet, letter.to.is_empty()) {
            let name = fleet
                .crew
                .get(&letter.to)
                .map_or(letter.to.as_str(), |member| member.name.as_str());
            // only those who can be reached, so that two who cannot do not send each other about for ever
            let reached = |id: &str| id != letter.to && !self.state.outbox.is_unreachable(id);
            for dispatcher in fleet
                .crew
                .values()
                .filter(|member| member.role == Role::Dispatcher && reached(&member.id))
            {
                let language = self.language_of(dispatcher);
                let text = match letter.level {
                    Some(Level::Danger | Level::Warning) => {
                        self.phrases.undelivered(language, name, letter.text.text())
                    }
                    _ if newly => self.phrases.unreachable(language, name),
                    _ => continue,
                };
                // a notice that is itself refused must not bring forth another
                let level = letter.level.filter(|_| *why == GivenUp::Unreachable);
                let to = dispatcher.id.clone();
                outgoing.push(Outgoing::to(&to, text).of_level(level));
            }
        }
        self.write_notes(notes, outgoing);
    }
}
