//! The fleet: loading, defaults, open hours, who is where.

use hosebib::fleet::{Fleet, FleetFiles, Problem, read};

fn sample_files() -> FleetFiles {
    FleetFiles {
        fleet: include_str!("../data/fleets/sample/fleet.toml").into(),
        jobs: include_str!("../data/fleets/sample/jobs.toml").into(),
        crew: include_str!("../data/fleets/sample/crew.toml").into(),
    }
}

#[track_caller]
fn loads(files: &FleetFiles) -> Fleet {
    read(files).unwrap_or_else(|problems| panic!("{}", lines(&problems)))
}

fn lines(problems: &[Problem]) -> String {
    let lines: Vec<String> = problems.iter().map(ToString::to_string).collect();
    lines.join("\n")
}

#[test]
fn the_sample_fleet_loads() {
    let fleet = loads(&sample_files());
    assert_eq!(
        (
            fleet.trailers.len(),
            fleet.sites.len(),
            fleet.jobs.len(),
            fleet.crew.len()
        ),
        (8, 19, 20, 6)
    );
}
