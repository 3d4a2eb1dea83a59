//! Things and how they stand: which fault, event or cure a noun and a state make together.

mod cures;
mod people;
mod spread;
mod state;
mod table;

use crate::heard::Event;
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What, sentence_around};
use crate::words::scope::Scope;
use cures::{cures, explained, locked_in, taken_back};
use people::{a_person_did, lays_a_cord, part_closed, so_closed, some_cords_off, somebody_else};
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
        match items[at].what {
            What::Is(Concept::Event(Event::Arrived | Event::Left)) if somebody_else(items, at) => {}
            // "wind 18 mph at site": where it was measured
            What::Is(Concept::Event(Event::Arrived))
                if at > 0
                    && items[at - 1].chunk == items[at].chunk
                    && items[at - 1].number().is_some_and(|n| n.unit.is_some()) => {}
            What::Is(Concept::Event(Event::Left)) if a_person_did(items, at) => {}
            // "felt a shock at the sink so I closed 15"
            What::Is(Concept::State(State::Closed))
                if !scope[at].denied
                    && items.get(at + 1).is_some_and(|n| {
                        n.chunk == items[at].chunk && matches!(n.what, What::Units(_))
                    }) =>
            {
                found.push(Found {
                    at,
                    outcome: Outcome::Event(Event::Closed),
                })
            }
            What::Is(Concept::State(State::Closed))
                if !scope[at].denied && so_closed(items, at) =>
            {
                found.push(Found {
                    at,
                    outcome: Outcome::Event(Event::Closed),
                })
            }
            What::Is(Concept::State(State::Closed)) if part_closed(items, at) => {}
            What::Is(Concept::State(State::Fitted)) if lays_a_cord(items, at) => {}
            What::Is(Concept::State(State::Off)) if some_cords_off(items, at) => {}
            What::Is(Concept::Event(event)) if !scope[at].denied => found.push(Found {
                at,
                outcome: Outcome::Event(event),
            }),
            What::Is(Concept::Fault(fault)) if !scope[at].denied => found.push(Found {
                at,
                outcome: Outcome::Fault(fault),
            }),
            What::Is(Concept::Clears(fault)) if !scope[at].denied => found.push(Found {
                at,
                outcome: Outcome::Clears(fault),
            }),
            What::Is(Concept::Event(_) | Concept::Fault(_)) => {}
            What::Is(Concept::State(state)) => {
                let yet = yet(items, at);
                if let Some(outcome) = state_of(items, scope, pairs, at, state, yet, &mut used)
                    && outcome != Outcome::Nothing
                {
                    found.push(Found { at, outcome });
                }
            }
            _ => {}
        }
    }
    missing(items, scope, pairs, &mut used, &mut found);
    linked(items, scope, pairs, &used, &mut found);
    elided(items, scope, pairs, &mut found);
    cures(items, scope, &mut found);
    taken_back(items, scope, &mut found);
    explained(items, &mut found);
    locked_in(items, scope, &mut found);
    // "not chocked yet, chocks are in the truck"
    found.retain(|f| {
        f.outcome != Outcome::Event(Event::Chocked)
            || !sentence_around(items, f.at).any(|i| {
                i < f.at
                    && scope[i].denied
                    && items[i].what == What::Is(Concept::State(State::Chocked))
            })
    });
    found.sort_by_key(|f| f.at);
    found
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
