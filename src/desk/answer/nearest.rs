//! An order that is none the bot knows: what was not understood is said plainly, with the order that comes nearest.

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
];

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
    let mut lists = LISTS.iter();
    let nearest = lists.find(|(list, _)| begins(list)).map(|(_, key)| *key);
    let of_a_truck = phrases.holds("truck", "who", text);
    let nearest = nearest.or(of_a_truck.then_some("nearest-truck"));
    let dispatches = hearing.member.role == Role::Dispatcher;
    let key = nearest.or(dispatches.then_some("nearest-help"))?;
    let quote = voice.quote(text);
    let head = voice.say("nearest-none", &[("quote", quote.into())]);
    Some(format!("{head} {}", voice.word(key)))
}
