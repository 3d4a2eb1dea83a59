//! Things and how they stand: which fault, event or cure a noun and a state make together.

mod cures;
mod people;
mod spread;
mod state;
mod table;

use crate::heard::{Event, Fault};
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Item, What, sentence_around};
use crate::words::scope::Scope;
use cures::{cures, explained, locked_in, reset_twice, taken_back, the_other_works};
use people::{
    a_person_did, lays_a_cord, of_another_place, part_closed, so_closed, some_cords_off,
    somebody_else,
};
use spread::{elided, linked, missing};
use state::state_of;
pub(super) use table::{Outcome, Pairs};

/// A statement found: where, and what it means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Found {
    /// The item that carries it.
    pub at: usize,
    /// What it means.
    pub outcome: Outcome,
}

/// How far, in items, a state reaches for its noun.
const REACH: usize = 9;

/// Finds every statement of the message.
pub(super) fn statements(items: &[Item], scope: &[Scope], pairs: &Pairs) -> Vec<Found> {
    let mut found = Vec::new();
    let mut used = vec![false; items.len()];
    for at in 0..items.len() {
        let outcome = match items[at].what {
            What::Is(Concept::State(state)) => {
                of_a_state(items, scope, pairs, at, state, &mut used)
            }
            What::Is(concept) if !scope[at].denied => by_itself(items, at, concept),
            _ => None,
        };
        found.extend(outcome.map(|outcome| Found { at, outcome }));
    }
    missing(items, scope, pairs, &mut used, &mut found);
    linked(items, scope, pairs, &used, &mut found);
    elided(items, scope, pairs, &mut found);
    cures(items, scope, &mut found);
    taken_back(items, scope, &mut found);
    explained(items, &mut found);
    locked_in(items, scope, &mut found);
    reset_twice(items, scope, &mut found);
    the_other_works(items, scope, &mut found);
    found.retain(|f| {
        f.outcome != Outcome::Event(Event::Chocked) || !not_chocked(items, scope, f.at)
    });
    found.retain(|f| {
        f.outcome != Outcome::Event(Event::WastePumped) || !not_pumped(items, scope, f.at)
    });
    found.sort_by_key(|f| f.at);
    found
}

/// Returns what a phrase says that needs no other.
fn by_itself(items: &[Item], at: usize, concept: Concept) -> Option<Outcome> {
    match concept {
        Concept::Event(Event::Arrived) if let Some(under) = lies_under(items, at) => {
            (under != Noun::Hose).then_some(Outcome::Fault(Fault::CordDamaged))
        }
        Concept::Event(Event::Arrived | Event::Left) if somebody_else(items, at) => None,
        // "wind 18 mph at site": where it was measured
        Concept::Event(Event::Arrived)
            if at > 0
                && items[at - 1].chunk == items[at].chunk
                && items[at - 1].number().is_some_and(|n| n.unit.is_some()) =>
        {
            None
        }
        Concept::Event(Event::Left) if a_person_did(items, at) => None,
        Concept::Event(event) => Some(Outcome::Event(event)),
        Concept::Fault(fault) => Some(Outcome::Fault(fault)),
        Concept::Clears(fault) => Some(Outcome::Clears(fault)),
        _ => None,
    }
}

/// "A pickup is parked on 12's cord": what lies under it, and nobody came.
fn lies_under(items: &[Item], at: usize) -> Option<Noun> {
    let next = items.get(at + 1)?;
    if next.what != What::Is(Concept::State(State::On)) || next.chunk != items[at].chunk {
        return None;
    }
    let here = (at + 2..items.len()).take(4);
    let mut here = here.take_while(|i| items[*i].chunk == items[at].chunk);
    let noun = here.find_map(|i| items[i].noun())?;
    matches!(noun, Noun::Cord | Noun::Cords | Noun::Hose).then_some(noun)
}

/// Returns what a state says of the thing it is said of.
fn of_a_state(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
    used: &mut [bool],
) -> Option<Outcome> {
    match state {
        // "felt a shock at the sink so I closed 15"
        State::Closed
            if !scope[at].denied && (before_a_trailer(items, at) || so_closed(items, at)) =>
        {
            return Some(Outcome::Event(Event::Closed));
        }
        State::Closed if part_closed(items, at) => return None,
        State::Closed | State::Open if of_another_place(items, at) => return None,
        State::Fitted if lays_a_cord(items, at) => return None,
        State::Off if some_cords_off(items, at) => return None,
        _ => {}
    }
    let yet = yet(items, at);
    state_of(items, scope, pairs, at, state, yet, used)
        .filter(|outcome| *outcome != Outcome::Nothing)
}

fn before_a_trailer(items: &[Item], at: usize) -> bool {
    items
        .get(at + 1)
        .is_some_and(|n| n.chunk == items[at].chunk && matches!(n.what, What::Units(_)))
}

/// "not chocked yet, chocks are in the truck".
fn not_chocked(items: &[Item], scope: &[Scope], at: usize) -> bool {
    sentence_around(items, at).any(|i| {
        i < at && scope[i].denied && items[i].what == What::Is(Concept::State(State::Chocked))
    })
}

/// "pump truck left, didnt pump": who came did not do it.
fn not_pumped(items: &[Item], scope: &[Scope], at: usize) -> bool {
    sentence_around(items, at).any(|i| match items[i].what {
        What::Is(Concept::State(State::Undone)) => true,
        What::Is(Concept::State(State::Pumped | State::Emptied)) => i > at && scope[i].denied,
        _ => false,
    })
}

/// Tells whether "yet" stands in the same chunk.
fn yet(items: &[Item], at: usize) -> bool {
    around(items, at).any(|i| items[i].is(Mark::Yet))
}

fn around(items: &[Item], at: usize) -> impl Iterator<Item = usize> + '_ {
    let chunk = items[at].chunk;
    let back = (0..at)
        .rev()
        .take(12)
        .take_while(move |i| items[*i].chunk == chunk);
    let on = (at..items.len())
        .take(12)
        .take_while(move |i| items[*i].chunk == chunk);
    back.chain(on)
}
