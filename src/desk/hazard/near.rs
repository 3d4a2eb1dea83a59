//! How near something is told to be.

use crate::desk::phrases::Phrases;
use crate::words;

/// Reads the one distance that a text tells, in feet.
pub(super) fn feet_in(text: &str) -> Option<f64> {
    let folded = text.to_lowercase().replace(['\'', '’'], " ft ");
    let mut words = folded
        .split(|c: char| !(c.is_alphanumeric() || c == '.'))
        .filter(|word| !word.is_empty())
        .peekable();
    while let Some(word) = words.next() {
        let digits = word.trim_end_matches(char::is_alphabetic);
        let Ok(number) = digits.parse::<f64>() else {
            continue;
        };
        let label = match &word[digits.len()..] {
            "" => words.peek().copied().unwrap_or_default(),
            label => label,
        };
        let yards = Phrases::built_in().is("measure", "yards", label);
        let one = if yards {
            Some(3.0)
        } else {
            words::feet_in(label)
        };
        if let Some(one) = one {
            return Some(number * one);
        }
    }
    None
}
