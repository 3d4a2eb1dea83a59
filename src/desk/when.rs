//! From the time a sender gives ("05:50", "yesterday 21:00", "this morning", "20 min ago") to an instant before the message was written.

use chrono::{DateTime, Datelike, Days, NaiveDate, NaiveTime, TimeDelta, TimeZone, Timelike, Utc};
use chrono_tz::Tz;

use super::phrases::{Phrases, plain};
use crate::words::{NamedDay, minutes_in, named_day, named_month};

/// A clock time still to come is yesterday's where that is no longer ago than this.
const LAST_NIGHT: TimeDelta = TimeDelta::hours(14);

/// Where a morning is taken to have been when it is told of in the afternoon: its middle, common practice.
const MID_MORNING: NaiveTime = NaiveTime::from_hms_opt(9, 0, 0).expect("a time of day");

/// Returns the instant that `when` names, the last one before `written`; none where it names none.
///
/// A clock time more than ten minutes after the time written is taken as last night's, or names none.
pub(super) fn instant(when: &str, written: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let local = written.with_timezone(&zone);
    // "4:00" without a zero in front is of either half of the day: the one that was last
    if let Some((hour @ 1..=11, minute)) = either_half(when) {
        let told = |hour: u32| instant(&format!("{hour:02}:{minute}"), written, zone);
        return [hour, hour + 12].into_iter().filter_map(told).max();
    }
    if let Some(minutes) = when.strip_suffix(" min ago") {
        return Some(written - TimeDelta::minutes(minutes.parse().ok()?));
    }
    if when == "this morning" {
        let noon_passed = local.hour() >= 12;
        let middle = local.date_naive().and_time(MID_MORNING);
        let middle = zone.from_local_datetime(&middle).earliest()?;
        return Some(if noon_passed {
            middle.with_timezone(&Utc)
        } else {
            written
        });
    }
    let (day, clock) = match when.split_once(' ') {
        Some((day, clock)) => (Some(day), clock),
        None if when == "yesterday" => (Some(when), "12:00"),
        None => (None, when),
    };
    let time = NaiveTime::parse_from_str(clock, "%H:%M").ok()?;
    let date = match day {
        None => local.date_naive(),
        Some("yesterday") => local.date_naive().checked_sub_days(Days::new(1))?,
        Some(_) => return None,
    };
    // of two equal local times the first counts; one that does not exist names nothing
    let at = zone
        .from_local_datetime(&date.and_time(time))
        .earliest()?
        .with_timezone(&Utc);
    if day.is_none() && at > written + TimeDelta::minutes(10) {
        let before = date.checked_sub_days(Days::new(1))?;
        let before = zone
            .from_local_datetime(&before.and_time(time))
            .earliest()?
            .with_timezone(&Utc);
        // "21:00" in the afternoon: as well tonight's as last night's
        return Some(before).filter(|before| written - *before <= LAST_NIGHT);
    }
    Some(at.min(written))
}

/// Splits a clock time that the reader gives without its half of the day: hour, and minutes as told.
fn either_half(when: &str) -> Option<(u32, &str)> {
    let (hour, minute) = when.split_once(':')?;
    let hour = hour.parse().ok().filter(|_| !hour.starts_with('0'))?;
    Some((hour, minute)).filter(|_| when.len() == 4)
}

/// Tells whether it is day, so that something can be done before dark: from 06:00 to 16:00, as in winter (common practice, no
/// source).
pub(super) fn is_light(now: DateTime<Utc>, zone: Tz) -> bool {
    (6..16).contains(&now.with_timezone(&zone).hour())
}

/// Returns the next instant, at or after `now`, that a clock time `HH:MM` names.
pub(super) fn next(clock: &str, now: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let time = NaiveTime::parse_from_str(clock, "%H:%M").ok()?;
    let today = now.with_timezone(&zone).date_naive();
    (0..=1).find_map(|days| {
        let date = today.checked_add_days(Days::new(days))?;
        let at = zone
            .from_local_datetime(&date.and_time(time))
            .earliest()?
            .with_timezone(&Utc);
        (at >= now).then_some(at)
    })
}

/// Returns when something comes that a message gives a clock time for: the next time the clock shows it. An hour without
/// a half of the day ("a las 8", "at 8") is the sooner of the two.
pub(super) fn coming(words: &str, now: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let words = &with_halves_joined(words);
    if let Some(hour) = bare_hour(words) {
        let half = half_beside(words, hour);
        if let Some(date) = day_ahead(words, now, zone) {
            let hour = half.map_or_else(|| usual_hour(hour), |second| in_half(hour, second));
            return on(date, &format!("{hour:02}:00"), zone);
        }
        if let Some(second) = half {
            return next(&format!("{:02}:00", in_half(hour, second)), now, zone);
        }
        let (morning, evening) = (hour % 12, hour % 12 + 12);
        let times = [morning, evening].map(|hour| next(&format!("{hour:02}:00"), now, zone));
        return times.into_iter().flatten().min();
    }
    told(&clock_in(words)?, words, now, zone)
}

/// Returns the next instant that a clock time told in these words names: the sooner of the two where they leave open
/// which half of the day is meant.
pub(super) fn told(
    clock: &str,
    words: &str,
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<DateTime<Utc>> {
    if let Some(date) = day_ahead(words, now, zone) {
        return on(date, clock, zone);
    }
    let sooner = other_half(words, clock).and_then(|other| next(&other, now, zone));
    next(clock, now, zone).into_iter().chain(sooner).min()
}

/// Tells whether words name a day to come.
pub(super) fn names_a_day(words: &str) -> bool {
    day_named(words).is_some()
}

/// Returns the word of a text by which it names a day to come.
pub(super) fn day_word(words: &str) -> Option<String> {
    let folded = plain(words);
    let typed: Vec<&str> = folded.split(' ').collect();
    let at = (0..typed.len()).find(|at| {
        let (from, to) = (at.saturating_sub(1), *at + 1);
        day_named(&typed[from..to].join(" ")).is_some()
    })?;
    Some(typed[at].to_owned())
}

/// Returns the day that words name: tomorrow, or the next of a weekday.
pub(super) fn day_ahead(words: &str, now: DateTime<Utc>, zone: Tz) -> Option<NaiveDate> {
    let today = now.with_timezone(&zone).date_naive();
    let days = match day_named(words)? {
        None => 1,
        Some(weekday) => {
            let today = u64::from(today.weekday().num_days_from_monday());
            (weekday + 7 - today) % 7
        }
    };
    today.checked_add_days(Days::new(days))
}

/// Reads words that are a date and nothing else, "feb 6" or "6 de febrero": the next one of that name.
pub(super) fn date(words: &[&str], today: NaiveDate) -> Option<NaiveDate> {
    let day = |word: &str| {
        let digits = word.trim_end_matches(|c: char| c.is_alphabetic());
        let ending = &word[digits.len()..];
        let is_day = ["", "st", "nd", "rd", "th"].contains(&ending);
        digits.parse::<u32>().ok().filter(|_| is_day)
    };
    let of = |word: &&str| !["de", "of", "the", "el"].contains(word);
    let told: Vec<&str> = words.iter().copied().filter(|word| of(word)).collect();
    let (month, day) = match told.as_slice() {
        [first, second] => match named_month(first) {
            Some(month) => (month, day(second)?),
            None => (named_month(second)?, day(first)?),
        },
        _ => return None,
    };
    let years = [today.year(), today.year() + 1];
    let mut dates = years
        .into_iter()
        .filter_map(|year| NaiveDate::from_ymd_opt(year, month, day));
    dates.find(|date| *date >= today)
}

/// Finds a day in words: a weekday from Monday, or none of them for tomorrow. "De la mañana" is a half of the day.
fn day_named(words: &str) -> Option<Option<u64>> {
    let folded = plain(words);
    let typed: Vec<&str> = folded.split(' ').collect();
    typed.iter().enumerate().find_map(|(at, word)| {
        let half = at > 0 && typed[at - 1] == "la";
        match named_day(word)? {
            NamedDay::Tomorrow if half => None,
            NamedDay::Tomorrow => Some(None),
            NamedDay::Weekday(day) => Some(Some(u64::from(day))),
        }
    })
}

/// Puts an hour of the clock into the first or the second half of the day.
fn in_half(hour: u32, second: bool) -> u32 {
    hour % 12 + if second { 12 } else { 0 }
}

/// How many words before and behind an hour tell its half of the day: "8 in the morning", "tomorrow morning at 8".
const BEFORE_AN_HOUR: usize = 3;
const BEHIND_AN_HOUR: usize = 3;

/// Tells which half of the day words near a bare hour name; true is the second. A night has hours in both.
fn half_beside(words: &str, hour: u32) -> Option<bool> {
    let folded = plain(words);
    let typed: Vec<&str> = folded.split(' ').collect();
    let phrases = Phrases::built_in();
    let half = |near: &[&str]| {
        let near = near.join(" ");
        let part = |list| phrases.holds("clock", list, &near);
        match () {
            () if part("of-the-first-half") => Some(false),
            () if part("of-the-second-half") => Some(true),
            () if part("of-the-night") && (6..12).contains(&hour) => Some(true),
            () => None,
        }
    };
    let told = (1..typed.len())
        .filter(|at| typed[*at] == hour.to_string() && is_hour_mark(typed[*at - 1]));
    told.into_iter().find_map(|at| {
        let end = typed.len().min(at + 1 + BEHIND_AN_HOUR);
        half(&typed[at + 1..end]).or_else(|| half(&typed[at.saturating_sub(BEFORE_AN_HOUR)..at]))
    })
}

/// Returns the hour of the day that "at 2" or "at 9" means on a day to come: one to six are taken for the afternoon, when
/// trucks drive.
fn usual_hour(hour: u32) -> u32 {
    match hour {
        1..=6 => hour + 12,
        hour => hour,
    }
}

/// Returns the instant of a clock time on a day; of two equal local times the first.
pub(super) fn on(date: NaiveDate, clock: &str, zone: Tz) -> Option<DateTime<Utc>> {
    let time = NaiveTime::parse_from_str(clock, "%H:%M").ok()?;
    let local = zone.from_local_datetime(&date.and_time(time)).earliest()?;
    Some(local.with_timezone(&Utc))
}

/// Returns the same clock time in the other half of the day, where the words leave open which is meant: "7:15".
fn other_half(words: &str, clock: &str) -> Option<String> {
    let (hour, minute) = clock.split_once(':')?;
    let hour: u32 = hour.parse().ok()?;
    let told = Phrases::built_in().holds("clock", "parts", words);
    let words = with_halves_joined(words);
    // "07:15" is told on a clock of 24 hours, and "7:15pm" tells its half
    let bare = format!("{hour}:{minute}");
    let mut typed = words.split_whitespace();
    let open = typed.any(|word| word.trim_end_matches([',', '.', '!']) == bare);
    ((1..=11).contains(&hour) && open && !told).then(|| format!("{:02}:{minute}", hour + 12))
}

/// Returns the words of a text that are part of a clock time, in lower case: they name no trailer.
pub(super) fn clock_words(text: &str) -> Vec<String> {
    let mut words = Vec::new();
    let text = &with_halves_joined(text);
    let typed: Vec<&str> = text.split_whitespace().collect();
    for (at, word) in typed.iter().enumerate() {
        let hour = bare_hour(text).is_some_and(|hour| {
            at > 0
                && is_hour_mark(typed[at - 1])
                && word.trim_end_matches(['.', ',', '!']) == hour.to_string()
        });
        if clock_in(word).is_some() || hour {
            let alone = without_half(word).map(|(digits, _)| digits);
            let parts = word.split(|c: char| !c.is_alphanumeric());
            words.extend(parts.chain(alone).map(str::to_lowercase));
        }
    }
    words
}

/// Tells whether a bare number is an hour behind this word.
pub(super) fn is_hour_mark(word: &str) -> bool {
    Phrases::built_in().is("clock", "marks", word)
}

/// Tells whether a bare number is an hour before this word: `8 sharp`.
pub(super) fn is_of_an_hour(word: &str) -> bool {
    Phrases::built_in().is("clock", "behind", word)
}

/// Writes clock times as the readers of them have it, and all in lower case: each half of the day that follows a number as
/// one word with it, "3:30 P.M." as "3:30pm", and the parts of an hour in digits, "a las 7 y media" as "a las 7:30".
pub(super) fn with_halves_joined(text: &str) -> String {
    let text = parts_of_an_hour(&text.to_lowercase());
    let mut out = String::with_capacity(text.len());
    let mut rest = text.as_str();
    while let Some(c) = rest.chars().next() {
        let digit = out.ends_with(|c: char| c.is_ascii_digit());
        match digit.then(|| half_before(rest)).flatten() {
            Some((half, behind)) => {
                out.push_str(half);
                rest = behind;
            }
            None => {
                out.push(c);
                rest = &rest[c.len_utf8()..];
            }
        }
    }
    out
}

/// Writes parts of an hour in digits: "7 y media", "half past 7", "un cuarto para las 8", "at 7.30", "at 7 30".
fn parts_of_an_hour(lower: &str) -> String {
    let phrases = Phrases::built_in();
    let words: Vec<&str> = lower.split(' ').collect();
    let at_word = |at: usize| words.get(at).copied().unwrap_or_default();
    let hour_of = |word: &str| {
        let hour = word.parse::<u32>().ok()?;
        (1..=12).contains(&hour).then_some(hour)
    };
    let mut out: Vec<String> = Vec::with_capacity(words.len());
    let mut at = 0;
    while at < words.len() {
        let head = out.last().map_or("", String::as_str);
        let marked =
            phrases.is("clock", "marks", head) || phrases.is("clock", "before-parts", head);
        let two = words[at..words.len().min(at + 2)].join(" ");
        let three = words[at..words.len().min(at + 3)].join(" ");
        let four = words[at..words.len().min(at + 4)].join(" ");
        // "half past 7", "quarter to 8", "un cuarto para las 8"
        let before = [(two.as_str(), 2), (three.as_str(), 3), (four.as_str(), 4)];
        let before = before.into_iter().find_map(|(words, took)| {
            let hour = hour_of(at_word(at + took).trim_end_matches([',', '.', '!']))?;
            let is = |list| phrases.is("clock", list, words);
            match () {
                () if is("half-past") => Some((hour, 30, took + 1)),
                () if is("quarter-past") => Some((hour, 15, took + 1)),
                () if is("quarter-to") => Some(((hour + 10) % 12 + 1, 45, took + 1)),
                () => None,
            }
        });
        let behind = || {
            let hour = hour_of(words[at])?;
            let part = plain(&[at_word(at + 1), at_word(at + 2)].join(" "));
            let of_a_length = phrases.is("clock", "length", at_word(at + 3));
            // "la 7 y media llena" may be the trailer; only "la 1" is an hour
            let trailer = phrases.is("clock", "before-a-trailer", head) && hour != 1;
            let minutes = [("and-a-half", 30), ("and-a-quarter", 15)];
            let told = minutes
                .into_iter()
                .find(|(list, _)| phrases.is("clock", list, &part));
            told.filter(|_| !of_a_length && !trailer)
                .map(|(_, minutes)| (hour, minutes, 3))
        };
        // "at 7 30": parts of an hour that are told so are quarters
        let apart = || {
            let hour = hour_of(words[at]).filter(|_| marked)?;
            let minute = at_word(at + 1).trim_end_matches([',', '.', '!']);
            let quarter = ["00", "15", "30", "45"].contains(&minute);
            let next = at_word(at + 2);
            let measured = minutes_in(next).is_some() || phrases.is("clock", "measured", next);
            (quarter && !measured).then(|| (hour, minute.parse().unwrap_or(0), 2))
        };
        // "at 7.30", "7h30"
        let dotted = || {
            let word = words[at].trim_end_matches([',', '.', '!']);
            let (hour, minute) = word.split_once(['.', 'h'])?;
            let hour = hour_of(hour).filter(|_| marked || word.contains('h'))?;
            let minute = minute
                .get(..2)
                .filter(|it| minute.len() == 2 && it.parse::<u32>().is_ok_and(|it| it < 60))?;
            Some((hour, minute.parse().unwrap_or(0), 1))
        };
        let told = before.or_else(behind).or_else(apart).or_else(dotted);
        match told {
            Some((hour, minute, took)) => {
                let last = at_word(at + took - 1);
                let sign = last.trim_start_matches(|c: char| !",!".contains(c));
                out.push(format!("{hour}:{minute:02}{sign}"));
                at += took;
            }
            None => {
                out.push(words[at].to_owned());
                at += 1;
            }
        }
    }
    out.join(" ")
}

/// Takes a half of the day off the front of a text, past spaces: how the bot has it, and what stands behind it.
fn half_before(text: &str) -> Option<(&'static str, &str)> {
    let phrases = Phrases::built_in();
    let text = text.trim_start_matches(' ');
    let halves = ["first-half", "second-half"].into_iter().flat_map(|list| {
        let plainly = phrases.each("clock", list).next();
        let written = phrases.each("clock", list);
        written.filter_map(move |half| Some((plainly?, half)))
    });
    let fits = |(plainly, half): (&'static str, &str)| {
        let behind = text.strip_prefix(half)?;
        let ends = !behind.starts_with(char::is_alphanumeric);
        ends.then_some((plainly, behind))
    };
    // of "p.m." and "p.m" the longer one
    halves
        .filter_map(fits)
        .min_by_key(|(_, behind)| behind.len())
}

/// Takes a half of the day off the end of a word: `7pm`. Returns what stands before it, and whether it is the second.
pub(super) fn without_half(word: &str) -> Option<(&str, bool)> {
    let phrases = Phrases::built_in();
    let half = |list| {
        let mut halves = phrases.each("clock", list);
        halves.find_map(|half| word.strip_suffix(half))
    };
    let second = half("second-half").map(|digits| (digits, true));
    second.or_else(|| half("first-half").map(|digits| (digits, false)))
}

fn bare_hour(words: &str) -> Option<u32> {
    let typed: Vec<String> = words.split_whitespace().map(str::to_lowercase).collect();
    typed.windows(2).find_map(|pair| {
        if !is_hour_mark(&pair[0]) {
            return None;
        }
        let hour = pair[1]
            .trim_end_matches(['.', ',', '!'])
            .parse::<u32>()
            .ok()?;
        (1..=12).contains(&hour).then_some(hour)
    })
}

/// Finds the first clock time in an order's words: `19:30`, `7:30pm`, `1930`, `7pm`.
pub(super) fn clock_in(words: &str) -> Option<String> {
    with_halves_joined(words)
        .split_whitespace()
        .find_map(|word| {
            let word = word.trim_end_matches(['.', ',', '!']).to_lowercase();
            let (digits, half) = match without_half(&word) {
                Some((digits, second)) => (digits, Some(second)),
                None => (word.as_str(), None),
            };
            let (hour, minute) = match digits.split_once([':', '.', 'h']) {
                // "7h" is a time, "7:" opens what is said of a trailer
                Some((hour, "")) if digits.ends_with('h') => (hour.parse::<u32>().ok()?, 0),
                Some((hour, minute)) => (hour.parse::<u32>().ok()?, minute.parse::<u32>().ok()?),
                None if digits.len() == 4 => {
                    let (hour, minute) = digits.split_at_checked(2)?;
                    (hour.parse().ok()?, minute.parse().ok()?)
                }
                None if half.is_some() && digits.len() == 3 => {
                    let (hour, minute) = digits.split_at_checked(1)?;
                    (hour.parse().ok()?, minute.parse().ok()?)
                }
                None if half.is_some() => (digits.parse().ok()?, 0),
                None => return None,
            };
            let hour = match half {
                Some(true) if hour < 12 => hour + 12,
                Some(false) if hour == 12 => 0,
                _ => hour,
            };
            (hour < 24 && minute < 60).then(|| format!("{hour:02}:{minute:02}"))
        })
}

/// A number in a folded text, and the word that may be its measure: behind it, or glued to it ("20min").
pub(super) struct Counted<'t> {
    pub number: u32,
    measure: Option<&'t str>,
    /// Which word follows the number, past a measure of time.
    pub behind: usize,
}

impl Counted<'_> {
    /// Returns how many minutes its measure holds; none where it is no measure of time.
    pub(super) fn minutes_each(&self) -> Option<u32> {
        self.measure.and_then(minutes_in)
    }

    /// Tells whether its measure is this word.
    pub(super) fn is_of(&self, word: &str) -> bool {
        self.measure == Some(word)
    }
}

/// Reads the number that a word of a folded text is, with its measure.
pub(super) fn counted<'t>(words: &[&'t str], at: usize) -> Option<Counted<'t>> {
    let word = *words.get(at)?;
    let digits = word.trim_end_matches(|c: char| c.is_alphabetic());
    let glued = &word[digits.len()..];
    let measure = match glued {
        "" => words.get(at + 1).copied(),
        _ => Some(glued),
    };
    let apart = glued.is_empty() && measure.and_then(minutes_in).is_some();
    Some(Counted {
        number: digits.parse().ok()?,
        measure,
        behind: at + 1 + usize::from(apart),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn utc(text: &str) -> DateTime<Utc> {
        text.parse().expect("a valid instant")
    }

    #[test]
    fn a_date_is_the_next_of_its_name() {
        let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day);
        let today = day(2027, 1, 23).expect("a date");
        for words in [
            "feb 6",
            "6 feb",
            "february 6th",
            "6 de febrero",
            "the 6th of february",
        ] {
            let words: Vec<&str> = words.split(' ').collect();
            assert_eq!(date(&words, today), day(2027, 2, 6), "{words:?}");
        }
        assert_eq!(date(&["jan", "5"], today), day(2028, 1, 5));
        for words in ["12 may be full", "feb", "6", "feb 40", "feb 6 psi"] {
            let words: Vec<&str> = words.split(' ').collect();
            assert_eq!(date(&words, today), None, "{words:?}");
        }
    }

    #[test]
    fn a_bare_hour_is_in_the_half_of_the_day_that_is_told_beside_it() {
        let now = utc("2027-01-23T17:10:00Z");
        let told = |words: &str| {
            let at = coming(words, now, Tz::UTC)?;
            Some(at.format("%d %H:%M").to_string())
        };
        for (words, wanted) in [
            ("at 8", "23 20:00"),
            ("at 8 in the morning", "24 08:00"),
            ("at 5 in the evening", "24 17:00"),
            ("tomorrow evening at 7", "24 19:00"),
            ("tomorrow at 7", "24 07:00"),
            ("at 9 tonight", "23 21:00"),
            ("a las 8 de la mañana", "24 08:00"),
            ("mañana a las 8 de la noche", "24 20:00"),
        ] {
            assert_eq!(told(words).as_deref(), Some(wanted), "{words}");
        }
    }

    #[test]
    fn a_clock_time_is_the_last_one_before_the_message() {
        let zone = Tz::America__Chicago;
        let written = utc("2027-01-16T23:10:00Z"); // 17:10 local
        assert_eq!(
            instant("14:00", written, zone),
            Some(utc("2027-01-16T20:00:00Z"))
        );
        assert_eq!(
            instant("21:00", written, zone),
            None,
            "tonight or last night"
        );
        let morning = utc("2027-01-16T14:10:00Z"); // 08:10 local
        assert_eq!(
            instant("21:00", morning, zone),
            Some(utc("2027-01-16T03:00:00Z"))
        );
        assert_eq!(
            instant("yesterday 21:00", written, zone),
            Some(utc("2027-01-16T03:00:00Z"))
        );
        assert_eq!(instant("17:15", written, zone), Some(written));
        assert_eq!(instant("noonish", written, zone), None);
        // of either half of the day: this afternoon at 17:10, this morning at 08:10
        let four = Some(utc("2027-01-16T22:00:00Z"));
        assert_eq!(instant("4:00", written, zone), four);
        let four = Some(utc("2027-01-16T10:00:00Z"));
        assert_eq!(instant("4:00", utc("2027-01-16T14:10:00Z"), zone), four);
        assert_eq!(
            instant("20 min ago", written, zone),
            Some(utc("2027-01-16T22:50:00Z"))
        );
        assert_eq!(instant("this morning", morning, zone), Some(morning));
        assert_eq!(
            instant("this morning", written, zone),
            Some(utc("2027-01-16T15:00:00Z"))
        );
    }

    #[test]
    fn a_word_of_four_bytes_that_is_no_clock_is_passed_over() {
        assert_eq!(clock_in("at 1930"), Some("19:30".into()));
        assert_eq!(clock_in("a¾b 9¾x 🚽 5 gal"), None);
    }

    #[test]
    fn a_deadline_is_the_next_time_the_clock_shows_it() {
        let zone = Tz::America__Chicago;
        let now = utc("2027-01-16T23:10:00Z");
        assert_eq!(next("19:30", now, zone), Some(utc("2027-01-17T01:30:00Z")));
        assert_eq!(next("06:00", now, zone), Some(utc("2027-01-17T12:00:00Z")));
    }

    #[test]
    fn a_day_that_is_named_is_the_day_that_is_meant() {
        let zone = Tz::America__Chicago;
        let now = utc("2027-01-16T14:10:00Z"); // Saturday, 08:10 local
        for (words, wanted) in [
            ("truck tomorrow at 9", "2027-01-17T15:00:00Z"),
            ("truck tomorrow at 2", "2027-01-17T20:00:00Z"),
            ("camión mañana a las 9", "2027-01-17T15:00:00Z"),
            ("camión el lunes a las 9:30", "2027-01-18T15:30:00Z"),
            ("camión a las 9 de la mañana", "2027-01-16T15:00:00Z"),
        ] {
            assert_eq!(coming(words, now, zone), Some(utc(wanted)), "{words}");
        }
        assert!(!names_a_day("a las 9 de la mañana") && names_a_day("mañana a las 9"));
    }

    #[test]
    fn the_parts_of_an_hour_are_written_in_digits() {
        for (words, written) in [
            ("a las 7 y media", "a las 7:30"),
            ("a las 7 y cuarto, la 10", "a las 7:15, la 10"),
            ("un cuarto para las 8", "7:45"),
            ("llega 8 y media", "llega 8:30"),
            ("half past 7", "7:30"),
            ("at quarter to 1", "at 12:45"),
            ("at 7.30", "at 7:30"),
            ("at 7.30pm", "at 7.30pm"),
            ("at 7 30", "at 7:30"),
            ("moved to 8 30", "moved to 8:30"),
            ("a las 7h30", "a las 7:30"),
            ("2 y media horas", "2 y media horas"),
            ("la 12 y media llena", "la 12 y media llena"),
            ("at 7 30 psi", "at 7 30 psi"),
            ("at 8 12", "at 8 12"),
            ("tank 7.25", "tank 7.25"),
        ] {
            assert_eq!(with_halves_joined(words), written, "{words}");
        }
    }

    #[test]
    fn a_clock_time_is_found_however_it_is_written() {
        for (words, clock) in [
            ("to 19:30", "19:30"),
            ("7:30pm please", "19:30"),
            ("1930", "19:30"),
            ("7pm", "19:00"),
            ("12am", "00:00"),
        ] {
            assert_eq!(clock_in(words).as_deref(), Some(clock), "{words}");
        }
        assert_eq!(clock_in("later, ñañ 99:99"), None);
    }
}
