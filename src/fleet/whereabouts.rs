//! Which trailer is where: the job in force at an instant, its share of the guests, and the names near a wrong one.

use std::collections::HashMap;
use std::sync::OnceLock;

use chrono::{DateTime, Duration, Utc};
use chrono_tz::Tz;

use super::model::{Fleet, Job, JobId, Site, Trailer};
use crate::heard::UnitName;

/// A departure this long after a job's end can still be the departure from it, h.
const LATE_DEPARTURE_H: i64 = 24;

/// Where each trailer's jobs stand in [`Fleet::jobs`], and which trailers a spelling can mean.
///
/// It is filled when first asked for, is no part of what a fleet is (all indexes are equal, none is stored), and a clone
/// starts empty: so a fleet may be changed after cloning it, but not once it was asked.
#[derive(Debug, Default)]
pub struct JobIndex(OnceLock<Places>);

#[derive(Debug, Default)]
struct Places {
    of_unit: HashMap<UnitName, Vec<usize>>,
    of_id: HashMap<JobId, usize>,
    /// The jobs on which somebody is named.
    of_crew: HashMap<String, Vec<usize>>,
    /// The latest end of a job and of all whose doors open before it.
    ends: Vec<DateTime<Utc>>,
    /// The trailers, by the letters and digits of their names.
    of_letters: HashMap<String, Vec<UnitName>>,
}

impl Clone for JobIndex {
    fn clone(&self) -> Self {
        JobIndex::default()
    }
}

impl PartialEq for JobIndex {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Fleet {
    /// Finds the job that a trailer is at.
    ///
    /// It is there from its set-up, which begins `set_up_h` before the doors or at the end of its job before if that is
    /// later, until it is reported left or its next set-up begins. `left_at` is when it was last reported to have left a
    /// site, if ever; one after `at` does not count, and one before the doors, within a day of the end of its job before,
    /// is taken as leaving that one.
    pub fn job_of(
        &self,
        unit: &UnitName,
        at: DateTime<Utc>,
        left_at: Option<DateTime<Utc>>,
    ) -> Option<&Job> {
        let places = self.places_of(unit);
        let begun = places.partition_point(|&place| self.set_up_begins(places, place) <= at);
        let now = begun.checked_sub(1)?;
        let job = &self.jobs[places[now]];
        let Some(left) = left_at.filter(|left| *left <= at) else {
            return Some(job);
        };
        let begins = self.set_up_begins(places, places[now]);
        if left < begins {
            return Some(job);
        }
        let before = now.checked_sub(1).map(|before| &self.jobs[places[before]]);
        let of_before = before.is_some_and(|before| {
            left < job.from && before.to + Duration::hours(LATE_DEPARTURE_H) >= left
        });
        of_before.then_some(job)
    }

    /// Returns when the crew may be on site for this trailer's part in a job; `None` when it has none.
    pub fn set_up_of(&self, unit: &UnitName, job: &JobId) -> Option<DateTime<Utc>> {
        let places = self.places_of(unit);
        let place = places.iter().find(|&&place| self.jobs[place].id == *job)?;
        Some(self.set_up_begins(places, *place))
    }

    /// Returns the time zone at a trailer: of the job that it is at, else the company's.
    pub fn zone_at(&self, unit: Option<&UnitName>, at: DateTime<Utc>) -> Tz {
        let job = unit.and_then(|unit| self.job_of(unit, at, None));
        job.map_or(self.time_zone, |job| job.time_zone)
    }

    /// Lists a trailer's jobs in the order of their doors.
    pub fn jobs_of(
        &self,
        unit: &UnitName,
    ) -> impl DoubleEndedIterator<Item = &Job> + ExactSizeIterator {
        self.places_of(unit).iter().map(|&place| &self.jobs[place])
    }

    /// Finds a trailer's next job whose doors open after `at`.
    pub fn next_job_of(&self, unit: &UnitName, at: DateTime<Utc>) -> Option<&Job> {
        let places = self.places_of(unit);
        let next = places.partition_point(|&place| self.jobs[place].from <= at);
        places.get(next).map(|&place| &self.jobs[place])
    }

    /// Lists the jobs that name somebody as their crew, in the order of their doors.
    pub fn jobs_worked_by(&self, who: &str) -> impl Iterator<Item = &Job> {
        let places = self.places().of_crew.get(who).into_iter().flatten();
        places.map(|&place| &self.jobs[place])
    }

    /// Lists the jobs whose doors open by `last` and which end at `first` or later, the latest doors first.
    pub fn jobs_between(
        &self,
        first: DateTime<Utc>,
        last: DateTime<Utc>,
    ) -> impl Iterator<Item = &Job> {
        let ends = &self.places().ends;
        let begun = self.jobs.partition_point(|job| job.from <= last);
        let lasting = (0..begun)
            .rev()
            .take_while(move |&place| ends[place] >= first);
        lasting
            .map(|place| &self.jobs[place])
            .filter(move |job| job.to >= first)
    }

    /// Finds a job by its identity.
    pub fn job(&self, id: &JobId) -> Option<&Job> {
        self.places().of_id.get(id).map(|&place| &self.jobs[place])
    }

    /// Finds a trailer by name.
    pub fn trailer(&self, unit: &UnitName) -> Option<&Trailer> {
        self.trailers.get(unit)
    }

    /// Finds a job's site.
    pub fn site_of(&self, job: &Job) -> Option<&Site> {
        self.sites.get(&job.id.site)
    }

    /// Returns a trailer's part of a job's guests, split by stalls (toilets and urinals).
    pub fn guests_share(&self, job: &Job, unit: &UnitName, guests: f64) -> f64 {
        self.guests_share_less(job, unit, guests, |_| 0)
    }

    /// Returns a trailer's part of a job's guests, split by the stalls that work: `out_of_order` counts those that do not.
    ///
    /// Where no stall is known to work the trailers take equal parts; a trailer that is not at the job takes none.
    pub fn guests_share_less(
        &self,
        job: &Job,
        unit: &UnitName,
        guests: f64,
        out_of_order: impl Fn(&UnitName) -> u32,
    ) -> f64 {
        if !job.trailers.contains(unit) {
            return 0.0;
        }
        let working = |unit: &UnitName| {
            let stalls = self.trailers.get(unit).map_or(0, Trailer::stalls);
            f64::from(stalls.saturating_sub(out_of_order(unit)))
        };
        let all: f64 = job.trailers.iter().map(working).sum();
        if all > 0.0 {
            guests * working(unit) / all
        } else {
            guests / job.trailers.len() as f64
        }
    }

    /// Lists the trailers whose names are nearest to one that is none, the likeliest first, at most five.
    pub fn nearest_units(&self, name: &str) -> Vec<&UnitName> {
        const MOST: usize = 5;
        let typed = UnitName::new(name);
        let typed = typed.as_str();
        // a text this long was no name
        if typed.is_empty() || typed.chars().count() > 40 {
            return Vec::new();
        }
        let digits = digits_of(typed);
        let mut near: Vec<(usize, &UnitName)> = self
            .trailers
            .keys()
            .filter_map(|unit| Some((unlikeness(typed, digits, unit.as_str())?, unit)))
            .collect();
        near.sort();
        near.into_iter().take(MOST).map(|(_, unit)| unit).collect()
    }

    /// Finds the trailer that a name means. "07" is "7" and "R204" is "R-204", where nothing else bears the name.
    pub fn trailer_called(&self, name: &UnitName) -> Option<&UnitName> {
        let bears = |name| Some(self.trailers.get_key_value(name)?.0);
        bears(name).or_else(|| {
            let alike = self.places().of_letters.get(&letters(name))?;
            match alike.as_slice() {
                [unit] => bears(unit),
                _ => None,
            }
        })
    }

    fn places(&self) -> &Places {
        self.index.0.get_or_init(|| {
            let mut places = Places::default();
            for (place, job) in self.jobs.iter().enumerate() {
                places.of_id.entry(job.id.clone()).or_insert(place);
                let latest = places.ends.last().map_or(job.to, |end| job.to.max(*end));
                places.ends.push(latest);
                for who in &job.crew {
                    places.of_crew.entry(who.clone()).or_default().push(place);
                }
                for unit in &job.trailers {
                    places.of_unit.entry(unit.clone()).or_default().push(place);
                }
            }
            for unit in self.trailers.keys() {
                let alike = places.of_letters.entry(letters(unit)).or_default();
                alike.push(unit.clone());
            }
            for of_unit in places.of_unit.values_mut() {
                of_unit.sort_by_key(|&place| self.jobs[place].from);
            }
            places
        })
    }

    fn places_of(&self, unit: &UnitName) -> &[usize] {
        self.places().of_unit.get(unit).map_or(&[], Vec::as_slice)
    }

    /// The later of `set_up_h` before the doors and the end of the job before, but never after the doors.
    fn set_up_begins(&self, places: &[usize], place: usize) -> DateTime<Utc> {
        let job = &self.jobs[place];
        let seconds = (job.set_up_h * 3600.0).clamp(0.0, 1e9) as i64;
        let early = job.from - Duration::seconds(seconds);
        let rank = places.partition_point(|&other| self.jobs[other].from < job.from);
        match rank.checked_sub(1).map(|before| &self.jobs[places[before]]) {
            Some(before) => early.max(before.to).min(job.from),
            None => early,
        }
    }
}

/// Tells how unlike a known name is to what was typed: less is nearer, `None` is out of the question.
fn unlikeness(typed: &str, digits: &str, unit: &str) -> Option<usize> {
    if !digits.is_empty() && digits == digits_of(unit) {
        return Some(0); // B7 for 7, 012 for 12
    }
    let lengths = (typed.chars().count(), unit.chars().count());
    let most = if lengths.0.min(lengths.1) > 4 { 2 } else { 1 };
    if lengths.0.abs_diff(lengths.1) <= most
        && could_be_within(typed, unit, most)
        && let distance = strsim::osa_distance(typed, unit)
        && distance <= most
    {
        return Some(distance);
    }
    let begins = unit.starts_with(typed) || typed.starts_with(unit);
    begins.then(|| 2 + lengths.0.abs_diff(lengths.1))
}

/// Rules out most of a large fleet without the sum: an edit changes which characters occur by two at most.
fn could_be_within(a: &str, b: &str, edits: usize) -> bool {
    let occurring = |name: &str| {
        let bits = name.chars().map(|c| 1_u64 << (u32::from(c) % 64));
        bits.fold(0, std::ops::BitOr::bitor)
    };
    (occurring(a) ^ occurring(b)).count_ones() as usize <= 2 * edits
}

/// The number within a name, without leading zeros; empty where there is none or more than one.
fn digits_of(name: &str) -> &str {
    let digits = name.trim_matches(|c: char| !c.is_ascii_digit());
    if digits.bytes().all(|b| b.is_ascii_digit()) {
        digits.trim_start_matches('0')
    } else {
        ""
    }
}

/// Returns the letters and digits of a name, without zeros before them.
fn letters(name: &UnitName) -> String {
    let name = name.as_str().trim_start_matches('0');
    name.chars().filter(|c| c.is_alphanumeric()).collect()
}
