//! "48 volts from the frame to ground": the trailer's skin is live, which is a shock that waits for somebody.

use super::Reader;
use super::concept::Unit;
use super::senses::Sense;
use super::vocab::Vocab;
use crate::heard::{Entry, Fault, Heard, ReadingKey};

/// From these volts between frame and ground the ground is taken to be lost (common practice, no source); a meter shows a few
/// by induction.
const LIVE_V: f64 = 20.0;

/// Takes volts between the trailer's skin and ground for a shock, and for no reading of an outlet.
pub(super) fn take(reader: &Reader, text: &str, heard: &mut Heard) {
    let senses = &reader.senses;
    // the rarest words first: nearly every message stops here
    let ground = senses.of(Sense::ToGround);
    if !ground.iter().any(|ground| text.contains(&**ground)) {
        return;
    }
    let skin = text
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| senses.has(word, Sense::Skin));
    if !skin || !volts(&reader.vocab, text).is_some_and(|volts| volts >= LIVE_V) {
        return;
    }
    heard.unclear.retain(|remark| remark.why != "which-volts");
    if heard.entries.is_empty() {
        heard.entries.push(Entry {
            unit: heard.named.first().cloned(),
            ..Entry::default()
        });
    }
    let entry = &mut heard.entries[0];
    entry.readings.values.remove(&ReadingKey::Volts);
    entry.readings.values.remove(&ReadingKey::BatteryV);
    if !entry.faults.contains(&Fault::Shock) {
        entry.faults.push(Fault::Shock);
    }
}

/// Finds the number that is said to be volts.
fn volts(vocab: &Vocab, text: &str) -> Option<f64> {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.iter().enumerate().find_map(|(at, word)| {
        let end = word
            .find(|c: char| !(c.is_ascii_digit() || c == '.'))
            .unwrap_or(word.len());
        let (digits, unit) = word.split_at(end);
        let unit = if unit.is_empty() {
            words.get(at + 1).copied().unwrap_or_default()
        } else {
            unit
        };
        let is_volts = vocab.measure(unit.trim_end_matches(',')) == Some(Unit::Volt);
        digits.parse().ok().filter(|_| is_volts)
    })
}

#[cfg(test)]
mod tests {
    use crate::heard::Fault;
    use crate::quantity::TemperatureScale;
    use crate::words::Reader;

    #[test]
    fn volts_from_the_frame_to_ground_are_a_shock() {
        let reader = Reader::new();
        let shocks = |text: &str| {
            let heard = reader.hear(text, TemperatureScale::F);
            let told = heard
                .entries
                .iter()
                .any(|entry| entry.faults.contains(&Fault::Shock));
            (told, heard.unclear.is_empty())
        };
        assert_eq!(
            shocks("10 measured 48 volts from the frame to ground"),
            (true, true)
        );
        assert_eq!(
            shocks("la 10 da 48 voltios del chasis a tierra"),
            (true, true)
        );
        assert!(!shocks("10 reads 2 volts frame to ground").0);
        assert!(!shocks("10 outlet 118 volts hot to ground").0);
    }
}
