//! What is told of a tank right after it was called pumped out while its trailer is packed up: "left some about 1/4", "wait no
//! i didnt pump it". It is of that tank, whatever the next step asks, and its trailer must not be towed with it.

use super::super::phrases::{Phrases, is_marked};
use super::super::settle;
use super::meaning::Texted;
use super::part::level_in;
use crate::dialogue::{PAUSE, Round, Way};
use crate::heard::{Event, UnitName};

/// A longer message is a report of its own.
const LONGEST: usize = 12;

/// Returns the round of leaving in which the waste was called pumped out a moment ago.
pub(in crate::desk) fn just_pumped<'t>(message: &Texted<'t>) -> Option<&'t Round> {
    let round = message.talk.round.as_ref()?;
    let fresh = round.way == Way::Leaving && message.at - round.asked <= PAUSE;
    let kept = message.desk.book.unit(&round.unit)?;
    let pumped = kept.state().when(Event::WastePumped)?;
    (fresh && message.at >= pumped && message.at - pumped <= PAUSE).then_some(round)
}

/// Writes out what the message says of the tank that was just called pumped out; none where it says nothing of it.
pub(super) fn spelled_out(message: &Texted<'_>) -> Option<String> {
    let (phrases, text) = (message.desk.phrases, message.text.trim());
    let has = |list| phrases.holds("pumped", list, text);
    let heard = message.heard;
    let other = heard.ask.is_some()
        || heard.command.is_some()
        || is_marked(text)
        || text.split_whitespace().count() > LONGEST
        || has("of-fresh");
    let round = just_pumped(message).filter(|_| !other)?;
    let named = |name: &UnitName| settle::known(message.fleet, name);
    if heard
        .named
        .iter()
        .any(|name| named(name) != Some(&round.unit))
    {
        return None;
    }
    let level = || anywhere(phrases, text);
    let unit = round.unit.as_str();
    if has("took-back") || has("some-left") {
        if let Some(pct) = level() {
            return Some(format!("unit {unit}: waste {pct:.0}%"));
        }
        if has("all-of-it") {
            return Some(format!("unit {unit}: waste full"));
        }
    }
    let denies = has("not-pumped") || has("not");
    denies.then(|| "oops, not pumped".to_owned())
}

/// Finds a level in a text.
fn anywhere(phrases: &Phrases, text: &str) -> Option<f64> {
    let mut rest = Some(text);
    while let Some(text) = rest {
        if let Some(level) = level_in(phrases, text) {
            return Some(level);
        }
        rest = text.split_once(' ').map(|(_, rest)| rest.trim_start());
    }
    None
}
