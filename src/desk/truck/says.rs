//! What the words of a message say of a truck that was to come: that it is off, that it is late, that it has not come.

use chrono::{DateTime, Utc};
use chrono_tz::Tz;

use super::again::time_told;
use crate::desk::phrases::{Phrases, is_marked, plain};

/// The most words of a time behind "til".
const LONGEST_TIME: usize = 3;

/// Tells whether a message says that a truck does not come at all, and not only later.
pub(super) fn is_off(phrases: &Phrases, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    says("unneeded")
        || is_given_up(phrases, text)
        || (says("off") || denies_coming(phrases, text)) && !is_denied_until(phrases, text)
}

/// Tells whether a truck is said to come no more at all, whatever else says that it is not there: "no truck for 12 tonight".
pub(super) fn is_given_up(phrases: &Phrases, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    says("quits") || says("none") && says("evening")
}

/// Tells whether a message says that a truck comes later than it was promised for.
pub(super) fn is_late(phrases: &Phrases, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    // "flat tire on the truck" may be the tow vehicle's
    let trouble = says("trouble") && says("pumps");
    says("late") || trouble || is_denied_until(phrases, text)
}

/// "Can't make it til 9" tells of a truck that is late.
fn is_denied_until(phrases: &Phrases, text: &str) -> bool {
    hour_of(phrases, text).is_some() && denies_coming(phrases, text)
}

/// Tells whether a message is about a truck that is off or late.
pub(in crate::desk) fn is_told_of(phrases: &Phrases, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    // "is here now" tells of none that is late
    let late = is_late(phrases, text) && (!says("here") || is_late_indeed(phrases, text));
    let wished = says("not") && !says("unneeded");
    says("who")
        && !is_of_a_water_pump(phrases, text)
        && (says("absent") || (is_off(phrases, text) || late) && !wished)
        && !says("other")
        && !is_marked(text)
}

/// "12 pump wont come on": the pump of a trailer, and no truck that does not come.
fn is_of_a_water_pump(phrases: &Phrases, text: &str) -> bool {
    let others = phrases.without("truck", "pump-alone", text);
    denies_coming(phrases, text) && !phrases.holds("truck", "who", &others)
}

/// Tells whether a message says that trucks are off or have not come: that can hold for several trailers at once.
pub(in crate::desk) fn none_comes(phrases: &Phrases, text: &str) -> bool {
    let absent = phrases.holds("truck", "absent", text);
    is_told_of(phrases, text) && (absent || is_off(phrases, text) && !is_late(phrases, text))
}

/// Tells whether a truck is said to be late by more than the word "now".
pub(super) fn is_late_indeed(phrases: &Phrases, text: &str) -> bool {
    is_late(phrases, &phrases.without("truck", "now", text))
}

/// Reads the hour until which no truck comes: "cant make it til 9", "no llega hasta las 10".
pub(super) fn until(
    phrases: &Phrases,
    text: &str,
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<DateTime<Utc>> {
    let hour = hour_of(phrases, text)?;
    time_told(&hour, now, zone)
}

/// Returns the number of that hour as it was typed: it is no trailer's.
pub(super) fn hour_until(phrases: &Phrases, text: &str) -> Option<String> {
    let hour = hour_of(phrases, text)?;
    let word = hour
        .split_whitespace()
        .find(|word| word.starts_with(|c: char| c.is_ascii_digit()))?;
    Some(
        word.trim_end_matches(|c: char| !c.is_ascii_digit())
            .to_owned(),
    )
}

/// Returns the words of the time behind "til": up to the first that is of no time.
fn hour_of(phrases: &Phrases, text: &str) -> Option<String> {
    let behind = phrases.following("truck", "until", text)?;
    // "not before midnight"
    for (list, clock) in [("midnight", "00:00"), ("noon", "12:00")] {
        let first = behind.split_whitespace().next().unwrap_or_default();
        if phrases.is("clock", list, first) {
            return Some(clock.to_owned());
        }
    }
    let digit = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let of_it = |word: &&str| digit(word) || phrases.is("truck", "beside-a-time", word);
    let words: Vec<&str> = behind.split_whitespace().take_while(of_it).collect();
    let first = words.iter().position(|word| digit(word))?;
    // "til 11 at 12": the second number is no part of the hour
    let rest = &words[first + 1..];
    let own = rest
        .iter()
        .take_while(|word| !digit(word) && !phrases.is("mend", "trailer", word));
    let end = first + 1 + own.count();
    Some(words[..end.min(first + LONGEST_TIME)].join(" "))
}

/// Tells whether it is denied that somebody comes: "not gonna make it", "ya no viene". "No, it comes at 8" denies nothing.
fn denies_coming(phrases: &Phrases, text: &str) -> bool {
    let words: Vec<&str> = text.split_whitespace().collect();
    let goes_on = |word: &str| !word.ends_with([',', '.', ';', '!']);
    let denial = |at: &usize| goes_on(words[*at]) && phrases.is("truck", "denial", words[*at]);
    let mut denials = (0..words.len()).filter(denial);
    denials.any(|at| {
        let behind = &words[at + 1..];
        let filler = |word: &&&str| goes_on(word) && phrases.is("truck", "beside-a-denial", word);
        let fillers = behind.iter().take_while(filler).count();
        let comes = |from| phrases.opens("truck", "comes", &plain(&words_from(behind, from)));
        (0..=fillers).any(comes)
    })
}

fn words_from(words: &[&str], from: usize) -> String {
    words.get(from..).unwrap_or_default().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_truck_is_off_or_late_by_what_is_denied_of_it() {
        let phrases = Phrases::built_in();
        for (text, off, late) in [
            ("truck cant make it", true, false),
            ("truck cant make it til 9", false, true),
            ("truck wont be there til 10", false, true),
            ("trucks not gonna make it", true, false),
            ("trucks not coming til 11 for 12", false, true),
            ("the hauler isnt going to be able to come", true, false),
            ("hauler quit on us", true, false),
            ("hauler cant do it tonight", true, false),
            ("ya no viene la pipa de la 12", true, false),
            ("la pipa no puede llegar hasta las 10", false, true),
            ("la pipa no llega hasta las 10", false, true),
            ("dont need the truck on 23 anymore", true, false),
            ("flat tire on the pump truck", false, true),
            ("truck for 12 comes at 8", false, false),
            ("no, the truck comes at 8", false, false),
        ] {
            assert_eq!(is_off(phrases, text), off, "off: {text}");
            assert_eq!(is_late(phrases, text), late, "late: {text}");
        }
    }

    #[test]
    fn a_water_pump_that_does_not_come_on_is_no_truck() {
        let phrases = Phrases::built_in();
        for (text, told) in [
            ("12 pump wont come on", false),
            ("pump cancelled for 12", true),
            ("pump truck wont come", true),
        ] {
            assert_eq!(is_told_of(phrases, text), told, "{text}");
        }
    }

    #[test]
    fn the_hour_until_which_none_comes_is_no_trailer() {
        let phrases = Phrases::built_in();
        for (text, hour) in [
            ("truck cant make it til 9", Some("9")),
            ("truck wont make it to 12 before 11", Some("11")),
            ("trucks not coming til 11 for 12", Some("11")),
            ("no llega la pipa hasta las 10 a la 12", Some("10")),
            ("truck stuck, not before 7:30pm", Some("7:30")),
            ("truck cant make it", None),
        ] {
            assert_eq!(hour_until(phrases, text).as_deref(), hour, "{text}");
        }
    }
}
