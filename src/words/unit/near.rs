//! What stands near a number, as far as it speaks for or against a trailer.

use super::candidate::{significant_after, significant_before};
use crate::words::attach::fits;
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Form, Item, What};

pub(super) fn value(item: &Item) -> f64 {
    match item.what {
        What::Number(n) => n.value,
        What::Range(from, ..) => from,
        _ => 0.0,
    }
}

/// Tells whether other numbers stand near, so that a wrong guess would move a value to another trailer.
pub(super) fn risky(items: &[Item], at: usize) -> bool {
    let near = at.saturating_sub(16)..items.len().min(at + 16);
    near.into_iter().any(|i| {
        i != at
            && matches!(
                items[i].what,
                What::Number(_) | What::Range(..) | What::Code
            )
    })
}

/// Tells whether the chunk ends after `at`, or a trailer follows.
pub(super) fn chunk_ends(items: &[Item], at: usize) -> bool {
    items.get(at + 1).is_none_or(|n| {
        n.chunk != items[at].chunk
            || matches!(n.what, What::Sign(_) | What::Break | What::Number(_))
            || n.is(Mark::Unit)
    })
}

/// Tells whether a noun that has numbers stands earlier in the sentence.
pub(super) fn noun_earlier(items: &[Item], at: usize) -> bool {
    (0..at)
        .rev()
        .take(10)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()))
}

pub(super) fn chunk_has_value_noun(items: &[Item], at: usize) -> bool {
    (at.saturating_sub(20)..items.len().min(at + 20))
        .filter(|i| items[*i].chunk == items[at].chunk)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()))
}

/// Nouns whose number stands before them: 4 cords, 120 people.
pub(super) fn counts(noun: Noun) -> bool {
    matches!(
        noun,
        Noun::Cords | Noun::Guests | Noun::Eta | Noun::AfterRegulator | Noun::BeforeRegulator
    )
}

/// Tells whether the noun at `noun` has a number of its own right after it: one in a measure that it can have.
pub(super) fn owns_number(items: &[Item], noun: Option<usize>) -> bool {
    let Some(at) = noun else { return false };
    // "12 tank was 95 yesterday"
    let was = |i: &usize| items[*i].is(Mark::Past);
    let told = significant_after(items, at).filter(|i| !was(i));
    let told = told.or_else(|| significant_after(items, significant_after(items, at)?));
    told.is_some_and(|i| match items[i].what {
        What::Number(n) => items[at].noun().is_none_or(|noun| {
            // "2 cords 12": a trailer has four cords at most
            let more = noun == Noun::Cords && n.unit.is_none() && n.value > 4.0;
            !counts(noun) || fits(noun, n.unit, n.form == Form::Part) && !more
        }),
        What::Range(..) | What::Is(Concept::Level(_)) => true,
        _ => false,
    })
}

/// Tells whether the word before `at` is a noun that has numbers.
pub(super) fn valued_before(items: &[Item], at: usize) -> bool {
    significant_before(items, at).is_some_and(|i| {
        items[i]
            .noun()
            .is_some_and(|n| n.reading().is_some() && !n.is_tank() && !counts(n))
    })
}

/// Tells whether the sentence names another trailer for certain.
pub(super) fn others(items: &[Item], at: usize) -> bool {
    let sentence = items[at].sentence;
    let mut i = at;
    let mut start = at;
    while i > 0 && items[i - 1].sentence == sentence {
        i -= 1;
        start = i;
    }
    let mut j = start;
    while j < items.len() && items[j].sentence == sentence {
        if j != at {
            // "12 pressure good, winds at 26": what a thing is at
            let valued = j > 1
                && items[j - 1].is(Mark::At)
                && items[j - 2]
                    .noun()
                    .is_some_and(|n| n.reading().is_some() && !counts(n));
            let clear = items[j].what == What::Code
                || matches!(items[j].what, What::Number(n) if n.form == Form::Whole && n.unit.is_none())
                    && (j == start
                        || j > 0
                            && (items[j - 1].is(Mark::At)
                                || items[j - 1].is(Mark::With)
                                || items[j - 1].what == What::Is(Concept::State(State::On))
                                || items[j - 1].is(Mark::Unit)
                                || items[j - 1].is(Mark::Article)
                                || items[j - 1].what == What::Sign('#')))
                    && !valued;
            // "three qarters": a number whose measure is misspelt
            let strange = items
                .get(j + 1)
                .is_some_and(|n| n.what == (What::Word { ordinary: false }));
            if clear && !(strange && items[j].what != What::Code) {
                return true;
            }
        }
        j += 1;
    }
    false
}
