//! What stands with a trailer: notes for whoever arrives next, the site's own card, overrides and orders.

mod back;
mod card;
mod decided;
mod notes;
mod police;
mod steps;

pub(super) use back::{take_back, went_with};
pub(super) use card::{answer_card, asked as card_asked, greet};
pub(super) use decided::{
    beside_the_advice, decide, decide_in_words, in_force, is_ordered, ordered, overrides,
};
pub(super) use notes::note;
pub(super) use police::shut_by_order;
pub(super) use steps::{confirm, is_confirmed, keep_confirmed, told_done};

use super::answer::Reply;
use super::phrases::Phrases;
use super::receive::Hearing;
use super::settle;
use crate::book::Record;
use crate::fleet::Fleet;
use crate::heard::{Command, CommandName, UnitName};
use crate::reply::Arg;

/// Forgets what a trailer's own log taught of it: from here on it is learned anew.
pub(super) fn relearn(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some((unit, _)) = unit_and_words(hearing, &order.rest) else {
        reply.say("relearn-how", &[]);
        return;
    };
    let lessons = hearing.desk.book.lessons().of(&unit).len();
    let name = ("unit", Arg::from(unit.as_str()));
    if lessons == 0 {
        reply.say("relearn-nothing", &[name]);
        return;
    }
    reply.say("relearn-done", &[name, ("count", lessons.into())]);
    records.push(Record::Relearn {
        at: hearing.inbound.at,
        by: hearing.member.id.clone(),
        unit,
    });
}

/// Reads "anula 12 la puerta cierra" as the decision it is: by that word alone, without a trailer and a reason behind it,
/// something is only cancelled.
pub(super) fn order(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<Command> {
    let mut rest = phrases.after("override", "opens", text.trim())?;
    rest = phrases.after("incident", "before", rest).unwrap_or(rest);
    let end = rest.find(|c: char| c.is_whitespace() || ",:".contains(c))?;
    let (name, reason) = rest.split_at(end);
    let reason = reason.trim_start_matches([' ', ',', ':']);
    settle::known(fleet, &UnitName::new(name.trim_start_matches('#')))?;
    (!reason.is_empty()).then(|| Command {
        name: CommandName::Override,
        task: None,
        rest: format!("{name} {reason}"),
    })
}

/// Splits an order's words into the trailer they start with and the rest.
fn unit_and_words(hearing: &Hearing<'_>, rest: &str) -> Option<(UnitName, String)> {
    let rest = rest.trim();
    let rest = ["unit ", "trailer ", "unidad "]
        .iter()
        .find_map(|word| rest.strip_prefix(word))
        .unwrap_or(rest);
    let (name, words) = rest.split_once(char::is_whitespace).unwrap_or((rest, ""));
    let name = UnitName::new(name.trim_end_matches([':', ',', '.']));
    let unit = settle::known(&hearing.fleet, &name)?.clone();
    Some((unit, words.trim().to_owned()))
}
