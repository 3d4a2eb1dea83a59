//! How orders about the crew are worded (`grammar/talk.toml`): the few that the reader does not take as orders, since their
//! words open reports too, and the words for roles and languages.

use chrono::NaiveTime;

use super::super::phrases::Phrases;
use crate::fleet::Role;
use crate::heard::{Command, CommandName, Language};

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
        && (hours(rest).is_some() || phrases.is("crew", "off", rest))
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

/// Reads two clock times: `22:00-06:00`, `22 to 6`, `10pm a 6am`.
pub(super) fn hours(text: &str) -> Option<(NaiveTime, NaiveTime)> {
    let text = text.to_lowercase();
    let (from, to) = ["-", "–", " to ", " a ", " until ", " hasta "]
        .iter()
        .find_map(|between| text.split_once(between))?;
    let (from, to) = (clock(from)?, clock(to)?);
    (from != to).then_some((from, to))
}

/// Reads a clock time: `22:00`, `22`, `10 pm`, `10:30pm`.
fn clock(text: &str) -> Option<NaiveTime> {
    let text = text.trim().trim_start_matches("las ").replace(' ', "");
    let (text, noon) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(rest), _) => (rest, Some(0)),
        (_, Some(rest)) => (rest, Some(12)),
        _ => (text.as_str(), None),
    };
    let (hour, minute) = text.split_once(':').unwrap_or((text, "0"));
    let number = |text: &str| -> Option<u32> {
        let digits = (1..=2).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| text.parse().ok())?
    };
    let (hour, minute) = (number(hour)?, number(minute)?);
    let hour = match noon {
        Some(_) if !(1..=12).contains(&hour) => return None,
        Some(noon) => hour % 12 + noon,
        None => hour,
    };
    NaiveTime::from_hms_opt(hour % 24, minute, 0).filter(|_| hour <= 24)
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
        ] {
            assert_eq!(hours(text), night, "{text}");
        }
        for text in [
            "22:00", "22-22", "25-6", "22:61-6", "13pm-6am", "9-12-3", "",
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
