//! The voice: one language, one style of numbers, one zone, one now.

use std::borrow::Cow;

use chrono::{DateTime, Datelike, Timelike, Utc};
use chrono_tz::Tz;
use fluent_bundle::{FluentArgs, FluentValue};

use super::catalogue::Replies;
use crate::finding::{FactValue, Level, Urgency};
use crate::fleet::Fleet;
use crate::heard::Language;
use crate::quantity::{Measure, Style};

/// How many characters of a person's own words are quoted back.
const QUOTED: usize = 60;
/// How many characters of a fact that is a text are printed.
const FACT: usize = 200;

/// Speaks to one reader.
#[derive(Clone, Copy)]
pub struct Voice<'a> {
    replies: &'a Replies,
    language: Language,
    style: Style,
    zone: Tz,
    now: DateTime<Utc>,
    people: Option<&'a Fleet>,
}

/// What goes into a text.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg<'a> {
    /// A word or a name, as it stands.
    Text(Cow<'a, str>),
    /// A number held in a unit of measure, printed in the reader's.
    Number(f64, Measure),
    /// A whole number that the text may bend its words by.
    Count(i64),
    /// An instant, printed as a local time.
    Time(DateTime<Utc>),
}

impl<'a> Voice<'a> {
    pub(super) fn new(
        replies: &'a Replies,
        language: Language,
        style: Style,
        zone: Tz,
        now: DateTime<Utc>,
    ) -> Self {
        Voice {
            replies,
            language,
            style,
            zone,
            now,
            people: None,
        }
    }

    /// Returns the same voice for local times in another zone.
    pub fn in_zone(self, zone: Tz) -> Self {
        Voice { zone, ..self }
    }

    /// Returns the same voice that calls people and sites by the names the fleet's files give them.
    pub fn naming(self, fleet: &'a Fleet) -> Self {
        Voice {
            people: Some(fleet),
            ..self
        }
    }

    /// Returns the fleet whose names it gives, where it knows one.
    pub(super) fn fleet(&self) -> Option<&'a Fleet> {
        self.people
    }

    /// Returns the language it speaks.
    pub fn language(&self) -> Language {
        self.language
    }

    /// Returns the instant it speaks at.
    pub fn now(&self) -> DateTime<Utc> {
        self.now
    }

    /// Says the text under `key`; an unknown key is printed as it is.
    pub fn say(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        let mut out = String::new();
        self.write(&mut out, key, args);
        out
    }

    /// Says a text that takes no arguments.
    pub fn word(&self, key: &str) -> String {
        self.say(key, &[])
    }

    /// Appends the text under `key`.
    pub fn write(&self, out: &mut String, key: &str, args: &[(&str, Arg<'_>)]) {
        if args.is_empty() {
            self.replies.write(out, self.language, key, None);
            return;
        }
        let mut values = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            values.set(*name, self.value(arg));
        }
        self.replies.write(out, self.language, key, Some(&values));
    }

    /// Tells whether there is a text under `key` in this language.
    pub fn knows(&self, key: &str) -> bool {
        self.replies.has(self.language, key)
    }

    /// Prints a number in the fleet's units.
    pub fn number(&self, value: f64, measure: Measure) -> String {
        self.style.show(value, measure)
    }

    /// Prints an instant as a local time: `19:40`, with its weekday when that is another day than now, with the date
    /// when it is a week or more away.
    pub fn time(&self, at: DateTime<Utc>) -> String {
        let local = at.with_timezone(&self.zone);
        let today = self.now.with_timezone(&self.zone).date_naive();
        let away = (local.date_naive() - today).num_days();
        let mut out = String::new();
        if away != 0 {
            let day = local.weekday().num_days_from_monday() as usize;
            self.write(&mut out, DAYS[day], &[]);
            out.push(' ');
            if !(-6..=6).contains(&away) {
                out.push_str(&local.day().to_string());
                out.push(' ');
                self.write(&mut out, MONTHS[local.month0() as usize], &[]);
                out.push(' ');
            }
        }
        if self.style.twelve_hour {
            let (afternoon, hour) = local.hour12();
            let half = if afternoon { "pm" } else { "am" };
            out.push_str(&format!("{hour}:{:02} {half}", local.minute()));
        } else {
            out.push_str(&format!("{:02}:{:02}", local.hour(), local.minute()));
        }
        out
    }

    /// Prints an instant with its day: `Sat 23 Jan 2027, 17:10`, in the reader's language.
    pub fn date_and_time(&self, at: DateTime<Utc>) -> String {
        let local = at.with_timezone(&self.zone);
        let today = Voice { now: at, ..*self };
        let (date, year) = (self.date(at), local.year());
        format!("{date} {year}, {}", today.time(at))
    }

    /// Prints an instant's local day: `Sat 23 Jan`, in the reader's language.
    pub fn date(&self, at: DateTime<Utc>) -> String {
        let local = at.with_timezone(&self.zone);
        let month = self.word(MONTHS[local.month0() as usize]);
        format!("{} {} {month}", self.weekday(at), local.day())
    }

    /// Prints the weekday of an instant's local day.
    pub fn weekday(&self, at: DateTime<Utc>) -> String {
        let local = at.with_timezone(&self.zone);
        self.word(DAYS[local.weekday().num_days_from_monday() as usize])
    }

    /// Prints how long ago an instant was: `25 min`, `3 h`, `2 d`.
    pub fn age(&self, since: DateTime<Utc>) -> String {
        let minutes = (self.now - since).num_minutes().max(1);
        match minutes {
            0..90 => format!("{minutes} min"),
            90..2880 => format!("{} h", (minutes + 30) / 60),
            _ => format!("{} d", (minutes + 720) / 1440),
        }
    }

    /// Joins words with commas and a closing "and".
    pub fn all_of(&self, words: &[String]) -> String {
        self.joined(words, "list-and")
    }

    /// Joins words with commas and a closing "or".
    pub fn one_of(&self, words: &[String]) -> String {
        self.joined(words, "list-or")
    }

    /// Returns a person's name, by crew id; the id where no file names the person.
    pub fn person<'b>(&self, id: &'b str) -> Cow<'b, str>
    where
        'a: 'b,
    {
        match self.people.and_then(|fleet| fleet.crew.get(id)) {
            Some(member) => Cow::Borrowed(member.name.as_str()),
            None => Cow::Borrowed(id),
        }
    }

    /// Quotes a person's own words: on one line, shortened, without control or direction marks.
    pub fn quote(&self, words: &str) -> String {
        format!(
            "\"{}\"",
            clean(words.trim().trim_end_matches([',', ';', ':', '.']), QUOTED).replace('"', "'")
        )
    }

    /// Makes a longer text of the fleet's files fit for a reply: on one line, without control or direction marks.
    pub fn plain<'t>(&self, text: &'t str) -> Cow<'t, str> {
        clean(text.trim(), FACT)
    }

    /// Returns the word a line opens with: the signal word where someone can be hurt, else how soon to act.
    pub fn opening(&self, level: Level, urgency: Urgency) -> String {
        self.word(match (level, urgency) {
            (Level::Danger, _) => "signal-danger",
            (Level::Warning, _) => "signal-warning",
            (Level::Caution, _) => "signal-caution",
            (Level::Notice, Urgency::Now) => "urgency-now",
            (Level::Notice, Urgency::Soon) => "urgency-soon",
            (Level::Notice, Urgency::Plan) => "urgency-plan",
        })
    }

    /// Turns a fact into what a text takes.
    pub(super) fn fact<'f>(&self, value: &'f FactValue) -> Arg<'f> {
        match value {
            FactValue::Number(number, Measure::Count) if number.fract() == 0.0 => {
                Arg::Count(*number as i64)
            }
            FactValue::Number(number, measure) => Arg::Number(*number, *measure),
            FactValue::Time(at) => Arg::Time(*at),
            FactValue::Text(text) => Arg::Text(clean(text, FACT)),
        }
    }

    /// Prints what goes into a text as it would stand there.
    pub(super) fn show(&self, arg: &Arg<'_>) -> String {
        match arg {
            Arg::Text(text) => text.to_string(),
            Arg::Number(number, measure) => self.number(*number, *measure),
            Arg::Count(count) => count.to_string(),
            Arg::Time(at) => self.time(*at),
        }
    }

    fn value<'v>(&self, arg: &'v Arg<'_>) -> FluentValue<'v> {
        match arg {
            Arg::Text(text) => FluentValue::String(Cow::Borrowed(text)),
            Arg::Count(count) => FluentValue::from(*count),
            other => FluentValue::String(Cow::Owned(self.show(other))),
        }
    }

    fn joined(&self, words: &[String], closing: &str) -> String {
        match words {
            [] => String::new(),
            [one] => one.clone(),
            [first @ .., last] => self.say(
                closing,
                &[
                    ("first", Arg::from(first.join(", "))),
                    ("last", Arg::from(last.as_str())),
                ],
            ),
        }
    }
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Arg::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Arg<'a> {
    fn from(text: &'a String) -> Self {
        Arg::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Arg<'_> {
    fn from(text: String) -> Self {
        Arg::Text(Cow::Owned(text))
    }
}

impl<'a> From<Cow<'a, str>> for Arg<'a> {
    fn from(text: Cow<'a, str>) -> Self {
        Arg::Text(text)
    }
}

impl From<u32> for Arg<'_> {
    fn from(count: u32) -> Self {
        Arg::Count(count.into())
    }
}

impl From<usize> for Arg<'_> {
    fn from(count: usize) -> Self {
        Arg::Count(count as i64)
    }
}

impl From<DateTime<Utc>> for Arg<'_> {
    fn from(at: DateTime<Utc>) -> Self {
        Arg::Time(at)
    }
}

const DAYS: [&str; 7] = [
    "day-mon", "day-tue", "day-wed", "day-thu", "day-fri", "day-sat", "day-sun",
];

const MONTHS: [&str; 12] = [
    "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8",
    "month-9", "month-10", "month-11", "month-12",
];

/// Makes a person's words fit for a reply: one line, shortened, without control or direction marks.
fn clean(words: &str, most: usize) -> Cow<'_, str> {
    let plain = |c: char| c != ' ' && (c.is_whitespace() || c.is_control() || is_direction_mark(c));
    if words.len() <= most && !words.contains(plain) && !words.contains("  ") {
        return Cow::Borrowed(words);
    }
    let mut out = String::new();
    let mut last = ' ';
    let mut length = 0;
    for c in words.chars() {
        let c = if c.is_whitespace() { ' ' } else { c };
        if c.is_control() || is_direction_mark(c) || (c == ' ' && last == ' ') {
            continue;
        }
        if length == most {
            out.push('…');
            break;
        }
        out.push(c);
        last = c;
        length += 1;
    }
    Cow::Owned(out)
}

/// Tells whether a character is unseen and only changes direction or joins: it has no place in a quotation.
fn is_direction_mark(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}
