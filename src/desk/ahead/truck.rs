//! A truck that must be called now is told to the dispatchers at once, when somebody else reported the tank.

use super::super::answer::Reply;
use super::super::choices;
use super::super::inbound::Outgoing;
use super::super::receive::Hearing;
use super::super::tick::{alarm_of_task, dispatchers, may_speak, text_of_task};
use crate::book::{AheadChange, Record, Task, TaskChange};

use crate::finding::{Level, TaskKind};

/// Tells the other dispatchers, in one message each; where they were spoken to just now, the next tick does it.
pub(super) fn call_now(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let now = hearing.now;
    let pressing = |task: &&Task| {
        task.is_open()
            && task.kind == TaskKind::PumpOut
            && task.called.is_none()
            && task.taken_by.is_none()
            && task.escalated.is_none()
            && task.call_by.is_some_and(|call_by| call_by <= now)
    };
    let tasks: Vec<Task> = reply.board.touched().filter(pressing).cloned().collect();
    if tasks.is_empty() {
        return;
    }
    let me = &hearing.member.id;
    let by_dispatcher = dispatchers(&hearing.fleet).any(|id| id == me);
    let others: Vec<&str> = dispatchers(&hearing.fleet).filter(|id| *id != me).collect();
    if !by_dispatcher
        && !may_speak(
            hearing.desk,
            &hearing.fleet,
            now,
            tasks.iter().filter_map(|task| task.due).min(),
        )
    {
        return;
    }
    for task in &tasks {
        reply.board.change(TaskChange::Escalated { id: task.id });
        let alarm = alarm_of_task(task).filter(|_| !others.is_empty());
        records.extend(alarm.map(|change| Record::Alarm { at: now, change }));
    }
    for to in &others {
        let Some(member) = hearing.fleet.crew.get(*to) else {
            continue;
        };
        let voice = hearing.desk.voice_for(member, None, &hearing.fleet, now);
        let mut lines: Vec<String> = tasks
            .iter()
            .map(|task| {
                voice.say(
                    text_of_task(task, now),
                    &[("task", voice.task(task).into())],
                )
            })
            .collect();
        lines.push(voice.say("speak-answer-task", &[("id", tasks[0].id.into())]));
        reply.others.push(
            choices::for_task(Outgoing::to(to, lines.join("\n")), &voice, tasks[0].id)
                .of_level(Level::Notice),
        );
    }
    if !others.is_empty() {
        let change = AheadChange::Spoke;
        records.push(Record::Ahead { at: now, change });
    }
}
