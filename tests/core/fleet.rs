//! The fleet: loading and its problems, defaults, open hours, who is where, the demo.

mod demo;
mod faulty;
mod hours;
mod impossible;
mod loading;
mod never_panics;
mod problems;
mod whereabouts;

use chrono::{DateTime, Utc};
use hosebib::fleet::{Fleet, FleetFiles, Problem, read};
use hosebib::heard::UnitName;

/// A fleet of every kind of trailer and site.
fn sample_files() -> FleetFiles {
    FleetFiles {
        fleet: include_str!("../data/fleets/sample/fleet.toml").into(),
        jobs: include_str!("../data/fleets/sample/jobs.toml").into(),
        crew: include_str!("../data/fleets/sample/crew.toml").into(),
        ..FleetFiles::default()
    }
}

/// Every key there is, once at least.
fn every_key_files() -> FleetFiles {
    FleetFiles {
        fleet: include_str!("../data/fleets/every-key/fleet.toml").into(),
        jobs: include_str!("../data/fleets/every-key/jobs.toml").into(),
        crew: include_str!("../data/fleets/every-key/crew.toml").into(),
        ..FleetFiles::default()
    }
}

fn of(fleet: &str, jobs: &str, crew: &str) -> FleetFiles {
    FleetFiles {
        fleet: fleet.into(),
        jobs: jobs.into(),
        crew: crew.into(),
        ..FleetFiles::default()
    }
}

#[track_caller]
fn loads(files: &FleetFiles) -> Fleet {
    read(files).unwrap_or_else(|problems| panic!("{}", lines(&problems).join("\n")))
}

/// What is wrong with the files, a line each.
fn problems(files: &FleetFiles) -> Vec<String> {
    read(files).map_or_else(|problems| lines(&problems), |_| Vec::new())
}

fn lines(problems: &[Problem]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

#[track_caller]
fn at(text: &str) -> DateTime<Utc> {
    DateTime::parse_from_rfc3339(text)
        .expect(text)
        .with_timezone(&Utc)
}

fn unit(name: &str) -> UnitName {
    UnitName::new(name)
}
