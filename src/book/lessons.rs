//! What each pump-out taught of a trailer, kept so that forecasts rest on its own log; taken back with the message that
//! told of it, and forgotten on a dispatcher's word.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::record::MessageKey;
use crate::heard::UnitName;

/// How many lessons of a trailer are kept: habits change, and newer ones tell more.
const KEPT: usize = 40;

/// What one pump-out taught: what was hauled, held against what was expected and shown.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Lesson {
    /// The trailer.
    pub unit: UnitName,
    /// The site it stood at, by id.
    pub site: String,
    /// When it was pumped out.
    pub at: DateTime<Utc>,
    /// The message that told the gallons.
    pub key: MessageKey,
    /// What was hauled, gal.
    pub hauled_gal: f64,
    /// What the job promised since the tank was last empty by the stated values, gal; none where nobody knows when that was.
    pub promised_gal: Option<f64>,
    /// Fresh water used over the same time, gal, and how well that is known (standard deviation, gal); only on tank water.
    pub fresh_gal: Option<(f64, f64)>,
    /// What the gauge showed just before, % of depth.
    pub shown_pct: Option<f64>,
}

/// The lessons kept, by trailer, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Lessons {
    by_unit: BTreeMap<UnitName, Vec<Lesson>>,
}

impl Lessons {
    /// Returns what a trailer's log taught, oldest first.
    pub fn of(&self, unit: &UnitName) -> &[Lesson] {
        self.by_unit.get(unit).map_or(&[], Vec::as_slice)
    }

    /// Returns what a trailer's log taught with one lesson more, oldest first.
    pub fn with(&self, lesson: Lesson) -> Vec<Lesson> {
        let mut lessons = self.of(&lesson.unit).to_vec();
        put(&mut lessons, lesson);
        lessons
    }

    /// Takes a lesson in; one of the same pump-out is put right by it.
    pub(super) fn take_in(&mut self, lesson: &Lesson) {
        let kept = self.by_unit.entry(lesson.unit.clone()).or_default();
        put(kept, lesson.clone());
    }

    /// Takes back what a message taught of a trailer.
    pub(super) fn take_back(&mut self, unit: &UnitName, key: &MessageKey) {
        if let Some(kept) = self.by_unit.get_mut(unit) {
            kept.retain(|lesson| lesson.key != *key);
        }
    }

    /// Forgets what a trailer's log taught: from here on it is learned anew.
    pub(super) fn forget(&mut self, unit: &UnitName) {
        self.by_unit.remove(unit);
    }
}

/// Puts a lesson into its place in time; one of the same pump-out is put right by it.
fn put(kept: &mut Vec<Lesson>, lesson: Lesson) {
    kept.retain(|other| other.at != lesson.at);
    let place = kept.partition_point(|other| other.at < lesson.at);
    kept.insert(place, lesson);
    let over = kept.len().saturating_sub(KEPT);
    kept.drain(..over);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lesson(hour: i64, hauled_gal: f64) -> Lesson {
        Lesson {
            unit: UnitName::new("12"),
            site: "heron-mere".into(),
            at: DateTime::from_timestamp(1_800_000_000 + hour * 3600, 0).expect("a valid instant"),
            key: MessageKey(format!("m{hour}")),
            hauled_gal,
            promised_gal: Some(200.0),
            fresh_gal: None,
            shown_pct: None,
        }
    }

    #[test]
    fn a_corrected_figure_takes_the_place_of_the_first() {
        let mut lessons = Lessons::default();
        lessons.take_in(&lesson(5, 380.0));
        lessons.take_in(&lesson(1, 210.0));
        lessons.take_in(&lesson(5, 280.0));
        let hauled = |lessons: &Lessons| -> Vec<f64> {
            let kept = lessons.of(&UnitName::new("12")).iter();
            kept.map(|lesson| lesson.hauled_gal).collect()
        };
        assert_eq!(hauled(&lessons), [210.0, 280.0]);
        lessons.take_back(&UnitName::new("12"), &MessageKey("m1".into()));
        assert_eq!(hauled(&lessons), [280.0]);
        lessons.forget(&UnitName::new("12"));
        assert!(hauled(&lessons).is_empty());
    }

    #[test]
    fn only_the_newest_lessons_are_kept() {
        let mut lessons = Lessons::default();
        (0..100).for_each(|hour| lessons.take_in(&lesson(hour, 300.0)));
        let kept = lessons.of(&UnitName::new("12"));
        assert_eq!((kept.len(), &kept[0]), (KEPT, &lesson(60, 300.0)));
    }
}
