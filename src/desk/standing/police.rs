//! Orders of fire and police that shut a trailer, that somebody opens all the same, and that are lifted; who hears of them.

use chrono::TimeDelta;

use super::decided::decided_on;
use crate::book::{Record, Stage, TakesBack};
use crate::desk::answer::Reply;
use crate::desk::inbound::Outgoing;
use crate::desk::others::{last_there, other_dispatchers};
use crate::desk::receive::Hearing;
use crate::desk::settle::{self, Settled};
use crate::finding::Level;
use crate::heard::{Ask, Event, UnitName};
use crate::reply::{Arg, Voice};

/// Who wrote of a trailer within this long is taken to be there.
const THERE: TimeDelta = TimeDelta::hours(12);

/// Takes a trailer for shut that fire or police order shut: it is obeyed. A road that is closed shuts none.
pub(in crate::desk) fn shut_by_order(hearing: &mut Hearing<'_>, settled: &mut Settled) {
    let says = |list| hearing.desk.answers.says("order", list, hearing.text);
    if says("who") && says("road") {
        let opens = |entry: &mut crate::heard::Entry| {
            entry.events.retain(|event| *event != Event::Closed);
        };
        settled.amend_all(|_, entry| opens(entry));
        settled.homeless.iter_mut().for_each(opens);
        settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
        return;
    }
    let command = hearing.heard.command.is_some();
    if command || !says("closes") || !hearing.desk.answers.tells_of_an_order(hearing.text) {
        return;
    }
    let Some(unit) = unit_of(hearing, settled) else {
        return;
    };
    // "close 12" is no task that is done
    if matches!(hearing.heard.ask, Some(Ask::Done { .. })) {
        hearing.heard.ask = None;
    }
    let kept = hearing.desk.book.unit(&unit);
    let open = kept.is_some_and(|kept| kept.state().stage() == Stage::InService);
    let entry = settled.reports.iter().find(|(of, ..)| *of == unit);
    let told = entry.is_some_and(|(.., entry)| entry.events.contains(&Event::Closed));
    if open && !told {
        let at = hearing.inbound.at;
        settled.report_on(&unit, at).events.push(Event::Closed);
    }
}

/// Returns the trailer that a message about an order is of: the one reported on, the one named, the one talked about.
pub(super) fn unit_of(hearing: &Hearing<'_>, settled: &Settled) -> Option<UnitName> {
    let known = |name: &UnitName| settle::known(&hearing.fleet, name).cloned();
    let reported = settled.reports.first().map(|(unit, ..)| unit.clone());
    reported
        .or_else(|| known(hearing.heard.named.first()?))
        .or_else(|| hearing.names().into_iter().next())
        .or_else(|| known(hearing.talk.unit_at(hearing.inbound.at)?))
}

/// Ends an order that fire or police have lifted; and says of a trailer that is opened while one stands that it does.
/// Tells whether the message is of that.
pub(super) fn lifted(
    hearing: &Hearing<'_>,
    settled: &Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    let says = |list| hearing.desk.answers.says("order", list, hearing.text);
    let Some(unit) = unit_of(hearing, settled) else {
        return false;
    };
    let Some(standing) = decided_on(hearing, &unit).filter(|standing| standing.ordered) else {
        return false;
    };
    let quote = standing.reason.text().to_owned();
    let key = if says("lifted") && (says("who") || says("order")) {
        records.push(Record::TakenBack {
            at: hearing.now,
            by: hearing.member.id.clone(),
            what: TakesBack::Override(standing.clone()),
        });
        "order-lifted"
    } else if settled
        .reports
        .iter()
        .any(|(of, _, entry)| *of == unit && entry.events.contains(&Event::InService))
    {
        "order-stands"
    } else {
        return false;
    };
    let quoted = reply.voice.quote(&quote);
    let args = [("unit", unit.as_str().into()), ("quote", quoted.into())];
    let line = reply.voice.say(key, &args);
    reply.opening.push(line);
    let told = format!("{key}-told");
    tell(hearing, &unit, reply, |voice, who| {
        let quoted = voice.quote(&quote);
        let args = [
            ("unit", unit.as_str().into()),
            ("who", who.into()),
            ("quote", quoted.into()),
        ];
        voice.say(&told, &args)
    });
    true
}

/// Tells the other dispatchers and whoever is at the trailer.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    reply: &mut Reply<'_>,
    words: impl Fn(&Voice<'_>, &str) -> String,
) {
    let me = &hearing.member.id;
    let mut letters: Vec<Outgoing> = Vec::new();
    let mut write = |to: &str, voice: &Voice<'_>| {
        let who = voice.person(me).into_owned();
        let letter = Outgoing::to(to, words(voice, &who)).of_level(Level::Warning);
        letters.push(letter);
    };
    for (other, voice) in other_dispatchers(hearing) {
        write(&other.id, &voice);
    }
    let (desk, fleet, now) = (hearing.desk, &hearing.fleet, hearing.now);
    let there = last_there(desk, fleet, unit, (now, THERE));
    // where nobody wrote of it, the crew of its job
    let crew = || {
        let job = fleet.job_of(unit, now, None);
        job.map(|job| job.crew.clone()).unwrap_or_default()
    };
    let there = there.map_or_else(crew, |who| vec![who]);
    for who in there.iter().filter(|who| *who != me) {
        if let Some(member) = fleet.crew.get(who) {
            let voice = desk.voice_for(member, None, fleet, now);
            if !letters_to(reply, who) {
                write(who, &voice);
            }
        }
    }
    letters.dedup_by(|a, b| a.to == b.to);
    reply.others.append(&mut letters);
}

fn letters_to(reply: &Reply<'_>, who: &str) -> bool {
    reply.others.iter().any(|letter| letter.to == who)
}

/// Returns what a letter about an order says.
pub(super) fn words(unit: &UnitName, text: &str, voice: &Voice<'_>, who: &str) -> String {
    let args = [
        ("unit", Arg::from(unit.as_str())),
        ("who", who.into()),
        ("quote", voice.quote(text).into()),
    ];
    voice.say("order-told", &args)
}
