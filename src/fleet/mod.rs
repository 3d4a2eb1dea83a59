//! The fleet as the company states it: trailers, sites, jobs and crew.
//!
//! [`model`] holds the facts with every default filled in; the loader reads `fleet.toml`, `jobs.toml` and `crew.toml`,
//! and reports every error at once, with file, line, what was found and what was expected.

pub mod defaults;
pub mod demo;
mod hours;
mod load;
pub mod model;
pub(crate) mod personal;
mod problem;
mod section;
mod sheet;
mod values;
mod whereabouts;

pub use load::{FleetFiles, read};
pub use model::{
    Battery, Circuit, Cold, CrewMember, Fleet, Gauge, GaugeKind, Job, JobId, Load, OpenHours,
    PressureLimits, PumpTruck, Role, Room, Site, SitePower, SiteWater, Source, TankShape, Trailer,
    Weight,
};
pub use problem::{FleetFile, Problem};
pub use whereabouts::JobIndex;
