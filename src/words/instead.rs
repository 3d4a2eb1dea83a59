//! What the clause behind a denial tells instead: "not 3/4, it's 1/4", "the leak isn't on 9, it's on 12".

use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Form, Item, What};
use crate::words::unit::Group;

/// "tank's not 3/4 on 14, it's 1/4", "no está vacío, está a la mitad": the value of the next clause takes the place of the
/// one denied. Tells whether that was so.
pub(super) fn value(items: &mut [Item], groups: &[Group], at: usize) -> bool {
    let chunk = items[at].chunk;
    // levels however they are told, else numbers of one measure
    let kind = |i: usize| match items[i].what {
        What::Is(Concept::Level(_)) => Some(None),
        What::Number(n) if n.form == Form::Part => Some(None),
        What::Number(n) => Some(Some(n.unit)),
        // "pressure on 9 is not 95": a bare number behind "not" may have been taken for a trailer
        What::Units(g) if i == at + 1 && !groups[g].explicit => Some(Some(None)),
        _ => None,
    };
    let denied = (at + 1..items.len())
        .take(3)
        .take_while(|i| items[*i].chunk == chunk)
        .find(|i| !items[*i].is_filler() && !items[*i].is(Mark::At));
    let Some(denied) = denied.filter(|i| kind(*i).is_some()) else {
        return false;
    };
    let of_a_noun = (0..at)
        .rev()
        .take(6)
        .take_while(|i| items[*i].chunk == chunk)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()));
    let leads = |i: &Item| {
        i.is_filler()
            || i.is(Mark::Pronoun)
            || i.is(Mark::But)
            || i.is(Mark::At)
            || matches!(i.what, What::Sign(_) | What::Units(_))
            || i.what == What::Is(Concept::State(State::On))
    };
    let meant = (denied + 1..items.len())
        .take(10)
        .find(|i| !leads(&items[*i]));
    let Some(meant) = meant.filter(|i| kind(*i) == kind(denied)) else {
        return false;
    };
    let opens = items[meant].chunk > chunk && items[meant].sentence == items[at].sentence;
    let ends = items[meant + 1..]
        .iter()
        .take_while(|i| i.chunk == items[meant].chunk)
        .all(leads);
    if !(of_a_noun && opens && ends) {
        return false;
    }
    items[denied].what = items[meant].what;
    items[meant].what = What::Gone;
    items[at].what = What::Gone;
    true
}

/// "the leak isn't on 9, it's on 12": the trailer of the next clause takes the place of the one denied; where none is told,
/// what is wrong is not there. Tells whether that was so.
pub(super) fn place(items: &mut [Item], groups: &mut [Group], at: usize) -> bool {
    let chunk = items[at].chunk;
    let leads = |i: &Item| i.is(Mark::At) || i.what == What::Is(Concept::State(State::On));
    let lead = (at + 1..items.len())
        .take(3)
        .take_while(|i| items[*i].chunk == chunk)
        .find(|i| !items[*i].is_filler());
    let denied = lead
        .filter(|i| leads(&items[*i]))
        .and_then(|i| (i + 1..items.len()).find(|i| !items[*i].is(Mark::Article)))
        .filter(|i| items[*i].chunk == chunk);
    let Some((denied, What::Units(wrong))) = denied.map(|i| (i, items[i].what)) else {
        return false;
    };
    let is_wrong = |i: &usize| {
        matches!(
            items[*i].what,
            What::Is(
                Concept::Fault(_)
                    | Concept::State(
                        State::Leaking | State::Spilled | State::Smelly | State::Frozen
                    )
            )
        )
    };
    let said = (0..at)
        .rev()
        .take(6)
        .take_while(|i| {
            // "leak on 12 not on 9"
            items[*i].chunk == chunk && !matches!(items[*i].what, What::Units(_))
        })
        .find(is_wrong);
    let Some(said) = said else { return false };
    let passes = |i: &Item| {
        i.is_filler()
            || i.is(Mark::Pronoun)
            || i.is(Mark::But)
            || leads(i)
            || matches!(i.what, What::Sign(_))
    };
    let meant = (denied + 1..items.len())
        .take(10)
        .find(|i| !passes(&items[*i]))
        .filter(|i| items[*i].sentence == items[at].sentence);
    match meant.map(|i| (i, items[i].what)) {
        Some((meant, What::Units(right))) if items[denied..meant].iter().any(leads) => {
            groups[wrong].names = groups[right].names.clone();
            for item in &mut items[denied + 1..=meant] {
                item.what = What::Gone;
            }
        }
        _ => items[said].what = What::Word { ordinary: true },
    }
    items[at].what = What::Gone;
    true
}
