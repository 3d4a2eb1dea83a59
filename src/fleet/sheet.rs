//! One file's text: where its lines are, and the problems found in it.

use std::cell::RefCell;
use std::ops::Range;

use toml::Spanned;
use toml::de::DeTable;

use super::problem::{FleetFile, Problem, quoted};

/// A place in a file: a byte offset.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Spot(usize);

impl Spot {
    /// Makes a spot of a byte offset.
    pub(super) fn at(offset: usize) -> Self {
        Spot(offset)
    }

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

    /// Counts the problems so far.
    pub(super) fn problem_count(&self) -> usize {
        self.problems.borrow().len()
    }

    pub(super) fn into_problems(self) -> Vec<Problem> {
        self.problems.into_inner()
    }

    /// The file.
    pub(super) fn file(&self) -> FleetFile {
        self.file
    }

    /// The text as it stands in the file.
    pub(super) fn source(&self, span: Range<usize>) -> &str {
        self.text.get(span).unwrap_or_default()
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
