//! One TOML table, read key by key.
//!
//! Every key asked for is checked where it stands; whatever was never asked for is an unknown key. A value that is
//! missing or wrong reads as `None`, so that reading goes on and every problem is reported at once.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::problem::{FleetFile, nearest, quoted};
use super::sheet::{Sheet, Spot};

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
        let spot = Spot::at(table.span().start);
        Section {
            sheet,
            table: table.get_ref(),
            spot,
            place: String::new(),
            kind,
            asked: Vec::new(),
        }
    }

    /// Counts the problems of the whole file so far.
    pub(super) fn problem_count(&self) -> usize {
        self.sheet.problem_count()
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
            .map_or(self.spot, |value| Spot::at(value.span().start))
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

    /// Tells whether the key holds a list.
    pub(super) fn is_list(&self, key: &str) -> bool {
        matches!(
            self.table.get(key).map(Spanned::get_ref),
            Some(DeValue::Array(_))
        )
    }

    /// Counts the items of a list, the faulty ones too; 0 where there is no list.
    pub(super) fn list_length(&self, key: &str) -> usize {
        match self.table.get(key).map(Spanned::get_ref) {
            Some(DeValue::Array(items)) => items.len(),
            _ => 0,
        }
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
            let hint = elsewhere(self.sheet.file(), self.kind, word)
                .or_else(|| nearest(word, self.asked.iter().copied()).map(did_you_mean))
                .or_else(|| {
                    (self.asked.len() <= 8)
                        .then(|| format!("its keys are {}", list(self.asked.iter().copied())))
                });
            let expected = format!("a key of {}", self.kind);
            self.sheet.report(
                Spot::at(key.span().start),
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
            spot: Spot::at(start),
            place,
            kind,
            asked: Vec::new(),
        }
    }

    pub(super) fn value(&mut self, key: &'static str) -> Option<&'s Spanned<DeValue<'t>>> {
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

    pub(super) fn refuse<T>(
        &self,
        key: &str,
        value: &Spanned<DeValue<'t>>,
        expected: impl Into<String>,
        hint: Option<String>,
    ) -> Option<T> {
        self.wrong_value(key, value, expected, hint);
        None
    }

    pub(super) fn wrong_value(
        &self,
        key: &str,
        value: &Spanned<DeValue<'t>>,
        expected: impl Into<String>,
        hint: Option<String>,
    ) {
        let source = self.sheet.source(value.span());
        let spot = Spot::at(value.span().start);
        let found = match value.get_ref() {
            DeValue::Table(_) => "a table".into(),
            DeValue::Array(_) => format!("the list {}", quoted(source)),
            _ => quoted(source),
        };
        self.sheet
            .report(spot, self.place_of(key), expected, found, hint);
    }
}

fn list<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words
        .map(|word| format!("`{word}`"))
        .collect::<Vec<_>>()
        .join(", ")
}

pub(super) fn did_you_mean(word: &str) -> String {
    format!("did you mean `{word}`?")
}

/// Knows the tables that people put into the wrong one of the files.
fn elsewhere(file: FleetFile, kind: &str, word: &str) -> Option<String> {
    let home = match word {
        "trailer" | "defaults" => FleetFile::Fleet,
        "site" | "job" => FleetFile::Jobs,
        "crew" => FleetFile::Crew,
        "word" => FleetFile::Words,
        _ => return None,
    };
    (home != file && kind.ends_with("file")).then(|| format!("it belongs in {home}"))
}
