//! What stands with a trailer: notes for whoever arrives next, the site's own card, overrides and orders.

use super::answer::Reply;
use super::command;
use super::inbound::Outgoing;
use super::receive::Hearing;
use super::settle::{self, Settled};
use super::situate::Case;
use crate::book::{Override, Personal, Record, StandingNote};
use crate::finding::{Finding, Level};
use crate::fleet::{Job, Role, Site};
use crate::heard::{Command, CommandName, Event, UnitName};
use crate::reply::Arg;

/// Keeps a note on a trailer, lists its notes, or clears them.
pub(super) fn note(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some((unit, words)) = unit_and_words(hearing, &order.rest) else {
        reply.say("note-how", &[]);
        return;
    };
    let clears = [
        "clear", "cleared", "off", "quitar", "quita", "borra", "fuera",
    ];
    let name = ("unit", Arg::from(unit.as_str()));
    if words.is_empty() {
        if hearing.desk.book.standing().notes(&unit).is_empty() {
            reply.say("note-none", &[name]);
        }
        tell_notes(hearing, &unit, reply);
    } else if clears.contains(&words.to_lowercase().as_str()) {
        if hearing.desk.book.standing().notes(&unit).is_empty() {
            reply.say("note-none", &[name]);
            return;
        }
        records.push(Record::NotesCleared {
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            unit: unit.clone(),
        });
        reply.say("note-cleared", &[name]);
    } else {
        let quoted = reply.voice.quote(&words);
        reply.say("note-taken", &[name, ("quote", quoted.into())]);
        let note = StandingNote {
            unit: unit.clone(),
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            text: Personal::new(words),
            load: None,
        };
        records.push(Record::Note { note });
    }
}

/// Forgets what a trailer's own log taught of it: from here on it is learned anew.
pub(super) fn relearn(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some((unit, _)) = unit_and_words(hearing, &order.rest) else {
        reply.say("relearn-how", &[]);
        return;
    };
    let lessons = hearing.desk.book.lessons().of(&unit).len();
    let name = ("unit", Arg::from(unit.as_str()));
    if lessons == 0 {
        reply.say("relearn-nothing", &[name]);
        return;
    }
    reply.say("relearn-done", &[name, ("count", lessons.into())]);
    records.push(Record::Relearn {
        at: hearing.inbound.at,
        by: hearing.member.id.clone(),
        unit,
    });
}

/// Logs a dispatcher's decision against the advice, with its reason.
pub(super) fn decide(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match unit_and_words(hearing, &order.rest).filter(|(_, words)| !words.is_empty()) {
        None => reply.say("override-needs-reason", &[]),
        Some((unit, words)) => log_decision(hearing, &unit, &words, reply, records),
    }
}

/// Takes a dispatcher's decision in their own words: "12 can go anyway, the gate closes".
pub(super) fn decide_in_words(
    hearing: &Hearing<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    if hearing.heard.command.is_some()
        || hearing.heard.ask.is_some()
        || text.trim_end().ends_with('?')
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
    reply.say("override-cautions", &[]);
    records.push(decided(hearing, unit, reason, false));
}

/// Logs an order of fire or police that the message tells of. It is obeyed, and every dispatcher hears of it.
pub(super) fn ordered(
    hearing: &Hearing<'_>,
    settled: &Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if hearing.heard.command.is_some() || !hearing.desk.answers.tells_of_an_order(hearing.text) {
        return;
    }
    let known = |name| settle::known(&hearing.fleet, name).cloned();
    let unit = settled
        .reports
        .first()
        .map(|(unit, ..)| unit.clone())
        .or_else(|| known(hearing.heard.named.first()?))
        .or_else(|| known(hearing.talk.unit_at(hearing.inbound.at)?))
        .or_else(|| known(last_reported(hearing)?));
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
    let dispatchers = hearing.fleet.crew.values();
    for other in
        dispatchers.filter(|other| other.role == Role::Dispatcher && other.id != hearing.member.id)
    {
        let voice = hearing
            .desk
            .voice_for(other, None, &hearing.fleet, hearing.now);
        let who = voice.person(&hearing.member.id).into_owned();
        let quote = voice.quote(hearing.text);
        let args = [
            ("unit", unit.as_str().into()),
            ("who", who.into()),
            ("quote", quote.into()),
        ];
        reply
            .others
            .push(Outgoing::to(&other.id, voice.say("order-told", &args)).of_level(Level::Warning));
    }
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

/// Says what whoever arrives must know: the site's own card, then the notes on the trailer.
pub(super) fn greet(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>) {
    if hearing.late() || hearing.inbound.replaces.is_some() {
        return;
    }
    let mut told: Vec<&str> = Vec::new();
    for case in cases
        .iter()
        .filter(|case| case.report.events.contains(&Event::Arrived))
    {
        if let (Some(site), Some(job)) = (case.site(), case.job()) {
            if told.contains(&site.id.as_str()) {
                tell_notes(hearing, &case.unit, reply);
                continue;
            }
            told.push(&site.id);
            match card_is_for(hearing, job) {
                Ok(()) => tell_card(site, reply),
                Err(why) if site.gate_code.is_some() => reply.say(why, &[]),
                Err(_) => {}
            }
        }
        tell_notes(hearing, &case.unit, reply);
    }
}

/// Tells whether a job's card may be shown to the sender now: a card is for the crew of the job, on the days of the job.
fn card_is_for(hearing: &Hearing<'_>, job: &Job) -> Result<(), &'static str> {
    let member = hearing.member;
    let set_up = chrono::TimeDelta::minutes((job.set_up_h * 60.0).round() as i64);
    if hearing.now < job.from - set_up || hearing.now > job.to {
        return Err("card-not-today");
    }
    let works_it = job.crew.is_empty() || job.crew.contains(&member.id);
    if works_it || member.role == Role::Dispatcher {
        Ok(())
    } else {
        Err("card-not-crew")
    }
}

/// Steps of leaving that no report tells of, by their codes.
const BY_WORD: [&str; 2] = ["chocks", "breakaway"];

/// Takes the steps of leaving that a message calls done in its own words: "breakaway tested, chocks out".
pub(super) fn confirm(hearing: &Hearing<'_>, at_a_step: bool, reply: &mut Reply<'_>) {
    let phrases = &hearing.desk.phrases;
    let said: Vec<&str> = BY_WORD
        .into_iter()
        .filter(|step| phrases.holds("confirm", step, hearing.text))
        .collect();
    if said.is_empty() || hearing.heard.ask.is_some() || hearing.heard.command.is_some() {
        return;
    }
    let round = hearing.talk.round.as_ref().map(|round| round.unit.clone());
    let last = || {
        let unit = hearing.talk.unit_at(hearing.inbound.at)?;
        settle::known(&hearing.fleet, unit).cloned()
    };
    let Some(unit) = hearing.names().first().cloned().or(round).or_else(last) else {
        return;
    };
    for step in said {
        // the step that waits is answered by it
        let asked = hearing.talk.round.as_ref().map(|round| round.step.as_str());
        if at_a_step && asked == Some(step) {
            continue;
        }
        let what = reply.voice.word(&format!("value-{step}"));
        let args = [("unit", unit.as_str().into()), ("what", what.into())];
        reply.say("confirmed", &args);
        reply.confirmed.push((unit.clone(), step.to_owned()));
    }
}

/// Writes down the steps of leaving that were done in this turn.
pub(super) fn keep_confirmed(hearing: &Hearing<'_>, reply: &Reply<'_>, records: &mut Vec<Record>) {
    for (unit, step) in &reply.confirmed {
        records.push(Record::Confirmed {
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            unit: unit.clone(),
            step: step.clone(),
        });
    }
}

/// Tells whether a step of leaving was done, by anybody, since the trailer last stood open or arrived.
pub(super) fn is_confirmed(hearing: &Hearing<'_>, unit: &UnitName, step: &str) -> bool {
    let kept = hearing.desk.book.unit(unit);
    let stood = kept.and_then(|kept| {
        let state = kept.state();
        state.when(Event::Arrived).max(state.when(Event::InService))
    });
    hearing.desk.book.standing().is_confirmed(unit, step, stood)
}

/// Says beside advice not to tow that somebody decided otherwise.
pub(super) fn beside_the_advice(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>) {
    for case in cases {
        let tows = |finding: &Finding| {
            finding.id.topic() == "tow" && finding.unit.as_ref() == Some(&case.unit)
        };
        if !reply.findings.iter().any(tows) {
            continue;
        }
        if is_ordered(hearing, &case.unit) {
            let line = reply.voice.word("order-first");
            reply.opening.push(line);
        }
        let line = in_force(hearing, &case.unit, &reply.voice);
        reply.lines.extend(line);
    }
}

/// Tells whether an order of fire or police is in force on a trailer.
pub(super) fn is_ordered(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    decided_on(hearing, unit).is_some_and(|decided| decided.ordered)
}

fn decided_on<'a>(hearing: &'a Hearing<'_>, unit: &UnitName) -> Option<&'a Override> {
    let kept = hearing.desk.book.unit(unit);
    let arrived = kept.and_then(|kept| kept.state().when(Event::Arrived));
    let standing = hearing.desk.book.standing();
    standing.in_force(unit, hearing.now, arrived)
}

/// Puts the override in force on a trailer into words: who, when, why.
pub(super) fn in_force(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    voice: &crate::reply::Voice<'_>,
) -> Option<String> {
    decided_on(hearing, unit).map(|decided| told(decided, voice))
}

/// Lists the overrides of a trailer, for "why".
pub(super) fn overrides(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
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

fn tell_card(site: &Site, reply: &mut Reply<'_>) {
    let parts = [
        ("card-gate", &site.gate_code),
        ("card-contact", &site.contact),
        ("card-stand", &site.stand),
        ("card-septic-lid", &site.septic_lid),
        ("card-notes", &site.notes),
    ];
    for (key, text) in parts {
        if let Some(text) = text {
            let what = reply.voice.plain(text).into_owned();
            let line = reply.voice.say(key, &[("what", what.into())]);
            reply.card.push(line);
        }
    }
}

fn tell_notes(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    for note in hearing.desk.book.standing().notes(unit) {
        let who = reply.voice.person(&note.by).into_owned();
        let quote = reply.voice.quote(note.text.text());
        let line = reply.voice.say(
            "note-stands",
            &[
                ("unit", unit.as_str().into()),
                ("who", who.into()),
                ("time", note.at.into()),
                ("quote", quote.into()),
            ],
        );
        reply.card.push(line);
    }
}

/// Splits an order's words into the trailer they start with and the rest.
fn unit_and_words(hearing: &Hearing<'_>, rest: &str) -> Option<(UnitName, String)> {
    let rest = rest.trim();
    let rest = ["unit ", "trailer ", "unidad "]
        .iter()
        .find_map(|word| rest.strip_prefix(word))
        .unwrap_or(rest);
    let (name, words) = rest.split_once(char::is_whitespace).unwrap_or((rest, ""));
    let name = UnitName::new(name.trim_end_matches([':', ',', '.']));
    let unit = settle::known(&hearing.fleet, &name)?.clone();
    Some((unit, words.trim().to_owned()))
}
