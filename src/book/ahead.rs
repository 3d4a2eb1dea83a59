//! What the bot has to speak of by itself: when to look at a trailer again, who is on the road, who works alone, the
//! weather to come, what was held back. It changes only through records, so timers survive a restart and replay.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::Personal;
use crate::finding::{FindingId, Level, Urgency};
use crate::heard::UnitName;

/// How long a forecast of the weather counts.
const WEATHER_LASTS: TimeDelta = TimeDelta::hours(18);
/// How long freezing air that was measured counts as tonight's cold.
const AIR_LASTS: TimeDelta = TimeDelta::hours(6);

/// What was gathered for a list counts for this long.
const GATHERED_LASTS: TimeDelta = TimeDelta::minutes(10);

/// A list that goes out at its time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Listing {
    /// The digest.
    Digest,
    /// A digest that somebody asked for.
    Asked,
    /// The long stays that nobody looks after.
    Patrol,
}

/// How one trailer stood when a list was gathered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Stand {
    /// The trailer.
    pub unit: UnitName,
    /// Its site, by name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub site: Option<String>,
    /// The worst of what is wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worst: Option<(FindingId, Level, Urgency)>,
    /// How many things more are wrong.
    #[serde(default)]
    pub more: usize,
    /// Whether nobody said a word about it for too long.
    #[serde(default)]
    pub silent: bool,
    /// Whether its doors are open and nobody has said a word about it on this job.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub unheard: bool,
    /// Its waste tank.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste: Option<WasteStand>,
}

/// How a waste tank stood.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct WasteStand {
    /// The likely level, % by volume.
    pub level_pct: f64,
    /// When its stop level is reached, one chance in ten.
    pub p10: Option<DateTime<Utc>>,
    /// When it is reached as likely as not.
    pub p50: Option<DateTime<Utc>>,
}

/// Somebody on the road.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Road {
    /// The trailer they bring or drive to, where they said.
    pub unit: Option<UnitName>,
    /// When they said so.
    pub since: DateTime<Utc>,
    /// When they said they would be there; none where they did not say.
    pub eta: Option<DateTime<Utc>>,
    /// Until when they get nothing, unless they say before that they have arrived.
    pub until: DateTime<Utc>,
}

/// Somebody who works alone and wants to be asked after.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Alone {
    /// The trailer they work on, where they said.
    pub unit: Option<UnitName>,
    /// Their own words for why.
    pub why: Personal,
    /// When the clock was set.
    pub since: DateTime<Utc>,
    /// The minutes it runs.
    pub minutes: u32,
    /// When they are to be asked.
    pub due: DateTime<Utc>,
    /// When they were asked.
    #[serde(default)]
    pub asked: Option<DateTime<Utc>>,
    /// When the dispatchers were alarmed.
    #[serde(default)]
    pub alarmed: Option<DateTime<Utc>>,
    /// Who set it, where somebody else did.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
}

/// Weather somebody forecast for a site, or for all.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Weather {
    /// Who said so.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
    /// The site, by id; none means every site.
    pub site: Option<String>,
    /// The low to come, °F; or the air as it was measured.
    pub low_f: f64,
    /// Whether it is the air as it was measured, and no forecast.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub air: bool,
    /// The wind beside it, mph.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wind_mph: Option<f64>,
    /// What was last warned of, °F, where this came too close to it to warn anew.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warned_f: Option<f64>,
}

impl Weather {
    /// Tells whether it counts at `at`.
    fn counts(&self, at: DateTime<Utc>) -> bool {
        let lasts = if self.air { AIR_LASTS } else { WEATHER_LASTS };
        self.at <= at && at - self.at <= lasts
    }

    /// Tells whether it takes the place of another: the air as it is takes no forecast's.
    pub fn replaces(&self, other: &Weather) -> bool {
        self.site == other.site && self.air == other.air
    }

    /// Tells whether it is told of this site, or of all; of none in particular, where no site is named.
    fn is_of(&self, site: Option<&str>) -> bool {
        self.site.is_none() || self.site.as_deref() == site
    }
}

/// Returns the coldest.
fn coldest<'a>(told: impl Iterator<Item = &'a Weather>) -> Option<&'a Weather> {
    told.min_by(|a, b| a.low_f.total_cmp(&b.low_f))
}

/// A message that waits until somebody is off the road.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Held {
    /// Who it is for.
    pub to: String,
    /// Since when it waits.
    pub at: DateTime<Utc>,
    /// What it says.
    pub text: Personal,
    /// How badly someone can be hurt by what it tells.
    pub level: Option<Level>,
    /// What it tells of, where that can be told anew.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<HeldOf>,
}

/// What a message that waits tells of: when it goes out, that may be over, or have other figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HeldOf {
    /// A task.
    Task(u32),
    /// A finding on a trailer.
    Finding(UnitName, FindingId),
    /// An alarm, by its key.
    Alarm(String),
    /// A trailer that nobody wrote of.
    Unheard(UnitName),
}

/// A change to what the bot has to speak of by itself; its instant is its record's.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "ahead")]
pub enum AheadChange {
    /// When to work a trailer's forecast out again; never where there is no need.
    Look {
        /// The trailer.
        unit: UnitName,
        /// When.
        look: Option<DateTime<Utc>>,
    },
    /// When to ask for a reading of a trailer's waste tank; never where none is worth it.
    Read {
        /// The trailer.
        unit: UnitName,
        /// When.
        ask: Option<DateTime<Utc>>,
    },
    /// Somebody was asked to read a trailer's waste tank.
    AskedToRead {
        /// The trailer.
        unit: UnitName,
    },
    /// Somebody says at which site a trailer stands, against the plan; none where the plan holds again.
    StandsAt {
        /// The trailer.
        unit: UnitName,
        /// The site, by id.
        site: Option<String>,
    },
    /// Somebody took to the road, or left it.
    Road {
        /// Who.
        who: String,
        /// How they travel; none once they are there.
        road: Option<Road>,
    },
    /// A lone worker's clock was set, moved on or stopped.
    Alone {
        /// Who.
        who: String,
        /// The clock; none once it is stopped.
        alone: Option<Alone>,
    },
    /// Weather was forecast.
    Weather {
        /// What.
        weather: Weather,
    },
    /// Weather that was forecast is taken back: what held before holds again.
    WeatherBack {
        /// What was told.
        weather: Weather,
    },
    /// A message was held back.
    Held {
        /// The message.
        held: Held,
    },
    /// What was held back for somebody went out.
    Released {
        /// For whom.
        to: String,
    },
    /// A lone worker's clock was offered unasked.
    Offered {
        /// To whom.
        who: String,
    },
    /// A slice of a list was gathered.
    Gathered {
        /// Which list.
        list: Listing,
        /// How the trailers of this slice stand.
        stands: Vec<Stand>,
    },
    /// A digest was asked for that is gathered in slices.
    Asked {
        /// By whom.
        who: String,
    },
    /// It went out to all who asked for it.
    Told,
    /// The digest went out.
    Digest,
    /// The list of long stays to look at went out.
    Patrol,
    /// Dispatchers were spoken to unasked.
    Spoke,
}

/// What the bot has to speak of by itself.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Ahead {
    looks: BTreeMap<UnitName, DateTime<Utc>>,
    #[serde(default)]
    reads: BTreeMap<UnitName, DateTime<Utc>>,
    #[serde(default)]
    asked_to_read: BTreeMap<UnitName, DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    stands_at: BTreeMap<UnitName, (String, DateTime<Utc>)>,
    roads: BTreeMap<String, Road>,
    alone: BTreeMap<String, Alone>,
    weather: Vec<Weather>,
    /// What each took the place of, to hold again where that is taken back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    weather_before: Vec<Weather>,
    held: BTreeMap<String, Vec<Held>>,
    #[serde(default)]
    offered: BTreeMap<String, DateTime<Utc>>,
    digest: Option<DateTime<Utc>>,
    patrol: Option<DateTime<Utc>>,
    spoke: Option<DateTime<Utc>>,
    #[serde(default)]
    asked: BTreeMap<String, DateTime<Utc>>,
    #[serde(default)]
    gathered: BTreeMap<Listing, (DateTime<Utc>, Vec<Stand>)>,
}

impl Ahead {
    pub(super) fn apply(&mut self, at: DateTime<Utc>, change: &AheadChange) {
        match change {
            AheadChange::Look { unit, look } => put(&mut self.looks, unit, look.as_ref()),
            AheadChange::Read { unit, ask } => put(&mut self.reads, unit, ask.as_ref()),
            AheadChange::AskedToRead { unit } => {
                self.reads.remove(unit);
                self.asked_to_read.insert(unit.clone(), at);
            }
            AheadChange::StandsAt { unit, site } => {
                let told = site.clone().map(|site| (site, at));
                put(&mut self.stands_at, unit, told.as_ref());
            }
            AheadChange::Road { who, road } => put(&mut self.roads, who, road.as_ref()),
            AheadChange::Alone { who, alone } => put(&mut self.alone, who, alone.as_ref()),
            AheadChange::Weather { weather } => {
                let old = |other: &Weather| weather.at - other.at > WEATHER_LASTS;
                self.weather_before.retain(|other| !old(other));
                let (same, others) = std::mem::take(&mut self.weather)
                    .into_iter()
                    .filter(|other| !old(other))
                    .partition::<Vec<_>, _>(|other| weather.replaces(other));
                self.weather_before.extend(same);
                self.weather = others;
                self.weather.push(weather.clone());
            }
            AheadChange::WeatherBack { weather } => {
                self.weather.retain(|other| other != weather);
                if let Some(again) = self.replaced_by(weather).cloned() {
                    self.weather_before.retain(|other| *other != again);
                    self.weather.push(again);
                }
            }
            AheadChange::Held { held } => self
                .held
                .entry(held.to.clone())
                .or_default()
                .push(held.clone()),
            AheadChange::Released { to } => drop(self.held.remove(to)),
            AheadChange::Offered { who } => put(&mut self.offered, who, Some(&at)),
            AheadChange::Gathered { list, stands } => {
                let (since, gathered) = self.gathered.entry(*list).or_insert((at, Vec::new()));
                if at - *since > GATHERED_LASTS {
                    *since = at;
                    gathered.clear();
                }
                gathered.extend_from_slice(stands);
            }
            AheadChange::Asked { who } => put(&mut self.asked, who, Some(&at)),
            AheadChange::Told => {
                self.asked.clear();
                self.gathered.remove(&Listing::Asked);
            }
            AheadChange::Digest => {
                self.digest = Some(at);
                self.gathered.remove(&Listing::Digest);
            }
            AheadChange::Patrol => {
                self.patrol = Some(at);
                self.gathered.remove(&Listing::Patrol);
            }
            AheadChange::Spoke => self.spoke = Some(at),
        }
    }

    /// Drops what waits for somebody who is no longer served. A lone worker's clock runs on: it is their safety.
    pub(super) fn let_go(&mut self, who: &str) {
        self.roads.remove(who);
        self.held.remove(who);
        self.asked.remove(who);
    }

    /// Iterates over the trailers whose forecast is to be worked out again, each with when.
    pub fn looks(&self) -> impl Iterator<Item = (&UnitName, DateTime<Utc>)> {
        self.looks.iter().map(|(unit, at)| (unit, *at))
    }

    /// Returns when a trailer's forecast is to be worked out again.
    pub fn look(&self, unit: &UnitName) -> Option<DateTime<Utc>> {
        self.looks.get(unit).copied()
    }

    /// Iterates over the trailers whose tank is to be read, each with when to ask.
    pub fn reads(&self) -> impl Iterator<Item = (&UnitName, DateTime<Utc>)> {
        self.reads.iter().map(|(unit, at)| (unit, *at))
    }

    /// Returns when to ask for a reading of a trailer's tank.
    pub fn read(&self, unit: &UnitName) -> Option<DateTime<Utc>> {
        self.reads.get(unit).copied()
    }

    /// Returns the site, by id, that somebody said a trailer stands at against the plan, and when.
    pub fn stands_at(&self, unit: &UnitName) -> Option<(&str, DateTime<Utc>)> {
        let (site, at) = self.stands_at.get(unit)?;
        Some((site, *at))
    }

    /// Iterates over the trailers that somebody said stand at a site against the plan, each with the site's id.
    pub fn all_stands_at(&self) -> impl Iterator<Item = (&UnitName, &str)> {
        let told = self.stands_at.iter();
        told.map(|(unit, (site, _))| (unit, site.as_str()))
    }

    /// Iterates over the trailers whose tank somebody was asked to read, each with when.
    pub fn asked_to_be_read(&self) -> impl Iterator<Item = (&UnitName, DateTime<Utc>)> {
        self.asked_to_read.iter().map(|(unit, at)| (unit, *at))
    }

    /// Returns when somebody was last asked to read a trailer's tank.
    pub fn asked_to_read(&self, unit: &UnitName) -> Option<DateTime<Utc>> {
        self.asked_to_read.get(unit).copied()
    }

    /// Iterates over the people on the road.
    pub fn roads(&self) -> impl Iterator<Item = (&str, &Road)> {
        self.roads.iter().map(|(who, road)| (who.as_str(), road))
    }

    /// Tells how a person travels, while they must not be written to.
    pub fn road(&self, who: &str, at: DateTime<Utc>) -> Option<&Road> {
        self.roads.get(who).filter(|road| at < road.until)
    }

    /// Iterates over the lone workers' clocks.
    pub fn all_alone(&self) -> impl Iterator<Item = (&str, &Alone)> {
        self.alone.iter().map(|(who, alone)| (who.as_str(), alone))
    }

    /// Returns a lone worker's clock.
    pub fn alone(&self, who: &str) -> Option<&Alone> {
        self.alone.get(who)
    }

    /// Returns the coldest that was told of a site and counts at `at`; of what was told of all sites, where none is named.
    pub fn weather(&self, site: Option<&str>, at: DateTime<Utc>) -> Option<&Weather> {
        let told = self.weather.iter();
        coldest(told.filter(|weather| weather.is_of(site) && weather.counts(at)))
    }

    /// Iterates over all that counts at `at`, of any site.
    pub fn all_weather(&self, at: DateTime<Utc>) -> impl Iterator<Item = &Weather> {
        self.weather.iter().filter(move |told| told.counts(at))
    }

    /// Returns what this took the place of.
    fn replaced_by(&self, weather: &Weather) -> Option<&Weather> {
        let before = self.weather_before.iter();
        let before = before.filter(|other| weather.replaces(other));
        before.max_by_key(|other| other.at)
    }

    /// Returns the coldest of the forecasts, or of the air as it was measured, that counts at `at` for a site.
    pub fn weather_of_kind(
        &self,
        air: bool,
        site: Option<&str>,
        at: DateTime<Utc>,
    ) -> Option<&Weather> {
        let told = self.weather.iter().filter(|weather| weather.air == air);
        coldest(told.filter(|weather| weather.is_of(site) && weather.counts(at)))
    }

    /// Returns what holds again and counts at `at` where this is taken back.
    pub fn weather_again(&self, gone: &Weather, at: DateTime<Utc>) -> Option<&Weather> {
        self.replaced_by(gone).filter(|weather| weather.counts(at))
    }

    /// Returns the coldest that counts at `at` where this is taken back: what it took the place of holds again.
    pub fn weather_without(&self, gone: &Weather, at: DateTime<Utc>) -> Option<&Weather> {
        let stays = self.weather.iter().filter(|other| *other != gone);
        let again = self.replaced_by(gone);
        let site = gone.site.as_deref();
        coldest(
            stays
                .chain(again)
                .filter(|weather| weather.is_of(site) && weather.counts(at)),
        )
    }

    /// Returns the weather that a person told last.
    pub fn weather_of(&self, who: &str) -> Option<&Weather> {
        let told = self.weather.iter().filter(|weather| weather.by == who);
        told.max_by_key(|weather| weather.at)
    }

    /// Returns when a person was last offered a lone worker's clock.
    pub fn offered(&self, who: &str) -> Option<DateTime<Utc>> {
        self.offered.get(who).copied()
    }

    /// Returns what waits for a person, oldest first.
    pub fn held(&self, who: &str) -> &[Held] {
        self.held.get(who).map_or(&[], Vec::as_slice)
    }

    /// Iterates over the people for whom something waits.
    pub fn waited_for(&self) -> impl Iterator<Item = &str> {
        self.held.keys().map(String::as_str)
    }

    /// Returns what was gathered for a list and still counts at `at`.
    pub fn gathered(&self, list: Listing, at: DateTime<Utc>) -> &[Stand] {
        match self.gathered.get(&list) {
            Some((since, stands)) if at - *since <= GATHERED_LASTS => stands,
            _ => &[],
        }
    }

    /// Iterates over those who wait for a digest, each with when they asked.
    pub fn asked(&self) -> impl Iterator<Item = (&str, DateTime<Utc>)> {
        self.asked.iter().map(|(who, at)| (who.as_str(), *at))
    }

    /// Returns when the digest last went out.
    pub fn digest(&self) -> Option<DateTime<Utc>> {
        self.digest
    }

    /// Returns when the list of long stays last went out.
    pub fn patrol(&self) -> Option<DateTime<Utc>> {
        self.patrol
    }

    /// Returns when dispatchers were last spoken to unasked.
    pub fn spoke(&self) -> Option<DateTime<Utc>> {
        self.spoke
    }
}

fn put<K: Ord + Clone, V: Clone>(map: &mut BTreeMap<K, V>, key: &K, value: Option<&V>) {
    match value {
        Some(value) => drop(map.insert(key.clone(), value.clone())),
        None => drop(map.remove(key)),
    }
}
