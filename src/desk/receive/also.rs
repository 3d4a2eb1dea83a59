//! "y con la 10", "10 too": what the sender has just reported of one trailer holds for another.

use chrono::TimeDelta;

use super::meaning::Texted;
use crate::desk::settle;
use crate::heard::{Entry, UnitName};

/// The report before is meant for this long.
const LATELY: TimeDelta = TimeDelta::minutes(10);
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
    let mut units: Vec<UnitName> = Vec::new();
    let words = closed.unwrap_or(rest);
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
