//! "y con la 10", "10 too": what the sender has just reported of one trailer holds for another.

use chrono::TimeDelta;

use super::meaning::Texted;
use crate::desk::settle;
use crate::heard::{Entry, Heard, UnitName};

/// The report before is meant for this long.
const LATELY: TimeDelta = TimeDelta::minutes(10);
/// What is said of both is of the two trailers that were reported on within this long.
const BOTH_LAST: TimeDelta = TimeDelta::minutes(60);
/// More words say something of their own.
const LONGEST: usize = 8;

/// Returns what a message that only adds trailers says of them; none where the sender's report before told a number, which
/// is of one trailer, or where the message says anything else.
pub(super) fn told(message: &Texted<'_>) -> Option<Vec<Entry>> {
    let reports = message.heard.entries.iter().any(|entry| !entry.is_empty());
    let open = message.talk.question_at(message.at).is_some();
    if reports || open || message.heard.ask.is_some() || message.heard.command.is_some() {
        return None;
    }
    let units = added(message)?;
    let last = message.desk.book.sent(message.who).last()?;
    let lately = last.at <= message.at && message.at - last.at <= LATELY;
    let of = last.units.last().filter(|_| lately)?;
    if units.iter().any(|unit| last.units.contains(unit)) {
        return None;
    }
    let mut said = Entry::default();
    for (_, entry) in message.desk.book.unit(of)?.reports_of(&last.key) {
        if !entry.readings.is_empty() || !entry.hazards.is_empty() {
            return None;
        }
        said.events.extend(&entry.events);
        said.faults.extend(&entry.faults);
        said.cleared.extend(&entry.cleared);
    }
    let told_of = |unit| Entry {
        unit: Some(unit),
        ..said.clone()
    };
    (!said.is_empty()).then(|| units.into_iter().map(told_of).collect())
}

/// "both on power, 55 psi", "las dos abiertas": what is told of both holds for each of the two trailers that the sender
/// reported on just before. None where both of something else are meant, or a step or a question waits for the answer.
pub(super) fn of_both(message: &Texted<'_>, hear: impl Fn(&str) -> Heard) -> Option<Vec<Entry>> {
    let (phrases, talk, text) = (message.desk.phrases, message.talk, message.text.trim());
    let waits =
        talk.question_at(message.at).is_some() || !talk.checks.is_empty() || talk.round.is_some();
    let said = phrases.holds("also", "both", text) && !phrases.holds("also", "not-both", text);
    if waits || !said || message.heard.ask.is_some() || message.heard.command.is_some() {
        return None;
    }
    let mut sent = message.desk.book.sent(message.who).iter().rev();
    let last = sent.find(|sent| !sent.units.is_empty())?;
    let lately = last.at <= message.at && message.at - last.at <= BOTH_LAST;
    let [one, two] = last.units.as_slice() else {
        return None;
    };
    let rest = without_both(message, text);
    let heard = hear(&rest);
    let theirs = |entry: &Entry| entry.unit.is_none() && !entry.is_empty();
    let whole = heard.unclear.is_empty() && heard.ask.is_none() && heard.command.is_none();
    if !lately || !whole || heard.entries.is_empty() || !heard.entries.iter().all(theirs) {
        return None;
    }
    let of = |unit: &UnitName| {
        let unit = unit.clone();
        heard.entries.iter().map(move |entry| Entry {
            unit: Some(unit.clone()),
            ..entry.clone()
        })
    };
    Some(of(one).chain(of(two)).collect())
}

/// Takes the words for both out of a text, and leaves its numbers as they were written.
fn without_both(message: &Texted<'_>, text: &str) -> String {
    let phrases = message.desk.phrases;
    let opened = phrases.after("also", "both", text).unwrap_or(text);
    if let Some(rest) = phrases.before("also", "both", opened) {
        return rest.to_owned();
    }
    match phrases.parted("also", "both", opened) {
        Some((head, rest)) => format!("{} {rest}", head.trim_end()),
        None => opened.to_owned(),
    }
}

/// "23 waste 1/4, 10 same", "fresh 1/2 on 23, same on 10": what the message tells of one trailer holds for another that it
/// names so.
pub(super) fn same_as(message: &Texted<'_>) -> Vec<Entry> {
    let (phrases, heard) = (message.desk.phrases, message.heard);
    let mut told = heard.entries.iter().rev();
    let last = told.find(|entry| !entry.is_empty());
    let Some(of) = last.filter(|entry| entry.unit.is_some()) else {
        return Vec::new();
    };
    if heard.command.is_some() || heard.ask.is_some() || !of.hazards.is_empty() {
        return Vec::new();
    }
    let clauses = message.text.split([',', ';', '\n']).skip(1);
    let clauses = clauses.flat_map(|clause| clause.split(". "));
    let mut more: Vec<Entry> = Vec::new();
    for clause in clauses {
        let clause = clause.trim().trim_end_matches(['.', '!']);
        let opened = phrases.after("also", "same-on", clause);
        let closed = phrases.before("also", "same", clause);
        let Some(names) = opened.or(closed) else {
            continue;
        };
        let Some(units) = named_alone(message, names) else {
            continue;
        };
        for unit in units {
            let known = |entry: &&Entry| entry.unit.as_ref() == Some(&unit);
            if heard.entries.iter().chain(&more).find(known).is_none() {
                more.push(Entry {
                    unit: Some(unit),
                    ..of.clone()
                });
            }
        }
    }
    more
}

/// Returns the trailers that a message adds, where it does no more.
fn added(message: &Texted<'_>) -> Option<Vec<UnitName>> {
    let phrases = message.desk.phrases;
    let text = message.text.trim_end_matches(['.', '!', ' ']);
    if text.split_whitespace().count() > LONGEST {
        return None;
    }
    let opened = phrases.after("also", "opens", text);
    let rest = opened.unwrap_or(text);
    let closed = phrases.before("also", "closes", rest);
    if opened.is_none() && closed.is_none() {
        return None;
    }
    named_alone(message, closed.unwrap_or(rest))
}

/// Returns the trailers that words name, where they do nothing else.
fn named_alone(message: &Texted<'_>, words: &str) -> Option<Vec<UnitName>> {
    let phrases = message.desk.phrases;
    let mut units: Vec<UnitName> = Vec::new();
    for word in words.split(|c: char| !(c.is_alphanumeric() || c == '-')) {
        if word.is_empty() || phrases.is("also", "beside", word) {
            continue;
        }
        let unit = settle::known(message.fleet, &UnitName::new(word))?;
        if !units.contains(unit) {
            units.push(unit.clone());
        }
    }
    (!units.is_empty()).then_some(units)
}
