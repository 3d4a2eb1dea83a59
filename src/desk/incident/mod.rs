//! Incidents: a dispatcher opens one for a trailer, is asked its facts one by one, and releases it with a reason. While
//! it stands, what was said of the trailer around it is kept.

mod clock;
mod own;
mod said;

use chrono_tz::Tz;

use self::clock::{happened, is_bare_clock, is_either_half};
pub(super) use self::said::{Said, said};

use super::answer::Reply;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::phrases::Phrases;
use super::receive::Hearing;
use super::settle;
use crate::book::{Incident, IncidentChange, Personal, Record};
use crate::dialogue::{About, Fact};
use crate::heard::{Command, CommandName, Heard, UnitName};
use crate::reply::{Arg, Voice};

/// How many incidents a list shows.
const MOST_LISTED: usize = 12;

/// Reads an order about incidents that the reader takes for something else.
pub(super) fn order(phrases: &Phrases, text: &str) -> Option<Command> {
    let is_one = phrases.is("incident", "list", text)
        || phrases.after("incident", "release", text).is_some()
        || phrases.after("incident", "export", text).is_some()
        || phrases.after("incident", "new", text).is_some();
    is_one.then(|| Command {
        name: CommandName::Incident,
        task: None,
        rest: text.trim().to_owned(),
    })
}

/// Tells whether a message is an order about incidents.
pub(super) fn is_one(heard: &Heard) -> bool {
    let order = heard.command.as_ref();
    order.is_some_and(|order| order.name == CommandName::Incident)
}

/// Tells whether an order about incidents leaves the fact open that was asked: it lists them, or tells how they are exported.
pub(super) fn only_asks(phrases: &Phrases, heard: &Heard) -> bool {
    let order = heard.command.as_ref().filter(|_| is_one(heard));
    order.is_some_and(|order| {
        let export = phrases.after("incident", "export", &order.rest);
        export.is_some() || phrases.is("incident", "list", &order.rest)
    })
}

/// Takes what was said to a fact, and asks the next.
pub(super) fn take(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let Some(said) = &hearing.fact else { return };
    let (Said::Told(number, _)
    | Said::Danger(number, ..)
    | Said::NotKnown(number, _)
    | Said::NobodyHurt(number)
    | Said::GoOn(number, _)
    | Said::Stop(number)) = *said;
    let Some(incident) = hearing.desk.book.incidents().incident(number) else {
        return;
    };
    let mut incident = incident.clone();
    let unit = incident.hold.unit.clone();
    let mut changes = Vec::new();
    match said {
        Said::Stop(_) => return stopped(number, &incident, reply),
        Said::GoOn(_, about) => {
            reply.asks = Some((**about).clone());
            return;
        }
        Said::NobodyHurt(_) => return ask_next(number, &incident, reply),
        Said::NotKnown(_, fact) => {
            incident.not_known.insert(*fact);
            reply.say("incident-not-known", &[]);
            changes.push(IncidentChange::NotKnown {
                number,
                unit,
                fact: *fact,
            });
        }
        Said::Told(_, fact) | Said::Danger(_, fact, _) => {
            // a bare time tells when it was, whatever was asked
            let asked = match is_bare_clock(hearing.written) {
                true => Fact::When,
                false => *fact,
            };
            let text = hearing.written.trim();
            let mut parts = own::parts(hearing.desk.phrases, text, asked);
            // as it was written, where it is one
            if let [(_, words)] = parts.as_mut_slice() {
                text.clone_into(words);
            }
            let quoted = reply.voice.quote(text);
            reply.say("incident-noted", &[("quote", quoted.into())]);
            for (fact, words) in parts {
                incident.told.insert(fact);
                let happened = (fact == Fact::When)
                    .then(|| happened(&words, hearing.inbound.at, zone(hearing, &unit)))
                    .flatten();
                if let Some(happened) = happened {
                    incident.hold.reach(happened);
                    let (from, to) = (incident.hold.from, incident.hold.to);
                    let [from, to] = [from, to].map(|at| reply.voice.date_and_time(at));
                    reply.say("incident-kept", &[("from", from.into()), ("to", to.into())]);
                }
                let text = Personal::new(words);
                let unit = unit.clone();
                changes.push(IncidentChange::Told {
                    number,
                    unit,
                    fact,
                    text,
                    happened,
                });
            }
        }
    }
    records.extend(changes.into_iter().map(|change| record(hearing, change)));
    // the person comes first: the other facts wait
    match said {
        Said::Danger(..) => {
            let unit = incident.hold.unit.as_str();
            reply.say("incident-later", &[("unit", unit.into())]);
        }
        _ => ask_next(number, &incident, reply),
    }
}

/// Obeys an order about incidents.
pub(super) fn obey(
    hearing: &Hearing<'_>,
    given: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let phrases = &hearing.desk.phrases;
    // a reason that was asked for stands behind the order that waited for it
    let text = match order(phrases, &given.rest) {
        Some(_) => given.rest.trim(),
        None => hearing.written.trim(),
    };
    if let Some(rest) = phrases.after("incident", "export", text) {
        return tell_export(hearing, rest, reply);
    }
    if phrases.is("incident", "list", text) {
        return list(hearing, reply);
    }
    if let Some(rest) = phrases.after("incident", "release", text) {
        return release(hearing, rest, reply, records);
    }
    let new = phrases.after("incident", "new", text);
    let Some(rest) = new.or_else(|| phrases.after("incident", "opens", text)) else {
        return reply.say("incident-how", &[]);
    };
    let Some((name, rest)) = trailer_and_rest(phrases, rest) else {
        return reply.say("incident-how", &[]);
    };
    // no trailer is called so
    if !name.as_str().contains(|c: char| c.is_ascii_digit())
        && settle::known(&hearing.fleet, &name).is_none()
    {
        return reply.say("incident-how", &[]);
    }
    let Some(unit) = settle::known(&hearing.fleet, &name).cloned() else {
        let finding = settle::unknown_unit(&hearing.fleet, &name);
        reply.findings.push(finding);
        return;
    };
    let mut standing = hearing.desk.book.incidents().standing();
    let last = standing.rfind(|(_, incident)| incident.hold.unit == unit);
    match last {
        Some((number, incident)) if new.is_none() => {
            if !rest.is_empty() {
                records.push(record(
                    hearing,
                    IncidentChange::Told {
                        number,
                        unit: unit.clone(),
                        fact: Fact::What,
                        text: Personal::new(rest),
                        happened: None,
                    },
                ));
                reply.say("incident-added", &named(number, incident));
            }
            go_on(number, incident, reply);
        }
        _ => open(hearing, &unit, rest, reply, records),
    }
}

/// Says where an incident is exported: not by chat.
fn tell_export(hearing: &Hearing<'_>, rest: &str, reply: &mut Reply<'_>) {
    let Some((number, _)) = number_in(rest) else {
        return reply.say("incident-export-which", &[]);
    };
    let known = hearing.desk.book.incidents().incident(number).is_some();
    match known {
        true => reply.say("incident-export", &[("id", number.into())]),
        false => reply.say("incident-no-such", &[("id", number.into())]),
    }
}

/// Takes an incident's number off the front of words.
fn number_in(words: &str) -> Option<(u32, &str)> {
    let words = words.trim_start_matches('#');
    let end = words.find(|c: char| !c.is_ascii_digit());
    let (digits, rest) = words.split_at(end.unwrap_or(words.len()));
    Some((digits.parse().ok()?, rest))
}

/// Opens an incident: from here on, what was said of the trailer around it is kept.
fn open(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    words: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let number = hearing.desk.book.incidents().next_number();
    let told = happened(words, hearing.inbound.at, zone(hearing, unit));
    let happened = told.unwrap_or(hearing.inbound.at);
    let mut book = crate::book::Incidents::default();
    let mut change = |change: IncidentChange| {
        let record = record(hearing, change);
        if let Record::Incident { at, by, change } = &record {
            book.apply(*at, by, change);
        }
        records.push(record);
    };
    change(IncidentChange::Opened {
        number,
        unit: unit.clone(),
        happened,
    });
    let mut tell = |fact, text: String| {
        change(IncidentChange::Told {
            number,
            unit: unit.clone(),
            fact,
            text: Personal::new(text),
            happened: None,
        });
    };
    if !words.is_empty() {
        tell(Fact::What, words.to_owned());
    }
    // "4:30" can be either half of the day: then it is asked
    if let Some(at) = told.filter(|_| !is_either_half(words)) {
        tell(Fact::When, reply.voice.time(at));
    }
    let Some(incident) = book.incident(number).cloned() else {
        return;
    };
    let numbered = |voice: &Voice<'_>, key: &str| {
        voice.say(
            key,
            &[
                ("id", number.into()),
                ("unit", unit.as_str().into()),
                ("from", voice.date_and_time(incident.hold.from).into()),
                ("to", voice.date_and_time(incident.hold.to).into()),
                ("who", hearing.member.name.as_str().into()),
            ],
        )
    };
    reply.lines.push(numbered(&reply.voice, "incident-opened"));
    tell_others(hearing, reply, |voice| {
        numbered(voice, "incident-opened-by")
    });
    // the facts wait until it is known that nobody needs help
    let unit = unit.clone();
    reply.asks = Some(About::HurtNow { number, unit });
}

fn go_on(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    if incident.next().is_none() {
        reply.say("incident-complete", &named(number, incident));
        return;
    }
    reply.say("incident-goes-on", &named(number, incident));
    ask_next(number, incident, reply);
}

fn stopped(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    reply.say("incident-stopped", &named(number, incident));
}

/// Asks the next fact, or says that all were asked.
fn ask_next(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    match incident.next() {
        Some(fact) => reply.asks = Some(About::IncidentFact { number, fact }),
        None => reply.say("incident-complete", &named(number, incident)),
    }
}

fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut listed = 0;
    for (number, incident) in hearing
        .desk
        .book
        .incidents()
        .standing()
        .rev()
        .take(MOST_LISTED)
    {
        reply.say("incident-line", &named(number, incident));
        listed += 1;
    }
    if listed == 0 {
        reply.say("incident-none", &[]);
    }
    reply.say("incident-how", &[]);
}

/// Tells whether a message only gives the reason that was asked for: it is said back before what is for good.
fn told_alone(hearing: &Hearing<'_>, number: u32) -> bool {
    let talk = hearing.desk.book.talk(&hearing.member.id);
    let asked = talk.and_then(|talk| talk.question_at(hearing.inbound.at));
    let why = About::ReleaseWhy { number };
    asked.is_some_and(|asked| asked.about == why)
        && order(hearing.desk.phrases, hearing.written).is_none()
}

/// Lets go what an incident holds.
fn release(hearing: &Hearing<'_>, rest: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let Some((number, reason)) = number_in(rest) else {
        return reply.say("incident-release-how", &[]);
    };
    let reason = reason.trim_matches(|c: char| c.is_whitespace() || ",:;.-".contains(c));
    let incident = hearing.desk.book.incidents().incident(number);
    let Some(incident) = incident.filter(|incident| incident.released.is_none()) else {
        return reply.say("incident-no-such", &[("id", number.into())]);
    };
    if told_alone(hearing, number) {
        let text = reason.to_owned();
        reply.asks = Some(About::ReleaseSure { number, text });
        return;
    }
    if reason.is_empty() {
        reply.asks = Some(About::ReleaseWhy { number });
        return reply.say("incident-release-why", &named(number, incident));
    }
    records.push(record(
        hearing,
        IncidentChange::Released {
            number,
            unit: incident.hold.unit.clone(),
            reason: Personal::new(reason),
        },
    ));
    reply.say("incident-released", &named(number, incident));
    let (unit, who) = (&incident.hold.unit, hearing.member.name.as_str());
    tell_others(hearing, reply, |voice| {
        let args = [
            ("id", Arg::from(number)),
            ("unit", unit.as_str().into()),
            ("who", who.into()),
            ("quote", voice.quote(reason).into()),
        ];
        voice.say("incident-released-by", &args)
    });
}

fn tell_others(hearing: &Hearing<'_>, reply: &mut Reply<'_>, words: impl Fn(&Voice<'_>) -> String) {
    let letters = other_dispatchers(hearing).map(|(to, voice)| Outgoing::to(&to.id, words(&voice)));
    reply.others.extend(letters);
}

fn named(number: u32, incident: &Incident) -> [(&'static str, Arg<'_>); 4] {
    [
        ("id", number.into()),
        ("unit", incident.hold.unit.as_str().into()),
        ("time", incident.opened.into()),
        ("count", incident.open().into()),
    ]
}

fn record(hearing: &Hearing<'_>, change: IncidentChange) -> Record {
    Record::Incident {
        at: hearing.now,
        by: hearing.member.id.clone(),
        change,
    }
}

/// Takes the trailer off the front of an order's words: `14 man slipped`, `on unit 14: man slipped`.
fn trailer_and_rest<'t>(phrases: &Phrases, mut text: &'t str) -> Option<(UnitName, &'t str)> {
    while let Some(rest) = phrases.after("incident", "before", text) {
        text = rest;
    }
    let text = text.trim_start_matches('#');
    let inside = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '.');
    let end = text.find(|c: char| !inside(c)).unwrap_or(text.len());
    let name = text[..end].trim_end_matches('.');
    let rest = text[end..].trim_start_matches(|c: char| c.is_whitespace() || ",:;-–".contains(c));
    (!name.is_empty()).then(|| (UnitName::new(name), rest.trim_end()))
}

fn zone(hearing: &Hearing<'_>, unit: &UnitName) -> Tz {
    hearing.fleet.zone_at(Some(unit), hearing.inbound.at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trailer_stands_first() {
        let phrases = Phrases::built_in();
        let parted = |text| {
            let (unit, rest) = trailer_and_rest(phrases, text)?;
            Some((unit.to_string(), rest.to_owned()))
        };
        let found = |unit: &str, rest: &str| Some((unit.to_owned(), rest.to_owned()));
        assert_eq!(parted("14 man slipped"), found("14", "man slipped"));
        assert_eq!(
            parted("on unit 14: man slipped."),
            found("14", "man slipped.")
        );
        assert_eq!(parted("en la #14"), found("14", ""));
        assert_eq!(parted(""), None);
    }
}
