//! Somebody who is not on the crew list: learns nothing, changes nothing.

use super::Desk;
use super::inbound::{Inbound, Outgoing, Sender, Turn};
use crate::book::{Personal, Record};

/// Answers a stranger with one fixed neutral line, at most once a day in a chat, whatever they wrote.
pub(super) fn refuse(desk: &Desk, inbound: &Inbound) -> Turn {
    let mut turn = Turn::empty(inbound.at);
    let who = match &inbound.from {
        Sender::Crew(id) => id.clone(),
        Sender::ChatUser(user) => user.to_string(),
    };
    let told = desk
        .book
        .refused(&who)
        .is_some_and(|last| (inbound.received - last).num_hours() < 24);
    turn.records.push(Record::Refused {
        at: inbound.received,
        who: Personal::new(who),
        answered: !told,
    });
    if !told {
        let fleet = desk.fleet_at(inbound.at);
        let voice = desk
            .replies
            .voice(fleet.language, fleet.style, fleet.time_zone, inbound.at);
        turn.outgoing.push(Outgoing {
            to: String::new(),
            chat: inbound.chat,
            text: Personal::new(voice.word("stranger")),
            level: None,
            answers: None,
        });
    }
    turn
}
