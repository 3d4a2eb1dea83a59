//! Reading the files into a [`Fleet`]: all of it, or every problem at once.

mod crew;
mod jobs;
mod parts;
mod sites;
mod trailers;
mod words;

use std::collections::BTreeSet;
use std::str::FromStr;

use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::model::{Fleet, JobId};
use super::problem::{FleetFile, Problem, nearest, quoted};
use super::section::{Section, did_you_mean};
use super::sheet::Sheet;
use crate::heard::Language;
use crate::quantity::{Style, TemperatureScale, Units};

/// The texts of a fleet's files.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct FleetFiles {
    /// `fleet.toml`.
    pub fleet: String,
    /// `jobs.toml`.
    pub jobs: String,
    /// `crew.toml`.
    pub crew: String,
    /// `words.toml`; empty where the fleet has none.
    #[serde(default)]
    pub words: String,
}

impl FleetFiles {
    /// Returns one file's text.
    pub fn text(&self, file: FleetFile) -> &str {
        match file {
            FleetFile::Fleet => &self.fleet,
            FleetFile::Jobs => &self.jobs,
            FleetFile::Crew => &self.crew,
            FleetFile::Words => &self.words,
        }
    }
}

/// Reads a fleet, with every default filled in.
///
/// # Errors
///
/// Every problem of all files, in the order of the files and their lines; then nothing is loaded.
pub fn read(files: &FleetFiles) -> Result<Fleet, Vec<Problem>> {
    let [fleet_sheet, jobs_sheet, crew_sheet, words_sheet] =
        FleetFile::ALL.map(|file| Sheet::new(file, without_mark(files.text(file))));
    let mut fleet = Fleet::default();

    let trailers_known = match fleet_sheet.parse() {
        Some(table) => {
            let section = Section::new(&fleet_sheet, &table, "the fleet file");
            Some(read_fleet(section, &mut fleet, &fleet_sheet))
        }
        None => None,
    };
    let people_known = crew_sheet.parse().map(|table| {
        let mut section = Section::new(&crew_sheet, &table, "the crew file");
        let known = crew::read(&mut section, &mut fleet.crew, &crew_sheet);
        section.finish();
        known
    });
    if let Some(table) = jobs_sheet.parse() {
        let mut section = Section::new(&jobs_sheet, &table, "the jobs file");
        let sites_known = sites::read(&mut section, &mut fleet.sites, &jobs_sheet);
        let known = jobs::Known {
            trailers: trailers_known.as_ref(),
            sites: &sites_known,
            crew: people_known.as_ref(),
        };
        jobs::read(&mut section, &mut fleet, &known, &jobs_sheet);
        section.finish();
    }
    // last, since a word must not be a name of any of them
    if let Some(table) = words_sheet.parse() {
        let mut section = Section::new(&words_sheet, &table, "the words file");
        words::read(&mut section, &mut fleet, &words_sheet);
        section.finish();
    }

    let mut problems: Vec<Problem> = [fleet_sheet, jobs_sheet, crew_sheet, words_sheet]
        .into_iter()
        .flat_map(Sheet::into_problems)
        .collect();
    problems.sort();
    problems.dedup();
    if problems.is_empty() {
        fleet
            .jobs
            .sort_by(|a, b| (a.from, &a.id).cmp(&(b.from, &b.id)));
        Ok(fleet)
    } else {
        Err(problems)
    }
}

/// Reads `fleet.toml`; returns the names of the trailers in it, the faulty ones too.
fn read_fleet(
    mut section: Section<'_, '_>,
    fleet: &mut Fleet,
    sheet: &Sheet<'_>,
) -> BTreeSet<String> {
    if let Some(company) = section.text("company") {
        fleet.company = company.into();
    }
    if let Some(zone) = time_zone(&mut section) {
        fleet.time_zone = zone;
    }
    let units = [("us", Units::Us), ("metric", Units::Metric)];
    let units = section.choice("units", &units).unwrap_or_default();
    let scales = [("F", TemperatureScale::F), ("C", TemperatureScale::C)];
    let temperature = section
        .choice("temperature", &scales)
        .unwrap_or(match units {
            Units::Us => TemperatureScale::F,
            Units::Metric => TemperatureScale::C,
        });
    let clock = section.whole("clock", 12..=24, "").unwrap_or(24);
    if clock != 12 && clock != 24 {
        section.wrong("clock", "12 or 24", None);
    }
    fleet.style = Style {
        units,
        temperature,
        twelve_hour: clock == 12,
    };
    if let Some(language) = section.choice("language", &LANGUAGES) {
        fleet.language = language;
    }
    fleet.quiet_hours = section.hours("quiet_hours");
    fleet.digest_at = section.times("digest_at").unwrap_or_default();
    let days = |days: i64| u32::try_from(days).ok();
    fleet.keep_texts_days = section
        .whole("keep_texts_days", 1..=36_500, "days")
        .and_then(days);
    fleet.keep_photos_days = section
        .whole("keep_photos_days", 1..=36_500, "days")
        .and_then(days);
    let known = trailers::read(&mut section, &mut fleet.trailers, sheet);
    section.finish();
    known
}

const LANGUAGES: [(&str, Language); 2] = [("en", Language::En), ("es", Language::Es)];

/// A zone's name that is so many letters off is a slip of it; further off it is the name of another city.
const SLIP: usize = 2;
/// The zones of America that most crews live by: most cities have none of their own name.
const OF_AMERICA: [&str; 8] = [
    "America/New_York",
    "America/Chicago",
    "America/Denver",
    "America/Phoenix",
    "America/Los_Angeles",
    "America/Halifax",
    "America/Mexico_City",
    "America/Puerto_Rico",
];
/// So many zones of another region are named.
const NAMED: usize = 8;

/// Names the zones of the region that a name begins with, from which to take the one with the same clocks.
fn zones_like(name: &str) -> Option<String> {
    let (region, city) = name.split_once('/')?;
    let zones: Vec<&str> = match region.eq_ignore_ascii_case("America") {
        true => OF_AMERICA.to_vec(),
        false => {
            let zones = chrono_tz::TZ_VARIANTS.iter().map(|zone| zone.name());
            let of_it = |zone: &&str| {
                let (other, _) = zone.split_once('/').unwrap_or_default();
                other.eq_ignore_ascii_case(region)
            };
            let mut zones: Vec<&str> = zones.filter(of_it).collect();
            let far = |zone: &&str| {
                let (_, other) = zone.split_once('/').unwrap_or_default();
                strsim::osa_distance(&city.to_lowercase(), &other.to_lowercase())
            };
            zones.sort_by_key(far);
            zones.truncate(NAMED);
            zones
        }
    };
    let names: Vec<String> = zones.iter().map(|zone| format!("`{zone}`")).collect();
    (!names.is_empty()).then(|| format!("take one whose clocks are the same: {}", names.join(", ")))
}

/// Reads `time_zone`, an IANA name.
fn time_zone(section: &mut Section<'_, '_>) -> Option<Tz> {
    let name = section.text("time_zone")?;
    if let Ok(zone) = Tz::from_str(name) {
        return Some(zone);
    }
    let names = || chrono_tz::TZ_VARIANTS.iter().map(|zone| zone.name());
    // a bare city is the commonest slip: the name's last part is held against it too
    let city = names().find(|zone| {
        let last = zone.rsplit('/').next().unwrap_or_default();
        last.eq_ignore_ascii_case(&name.trim().replace(' ', "_"))
    });
    let slip =
        |zone: &&str| strsim::osa_distance(&name.to_lowercase(), &zone.to_lowercase()) <= SLIP;
    let meant = city.or_else(|| nearest(name, names()).filter(slip));
    let hint = meant.map_or_else(|| zones_like(name), |zone| Some(did_you_mean(zone)));
    section.wrong(
        "time_zone",
        "an IANA time zone, as in \"America/Halifax\"",
        hint,
    );
    None
}

/// Windows editors put a byte order mark before the text.
fn without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// Words the problem of one id given twice.
fn given_twice(id: &str, first_line: usize) -> String {
    format!("{} again, already given on line {first_line}", quoted(id))
}

fn job_name(id: &JobId) -> String {
    format!("job {id}")
}
