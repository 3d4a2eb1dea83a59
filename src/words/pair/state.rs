//! A state and the nearest thing it can be said of.

use super::people::somebody_else;
use super::table::{Outcome, Pairs};
use super::{REACH, around};
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Item, What};
use crate::words::scope::Scope;

/// Reads a state with the nearest noun it can be said of.
pub(super) fn state_of(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
    yet: bool,
    used: &mut [bool],
) -> Option<Outcome> {
    let denied = scope[at].denied;
    // "it is not level yet"
    if state == State::Tilted && yet {
        return Some(Outcome::Nothing);
    }
    if matches!(
        state,
        State::On | State::Out | State::Down | State::Up | State::Off
    ) && is_preposition(items, pairs, at, state)
    {
        return None;
    }
    let effective = if denied { opposite(state) } else { Some(state) };
    let Some(effective) = effective else {
        mark_noun(items, scope, pairs, at, state, used);
        return Some(Outcome::Nothing);
    };
    let best = fuse_replaced(items, scope, pairs, at, effective)
        .or_else(|| nearest(items, scope, pairs, at, effective));
    if let Some((noun_at, outcome)) = best {
        used[noun_at] = true;
        if denied && yet && !matches!(outcome, Outcome::Fault(_)) {
            return Some(Outcome::Nothing);
        }
        if denied && yet {
            return Some(Outcome::Nothing);
        }
        return Some(outcome);
    }
    if denied {
        return if effective == State::Tilted && !yet {
            pairs.any(effective)
        } else {
            Some(Outcome::Nothing)
        };
    }
    // "lost power on site": where it happened, and not that a trailer came
    if effective == State::OnSite && at > 0 && items[at - 1].chunk == items[at].chunk {
        let said_of = matches!(
            items[at - 1].what,
            What::Is(Concept::Noun(_) | Concept::State(_) | Concept::Event(_)) | What::Number(_)
        );
        if said_of || somebody_else(items, at) {
            return None;
        }
    }
    // "la 50 y la 51 cerradas"
    if effective == State::Shut {
        let trailer = at > 0
            && items[at - 1].chunk == items[at].chunk
            && matches!(items[at - 1].what, What::Units(_));
        return trailer.then_some(Outcome::Event(Event::Closed));
    }
    // "the power went and was back in ten minutes"
    if effective == State::Back {
        let lost = (0..at)
            .rev()
            .take(14)
            .take_while(|i| items[*i].sentence == items[at].sentence)
            .any(|i| items[i].what == What::Is(Concept::Event(Event::PowerLost)));
        if lost {
            return Some(Outcome::Event(Event::PowerBack));
        }
    }
    of_what_was_done(items, pairs, at, effective).or_else(|| pairs.any(effective))
}

/// "swapped the fuse, it blew again", "power came back then died": said of the thing that was put right just before.
fn of_what_was_done(items: &[Item], pairs: &Pairs, at: usize, state: State) -> Option<Outcome> {
    let done = (0..at)
        .rev()
        .take(REACH)
        .take_while(|i| items[*i].sentence == items[at].sentence && items[*i].noun().is_none())
        .find_map(|i| match items[i].what {
            What::Is(Concept::Event(Event::FuseReplaced)) => Some(Noun::Fuse),
            What::Is(Concept::Event(Event::BreakerReset)) => Some(Noun::Breaker),
            What::Is(Concept::Event(Event::PowerBack)) => Some(Noun::Power),
            _ => None,
        })?;
    pairs
        .of(done, state)
        .filter(|outcome| matches!(outcome, Outcome::Fault(_)))
}

fn mark_noun(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
    used: &mut [bool],
) {
    // "no water on 12 but no leaks": the water was denied before, and is missing all the same
    let denied_before = |noun: usize| {
        noun < at
            && scope[noun].denied
            && (noun + 1..at).any(|i| items[i].is(Mark::No) || items[i].is(Mark::Not))
    };
    if let Some((noun, _)) = nearest(items, scope, pairs, at, state) {
        used[noun] |= !denied_before(noun);
    } else if at > 0 && items[at - 1].noun().is_some() {
        used[at - 1] = true;
    }
}

/// "the fuse for the pump blew, replaced it": what is replaced is the fuse, where the sentence speaks of one.
fn fuse_replaced(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
) -> Option<(usize, Outcome)> {
    if state != State::Replaced {
        return None;
    }
    let own = nearest(items, scope, pairs, at, state)?;
    if items[own.0].noun() != Some(Noun::Pump) {
        return None;
    }
    let fuse = (0..at)
        .rev()
        .take(REACH + 3)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .find(|i| items[*i].noun() == Some(Noun::Fuse))?;
    Some((fuse, pairs.of(Noun::Fuse, state)?))
}

/// Finds the nearest noun for which the state means something.
fn nearest(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
) -> Option<(usize, Outcome)> {
    let mut best: Option<(f32, usize, Outcome)> = None;
    let mut consider = |i: usize, cost: f32| {
        // "no water, 118v ok": a noun that is denied takes no state of its own
        if scope[i].denied && !scope[at].denied
            || scope[at].aside != scope[i].aside && scope[i].aside.is_some()
        {
            return;
        }
        // "battery 11.6v, kinda low", "waste 60%, cleaned": what has its number in another clause is told
        let told = matches!(state, State::Low | State::Weak | State::Cleaned)
            && items[i].chunk != items[at].chunk
            && items[i].noun().is_some_and(|n| n.reading().is_some())
            && i < at
            && items[i + 1..at].iter().any(|n| n.number().is_some());
        // "tank 1/4, one stall dead": what stands right before it is what is dead, though that says nothing of it
        let own = matches!(state, State::Dead | State::Out | State::Gone | State::Down)
            && items[i].chunk != items[at].chunk
            && i < at
            && items[i].noun().is_some_and(|n| n.is_tank());
        if told || own {
            return;
        }
        if let Some(outcome) = items[i].noun().and_then(|noun| pairs.of(noun, state)) {
            if outcome == Outcome::Nothing && items[i].chunk != items[at].chunk {
                return;
            }
            if best.is_none_or(|(least, ..)| cost < least) {
                best = Some((cost, i, outcome));
            }
        }
    };
    let says_whole = matches!(state, State::Ok | State::Fixed | State::Back);
    let parted = |i: usize| {
        if items[i].chunk == items[at].chunk {
            0.0
        } else {
            4.0
        }
    };
    for i in (0..at)
        .rev()
        .take(REACH)
        .take_while(|i| items[*i].sentence == items[at].sentence)
    {
        consider(i, (at - i) as f32 + parted(i));
        if says_whole && owns_no_such_state(items, pairs, i, state) {
            break;
        }
    }
    for i in (at + 1..items.len())
        .take(REACH - 2)
        .take_while(|i| items[*i].sentence == items[at].sentence)
    {
        // a noun after a comma or "and" belongs to what follows it
        if items[i].is(Mark::And) || items[i].is(Mark::But) || items[i].chunk != items[at].chunk {
            break;
        }
        consider(i, (i - at) as f32 + 0.6);
    }
    best.map(|(_, i, outcome)| (i, outcome))
}

/// "pump dead on 12, tires fine": what is whole is the thing named last, though that says nothing of it, and no thing
/// named before.
fn owns_no_such_state(items: &[Item], pairs: &Pairs, at: usize, state: State) -> bool {
    items[at].noun().is_some_and(|noun| {
        !matches!(noun, Noun::Person | Noun::Guests | Noun::Truck)
            && pairs.of(noun, state).is_none()
    })
}

/// "on 12" and "out of" are places, unless the thing before is on or out.
fn is_preposition(items: &[Item], pairs: &Pairs, at: usize, state: State) -> bool {
    let next = items.get(at + 1).filter(|n| n.chunk == items[at].chunk);
    let placed = next.is_some_and(|n| {
        matches!(n.what, What::Units(_) | What::Code)
            || n.is(Mark::Article)
            || n.is(Mark::Unit)
            || n.is(Mark::Pronoun)
            || matches!(n.what, What::Circuit(_))
            // "on one of 5's cords"
            || matches!(n.what, What::Word { .. } | What::Number(_))
                && items.get(at + 2).is_some_and(|n| n.is(Mark::Of))
                && !at.checked_sub(1).is_some_and(|i| {
                    matches!(items[i].noun(), Some(Noun::Power | Noun::Water))
                })
    }) || state == State::On
        // "power on 4 cords": the power is on
        && !at.checked_sub(1).is_some_and(|i| {
            items[i].noun().is_some_and(|n| matches!(n, Noun::Power | Noun::Water))
        })
        && (at + 1..items.len())
            .take(3)
            .take_while(|i| {
                items[*i].chunk == items[at].chunk
                    && (items[*i].noun().is_some()
                        || items[*i].is_filler()
                        || items[*i].number().is_some())
            })
            .any(|i| {
                matches!(
                    items[i].noun(),
                    Some(Noun::Circuit | Noun::Breaker | Noun::Cord | Noun::Cords)
                )
            });
    if state != State::On {
        return false;
    }
    // "power out on mens side": where it is out
    let out_there = next.is_some()
        && at.checked_sub(1).is_some_and(|i| {
            let says = items[i].what;
            items[i].chunk == items[at].chunk
                && matches!(
                    says,
                    What::Is(Concept::State(
                        State::Out | State::Gone | State::Dead | State::Down | State::Lost
                    ))
                )
        });
    if out_there {
        return true;
    }
    // "going under 12": somebody does, and nothing is switched on
    let under = next.is_some_and(|n| n.is(Mark::Bound));
    if under || opens_before_a_trailer(items, at) {
        return true;
    }
    if !placed {
        return false;
    }
    // "water on 12": said of a thing that can be on, and nothing else is said of it
    let before = at
        .checked_sub(1)
        .filter(|i| items[*i].chunk == items[at].chunk);
    let can_be_on = before
        .and_then(|i| items[i].noun())
        .filter(|n| {
            matches!(
                n,
                Noun::Water | Noun::Power | Noun::TankHeater | Noun::Regulator
            )
        })
        .is_some_and(|n| matches!(pairs.of(n, State::On), Some(Outcome::Event(_))));
    let alone = around(items, at).all(|i| {
        i == at
            || !matches!(
                items[i].what,
                What::Is(
                    Concept::State(_)
                        | Concept::Event(_)
                        | Concept::Fault(_)
                        | Concept::Mark(Mark::No | Mark::Not)
                ) | What::Number(_)
            )
            // "water on 12 pressure 55": told of another noun
            || i > 0
                && items[i].number().is_some()
                && items[i - 1].chunk == items[i].chunk
                && items[i - 1].noun().is_some_and(|n| n.reading().is_some())
    });
    !(can_be_on && alone)
}

/// "on number 15 water is weak": the word opens its chunk, and leads to the trailer that follows.
fn opens_before_a_trailer(items: &[Item], at: usize) -> bool {
    let chunk = items[at].chunk;
    let opens = (0..at)
        .rev()
        .take(4)
        .take_while(|i| items[*i].chunk == chunk)
        .all(|i| items[i].is_filler() || items[i].is(Mark::Call));
    let trailer = (at + 1..items.len())
        .take(3)
        .take_while(|i| items[*i].chunk == chunk)
        .find(|i| matches!(items[*i].what, What::Units(_)));
    opens
        && trailer.is_some_and(|i| {
            (at + 1..i).all(|i| {
                items[i].is_filler() || matches!(items[i].what, What::Word { .. } | What::Sign(_))
            })
        })
}

/// What a denied state amounts to; none where its denial says all is well.
fn opposite(state: State) -> Option<State> {
    match state {
        State::On | State::Ok | State::Back | State::Fixed => Some(State::Dead),
        State::Level => Some(State::Tilted),
        _ => None,
    }
}
