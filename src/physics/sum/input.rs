//! Named inputs: what each may be, and reading them from JSON.

use serde_json::{Map, Value};

use super::SumError;
use crate::quantity::plain;

/// One input of a quantity.
#[derive(Debug, Clone, Copy)]
pub struct Input {
    /// Its name.
    pub name: &'static str,
    /// Its unit, empty for a bare number or a word.
    pub unit: &'static str,
    /// What it may be.
    pub kind: Kind,
    /// What it is taken as when it is not given; none where it must be.
    pub default: Option<f64>,
}

/// What an input may be; ranges include their ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A number in a range.
    Number(f64, f64),
    /// A whole number in a range.
    Whole(f64, f64),
    /// 0 or 1, or false or true.
    Flag,
    /// One of some words; a word left out is the first, if the input has a default.
    Word(&'static [&'static str]),
    /// Any word: the quantity knows which.
    Text,
    /// A list of numbers in a range, so many where the count is fixed.
    List(f64, f64, Option<usize>),
    /// A list of rows, each with a number in each column's range, so many where the count is fixed.
    Rows(&'static [(f64, f64)], Option<usize>),
}

/// Longest list that is read.
const MOST_ROWS: usize = 1000;

impl Input {
    /// Makes the input usual: what it is taken as when not given.
    pub(super) const fn or(self, default: f64) -> Self {
        Input {
            default: Some(default),
            ..self
        }
    }

    /// Says in words what the input must be.
    pub fn expected(&self) -> String {
        let unit = if self.unit.is_empty() {
            String::new()
        } else {
            format!(" {}", self.unit)
        };
        let range = |low: f64, high: f64| format!("{} to {}{unit}", span(low), span(high));
        match self.kind {
            Kind::Number(low, high) => format!("a number from {}", range(low, high)),
            Kind::Whole(low, high) => format!("a whole number from {}", range(low, high)),
            Kind::Flag => "0 or 1".into(),
            Kind::Word(words) => format!("one of `{}`", words.join("`, `")),
            Kind::Text => "a word".into(),
            Kind::List(low, high, len) => {
                format!("a list of {}numbers from {}", count(len), range(low, high))
            }
            Kind::Rows(columns, len) => {
                let columns: Vec<String> = columns.iter().map(|(l, h)| range(*l, *h)).collect();
                format!("a list of {}rows [{}]", count(len), columns.join(", "))
            }
        }
    }

    fn read(&self, value: &Value) -> Result<Datum, SumError> {
        match self.kind {
            Kind::Number(low, high) => Ok(Datum::Number(self.number(value, low, high)?)),
            Kind::Whole(low, high) => {
                let number = self.number(value, low, high)?;
                if number.fract() == 0.0 {
                    Ok(Datum::Number(number))
                } else {
                    Err(self.wrong(value))
                }
            }
            Kind::Flag => match value {
                Value::Bool(flag) => Ok(Datum::Number(f64::from(u8::from(*flag)))),
                _ => match self.number(value, 0.0, 1.0)? {
                    flag if flag.fract() == 0.0 => Ok(Datum::Number(flag)),
                    _ => Err(self.wrong(value)),
                },
            },
            Kind::Word(words) => value
                .as_str()
                .and_then(|text| words.iter().find(|word| word.eq_ignore_ascii_case(text)))
                .map(|word| Datum::Text((*word).to_owned()))
                .ok_or_else(|| self.wrong(value)),
            Kind::Text => match value.as_str() {
                Some(text) => Ok(Datum::Text(text.to_owned())),
                None => Err(self.wrong(value)),
            },
            Kind::List(low, high, len) => {
                let numbers = self.list(value, len)?.iter();
                let numbers: Result<Vec<f64>, SumError> =
                    numbers.map(|item| self.number(item, low, high)).collect();
                Ok(Datum::Rows(vec![numbers?]))
            }
            Kind::Rows(columns, len) => {
                let rows: Result<Vec<Vec<f64>>, SumError> = self
                    .list(value, len)?
                    .iter()
                    .map(|row| {
                        self.list(row, Some(columns.len()))?
                            .iter()
                            .zip(columns)
                            .map(|(item, (low, high))| self.number(item, *low, *high))
                            .collect()
                    })
                    .collect();
                Ok(Datum::Rows(rows?))
            }
        }
    }

    fn number(&self, value: &Value, low: f64, high: f64) -> Result<f64, SumError> {
        let number = value.as_f64().ok_or_else(|| self.wrong(value))?;
        if (low..=high).contains(&number) {
            Ok(number)
        } else {
            Err(SumError::OutOfRange {
                input: self.name,
                expected: self.expected(),
                got: shortened(value),
            })
        }
    }

    fn list<'v>(&self, value: &'v Value, len: Option<usize>) -> Result<&'v [Value], SumError> {
        match value.as_array() {
            Some(list) if list.len() <= MOST_ROWS && len.is_none_or(|len| len == list.len()) => {
                Ok(list)
            }
            _ => Err(self.wrong(value)),
        }
    }

    fn wrong(&self, value: &Value) -> SumError {
        SumError::WrongKind {
            input: self.name,
            expected: self.expected(),
            got: shortened(value),
        }
    }

    /// Returns what the input is taken as when it is not given, if anything.
    pub fn usual_value(&self) -> Option<Value> {
        self.usual().map(|datum| datum.json())
    }

    fn usual(&self) -> Option<Datum> {
        let default = self.default.filter(|default| !default.is_nan())?;
        Some(match self.kind {
            Kind::Word(words) => Datum::Text((*words.first()?).to_owned()),
            _ => Datum::Number(default),
        })
    }
}

/// Makes an input that is a number in a range.
pub(super) const fn num(name: &'static str, unit: &'static str, low: f64, high: f64) -> Input {
    input(name, unit, Kind::Number(low, high))
}

/// Makes an input that is a whole number in a range.
pub(super) const fn whole(name: &'static str, unit: &'static str, low: f64, high: f64) -> Input {
    input(name, unit, Kind::Whole(low, high))
}

/// Makes an input of any kind.
pub(super) const fn input(name: &'static str, unit: &'static str, kind: Kind) -> Input {
    Input {
        name,
        unit,
        kind,
        default: None,
    }
}

/// Makes an input that is one of some words, the first when not given.
pub(super) const fn word(name: &'static str, words: &'static [&'static str]) -> Input {
    input(name, "", Kind::Word(words)).or(0.0)
}

/// A read input.
#[derive(Debug, Clone)]
enum Datum {
    Number(f64),
    Text(String),
    Rows(Vec<Vec<f64>>),
}

impl Datum {
    fn json(&self) -> Value {
        match self {
            Datum::Number(value) => super::number(*value),
            Datum::Text(text) => Value::from(text.as_str()),
            Datum::Rows(rows) => Value::from(
                rows.iter()
                    .map(|row| row.iter().copied().map(super::number).collect())
                    .collect::<Vec<Value>>(),
            ),
        }
    }
}

/// The inputs of one question, each read and in range.
#[derive(Debug)]
pub(super) struct Given(Vec<(&'static str, Datum, bool)>);

impl Given {
    /// Returns a number; 0 or 1 for a flag.
    pub(super) fn num(&self, name: &str) -> f64 {
        match self.datum(name) {
            Some(Datum::Number(value)) => *value,
            _ => f64::NAN,
        }
    }

    /// Returns a whole number.
    pub(super) fn whole(&self, name: &str) -> u32 {
        self.num(name) as u32
    }

    /// Returns whether a flag is set.
    pub(super) fn flag(&self, name: &str) -> bool {
        self.num(name) == 1.0
    }

    /// Returns a word, as the registry spells it.
    pub(super) fn word(&self, name: &str) -> &str {
        match self.datum(name) {
            Some(Datum::Text(text)) => text,
            _ => "",
        }
    }

    /// Returns rows of numbers.
    pub(super) fn rows(&self, name: &str) -> &[Vec<f64>] {
        match self.datum(name) {
            Some(Datum::Rows(rows)) => rows,
            _ => &[],
        }
    }

    /// Returns a list of numbers.
    pub(super) fn list(&self, name: &str) -> &[f64] {
        self.rows(name).first().map_or(&[], Vec::as_slice)
    }

    /// Returns whether an input was given or has a usual value.
    pub(super) fn has(&self, name: &str) -> bool {
        self.datum(name).is_some()
    }

    /// Returns what was not given and was taken as usual.
    pub(super) fn assumed(&self) -> Vec<(&'static str, Value)> {
        let assumed = self.0.iter().filter(|(_, _, assumed)| *assumed);
        assumed
            .map(|(name, datum, _)| (*name, datum.json()))
            .collect()
    }

    fn datum(&self, name: &str) -> Option<&Datum> {
        self.0
            .iter()
            .find_map(|(input, datum, _)| (*input == name).then_some(datum))
    }
}

/// Marks an input that may be left out without a usual value.
pub(super) const OPTIONAL: f64 = f64::NAN;

/// Reads the inputs of a quantity; null counts as not given.
pub(super) fn read_inputs(
    inputs: &'static [Input],
    given: &Map<String, Value>,
) -> Result<Given, SumError> {
    let mut read = Vec::with_capacity(inputs.len());
    for input in inputs {
        match given.get(input.name).filter(|value| !value.is_null()) {
            Some(value) => read.push((input.name, input.read(value)?, false)),
            None if input.default.is_some_and(f64::is_nan) => {}
            None => {
                let usual = input.usual().ok_or_else(|| SumError::Missing {
                    input: input.name,
                    expected: input.expected(),
                })?;
                read.push((input.name, usual, true));
            }
        }
    }
    Ok(Given(read))
}

fn count(len: Option<usize>) -> String {
    len.map_or(String::new(), |len| format!("{len} "))
}

/// Prints the end of a range.
fn span(value: f64) -> String {
    if value != 0.0 && value.abs() < 1e-3 {
        format!("{value:e}")
    } else {
        plain(value, 3)
    }
}

/// Prints what was given, cut where it is long.
fn shortened(value: &Value) -> String {
    let text = value.to_string();
    if text.chars().count() > 60 {
        text.chars().take(57).chain("...".chars()).collect()
    } else {
        text
    }
}
