//! Taking out what people wrote: all that one person did, or all that is older than the fleet keeps. Readings, events and
//! times stay, and so do crew ids.

use std::collections::{HashSet, VecDeque};
use std::time::{Duration, Instant};

use chrono::{DateTime, TimeDelta, Timelike, Utc};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};
use tracing::{info, warn};

use super::erase::Eraser;
use super::letter::Note;
use super::state::State;
use super::turns::Turns;
use super::work::Work;
use super::{Answer, NotDone};
use crate::store::{Draft, Line, Redaction};

/// The hour of the fleet's day after which old texts go: few write then, and nobody waits long for an answer.
const RETAINED_AT_HOUR: u32 = 4;

/// Whose texts go.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Forget {
    /// Everything that this crew member wrote and was told, and their name and number in fleets that are no longer in
    /// force.
    Person(String),
    /// What anybody wrote and was told before then.
    Before(DateTime<Utc>),
}

impl Forget {
    /// Returns whom it names, and before when.
    pub(super) fn parts(&self) -> (Option<String>, Option<DateTime<Utc>>) {
        match self {
            Forget::Person(who) => (Some(who.clone()), None),
            Forget::Before(before) => (None, Some(*before)),
        }
    }

    /// Makes one of the parts that the journal holds.
    pub(super) fn of_parts(who: Option<&str>, before: Option<DateTime<Utc>>) -> Option<Self> {
        let person = who.map(|who| Forget::Person(who.to_owned()));
        person.or(before.map(Forget::Before))
    }
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

/// How long a slice of the work takes: a message that comes meanwhile waits so long.
const SLICE: Duration = Duration::from_millis(10);

/// So many turns are gone through between two looks at the clock.
const TURNS_A_LOOK: usize = 16;

/// What waits to be told what became of a wish; nobody, where the wish is from before a restart.
type Waiting = Option<Answer<Forgotten>>;

/// The wishes to take texts out, and how far the first has come.
pub(super) struct Wishes<T> {
    waiting: VecDeque<(Forget, Waiting)>,
    at_work: Option<(Box<AtWork<T>>, Waiting)>,
}

/// A wish that is being carried out, a slice at a time.
struct AtWork<T> {
    eraser: Eraser,
    redaction: Redaction,
    /// What is known from the turns as they read without the texts.
    known: State<T>,
}

/// How far a slice has brought a wish.
enum Step<T> {
    Goes(Box<AtWork<T>>),
    Done(Forgotten),
}

impl<T: Turns> Wishes<T> {
    /// Begins with what was wished for and not carried out before the process ended.
    pub(super) fn new(left: &[Forget]) -> Self {
        Wishes {
            waiting: left.iter().map(|what| (what.clone(), None)).collect(),
            at_work: None,
        }
    }

    /// Gives up how far the first has come, which takes room on the disk; it begins anew later.
    pub(super) fn set_back(&mut self) {
        if let Some((at_work, answer)) = self.at_work.take() {
            self.waiting.push_front((at_work.eraser.what, answer));
        }
    }

    /// Tells whether there is nothing to take out.
    pub(super) fn is_idle(&self) -> bool {
        self.at_work.is_none() && self.waiting.is_empty()
    }
}

impl<T: Turns> Work<T> {
    /// Writes a wish down, to be carried out in slices between other jobs.
    pub(super) fn forget(&mut self, what: Forget, answer: Answer<Forgotten>) {
        match self.write_wish(&what) {
            Ok(()) => self.wishes.waiting.push_back((what, Some(answer))),
            Err(error) => drop(answer.send(Err(error))),
        }
    }

    fn write_wish(&mut self, what: &Forget) -> Result<(), NotDone> {
        let mut notes = vec![Note::forget(what)];
        if let Forget::Person(who) = what {
            // without its text, a message that still waits could not be sent
            let waiting = self.state.outbox.waiting_for(who).into_iter();
            notes.extend(waiting.map(|id| Note::GivenUp {
                id,
                why: "forgotten".into(),
            }));
        }
        self.write_down(&notes)?;
        if matches!(what, Forget::Person(_)) {
            self.forget_photos(what);
        }
        Ok(())
    }

    fn write_down(&mut self, notes: &[Note]) -> Result<(), NotDone> {
        let now = (self.clock)();
        self.write(&[Draft {
            key: None,
            at: now,
            records: notes.iter().map(Note::value).collect(),
            outgoing: Vec::new(),
        }])?;
        for note in notes {
            self.state.outbox.note(now, note);
        }
        Ok(())
    }

    /// Takes texts out for the length of a slice, where that is wished for.
    pub(super) fn take_texts_out(&mut self) {
        if self.stale {
            return;
        }
        let (step, answer) = if let Some((at_work, answer)) = self.wishes.at_work.take() {
            (self.go_on(at_work), answer)
        } else if let Some((what, answer)) = self.wishes.waiting.pop_front() {
            (self.begin(what).map(Step::Goes), answer)
        } else {
            return;
        };
        let outcome = match step {
            Ok(Step::Goes(at_work)) => {
                self.wishes.at_work = Some((at_work, answer));
                return;
            }
            Ok(Step::Done(forgotten)) => Ok(forgotten),
            Err(error) => {
                warn!("texts could not be taken out: {error}");
                Err(NotDone::Later(error.to_string()))
            }
        };
        if let Some(answer) = answer {
            // who asked may have gone
            let _ = answer.send(outcome);
        }
    }

    fn begin(&mut self, what: Forget) -> Result<Box<AtWork<T>>, NotDone> {
        let known = State::empty().map_err(NotDone::NotLogged)?;
        let begun = self.store.begin_redaction();
        let redaction = begun.inspect_err(|error| self.fall_back(error))?;
        let eraser = Eraser {
            what,
            now: (self.clock)(),
            holds: self.state.turns.holds(),
            held: 0,
            in_force: self.state.turns.fleet_digest().to_owned(),
            waiting: self.state.outbox.waiting(),
            theirs: HashSet::new(),
            names: HashSet::new(),
        };
        Ok(Box::new(AtWork {
            eraser,
            redaction,
            known,
        }))
    }

    /// Goes on for the length of a slice; done when every turn was gone through, the last one too.
    fn go_on(&mut self, mut at_work: Box<AtWork<T>>) -> Result<Step<T>, NotDone> {
        if self.slice(&mut at_work)? {
            return Ok(Step::Goes(at_work));
        }
        // what was written without a sync is certain now, and gone through as well
        self.store
            .sync()
            .inspect_err(|error| self.fall_back(error))?;
        if self.slice(&mut at_work)? {
            return Ok(Step::Goes(at_work));
        }
        let AtWork {
            eraser,
            redaction,
            known,
        } = *at_work;
        let turns = &self.state.turns;
        if eraser.holds != turns.holds() || eraser.in_force != turns.fleet_digest() {
            // what decides on it has changed: its copies go, and all begins anew
            drop(redaction);
            return self.begin(eraser.what).map(Step::Goes);
        }
        self.put_in_force(&eraser, redaction, known).map(Step::Done)
    }

    /// Goes through turns for the length of a slice; false when there are no more on the disk for certain.
    fn slice(&self, at_work: &mut AtWork<T>) -> Result<bool, NotDone> {
        let AtWork {
            eraser,
            redaction,
            known,
            ..
        } = at_work;
        let begun = Instant::now();
        let mut unreadable = None;
        while begun.elapsed() < SLICE {
            let erase = |line: &mut Line| eraser.erase(line);
            let more = self.store.redact(redaction, TURNS_A_LOOK, erase, |line| {
                if unreadable.is_none() {
                    unreadable = known.take_in(line).err();
                }
            })?;
            if let Some(error) = unreadable {
                return Err(NotDone::NotLogged(error));
            }
            if !more {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Puts what was taken out in force.
    fn put_in_force(
        &mut self,
        eraser: &Eraser,
        redaction: Redaction,
        known: State<T>,
    ) -> Result<Forgotten, NotDone> {
        let book = known.snapshot();
        let finished = self.store.finish_redaction(redaction, Some(book));
        // where it broke off half way, what is known is folded from whatever holds
        let texts = finished.inspect_err(|error| self.fall_back(error))?;
        if texts > 0 {
            // what is known has to go without the texts too
            self.know(known);
            self.snapshot_at = self.store.head().seq;
        }
        self.write_down(&[Note::forgotten(&eraser.what)])?;
        let held = eraser.held;
        info!("{texts} texts were taken out, {held} turns are held by incidents");
        Ok(Forgotten { texts, held })
    }

    /// Takes out what is older than the fleet keeps: photos, and once a day at most texts.
    pub(super) fn retain(&mut self, answer: Answer<Forgotten>) {
        self.retain_photos();
        let now = (self.clock)();
        if self.wishes.is_idle() {
            // what failed before is tried again
            self.wishes = Wishes::new(self.state.outbox.wishes());
        }
        let fleet = self.state.turns.fleet();
        let kept = fleet.and_then(|fleet| Some((fleet.keep_texts_days?, fleet.time_zone)));
        match kept {
            Some((days, zone)) if is_due(now, self.state.outbox.retained(), zone) => {
                self.forget(Forget::Before(now - TimeDelta::days(days.into())), answer);
            }
            _ => drop(answer.send(Ok(Forgotten::default()))),
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
