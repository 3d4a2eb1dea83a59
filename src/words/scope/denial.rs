//! What "not", "no" and their like deny.

use super::Scope;
use crate::words::concept::{Concept, Mark};
use crate::words::item::{Item, What};

/// Marks what "not", "no" and their like deny: the next statement, and what "or" ties to it.
pub(super) fn denials(items: &[Item], range: std::ops::Range<usize>, scope: &mut [Scope]) {
    for at in range.clone() {
        let no = items[at].is(Mark::No);
        if !(no || items[at].is(Mark::Not)) {
            continue;
        }
        let mut hit = false;
        let mut reach = 0;
        let mut nouns = 0;
        for i in at + 1..range.end {
            if items[i].chunk != items[at].chunk {
                // "no leaks, odors or trips": the list goes on while bare
                break;
            }
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
                    if no {
                        scope[i].denied = true;
                    }
                    nouns += 1;
                    reach = 0;
                }
                What::Is(Concept::Mark(Mark::And)) if hit || nouns > 0 => break,
                What::Is(Concept::Mark(Mark::But)) => break,
                What::Is(Concept::Mark(Mark::No | Mark::Not)) => break,
                What::Sign('-') if !items[i].glued => break,
                What::Number(_) => break,
                _ => {
                    reach += 1;
                    if reach > 5 {
                        break;
                    }
                }
            }
        }
        // "leveled not yet", "leaks: none"
        let last = (at + 1..range.end)
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .all(|i| {
                matches!(
                    items[i].what,
                    What::Is(Concept::Mark(Mark::Yet | Mark::Filler))
                        | What::Sign(_)
                        | What::Break
                        | What::Word { ordinary: false }
                )
            });
        // "no power, no lights, nothing": it only sums up
        let sums_up = items[range.start..at]
            .iter()
            .any(|i| i.chunk == items[at].chunk && (i.is(Mark::No) || i.is(Mark::Not)));
        if last && !hit && !sums_up {
            for i in (range.start..at)
                .rev()
                .take_while(|i| items[*i].chunk == items[at].chunk)
            {
                if matches!(
                    items[i].what,
                    What::Is(Concept::State(_) | Concept::Event(_) | Concept::Fault(_))
                ) {
                    scope[i].denied = true;
                    break;
                }
            }
        }
    }
    // "still not", "yet to be": a bare "yet" denies nothing by itself
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
