//! A report that names a site in words and no trailer is of what stands there, and not of the trailer talked about.

use chrono::TimeDelta;

use super::super::settle::Settled;
use super::super::sites;
use super::Hearing;
use crate::heard::{Entry, ReadingKey, UnitName};

/// A job that begins within this long is meant by its site's name.
const SOON: TimeDelta = TimeDelta::hours(18);

impl Hearing<'_> {
    /// Gives a report to the one trailer at the site that is named; people are counted for the whole site, and anything
    /// else of several trailers is asked.
    pub(super) fn at_the_site_named(&self, settled: &mut Settled) {
        let Some((site, _)) = sites::named_in(&self.fleet, self.text) else {
            return;
        };
        let now = self.inbound.at;
        let mut jobs = self.fleet.jobs_between(now, now + SOON);
        let job = jobs.find(|job| job.id.site == site.id);
        let here: Vec<UnitName> = job.map(|job| job.trailers.clone()).unwrap_or_default();
        let told = match (settled.reports.as_slice(), &settled.homeless) {
            ([(unit, at, entry)], None) if settled.from_context.as_ref() == Some(unit) => {
                Some((Some(unit.clone()), *at, entry.clone()))
            }
            ([], Some(entry)) => Some((None, now, entry.clone())),
            _ => None,
        };
        let Some((unit, at, entry)) = told.filter(|(.., entry)| entry.faults.is_empty()) else {
            return;
        };
        if here.is_empty() || unit.is_some_and(|unit| here.contains(&unit)) {
            return;
        }
        let to = match here.as_slice() {
            [only] => Some(only),
            [first, ..] if counts_people(&entry) => Some(first),
            _ => None,
        };
        settled.reports.clear();
        settled.homeless = None;
        settled.from_context = None;
        match to {
            Some(unit) => {
                let mut entry = entry;
                entry.unit = Some(unit.clone());
                settled.reports.push((unit.clone(), at, entry));
            }
            None => {
                settled.homeless = Some(Entry {
                    unit: None,
                    ..entry
                })
            }
        }
    }
}

/// Tells whether a report counts people and tells nothing else.
fn counts_people(entry: &Entry) -> bool {
    let readings = entry.readings.values.keys().eq([&ReadingKey::Guests]);
    readings && entry.events.is_empty() && entry.readings.amps.is_empty()
}
