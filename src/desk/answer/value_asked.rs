//! Which number a question is about, and what it is a reading of.

use crate::desk::phrases::Phrases;
use crate::desk::situate::Case;
use crate::finding::Finding;
use crate::heard::ReadingKey;
use crate::words::psi_in;

/// Finds the rating of an outlet that is asked about: "15 amp outlet only, is that ok".
pub(super) fn amps(phrases: &Phrases, text: &str) -> Option<f64> {
    if !phrases.holds("asked-value", "outlet", text) {
        return None;
    }
    let folded = text.to_lowercase();
    let words: Vec<&str> = folded
        .split(|c: char| !(c.is_alphanumeric() || c == '.'))
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().find_map(|(place, word)| {
        let digits = word.trim_end_matches(char::is_alphabetic);
        let label = match &word[digits.len()..] {
            "" => words.get(place + 1).copied().unwrap_or_default(),
            label => label,
        };
        let amps: f64 = digits.parse().ok()?;
        let rated = (5.0..=60.0).contains(&amps);
        (rated && phrases.is("asked-value", "a", label)).then_some(amps)
    })
}

/// Finds the number that is asked about, and what it is a reading of: by its unit of measure or its noun, else by what was
/// last talked about, else by its size. A trailer's own name is no such number.
pub(super) fn number(
    phrases: &Phrases,
    text: &str,
    case: Option<&Case>,
    advice: &[Finding],
) -> Option<(ReadingKey, f64)> {
    let text = text.to_lowercase();
    let is_its_name = |digits: &str| case.is_some_and(|case| case.unit.as_str() == digits);
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || c == '?' || c == '¿' || c == ',')
        .filter(|word| !word.is_empty())
        .collect();
    let (place, value, rest) = words.iter().enumerate().find_map(|(place, word)| {
        let end = word
            .char_indices()
            .find(|(at, c)| !(c.is_ascii_digit() || *c == '.' || (*at == 0 && *c == '-')))
            .map_or(word.len(), |(at, _)| at);
        let (digits, rest) = word.split_at(end);
        let value: f64 = digits
            .trim_end_matches('.')
            .parse()
            .ok()
            .filter(|value: &f64| value.is_finite())?;
        (!(rest.is_empty() && is_its_name(digits))).then_some((place, value, rest))
    })?;
    let next = words.get(place + 1).copied().unwrap_or_default();
    let spoken_of = |list: &str| phrases.holds("asked-value", list, &text);
    // "15 amp", "16 gauge", "100 ft": of none of the readings that are judged here
    if phrases.is(
        "asked-value",
        "others",
        if rest.is_empty() { next } else { rest },
    ) {
        return None;
    }
    let measure = if rest.is_empty() { next } else { rest };
    let in_measure = |list: &str| measure == list || phrases.is("asked-value", list, measure);
    if let Some(psi) = psi_in(measure) {
        return Some((ReadingKey::PressurePsi, value * psi));
    }
    let battery = spoken_of("battery");
    let key = match () {
        () if phrases.is("asked-value", "pounds", measure) => ReadingKey::PressurePsi,
        () if in_measure("v") && (battery || value < 20.0) => ReadingKey::BatteryV,
        () if in_measure("v") => ReadingKey::Volts,
        () if in_measure("degrees") => ReadingKey::AirF,
        () if in_measure("percent") || measure == "%" => match spoken_of("fresh") {
            true => ReadingKey::FreshPct,
            false => ReadingKey::WastePct,
        },
        () if battery => ReadingKey::BatteryV,
        () if spoken_of("pressure") => ReadingKey::PressurePsi,
        () if spoken_of("volts") => ReadingKey::Volts,
        () => {
            let talked_of = advice.first().map(|finding| finding.id.topic());
            match value {
                v if (10.0..=15.0).contains(&v) => ReadingKey::BatteryV,
                v if (15.0..100.0).contains(&v) => ReadingKey::PressurePsi,
                v if (100.0..=140.0).contains(&v) && talked_of != Some("water") => {
                    ReadingKey::Volts
                }
                v if (100.0..=160.0).contains(&v) => ReadingKey::PressurePsi,
                _ => return None,
            }
        }
    };
    Some((key, value))
}
