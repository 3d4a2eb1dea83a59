//! Numbers as thumbs type them: a lone "a" for amps, a point between thousands, ones lost to a slip.

use super::concept::{Concept, Mark, Noun, Spoken, Unit};
use super::item::{Form, Item, What, spoken};
use super::lex::Token;
use crate::heard::Event;

/// "ckt 4 is 9.2 a": where a circuit was named, a lone "a" after a number is amps.
pub(super) fn spaced_amps(text: &str, tokens: &[Token], items: &mut [Item]) {
    for at in 2..items.len() {
        let first = tokens[items[at].first];
        let letter = &text[first.start..first.end] == "a";
        if !letter || items[at - 1].number().is_none() {
            continue;
        }
        let ends = items
            .get(at + 1)
            .is_none_or(|n| matches!(n.what, What::Sign(_) | What::Break) || n.noun().is_some());
        let circuit = (at.saturating_sub(5)..at).any(|i| {
            matches!(
                items[i].noun(),
                Some(Noun::Circuit | Noun::Breaker | Noun::Amps)
            )
        });
        // "a 15 A fuse"
        let rated = items.get(at + 1).is_some_and(|n| {
            matches!(
                n.noun(),
                Some(Noun::Fuse | Noun::Breaker | Noun::Cord | Noun::Cords | Noun::Plug)
            )
        });
        // in "replaced a 15 A fuse" the fuse went to the word before
        let replaced = items[at].end > items[at].first + 1
            && items[at.saturating_sub(4)..at].iter().any(|i| {
                matches!(
                    i.what,
                    What::Is(Concept::Event(Event::FuseReplaced | Event::BreakerReset))
                )
            });
        if ends && circuit || rated || replaced {
            items[at].what = What::Is(Concept::Unit(Unit::Amp));
        }
    }
}

/// "from a quarter to a half": a time of day is said of hours, never of a part.
pub(super) fn quarter_to(text: &str, tokens: &[Token], items: &mut Vec<Item>) {
    let mut at = 0;
    while at < items.len() {
        let item = items[at];
        let words = item.end - item.first;
        let clock = item.is(Mark::Idle)
            && words == 2
            && &text[tokens[item.first].start..tokens[item.first].end] == "quarter"
            && &text[tokens[item.end - 1].start..tokens[item.end - 1].end] == "to";
        let part = clock
            && (at + 1..items.len())
                .take(3)
                .find(|i| !items[*i].is_filler())
                .is_some_and(|i| match items[i].what {
                    What::Is(Concept::Spoken(Spoken::Part(_))) => true,
                    What::Number(n) => n.form == Form::Part,
                    What::Is(Concept::Spoken(Spoken::Number(_))) => items
                        .get(i + 1)
                        .and_then(spoken)
                        .is_some_and(|s| matches!(s, Spoken::Parts(_))),
                    _ => false,
                });
        if part {
            let mut to = item;
            to.first = item.first + 1;
            to.what = What::Is(Concept::Mark(Mark::To));
            items[at].end = item.first + 1;
            items[at].what = What::Is(Concept::Spoken(Spoken::Part(0.25)));
            items.insert(at + 1, to);
        }
        at += 1;
    }
}

/// "1.200 litros": a point before three digits parts thousands where a tank is measured.
pub(super) fn thousands(text: &str, tokens: &[Token], items: &mut [Item], at: usize) {
    let typed = &text[tokens[items[at].first].start..tokens[items[at].first].end];
    let What::Number(number) = &mut items[at].what else {
        return;
    };
    let parted = typed.split_once('.').is_some_and(|(whole, rest)| {
        (1..=3).contains(&whole.len())
            && whole != "0"
            && rest.len() == 3
            && rest.ends_with('0')
            && typed.bytes().all(|b| b.is_ascii_digit() || b == b'.')
    });
    if parted && matches!(number.unit, Some(Unit::Litre | Unit::Gal)) {
        number.value *= 1000.0;
    }
}

/// "fifty fibe pounds", "noventa y cibco": tens before a word nobody knows may have lost their ones.
pub(super) fn lost_ones(text: &str, tokens: &[Token], items: &mut [Item]) {
    for at in 0..items.len() {
        let tens = items[at].number().is_some_and(|n| {
            n.form == Form::Whole && (20.0..=90.0).contains(&n.value) && n.value % 10.0 == 0.0
        });
        let typed = text[tokens[items[at].first].start..].starts_with(|c: char| c.is_ascii_digit());
        if !tens || typed {
            continue;
        }
        let and = items.get(at + 1).is_some_and(|n| n.is(Mark::And));
        let next = items.get(at + 1 + usize::from(and));
        let lost = next.is_some_and(|n| {
            n.what == What::Word { ordinary: false }
                && (3..=6).contains(&(tokens[n.first].end - tokens[n.first].start))
        });
        if lost && let What::Number(number) = &mut items[at].what {
            number.bound = true;
        }
    }
}
