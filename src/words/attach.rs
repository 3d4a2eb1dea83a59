//! Numbers to readings: each value to the noun it belongs to, converted to the unit that its key names.

use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Form, Item, Number, What};
use super::scope::Scope;
use crate::heard::{Event, ReadingKey};
use crate::quantity::{self, TemperatureScale};

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

/// Places every number of the message.
pub(super) fn values(
    items: &[Item],
    scope: &[Scope],
    short: &[usize],
    scale: TemperatureScale,
) -> Vec<Placed> {
    let mut placer = Placer {
        items,
        scope,
        short,
        scale,
        taken: vec![None; items.len()],
        out: Vec::new(),
        last: None,
    };
    placer.run();
    placer.out
}

struct Placer<'a> {
    items: &'a [Item],
    scope: &'a [Scope],
    /// Unknown words short enough to be a misspelt measure.
    short: &'a [usize],
    scale: TemperatureScale,
    /// For each noun, the number that took it.
    taken: Vec<Option<usize>>,
    out: Vec<Placed>,
    /// The noun of the last placed value, for "14 has 2".
    last: Option<(usize, Noun, Form)>,
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
                        && !self.out.is_empty() =>
                {
                    self.out.push(Placed {
                        at,
                        value: Value::Unclear("no-number"),
                        noun: None,
                    })
                }
                _ => {}
            }
        }
    }

    /// Full or empty said of a tank.
    fn level(&mut self, at: usize, level: f64) {
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
            None if self.still(at, number).is_some() => {
                let tank = self.still(at, number);
                self.place(at, number, tank);
            }
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
                    )
                });
                if bare || at > 0 && self.strange(at - 1) && !self.out.is_empty() {
                    self.out.push(Placed {
                        at,
                        value: Value::Unclear("which-tank"),
                        noun: None,
                    });
                }
            }
        }
    }

    fn number(&mut self, at: usize, number: Number) {
        let wire = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.noun() == Some(Noun::Gauge))
            && chunk(self.items, at)
                .any(|i| matches!(self.items[i].noun(), Some(Noun::Cord | Noun::Cords)));
        // "gauge frozen at half", "stuck on 3/4": what it shows is not what is in the tank
        let stuck = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| {
                !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::At)
                    && self.items[*i].what != What::Is(Concept::State(State::On))
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
            && (number.form == Form::Part || number.unit == Some(Unit::Pct));
        if stuck || labelled(self.items, at) || number.unit == Some(Unit::Other) || wire {
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
        let noun = noun.or_else(|| self.still(at, number));
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
            && (degrees && self.strange(at - 1)
                || noun.is_some_and(|(_, n)| n == Noun::Air)
                    && matches!(self.items[at - 1].what, What::Is(Concept::Unit(_))));
        // "3/4 empy": full or empty, which is the opposite
        let part = number.form == Form::Part
            && self.slip_after(at)
            && self
                .items
                .get(at + 2)
                .is_none_or(|n| n.chunk != self.items[at].chunk || matches!(n.what, What::Sign(_)));
        let slip = below
            || part
            || number.unit.is_none()
                && (self.slip_after(at) && !matches!(number.form, Form::Part | Form::Level)
                    || at > 0 && self.strange(at - 1));
        let value = match value {
            Value::Reading(..) if slip => Value::Unclear("no-measure"),
            // "30 amp crd": a rating, where the thing rated is misspelt
            Value::Amps(None, _) if self.slip_after(at) => Value::Unclear("no-measure"),
            // "resh tank 400 L": which tank was meant is what the unknown word said
            Value::Reading(..)
                if noun.is_some_and(|(i, n)| {
                    n == Noun::Tank && (self.strange(i + 1) || i > 0 && self.strange(i - 1))
                }) =>
            {
                Value::Unclear("which-tank")
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

    /// "waste was 95% yesterday, 40% now", "fresh 80% at 11, 35% at 3": said of a later time, with no noun of its own,
    /// a level is that of the one tank the sentence spoke of.
    fn still(&self, at: usize, number: Number) -> Option<(usize, Noun)> {
        let level = matches!(number.form, Form::Part | Form::Level)
            || number.unit == Some(Unit::Pct)
            || number.value == 0.0 && number.unit.is_none();
        let timed = chunk(self.items, at)
            .any(|i| self.items[i].is(Mark::Now) || matches!(self.items[i].what, What::Clock(_)));
        let bare = chunk(self.items, at).all(|i| {
            self.items[i].noun().is_none()
                && !matches!(
                    self.items[i].what,
                    What::Word { .. } | What::Units(_) | What::Is(Concept::State(_))
                )
        });
        if !(level && timed && bare) {
            return None;
        }
        let mut found: Option<(usize, Noun)> = None;
        for i in (0..at)
            .rev()
            .take(24)
            .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
        {
            let noun = match self.items[i].what {
                What::Is(Concept::Noun(noun)) if noun.is_tank() => noun,
                What::Is(Concept::Event(Event::FreshFilled | Event::FreshDrained)) => Noun::Fresh,
                What::Is(Concept::Event(Event::WastePumped)) => Noun::Waste,
                _ => continue,
            };
            match found {
                None => found = Some((i, noun)),
                Some((_, other)) if other == noun => {}
                Some(_) => return None,
            }
        }
        found
    }

    /// Tells whether a word nobody knows stands at `at`.
    fn strange(&self, at: usize) -> bool {
        self.items
            .get(at)
            .is_some_and(|n| n.what == What::Word { ordinary: false })
            && self.short.contains(&at)
    }

    /// Tells whether a short word nobody knows stands right after a number: it may be a misspelt measure.
    fn slip_after(&self, at: usize) -> bool {
        self.items.get(at + 1).is_some_and(|n| {
            matches!(n.what, What::Word { ordinary: false })
                && n.chunk == self.items[at].chunk
                && self.short.contains(&(at + 1))
        })
    }

    /// Finds the noun a number belongs to: right before it, right after it, or farther in the chunk.
    fn noun_for(&self, at: usize, unit: Option<Unit>, part: bool) -> Option<(usize, Noun)> {
        let fits = |noun: Noun| fits(noun, unit, part);
        let mut best: Option<(f32, usize, Noun)> = None;
        let mut consider = |i: usize, cost: f32| {
            if let Some(noun) = self.items[i].noun()
                && fits(noun)
                && best.is_none_or(|(least, ..)| cost < least)
            {
                best = Some((cost, i, noun));
            }
        };
        let mut cost = 0.0;
        for i in (0..at).rev().take(REACH) {
            if self.items[i].chunk != self.items[at].chunk {
                break;
            }
            cost += match self.items[i].what {
                _ if self.items[i].is_filler() => 0.3,
                What::Units(_) => 0.5,
                What::Number(_) | What::Range(..) => 3.0,
                What::Is(Concept::Mark(Mark::And)) => 2.0,
                _ => 1.0,
            };
            // a noun that has its number already is no longer free
            let free = match self.taken[i] {
                None => 0.0,
                Some(_) => 6.0,
            };
            consider(i, cost + free);
        }
        let mut cost = 0.9;
        for i in (at + 1..self.items.len()).take(REACH - 2) {
            if self.items[i].chunk != self.items[at].chunk {
                break;
            }
            cost += match self.items[i].what {
                _ if self.items[i].is_filler() => 0.3,
                What::Number(_) | What::Range(..) => break,
                What::Units(_) => 2.5,
                What::Is(Concept::Mark(Mark::And)) => 4.0,
                _ => 1.0,
            };
            let own = self.owns(i, at);
            consider(i, cost + if own { 8.0 } else { 0.0 });
        }
        // "guest count at the reservoir is 180": the one noun of its chunk
        let lone = at > 0
            && self.items[at - 1].is(Mark::Aux)
            && chunk(self.items, at)
                .all(|i| !matches!(self.items[i].what, What::Units(_) | What::Number(_)));
        let reach = match unit {
            _ if part => 9.0,
            Some(_) => 9.0,
            None if lone => 6.0,
            None => 3.6,
        };
        best.filter(|(cost, ..)| *cost < reach)
            .map(|(_, i, noun)| (i, noun))
    }

    /// Tells whether the noun at `noun` has another number right after it.
    fn owns(&self, noun: usize, not: usize) -> bool {
        (noun + 1..self.items.len())
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[noun].chunk)
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| {
                i != not
                    && match self.items[i].what {
                        What::Number(n) => self.items[noun]
                            .noun()
                            .is_some_and(|noun| fits(noun, n.unit, n.form == Form::Part)),
                        What::Range(_, _, unit) => self.items[noun]
                            .noun()
                            .is_some_and(|noun| fits(noun, unit, false)),
                        What::Is(Concept::Level(_)) => {
                            self.items[noun].noun().is_some_and(Noun::is_tank)
                        }
                        _ => false,
                    }
            })
    }

    fn value(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let v = number.value;
        let Some(unit) = number.unit else {
            return self.unmeasured(at, number, noun);
        };
        match unit {
            Unit::Kilo
                if !matches!(
                    noun,
                    Some(
                        Noun::Pressure
                            | Noun::Supply
                            | Noun::BeforeRegulator
                            | Noun::AfterRegulator
                    )
                ) =>
            {
                Value::Label
            }
            Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2 | Unit::Kilo | Unit::Lb => {
                let psi = match unit {
                    Unit::Bar => v * quantity::PSI_PER_BAR,
                    Unit::Kpa => v * quantity::PSI_PER_KPA,
                    Unit::KgCm2 | Unit::Kilo => v * quantity::PSI_PER_KG_CM2,
                    _ => v,
                };
                if unit == Unit::Lb
                    && noun != Some(Noun::Pressure)
                    && noun != Some(Noun::Supply)
                    && !self.spanish_pounds(at)
                {
                    return Value::Label;
                }
                if noun == Some(Noun::Tire) {
                    return Value::Label;
                }
                let key = if matches!(noun, Some(Noun::Supply | Noun::BeforeRegulator)) {
                    K::SupplyPsi
                } else {
                    K::PressurePsi
                };
                within(key, psi, 0.0, 250.0)
            }
            Unit::Gal | Unit::Litre => {
                let gal = if unit == Unit::Litre {
                    v / quantity::LITRES_PER_GAL
                } else {
                    v
                };
                let key = match noun {
                    Some(Noun::Fresh | Noun::Water) => K::FreshGal,
                    Some(Noun::Fuel | Noun::Generator) => K::FuelGal,
                    _ if self.pumping(at) => K::PumpedGal,
                    Some(Noun::Waste | Noun::Tank | Noun::Sewage) => K::WasteGal,
                    Some(_) => return Value::Label,
                    None => match self.tank_before(at) {
                        Some(Noun::Fresh) => K::FreshGal,
                        Some(_) => K::WasteGal,
                        None => return Value::Unclear("which-tank"),
                    },
                };
                within(key, gal, 0.0, 20_000.0)
            }
            Unit::Pct if self.leans(at) => within(K::SlopePct, v, 0.0, 100.0),
            Unit::Pct => match noun {
                Some(Noun::Battery) => within(K::BatteryPct, v, 0.0, 100.0),
                Some(Noun::Humidity) => within(K::HumidityPct, v, 0.0, 100.0),
                Some(Noun::Slope) => within(K::SlopePct, v, 0.0, 100.0),
                Some(Noun::Fuel | Noun::Generator) => within(K::FuelPct, v, 0.0, 100.0),
                Some(Noun::Fresh) => within(K::FreshPct, v, 0.0, 100.0),
                Some(Noun::Waste | Noun::Tank) => within(K::WastePct, v, 0.0, 100.0),
                Some(_) => Value::Label,
                None => Value::Unclear("which-tank"),
            },
            Unit::DegC | Unit::DegF | Unit::Deg => {
                // "2 grados bajo ceo": below what cannot be told
                let low = self
                    .items
                    .get(at + 1)
                    .is_some_and(|n| n.what == What::Is(Concept::State(State::Low)));
                if low {
                    return Value::Unclear("below-what");
                }
                let f = match (unit, self.scale) {
                    (Unit::DegC, _) | (Unit::Deg, TemperatureScale::C) => quantity::f_from_c(v),
                    _ => v,
                };
                match noun {
                    Some(Noun::HotWater | Noun::WaterHeater | Noun::Water) => Value::Label,
                    Some(Noun::Slope) => Value::Label,
                    Some(Noun::Inside) => within(K::InsideF, f, -60.0, 130.0),
                    _ if self.items.get(at + 1).is_some_and(|n| n.is(Mark::Inside)) => {
                        within(K::InsideF, f, -60.0, 130.0)
                    }
                    Some(Noun::Low) => within(K::LowF, f, -60.0, 130.0),
                    _ => within(K::AirF, f, -60.0, 130.0),
                }
            }
            Unit::Volt => match noun {
                // 12v lights: the system, not a reading
                Some(Noun::Lights | Noun::Pump | Noun::Fan) if v < 60.0 => Value::Label,
                _ if self.system(at, number) => Value::Label,
                Some(Noun::Battery) => within(K::BatteryV, v, 0.0, 16.0),
                Some(Noun::Volts | Noun::Power | Noun::Generator)
                    if (90.0..=300.0).contains(&v) =>
                {
                    Value::Reading(K::Volts, v)
                }
                _ if (90.0..=260.0).contains(&v) => Value::Reading(K::Volts, v),
                _ if (0.0..=16.0).contains(&v) => Value::Reading(K::BatteryV, v),
                _ if !(0.0..=300.0).contains(&v) => Value::Unclear("implausible"),
                _ => Value::Unclear("which-volts"),
            },
            Unit::Amp => {
                let next = self.items.get(at + 1).and_then(Item::noun);
                let rated = matches!(
                    next,
                    Some(
                        Noun::Breaker
                            | Noun::Fuse
                            | Noun::Cord
                            | Noun::Cords
                            | Noun::Plug
                            | Noun::Gfci
                            | Noun::Power
                    )
                ) || next == Some(Noun::Circuit)
                    && !matches!(
                        self.items.get(at + 2).map(|i| i.what),
                        Some(What::Circuit(_))
                    );
                let swapped = chunk(self.items, at).any(|i| {
                    matches!(
                        self.items[i].what,
                        What::Is(Concept::Event(Event::FuseReplaced | Event::BreakerReset))
                    )
                }) && noun.is_none()
                    && self.circuit(at).is_none();
                let trips = chunk(self.items, at).any(|i| {
                    matches!(
                        self.items[i].what,
                        What::Is(Concept::State(
                            State::Tripped
                                | State::KeepsTripping
                                | State::Blown
                                | State::Reset
                                | State::Replaced
                        ))
                    )
                }) && noun.is_none()
                    && self.circuit(at).is_none();
                if rated || swapped || trips {
                    return Value::Label;
                }
                if matches!(
                    noun,
                    Some(
                        Noun::Breaker
                            | Noun::Fuse
                            | Noun::Cord
                            | Noun::Cords
                            | Noun::Plug
                            | Noun::Gfci
                    )
                ) {
                    return Value::Label;
                }
                match within(K::Volts, v, 0.0, 60.0) {
                    Value::Reading(..) => Value::Amps(self.circuit(at), v),
                    other => other,
                }
            }
            Unit::Ft | Unit::Metre => {
                let ft = if unit == Unit::Metre {
                    v * quantity::FT_PER_M
                } else {
                    v
                };
                match noun.or_else(|| self.run_before(at)) {
                    Some(Noun::Hose) => within(K::HoseFt, ft, 0.0, 5000.0),
                    Some(Noun::Cord | Noun::Cords) => within(K::CordFt, ft, 0.0, 5000.0),
                    _ => Value::Label,
                }
            }
            Unit::Gpm => within(K::FlowGpm, v, 0.0, 20.0),
            Unit::Lpm => within(K::FlowGpm, v / quantity::LITRES_PER_GAL, 0.0, 20.0),
            Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot => {
                let mph = match unit {
                    Unit::Kmh => v * quantity::MPH_PER_KMH,
                    Unit::Ms => v * quantity::MPH_PER_MS,
                    Unit::Knot => v * quantity::MPH_PER_KNOT,
                    _ => v,
                };
                if matches!(noun, Some(Noun::Wind))
                    || unit != Unit::Kmh && unit != Unit::Mph
                    || noun.is_none()
                {
                    within(K::WindMph, mph, 0.0, 120.0)
                } else {
                    Value::Label
                }
            }
            Unit::Minute | Unit::Hour => {
                let minutes = if unit == Unit::Hour { v * 60.0 } else { v };
                if noun == Some(Noun::Eta) || self.away(at) {
                    within(K::EtaMin, minutes, 0.0, 720.0)
                } else {
                    Value::Label
                }
            }
            Unit::Other => Value::Label,
        }
    }

    fn unmeasured(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let v = number.value;
        let percent = match number.form {
            Form::Part => Some((v * 1000.0).round() / 10.0),
            Form::Level => Some(v),
            _ => None,
        };
        if let Some(percent) = percent {
            return match noun {
                Some(Noun::Waste | Noun::Tank) => within(K::WastePct, percent, 0.0, 100.0),
                Some(Noun::Fresh) => within(K::FreshPct, percent, 0.0, 100.0),
                Some(Noun::Battery) => within(K::BatteryPct, percent, 0.0, 100.0),
                Some(Noun::Fuel | Noun::Generator) => within(K::FuelPct, percent, 0.0, 100.0),
                Some(_) => Value::Label,
                // the bare gauge is the waste tank's
                None if self.gauge(at) => within(K::WastePct, percent, 0.0, 100.0),
                None => self.bare_part(at),
            };
        }
        let Some(noun) = noun.or_else(|| self.carried(at)) else {
            return self.bare(at);
        };
        match noun {
            Noun::Pressure | Noun::Supply | Noun::BeforeRegulator | Noun::AfterRegulator => {
                let key = noun.reading().unwrap_or(K::PressurePsi);
                if (0.0..15.0).contains(&v) && v != 0.0 || v == 0.0 {
                    return if v == 0.0 {
                        Value::Reading(key, 0.0)
                    } else {
                        Value::Unclear("bar-or-psi")
                    };
                }
                within(key, v, 0.0, 250.0)
            }
            // the level as the gauge shows it, where the trailer is named beside it
            Noun::Waste | Noun::Tank | Noun::Fresh
                if (5.0..=100.0).contains(&v) && self.trailer_named(at) =>
            {
                within(noun.reading().unwrap_or(K::WastePct), v, 0.0, 100.0)
            }
            // .25: a part of one
            Noun::Waste | Noun::Tank | Noun::Fresh | Noun::Fuel if v > 0.0 && v < 1.0 => {
                within(noun.reading().unwrap_or(K::WastePct), v * 100.0, 0.0, 100.0)
            }
            // nothing in it, however it is measured
            Noun::Waste | Noun::Tank | Noun::Fresh if v == 0.0 && self.trailer_named(at) => {
                Value::Reading(noun.reading().unwrap_or(K::WastePct), 0.0)
            }
            Noun::Waste | Noun::Tank | Noun::Fresh | Noun::Fuel => {
                Value::Unclear("percent-or-gallons")
            }
            Noun::Air | Noun::Inside | Noun::Low => {
                let f = match self.scale {
                    TemperatureScale::C => quantity::f_from_c(v),
                    TemperatureScale::F => v,
                };
                within(noun.reading().unwrap_or(K::AirF), f, -60.0, 130.0)
            }
            Noun::Volts => match v {
                _ if (90.0..=260.0).contains(&v) => Value::Reading(K::Volts, v),
                _ if (0.0..=16.0).contains(&v) => Value::Reading(K::BatteryV, v),
                _ if v > 300.0 => Value::Unclear("implausible"),
                _ => Value::Unclear("which-volts"),
            },
            // "2.5 bat" may be a slip for bar
            Noun::Battery
                if v < 6.0
                    && self
                        .items
                        .get(at + 1)
                        .is_some_and(|n| n.noun() == Some(Noun::Battery)) =>
            {
                Value::Unclear("which-volts")
            }
            Noun::Battery => within(K::BatteryV, v, 0.0, 16.0),
            Noun::Amps => match within(K::Volts, v, 0.0, 60.0) {
                Value::Reading(..) => Value::Amps(self.circuit(at), v),
                other => other,
            },
            Noun::Flow => within(K::FlowGpm, v, 0.0, 20.0),
            Noun::Wind => within(K::WindMph, v, 0.0, 120.0),
            Noun::Humidity => within(K::HumidityPct, v, 0.0, 100.0),
            Noun::Slope => within(K::SlopePct, v, 0.0, 100.0),
            Noun::Cords => {
                if v.fract() != 0.0 {
                    Value::Unclear("implausible")
                } else {
                    within(K::Cords, v, 0.0, 4.0)
                }
            }
            // "two guests are dizzy": people who are sick or hurt are no count of a crowd
            Noun::Guests
                if chunk(self.items, at).any(|i| {
                    use crate::heard::Fault as F;
                    matches!(
                        self.items[i].what,
                        What::Is(
                            Concept::State(State::Hurt | State::Trapped)
                                | Concept::Fault(
                                    F::GasIllness | F::PersonHurt | F::PersonTrapped | F::Shock
                                )
                        )
                    )
                }) =>
            {
                Value::Label
            }
            Noun::Guests => {
                if v.fract() == 0.0 {
                    within(K::Guests, v, 0.0, 200_000.0)
                } else {
                    Value::Unclear("implausible")
                }
            }
            // "on one cord"
            Noun::Cord
                if (1.0..=4.0).contains(&v)
                    && v.fract() == 0.0
                    && self
                        .items
                        .get(at + 1)
                        .is_some_and(|n| n.noun() == Some(Noun::Cord)) =>
            {
                within(K::Cords, v, 0.0, 4.0)
            }
            Noun::Hose | Noun::Cord => Value::Unclear("feet-or-metres"),
            Noun::Eta => within(K::EtaMin, v, 0.0, 720.0),
            _ => self.bare(at),
        }
    }

    /// A number with no noun of its own takes the one before it where the clauses run alike: "12 has 4 cords, 14 has 2".
    fn carried(&self, at: usize) -> Option<Noun> {
        let (before, noun, form) = self.last?;
        if self.items[before].sentence != self.items[at].sentence {
            return None;
        }
        let number = self.items[at].number()?;
        if (form == Form::Part) != (number.form == Form::Part) {
            return None;
        }
        // a trailer must stand between them, or right after this one
        let between = (before + 1..at).any(|i| matches!(self.items[i].what, What::Units(_)));
        let after = (at + 1..self.items.len())
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| !self.items[*i].is_filler() && !self.items[*i].is(Mark::At));
        let after = after.is_some_and(|i| matches!(self.items[i].what, What::Units(_)));
        let own = chunk(self.items, at).all(|i| i <= before || self.items[i].noun().is_none());
        ((between || after) && own).then_some(noun)
    }

    /// Tells whether a trailer is named for certain near the number, so that the number cannot be one.
    fn trailer_named(&self, at: usize) -> bool {
        (at.saturating_sub(12)..self.items.len().min(at + 8)).any(|i| {
            matches!(self.items[i].what, What::Units(_))
                && self.items[i].sentence + 3 > self.items[at].sentence
        })
    }

    fn bare(&self, at: usize) -> Value {
        // "opened 12 at 4": the hour
        if self.items.get(at + 1).is_some_and(|n| n.is(Mark::Inside)) {
            let v = self.items[at].number().map_or(f64::MAX, |n| n.value);
            let f = if self.scale == TemperatureScale::C {
                quantity::f_from_c(v)
            } else {
                v
            };
            return within(ReadingKey::InsideF, f, -60.0, 130.0);
        }
        // "circuit 1 pulls 13 amps and 3 pulls 12"
        let drawn = (0..at)
            .rev()
            .take(3)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| {
                !self.items[*i].is_filler()
                    && self.items[*i].what != What::Is(Concept::State(State::Ok))
            });
        if let Some(What::Circuit(circuit)) = drawn.map(|i| self.items[i].what)
            && let Some(n) = self.items[at].number()
            && (0.0..=60.0).contains(&n.value)
            && (0..self.items.len()).any(|i| {
                self.items[i].sentence == self.items[at].sentence
                    && self.items[i]
                        .number()
                        .is_some_and(|n| n.unit == Some(Unit::Amp))
            })
        {
            return Value::Amps(Some(circuit), n.value);
        }
        // "jacks are down, all 4"
        let counted = at > 0
            && self.items[at - 1].is(Mark::All)
            && chunk(self.items, at).all(|i| {
                !matches!(
                    self.items[i].what,
                    What::Is(Concept::Event(_) | Concept::State(_) | Concept::Fault(_))
                )
            });
        if counted {
            return Value::Label;
        }
        // "toilet two", "la chapa del 1": a place inside the trailer that the sentence names
        let named = (0..self.items.len()).any(|i| {
            self.items[i].sentence == self.items[at].sentence
                && matches!(self.items[i].what, What::Units(_))
        });
        let thing = |i: usize| {
            self.items.get(i).and_then(Item::noun).is_some_and(|n| {
                matches!(
                    n,
                    Noun::Toilet
                        | Noun::Sink
                        | Noun::Lock
                        | Noun::Door
                        | Noun::Fan
                        | Noun::Lights
                        | Noun::Plug
                        | Noun::Pump
                        | Noun::Taps
                        | Noun::Jacks
                )
            })
        };
        let small = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Whole && n.value <= 20.0);
        // "three toilets clogged": how many
        let many = small && thing(at + 1) && at + 1 < self.items.len();
        if many {
            return Value::Label;
        }
        let inside = small
            && named
            && at > 0
            && (thing(at - 1)
                || at > 1
                    && (self.items[at - 1].is(Mark::Of)
                        || self.items[at - 1].what == What::Sign('#'))
                    && thing(at - 2));
        if inside {
            return Value::Label;
        }
        let hour = at > 0
            && self.items[at - 1].is(Mark::At)
            && self.items[at].number().is_some_and(|n| n.value <= 12.0);
        let told = (0..at)
            .rev()
            .take(8)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .any(|i| matches!(self.items[i].what, What::Units(_)));
        if hour && told {
            return Value::Label;
        }
        Value::Unclear("no-place")
    }

    /// Tells whether a gauge shows the level at `at`, and is not said to be stuck.
    fn gauge(&self, at: usize) -> bool {
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

    /// A part with no tank named.
    fn bare_part(&self, at: usize) -> Value {
        if let Some(noun) = self.carried(at) {
            let percent = self.items[at]
                .number()
                .map_or(0.0, |n| (n.value * 1000.0).round() / 10.0);
            if let Some(key) = noun.reading().filter(|_| noun.is_tank()) {
                return within(key, percent, 0.0, 100.0);
            }
        }
        // half the guests, a quarter of them: a part of something else
        let next = (at + 1..self.items.len())
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| !self.items[*i].is_filler());
        // "2pm 12 half, 4pm 3/4": levels at times of day are the waste tank's
        let clocked = self
            .items
            .iter()
            .filter(|i| matches!(i.what, What::Clock(_)))
            .count()
            >= 2
            && chunk(self.items, at).any(|i| matches!(self.items[i].what, What::Clock(_)));
        if clocked {
            let percent = self.items[at]
                .number()
                .map_or(0.0, |n| (n.value * 1000.0).round() / 10.0);
            return within(ReadingKey::WastePct, percent, 0.0, 100.0);
        }
        let other = next.is_some_and(|i| {
            matches!(
                self.items[i].what,
                What::Word { .. }
                    | What::Is(
                        Concept::Noun(_)
                            | Concept::State(_)
                            | Concept::Mark(Mark::Label | Mark::LabelAfter | Mark::Idle)
                    )
            ) && self.items[i].what != What::Is(Concept::State(State::On))
        });
        if other {
            Value::Label
        } else {
            Value::Unclear("which-tank")
        }
    }

    fn spanish_pounds(&self, at: usize) -> bool {
        // pounds are a pressure unless something is said to weigh
        chunk(self.items, at).all(|i| !matches!(self.items[i].what, What::Word { ordinary: false }))
            && self.items[at].number().is_some_and(|n| n.value < 200.0)
            && chunk(self.items, at).all(|i| {
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

    /// Finds the tank that the sentence spoke of before: "filled the fresh tank, now at 150 gal".
    fn tank_before(&self, at: usize) -> Option<Noun> {
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        (0..at)
            .rev()
            .take(12)
            .take_while(here)
            .find_map(|i| match self.items[i].what {
                What::Is(Concept::Noun(noun)) if noun.is_tank() && noun != Noun::Fuel => Some(noun),
                What::Is(Concept::Event(Event::FreshFilled)) => Some(Noun::Fresh),
                _ => None,
            })
    }

    /// Finds the hose or cord that the sentence spoke of before: "the hose on 9, 50 ft of it".
    fn run_before(&self, at: usize) -> Option<Noun> {
        let plain = chunk(self.items, at).all(|i| {
            self.items[i].noun().is_none() && !matches!(self.items[i].what, What::Word { .. })
        });
        let here = |i: &usize| self.items[*i].sentence == self.items[at].sentence;
        (0..at).rev().take(12).take_while(here).find_map(|i| {
            self.items[i]
                .noun()
                .filter(|n| matches!(n, Noun::Hose | Noun::Cord))
                .filter(|_| self.taken[i].is_none() && plain)
        })
    }

    /// Tells whether the sentence says that the waste was taken out.
    fn pumping(&self, at: usize) -> bool {
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
        let here = (0..self.items.len()).filter(|i| self.items[*i].sentence == sentence);
        if here.clone().any(|i| hauls(&self.items[i])) {
            return true;
        }
        // a line of its own under "pumped out 21"
        let above: Vec<usize> = (0..at)
            .rev()
            .take(8)
            .filter(|i| self.items[*i].sentence + 1 == sentence)
            .collect();
        above.iter().any(|i| hauls(&self.items[*i]))
            && here.clone().all(|i| self.items[i].noun().is_none())
    }

    /// Tells whether a percentage stands beside "leaning", "off level".
    fn leans(&self, at: usize) -> bool {
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
    fn system(&self, at: usize, number: Number) -> bool {
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
            && (0..self.items.len())
                .filter(here)
                .all(|i| self.items[i].noun() != Some(Noun::Battery));
        before && read || of_a_thing
    }

    /// Tells whether a span of time is one to arrival: "half hour out", "20 min away".
    fn away(&self, at: usize) -> bool {
        chunk(self.items, at).any(|i| {
            self.items[i].is(Mark::Away)
                || self.items[i].noun() == Some(Noun::Eta)
                || i > at && matches!(self.items[i].what, What::Is(Concept::State(State::Out)))
        })
    }

    /// Finds the circuit a current is of: the nearest named in its chunk or line.
    fn circuit(&self, at: usize) -> Option<u8> {
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

/// Tells whether a noun can have a number in this measure.
fn fits(noun: Noun, unit: Option<Unit>, part: bool) -> bool {
    match unit {
        None if part => noun.is_tank() || noun == Noun::Battery,
        None => noun.reading().is_some() || noun == Noun::Amps,
        Some(Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2 | Unit::Kilo | Unit::Lb) => {
            matches!(
                noun,
                Noun::Pressure
                    | Noun::Supply
                    | Noun::BeforeRegulator
                    | Noun::AfterRegulator
                    | Noun::Tire
            )
        }
        Some(Unit::Gal | Unit::Litre) => matches!(
            noun,
            Noun::Waste
                | Noun::Fresh
                | Noun::Tank
                | Noun::Fuel
                | Noun::Water
                | Noun::WaterHeater
                | Noun::Sewage
                | Noun::Generator
        ),
        Some(Unit::Pct) => {
            noun.is_tank()
                || matches!(
                    noun,
                    Noun::Battery | Noun::Humidity | Noun::Slope | Noun::Generator
                )
        }
        Some(Unit::DegC | Unit::DegF | Unit::Deg) => matches!(
            noun,
            Noun::Air | Noun::Inside | Noun::Low | Noun::HotWater | Noun::WaterHeater | Noun::Slope
        ),
        Some(Unit::Volt) => matches!(
            noun,
            Noun::Volts | Noun::Battery | Noun::Lights | Noun::Power | Noun::Generator
        ),
        Some(Unit::Amp) => matches!(
            noun,
            Noun::Breaker
                | Noun::Fuse
                | Noun::Cord
                | Noun::Cords
                | Noun::Plug
                | Noun::Amps
                | Noun::Gfci
        ),
        Some(Unit::Ft | Unit::Metre) => matches!(noun, Noun::Hose | Noun::Cord | Noun::Cords),
        Some(Unit::Gpm | Unit::Lpm) => noun == Noun::Flow,
        Some(Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot) => noun == Noun::Wind,
        Some(Unit::Minute | Unit::Hour) => noun == Noun::Eta,
        Some(Unit::Other) => false,
    }
}

fn within(key: ReadingKey, value: f64, least: f64, most: f64) -> Value {
    if (least..=most).contains(&value) {
        Value::Reading(key, value)
    } else {
        Value::Unclear("implausible")
    }
}

/// Tells whether "over", "almost" and their like stand right before.
fn bounded(items: &[Item], at: usize) -> bool {
    (0..at)
        .rev()
        .take(4)
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .find(|i| !items[*i].is_filler())
        .is_some_and(|i| items[i].is(Mark::Bound))
}

/// Tells whether a number has a label of its own: ticket 88213, gate code 4411, 40 stalls.
pub(super) fn labelled(items: &[Item], at: usize) -> bool {
    let before = (0..at)
        .rev()
        .take(4)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .find(|i| !items[*i].is_filler() && !matches!(items[*i].what, What::Sign('#' | '.')));
    let after = items.get(at + 1).filter(|n| n.chunk == items[at].chunk);
    before.is_some_and(|i| items[i].is(Mark::Label))
        || after.is_some_and(|n| n.is(Mark::LabelAfter))
}

/// The items of the chunk around `at`, near it.
fn chunk(items: &[Item], at: usize) -> impl Iterator<Item = usize> + '_ {
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
