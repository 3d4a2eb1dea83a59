//! A task that a dispatcher hands to somebody: "assign 4 to tobin", "give juno task 4".

use chrono::TimeDelta;

use super::answer::Reply;
use super::inbound::Outgoing;
use super::others::called;
use super::phrases::{Phrases, is_marked, plain};
use super::receive::{Hearing, Texted};
use super::relay;
use super::settle;
use super::tick::{dispatchers, of_alone};
use crate::book::{Record, Task, TaskChange};
use crate::finding::{Level, TaskKind};
use crate::fleet::{Fleet, Role};
use crate::heard::{Command, CommandName, UnitName};
use crate::reply::Arg;

/// "I'll take it" means a task that was told within this long.
const TOLD_LATELY: TimeDelta = TimeDelta::minutes(60);

/// Reads the order; none where it names nobody of the crew and no task by that word: "give 12 some water".
pub(super) fn order(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<Command> {
    let text = text.trim();
    if let Some(order) = by_name(phrases, fleet, text) {
        return Some(order);
    }
    let ordered = phrases.after("assign", "opens", text);
    let rest = ordered.or_else(|| phrases.after("assign", "names", text))?;
    let folded = plain(rest);
    let words: Vec<&str> = folded
        .split(' ')
        .filter(|word| !phrases.is("assign", "courtesy", word))
        .collect();
    let is_known = |name: &str| called(fleet.crew.values(), name).is_some();
    let number = |word: &&str| word.chars().all(|c| c.is_ascii_digit());
    let names = words
        .iter()
        .filter(|word| !number(word) && !phrases.is("assign", "between", word));
    let name = names.copied().collect::<Vec<_>>().join(" ");
    let numbers: Vec<u32> = words
        .iter()
        .filter(|word| number(word))
        .filter_map(|word| word.parse().ok())
        .collect();
    // "assign pump-out 12 to juno": the work of a trailer
    let of_a_trailer = |id: &u32| {
        let unit = settle::known(fleet, &UnitName::new(&id.to_string()));
        let by_work = of_a_truck(phrases, text) && !phrases.holds("assign", "numbered", text);
        unit.is_some() && by_work
    };
    if let ([id], false) = (numbers.as_slice(), name.is_empty())
        && !of_a_trailer(id)
        && (is_known(&name) || ordered.is_some() && phrases.holds("assign", "plainly", text))
    {
        return Some(to(Some(*id), &name));
    }
    ordered?;
    // "give the pump-out on 6 to wren": the work is named, and not its number
    let of_work = phrases.holds("assign", "plainly", text) || of_a_truck(phrases, text);
    let (last, before) = words.split_last()?;
    let handed = before
        .last()
        .is_some_and(|word| phrases.is("assign", "to", word));
    if handed && is_known(last) && of_work {
        return Some(to(None, last));
    }
    // "give abel the pump out on 12"
    let (first, rest) = words.split_first()?;
    let work = of_a_truck(phrases, &rest.join(" "));
    (work && is_known(first)).then(|| to(None, first))
}

/// Returns the order that hands a task to somebody; without its number, the one that the message's words mean.
pub(super) fn to(task: Option<u32>, name: &str) -> Command {
    Command {
        name: CommandName::Assign,
        task,
        rest: name.to_owned(),
    }
}

/// Reads "abel takes 4", "que abel tome la 4", "la 4 la toma abel": somebody of the crew, a word of taking, and a number
/// alone; or the work, "juno takes the pump-out on 12".
fn by_name(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<Command> {
    let text = phrases.after("assign", "lets", text).unwrap_or(text);
    let is_known = |name: &str| called(fleet.crew.values(), name).is_some();
    // "12 goes to abel", "abel lleva la 12" may be the trailer
    let is_task = |id: u32, said: &str| {
        let of_a_trailer = settle::known(fleet, &UnitName::new(&id.to_string())).is_some();
        phrases.holds("assign", "numbered", said) || !of_a_trailer
    };
    if let Some((number, name)) = phrases.parted("assign", "taken-by", text)
        && is_known(name)
    {
        let id = number_alone(phrases, number)?;
        return is_task(id, number).then(|| to(Some(id), name));
    }
    let (name, rest) = text.split_once(' ')?;
    let rest = phrases.after("assign", "takes", rest)?;
    if !is_known(name) {
        return None;
    }
    match number_alone(phrases, rest) {
        Some(id) => is_task(id, rest).then(|| to(Some(id), name)),
        None => of_a_truck(phrases, rest).then(|| to(None, name)),
    }
}

/// Tells whether words are of a truck's work.
fn of_a_truck(phrases: &Phrases, text: &str) -> bool {
    phrases.holds("truck", "who", text) || phrases.holds("assign", "work", text)
}

/// Reads the number of a task that stands alone but for words of courtesy.
fn number_alone(phrases: &Phrases, text: &str) -> Option<u32> {
    let folded = plain(text);
    let mut words = folded.split(' ').filter(|word| {
        !phrases.is("assign", "between", word) && !phrases.is("assign", "courtesy", word)
    });
    let id = words.next()?.parse().ok()?;
    words.next().is_none().then_some(id)
}

/// Reads "I'll take it" as the order it is, where one open task was told to the sender or is on the trailer talked about.
pub(super) fn take_it(came: &Texted<'_>) -> Option<Command> {
    let Texted {
        desk, talk, heard, ..
    } = *came;
    let busy = talk.question_at(came.at).is_some() || !talk.checks.is_empty();
    let says = desk.phrases.is("assign", "take-it", came.text);
    let reports = heard.entries.iter().any(|entry| !entry.is_empty());
    if !says || busy || reports {
        return None;
    }
    Some(Command {
        name: CommandName::Take,
        task: Some(spoken_of(came)?),
        rest: String::new(),
    })
}

/// Reads "sending abel" of a dispatcher as the order that hands somebody of the crew the one task which was told.
pub(super) fn sends(came: &Texted<'_>) -> Option<Command> {
    let (phrases, fleet) = (came.desk.phrases, came.fleet);
    let text = came.text.trim().trim_end_matches(['.', '!']);
    let rest = phrases.after("assign", "sends", text)?;
    let name = phrases
        .before("assign", "sends-behind", rest)
        .unwrap_or(rest);
    let dispatches = dispatchers(fleet).any(|to| to == came.who);
    let known = called(fleet.crew.values(), name).is_some();
    // with somebody missing, it is to them that one is sent
    let missing = came.desk.book.alarms().keys();
    let missing = missing.into_iter().any(|key| of_alone(key).is_some());
    if !dispatches || !known || missing || came.talk.question_at(came.at).is_some() {
        return None;
    }
    Some(to(spoken_of(came), name))
}

/// Returns the one open task that nobody has and that was told to the sender lately, else the one on the trailer talked about.
fn spoken_of(came: &Texted<'_>) -> Option<u32> {
    let Texted { desk, talk, .. } = *came;
    let free = |task: &&Task| task.taken_by.is_none();
    let told = |task: &&Task| {
        let told = task
            .escalated
            .is_some_and(|told| came.at - told <= TOLD_LATELY);
        told && dispatchers(came.fleet).any(|to| to == came.who)
    };
    let tasks = desk.book.tasks();
    let unit = talk.unit_at(came.at);
    let here = |task: &&Task| task.unit.as_ref().is_some_and(|on| Some(on) == unit);
    let mut ids: Vec<u32> = tasks
        .open()
        .filter(free)
        .filter(told)
        .map(|task| task.id)
        .collect();
    if ids.len() != 1 {
        ids = tasks
            .open()
            .filter(free)
            .filter(here)
            .map(|task| task.id)
            .collect();
    }
    match ids.as_slice() {
        [id] => Some(*id),
        _ => None,
    }
}

/// Finds the one open task that the words mean: of the trailer they name, a pump-out where they say so.
fn meant(hearing: &Hearing<'_>) -> Option<Task> {
    let names = hearing.names();
    let [unit] = names.as_slice() else {
        return None;
    };
    let pumps = of_a_truck(hearing.desk.phrases, hearing.text);
    let mut open = hearing
        .desk
        .book
        .tasks()
        .open_on(unit)
        .filter(|task| !pumps || task.kind == TaskKind::PumpOut);
    open.next().filter(|_| open.next().is_none()).cloned()
}

/// Hands a task that is open to the person named, and tells them.
pub(super) fn obey(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let by_words = match order.task {
        Some(_) => None,
        None => meant(hearing),
    };
    if let Some(task) = &by_words {
        reply.adopt(task);
    }
    let Some(id) = order.task.or(by_words.map(|task| task.id)) else {
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
    let task = reply.board.tasks().task(id).cloned().unwrap_or(task);
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
    // what they say to it goes back to who gave it
    let head = reply.voice.task_head(&task);
    relay::expect_answer(hearing, other, &head, records);
}

/// Reads that somebody cannot do a task: the one whose number follows; without the word "task" one that they have, or the
/// one they were given on the trailer of that number. "Can't, no spare reg" is of the task that they were given a moment ago.
pub(super) fn refused(hearing: &Hearing<'_>) -> Option<u32> {
    let (phrases, text) = (&hearing.desk.phrases, hearing.text.trim());
    if is_marked(text) || hearing.inbound.replaces.is_some() {
        return None;
    }
    let spoken = relay::words_of(phrases, &hearing.fleet, text);
    let short = phrases.after("assign", "refuses-after", spoken);
    let texts = [Some(text), Some(spoken), short].into_iter().flatten();
    texts.into_iter().find_map(|text| {
        let plainly = phrases.after("assign", "refuses", text);
        let rest = plainly.or_else(|| phrases.after("assign", "refuses-bare", text));
        match rest.and_then(number_first) {
            Some(id) => refused_by_number(hearing, id, plainly.is_some()),
            None => refused_by_words(hearing, text),
        }
    })
}

/// Reads the number that a text opens with.
fn number_first(text: &str) -> Option<u32> {
    let text = text.trim_start_matches('#');
    let end = text.find(|c: char| !c.is_ascii_digit());
    text[..end.unwrap_or(text.len())].parse().ok()
}

fn refused_by_number(hearing: &Hearing<'_>, id: u32, plainly: bool) -> Option<u32> {
    let tasks = hearing.desk.book.tasks();
    let mine = |task: &&Task| task.taken_by.as_ref() == Some(&hearing.member.id);
    if plainly || tasks.task(id).filter(|task| mine(task)).is_some() {
        return Some(id);
    }
    let unit = settle::known(&hearing.fleet, &UnitName::new(&id.to_string()))?;
    let given = |task: &&Task| task.given_by.is_some();
    let mut given = tasks.open_on(unit).filter(mine).filter(given);
    let task = given.next().filter(|_| given.next().is_none())?;
    Some(task.id)
}

/// Finds the task that was given to the sender a moment ago and that these words, with a reason or without, refuse.
fn refused_by_words(hearing: &Hearing<'_>, text: &str) -> Option<u32> {
    if !says_no(hearing.desk.phrases, text) {
        return None;
    }
    let Some(passed) = relay::newest(hearing) else {
        return taken_and_refused(hearing);
    };
    let id = number_first(&passed.words)?;
    let task = hearing.desk.book.tasks().task(id)?;
    let theirs = task.taken_by.as_ref() == Some(&hearing.member.id)
        && task.given_by.as_ref() == Some(&passed.by);
    (theirs && task.is_open()).then_some(id)
}

/// Finds the only open task that the sender has, where nothing else waits for their word: what they took they give back.
fn taken_and_refused(hearing: &Hearing<'_>) -> Option<u32> {
    let talk = &hearing.talk;
    let waits = talk.question_at(hearing.inbound.at).is_some()
        || !talk.checks.is_empty()
        || talk.round.is_some()
        || hearing.heard.entries.iter().any(|entry| !entry.is_empty());
    let me = &hearing.member.id;
    let open = hearing.desk.book.tasks().open();
    let mut mine = open.filter(|task| task.taken_by.as_ref() == Some(me));
    let task = mine.next().filter(|_| !waits && mine.next().is_none())?;
    Some(task.id)
}

/// Tells whether words say that their sender cannot do what was asked of them: alone, or with a reason behind.
pub(super) fn says_no(phrases: &Phrases, text: &str) -> bool {
    if phrases.is("assign", "cannot", text) {
        return true;
    }
    let Some(rest) = phrases.after("assign", "cannot", text) else {
        return false;
    };
    let head = text[..text.len() - rest.len()].trim_end();
    head.ends_with([',', '.', ';', ':', '-', '—', '!'])
        || phrases.after("assign", "reason", rest).is_some()
}

/// Makes a task nobody's that the sender cannot do, and tells who gave it, else the dispatchers.
pub(super) fn hand_back(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) {
    let Some(task) = hearing.desk.book.tasks().task(id).cloned() else {
        return reply.unknown_task(hearing, id);
    };
    if !task.is_open() {
        return reply.say("task-already-closed", &[("id", id.into())]);
    }
    if task.taken_by.as_ref() != Some(&hearing.member.id) {
        return reply.say("refuse-not-yours", &[("id", id.into())]);
    }
    let freed = Task {
        taken_by: None,
        given_by: None,
        ..task.clone()
    };
    reply.adopt(&task);
    reply.board.change(TaskChange::Restored {
        task: freed.clone(),
    });
    let to: Vec<String> = match &task.given_by {
        Some(who) => vec![who.clone()],
        None => dispatchers(&hearing.fleet).map(str::to_owned).collect(),
    };
    let told = tell(hearing, &to, "refuse-told", &freed, hearing.written, reply);
    if !told.is_empty() {
        let names = reply.voice.all_of(&told);
        reply.say("refuse-done", &[("who", names.into())]);
    }
}

/// Tells the dispatchers that a task was dropped which one of them did not drop.
pub(super) fn tell_dropped(
    hearing: &Hearing<'_>,
    task: &Task,
    reason: &str,
    reply: &mut Reply<'_>,
) {
    if hearing.member.role == Role::Dispatcher {
        return;
    }
    let to: Vec<String> = dispatchers(&hearing.fleet).map(str::to_owned).collect();
    tell(hearing, &to, "drop-told", task, reason, reply);
}

/// Tells others of a task and what the sender said of it; returns the names of those who are told.
fn tell(
    hearing: &Hearing<'_>,
    to: &[String],
    key: &str,
    task: &Task,
    words: &str,
    reply: &mut Reply<'_>,
) -> Vec<String> {
    let mut told = Vec::new();
    for to in to.iter().filter(|to| **to != hearing.member.id) {
        let Some(member) = hearing.fleet.crew.get(to) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let who = voice.person(&hearing.member.id).into_owned();
        let args = [
            ("who", Arg::from(who)),
            ("task", voice.task_head(task).into()),
            ("quote", voice.quote(words.trim()).into()),
        ];
        let text = voice.say(key, &args);
        reply
            .others
            .push(Outgoing::to(to, text).of_level(Level::Notice));
        told.push(member.name.clone());
    }
    told
}
