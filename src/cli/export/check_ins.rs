//! Every report on a trailer, a row each.

use std::collections::HashMap;
use std::io::Write;

use chrono::{DateTime, Utc};

use super::sheet::{Cell, Sheet};
use super::span::Span;
use super::{CliError, Known, Walk};
use crate::book::{Message, Record, Report};
use crate::fleet::{Fleet, Site};
use crate::heard::{Entry, Event, ReadingKey, UnitName};

/// The columns before the readings.
const BEFORE: [&str; 7] = ["at", "written", "received", "unit", "site", "from", "text"];
/// The columns behind them.
const AFTER: [&str; 9] = [
    "amps",
    "taps",
    "circuits_live",
    "events",
    "faults",
    "cleared",
    "said_when",
    "stands",
    "turn",
];

pub(super) fn export<W: Write>(
    walk: &Walk<'_>,
    known: &Known,
    span: &Span,
    sheet: &mut Sheet<W>,
) -> Result<(), CliError> {
    let readings = ReadingKey::ALL.iter().map(|key| key.code());
    let columns: Vec<&str> = BEFORE.into_iter().chain(readings).chain(AFTER).collect();
    sheet.head(&columns, &[])?;
    let mut places = Places::default();
    walk.records(&["fleet", "message"], |line, record| {
        match record {
            Record::Fleet { fleet, .. } => places.fleet = *fleet,
            Record::Message(message) => {
                for report in &message.reports {
                    places.note(report);
                    if span.holds(report.at) {
                        let site = places.site_of(&report.unit, report.at);
                        let site = site.map_or("", |site| site.name.as_str());
                        let stands = match known.gone.get(&message.key) {
                            Some(gone) => gone,
                            None if report.too_old => "too old to count",
                            None => "stands",
                        };
                        sheet.row(cells(&message, report, site, stands, line.seq))?;
                    }
                }
            }
            _ => {}
        }
        Ok(())
    })
}

/// Where trailers were, as far as the fleet then in force and their departures tell.
#[derive(Default)]
pub(super) struct Places {
    pub(super) fleet: Fleet,
    left: HashMap<UnitName, DateTime<Utc>>,
}

impl Places {
    /// Takes note of a departure.
    pub(super) fn note(&mut self, report: &Report) {
        if report.entry.events.contains(&Event::Left) {
            let left = self.left.entry(report.unit.clone()).or_insert(report.at);
            *left = report.at.max(*left);
        }
    }

    /// Finds the site that a trailer stood at.
    pub(super) fn site_of(&self, unit: &UnitName, at: DateTime<Utc>) -> Option<&Site> {
        // at the time of leaving it is still there
        let left = self.left.get(unit).copied().filter(|left| *left < at);
        let job = self.fleet.job_of(unit, at, left)?;
        self.fleet.site_of(job)
    }
}

fn cells(message: &Message, report: &Report, site: &str, stands: &str, turn: u64) -> Vec<Cell> {
    let Entry {
        when,
        events,
        readings,
        faults,
        cleared,
        ..
    } = &report.entry;
    let mut cells = vec![
        Cell::Time(report.at),
        Cell::Time(message.at),
        Cell::Time(message.received),
        Cell::text(report.unit.as_str()),
        Cell::text(site),
        Cell::text(&message.from),
        Cell::text(message.text.text()),
    ];
    cells.extend(
        ReadingKey::ALL
            .iter()
            .map(|key| Cell::maybe(readings.value(*key), Cell::Number)),
    );
    let amps = readings.amps.iter().map(|amps| match amps.circuit {
        Some(circuit) => format!("circuit {circuit}: {}", amps.amps),
        None => amps.amps.to_string(),
    });
    let live = readings.circuits_live.iter().flatten();
    cells.extend([
        list(amps),
        Cell::maybe(readings.taps, |taps| Cell::text(taps.code())),
        list(live.map(ToString::to_string)),
        list(events.iter().map(ToString::to_string)),
        list(faults.iter().map(ToString::to_string)),
        list(cleared.iter().map(ToString::to_string)),
        Cell::text(when.as_deref().unwrap_or_default()),
        Cell::text(stands),
        Cell::Count(turn),
    ]);
    cells
}

fn list(items: impl Iterator<Item = String>) -> Cell {
    let items: Vec<String> = items.collect();
    match items.is_empty() {
        true => Cell::Nothing,
        false => Cell::List(items),
    }
}
