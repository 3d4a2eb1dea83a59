//! A task that a dispatcher hands to somebody: "assign 4 to tobin", "give juno task 4".

use super::answer::Reply;
use super::inbound::Outgoing;
use super::phrases::{Phrases, plain};
use super::receive::Hearing;
use super::relay;
use crate::book::TaskChange;
use crate::finding::Level;
use crate::fleet::Fleet;
use crate::heard::{Command, CommandName};
use crate::reply::Arg;

/// Words that stand between a task's number and a name.
const BETWEEN: &[&str] = &[
    "to", "a", "al", "para", "task", "tarea", "la", "the", "number", "no",
];

/// Reads the order; none where it names no task, or nobody of the crew and no task by that word: "give 12 some water".
pub(super) fn order(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<Command> {
    let rest = phrases.after("assign", "opens", text.trim())?;
    let folded = plain(rest);
    let words: Vec<&str> = folded
        .split(' ')
        .filter(|word| !BETWEEN.contains(word))
        .collect();
    let number = |word: &&&str| word.chars().all(|c| c.is_ascii_digit());
    let numbers: Vec<&&str> = words.iter().filter(number).collect();
    let [id] = numbers.as_slice() else {
        return None;
    };
    let name: Vec<&str> = words.iter().filter(|word| !number(word)).copied().collect();
    let name = name.join(" ");
    let says_task = phrases.holds("assign", "plainly", text);
    let mut crew = fleet.crew.values();
    let known = crew.any(|member| plain(&member.id) == name || plain(&member.name) == name);
    (!name.is_empty() && (known || says_task)).then_some(Command {
        name: CommandName::Assign,
        task: id.parse().ok(),
        rest: name,
    })
}

/// Hands a task that is open to the person named, and tells them.
pub(super) fn obey(hearing: &Hearing<'_>, order: &Command, reply: &mut Reply<'_>) {
    let Some(id) = order.task else {
        return reply.say("assign-how", &[]);
    };
    let Some(task) = reply.board.tasks().task(id).cloned() else {
        return reply.unknown_task(hearing, id);
    };
    if !task.is_open() {
        return reply.say("task-already-closed", &[("id", id.into())]);
    }
    let Some(other) = relay::person(hearing, &order.rest) else {
        return relay::unknown(hearing, &order.rest, "assign-who", reply);
    };
    let by = other.id.clone();
    let from = Some(hearing.member.id.clone());
    reply.board.change(TaskChange::Taken { id, by, from });
    if other.id == hearing.member.id {
        return;
    }
    let voice = hearing
        .desk
        .voice_for(other, None, &hearing.fleet, hearing.now);
    let who = voice.person(&hearing.member.id).into_owned();
    let args = [
        ("who", Arg::from(who)),
        ("task", voice.task(&task).into()),
        ("id", id.into()),
    ];
    let text = voice.say("assign-told", &args);
    reply
        .others
        .push(Outgoing::to(&other.id, text).of_level(Level::Notice));
}
