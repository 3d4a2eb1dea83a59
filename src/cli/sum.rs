//! `hosebib sum`: quantities by name, one JSON question a line in, one answer a line out.

use std::io::{self, BufRead, Write};
use std::process::ExitCode;

use serde::Serialize;
use serde_json::{Map, Value};

use super::CliError;
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
    let mut input = io::stdin().lock();
    let (mut line, mut failed) = (Vec::new(), false);
    while input.read_until(b'\n', &mut line)? > 0 {
        if !line.trim_ascii().is_empty() {
            let answer = reply(&line);
            failed |= matches!(answer, Line::Error { .. });
            serde_json::to_writer(&mut out, &answer).map_err(io::Error::from)?;
            writeln!(out)?;
            out.flush()?;
        }
        line.clear();
    }
    Ok(if failed {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    })
}

/// Answers one line.
fn reply(line: &[u8]) -> Line {
    let error = |quantity: Option<String>, error: String| Line::Error { quantity, error };
    let question: Value = match serde_json::from_slice(line) {
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
