//! Words about a truck that name none: "push it to 2000" after an order, "se canceló el de la 10", and the bare answers to
//! what the bot asked of a truck. Each is read as the whole sentence that it stands for.

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use crate::book::Task;
use crate::desk::phrases::plain;
use crate::desk::settle;
use crate::desk::{Desk, when};
use crate::dialogue::{About, Talk};
use crate::finding::TaskKind;
use crate::fleet::Fleet;
use crate::heard::{Entry, Heard, UnitName};

/// After an order about a truck, "it" is the truck for this long.
const LATELY: TimeDelta = TimeDelta::minutes(60);
/// A time told in more words than this is part of something else.
const LONGEST: usize = 6;

/// Returns the whole sentence that a message about a truck stands for; none where it is no such message.
pub(in crate::desk) fn spelled_out(
    desk: &Desk,
    fleet: &Fleet,
    talk: &Talk,
    heard: &Heard,
    (who, text): (&str, &str),
    at: DateTime<Utc>,
) -> Option<String> {
    let phrases = desk.phrases;
    let says = |list| phrases.holds("truck", list, text);
    if says("who") || says("other") || heard.ask.is_some() || heard.command.is_some() {
        return None;
    }
    // "the one for 10 is cancelled"
    if says("dropped")
        && let [unit] = units_in(fleet, text).as_slice()
        && called(desk, unit).is_some()
    {
        return Some(format!("truck for {unit} cancelled"));
    }
    let reports = |entry: &Entry| entry.unit.is_some() && !entry.is_empty();
    let open = talk.question_at(at).map(|question| &question.about);
    let asked = matches!(open, None | Some(About::TruckWhen { .. }));
    if !asked || heard.entries.iter().any(reports) {
        return None;
    }
    let rest = phrases.after("truck", "again", text)?;
    let task = ordered_lately(desk, who, at)?;
    let unit = task.unit.as_ref()?;
    let comes = time_told(rest, at, zone(fleet, unit, at))?;
    Some(sentence(desk, fleet, unit, comes, at))
}

/// Reads a bare answer to what was asked of a truck; none where it is none.
pub(in crate::desk) fn answered(
    desk: &Desk,
    fleet: &Fleet,
    text: &str,
    about: &About,
    at: DateTime<Utc>,
) -> Option<String> {
    match about {
        About::TruckWhen { unit } => {
            let comes = time_told(text, at, zone(fleet, unit, at))?;
            Some(sentence(desk, fleet, unit, comes, at))
        }
        About::HowMuch { unit, .. } => {
            let gallons = gallons_alone(text)?;
            Some(format!("{unit}: pumped {gallons} gal"))
        }
        _ => None,
    }
}

/// Says when a truck comes, as the crew would: one that was promised before comes at another time now.
fn sentence(
    desk: &Desk,
    fleet: &Fleet,
    unit: &UnitName,
    comes: DateTime<Utc>,
    at: DateTime<Utc>,
) -> String {
    let zone = zone(fleet, unit, at);
    let clock = comes.with_timezone(&zone).format("%H:%M");
    let promised = called(desk, unit).is_some_and(|task| task.promised.is_some());
    match promised {
        true => format!("truck for {unit} late, {clock}"),
        false => format!("truck for {unit} comes at {clock}"),
    }
}

/// Reads a time to come that is told alone: "at 745", "2030", "8ish", "10 min", "half an hour".
fn time_told(text: &str, now: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    const BESIDE: &[&str] = &[
        "at", "by", "to", "in", "about", "around", "like", "now", "tonight", "he", "says", "she",
        "its", "a", "las", "la", "en", "como", "ahora", "dice", "que", "pm", "am", "oclock", "ish",
        "h",
    ];
    let folded = parts_of_an_hour(&plain(text));
    let words: Vec<&str> = folded.split(' ').filter(|word| !word.is_empty()).collect();
    if words.is_empty() || words.len() > LONGEST {
        return None;
    }
    if let Some(minutes) = minutes_told(&folded) {
        return Some(now + TimeDelta::minutes(minutes));
    }
    let afternoon = words.iter().any(|word| word.ends_with("pm"));
    let morning = words.iter().any(|word| word.ends_with("am"));
    let digits = |word: &&str| word.starts_with(|c: char| c.is_ascii_digit());
    if words
        .iter()
        .any(|word| !digits(word) && !BESIDE.contains(word))
    {
        return None;
    }
    // the colon went with the folding: "7 15" and "715" are one time
    let told: String = words
        .iter()
        .filter(|word| digits(word))
        .map(|word| word.trim_end_matches(|c: char| c.is_alphabetic()))
        .collect();
    let (hour, minute) = match told.len() {
        1 | 2 => (told.parse::<u32>().ok()?, 0),
        3 | 4 => {
            let (hour, minute) = told.split_at(told.len() - 2);
            (hour.parse().ok()?, minute.parse().ok()?)
        }
        _ => return None,
    };
    if hour > 23 || minute > 59 {
        return None;
    }
    let half = match (afternoon, morning) {
        (true, _) => "pm",
        (_, true) => "am",
        _ => "",
    };
    if minute == 0 && hour <= 12 && half.is_empty() {
        return when::coming(&format!("at {hour}"), now, zone);
    }
    when::coming(&format!("{hour}:{minute:02}{half}"), now, zone)
}

/// Writes "7 y media" and "half past 7" in digits.
fn parts_of_an_hour(folded: &str) -> String {
    let past = [("half past ", "30"), ("quarter past ", "15")];
    for (words, minutes) in past {
        if let Some((before, hour)) = folded.split_once(words) {
            return format!("{before}{hour}{minutes}");
        }
    }
    folded.replace(" y media", "30").replace(" y cuarto", "15")
}

/// Reads "10 min", "half an hour", "media hora": the minutes from now.
fn minutes_told(folded: &str) -> Option<i64> {
    if ["half an hour", "half hour", "media hora"]
        .iter()
        .any(|words| folded.contains(words))
    {
        return Some(30);
    }
    let words: Vec<&str> = folded.split(' ').collect();
    words.iter().enumerate().find_map(|(at, word)| {
        let digits = word.trim_end_matches(|c: char| c.is_alphabetic());
        let glued = &word[digits.len()..];
        let measure = if glued.is_empty() {
            words.get(at + 1).copied()?
        } else {
            glued
        };
        let factor = match measure {
            "m" | "min" | "mins" | "minutes" | "minutos" => 1,
            "hr" | "hrs" | "hour" | "hours" | "hora" | "horas" => 60,
            _ => return None,
        };
        let count: i64 = digits.parse().ok()?;
        (1..=720)
            .contains(&(count * factor))
            .then_some(count * factor)
    })
}

/// Reads gallons that are told alone: "430", "430 gal", "about 430 gallons".
fn gallons_alone(text: &str) -> Option<f64> {
    const BESIDE: &[&str] = &[
        "gal", "gals", "gallons", "galones", "about", "around", "like", "took", "yes", "it", "he",
        "pumped", "como", "unos", "saco", "si", "fueron", "got",
    ];
    let lower = text.to_lowercase().replace(',', "");
    let words: Vec<&str> = lower
        .split_whitespace()
        .map(|word| word.trim_end_matches(['.', '!']))
        .collect();
    let mut numbers = Vec::new();
    for word in &words {
        let digits = word
            .trim_end_matches("galones")
            .trim_end_matches("gals")
            .trim_end_matches("gal");
        match digits.parse::<f64>() {
            Ok(number) => numbers.push(number),
            Err(_) if BESIDE.contains(word) => {}
            Err(_) => return None,
        }
    }
    match numbers.as_slice() {
        [gallons] if *gallons >= 1.0 && *gallons < 10_000.0 => Some(*gallons),
        _ => None,
    }
}

/// Returns the truck that the sender said was called a short while ago, where they reported nothing since.
fn ordered_lately<'d>(desk: &'d Desk, who: &str, at: DateTime<Utc>) -> Option<&'d Task> {
    let open = desk.book.tasks().open();
    let mine = open
        .filter(|task| task.kind == TaskKind::PumpOut && task.called_by.as_deref() == Some(who));
    let (called, task) = mine
        .filter_map(|task| Some((task.called?, task)))
        .max_by_key(|(called, _)| *called)?;
    let mut since = desk.book.sent(who).iter();
    let reported = since.any(|sent| sent.at > called && !sent.units.is_empty());
    (at - called <= LATELY && called <= at && !reported).then_some(task)
}

fn called<'d>(desk: &'d Desk, unit: &UnitName) -> Option<&'d Task> {
    let task = desk.book.tasks().open_task(unit, TaskKind::PumpOut);
    task.filter(|task| task.called.is_some())
}

fn units_in(fleet: &Fleet, text: &str) -> Vec<UnitName> {
    let words = text.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    let units = words.filter_map(|word| settle::known(fleet, &UnitName::new(word)));
    let mut found: Vec<UnitName> = units.cloned().collect();
    found.dedup();
    found
}

fn zone(fleet: &Fleet, unit: &UnitName, at: DateTime<Utc>) -> Tz {
    let job = fleet.job_of(unit, at, None);
    job.map_or(fleet.time_zone, |job| job.time_zone)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_that_is_told_alone_is_the_next_one() {
        let now: DateTime<Utc> = "2027-01-23T17:10:00Z".parse().expect("an instant");
        let told = |text: &str| {
            let at = time_told(text, now, Tz::UTC)?;
            Some(at.format("%H:%M").to_string())
        };
        for (text, wanted) in [
            ("at 745", Some("19:45")),
            ("2030", Some("20:30")),
            ("to 2000", Some("20:00")),
            ("8", Some("20:00")),
            ("8ish", Some("20:00")),
            ("7:15", Some("19:15")),
            ("7:15 pm", Some("19:15")),
            ("10 min", Some("17:20")),
            ("half an hour", Some("17:40")),
            ("en 2 horas", Some("19:10")),
            ("a las 8", Some("20:00")),
            ("a las 7 y media", Some("19:30")),
            ("half past 7", Some("19:30")),
            ("52", None),
            ("25:00", None),
            ("pressure 50", None),
            ("", None),
        ] {
            assert_eq!(told(text).as_deref(), wanted, "{text}");
        }
    }

    #[test]
    fn gallons_are_read_where_nothing_else_is_told() {
        for (text, wanted) in [
            ("430", Some(430.0)),
            ("430 gal", Some(430.0)),
            ("about 1,200 gallons", Some(1200.0)),
            ("380gal", Some(380.0)),
            ("2 or 300", None),
            ("no", None),
            ("12 pressure 50", None),
        ] {
            assert_eq!(gallons_alone(text), wanted, "{text}");
        }
    }
}
