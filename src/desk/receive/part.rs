//! A pump-out of a part: fewer gallons came out than the tank held, or that is said. A tank that is called empty and is not
//! fills unseen, so nothing is logged of it, its task stays, and what is left is asked.

use chrono::{DateTime, Utc};

use super::super::answer::Reply;
use super::super::settle::Settled;
use super::Hearing;
use crate::book::TankNote;
use crate::fleet::Trailer;
use crate::heard::{Entry, Event, Fault, ReadingKey, UnitName};
use crate::outlook::waste_volume;
use crate::quantity::Measure;

/// What is left by the last reading and is more than this share of the tank is no doubt of the gauge (common practice, no
/// source).
const MORE_THAN_DOUBT: f64 = 0.2;
/// A longer message tells more than what a truck took.
const LONGEST: usize = 9;

/// A pump-out that did not empty the tank.
pub(super) struct Part {
    unit: UnitName,
    /// What the tank held as last read, with the time, and what came out of it, gallons; none where a part is told in words.
    told: Option<(f64, DateTime<Utc>, f64)>,
}

impl Hearing<'_> {
    /// Takes a pump-out that did not empty the tank out of the report.
    pub(super) fn pumped_in_part(&mut self, settled: &mut Settled) -> Option<Part> {
        let part = self
            .told_in_part(settled)
            .or_else(|| self.too_few(settled))?;
        settled.amend(&part.unit, |entry| {
            entry.events.retain(|event| *event != Event::WastePumped);
            entry.readings.values.remove(&ReadingKey::PumpedGal);
        });
        if part.told.is_none() {
            // the one number was of the part, and is not asked about
            self.heard.unclear.clear();
        }
        Some(part)
    }

    /// Reads "they only pumped 200 of 12", "12 partial pump 150 gal".
    fn told_in_part(&self, settled: &Settled) -> Option<Part> {
        let says = |list| self.desk.phrases.holds("pumped", list, self.text);
        let other = self.heard.ask.is_some() || self.heard.command.is_some() || self.mends();
        let long = self.text.split_whitespace().count() > LONGEST;
        let levels = |entry: &Entry| reads_level(entry);
        if other || long || !says("part") || settled.reports.iter().any(|(.., e)| levels(e)) {
            return None;
        }
        let unit = self.named_or_last(settled)?;
        Some(Part { unit, told: None })
    }

    /// Finds the report of a pump-out by which much more would be left than a gauge can be off.
    fn too_few(&self, settled: &Settled) -> Option<Part> {
        settled.reports.iter().find_map(|(unit, at, entry)| {
            let gal = entry.readings.value(ReadingKey::PumpedGal)?;
            let spec = self.fleet.trailers.get(unit)?;
            let (held, since) = self.held(spec).filter(|(_, since)| since <= at)?;
            let part = held - gal > MORE_THAN_DOUBT * spec.waste_gal && !reads_level(entry);
            part.then(|| Part {
                unit: unit.clone(),
                told: Some((held, since, gal)),
            })
        })
    }

    /// Returns what a tank held as it was last read, gallons: it holds no less since. None where it was pumped since, or the
    /// gauge sticks.
    fn held(&self, spec: &Trailer) -> Option<(f64, DateTime<Utc>)> {
        let state = self.desk.book.unit(&spec.id)?.state();
        let known = |(at, note): &(DateTime<Utc>, TankNote)| match note {
            TankNote::Waste(pct) => Some(Some((
                waste_volume(spec, *pct) / 100.0 * spec.waste_gal,
                *at,
            ))),
            TankNote::WasteGal(gal) => Some(Some((*gal, *at))),
            TankNote::Pumped(_) => Some(None),
            _ => None,
        };
        let last = state.tanks.iter().rev().find_map(known)?;
        last.filter(|_| !state.has(Fault::GaugeStuck))
    }
}

fn reads_level(entry: &Entry) -> bool {
    let levels = [ReadingKey::WastePct, ReadingKey::WasteGal];
    levels
        .iter()
        .any(|key| entry.readings.value(*key).is_some())
}

/// Says that the tank is not taken for empty, and asks what is left.
pub(super) fn tell(part: &Part, reply: &mut Reply<'_>) {
    let unit = part.unit.as_str();
    let Some((held, at, gal)) = part.told else {
        return reply.say("pumped-in-part", &[("unit", unit.into())]);
    };
    let amount = |gal| reply.voice.number(gal, Measure::Gal);
    let args = [
        ("unit", unit.into()),
        ("was", amount(held).into()),
        ("time", at.into()),
        ("value", amount(gal).into()),
    ];
    reply.say("pumped-too-few", &args);
}
