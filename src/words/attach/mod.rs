//! Numbers to readings: each value to the noun it belongs to, converted to the unit that its key names.

mod cords;
mod measured;
mod noun;
mod said_before;
mod surroundings;
mod unmeasured;
mod well;

use crate::heard::ReadingKey;
use crate::quantity::TemperatureScale;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::scope::Scope;
use crate::words::unit::Group;
pub(super) use noun::fits;
use surroundings::{bounded, chunk};
pub(super) use well::after_good_word;

/// A value found in the message.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Value {
    /// A plain reading.
    Reading(ReadingKey, f64),
    /// A current, with its circuit.
    Amps(Option<u8>, f64),
    /// The circuits that have power, a bit each.
    Live(u8),
    /// How the taps stood.
    Taps(crate::heard::Taps),
    /// Understood, and no reading of ours.
    Label,
    /// To be asked about, with the reason.
    Unclear(&'static str),
}

/// A value with its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Placed {
    /// The item of the number.
    pub at: usize,
    /// What it gives.
    pub value: Value,
    /// The noun it belongs to, where one was said.
    pub noun: Option<Noun>,
}

/// How far, in items, a number looks for its noun.
const REACH: usize = 8;
/// How far, in items, the tank that a gauge shows may have been told before.
const GAUGE_REACH: usize = 32;

/// Places every number of the message.
pub(super) fn values(
    items: &[Item],
    groups: &[Group],
    scope: &[Scope],
    short: &[usize],
    scale: TemperatureScale,
) -> Vec<Placed> {
    let mut placer = Placer {
        items,
        groups,
        scope,
        short,
        scale,
        taken: vec![None; items.len()],
        out: Vec::new(),
        last: None,
        clocks: items
            .iter()
            .filter(|i| matches!(i.what, What::Clock(_)))
            .count(),
    };
    placer.run();
    placer.out
}

struct Placer<'a> {
    items: &'a [Item],
    groups: &'a [Group],
    scope: &'a [Scope],
    /// Unknown words short enough to be a misspelt measure.
    short: &'a [usize],
    scale: TemperatureScale,
    /// For each noun, the number that took it.
    taken: Vec<Option<usize>>,
    out: Vec<Placed>,
    /// The noun of the last placed value, for "14 has 2".
    last: Option<(usize, Noun, Form)>,
    /// How many times of day the message names.
    clocks: usize,
}

impl Placer<'_> {
    fn run(&mut self) {
        for at in 0..self.items.len() {
            match self.items[at].what {
                What::Number(number) => self.number(at, number),
                What::Range(_, _, unit) => {
                    let noun = self.noun_for(at, unit, false).map(|(i, n)| {
                        self.taken[i] = Some(at);
                        n
                    });
                    // "39 has 50 to 60 psi, 40 has 55"
                    if let Some(noun) = noun.or_else(|| unit.and_then(Noun::of)) {
                        self.last = Some((at, noun, Form::Whole));
                    }
                    let label = unit == Some(Unit::Other)
                        || unit == Some(Unit::Minute)
                        || unit == Some(Unit::Hour)
                        || labelled(self.items, at);
                    if label && noun != Some(Noun::Eta) {
                        self.out.push(Placed {
                            at,
                            value: Value::Label,
                            noun,
                        });
                    } else {
                        self.out.push(Placed {
                            at,
                            value: Value::Unclear("range"),
                            noun,
                        });
                    }
                }
                What::Is(Concept::Level(level)) if !self.scope[at].denied => self.level(at, level),
                // "24 waste haalf": a level that cannot be read
                What::Is(Concept::Noun(Noun::Waste | Noun::Tank | Noun::Fresh))
                    if self.slip_after(at)
                        && self.items.get(at + 2).is_none_or(|n| {
                            n.chunk != self.items[at].chunk || matches!(n.what, What::Sign(_))
                        })
                        && (!self.out.is_empty() || self.trailer_named(at)) =>
                {
                    self.out.push(Placed {
                        at,
                        value: Value::Unclear("no-number"),
                        noun: self.items[at].noun(),
                    })
                }
                _ => {}
            }
        }
    }

    /// "chanhe 14's tank to empty": what a tank is to be, after a word nobody knows that opens the sentence.
    fn ordered(&self, at: usize) -> bool {
        let to = at > 1
            && self.items[at - 1].is(Mark::To)
            && self.items[at - 2].noun().is_some_and(Noun::is_tank);
        let first = crate::words::item::sentence_around(self.items, at)
            .find(|i| !matches!(self.items[*i].what, What::Sign(_) | What::Break));
        to && first.is_some_and(|i| self.items[i].what == What::Word { ordinary: false })
    }

    /// Full or empty said of a tank.
    fn level(&mut self, at: usize, level: f64) {
        if self.shown_stuck(at) {
            return;
        }
        if self.ordered(at) {
            return self.out.push(Placed {
                at,
                value: Value::Unclear("order"),
                noun: None,
            });
        }
        let number = Number {
            value: level,
            form: Form::Level,
            unit: None,
            bound: bounded(self.items, at),
        };
        match self.noun_for(at, None, true) {
            Some((i, noun)) if noun.is_tank() || noun == Noun::Battery => {
                if self.taken[i].is_some_and(|t| t != at) {
                    // "half empty" was read with its fraction; a second level of one noun is a value of its own
                    self.place(at, number, Some((i, noun)));
                } else {
                    self.place(at, number, Some((i, noun)));
                }
            }
            None if self.carried(at).is_some_and(Noun::is_tank) => {
                let tank = self.carried(at).map(|noun| (at, noun));
                self.place(at, number, tank);
            }
            None if self.still(at, number).is_some() => {
                let tank = self.still(at, number);
                self.place(at, number, tank);
            }
            // "topped off the fresh, the sight gauge shows full"
            None if self.gauge(at) && self.tank_within(at, GAUGE_REACH).is_some() => {
                let tank = self.tank_within(at, GAUGE_REACH).map(|noun| (at, noun));
                self.place(at, number, tank);
            }
            // "the full light came on, black tank"
            None if self.gauge(at) && self.tank_after(at).is_some() => {
                let tank = self.tank_after(at);
                self.place(at, number, tank);
            }
            // "la 3 prendió la luz de lleno": of a tank, and nobody knows which
            None if self.is_of_a_lamp(at) => self.out.push(Placed {
                at,
                value: Value::Unclear("which-tank"),
                noun: None,
            }),
            _ => {
                // only a bare "12 full" is about a tank that was not named
                let bare = chunk(self.items, at).all(|i| {
                    !matches!(
                        self.items[i].what,
                        What::Word { .. }
                            | What::Is(
                                Concept::Noun(_)
                                    | Concept::State(_)
                                    | Concept::Event(_)
                                    | Concept::Fault(_)
                            )
                    ) || self.leads_to_trailer(i)
                });
                let after_a_slip = at > 0
                    && self.strange(at - 1)
                    && (!self.out.is_empty() || self.trailer_named(at));
                if bare || after_a_slip {
                    self.out.push(Placed {
                        at,
                        value: Value::Unclear("which-tank"),
                        noun: None,
                    });
                }
            }
        }
    }

    /// "full light", "luz de lleno": tells whether the lamp or gauge that shows a level stands right beside it.
    fn is_of_a_lamp(&self, at: usize) -> bool {
        let gauge = |i: usize| {
            (self.items.get(i))
                .is_some_and(|n| n.noun() == Some(Noun::Gauge) && n.chunk == self.items[at].chunk)
        };
        let of = at > 1 && self.items[at - 1].is(Mark::Of) && gauge(at - 2);
        of || gauge(at + 1)
    }

    /// "gauge frozen at half", "stuck on 3/4": what it shows is not what is in the tank.
    fn shown_stuck(&self, at: usize) -> bool {
        (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| {
                !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::At)
                    && !matches!(
                        self.items[*i].what,
                        What::Is(Concept::State(State::On | State::Off))
                    )
            })
            .is_some_and(|i| {
                matches!(
                    self.items[i].what,
                    What::Is(
                        Concept::State(State::Stuck | State::Frozen)
                            | Concept::Fault(crate::heard::Fault::GaugeStuck)
                    )
                )
            })
    }

    fn number(&mut self, at: usize, number: Number) {
        let wire = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.noun() == Some(Noun::Gauge))
            && chunk(self.items, at)
                .any(|i| matches!(self.items[i].noun(), Some(Noun::Cord | Noun::Cords)));
        let stuck =
            self.shown_stuck(at) && (number.form == Form::Part || number.unit == Some(Unit::Pct));
        // "climbing about 5% an hour": how fast
        let rate = matches!(
            number.unit,
            Some(Unit::Pct | Unit::Gal | Unit::Litre | Unit::Psi)
        ) && self.items.get(at + 1).is_some_and(|n| {
            n.end > n.first + 1
                && n.number()
                    .is_some_and(|n| n.unit == Some(Unit::Hour) && n.value == 1.0)
        });
        if stuck || rate || labelled(self.items, at) || number.unit == Some(Unit::Other) || wire {
            return self.out.push(Placed {
                at,
                value: Value::Label,
                noun: None,
            });
        }
        let noun = self.noun_for(at, number.unit, number.form == Form::Part);
        // a minus must touch its number: "temp - 5" could be either
        let spaced = at > 1
            && self.items[at - 1].what == What::Sign('-')
            && number.form != Form::Part
            && self.items[at - 2]
                .noun()
                .is_some_and(|n| matches!(n, Noun::Air | Noun::Inside | Noun::Low));
        if spaced {
            return self.out.push(Placed {
                at,
                value: Value::Unclear("spaced-minus"),
                noun: noun.map(|(_, n)| n),
            });
        }
        self.place(at, number, noun);
    }

    fn place(&mut self, at: usize, number: Number, noun: Option<(usize, Noun)>) {
        let noun = noun
            .or_else(|| self.still(at, number))
            .or_else(|| self.filled_to(at))
            .or_else(|| {
                let noun = after_good_word(self.items, at)?;
                Some((noun, self.items[noun].noun()?))
            });
        let value = self.value(at, number, noun.map(|(_, n)| n));
        if let Some((i, n)) = noun {
            self.taken[i] = Some(at);
            if !matches!(value, Value::Label) {
                self.last = Some((at, n, number.form));
            }
        } else if let Value::Reading(key, _) = value
            && let Some(noun) = Noun::ALL.iter().find(|n| n.reading() == Some(key))
        {
            self.last = Some((at, *noun, number.form));
        }
        let degrees = matches!(number.unit, Some(Unit::Deg | Unit::DegC | Unit::DegF));
        let below = number.value > 0.0
            && at > 0
            && self.items[at - 1].chunk == self.items[at].chunk
            && (degrees && matches!(self.items[at - 1].what, What::Word { .. })
                || noun.is_some_and(|(_, n)| n == Noun::Air)
                    && matches!(self.items[at - 1].what, What::Is(Concept::Unit(_))));
        // "3/4 empy": full or empty, which is the opposite
        let part = number.form == Form::Part
            && self.slip_after(at)
            && self
                .items
                .get(at + 2)
                .is_none_or(|n| n.chunk != self.items[at].chunk || matches!(n.what, What::Sign(_)));
        // "40 mm/h": by the hour, and of what cannot be told
        let hourly = self
            .items
            .get(at + 1)
            .is_some_and(|n| matches!(n.what, What::Word { .. } | What::Is(_)))
            && self
                .items
                .get(at + 2)
                .is_some_and(|n| n.glued && n.what == What::Sign('/'));
        // "-6 °CC"
        let degrees_of_what = number.unit == Some(Unit::Deg)
            && self
                .items
                .get(at + 1)
                .is_some_and(|n| n.glued && matches!(n.what, What::Word { .. }));
        let slip = below
            || part
            || hourly
            || degrees_of_what
            || number.unit.is_none()
                && (self.slip_after(at) && !matches!(number.form, Form::Part | Form::Level)
                    || at > 0 && self.strange(at - 1));
        let value = match value {
            Value::Reading(..) | Value::Amps(..) if slip => Value::Unclear("no-measure"),
            // "30 amp crd": a rating, where the thing rated is misspelt
            Value::Amps(None, _) if self.slip_after(at) => Value::Unclear("no-measure"),
            Value::Amps(None, amps)
                if [15.0, 20.0, 30.0, 50.0].contains(&amps)
                    && self
                        .items
                        .get(at + 1)
                        .is_some_and(|n| matches!(n.what, What::Word { .. })) =>
            {
                Value::Unclear("no-measure")
            }
            // "resh tank 400 L": which tank was meant is what the unknown word said
            Value::Reading(..)
                if noun.is_some_and(|(i, n)| {
                    n == Noun::Tank && (self.strange(i + 1) || i > 0 && self.strange(i - 1))
                }) =>
            {
                Value::Unclear("which-tank")
            }
            // "4 people wakting": whether they are the guests is what the word said
            Value::Reading(ReadingKey::Guests, _)
                if noun.is_some_and(|(i, _)| i > at && self.strange(i + 1)) =>
            {
                Value::Unclear("no-measure")
            }
            Value::Reading(..) | Value::Amps(..) if number.bound => Value::Unclear("bound"),
            other => other,
        };
        self.out.push(Placed {
            at,
            value,
            noun: noun.map(|(_, n)| n),
        });
    }
}

/// Tells whether a number has a label of its own: ticket 88213, gate code 4411, 40 stalls.
pub(super) fn labelled(items: &[Item], at: usize) -> bool {
    let before = (0..at)
        .rev()
        .take(4)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        // "the client at the job says 14": what is said is no number of the job
        .take_while(|i| !items[*i].is(Mark::Says) && !items[*i].is(Mark::So))
        .find(|i| !items[*i].is_filler() && !matches!(items[*i].what, What::Sign('#' | '.')));
    let after = items.get(at + 1).filter(|n| n.chunk == items[at].chunk);
    before.is_some_and(|i| items[i].is(Mark::Label))
        || after.is_some_and(|n| n.is(Mark::LabelAfter))
}
