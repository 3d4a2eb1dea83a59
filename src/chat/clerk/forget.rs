//! Taking out what people wrote: all that one person did, or all that is older than the fleet keeps. Readings, events and
//! times stay, and so do crew ids.

use std::collections::HashSet;

use chrono::{DateTime, TimeDelta, Timelike, Utc};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};
use tracing::{info, warn};

use super::NotDone;
use super::erase::Eraser;
use super::letter::Note;
use super::turns::Turns;
use super::work::Work;
use crate::store::Draft;

/// The hour of the fleet's day after which old texts go: few write then, and nobody waits long for an answer.
const RETAINED_AT_HOUR: u32 = 4;

/// Whose texts go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Forget {
    /// Everything that this crew member wrote and was told, and their name and number in fleets that are no longer in
    /// force.
    Person(String),
    /// What anybody wrote and was told before then.
    Before(DateTime<Utc>),
}

/// What became of a wish to take texts out.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Forgotten {
    /// How many texts went.
    pub texts: usize,
    /// How many turns kept theirs because an incident holds them.
    #[serde(default)]
    pub held: usize,
}

impl<T: Turns> Work<T> {
    /// Writes the wish down and carries it out.
    pub(super) fn forget(&mut self, what: &Forget) -> Result<Forgotten, NotDone> {
        let now = (self.clock)();
        let mut notes = vec![Note::forget(what)];
        if let Forget::Person(who) = what {
            // without its text, a message that still waits could not be sent
            let waiting = self.state.outbox.waiting_for(who).into_iter();
            notes.extend(waiting.map(|id| Note::GivenUp {
                id,
                why: "forgotten".into(),
            }));
        }
        let draft = Draft {
            key: None,
            at: now,
            records: notes.iter().map(Note::value).collect(),
            outgoing: Vec::new(),
        };
        self.write(&[draft])?;
        if matches!(what, Forget::Person(_)) {
            self.forget_photos(what);
        }
        for note in &notes {
            self.state.outbox.note(now, note);
        }
        let in_force = self.state.turns.fleet_digest().to_owned();
        let mut eraser = Eraser {
            what,
            now,
            holds: self.state.turns.holds(),
            held: 0,
            in_force,
            waiting: self.state.outbox.waiting(),
            theirs: HashSet::new(),
            names: HashSet::new(),
        };
        let texts = self
            .store
            .redact(|line| eraser.erase(line))
            .map_err(|error| NotDone::NotLogged(error.to_string()))?;
        if texts > 0 {
            // what is known is folded anew without the texts, and so is the snapshot, which went with the index
            self.stale = true;
            self.mend()?;
            self.snapshot_at = 0;
            if let Err(error) = self.save_snapshot() {
                warn!("no snapshot could be saved: {error}");
            }
        }
        let held = eraser.held;
        info!("{texts} texts were taken out, {held} turns are held by incidents");
        Ok(Forgotten { texts, held })
    }

    /// Takes out what is older than the fleet keeps: photos, and once a day at most texts.
    pub(super) fn retain(&mut self) -> Result<Forgotten, NotDone> {
        self.retain_photos();
        let now = (self.clock)();
        let Some(fleet) = self.state.turns.fleet() else {
            return Ok(Forgotten::default());
        };
        let Some(days) = fleet.keep_texts_days else {
            return Ok(Forgotten::default());
        };
        if is_due(now, self.state.outbox.retained(), fleet.time_zone) {
            self.forget(&Forget::Before(now - TimeDelta::days(days.into())))
        } else {
            Ok(Forgotten::default())
        }
    }
}

/// Tells whether old texts were last taken out before the hour at which that is done.
fn is_due(now: DateTime<Utc>, last: Option<DateTime<Utc>>, zone: Tz) -> bool {
    let local = now.with_timezone(&zone);
    // an hour that a change of the clocks leaves out or doubles is off by one, which matters to nobody
    let since = TimeDelta::hours(i64::from((local.hour() + 24 - RETAINED_AT_HOUR) % 24))
        + TimeDelta::minutes(i64::from(local.minute()))
        + TimeDelta::seconds(i64::from(local.second()));
    last.is_none_or(|last| last < now - since)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn old_texts_go_once_a_day_after_the_hour_for_it() {
        let zone = Tz::America__Halifax; // four hours behind UTC in January
        let utc = |text: &str| -> DateTime<Utc> { text.parse().unwrap() };
        let due = |now: &str, last: &str| is_due(utc(now), Some(utc(last)), zone);
        assert!(is_due(utc("2027-01-16T12:00:00Z"), None, zone));
        assert!(!due("2027-01-16T07:59:00Z", "2027-01-15T08:00:00Z"));
        assert!(due("2027-01-16T08:00:10Z", "2027-01-15T08:00:00Z"));
        assert!(!due("2027-01-16T23:00:00Z", "2027-01-16T08:00:10Z"));
        assert!(due("2027-01-16T23:00:00Z", "2027-01-16T07:00:00Z"));
    }
}
