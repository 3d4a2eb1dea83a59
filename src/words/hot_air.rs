//! "hace 40 de calor": heat that would be near frost in °F is asked about, since whoever tells of heat may count in °C.

use super::Reader;
use super::concept::Unit;
use super::senses::Sense;
use crate::heard::{Heard, ReadingKey, Remark};

/// What °F nobody calls hot, and °C may be: from a mild day to the hottest there is.
const DOUBTED: std::ops::RangeInclusive<f64> = 20.0..=52.0;

/// Asks whether a temperature that is told as heat is °C, where no measure says so and as °F it would be cold.
pub(super) fn doubt(reader: &Reader, text: &str, original: &str, heard: &mut Heard) {
    let hot = reader.senses.of(Sense::HotAir);
    let text = &text.split_whitespace().collect::<Vec<_>>().join(" ");
    if !hot.iter().any(|hot| text.contains(&**hot)) || measured(reader, text) {
        return;
    }
    for entry in &mut heard.entries {
        let cold = entry.readings.value(ReadingKey::AirF);
        if cold.is_some_and(|f| DOUBTED.contains(&f)) {
            entry.readings.values.remove(&ReadingKey::AirF);
            heard.unclear.push(Remark {
                text: original.trim().to_string(),
                why: "f-or-c".into(),
            });
        }
    }
    heard.entries.retain(|entry| !entry.is_empty());
}

/// Tells whether a measure says which degrees are meant: 40f, 40 grados C.
fn measured(reader: &Reader, text: &str) -> bool {
    let number = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '°');
    text.split_whitespace().any(|word| {
        let measure = reader
            .vocab
            .measure(word.trim_start_matches(number).trim_end_matches([',', '.']));
        matches!(measure, Some(Unit::DegC | Unit::DegF))
    })
}
