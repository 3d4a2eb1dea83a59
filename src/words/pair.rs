//! Things and how they stand: which fault, event or cure a noun and a state make together.

use std::collections::BTreeMap;

use super::concept::{Concept, Mark, Noun, State};
use super::item::{Item, What};
use super::scope::Scope;
use super::vocab::WordsError;
use crate::heard::{Event, Fault, Need};

/// What a noun in a state means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Outcome {
    /// Something done.
    Event(Event),
    /// Something wrong.
    Fault(Fault),
    /// Something no longer wrong.
    Clears(Fault),
    /// It could be two things: ask back, with the reason.
    Unclear(&'static str),
    /// Understood: nothing to log.
    Nothing,
}

/// The table of nouns and states.
#[derive(Debug, Default)]
pub(super) struct Pairs {
    table: Vec<Vec<Option<Outcome>>>,
    any: Vec<Option<Outcome>>,
}

impl Pairs {
    /// Reads the table: a TOML table for each noun, with what each state of it means.
    pub(super) fn parse(file: &str, text: &str) -> Result<Pairs, WordsError> {
        let read: BTreeMap<String, BTreeMap<String, String>> =
            toml::from_str(text).map_err(|error| WordsError::Toml {
                file: file.into(),
                message: error.to_string(),
            })?;
        let mut pairs = Pairs {
            table: vec![vec![None; State::ALL.len()]; Noun::ALL.len()],
            any: vec![None; State::ALL.len()],
        };
        for (noun, states) in &read {
            for (state, outcome) in states {
                let unknown = || WordsError::Unknown {
                    file: file.into(),
                    is: format!("{noun} {state} = {outcome}"),
                };
                let state = State::from_code(state).ok_or_else(unknown)?;
                let outcome = Outcome::parse(outcome).ok_or_else(unknown)?;
                let row = if noun == "any" {
                    &mut pairs.any
                } else {
                    let noun = Noun::from_code(noun).ok_or_else(unknown)?;
                    &mut pairs.table[noun as usize]
                };
                row[state as usize] = Some(outcome);
            }
        }
        Ok(pairs)
    }

    /// Returns what `noun` in `state` means.
    pub(super) fn of(&self, noun: Noun, state: State) -> Option<Outcome> {
        let state = if state == State::TurnedOn {
            State::On
        } else {
            state
        };
        let row = &self.table[noun as usize];
        // what went out and has no word of its own for that is dead
        row[state as usize].or_else(|| row[State::Dead as usize].filter(|_| state == State::Lost))
    }

    /// Returns what `state` means where no noun fits it.
    pub(super) fn any(&self, state: State) -> Option<Outcome> {
        self.any[state as usize]
    }
}

impl Outcome {
    fn parse(text: &str) -> Option<Outcome> {
        Some(match Concept::parse(text) {
            Some(Concept::Event(event)) => Outcome::Event(event),
            Some(Concept::Fault(fault)) => Outcome::Fault(fault),
            Some(Concept::Clears(fault)) => Outcome::Clears(fault),
            _ if text == "nothing" => Outcome::Nothing,
            _ if text == "unclear mains-or-lights" => Outcome::Unclear("mains-or-lights"),
            _ => return None,
        })
    }
}

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
            What::Is(Concept::Event(Event::Left)) if remains(items, at) => {}
            // "wind 18 mph at site": where it was measured
            What::Is(Concept::Event(Event::Arrived))
                if at > 0
                    && items[at - 1].chunk == items[at].chunk
                    && items[at - 1].number().is_some_and(|n| n.unit.is_some()) => {}
            // "Chad left, 12 is yours": a person
            What::Is(Concept::Event(Event::Left))
                if at > 0
                    && items[at - 1].what == (What::Word { ordinary: false })
                    && (at == 1 || items[at - 2].chunk != items[at].chunk)
                    && !around(items, at).any(|i| matches!(items[i].what, What::Units(_))) => {}
            What::Is(Concept::State(State::Closed)) if part_closed(items, at) => {}
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
    explained(items, &mut found);
    found.sort_by_key(|f| f.at);
    found
}

/// Tells whether "left" says what remains: "90 gallons left", "420 L left".
fn remains(items: &[Item], at: usize) -> bool {
    at > 0
        && items[at - 1].chunk == items[at].chunk
        && (items[at - 1]
            .number()
            .is_some_and(|n| n.unit.is_some() || n.form != super::item::Form::Whole)
            || matches!(
                items[at - 1].what,
                What::Is(
                    Concept::Level(_) | Concept::Noun(Noun::Supplies | Noun::Water | Noun::Fuel)
                )
            )
            || items[at - 1].noun().is_some_and(Noun::is_tank))
}

/// Tells whether only some stalls were closed, and not the trailer.
fn part_closed(items: &[Item], at: usize) -> bool {
    around(items, at).any(|i| {
        matches!(items[i].noun(), Some(Noun::Toilet | Noun::Sink))
            || items[i].is(Mark::LabelAfter)
            || items[i].is(Mark::Label)
                && items.get(i + 1).is_some_and(|n| n.what == What::Labelled)
    })
}

/// What one fault explains is not told twice: a protector that trips, a toilet that runs.
fn explained(items: &[Item], found: &mut Vec<Found>) {
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
    let home: Vec<usize> = found
        .iter()
        .filter(|f| f.outcome == Outcome::Event(Event::Returned))
        .map(|f| f.at)
        .collect();
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
        let came = f.outcome == Outcome::Event(Event::Arrived)
            && home.iter().any(|h| items[*h].chunk == items[f.at].chunk);
        !(twice || shut || came || mended || tap)
    });
}

/// "20 doesnt leak, 21 does": what was denied of one trailer is said of the next.
fn elided(items: &[Item], scope: &[Scope], pairs: &Pairs, found: &mut Vec<Found>) {
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
            .all(|i| items[i].is_filler() || items[i].is(Mark::And) || items[i].is(Mark::At));
        if !(says_yes && unit && ends && opens) {
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

/// Reads a state with the nearest noun it can be said of.
fn state_of(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
    yet: bool,
    used: &mut [bool],
) -> Option<Outcome> {
    let denied = scope[at].denied;
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
    let best = nearest(items, scope, pairs, at, effective);
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
    pairs.any(effective)
}

/// "leak on 15 fixed", "fixed the leak": what is mended is no longer wrong.
fn cures(items: &[Item], scope: &[Scope], found: &mut [Found]) {
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

/// Tells whether it is people who came or went, and no trailer: "the electrician showed up".
fn somebody_else(items: &[Item], at: usize) -> bool {
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

/// "hooked up the power and the water": what was said of one thing holds for the one that "and" ties to it.
fn linked(items: &[Item], scope: &[Scope], pairs: &Pairs, used: &[bool], found: &mut Vec<Found>) {
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

fn mark_noun(
    items: &[Item],
    scope: &[Scope],
    pairs: &Pairs,
    at: usize,
    state: State,
    used: &mut [bool],
) {
    if let Some((noun, _)) = nearest(items, scope, pairs, at, state) {
        used[noun] = true;
    } else if at > 0 && items[at - 1].noun().is_some() {
        used[at - 1] = true;
    }
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
        if let Some(outcome) = items[i].noun().and_then(|noun| pairs.of(noun, state)) {
            if outcome == Outcome::Nothing && items[i].chunk != items[at].chunk {
                return;
            }
            if best.is_none_or(|(least, ..)| cost < least) {
                best = Some((cost, i, outcome));
            }
        }
    };
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

/// "on 12" and "out of" are places, unless the thing before is on or out.
fn is_preposition(items: &[Item], pairs: &Pairs, at: usize, state: State) -> bool {
    let next = items.get(at + 1).filter(|n| n.chunk == items[at].chunk);
    let placed = next.is_some_and(|n| {
        matches!(n.what, What::Units(_) | What::Code)
            || n.is(Mark::Article)
            || n.is(Mark::Unit)
            || n.is(Mark::Pronoun)
            || matches!(n.what, What::Circuit(_))
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
    if !placed {
        return false;
    }
    if state != State::On {
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
    });
    !(can_be_on && alone)
}

/// What a denied state amounts to; none where its denial says all is well.
fn opposite(state: State) -> Option<State> {
    match state {
        State::On | State::TurnedOn | State::Ok | State::Back | State::Fixed => Some(State::Dead),
        State::Level => Some(State::Tilted),
        _ => None,
    }
}

/// "no lights", "no water or power": the thing itself is missing.
fn missing(
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
        if let Some(outcome) = pairs.of(noun, State::Gone)
            && outcome != Outcome::Nothing
        {
            found.push(Found { at, outcome });
        }
    }
}
