//! A truck that is told of again: one that takes another's place, a second one, and an older word that comes late.

use chrono::{DateTime, TimeDelta, Utc};

use super::again::{ordered_lately, units_in};
use super::says::is_told_of;
use crate::book::{Task, TaskChange};
use crate::desk::answer::Reply;
use crate::desk::inbound::Outgoing;
use crate::desk::phrases::{is_marked, plain};
use crate::desk::receive::{Hearing, Texted, lead};
use crate::desk::settle;
use crate::desk::tasks::WORTH_MOVING;
use crate::finding::{Level, TaskKind};
use crate::heard::UnitName;

/// A truck that has not come by so long after the time it was promised for is missing.
const MISSING: TimeDelta = TimeDelta::minutes(30);

/// A truck that comes within this long is on its way, and no other one.
const UNDER_WAY: TimeDelta = TimeDelta::hours(1);

/// Tells whether a truck was promised and has not come.
pub(in crate::desk) fn is_missing(task: &Task, now: DateTime<Utc>) -> bool {
    let waits = task.is_open() && task.called.is_some() && task.here.is_none();
    waits && task.promised.is_some_and(|at| at + MISSING <= now)
}

/// Says that a truck takes the place of the one that was promised for another time: the board keeps one a trailer.
pub(in crate::desk) fn tell_replaced(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    was: Option<DateTime<Utc>>,
    promised: Option<DateTime<Utc>>,
    reply: &mut Reply<'_>,
) {
    // "no wait 4", "running late, 8 now" and "he's 20 out" are of the same truck
    let same = hearing.inbound.replaces.is_some()
        || hearing.text != hearing.written
        || is_told_of(hearing.desk.phrases, hearing.text);
    let (Some(was), Some(promised)) = (was.filter(|_| !same), promised) else {
        return;
    };
    let close = (was - promised).abs() < WORTH_MOVING;
    if close || was <= hearing.now || promised - hearing.now < UNDER_WAY {
        return;
    }
    let args = [
        ("unit", unit.as_str().into()),
        ("was", was.into()),
        ("time", promised.into()),
    ];
    reply.say("booked-replaces", &args);
    tell_who_called(hearing, unit, (was, promised), reply);
}

/// Tells whoever said that the truck was called that somebody else gave it another time.
fn tell_who_called(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    (was, promised): (DateTime<Utc>, DateTime<Utc>),
    reply: &mut Reply<'_>,
) {
    let task = reply.board.tasks().open_task(unit, TaskKind::PumpOut);
    let called_by = task.and_then(|task| task.called_by.clone());
    let other = called_by.filter(|who| *who != hearing.member.id);
    let Some(member) = other.and_then(|who| hearing.fleet.crew.get(&who)) else {
        return;
    };
    let (desk, fleet) = (hearing.desk, &hearing.fleet);
    let voice = desk.voice_for(member, None, fleet, hearing.now);
    let who = voice.person(&hearing.member.id).into_owned();
    let args = [
        ("who", who.into()),
        ("unit", unit.as_str().into()),
        ("was", was.into()),
        ("time", promised.into()),
    ];
    let text = voice.say("booked-replaces-told", &args);
    let letter = Outgoing::to(&member.id, text).of_level(Level::Notice);
    reply.others.push(letter);
}

/// Tells whether a message speaks of a second truck while one is to come: it says so, and the first one stays.
pub(in crate::desk) fn is_second(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    kind: TaskKind,
    reply: &mut Reply<'_>,
) -> bool {
    let (phrases, text) = (hearing.desk.phrases, hearing.text);
    // "it isn't coming, need another one"
    if !phrases.holds("truck", "second", text) || is_told_of(phrases, text) {
        return false;
    }
    let task = reply.board.tasks().open_task(unit, kind);
    let task = task.filter(|task| task.called.is_some() && task.here.is_none());
    let Some(promised) = task.and_then(|task| task.promised) else {
        return false;
    };
    if promised <= hearing.now {
        return false;
    }
    let args = [("unit", unit.as_str().into()), ("time", promised.into())];
    reply.say("truck-second", &args);
    true
}

/// Tells whether a message was written before the truck was last told of: the later word stands, and that is said.
pub(in crate::desk) fn is_overtaken(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    kind: TaskKind,
    reply: &mut Reply<'_>,
) -> bool {
    let written = hearing.inbound.at;
    let book = hearing.desk.book.tasks();
    let task = reply.board.tasks().open_task(unit, kind);
    let task = task.or_else(|| book.open_task(unit, kind));
    let told = task.and_then(|task| task.here.or(task.called));
    let Some(told) = told.filter(|told| written < *told && hearing.inbound.replaces.is_none())
    else {
        return false;
    };
    let args = [
        ("unit", unit.as_str().into()),
        ("time", written.into()),
        ("since", told.into()),
    ];
    reply.say("truck-overtaken", &args);
    true
}

/// The most words of a message that only says which trailer a truck is for in truth.
const SHORT: usize = 8;

/// Reads "not 12, 10", "wrong trailer, its 10" behind a truck that the sender has just told of: the sentence it stands for.
pub(super) fn other_trailer(message: &Texted<'_>) -> Option<String> {
    let (desk, text) = (message.desk, message.text);
    let phrases = desk.phrases;
    let from = ordered_lately(desk, message.who, message.at)?
        .unit
        .as_ref()?;
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').collect();
    let digits = |word: &&&str| word.starts_with(|c: char| c.is_ascii_digit());
    let units = units_in(message.fleet, text);
    let others = words.iter().filter(digits).count() != units.len();
    if words.len() > SHORT || others || is_marked(text) {
        return None;
    }
    let is_not = |word: &str| phrases.is("mend", "not", word);
    let to = match units.as_slice() {
        // "not 12, 10", "no la 12, la 10", "10 not 12"
        [wrong, right] if wrong == from && phrases.after("mend", "no", text).is_some() => right,
        [right, wrong] if wrong == from && words.iter().any(|word| is_not(word)) => right,
        [right] if right != from && phrases.after("mend", "mistaken", text).is_some() => right,
        [right] if right != from && phrases.after("mend", "wrong-trailer", text).is_some() => right,
        _ => return None,
    };
    Some(format!("moved the truck from {from} to {to}"))
}

/// Gives the truck that is called for one trailer to another, where the message says so: "the truck goes to 23 instead of
/// 10". Tells whether it did.
pub(super) fn moved_over(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let Some((task, to)) = over(hearing) else {
        return false;
    };
    let from = task.unit.as_ref().map_or("", UnitName::as_str).to_owned();
    let tasks = hearing.desk.book.tasks();
    reply.adopt(&task);
    let by = hearing.member.id.clone();
    let uncalled = TaskChange::Uncalled { id: task.id, by };
    reply.board.change(uncalled);
    if let Some(open) = tasks.open_task(&to, task.kind) {
        reply.adopt(open);
    }
    let case = hearing.asked_about(&to);
    let needed = case.outlook.waste.as_ref().and_then(|waste| waste.p10);
    let was = reply.board.tasks().open_task(&to, task.kind);
    let was = was.and_then(|task| task.promised);
    let due = needed.or(task.promised);
    let (id, _) = reply.board.open(&to, task.kind, due, lead(&case), None);
    let by = hearing.member.id.clone();
    let promised = task.promised;
    reply.board.change(TaskChange::Called { id, by, promised });
    let args = [("unit", from.as_str().into()), ("to", to.as_str().into())];
    reply.say("truck-moved-over", &args);
    tell_replaced(hearing, &to, was, promised, reply);
    super::too_late(due, Some(needed), promised, reply);
    true
}

/// Finds the truck that goes to another trailer, and that trailer.
fn over(hearing: &Hearing<'_>) -> Option<(Task, UnitName)> {
    let (phrases, fleet, text) = (hearing.desk.phrases, &hearing.fleet, hearing.text);
    let says = |list| phrases.holds("truck", list, text);
    if !says("who") || !says("over") || says("other") || is_marked(text) {
        return None;
    }
    let units = units_in(fleet, text);
    let [_, _] = units.as_slice() else {
        return None;
    };
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').collect();
    let led_by = |list: &str| {
        let found = (1..words.len()).find_map(|at| {
            let unit = settle::known(fleet, &UnitName::new(words[at]))?;
            let mut before = words[..at].iter().rev();
            let lead = before.find(|word| !phrases.is("mend", "trailer", word))?;
            phrases.is("truck", list, lead).then_some(unit)
        });
        found.cloned()
    };
    let to = led_by("over-to")?;
    let from = units.into_iter().find(|unit| *unit != to)?;
    let task = hearing
        .desk
        .book
        .tasks()
        .open_task(&from, TaskKind::PumpOut)?;
    task.called?;
    Some((task.clone(), to))
}
