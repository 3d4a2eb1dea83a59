//! Trucks that a message says are called, or wants called: "truck for 12 comes at 19:00", "pídeme un camión para la 6 a
//! las 8", two of them in one message.
//!
//! The reader finds one time a sentence. Which trailer gets which truck is told by how trailers and times follow each
//! other, and that takes the fleet: "at 8" is an hour, and the trailer 8 stands in the same yard.

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use super::super::phrases::is_marked;
use super::noted;
use crate::book::Stage;
use crate::desk::receive::Hearing;
use crate::desk::{answer, settle, when};
use crate::heard::{Entry, Heard, Need, Plan, PlanKind, ReadingKey, UnitName};
use crate::words::psi_in;

/// What a message says of trucks to come.
pub(in crate::desk) enum Coming {
    /// Trucks, each with its trailer and its time as far as they are told; and whether every number is told by them.
    Trucks(Vec<Plan>, bool),
    /// Trailers and times of which nobody can say which goes with which.
    Muddled,
}

/// A trailer or a time in the order they were typed.
#[derive(Debug, Clone, PartialEq)]
enum Mark {
    Unit(UnitName),
    /// A clock time, `HH:MM`.
    At(String),
    /// "at 8", where 8 is a trailer too.
    Either(UnitName, String),
}

/// Reads what a message says of trucks to come; none where it says nothing of them, or of one that is off or late.
pub(in crate::desk) fn coming(hearing: &Hearing<'_>) -> Option<Coming> {
    let (phrases, text, heard) = (&hearing.desk.phrases, hearing.text, &hearing.heard);
    let says = |list| phrases.holds("truck", list, text);
    let other = ["other", "not", "off", "past", "here", "left"];
    if !says("who")
        || heard.ask.is_some()
        || heard.command.is_some()
        || other.into_iter().any(says)
        || is_marked(text)
        || answer::is_question(hearing)
    {
        return None;
    }
    // one that was called before and now comes at another time is moved, not booked
    if says("late") && noted(hearing).is_some() {
        return None;
    }
    // a trailer that is 40 minutes out is no truck
    let under_way = |entry: &Entry| entry.readings.values.contains_key(&ReadingKey::EtaMin);
    let of_a_pump_truck = says("pumps") || says("for") || says("phoned") || stands(hearing);
    if heard.entries.iter().any(under_way) && !of_a_pump_truck {
        return None;
    }
    let piece = of_the_truck(hearing)?;
    let (marks, whole) = marks(hearing, piece);
    let wanted = says("request") && !says("phoned");
    let timed = marks.iter().any(|mark| !matches!(mark, Mark::Unit(_)));
    if !(wanted || says("called") || timed) {
        return None;
    }
    let need = match says("water") {
        true => Need::Refill,
        false => Need::PumpOut,
    };
    let Some(pairs) = settled(marks).and_then(paired) else {
        return Some(Coming::Muddled);
    };
    let reported = match heard.entries.as_slice() {
        [Entry { unit, .. }] => unit.clone(),
        _ => None,
    };
    let spoken = spoken(piece);
    let words = words_in(&spoken);
    // "tomorrow" said of one of two trucks is not said of the other
    let several = pairs.len() > 1;
    let text_of = |unit: Option<&UnitName>| {
        let named = |word: &&str| unit.is_some_and(|unit| UnitName::new(word) == *unit);
        let place = words.iter().position(named).filter(|_| several);
        place.map_or_else(|| text.trim().to_owned(), |at| words_about(&words, at))
    };
    let plans = pairs.into_iter().map(|(unit, at)| Plan {
        text: text_of(unit.as_ref()),
        unit: unit.or_else(|| reported.clone()),
        kind: match wanted {
            true => PlanKind::Need { need, by: at },
            false => PlanKind::Booked { need, at },
        },
    });
    Some(Coming::Trucks(plans.collect(), whole))
}

/// Tells whether the one trailer that is named stands at its site: then it is on no road.
fn stands(hearing: &Hearing<'_>) -> bool {
    let names = hearing.names();
    let [unit] = names.as_slice() else {
        return false;
    };
    let stage = hearing.desk.book.unit(unit);
    let stage = stage.map(|kept| kept.state().stage());
    matches!(
        stage,
        Some(Stage::SettingUp | Stage::InService | Stage::Closed)
    )
}

/// Tells whether somebody wants the bot to call, which it cannot.
pub(in crate::desk) fn wants_a_call(hearing: &Hearing<'_>) -> bool {
    let says = |list| hearing.desk.phrases.holds("truck", list, hearing.text);
    says("who") && says("order")
}

/// Puts what was read here in the place of what the reader made of it, and drops its doubts about the same numbers.
pub(in crate::desk) fn put(heard: &mut Heard, coming: &Coming) {
    let of_a_truck = |plan: &Plan| match &plan.kind {
        PlanKind::Booked { need, .. } | PlanKind::Need { need, .. } => {
            matches!(need, Need::PumpOut | Need::Refill)
        }
        PlanKind::Other | PlanKind::OnTheRoad => true,
        _ => false,
    };
    heard.plans.retain(|plan| !of_a_truck(plan));
    // "40 min out" was the truck's time, and not the trailer's
    let of_the_truck = |entry: &Entry| {
        let mut keys = entry.readings.values.keys();
        !entry.readings.values.is_empty() && keys.all(|key| *key == ReadingKey::EtaMin)
    };
    heard.entries.retain(|entry| !of_the_truck(entry));
    let (plans, whole) = match coming {
        Coming::Trucks(plans, whole) => (plans.as_slice(), *whole),
        Coming::Muddled => (&[][..], true),
    };
    if whole && heard.entries.iter().all(Entry::is_empty) {
        heard.unclear.clear();
        heard.set_aside.clear();
    }
    heard.plans.extend(plans.iter().cloned());
}

/// Returns the part of a message that is about the truck: all of it, or what follows a report of something else.
fn of_the_truck<'a>(hearing: &Hearing<'a>) -> Option<&'a str> {
    let text = hearing.text;
    let of_the_way =
        |entry: &Entry| entry.is_empty() || entry.readings.values.keys().eq([&ReadingKey::EtaMin]);
    if hearing.heard.entries.iter().all(of_the_way) {
        return Some(text);
    }
    let breaks = text.match_indices([',', ';', '.', '\n']);
    let starts = std::iter::once(0).chain(breaks.map(|(at, _)| at + 1));
    let about = |piece: &str| {
        let says = |list| hearing.desk.phrases.holds("truck", list, piece);
        says("who") || says("called")
    };
    let mut tails = starts.map(|at| &text[at..]);
    // the first piece that begins to speak of the truck, and all behind it
    let tail = tails.find(|tail| {
        let head = tail.split([',', ';', '.', '\n']).next().unwrap_or(tail);
        about(head)
    })?;
    // readings behind the truck would lend their trailers to it
    let (units, _) = marks(hearing, tail);
    let units = units.iter().filter(|mark| matches!(mark, Mark::Unit(_)));
    (units.count() <= 1).then_some(tail)
}

/// Finds the trailers and the times in a text, in order; and tells whether no number is left beside them.
fn marks(hearing: &Hearing<'_>, text: &str) -> (Vec<Mark>, bool) {
    let zone = zone(hearing);
    let spoken = spoken(text);
    let words = words_in(&spoken);
    let mut marks = Vec::new();
    let mut whole = true;
    let mut at = 0;
    while at < words.len() {
        let (mark, took) = mark(hearing, &words, at, zone);
        whole &= mark.is_some() || !words[at].contains(|c: char| c.is_ascii_digit());
        marks.extend(mark);
        at += took.max(1);
    }
    (marks, whole)
}

/// Reads the word at a place as a trailer or a time; returns how many words that took.
fn mark(hearing: &Hearing<'_>, words: &[&str], at: usize, zone: Tz) -> (Option<Mark>, usize) {
    let word = words[at];
    let next = words.get(at + 1).copied().unwrap_or_default();
    let before = at.checked_sub(1).map_or("", |at| words[at]);
    let unit = || {
        let name = UnitName::new(word);
        let named = hearing.heard.named.contains(&name);
        let known = settle::known(&hearing.fleet, &name).cloned();
        known.or_else(|| named.then_some(name))
    };
    let clock = |clock: String| Some(Mark::At(clock));
    match word {
        "noon" | "mediodia" | "mediodía" => return (clock("12:00".into()), 1),
        "midnight" | "medianoche" => return (clock("00:00".into()), 1),
        _ => {}
    }
    if let Some((minutes, took)) = minutes_from_now(words, at) {
        let comes = hearing.now + TimeDelta::minutes(minutes);
        return (clock(local(comes, zone)), took);
    }
    let hour = || {
        when::coming(
            &format!("at {word} {}", day_about(words, at)),
            hearing.now,
            zone,
        )
    };
    let after_mark = when::is_hour_mark(before) || when::is_of_an_hour(next);
    if MEASURES.contains(&next)
        || psi_in(next).is_some()
        || ["task", "tarea", "circuit"].contains(&before)
    {
        return (None, 1);
    }
    match (unit(), word.parse::<u32>()) {
        (unit, Ok(1..=12)) if after_mark => match (hour().map(|at| local(at, zone)), unit) {
            (Some(hour), Some(unit)) => (Some(Mark::Either(unit, hour)), 1),
            (hour, _) => (hour.and_then(clock), 1),
        },
        (Some(unit), _) if !after_mark || when::clock_in(word).is_none() => {
            (Some(Mark::Unit(unit)), 1)
        }
        _ => (when::clock_in(word).and_then(clock), 1),
    }
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

/// Words between what is said of one truck and of the next.
const BREAKS: &[&str] = &["and", "y", "then", "plus"];
/// Words by which a time is today's.
const TODAY: &[&str] = &["today", "tonight", "tonite", "hoy", "noche"];

/// Writes a text so that what is told of several trucks is parted by words alone.
fn spoken(text: &str) -> String {
    let spoken = when::with_halves_joined(text).replace('@', " at ");
    let parted = |text: String, mark: &str| text.replace(mark, " and ");
    [", ", ";", "&", "\n"].into_iter().fold(spoken, parted)
}

fn words_in(spoken: &str) -> Vec<&str> {
    let apart = |c: char| c.is_whitespace() || ",()".contains(c);
    let bare = |word: &'_ str| -> usize {
        let word = word.trim_end_matches(['.', ':', '!']);
        word.trim_end_matches("'s").len()
    };
    let words = spoken.split(apart).map(|word| &word[..bare(word)]);
    words.filter(|word| !word.is_empty()).collect()
}

/// Returns the part of a message, word by word, that a word stands in, and the parts before and behind it.
fn parts<'a, 'w>(words: &'a [&'w str], at: usize) -> (usize, Vec<&'a [&'w str]>) {
    let parts: Vec<&[&str]> = words.split(|word| BREAKS.contains(word)).collect();
    let mut end = 0;
    let own = parts.iter().position(|part| {
        end += part.len() + 1;
        at < end
    });
    (own.unwrap_or_default(), parts)
}

/// Returns the day that is said of the truck that a word is about, empty for today: the one in the same part of the
/// message, else one before it, else one behind it where that part tells no time of its own, or the own part none.
fn day_about(words: &[&str], at: usize) -> String {
    let (own, parts) = parts(words, at);
    let day = |part: &&[&str]| match part.iter().any(|word| TODAY.contains(word)) {
        true => Some(String::new()),
        false => when::day_word(&part.join(" ")),
    };
    let numbers = |part: &[&str]| {
        let number = |word: &&&str| word.starts_with(|c: char| c.is_ascii_digit());
        part.iter().filter(number).count()
    };
    let before = || parts[..own].iter().rev().find_map(day);
    let shared = |part: &&&[&str]| numbers(part) == 0 || numbers(parts[own]) < 2;
    let behind = || parts[own + 1..].iter().filter(shared).find_map(day);
    let found = parts.get(own).and_then(day);
    found.or_else(before).or_else(behind).unwrap_or_default()
}

/// Returns the words that are about the truck of a trailer, with their day.
fn words_about(words: &[&str], at: usize) -> String {
    let (own, parts) = parts(words, at);
    let told = parts
        .get(own)
        .map_or_else(String::new, |part| part.join(" "));
    match when::names_a_day(&told) {
        true => told,
        false => format!("{told} {}", day_about(words, at)),
    }
}

/// Settles what "at 8" is: the hour where a trailer is named elsewhere, the trailer where a time is; none where it may be
/// either.
fn settled(marks: Vec<Mark>) -> Option<Vec<Mark>> {
    let unit = marks.iter().any(|mark| matches!(mark, Mark::Unit(_)));
    let time = marks.iter().any(|mark| matches!(mark, Mark::At(_)));
    let settle = |mark| match mark {
        Mark::Either(_, hour) if unit => Some(Mark::At(hour)),
        Mark::Either(name, _) if time => Some(Mark::Unit(name)),
        Mark::Either(..) => None,
        mark => Some(mark),
    };
    marks.into_iter().map(settle).collect()
}

/// Pairs trailers with times by their order: each trailer with the time behind it, or each time with the trailers behind
/// it; none where neither goes.
fn paired(marks: Vec<Mark>) -> Option<Vec<(Option<UnitName>, Option<String>)>> {
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

fn zone(hearing: &Hearing<'_>) -> Tz {
    let named = hearing.names();
    let unit = named.first();
    unit.and_then(|unit| hearing.fleet.job_of(unit, hearing.now, None))
        .map_or(hearing.fleet.time_zone, |job| job.time_zone)
}

fn local(at: DateTime<Utc>, zone: Tz) -> String {
    at.with_timezone(&zone).format("%H:%M").to_string()
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
        let pairs = settled(marks).and_then(paired)?;
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
