//! The questions the bot asks, each with its likely answers.

use super::voice::{Arg, Voice};
use crate::dialogue::About;
use crate::heard::UnitName;

impl Voice<'_> {
    /// Says a question with its likely answers.
    pub fn question(&self, about: &About) -> String {
        match about {
            About::WhichUnit { likely, .. } if likely.is_empty() => self.word("ask-which-unit"),
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
            About::TapsShut { unit } => {
                self.say("ask-taps-shut", &[("unit", unit.as_str().into())])
            }
            About::BeforeRegulator { unit } => {
                self.say("ask-before-regulator", &[("unit", unit.as_str().into())])
            }
        }
    }

    fn units(&self, units: &[UnitName]) -> Vec<String> {
        units.iter().map(|unit| unit.as_str().to_owned()).collect()
    }
}
