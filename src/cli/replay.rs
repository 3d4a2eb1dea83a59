//! `hosebib replay`: timed messages through the desk on their own clock.

use std::collections::BTreeMap;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use chrono::{DateTime, NaiveDateTime, Utc};
use chrono_tz::Tz;
use serde::Deserialize;
use serde_json::{Value, json};

use super::CliError;
use super::fleet::open;
use super::input::{LONGEST, LONGEST_JSON, Lines, Typed};
use crate::book::MessageKey;
use crate::desk::{Desk, Inbound, Means, Sender, Turn};
use crate::fleet::demo;
use crate::outlook::{BATTERY_LIMIT_PCT, Outlook, TankOutlook};
use crate::words;

/// Arguments of `hosebib replay`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// The fleet's folder; messages come on standard input, one JSON object a line
    #[arg(
        long,
        value_name = "DIR",
        required_unless_present = "demo",
        conflicts_with = "demo"
    )]
    fleet: Option<PathBuf>,
    /// Play the demo fleet's day of messages
    #[arg(long)]
    demo: bool,
    /// Print one JSON object for each message and tick
    #[arg(long)]
    json: bool,
    /// Let the clock run on to this instant after the last message (RFC 3339)
    #[arg(long, value_name = "TIME", value_parser = instant)]
    until: Option<DateTime<Utc>>,
}

/// One line of input.
#[derive(Debug, Deserialize)]
struct Line {
    at: String,
    #[serde(default)]
    received: Option<String>,
    from: String,
    text: String,
    #[serde(default)]
    edits: Option<usize>,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let fleet = match &args.fleet {
        Some(dir) => open(dir, &mut std::io::stderr().lock())?,
        None => demo::fleet(),
    };
    let zone = fleet.time_zone;
    let mut player = Player {
        desk: Desk::default(),
        zone,
        json: args.json,
        out: std::io::stdout().lock(),
        edits: BTreeMap::new(),
        now: None,
    };
    player.load(fleet);
    if args.demo {
        for (n, line) in demo::DAY.lines().enumerate() {
            player.play(n + 1, line)?;
        }
    } else {
        let mut input = Lines::new(std::io::stdin().lock(), LONGEST_JSON);
        let mut n = 0;
        while let Some(typed) = input.next()? {
            n += 1;
            match typed {
                Typed::Text(line) => player.play(n, &line)?,
                Typed::Unreadable(error) => player.refuse(n, &error)?,
            }
        }
    }
    if let Some(until) = args.until {
        player.tick_to(until)?;
    }
    player.out.flush()?;
    Ok(ExitCode::SUCCESS)
}

/// Returns the demo day's messages.
pub(super) fn day() -> Vec<Inbound> {
    let lines = demo::DAY
        .lines()
        .enumerate()
        .filter(|(_, line)| !line.trim().is_empty());
    let inbound = lines.map(|(n, line)| {
        let line: Line = serde_json::from_str(line).expect("the demo day is checked by a test");
        let at = instant(&line.at).expect("the demo day is checked by a test");
        let received = line
            .received
            .as_deref()
            .and_then(|text| instant(text).ok())
            .unwrap_or(at);
        let key = MessageKey::new("demo", 0, n as i64 + 1, 0);
        Inbound {
            received,
            ..Inbound::says(key, Sender::Crew(line.from), at, line.text)
        }
    });
    inbound.collect()
}

struct Player<W: Write> {
    desk: Desk,
    zone: Tz,
    json: bool,
    out: W,
    /// How often each line was edited.
    edits: BTreeMap<usize, i64>,
    /// The instant played up to; none before the first line.
    now: Option<DateTime<Utc>>,
}

impl<W: Write> Player<W> {
    fn load(&mut self, fleet: crate::fleet::Fleet) {
        // in force from ever, so that the first words are judged by it
        let turn = self.desk.load(DateTime::UNIX_EPOCH, "replay", fleet);
        self.desk.apply(&turn.records);
    }

    fn play(&mut self, n: usize, line: &str) -> Result<(), CliError> {
        if line.trim().is_empty() {
            return Ok(());
        }
        match self.inbound(n, line) {
            Ok((inbound, line)) => {
                self.tick_to(inbound.received)?;
                // a code that lets nobody in anywhere, so that the same input prints the same
                self.desk.lend(Means {
                    chance: Some([0; 16]),
                    ..Means::default()
                });
                let turn = self.desk.receive(&inbound);
                self.desk.apply(&turn.records);
                self.print(&turn, Some(&line))
            }
            Err(error) => self.refuse(n, &error),
        }
    }

    /// Says why a line changes nothing.
    fn refuse(&mut self, n: usize, error: &str) -> Result<(), CliError> {
        if self.json {
            writeln!(self.out, "{}", json!({"line": n, "error": error}))?;
        } else {
            writeln!(self.out, "line {n}: {error}")?;
        }
        Ok(())
    }

    fn inbound(&mut self, n: usize, line: &str) -> Result<(Inbound, Line), String> {
        let line: Line =
            serde_json::from_str(line).map_err(|error| format!("not a message: {error}"))?;
        if line.text.len() > LONGEST {
            return Err(format!(
                "the text is longer than {} kB: send it in parts",
                LONGEST / 1024
            ));
        }
        let at = instant(&line.at)?;
        let received = line
            .received
            .as_deref()
            .map(instant)
            .transpose()?
            .unwrap_or(at);
        let from = Sender::Crew(line.from.clone());
        if self.desk.crew_of(&from).is_none() {
            return Err(format!("`{}` is not on the crew list", line.from));
        }
        let (key, replaces) = match line.edits {
            None => (MessageKey::new("replay", 0, n as i64, 0), None),
            Some(edited) if edited == 0 || edited >= n => {
                return Err(format!("line {edited} does not stand before this one"));
            }
            Some(edited) => {
                let count = self.edits.entry(edited).or_default();
                let before = *count;
                *count += 1;
                let message = edited as i64;
                (
                    MessageKey::new("replay", 0, message, before + 1),
                    Some(MessageKey::new("replay", 0, message, before)),
                )
            }
        };
        // an edit takes its place in time where the message it mends stood
        let inbound = Inbound {
            received: received.max(at),
            replaces,
            ..Inbound::says(key, from, at, line.text.clone())
        };
        Ok((inbound, line))
    }

    fn tick_to(&mut self, until: DateTime<Utc>) -> Result<(), CliError> {
        let Some(now) = self.now else {
            self.now = Some(until);
            return Ok(());
        };
        while let Some(due) = self
            .desk
            .next_due()
            .map(|due| due.max(now))
            .filter(|due| *due <= until)
        {
            let turn = self.desk.tick(due);
            if turn.records.is_empty() {
                break;
            }
            self.desk.apply(&turn.records);
            self.print(&turn, None)?;
        }
        self.now = Some(until.max(now));
        Ok(())
    }

    fn print(&mut self, turn: &Turn, line: Option<&Line>) -> Result<(), CliError> {
        if self.json {
            self.print_json(turn, line)
        } else {
            self.print_talk(turn, line)
        }
    }

    fn print_json(&mut self, turn: &Turn, line: Option<&Line>) -> Result<(), CliError> {
        if line.is_none()
            && turn.outgoing.is_empty()
            && turn.findings.is_empty()
            && turn.tasks.is_empty()
        {
            return Ok(());
        }
        let findings: Vec<Value> = turn
            .findings
            .iter()
            .map(|f| json!({"unit": f.unit, "id": f.id, "level": f.level, "urgency": f.urgency, "facts": f.facts.to_json()}))
            .collect();
        let out: Vec<Value> = turn
            .outgoing
            .iter()
            .map(|o| json!({"to": o.to, "text": o.text.text()}))
            .collect();
        let tasks: Vec<Value> = turn
            .tasks
            .iter()
            .map(|t| json!({"id": t.id, "unit": t.unit, "kind": t.kind, "due": self.time(t.due_from(turn.at)), "state": t.state.code()}))
            .collect();
        let forecast: serde_json::Map<String, Value> = turn
            .forecast
            .iter()
            .map(|(unit, outlook)| (unit.to_string(), self.outlook(outlook)))
            .collect();
        let object = json!({
            "at": line.map_or_else(|| self.rfc3339(turn.at), |line| line.at.clone()),
            "from": turn.from,
            "heard": turn.heard.as_ref().zip(line).map(|(heard, line)| words::to_json(&line.text, heard)),
            "findings": findings,
            "out": out,
            "tasks": tasks,
            "forecast": forecast,
        });
        writeln!(self.out, "{object}")?;
        Ok(())
    }

    fn print_talk(&mut self, turn: &Turn, line: Option<&Line>) -> Result<(), CliError> {
        let clock = turn.at.with_timezone(&self.zone).format("%H:%M");
        if let Some(line) = line {
            writeln!(
                self.out,
                "{clock} {}> {}",
                line.from,
                line.text.replace('\n', "\n    ")
            )?;
        }
        for message in &turn.outgoing {
            let to = if turn.from.as_deref() == Some(message.to.as_str()) {
                String::new()
            } else {
                format!(" to {}", message.to)
            };
            let clock = if line.is_none() {
                format!("{clock} ")
            } else {
                String::new()
            };
            writeln!(
                self.out,
                "{clock}bot{to}> {}",
                message.text.text().replace('\n', "\n     ")
            )?;
        }
        if line.is_some() || !turn.outgoing.is_empty() {
            writeln!(self.out)?;
        }
        Ok(())
    }

    fn outlook(&self, outlook: &Outlook) -> Value {
        let mut object = outlook
            .waste
            .as_ref()
            .map_or_else(|| json!({}), |tank| self.tank(tank));
        object["fresh"] = outlook
            .fresh
            .as_ref()
            .map_or(Value::Null, |tank| self.tank(tank));
        object["battery"] = outlook.battery.as_ref().map_or(Value::Null, |battery| {
            json!({
                "limit_pct": BATTERY_LIMIT_PCT,
                "p10": self.time(battery.p10),
                "p50": self.time(battery.p50),
                "p90": self.time(battery.p90),
            })
        });
        object
    }

    fn tank(&self, tank: &TankOutlook) -> Value {
        json!({
            "limit_pct": tank.limit_pct,
            "p10": self.time(tank.p10),
            "p50": self.time(tank.p50),
            "p90": self.time(tank.p90),
        })
    }

    fn time(&self, at: Option<DateTime<Utc>>) -> Value {
        at.map_or(Value::Null, |at| Value::String(self.rfc3339(at)))
    }

    fn rfc3339(&self, at: DateTime<Utc>) -> String {
        at.with_timezone(&self.zone)
            .to_rfc3339_opts(chrono::SecondsFormat::Secs, false)
    }
}

/// Reads a time in RFC 3339, which has its offset from UTC.
pub(super) fn instant(text: &str) -> Result<DateTime<Utc>, String> {
    let text = text.trim();
    DateTime::parse_from_rfc3339(text)
        .map(|at| at.with_timezone(&Utc))
        .map_err(|_| match text.parse::<NaiveDateTime>() {
            Ok(_) => format!(
                "`{text}` lacks its offset from UTC: write `{text}-07:00`, with the site's own offset, or `{text}Z` for UTC"
            ),
            Err(_) => {
                format!("`{text}` is not an RFC 3339 time such as 2027-01-16T17:10:00-06:00")
            }
        })
}
