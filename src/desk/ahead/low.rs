//! A low that is told in few words, or mends the one before it: "low -8", "no wait low 18".

use chrono::{DateTime, TimeDelta, Utc};

use super::super::Desk;
use crate::fleet::{CrewMember, Role};

/// A low is mended within this long of its being told.
const MENDED: TimeDelta = TimeDelta::minutes(90);

/// Returns the whole sentence that a dispatcher's word about a low stands for: "low -8", and after one that was told a
/// moment ago "no wait low 18" and "sorry, -18". None where it is no such word.
pub(in super::super) fn spelled_out(
    desk: &Desk,
    member: &CrewMember,
    text: &str,
    at: DateTime<Utc>,
) -> Option<String> {
    if member.role != Role::Dispatcher {
        return None;
    }
    let phrases = desk.phrases;
    let mended = phrases.after("mend", "opens", text);
    let rest = mended.unwrap_or(text);
    let told = phrases.after("weather", "low", rest);
    let told = told.or_else(|| rest.strip_prefix("low ")); // a minus right behind it stays
    let last = desk.book.ahead().weather_of(&member.id);
    let last = last.filter(|last| !last.air);
    let lately = last.is_some_and(|last| at >= last.at && at - last.at <= MENDED);
    let newest = |at: DateTime<Utc>| {
        let mut sent = desk.book.sent(&member.id).iter();
        !sent.any(|sent| sent.at > at && !sent.units.is_empty())
    };
    let degrees = match (told, mended) {
        (Some(told), _) => told,
        // a bare number mends the low where that was the last thing told
        (None, Some(mended)) if lately && last.is_some_and(|last| newest(last.at)) => mended,
        _ => return None,
    };
    let tonight = |word: &&str| TONIGHT_WORDS.contains(&word.to_lowercase().as_str());
    let words: Vec<&str> = degrees.split_whitespace().collect();
    // the reader knows it by itself
    if mended.is_none() && words.iter().any(tonight) || text.contains("noche") {
        return None;
    }
    let bare: Vec<&str> = words.into_iter().filter(|word| !tonight(word)).collect();
    let bare = bare.join(" ");
    is_degrees(&bare).then(|| format!("low tonight {bare}"))
}

/// Words by which a low is of the night to come.
const TONIGHT_WORDS: &[&str] = &["tonight", "tonite", "overnight"];

/// Tells whether words are a temperature and nothing else: "-8", "18F", "minus 14 tonight".
fn is_degrees(words: &str) -> bool {
    const BESIDE: &[&str] = &[
        "minus", "menos", "°f", "°c", "tonight", "tonite", "f", "c", "degrees", "grados", "about",
        "esta", "noche", "now",
    ];
    let folded = words.to_lowercase();
    let mut numbers = 0;
    let known = folded.split_whitespace().all(|word| {
        let word = word.trim_end_matches(['.', ',', '!']);
        let digits = word.trim_end_matches(['°', 'º', 'f', 'c']);
        let is_number = digits.parse::<f64>().is_ok_and(|value| value.abs() < 130.0);
        numbers += usize::from(is_number);
        is_number || BESIDE.contains(&word)
    });
    known && numbers == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_temperature_is_told_alone_or_it_is_none() {
        for words in ["-8", "18F", "minus 14 tonight", "12 °f", "menos 5"] {
            assert!(is_degrees(words), "{words}");
        }
        for words in ["", "flow on 12", "50 psi", "12 14", "tank", "300"] {
            assert!(!is_degrees(words), "{words}");
        }
    }
}
