//! Words for all drivers, all techs, the dispatchers, or for whoever is with a trailer or at a site.

use chrono::TimeDelta;

use super::{pass_on, refuse_many, sent, without_that, works_today};
use crate::book::Record;
use crate::desk::answer::Reply;
use crate::desk::others::last_there;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::settle;
use crate::desk::sites;
use crate::fleet::{CrewMember, Role};
use crate::heard::UnitName;
use crate::reply::Arg;

/// Whom words are for that are sent to all of one kind, or to whoever is with a trailer.
pub(super) struct Group<'a> {
    members: Vec<&'a CrewMember>,
    /// Whether everybody may send to them: those with a trailer, and the dispatchers.
    open: bool,
    /// The trailer, where they are meant by it.
    unit: Option<UnitName>,
    /// What is said where there is nobody of them, by the key of its text.
    nobody: &'static str,
}

/// Reads to whom of the crew an order sends its words, where it names a kind of them or a trailer.
pub(super) fn some_of<'a, 't>(
    hearing: &'a Hearing<'_>,
    text: &'t str,
) -> Option<(Group<'a>, &'t str)> {
    let phrases = &hearing.desk.phrases;
    let kinds = [
        ("drivers", Role::Driver),
        ("techs", Role::Tech),
        ("dispatchers", Role::Dispatcher),
    ];
    for (list, role) in kinds {
        if let Some(words) = phrases.after("tell", list, text) {
            // "tell drivers and techs"
            let mut roles = vec![role];
            let mut words = words;
            while let Some((role, rest)) = kinds.iter().find_map(|(list, role)| {
                let next = phrases.after("tell", "and", words)?;
                Some((*role, phrases.after("tell", list, next)?))
            }) {
                roles.push(role);
                words = rest;
            }
            let crew = hearing.fleet.crew.values();
            let of_it = |member: &&CrewMember| {
                let today = member.role == Role::Dispatcher || works_today(hearing, member);
                roles.contains(&member.role) && member.id != hearing.member.id && today
            };
            let some = Group {
                members: crew.filter(of_it).collect(),
                open: roles == [Role::Dispatcher],
                unit: None,
                nobody: match (role, hearing.member.role) {
                    (Role::Dispatcher, Role::Dispatcher) => "tell-only-you",
                    _ => "tell-all-nobody",
                },
            };
            return Some((some, words));
        }
    }
    let rest = phrases.after("tell", "with", text)?;
    if let Some((members, words)) = at_a_site(hearing, rest) {
        let some = Group {
            members,
            open: true,
            unit: None,
            nobody: "tell-site-nobody",
        };
        return Some((some, words));
    }
    let (units, words) = units_named(hearing, rest);
    let mut members: Vec<&CrewMember> = Vec::new();
    for member in units.iter().flat_map(|unit| with(hearing, unit)) {
        if !members.contains(&member) {
            members.push(member);
        }
    }
    let some = Group {
        members,
        open: true,
        unit: Some(units.first()?.clone()),
        nobody: "tell-unit-nobody",
    };
    Some((some, words))
}

/// Takes the trailers off the front of an order's words: "12 and 23 to close at ten".
fn units_named<'t>(hearing: &Hearing<'_>, text: &'t str) -> (Vec<UnitName>, &'t str) {
    let phrases = &hearing.desk.phrases;
    let mut units = Vec::new();
    let mut words = text;
    loop {
        let rest = words.trim_start_matches([' ', ',', '/', '&']);
        let rest = match units.is_empty() {
            true => rest,
            false => phrases.after("tell", "and", rest).unwrap_or(rest),
        };
        let rest = phrases.after("tell", "article", rest).unwrap_or(rest);
        let end = rest.find(|c: char| c.is_whitespace() || ",:/&".contains(c));
        let (name, behind) = rest.split_at(end.unwrap_or(rest.len()));
        let name = UnitName::new(name.trim_start_matches('#'));
        let Some(unit) = settle::known(&hearing.fleet, &name) else {
            return (units, words.trim_start_matches([' ', ',', ':']));
        };
        units.push(unit.clone());
        words = behind;
        if words.starts_with(':') {
            return (units, words.trim_start_matches([' ', ',', ':']));
        }
    }
}

/// Reads the site that words begin with, by its name or the first words of it: who is with its trailers, and the rest.
fn at_a_site<'a, 't>(
    hearing: &'a Hearing<'_>,
    text: &'t str,
) -> Option<(Vec<&'a CrewMember>, &'t str)> {
    let folded = format!("{} ", plain(text));
    let begins = |spelling: &str| folded.starts_with(&format!("{spelling} "));
    let (site, spelling) = sites::named(&hearing.fleet, begins).next()?;
    let words = spelling.split(' ').count();
    let mut rest = text;
    for _ in 0..words {
        rest = rest.trim_start();
        let end = rest.find(|c: char| c.is_whitespace() || ",:".contains(c));
        rest = &rest[end.unwrap_or(rest.len())..];
    }
    let here = |unit: &&UnitName| {
        let job = hearing.fleet.job_of(unit, hearing.now, None);
        job.is_some_and(|job| job.id.site == site.id)
    };
    let mut members: Vec<&CrewMember> = Vec::new();
    for unit in hearing.fleet.trailers.keys().filter(here) {
        for member in with(hearing, unit) {
            if !members.contains(&member) {
                members.push(member);
            }
        }
    }
    Some((members, rest.trim_start_matches([' ', ',', ':'])))
}

/// Lists who is with a trailer: the crew of its job, who wrote of it last within a day, who is on the way to it.
fn with<'a>(hearing: &'a Hearing<'_>, unit: &UnitName) -> Vec<&'a CrewMember> {
    let now = hearing.now;
    let book = &hearing.desk.book;
    let job = hearing.fleet.job_of(unit, now, None);
    let day = TimeDelta::hours(24);
    let last = last_there(hearing.desk, &hearing.fleet, unit, (now, day));
    let is_there = |member: &&CrewMember| {
        let of_the_job = job.is_some_and(|job| job.crew.contains(&member.id));
        let wrote = last.as_ref() == Some(&member.id);
        let road = book.ahead().road(&member.id, now);
        let comes = road.is_some_and(|road| road.unit.as_ref() == Some(unit));
        member.id != hearing.member.id && (of_the_job || wrote || comes)
    };
    hearing.fleet.crew.values().filter(is_there).collect()
}

pub(super) fn tell_some(
    hearing: &Hearing<'_>,
    some: &Group<'_>,
    words: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if !some.open && hearing.member.role < Role::Dispatcher {
        return refuse_many(hearing, reply, records);
    }
    if some.members.is_empty() {
        let unit = some.unit.as_ref();
        let args: Vec<(&str, Arg<'_>)> = unit
            .map(|unit| ("unit", unit.as_str().into()))
            .into_iter()
            .collect();
        return reply.say(some.nobody, &args);
    }
    let names: Vec<String> = some
        .members
        .iter()
        .map(|member| member.name.clone())
        .collect();
    let names = reply.voice.all_of(&names);
    let words = without_that(hearing, words);
    if words.trim().is_empty() {
        return reply.say("tell-what", &[("who", names.into())]);
    }
    for member in &some.members {
        pass_on(hearing, member, words, reply);
    }
    sent(hearing, names, words, reply);
}
