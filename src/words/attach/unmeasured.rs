//! Numbers without a measure: what the noun they belong to makes of them, and what a bare one is.

use super::measured::within;
use super::surroundings::chunk;
use super::{GAUGE_REACH, Placer, Value};
use crate::heard::{Amps, Event, Fault, ReadingKey};
use crate::quantity::{self, TemperatureScale};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What, sentence_around};

impl Placer<'_> {
    pub(super) fn unmeasured(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
        let percent = match number.form {
            Form::Part => Some((number.value * 1000.0).round() / 10.0),
            Form::Level => Some(number.value),
            _ => None,
        };
        if let Some(percent) = percent {
            return self.part_of(at, percent, noun);
        }
        let noun = noun
            .or_else(|| self.carried(at))
            .or_else(|| self.of_what_is_low(at));
        if let Some(noun) = noun {
            return self.of_noun(at, number, noun);
        }
        match self.once_more(at, number) {
            Some((measured, noun)) => self.value(at, measured, noun),
            None => self.bare(at),
        }
    }

    /// Places a part or a level, %.
    fn part_of(&self, at: usize, percent: f64, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let key = match noun {
            Some(Noun::Waste | Noun::Tank) => K::WastePct,
            Some(Noun::Fresh) => K::FreshPct,
            Some(Noun::Battery) => K::BatteryPct,
            Some(Noun::Fuel | Noun::Generator) => K::FuelPct,
            Some(_) => return Value::Label,
            // the bare gauge is that of the tank spoken of before, else the waste tank's
            None if self.gauge(at) => match self.tank_within(at, GAUGE_REACH) {
                Some(Noun::Fresh) => K::FreshPct,
                _ => K::WastePct,
            },
            None => return self.bare_part(at),
        };
        within(key, percent)
    }

    /// Places a plain number that belongs to a noun.
    fn of_noun(&self, at: usize, number: Number, noun: Noun) -> Value {
        use ReadingKey as K;
        let v = number.value;
        match noun {
            Noun::Pressure | Noun::Supply | Noun::BeforeRegulator | Noun::AfterRegulator => {
                self.plain_pressure(at, number, noun)
            }
            Noun::Waste | Noun::Tank | Noun::Fresh | Noun::Fuel => self.tank(at, v, noun),
            Noun::Air | Noun::Inside | Noun::Low => {
                self.plain_degrees(noun.reading().unwrap_or(K::AirF), v)
            }
            Noun::Volts => match v {
                _ if (90.0..=260.0).contains(&v) => Value::Reading(K::Volts, v),
                _ if (0.0..=16.0).contains(&v) => Value::Reading(K::BatteryV, v),
                _ if v > 300.0 => Value::Unclear("implausible"),
                _ => Value::Unclear("which-volts"),
            },
            // "2.5 bat" may be a slip for bar
            Noun::Battery if v < 6.0 && self.noun_after(at) == Some(Noun::Battery) => {
                Value::Unclear("which-volts")
            }
            Noun::Battery => within(K::BatteryV, v),
            Noun::Amps => match Amps::PLAUSIBLE.contains(&v) {
                true => Value::Amps(self.circuit(at), v),
                false => Value::Unclear("implausible"),
            },
            Noun::Flow => within(K::FlowGpm, v),
            Noun::Wind | Noun::Gust => within(K::WindMph, v),
            Noun::Humidity => within(K::HumidityPct, v),
            Noun::Slope => within(K::SlopePct, v),
            Noun::Cords | Noun::Cord if let Some(other) = self.none_live(at) => other,
            Noun::Cords => count(K::Cords, v),
            // "two guests are dizzy": people who are sick or hurt are no count of a crowd
            Noun::Guests if self.somebody_is_harmed(at) => Value::Label,
            // "14 guests happy": so many, or the trailer
            Noun::Guests if self.opens_before_guests(at, v) => Value::Unclear("no-place"),
            Noun::Guests => count(K::Guests, v),
            // "on one cord"
            Noun::Cord
                if (1.0..=4.0).contains(&v)
                    && v.fract() == 0.0
                    && self.noun_after(at) == Some(Noun::Cord) =>
            {
                count(K::Cords, v)
            }
            Noun::Hose | Noun::Cord => Value::Unclear("feet-or-metres"),
            Noun::Eta => within(K::EtaMin, v),
            _ => self.bare(at),
        }
    }

    fn plain_pressure(&self, at: usize, number: Number, noun: Noun) -> Value {
        let key = noun.reading().unwrap_or(ReadingKey::PressurePsi);
        let v = number.value;
        if v != 0.0 && (0.0..15.0).contains(&v) {
            return match self.metric_before(at) {
                Some(unit) => {
                    let unit = Some(unit);
                    self.value(at, Number { unit, ..number }, Some(noun))
                }
                None => Value::Unclear("bar-or-psi"),
            };
        }
        within(key, v)
    }

    fn tank(&self, at: usize, v: f64, noun: Noun) -> Value {
        let key = noun.reading().unwrap_or(ReadingKey::WastePct);
        let named =
            noun != Noun::Fuel && (self.trailer_named(at) || self.beside_the_other_tank(at, noun));
        // "90 tallons": a slip for gallons would be another reading
        let word_after = self.items.get(at + 1).is_some_and(|n| {
            matches!(n.what, What::Word { .. }) && n.chunk == self.items[at].chunk
        });
        match v {
            // the level as the gauge shows it, where the trailer is named beside it
            _ if named && (5.0..=100.0).contains(&v) && !self.before_a_level(at) && !word_after => {
                within(key, v)
            }
            // .25: a part of one
            _ if v > 0.0 && v < 1.0 => within(key, v * 100.0),
            // nothing in it, however it is measured
            0.0 if named => Value::Reading(key, 0.0),
            _ => Value::Unclear("percent-or-gallons"),
        }
    }

    /// "waste 60, fresh 30": both tanks in the steps of a gauge.
    fn beside_the_other_tank(&self, at: usize, noun: Noun) -> bool {
        let step = |i: usize| {
            self.items.get(i).and_then(Item::number).is_some_and(|n| {
                n.form == Form::Whole
                    && n.unit.is_none()
                    && (5.0..=100.0).contains(&n.value)
                    && n.value % 5.0 == 0.0
            })
        };
        let other = match noun {
            Noun::Fresh => [Noun::Waste, Noun::Tank],
            _ => [Noun::Fresh, Noun::Fresh],
        };
        let told =
            |i: usize| (self.items[i].noun()).is_some_and(|n| other.contains(&n)) && step(i + 1);
        at > 0
            && self.items[at - 1].noun() == Some(noun)
            && step(at)
            && (at.saturating_sub(4)..self.items.len().min(at + 4)).any(told)
    }

    /// Reads a temperature without a measure in the fleet's.
    fn plain_degrees(&self, key: ReadingKey, v: f64) -> Value {
        let f = match self.scale {
            TemperatureScale::C => quantity::f_from_c(v),
            TemperatureScale::F => v,
        };
        within(key, f)
    }

    fn opens_before_guests(&self, at: usize, v: f64) -> bool {
        let well = |i: usize| {
            (self.items.get(i)).is_some_and(|n| n.what == What::Is(Concept::State(State::Ok)))
        };
        let named = || {
            let units = |i: &Item| matches!(i.what, What::Units(_));
            self.items.iter().any(units)
        };
        at == 0
            && v < 100.0
            && self.noun_after(at) == Some(Noun::Guests)
            && well(at + 2)
            && !named()
    }

    fn noun_after(&self, at: usize) -> Option<Noun> {
        self.items.get(at + 1)?.noun()
    }

    fn somebody_is_harmed(&self, at: usize) -> bool {
        chunk(self.items, at).any(|i| match self.items[i].what {
            What::Is(Concept::Fault(fault)) => fault.harms_a_person(),
            What::Is(Concept::State(state)) => matches!(state, State::Hurt | State::Trapped),
            _ => false,
        })
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

    /// Places a plain number that belongs to no noun.
    pub(super) fn bare(&self, at: usize) -> Value {
        let Some(number) = self.items[at].number() else {
            return Value::Unclear("no-place");
        };
        if self.below_zero(at) {
            return self.plain_degrees(ReadingKey::AirF, number.value);
        }
        let reading = self
            .after_the_regulator(at, number.value)
            .or_else(|| self.inside(at, number.value))
            .or_else(|| self.drawn(at, number.value))
            .or_else(|| self.mains(at, number.value));
        if let Some(reading) = reading {
            return reading;
        }
        match self.is_count(at, number) || self.is_place(at, number) || self.is_hour(at, number) {
            true => Value::Label,
            false => Value::Unclear("no-place"),
        }
    }

    /// "put the regulator on, was 110 at first, now 50"
    fn after_the_regulator(&self, at: usize, v: f64) -> Option<Value> {
        let fitted = What::Is(Concept::Event(Event::RegulatorFitted));
        // "put a regulator on. 50 now": a sentence of its own tells no more than that
        let sentence = self.items[at].sentence;
        let alone = chunk(self.items, at).all(|i| {
            self.items[i].is_filler()
                || self.items[i].is(Mark::Now)
                || matches!(self.items[i].what, What::Sign(_))
        });
        let since = sentence - usize::from(alone && sentence > 0);
        let regulated = (0..at)
            .rev()
            .take(16)
            .any(|i| self.items[i].sentence >= since && self.items[i].what == fitted);
        let now = chunk(self.items, at).any(|i| self.items[i].is(Mark::Now));
        (regulated && now && (15.0..=150.0).contains(&v))
            .then(|| within(ReadingKey::PressurePsi, v))
    }

    /// "62 inside"
    fn inside(&self, at: usize, v: f64) -> Option<Value> {
        let inside = |i: usize| self.items.get(i).is_some_and(|n| n.is(Mark::Inside));
        let beside = inside(at + 1) || at.checked_sub(1).is_some_and(inside);
        beside.then(|| self.plain_degrees(ReadingKey::InsideF, v))
    }

    /// "circuit 1 pulls 13 amps and 3 pulls 12"
    fn drawn(&self, at: usize, v: f64) -> Option<Value> {
        let mut before = (0..at)
            .rev()
            .take(3)
            .map(|i| &self.items[i])
            .take_while(|item| item.chunk == self.items[at].chunk);
        let by = before.find(|item| {
            !item.is_filler()
                && !item.is(Mark::At)
                && item.what != What::Is(Concept::State(State::Ok))
        })?;
        let What::Circuit(circuit) = by.what else {
            return None;
        };
        let amps = |item: &Item| {
            item.noun() == Some(Noun::Amps)
                || item.number().is_some_and(|n| n.unit == Some(Unit::Amp))
        };
        let told = self.items[sentence_around(self.items, at)].iter().any(amps);
        (told && Amps::PLAUSIBLE.contains(&v)).then_some(Value::Amps(Some(circuit), v))
    }

    /// "outlets in 9 read 121", "118 on all four"
    fn mains(&self, at: usize, v: f64) -> Option<Value> {
        if !(100.0..=132.0).contains(&v) {
            return None;
        }
        let on = |n: &Item| n.what == What::Is(Concept::State(State::On)) || n.is(Mark::At);
        let of_all = self.items.get(at + 1).is_some_and(on)
            && self.items.get(at + 2).is_some_and(|n| n.is(Mark::All));
        let at_a_plug = || chunk(self.items, at).any(|i| self.items[i].noun() == Some(Noun::Plug));
        (of_all || at_a_plug()).then_some(Value::Reading(ReadingKey::Volts, v))
    }

    /// "jacks are down, all 4", "2, 4 and 6 got here, all three leveled"; "three toilets clogged": how many.
    fn is_count(&self, at: usize, number: Number) -> bool {
        if !is_small(number) {
            return false;
        }
        let protector = matches!(
            self.noun_after(at),
            Some(Noun::Breaker | Noun::Circuit | Noun::Fuse)
        );
        at > 0 && self.items[at - 1].is(Mark::All)
            || self.is_thing(at + 1)
            || protector
            || self.so_many_things(at)
    }

    /// "toilet two", "la chapa del 1": a place inside the trailer that the sentence names.
    fn is_place(&self, at: usize, number: Number) -> bool {
        if !is_small(number) || at == 0 {
            return false;
        }
        let of = self.items[at - 1].is(Mark::Of) || self.items[at - 1].what == What::Sign('#');
        let of_a_thing = self.is_thing(at - 1) || at > 1 && of && self.is_thing(at - 2);
        let named = || {
            let sentence = &self.items[sentence_around(self.items, at)];
            sentence.iter().any(|i| matches!(i.what, What::Units(_)))
        };
        of_a_thing && (number.value <= 4.0 || named())
    }

    /// "opened 12 at 4"
    fn is_hour(&self, at: usize, number: Number) -> bool {
        let hour = at > 0 && self.items[at - 1].is(Mark::At) && number.value <= 12.0;
        let mut before = (0..at)
            .rev()
            .take(8)
            .map(|i| &self.items[i])
            .take_while(|item| item.chunk == self.items[at].chunk);
        hour && before.any(|item| matches!(item.what, What::Units(_)))
    }

    /// Tells whether an item is a part of a trailer that there are several of.
    fn is_thing(&self, at: usize) -> bool {
        matches!(
            self.items.get(at).and_then(Item::noun),
            Some(
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
        )
    }

    /// A part with no tank named.
    pub(super) fn bare_part(&self, at: usize) -> Value {
        if let Some(noun) = self.carried(at) {
            let percent = self.items[at]
                .number()
                .map_or(0.0, |n| (n.value * 1000.0).round() / 10.0);
            if let Some(key) = noun.reading().filter(|_| noun.is_tank()) {
                return within(key, percent);
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
            return within(ReadingKey::WastePct, percent);
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

/// Reads a count, which is whole.
fn count(key: ReadingKey, v: f64) -> Value {
    match v.fract() == 0.0 {
        true => within(key, v),
        false => Value::Unclear("implausible"),
    }
}

pub(super) fn is_small(number: Number) -> bool {
    number.form == Form::Whole && number.value <= 20.0
}
