//! Every pump-out, a row each, with the fields that a hauling record asks for.
//!
//! What such a record must hold differs by state; these are the fields of New Hampshire's Env-Wq 1605.11 and North
//! Carolina's 15A NCAC 13B .0836, as common to both. Most of them stand on the hauler's ticket and nobody texts them in:
//! they are empty columns that say so.

use std::io::Write;

use chrono::{DateTime, TimeDelta, Utc};

use super::check_ins::Places;
use super::sheet::{Cell, Sheet};
use super::span::Span;
use super::{CliError, Known, Walk};
use crate::book::Record;
use crate::heard::{Event, ReadingKey, UnitName};

const COLUMNS: [&str; 10] = [
    "picked_up",
    "unit",
    "site",
    "street_address",
    "gallons",
    "gauge_before_pct",
    "gauge_read",
    "reported_by",
    "words",
    "turn",
];

/// What no message tells and no file states.
const NEVER: [&str; 11] = [
    "client",
    "waste_type",
    "additives",
    "hauler",
    "driver",
    "permit_no",
    "truck_no",
    "discharge_site",
    "discharged",
    "ticket_no",
    "signature",
];

/// Gallons told so long after a pump-out are that one's.
const GALLONS_WITHIN: TimeDelta = TimeDelta::hours(1);

/// What one report tells about a waste tank.
struct Told {
    unit: UnitName,
    at: DateTime<Utc>,
    turn: u64,
    from: String,
    pumped: bool,
    gallons: Option<f64>,
    gauge: Option<f64>,
    site: String,
    address: String,
    /// What was written, where a hauler's name or a ticket's number may stand.
    words: Vec<String>,
}

/// One pump-out.
struct PumpOut {
    told: Told,
    /// The last gauge reading before it, % as shown, and when that was.
    before: Option<(f64, DateTime<Utc>)>,
}

pub(super) fn export<W: Write>(
    walk: &Walk<'_>,
    known: &Known,
    span: &Span,
    sheet: &mut Sheet<W>,
) -> Result<(), CliError> {
    let mut told = Vec::new();
    let mut places = Places::default();
    walk.records(&["fleet", "message"], |line, record| {
        match record {
            Record::Fleet { fleet, .. } => places.fleet = *fleet,
            Record::Message(message) => {
                for report in &message.reports {
                    places.note(report);
                    let readings = &report.entry.readings;
                    let gauge = readings.value(ReadingKey::WastePct);
                    let gallons = readings.value(ReadingKey::PumpedGal);
                    let pumped = report.entry.events.contains(&Event::WastePumped);
                    let says = pumped || gauge.is_some() || gallons.is_some();
                    if !says || known.gone.contains_key(&message.key) {
                        continue;
                    }
                    let site = places.site_of(&report.unit, report.at);
                    let address = site.and_then(|site| site.emergency_address.clone());
                    told.push(Told {
                        unit: report.unit.clone(),
                        at: report.at,
                        turn: line.seq,
                        from: message.from.clone(),
                        pumped,
                        gallons,
                        gauge,
                        site: site.map(|site| site.name.clone()).unwrap_or_default(),
                        address: address.unwrap_or_default(),
                        words: message.text.personal.clone().into_iter().collect(),
                    });
                }
            }
            _ => {}
        }
        Ok(())
    })?;
    told.sort_by(|a, b| (&a.unit, a.at, a.turn).cmp(&(&b.unit, b.at, b.turn)));
    let mut pump_outs = fold(told);
    pump_outs.sort_by_key(|pump_out| (pump_out.told.at, pump_out.told.turn));
    sheet.head(&COLUMNS, &NEVER)?;
    for pump_out in pump_outs {
        if span.holds(pump_out.told.at) {
            sheet.row(cells(pump_out))?;
        }
    }
    writeln!(
        std::io::stderr(),
        "never recorded, so empty: {}; fill them in from the hauler's ticket, whose gallons beat the gauge, and from `words`. \
         Which fields must be kept, and how long, differs by state.",
        NEVER.join(", ")
    )?;
    Ok(())
}

/// Joins what was told, in order of trailer and time, to pump-outs.
fn fold(told: Vec<Told>) -> Vec<PumpOut> {
    let mut pump_outs: Vec<PumpOut> = Vec::new();
    let mut gauge: Option<(UnitName, f64, DateTime<Utc>)> = None;
    for told in told {
        let read = told.gauge.map(|pct| (told.unit.clone(), pct, told.at));
        let before = gauge.take().filter(|(unit, ..)| *unit == told.unit);
        match pump_outs.last_mut() {
            Some(last)
                if !told.pumped
                    && told.gallons.is_some()
                    && last.told.unit == told.unit
                    && told.at - last.told.at <= GALLONS_WITHIN =>
            {
                last.told.gallons = told.gallons;
                last.told.words.extend(told.words);
                gauge = read.or(before);
            }
            _ if told.pumped || told.gallons.is_some() => {
                pump_outs.push(PumpOut {
                    before: before.map(|(_, pct, at)| (pct, at)),
                    told,
                });
                // a reading beside the words "pumped" is what the gauge shows since
                gauge = read;
            }
            _ => gauge = read.or(before),
        }
    }
    pump_outs
}

fn cells(pump_out: PumpOut) -> Vec<Cell> {
    let PumpOut { told, before } = pump_out;
    vec![
        Cell::Time(told.at),
        Cell::text(told.unit.as_str()),
        Cell::text(&told.site),
        Cell::text(&told.address),
        Cell::maybe(told.gallons, Cell::Number),
        Cell::maybe(before, |(pct, _)| Cell::Number(pct)),
        Cell::maybe(before, |(_, at)| Cell::Time(at)),
        Cell::text(&told.from),
        match told.words.is_empty() {
            true => Cell::Nothing,
            false => Cell::List(told.words),
        },
        Cell::Count(told.turn),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(
        unit: &str,
        minutes: i64,
        pumped: bool,
        gallons: Option<f64>,
        gauge: Option<f64>,
    ) -> Told {
        Told {
            unit: UnitName::new(unit),
            at: DateTime::from_timestamp(1_800_000_000 + minutes * 60, 0).unwrap(),
            turn: 1,
            from: "dana".into(),
            pumped,
            gallons,
            gauge,
            site: String::new(),
            address: String::new(),
            words: Vec::new(),
        }
    }

    fn folded(told: Vec<Told>) -> Vec<(String, Option<f64>, Option<f64>)> {
        fold(told)
            .into_iter()
            .map(|pump_out| {
                let PumpOut { told, before } = pump_out;
                (
                    told.unit.to_string(),
                    told.gallons,
                    before.map(|(pct, _)| pct),
                )
            })
            .collect()
    }

    #[test]
    fn gallons_told_within_the_hour_belong_to_the_pump_out() {
        let rows = folded(vec![
            told("12", 0, false, None, Some(75.0)),
            told("12", 60, true, None, None),
            told("12", 100, false, Some(320.0), None),
            told("12", 300, true, Some(200.0), Some(0.0)),
        ]);
        assert_eq!(
            rows,
            [
                ("12".into(), Some(320.0), Some(75.0)),
                ("12".into(), Some(200.0), None)
            ]
        );
    }

    #[test]
    fn a_gauge_of_another_trailer_is_not_taken() {
        let rows = folded(vec![
            told("12", 0, false, None, Some(75.0)),
            told("14", 10, true, None, None),
        ]);
        assert_eq!(rows, [("14".into(), None, None)]);
    }

    #[test]
    fn gallons_alone_are_a_pump_out() {
        let rows = folded(vec![
            told("12", 0, true, None, None),
            told("12", 90, false, Some(150.0), None),
        ]);
        assert_eq!(rows.len(), 2);
    }
}
