//! What the desk does by itself when the clock comes round.
//!
//! [`agenda`] lists what will fall due as things stand; a tick works through what is due, a slice at a time, and gathers
//! what there is to say so that each person gets one message. Every duty that was worked through leaves a record by which
//! it is no longer due: timers come from the book, and a bot that was down over a due time finds it there.

mod agenda;
mod alone;
mod late;
mod look;
mod quiet;
mod read;
mod refused;
mod rest;
mod road;
mod rounds;
mod say;
mod silence;
mod unanswered;
mod unheard;

use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};

use self::agenda::Duty;
use self::say::Say;
use super::Desk;
use super::inbound::Turn;
use super::tasks::Board;
use crate::book::{AheadChange, Record};
use crate::fleet::{Fleet, Role};
use crate::reply::Voice;

pub(super) use self::agenda::Agenda;
pub(super) use self::alone::{alone_key, of_alone, place_told};
pub(super) use self::late::{alarm_of as alarm_of_task, key_of as text_of_task, of_task, task_key};
pub(super) use self::look::look_again;
pub(super) use self::read::ask_at;
pub(super) use self::road::road_key;
pub(super) use self::rounds::patrol_now;
pub(super) use self::silence::silence_key;

/// Tells whether an instant falls into the company's quiet hours.
pub(super) fn is_quiet(fleet: &Fleet, at: DateTime<Utc>) -> bool {
    quiet::ends(fleet, at).is_some()
}

/// How much one tick does while turns wait: looking into a trailer at a job, with its forecast, costs [`AT_JOB`]; into any
/// other, or a line of text, 1.
const SLICE: usize = 4 * AT_JOB;
const AT_JOB: usize = 12;
/// How much is looked into within the turn of whoever asks for a digest; more is gathered in slices.
const IN_ONE_TURN: usize = 40 * AT_JOB;

/// How long after an instant a tick is late enough to say so.
const LATE: TimeDelta = TimeDelta::minutes(15);

/// A tick at work: what is known, and what it brings about.
struct Round<'a> {
    desk: &'a Desk,
    fleet: Arc<Fleet>,
    now: DateTime<Utc>,
    turn: Turn,
    board: Board,
    say: Say,
    slice: Slice,
}

/// What is left of a slice.
struct Slice {
    left: usize,
}

impl Slice {
    /// Tells whether anything more may be done.
    fn lasts(&self) -> bool {
        self.left > 0
    }

    /// Counts a duty, where anything more may be done.
    fn takes(&mut self, duty: &Duty) -> bool {
        let lasts = self.lasts();
        match duty.unit() {
            Some(_) => self.looked(true),
            None => self.wrote(1),
        }
        lasts
    }

    /// Tells whether so many lines of text may still be written.
    fn holds(&self, lines: usize) -> bool {
        lines <= self.left
    }

    /// Counts a trailer that was looked into.
    fn looked(&mut self, at_job: bool) {
        self.wrote(look_cost(at_job));
    }

    /// Counts lines of text.
    fn wrote(&mut self, lines: usize) {
        self.left = self.left.saturating_sub(lines);
    }
}

/// Returns what looking into a trailer costs.
fn look_cost(at_job: bool) -> usize {
    if at_job { AT_JOB } else { 1 }
}

/// Tells whether so many trailers, each at a job or not, are too many to look into within a turn.
pub(super) fn too_many(at_job: impl Iterator<Item = bool>) -> bool {
    let mut left = IN_ONE_TURN;
    let mut fits = at_job.map(look_cost).map(|cost| {
        let fits = cost <= left;
        left = left.saturating_sub(cost);
        fits
    });
    fits.any(|fits| !fits)
}

/// Returns the next instant at which something is due, after what was worked through.
pub(super) fn next_due(desk: &Desk) -> Option<DateTime<Utc>> {
    desk.agenda.next(&desk.book)
}

/// Works through what is due by `now`, at most a slice of it.
pub(super) fn tick(desk: &Desk, now: DateTime<Utc>) -> Turn {
    let Some(fleet) = desk.book.fleet().cloned() else {
        return Turn::empty(now);
    };
    let mut room = Slice { left: SLICE };
    let (due, more) = desk.agenda.due(&desk.book, now, |duty| room.takes(duty));
    let units = due
        .iter()
        .filter_map(|(_, duty)| duty.unit().cloned())
        .collect();
    let late = due.iter().filter_map(|(_, duty)| match duty {
        Duty::LateTask(id) => Some(*id),
        _ => None,
    });
    let mut round = Round {
        desk,
        fleet,
        now,
        turn: Turn {
            unfinished: more,
            ..Turn::empty(now)
        },
        board: Board::new(desk.book.tasks().of(&units, late), now, "clock", None),
        say: Say::default(),
        slice: Slice { left: SLICE },
    };
    for (at, duty) in due {
        if !round.slice.takes(&duty) {
            round.turn.unfinished = true;
            break;
        }
        let late = duty.speaks() && now - at >= LATE;
        round.say.was_due(late.then_some(at));
        round.work(at, duty);
    }
    round.finish()
}

impl Round<'_> {
    fn work(&mut self, at: DateTime<Utc>, duty: Duty) {
        match duty {
            Duty::Alone(who) => alone::ask_or_alarm(self, &who),
            Duty::Unanswered(key) => unanswered::again(self, &key),
            Duty::Road(who) => road::over(self, &who),
            Duty::Look(unit) => look::look(self, &unit),
            Duty::Read(unit) => read::ask(self, &unit),
            Duty::Silence(unit) => silence::silence(self, &unit, at),
            Duty::Unheard(unit) => unheard::tell(self, &unit),
            Duty::LateTask(id) => late::tell(self, id),
            Duty::Rested(who) => rest::over(self, &who),
            Duty::Refused => refused::tell(self),
            Duty::Asked => rounds::asked(self),
            Duty::Digest => rounds::digest(self),
            Duty::Patrol => rounds::patrol(self),
        }
    }

    fn finish(mut self) -> Turn {
        let say = std::mem::take(&mut self.say);
        let spoke = say.send(self.desk, &self.fleet, self.now, &mut self.turn);
        if spoke {
            let change = AheadChange::Spoke;
            self.record(change);
        }
        let mut turn = self.turn;
        turn.tasks = self.board.touched().cloned().collect();
        turn.records.extend(self.board.into_records());
        turn
    }

    fn record(&mut self, change: AheadChange) {
        self.turn.records.push(Record::Ahead {
            at: self.now,
            change,
        });
    }

    fn voice(&self, who: &str) -> Option<Voice<'_>> {
        voice_of(self.desk, &self.fleet, who, self.now)
    }

    fn dispatchers(&self) -> Vec<String> {
        dispatchers(&self.fleet).map(str::to_owned).collect()
    }
}

/// Tells whether dispatchers may be spoken to right now of something whose harm comes at `harm`.
pub(super) fn may_speak(
    desk: &Desk,
    fleet: &Fleet,
    now: DateTime<Utc>,
    harm: Option<DateTime<Utc>>,
) -> bool {
    quiet::awake(fleet, quiet::paced(desk.book.ahead().spoke(), now), harm) <= now
}

/// Iterates over the dispatchers, by crew id.
pub(super) fn dispatchers(fleet: &Fleet) -> impl Iterator<Item = &str> {
    fleet
        .crew
        .values()
        .filter(|member| member.role == Role::Dispatcher)
        .map(|member| member.id.as_str())
}

fn voice_of<'a>(
    desk: &'a Desk,
    fleet: &'a Fleet,
    who: &str,
    now: DateTime<Utc>,
) -> Option<Voice<'a>> {
    Some(desk.voice_for(fleet.crew.get(who)?, None, fleet, now))
}
