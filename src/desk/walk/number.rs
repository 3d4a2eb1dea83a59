//! The number that a step asks for, as people write it: reported, bare, or in a few clear words.

use super::super::phrases::plain;
use super::answers::Answers;
use super::phrase::{Phrases, sole_value};
use super::said::Message;
use crate::heard::{Amps, ReadingKey};
use crate::rules::Sought;
use crate::words::psi_in;

impl Answers {
    /// Finds the number that a step asks for: as it was reported, else as a bare answer.
    pub(super) fn number(&self, message: &Message<'_>, what: Sought) -> Option<f64> {
        let told = message.told;
        let reported = told.and_then(|entry| match what {
            Sought::Reading(key) => entry.readings.value(key),
            Sought::Amps => entry.readings.amps.last().map(|current| current.amps),
            Sought::Plain => None,
        });
        if reported.is_some() {
            return reported;
        }
        if told.is_some_and(|entry| !entry.is_empty()) {
            return None;
        }
        let answer = message.heard.answer.as_ref();
        let fits = answer.is_some_and(|answer| {
            let measure = answer.measure.as_deref();
            measure.is_none_or(|measure| measures(what).contains(&measure))
        });
        let bare = answer.filter(|_| fits).and_then(|answer| answer.number);
        let bare = bare.or_else(|| self.only_number(message, what))?;
        match what {
            Sought::Reading(key) if is_level(key) && bare.fract() != 0.0 && bare < 1.0 => {
                Some(bare * 100.0)
            }
            Sought::Reading(key) => key.plausible().contains(&bare).then_some(bare),
            Sought::Amps => Amps::PLAUSIBLE.contains(&bare).then_some(bare),
            Sought::Plain => Some(bare),
        }
    }

    /// Finds the one number of a message in which every other word is clear: "its about 52 psi".
    fn only_number(&self, message: &Message<'_>, what: Sought) -> Option<f64> {
        let mut words = Phrases::of(message.text);
        // "about a quarter", "looks half full", "maybe 20"
        let about = words.find(self.list("any", "about"));
        words.cover(&about);
        if self.any(&words, "mistake") || self.has_uncovered(&words, "later") {
            return None;
        }
        let amount = |(list, value): (&str, f64)| self.is_all(&words, list).then_some(value);
        let level = matches!(what, Sought::Reading(key) if is_level(key));
        let by_name = [
            ("none", 0.0),
            ("quarter", 25.0),
            ("third", 100.0 / 3.0),
            ("half", 50.0),
            ("two-thirds", 200.0 / 3.0),
            ("three-quarters", 75.0),
            ("full", 100.0),
        ];
        let named = by_name
            .into_iter()
            .filter(|(list, _)| level || *list == "none")
            .find_map(amount);
        if named.is_some() {
            return named;
        }
        let (value, measure) = sole_value(message.text)?;
        if !measure.is_empty() && measure != "ish" && !is_measure(what, &measure) {
            return None;
        }
        for list in ["filler", "yes", "ack"] {
            let spans = words.find(self.list("any", list));
            words.cover(&spans);
        }
        let question = plain(message.question);
        words.cover_words(|word| {
            word.starts_with(|c: char| c.is_ascii_digit())
                || is_measure(what, word)
                || question.split(' ').any(|asked| asked == word)
        });
        words.left().next().is_none().then_some(value)
    }
}

fn is_level(key: ReadingKey) -> bool {
    matches!(key, ReadingKey::WastePct | ReadingKey::FreshPct)
}

/// Tells whether a number may be given in this measure without being taken for another.
fn is_measure(what: Sought, word: &str) -> bool {
    let psi = what == Sought::Reading(ReadingKey::PressurePsi) && psi_in(word) == Some(1.0);
    psi || measures(what).contains(&word)
}

/// Returns the measures in which a number may be given without being taken for another.
fn measures(what: Sought) -> &'static [&'static str] {
    match what {
        Sought::Reading(ReadingKey::PressurePsi) => &["lbs", "lb", "pounds", "libras"],
        Sought::Reading(ReadingKey::Volts | ReadingKey::BatteryV) => {
            &["v", "volts", "volt", "vac", "vdc", "voltios"]
        }
        Sought::Amps => &["a", "amps", "amp", "amperes", "amperios"],
        Sought::Reading(_) => &["pct", "percent", "%", "por", "ciento"],
        Sought::Plain => &["f", "degrees", "deg", "grados", "degf"],
    }
}
