//! What the words around a number say of it: stuck, leaning, a system, a circuit, a slip.

use super::Placer;
use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What, sentence_around};

impl Placer<'_> {
    /// Tells whether a word nobody knows stands at `at`.
    pub(super) fn strange(&self, at: usize) -> bool {
        self.items
            .get(at)
            .is_some_and(|n| n.what == What::Word { ordinary: false })
            && self.short.binary_search(&at).is_ok()
    }

    /// Tells whether a short word nobody knows stands right after a number: it may be a misspelt measure.
    pub(super) fn slip_after(&self, at: usize) -> bool {
        self.items.get(at + 1).is_some_and(|n| {
            matches!(n.what, What::Word { ordinary: false })
                && n.chunk == self.items[at].chunk
                && self.short.binary_search(&(at + 1)).is_ok()
        })
    }

    /// Tells whether a gauge shows the level at `at`, and is not said to be stuck.
    pub(super) fn gauge(&self, at: usize) -> bool {
        let here = chunk(self.items, at);
        let mut shows = false;
        for i in here {
            match self.items[i].what {
                What::Is(Concept::Noun(Noun::Gauge)) => shows = true,
                What::Is(
                    Concept::State(State::Stuck | State::Dead | State::Frozen | State::Damaged)
                    | Concept::Fault(_),
                ) => return false,
                _ => {}
            }
        }
        shows
    }

    pub(super) fn spanish_pounds(&self, at: usize) -> bool {
        // pounds are a pressure unless something is said to weigh; "and" opens another clause
        let and = |i: &usize| self.items[*i].is(Mark::And);
        let from = (0..at).rev().find(and).map_or(0, |i| i + 1);
        let to = (at..self.items.len()).find(and).unwrap_or(self.items.len());
        let clause = || chunk(self.items, at).filter(|i| (from..to).contains(i));
        chunk(self.items, at).all(|i| !matches!(self.items[i].what, What::Word { ordinary: false }))
            && self.items[at].number().is_some_and(|n| n.value < 200.0)
            && clause().all(|i| {
                self.items[i].noun().is_none_or(|n| {
                    matches!(
                        n,
                        Noun::Water
                            | Noun::Pressure
                            | Noun::Gauge
                            | Noun::Regulator
                            | Noun::Taps
                            | Noun::Hose
                    )
                })
            })
    }

    /// Tells whether the sentence says that the waste was taken out.
    pub(super) fn pumping(&self, at: usize) -> bool {
        let sentence = self.items[at].sentence;
        let hauls = |i: &Item| {
            matches!(
                i.what,
                What::Is(
                    Concept::State(State::Pumped | State::Emptied | State::Out | State::Drained)
                        | Concept::Event(Event::WastePumped)
                )
            ) || i.is(Mark::Away)
        };
        // "410 gal off 7"
        let off = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.what == What::Is(Concept::State(State::Off)))
            && self
                .items
                .get(at + 2)
                .is_some_and(|n| matches!(n.what, What::Units(_)));
        if off {
            return true;
        }
        let here = sentence_around(self.items, at);
        if self.items[here.clone()].iter().any(hauls) {
            return true;
        }
        // a line of its own under "pumped out 21"
        let above: Vec<usize> = (0..at)
            .rev()
            .take(8)
            .filter(|i| self.items[*i].sentence + 1 == sentence)
            .collect();
        above.iter().any(|i| hauls(&self.items[*i]))
            && self.items[here].iter().all(|i| i.noun().is_none())
    }

    /// Tells whether a percentage stands beside "leaning", "off level".
    pub(super) fn leans(&self, at: usize) -> bool {
        let tilted = |i: usize| {
            self.items.get(i).is_some_and(|n| {
                n.chunk == self.items[at].chunk
                    && matches!(
                        n.what,
                        What::Is(
                            Concept::State(State::Tilted)
                                | Concept::Fault(crate::heard::Fault::NotLevel)
                                | Concept::Noun(Noun::Slope)
                        )
                    )
            })
        };
        let before = (0..at).rev().take(4).find(|i| !self.items[*i].is_filler());
        before.is_some_and(tilted) || tilted(at + 1)
    }

    /// Tells whether 12 V names a system: "12v battery reads 12.2", "pump (12v, new)".
    pub(super) fn system(&self, at: usize, number: Number) -> bool {
        if number.form != Form::Whole || !matches!(number.value as u32, 12 | 24 | 110 | 120 | 240) {
            return false;
        }
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        let before = self
            .items
            .get(at + 1)
            .and_then(Item::noun)
            .is_some_and(|n| n == Noun::Battery);
        let read = (at + 1..self.items.len())
            .take(8)
            .take_while(here)
            .any(|i| {
                self.items[i]
                    .number()
                    .is_some_and(|n| matches!(n.unit, None | Some(Unit::Volt)))
            });
        let of_a_thing = number.value <= 24.0
            && (0..at).rev().take(4).take_while(here).any(|i| {
                matches!(
                    self.items[i].noun(),
                    Some(Noun::Pump | Noun::Lights | Noun::Fan)
                )
            })
            && self.items[sentence_around(self.items, at)]
                .iter()
                .all(|i| i.noun() != Some(Noun::Battery));
        // "the 12v pump in 40 is dead", "12v socket": what it is made for
        let made_for = number.value <= 24.0
            && self.items.get(at + 1).is_some_and(|n| {
                n.chunk == self.items[at].chunk
                    && matches!(
                        n.noun(),
                        Some(Noun::Pump | Noun::Lights | Noun::Fan | Noun::Plug | Noun::Sound)
                    )
            });
        before && read || of_a_thing || made_for
    }

    /// Tells whether a span of time is one to arrival: "half hour out", "20 min away".
    pub(super) fn away(&self, at: usize) -> bool {
        // "back in 45 minutes"
        let back = at > 1
            && self.items[at - 1].is(Mark::At)
            && self.items[at - 2].what == What::Is(Concept::State(State::Back));
        let sentence = self.items[at].sentence;
        let underway = self.items[at.saturating_sub(12)..at]
            .iter()
            .any(|i| i.is(Mark::Underway) && i.sentence == sentence);
        if back || underway {
            return true;
        }
        // "took 45 min" tells how long it was, "45 min away" how long it will be; "took three hours on account of the bridge
        // being out" says of something else that it is out
        let close = |i: usize| {
            i > at
                && i <= at + 3
                && (at + 1..i).all(|i| {
                    self.items[i].noun().is_none()
                        && !matches!(self.items[i].what, What::Is(Concept::State(_)))
                })
        };
        chunk(self.items, at).any(|i| {
            close(i) && self.items[i].is(Mark::Away)
                || self.items[i].is(Mark::Underway)
                // "en 20 minutos llego"
                || i > at
                    && at > 0
                    && self.items[at - 1].is(Mark::At)
                    && self.items[i].what == What::Is(Concept::Event(Event::Arrived))
                || self.items[i].noun() == Some(Noun::Eta)
                || close(i) && self.items[i].what == What::Is(Concept::State(State::Out))
        })
    }

    /// Finds the circuit a current is of: the nearest named in its chunk or line.
    pub(super) fn circuit(&self, at: usize) -> Option<u8> {
        let sentence = self.items[at].sentence;
        // "13.2 amps on circuit 1"
        let right_after = (at + 1..self.items.len())
            .take(4)
            .take_while(|i| {
                self.items[*i].chunk == self.items[at].chunk
                    && !matches!(self.items[*i].what, What::Number(_))
            })
            .find(|i| matches!(self.items[*i].what, What::Circuit(_)));
        let on_it = (at + 1..right_after.unwrap_or(at + 1)).any(|i| {
            self.items[i].is(Mark::At) || self.items[i].what == What::Is(Concept::State(State::On))
        });
        if let (Some(i), true) = (right_after, on_it)
            && let What::Circuit(n) = self.items[i].what
        {
            return Some(n);
        }
        let back = (0..at)
            .rev()
            .take(10)
            .take_while(|i| self.items[*i].sentence == sentence);
        for i in back {
            match self.items[i].what {
                What::Circuit(n) => return Some(n),
                What::Number(n) if n.unit == Some(Unit::Amp) => break,
                _ => {}
            }
        }
        (at + 1..self.items.len())
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find_map(|i| match self.items[i].what {
                What::Circuit(n) => Some(n),
                _ => None,
            })
    }
}

/// Tells whether "over", "almost" and their like stand right before.
pub(super) fn bounded(items: &[Item], at: usize) -> bool {
    (0..at)
        .rev()
        .take(4)
        .take_while(|i| items[*i].chunk == items[at].chunk)
        // "almost at 3/4"
        .find(|i| !items[*i].is_filler() && !items[*i].is(Mark::At))
        .is_some_and(|i| items[i].is(Mark::Bound))
}

/// The items of the chunk around `at`, near it.
pub(super) fn chunk(items: &[Item], at: usize) -> impl Iterator<Item = usize> + '_ {
    let id = items[at].chunk;
    let back = (0..at)
        .rev()
        .take(12)
        .take_while(move |i| items[*i].chunk == id);
    let on = (at + 1..items.len())
        .take(12)
        .take_while(move |i| items[*i].chunk == id);
    back.chain(on)
}
