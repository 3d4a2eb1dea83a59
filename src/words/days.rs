//! The days that people name: `grammar/words/days.toml`.

use std::sync::LazyLock;

use rustc_hash::FxHashMap;
use serde::Deserialize;

const DAYS: &str = include_str!("../../grammar/words/days.toml");

/// A day by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NamedDay {
    /// A day of the week, counted from Monday.
    Weekday(u8),
    /// The day after the one spoken on.
    Tomorrow,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    /// From Monday on.
    weekdays: [Vec<String>; 7],
    tomorrow: Vec<String>,
    /// From January on.
    months: [Vec<String>; 12],
}

/// Returns the month that a word names, from 1, in small letters and without accents.
pub fn named_month(word: &str) -> Option<u32> {
    static NAMES: LazyLock<FxHashMap<Box<str>, u32>> = LazyLock::new(|| {
        let file: File = toml::from_str(DAYS).expect("the names of months are read by a test");
        let year = (1..).zip(file.months);
        year.flat_map(|(month, names)| names.into_iter().map(move |name| (name.into(), month)))
            .collect()
    });
    NAMES.get(word).copied()
}

/// Returns the day that a word names, in small letters and without accents.
pub fn named_day(word: &str) -> Option<NamedDay> {
    static NAMES: LazyLock<FxHashMap<Box<str>, NamedDay>> = LazyLock::new(|| {
        let file: File = toml::from_str(DAYS).expect("the names of days are read by a test");
        let week = (0..).zip(file.weekdays).flat_map(|(day, names)| {
            let day = NamedDay::Weekday(day);
            names.into_iter().map(move |name| (name.into(), day))
        });
        let tomorrow = file.tomorrow.into_iter();
        week.chain(tomorrow.map(|name| (name.into(), NamedDay::Tomorrow)))
            .collect()
    });
    NAMES.get(word).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_named_in_both_languages() {
        assert_eq!(named_day("wed"), Some(NamedDay::Weekday(2)));
        assert_eq!(named_day("domingo"), Some(NamedDay::Weekday(6)));
        assert_eq!(named_day("manana"), Some(NamedDay::Tomorrow));
        assert_eq!(named_day("someday"), None);
        assert_eq!(named_month("feb"), Some(2));
        assert_eq!(named_month("diciembre"), Some(12));
        assert_eq!(named_month("sat"), None);
    }
}
