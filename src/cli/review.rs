//! `hosebib review`: what crews wrote that was not understood, for whoever extends the word files.

use std::collections::BTreeMap;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use chrono::{DateTime, Utc};
use chrono_tz::Tz;
use serde_json::{Value, json};

use super::shown::{counted, one_line};
use super::{CliError, beside};
use crate::book::{Message, Record};
use crate::desk::Desk;
use crate::quantity::TemperatureScale;
use crate::words::Reader;

/// The reason given for a message that the bot could not work through at all.
const TRIPPED: &str = "tripped-the-bot";

/// The reason given for a message of which nothing was understood, and nothing was asked back either.
const NOTHING: &str = "nothing-understood";

/// Stands for the words of a part in which every word is known.
const ALL_KNOWN: &str = "(every word is known)";

/// Arguments of `hosebib review`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
    /// Print so many messages of each group, the newest
    #[arg(long, value_name = "N", default_value_t = 5)]
    each: usize,
}

/// One part of a message that was not understood.
#[derive(Debug)]
struct Part {
    at: DateTime<Utc>,
    from: String,
    message: String,
    part: String,
}

/// What was not understood, by reason and then by the words that are not known.
#[derive(Debug, Default)]
struct Groups {
    messages: usize,
    forgotten: usize,
    by_reason: BTreeMap<String, BTreeMap<String, Vec<Part>>>,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    // with the company's own words: what they cover now is understood
    let desk = Desk::new(beside::book(&args.data)?);
    let reader = desk.reader();
    let mut groups = Groups::default();
    for line in beside::lines(&args.data)? {
        let line = line?;
        for value in &line.records {
            if value["note"] == "set-aside" {
                groups.tripped(line.at, value, reader);
            } else if value["record"] == "message"
                && (value.get("unclear").is_some() || value["reports"] == json!([]))
                && let Some(Record::Message(message)) = beside::record(&line, value)?
            {
                groups.message(*message, reader);
            }
        }
    }
    let zone = desk.book().fleet().map_or(Tz::UTC, |fleet| fleet.time_zone);
    groups.print(args.each, zone)?;
    Ok(ExitCode::SUCCESS)
}

impl Groups {
    fn message(&mut self, message: Message, reader: &Reader) {
        let text = message.text.text().to_owned();
        let part = |part: String| Part {
            at: message.at,
            from: message.from.clone(),
            message: text.clone(),
            part,
        };
        if message.unclear.is_empty() {
            if came_to_nothing(reader, &text) {
                self.messages += 1;
                self.put(NOTHING.into(), part(text.clone()), reader);
            }
            return;
        }
        self.messages += 1;
        for unread in message.unclear {
            self.put(unread.why, part(unread.text.text().to_owned()), reader);
        }
    }

    fn tripped(&mut self, at: DateTime<Utc>, note: &Value, reader: &Reader) {
        self.messages += 1;
        let text = note["text"]["personal"].as_str().unwrap_or_default();
        let part = Part {
            at,
            from: note["from"].as_str().unwrap_or_default().to_owned(),
            message: text.to_owned(),
            part: text.to_owned(),
        };
        self.put(TRIPPED.into(), part, reader);
    }

    fn put(&mut self, why: String, part: Part, reader: &Reader) {
        if part.message.is_empty() {
            self.forgotten += 1;
            return;
        }
        let words = unknown_words(reader, &part.part);
        let by_words = self.by_reason.entry(why).or_default();
        by_words.entry(words).or_default().push(part);
    }

    fn print(self, each: usize, zone: Tz) -> Result<(), CliError> {
        let mut out = std::io::stdout().lock();
        if self.messages == 0 {
            writeln!(out, "every message was understood in full")?;
            return Ok(());
        }
        writeln!(
            out,
            "{} not understood in full, {}; newest first, by the clocks of {zone}",
            counted(self.messages, "message"),
            counted(self.by_reason.len(), "reason"),
        )?;
        if self.forgotten > 0 {
            let parts = counted(self.forgotten, "part");
            writeln!(out, "{parts} cannot be shown: the words were removed")?;
        }
        for (why, by_words) in newest_first(self.by_reason, |by_words| {
            by_words.values().flatten().map(|part| part.at).max()
        }) {
            let count = by_words.values().map(Vec::len).sum();
            writeln!(out, "\n{why}: {}", counted(count, "part"))?;
            for (words, mut parts) in
                newest_first(by_words, |parts| parts.iter().map(|part| part.at).max())
            {
                parts.sort_by_key(|part| std::cmp::Reverse(part.at));
                writeln!(out, "  {}: {}", one_line(&words), parts.len())?;
                for part in parts.iter().take(each) {
                    writeln!(
                        out,
                        "    {} {}: {}  [{}]",
                        part.at.with_timezone(&zone).format("%Y-%m-%d %H:%M"),
                        one_line(&part.from),
                        one_line(&part.message),
                        one_line(&part.part),
                    )?;
                }
                if parts.len() > each {
                    writeln!(out, "    and {} older", parts.len() - each)?;
                }
            }
        }
        Ok(())
    }
}

/// Puts groups in the order of their newest part.
fn newest_first<G>(
    groups: BTreeMap<String, G>,
    newest: impl Fn(&G) -> Option<DateTime<Utc>>,
) -> Vec<(String, G)> {
    let mut groups: Vec<(String, G)> = groups.into_iter().collect();
    groups.sort_by_key(|(_, group)| std::cmp::Reverse(newest(group)));
    groups
}

/// Tells whether today's reader, too, makes nothing of a text that has a number or a word it does not know: the rest is
/// small talk.
fn came_to_nothing(reader: &Reader, text: &str) -> bool {
    let heard = reader.hear(text, TemperatureScale::F);
    let nothing = heard.entries.is_empty()
        && heard.ask.is_none()
        && heard.plans.is_empty()
        && heard.command.is_none()
        && heard.answer.is_none()
        && heard.set_aside.is_empty();
    let words = || unknown_words(reader, text) != ALL_KNOWN;
    nothing && (text.chars().any(|c| c.is_ascii_digit()) || words())
}

/// Lists the words of a part that the reader does not know, in small letters.
fn unknown_words(reader: &Reader, part: &str) -> String {
    let explained = reader.explain(part, TemperatureScale::F);
    let words: Vec<String> = explained
        .pieces
        .iter()
        .filter(|(_, meaning)| meaning == "not known")
        .map(|(piece, _)| piece.trim().to_lowercase())
        .collect();
    match words.is_empty() {
        true => ALL_KNOWN.into(),
        false => words.join(" "),
    }
}
