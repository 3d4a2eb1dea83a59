//! Words passed on to somebody of the crew, or by a dispatcher to all the crew of the day.

use chrono::TimeDelta;

use super::answer::Reply;
use super::command::{not_allowed, refused};
use super::inbound::Outgoing;
use super::phrases::Phrases;
use super::receive::Hearing;
use crate::book::Record;
use crate::fleet::{CrewMember, Role};
use crate::heard::{Command, CommandName};
use crate::reply::Arg;

/// From so long before the doors a job's crew is of the day.
const BEFORE_DOORS: TimeDelta = TimeDelta::hours(24);

/// Reads words for all the crew as the order they are: what they say is theirs, and no report.
pub(super) fn order(phrases: &Phrases, text: &str) -> Option<Command> {
    let rest = phrases.after("tell", "opens", text.trim_start())?;
    phrases.after("tell", "all", rest)?;
    Some(Command {
        name: CommandName::Tell,
        task: None,
        rest: rest.to_owned(),
    })
}

/// Passes a message on.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if let Some(words) = hearing.desk.phrases.after("tell", "all", order.rest.trim()) {
        return tell_all(hearing, words, reply, records);
    }
    let (name, words) = order
        .rest
        .trim()
        .split_once(char::is_whitespace)
        .unwrap_or((order.rest.trim(), ""));
    match person(hearing, name).filter(|_| !words.trim().is_empty()) {
        None => {
            let quoted = reply.voice.quote(name);
            reply.say("tell-who", &[("quote", quoted.into())]);
        }
        Some(other) => {
            pass_on(hearing, other, words, reply);
            reply.say("tell-sent", &[("who", other.name.as_str().into())]);
        }
    }
}

/// Passes a dispatcher's words on to all the crew of the day, and says who they went to and who is not among them.
fn tell_all(hearing: &Hearing<'_>, words: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    if hearing.member.role < Role::Dispatcher {
        reply
            .findings
            .push(not_allowed(CommandName::Tell, Role::Dispatcher));
        reply.say("tell-all-instead", &[]);
        records.push(refused(hearing));
        return;
    }
    if words.trim().is_empty() {
        return reply.say("tell-all-what", &[]);
    }
    let crew = hearing.fleet.crew.values();
    let others = crew.filter(|member| member.id != hearing.member.id);
    let (today, off): (Vec<&CrewMember>, Vec<&CrewMember>) =
        others.partition(|member| works_today(hearing, member));
    let names = |members: &[&CrewMember]| {
        let names: Vec<String> = members.iter().map(|member| member.name.clone()).collect();
        reply.voice.all_of(&names)
    };
    let (told, left) = (names(&today), names(&off));
    for member in &today {
        pass_on(hearing, member, words, reply);
    }
    match today.is_empty() {
        true => reply.say("tell-all-nobody", &[]),
        false => reply.say("tell-sent", &[("who", told.into())]),
    }
    if !off.is_empty() {
        reply.say("tell-all-off", &[("who", left.into())]);
    }
}

/// Tells whether somebody is of the day's crew: named in a job that is on or near, or heard of within a day. A job that
/// names nobody may be anyone's.
fn works_today(hearing: &Hearing<'_>, member: &CrewMember) -> bool {
    let now = hearing.now;
    let mut jobs = hearing.fleet.jobs.iter();
    let on_a_job = jobs.any(|job| {
        let near = job.from - BEFORE_DOORS <= now && now <= job.to;
        near && (job.crew.is_empty() || job.crew.contains(&member.id))
    });
    let sent = hearing.desk.book.sent(&member.id);
    let heard_of = || {
        sent.iter()
            .any(|sent| sent.at <= now && now - sent.at <= TimeDelta::hours(24))
    };
    on_a_job || member.role == Role::Dispatcher || heard_of()
}

fn pass_on(hearing: &Hearing<'_>, to: &CrewMember, words: &str, reply: &mut Reply<'_>) {
    let voice = hearing
        .desk
        .voice_for(to, None, &hearing.fleet, hearing.now);
    let who = voice.person(&hearing.member.id).into_owned();
    let args = [("who", Arg::from(who)), ("quote", words.trim().into())];
    let text = voice.say("tell-from", &args);
    reply.others.push(Outgoing::to(&to.id, text));
}

/// Finds a person of the crew by id or name.
pub(super) fn person<'a>(hearing: &'a Hearing<'_>, name: &str) -> Option<&'a CrewMember> {
    let name = name.trim_end_matches([':', ',']).to_lowercase();
    hearing
        .fleet
        .crew
        .values()
        .find(|member| member.id.to_lowercase() == name || member.name.to_lowercase() == name)
}
