//! A word nobody knows may be a slip for one that steers, names or measures: "iss 48 psi ok for 9", "10 wag cord".
//!
//! No list of rules would catch each of them, so the message is read again with each word of ours that one keystroke turns
//! into what was typed. A value counts only where it comes out the same either way; else it is asked about.

use super::Reader;
use super::read::Reading;
use super::senses::Sense;
use super::spell::one_keystroke;
use crate::heard::{Amps, Heard, ReadingKey, Remark, UnitName};
use crate::quantity::TemperatureScale;

/// Longer messages are not read again: reading has to stay linear in the length.
const LONGEST: usize = 1000;
/// The most words of a message that are looked at.
const MOST_WORDS: usize = 6;
/// The most other readings of a message.
const MOST_READINGS: usize = 24;

/// What a message logs as numbers, each with the trailer it is for.
#[derive(Debug, Default)]
struct Logged {
    values: Vec<(Option<UnitName>, ReadingKey, f64)>,
    amps: Vec<(Option<UnitName>, Amps)>,
}

impl Logged {
    fn of(heard: &Heard) -> Logged {
        let mut all = Logged::default();
        for entry in &heard.entries {
            let unit = || entry.unit.clone();
            let values = entry.readings.values.iter();
            all.values
                .extend(values.map(|(key, value)| (unit(), *key, *value)));
            all.amps
                .extend(entry.readings.amps.iter().map(|amps| (unit(), *amps)));
        }
        all
    }

    fn is_empty(&self) -> bool {
        self.values.is_empty() && self.amps.is_empty()
    }

    /// Leaves what `other` does not say.
    fn without(mut self, other: &Logged) -> Logged {
        self.values.retain(|value| !other.values.contains(value));
        self.amps.retain(|amps| !other.amps.contains(amps));
        self
    }
}

/// Takes out the values that another reading of a word nobody knows would not give, and asks about them.
pub(super) fn sift(reader: &Reader, reading: &mut Reading<'_>, scale: TemperatureScale) {
    if reading.folded().len() > LONGEST || Logged::of(&reading.heard).is_empty() {
        return;
    }
    let mut left = MOST_READINGS;
    let doubtful = |word: &str| reader.senses.has(word, Sense::OftenASlip);
    let strange = reading.strange(doubtful);
    for (token, mended) in strange.into_iter().take(MOST_WORDS) {
        let (start, end) = reading.token_range(token);
        let typed = &reading.folded()[start..end];
        let meant = match mended {
            // rules that go by the spelling have not seen the word it was taken for
            Some(word) => vec![word],
            None => one_keystroke(typed, |word| reader.vocab.is_ours(word)),
        };
        let meant = &meant[..meant.len().min(left)];
        left -= meant.len();
        let lost = lost(reader, reading, (start, end), meant, scale);
        if !lost.is_empty() {
            take_out(&mut reading.heard, &lost);
            reading.ask_about(token, Remark::STRANGE_WORD);
        }
    }
}

/// Returns the values that the message would not give with one of the words `meant` in the place of what was typed.
fn lost(
    reader: &Reader,
    reading: &Reading<'_>,
    (start, end): (usize, usize),
    meant: &[String],
    scale: TemperatureScale,
) -> Logged {
    let text = reading.folded();
    let mut lost = Logged::default();
    for word in meant {
        let other = format!("{}{word}{}", &text[..start], &text[end..]);
        let heard = Reading::new(reader, &other, scale).heard;
        let here = Logged::of(&reading.heard).without(&Logged::of(&heard));
        lost.values.extend(here.values);
        lost.amps.extend(here.amps);
    }
    lost
}

fn take_out(heard: &mut Heard, lost: &Logged) {
    for entry in &mut heard.entries {
        let unit = &entry.unit;
        let values = lost.values.iter().filter(|(of, ..)| of == unit);
        for (_, key, value) in values {
            if entry.readings.value(*key) == Some(*value) {
                entry.readings.values.remove(key);
            }
        }
        entry
            .readings
            .amps
            .retain(|amps| !lost.amps.iter().any(|(of, a)| of == unit && a == amps));
    }
    heard.entries.retain(|entry| {
        !(entry.readings.is_empty()
            && entry.events.is_empty()
            && entry.faults.is_empty()
            && entry.cleared.is_empty())
    });
}
