//! Numbers with a measure, converted to the one that their key names.

use super::surroundings::chunk;
use super::{GAUGE_REACH, Placer, Value};
use crate::heard::{Amps, Event, ReadingKey};
use crate::quantity::{self, TemperatureScale};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};

impl Placer<'_> {
    /// Reads a number that has a measure.
    pub(super) fn value(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let v = number.value;
        let Some(unit) = number.unit else {
            return self.unmeasured(at, number, noun);
        };
        match unit {
            Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2 | Unit::Kilo | Unit::Lb => {
                self.pressure(at, v, unit, noun)
            }
            Unit::Gal => self.volume(at, v, noun),
            Unit::Litre => self.volume(at, v / quantity::LITRES_PER_GAL, noun),
            Unit::Pct => self.percentage(at, v, noun),
            Unit::DegC | Unit::DegF | Unit::Deg => self.degrees(at, v, unit, noun),
            Unit::Volt => self.volts(at, number, noun),
            Unit::Amp => self.amps(at, v, noun),
            Unit::Ft => self.length(at, v, noun),
            Unit::Metre => self.length(at, v * quantity::FT_PER_M, noun),
            Unit::Gpm => within(K::FlowGpm, v),
            Unit::Lpm => within(K::FlowGpm, v / quantity::LITRES_PER_GAL),
            Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot => wind(v, unit, noun),
            Unit::Minute => self.span(at, v, noun),
            Unit::Hour => self.span(at, v * 60.0, noun),
            Unit::Other => Value::Label,
        }
    }

    fn pressure(&self, at: usize, v: f64, unit: Unit, noun: Option<Noun>) -> Value {
        let spoken_of = matches!(
            noun,
            Some(Noun::Pressure | Noun::Supply | Noun::BeforeRegulator | Noun::AfterRegulator)
        );
        // kilos of something else, pounds that something weighs
        let weight = match unit {
            Unit::Kilo => !spoken_of,
            Unit::Lb => {
                !matches!(noun, Some(Noun::Pressure | Noun::Supply)) && !self.spanish_pounds(at)
            }
            _ => false,
        };
        if weight || noun == Some(Noun::Tire) {
            return Value::Label;
        }
        let psi = v * unit.psi();
        let supply = matches!(noun, Some(Noun::Supply | Noun::BeforeRegulator))
            || noun.is_none() && self.of_the_supply(at);
        let key = if supply {
            ReadingKey::SupplyPsi
        } else {
            ReadingKey::PressurePsi
        };
        within(key, psi)
    }

    /// "50 psi downstream of the regulator; the supply stands at 85 psi": the water named alone beside the other side.
    fn of_the_supply(&self, at: usize) -> bool {
        let water = chunk(self.items, at).any(|i| self.items[i].noun() == Some(Noun::Water));
        let from = at.saturating_sub(24);
        water
            && self.items[from..at]
                .iter()
                .any(|i| i.noun() == Some(Noun::AfterRegulator))
    }

    fn volume(&self, at: usize, gal: f64, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let key = match noun {
            Some(Noun::Fresh | Noun::Water) => K::FreshGal,
            Some(Noun::Fuel | Noun::Generator) => K::FuelGal,
            Some(Noun::Waste | Noun::Tank) if self.inside_it(at) => K::WasteGal,
            _ if self.pumping(at) => K::PumpedGal,
            None if self.of_something_else(at) => return Value::Label,
            Some(Noun::Waste | Noun::Tank | Noun::Sewage) => K::WasteGal,
            Some(_) => return Value::Label,
            None => match self.tank_before(at) {
                Some(Noun::Fresh) => K::FreshGal,
                Some(_) => K::WasteGal,
                None => return Value::Unclear("which-tank"),
            },
        };
        within(key, gal)
    }

    /// "2 gallons of pink": a word that is no tank's says what they are of.
    fn of_something_else(&self, at: usize) -> bool {
        self.items.get(at + 1).is_some_and(|n| n.is(Mark::Of))
            && self
                .items
                .get(at + 2)
                .is_some_and(|n| matches!(n.what, What::Word { .. }))
    }

    /// "30 gallons in the waste": what is in it, and not what was taken out.
    fn inside_it(&self, at: usize) -> bool {
        let mut next = at + 1;
        let place = self
            .items
            .get(next)
            .is_some_and(|n| n.what == What::Is(Concept::Mark(Mark::At)) || n.is(Mark::Inside));
        next += 1;
        while self.items.get(next).is_some_and(|n| n.is(Mark::Article)) {
            next += 1;
        }
        place
            && self
                .items
                .get(next)
                .is_some_and(|n| matches!(n.noun(), Some(Noun::Waste | Noun::Tank)))
    }

    fn percentage(&self, at: usize, v: f64, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        if self.leans(at) {
            return within(K::SlopePct, v);
        }
        let key = match noun {
            Some(Noun::Battery) => K::BatteryPct,
            Some(Noun::Humidity) => K::HumidityPct,
            Some(Noun::Slope) => K::SlopePct,
            Some(Noun::Fuel | Noun::Generator) => K::FuelPct,
            Some(Noun::Fresh) => K::FreshPct,
            Some(Noun::Waste | Noun::Tank) => K::WastePct,
            Some(_) => return Value::Label,
            // "toilet paper's up 20%": of what is bought
            None if self.of_supplies(at) => return Value::Label,
            // "12 waste 60 % and 14 80 %"
            // "fresh on 16 topped off, gauge at 100%"
            None => match self
                .carried(at)
                .filter(|noun| noun.is_tank())
                .or_else(|| self.tank_within(at, GAUGE_REACH).filter(|_| self.gauge(at)))
            {
                Some(noun) => noun.reading().unwrap_or(K::WastePct),
                None => return Value::Unclear("which-tank"),
            },
        };
        within(key, v)
    }

    /// Tells whether the thing named right before in the clause is what a trailer is stocked with.
    fn of_supplies(&self, at: usize) -> bool {
        let thing = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find_map(|i| self.items[i].noun());
        thing == Some(Noun::Supplies)
    }

    fn degrees(&self, at: usize, v: f64, unit: Unit, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        let next = self.items.get(at + 1);
        // "2 grados bajo ceo": below what cannot be told
        if next.is_some_and(|n| n.what == What::Is(Concept::State(State::Low))) {
            return Value::Unclear("below-what");
        }
        // "cord run 75 f": feet, for certain no degrees
        let run = (0..at)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
            .find(|i| !self.items[*i].is_filler());
        // "4 cords 30F": they are counted, and no length is told of them
        let counted = run.is_some_and(|i| {
            let number = i.checked_sub(1).and_then(|i| self.items[i].number());
            number.is_some_and(|n| n.unit.is_none() && n.value <= 4.0)
        });
        let run = run.and_then(|i| self.items[i].noun());
        if noun.is_none() && !counted && matches!(run, Some(Noun::Cord | Noun::Cords | Noun::Hose))
        {
            return Value::Unclear("feet-or-metres");
        }
        if unit == Unit::Deg
            && matches!(noun, None | Some(Noun::Slope))
            && let Some(slope) = self.tilt(at, v)
        {
            return slope;
        }
        let f = match (unit, self.scale) {
            (Unit::DegC, _) | (Unit::Deg, TemperatureScale::C) => quantity::f_from_c(v),
            _ => v,
        };
        let key = match noun {
            Some(Noun::HotWater | Noun::WaterHeater | Noun::Water | Noun::Slope) => {
                return Value::Label;
            }
            Some(Noun::Inside) => K::InsideF,
            _ if next.is_some_and(|n| n.is(Mark::Inside)) => K::InsideF,
            // "inside 72 °F, outside 88 °F"
            None if (0..at)
                .rev()
                .take_while(|i| self.items[*i].chunk == self.items[at].chunk)
                .find(|i| !self.items[*i].is_filler())
                .is_some_and(|i| self.items[i].is(Mark::Inside)) =>
            {
                K::InsideF
            }
            Some(Noun::Low) => K::LowF,
            _ => K::AirF,
        };
        within(key, f)
    }

    /// "inclinada 3 grados", "está bien inclinada, como 3 grados": how far it leans, as far as a trailer that stands
    /// can. "12 not level, 3 degrees": behind a comma it may be the air, and is asked.
    fn tilt(&self, at: usize, degrees: f64) -> Option<Value> {
        const STANDS: std::ops::RangeInclusive<f64> = 0.0..=8.0;
        let tilted = (0..at)
            .rev()
            .take(5)
            .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
            .find(|i| {
                let item = &self.items[*i];
                !item.is_filler() && !item.is(Mark::About) && item.what != What::Sign(',')
            })
            .is_some_and(|i| self.items[i].what == What::Is(Concept::State(State::Tilted)));
        if !(tilted || self.leans(at)) || degrees > 15.0 {
            return None;
        }
        let parted = self.items[at.saturating_sub(2)..at]
            .iter()
            .any(|i| i.what == What::Sign(','));
        let out = (self.items.get(at + 1))
            .is_some_and(|n| n.what == What::Is(Concept::State(State::Out)));
        if parted || out {
            return Some(Value::Unclear("no-place"));
        }
        let percent = (degrees.to_radians().tan() * 1000.0).round() / 10.0;
        match STANDS.contains(&degrees) {
            true => Some(within(ReadingKey::SlopePct, percent)),
            false => Some(Value::Unclear("no-place")),
        }
    }

    /// "120V 30A": what a plate says the thing is made for.
    fn rated_together(&self, at: usize) -> bool {
        let number = |i: usize, unit: Unit| {
            self.items.get(i).is_some_and(|n| {
                n.chunk == self.items[at].chunk
                    && n.number().is_some_and(|n| {
                        n.unit == Some(unit)
                            && n.form == Form::Whole
                            && match unit {
                                Unit::Volt => [120.0, 240.0].contains(&n.value),
                                _ => [15.0, 20.0, 30.0, 50.0].contains(&n.value),
                            }
                    })
            })
        };
        number(at, Unit::Volt) && number(at + 1, Unit::Amp)
            || at > 0 && number(at, Unit::Amp) && number(at - 1, Unit::Volt)
    }

    fn volts(&self, at: usize, number: Number, noun: Option<Noun>) -> Value {
        use ReadingKey as K;
        if self.rated_together(at) {
            return Value::Label;
        }
        let v = number.value;
        match noun {
            // 12v lights: the system, not a reading
            Some(Noun::Lights | Noun::Pump | Noun::Fan) if v < 60.0 => Value::Label,
            _ if self.system(at, number) => Value::Label,
            // "12v sysetm": it may name one
            None if number.form == Form::Whole && v <= 24.0 && self.slip_after(at) => {
                Value::Unclear("which-volts")
            }
            Some(Noun::Battery) => within(K::BatteryV, v),
            Some(Noun::Volts | Noun::Power | Noun::Generator) if (90.0..=300.0).contains(&v) => {
                Value::Reading(K::Volts, v)
            }
            _ if (90.0..=260.0).contains(&v) => Value::Reading(K::Volts, v),
            _ if (0.0..=16.0).contains(&v) => Value::Reading(K::BatteryV, v),
            _ if !(0.0..=300.0).contains(&v) => Value::Unclear("implausible"),
            _ => Value::Unclear("which-volts"),
        }
    }

    fn amps(&self, at: usize, v: f64, noun: Option<Noun>) -> Value {
        let rated = matches!(
            noun,
            Some(Noun::Breaker | Noun::Fuse | Noun::Cord | Noun::Cords | Noun::Plug | Noun::Gfci)
        );
        if rated
            || self.rated_together(at)
            || self.rating(at)
            || noun.is_none() && self.of_what_protects(at)
        {
            return Value::Label;
        }
        match Amps::PLAUSIBLE.contains(&v) {
            true => Value::Amps(self.circuit(at), v),
            false => Value::Unclear("implausible"),
        }
    }

    /// Tells whether a current is what the thing after it is made for: "20 amp breaker".
    fn rating(&self, at: usize) -> bool {
        let next = self.items.get(at + 1).and_then(Item::noun);
        let circuit_named = matches!(
            self.items.get(at + 2).map(|i| i.what),
            Some(What::Circuit(_))
        );
        match next {
            Some(Noun::Circuit) => !circuit_named,
            Some(
                Noun::Breaker
                | Noun::Fuse
                | Noun::Cord
                | Noun::Cords
                | Noun::Plug
                | Noun::Gfci
                | Noun::Power,
            ) => true,
            _ => false,
        }
    }

    /// Tells whether the words around speak of a fuse or breaker that was swapped or went, and of no circuit.
    fn of_what_protects(&self, at: usize) -> bool {
        let told = chunk(self.items, at).any(|i| {
            matches!(
                self.items[i].what,
                What::Is(
                    Concept::Event(Event::FuseReplaced | Event::BreakerReset)
                        | Concept::State(
                            State::Tripped
                                | State::KeepsTripping
                                | State::Blown
                                | State::Reset
                                | State::Replaced
                        )
                )
            )
        });
        told && self.circuit(at).is_none()
    }

    fn length(&self, at: usize, ft: f64, noun: Option<Noun>) -> Value {
        match noun.or_else(|| self.run_before(at)) {
            Some(Noun::Hose) => within(ReadingKey::HoseFt, ft),
            Some(Noun::Cord | Noun::Cords) => within(ReadingKey::CordFt, ft),
            _ => Value::Label,
        }
    }

    /// A span of time: the minutes to arrival, where the sender is on the way.
    fn span(&self, at: usize, minutes: f64, noun: Option<Noun>) -> Value {
        let ago = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Ago));
        // "pump truck an hour out": no trailer's time
        let trucks = chunk(self.items, at).any(|i| self.items[i].noun() == Some(Noun::Truck))
            && chunk(self.items, at).all(|i| !matches!(self.items[i].what, What::Units(_)));
        if !ago && !trucks && (noun == Some(Noun::Eta) || self.away(at)) {
            within(ReadingKey::EtaMin, minutes)
        } else {
            Value::Label
        }
    }
}

fn wind(v: f64, unit: Unit, noun: Option<Noun>) -> Value {
    let mph = match unit {
        Unit::Kmh => v * quantity::MPH_PER_KMH,
        Unit::Ms => v * quantity::MPH_PER_MS,
        Unit::Knot => v * quantity::MPH_PER_KNOT,
        _ => v,
    };
    // a speed in road measures may be a truck's
    let road = matches!(unit, Unit::Kmh | Unit::Mph);
    match noun {
        Some(Noun::Wind | Noun::Gust) | None => within(ReadingKey::WindMph, mph),
        Some(_) if road => Value::Label,
        Some(_) => within(ReadingKey::WindMph, mph),
    }
}

/// Gives a reading where it is plausible, and asks where it is not.
pub(super) fn within(key: ReadingKey, value: f64) -> Value {
    if key.plausible().contains(&value) {
        Value::Reading(key, value)
    } else {
        Value::Unclear("implausible")
    }
}
