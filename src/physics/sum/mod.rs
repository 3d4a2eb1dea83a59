//! Quantities by name: the registry from which a person, a script or a chat message asks a sum.
//!
//! Every quantity is answered by the very function of [`crate::physics`] that the rules use; this module only reads named
//! inputs, holds them to their physical range, and says where the formula comes from.

mod battery;
mod cold;
mod crowd;
mod input;
mod kalman;
mod nearest;
mod power;
mod tank;
mod tow;
mod trouble;
mod water;

use serde_json::{Map, Value};
use thiserror::Error;

use input::{Given, read_inputs};
pub use input::{Input, Kind};
use nearest::nearest;

/// One quantity that can be asked for.
#[derive(Debug)]
pub struct Quantity {
    /// Its name, with its unit at the end where it has one.
    pub name: &'static str,
    /// Its inputs, in order.
    pub inputs: &'static [Input],
    /// The unit of the answer; `-` for a bare number or a code.
    pub unit: &'static str,
    /// Where the formula or the figure comes from.
    pub source: &'static str,
    compute: fn(&Given) -> Outcome,
}

/// The registry's topics, in order, each with its quantities.
const TOPICS: [(&str, &[Quantity]); 9] = [
    ("water", water::QUANTITIES),
    ("power", power::QUANTITIES),
    ("battery", battery::QUANTITIES),
    ("cold", cold::QUANTITIES),
    ("tanks", tank::QUANTITIES),
    ("people", crowd::QUANTITIES),
    ("forecast", kalman::QUANTITIES),
    ("towing", tow::QUANTITIES),
    ("trouble", trouble::QUANTITIES),
];

/// Returns the topics in order, each with its quantities.
pub fn registry() -> &'static [(&'static str, &'static [Quantity])] {
    &TOPICS
}

/// Finds a quantity by its exact name.
pub fn quantity(name: &str) -> Option<&'static Quantity> {
    quantities().find(|quantity| quantity.name == name)
}

/// A computed quantity.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// A number, a code, a list of two numbers, or null where it never comes to pass.
    pub value: Value,
    /// The unit of the value; `-` for a bare number or a code.
    pub unit: &'static str,
    /// Where the formula or the figure comes from.
    pub source: &'static str,
    /// The inputs that were not given and were taken as usual, with what they were taken as.
    pub assumed: Vec<(&'static str, Value)>,
}

/// Why a quantity could not be computed.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SumError {
    /// No quantity has that name.
    #[error("`{name}` is no quantity known here{}", did_you_mean(.nearest))]
    UnknownQuantity {
        /// What was asked for.
        name: String,
        /// The nearest name there is, if one is near.
        nearest: Option<&'static str>,
    },
    /// No quantity has an input of that name.
    #[error("`{name}` is no input known here{}", did_you_mean(.nearest))]
    UnknownInput {
        /// What was given.
        name: String,
        /// The nearest of this quantity's inputs, if one is near.
        nearest: Option<&'static str>,
    },
    /// An input without a usual value was not given.
    #[error("`{input}` is missing, {expected} is needed")]
    Missing {
        /// The input.
        input: &'static str,
        /// What was expected.
        expected: String,
    },
    /// An input was of the wrong kind.
    #[error("`{input}` must be {expected}, not `{got}`")]
    WrongKind {
        /// The input.
        input: &'static str,
        /// What was expected.
        expected: String,
        /// What was given, as JSON.
        got: String,
    },
    /// An input was outside what is physically possible or what the formula holds for.
    #[error("`{input}` must be {expected}, `{got}` is out of range")]
    OutOfRange {
        /// The input.
        input: &'static str,
        /// What was expected.
        expected: String,
        /// What was given.
        got: String,
    },
    /// The inputs are each possible, but not together.
    #[error("{0}")]
    Together(String),
}

fn did_you_mean(name: &Option<&'static str>) -> String {
    name.map_or(String::new(), |name| format!("; did you mean `{name}`?"))
}

/// What a computation comes to.
type Outcome = Result<Found, SumError>;

/// The forms an answer takes.
enum Found {
    Number(f64),
    Code(&'static str),
    Band(f64, f64),
    Never,
}

impl Found {
    fn json(self) -> Value {
        match self {
            Found::Number(value) => number(value),
            Found::Code(code) => Value::from(code),
            Found::Band(low, high) => Value::from(vec![number(low), number(high)]),
            Found::Never => Value::Null,
        }
    }
}

/// A computation's plain number.
fn found(value: f64) -> Outcome {
    Ok(Found::Number(value))
}

/// A computation's number, or never.
fn maybe(value: Option<f64>) -> Outcome {
    Ok(value.map_or(Found::Never, Found::Number))
}

fn code(code: &'static str) -> Outcome {
    Ok(Found::Code(code))
}

/// Computes a quantity from named inputs.
///
/// Inputs left out take their usual value where they have one, and [`Answer::assumed`] says so. Inputs that belong to
/// other quantities are passed over; a name that belongs to none is an error, since it is likely a slip.
///
/// # Errors
///
/// [`SumError`] for an unknown quantity or input, a missing input, one of the wrong kind or out of its range, and for
/// inputs that are impossible together.
pub fn answer(name: &str, inputs: &Map<String, Value>) -> Result<Answer, SumError> {
    let quantity = quantity(name).ok_or_else(|| SumError::UnknownQuantity {
        name: name.into(),
        nearest: nearest(name, quantities().map(|quantity| quantity.name)),
    })?;
    for given in inputs.keys() {
        let known = quantities().any(|q| q.inputs.iter().any(|input| input.name == given));
        if !known {
            return Err(SumError::UnknownInput {
                name: given.clone(),
                nearest: nearest(given, quantity.inputs.iter().map(|input| input.name)),
            });
        }
    }
    let given = read_inputs(quantity.inputs, inputs)?;
    let value = (quantity.compute)(&given)?.json();
    Ok(Answer {
        value,
        unit: quantity.unit,
        source: quantity.source,
        assumed: given.assumed(),
    })
}

fn quantities() -> impl Iterator<Item = &'static Quantity> {
    TOPICS.iter().flat_map(|(_, quantities)| quantities.iter())
}

/// Writes a number to 12 significant digits, whole ones without a point; null for what is not finite.
fn number(value: f64) -> Value {
    let tidy: f64 = format!("{value:.11e}").parse().unwrap_or(value);
    if tidy.fract() == 0.0 && tidy.abs() < 1e15 {
        Value::from(tidy as i64)
    } else {
        Value::from(tidy)
    }
}
