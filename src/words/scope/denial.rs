//! What "not", "no" and their like deny.

use std::ops::Range;

use super::Scope;
use crate::words::concept::{Concept, Mark};
use crate::words::item::{Item, What};

/// Marks what "not", "no" and their like deny: the next statement, and what "or" ties to it.
pub(super) fn denials(items: &[Item], range: Range<usize>, scope: &mut [Scope]) {
    for at in range.clone() {
        if !(items[at].is(Mark::No) || items[at].is(Mark::Not)) {
            continue;
        }
        let hit = deny_what_follows(items, at, range.end, scope);
        // "no power, no lights, nothing": it only sums up
        let sums_up = items[range.start..at]
            .iter()
            .any(|i| i.chunk == items[at].chunk && (i.is(Mark::No) || i.is(Mark::Not)));
        if !hit && !sums_up && closes(items, at, range.end) {
            deny_what_was_said(items, range.start, at, scope);
        }
    }
    // "still not", "yet to be": a bare "yet" denies nothing by itself
}

/// Marks what follows a denial in its chunk; tells whether a statement was among it. A "no" denies nouns too.
fn deny_what_follows(items: &[Item], at: usize, end: usize, scope: &mut [Scope]) -> bool {
    let no = items[at].is(Mark::No);
    let (mut hit, mut reach, mut nouns) = (false, 0, 0);
    // "no leaks, odors or trips": the list goes on while bare
    for i in (at + 1..end).take_while(|i| items[*i].chunk == items[at].chunk) {
        match items[i].what {
            What::Is(
                Concept::State(_)
                | Concept::Event(_)
                | Concept::Fault(_)
                | Concept::Clears(_)
                | Concept::Level(_),
            ) => {
                if hit && !tied(items, at, i) {
                    break;
                }
                scope[i].denied = true;
                hit = true;
                reach = 0;
            }
            What::Is(Concept::Noun(_)) => {
                if hit && !tied(items, at, i) {
                    break;
                }
                scope[i].denied |= no;
                nouns += 1;
                reach = 0;
            }
            What::Is(Concept::Mark(Mark::And)) if hit || nouns > 0 => break,
            What::Is(Concept::Mark(Mark::But | Mark::No | Mark::Not)) | What::Number(_) => break,
            What::Sign('-') if !items[i].glued => break,
            _ => {
                reach += 1;
                if reach > 5 {
                    break;
                }
            }
        }
    }
    hit
}

/// "leveled not yet", "leaks: none": tells whether nothing is said behind the denial.
fn closes(items: &[Item], at: usize, end: usize) -> bool {
    (at + 1..end)
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .all(|i| {
            matches!(
                items[i].what,
                What::Is(Concept::Mark(Mark::Yet | Mark::Filler))
                    | What::Sign(_)
                    | What::Break
                    | What::Word { ordinary: false }
            )
        })
}

/// Marks the statement before a denial that closes its chunk.
fn deny_what_was_said(items: &[Item], start: usize, at: usize, scope: &mut [Scope]) {
    let statement = |i: &usize| {
        matches!(
            items[*i].what,
            What::Is(Concept::State(_) | Concept::Event(_) | Concept::Fault(_))
        )
    };
    let mut back = (start..at)
        .rev()
        .take_while(|i| items[*i].chunk == items[at].chunk);
    if let Some(said) = back.find(statement) {
        scope[said].denied = true;
    }
}

/// Tells whether only "or" and fillers stand between two denied things.
fn tied(items: &[Item], from: usize, to: usize) -> bool {
    let mut or = false;
    let mut i = to;
    while i > from + 1 {
        i -= 1;
        match items[i].what {
            What::Is(Concept::Mark(Mark::Or)) => or = true,
            What::Is(Concept::Mark(Mark::Filler | Mark::Article)) => {}
            What::Is(
                Concept::State(_) | Concept::Event(_) | Concept::Fault(_) | Concept::Noun(_),
            ) => return or || i + 1 == to,
            _ => return false,
        }
    }
    false
}
