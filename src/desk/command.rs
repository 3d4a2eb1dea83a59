//! Orders to the bot itself: tasks taken, dropped and moved, alarms taken note of, questions dropped.

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use super::answer::Reply;
use super::assign;
use super::errand;
use super::inbound::Outgoing;
use super::incident;
use super::lone;
use super::others::{other_dispatchers, watchers_of};
use super::phrases::is_marked;
use super::receive::{Hearing, lead};
use super::relay;
use super::standing;
use super::teach;
use super::tick;
use super::watch;
use super::when;
use super::withdrawn;
use super::worry;
use crate::book::{Alarm, AlarmChange, Attempt, Personal, Record, Task, TaskChange};
use crate::dialogue::{About, Hauled, Question};
use crate::finding::{Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::fleet::Role;
use crate::heard::{Command, CommandName, UnitName};
use crate::reply::{Arg, Voice};

/// Obeys an order, or says who may give it.
pub(super) fn obey(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    // what was taught may be read by everyone
    if order.name == CommandName::Teach && order.rest.trim().is_empty() {
        return teach::list(hearing, reply);
    }
    // who cannot do what they have gives it back, and drops it for nobody else
    if order.name == CommandName::Drop
        && hearing.member.role < Role::Tech
        && let Some(id) = order.task.filter(|id| is_mine(hearing, *id))
    {
        return assign::hand_back(hearing, id, reply);
    }
    if let Some(least) = least_role(order.name).filter(|least| hearing.member.role < *least) {
        reply.findings.push(not_allowed(order.name, least));
        records.push(refused(hearing));
        return;
    }
    if super::crew::obey(hearing, order, reply, records) {
        return;
    }
    match order.name {
        CommandName::Take | CommandName::Drop | CommandName::Move => on_task(hearing, order, reply),
        CommandName::GotIt => got_it(hearing, reply, records),
        CommandName::NeverMind => never_mind(hearing, reply, records),
        CommandName::Log => log(hearing, order, reply, records),
        CommandName::Tell => relay::tell(hearing, order, reply, records),
        CommandName::Assign => assign::obey(hearing, order, reply, records),
        CommandName::Errand => errand::obey(hearing, order, reply, records),
        CommandName::Note => standing::note(hearing, order, reply, records),
        CommandName::Override => standing::decide(hearing, order, reply, records),
        CommandName::Relearn => standing::relearn(hearing, order, reply, records),
        CommandName::Teach => teach::teach(hearing, order, reply, records),
        CommandName::Words => teach::list(hearing, reply),
        CommandName::Incident => incident::obey(hearing, order, reply, records),
        CommandName::ForgetWord => teach::forget(hearing, order, reply, records),
        CommandName::Invite
        | CommandName::Role
        | CommandName::ShutOut
        | CommandName::Crew
        | CommandName::Leave
        | CommandName::Language
        | CommandName::Quiet => reply.say("order-not-yet", &[("order", order.name.code().into())]),
    }
}

/// Tells whether the message gave an order that no undo takes back.
pub(super) fn is_for_good(hearing: &Hearing<'_>, reply: &Reply<'_>) -> bool {
    let Some(order) = &hearing.heard.command else {
        return false;
    };
    let refused = |finding: &Finding| finding.id == FindingId::DeskNotAllowed;
    let for_good = match order.name {
        CommandName::Role | CommandName::ShutOut | CommandName::Invite | CommandName::Tell => true,
        CommandName::Incident => {
            let phrases = &hearing.desk.phrases;
            phrases
                .after("incident", "release", order.rest.trim())
                .is_some()
        }
        _ => false,
    };
    for_good && !reply.findings.iter().any(refused)
}

/// Returns the least role that may give an order; none where everyone may.
fn least_role(name: CommandName) -> Option<Role> {
    match name {
        CommandName::Drop | CommandName::Move => Some(Role::Tech),
        CommandName::Override
        | CommandName::Relearn
        | CommandName::Teach
        | CommandName::ForgetWord
        | CommandName::Invite
        | CommandName::Role
        | CommandName::ShutOut
        | CommandName::Crew
        | CommandName::Assign
        | CommandName::Incident => Some(Role::Dispatcher),
        _ => None,
    }
}

pub(super) fn not_allowed(name: CommandName, least: Role) -> Finding {
    let facts = Facts::new().text("order", name.code(), Origin::Read);
    let finding = Finding::new(
        FindingId::DeskNotAllowed,
        Level::Notice,
        Urgency::Now,
        facts,
    );
    match least {
        Role::Dispatcher => finding.says("desk-not-allowed-dispatcher"),
        _ => finding.says("desk-not-allowed-tech"),
    }
}

/// Notes an order that was refused: the dispatchers hear of it now and then.
pub(super) fn refused(hearing: &Hearing<'_>) -> Record {
    Record::Refused {
        at: hearing.now,
        who: Personal::new(&*hearing.member.id),
        answered: false,
        tried: Attempt::Order,
    }
}

fn is_mine(hearing: &Hearing<'_>, id: u32) -> bool {
    let task = hearing.desk.book.tasks().task(id);
    task.is_some_and(|task| task.is_open() && task.taken_by.as_ref() == Some(&hearing.member.id))
}

fn on_task(hearing: &Hearing<'_>, order: &Command, reply: &mut Reply<'_>) {
    let Some(id) = order.task else {
        reply.say("order-which-task", &[("order", order.name.code().into())]);
        return;
    };
    let number = Arg::Count(i64::from(id));
    let Some(task) = reply.board.tasks().task(id).cloned() else {
        reply.unknown_task(hearing, id);
        return;
    };
    if !task.is_open() {
        reply.say("task-already-closed", &[("id", number)]);
        return;
    }
    let by = hearing.member.id.clone();
    match order.name {
        CommandName::Take => reply.board.change(TaskChange::Taken { id, by, from: None }),
        CommandName::Drop if reason_of(order).is_empty() => {
            reply.say("drop-needs-reason", &[("id", number)])
        }
        CommandName::Drop => {
            let reason = reason_of(order).to_owned();
            reply.board.change(TaskChange::Dropped {
                id,
                by,
                reason,
                cause: Some(hearing.key.clone()),
            });
            assign::tell_dropped(hearing, &task, reason_of(order), reply);
        }
        _ => move_task(hearing, &task, order, reply),
    }
}

/// Gives a task another time, and says where that is late for the tank.
fn move_task(hearing: &Hearing<'_>, task: &Task, order: &Command, reply: &mut Reply<'_>) {
    let (id, zone) = (task.id, hearing.fleet.time_zone);
    // of work that somebody wants on a day to come, an hour alone moves the hour
    let of_its_day = task
        .wanted
        .filter(|due| is_of_a_day_to_come(*due, hearing.now, zone))
        .filter(|_| !when::names_a_day(&order.rest));
    let told = when::clock_in(&order.rest).and_then(|clock| match of_its_day {
        Some(due) => when::on(due.with_timezone(&zone).date_naive(), &clock, zone),
        // one that was past a short while ago is asked about
        None => when::next(&clock, hearing.now, zone)
            .filter(|due| is_past(*due, hearing, order))
            .or_else(|| when::told(&clock, &order.rest, hearing.now, zone)),
    });
    // "move 4 to 9"
    let bare = || {
        let hour = hearing
            .desk
            .phrases
            .after("orders", "to", order.rest.trim())?;
        when::coming(&format!("at {hour}"), hearing.now, zone)
    };
    let Some(due) = told.or_else(bare) else {
        return reply.say("move-needs-time", &[("id", id.into())]);
    };
    let later = task
        .wanted
        .is_some_and(|due| is_of_a_day_to_come(due, hearing.now, zone));
    if is_past(due, hearing, order) && !(later && due > hearing.now) {
        return reply.say("move-is-past", &[("id", id.into())]);
    }
    // a time that somebody wished is no limit of the tank, where there is a forecast
    let forecast = task
        .unit
        .as_ref()
        .map(|unit| hearing.asked_about(unit).outlook);
    let limit = match forecast.and_then(|outlook| outlook.waste) {
        Some(waste) => waste.p10,
        None => task.due,
    };
    let pumps = task.kind == TaskKind::PumpOut;
    if let Some(limit) = limit.filter(|limit| pumps && *limit < due) {
        let args = [("time", limit.into()), ("due", due.into())];
        reply.say("move-past-limit", &args);
    }
    // a truck is called by its own notice before it is wanted, however late the call was before
    let call_by = task.call_by.zip(task.due).map(|(call, was)| {
        let notice = task
            .unit
            .as_ref()
            .filter(|_| pumps)
            .map(|unit| lead(&hearing.asked_about(unit)));
        due - notice.unwrap_or(was - call)
    });
    reply.board.change(TaskChange::Redated {
        id,
        due: Some(due),
        call_by,
    });
    // who moves it decides anew by when it is wanted
    if task.wanted.is_some() {
        reply.board.keep_to(id, Some(due));
    }
}

fn is_of_a_day_to_come(due: DateTime<Utc>, now: DateTime<Utc>, zone: Tz) -> bool {
    due.with_timezone(&zone).date_naive() > now.with_timezone(&zone).date_naive()
}

/// A time so far ahead, with no day told, was most likely one of today that is past.
const FAR: TimeDelta = TimeDelta::hours(18);

fn is_past(due: DateTime<Utc>, hearing: &Hearing<'_>, order: &Command) -> bool {
    due <= hearing.now || due - hearing.now > FAR && !when::names_a_day(&order.rest)
}

fn got_it(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let mut standing: Vec<_> = hearing
        .desk
        .book
        .alarms()
        .iter()
        .filter(|(_, alarm)| alarm.acknowledged.is_none())
        .filter(|(key, alarm)| was_shown(hearing, key, alarm))
        .collect();
    if let Some(unit) = danger_that_stands(hearing, &standing) {
        return reply.say("got-it-danger-stands", &[("unit", unit.as_str().into())]);
    }
    // the crew's "got it" means the advice, and stops no alarm of the dispatchers
    let shown = standing.len();
    standing.retain(|(key, _)| may_note(hearing, key));
    if standing.len() < shown && standing.is_empty() && !is_marked(hearing.text) {
        return reply.say("got-it-advice", &[]);
    }
    let standing = shown_last(standing);
    if standing.is_empty() || is_marked(hearing.text) {
        reply.say("got-it-nothing", &[]);
        return;
    }
    let by = &hearing.member.id;
    let names = |voice: &Voice<'_>| -> String {
        let tasks = hearing.desk.book.tasks();
        let names: Vec<String> = standing
            .iter()
            .map(|(key, alarm)| lone::alarm_name(key, alarm, tasks, voice))
            .collect();
        voice.all_of(&names)
    };
    for (key, _) in &standing {
        let change = AlarmChange::Acknowledged {
            key: (*key).clone(),
            by: by.clone(),
        };
        records.push(Record::Alarm {
            at: hearing.now,
            change,
        });
    }
    let what = names(&reply.voice);
    // somebody who works alone is asked after until they are found
    let alone = |key: &String| tick::of_alone(key).is_some();
    let noted = match standing.iter().any(|(key, _)| alone(key)) {
        true => "got-it-noted",
        false => "got-it",
    };
    reply.say(noted, &[("what", what.into())]);
    // a person is not seen to by taking note of them
    let alone = standing.iter().filter_map(|(key, _)| tick::of_alone(key));
    for who in alone {
        let who = reply.voice.person(who).into_owned();
        reply.say("got-it-alone-ask", &[("who", who.into())]);
    }
    // the first to take note stops it for all, and the others hear who it was
    for (other, voice) in other_dispatchers(hearing) {
        let who = voice.person(by).into_owned();
        let what = names(&voice);
        reply.others.push(Outgoing::to(
            &other.id,
            voice.say("got-it-by", &[("who", who.into()), ("what", what.into())]),
        ));
    }
}

fn never_mind(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    // an edit to "never mind" takes back what it edits, and no more
    if watch::drop(hearing, reply, records) || hearing.inbound.replaces.is_some() {
        return;
    }
    let mut mine = hearing
        .desk
        .book
        .watches()
        .iter()
        .filter(|watch| watch.who == hearing.member.id);
    match (&hearing.talk.question, mine.next_back()) {
        (
            Some(Question {
                about: About::Worry { .. },
                ..
            }),
            _,
        ) => worry::tell_of_none(hearing, reply),
        (
            Some(Question {
                about: About::NoDanger { unit, .. },
                ..
            }),
            _,
        ) => {
            // "never mind" is no clear yes: it is asked again
            if let Some(again) = withdrawn::asks_again(hearing) {
                reply.asks = Some(again);
            } else if let Some(unit) = unit {
                reply.say("no-danger", &[("unit", unit.as_str().into())]);
            } else {
                reply.say("no-danger-person", &[]);
            }
        }
        // the task was closed before its gallons were asked
        (
            Some(Question {
                about:
                    About::HowMuch {
                        unit,
                        after: Hauled::Done | Hauled::Number,
                    },
                ..
            }),
            _,
        ) => reply.say("truck-done-stays", &[("unit", unit.as_str().into())]),
        (Some(question), _) if question.about.leaves_things_as_they_are() => {
            reply.say("never-mind-left", &[]);
        }
        (Some(_), _) => reply.say("never-mind-question", &[]),
        // the guided check at hand is dropped where checks are carried on
        (None, _) if !hearing.talk.checks.is_empty() => {}
        (None, _) if let Some(round) = &hearing.talk.round => {
            reply.say("round-dropped", &[("unit", round.unit.as_str().into())]);
        }
        (None, Some(watch)) => {
            records.push(Record::Unwatch {
                watch: watch.clone(),
            });
            reply.say("never-mind-watch", &[("unit", watch.unit.as_str().into())]);
        }
        // it stopped the clock of who works alone
        (None, None)
            if hearing
                .desk
                .book
                .ahead()
                .alone(&hearing.member.id)
                .is_some() => {}
        (None, None) => reply.say("never-mind-nothing", &[]),
    }
}

/// Tells whether the sender was shown what an alarm is about: every dispatcher was; of the crew who is there, and who was
/// told so in a reply.
fn was_shown(hearing: &Hearing<'_>, key: &str, alarm: &Alarm) -> bool {
    if may_note(hearing, key) {
        return true;
    }
    let Some(unit) = &alarm.unit else {
        return false;
    };
    let about = |id: FindingId, of: Option<&UnitName>| id == alarm.id && of == Some(unit);
    let talk = &hearing.talk;
    let told = talk
        .told
        .iter()
        .any(|told| about(told.id, told.unit.as_ref()));
    let word = hearing.desk.book.unit(unit);
    let word = word.and_then(|kept| kept.state().last_word.as_ref());
    told || (talk.advice.iter()).any(|finding| about(finding.id, finding.unit.as_ref()))
        || word.is_some_and(|word| word.from == hearing.member.id)
}

/// Returns the trailer of a danger that the sender was shown and may not take note of: a driver's "got it" means the advice,
/// and it stands until a dispatcher has noted it.
fn danger_that_stands(hearing: &Hearing<'_>, shown: &[(&String, &Alarm)]) -> Option<UnitName> {
    let asks = is_marked(hearing.text);
    let theirs =
        |(key, alarm): &&(&String, &Alarm)| alarm.level == Level::Danger && !may_note(hearing, key);
    let newest = shown
        .iter()
        .filter(theirs)
        .max_by_key(|(_, alarm)| alarm.said)?;
    newest.1.unit.clone().filter(|_| !asks)
}

/// Keeps those alarms that a "got it" takes: dangers where there are any, else those that were said together with the
/// newest. What was said long before, or is less than a danger, is not put to sleep along with them.
fn shown_last<'a>(mut standing: Vec<(&'a String, &'a Alarm)>) -> Vec<(&'a String, &'a Alarm)> {
    const TOGETHER: TimeDelta = TimeDelta::minutes(15);
    if standing
        .iter()
        .any(|(_, alarm)| alarm.level == Level::Danger)
    {
        standing.retain(|(_, alarm)| alarm.level == Level::Danger);
        return standing;
    }
    let newest = standing.iter().map(|(_, alarm)| alarm.said).max();
    standing.retain(|(_, alarm)| newest.is_some_and(|newest| newest - alarm.said <= TOGETHER));
    standing
}

/// Tells whether the sender may take note of a danger: a dispatcher, or who watches over a lone worker in their place.
fn may_note(hearing: &Hearing<'_>, key: &str) -> bool {
    let watches = |who| {
        let mut watchers = watchers_of(&hearing.fleet, who).into_iter();
        watchers.any(|watcher| watcher.id == hearing.member.id)
    };
    hearing.member.role == Role::Dispatcher || tick::of_alone(key).is_some_and(watches)
}

/// Lists a person's own messages of the last days; a dispatcher may ask for anybody's.
fn log(hearing: &Hearing<'_>, order: &Command, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let name = order.rest.trim();
    let mut whose = hearing.member;
    if !name.is_empty() {
        let found = relay::person(hearing, name);
        match found {
            None => {
                let quoted = reply.voice.quote(name);
                reply.say("log-who", &[("quote", quoted.into())]);
                return;
            }
            Some(other)
                if other.id != hearing.member.id && hearing.member.role != Role::Dispatcher =>
            {
                reply
                    .findings
                    .push(not_allowed(CommandName::Log, Role::Dispatcher));
                records.push(refused(hearing));
                return;
            }
            Some(other) => whose = other,
        }
    }
    let who = ("who", Arg::from(whose.name.as_str()));
    let sent = hearing.desk.book.sent(&whose.id);
    let mut lines = Vec::new();
    // orders and questions are no reports
    for sent in sent
        .iter()
        .rev()
        .filter(|sent| !sent.units.is_empty())
        .take(8)
    {
        for unit in &sent.units {
            let Some(kept) = hearing.desk.book.unit(unit) else {
                continue;
            };
            for (at, entry) in kept.reports_of(&sent.key) {
                let what = reply
                    .voice
                    .readings(entry, hearing.fleet.trailers.get(unit));
                let args = [
                    ("time", at.into()),
                    ("unit", unit.as_str().into()),
                    ("what", what.into()),
                ];
                lines.push(reply.voice.say("log-line", &args));
            }
        }
    }
    if lines.is_empty() {
        reply.say("log-none", &[who]);
        return;
    }
    reply.say("log-of", &[who]);
    reply.lines.append(&mut lines);
}

/// Returns the words of an order after its task number.
fn reason_of(order: &Command) -> &str {
    let rest = order.rest.trim();
    rest.trim_start_matches('#')
        .trim_start_matches(|c: char| c.is_ascii_digit())
        .trim_start_matches([':', ',', ' '])
        .trim()
}
