//! The demo fleet and its day, inside the binary: an invented company in an invented county.

use chrono::{DateTime, Utc};

use super::load::{FleetFiles, read};
use super::model::Fleet;

/// The demo's `fleet.toml`.
pub const FLEET: &str = include_str!("../../demo-fleet/fleet.toml");
/// The demo's `jobs.toml`.
pub const JOBS: &str = include_str!("../../demo-fleet/jobs.toml");
/// The demo's `crew.toml`.
pub const CREW: &str = include_str!("../../demo-fleet/crew.toml");
/// The demo's `words.toml`.
pub const WORDS: &str = include_str!("../../demo-fleet/words.toml");
/// A winter Saturday's messages, one JSON object a line, in the order they were received.
pub const DAY: &str = include_str!("../../demo-fleet/day.jsonl");
/// Who types in the demo chat: the driver who stands beside trailer 12.
pub const SENDER: &str = "tobin";
/// The instant the demo chat's clock starts at: 17:10 on the day's Saturday, local time.
pub const STARTS: &str = "2027-01-23T17:10:00-07:00";

/// Returns the texts of the demo's files.
pub fn files() -> FleetFiles {
    FleetFiles {
        fleet: FLEET.into(),
        jobs: JOBS.into(),
        crew: CREW.into(),
        words: WORDS.into(),
    }
}

/// Returns the demo fleet.
pub fn fleet() -> Fleet {
    read(&files()).expect("the demo fleet is checked by a test")
}

/// Returns [`STARTS`] as an instant.
pub fn starts() -> DateTime<Utc> {
    let starts = DateTime::parse_from_rfc3339(STARTS).expect("a constant in RFC 3339");
    starts.with_timezone(&Utc)
}
