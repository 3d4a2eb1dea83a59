//! Who comes in: strangers, who learn nothing and change nothing; and those who hold an invite's code or scanned a sticker.

use sha2::{Digest, Sha256};

use super::Desk;
use super::inbound::{Body, Inbound, Outgoing, Sender, Turn};
use super::others::dispatchers_but;
use crate::book::{Attempt, CrewChange, Invite, Personal, Record, Spent};
use crate::fleet::{CrewMember, Role};
use crate::heard::Language;

/// The longest code that a link into the chat can carry (Telegram deep links).
const LONGEST_CODE: usize = 64;
/// What the code on a trailer's sticker begins with; an invite's code has no such letter in it.
const STICKER: &str = "u-";

/// What one of the crew opened a link with.
pub(super) enum Opened {
    /// A trailer's sticker: these words ask for what it shows.
    Asks(String),
    /// An invite, worked through.
    Turn(Box<Turn>),
}

/// Returns the code that `/start CODE` carries: what the chat network sends when somebody opens a link into the chat.
fn code(body: &Body) -> Option<&str> {
    let Body::Text(text) = body else { return None };
    let text = text.trim().trim_start_matches('/');
    let (word, code) = text.split_once(char::is_whitespace)?;
    let code = code.trim();
    (word.eq_ignore_ascii_case("start") && fits_a_link(code)).then_some(code)
}

/// Returns the code that a trailer's sticker carries; none where a link cannot carry its name.
pub fn sticker_code(unit: &str) -> Option<String> {
    let code = format!("{STICKER}{unit}");
    fits_a_link(&code).then_some(code)
}

/// Tells whether a link into the chat can carry a code (Telegram deep links).
fn fits_a_link(code: &str) -> bool {
    !code.is_empty()
        && code.len() <= LONGEST_CODE
        && code
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'_' | b'-'))
}

/// Returns the digest under which an invite's code is kept.
pub(super) fn digest(code: &str) -> String {
    let digest = Sha256::digest(code.as_bytes());
    digest.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Works through what somebody wrote who is not on the crew list: lets them in by a good invite, and refuses the rest.
pub(super) fn knock(desk: &Desk, inbound: &Inbound) -> Turn {
    let tried = match (code(&inbound.body), &inbound.from) {
        (Some(code), Sender::ChatUser(user)) if !code.starts_with(STICKER) => {
            match look_at(desk, inbound, code) {
                Ok(invite) => return join(desk, inbound, invite, *user),
                Err(tried) => tried,
            }
        }
        _ if matches!(inbound.body, Body::Press(_)) => Attempt::Press,
        _ => Attempt::Message,
    };
    refuse(desk, inbound, tried)
}

/// Works through a link that one of the crew opened; none where the message is none.
pub(super) fn opened(desk: &Desk, inbound: &Inbound, member: &CrewMember) -> Option<Opened> {
    let code = code(&inbound.body)?;
    let fleet = desk.fleet_at(inbound.at);
    let voice = desk.voice_for(member, None, &fleet, inbound.at);
    if let Some(unit) = code.strip_prefix(STICKER) {
        let asks = match voice.language() {
            Language::En => format!("status {unit}"),
            Language::Es => format!("estado {unit}"),
        };
        return Some(Opened::Asks(asks));
    }
    let mut turn = Turn::empty(inbound.at);
    turn.from = Some(member.id.clone());
    let text = match (look_at(desk, inbound, code), &inbound.from) {
        (Ok(invite), Sender::ChatUser(user)) if invite.who == member.id => {
            return Some(Opened::Turn(Box::new(join(desk, inbound, invite, *user))));
        }
        (Ok(invite), _) => voice.say("invite-not-yours", &[("who", invite.name.as_str().into())]),
        (Err(tried), _) => {
            turn.records.push(Record::Refused {
                at: inbound.received,
                who: Personal::new(&*member.id),
                answered: false,
                tried,
            });
            voice.word("invite-spent")
        }
    };
    turn.outgoing
        .push(Outgoing::to(&member.id, text).answering(inbound));
    Some(Opened::Turn(Box::new(turn)))
}

/// Finds the invite that a code opens, or what is wrong with it.
fn look_at<'a>(desk: &'a Desk, inbound: &Inbound, code: &str) -> Result<&'a Invite, Attempt> {
    let code = code.to_ascii_lowercase();
    match desk.book.people().invite(&digest(&code)) {
        None => Err(Attempt::ForgedInvite),
        Some((_, Some(Spent::Used))) => Err(Attempt::UsedInvite),
        Some((_, Some(Spent::Withdrawn))) => Err(Attempt::WithdrawnInvite),
        Some((invite, None)) if inbound.at >= invite.expires => Err(Attempt::ExpiredInvite),
        Some((invite, None)) => Ok(invite),
    }
}

/// Lets somebody in, greets them, and tells the dispatchers.
fn join(desk: &Desk, inbound: &Inbound, invite: &Invite, user: i64) -> Turn {
    let fleet = desk.fleet_at(inbound.at);
    let mut turn = Turn::empty(inbound.at);
    turn.from = Some(invite.who.clone());
    turn.records.push(Record::Crew {
        at: inbound.received,
        by: invite.who.clone(),
        change: CrewChange::Joined {
            who: invite.who.clone(),
            digest: invite.digest.clone(),
            chat_user: Some(user),
        },
    });
    let voice = desk
        .replies
        .voice(invite.language, fleet.style, fleet.time_zone, inbound.at);
    let text = voice.say(
        "joined",
        &[
            ("who", invite.name.as_str().into()),
            ("company", fleet.company.as_str().into()),
            ("role", role(&voice, invite.role).into()),
        ],
    );
    turn.outgoing
        .push(Outgoing::to(&invite.who, text).answering(inbound));
    for (to, voice) in dispatchers_but(desk, &fleet, inbound.at, |id| id == invite.who) {
        let args = [
            ("who", invite.name.as_str().into()),
            ("role", role(&voice, invite.role).into()),
        ];
        turn.outgoing
            .push(Outgoing::to(&to.id, voice.say("joined-told", &args)));
    }
    turn
}

/// Returns the word for a role.
pub(super) fn role(voice: &crate::reply::Voice<'_>, role: Role) -> String {
    voice.word(match role {
        Role::Driver => "role-driver",
        Role::Tech => "role-tech",
        Role::Dispatcher => "role-dispatcher",
    })
}

/// Answers a stranger with one fixed neutral line, at most once a day, whatever they wrote.
fn refuse(desk: &Desk, inbound: &Inbound, tried: Attempt) -> Turn {
    let mut turn = Turn::empty(inbound.at);
    let who = match &inbound.from {
        Sender::Crew(id) => id.clone(),
        Sender::ChatUser(user) => user.to_string(),
    };
    let told = desk
        .book
        .refused(&who)
        .is_some_and(|last| (inbound.received - last).num_hours() < 24);
    // a stranger who presses a button in a group is counted, and the group is not told so
    let answered = !told && inbound.chat.is_none_or(|chat| chat >= 0);
    turn.records.push(Record::Refused {
        at: inbound.received,
        who: Personal::new(who),
        answered,
        tried,
    });
    if answered {
        let fleet = desk.fleet_at(inbound.at);
        let voice = desk
            .replies
            .voice(fleet.language, fleet.style, fleet.time_zone, inbound.at);
        turn.outgoing
            .push(Outgoing::to("", voice.word("stranger")).in_chat_of(inbound));
    }
    turn
}
