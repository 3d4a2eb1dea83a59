//! Gallons as a message tells them, for every reader that asks for them: "380 gal", "1,200", "430gallons", "1500 L".

use super::phrases::plain;
use crate::words;

/// More than a tanker hauls is a slip, and less than one gallon is none.
const PLAUSIBLE: std::ops::Range<f64> = 1.0..10_000.0;

/// A number that may be of gallons.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Amount {
    pub gal: f64,
    /// Whether a measure of what a tank holds stands behind it.
    pub measured: bool,
    /// The number as it was typed, without its measure and the comma of its thousands.
    pub number: String,
    /// Which word it is, and which follows it and its measure.
    pub at: usize,
    pub behind: usize,
}

/// Returns a text without the commas that part thousands: "1,200" is one number, "300, 120" and "12,5" are two.
pub(super) fn thousands_joined(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let digit = |at: usize| chars.get(at).is_some_and(char::is_ascii_digit);
    let parts = |at: usize| {
        let before = (1..=3).take_while(|gap| at >= *gap && digit(at - gap));
        let long = at >= 4 && digit(at - 4);
        let three = (1..=3).all(|gap| digit(at + gap)) && !digit(at + 4);
        chars[at] == ',' && before.count() > 0 && !long && three
    };
    let kept = (0..chars.len()).filter(|at| !parts(*at));
    kept.map(|at| chars[at]).collect()
}

/// Cuts a text into words, in lower case, each without the signs around it.
pub(super) fn words_of(text: &str) -> Vec<String> {
    let joined = thousands_joined(&text.to_lowercase());
    let apart = |c: char| c.is_whitespace() || ",;:()".contains(c);
    let bare = |word: &str| word.trim_matches(['.', '!', '?']).to_owned();
    let words = joined.split(apart).map(bare);
    words.filter(|word| !word.is_empty()).collect()
}

/// Reads the number that a word is, with its measure glued to it or behind it; none where it is of something else.
pub(super) fn amount_at(words: &[String], at: usize) -> Option<Amount> {
    let word = words.get(at)?;
    let end = word.find(|c: char| !(c.is_ascii_digit() || c == '.'));
    let (number, glued) = word.split_at(end.unwrap_or(word.len()));
    let told: f64 = number.parse().ok()?;
    let of = |measure: &str| words::gallons_in(&plain(measure));
    let (each, behind) = match glued {
        "" => match words.get(at + 1).and_then(|next| of(next)) {
            Some(each) => (Some(each), at + 2),
            None => (None, at + 1),
        },
        glued => (Some(of(glued)?), at + 1),
    };
    let gal = match each {
        Some(each) if each < 1.0 => (told * each).round(),
        _ => told,
    };
    PLAUSIBLE.contains(&gal).then(|| Amount {
        gal,
        measured: each.is_some(),
        number: number.to_owned(),
        at,
        behind,
    })
}

/// Finds every number of a text that may be of gallons.
pub(super) fn amounts(words: &[String]) -> Vec<Amount> {
    let read = |at| amount_at(words, at);
    (0..words.len()).filter_map(read).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gallons_are_read_in_every_spelling() {
        for (text, gal, measured) in [
            ("380", 380.0, false),
            ("1,200", 1200.0, false),
            ("1,000 gal.", 1000.0, true),
            ("430gallons", 430.0, true),
            ("430 gals", 430.0, true),
            ("382.5 gl", 382.5, true),
            ("380 Galones", 380.0, true),
            ("1500 L", 396.0, true),
            ("1,500 litros!", 396.0, true),
        ] {
            let found = amounts(&words_of(text));
            let told: Vec<_> = found.iter().map(|it| (it.gal, it.measured)).collect();
            assert_eq!(told, [(gal, measured)], "{text}");
        }
        for text in [
            "20min",
            "7pm",
            "12,380 gal",
            "0 gal",
            "a few gallons",
            "1/2",
        ] {
            assert_eq!(amounts(&words_of(text)), [], "{text}");
        }
    }

    #[test]
    fn only_the_comma_of_thousands_joins_numbers() {
        for (text, joined) in [
            ("1,200 gal", "1200 gal"),
            ("300, 120", "300, 120"),
            ("10,12", "10,12"),
            ("12,380", "12380"),
            ("12,3800", "12,3800"),
            ("1234,567", "1234,567"),
        ] {
            assert_eq!(thousands_joined(text), joined, "{text}");
        }
    }
}
