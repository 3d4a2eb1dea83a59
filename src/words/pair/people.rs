//! Words of coming, going and closing that are not said of a trailer: people, what remains, some stalls.

use super::around;
use crate::heard::Need;
use crate::words::concept::{Concept, Mark, Noun};
use crate::words::item::{Item, What};

/// Tells whether "left" says what remains: "90 gallons left", "420 L left".
pub(super) fn remains(items: &[Item], at: usize) -> bool {
    at > 0
        && items[at - 1].chunk == items[at].chunk
        && (items[at - 1]
            .number()
            .is_some_and(|n| n.unit.is_some() || n.form != crate::words::item::Form::Whole)
            || matches!(
                items[at - 1].what,
                What::Is(
                    Concept::Level(_) | Concept::Noun(Noun::Supplies | Noun::Water | Noun::Fuel)
                )
            )
            || items[at - 1].noun().is_some_and(Noun::is_tank))
}

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
            What::Is(Concept::Noun(Noun::Person | Noun::Guests) | Concept::Need(Need::Repair)) => {
                person = true
            }
            What::Units(_) => return false,
            _ => {}
        }
    }
    let with = (at + 1..items.len())
        .take(4)
        .take_while(|i| items[*i].chunk == chunk)
        .any(|i| items[i].is(Mark::With));
    person && !with
}
