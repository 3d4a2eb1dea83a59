//! How orders about the crew are worded (`grammar/talk.toml`): the few that the reader does not take as orders, since their
//! words open reports too, and the words for roles and languages.

use chrono::NaiveTime;

use super::super::phrases::Phrases;
use super::super::when;
use crate::fleet::Role;
use crate::heard::{Command, CommandName, Language};

/// A longer message tells more than the hours at which somebody wants to be left alone.
const LONGEST: usize = 10;

/// Reads a message that is an order about the crew and nothing else.
pub(in crate::desk) fn order(phrases: &Phrases, text: &str) -> Option<Command> {
    let text = text.trim();
    let command = |name, rest: &str| {
        Some(Command {
            name,
            task: None,
            rest: rest.trim().to_owned(),
        })
    };
    let alone = [(CommandName::Crew, "list"), (CommandName::Leave, "leave")];
    for (name, list) in alone {
        if phrases.is("crew", list, text) {
            return command(name, "");
        }
    }
    let with = [
        (CommandName::ShutOut, "shut-out"),
        (CommandName::Log, "log"),
    ];
    for (name, list) in with {
        if let Some(rest) = phrases
            .after("crew", list, text)
            .filter(|rest| !rest.is_empty())
        {
            return command(name, rest);
        }
    }
    if let Some(rest) = phrases.after("crew", "language", text)
        && language(phrases, rest).is_some()
    {
        return command(CommandName::Language, rest);
    }
    // a language that is none of ours is asked for all the same
    if let Some(rest) = phrases.after("crew", "language-order", text)
        && rest.split_whitespace().count() == 1
    {
        return command(CommandName::Language, rest);
    }
    if let Some(rest) = phrases.after("crew", "quiet", text)
        && (hours(rest).is_some() || phrases.is("crew", "off", rest) || means_hours(phrases, rest))
    {
        return command(CommandName::Quiet, rest);
    }
    None
}

/// Returns the role that a word names.
pub(super) fn role(phrases: &Phrases, word: &str) -> Option<Role> {
    let roles = [
        ("driver", Role::Driver),
        ("tech", Role::Tech),
        ("dispatcher", Role::Dispatcher),
    ];
    let named = roles
        .into_iter()
        .find(|(list, _)| phrases.is("role", list, word));
    named.map(|(_, role)| role)
}

/// Returns the language that a word names.
pub(super) fn language(phrases: &Phrases, word: &str) -> Option<Language> {
    let languages = [("en", Language::En), ("es", Language::Es)];
    let named = languages
        .into_iter()
        .find(|(list, _)| phrases.is("language", list, word));
    named.map(|(_, language)| language)
}

/// Cuts a role off the end of a text: `sam tech`.
pub(super) fn last_role<'t>(phrases: &Phrases, text: &'t str) -> Option<(&'t str, Role)> {
    let (name, word) = text.trim().rsplit_once(char::is_whitespace)?;
    Some((name.trim(), role(phrases, word)?))
}

/// Reads two clock times: `22:00-06:00`, `22 to 6`, `from 10 p.m. till 6`, `de las 22h hasta las 6`.
pub(super) fn hours(text: &str) -> Option<(NaiveTime, NaiveTime)> {
    let phrases = Phrases::built_in();
    let text = when::with_halves_joined(text).replace(['–', '—'], "-");
    let (from, to) = two_times(phrases, &text)?;
    let (from, to) = (clock(from)?, clock(to)?);
    (from != to).then_some((from, to))
}

/// Parts a text between two times.
fn two_times<'t>(phrases: &Phrases, text: &'t str) -> Option<(&'t str, &'t str)> {
    if let Some(rest) = phrases.after("crew", "quiet-between", text) {
        return phrases.parted("crew", "quiet-and", rest);
    }
    let rest = phrases.after("crew", "quiet-from", text).unwrap_or(text);
    rest.split_once('-')
        .or_else(|| phrases.parted("crew", "quiet-to", rest))
}

/// Tells whether a text means two times, or one alone, though they may not be read: "22 to whenever", "2200".
fn means_hours(phrases: &Phrases, text: &str) -> bool {
    let begins = |text: &str| text.trim().starts_with(|c: char| c.is_ascii_digit());
    let alone = text.split_whitespace().count() == 1 && begins(text);
    let long = text.split_whitespace().count() > LONGEST;
    alone || !long && two_times(phrases, text).is_some_and(|(from, to)| begins(from) || begins(to))
}

/// Reads a clock time told alone: `22:00`, `22`, `2200`, `22h`, `10:30pm`, `midnight`.
fn clock(text: &str) -> Option<NaiveTime> {
    let phrases = Phrases::built_in();
    let text = text.trim();
    let text = phrases.after("crew", "quiet-from", text).unwrap_or(text);
    let clock = match when::without_half(text) {
        _ if phrases.is("clock", "midnight", text) => "00:00".to_owned(),
        _ if phrases.is("clock", "noon", text) => "12:00".to_owned(),
        Some((digits, _)) if !is_hour_of_half(digits) => return None,
        // "24" ends a day
        None if text == "24" || text == "24:00" => "00:00".to_owned(),
        None if is_hour(text) => when::clock_in(&format!("{text}:00"))?,
        _ if text.contains(char::is_whitespace) => return None,
        _ => when::clock_in(text)?,
    };
    NaiveTime::parse_from_str(&clock, "%H:%M").ok()
}

/// Tells whether a text is an hour and nothing else: `22`.
fn is_hour(text: &str) -> bool {
    text.len() <= 2 && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// Tells whether these are an hour of half a day, perhaps with its minutes: `10`, `10:30`.
fn is_hour_of_half(digits: &str) -> bool {
    let hour = digits.split(':').next().unwrap_or(digits);
    hour.parse::<u32>()
        .is_ok_and(|hour| (1..=12).contains(&hour))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn name_of(text: &str) -> Option<CommandName> {
        order(Phrases::built_in(), text).map(|order| order.name)
    }

    #[test]
    fn quiet_hours_are_read_as_people_write_them() {
        let time = |h, m| NaiveTime::from_hms_opt(h, m, 0).unwrap();
        let night = Some((time(22, 0), time(6, 0)));
        for text in [
            "22:00-06:00",
            "22-6",
            "10pm to 6am",
            "10 pm - 6 am",
            "22 a 6",
            "10 p.m. to 6 a.m.",
            "from 10 P.M. till 6 A.M.",
            "2200-0600",
            "22h a 6h",
            "de las 22 hasta las 6",
            "de las 10 p. m. a las 6 a. m.",
            "10pm till 6am",
        ] {
            assert_eq!(hours(text), night, "{text}");
        }
        for text in [
            "22:00",
            "hours off at 6",
            "22 gal to 6 gal",
            "22-22",
            "25-6",
            "22:61-6",
            "13pm-6am",
            "9-12-3",
            "",
        ] {
            assert_eq!(hours(text), None, "{text}");
        }
    }

    #[test]
    fn words_that_open_reports_are_no_orders() {
        for text in [
            "quiet day on 12",
            "crew of 3 on site",
            "crew arrived at 12",
            "who called the truck",
            "leaving 12",
            "leave 12 on site",
            "language barrier with the site manager",
            "who",
        ] {
            assert_eq!(name_of(text), None, "{text}");
        }
        assert_eq!(name_of("crew"), Some(CommandName::Crew));
        assert_eq!(name_of("¿Quién está?"), Some(CommandName::Crew));
        assert_eq!(name_of("leave the crew"), Some(CommandName::Leave));
        assert_eq!(name_of("quiet 22-6"), Some(CommandName::Quiet));
        assert_eq!(name_of("Idioma español"), Some(CommandName::Language));
        assert_eq!(name_of("bloquea a Sam"), Some(CommandName::ShutOut));
    }
}
