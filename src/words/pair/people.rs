//! Words of coming, going and closing that are not said of a trailer: people, what remains, some stalls.

use super::around;
use crate::heard::Need;
use crate::words::concept::{Concept, Mark, Noun};
use crate::words::item::{Item, What};

/// Tells whether only some stalls were closed, and not the trailer.
pub(super) fn part_closed(items: &[Item], at: usize) -> bool {
    around(items, at).any(|i| {
        matches!(items[i].noun(), Some(Noun::Toilet | Noun::Sink))
            || items[i].is(Mark::LabelAfter)
            || items[i].is(Mark::Label)
                && items.get(i + 1).is_some_and(|n| n.what == What::Labelled)
    })
}

/// Tells whether it is people who came or went, and no trailer: "the electrician showed up".
pub(super) fn somebody_else(items: &[Item], at: usize) -> bool {
    let chunk = items[at].chunk;
    let before = (0..at)
        .rev()
        .take(8)
        .take_while(|i| items[*i].chunk == chunk);
    let mut person = false;
    for i in before {
        match items[i].what {
            What::Is(
                Concept::Noun(Noun::Person | Noun::Guests | Noun::Truck)
                | Concept::Need(Need::Repair),
            ) => {
                person = true;
                break;
            }
            What::Units(_) => return false,
            _ => {}
        }
    }
    // "llegó la pipa a la 12": who came stands after the word
    let after = (at + 1..items.len())
        .take(3)
        .take_while(|i| items[*i].chunk == chunk)
        .find(|i| !items[*i].is_filler());
    person |= after.is_some_and(|i| {
        matches!(
            items[i].noun(),
            Some(Noun::Person | Noun::Guests | Noun::Truck)
        )
    });
    let with = (at + 1..items.len())
        .take(4)
        .take_while(|i| items[*i].chunk == chunk)
        .any(|i| items[i].is(Mark::With));
    person && !with
}

/// "Chad left, 12 is yours", "she already left": a person by name opens the clause, and no trailer is in it.
pub(super) fn a_person_did(items: &[Item], at: usize) -> bool {
    if around(items, at).any(|i| matches!(items[i].what, What::Units(_) | What::Code)) {
        return false;
    }
    let said: Vec<usize> = (0..at)
        .rev()
        .take(8)
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .filter(|i| {
            !items[*i].is_filler()
                && !items[*i].is(Mark::Call)
                && !matches!(items[*i].what, What::Sign(_) | What::Break)
        })
        .collect();
    match said.as_slice() {
        [who] => {
            matches!(items[*who].what, What::Word { .. })
                && items[*who].end == items[*who].first + 1
        }
        _ => false,
    }
}
