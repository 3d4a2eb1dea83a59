//! How a reading was taken and what has power: the taps while a pressure was read, the circuits that are live.

use super::attach::{Placed, Value};
use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Item, What};
use super::lex::Token;
use super::scope::Scope;
use super::senses::{Sense, Senses};
use crate::heard::{Event, Taps};

/// How far, in items, a state stands from what it is said of.
const REACH: usize = 6;

/// Finds how the taps stood and which circuits are live.
pub(super) fn find(
    (text, tokens): (&str, &[Token]),
    items: &[Item],
    scope: &[Scope],
    senses: &Senses,
) -> Vec<Placed> {
    let says = |i: usize, sense: Sense| {
        let spelt = &text[tokens[items[i].first].start..tokens[items[i].end - 1].end];
        senses.has(spelt, sense)
    };
    let mut out = Vec::new();
    if let Some(found) = taps(items, scope, says) {
        out.push(found);
    }
    live(items, scope, &mut out);
    stalls_out(items, scope, says, &mut out);
    out
}

/// "three toilets clogged", "2 stalls out of order": how many are out.
fn stalls_out(
    items: &[Item],
    scope: &[Scope],
    says: impl Fn(usize, Sense) -> bool,
    out: &mut Vec<Placed>,
) {
    for at in 0..items.len().saturating_sub(1) {
        let (count, last) = match items[at].what {
            What::Number(n) if n.unit.is_none() => {
                let one = n.value == 1.0 && says(at + 1, Sense::Stall);
                if !(one || says(at + 1, Sense::PlacesInside)) {
                    continue;
                }
                (n.value, at + 1)
            }
            What::Word { .. } if says(at, Sense::One) && says(at + 1, Sense::Stall) => {
                (1.0, at + 1)
            }
            // "stalls 1 and 2", by their numbers
            What::Is(Concept::Mark(Mark::Label))
                if says(at, Sense::Stall) || says(at, Sense::PlacesInside) =>
            {
                let listed: Vec<usize> = (at + 1..items.len())
                    .take_while(|i| {
                        items[*i].sentence == items[at].sentence
                            && (items[*i].what == What::Labelled
                                || items[*i].is(Mark::And)
                                || matches!(items[*i].what, What::Sign(',' | '/' | '&')))
                    })
                    .filter(|i| items[*i].what == What::Labelled)
                    .collect();
                let Some(last) = listed.last() else { continue };
                (listed.len() as f64, *last)
            }
            _ => continue,
        };
        let whole = count.fract() == 0.0 && (1.0..=20.0).contains(&count);
        // "one of three toilets": so many there are, not so many out
        let before = (0..at).rev().find(|i| !items[*i].is(Mark::Article));
        let of = before.is_some_and(|before| items[before].is(Mark::Of));
        if !whole || of {
            continue;
        }
        let state = (last + 1..items.len())
            .take(4)
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .find(|i| {
                matches!(
                    items[*i].what,
                    What::Is(Concept::State(_) | Concept::Fault(_) | Concept::Event(_))
                )
            });
        let shut = state.is_some_and(|i| {
            !scope[i].denied
                && matches!(
                    items[i].what,
                    What::Is(
                        Concept::State(
                            State::Dead
                                | State::Clogged
                                | State::Closed
                                | State::Shut
                                | State::Out
                                | State::Down
                        ) | Concept::Event(crate::heard::Event::Closed)
                            | Concept::Fault(crate::heard::Fault::ToiletClog)
                    )
                )
        });
        // "roped off 2 stalls", "closed two stalls"
        let said = |i: usize| items[i].chunk == items[at].chunk && !scope[i].denied;
        let ropes = at > 0 && {
            let off = items[at - 1].what == What::Is(Concept::State(State::Off));
            let verb = at - 1 - usize::from(off && at > 1);
            said(verb) && says(verb, Sense::Ropes)
        };
        if shut || ropes {
            out.push(Placed {
                at,
                value: Value::Reading(crate::heard::ReadingKey::StallsOut, count),
                noun: None,
            });
        }
    }
}

/// "taps off", "with the taps running", "static 80": only where a pressure is told.
fn taps(items: &[Item], scope: &[Scope], says: impl Fn(usize, Sense) -> bool) -> Option<Placed> {
    let pressure = items.iter().any(|i| {
        matches!(
            i.noun(),
            Some(Noun::Pressure | Noun::AfterRegulator | Noun::BeforeRegulator | Noun::Supply)
        ) || i
            .number()
            .is_some_and(|n| n.unit.is_some_and(Unit::is_pressure))
    });
    if !pressure {
        return None;
    }
    for at in 0..items.len() {
        let placed = |taps| {
            Some(Placed {
                at,
                value: Value::Taps(taps),
                noun: None,
            })
        };
        if items[at].noun() == Some(Noun::Pressure) && says(at, Sense::Static) {
            return placed(Taps::Shut);
        }
        if items[at].noun() != Some(Noun::Taps) || scope[at].denied {
            continue;
        }
        let state = (at + 1..items.len())
            .take(REACH)
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .chain(
                (0..at)
                    .rev()
                    .take(3)
                    .take_while(|i| items[*i].chunk == items[at].chunk),
            )
            .find_map(|i| match items[i].what {
                What::Is(Concept::State(state)) => Some(state),
                What::Is(Concept::Fault(crate::heard::Fault::ToiletRunning)) => {
                    Some(State::Running)
                }
                _ => None,
            });
        match state {
            Some(State::Shut | State::Closed | State::Off) => return placed(Taps::Shut),
            Some(State::Running | State::Open | State::On | State::TurnedOn) => {
                return placed(Taps::Running);
            }
            _ => {}
        }
    }
    None
}

/// "circuits 1 and 2 live", "circuitos 1, 2, 3 y 4 con corriente", "power on, circuits 1 and 2".
fn live(items: &[Item], scope: &[Scope], out: &mut Vec<Placed>) {
    let mut at = 0;
    while at < items.len() {
        let What::Circuit(_) = items[at].what else {
            at += 1;
            continue;
        };
        let (last, bits) = listed(items, at);
        if powered_after(items, scope, last)
            || powered_before(items, scope, at, last)
            || as_many_cords(items, scope, at, bits)
            || nothing_but_circuits(items, at, last, bits)
        {
            out.push(Placed {
                at,
                value: Value::Live(bits),
                noun: None,
            });
        }
        at = last + 1;
    }
}

/// Reads a list of circuits from its first: where it ends, and which they are, a bit each.
fn listed(items: &[Item], first: usize) -> (usize, u8) {
    let (mut last, mut bits) = (first, 0);
    for at in first..items.len() {
        if at > last + 3 || items[at].sentence != items[first].sentence {
            break;
        }
        match items[at].what {
            What::Circuit(n) => {
                bits |= 1 << n;
                last = at;
            }
            What::Sign(',' | '/' | '+' | '&') => {}
            _ if items[at].is(Mark::And) || items[at].is(Mark::Article) => {}
            What::Is(Concept::Noun(Noun::Circuit)) => {}
            _ => break,
        }
    }
    (last, bits)
}

/// Tells whether what follows a list of circuits says that they have power.
fn powered_after(items: &[Item], scope: &[Scope], last: usize) -> bool {
    let next = (last + 1..items.len())
        .take(3)
        .take_while(|i| items[*i].chunk == items[last].chunk)
        .find(|i| !items[*i].is_filler() && !items[*i].is(Mark::With));
    next.is_some_and(|i| {
        !scope[i].denied
            && match items[i].what {
                // "reset 3 on 9": where it is
                What::Is(Concept::State(State::On)) => !items
                    .get(i + 1)
                    .is_some_and(|n| matches!(n.what, What::Units(_))),
                What::Is(Concept::State(state)) => is_power(state),
                What::Is(Concept::Noun(Noun::Power | Noun::Mains)) => {
                    items[i - 1].is(Mark::With) || items[i - 1].is(Mark::Aux)
                }
                _ => false,
            }
    })
}

/// Tells whether the power is said to be on right before a list of circuits that ends its clause.
fn powered_before(items: &[Item], scope: &[Scope], first: usize, last: usize) -> bool {
    let ends = items[last + 1..]
        .iter()
        .take_while(|item| item.chunk == items[last].chunk)
        .all(Item::is_filler);
    let passes = |i: &usize| {
        let item = &items[*i];
        item.is_filler()
            || item.is(Mark::And)
            || item.is(Mark::With)
            || item.is(Mark::At)
            || item.is(Mark::To)
            || matches!(
                item.what,
                What::Sign(',')
                    | What::Number(_)
                    | What::Is(Concept::Noun(Noun::Cord | Noun::Cords | Noun::Circuit))
            )
            // "power on, it's on circuit 2": where it is
            || item.what == What::Is(Concept::State(State::On))
                && items.get(i + 1).is_some_and(|n| n.noun() == Some(Noun::Circuit))
    };
    let said = (0..first)
        .rev()
        .take_while(|i| items[*i].sentence == items[first].sentence)
        .find(|i| !passes(i));
    ends && said.is_some_and(|i| {
        let of_power = || i > 0 && matches!(items[i - 1].noun(), Some(Noun::Power | Noun::Mains));
        !scope[i].denied
            && match items[i].what {
                What::Is(Concept::State(State::PluggedIn) | Concept::Event(Event::PowerOn)) => true,
                What::Is(Concept::State(state)) => is_power(state) && of_power(),
                _ => false,
            }
    })
}

/// "2 cords, circuits 1 and 3": tells whether as many live cords are counted right before a list of circuits.
fn as_many_cords(items: &[Item], scope: &[Scope], first: usize, bits: u8) -> bool {
    let passes = |i: &usize| {
        let item = &items[*i];
        item.is_filler()
            || item.is(Mark::At)
            || item.is(Mark::To)
            || matches!(
                item.what,
                What::Sign(',' | ':')
                    | What::Is(Concept::State(State::On) | Concept::Noun(Noun::Circuit))
            )
    };
    let cords = (0..first)
        .rev()
        .take(REACH)
        .take_while(|i| items[*i].sentence == items[first].sentence)
        .find(|i| !passes(i))
        .filter(|i| {
            matches!(items[*i].noun(), Some(Noun::Cords | Noun::Cord)) && !scope[*i].denied
        });
    let count = cords
        .and_then(|i| i.checked_sub(1))
        .and_then(|i| items[i].number());
    count.is_some_and(|n| n.unit.is_none() && n.value == f64::from(bits.count_ones()))
}

/// "están en el circuito 1 y el 3", "12 cords on circuits 1 and 3": tells whether a message says of its cords on which
/// circuits they are, and nothing else.
fn nothing_but_circuits(items: &[Item], first: usize, last: usize, bits: u8) -> bool {
    let passes = |item: &Item| {
        item.is_filler()
            || item.is(Mark::At)
            || item.is(Mark::To)
            || item.is(Mark::Pronoun)
            || matches!(
                item.what,
                What::Units(_)
                    | What::Sign(_)
                    | What::Break
                    | What::Is(
                        Concept::State(State::On)
                            | Concept::Noun(Noun::Circuit | Noun::Cord | Noun::Cords)
                    )
            )
    };
    let cords = items[..first]
        .iter()
        .any(|i| matches!(i.noun(), Some(Noun::Cord | Noun::Cords)));
    let placed = items[..first]
        .iter()
        .any(|i| i.is(Mark::At) || i.what == What::Is(Concept::State(State::On)));
    placed
        && (cords || bits.count_ones() > 1)
        && items[..first].iter().chain(&items[last + 1..]).all(passes)
}

fn is_power(state: State) -> bool {
    matches!(
        state,
        State::Live | State::On | State::TurnedOn | State::Up | State::PluggedIn
    )
}
