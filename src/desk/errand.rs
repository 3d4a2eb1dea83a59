//! Tasks in somebody's own words, with the time and the person they name: "task for 12: bring spare hose by 6pm", "remind
//! tobin to bring salt to 12 at 4".

use chrono::{DateTime, TimeDelta, Timelike, Utc};
use chrono_tz::Tz;

use super::answer::Reply;
use super::command;
use super::inbound::Outgoing;
use super::others::called;
use super::phrases::{Phrases, plain};
use super::receive::Hearing;
use super::relay;
use super::when;
use crate::book::{Personal, Record};
use crate::finding::{Level, TaskKind};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Command, CommandName, UnitName};
use crate::reply::Arg;

/// By when work is wanted on a day without an hour.
const DAY_ENDS: &str = "17:00";
/// An hour told without its half of the day is of the night only where that is this near.
const NEAR: TimeDelta = TimeDelta::hours(6);

/// What a message wants done.
#[derive(Debug, PartialEq)]
struct Errand<'t> {
    words: &'t str,
    unit: Option<UnitName>,
    /// Who is to do it, by crew id.
    who: Option<String>,
}

/// Reads a task in somebody's own words as the order it is.
pub(super) fn order(
    phrases: &Phrases,
    fleet: &Fleet,
    member: &CrewMember,
    text: &str,
    now: DateTime<Utc>,
) -> Option<Command> {
    let text = text.trim();
    let errand = read(phrases, fleet, member, text)?;
    // without its time a reminder of somebody is a word passed on
    let reminds = is_a_reminder(phrases, text);
    let others = errand.who.as_ref().is_some_and(|who| *who != member.id);
    let zone = fleet.time_zone;
    if as_need(phrases, fleet, member, text).is_some() {
        return None;
    }
    if reminds && (due(errand.words, now, zone).is_none() || others && member.role < Role::Tech) {
        return None;
    }
    Some(Command {
        name: CommandName::Errand,
        task: None,
        rest: text.to_owned(),
    })
}

/// Reads a pump-out that is opened as a task, "task for 12: pump-out by 6pm", as the need that it is.
pub(super) fn as_need(
    phrases: &Phrases,
    fleet: &Fleet,
    member: &CrewMember,
    text: &str,
) -> Option<String> {
    let text = text.trim();
    let errand = read(phrases, fleet, member, text)?;
    let reminds = is_a_reminder(phrases, text);
    let work = phrases.after("errand", "pump-out", errand.words)?;
    let unit = errand.unit.filter(|_| errand.who.is_none() && !reminds)?;
    Some(format!("need a pump-out on {unit} {}", work.trim()))
}

fn is_a_reminder(phrases: &Phrases, text: &str) -> bool {
    let lists = ["reminds", "reminds-me"];
    let mut opens = lists.iter().map(|list| phrases.after("errand", list, text));
    opens.any(|rest| rest.is_some())
}

fn read<'t>(
    phrases: &Phrases,
    fleet: &Fleet,
    member: &CrewMember,
    text: &'t str,
) -> Option<Errand<'t>> {
    let named = |word: &str| {
        let folded = plain(word);
        match phrases.is("errand", "me", &folded) {
            true => Some(member.id.clone()),
            false => called(fleet.crew.values(), word).map(|other| other.id.clone()),
        }
    };
    let unit_in = |word: &str| {
        let name = UnitName::new(word);
        super::settle::known(fleet, &name).cloned()
    };
    if let Some(rest) = phrases.after("errand", "reminds-me", text) {
        let words = phrases.after("errand", "joins", rest).unwrap_or(rest);
        return errand(phrases, fleet, words, None, Some(member.id.clone()));
    }
    if let Some(rest) = phrases.after("errand", "reminds", text) {
        let (name, rest) = rest.split_once([' ', ','])?;
        let who = named(name)?;
        let rest = rest.trim_start();
        let words = phrases.after("errand", "joins", rest).unwrap_or(rest);
        return errand(phrases, fleet, words, None, Some(who));
    }
    let addressed = phrases.after("errand", "opens-for", text);
    let rest = addressed.or_else(|| phrases.after("errand", "opens", text))?;
    let rest = rest.trim_start();
    // "task: call the county"
    let head = text[..text.len() - rest.len()].trim_end();
    if addressed.is_none() && head.ends_with(':') {
        return errand(phrases, fleet, rest, None, None);
    }
    // "task for tobin on 12: ...", "task: ..."
    if let Some((head, words)) = told_apart(rest) {
        let (mut unit, mut who) = (None, None);
        for word in head.split_whitespace() {
            match (unit_in(word), named(word)) {
                (Some(name), _) if unit.is_none() => unit = Some(name),
                (_, Some(name)) if who.is_none() => who = Some(name),
                _ if phrases.is("errand", "between", word) => {}
                _ => return None,
            }
        }
        return errand(phrases, fleet, words, unit, who);
    }
    // "task for 12 bring spare hose", "new task bring spare hose to 12"
    if addressed.is_some() {
        let rest = phrases.after("errand", "article", rest).unwrap_or(rest);
        let (name, words) = rest.split_once(' ')?;
        let (unit, who) = (unit_in(name), named(name));
        let words = words.trim_start();
        let words = phrases.after("errand", "joins", words).unwrap_or(words);
        let says = unit.is_some() || who.is_some();
        let done = phrases.is("orders", "done", words) || when::names_a_day(words);
        let more = words.split_whitespace().count() > 1 && !done;
        return (says && more).then(|| errand(phrases, fleet, words, unit, who))?;
    }
    let words = phrases.after("errand", "opens-plainly", text)?;
    errand(phrases, fleet, words, None, None).filter(|errand| errand.words.contains(' '))
}

/// Parts what a task is for from its words, at a colon: none of the clock's.
fn told_apart(rest: &str) -> Option<(&str, &str)> {
    let at = rest
        .match_indices([':', ','])
        .map(|(at, _)| at)
        .find(|at| {
            let behind = rest[at + 1..].chars().next();
            !behind.is_some_and(|c| c.is_ascii_digit())
        })?;
    Some((&rest[..at], &rest[at + 1..]))
}

fn errand<'t>(
    phrases: &Phrases,
    fleet: &Fleet,
    words: &'t str,
    unit: Option<UnitName>,
    who: Option<String>,
) -> Option<Errand<'t>> {
    let words = words.trim().trim_matches(['"', ':', '-']).trim();
    let unit = unit.or_else(|| unit_told(phrases, fleet, words));
    let says = words.chars().any(char::is_alphabetic);
    says.then_some(Errand { words, unit, who })
}

/// Finds the one trailer that the words name, behind a word that has one follow: "bring 2 bags to 12".
fn unit_told(phrases: &Phrases, fleet: &Fleet, words: &str) -> Option<UnitName> {
    let clock = when::clock_words(words);
    let folded = plain(words);
    let typed: Vec<&str> = folded.split(' ').collect();
    let mut told: Vec<&UnitName> = typed
        .windows(2)
        .filter(|pair| phrases.is("errand", "before-unit", pair[0]))
        .filter(|pair| !clock.iter().any(|word| word == pair[1]))
        .filter_map(|pair| super::settle::known(fleet, &UnitName::new(pair[1])))
        .collect();
    told.dedup();
    match told.as_slice() {
        [unit] => Some((*unit).clone()),
        _ => None,
    }
}

/// Returns by when the words want it done; none where they name no time.
fn due(words: &str, now: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let folded = plain(words);
    let typed: Vec<&str> = folded.split(' ').collect();
    let phrases = Phrases::built_in();
    let spans = (1..typed.len()).filter_map(|at| {
        let opens = phrases.is("errand", "in", typed[at - 1]);
        let told = when::counted(&typed, at).filter(|_| opens)?;
        Some(TimeDelta::minutes(
            i64::from(told.number) * i64::from(told.minutes_each()?),
        ))
    });
    if let Some(span) = spans.into_iter().next() {
        return Some(now + span);
    }
    if let Some(at) = when::coming(words, now, zone) {
        let night = |at: &DateTime<Utc>| at.with_timezone(&zone).hour() < 6;
        // "at 4" in the evening is of the next afternoon
        let bare = !when::names_a_day(words) && when::clock_in(words).is_none();
        let later = bare && night(&at) && at - now > NEAR && !says_half(words);
        return Some(if later { at + TimeDelta::hours(12) } else { at });
    }
    let day = when::day_ahead(words, now, zone)?;
    when::on(day, DAY_ENDS, zone)
}

fn says_half(words: &str) -> bool {
    let phrases = Phrases::built_in();
    let halves = ["of-the-first-half", "of-the-second-half", "of-the-night"];
    halves
        .into_iter()
        .any(|list| phrases.holds("clock", list, words))
}

/// Opens the task, and tells whoever it is for.
pub(super) fn obey(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let (phrases, fleet, me) = (hearing.desk.phrases, &hearing.fleet, hearing.member);
    let Some(errand) = read(phrases, fleet, me, &order.rest) else {
        return reply.say("errand-how", &[]);
    };
    let other = errand.who.as_ref().filter(|who| **who != me.id);
    if other.is_some() && me.role < Role::Tech {
        let refused = command::not_allowed(CommandName::Errand, Role::Tech);
        reply.findings.push(refused);
        records.push(command::refused(hearing));
        return;
    }
    let words = errand.words;
    let due = due(words, hearing.now, fleet.time_zone);
    let task = reply.board.open_errand(
        (errand.unit.clone(), TaskKind::Other),
        Personal::new(words),
        due,
        errand.who.clone(),
    );
    for caution in hearing.desk.questions.cautions_of(words) {
        let line = format!("  {}", reply.voice.caution(*caution));
        reply.lines.push(line);
    }
    let Some(other) = other.and_then(|who| fleet.crew.get(who)) else {
        return;
    };
    let voice = hearing.desk.voice_for(other, None, fleet, hearing.now);
    let who = voice.person(&me.id).into_owned();
    let args = [
        ("who", Arg::from(who)),
        ("task", voice.task(&task).into()),
        ("id", task.id.into()),
    ];
    let mut text = voice.say("assign-told", &args);
    for caution in hearing.desk.questions.cautions_of(words) {
        text.push_str("\n  ");
        text.push_str(&voice.caution(*caution));
    }
    let letter = Outgoing::to(&other.id, text).of_level(Level::Notice);
    reply.others.push(letter);
    reply.say("tell-sent", &[("who", other.name.as_str().into())]);
    // what they say to it goes back to who gave it
    let head = reply.voice.task_head(&task);
    relay::expect_answer(hearing, other, &head, records);
}
