//! Invites: a link that lets one person in, once, for three days.

use chrono::{DateTime, TimeDelta, Utc};
use unicode_normalization::UnicodeNormalization;

use super::super::answer::Reply;
use super::super::door;
use super::super::inbound::{Outgoing, Turn};
use super::super::receive::Hearing;
use super::super::{Desk, Means};
use super::{Named, find, record, words};
use crate::book::{CrewChange, Invite, Record};

use crate::fleet::Role;
use crate::heard::Language;

/// How long an invite counts.
const LASTS: TimeDelta = TimeDelta::hours(72);
/// How many letters of a name are kept.
const LONGEST_NAME: usize = 40;

/// Makes an invite: `tech Sam es`.
pub(super) fn invite(
    hearing: &Hearing<'_>,
    rest: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let phrases = &hearing.desk.phrases;
    let mut tokens: Vec<&str> = rest.split_whitespace().collect();
    let role = tokens.first().and_then(|word| words::role(phrases, word));
    if role.is_some() {
        tokens.remove(0);
    }
    let language = match tokens.len() {
        0 | 1 => None,
        _ => tokens
            .last()
            .and_then(|word| words::language(phrases, word)),
    };
    if language.is_some() {
        tokens.pop();
    }
    let name = named(&tokens.join(" "));
    let (Some(role), Some(name)) = (role, name) else {
        reply.say("invite-how", &[]);
        return;
    };
    let language = language.unwrap_or(hearing.fleet.language);
    let Some((invite, code)) = make(hearing.desk, hearing.now, role, &name, language) else {
        reply.say("invite-not-here", &[]);
        return;
    };
    let voice = &reply.voice;
    let role = door::role(voice, role);
    let line = voice.say(
        "invite-made",
        &[
            ("who", name.as_str().into()),
            ("role", role.into()),
            ("time", invite.expires.into()),
        ],
    );
    reply.lines.push(line);
    let fleet = &hearing.fleet;
    let theirs = hearing
        .desk
        .replies
        .voice(language, fleet.style, fleet.time_zone, hearing.now);
    let words = words_for(&hearing.desk.means, &theirs, &fleet.company, &name, &code);
    // of its own, so that it can be passed on as it is; and to the dispatcher alone, never into a group
    reply.others.push(Outgoing::to(&hearing.member.id, words));
    records.push(record(
        hearing.now,
        &hearing.member.id,
        CrewChange::Invited { invite },
    ));
}

/// Makes the turn that invites somebody from the command line, and returns the code to give them.
///
/// # Errors
///
/// Says why nobody is invited, and what to do.
pub(in crate::desk) fn from_outside(
    desk: &Desk,
    at: DateTime<Utc>,
    role: Role,
    name: &str,
    language: Language,
) -> Result<(Turn, String), String> {
    if desk.book.fleet().is_none() {
        return Err("no fleet was ever loaded here: load one first (`hosebib fleet load`)".into());
    }
    let known = named(name).ok_or_else(|| {
        format!("`{name}` is no name: give one with a letter, at most {LONGEST_NAME} long")
    })?;
    let (invite, code) = make(desk, at, role, &known, language)
        .ok_or("there is no chance to make a code from: report this as a fault")?;
    let mut turn = Turn::empty(at);
    let change = CrewChange::Invited { invite };
    turn.records.push(record(at, "", change));
    Ok((turn, code))
}

/// Makes an invite and its code; none where no chance was lent.
fn make(
    desk: &Desk,
    now: DateTime<Utc>,
    role: Role,
    name: &str,
    language: Language,
) -> Option<(Invite, String)> {
    let code: String = desk
        .means
        .chance?
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let invite = Invite {
        who: id_for(desk, now, name),
        name: name.to_owned(),
        role,
        language,
        digest: door::digest(&code),
        expires: now + LASTS,
    };
    Some((invite, code))
}

/// Returns the words that let somebody in: a link where the bot's name is known.
fn words_for(
    means: &Means,
    voice: &crate::reply::Voice<'_>,
    company: &str,
    name: &str,
    code: &str,
) -> String {
    let who = ("who", name.into());
    let company = ("company", company.into());
    match &means.bot {
        Some(bot) => {
            let link = format!("https://t.me/{bot}?start={code}");
            voice.say("invite-link", &[who, company, ("link", link.into())])
        }
        None => voice.say("invite-code", &[who, company, ("code", code.into())]),
    }
}

/// Tidies a name: one line, no control or direction marks; none without a letter, or where it is too long.
fn named(text: &str) -> Option<String> {
    let hidden = |c: char| {
        c.is_control()
            || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
    };
    let shown: String = text.chars().filter(|c| !hidden(*c)).collect();
    let name = shown.split_whitespace().collect::<Vec<_>>().join(" ");
    let fits = name.chars().any(char::is_alphabetic) && name.chars().count() <= LONGEST_NAME;
    fits.then_some(name)
}

/// Returns the crew id that an invite is for: that of somebody of this name, who comes back or changes phones; else a new one.
fn id_for(desk: &Desk, now: DateTime<Utc>, name: &str) -> String {
    let people = desk.book.people();
    let crew = people.crew();
    if let Named::One(member) = find(crew.values(), name) {
        return member.id.clone();
    }
    if let Named::One(member) = find(people.out(), name) {
        return member.id.clone();
    }
    if let Some(invite) = people.invites(now).find(|invite| invite.name == name) {
        return invite.who.clone();
    }
    let plain: String = name
        .to_lowercase()
        .nfd()
        .filter(|c| c.is_ascii_alphanumeric() || *c == ' ' || *c == '-')
        .map(|c| if c == ' ' { '-' } else { c })
        .collect();
    let plain = match plain.trim_matches('-') {
        "" => "crew",
        plain => plain,
    };
    let taken = |id: &str| {
        crew.contains_key(id)
            || people.out().any(|member| member.id == id)
            || people.invites(now).any(|invite| invite.who == id)
    };
    (1..)
        .map(|n| match n {
            1 => plain.to_owned(),
            n => format!("{plain}-{n}"),
        })
        .find(|id| !taken(id))
        .expect("only so many ids are taken")
}
