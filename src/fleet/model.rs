//! What a trailer, a site, a job and a person are.

use std::collections::BTreeMap;
use std::fmt;

use chrono::{DateTime, NaiveDateTime, NaiveTime, TimeDelta, Utc};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::defaults;
use super::whereabouts::JobIndex;
use crate::heard::{Language, UnitName};
use crate::quantity::Style;
use crate::words::{NameOf, TaughtWord};

/// A whole fleet, as last loaded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fleet {
    /// The company's name.
    pub company: String,
    /// The zone in which local times are meant, unless a site names its own.
    pub time_zone: Tz,
    /// How replies print numbers, and what an unlabelled temperature is in.
    pub style: Style,
    /// The language for groups and people not yet known.
    pub language: Language,
    /// Trailers, by name.
    pub trailers: BTreeMap<UnitName, Trailer>,
    /// Sites, by id.
    pub sites: BTreeMap<String, Site>,
    /// Jobs, in order of their doors opening.
    pub jobs: Vec<Job>,
    /// The people, by id.
    pub crew: BTreeMap<String, CrewMember>,
    /// Local hours in which nothing is sent that can wait; past midnight where the second is the earlier.
    #[serde(default)]
    pub quiet_hours: Option<(NaiveTime, NaiveTime)>,
    /// Local times of day at which dispatchers get the digest unasked, in order.
    #[serde(default)]
    pub digest_at: Vec<NaiveTime>,
    /// Days that raw texts are kept; none keeps them for good.
    #[serde(default)]
    pub keep_texts_days: Option<u32>,
    /// Days that photos are kept; none keeps them for good.
    #[serde(default)]
    pub keep_photos_days: Option<u32>,
    /// The company's own words, from its files.
    #[serde(default)]
    pub words: Vec<TaughtWord>,
    /// Where each trailer's jobs stand in `jobs`, and how trailers are spelled; filled when first asked for, so `Default::default()` in a literal.
    #[serde(skip)]
    pub index: JobIndex,
}

impl Default for Fleet {
    fn default() -> Self {
        Fleet {
            company: String::new(),
            time_zone: Tz::UTC,
            style: Style::default(),
            language: Language::En,
            trailers: BTreeMap::new(),
            sites: BTreeMap::new(),
            jobs: Vec::new(),
            crew: BTreeMap::new(),
            quiet_hours: None,
            digest_at: Vec::new(),
            keep_texts_days: None,
            keep_photos_days: None,
            words: Vec::new(),
            index: JobIndex::default(),
        }
    }
}

impl Fleet {
    /// Iterates over the names that crews write: of trailers, sites and people.
    pub fn names(&self) -> impl Iterator<Item = (&str, NameOf)> {
        let trailers = self
            .trailers
            .keys()
            .map(|unit| (unit.as_str(), NameOf::Trailer));
        let sites = self.sites.values();
        let sites = sites.flat_map(|site| [site.id.as_str(), site.name.as_str()]);
        let people = self.crew.values();
        let people = people.flat_map(|member| [member.id.as_str(), member.name.as_str()]);
        trailers
            .chain(sites.map(|name| (name, NameOf::Site)))
            .chain(people.map(|name| (name, NameOf::Person)))
    }
}

/// A trailer's specification.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Trailer {
    /// Its name, upper-cased.
    pub id: UnitName,
    /// A line about it.
    pub title: String,
    /// Waste tank, gal.
    pub waste_gal: f64,
    /// Fresh tank, gal.
    pub fresh_gal: f64,
    /// The waste tank's shape: depth is not volume in a lying cylinder.
    pub waste_tank: TankShape,
    /// How the waste gauge reads.
    pub waste_gauge: Gauge,
    /// Water pressure limits, psi.
    pub pressure_psi: PressureLimits,
    /// The rooms, each with its fixtures.
    pub rooms: Vec<Room>,
    /// The circuits, in order, one to four.
    pub circuits: Vec<Circuit>,
    /// The 12 V battery.
    pub battery: Battery,
    /// The cold-weather package.
    pub cold: Cold,
    /// Weights, where stated.
    pub weight_lb: Option<Weight>,
    /// Water per use, gal.
    pub gal_per_use: f64,
}

impl Trailer {
    /// Returns the toilets and urinals of all rooms.
    pub fn stalls(&self) -> u32 {
        self.rooms
            .iter()
            .map(|room| room.toilets + room.urinals)
            .sum()
    }

    /// Returns the toilets of all rooms.
    pub fn toilets(&self) -> u32 {
        self.rooms.iter().map(|room| room.toilets).sum()
    }

    /// Returns the sinks of all rooms.
    pub fn sinks(&self) -> u32 {
        self.rooms.iter().map(|room| room.sinks).sum()
    }

    /// Finds the circuit, counted from 1, that feeds the first load whose name contains `word`.
    pub fn circuit_of(&self, word: &str) -> Option<(u8, &Load)> {
        self.circuits.iter().enumerate().find_map(|(i, circuit)| {
            circuit
                .loads
                .iter()
                .find(|load| load.name.to_lowercase().contains(word))
                .map(|load| (i as u8 + 1, load))
        })
    }
}

/// The shape of a tank.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase", tag = "shape")]
pub enum TankShape {
    /// Upright walls: depth is volume.
    Box,
    /// A lying cylinder with flat ends.
    Cylinder {
        /// Inside diameter, in.
        diameter_in: f64,
        /// Inside length, in.
        length_in: f64,
    },
}

/// How a gauge reads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Gauge {
    /// What kind it is.
    pub kind: GaugeKind,
    /// The step between marks, % of depth.
    pub step_pct: f64,
}

/// The two kinds of gauge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum GaugeKind {
    /// Read by eye to the nearest step of depth.
    Sight,
    /// A ladder of lamps: the lit lamp is the floor of the level.
    Lamps,
}

/// Water pressure limits, psi.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PressureLimits {
    /// The least that serves the fixtures.
    pub min: f64,
    /// The most that the plumbing is meant for.
    pub max: f64,
    /// Where the regulator is set.
    pub regulator: f64,
}

/// One room and its fixtures.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Room {
    /// Its name.
    pub name: String,
    /// Toilets.
    #[serde(default)]
    pub toilets: u32,
    /// Urinals.
    #[serde(default)]
    pub urinals: u32,
    /// Sinks.
    #[serde(default)]
    pub sinks: u32,
}

/// One shore-power circuit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Circuit {
    /// Breaker rating, A.
    pub breaker_a: f64,
    /// What it feeds.
    pub loads: Vec<Load>,
}

/// One electrical load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Load {
    /// What it is: "AC room A", "water heater", "converter".
    pub name: String,
    /// Running current at 120 V, A.
    pub amps: f64,
    /// Locked-rotor current, A, for a compressor.
    #[serde(default)]
    pub start_amps: Option<f64>,
    /// What a generator must start, W; 2.4 times the running watts of a compressor where not stated.
    #[serde(default)]
    pub start_w: Option<f64>,
    /// Loads of one group never run together.
    #[serde(default)]
    pub group: Option<String>,
}

/// The 12 V battery.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Battery {
    /// Capacity at the 20 h rate, Ah.
    pub ah: f64,
    /// `flooded` or `agm`.
    pub kind: String,
    /// The circuit that feeds the converter, counted from 1.
    pub converter_circuit: u8,
}

/// The cold-weather package.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Cold {
    /// Whether one is fitted.
    pub package: bool,
    /// Foam on the tanks, in.
    pub insulation_in: f64,
    /// The tank heater, W.
    pub tank_heater_w: f64,
    /// The circuit that feeds the heaters, counted from 1.
    pub heater_circuit: Option<u8>,
}

/// Weights, lb.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Weight {
    /// Empty, no liquid aboard.
    pub empty: f64,
    /// Gross vehicle weight rating.
    pub gvwr: f64,
    /// On the tongue, empty.
    pub tongue: f64,
}

/// Where the site's water or power comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[allow(missing_docs)]
pub enum Source {
    House,
    Hydrant,
    Generator,
    None,
}

/// A place where trailers stand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Above sea level, ft.
    pub altitude_ft: f64,
    /// Its own zone, where it is not the fleet's.
    pub time_zone: Option<Tz>,
    /// The water supply.
    pub water: SiteWater,
    /// The power supply.
    pub power: SitePower,
    /// What the pump truck needs.
    pub pump_truck: PumpTruck,
    /// Latitude and longitude in degrees, where stated.
    pub position: Option<(f64, f64)>,
    /// What to say to the emergency line.
    pub emergency_address: Option<String>,
    /// The gate code, for that day's crew only.
    pub gate_code: Option<String>,
    /// Who to ask for on site.
    pub contact: Option<String>,
    /// Where to stand, and what to mind.
    pub stand: Option<String>,
    /// Where the septic lid is.
    pub septic_lid: Option<String>,
    /// Anything else the crew should know.
    pub notes: Option<String>,
}

/// A site's water supply.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SiteWater {
    /// House, hydrant or none.
    pub source: Source,
    /// Static pressure, psi, where known.
    pub static_psi: Option<f64>,
    /// Hose run, ft.
    pub hose_ft: f64,
    /// Hose inside diameter, in.
    pub hose_in: f64,
    /// Rise from spigot to trailer, ft.
    pub rise_ft: f64,
}

/// A site's power supply.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SitePower {
    /// House, generator or none.
    pub source: Source,
    /// 20 A cords on offer, where stated.
    pub cords: Option<u32>,
    /// Cord run, ft.
    pub cord_ft: f64,
    /// Cord conductor, AWG.
    pub cord_awg: u32,
    /// The generator's rating, W.
    pub generator_w: Option<f64>,
}

/// What the pump truck needs at a site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PumpTruck {
    /// Notice the hauler wants, h.
    pub lead_h: f64,
    /// From the trailer's outlet to where the truck can stand, ft.
    pub outlet_to_road_ft: f64,
}

impl PumpTruck {
    /// Returns the notice the hauler wants.
    pub fn notice(&self) -> TimeDelta {
        TimeDelta::minutes((self.lead_h * 60.0).round() as i64)
    }
}

impl Default for PumpTruck {
    fn default() -> Self {
        PumpTruck {
            lead_h: defaults::LEAD_H,
            outlet_to_road_ft: defaults::OUTLET_TO_ROAD_FT,
        }
    }
}

/// A job's identity: its site and the local time its doors open.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct JobId {
    /// The site's id.
    pub site: String,
    /// Doors open, local time.
    pub from: NaiveDateTime,
}

impl fmt::Display for JobId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.site, self.from.format("%Y-%m-%d %H:%M"))
    }
}

/// A booking: trailers at a site for a time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// Its identity.
    pub id: JobId,
    /// Its trailers.
    pub trailers: Vec<UnitName>,
    /// Doors open.
    pub from: DateTime<Utc>,
    /// Doors close for good.
    pub to: DateTime<Utc>,
    /// The hours in which people use the trailers.
    pub open: OpenHours,
    /// The zone its local times are in.
    pub time_zone: Tz,
    /// People on site, split over the trailers by their stalls.
    pub guests: f64,
    /// Whether food and alcohol are served.
    pub alcohol: bool,
    /// How long before the doors the crew may be on site, h.
    pub set_up_h: f64,
    /// Who works it, by id: the site's card is theirs. Empty where nobody is named: whoever arrives with its trailers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub crew: Vec<String>,
}

/// When a job's trailers are in use.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum OpenHours {
    /// From the doors opening to their closing, without a break.
    Through,
    /// Every day between two local times of day; past midnight where the second is the earlier.
    Daily(NaiveTime, NaiveTime),
}

/// What a person may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// Brings trailers.
    Driver,
    /// Keeps them working.
    Tech,
    /// Runs the day.
    Dispatcher,
}

/// One person of the crew.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CrewMember {
    /// The id that records keep.
    pub id: String,
    /// How they are called.
    #[serde(with = "super::personal::text")]
    pub name: String,
    /// What they may do.
    pub role: Role,
    /// The language they are answered in; none follows the language they write in.
    pub language: Option<Language>,
    /// Their user id on the chat network.
    #[serde(default, with = "super::personal::number")]
    pub chat_user: Option<i64>,
}
