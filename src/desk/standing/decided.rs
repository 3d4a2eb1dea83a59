//! Decisions against the advice: a dispatcher's override with its reason, an order by fire or police.

use super::super::answer::Reply;
use super::super::command;
use super::super::inbound::Outgoing;
use super::super::phrases::is_marked;
use super::super::receive::Hearing;
use super::super::settle::{self, Settled};
use super::super::situate::Case;
use super::police;
use super::unit_and_words;
use crate::book::{Override, Personal, Record};
use crate::dialogue::{About, CHECK_LASTS, Talk, Way};
use crate::finding::{Finding, Level};
use crate::fleet::Role;
use crate::heard::{Command, CommandName, Event, UnitName};

/// Logs a dispatcher's decision against the advice, with its reason.
pub(in crate::desk) fn decide(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match unit_and_words(hearing, &order.rest) {
        None => reply.say("override-needs-reason", &[]),
        Some((unit, words)) if gives_no_reason(hearing, &words) => {
            reply.asks = Some(About::OverrideWhy { unit, text: words });
        }
        Some((unit, words)) => log_decision(hearing, &unit, &words, reply, records),
    }
}

/// Tells whether the words of an order only name what it is about, as in "override 12 waste".
fn gives_no_reason(hearing: &Hearing<'_>, words: &str) -> bool {
    let phrases = &hearing.desk.phrases;
    let mut rest = words.trim();
    while let Some(after) = phrases.after("override", "about", rest) {
        rest = after;
    }
    rest.is_empty()
}

/// Takes a dispatcher's decision in their own words: "12 can go anyway, the gate closes".
pub(in crate::desk) fn decide_in_words(
    hearing: &Hearing<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    if hearing.heard.command.is_some()
        || hearing.heard.ask.is_some()
        || is_marked(text)
        || !phrases.holds("override", "says", text)
    {
        return;
    }
    if hearing.member.role != Role::Dispatcher {
        let refused = command::not_allowed(CommandName::Override, Role::Dispatcher);
        reply.findings.push(refused);
        return;
    }
    let names = hearing.names();
    let [unit] = names.as_slice() else {
        reply.say("override-needs-reason", &[]);
        return;
    };
    let by_word = phrases.following("override", "reason", text);
    let reason = by_word.or_else(|| {
        text.split_once([',', ':', ';'])
            .map(|(_, after)| after.trim())
    });
    match reason.filter(|reason| !reason.is_empty()) {
        None => reply.say("override-needs-reason", &[]),
        Some(reason) => log_decision(hearing, unit, reason, reply, records),
    }
}

fn log_decision(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    reason: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let quoted = reply.voice.quote(reason);
    let args = [("unit", unit.as_str().into()), ("quote", quoted.into())];
    reply.say("override-logged", &args);
    let phrases = &hearing.desk.phrases;
    let says = |list| phrases.holds("override", list, reason);
    let key = match says("besides") && !says("towing") {
        true => "override-cautions-short",
        false => "override-cautions",
    };
    reply.say(key, &[]);
    // it is leave to move the trailer: what else is wrong there stands as it did
    let case = hearing.asked_about(unit);
    let stands =
        |finding: &&Finding| finding.id.topic() != "tow" && finding.level >= Level::Warning;
    let findings = case.findings();
    let names: Vec<String> = findings
        .iter()
        .filter(stands)
        .map(|finding| reply.voice.name(finding.id, finding.level))
        .collect();
    if !names.is_empty() {
        let args = [("names", reply.voice.all_of(&names).into())];
        reply.say("override-leaves", &args);
    }
    tell_who_packs_it_up(hearing, unit, reason, reply);
    records.push(decided(hearing, unit, reason, false));
}

/// Tells whoever packs the trailer up that it may go as it is, and what still holds.
fn tell_who_packs_it_up(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    reason: &str,
    reply: &mut Reply<'_>,
) {
    let packs = |talk: &Talk| {
        let round = talk.round.as_ref();
        let round = round.filter(|round| round.way == Way::Leaving && round.unit == *unit);
        round.is_some_and(|round| hearing.now - round.asked <= CHECK_LASTS)
    };
    for (who, _) in hearing.desk.book.talks().filter(|(_, talk)| packs(talk)) {
        let Some(other) = hearing.fleet.crew.get(who) else {
            continue;
        };
        if *who == hearing.member.id {
            continue;
        }
        let voice = hearing
            .desk
            .voice_for(other, None, &hearing.fleet, hearing.now);
        let by = voice.person(&hearing.member.id).into_owned();
        let quote = voice.quote(reason);
        let args = [
            ("unit", unit.as_str().into()),
            ("who", by.into()),
            ("quote", quote.into()),
        ];
        let text = voice.say("override-told", &args);
        reply
            .others
            .push(Outgoing::to(&other.id, text).of_level(Level::Warning));
    }
}

/// Logs an order of fire or police that the message tells of. It is obeyed, and every dispatcher hears of it.
pub(in crate::desk) fn ordered(
    hearing: &Hearing<'_>,
    settled: &Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    // words that are passed on tell of it all the same
    let order = hearing.heard.command.as_ref();
    let other = order.is_some_and(|order| order.name != CommandName::Tell);
    if other || police::lifted(hearing, settled, reply, records) {
        return;
    }
    if !hearing.desk.answers.tells_of_an_order(hearing.text) {
        return;
    }
    let known = |name| settle::known(&hearing.fleet, name).cloned();
    let unit = police::unit_of(hearing, settled).or_else(|| known(last_reported(hearing)?));
    let Some(unit) = unit else {
        reply.say("order-obey", &[]);
        reply.asks = Some(hearing.which_unit());
        return;
    };
    records.push(decided(hearing, &unit, hearing.text, true));
    let line = reply
        .voice
        .say("order-obey-unit", &[("unit", unit.as_str().into())]);
    reply.opening.push(line);
    police::tell(hearing, &unit, reply, |voice, who| {
        police::words(&unit, hearing.text, voice, who)
    });
}

/// Returns the trailer the sender last reported on within a day, where that is one.
fn last_reported<'a>(hearing: &'a Hearing<'_>) -> Option<&'a UnitName> {
    let sent = hearing
        .desk
        .book
        .sent(&hearing.member.id)
        .iter()
        .rfind(|sent| !sent.units.is_empty())?;
    let lately = hearing.inbound.at - sent.at <= chrono::TimeDelta::hours(24);
    sent.units
        .first()
        .filter(|_| lately && sent.units.len() == 1)
}

/// Says beside advice not to tow that somebody decided otherwise.
pub(in crate::desk) fn beside_the_advice(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
) {
    for case in cases {
        let tows = |finding: &Finding| {
            finding.id.topic() == "tow" && finding.unit.as_ref() == Some(&case.unit)
        };
        if !reply.findings.iter().any(tows) {
            continue;
        }
        if is_ordered(hearing, &case.unit) {
            if decided_on(hearing, &case.unit).is_some() {
                let line = reply.voice.word("order-first");
                reply.opening.push(line);
            }
            for finding in &mut reply.findings {
                if finding.unit.as_ref() == Some(&case.unit) {
                    moves_by_order(finding);
                }
            }
        }
        let line = in_force(hearing, &case.unit, &reply.voice);
        reply.lines.extend(line);
    }
}

/// Says what a trailer is to mind that moves by order of fire or police: "do not tow" would be said against the order.
fn moves_by_order(finding: &mut Finding) {
    finding.action = match finding.action.as_ref() {
        "tow-waste-aboard" => "tow-waste-aboard-ordered",
        "tow-waste-aboard-unknown" => "tow-waste-aboard-ordered-unknown",
        "tow-overweight" => "tow-overweight-ordered",
        _ => return,
    }
    .into();
}

/// Tells whether an order of fire or police is in force on a trailer, or this message tells of one.
pub(in crate::desk) fn is_ordered(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let in_force = decided_on(hearing, unit).is_some_and(|decided| decided.ordered);
    in_force || hearing.desk.answers.tells_of_an_order(hearing.text)
}

pub(super) fn decided_on<'a>(hearing: &'a Hearing<'_>, unit: &UnitName) -> Option<&'a Override> {
    let kept = hearing.desk.book.unit(unit);
    let arrived = kept.and_then(|kept| kept.state().when(Event::Arrived));
    let standing = hearing.desk.book.standing();
    standing.in_force(unit, hearing.now, arrived)
}

/// Puts the override in force on a trailer into words: who, when, why.
pub(in crate::desk) fn in_force(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    voice: &crate::reply::Voice<'_>,
) -> Option<String> {
    decided_on(hearing, unit).map(|decided| told(decided, voice))
}

/// Lists the overrides of a trailer, for "why".
pub(in crate::desk) fn overrides(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    for decided in hearing.desk.book.standing().overrides(unit) {
        let line = told(decided, &reply.voice);
        reply.lines.push(line);
    }
}

fn told(decided: &Override, voice: &crate::reply::Voice<'_>) -> String {
    let key = if decided.ordered {
        "override-ordered"
    } else {
        "override-stands"
    };
    let who = voice.person(&decided.by).into_owned();
    let quote = voice.quote(decided.reason.text());
    voice.say(
        key,
        &[
            ("unit", decided.unit.as_str().into()),
            ("who", who.into()),
            ("time", decided.at.into()),
            ("quote", quote.into()),
        ],
    )
}

fn decided(hearing: &Hearing<'_>, unit: &UnitName, reason: &str, ordered: bool) -> Record {
    Record::Override {
        decided: Override {
            unit: unit.clone(),
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            reason: Personal::new(reason),
            ordered,
        },
    }
}
