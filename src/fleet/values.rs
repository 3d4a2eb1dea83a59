//! The kinds of value that a fleet's keys take: each read, checked, and refused with what was expected.

use std::ops::RangeInclusive;

use chrono::{NaiveDate, NaiveDateTime, NaiveTime};
use toml::Spanned;
use toml::de::DeValue;

use super::problem::nearest;
use super::section::{Section, did_you_mean};
use super::sheet::Spot;

impl<'s, 't> Section<'s, 't> {
    /// Reads a number within a range, in the unit of measure that `unit` names.
    pub(super) fn number(
        &mut self,
        key: &'static str,
        range: RangeInclusive<f64>,
        unit: &str,
    ) -> Option<f64> {
        let value = self.value(key)?;
        let expected = between(&range, unit);
        match as_number(value.get_ref()) {
            Some(number) if range.contains(&number) => Some(number),
            Some(_) => self.refuse(key, value, expected, None),
            None => {
                let text = value.get_ref().as_str();
                let is_number = text.is_some_and(|text| text.trim().parse::<f64>().is_ok());
                let hint = is_number.then(|| "leave out the quotes".into());
                self.refuse(key, value, format!("a number, {expected}"), hint)
            }
        }
    }

    /// Reads a whole number within a range.
    pub(super) fn whole(
        &mut self,
        key: &'static str,
        range: RangeInclusive<i64>,
        unit: &str,
    ) -> Option<i64> {
        let value = self.value(key)?;
        let unit = if unit.is_empty() {
            String::new()
        } else {
            format!(" {unit}")
        };
        let expected = format!(
            "a whole number from {} to {}{unit}",
            range.start(),
            range.end()
        );
        match value.get_ref() {
            DeValue::Integer(digits) => {
                match i64::from_str_radix(digits.as_str(), digits.radix()) {
                    Ok(number) if range.contains(&number) => Some(number),
                    _ => self.refuse(key, value, expected, None),
                }
            }
            _ => self.refuse(key, value, expected, None),
        }
    }

    /// Reads a piece of text that is not blank.
    pub(super) fn text(&mut self, key: &'static str) -> Option<&'s str> {
        let value = self.value(key)?;
        match value.get_ref() {
            DeValue::String(text) if !text.trim().is_empty() => Some(text.trim()),
            DeValue::String(_) => self.refuse(key, value, "text", None),
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.refuse(key, value, "text", Some("put it in quotes".into()))
            }
            _ => self.refuse(key, value, "text", None),
        }
    }

    /// Reads an id: text without spaces, that a message can name.
    pub(super) fn id(&mut self, key: &'static str) -> Option<&'s str> {
        let text = self.text(key)?;
        let fits = text
            .chars()
            .all(|c| c.is_alphanumeric() || "-_.".contains(c));
        if fits && text.chars().count() <= 40 {
            return Some(text);
        }
        self.wrong(
            key,
            "an id of letters, digits and dashes, at most 40 of them",
            None,
        );
        None
    }

    /// Reads `true` or `false`.
    pub(super) fn truth(&mut self, key: &'static str) -> Option<bool> {
        let value = self.value(key)?;
        match value.get_ref() {
            DeValue::Boolean(truth) => Some(*truth),
            _ => self.refuse(key, value, "true or false", None),
        }
    }

    /// Reads one of a few words.
    pub(super) fn choice<T: Copy>(
        &mut self,
        key: &'static str,
        choices: &[(&str, T)],
    ) -> Option<T> {
        let value = self.value(key)?;
        let words = || choices.iter().map(|(word, _)| *word);
        if let DeValue::String(text) = value.get_ref() {
            if let Some((_, choice)) = choices.iter().find(|(word, _)| *word == text) {
                return Some(*choice);
            }
            let hint = nearest(text, words()).map(did_you_mean);
            return self.refuse(key, value, one_of(words()), hint);
        }
        self.refuse(key, value, one_of(words()), None)
    }

    /// Reads a local date and time.
    pub(super) fn moment(&mut self, key: &'static str) -> Option<NaiveDateTime> {
        const EXPECTED: &str = "a local date and time from 2000 to 2100, as in 2027-06-05T14:00:00";
        let value = self.value(key)?;
        match value.get_ref() {
            DeValue::Datetime(stamp) => match (stamp.date, stamp.time, stamp.offset) {
                (Some(_), Some(_), Some(_)) => {
                    let hint = Some("leave out the offset: it is the site's own time".into());
                    self.refuse(key, value, EXPECTED, hint)
                }
                (Some(date), Some(time), None) => {
                    let date = NaiveDate::from_ymd_opt(
                        date.year.into(),
                        date.month.into(),
                        date.day.into(),
                    )
                    .filter(|_| (2000..=2100).contains(&date.year));
                    match (date, of_day(&time)) {
                        (Some(date), Some(time)) => Some(date.and_time(time)),
                        _ => self.refuse(key, value, EXPECTED, None),
                    }
                }
                _ => self.refuse(
                    key,
                    value,
                    EXPECTED,
                    Some("give both the day and the time".into()),
                ),
            },
            DeValue::String(_) => {
                self.refuse(key, value, EXPECTED, Some("leave out the quotes".into()))
            }
            _ => self.refuse(key, value, EXPECTED, None),
        }
    }

    /// Reads two times of day: `"06:00-17:00"`; `24:00` is midnight.
    pub(super) fn hours(&mut self, key: &'static str) -> Option<(NaiveTime, NaiveTime)> {
        let value = self.value(key)?;
        if let DeValue::String(text) = value.get_ref() {
            let ends = text.split_once(['-', '–', '—']);
            if let Some((Some(from), Some(to))) = ends.map(|(a, b)| (clock(a), clock(b))) {
                return Some((from, to));
            }
        }
        self.refuse(key, value, "two times of day, as in \"06:00-17:00\"", None)
    }

    /// Reads one time of day or a list of them, in order.
    pub(super) fn times(&mut self, key: &'static str) -> Option<Vec<NaiveTime>> {
        let value = self.value(key)?;
        let single = std::slice::from_ref(value);
        let items: &[Spanned<DeValue<'t>>] = match value.get_ref() {
            DeValue::Array(items) => items,
            _ => single,
        };
        let mut times = Vec::new();
        for item in items {
            let time = match item.get_ref() {
                DeValue::String(text) => clock(text),
                DeValue::Datetime(stamp) if stamp.date.is_none() => {
                    stamp.time.as_ref().and_then(of_day)
                }
                _ => None,
            };
            match time {
                Some(time) => times.push(time),
                None => self.wrong_value(
                    key,
                    item,
                    "times of day, as in [\"06:30\", \"18:00\"]",
                    None,
                ),
            }
        }
        times.sort_unstable();
        times.dedup();
        Some(times)
    }

    /// Reads a list of texts, each with its spot.
    pub(super) fn texts(&mut self, key: &'static str) -> Vec<(&'s str, Spot)> {
        let Some(value) = self.value(key) else {
            return Vec::new();
        };
        let DeValue::Array(items) = value.get_ref() else {
            self.wrong_value(key, value, "a list of texts, as in [\"12\", \"14\"]", None);
            return Vec::new();
        };
        let mut texts = Vec::new();
        for item in items.iter() {
            match item.get_ref() {
                DeValue::String(text) if !text.trim().is_empty() => {
                    texts.push((text.trim(), Spot::at(item.span().start)));
                }
                DeValue::Integer(_) => {
                    self.wrong_value(key, item, "text", Some("put it in quotes".into()));
                }
                _ => self.wrong_value(key, item, "text", None),
            }
        }
        texts
    }

    /// Reads a pair of numbers.
    pub(super) fn pair(
        &mut self,
        key: &'static str,
        ranges: [RangeInclusive<f64>; 2],
        expected: &str,
    ) -> Option<(f64, f64)> {
        let value = self.value(key)?;
        if let DeValue::Array(items) = value.get_ref()
            && items.len() == 2
            && let (Some(a), Some(b)) =
                (as_number(items[0].get_ref()), as_number(items[1].get_ref()))
            && ranges[0].contains(&a)
            && ranges[1].contains(&b)
        {
            return Some((a, b));
        }
        self.refuse(key, value, expected, None)
    }
}

/// Reads a time of day as people write it: `06:00`, `6:00`, `24:00`.
fn clock(text: &str) -> Option<NaiveTime> {
    let (hour, minute) = text.trim().split_once(':')?;
    let digits = |text: &str, most: usize| {
        let fits = (1..=most).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
        fits.then(|| text.parse::<u32>().ok()).flatten()
    };
    let (hour, minute) = (
        digits(hour, 2)?,
        digits(minute, 2).filter(|_| minute.len() == 2)?,
    );
    if (hour, minute) == (24, 0) {
        return Some(NaiveTime::MIN);
    }
    NaiveTime::from_hms_opt(hour, minute, 0)
}

fn of_day(time: &toml::value::Time) -> Option<NaiveTime> {
    let second = time.second.unwrap_or(0);
    NaiveTime::from_hms_opt(time.hour.into(), time.minute.into(), second.into())
}

fn as_number(value: &DeValue<'_>) -> Option<f64> {
    match value {
        DeValue::Integer(digits) => i128::from_str_radix(digits.as_str(), digits.radix())
            .ok()
            .map(|whole| whole as f64),
        DeValue::Float(digits) => digits.as_str().parse().ok(),
        _ => None,
    }
}

fn between(range: &RangeInclusive<f64>, unit: &str) -> String {
    let unit = if unit.is_empty() {
        String::new()
    } else {
        format!(" {unit}")
    };
    format!("{} to {}{unit}", range.start(), range.end())
}

fn one_of<'a>(words: impl Iterator<Item = &'a str>) -> String {
    format!(
        "one of {}",
        words
            .map(|word| format!("\"{word}\""))
            .collect::<Vec<_>>()
            .join(", ")
    )
}
