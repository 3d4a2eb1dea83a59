//! "Can I turn 23 back on": what is to be true first, and who decides.

use super::super::answer::Reply;
use super::Hearing;
use crate::finding::{Caution, TaskKind};
use crate::heard::{Ask, UnitName};
use crate::reply::Arg;

/// What is to be true before a trailer is switched on again.
pub(super) enum PowerAgain {
    /// Nothing is logged against it.
    Free(UnitName),
    /// An electrician is called for under this task.
    Task(UnitName, u32),
}

impl Hearing<'_> {
    /// Reads "can i turn 23 back on" of a trailer on which no danger is open.
    pub(super) fn asks_for_power_again(&self) -> Option<PowerAgain> {
        let says = |list| self.desk.answers.says("people", list, self.text);
        let status = matches!(self.heard.ask, None | Some(Ask::Status { .. }));
        if !(says("may") && says("power")) || says("loads") || !status {
            return None;
        }
        let unit = self.unit_meant()?;
        let tasks = self.desk.book.tasks();
        let task = tasks.open_task(&unit, TaskKind::Electrician);
        let task = task.map(|task| task.id);
        let faults = self
            .desk
            .book
            .unit(&unit)
            .map(|kept| kept.state().faults.len());
        match task {
            Some(id) => Some(PowerAgain::Task(unit, id)),
            None if faults.unwrap_or_default() == 0 && !self.heard.named.is_empty() => {
                Some(PowerAgain::Free(unit))
            }
            None => None,
        }
    }
}

/// Says what is to be true first, and who decides.
pub(super) fn answer(asked: &PowerAgain, reply: &mut Reply<'_>) {
    let line = match asked {
        PowerAgain::Free(unit) => {
            let args = [("unit", Arg::from(unit.as_str()))];
            reply.voice.say("answer-back-on-free", &args)
        }
        PowerAgain::Task(unit, id) => {
            let id = Arg::Count(i64::from(*id));
            let args = [("unit", unit.as_str().into()), ("id", id)];
            reply.voice.say("answer-back-on-task", &args)
        }
    };
    reply.first.push(line);
    for caution in [Caution::Electrician, Caution::TwoResets] {
        let line = format!("  {}", reply.voice.caution(caution));
        reply.first.push(line);
    }
}
