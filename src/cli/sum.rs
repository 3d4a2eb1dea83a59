//! `hosebib sum`: quantities by name, one JSON question a line in, one answer a line out.

use std::io::{self, Write};
use std::process::ExitCode;

use serde::Serialize;
use serde_json::{Map, Value};

use super::CliError;
use super::input::{LONGEST_JSON, Lines, Typed};
use crate::physics::sum::{self, Input, SumError};

/// Arguments of `hosebib sum`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// Show every quantity with its inputs, units and source, and stop
    #[arg(long)]
    list: bool,
}

/// One line of output.
#[derive(Debug, Serialize)]
#[serde(untagged)]
enum Line {
    Answer {
        quantity: String,
        value: Value,
        unit: &'static str,
        source: &'static str,
    },
    Error {
        quantity: Option<String>,
        error: String,
    },
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let mut out = io::stdout().lock();
    if args.list {
        list(&mut out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let mut input = Lines::new(io::stdin().lock(), LONGEST_JSON);
    let mut failed = false;
    while let Some(typed) = input.next()? {
        let answer = match typed {
            Typed::Text(line) if line.trim().is_empty() => continue,
            Typed::Text(line) => reply(&line),
            Typed::Unreadable(error) => Line::Error {
                quantity: None,
                error,
            },
        };
        failed |= matches!(answer, Line::Error { .. });
        serde_json::to_writer(&mut out, &answer).map_err(io::Error::from)?;
        writeln!(out)?;
        out.flush()?;
    }
    Ok(if failed {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    })
}

/// Answers one line.
fn reply(line: &str) -> Line {
    let error = |quantity: Option<String>, error: String| Line::Error { quantity, error };
    let question: Value = match serde_json::from_str(line) {
        Ok(question) => question,
        Err(why) => return error(None, format!("the line is not JSON: {why}")),
    };
    let Some(name) = question.get("quantity").and_then(Value::as_str) else {
        return error(
            None,
            "the line needs a `quantity`, as in {\"quantity\": \"liquid_lb\", \"inputs\": {\"gal\": 500}}".into(),
        );
    };
    let nothing = Map::new();
    let inputs = match question.get("inputs") {
        None | Some(Value::Null) => &nothing,
        Some(Value::Object(inputs)) => inputs,
        Some(_) => {
            return error(
                Some(name.into()),
                "`inputs` must be an object of named inputs".into(),
            );
        }
    };
    match sum::answer(name, inputs) {
        Ok(answer) => Line::Answer {
            quantity: name.into(),
            value: answer.value,
            unit: answer.unit,
            source: answer.source,
        },
        Err(why) => error(Some(name.into()), worded(&why)),
    }
}

fn worded(why: &SumError) -> String {
    match why {
        SumError::UnknownQuantity { nearest: None, .. } => {
            format!("{why}; `hosebib sum --list` shows them all")
        }
        _ => why.to_string(),
    }
}

fn list(out: &mut impl Write) -> io::Result<()> {
    for (topic, quantities) in sum::registry() {
        writeln!(out, "{topic}")?;
        for quantity in *quantities {
            writeln!(out, "  {} [{}]", quantity.name, quantity.unit)?;
            for input in quantity.inputs {
                writeln!(
                    out,
                    "    {}: {}{}",
                    input.name,
                    input.expected(),
                    usual(input)
                )?;
            }
            writeln!(out, "    source: {}", quantity.source)?;
        }
    }
    Ok(())
}

fn usual(input: &Input) -> String {
    match input.usual_value() {
        Some(value) => format!("; {value} when not given"),
        None if input.default.is_some() => "; may be left out".into(),
        None => String::new(),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // a failed unwrap is a failed test
mod tests {
    use super::*;

    fn printed(line: &str) -> String {
        serde_json::to_string(&reply(line)).unwrap()
    }

    #[test]
    fn an_answer_has_its_unit_and_source() {
        assert_eq!(
            printed(r#"{"quantity": "liquid_lb", "inputs": {"gal": 500}}"#),
            r#"{"quantity":"liquid_lb","value":4170,"unit":"lb","source":"8.34 lb/gal (EPA operator arithmetic)"}"#
        );
        assert_eq!(
            printed(r#"{"quantity": "tongue_range_lb", "inputs": {"gross_lb": 9000}}"#),
            r#"{"quantity":"tongue_range_lb","value":[900,1350],"unit":"lb","source":"10 to 15 % of gross trailer weight (common practice; printed in tow guides)"}"#
        );
    }

    #[test]
    fn what_cannot_be_answered_is_said_on_its_line() {
        for (line, said) in [
            (
                "not json",
                r#"{"quantity":null,"error":"the line is not JSON"#,
            ),
            (
                "[1]",
                r#"{"quantity":null,"error":"the line needs a `quantity`"#,
            ),
            (
                r#"{"quantity": "zzz"}"#,
                r#"{"quantity":"zzz","error":"`zzz` is no quantity known here; `hosebib sum --list` shows them all"}"#,
            ),
            (
                r#"{"quantity": "liquid_lb", "inputs": [500]}"#,
                r#"{"quantity":"liquid_lb","error":"`inputs` must be an object"#,
            ),
            (
                r#"{"quantity": "liquid_lb", "inputs": {"gal": 1e999}}"#,
                r#"{"quantity":null,"error":"the line is not JSON"#,
            ),
        ] {
            assert!(printed(line).starts_with(said), "{}", printed(line));
        }
    }

    #[test]
    fn the_list_shows_every_quantity_with_its_inputs() {
        let mut out = Vec::new();
        list(&mut out).unwrap();
        let text = String::from_utf8(out).unwrap();
        assert!(text.contains("  liquid_lb [lb]\n    gal: a number from 0 to 100,000 gal\n"));
        assert!(text.contains("    wind_mph: a number from 0 to 200 mph; 10 when not given\n"));
        let listed = text
            .lines()
            .filter(|line| line.ends_with(']') && !line.starts_with("    "))
            .count();
        let known: usize = sum::registry()
            .iter()
            .map(|(_, quantities)| quantities.len())
            .sum();
        assert_eq!(listed, known);
    }
}
