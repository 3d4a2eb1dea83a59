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
            About::WhatValue {
                unit, number, text, ..
            } => {
                let number = crate::quantity::plain(*number, 3);
                let mut args = vec![
                    ("words", Arg::from(self.quote(text))),
                    ("number", number.into()),
                ];
                match unit {
                    Some(unit) => {
                        args.push(("unit", unit.as_str().into()));
                        self.say("ask-what-value-on", &args)
                    }
                    None => self.say("ask-what-value", &args),
                }
            }
            About::TapsShut { unit } => {
                self.say("ask-taps-shut", &[("unit", unit.as_str().into())])
            }
            About::BeforeRegulator { unit } => {
                self.say("ask-before-regulator", &[("unit", unit.as_str().into())])
            }
            About::Step {
                unit,
                finding,
                step,
            } => {
                let key = format!("step-{}-{}", finding.code().replace('.', "-"), step + 1);
                let args = [("unit", Arg::from(unit.as_str()))];
                if self.knows(&key) {
                    self.say(&key, &args)
                } else {
                    self.say("step-other", &args)
                }
            }
        }
    }

    /// Says which known trailers come nearest to a name nobody knows.
    pub fn unknown_unit(&self, name: &str, nearest: &[UnitName]) -> String {
        let name = Arg::from(self.quote(name));
        if nearest.is_empty() {
            return self.say("unknown-unit", &[("name", name)]);
        }
        let nearest = self.one_of(&self.units(nearest));
        self.say(
            "unknown-unit-near",
            &[("name", name), ("nearest", nearest.into())],
        )
    }

    fn units(&self, units: &[UnitName]) -> Vec<String> {
        units.iter().map(|unit| unit.as_str().to_owned()).collect()
    }
}
