//! What the desk does by itself when the clock comes round: asks after units nobody wrote about, and chases late tasks.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};

use super::Desk;
use super::inbound::{Outgoing, Turn};
use super::situate::Case;
use super::tasks::Board;
use crate::book::{AlarmChange, Personal, Record, TaskChange, UnitState};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::{Fleet, Role};
use crate::heard::{ReadingKey, UnitName};
use crate::reply::Voice;
use crate::situation::Occasion;

/// How long an alarm that nobody answered waits before it is said again, once.
const AGAIN: TimeDelta = TimeDelta::hours(2);

/// How long a task that is due at once may stand before it is late.
const GRACE: TimeDelta = TimeDelta::minutes(30);

/// Something the desk has to do at an instant.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Duty {
    /// A unit in service has been silent for too long.
    Silence(UnitName),
    /// A task is past its due or its call-by time.
    LateTask(u32),
}

/// Returns the next instant at which something is due, after what was worked through.
pub(super) fn next_due(desk: &Desk) -> Option<DateTime<Utc>> {
    duties(desk).map(|(at, _)| at).min()
}

/// Works through what is due by `now`.
pub(super) fn tick(desk: &Desk, now: DateTime<Utc>) -> Turn {
    let mut turn = Turn::empty(now);
    let Some(fleet) = desk.book.fleet().cloned() else {
        return turn;
    };
    let mut due: Vec<(DateTime<Utc>, Duty)> = duties(desk).filter(|(at, _)| *at <= now).collect();
    due.sort_by_key(|(at, _)| *at);
    let mut board = Board::new(desk.book.tasks().clone(), now, "clock", None);
    let mut said: BTreeMap<String, Vec<(Finding, String)>> = BTreeMap::new();
    for (at, duty) in due {
        match duty {
            Duty::Silence(unit) => silence(
                desk, &fleet, &unit, at, now, &mut turn, &mut board, &mut said,
            ),
            Duty::LateTask(id) => late_task(desk, &fleet, id, now, &mut turn, &mut board),
        }
    }
    for (to, findings) in said {
        // alarms of one tick to one person are one message
        let text: Vec<String> = findings.iter().map(|(_, text)| text.clone()).collect();
        let level = findings.iter().map(|(finding, _)| finding.level).max();
        turn.outgoing.push(Outgoing {
            to,
            chat: None,
            text: Personal::new(text.join("\n")),
            level,
            answers: None,
        });
    }
    turn.tasks = board.touched().cloned().collect();
    turn.records.extend(board.into_records());
    turn
}

/// Iterates over everything that will fall due as things stand.
fn duties(desk: &Desk) -> impl Iterator<Item = (DateTime<Utc>, Duty)> + '_ {
    let silences = desk.book.open_units().filter_map(|(unit, kept)| {
        let state = kept.state();
        let service = state.in_service()?;
        let fleet = desk.book.fleet()?;
        let word = state.last_word.as_ref()?;
        let job = fleet.job_of(unit, word.at.max(service), None)?;
        let late = job.after_open_hours(word.at, interval_hours(state, word.at))?;
        let key = silence_key(unit);
        let at = match desk
            .book
            .alarms()
            .get(&key)
            .filter(|alarm| alarm.raised >= word.at)
        {
            None => late,
            Some(alarm) if alarm.acknowledged.is_none() && alarm.said == alarm.raised => {
                alarm.said + AGAIN
            }
            Some(_) => return None,
        };
        job.is_open(at).then_some((at, Duty::Silence(unit.clone())))
    });
    let late = desk.book.tasks().open().filter_map(|task| {
        // a truck that was called is late when it did not come; one that was not, when it should have been called
        let due = match (task.called, &task.taken_by) {
            (Some(_), _) => task.promised.max(task.due),
            (None, Some(_)) => task.due,
            (None, None) => task.call_by.or(task.due),
        };
        // whoever opened it was told at once; the dispatcher hears when nobody took it up
        let late = due?.max(task.opened + GRACE);
        task.escalated
            .is_none()
            .then_some((late, Duty::LateTask(task.id)))
    });
    silences.chain(late)
}

pub(super) fn silence_key(unit: &UnitName) -> String {
    format!("{}:{unit}", FindingId::CrewLateCheckIn)
}

#[allow(clippy::too_many_arguments)] // a duty's whole surroundings
fn silence(
    desk: &Desk,
    fleet: &std::sync::Arc<Fleet>,
    unit: &UnitName,
    at: DateTime<Utc>,
    now: DateTime<Utc>,
    turn: &mut Turn,
    board: &mut Board,
    said: &mut BTreeMap<String, Vec<(Finding, String)>>,
) {
    let case = Case::standing(desk, fleet, unit, now, Occasion::Tick);
    let Some(finding) = case
        .findings()
        .into_iter()
        .find(|finding| finding.id == FindingId::CrewLateCheckIn)
    else {
        return;
    };
    let key = silence_key(unit);
    let again = desk.book.alarms().contains_key(&key);
    let change = AlarmChange::Raised {
        key,
        id: finding.id,
        unit: Some(unit.clone()),
        level: finding.level,
    };
    turn.records.push(Record::Alarm { at: now, change });
    board.open(
        unit,
        TaskKind::CheckIn,
        Some(at),
        TimeDelta::zero(),
        Some(finding.id),
    );
    let mut told: Vec<String> = dispatchers(fleet).map(str::to_owned).collect();
    // the person on site is asked first, the dispatcher hears with them
    if let Some(word) = case.now.last_word.as_ref().filter(|_| !again)
        && !told.contains(&word.from)
    {
        told.insert(0, word.from.clone());
    }
    for to in told {
        if let Some(voice) = voice_of(desk, fleet, &to, now) {
            let text = voice.finding(&finding, true);
            said.entry(to).or_default().push((finding.clone(), text));
        }
    }
    turn.forecast.insert(unit.clone(), case.outlook.clone());
    turn.findings.push(finding);
}

fn late_task(
    desk: &Desk,
    fleet: &Fleet,
    id: u32,
    now: DateTime<Utc>,
    turn: &mut Turn,
    board: &mut Board,
) {
    let Some(task) = board.tasks().task(id).cloned() else {
        return;
    };
    board.change(TaskChange::Escalated { id });
    // a check-in that is overdue was an alarm already when its task was opened
    if task.kind == TaskKind::CheckIn {
        return;
    }
    for to in dispatchers(fleet) {
        if let Some(voice) = voice_of(desk, fleet, to, now) {
            let line = voice.task(&task);
            let text = voice.say("task-late", &[("task", line.into())]);
            turn.outgoing.push(Outgoing {
                to: to.to_owned(),
                chat: None,
                text: Personal::new(text),
                level: None,
                answers: None,
            });
        }
    }
}

fn dispatchers(fleet: &Fleet) -> impl Iterator<Item = &str> {
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

/// Returns how long a unit in service may go without a word, open hours: 4, and 2 at or below 0 °F (handbook 4.4).
fn interval_hours(state: &UnitState, at: DateTime<Utc>) -> f64 {
    let air = state.value_since(ReadingKey::AirF, at - TimeDelta::hours(12));
    if air.is_some_and(|air| air <= 0.0) {
        2.0
    } else {
        4.0
    }
}
