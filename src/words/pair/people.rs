//! Words of coming, going and closing that are not said of a trailer: people, what remains, some stalls, some cords.

use super::around;
use crate::heard::Need;
use crate::words::concept::{Concept, Mark, Noun, Unit};
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

/// "the exit by the mall is closed", "the bar is open": tells whether something that is no trailer is.
pub(super) fn of_another_place(items: &[Item], at: usize) -> bool {
    let before: Vec<usize> = (0..at)
        .rev()
        .take(8)
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .collect();
    let Some(subject) = before.iter().position(|i| !items[*i].is_filler()) else {
        return false;
    };
    let is = before[..subject].iter().any(|i| items[*i].is(Mark::Aux));
    let trailer = around(items, at).any(|i| {
        matches!(items[i].what, What::Units(_) | What::Code)
            || items[i].is(Mark::Unit)
            || items[i].is(Mark::Pronoun)
    });
    is && !trailer && matches!(items[before[subject]].what, What::Word { .. })
}

/// "a guest got shocked at the door so I closed it": tells whether a clause of its own, after what is wrong, says that
/// the trailer was closed.
pub(super) fn so_closed(items: &[Item], at: usize) -> bool {
    let chunk = items[at].chunk;
    let before = || {
        (0..at)
            .rev()
            .take(12)
            .take_while(|i| items[*i].chunk == chunk)
    };
    let so = before()
        .take(3)
        .take_while(|i| items[*i].is_filler())
        .find(|i| items[*i].is(Mark::So));
    let wrong = |i: usize| matches!(items[i].what, What::Is(Concept::Fault(_)));
    let ends = items.get(at + 1).is_none_or(|n| {
        n.chunk != chunk || n.noun().is_none() && !n.is(Mark::Article) && n.number().is_none()
    });
    ends && so.is_some_and(|so| before().any(|i| i < so && wrong(i)))
}

/// "2 cords unplugged": tells whether a number says how many cords are off, and so not that the trailer is. "Power off on
/// 12 with 4 cords in" says that the power is.
pub(super) fn some_cords_off(items: &[Item], at: usize) -> bool {
    let counted = |i: usize| i > 0 && items[i - 1].number().is_some();
    let of_power = at > 0 && matches!(items[at - 1].noun(), Some(Noun::Power | Noun::Mains));
    !of_power
        && around(items, at)
            .any(|i| matches!(items[i].noun(), Some(Noun::Cord | Noun::Cords)) && counted(i))
}

/// "put a 100 ft extension on 44": tells whether a length of cord was laid, which says of no power that it is on.
pub(super) fn lays_a_cord(items: &[Item], at: usize) -> bool {
    let long = |i: usize| {
        items[i]
            .number()
            .is_some_and(|n| matches!(n.unit, Some(Unit::Ft | Unit::Metre)))
    };
    around(items, at).any(|i| items[i].noun() == Some(Noun::Cord)) && around(items, at).any(long)
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
