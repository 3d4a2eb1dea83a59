//! Who has a task hears what others change in it: its truck, its time, who has it now, its end.

use super::answer::Reply;
use super::inbound::Outgoing;
use super::receive::Hearing;
use crate::book::{Task, TaskState};
use crate::finding::Level;
use crate::heard::CommandName;
use crate::reply::{Arg, HAS_LEFT, NO_NEED, TAKEN_BACK, Voice};

/// What somebody else changed in a task.
enum Change {
    /// Another has it now, by crew id.
    Passed(String),
    /// It is done.
    Done,
    /// It was dropped, with the reason where the sender gave one.
    Dropped(Option<String>),
    /// It is to be done after all.
    Reopened,
    /// Its truck is off.
    TruckOff,
    /// Its truck was called, or comes at another time.
    Truck,
    /// It has another time.
    Moved,
}

/// Tells those who have the tasks that this turn changes, but for the sender and who was told already.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    for was in reply.board.before() {
        let holder = was
            .taken_by
            .as_ref()
            .filter(|who| **who != hearing.member.id);
        let now = reply.board.tasks().task(was.id).cloned();
        let Some((holder, now)) = holder.zip(now) else {
            continue;
        };
        let Some(member) = hearing.fleet.crew.get(holder) else {
            continue;
        };
        let Some(change) = change(hearing, reply, &was, &now) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let head = voice.task_head(&now);
        let told = |out: &Outgoing| out.to == member.id && names(out.text.text(), &head);
        if reply.others.iter().any(told) {
            continue;
        }
        let who = voice.person(&hearing.member.id).into_owned();
        let text = words(&voice, &who, &now, &change);
        let letter = Outgoing::to(&member.id, text).of_level(Level::Notice);
        reply.others.push(letter);
        if matches!(change, Change::Passed(_)) {
            let who = reply.voice.person(holder).into_owned();
            reply.say("holder-had-it", &[("who", who.into())]);
        }
    }
}

/// Tells whether a text names a task by its number, kind and trailer: "14 repair 12" is not "4 repair 12".
fn names(text: &str, head: &str) -> bool {
    text.match_indices(head).any(|(from, _)| {
        let before = text[..from].chars().next_back();
        let after = text[from + head.len()..].chars().next();
        ![before, after]
            .iter()
            .flatten()
            .any(|c| c.is_alphanumeric())
    })
}

/// Finds what changed in a task that its holder has to know; none where it is nothing, or was told as it was taken back.
fn change(hearing: &Hearing<'_>, reply: &Reply<'_>, was: &Task, now: &Task) -> Option<Change> {
    if now.taken_by != was.taken_by {
        let passed = now.taken_by.clone().map(Change::Passed);
        return passed.filter(|_| !reply.undone);
    }
    let order = hearing.heard.command.as_ref();
    let moves = order.is_some_and(|order| order.name == CommandName::Move);
    match (&was.state, &now.state) {
        (TaskState::Open, TaskState::Done) => Some(Change::Done),
        (TaskState::Open, TaskState::Dropped(reason)) => {
            let given = ![HAS_LEFT, NO_NEED, TAKEN_BACK].contains(&reason.as_str());
            Some(Change::Dropped(given.then(|| reason.clone())))
        }
        (TaskState::Open, TaskState::Open) => match () {
            () if was.called.is_some() && now.called.is_none() => Some(Change::TruckOff),
            () if was.promised != now.promised || was.called.is_none() && now.called.is_some() => {
                Some(Change::Truck)
            }
            () if (moves || reply.undone) && was.due != now.due => Some(Change::Moved),
            () => None,
        },
        (_, TaskState::Open) => Some(Change::Reopened),
        _ => None,
    }
}

fn words(voice: &Voice<'_>, who: &str, task: &Task, change: &Change) -> String {
    let sender = ("who", Arg::from(who));
    let head = ("task", Arg::from(voice.task_head(task)));
    let whole = ("task", Arg::from(voice.task(task)));
    match change {
        Change::Passed(other) => {
            let other = voice.person(other).into_owned();
            voice.say("assign-moved", &[("who", other.into()), head])
        }
        Change::Done => voice.say("holder-done", &[sender, head]),
        Change::Dropped(Some(reason)) => {
            let quote = ("quote", Arg::from(voice.quote(reason)));
            voice.say("holder-dropped", &[sender, head, quote])
        }
        Change::Dropped(None) => voice.say("holder-not-needed", &[sender, head]),
        Change::Reopened => voice.say("holder-reopened", &[sender, whole]),
        Change::TruckOff => voice.say("holder-truck-off", &[sender, whole]),
        Change::Truck => voice.say("holder-truck", &[sender, whole]),
        Change::Moved => voice.say("holder-moved", &[sender, whole]),
    }
}

#[cfg(test)]
mod tests {
    use super::names;

    #[test]
    fn a_task_is_named_by_its_whole_number() {
        assert!(names("Late: task 4 repair 12: by 16:00.", "4 repair 12"));
        assert!(!names("Late: task 14 repair 12: by 16:00.", "4 repair 12"));
        assert!(!names("Late: task 4 repair 123: by 16:00.", "4 repair 12"));
    }
}
