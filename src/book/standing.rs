//! What stands with a trailer until somebody takes it away: notes for whoever arrives next, and overrides with their reason.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::Personal;
use crate::heard::UnitName;

/// How long an override holds.
const OVERRIDE_HOLDS: TimeDelta = TimeDelta::hours(24);
/// How many overrides of a trailer are kept at hand.
const OVERRIDES_KEPT: usize = 8;
/// How long what was cleared or done is kept at hand, to be taken back.
const KEPT: TimeDelta = TimeDelta::hours(48);

/// A note on a trailer, said at its arrivals until it is cleared.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct StandingNote {
    /// The trailer.
    pub unit: UnitName,
    /// When it was left.
    pub at: DateTime<Utc>,
    /// By whom.
    pub by: String,
    /// What it says.
    pub text: Personal,
    /// The load that a guided check found at fault, such as `water-heater`: it stays off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<String>,
}

/// A decision to move or use a trailer against the advice, with its reason.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Override {
    /// The trailer.
    pub unit: UnitName,
    /// When.
    pub at: DateTime<Utc>,
    /// The dispatcher who decided, or who told of the order.
    pub by: String,
    /// Why, in their words.
    pub reason: Personal,
    /// Whether fire or police ordered it.
    #[serde(default)]
    pub ordered: bool,
}

/// Notes on a trailer that were cleared together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ClearedNotes {
    /// The trailer.
    pub unit: UnitName,
    /// When.
    pub at: DateTime<Utc>,
    /// By whom.
    pub by: String,
    /// What they were.
    pub notes: Vec<StandingNote>,
}

/// A step of leaving that somebody called done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DoneStep {
    /// The trailer.
    pub unit: UnitName,
    /// The step, by its code.
    pub step: String,
    /// When.
    pub at: DateTime<Utc>,
    /// By whom.
    pub by: String,
}

/// Something that stands with a trailer and that whoever put it there can take back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "what")]
pub enum TakesBack {
    /// A note.
    Note(StandingNote),
    /// That notes were cleared.
    Cleared(ClearedNotes),
    /// A decision against the advice, or an order.
    Override(Override),
    /// A step of leaving.
    Step(DoneStep),
}

impl TakesBack {
    /// Returns when it was put there.
    pub fn at(&self) -> DateTime<Utc> {
        match self {
            TakesBack::Note(note) => note.at,
            TakesBack::Cleared(cleared) => cleared.at,
            TakesBack::Override(decided) => decided.at,
            TakesBack::Step(step) => step.at,
        }
    }
}

/// The notes and overrides that stand, by trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Standing {
    notes: BTreeMap<UnitName, Vec<StandingNote>>,
    overrides: BTreeMap<UnitName, Vec<Override>>,
    /// Steps of leaving that somebody did, by trailer and code, and when.
    #[serde(default)]
    confirmed: BTreeMap<UnitName, BTreeMap<String, DateTime<Utc>>>,
    /// What was cleared lately.
    #[serde(default)]
    cleared: Vec<ClearedNotes>,
    /// Who did which step lately.
    #[serde(default)]
    steps: Vec<DoneStep>,
}

impl Standing {
    /// Returns the notes on a trailer, oldest first.
    pub fn notes(&self, unit: &UnitName) -> &[StandingNote] {
        self.notes.get(unit).map_or(&[], Vec::as_slice)
    }

    /// Returns the overrides of a trailer that are kept at hand, oldest first.
    pub fn overrides(&self, unit: &UnitName) -> &[Override] {
        self.overrides.get(unit).map_or(&[], Vec::as_slice)
    }

    /// Returns the override in force at `now`: the latest, for a day, and not from before the last arrival.
    pub fn in_force(
        &self,
        unit: &UnitName,
        now: DateTime<Utc>,
        arrived: Option<DateTime<Utc>>,
    ) -> Option<&Override> {
        self.overrides(unit).iter().rev().find(|other| {
            (TimeDelta::zero()..=OVERRIDE_HOLDS).contains(&(now - other.at))
                && arrived.is_none_or(|arrived| arrived <= other.at)
        })
    }

    /// Tells whether a step of leaving was done, and not before `since`.
    pub fn is_confirmed(&self, unit: &UnitName, step: &str, since: Option<DateTime<Utc>>) -> bool {
        let done = self.confirmed.get(unit).and_then(|steps| steps.get(step));
        done.is_some_and(|at| since.is_none_or(|since| since <= *at))
    }

    /// Returns what a person put there since `since`, oldest first, with what went with one message side by side.
    pub fn put_by(&self, by: &str, since: DateTime<Utc>) -> Vec<TakesBack> {
        let notes = self.notes.values().flatten().filter(|note| note.by == by);
        let overrides = self.overrides.values().flatten();
        let overrides = overrides.filter(|decided| decided.by == by);
        let cleared = self.cleared.iter().filter(|cleared| cleared.by == by);
        let steps = self.steps.iter().filter(|step| step.by == by);
        let mut put: Vec<TakesBack> = notes.cloned().map(TakesBack::Note).collect();
        put.extend(overrides.cloned().map(TakesBack::Override));
        put.extend(cleared.cloned().map(TakesBack::Cleared));
        put.extend(steps.cloned().map(TakesBack::Step));
        put.retain(|one| one.at() >= since);
        put.sort_by_key(TakesBack::at);
        put
    }

    pub(super) fn take_back(&mut self, what: &TakesBack) {
        match what {
            TakesBack::Note(note) => {
                if let Some(notes) = self.notes.get_mut(&note.unit) {
                    notes.retain(|other| other != note);
                }
                self.notes.retain(|_, notes| !notes.is_empty());
            }
            TakesBack::Cleared(cleared) => {
                self.cleared.retain(|other| other != cleared);
                let notes = self.notes.entry(cleared.unit.clone()).or_default();
                notes.splice(..0, cleared.notes.iter().cloned());
            }
            TakesBack::Override(decided) => {
                if let Some(kept) = self.overrides.get_mut(&decided.unit) {
                    kept.retain(|other| other != decided);
                }
            }
            TakesBack::Step(done) => {
                self.steps.retain(|other| other != done);
                if let Some(steps) = self.confirmed.get_mut(&done.unit) {
                    steps.remove(&done.step);
                }
            }
        }
    }

    pub(super) fn confirm(&mut self, done: DoneStep) {
        let steps = self.confirmed.entry(done.unit.clone()).or_default();
        steps.insert(done.step.clone(), done.at);
        self.steps.retain(|other| done.at - other.at <= KEPT);
        self.steps.push(done);
    }

    pub(super) fn note(&mut self, note: &StandingNote) {
        let notes = self.notes.entry(note.unit.clone()).or_default();
        notes.push(note.clone());
    }

    pub(super) fn clear(&mut self, unit: &UnitName, at: DateTime<Utc>, by: &str) {
        let notes = self.notes.remove(unit).unwrap_or_default();
        self.cleared.retain(|other| at - other.at <= KEPT);
        self.cleared.push(ClearedNotes {
            unit: unit.clone(),
            at,
            by: by.to_owned(),
            notes,
        });
    }

    pub(super) fn decide(&mut self, decided: &Override) {
        let kept = self.overrides.entry(decided.unit.clone()).or_default();
        kept.push(decided.clone());
        let over = kept.len().saturating_sub(OVERRIDES_KEPT);
        kept.drain(..over);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hours: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_800_000_000 + hours * 3600, 0).expect("a valid instant")
    }

    #[test]
    fn a_step_done_before_the_trailer_last_stood_open_counts_no_more() {
        let twelve = UnitName::new("12");
        let mut standing = Standing::default();
        standing.confirm(DoneStep {
            unit: twelve.clone(),
            step: "breakaway".into(),
            at: at(2),
            by: "tobin".into(),
        });
        assert!(standing.is_confirmed(&twelve, "breakaway", Some(at(1))));
        assert!(!standing.is_confirmed(&twelve, "breakaway", Some(at(3))));
        assert!(!standing.is_confirmed(&twelve, "chocks", None));
    }

    #[test]
    fn an_override_ends_after_a_day_or_at_the_next_arrival() {
        let twelve = UnitName::new("12");
        let mut standing = Standing::default();
        standing.decide(&Override {
            unit: twelve.clone(),
            at: at(0),
            by: "nadia".into(),
            reason: Personal::new("the gate closes at ten"),
            ordered: false,
        });
        assert!(standing.in_force(&twelve, at(23), Some(at(-9))).is_some());
        assert!(standing.in_force(&twelve, at(25), None).is_none());
        assert!(standing.in_force(&twelve, at(3), Some(at(2))).is_none());
        assert_eq!(
            standing.overrides(&twelve).len(),
            1,
            "it is still on record"
        );
    }
}
