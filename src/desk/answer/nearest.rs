//! An order that is none the bot knows: what was not understood is said plainly, with the order that comes nearest.

use super::tell;
use crate::desk::phrases::is_marked;
use crate::desk::receive::Hearing;
use crate::fleet::Role;
use crate::reply::Voice;

/// What orders begin with that the bot does not know by these words, each with the text of the nearest one it knows.
const LISTS: &[(&str, &str)] = &[
    ("stop", "nearest-stop"),
    ("cancel", "nearest-cancel"),
    ("assign", "nearest-assign"),
    ("truck", "nearest-truck"),
    ("tell", "nearest-tell"),
    ("people", "nearest-people"),
    ("export", "nearest-export"),
    ("set", "nearest-set"),
    ("show", "nearest-show"),
    ("weather", "nearest-set"),
];

/// Of these nothing is kept here, whatever their words begin with.
const HOURS: &str = "nearest-hours";
const SHIFT: &str = "nearest-shift";

/// Talk has no more words than this, and no number.
const TALK: usize = 6;

/// Says that no order was found, and the nearest one; none where the words are talk, or a driver's that begin like no order.
pub(super) fn order(hearing: &Hearing<'_>, voice: &Voice<'_>) -> Option<String> {
    let (phrases, text) = (&hearing.desk.phrases, hearing.text.trim());
    let begins = |list| phrases.after("nearest", list, text).is_some();
    let chats = begins("talk")
        && text.split_whitespace().count() <= TALK
        && !text.contains(|c: char| c.is_ascii_digit());
    if chats || !text.contains(char::is_alphabetic) {
        return None;
    }
    // "juno is ok" where no clock of hers runs
    if phrases.holds("alone", "well", text) && tell::person_named(hearing).is_some() {
        return Some(voice.word("alone-nobody"));
    }
    let mut lists = LISTS.iter();
    let nearest =
        of_the_plan(hearing).or_else(|| lists.find(|(list, _)| begins(list)).map(|(_, key)| *key));
    let of_a_truck = phrases.holds("truck", "who", text);
    let nearest = nearest.or(of_a_truck.then_some("nearest-truck"));
    let dispatches = hearing.member.role == Role::Dispatcher;
    let key = nearest.or(dispatches.then_some("nearest-help"))?;
    let quote = voice.quote(text);
    let head = voice.say("nearest-none", &[("quote", quote.into())]);
    Some(format!("{head} {}", voice.word(key)))
}

/// Finds what a dispatcher says of the plan that stands in the fleet's files: jobs and their hours, or who works when. The
/// key of what is answered.
pub(in crate::desk) fn of_the_plan(hearing: &Hearing<'_>) -> Option<&'static str> {
    if hearing.member.role != Role::Dispatcher || hearing.heard.command.is_some() {
        return None;
    }
    let (phrases, text) = (&hearing.desk.phrases, hearing.text.trim());
    let holds = |list| phrases.holds("nearest", list, text);
    let begins = |list| phrases.after("nearest", list, text).is_some();
    let names = tell::person_named(hearing).is_some();
    if holds("shift") && names {
        return Some(SHIFT);
    }
    let jobs =
        holds("hours") || begins("swaps") && holds("days") || begins("cancel") && holds("jobs");
    let asks = is_marked(text) || hearing.heard.ask.is_some() || names;
    (jobs && !asks && !phrases.holds("truck", "who", text)).then_some(HOURS)
}

/// Says the task whose number a message gives and no more, "task 4"; none where there is no such task.
pub(super) fn task_shown(hearing: &Hearing<'_>, voice: &Voice<'_>) -> Option<String> {
    let text = hearing.text.trim().trim_end_matches(['?', '.', '!']);
    let number = hearing.desk.phrases.after("nearest", "a-task", text)?;
    let id: u32 = number.trim().trim_start_matches('#').parse().ok()?;
    Some(voice.task(hearing.desk.book.tasks().task(id)?))
}
