//! Tasks that are late, and trucks that must be called now.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::others::last_there;
use super::Round;
use super::say::Answer;
use crate::book::{Alarm, AlarmChange, Book, HeldOf, Record, Task, TaskChange};
use crate::finding::{FindingId, Level, TaskKind};
use crate::fleet::Fleet;

/// How long a task that is due at once may stand before it is late.
const GRACE: TimeDelta = TimeDelta::minutes(30);

/// A truck that has not come is told of once more after this long.
const MISSING: TimeDelta = TimeDelta::minutes(60);

/// A truck that is there has pumped by so long after (common practice, no source).
const AT_WORK: TimeDelta = TimeDelta::hours(2);

/// A refill that nobody has is told this long before the water is low.
const REFILL: TimeDelta = TimeDelta::hours(1);

/// A task whose time comes nearer by this much is told anew.
const WORSE: TimeDelta = TimeDelta::minutes(45);

/// Who wrote of a unit within this long is taken to be near it.
const THERE: TimeDelta = TimeDelta::hours(12);

/// Returns the key of the alarm about a task.
pub(in super::super) fn task_key(id: u32) -> String {
    format!("task:{id}")
}

/// Returns when the dispatchers are to be told of a task.
pub(super) fn due(book: &Book, task: &Task) -> Option<DateTime<Utc>> {
    if task.kind == TaskKind::CheckIn {
        return None; // its silence is an alarm already
    }
    let told = task.escalated;
    if task.words.is_some() {
        return asked_for(book, task);
    }
    let noted = || {
        let alarm = book.alarms().get(&task_key(task.id));
        alarm.is_some_and(|alarm| alarm.acknowledged.is_some())
    };
    let open_handed = task.called.is_none() && task.taken_by.is_none();
    let at = if let Some(called) = task.called {
        // a truck that was called is late when it did not come at the time it was promised for
        let late = task.promised.or(task.due)? + GRACE;
        // one that is at work is late when it should be done
        let late = task.here.map_or(late, |here| late.max(here + AT_WORK));
        let again = late + MISSING;
        match told.filter(|told| *told >= called) {
            None => late,
            // and is told once more while nobody took note
            Some(told) if task.here.is_none() && told < again && !noted() => again,
            Some(_) => return None,
        }
    } else if let Some(told) = told {
        // said again when it got worse; and once when the time is used up and nobody took note
        let due = task.due?;
        let worse = task.told_due.is_some_and(|was| due + WORSE <= was);
        let noted = book.alarms().get(&task_key(task.id));
        match task.moved.filter(|moved| worse && *moved > told) {
            Some(moved) => moved,
            None if told >= due || noted.is_some_and(is_settled) => return None,
            None => due.max(told + GRACE),
        }
    } else if open_handed && task.cause.is_none() && task.finding.is_some() {
        task.opened // nobody wrote: the clock opened it, and nobody knows of it yet
    } else if let Some(call_by) = task.call_by.filter(|_| open_handed) {
        call_by.max(task.opened)
    } else {
        // whoever opened it was told at once; the dispatcher hears when nobody took it up
        let ahead = if task.kind == TaskKind::Refill {
            REFILL
        } else {
            TimeDelta::zero()
        };
        (task.due? - ahead).max(task.opened + GRACE)
    };
    Some(at)
}

/// Returns when somebody is told of a task in a person's own words: at its time whoever has it, and once more, with the
/// dispatchers, where it is not done.
fn asked_for(book: &Book, task: &Task) -> Option<DateTime<Utc>> {
    let due = task.due?;
    let Some(told) = task.escalated.filter(|told| *told >= due) else {
        return Some(due.max(task.opened));
    };
    let noted = book.alarms().get(&task_key(task.id));
    let noted = noted.is_some_and(|alarm| alarm.acknowledged.is_some());
    (told < due + GRACE && !noted).then_some(due + GRACE)
}

/// Returns when the harm comes that a task averts, where it is told at `at`: while people use the unit, nothing waits.
pub(super) fn harm(fleet: &Fleet, task: &Task, at: DateTime<Utc>) -> Option<DateTime<Utc>> {
    let job = task
        .unit
        .as_ref()
        .and_then(|unit| fleet.job_of(unit, at, None));
    if job.is_some_and(|job| job.is_open(at)) {
        return Some(at);
    }
    task.due.filter(|due| *due > at)
}

/// Tells whether an alarm wants no more words: somebody took note of it, or it was said twice.
fn is_settled(alarm: &Alarm) -> bool {
    alarm.acknowledged.is_some() || alarm.said > alarm.raised
}

/// Tells the dispatchers.
pub(super) fn tell(round: &mut Round<'_>, id: u32) {
    let Some(task) = round.board.tasks().task(id).cloned() else {
        return;
    };
    round.board.change(TaskChange::Escalated { id });
    if let Some(change) = alarm_of(&task) {
        round.turn.records.push(Record::Alarm {
            at: round.now,
            change,
        });
    }
    let now = round.now;
    let again = task
        .escalated
        .is_some_and(|told| task.due.is_some_and(|due| told >= due));
    let mut told = match &task.taken_by {
        Some(who) if task.words.is_some() => vec![who.clone()],
        _ => Vec::new(),
    };
    if told.is_empty() || again {
        let others = round.dispatchers();
        told.extend(
            others
                .into_iter()
                .filter(|to| !told.contains(to))
                .collect::<Vec<_>>(),
        );
    }
    // what the clock found out, whoever was last there can do
    let there = task
        .unit
        .as_ref()
        .and_then(|unit| last_there(round.desk, &round.fleet, unit, (round.now, THERE)));
    let theirs = task.cause.is_none() && task.words.is_none() && task.kind != TaskKind::PumpOut;
    told.extend(there.filter(|who| theirs && !told.contains(who)));
    for to in told {
        if let Some(voice) = round.voice(&to) {
            let of_words = task.words.is_some() && !again;
            let key = match of_words {
                true => "speak-errand",
                false => key_of(&task, now),
            };
            let args = [("task", voice.task(&task).into()), ("id", id.into())];
            let text = voice.say(key, &args);
            let answer = if task.taken_by.is_none() && task.called.is_none() {
                Answer::Take(id)
            } else if of_words {
                Answer::InText
            } else {
                Answer::GotIt
            };
            let of = Some(HeldOf::Task(id));
            let level = Some(Level::Notice);
            round.say.add_of(&to, (level, answer), text, of);
        }
    }
}

/// Returns the text a task is told by.
pub(in super::super) fn key_of(task: &Task, now: DateTime<Utc>) -> &'static str {
    let due = task.due.is_none_or(|due| due <= now);
    // asked for, or given a new time, this very minute: nobody can have done it yet
    let asked = task.moved.max(Some(task.opened));
    let fresh = asked.is_some_and(|asked| now - asked < TimeDelta::minutes(1));
    match task.kind {
        TaskKind::PumpOut if due && !fresh && task.called.is_some() => "task-truck-late",
        _ if due && !fresh => "task-late",
        TaskKind::PumpOut if task.called.is_none() => "speak-call-truck",
        _ => "speak-task",
    }
}

/// Returns the alarm that a task raises: every one can be taken note of. None for a check-in, whose silence raises its own.
pub(in super::super) fn alarm_of(task: &Task) -> Option<AlarmChange> {
    let of_kind = match task.kind {
        TaskKind::PumpOut => FindingId::WasteBookPumpOut,
        TaskKind::Refill => FindingId::WaterFreshEndurance,
        TaskKind::Drain => FindingId::ColdWinterize,
        TaskKind::Regulator => FindingId::WaterOverPressure,
        TaskKind::Filter => FindingId::WaterPressureFalling,
        TaskKind::Heater => FindingId::ColdTankHeaterOn,
        TaskKind::Electrician => FindingId::TroubleNoPower,
        TaskKind::Plumber => FindingId::TroubleNoWater,
        TaskKind::Repair | TaskKind::Other => FindingId::TroubleDamage,
        TaskKind::CheckIn => return None,
    };
    Some(AlarmChange::Raised {
        key: task_key(task.id),
        id: task.finding.unwrap_or(of_kind),
        unit: task.unit.clone(),
        level: Level::Notice,
    })
}

/// Returns the task that an alarm's key is of, where it is about one.
pub(in super::super) fn of_task(key: &str) -> Option<u32> {
    key.strip_prefix("task:")?.parse().ok()
}
