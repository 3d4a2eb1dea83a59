//! Faults that the message itself mends or explains.

use super::table::Outcome;
use super::{Found, around};
use crate::heard::{Event, Fault};
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Item, What};
use crate::words::scope::Scope;

/// "lock jammed, person inside": somebody behind a jammed lock is trapped.
pub(super) fn locked_in(items: &[Item], scope: &[Scope], found: &mut Vec<Found>) {
    let jam = found
        .iter()
        .find(|f| f.outcome == Outcome::Fault(Fault::LockJam))
        .map(|f| f.at);
    let Some(jam) = jam else { return };
    let near = |i: usize| items[i].sentence == items[jam].sentence && !scope[i].denied;
    let somebody = (0..items.len()).find(|i| {
        near(*i)
            && matches!(items[*i].noun(), Some(Noun::Person | Noun::Guests))
            && items[i + 1..].iter().take(3).any(|n| n.is(Mark::Inside))
    });
    if let Some(at) = somebody {
        found.push(Found {
            at,
            outcome: Outcome::Fault(Fault::PersonTrapped),
        });
    }
}

/// What one fault explains is not told twice: a protector that trips, a toilet that runs.
pub(super) fn explained(items: &[Item], found: &mut Vec<Found>) {
    let fault = |f: &Found, fault: Fault| f.outcome == Outcome::Fault(fault);
    let near = |a: usize, b: usize| items[a].sentence == items[b].sentence;
    let gfci: Vec<usize> = found
        .iter()
        .filter(|f| fault(f, Fault::GfciTrip))
        .map(|f| f.at)
        .collect();
    let runs: Vec<usize> = found
        .iter()
        .filter(|f| fault(f, Fault::ToiletRunning))
        .map(|f| f.at)
        .collect();
    let cured: Vec<(usize, Fault)> = found
        .iter()
        .filter_map(|f| match f.outcome {
            Outcome::Clears(fault) => Some((f.at, fault)),
            _ => None,
        })
        .collect();
    let wet: Vec<usize> = found
        .iter()
        .filter(|f| f.outcome == Outcome::Event(Event::WaterOn))
        .map(|f| f.at)
        .collect();
    let unpowered: Vec<usize> = found
        .iter()
        .filter(|f| {
            f.outcome == Outcome::Event(Event::PowerLost)
                || f.outcome == Outcome::Fault(Fault::NoPower)
        })
        .map(|f| f.at)
        .collect();
    let home: Vec<usize> = found
        .iter()
        .filter(|f| f.outcome == Outcome::Event(Event::Returned))
        .map(|f| f.at)
        .collect();
    // "tripped the gfci, reset it and it popped again": it is the protector that did not hold
    for f in found.iter_mut().filter(|f| fault(f, Fault::BreakerTrip)) {
        let noun = |noun: Noun| around(items, f.at).any(|i| items[i].noun() == Some(noun));
        let again = items[f.at].what == What::Is(Concept::State(State::KeepsTripping));
        if again
            && !noun(Noun::Breaker)
            && !noun(Noun::Circuit)
            && gfci.iter().any(|g| *g < f.at && near(*g, f.at))
        {
            f.outcome = Outcome::Fault(Fault::GfciTrip);
        }
    }
    found.retain(|f| {
        let noun = |noun: Noun| around(items, f.at).any(|i| items[i].noun() == Some(noun));
        let twice = fault(f, Fault::BreakerTrip)
            && !noun(Noun::Breaker)
            && !noun(Noun::Circuit)
            && matches!(items[f.at].what, What::Is(Concept::State(_)))
            && gfci.iter().any(|g| near(*g, f.at));
        let shut = fault(f, Fault::ToiletClog)
            && matches!(
                items[f.at].what,
                What::Is(Concept::State(State::Dead | State::Stuck))
            )
            && runs.iter().any(|r| near(*r, f.at));
        let mended = matches!(f.outcome, Outcome::Fault(_))
            && matches!(items[f.at].what, What::Is(Concept::State(_)))
            && cured.iter().any(|(c, fault)| {
                f.outcome == Outcome::Fault(*fault)
                    && *c < f.at
                    && f.at - c <= 3
                    && items[*c].chunk == items[f.at].chunk
                    && items[*c].what == What::Is(Concept::State(State::Fixed))
            });
        // "connected and open" said of the water
        let tap = f.outcome == Outcome::Event(Event::InService)
            && items[f.at].what == What::Is(Concept::State(State::Open))
            && f.at > 0
            && items[f.at - 1].is(Mark::And)
            && wet
                .iter()
                .any(|w| items[*w].chunk == items[f.at].chunk && *w < f.at);
        // "lost site power, whole place went dark"
        let dark = items[f.at].what == What::Is(Concept::State(State::Dark))
            && unpowered.iter().any(|p| near(*p, f.at));
        let came = f.outcome == Outcome::Event(Event::Arrived)
            && home.iter().any(|h| items[*h].chunk == items[f.at].chunk);
        !(twice || shut || came || mended || tap || dark)
    });
}

/// "breakaway good. wait no its dead": what was well a moment ago is not.
pub(super) fn taken_back(items: &[Item], scope: &[Scope], found: &mut Vec<Found>) {
    for at in (0..items.len()).filter(|i| items[*i].is(Mark::Sorry)) {
        let well = found
            .iter()
            .rposition(|f| f.at < at && at - f.at <= 4 && matches!(f.outcome, Outcome::Clears(_)));
        let bad = (at + 1..items.len()).take(8).find(|i| {
            !scope[*i].denied
                && matches!(
                    items[*i].what,
                    What::Is(Concept::State(
                        State::Dead | State::Weak | State::Low | State::Stuck | State::Damaged
                    ))
                )
        });
        let (Some(well), Some(bad)) = (well, bad) else {
            continue;
        };
        // "wait no the battery on it is dead": that is told of its own
        if found.iter().any(|f| f.at == bad) {
            found.remove(well);
        } else if let Outcome::Clears(fault) = found[well].outcome {
            found[well].outcome = Outcome::Fault(fault);
        }
    }
}

/// "leak on 15 fixed", "fixed the leak": what is mended is no longer wrong.
pub(super) fn cures(items: &[Item], scope: &[Scope], found: &mut [Found]) {
    for at in 0..items.len() {
        let mended = matches!(
            items[at].what,
            What::Is(Concept::State(State::Fixed | State::Gone))
        ) && !scope[at].denied
            && scope[at].aside.is_none();
        if !mended || found.iter().any(|f| f.at == at) {
            continue;
        }
        let gone = items[at].what == What::Is(Concept::State(State::Gone));
        // "sewage running out of the valve": where it comes from, and not that it is over
        let comes_from = gone
            && items.get(at + 1).is_some_and(|next| {
                next.chunk == items[at].chunk && (next.is(Mark::Article) || next.noun().is_some())
            });
        if comes_from {
            continue;
        }
        let near = |f: &Found| {
            items[f.at].sentence == items[at].sentence
                && matches!(f.outcome, Outcome::Fault(_))
                && (f.at < at && at - f.at <= 10
                    || !gone && f.at > at && f.at - at <= 4 && items[f.at].chunk == items[at].chunk)
        };
        if let Some(fault) = found
            .iter_mut()
            .filter(|f| near(f))
            .min_by_key(|f| f.at.abs_diff(at))
            && let Outcome::Fault(code) = fault.outcome
        {
            fault.outcome = Outcome::Clears(code);
        }
    }
}

/// "right signal is out but left blinker works", "ac a dead but ac b is fine": one of two that is well does not end what is
/// wrong with the other.
pub(super) fn the_other_works(items: &[Item], scope: &[Scope], found: &mut Vec<Found>) {
    let wrong: Vec<(usize, Fault)> = found
        .iter()
        .filter(|f| !scope[f.at].was && scope[f.at].aside.is_none())
        .filter_map(|f| match f.outcome {
            Outcome::Fault(fault) => Some((f.at, fault)),
            _ => None,
        })
        .collect();
    let of_the_other = |at: usize, fault: Fault| {
        let works = items[at].what == What::Is(Concept::State(State::Ok));
        works
            && wrong.iter().any(|(before, told)| {
                let between =
                    || (*before + 1..at).take_while(|i| items[*i].sentence == items[at].sentence);
                *told == fault
                    && *before < at
                    && between().count() == at - *before - 1
                    && (between().any(|i| items[i].is(Mark::But)) || of_another_room(items, at))
                    && between().any(|i| items[i].noun().is_some())
                    && !around(items, at).any(|i| items[i].is(Mark::Now))
            })
    };
    found.retain(|f| !matches!(f.outcome, Outcome::Clears(fault) if of_the_other(f.at, fault)));
}

/// "no lights in room A, room B lights fine": tells whether the clause opens with a place inside the trailer.
fn of_another_room(items: &[Item], at: usize) -> bool {
    let chunk = items[at].chunk;
    let first = (0..at)
        .rev()
        .take_while(|i| items[*i].chunk == chunk)
        .filter(|i| !items[*i].is_filler() && !matches!(items[*i].what, What::Sign(_)))
        .last();
    first.is_some_and(|i| items[i].is(Mark::Label))
}

/// "16 breaker tripped, already reset it twice": what was reset more than once tripped again.
pub(super) fn reset_twice(items: &[Item], scope: &[Scope], found: &mut Vec<Found>) {
    // "reset it twice, holding now"
    let holds = |at: usize| {
        let mut after =
            (at + 1..items.len()).take_while(|i| items[*i].sentence == items[at].sentence);
        after.any(|i| items[i].what == What::Is(Concept::State(State::Ok)) && !scope[i].denied)
    };
    let twice = |at: usize| {
        (at + 1..items.len())
            .take(4)
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .find(|i| items[*i].what == What::Is(Concept::Mark(Mark::Twice)))
    };
    let again: Vec<Found> = found
        .iter()
        .filter(|f| f.outcome == Outcome::Event(Event::BreakerReset))
        .filter_map(|f| twice(f.at).filter(|at| !holds(*at)))
        .map(|at| Found {
            at,
            outcome: Outcome::Fault(Fault::BreakerTrip),
        })
        .collect();
    found.extend(again);
}
