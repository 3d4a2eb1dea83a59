//! Readings that have each a time of their own: "12 waste 1/2 at 2 and 3/4 at 5" are two reports, and "at 2" is an hour.

use chrono::{DateTime, Timelike, Utc};

use super::super::phrases::{Phrases, plain};
use super::super::settle;
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// The most words of a mark before an hour.
const LONGEST: usize = 2;

/// Puts readings with their own times on lines of their own, and bare hours behind a reading as clock times; none where the
/// message is read as it stands.
pub(super) fn reworded(
    phrases: &Phrases,
    fleet: &Fleet,
    text: &str,
    written: DateTime<Utc>,
) -> Option<String> {
    if text.contains('\n') || text.contains('?') {
        return None;
    }
    let typed: Vec<&str> = text.split_whitespace().collect();
    let first = typed.first()?.trim_end_matches([':', ',']);
    let opens = match phrases.is("timed", "article", &plain(first)) {
        true => 1,
        false => 0,
    };
    let name = typed.get(opens)?.trim_end_matches([':', ',']);
    let unit = settle::known(fleet, &UnitName::new(name))?;
    let zone = fleet.zone_at(Some(unit), written);
    let now = written.with_timezone(&zone).hour();
    let times: Vec<Timed> = timed(phrases, &typed);
    if times.is_empty() || !times.iter().any(|time| time.bare) && times.len() < 2 {
        return None;
    }
    let mut words: Vec<String> = typed.iter().map(|word| (*word).to_owned()).collect();
    for time in times.iter().filter(|time| time.bare) {
        let hour = words[time.hour].clone();
        let bare = hour.trim_end_matches([',', '.', ';']);
        // of both halves of the day it is the one that was last
        let told: u32 = bare.parse().ok()?;
        let halves = [told % 12, told % 12 + 12];
        let ago = |hour: &u32| (now + 24 - hour) % 24;
        let last = halves.into_iter().min_by_key(ago)?;
        words[time.hour] = format!("{last:02}:00{}", &hour[bare.len()..]);
    }
    if times.len() < 2 {
        return Some(words.join(" "));
    }
    // what stands before the first value holds for each
    let head = &typed[..times[0].value];
    let was = |word: &&&str| !phrases.is("timed", "was", &plain(word));
    let head: Vec<&str> = head.iter().filter(was).copied().collect();
    let mut lines = Vec::new();
    let mut end = 0;
    for (at, time) in times.iter().enumerate() {
        // nothing but what joins them stands between
        let between = &typed[end.min(time.value)..time.value];
        let joined = between
            .iter()
            .all(|word| phrases.is("timed", "joins", &plain(word)));
        if at > 0 && !joined {
            return None;
        }
        let own = words[time.value..=time.hour].join(" ");
        let own = own.trim_end_matches([',', '.', ';']);
        lines.push(format!("{} {own}", head.join(" ")));
        end = time.hour + 1;
    }
    let rest = typed.get(end..).unwrap_or_default();
    rest.is_empty().then(|| lines.join("\n"))
}

/// Puts "sorry 1/2 i was looking at fresh" as the new level of what was reported: whose level the first one was is no level of
/// that.
pub(super) fn without_the_other_tank(phrases: &Phrases, text: &str) -> Option<String> {
    phrases.after("mend", "opens", text.trim())?;
    let words: Vec<&str> = text.split_whitespace().collect();
    let most = |from: usize| (1..=(words.len() - from).min(LONGEST_CLAUSE)).rev();
    let (from, count) = (1..words.len()).find_map(|from| {
        let is = |count: &usize| {
            let clause = words[from..from + count].join(" ");
            phrases.is("timed", "other-tank", &plain(&clause))
        };
        Some((from, most(from).find(is)?))
    })?;
    let rest = [&words[..from], &words[from + count..]].concat();
    let levels = rest
        .iter()
        .filter(|word| word.contains('/') || word.contains('%'));
    (levels.count() == 1).then(|| rest.join(" ").trim_end_matches([',', ';']).to_owned())
}

/// The most words of such a clause.
const LONGEST_CLAUSE: usize = 6;

/// A value with its time: which word each is.
struct Timed {
    value: usize,
    hour: usize,
    /// Whether the hour is a bare number.
    bare: bool,
}

fn timed(phrases: &Phrases, typed: &[&str]) -> Vec<Timed> {
    let digits = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_digit());
    // a level tells itself, a bare number has its measure behind it: "circuit 4 at 11 amps" has no hour
    let level = |word: &str| {
        let share = word.strip_suffix('%').is_some_and(digits);
        let parts = word.split_once('/');
        share || parts.is_some_and(|(top, bottom)| digits(top) && digits(bottom))
    };
    let measured = |at: usize| {
        let measure = |word: &&str| phrases.is("timed", "measures", &plain(word));
        typed[at].parse::<f64>().is_ok() && typed.get(at + 1).is_some_and(measure)
    };
    let ends = |at: usize| {
        let joins = |word: &str| phrases.is("timed", "joins", &plain(word));
        typed[at].ends_with([',', '.', ';']) || typed.get(at + 1).is_none_or(|next| joins(next))
    };
    let mut found: Vec<Timed> = Vec::new();
    for at in 1..typed.len() {
        let marked = (1..=LONGEST.min(at)).find(|count| {
            let mark = typed[at - count..at].join(" ");
            phrases.is("timed", "marks", &plain(&mark))
        });
        let Some(mark) = marked.map(|count| at - count) else {
            continue;
        };
        let word = typed[at].trim_end_matches([',', '.', ';']).to_lowercase();
        let bare = word
            .parse::<u32>()
            .is_ok_and(|hour| (1..=12).contains(&hour));
        let clock = crate::desk::when::clock_in(&word).is_some();
        // the value stands right before, or before its measure
        let valued = mark
            .checked_sub(1)
            .filter(|at| level(typed[*at]))
            .or_else(|| mark.checked_sub(2).filter(|at| measured(*at)))
            .filter(|_| ends(at));
        let free = |at: &usize| *at > 0 && found.last().is_none_or(|last| last.hour < *at);
        if let Some(value) = valued.filter(free)
            && (bare || clock)
        {
            found.push(Timed {
                value,
                hour: at,
                bare,
            });
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::demo;

    #[test]
    fn the_other_tank_is_no_second_level() {
        let phrases = Phrases::built_in();
        for (text, read) in [
            ("sorry 1/2 i was looking at fresh", Some("sorry 1/2")),
            ("oops, i was looking at the fresh, 1/2", Some("oops, 1/2")),
            ("perdón, 1/2, estaba viendo la limpia", Some("perdón, 1/2")),
            ("sorry, fresh 1/2", None),
            ("12 fresh 1/2", None),
        ] {
            assert_eq!(
                without_the_other_tank(phrases, text).as_deref(),
                read,
                "{text}"
            );
        }
    }

    #[test]
    fn each_reading_has_its_own_time() {
        let (phrases, fleet) = (Phrases::built_in(), demo::fleet());
        let at = demo::starts() + chrono::TimeDelta::minutes(20);
        for (text, read) in [
            (
                "12 waste 1/2 at 2 and 3/4 at 5",
                "12 waste 1/2 at 14:00\n12 waste 3/4 at 17:00",
            ),
            (
                "12 waste was 1/2 at 2pm and 3/4 at 5pm",
                "12 waste 1/2 at 2pm\n12 waste 3/4 at 5pm",
            ),
            (
                "la 12 negras 1/2 a las 2 y 3/4 a las 5",
                "la 12 negras 1/2 a las 14:00\nla 12 negras 3/4 a las 17:00",
            ),
            ("12 waste 1/2 at 2", "12 waste 1/2 at 14:00"),
            (
                "12 55 psi at 3, 48 psi at 5",
                "12 55 psi at 15:00\n12 48 psi at 17:00",
            ),
        ] {
            assert_eq!(
                reworded(phrases, &fleet, text, at).as_deref(),
                Some(read),
                "{text}"
            );
        }
        for text in [
            "12 waste 1/2 at 2pm",
            "12 waste 1/2",
            "truck for 12 at 8",
            "12 waste 3/4, truck at 8",
            "12 waste 1/2 at 14:00, now 3/4",
            "pressure 50 at 12",
            "12 heater on, circuit 4 at 1 amp",
            "3 temp 25, circuit 3 at 11 amps",
            "12 heater on, circuit 4 at 11",
        ] {
            assert_eq!(reworded(phrases, &fleet, text, at), None, "{text}");
        }
    }
}
