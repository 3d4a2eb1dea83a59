//! Incidents: what was said of a trailer around one is held back from retention and from `forget`, until a dispatcher
//! releases it.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::Personal;
use crate::dialogue::Fact;
use crate::heard::UnitName;

/// How far before and after an incident what was said of its trailer is held: as long as the book keeps a trailer's state.
const HELD: TimeDelta = TimeDelta::hours(72);

/// A change to an incident. Each names its trailer, so that a line of the journal tells by itself what it is about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "change")]
pub enum IncidentChange {
    /// It was opened.
    Opened {
        /// Its number, never used again.
        number: u32,
        /// The trailer.
        unit: UnitName,
        /// When it happened, as far as was known then.
        happened: DateTime<Utc>,
    },
    /// A fact was told.
    Told {
        /// The incident's number.
        number: u32,
        /// The trailer.
        unit: UnitName,
        /// Which fact.
        fact: Fact,
        /// In these words.
        text: Personal,
        /// When it happened, where the words say it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        happened: Option<DateTime<Utc>>,
    },
    /// A fact was asked, and is not known.
    NotKnown {
        /// The incident's number.
        number: u32,
        /// The trailer.
        unit: UnitName,
        /// Which fact.
        fact: Fact,
    },
    /// Its hold was released.
    Released {
        /// The incident's number.
        number: u32,
        /// The trailer.
        unit: UnitName,
        /// Why.
        reason: Personal,
    },
}

impl IncidentChange {
    /// Returns the incident's number.
    pub fn number(&self) -> u32 {
        match self {
            IncidentChange::Opened { number, .. }
            | IncidentChange::Told { number, .. }
            | IncidentChange::NotKnown { number, .. }
            | IncidentChange::Released { number, .. } => *number,
        }
    }
}

/// What is held: everything about a trailer in a time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Hold {
    /// The incident that asks for it.
    pub number: u32,
    /// The trailer.
    pub unit: UnitName,
    /// From then.
    pub from: DateTime<Utc>,
    /// Until then.
    pub to: DateTime<Utc>,
}

impl Hold {
    fn around(number: u32, unit: UnitName, happened: DateTime<Utc>) -> Self {
        Hold {
            number,
            unit,
            from: happened - HELD,
            to: happened + HELD,
        }
    }

    /// Tells whether an instant is within it.
    pub fn holds(&self, at: DateTime<Utc>) -> bool {
        self.from <= at && at <= self.to
    }

    /// Lets it reach around another instant too.
    pub fn reach(&mut self, happened: DateTime<Utc>) {
        self.from = self.from.min(happened - HELD);
        self.to = self.to.max(happened + HELD);
    }
}

/// An incident, without anybody's words: those stand in the journal alone.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Incident {
    /// What it holds.
    pub hold: Hold,
    /// When it was opened.
    pub opened: DateTime<Utc>,
    /// By whom.
    pub by: String,
    /// The facts that were told.
    pub told: BTreeSet<Fact>,
    /// The facts that were asked and are not known.
    pub not_known: BTreeSet<Fact>,
    /// When it was released.
    pub released: Option<DateTime<Utc>>,
}

impl Incident {
    /// Returns the next fact to ask.
    pub fn next(&self) -> Option<Fact> {
        let dealt_with = |fact: &Fact| self.told.contains(fact) || self.not_known.contains(fact);
        Fact::ALL.into_iter().find(|fact| !dealt_with(fact))
    }

    /// Returns how many facts were neither told nor said to be not known.
    pub fn open(&self) -> usize {
        Fact::ALL.len() - self.told.union(&self.not_known).count()
    }
}

/// All incidents, by number.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Incidents(BTreeMap<u32, Incident>);

impl Incidents {
    /// Returns the number of the next one.
    pub fn next_number(&self) -> u32 {
        self.0.keys().next_back().map_or(1, |last| last + 1)
    }

    /// Returns an incident.
    pub fn incident(&self, number: u32) -> Option<&Incident> {
        self.0.get(&number)
    }

    /// Iterates over those that are not released, oldest first.
    pub fn standing(&self) -> impl DoubleEndedIterator<Item = (u32, &Incident)> {
        let all = self.0.iter().map(|(number, incident)| (*number, incident));
        all.filter(|(_, incident)| incident.released.is_none())
    }

    /// Iterates over what is held now.
    pub fn holds(&self) -> impl Iterator<Item = &Hold> {
        self.standing().map(|(_, incident)| &incident.hold)
    }

    /// Takes in one change.
    pub fn apply(&mut self, at: DateTime<Utc>, by: &str, change: &IncidentChange) {
        if let IncidentChange::Opened {
            number,
            unit,
            happened,
        } = change
        {
            let incident = Incident {
                hold: Hold::around(*number, unit.clone(), *happened),
                opened: at,
                by: by.to_owned(),
                told: BTreeSet::new(),
                not_known: BTreeSet::new(),
                released: None,
            };
            self.0.insert(*number, incident);
            return;
        }
        let Some(incident) = self.0.get_mut(&change.number()) else {
            return;
        };
        match change {
            IncidentChange::Told { fact, happened, .. } => {
                incident.told.insert(*fact);
                incident.not_known.remove(fact);
                if let Some(happened) = happened {
                    incident.hold.reach(*happened);
                }
            }
            IncidentChange::NotKnown { fact, .. } => {
                incident.not_known.insert(*fact);
            }
            IncidentChange::Released { .. } => incident.released = Some(at),
            IncidentChange::Opened { .. } => {}
        }
    }
}
