//! Orders about the crew itself: who is let in, who may do what, who is shut out, how somebody wants to be served.

mod invite;
mod list;
mod own;
mod words;

use chrono::{DateTime, Utc};

pub(super) use invite::from_outside as invite_from_outside;
pub(super) use words::order;

use super::answer::Reply;
use super::door;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::receive::Hearing;
use crate::book::{CrewChange, Record};
use crate::fleet::{CrewMember, Role};
use crate::heard::{Command, CommandName};
use crate::reply::Voice;

/// Obeys an order about the crew; false where it is none.
pub(super) fn obey(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    match order.name {
        CommandName::Invite => invite::invite(hearing, &order.rest, reply, records),
        CommandName::Role => set_role(hearing, &order.rest, reply, records),
        CommandName::ShutOut => shut_out(hearing, &order.rest, reply, records),
        CommandName::Crew => list::list(hearing, reply),
        CommandName::Leave => own::leave(hearing, reply, records),
        CommandName::Language => own::language(hearing, &order.rest, reply, records),
        CommandName::Quiet => own::quiet(hearing, &order.rest, reply, records),
        _ => return false,
    }
    true
}

/// Whom a name means.
enum Named<'a> {
    One(&'a CrewMember),
    /// Several go by it: their ids tell them apart.
    Several(Vec<&'a str>),
    Nobody,
}

/// Finds a person by crew id, else by name, in any case.
fn find<'a>(crew: impl Iterator<Item = &'a CrewMember> + Clone, name: &str) -> Named<'a> {
    let name = name.trim().trim_end_matches([':', ',', '.']).to_lowercase();
    if let Some(member) = crew.clone().find(|member| member.id.to_lowercase() == name) {
        return Named::One(member);
    }
    let called: Vec<&CrewMember> = crew
        .filter(|member| member.name.to_lowercase() == name)
        .collect();
    match called.as_slice() {
        [] => Named::Nobody,
        [one] => Named::One(one),
        several => Named::Several(several.iter().map(|member| member.id.as_str()).collect()),
    }
}

/// Finds a person of the crew, or says why not.
fn person<'a>(
    hearing: &'a Hearing<'_>,
    name: &str,
    reply: &mut Reply<'_>,
) -> Option<&'a CrewMember> {
    match find(hearing.fleet.crew.values(), name) {
        Named::One(member) => Some(member),
        Named::Several(ids) => {
            let ids: Vec<String> = ids.into_iter().map(str::to_owned).collect();
            let ids = reply.voice.one_of(&ids);
            reply.say("people-which", &[("ids", ids.into())]);
            None
        }
        Named::Nobody => {
            let quoted = reply.voice.quote(name);
            reply.say("people-unknown", &[("quote", quoted.into())]);
            None
        }
    }
}

/// Tells whether nobody else who can write to the bot is a dispatcher.
fn is_last_dispatcher(hearing: &Hearing<'_>, who: &CrewMember) -> bool {
    let heard = |other: &CrewMember| who.chat_user.is_none() || other.chat_user.is_some();
    who.role == Role::Dispatcher
        && !hearing
            .fleet
            .crew
            .values()
            .any(|other| other.role == Role::Dispatcher && other.id != who.id && heard(other))
}

fn set_role(hearing: &Hearing<'_>, rest: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let Some((name, role)) = words::last_role(hearing.desk.phrases, rest) else {
        reply.say("role-how", &[]);
        return;
    };
    let Some(member) = person(hearing, name, reply).cloned() else {
        return;
    };
    let told = |voice: &Voice<'_>, key: &str| {
        voice.say(
            key,
            &[
                ("who", member.name.as_str().into()),
                ("role", door::role(voice, role).into()),
            ],
        )
    };
    if member.role == role {
        reply.lines.push(told(&reply.voice, "role-same"));
        return;
    }
    if is_last_dispatcher(hearing, &member) {
        reply.say("last-dispatcher", &[]);
        return;
    }
    let who = member.id.clone();
    records.push(change(hearing, CrewChange::Role { who, role }));
    reply.lines.push(told(&reply.voice, "role-set"));
    if member.id != hearing.member.id {
        let voice = hearing
            .desk
            .voice_for(&member, None, &hearing.fleet, hearing.now);
        let text = told(&voice, "role-yours");
        reply
            .others
            .push(super::inbound::Outgoing::to(&member.id, text));
    }
    tell_others(hearing, &[&member.id], reply, |voice| {
        told(voice, "role-set")
    });
}

/// Shuts a phone out at once: its words and presses count no more, and what waits for it is not sent.
fn shut_out(hearing: &Hearing<'_>, rest: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    if rest.trim().is_empty() {
        reply.say("shut-out-how", &[]);
        return;
    }
    let people = hearing.desk.book.people();
    // somebody who has not joined yet: the invite is what can be taken away
    if let Named::Nobody = find(hearing.fleet.crew.values(), rest) {
        let name = rest.trim().to_lowercase();
        let invite = people
            .invites(hearing.now)
            .find(|invite| invite.name.to_lowercase() == name || invite.who == name);
        if let Some(invite) = invite {
            let who = invite.who.clone();
            reply.say("invite-withdrawn", &[("who", invite.name.as_str().into())]);
            records.push(change(hearing, CrewChange::ShutOut { who }));
            return;
        }
        if let Named::One(member) = find(people.out(), rest) {
            reply.say("shut-out-already", &[("who", member.name.as_str().into())]);
            return;
        }
    }
    let Some(member) = person(hearing, rest, reply).cloned() else {
        return;
    };
    if is_last_dispatcher(hearing, &member) {
        reply.say("last-dispatcher", &[]);
        return;
    }
    let who = member.id.clone();
    records.push(change(hearing, CrewChange::ShutOut { who }));
    reply.say("shut-out", &[("who", member.name.as_str().into())]);
    let by = hearing.member.name.clone();
    tell_others(hearing, &[&member.id], reply, |voice| {
        voice.say(
            "shut-out-told",
            &[
                ("by", by.as_str().into()),
                ("who", member.name.as_str().into()),
            ],
        )
    });
}

/// Tells the dispatchers but the sender and those named.
fn tell_others(
    hearing: &Hearing<'_>,
    but: &[&str],
    reply: &mut Reply<'_>,
    words: impl Fn(&Voice<'_>) -> String,
) {
    let others = other_dispatchers(hearing).filter(|(to, _)| !but.contains(&to.id.as_str()));
    let letters = others.map(|(to, voice)| Outgoing::to(&to.id, words(&voice)));
    reply.others.extend(letters);
}

fn change(hearing: &Hearing<'_>, change: CrewChange) -> Record {
    record(hearing.now, &hearing.member.id, change)
}

fn record(at: DateTime<Utc>, by: &str, change: CrewChange) -> Record {
    Record::Crew {
        at,
        by: by.to_owned(),
        change,
    }
}
