//! The questions the bot asks, each with its likely answers.

use super::voice::{Arg, Voice};
use crate::dialogue::{About, Fact, Hauled, Mend};
use crate::heard::{Amps, Entry, UnitName};
use crate::quantity::Measure;

impl Voice<'_> {
    /// Says a question with its likely answers.
    pub fn question(&self, about: &About) -> String {
        match about {
            About::WhichUnit { likely, .. } if likely.is_empty() => self.word("ask-which-unit"),
            About::WhichUnit { likely, .. } if likely.len() == 1 => {
                self.say("ask-unit-yes", &[("unit", likely[0].as_str().into())])
            }
            About::WhichUnit { likely, .. } => self.say(
                "ask-which-unit-of",
                &[("units", self.one_of(&self.units(likely)).into())],
            ),
            About::WhatValue { unit, text, .. } => {
                let quote = ("quote", Arg::from(self.quote(text)));
                match unit {
                    Some(unit) => self.say(
                        "ask-what-value-on",
                        &[quote, ("unit", unit.as_str().into())],
                    ),
                    None => self.say("ask-what-value", &[quote]),
                }
            }
            About::CordsLive { unit, .. } => {
                self.say("ask-cords-live", &[("unit", unit.as_str().into())])
            }
            About::WhichUnitOf { text, likely } => {
                let quote = ("quote", Arg::from(self.quote(text)));
                match likely.as_slice() {
                    [] => self.say("ask-which-unit-for", &[quote]),
                    [unit] => self.say(
                        "ask-which-unit-for-yes",
                        &[quote, ("unit", unit.as_str().into())],
                    ),
                    likely => self.say(
                        "ask-which-unit-for-of",
                        &[quote, ("units", self.one_of(&self.units(likely)).into())],
                    ),
                }
            }
            About::WhichMend { ways, .. } => {
                let ways = self.one_of(&self.ways(ways));
                self.say("ask-which-mend", &[("ways", ways.into())])
            }
            About::PhotoOf { likely } if likely.is_empty() => self.word("ask-photo-of"),
            About::PhotoOf { likely } => {
                let units = self.one_of(&self.units(likely));
                self.say("ask-photo-of-which", &[("units", units.into())])
            }
            About::Arrived { units, .. } => match units.as_slice() {
                [unit] => self.say("ask-arrived", &[("unit", unit.as_str().into())]),
                units => {
                    let units = self.one_of(&self.units(units));
                    self.say("ask-arrived-which", &[("units", units.into())])
                }
            },
            About::Leaves { unit: Some(unit) } => {
                self.say("ask-leaves-unit", &[("unit", unit.as_str().into())])
            }
            About::Alone { unit } => {
                self.say("speak-alone-offer", &[("unit", unit.as_str().into())])
            }
            About::Leaves { unit: None } => self.word("ask-leaves"),
            About::Worry { .. } => self.word("ask-worry"),
            About::HurtNow { unit, .. } => {
                self.say("incident-help-first", &[("unit", unit.as_str().into())])
            }
            About::OverrideWhy { unit, .. } => {
                self.say("ask-override-why", &[("unit", unit.as_str().into())])
            }
            About::NoDanger { unit, faults } => {
                let names: Vec<String> = faults.iter().map(|fault| self.fault(*fault)).collect();
                let mut args = vec![("what", self.all_of(&names).into())];
                let Some(unit) = unit else {
                    return self.say("ask-no-danger-person", &args);
                };
                args.push(("unit", Arg::from(unit.as_str())));
                self.say("ask-no-danger", &args)
            }
            About::WasPumped { unit, since, .. } => self.say(
                "ask-was-pumped",
                &[("unit", unit.as_str().into()), ("since", (*since).into())],
            ),
            About::TruckWhen { unit } => {
                self.say("truck-late-when", &[("unit", unit.as_str().into())])
            }
            About::HowMuch { unit, after } => {
                let key = match after {
                    Hauled::Here => "truck-here",
                    Hauled::Gone => "truck-gone",
                    Hauled::Done => "truck-done",
                    Hauled::Number => "truck-gallons",
                };
                self.say(key, &[("unit", unit.as_str().into())])
            }
            About::ReleaseSure { number, text } => {
                let args = [
                    ("id", Arg::from(*number)),
                    ("quote", self.quote(text).into()),
                ];
                self.say("incident-release-sure", &args)
            }
            // asked in a line of their own, beside what they are about
            About::WhichTask { .. }
            | About::UndoOlder { .. }
            | About::UndoNext
            | About::ReleaseWhy { .. } => String::new(),
            About::IncidentFact { number, fact } => {
                let of = Fact::ALL.len();
                let place = Fact::ALL.iter().position(|other| other == fact);
                let asked = self.word(&format!("incident-ask-{}", fact.code()));
                self.say(
                    "incident-ask",
                    &[
                        ("id", (*number).into()),
                        ("row", place.map_or(of, |place| place + 1).into()),
                        ("rows", of.into()),
                        ("what", asked.into()),
                    ],
                )
            }
            About::When { entry, text } => {
                let unit = entry.unit.as_ref().map_or("", UnitName::as_str);
                let quote = self.quote(text);
                self.say(
                    "ask-when",
                    &[("quote", quote.into()), ("unit", unit.into())],
                )
            }
            About::TapsShut { unit } => {
                self.say("ask-taps-shut", &[("unit", unit.as_str().into())])
            }
            About::BeforeRegulator { unit } => {
                self.say("ask-before-regulator", &[("unit", unit.as_str().into())])
            }
        }
    }

    /// Says each way in which a correction can be meant.
    pub fn ways(&self, ways: &[Mend]) -> Vec<String> {
        ways.iter().map(|way| self.way(way, ways)).collect()
    }

    /// Says one way in which a correction can be meant; on which trailer, where the ways differ in that.
    fn way(&self, way: &Mend, all: &[Mend]) -> String {
        let said = match way {
            Mend::Unit { to, .. } => {
                return self.say("mend-unit", &[("unit", to.as_str().into())]);
            }
            Mend::Off { unit } => unit.to_string(),
            Mend::Value { key, value, .. } => self.reading(*key, *value, None),
            Mend::Amps {
                circuit: Some(circuit),
                amps,
                ..
            } => {
                let mut entry = Entry::default();
                entry.readings.amps.push(Amps {
                    circuit: Some(*circuit),
                    amps: *amps,
                });
                self.readings(&entry, None)
            }
            Mend::Amps { amps, .. } => self.number(*amps, Measure::Amp),
            Mend::Label { to, value, .. } => self.reading(*to, *value, None),
            Mend::Circuit { to, .. } => to.to_string(),
            Mend::Event { event, .. } => self.event(*event),
            Mend::Fault { fault, .. } => self.fault(*fault),
        };
        let of = |way: &Mend| match way {
            Mend::Unit { .. } => None,
            other => Some(other.unit().clone()),
        };
        let mine = of(way);
        match mine {
            Some(unit) if all.iter().filter_map(of).any(|other| other != unit) => self.say(
                "mend-on",
                &[("what", said.into()), ("unit", unit.as_str().into())],
            ),
            _ => said,
        }
    }

    fn units(&self, units: &[UnitName]) -> Vec<String> {
        units.iter().map(|unit| unit.as_str().to_owned()).collect()
    }
}
