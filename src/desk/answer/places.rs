//! Where a trailer stands, what stands at a site, which trailers are open; and that plans are no matter of the chat.

use super::plan_ahead;
use super::reply::Reply;
use crate::book::{Stage, Stand};
use crate::desk::phrases::{Phrases, plain};
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::{digest, settle, sites};
use crate::fleet::{Role, Site};
use crate::heard::{Entry, UnitName};
use crate::reply::{Arg, Status};
use crate::situation::Occasion;

/// The most trailers that are looked at within one turn.
const MOST: usize = 40;

/// Answers where trailers are; false where something else is asked.
pub(in crate::desk) fn answer(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let reports = hearing
        .heard
        .entries
        .iter()
        .any(|entry| !Entry::is_empty(entry));
    if reports || hearing.heard.command.is_some() {
        return false;
    }
    if let Some(unit) = where_of(hearing) {
        tell_where(hearing, &unit, reply);
        return true;
    }
    let says = |list| hearing.desk.phrases.holds("places", list, hearing.text);
    if says("at")
        && let Some((site, _)) = sites::named_in(&hearing.fleet, hearing.text)
    {
        tell_what_is_at(hearing, site, reply);
        return true;
    }
    for (list, stage, none) in [
        ("open", Stage::InService, "answer-none-open"),
        ("closed", Stage::Closed, "answer-none-closed"),
    ] {
        if hearing.desk.phrases.is("places", list, hearing.text) {
            tell_of_a_stage(hearing, stage, none, reply);
            return true;
        }
    }
    if moves_in_the_plan(hearing) {
        let line = reply.voice.word("answer-plan-elsewhere");
        reply.first.push(line);
        return true;
    }
    false
}

/// Tells whether a message asks which trailers are open or closed, and says nothing else.
pub(in crate::desk) fn asks_which(phrases: &Phrases, text: &str) -> bool {
    ["open", "closed"]
        .iter()
        .any(|list| phrases.is("places", list, text))
}

/// Returns the trailer whose place is asked, by words that ask nothing else.
fn where_of(hearing: &Hearing<'_>) -> Option<UnitName> {
    let phrases = hearing.desk.phrases;
    let rest = phrases.after("places", "where", hearing.text.trim())?;
    let folded = plain(rest);
    let mut words = folded.split(' ').filter(|word| {
        !phrases.is("mend", "trailer", word) && !phrases.is("places", "beside", word)
    });
    let unit = settle::known(&hearing.fleet, &UnitName::new(words.next()?))?;
    words.next().is_none().then(|| unit.clone())
}

fn tell_where(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    let case = Case::standing(
        hearing.desk,
        &hearing.fleet,
        unit,
        hearing.now,
        Occasion::Asked,
    );
    let place = case.place();
    let line = reply.voice.status_head(&Status {
        unit,
        site: place.as_deref(),
        state: &case.now,
        spec: case.spec(),
        outlook: None,
        tasks: Vec::new(),
    });
    reply.first.push(line);
    if place.is_none() {
        plan_ahead::next_job(hearing, unit, reply);
    }
}

/// Lists the trailers that stand at a site, by the plan or by what was told.
fn tell_what_is_at(hearing: &Hearing<'_>, site: &Site, reply: &mut Reply<'_>) {
    let there = |stand: &Stand| stand.site.as_deref() == Some(site.name.as_str());
    let stands = looked_at(hearing, there);
    let text = match stands.is_empty() {
        true => {
            let args = [("site", Arg::from(site.name.as_str()))];
            reply.voice.say("answer-none-at", &args)
        }
        false => digest::rows(hearing.desk, &stands, &reply.voice),
    };
    reply.first.push(text);
}

fn tell_of_a_stage(hearing: &Hearing<'_>, stage: Stage, none: &str, reply: &mut Reply<'_>) {
    let is_so = |stand: &Stand| {
        let kept = hearing.desk.book.unit(&stand.unit);
        kept.is_some_and(|kept| kept.state().stage() == stage)
    };
    let stands = looked_at(hearing, is_so);
    let text = match stands.is_empty() {
        true => reply.voice.word(none),
        false => digest::rows(hearing.desk, &stands, &reply.voice),
    };
    reply.first.push(text);
}

fn looked_at(hearing: &Hearing<'_>, wanted: impl Fn(&Stand) -> bool) -> Vec<Stand> {
    let (desk, fleet, now) = (hearing.desk, &hearing.fleet, hearing.now);
    let units = digest::told_of(desk, fleet, now, None).take(MOST);
    let stands = units.map(|unit| digest::look(desk, fleet, unit, now).2);
    stands.filter(wanted).collect()
}

/// "16 is going to ice harp instead", "swap 8 for 16 at tollgate": a dispatcher changes the plan, which is a file.
fn moves_in_the_plan(hearing: &Hearing<'_>) -> bool {
    hearing.member.role == Role::Dispatcher
        && hearing.heard.ask.is_none()
        && !hearing.desk.phrases.holds("truck", "who", hearing.text)
        && hearing.desk.phrases.holds("places", "moves", hearing.text)
        && !hearing.names().is_empty()
        && sites::named_in(&hearing.fleet, hearing.text).is_some()
}
