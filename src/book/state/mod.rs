//! What is known of one trailer at one time, folded from what was reported: [`fold`] takes a report in, [`tell`] says how
//! the trailer stands.

mod fold;
mod tell;

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::heard::{Event, Fault, ReadingKey, Taps};

/// The last value of a reading, and the one before it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Latest {
    /// The value, in the unit its key names.
    pub value: f64,
    /// When it was so.
    pub at: DateTime<Utc>,
    /// The value before, and when that was so.
    pub before: Option<(f64, DateTime<Utc>)>,
}

/// One reading of the water pressure.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PressureRead {
    /// When.
    pub at: DateTime<Utc>,
    /// psi at the trailer.
    pub psi: f64,
    /// How the taps stood, where the sender said.
    pub taps: Option<Taps>,
    /// What was flowing, gpm, where the sender said.
    pub flow_gpm: Option<f64>,
}

/// One thing that tells about a tank.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TankNote {
    /// The waste gauge, % as shown.
    Waste(f64),
    /// Waste aboard, gal.
    WasteGal(f64),
    /// Waste pumped out, with the gallons where they were told.
    Pumped(Option<f64>),
    /// The fresh gauge, % as shown.
    Fresh(f64),
    /// Fresh water aboard, gal.
    FreshGal(f64),
    /// The fresh tank was filled.
    Filled,
    /// The fresh tank was drained.
    Drained,
    /// The waste gauge cannot be trusted.
    GaugeStuck,
}

/// The last word from the crew about a unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Word {
    /// When it was written.
    pub at: DateTime<Utc>,
    /// By whom.
    pub from: String,
}

/// When an event was last so, with its place in the order of telling.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Stamp {
    /// When.
    pub at: DateTime<Utc>,
    /// Its place among events of the same instant.
    pub order: u32,
}

/// Whether site power reaches the trailer, as last reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PowerState {
    /// Nobody said.
    Unknown,
    /// Connected and on, since then.
    On(DateTime<Utc>),
    /// Lost or missing, since then.
    Lost(DateTime<Utc>),
    /// Switched off by the crew, at that time.
    Off(DateTime<Utc>),
}

/// Whether site water is connected, as last reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaterState {
    /// Nobody said.
    Unknown,
    /// Hooked up and on, since then.
    On(DateTime<Utc>),
    /// Off, since then.
    Off(DateTime<Utc>),
}

/// Where a trailer stands in its round from yard to yard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// Nothing reported yet.
    Unknown,
    /// Back in the yard.
    Yard,
    /// On the hook or on the road.
    Hitched,
    /// On site, being set up.
    SettingUp,
    /// Open for guests.
    InService,
    /// On site, out of service.
    Closed,
}

impl Stage {
    /// Tells whether the trailer stands at a site, open or not.
    pub fn is_on_site(self) -> bool {
        matches!(self, Stage::SettingUp | Stage::InService | Stage::Closed)
    }
}

/// Everything known of one trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct UnitState {
    /// The last value of each reading.
    pub readings: BTreeMap<ReadingKey, Latest>,
    /// The last pressures, oldest first, since water was hooked up.
    pub pressures: Vec<PressureRead>,
    /// The last current on each circuit, A; circuit 0 where none was named.
    pub amps: BTreeMap<u8, Latest>,
    /// The last currents, oldest first, with their circuit, A.
    #[serde(default)]
    pub currents: Vec<(DateTime<Utc>, u8, f64)>,
    /// Which circuits have power, and when that was said.
    pub circuits_live: Option<(Vec<u8>, DateTime<Utc>)>,
    /// When each event was last reported since the trailer arrived.
    pub done: BTreeMap<Event, Stamp>,
    /// What is wrong, and since when.
    pub faults: BTreeMap<Fault, DateTime<Utc>>,
    /// What can hurt somebody and is no fault of the trailer, by its code, and since when.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub hazards: BTreeMap<String, DateTime<Utc>>,
    /// What tells about the tanks, oldest first.
    pub tanks: Vec<(DateTime<Utc>, TankNote)>,
    /// The guest counts told with this unit, oldest first.
    pub guests: Vec<(DateTime<Utc>, f64)>,
    /// The last word about it.
    pub last_word: Option<Word>,
    /// When it last left a site or came back to the yard: an arrival does not make that undone.
    #[serde(default)]
    pub departed: Option<DateTime<Utc>>,
    /// Counts events, to keep the order of those of one instant.
    order: u32,
}
