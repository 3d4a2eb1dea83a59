//! The days that a question asks after: "next saturday", "jobs next week", "anything on monday", "the 24th", and what one
//! trailer does on them: "whats 23 doing tomorrow".

use chrono::{DateTime, Datelike, Days, NaiveDate, Utc, Weekday};
use chrono_tz::Tz;

use super::phrases::{Phrases, plain};
use super::settle;
use super::when;
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// Returns the days that words ask after, which name them and say no more than that they are asked after: "feb 6", "what
/// about sunday", "jobs", "next week".
pub(super) fn asked(
    phrases: &Phrases,
    text: &str,
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<Vec<NaiveDate>> {
    let today = now.with_timezone(&zone).date_naive();
    let next = phrases.holds("day-ahead", "next", text);
    let said = phrases.without("day-ahead", "next", text);
    for (list, first, last) in [
        ("weekend", Weekday::Sat, Weekday::Sun),
        ("week", Weekday::Mon, Weekday::Sun),
    ] {
        if phrases.holds("day-ahead", list, &said) {
            let alone = rest(phrases, &phrases.without("day-ahead", list, &said)).is_empty();
            let weeks = u64::from(next);
            let days = between(in_week(today, weeks, first)?, in_week(today, weeks, last)?);
            // of this week the days that are left
            return alone.then(|| days.filter(|day| *day >= today).collect());
        }
    }
    let asks = phrases.holds("day-ahead", "jobs", text);
    let rest = rest(phrases, &said);
    let day = match rest.as_slice() {
        [] => asks.then_some(today),
        // "digest today" asks how all stand now
        [day] if phrases.is("day-ahead", "today", day) => {
            (asks || *day == plain(text)).then_some(today)
        }
        [day] if next => {
            let day = when::day_ahead(day, now, zone)?;
            in_week(today, 1, day.weekday())
        }
        [day] => {
            when::day_ahead(day, now, zone).or_else(|| of_the_month(phrases, text, day, today))
        }
        words => {
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            when::date(&words, today)
        }
    };
    day.map(|day| vec![day])
}

/// Returns the trailer whose days are asked after, and the days.
pub(super) fn of_a_unit(
    phrases: &Phrases,
    fleet: &Fleet,
    text: &str,
    now: DateTime<Utc>,
) -> Option<(UnitName, Vec<NaiveDate>)> {
    if !phrases.holds("day-ahead", "of-a-unit", text) {
        return None;
    }
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').collect();
    (0..words.len()).find_map(|at| {
        let unit = settle::known(fleet, &UnitName::new(words[at]))?;
        let article = |word: &&str| phrases.is("mend", "trailer", word);
        let before = &words[..at];
        let before = match before.last().filter(|word| article(word)) {
            Some(_) => &before[..at - 1],
            None => before,
        };
        let others = [before, &words[at + 1..]].concat().join(" ");
        let days = asked(phrases, &others, now, fleet.time_zone)?;
        Some((unit.clone(), days))
    })
}

/// Returns the words of a question that may name a day.
fn rest(phrases: &Phrases, text: &str) -> Vec<String> {
    let folded = plain(text);
    let words = folded.split(' ').filter(|word| !word.is_empty());
    words
        .filter(|word| !phrases.is("day-ahead", "beside", word))
        .filter(|word| !phrases.is("day-ahead", "jobs", word))
        .map(str::to_owned)
        .collect()
}

/// Returns a weekday of the week, from Monday, that is so many weeks after this one.
fn in_week(today: NaiveDate, weeks: u64, day: Weekday) -> Option<NaiveDate> {
    let monday =
        today.checked_sub_days(Days::new(today.weekday().num_days_from_monday().into()))?;
    monday.checked_add_days(Days::new(weeks * 7 + u64::from(day.num_days_from_monday())))
}

fn between(first: NaiveDate, last: NaiveDate) -> impl Iterator<Item = NaiveDate> {
    first.iter_days().take_while(move |day| *day <= last)
}

/// Reads "the 24th" and "el día 24": the next day of that number.
fn of_the_month(phrases: &Phrases, text: &str, word: &str, today: NaiveDate) -> Option<NaiveDate> {
    let digits = word.trim_end_matches(|c: char| c.is_alphabetic());
    let day: u32 = digits.parse().ok()?;
    let ordinal = ["st", "nd", "rd", "th"].contains(&&word[digits.len()..]);
    let named = word.len() == digits.len() && phrases.holds("day-ahead", "day-number", text);
    let mut months = (0..12).filter_map(|ahead| {
        let month = today.month0() + ahead;
        NaiveDate::from_ymd_opt(today.year() + (month / 12) as i32, month % 12 + 1, day)
    });
    months.find(|date| (ordinal || named) && *date >= today)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A Saturday.
    const NOW: &str = "2027-01-23T17:10:00Z";

    fn days(text: &str) -> Option<String> {
        let now = NOW.parse().expect("an instant");
        let days = asked(Phrases::built_in(), text, now, Tz::UTC)?;
        let days: Vec<String> = days
            .iter()
            .map(|day| day.format("%d").to_string())
            .collect();
        Some(days.join(" "))
    }

    #[test]
    fn next_is_the_week_after_this_one() {
        for (text, wanted) in [
            ("saturday", Some("23")),
            ("next saturday", Some("30")),
            ("next sunday", Some("31")),
            ("what about sunday", Some("24")),
            ("el próximo sábado", Some("30")),
            ("el sabado que viene", Some("30")),
            ("jobs next week", Some("25 26 27 28 29 30 31")),
            (
                "trabajos de la proxima semana",
                Some("25 26 27 28 29 30 31"),
            ),
            ("this week", Some("23 24")),
            ("what do we have next weekend", Some("30 31")),
            ("que tenemos el fin de semana", Some("23 24")),
            ("anything on monday", Some("25")),
            ("the 24th", Some("24")),
            ("jobs on the 5th", Some("05")),
            ("que hay el dia 24", Some("24")),
            ("feb 14", Some("14")),
            ("jobs", Some("23")),
            ("the 12", None),
            ("12 waste 3/4 next week", None),
        ] {
            assert_eq!(days(text).as_deref(), wanted, "{text}");
        }
    }
}
