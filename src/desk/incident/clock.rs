//! When an incident happened, by the words it is told in.

use chrono::{DateTime, Days, NaiveDate, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use crate::desk::phrases::Phrases;
use crate::desk::when;

/// Finds when something happened: a clock time with a colon or half of the day, with "yesterday" or a date before it, or
/// one of those alone.
pub(super) fn happened(words: &str, written: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let lower = when::with_halves_joined(words);
    let says = |list| Phrases::built_in().holds("clock", list, words);
    let clock = when::clock_in(words).filter(|_| lower.contains(':') || halved(&lower));
    let date = words.split_whitespace().find_map(|word| {
        word.trim_matches(|c: char| !c.is_ascii_digit())
            .parse::<NaiveDate>()
            .ok()
    });
    let before = says("yesterday");
    if date.is_none() && !before {
        let clock = clock?;
        let told = when::instant(&clock, written, zone);
        let later = NaiveTime::parse_from_str(&clock, "%H:%M").ok()? + TimeDelta::hours(12);
        let later = when::instant(&later.format("%H:%M").to_string(), written, zone);
        // of two that are past, the later one
        return match is_either_half(words) {
            true => told.into_iter().chain(later).max(),
            false => told,
        };
    }
    let day = match date {
        Some(date) => date,
        None => written
            .with_timezone(&zone)
            .date_naive()
            .checked_sub_days(Days::new(1))?,
    };
    let time = match clock {
        Some(clock) => NaiveTime::parse_from_str(&clock, "%H:%M").ok()?,
        None => NaiveTime::from_hms_opt(12, 0, 0)?,
    };
    let at = zone.from_local_datetime(&day.and_time(time)).earliest()?;
    Some(at.with_timezone(&Utc)).filter(|at| *at <= written)
}

/// Tells whether the clock time in a text may be of either half of the day: `4:30`, and not `04:30`, `16:30` or `4:30pm`.
pub(super) fn is_either_half(words: &str) -> bool {
    let halved = halved(&when::with_halves_joined(words));
    let open = words.split_whitespace().any(|word| {
        let hour = word
            .split_once(':')
            .and_then(|(hour, _)| hour.parse::<u32>().ok());
        !word.starts_with('0') && hour.is_some_and(|hour| (1..12).contains(&hour))
    });
    open && !halved
}

/// Tells whether a text is a time and nothing else: `4:30pm`, `around 16:30`, `ayer a las 18:40`.
pub(super) fn is_bare_clock(words: &str) -> bool {
    let beside = |word: &str| Phrases::built_in().is("clock", "beside", word);
    when::clock_in(words).is_some()
        && when::with_halves_joined(words)
            .split_whitespace()
            .all(|word| beside(word) || word.starts_with(|c: char| c.is_ascii_digit()))
}

/// Tells whether a number runs on into its half of the day: `7pm`.
fn halved(text: &str) -> bool {
    text.split_whitespace().any(|word| {
        let word = word.trim_end_matches(['.', ',', '!']);
        let digits = when::without_half(word).map(|(digits, _)| digits);
        digits.is_some_and(|digits| digits.starts_with(|c: char| c.is_ascii_digit()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_time_of_an_incident_is_found_in_its_words() {
        let zone = Tz::America__Denver;
        let written = "2027-01-16T18:00:00Z".parse().unwrap(); // 11:00 local
        let at = |words: &str| happened(words, written, zone).map(|at| at.to_rfc3339());
        let day = |day: u32, hour: u32| Some(format!("2027-01-{day}T{hour:02}:40:00+00:00"));
        assert_eq!(at("man slipped at 9:40"), day(16, 16));
        // at 11:00, 10:40 is this morning's, and 12:40 and 1:40 are last night's
        assert_eq!(at("around 10:40"), day(16, 17));
        assert_eq!(at("1:40 on the ice"), day(16, 8));
        assert!(
            is_bare_clock("4:30pm")
                && is_bare_clock("around 16:30")
                && !is_bare_clock("4 of them at 16:30 there")
        );
        assert_eq!(
            at("ayer a las 18:40 se cayó un señor").as_deref(),
            Some("2027-01-16T01:40:00+00:00")
        );
        assert_eq!(at("2027-01-14 13:40 he fell"), day(14, 20));
        assert_eq!(
            at("yesterday").as_deref(),
            Some("2027-01-15T19:00:00+00:00")
        );
        assert_eq!(at("9:40am on the step"), day(16, 16));
        for words in [
            "tank took 1930 gallons",
            "he fell",
            "12.5 turns",
            "2027-02-01",
            "99:99",
        ] {
            assert_eq!(at(words), None, "{words}");
        }
    }
}
