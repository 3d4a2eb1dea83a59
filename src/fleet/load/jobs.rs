//! `[[job]]`: local times become instants, and no trailer is in two places at once.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, Duration, LocalResult, NaiveDateTime, TimeZone, Utc};
use chrono_tz::Tz;

use super::{given_twice, job_name};
use crate::fleet::defaults;
use crate::fleet::hours::{clash, gap_end};
use crate::fleet::model::{Fleet, Job, JobId, OpenHours};
use crate::fleet::problem::{nearest, quoted};
use crate::fleet::section::{Section, did_you_mean};
use crate::fleet::sheet::{Sheet, Spot};
use crate::heard::UnitName;

/// A job longer than this is a slip of the year.
const LONGEST_DAYS: i64 = 5 * 366;

/// The names that a job may use.
pub(super) struct Known<'a> {
    /// Trailers; `None` when `fleet.toml` could not be read.
    pub(super) trailers: Option<&'a BTreeSet<String>>,
    /// Sites.
    pub(super) sites: &'a BTreeMap<String, usize>,
    /// People; `None` when `crew.toml` could not be read.
    pub(super) crew: Option<&'a BTreeSet<String>>,
}

pub(super) fn read(
    section: &mut Section<'_, '_>,
    fleet: &mut Fleet,
    known: &Known<'_>,
    sheet: &Sheet<'_>,
) {
    let mut lines: BTreeMap<JobId, usize> = BTreeMap::new();
    let mut placed: Vec<(Job, Spot)> = Vec::new();
    for mut section in section.tables("job", "a job").unwrap_or_default() {
        let spot = section.spot();
        let Some(job) = job(&mut section, fleet, known, sheet) else {
            section.finish();
            continue;
        };
        let line = sheet.line(spot);
        match lines.get(&job.id) {
            Some(first) => {
                let found = given_twice(&job.id.to_string(), *first);
                sheet.report(
                    spot,
                    section.place(),
                    "a site and a time of its own",
                    found,
                    None,
                );
            }
            None => {
                lines.insert(job.id.clone(), line);
            }
        }
        section.finish();
        placed.push((job, spot));
    }
    placed.sort_by_key(|(job, spot)| (job.from, spot.offset()));
    clashes(&placed, sheet);
    fleet.jobs = placed.into_iter().map(|(job, _)| job).collect();
}

fn job(
    section: &mut Section<'_, '_>,
    fleet: &Fleet,
    known: &Known<'_>,
    sheet: &Sheet<'_>,
) -> Option<Job> {
    section.needs("site", "the id of a site");
    section.needs(
        "trailers",
        "the trailers it takes, as in trailers = [\"12\"]",
    );
    section.needs("from", "the local time the doors open");
    section.needs("to", "the local time they close for good");
    let site = section.text("site");
    if let Some(site) = site {
        section.named(format!("job at {}", quoted(site).trim_matches('`')));
        if !known.sites.contains_key(site) {
            let hint = nearest(site, known.sites.keys().map(String::as_str)).map(did_you_mean);
            section.wrong("site", "the id of a site in this file", hint);
        }
    }
    let trailers = trailers(section, known, sheet);
    let from = section.moment("from");
    if let (Some(site), Some(from)) = (site, from) {
        section.named(job_name(&JobId {
            site: site.into(),
            from,
        }));
    }
    let to = section.moment("to");
    let guests = section.number("guests", 0.0..=1_000_000.0, "people");
    let alcohol = section.truth("alcohol").unwrap_or(false);
    let set_up_h = section.number("set_up_h", 0.0..=1_000.0, "h");
    let hours = section.hours("hours");
    let crew = crew(section, known, sheet);

    let zone = site.and_then(|site| fleet.sites.get(site)?.time_zone);
    let zone = zone.unwrap_or(fleet.time_zone);
    let starts = from.and_then(|from| instant(section, "from", from, zone));
    let ends = to.and_then(|to| instant(section, "to", to, zone));
    let (site, from, to, starts, ends) = (site?, from?, to?, starts?, ends?);
    if ends <= starts {
        section.wrong("to", format!("a time after `from`, {from}"), None);
        return None;
    }
    if to - from > Duration::days(LONGEST_DAYS) {
        section.wrong("to", "a time within five years of `from`", None);
        return None;
    }
    let open = match hours {
        Some((open, close)) if open == close => OpenHours::Through,
        Some((open, close)) => OpenHours::Daily(open, close),
        // the same time of day at both ends leaves no hour shut
        None if to - from > Duration::hours(24) && from.time() != to.time() => {
            OpenHours::Daily(from.time(), to.time())
        }
        None => OpenHours::Through,
    };
    let job = Job {
        id: JobId {
            site: site.into(),
            from,
        },
        trailers,
        from: starts,
        to: ends,
        open,
        time_zone: zone,
        guests: guests.unwrap_or(defaults::GUESTS),
        alcohol,
        set_up_h: set_up_h.unwrap_or(defaults::SET_UP_H),
        crew,
    };
    if job.windows(starts).next().is_none() {
        section.wrong("hours", "hours that fall between `from` and `to`", None);
        return None;
    }
    Some(job)
}

fn trailers(section: &mut Section<'_, '_>, known: &Known<'_>, sheet: &Sheet<'_>) -> Vec<UnitName> {
    let mut units: Vec<UnitName> = Vec::new();
    let texts = section.texts("trailers");
    let place = format!("{}, trailers", section.place());
    if section.is_list("trailers") && section.list_length("trailers") == 0 {
        section.wrong("trailers", "at least one trailer", None);
    }
    for (text, spot) in texts {
        let unit = UnitName::new(text);
        if let Some(trailers) = known.trailers
            && !trailers.contains(unit.as_str())
        {
            let hint =
                nearest(unit.as_str(), trailers.iter().map(String::as_str)).map(did_you_mean);
            sheet.report(
                spot,
                place.as_str(),
                "the id of a trailer in fleet.toml",
                quoted(text),
                hint,
            );
        }
        if units.contains(&unit) {
            sheet.report(
                spot,
                place.as_str(),
                "each trailer once",
                format!("{} again", quoted(text)),
                None,
            );
        } else {
            units.push(unit);
        }
    }
    units
}

/// Reads who works the job: people of `crew.toml`, each once.
fn crew(section: &mut Section<'_, '_>, known: &Known<'_>, sheet: &Sheet<'_>) -> Vec<String> {
    let mut crew: Vec<String> = Vec::new();
    let place = format!("{}, crew", section.place());
    for (text, spot) in section.texts("crew") {
        if let Some(people) = known.crew
            && !people.contains(text)
        {
            let hint = nearest(text, people.iter().map(String::as_str)).map(did_you_mean);
            sheet.report(
                spot,
                place.as_str(),
                "the id of a person in crew.toml",
                quoted(text),
                hint,
            );
        }
        if !crew.iter().any(|other| other == text) {
            crew.push(text.to_owned());
        }
    }
    crew
}

/// Makes an instant of a local time; one that the clocks skip is a problem, of two the first counts.
fn instant(
    section: &Section<'_, '_>,
    key: &str,
    local: NaiveDateTime,
    zone: Tz,
) -> Option<DateTime<Utc>> {
    match zone.from_local_datetime(&local) {
        LocalResult::Single(at) | LocalResult::Ambiguous(at, _) => Some(at.with_timezone(&Utc)),
        LocalResult::None => {
            let after = gap_end(zone, local).with_timezone(&zone).naive_local();
            let expected = format!("a time that exists in {zone}");
            let hint = format!(
                "the clocks go forward past it; the next time there is {}",
                after.format("%Y-%m-%dT%H:%M:%S")
            );
            section.wrong(key, expected, Some(hint));
            None
        }
    }
}

/// Reports each job whose open hours meet those of an earlier one of the same trailer.
fn clashes(placed: &[(Job, Spot)], sheet: &Sheet<'_>) {
    let mut running: BTreeMap<&UnitName, Vec<usize>> = BTreeMap::new();
    for (i, (job, spot)) in placed.iter().enumerate() {
        for unit in &job.trailers {
            let others = running.entry(unit).or_default();
            others.retain(|&other| placed[other].0.to > job.from);
            let met = others
                .iter()
                .find_map(|&other| Some((other, clash(&placed[other].0, job)?)));
            if let Some((other, at)) = met {
                let (other, other_spot) = &placed[other];
                let when = at.with_timezone(&job.time_zone).format("%Y-%m-%d %H:%M");
                let expected = format!("trailer {unit} in one place at a time");
                let line = sheet.line(*other_spot);
                let found = format!(
                    "it open at {} too, from {when} ({} on line {line})",
                    other.id.site,
                    job_name(&other.id)
                );
                sheet.report(*spot, job_name(&job.id), expected, found, None);
            }
            others.push(i);
        }
    }
}
