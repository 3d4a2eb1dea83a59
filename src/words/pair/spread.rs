//! Statements that words tie to another: the power and the water, 20 does not leak and 21 does, no lights.

use super::Found;
use super::table::{Outcome, Pairs};
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Item, What};
use crate::words::scope::Scope;

/// "20 doesnt leak, 21 does": what was denied of one trailer is said of the next.
pub(super) fn elided(items: &[Item], scope: &[Scope], pairs: &Pairs, found: &mut Vec<Found>) {
    for at in 1..items.len() {
        let says_yes = items[at].is(Mark::Aux)
            || matches!(
                items[at].what,
                What::Is(Concept::Answer(crate::heard::ShortAnswer::Yes) | Concept::Mark(Mark::If))
            );
        let unit = matches!(items[at - 1].what, What::Units(_));
        let ends = items
            .get(at + 1)
            .is_none_or(|n| n.chunk != items[at].chunk || matches!(n.what, What::Sign(_)));
        let opens = (0..at - 1)
            .rev()
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .all(|i| {
                items[i].is_filler()
                    || items[i].is(Mark::And)
                    || items[i].is(Mark::But)
                    || items[i].is(Mark::At)
            });
        if !(says_yes && unit && ends && opens || now_it_is(items, at)) {
            continue;
        }
        let denied = (0..at - 1)
            .rev()
            .take(10)
            .take_while(|i| items[*i].sentence == items[at].sentence)
            .find(|i| scope[*i].denied && items[*i].chunk != items[at].chunk);
        let outcome = denied.and_then(|i| match items[i].what {
            What::Is(Concept::Fault(fault)) => Some(Outcome::Fault(fault)),
            What::Is(Concept::Event(event)) => Some(Outcome::Event(event)),
            What::Is(Concept::State(state)) => pairs.any(state),
            _ => None,
        });
        if let Some(outcome) = outcome {
            found.push(Found { at, outcome });
        }
    }
}

/// "45 wasn't leaking before but it is now", "pero ahora sí": all that its clause says.
fn now_it_is(items: &[Item], at: usize) -> bool {
    /// A clause with more words says more.
    const FEW: usize = 10;
    let yes = |i: &Item| {
        i.is(Mark::Aux)
            || matches!(
                i.what,
                What::Is(Concept::Answer(crate::heard::ShortAnswer::Yes) | Concept::Mark(Mark::If))
            )
    };
    if !yes(&items[at]) {
        return false;
    }
    let inside = |i: &&Item| i.chunk == items[at].chunk;
    let before = items[..at]
        .iter()
        .rev()
        .take(FEW)
        .take_while(inside)
        .count();
    let behind = items[at..].iter().take(FEW).take_while(inside).count();
    let here = &items[at - before..at + behind];
    let only = here.iter().all(|i| {
        i.is_filler()
            || i.is(Mark::But)
            || i.is(Mark::Pronoun)
            || i.is(Mark::Now)
            || yes(i)
            || matches!(i.what, What::Sign(_) | What::Break)
    });
    here.len() < FEW
        && only
        && here.iter().any(|i| i.is(Mark::Now))
        && here.iter().any(|i| i.is(Mark::But))
        && here.iter().filter(|i| yes(i)).count() == 1
}

/// "hooked up the power and the water": what was said of one thing holds for the one that "and" ties to it.
pub(super) fn linked(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    used: &[bool],
    found: &mut Vec<Found>,
) {
    for at in 2..items.len() {
        let Some(noun) = items[at].noun() else {
            continue;
        };
        if used[at] || scope[at].denied {
            continue;
        }
        let mut and = at - 1;
        while and > 0 && (items[and].is(Mark::Article) || items[and].is(Mark::Filler)) {
            and -= 1;
        }
        if !items[and].is(Mark::And) || and == 0 || at - and > 3 {
            continue;
        }
        // a state of its own follows: it needs none of its neighbour's
        let own = (at + 1..items.len())
            .take(4)
            .take_while(|i| items[*i].chunk == items[at].chunk && !items[*i].is(Mark::And))
            .any(|i| {
                matches!(
                    items[i].what,
                    What::Is(Concept::State(_) | Concept::Event(_) | Concept::Fault(_))
                        | What::Number(_)
                        | What::Range(..)
                ) && !(items[i].what == What::Is(Concept::State(State::On))
                    && items
                        .get(i + 1)
                        .is_some_and(|n| matches!(n.what, What::Units(_))))
            });
        let before = &items[and - 1];
        let state = match before.what {
            What::Is(Concept::Event(Event::PowerOn | Event::WaterOn)) => Some(State::On),
            What::Is(Concept::Event(Event::JacksDown | Event::RegulatorFitted)) => {
                Some(State::Fitted)
            }
            What::Is(Concept::Event(Event::FilterServiced)) if noun == Noun::Fuse => {
                Some(State::Replaced)
            }
            What::Is(Concept::Event(Event::FilterServiced)) => Some(State::Cleaned),
            What::Is(Concept::Event(Event::FuseReplaced)) => Some(State::Replaced),
            What::Is(Concept::Noun(_)) if used[and - 1] => (0..and - 1)
                .rev()
                .take(3)
                .take_while(|i| items[*i].chunk == items[at].chunk)
                .find_map(|i| match items[i].what {
                    What::Is(Concept::State(state)) if !scope[i].denied => Some(state),
                    _ => None,
                }),
            _ => None,
        };
        if own {
            // "toilets and sinks clogged": the state after the second holds for the first too
            continue;
        }
        if let Some(outcome) = state.and_then(|s| pairs.of(noun, s))
            && outcome != Outcome::Nothing
        {
            found.push(Found { at, outcome });
        }
    }
}

/// "no lights", "no water or power": the thing itself is missing.
pub(super) fn missing(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    used: &mut [bool],
    found: &mut Vec<Found>,
) {
    for at in 0..items.len() {
        let Some(noun) = items[at].noun() else {
            continue;
        };
        if !scope[at].denied || used[at] {
            continue;
        }
        // "no water leaks": what is denied is the leak
        let next = items.get(at + 1).filter(|n| n.chunk == items[at].chunk);
        let wrong = next.is_some_and(|n| matches!(n.what, What::Is(Concept::State(s)) if scope[at + 1].denied && !matches!(s, State::On | State::TurnedOn | State::Ok | State::Running | State::Back)) || matches!(n.what, What::Is(Concept::Fault(_))));
        if wrong {
            continue;
        }
        let compound = next.is_some_and(|n| n.noun().is_some() && scope[at + 1].denied);
        if compound {
            continue;
        }
        // "no water pressure issues"
        let complaints = (at + 1..items.len())
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .find(|i| items[*i].noun().is_none())
            .is_some_and(|i| items[i].is(Mark::Idle) || items[i].is(Mark::LabelAfter));
        if complaints {
            continue;
        }
        if let Some(outcome) = pairs.of(noun, State::Gone)
            && outcome != Outcome::Nothing
        {
            found.push(Found { at, outcome });
        }
    }
}
