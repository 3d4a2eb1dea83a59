//! Which trailers a sender most likely means where a message names none: their own.

use chrono::TimeDelta;

use super::Hearing;
use super::at_site::units_at;
use crate::dialogue::About;
use crate::fleet::{Job, Role};
use crate::heard::UnitName;

/// How many likely answers a question offers.
const MOST_LIKELY: usize = 6;
/// What somebody told of this lately is theirs.
const LATELY: TimeDelta = TimeDelta::hours(24);
/// A job is looked out for from this long before its doors open.
const AHEAD: TimeDelta = TimeDelta::hours(24);

impl Hearing<'_> {
    /// Returns the question which trailer this message is about, to be read again once that is known.
    pub(in crate::desk) fn which_unit(&self) -> About {
        About::WhichUnitOf {
            text: self.text.trim().to_owned(),
            likely: self.likely_units(),
        }
    }

    /// Returns the trailers a sender most likely means: those they told of lately, those of their jobs, those beside them.
    /// Of somebody who has none it is one of those at a job, where these are few enough to be named.
    pub(in crate::desk) fn likely_units(&self) -> Vec<UnitName> {
        if let Some(site) = &self.site {
            let here = units_at(self.desk, &self.fleet, site, self.now);
            if !here.is_empty() && here.len() <= MOST_LIKELY {
                return here;
            }
        }
        let mut likely: Vec<UnitName> = Vec::new();
        let mut add = |unit: &UnitName| {
            if !likely.contains(unit) {
                likely.push(unit.clone());
            }
        };
        let sent = self.desk.book.sent(&self.member.id).iter().rev();
        let lately = sent.take_while(|sent| self.now - sent.at <= LATELY);
        lately.flat_map(|sent| &sent.units).for_each(&mut add);
        let theirs = self.fleet.jobs_worked_by(&self.member.id);
        let today = theirs.filter(|job| self.is_of_today(job));
        today.flat_map(|job| &job.trailers).for_each(&mut add);
        // who told of one trailer of a job stands beside the others; a dispatcher stands beside none
        let dispatches = self.member.role == Role::Dispatcher;
        let last = likely.first().filter(|_| !dispatches);
        let beside = last.and_then(|unit| self.fleet.job_of(unit, self.now, None));
        let beside = beside.map_or_else(Vec::new, |job| job.trailers.clone());
        likely.extend(
            beside
                .into_iter()
                .filter(|unit| !likely.contains(unit))
                .collect::<Vec<_>>(),
        );
        if likely.is_empty() || dispatches && likely.len() < 2 {
            self.add_all_of_today(&mut likely);
        }
        likely.truncate(MOST_LIKELY);
        likely
    }

    /// Adds the trailers that are at a job; none where they are too many to choose from.
    fn add_all_of_today(&self, likely: &mut Vec<UnitName>) {
        let jobs = self.fleet.jobs_between(self.now, self.now + AHEAD);
        let mut more: Vec<UnitName> = Vec::new();
        for unit in jobs.flat_map(|job| job.trailers.iter().rev()) {
            if !likely.contains(unit) && !more.contains(unit) {
                more.push(unit.clone());
            }
            if likely.len() + more.len() > MOST_LIKELY {
                return;
            }
        }
        // whose doors open first comes first
        likely.extend(more.into_iter().rev());
    }

    fn is_of_today(&self, job: &Job) -> bool {
        job.from - AHEAD <= self.now && self.now <= job.to
    }
}
