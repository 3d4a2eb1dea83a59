//! What waited for somebody, as it goes out: anew with today's figures, else with the time it is from; what is over is not
//! said at all.

use chrono::{DateTime, TimeDelta, Utc};

use super::Desk;
use super::situate::Case;
use super::tick::{of_alone, text_of_task};
use crate::book::{Held, HeldOf, Task};
use crate::finding::Level;
use crate::heard::UnitName;
use crate::reply::Voice;

/// What waited for so short a time is as new as what is said now.
const NEW: TimeDelta = TimeDelta::minutes(5);

/// What is known as it goes out, with what this very turn changes.
pub(super) struct Known<'a> {
    pub(super) desk: &'a Desk,
    pub(super) now: DateTime<Utc>,
    pub(super) task: &'a dyn Fn(u32) -> Option<Task>,
    pub(super) case: &'a dyn Fn(&UnitName) -> Case,
    /// Whether this turn ends an alarm, by its key.
    pub(super) ended: &'a dyn Fn(&str) -> bool,
}

/// What waited, as it is said now.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Told {
    pub(super) level: Option<Level>,
    pub(super) text: String,
}

/// What became of something that waited.
enum Now {
    /// It is over, or somebody else sees to it.
    Over,
    /// It holds, and is said as it stands now.
    Anew(Option<Level>, String),
    /// It is not known to have changed.
    AsItWas,
}

/// Puts what waited for somebody into words: a message each for what stands now, and for what was told at one time.
pub(super) fn let_go(held: &[Held], known: &Known<'_>, voice: &Voice<'_>) -> Vec<Told> {
    let mut anew: Vec<Told> = Vec::new();
    let mut told: Vec<Told> = Vec::new();
    let mut since: Option<DateTime<Utc>> = None;
    for (index, one) in held.iter().enumerate() {
        // the same thing, told again later
        let again = |other: &Held| one.of.is_some() && other.of == one.of;
        if held[index + 1..].iter().any(again) {
            continue;
        }
        match stands(one, known, voice) {
            Now::Over => {}
            Now::Anew(level, text) => anew.push(Told { level, text }),
            Now::AsItWas => {
                let old = known.now - one.at > NEW;
                match told.last_mut().filter(|_| since == Some(one.at)) {
                    Some(last) => {
                        last.level = last.level.max(one.level);
                        last.text.push('\n');
                        last.text.push_str(one.text.text());
                    }
                    None => {
                        let head = voice.say("speak-held-from", &[("time", one.at.into())]);
                        let text = one.text.text();
                        told.push(Told {
                            level: one.level,
                            text: match old {
                                true => format!("{head}\n{text}"),
                                false => text.to_owned(),
                            },
                        });
                        since = Some(one.at);
                    }
                }
            }
        }
    }
    // what stands now comes first: nothing of it is from the time told below
    anew.extend(told);
    anew
}

fn stands(held: &Held, known: &Known<'_>, voice: &Voice<'_>) -> Now {
    let alarms = known.desk.book.alarms();
    match &held.of {
        None => Now::AsItWas,
        Some(HeldOf::Task(id)) => {
            match (known.task)(*id).filter(|task| wants(task, &held.to, known.now)) {
                None => Now::Over,
                Some(task) => {
                    let key = text_of_task(&task, known.now);
                    let text = voice.say(key, &[("task", voice.task(&task).into())]);
                    Now::Anew(held.level, text)
                }
            }
        }
        Some(HeldOf::Finding(unit, id)) => {
            let case = (known.case)(unit);
            let findings = case.findings();
            match findings.iter().find(|finding| finding.id == *id) {
                None => Now::Over,
                Some(finding) => Now::Anew(Some(finding.level), voice.finding(finding, true)),
            }
        }
        Some(HeldOf::Alarm(key)) => match alarms.get(key).filter(|_| !(known.ended)(key)) {
            None => Now::Over,
            // taking note of somebody who works alone does not find them
            Some(alarm) if alarm.acknowledged.is_some() && of_alone(key).is_none() => Now::Over,
            Some(_) => Now::AsItWas,
        },
        Some(HeldOf::Unheard(unit)) => {
            let word = (known.case)(unit).now.last_word;
            match word.is_some_and(|word| word.at > held.at) {
                true => Now::Over,
                false => Now::AsItWas,
            }
        }
    }
}

/// Tells whether a task still wants somebody: nobody else has it, and no truck that comes in time was called for it.
fn wants(task: &Task, who: &str, now: DateTime<Utc>) -> bool {
    let theirs = task.taken_by.as_deref().is_none_or(|by| by == who);
    let comes = task.called.is_some() && !task.is_late(now);
    task.is_open() && theirs && !comes
}
