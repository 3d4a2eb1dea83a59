//! Everything about one incident in the order of time: its facts, who reported what of its trailer and who was told what,
//! when each was written, received and sent, and what was never recorded.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::io::Write;

use chrono::{DateTime, SecondsFormat, Utc};
use serde_json::Value;

use super::sheet::{Cell, Sheet};
use super::{CliError, Known, Walk};
use crate::book::{Hold, IncidentChange, Incidents, Message, Record, Report};
use crate::chat::clerk::is_held_by;
use crate::cli::beside;
use crate::dialogue::Fact;
use crate::heard::ReadingKey;
use crate::store::Line;

/// Its columns. `received` is when the bot had a message, or when the network accepted one of the bot's.
const COLUMNS: [&str; 9] = [
    "at", "kind", "who", "what", "text", "written", "received", "stands", "turn",
];

pub(super) fn export<W: Write>(
    number: u32,
    walk: &Walk<'_>,
    known: &Known,
    sheet: &mut Sheet<W>,
) -> Result<(), CliError> {
    let hold = hold(number, walk)?;
    let mut rows = Rows {
        hold: &hold,
        known,
        rows: Vec::new(),
        told: BTreeSet::new(),
        readings: BTreeSet::new(),
        waiting: HashMap::new(),
    };
    for line in beside::lines(walk.data)? {
        rows.take(&line?)?;
    }
    sheet.head(&COLUMNS, &[])?;
    rows.print(sheet)
}

/// Finds what an incident holds, released or not.
fn hold(number: u32, walk: &Walk<'_>) -> Result<Hold, CliError> {
    let mut incidents = Incidents::default();
    walk.records(&["incident"], |_, record| {
        if let Record::Incident { at, by, change } = record {
            incidents.apply(at, &by, &change);
        }
        Ok(())
    })?;
    let incident = incidents.incident(number).ok_or_else(|| {
        CliError::Failed(format!(
            "there is no incident {number} in `{}`: a dispatcher lists them with \"incidents\"",
            walk.data.display()
        ))
    })?;
    Ok(incident.hold.clone())
}

/// One row before it is printed.
#[derive(Default)]
struct Row {
    at: DateTime<Utc>,
    kind: &'static str,
    who: String,
    what: Vec<String>,
    text: Option<String>,
    written: Option<DateTime<Utc>>,
    received: Option<DateTime<Utc>>,
    stands: String,
    turn: u64,
}

struct Rows<'a> {
    hold: &'a Hold,
    known: &'a Known,
    rows: Vec<Row>,
    told: BTreeSet<Fact>,
    readings: BTreeSet<&'static str>,
    /// Messages that went out, by turn and place, and their row.
    waiting: HashMap<(u64, u64), usize>,
}

impl Rows<'_> {
    fn take(&mut self, line: &Line) -> Result<(), CliError> {
        for value in line.records.iter().filter(|value| value["note"] == "sent") {
            let number = |field: &str| value["id"][field].as_u64();
            if let (Some(turn), Some(index)) = (number("turn"), number("index"))
                && let Some(row) = self.waiting.remove(&(turn, index))
            {
                self.rows[row].received = Some(line.at);
                self.rows[row].stands = "accepted by the network".into();
            }
        }
        if !is_held_by(line, self.hold) {
            return Ok(());
        }
        for value in &line.records {
            match beside::record(line, value)? {
                Some(Record::Message(message)) => self.message(&message, line.seq),
                Some(Record::Incident { at, by, change })
                    if change.number() == self.hold.number =>
                {
                    self.incident(at, by, change, line);
                }
                Some(Record::Task { at, .. } | Record::Alarm { at, .. }) => {
                    self.changed(at, value, line.seq);
                }
                _ if value["note"] == "set-aside" => self.set_aside(line, value),
                _ => {}
            }
        }
        for (index, letter) in (0..).zip(&line.outgoing) {
            self.waiting.insert((line.seq, index), self.rows.len());
            self.rows.push(Row {
                at: line.at,
                kind: "told",
                who: text(&letter["to"]).unwrap_or_default(),
                text: personal(&letter["text"]),
                written: Some(line.at),
                stands: "not known to have gone out".into(),
                turn: line.seq,
                ..Row::default()
            });
        }
        Ok(())
    }

    fn message(&mut self, message: &Message, turn: u64) {
        let of_it: Vec<&Report> = message
            .reports
            .iter()
            .filter(|report| report.unit == self.hold.unit)
            .collect();
        let mut what = Vec::new();
        for report in &of_it {
            for key in ReadingKey::ALL {
                if let Some(value) = report.entry.readings.value(*key) {
                    self.readings.insert(key.code());
                    what.push(format!("{} {value}", key.code()));
                }
            }
            what.extend(report.entry.events.iter().map(ToString::to_string));
            what.extend(report.entry.faults.iter().map(ToString::to_string));
            what.extend(
                report
                    .entry
                    .cleared
                    .iter()
                    .map(|fault| format!("cleared: {fault}")),
            );
        }
        let gone = self.known.gone.get(&message.key);
        self.rows.push(Row {
            at: of_it.first().map_or(message.at, |report| report.at),
            kind: match of_it.is_empty() {
                true => "message",
                false => "check-in",
            },
            who: message.from.clone(),
            what,
            text: message.text.personal.clone(),
            written: Some(message.at),
            received: Some(message.received),
            stands: gone.map_or("stands", |gone| gone).into(),
            turn,
        });
    }

    fn incident(&mut self, at: DateTime<Utc>, by: String, change: IncidentChange, line: &Line) {
        let mut row = Row {
            at,
            who: by,
            received: Some(line.at),
            turn: line.seq,
            ..Row::default()
        };
        let unit = &self.hold.unit;
        match change {
            IncidentChange::Opened {
                number, happened, ..
            } => {
                row.kind = "opened";
                row.what = vec![
                    format!("incident {number} on {unit}"),
                    format!(
                        "happened {}",
                        happened
                            .with_timezone(&self.known.zone)
                            .to_rfc3339_opts(SecondsFormat::Secs, true)
                    ),
                ];
            }
            IncidentChange::Told { fact, text, .. } => {
                self.told.insert(fact);
                row.kind = "fact";
                row.what = vec![fact.code().into()];
                row.text = text.personal;
                row.stands = "told".into();
            }
            IncidentChange::NotKnown { fact, .. } => {
                self.told.insert(fact);
                row.kind = "fact";
                row.what = vec![fact.code().into()];
                row.stands = "asked, not known".into();
            }
            IncidentChange::Released { number, reason, .. } => {
                row.kind = "released";
                row.what = vec![format!("incident {number} on {unit}")];
                row.text = reason.personal;
            }
        }
        self.rows.push(row);
    }

    /// A change to a task or an alarm, in the codes of the journal.
    fn changed(&mut self, at: DateTime<Utc>, value: &Value, turn: u64) {
        let is_task = value["record"] == "task";
        let id = value.get("id").or(value["task"].get("id"));
        let id = id.map(|id| text(id).unwrap_or_else(|| id.to_string()));
        let kind = text(&value["task"]["kind"]);
        let change = text(&value["change"]).unwrap_or_default();
        self.rows.push(Row {
            at,
            kind: if is_task { "task" } else { "alarm" },
            who: text(&value["by"]).unwrap_or_default(),
            what: [Some(change), id, kind].into_iter().flatten().collect(),
            text: personal(&value["reason"]),
            turn,
            ..Row::default()
        });
    }

    fn set_aside(&mut self, line: &Line, value: &Value) {
        self.rows.push(Row {
            at: line.at,
            kind: "message",
            who: text(&value["from"]).unwrap_or_default(),
            text: personal(&value["text"]),
            received: Some(line.at),
            stands: "could not be worked through".into(),
            turn: line.seq,
            ..Row::default()
        });
    }

    fn print<W: Write>(mut self, sheet: &mut Sheet<W>) -> Result<(), CliError> {
        // a message that carries no words any more lost them before the incident was opened
        for row in &mut self.rows {
            let worded =
                matches!(row.kind, "message" | "check-in" | "told") || row.stands == "told";
            if worded && row.text.is_none() {
                row.stands.push_str("; its words were taken out");
            }
        }
        self.rows.sort_by_key(|row| (row.at, row.turn));
        for row in self.rows {
            sheet.row(vec![
                Cell::Time(row.at),
                Cell::text(row.kind),
                Cell::text(&row.who),
                list(row.what),
                Cell::text(&row.text.unwrap_or_default()),
                Cell::maybe(row.written, Cell::Time),
                Cell::maybe(row.received, Cell::Time),
                Cell::text(&row.stands),
                Cell::Count(row.turn),
            ])?;
        }
        let facts = Fact::ALL
            .into_iter()
            .filter(|fact| !self.told.contains(fact));
        let facts = facts.map(|fact| ("fact", fact.code()));
        let codes = ReadingKey::ALL.iter().map(|key| key.code());
        let codes = codes.filter(|code| !self.readings.contains(code));
        for (kind, code) in facts.chain(codes.map(|code| ("reading", code))) {
            let mut cells: BTreeMap<&str, Cell> = BTreeMap::new();
            cells.insert("kind", Cell::text(kind));
            cells.insert("what", Cell::List(vec![code.to_owned()]));
            cells.insert("stands", Cell::text("never recorded"));
            let cell = |column: &&str| cells.remove(*column).unwrap_or(Cell::Nothing);
            sheet.row(COLUMNS.iter().map(cell).collect())?;
        }
        Ok(())
    }
}

fn list(items: Vec<String>) -> Cell {
    match items.is_empty() {
        true => Cell::Nothing,
        false => Cell::List(items),
    }
}

fn text(value: &Value) -> Option<String> {
    value.as_str().map(str::to_owned)
}

fn personal(value: &Value) -> Option<String> {
    text(&value["personal"])
}
