//! Numbers without a measure: what the noun they belong to makes of them, and what a bare one is.

use super::measured::within;
use super::surroundings::chunk;
use super::{GAUGE_REACH, Placer, Value};
use crate::heard::{Fault, ReadingKey};
use crate::quantity::{self, TemperatureScale};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What, sentence_around};

impl Placer<'_> {
    pub(super) fn unmeasured(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
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
                // the bare gauge is that of the tank spoken of before, else the waste tank's
                None if self.gauge(at) => match self.tank_within(at, GAUGE_REACH) {
                    Some(Noun::Fresh) => within(K::FreshPct, percent, 0.0, 100.0),
                    _ => within(K::WastePct, percent, 0.0, 100.0),
                },
                None => self.bare_part(at),
            };
        }
        let noun = noun
            .or_else(|| self.carried(at))
            .or_else(|| self.of_what_is_low(at));
        let Some(noun) = noun else {
            if let Some((measured, noun)) = self.once_more(at, number) {
                return self.value(at, measured, noun);
            }
            return self.bare(at);
        };
        match noun {
            Noun::Pressure | Noun::Supply | Noun::BeforeRegulator | Noun::AfterRegulator => {
                let key = noun.reading().unwrap_or(K::PressurePsi);
                if v == 0.0 {
                    return Value::Reading(key, 0.0);
                }
                if (0.0..15.0).contains(&v) {
                    return match self.metric_before(at) {
                        Some(unit) => {
                            let unit = Some(unit);
                            self.value(at, Number { unit, ..number }, Some(noun))
                        }
                        None => Value::Unclear("bar-or-psi"),
                    };
                }
                within(key, v, 0.0, 250.0)
            }
            // the level as the gauge shows it, where the trailer is named beside it
            Noun::Waste | Noun::Tank | Noun::Fresh
                if (5.0..=100.0).contains(&v)
                    && self.trailer_named(at)
                    && !self.before_a_level(at)
                    // "90 tallons": a slip for gallons would be another reading
                    && !self
                        .items
                        .get(at + 1)
                        .is_some_and(|n| matches!(n.what, What::Word { .. }) && n.chunk == self.items[at].chunk) =>
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
            Noun::Wind | Noun::Gust => within(K::WindMph, v, 0.0, 120.0),
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
                if chunk(self.items, at).any(|i| match self.items[i].what {
                    What::Is(Concept::Fault(fault)) => fault.harms_a_person(),
                    What::Is(Concept::State(state)) => {
                        matches!(state, State::Hurt | State::Trapped)
                    }
                    _ => false,
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

    /// "Fresh kevels: 5 full": a number before full or empty is the trailer's name, wherever it was lost.
    fn before_a_level(&self, at: usize) -> bool {
        self.items.get(at + 1).is_some_and(|n| {
            n.chunk == self.items[at].chunk
                && (matches!(n.what, What::Is(Concept::Level(_)))
                    || n.number().is_some_and(|n| n.form == Form::Part)
                    || self.strange(at + 1))
        })
    }

    /// "16 -10", "119v -5", "está a -6": of what is read without a measure only the air is below zero. Not where a dash may
    /// part two numbers: "12 -14", "55 -60".
    fn below_zero(&self, at: usize) -> bool {
        let Some(v) = self.items[at].number().map(|n| n.value) else {
            return false;
        };
        let before = at.checked_sub(1).map(|i| self.items[i].what);
        let parted = match before {
            Some(What::Number(n)) => match n.unit {
                Some(Unit::Psi | Unit::Volt | Unit::Pct) => -v < n.value / 2.0,
                Some(_) => false,
                None => n.form == Form::Part,
            },
            Some(What::Units(_)) => self.name_before(at).is_some_and(|name| -v < name),
            _ => true,
        };
        (-60.0..0.0).contains(&v) && parted
    }

    /// Returns the number that the trailer right before is named by.
    fn name_before(&self, at: usize) -> Option<f64> {
        let item = self.items.get(at.checked_sub(1)?)?;
        let What::Units(group) = item.what else {
            return None;
        };
        self.groups.get(group)?.names.last()?.as_str().parse().ok()
    }

    /// "12 pressure low, 30", "batería baja 11.4": what is low, and then the number.
    pub(super) fn of_what_is_low(&self, at: usize) -> Option<Noun> {
        let ends = self.items.get(at + 1).is_none_or(|n| {
            n.sentence != self.items[at].sentence || matches!(n.what, What::Sign(_))
        });
        let low = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
            .find(|i| !self.items[*i].is_filler() && self.items[*i].what != What::Sign(','))?;
        match self.items[low].what {
            What::Is(Concept::Fault(Fault::BatteryLow)) if ends => Some(Noun::Battery),
            What::Is(Concept::Fault(Fault::LowFlow)) if ends => Some(Noun::Pressure),
            What::Is(Concept::State(State::Low | State::Weak)) if ends => (0..low)
                .rev()
                .take(3)
                .take_while(|i| self.items[*i].chunk == self.items[low].chunk)
                .find(|i| !self.items[*i].is_filler())
                .filter(|i| self.taken[*i].is_none())
                .and_then(|i| self.items[i].noun())
                .filter(|n| matches!(n, Noun::Battery | Noun::Pressure)),
            _ => None,
        }
    }

    /// "ya van 2 secadoras": so many of something that is no business of ours.
    fn so_many_things(&self, at: usize) -> bool {
        self.items.get(at + 1).is_some_and(|n| {
            n.what == (What::Word { ordinary: true }) && n.chunk == self.items[at].chunk
        }) && at > 0
            && !matches!(self.items[at - 1].what, What::Units(_) | What::Number(_))
            && chunk(self.items, at).all(|i| {
                self.items[i].noun().is_none()
                    && !matches!(
                        self.items[i].what,
                        What::Units(_) | What::Number(_) | What::Word { ordinary: false }
                    )
            })
    }

    pub(super) fn bare(&self, at: usize) -> Value {
        // "put the regulator on, was 110 at first, now 50"
        let v = self.items[at].number().map_or(0.0, |n| n.value);
        if self.below_zero(at) {
            let f = match self.scale {
                TemperatureScale::C => quantity::f_from_c(v),
                TemperatureScale::F => v,
            };
            return within(ReadingKey::AirF, f, -60.0, 130.0);
        }
        let sentence = self.items[at].sentence;
        let regulated = (0..at).rev().take(16).any(|i| {
            self.items[i].sentence == sentence
                && self.items[i].what
                    == What::Is(Concept::Event(crate::heard::Event::RegulatorFitted))
        });
        let now = chunk(self.items, at).any(|i| self.items[i].is(Mark::Now));
        if regulated && now && (15.0..=150.0).contains(&v) {
            return within(ReadingKey::PressurePsi, v, 0.0, 250.0);
        }
        // "opened 12 at 4": the hour
        let inside = |i: Option<usize>| {
            i.and_then(|i| self.items.get(i))
                .is_some_and(|n| n.is(Mark::Inside))
        };
        if inside(Some(at + 1)) || inside(at.checked_sub(1)) {
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
                    && !self.items[*i].is(Mark::At)
                    && self.items[*i].what != What::Is(Concept::State(State::Ok))
            });
        if let Some(What::Circuit(circuit)) = drawn.map(|i| self.items[i].what)
            && let Some(n) = self.items[at].number()
            && (0.0..=60.0).contains(&n.value)
            && self.items[sentence_around(self.items, at)].iter().any(|i| {
                i.noun() == Some(Noun::Amps)
                    || i.number().is_some_and(|n| n.unit == Some(Unit::Amp))
            })
        {
            return Value::Amps(Some(circuit), n.value);
        }
        // "outlets in 9 read 121"
        let mains = self.items[at]
            .number()
            .is_some_and(|n| (100.0..=132.0).contains(&n.value));
        // "118 on all four": of the cords
        let of_all = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.what == What::Is(Concept::State(State::On)) || n.is(Mark::At))
            && self.items.get(at + 2).is_some_and(|n| n.is(Mark::All));
        if mains && of_all {
            return Value::Reading(
                ReadingKey::Volts,
                self.items[at].number().map_or(0.0, |n| n.value),
            );
        }
        if mains && chunk(self.items, at).any(|i| self.items[i].noun() == Some(Noun::Plug)) {
            return within(
                ReadingKey::Volts,
                self.items[at].number().map_or(0.0, |n| n.value),
                90.0,
                260.0,
            );
        }
        // "jacks are down, all 4", "2, 4 and 6 got here, all three leveled"
        let counted = at > 0
            && self.items[at - 1].is(Mark::All)
            && self.items[at]
                .number()
                .is_some_and(|n| n.form == Form::Whole && n.value <= 20.0);
        if counted {
            return Value::Label;
        }
        // "toilet two", "la chapa del 1": a place inside the trailer that the sentence names
        let named = || {
            self.items[sentence_around(self.items, at)]
                .iter()
                .any(|i| matches!(i.what, What::Units(_)))
        };
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
                        | Noun::Body
                )
            })
        };
        let small = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Whole && n.value <= 20.0);
        // "three toilets clogged": how many
        let protector = self
            .items
            .get(at + 1)
            .is_some_and(|n| matches!(n.noun(), Some(Noun::Breaker | Noun::Circuit | Noun::Fuse)));
        let many = small && (thing(at + 1) || protector) && at + 1 < self.items.len();
        if many {
            return Value::Label;
        }
        if small && self.so_many_things(at) {
            return Value::Label;
        }
        let few = self.items[at].number().is_some_and(|n| n.value <= 4.0);
        let inside = small
            && at > 0
            && (thing(at - 1)
                || at > 1
                    && (self.items[at - 1].is(Mark::Of)
                        || self.items[at - 1].what == What::Sign('#'))
                    && thing(at - 2))
            && (few || named());
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

    /// A part with no tank named.
    pub(super) fn bare_part(&self, at: usize) -> Value {
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
        let clocked = self.clocks >= 2
            && chunk(self.items, at).any(|i| matches!(self.items[i].what, What::Clock(_)));
        if clocked {
            let percent = self.items[at]
                .number()
                .map_or(0.0, |n| (n.value * 1000.0).round() / 10.0);
            return within(ReadingKey::WastePct, percent, 0.0, 100.0);
        }
        let other = next.filter(|i| !self.strange(*i)).is_some_and(|i| {
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
}
