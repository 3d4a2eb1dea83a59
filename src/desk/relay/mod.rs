//! Words passed on to somebody of the crew, or by a dispatcher to all the crew of the day.

mod already;
mod group;

use chrono::{DateTime, TimeDelta, Utc};

use self::group::{some_of, tell_some};

use super::answer::{self, Reply};
use super::assign;
use super::command::{not_allowed, refused};
use super::hazard::stands;
use super::inbound::Outgoing;
use super::lone;
use super::others::called;
use super::phrases::{Phrases, is_marked, plain};
use super::receive::{Hearing, Texted, asked_by_somebody, is_level};
use crate::book::Record;
use crate::dialogue::Passed;
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Command, CommandName, Entry, Event, Heard, PlanKind};
use crate::reply::Arg;

/// From so long before the doors a job's crew is of the day.
const BEFORE_DOORS: TimeDelta = TimeDelta::hours(24);

/// An "ok" answers words that were passed on within this long.
const ANSWER_LASTS: TimeDelta = TimeDelta::hours(2);

/// A name this many letters off may be meant.
const NEAR: usize = 2;

/// Reads words for all the crew, or for somebody of it, as the order they are: what they say is theirs, and no report.
pub(super) fn order(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<Command> {
    let text = text.trim_start();
    let command = |rest: String| Command {
        name: CommandName::Tell,
        task: None,
        rest,
    };
    let is_named = |rest: &str| {
        let end = rest.find(|c: char| c.is_whitespace() || ",:/&".contains(c));
        let name = &rest[..end.unwrap_or(rest.len())];
        called(fleet.crew.values(), name).is_some()
    };
    if let Some(rest) = phrases.after("tell", "let", text)
        && is_named(rest)
        && let Some((names, words)) = phrases.parted("tell", "know", rest)
    {
        return Some(command(format!("{names}: {words}")));
    }
    let rest = phrases.after("tell", "opens", text)?;
    let some = ["all", "drivers", "techs", "dispatchers", "with"];
    let some = some
        .into_iter()
        .any(|list| phrases.after("tell", list, rest).is_some());
    // "ask lupe every 30 min" sets a clock, and "text me" wants something of the bot
    let clock = lone::wants_a_clock(phrases, text);
    ((some || is_named(rest)) && !clock).then(|| command(rest.to_owned()))
}

/// Reads "send abel to 12" and "abel, go to 12" as words for that person, where they report nothing: the whole message is
/// passed on.
pub(super) fn sent_somewhere(came: &Texted<'_>, fleet: &Fleet, role: Role) -> Option<Command> {
    let phrases = came.desk.phrases;
    let reports = came.heard.entries.iter().any(|entry| !entry.is_empty());
    let asks = came.heard.ask.is_some() || is_marked(came.text);
    if role != Role::Dispatcher || reports || asks || came.heard.command.is_some() {
        return None;
    }
    let text = came.text.trim();
    let sends = phrases.after("tell", "sends", text);
    let (name, rest) = sends.unwrap_or(text).split_once([' ', ','])?;
    let member = called(fleet.crew.values(), name)?;
    let goes = phrases.after("tell", "goes", rest.trim_start()).is_some();
    (goes || sends.is_some()).then(|| Command {
        name: CommandName::Tell,
        task: None,
        rest: format!("{}: {text}", member.id),
    })
}

/// Returns a text without the name of somebody of the crew, or a word for the dispatcher, that it opens with.
pub(super) fn words_of<'t>(phrases: &Phrases, fleet: &Fleet, text: &'t str) -> &'t str {
    let text = text.trim();
    let to_all = phrases.after("tell", "dispatchers", text);
    let named = || {
        let (name, rest) = text.split_once([' ', ',', ':'])?;
        called(fleet.crew.values(), name).map(|_| rest)
    };
    let Some(rest) = to_all.or_else(named) else {
        return text;
    };
    let rest = rest.trim_start_matches([' ', ',', ':', '-']);
    // "nadia, juno: ..."
    let rest = match rest.len() < text.len() {
        true if !rest.is_empty() => words_of(phrases, fleet, rest),
        _ => rest,
    };
    phrases.after("tell", "that", rest).unwrap_or(rest)
}

/// Reads what one of the crew writes to the dispatcher rather than to the bot as words for them, where it reports and asks
/// nothing: "nadia call me", "going home sick", "stuck in the snow at the gate".
pub(super) fn for_the_dispatcher(came: &Texted<'_>, fleet: &Fleet, role: Role) -> Option<Command> {
    let phrases = came.desk.phrases;
    let heard = came.heard;
    // "me voy a casa" is of the sender, and no trailer leaves
    let of_me = phrases.holds("tell", "of-me", came.text);
    let left = |entry: &Entry| entry.unit.is_none() && entry.events == [Event::Left];
    let says_more = heard
        .entries
        .iter()
        .any(|entry| !(entry.is_empty() || of_me && left(entry)))
        || heard.command.is_some()
        || heard.plans.iter().any(|plan| {
            !matches!(
                plan.kind,
                PlanKind::Other | PlanKind::Well | PlanKind::OnTheRoad
            )
        });
    // who works alone is looked after by their clock
    let alone = came.desk.book.ahead().alone(came.who).is_some();
    if role == Role::Dispatcher || says_more || alone {
        return None;
    }
    let text = came.text.trim();
    let command = |rest: String| {
        Some(Command {
            name: CommandName::Tell,
            task: None,
            rest,
        })
    };
    let asks = heard.ask.is_some() || is_marked(text);
    let of_the_bot = |rest: &str| asks || answer::sounds_like_a_question(rest);
    if let Some((name, rest)) = text.split_once([' ', ',', ':'])
        && let Some(member) = called(fleet.crew.values(), name)
        && member.role == Role::Dispatcher
    {
        let rest = rest.trim_start_matches([' ', ',', ':', '-']);
        let wants = phrases.after("tell", "wants", rest).is_some();
        let plain = !of_the_bot(rest)
            && !stands::is_told_in(rest)
            && heard.unclear.is_empty()
            && heard.named.is_empty();
        if wants || plain && heard.answer.is_none() && rest.split_whitespace().count() > 1 {
            return command(format!("{}: {rest}", member.id));
        }
    }
    let tells = of_me || phrases.is("tell", "wants", text);
    let mut dispatchers = fleet.crew.values();
    let first = dispatchers.find(|member| member.role == Role::Dispatcher)?;
    // what can hurt somebody, or is of a trailer, is told as such
    let other = !heard.named.is_empty() || stands::is_told_in(text);
    if asks || !tells || other || !heard.unclear.is_empty() {
        return None;
    }
    let mut all: Vec<&str> = vec![&first.id];
    all.extend(
        dispatchers
            .filter(|m| m.role == Role::Dispatcher)
            .map(|m| m.id.as_str()),
    );
    command(format!("{}: {text}", all.join(", ")))
}

/// Passes a message on: to one person, or to all who are named before the words.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let phrases = hearing.desk.phrases;
    let kinds = ["all", "drivers", "techs", "with"].into_iter();
    let mut behind = kinds.filter_map(|list| phrases.after("tell", list, order.rest.trim()));
    if behind.any(|rest| phrases.after("tell", "except", rest).is_some()) {
        return reply.say("tell-except", &[]);
    }
    // "all drivers" are some of all
    if let Some((members, words)) = some_of(hearing, order.rest.trim()) {
        return tell_some(hearing, &members, words, reply, records);
    }
    if let Some(words) = hearing.desk.phrases.after("tell", "all", order.rest.trim()) {
        return tell_all(hearing, words, reply, records);
    }
    let (people, words) = addressed(hearing, order.rest.trim());
    let mut known = Vec::new();
    for name in &people {
        match person(hearing, name) {
            Some(other) if !known.contains(&other) => known.push(other),
            Some(_) => {}
            // to some of those who are named and not to others would be no receipt
            None => return unknown(hearing, name, "tell-who", reply),
        }
    }
    if words.trim().is_empty() {
        let names: Vec<String> = known.iter().map(|other| other.name.clone()).collect();
        let names = reply.voice.all_of(&names);
        return reply.say("tell-what", &[("who", names.into())]);
    }
    for other in &known {
        pass_on(hearing, other, words, reply);
        expect_answer(hearing, other, words, records);
    }
    let names: Vec<String> = known.iter().map(|other| other.name.clone()).collect();
    let names = reply.voice.all_of(&names);
    sent(hearing, names, words, reply);
    let phrases = &hearing.desk.phrases;
    if phrases.after("tell", "remind", hearing.text).is_some() {
        reply.say("tell-at-once", &[]);
    }
}

/// Notes that an answer to words goes back to who had them passed on.
pub(super) fn expect_answer(
    hearing: &Hearing<'_>,
    to: &CrewMember,
    words: &str,
    records: &mut Vec<Record>,
) {
    if to.id == hearing.member.id {
        return;
    }
    let mut talk = hearing.desk.book.talk(&to.id).cloned().unwrap_or_default();
    talk.passed = Some(Passed {
        by: hearing.member.id.clone(),
        at: hearing.now,
        words: words.trim().to_owned(),
    });
    records.push(Record::Talk {
        who: to.id.clone(),
        talk: Box::new(talk),
    });
}

/// Returns the words that were passed on to the sender lately, where nothing that waits for an answer was asked since.
pub(super) fn newest<'h>(hearing: &'h Hearing<'_>) -> Option<&'h Passed> {
    let (passed, asked) = lately(hearing)?;
    Some(passed).filter(|passed| asked.is_none_or(|asked| asked < passed.at))
}

/// Returns the words that were passed on to the sender lately, and when what waits for an answer was asked.
fn lately<'h>(hearing: &'h Hearing<'_>) -> Option<(&'h Passed, Option<DateTime<Utc>>)> {
    let at = hearing.inbound.at;
    let talk = &hearing.talk;
    let passed = talk.passed.as_ref()?;
    let lately = passed.at <= at && at - passed.at <= ANSWER_LASTS;
    let question = talk.question_at(at).map(|question| question.asked);
    let checks = talk.checks.iter().map(|check| check.asked);
    let round = talk.round.iter().map(|round| round.asked);
    let asked = checks.chain(round).chain(question).max();
    lately.then_some((passed, asked))
}

/// Takes "ok" and the like for the answer to words that were passed on lately, where nothing else waits for one.
pub(super) fn receipt(hearing: &mut Hearing<'_>) -> Option<Passed> {
    let (_, asked) = lately(hearing)?;
    // "copy", "can't" answer the words that came after the step that was asked; a yes or a no is the step's
    let phrases = &hearing.desk.phrases;
    let refuses = assign::says_no(phrases, hearing.text);
    let newest =
        newest(hearing).is_some() && (refuses || phrases.is("tell", "copies", hearing.text));
    let waits = asked.is_some() && !newest;
    let alone = hearing
        .desk
        .book
        .ahead()
        .alone(&hearing.member.id)
        .is_some();
    let mut alarms = hearing.desk.book.alarms().values();
    let alarmed =
        hearing.member.role == Role::Dispatcher && alarms.any(|alarm| alarm.acknowledged.is_none());
    // a level that was asked for is passed on, and logged as well
    let level = is_level(phrases, hearing.written)
        && asked_by_somebody(phrases, &hearing.fleet, &hearing.talk, hearing.inbound.at).is_some();
    let says = level || refuses || phrases.is("tell", "receipt", hearing.text);
    if !says || waits || alone || alarmed {
        return None;
    }
    if level {
        return hearing.talk.passed.take();
    }
    hearing.heard = Heard {
        language: hearing.heard.language,
        ..Heard::default()
    };
    hearing.talk.passed.take()
}

/// Hands the answer on to whoever had the words passed on.
pub(super) fn acknowledge(hearing: &Hearing<'_>, passed: &Passed, reply: &mut Reply<'_>) {
    let Some(member) = hearing.fleet.crew.get(&passed.by) else {
        return;
    };
    let voice = hearing
        .desk
        .voice_for(member, None, &hearing.fleet, hearing.now);
    let args = [
        ("who", Arg::from(hearing.member.name.as_str())),
        ("quote", voice.quote(&passed.words).into()),
        ("words", voice.quote(hearing.written.trim()).into()),
    ];
    let text = voice.say("tell-answered", &args);
    reply.others.push(Outgoing::to(&member.id, text));
    reply.say("tell-sent", &[("who", member.name.as_str().into())]);
}

/// Parts the names that an order begins with from the words to pass on: "wren and juno the gate is locked".
fn addressed<'t>(hearing: &Hearing<'_>, text: &'t str) -> (Vec<&'t str>, &'t str) {
    let phrases = &hearing.desk.phrases;
    let next = |text: &'t str| {
        let end = text.find(|c: char| c.is_whitespace() || ",/&".contains(c));
        let (name, rest) = text.split_at(end.unwrap_or(text.len()));
        (name, rest)
    };
    let (name, mut rest) = next(text);
    let mut people = vec![name.trim_end_matches(':')];
    loop {
        let joined = phrases.after("tell", "and", rest.trim_start_matches([' ', '&', '/']));
        let listed = || {
            let listed = rest.trim_start().starts_with([',', '/', '&']);
            listed.then(|| rest.trim_start_matches([' ', ',', '/', '&']))
        };
        let Some(more) = joined.or_else(listed).filter(|_| !name.ends_with(':')) else {
            break;
        };
        let (name, behind) = next(more);
        // behind "and" somebody is meant, behind a comma only who is known
        if joined.is_none() && person(hearing, name).is_none() || name.is_empty() {
            break;
        }
        people.push(name.trim_end_matches(':'));
        rest = behind;
    }
    let words = rest.trim_start_matches([' ', ',', ':', '/', '&']);
    (people, without_that(hearing, words))
}

/// Returns words to pass on without what joins them to the order: "que" opens a question where somebody is asked.
fn without_that<'t>(hearing: &Hearing<'_>, words: &'t str) -> &'t str {
    let phrases = &hearing.desk.phrases;
    let list = match phrases.after("tell", "asking", hearing.text.trim_start()) {
        Some(_) => "that-asked",
        None => "that",
    };
    phrases.after("tell", list, words).unwrap_or(words)
}

/// Says that nobody is called so, and who may be meant.
pub(super) fn unknown(hearing: &Hearing<'_>, name: &str, key: &str, reply: &mut Reply<'_>) {
    if let Some(out) = called(hearing.desk.book.people().out(), name) {
        return reply.say("person-is-out", &[("who", out.name.as_str().into())]);
    }
    let quoted = reply.voice.quote(name);
    reply.say(key, &[("quote", quoted.into())]);
    let near = nearest(hearing, name);
    if !near.is_empty() {
        let names = reply.voice.one_of(&near);
        reply.say("tell-who-near", &[("names", names.into())]);
    }
}

/// Returns the names of the crew that are nearest to one that nobody has.
fn nearest(hearing: &Hearing<'_>, name: &str) -> Vec<String> {
    let name = plain(name);
    let mut near: Vec<(usize, &str)> = hearing
        .fleet
        .crew
        .values()
        .map(|member| {
            let far = strsim::damerau_levenshtein(&plain(&member.name), &name);
            (far, member.name.as_str())
        })
        .filter(|(far, _)| *far <= NEAR)
        .collect();
    near.sort_unstable();
    near.truncate(2);
    near.into_iter().map(|(_, name)| name.to_owned()).collect()
}

/// Refuses words to many people, which are a dispatcher's.
fn refuse_many(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let finding = not_allowed(CommandName::Tell, Role::Dispatcher);
    reply.findings.push(finding);
    reply.say("tell-all-instead", &[]);
    records.push(refused(hearing));
}

/// Passes a dispatcher's words on to all the crew of the day, and says who they went to and who is not among them.
fn tell_all(hearing: &Hearing<'_>, words: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    if hearing.member.role < Role::Dispatcher {
        return refuse_many(hearing, reply, records);
    }
    let words = without_that(hearing, words);
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
        false => sent(hearing, told, words, reply),
    }
    if !off.is_empty() {
        reply.say("tell-all-off", &[("who", left.into())]);
    }
}

/// Tells whether somebody is of the day's crew: named in a job that is on or near, or heard of within a day. A job that
/// names nobody may be anyone's.
fn works_today(hearing: &Hearing<'_>, member: &CrewMember) -> bool {
    let now = hearing.now;
    let mut jobs = hearing.fleet.jobs_between(now, now + BEFORE_DOORS);
    let on_a_job = jobs.any(|job| job.crew.is_empty() || job.crew.contains(&member.id));
    let sent = hearing.desk.book.sent(&member.id);
    let heard_of = || {
        sent.iter()
            .any(|sent| sent.at <= now && now - sent.at <= TimeDelta::hours(24))
    };
    on_a_job || member.role == Role::Dispatcher || heard_of()
}

/// Says to whom words went, with what is to be minded of them.
fn sent(hearing: &Hearing<'_>, names: String, words: &str, reply: &mut Reply<'_>) {
    reply.say("tell-sent", &[("who", names.into())]);
    already::tell(hearing, words, reply);
    for caution in hearing.desk.questions.cautions_of(words) {
        let line = format!("  {}", reply.voice.caution(*caution));
        reply.lines.push(line);
    }
}

fn pass_on(hearing: &Hearing<'_>, to: &CrewMember, words: &str, reply: &mut Reply<'_>) {
    let voice = hearing
        .desk
        .voice_for(to, None, &hearing.fleet, hearing.now);
    let who = voice.person(&hearing.member.id).into_owned();
    let args = [("who", Arg::from(who)), ("quote", words.trim().into())];
    let asks = hearing
        .desk
        .phrases
        .after("tell", "asking", hearing.text.trim_start());
    let key = match asks {
        Some(_) => "tell-asks",
        None => "tell-from",
    };
    let mut text = voice.say(key, &args);
    // words that would have somebody hurt do not go out without what is to be minded
    for caution in hearing.desk.questions.cautions_of(words) {
        text.push_str("\n  ");
        text.push_str(&voice.caution(*caution));
    }
    reply.others.push(Outgoing::to(&to.id, text));
}

/// Finds a person of the crew by id or name.
pub(super) fn person<'a>(hearing: &'a Hearing<'_>, name: &str) -> Option<&'a CrewMember> {
    called(hearing.fleet.crew.values(), name)
}
