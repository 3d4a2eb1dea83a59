//! A desk at which a fleet is loaded, as every test of talk begins, and the fleets of the tests' data.

use std::path::Path;

use chrono::{DateTime, Utc};
use hosebib::desk::Desk;
use hosebib::fleet::{self, Fleet, FleetFiles};

/// Loads a fleet into a fresh desk, long before anybody writes.
pub(crate) fn at_work(fleet: Fleet) -> Desk {
    let mut desk = Desk::default();
    let turn = desk.load(DateTime::<Utc>::UNIX_EPOCH, "test", fleet);
    desk.apply(&turn.records);
    desk
}

/// Loads a fleet of the tests' data, by its folder.
pub(crate) fn fleet_of(name: &str) -> Fleet {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/fleets");
    let folder = folder.join(name);
    let text = |file: &str| std::fs::read_to_string(folder.join(file)).expect("a fleet file");
    let files = FleetFiles {
        fleet: text("fleet.toml"),
        jobs: text("jobs.toml"),
        crew: text("crew.toml"),
        ..FleetFiles::default()
    };
    fleet::read(&files).unwrap_or_else(|problems| panic!("{name}: {}", problems[0]))
}
