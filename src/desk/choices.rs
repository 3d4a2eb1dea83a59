//! Which likely answers a message offers as buttons, and what a press of one comes to.
//!
//! A press says what its person could have written, so it goes through the same door as words do and no rule knows of
//! buttons. What it adds is what it bears on: the question, the step, the message of the button. Where that is over, the
//! press changes nothing.

use chrono::{DateTime, Utc};
use sha2::{Digest, Sha256};

use super::Desk;
use super::door;
use super::inbound::{Choice, Inbound, Outgoing, Press, Turn};
use super::receive::Hearing;
use crate::book::{Attempt, Bears, Offer, Personal, Pressed, Record, Task};
use crate::dialogue::{About, Talk};
use crate::finding::Finding;
use crate::fleet::CrewMember;
use crate::heard::UnitName;
use crate::reply::{Arg, Voice};

/// How many buttons a message has at most: they must be hit in a glove.
const MOST: usize = 4;
/// How many tasks of a message can be called done by a button.
const MOST_TASKS: usize = 2;

/// What a reply says that likely answers follow from.
pub(super) struct Said<'a> {
    /// The findings that it tells.
    pub(super) findings: &'a [Finding],
    /// The open tasks that it tells.
    pub(super) tasks: &'a [Task],
    /// Whether it says that something was logged.
    pub(super) logged: bool,
    /// What is open with the sender after it.
    pub(super) talk: &'a Talk,
    /// The answers to the step that it asks.
    pub(super) step: &'a [&'static str],
}

/// Returns the likely answers to a reply.
pub(super) fn of_reply(hearing: &Hearing<'_>, voice: &Voice<'_>, said: &Said<'_>) -> Vec<Choice> {
    let mut choices = asked(hearing.now, voice, said);
    for task in said.tasks.iter().take(MOST_TASKS) {
        choices.push(of_task(voice, "done", task.id));
    }
    if !said.findings.is_empty() {
        choices.push(why(voice, said.findings));
    }
    if said.logged {
        let bears = Bears::Message(hearing.key.clone());
        choices.push(plain(voice, "not-right", bears));
    }
    choices.truncate(MOST);
    choices
}

/// Returns the answers to what a reply asks: a step of a check, of setting up or leaving, or a question.
fn asked(now: DateTime<Utc>, voice: &Voice<'_>, said: &Said<'_>) -> Vec<Choice> {
    let talk = said.talk;
    let question = talk
        .question
        .as_ref()
        .filter(|question| question.asked == now);
    if !said.step.is_empty() {
        let check = talk
            .checks
            .last()
            .filter(|check| check.asked == now && !check.waits);
        let round = talk.round.as_ref().filter(|round| round.asked == now);
        // two things asked at once: nobody could tell which of them a bare yes answers
        let bears = match (question, check, round) {
            (None, Some(_), None) => Bears::Step(now),
            (None, None, Some(_)) => Bears::Round(now),
            _ => return Vec::new(),
        };
        let answers = said.step.iter();
        return answers
            .map(|code| plain(voice, code, bears.clone()))
            .collect();
    }
    let Some(question) = question else {
        return Vec::new();
    };
    let bears = Bears::Question(now);
    let codes = |codes: &[&str]| -> Vec<Choice> {
        let codes = codes.iter();
        codes
            .map(|code| plain(voice, code, bears.clone()))
            .collect()
    };
    let own = |label: String, says: String| Choice::new(label, says, bears.clone());
    match &question.about {
        About::WhichUnit { likely, .. } | About::WhichUnitOf { likely, .. } => likely
            .iter()
            .take(MOST)
            .map(|unit| own(unit.to_string(), unit.to_string()))
            .collect(),
        About::TapsShut { .. } => codes(&["shut", "running"]),
        About::BeforeRegulator { .. } => codes(&["before", "after"]),
        About::WhichTask { ids } if ids.len() == 1 => codes(&["yes", "no"]),
        About::WhichTask { ids } => {
            let ids = ids.iter().take(MOST);
            ids.map(|id| {
                let args = [("id", Arg::Count(i64::from(*id)))];
                own(voice.say("choice-done", &args), id.to_string())
            })
            .collect()
        }
        About::UndoOlder { .. } => codes(&["yes", "no"]),
        About::WhichMend { ways, .. } => {
            let places = ["first", "second", "third"];
            let ways = voice.ways(ways).into_iter().zip(places);
            ways.map(|(way, place)| own(way, voice.word(&format!("choice-{place}-says"))))
                .collect()
        }
        About::WhatValue { .. } | About::When { .. } => Vec::new(),
    }
}

/// Makes the button that takes note of an alarm.
pub(super) fn got_it(voice: &Voice<'_>) -> Choice {
    plain(voice, "got-it", Bears::Once)
}

/// Makes the button that takes a task.
pub(super) fn take(voice: &Voice<'_>, id: u32) -> Choice {
    of_task(voice, "take", id)
}

fn plain(voice: &Voice<'_>, code: &str, bears: Bears) -> Choice {
    let label = voice.word(&format!("choice-{code}"));
    Choice::new(label, voice.word(&format!("choice-{code}-says")), bears)
}

fn of_task(voice: &Voice<'_>, code: &str, id: u32) -> Choice {
    let args = [("id", Arg::Count(i64::from(id)))];
    let label = voice.say(&format!("choice-{code}"), &args);
    let says = voice.say(&format!("choice-{code}-says"), &args);
    Choice::new(label, says, Bears::Once)
}

/// Makes the button that asks why, about the trailer that all findings are of.
fn why(voice: &Voice<'_>, findings: &[Finding]) -> Choice {
    let mut units: Vec<&UnitName> = findings
        .iter()
        .filter_map(|finding| finding.unit.as_ref())
        .collect();
    units.dedup();
    let mut says = voice.word("choice-why-says");
    if let [unit] = units.as_slice() {
        says = format!("{says} {unit}");
    }
    Choice::new(voice.word("choice-why"), says, Bears::Anytime)
}

/// Gives the buttons of a turn their keys, and writes down what was offered. A message that reaches nobody's chat has
/// none, and without chance there are none at all.
pub(super) fn seal(desk: &Desk, turn: &mut Turn, at: DateTime<Utc>) {
    let mut outgoing = std::mem::take(&mut turn.outgoing);
    let mut number: u32 = 0;
    for out in outgoing.iter_mut().filter(|out| !out.choices.is_empty()) {
        let (Some(chance), Some(chat)) = (desk.means.chance, chat_of(desk, out)) else {
            out.choices.clear();
            continue;
        };
        let mut offers = Vec::with_capacity(out.choices.len());
        for choice in &mut out.choices {
            let hash = Sha256::new()
                .chain_update(b"button")
                .chain_update(chance)
                .chain_update(at.timestamp_micros().to_be_bytes())
                .chain_update(number.to_be_bytes())
                .finalize();
            number += 1;
            // 128 bits, as many as chance gave
            choice.key = hash[..16]
                .iter()
                .map(|byte| format!("{byte:02x}"))
                .collect();
            offers.push(Offer {
                digest: door::digest(&choice.key),
                says: choice.says.clone(),
                bears: choice.bears.clone(),
            });
        }
        turn.records.push(Record::Offered {
            at,
            who: out.to.clone(),
            chat: Some(chat),
            offers,
        });
    }
    turn.outgoing = outgoing;
}

fn chat_of(desk: &Desk, out: &Outgoing) -> Option<i64> {
    let own = || desk.book.fleet()?.crew.get(&out.to)?.chat_user;
    out.chat.or_else(own)
}

/// What a good press says, and what it bears on.
pub(super) struct Word {
    pub(super) says: String,
    pub(super) bears: Bears,
    pub(super) record: Record,
}

/// Looks a press up.
///
/// # Errors
///
/// The turn that refuses it: it changes nothing but what is counted, and tells whoever pressed.
pub(super) fn pressed(
    desk: &Desk,
    inbound: &Inbound,
    member: &CrewMember,
    press: &Press,
) -> Result<Word, Turn> {
    let digest = door::digest(&press.key);
    let at = inbound.received;
    let offers = desk.book.offers();
    let (key, counts) = match offers.press(&digest, &member.id, inbound.chat, at) {
        Pressed::Good(offer) if stands(desk, member, &offer.bears, at) => {
            return Ok(Word {
                says: offer.says.clone(),
                bears: offer.bears.clone(),
                record: Record::Pressed {
                    at,
                    who: member.id.clone(),
                    digest,
                },
            });
        }
        Pressed::Good(_) => ("press-over", false),
        Pressed::Spent => ("press-spent", false),
        Pressed::Expired => ("press-expired", false),
        Pressed::NotTheirs => ("press-not-yours", true),
        Pressed::Unknown => ("press-unknown", true),
    };
    let fleet = desk.fleet_at(at);
    let mut turn = Turn::empty(at);
    turn.from = Some(member.id.clone());
    turn.toast = Some(desk.voice_for(member, None, &fleet, at).word(key));
    if counts {
        turn.records.push(Record::Refused {
            at,
            who: Personal::new(&*member.id),
            answered: false,
            tried: Attempt::Press,
        });
    }
    Err(turn)
}

/// Tells whether what a button bears on is still open, so that a bare answer would be taken for it.
fn stands(desk: &Desk, member: &CrewMember, bears: &Bears, at: DateTime<Utc>) -> bool {
    let asks_once = !matches!(bears, Bears::Anytime | Bears::Once | Bears::Message(_));
    let Some(talk) = desk.book.talk(&member.id) else {
        return !asks_once;
    };
    let question = talk.question_at(at).map(|question| question.asked);
    let check = talk.checks.last().map(|check| check.asked);
    let round = talk.round.as_ref().map(|round| round.asked);
    match bears {
        Bears::Anytime | Bears::Once | Bears::Message(_) => true,
        Bears::Question(asked) => question == Some(*asked),
        Bears::Step(asked) => {
            check == Some(*asked)
                && question.is_none_or(|other| other <= *asked)
                && round.is_none_or(|other| other <= *asked)
        }
        Bears::Round(asked) => {
            round == Some(*asked)
                && question.is_none_or(|other| other <= *asked)
                && check.is_none_or(|other| other < *asked)
        }
    }
}
