//! How cold it is going to be, told in words of a forecast: "looks like -20 by morning", "they are saying -18". What is to
//! come is a low, and no temperature read now.

use super::normal::plain;
use super::senses::{Sense, Senses, SensesOf};
use crate::heard::UnitName;
use crate::quantity::{TemperatureScale, f_from_c};

/// The temperatures that weather has, °F.
const WEATHER: std::ops::RangeInclusive<f64> = -60.0..=130.0;

/// Reads the low that a text foretells, °F, its numbers in digits; `named` are its trailers, whose numbers are no degrees.
pub(super) fn low(
    text: &str,
    named: &[UnitName],
    scale: TemperatureScale,
    senses: &Senses,
) -> Option<f64> {
    let words = words_of(text);
    let opened = words
        .iter()
        .map(|word| senses.opened_by(word))
        .fold(SensesOf::default(), SensesOf::and);
    let words = in_digits(words, senses);
    let says = |sense| opened.has(sense) && holds(&words, sense, senses);
    let night = says(Sense::TheNight) || says(Sense::ByMorning);
    let foretold = says(Sense::ByMorning) || says(Sense::Foretells);
    let falls = says(Sense::FallsTo);
    let forecast = says(Sense::Forecasters);
    // "ten below tonight"
    let under = night && (0..words.len()).any(|at| is_under(&words[at..], senses));
    let certain = forecast || foretold && night || falls && night || under;
    if !certain || says(Sense::FeelsLike) {
        return None;
    }
    let is_below = |at: usize| {
        let next = words.get(at + 1);
        next.is_some_and(|next| senses.has(next, Sense::UnderZero))
    };
    // "going down to 5 tonight": where it goes, though the number could be a trailer's
    if falls
        && night
        && let Some(at) = behind(&words, Sense::FallsTo, senses)
        && let Some(told) = words
            .get(at)
            .and_then(|word| degrees(word, is_below(at), scale))
    {
        return Some(told.f);
    }
    // "ten below zero": the zero is no second number
    let zero = |at: usize| at > 0 && senses.has(&words[at - 1], Sense::UnderZero);
    let all = words.iter().enumerate().filter(|(at, _)| !zero(*at));
    let mut degrees = all.filter_map(|(at, word)| degrees(word, is_below(at), scale));
    let is_a_trailer = |d: &Degrees| !d.signed && named.iter().any(|n| n.as_str() == d.typed);
    let told = degrees.clone().find(|d| !is_a_trailer(d))?;
    let one = degrees.all(|d| is_a_trailer(&d) || d == told);
    (one && (told.signed || (falls || forecast) && night)).then_some(told.f)
}

/// Tells whether the number that was taken for a trailer's is the degrees of a low: "ten below tonight".
pub(super) fn are_degrees(text: &str, name: &UnitName, low: f64, senses: &Senses) -> bool {
    let number = name.as_str().parse();
    let words = in_digits(words_of(text), senses);
    let typed = |at: &usize| words[*at] == name.as_str();
    let mut named = (0..words.len()).filter(typed);
    number == Ok(low) || number == Ok(-low) && named.all(|at| is_under(&words[at..], senses))
}

/// Tells whether a night is said to be cold in words that name no degrees: "single digits tonight", "low tonight below
/// zero".
pub(super) fn without_degrees(text: &str, named: &[UnitName], senses: &Senses) -> bool {
    let words = words_of(text);
    let number = |word: &String| {
        word.contains(|c: char| c.is_ascii_digit())
            && !named
                .iter()
                .any(|name| name.as_str().eq_ignore_ascii_case(word))
    };
    let night = holds(&words, Sense::TheNight, senses) || holds(&words, Sense::ByMorning, senses);
    night && holds(&words, Sense::NoNumberOfDegrees, senses) && !words.iter().any(number)
}

fn words_of(text: &str) -> Vec<String> {
    text.split(|c: char| c.is_whitespace() || ",;!?".contains(c))
        .map(|word| plain(word.trim_end_matches('.')).replace(['\'', '’'], ""))
        .filter(|word| !word.is_empty())
        .collect()
}

/// Tells whether words open with a number that is below zero, "10 below tonight"; "12 below half" tells of a tank.
fn is_under(words: &[String], senses: &Senses) -> bool {
    let [number, under, rest @ ..] = words else {
        return false;
    };
    let of_a_night = |word: &String| {
        let opened = senses.opened_by(word);
        word == "0" || opened.has(Sense::TheNight) || opened.has(Sense::ByMorning)
    };
    number.parse::<f64>().is_ok()
        && senses.has(under, Sense::UnderZero)
        && rest.first().is_none_or(of_a_night)
}

/// Ties a sign that stands apart to its number: "minus 15".
fn in_digits(words: Vec<String>, senses: &Senses) -> Vec<String> {
    let mut out: Vec<String> = Vec::with_capacity(words.len());
    for word in words {
        let number = word.starts_with(|c: char| c.is_ascii_digit());
        match out.last() {
            Some(sign) if number && senses.has(sign, Sense::MinusSign) => {
                out.pop();
                out.push(format!("-{word}"));
            }
            _ => out.push(word),
        }
    }
    out
}

/// A number that may be degrees.
#[derive(Debug, Clone, PartialEq)]
struct Degrees {
    typed: String,
    f: f64,
    /// It has a sign, a measure, or "below" behind it: nothing else is told so.
    signed: bool,
}

fn degrees(word: &str, under: bool, scale: TemperatureScale) -> Option<Degrees> {
    let bare = word.trim_end_matches(['°', 'º', 'f', 'c']);
    let value: f64 = bare
        .parse()
        .ok()
        .filter(|value: &f64| value.abs() < 130.0)?;
    let value = if under { -value.abs() } else { value };
    let celsius = word.ends_with('c') || scale == TemperatureScale::C && !word.ends_with('f');
    let f = if celsius { f_from_c(value) } else { value };
    WEATHER.contains(&f).then(|| Degrees {
        typed: bare.to_owned(),
        f,
        signed: value < 0.0 || bare.len() < word.len(),
    })
}

/// Tells whether the words hold a phrase of `sense`.
fn holds(words: &[String], sense: Sense, senses: &Senses) -> bool {
    behind(words, sense, senses).is_some()
}

/// Returns the word behind a phrase of `sense`.
fn behind(words: &[String], sense: Sense, senses: &Senses) -> Option<usize> {
    senses.of(sense).iter().find_map(|phrase| {
        let length = phrase.split(' ').count();
        let same = |window: &[String]| phrase.split(' ').eq(window.iter().map(String::as_str));
        Some(words.windows(length).position(same)? + length)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::{Entry, ReadingKey};

    #[test]
    fn what_is_foretold_is_a_low_and_what_is_read_is_none() {
        let reader = crate::words::Reader::new();
        let low = |text: &str| {
            let entries = reader.hear(text, TemperatureScale::F).entries;
            let low = |entry: &Entry| entry.readings.value(ReadingKey::LowF);
            entries.iter().find_map(low)
        };
        for (text, wanted) in [
            ("looks like -20 by morning", -20.0),
            ("they are saying -18", -18.0),
            ("low tonight gonna be like -12", -12.0),
            ("supposed to hit -15 tonight", -15.0),
            ("its gonna get down to -18 tonight", -18.0),
            ("12 going down to 5 tonight", 5.0),
            ("forecast says 10 below", -10.0),
            ("supposed to hit minus 15 tonight", -15.0),
            ("its gonna drop to zero by midnight", 0.0),
            ("ten below tonight", -10.0),
            ("radio says fifteen below by morning", -15.0),
            ("dicen que baja a menos quince en la noche", -15.0),
            ("ten below zero tonight", -10.0),
            ("its going to be twenty five below tonight", -25.0),
            ("gonna hit minus thirty two by morning", -32.0),
            ("va a bajar a veintidós bajo cero en la noche", -22.0),
            ("diez bajo cero en la noche", -10.0),
            ("dicen que baja a -18 en la noche", -18.0),
            ("va a bajar a 5 en la madrugada", 5.0),
            ("el pronóstico dice -18", -18.0),
        ] {
            assert_eq!(low(text), Some(wanted), "{text}");
        }
        for text in [
            "it's -18 at 12",
            "thermometer says -18",
            "looks like -20 on the gauge",
            "feels like -30 tonight",
            "ten guests tonight",
            "12 below half tonight",
            "truck supposed to hit 12 tonight",
            "expecting 100 tonight",
            "marca -18 aquí",
        ] {
            assert_eq!(low(text), None, "{text}");
        }
    }
}
