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
use super::receive::{Hearing, of_the_message};
use crate::book::{Attempt, Bears, Offer, Personal, Pressed, Record, Task};
use crate::dialogue::{About, Talk};
use crate::finding::{Finding, Level};
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
    // what a danger asks for is not called done in passing
    let danger = said
        .findings
        .iter()
        .any(|finding| finding.level == Level::Danger);
    for task in said.tasks.iter().take(MOST_TASKS).filter(|_| !danger) {
        choices.push(of_task(voice, "done", task.id));
    }
    let advice = |finding: &&Finding| !of_the_message(finding.id);
    let units: Vec<&UnitName> = said
        .findings
        .iter()
        .filter(advice)
        .filter_map(|finding| finding.unit.as_ref())
        .collect();
    if !units.is_empty() {
        choices.push(why(voice, units));
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
        About::WhichUnit { likely, .. }
        | About::WhichUnitOf { likely, .. }
        | About::PhotoOf { likely } => likely
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
        About::Arrived { units, .. } if units.len() == 1 => codes(&["yes", "no"]),
        About::Arrived { units, .. } => {
            let units = units.iter().take(MOST - 1);
            let units = units.map(|unit| own(unit.to_string(), unit.to_string()));
            units.chain(codes(&["all"])).collect()
        }
        About::UndoOlder { .. }
        | About::UndoNext
        | About::WasPumped { .. }
        | About::NoDanger { .. }
        | About::HurtNow { .. }
        | About::Worry { .. }
        | About::ReleaseSure { .. }
        | About::Leaves { unit: Some(_) } => codes(&["yes", "no"]),
        About::WhichMend { ways, .. } => {
            let places = ["first", "second", "third"];
            let ways = voice.ways(ways).into_iter().zip(places);
            ways.map(|(way, place)| own(way, voice.word(&format!("choice-{place}-says"))))
                .collect()
        }
        About::WhatValue { .. }
        | About::CordsLive { .. }
        | About::When { .. }
        | About::IncidentFact { .. }
        | About::OverrideWhy { .. }
        | About::ReleaseWhy { .. }
        | About::TruckWhen { .. }
        | About::HowMuch { .. }
        | About::Alone { .. }
        | About::Leaves { unit: None } => Vec::new(),
    }
}

/// Makes the button that takes note of an alarm.
pub(super) fn got_it(voice: &Voice<'_>) -> Choice {
    plain(voice, "got-it", Bears::Once)
}

/// Makes the buttons under the question whether a lone worker is well.
pub(super) fn well(voice: &Voice<'_>) -> Vec<Choice> {
    ["ok", "help"]
        .map(|code| plain(voice, code, Bears::Once))
        .into()
}

/// Offers to take a task, or to take note of it.
pub(super) fn for_task(out: Outgoing, voice: &Voice<'_>, id: u32) -> Outgoing {
    out.offering(vec![of_task(voice, "take", id), got_it(voice)])
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

/// Makes the button that asks why: about the one trailer that was advised on, or about all.
fn why(voice: &Voice<'_>, mut units: Vec<&UnitName>) -> Choice {
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
) -> Result<Word, Box<Turn>> {
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
    Err(Box::new(turn))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::{Ask, CommandName, Heard, Language, ShortAnswer};
    use crate::quantity::Style;
    use crate::reply::Replies;
    use crate::words::Reader;

    /// What the reader makes of the words of a button, in each language.
    fn hears(code: &str, more: &str) -> Vec<Heard> {
        let (replies, reader) = (Replies::new(), Reader::new());
        let say = |language| {
            let voice = replies.voice(language, Style::default(), chrono_tz::UTC, at());
            let says = voice.say(&format!("choice-{code}-says"), &[("id", Arg::Count(6))]);
            reader.hear(&format!("{says}{more}"), Style::default().temperature)
        };
        [Language::En, Language::Es].map(say).into()
    }

    fn at() -> DateTime<Utc> {
        DateTime::UNIX_EPOCH
    }

    #[test]
    fn the_words_of_each_button_are_read_as_meant() {
        for heard in hears("done", "") {
            assert_eq!(heard.ask, Some(Ask::Done { task: 6 }));
        }
        for heard in hears("why", " 12") {
            let unit = Some(UnitName::new("12"));
            assert_eq!(heard.ask, Some(Ask::Why { unit }));
        }
        for heard in hears("not-right", "") {
            assert_eq!(heard.ask, Some(Ask::Undo));
        }
        let orders = [("take", CommandName::Take), ("got-it", CommandName::GotIt)];
        for (code, name) in orders {
            for heard in hears(code, "") {
                assert_eq!(heard.command.map(|order| order.name), Some(name), "{code}");
            }
        }
        let answers = [
            ("yes", ShortAnswer::Yes),
            ("ready", ShortAnswer::Yes),
            ("no", ShortAnswer::No),
        ];
        for (code, word) in answers {
            for heard in hears(code, "") {
                let answer = heard.answer.unwrap_or_default();
                assert_eq!(answer.word, Some(word), "{code}");
            }
        }
    }
}
