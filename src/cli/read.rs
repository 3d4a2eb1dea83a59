//! `hosebib read`: what each message means, one JSON object a line.

use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::ValueEnum;
use serde::Deserialize;

use super::CliError;
use super::input::{LONGEST, LONGEST_JSON, Lines, Typed};
use super::load;
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
    /// Read with the words of the fleet in this folder too
    #[arg(long, value_name = "DIR")]
    fleet: Option<PathBuf>,
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
    let reader = match &args.fleet {
        Some(dir) => Reader::with_words(&load::read(dir)?.fleet.words),
        None => Reader::new(),
    };
    let scale = match args.temperature {
        Scale::C => TemperatureScale::C,
        Scale::F => TemperatureScale::F,
    };
    let longest = if args.json { LONGEST_JSON } else { LONGEST };
    let mut input = Lines::new(io::stdin().lock(), longest);
    let mut output = io::BufWriter::new(io::stdout().lock());
    let mut code = ExitCode::SUCCESS;
    while let Some(typed) = input.next()? {
        let text = match typed {
            Typed::Text(typed) if args.json && typed.trim().is_empty() => continue,
            Typed::Text(typed) if args.json => unwrapped(&typed),
            Typed::Text(typed) => Ok(typed),
            Typed::Unreadable(why) => Err(why),
        };
        let text = match text {
            Ok(text) => text,
            Err(error) => {
                writeln!(output, "{}", serde_json::json!({ "error": error }))?;
                code = ExitCode::FAILURE;
                continue;
            }
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

/// Takes the text out of an object.
fn unwrapped(typed: &str) -> Result<String, String> {
    let line: Line = serde_json::from_str(typed).map_err(|error| {
        format!("expected an object such as {{\"text\": \"12 pressure 55\"}}: {error}")
    })?;
    if line.text.len() > LONGEST {
        return Err(format!(
            "the text is longer than {} kB: send it in parts",
            LONGEST / 1024
        ));
    }
    Ok(line.text)
}
