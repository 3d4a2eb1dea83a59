//! `hosebib read`: what each message means, one JSON object a line.

use std::io::{self, BufRead, Write};
use std::process::ExitCode;

use clap::ValueEnum;
use serde::Deserialize;

use super::CliError;
use crate::quantity::TemperatureScale;
use crate::words::{Reader, to_json};

/// Arguments of `hosebib read`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// Take one `{"text": "..."}` object a line, so that a text may hold newlines
    #[arg(long)]
    json: bool,
    /// The unit of a temperature that names none
    #[arg(long, value_enum, default_value = "F", ignore_case = true)]
    temperature: Scale,
    /// Show how each message was read, for people who extend the word files
    #[arg(long)]
    explain: bool,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Scale {
    #[value(name = "C")]
    C,
    #[value(name = "F")]
    F,
}

#[derive(Deserialize)]
struct Line {
    text: String,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let reader = Reader::new();
    let scale = match args.temperature {
        Scale::C => TemperatureScale::C,
        Scale::F => TemperatureScale::F,
    };
    let mut input = io::stdin().lock();
    let mut output = io::BufWriter::new(io::stdout().lock());
    let mut line = Vec::new();
    let mut code = ExitCode::SUCCESS;
    loop {
        line.clear();
        if input.read_until(b'\n', &mut line)? == 0 {
            break;
        }
        let typed = String::from_utf8_lossy(&line);
        let typed = typed.strip_suffix('\n').unwrap_or(&typed);
        let typed = typed.strip_suffix('\r').unwrap_or(typed);
        let text = if args.json {
            if typed.trim().is_empty() {
                continue;
            }
            match serde_json::from_str::<Line>(typed) {
                Ok(line) => line.text,
                Err(error) => {
                    let error = format!(
                        "expected an object such as {{\"text\": \"12 pressure 55\"}}: {error}"
                    );
                    writeln!(output, "{}", serde_json::json!({ "error": error }))?;
                    code = ExitCode::FAILURE;
                    continue;
                }
            }
        } else {
            typed.to_string()
        };
        if args.explain {
            let explained = reader.explain(&text, scale);
            writeln!(
                output,
                "{text}\n{explained}  {}\n",
                to_json(&text, &explained.heard)
            )?;
        } else {
            writeln!(output, "{}", to_json(&text, &reader.hear(&text, scale)))?;
        }
    }
    output.flush()?;
    Ok(code)
}
