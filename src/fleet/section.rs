//! One TOML table, read key by key.
//!
//! Every key asked for is checked where it stands; whatever was never asked for is an unknown key. A value that is
//! missing or wrong reads as `None`, so that reading goes on and every problem is reported at once.

use std::cell::RefCell;
use std::ops::RangeInclusive;

use chrono::{NaiveDate, NaiveDateTime, NaiveTime};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::problem::{FleetFile, Problem, nearest, quoted};

/// A place in a file: a byte offset.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Spot(usize);

impl Spot {
    /// Returns the byte offset.
    pub(super) fn offset(self) -> usize {
        self.0
    }
}

/// One file's text and the problems found in it so far.
pub(super) struct Sheet<'t> {
    file: FleetFile,
    text: &'t str,
    line_starts: Vec<usize>,
    problems: RefCell<Vec<Problem>>,
}

impl<'t> Sheet<'t> {
    pub(super) fn new(file: FleetFile, text: &'t str) -> Self {
        let breaks = text.match_indices('\n').map(|(at, _)| at + 1);
        let line_starts = std::iter::once(0).chain(breaks).collect();
        let problems = RefCell::default();
        Sheet {
            file,
            text,
            line_starts,
            problems,
        }
    }

    /// Parses the file; `None` when it is not TOML, with every such error reported.
    pub(super) fn parse(&self) -> Option<Spanned<DeTable<'t>>> {
        let (table, errors) = DeTable::parse_recoverable(self.text);
        if errors.is_empty() {
            return Some(table);
        }
        let mut last_line = 0;
        for error in errors {
            let span = error.span().unwrap_or(0..0);
            let spot = Spot(span.start);
            let (line, _) = self.position(spot);
            // what follows on the same line is nearly always the same mistake again
            if line != last_line {
                let why = error
                    .message()
                    .lines()
                    .next()
                    .unwrap_or_default()
                    .to_string();
                let hint = Some(why).filter(|why| !why.is_empty());
                self.report(spot, "", "TOML", self.line_at(line), hint);
            }
            last_line = line;
        }
        None
    }

    pub(super) fn report(
        &self,
        spot: Spot,
        place: impl Into<String>,
        expected: impl Into<String>,
        found: impl Into<String>,
        hint: Option<String>,
    ) {
        let (line, column) = self.position(spot);
        self.problems.borrow_mut().push(Problem {
            file: self.file,
            line,
            column,
            place: place.into(),
            expected: expected.into(),
            found: found.into(),
            hint,
        });
    }

    /// Returns the line of a spot, counted from 1.
    pub(super) fn line(&self, spot: Spot) -> usize {
        self.position(spot).0
    }

    pub(super) fn into_problems(self) -> Vec<Problem> {
        self.problems.into_inner()
    }

    fn position(&self, spot: Spot) -> (usize, usize) {
        let line = self
            .line_starts
            .partition_point(|&start| start <= spot.0)
            .max(1);
        let start = self.line_starts[line - 1];
        let column = self
            .text
            .get(start..spot.0)
            .map_or(1, |before| before.chars().count() + 1);
        (line, column)
    }

    fn line_at(&self, line: usize) -> String {
        let start = self.line_starts[line - 1];
        let rest = self.text.get(start..).unwrap_or_default();
        match rest.lines().next().map(str::trim).unwrap_or_default() {
            "" => "the end of the line".into(),
            text => quoted(text),
        }
    }
}

/// A table being read.
pub(super) struct Section<'s, 't> {
    sheet: &'s Sheet<'t>,
    table: &'s DeTable<'t>,
    spot: Spot,
    place: String,
    kind: &'static str,
    asked: Vec<&'static str>,
}

impl<'s, 't> Section<'s, 't> {
    /// Opens a table that `kind` names with its article: `a trailer`.
    pub(super) fn new(
        sheet: &'s Sheet<'t>,
        table: &'s Spanned<DeTable<'t>>,
        kind: &'static str,
    ) -> Self {
        let spot = Spot(table.span().start);
        Section {
            sheet,
            table: table.get_ref(),
            spot,
            place: String::new(),
            kind,
            asked: Vec::new(),
        }
    }

    /// Where the table begins.
    pub(super) fn spot(&self) -> Spot {
        self.spot
    }

    /// Names the table in the problems to come: `trailer 12`.
    pub(super) fn named(&mut self, place: impl Into<String>) {
        self.place = place.into();
    }

    /// What the table is called in problems.
    pub(super) fn place(&self) -> &str {
        &self.place
    }

    /// Where a key's value stands, or the table where the key is missing.
    pub(super) fn spot_of(&self, key: &str) -> Spot {
        self.table
            .get(key)
            .map_or(self.spot, |value| Spot(value.span().start))
    }

    /// Tells whether the key is there at all, right or wrong.
    pub(super) fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    /// Reports a problem with a key's value.
    pub(super) fn wrong(&self, key: &str, expected: impl Into<String>, hint: Option<String>) {
        match self.table.get(key) {
            Some(value) => self.wrong_value(key, value, expected, hint),
            None => {
                let place = self.place.clone();
                self.sheet
                    .report(self.spot, place, expected, "nothing", hint);
            }
        }
    }

    /// Reports a problem with a key's value that is not seen in its text.
    pub(super) fn report(&self, key: &str, expected: impl Into<String>, found: impl Into<String>) {
        self.sheet
            .report(self.spot_of(key), self.place_of(key), expected, found, None);
    }

    /// Tells whether the key holds a list with nothing in it.
    pub(super) fn is_empty_list(&self, key: &str) -> bool {
        let value = self.table.get(key).map(Spanned::get_ref);
        matches!(value, Some(DeValue::Array(items)) if items.is_empty())
    }

    /// Reports that a needed key is missing, unless it is there.
    pub(super) fn needs(&mut self, key: &'static str, expected: &str) {
        self.asked.push(key);
        if !self.has(key) {
            let expected = format!("`{key}`, {expected}");
            self.sheet.report(
                self.spot,
                self.place_or_kind(),
                expected,
                "no such key",
                None,
            );
        }
    }

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
                let quoted_number = matches!(value.get_ref(), DeValue::String(text) if text.trim().parse::<f64>().is_ok());
                let hint = quoted_number.then(|| "leave out the quotes".into());
                self.refuse(key, value, format!("a number {expected}"), hint)
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
                    texts.push((text.trim(), Spot(item.span().start)));
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

    /// Opens a table within this one.
    pub(super) fn table(
        &mut self,
        key: &'static str,
        kind: &'static str,
    ) -> Option<Section<'s, 't>> {
        let value = self.value(key)?;
        match value.get_ref() {
            DeValue::Table(table) => {
                Some(self.within(table, value.span().start, self.place_of(key), kind))
            }
            _ => self.refuse(key, value, format!("{kind}, as in {key} = {{ ... }}"), None),
        }
    }

    /// Opens the tables of a list: `[[trailer]]`, or `rooms = [ { ... }, { ... } ]`; `None` where the key is missing.
    pub(super) fn tables(
        &mut self,
        key: &'static str,
        kind: &'static str,
    ) -> Option<Vec<Section<'s, 't>>> {
        let value = self.value(key)?;
        let DeValue::Array(items) = value.get_ref() else {
            let hint = matches!(value.get_ref(), DeValue::Table(_))
                .then(|| format!("write [[{key}]] with two brackets, or {key} = [ {{ ... }} ]"));
            self.wrong_value(key, value, "a list of tables", hint);
            return None;
        };
        let mut sections = Vec::new();
        for (i, item) in items.iter().enumerate() {
            match item.get_ref() {
                DeValue::Table(table) => {
                    let place = format!("{} {}", self.place_of(key), i + 1);
                    sections.push(self.within(table, item.span().start, place, kind));
                }
                _ => self.wrong_value(key, item, format!("{kind}, as in {{ ... }}"), None),
            }
        }
        Some(sections)
    }

    /// Ends the reading: reports each key that was never asked for.
    pub(super) fn finish(self) {
        for (key, _) in self.table {
            let word: &str = key.get_ref();
            if self.asked.contains(&word) {
                continue;
            }
            let hint = elsewhere(self.sheet.file, self.kind, word)
                .or_else(|| nearest(word, self.asked.iter().copied()).map(did_you_mean))
                .or_else(|| {
                    (self.asked.len() <= 8)
                        .then(|| format!("its keys are {}", list(self.asked.iter().copied())))
                });
            let expected = format!("a key of {}", self.kind);
            self.sheet.report(
                Spot(key.span().start),
                self.place.clone(),
                expected,
                quoted(word),
                hint,
            );
        }
    }

    fn within(
        &self,
        table: &'s DeTable<'t>,
        start: usize,
        place: String,
        kind: &'static str,
    ) -> Section<'s, 't> {
        Section {
            sheet: self.sheet,
            table,
            spot: Spot(start),
            place,
            kind,
            asked: Vec::new(),
        }
    }

    fn value(&mut self, key: &'static str) -> Option<&'s Spanned<DeValue<'t>>> {
        if !self.asked.contains(&key) {
            self.asked.push(key);
        }
        self.table.get(key)
    }

    fn place_of(&self, key: &str) -> String {
        if self.place.is_empty() {
            key.into()
        } else {
            format!("{}, {key}", self.place)
        }
    }

    fn place_or_kind(&self) -> String {
        if self.place.is_empty() {
            self.kind.into()
        } else {
            self.place.clone()
        }
    }

    fn refuse<T>(
        &self,
        key: &str,
        value: &Spanned<DeValue<'t>>,
        expected: impl Into<String>,
        hint: Option<String>,
    ) -> Option<T> {
        self.wrong_value(key, value, expected, hint);
        None
    }

    fn wrong_value(
        &self,
        key: &str,
        value: &Spanned<DeValue<'t>>,
        expected: impl Into<String>,
        hint: Option<String>,
    ) {
        let source = self.sheet.text.get(value.span()).unwrap_or_default();
        let spot = Spot(value.span().start);
        let found = match value.get_ref() {
            DeValue::Table(_) => "a table".into(),
            DeValue::Array(_) => format!("the list {}", quoted(source)),
            _ => quoted(source),
        };
        self.sheet
            .report(spot, self.place_of(key), expected, found, hint);
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
    format!("from {} to {}{unit}", range.start(), range.end())
}

fn list<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words
        .map(|word| format!("`{word}`"))
        .collect::<Vec<_>>()
        .join(", ")
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

pub(super) fn did_you_mean(word: &str) -> String {
    format!("did you mean `{word}`?")
}

/// Knows the tables that people put into the wrong one of the three files.
fn elsewhere(file: FleetFile, kind: &str, word: &str) -> Option<String> {
    let home = match word {
        "trailer" | "defaults" => FleetFile::Fleet,
        "site" | "job" => FleetFile::Jobs,
        "crew" => FleetFile::Crew,
        _ => return None,
    };
    (home != file && kind.ends_with("file")).then(|| format!("it belongs in {home}"))
}
