//! The trailers and the times in what a message says of trucks, in the order they were typed, and which goes with which.

use chrono::TimeDelta;
use chrono_tz::Tz;

use super::booking::{local, parts, spoken, words_in, zone};
use crate::desk::phrases::Phrases;
use crate::desk::receive::Hearing;
use crate::desk::{settle, when};
use crate::heard::UnitName;
use crate::words::psi_in;

/// A trailer or a time.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Mark {
    Unit(UnitName),
    /// A clock time, `HH:MM`.
    At(String),
    /// "at 8", where 8 is a trailer too.
    Either(UnitName, String),
    /// "truck for 10 8", where 8 is a trailer too: no word tells the hour from the trailer.
    Bare(UnitName, String),
}

/// Finds the trailers and the times in a text, in order; and tells whether no number is left beside them.
pub(super) fn marks(hearing: &Hearing<'_>, text: &str) -> (Vec<Mark>, bool) {
    let spoken = spoken(text);
    let words = words_in(&spoken);
    let line = Line {
        hearing,
        words: &words,
        zone: zone(hearing),
        phrases: hearing.desk.phrases,
    };
    let mut marks = Vec::new();
    let mut whole = true;
    let mut at = 0;
    while at < words.len() {
        // "at 8 not 9"
        let denied = line.is(at.checked_sub(1), "mend", "not");
        let (mark, took) = match denied && digits(words[at]) {
            true => (None, 1),
            false => line.mark(at, matches!(marks.last(), Some(Mark::Unit(_)))),
        };
        whole &= denied || mark.is_some() || !words[at].contains(|c: char| c.is_ascii_digit());
        marks.extend(mark);
        at += took.max(1);
    }
    (marks, whole)
}

/// The words of a text about trucks.
struct Line<'a, 'h> {
    hearing: &'a Hearing<'h>,
    words: &'a [&'a str],
    zone: Tz,
    phrases: &'static Phrases,
}

impl Line<'_, '_> {
    /// Reads the word at a place as a trailer or a time; returns how many words that took. `behind_unit` tells whether a
    /// trailer was the last of these before it.
    fn mark(&self, at: usize, behind_unit: bool) -> (Option<Mark>, usize) {
        let word = self.words[at];
        let (before, next) = (self.word(at.checked_sub(1)), self.word(Some(at + 1)));
        let clock = |clock: String| Some(Mark::At(clock));
        if self.phrases.is("clock", "noon", word) {
            return (clock("12:00".into()), 1);
        }
        if self.phrases.is("clock", "midnight", word) {
            return (clock("00:00".into()), 1);
        }
        if let Some((minutes, took)) = minutes_from_now(self.words, at) {
            return (clock(self.in_minutes(minutes)), took);
        }
        let of_a_task = || self.phrases.is("assign", "numbered", before);
        if MEASURES.contains(&next) || psi_in(next).is_some() || of_a_task() || before == "circuit"
        {
            return (None, 1);
        }
        let ish = self.phrases.each("clock", "behind");
        let stem = ish.filter_map(|end| word.strip_suffix(end)).next();
        let number = stem.unwrap_or(word);
        let marked = stem.is_some()
            || self.phrases.is("truck", "before-an-hour", before)
            || when::is_hour_mark(before)
            || when::is_of_an_hour(next);
        // "truck for 10 7", "10 truck 9"
        let bare = behind_unit && self.follows_a_unit(at);
        let hour = || {
            let (day, of) = (self.day(at), self.part(at));
            when::coming(
                &format!("at {number} {of} {day}"),
                self.hearing.now,
                self.zone,
            )
        };
        match (self.unit(word), number.parse::<u32>()) {
            // "will be at 12 by 8": the place, and then the hour
            (Some(unit), _) if stem.is_none() && self.is_place(at) => (Some(Mark::Unit(unit)), 1),
            (unit, Ok(1..=12)) if marked || bare => {
                let hour = hour().map(|at| local(at, self.zone));
                let mark = match (hour, unit) {
                    (Some(hour), Some(unit)) if marked => Some(Mark::Either(unit, hour)),
                    (Some(hour), Some(unit)) => Some(Mark::Bare(unit, hour)),
                    (hour, _) => hour.and_then(clock),
                };
                (mark, 1)
            }
            // "at 19"; "at 23" may be the trailer
            (unit, Ok(hour @ 13..=23)) if when::is_hour_mark(before) && self.is_hour_alone(at) => {
                let hour = format!("{hour}:00");
                let known = unit.filter(|unit| settle::known(&self.hearing.fleet, unit).is_some());
                let mark = match known {
                    Some(unit) => Mark::Either(unit, hour),
                    None => Mark::At(hour),
                };
                (Some(mark), 1)
            }
            (Some(unit), _) if !marked || when::clock_in(word).is_none() => {
                (Some(Mark::Unit(unit)), 1)
            }
            _ => (self.clock(at).and_then(clock), 1),
        }
    }

    /// Tells whether a number stands between "at" and the word before a later hour.
    fn is_place(&self, at: usize) -> bool {
        let behind_at = self.is(at.checked_sub(1), "truck", "before-a-place");
        behind_at && self.is(Some(at + 1), "truck", "deadline") && digits(self.word(Some(at + 2)))
    }

    fn word(&self, at: Option<usize>) -> &str {
        at.and_then(|at| self.words.get(at))
            .copied()
            .unwrap_or_default()
    }

    fn is(&self, at: Option<usize>, topic: &str, list: &str) -> bool {
        self.phrases.is(topic, list, self.word(at))
    }

    fn unit(&self, word: &str) -> Option<UnitName> {
        let name = UnitName::new(word);
        let named = self.hearing.heard.named.contains(&name);
        let known = settle::known(&self.hearing.fleet, &name).cloned();
        known.or_else(|| named.then_some(name))
    }

    /// Tells whether a trailer stands directly before a word, or only a word for the truck between.
    fn follows_a_unit(&self, at: usize) -> bool {
        let is_unit = |at: Option<usize>| self.unit(self.word(at)).is_some();
        let before = at.checked_sub(1);
        is_unit(before) || self.is(before, "truck", "who") && is_unit(at.checked_sub(2))
    }

    /// Reads a clock time at its half of the day, as its own part of the message tells it.
    fn clock(&self, at: usize) -> Option<String> {
        let clock = when::clock_in(self.words[at])?;
        let of = format!("{} {}", self.part(at), self.day(at));
        let comes = when::told(&clock, &of, self.hearing.now, self.zone);
        Some(comes.map_or(clock, |at| local(at, self.zone)))
    }

    /// Tells whether a trailer is named before a number, so that it is its hour.
    fn is_hour_alone(&self, at: usize) -> bool {
        self.words[..at]
            .iter()
            .any(|word| self.unit(word).is_some())
    }

    fn part(&self, at: usize) -> String {
        let (own, parts) = parts(self.words, at);
        parts
            .get(own)
            .map_or_else(String::new, |part| part.join(" "))
    }

    fn day(&self, at: usize) -> String {
        super::booking::day_about(self.words, at)
    }

    fn in_minutes(&self, minutes: i64) -> String {
        local(self.hearing.now + TimeDelta::minutes(minutes), self.zone)
    }
}

fn digits(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit())
}

/// Measures that make a number before them neither a trailer nor an hour.
const MEASURES: &[&str] = &[
    "gal", "gals", "gallons", "galones", "%", "percent", "volts", "v", "amps", "ft", "feet",
    "guests",
];

/// Reads "in 40 min", "en 2 horas", "40 min out": the minutes, and how many words they took.
fn minutes_from_now(words: &[&str], at: usize) -> Option<(i64, usize)> {
    let before = at.checked_sub(1).map_or("", |at| words[at]);
    let digits = words[at].trim_end_matches(|c: char| c.is_alphabetic());
    let count: i64 = digits.parse().ok()?;
    let glued = &words[at][digits.len()..];
    // "he's 20 out", "eta 40": minutes, as a driver says it
    let next = words.get(at + 1).copied().unwrap_or_default();
    let short = matches!(next, "out" | "away") || before == "eta" && !next.starts_with(['m', 'h']);
    if glued.is_empty() && short && (5..=120).contains(&count) {
        return Some((count, 1));
    }
    let (measure, took) = match glued.is_empty() {
        true => (*words.get(at + 1)?, 2),
        false => (glued, 1),
    };
    let factor = match measure {
        "m" | "min" | "mins" | "minutes" | "minutos" => 1,
        "h" | "hr" | "hrs" | "hour" | "hours" | "hora" | "horas" => 60,
        _ => return None,
    };
    let behind = words.get(at + took).copied().unwrap_or_default();
    let ahead =
        ["in", "en", "de", "about", "eta"].contains(&before) || ["out", "away"].contains(&behind);
    (ahead && (1..=720).contains(&(count * factor))).then_some((count * factor, took))
}

/// A trailer with the time of its truck, as far as they are told.
pub(super) type Pair = (Option<UnitName>, Option<String>);

/// Settles what each number is and which trailer gets which time; none where it may go more ways than one.
///
/// "At 8" is the hour or the trailer by what the rest needs: every trailer has a time, and every time a trailer, where both
/// are told at all. Of several ways that all fit, "at 8" is the hour.
pub(super) fn pairs(marks: &[Mark]) -> Option<Vec<Pair>> {
    let open = |mark: &&Mark| matches!(mark, Mark::Either(..) | Mark::Bare(..));
    let count = marks.iter().filter(open).count();
    if count == 0 {
        return paired(marks.to_vec());
    }
    if count > MOST_OPEN {
        return None;
    }
    let bare = marks.iter().any(|mark| matches!(mark, Mark::Bare(..)));
    let ways = (0..1_u32 << count).map(|way| taken(marks, way));
    let hours = |way: &[Mark]| way.iter().filter(|m| matches!(m, Mark::At(_))).count();
    let fits = ways.filter_map(|way| Some((hours(&way), fitting(way, bare)?)));
    let mut fits: Vec<(usize, Vec<Pair>)> = fits.collect();
    // a bare number is no more an hour than a trailer
    if bare && fits.len() > 1 {
        return None;
    }
    fits.sort_by_key(|(hours, _)| std::cmp::Reverse(*hours));
    match fits.as_slice() {
        [(most, _), (next, _), ..] if most == next => None,
        [(_, pairs), ..] => Some(pairs.clone()),
        [] => None,
    }
}

/// The most numbers that may be an hour or a trailer; with more nobody can say.
const MOST_OPEN: usize = 6;

/// Takes each number that may be either for the hour or the trailer, as the bits of `way` say.
fn taken(marks: &[Mark], way: u32) -> Vec<Mark> {
    let mut bit = 0;
    let mut settle = |mark: &Mark| match mark {
        Mark::Either(unit, hour) | Mark::Bare(unit, hour) => {
            bit += 1;
            match way >> (bit - 1) & 1 {
                1 => Mark::At(hour.clone()),
                _ => Mark::Unit(unit.clone()),
            }
        }
        mark => mark.clone(),
    };
    marks.iter().map(&mut settle).collect()
}

/// Pairs settled marks; none where a number that was open leaves a trailer without a time or a time without a trailer.
fn fitting(way: Vec<Mark>, bare: bool) -> Option<Vec<Pair>> {
    let pairs = paired(way)?;
    let whole = pairs
        .iter()
        .all(|(unit, time)| unit.is_some() && time.is_some());
    let only_units = pairs.iter().all(|(_, time)| time.is_none());
    (whole || bare && only_units).then_some(pairs)
}

/// Pairs trailers with times by their order: each trailer with the time behind it, or each time with the trailers behind
/// it; none where neither goes.
fn paired(marks: Vec<Mark>) -> Option<Vec<Pair>> {
    let mut units: Vec<UnitName> = Vec::new();
    let mut times: Vec<String> = Vec::new();
    let mut runs: Vec<(Vec<UnitName>, Vec<String>)> = Vec::new();
    let times_first = matches!(marks.first(), Some(Mark::At(_)));
    for mark in marks {
        let turns = match &mark {
            Mark::Unit(_) => !times_first && !times.is_empty(),
            _ => times_first && !units.is_empty(),
        };
        if turns {
            runs.push((std::mem::take(&mut units), std::mem::take(&mut times)));
        }
        match mark {
            Mark::Unit(unit) if !units.contains(&unit) => units.push(unit),
            Mark::At(time) if !times.contains(&time) => times.push(time),
            _ => {}
        }
    }
    runs.push((units, times));
    let several = runs.len() > 1;
    let mut pairs = Vec::new();
    for (units, times) in runs {
        let time = match times.as_slice() {
            [] => None,
            [time] => Some(time.clone()),
            _ => return None,
        };
        if several && (units.is_empty() || time.is_none()) {
            return None;
        }
        match units.is_empty() {
            true => pairs.push((None, time)),
            false => pairs.extend(units.into_iter().map(|unit| (Some(unit), time.clone()))),
        }
    }
    Some(pairs)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(name: &str) -> Mark {
        Mark::Unit(UnitName::new(name))
    }

    fn at(time: &str) -> Mark {
        Mark::At(time.to_owned())
    }

    fn told(marks: Vec<Mark>) -> Option<String> {
        let pairs = pairs(&marks)?;
        let told = |(unit, time): (Option<UnitName>, Option<String>)| {
            let unit = unit.map_or_else(|| "?".to_owned(), |unit| unit.to_string());
            format!("{unit}@{}", time.unwrap_or_else(|| "?".to_owned()))
        };
        Some(pairs.into_iter().map(told).collect::<Vec<_>>().join(" "))
    }

    #[test]
    fn each_trailer_gets_the_time_that_goes_with_it() {
        let either = |name: &str, hour: &str| Mark::Either(UnitName::new(name), hour.to_owned());
        for (marks, wanted) in [
            (vec![unit("12"), at("19:00")], "12@19:00"),
            (vec![at("19:00"), unit("12")], "12@19:00"),
            (
                vec![unit("12"), at("19:00"), unit("14"), at("20:00")],
                "12@19:00 14@20:00",
            ),
            (
                vec![at("19:00"), unit("12"), at("20:00"), unit("14")],
                "12@19:00 14@20:00",
            ),
            (
                vec![unit("12"), unit("14"), at("19:00")],
                "12@19:00 14@19:00",
            ),
            (vec![unit("12"), either("8", "20:00")], "12@20:00"),
            (vec![either("12", "00:00"), at("19:00")], "12@19:00"),
            (vec![at("19:00")], "?@19:00"),
            (vec![unit("12")], "12@?"),
        ] {
            assert_eq!(told(marks.clone()).as_deref(), Some(wanted), "{marks:?}");
        }
    }

    #[test]
    fn what_may_go_either_way_is_not_paired() {
        let either = Mark::Either(UnitName::new("8"), "20:00".to_owned());
        for marks in [
            vec![either],
            vec![unit("12"), unit("14"), at("19:00"), at("20:00")],
            vec![unit("12"), at("19:00"), unit("14")],
            vec![unit("12"), at("19:00"), at("20:00")],
        ] {
            assert_eq!(told(marks.clone()), None, "{marks:?}");
        }
    }
}
