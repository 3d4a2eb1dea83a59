//! Alarms that people ask for: "if 12 hits 3/4 call me".

use chrono::TimeDelta;

use super::answer::Reply;
use super::inbound::Outgoing;
use super::receive::Hearing;
use super::situate::Case;
use crate::book::Record;

use crate::dialogue::Watch;
use crate::finding::Level;
use crate::heard::{Entry, Plan, PlanKind, ReadingKey, UnitName};

/// A reading older than this does not tell where a trailer is now.
const FRESH: TimeDelta = TimeDelta::hours(24);

/// What somebody wants to be called for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wanted<'a> {
    /// The trailer.
    pub(super) unit: &'a UnitName,
    /// The reading.
    pub(super) key: ReadingKey,
    /// The value that sets it off.
    pub(super) value: f64,
    /// True when falling to it counts.
    pub(super) below: bool,
}

/// Sets a watch; where the trailer is there already, says so at once.
pub(super) fn set(
    hearing: &Hearing<'_>,
    wanted: Wanted<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Wanted {
        unit,
        key,
        value,
        below,
    } = wanted;
    let kept = hearing.desk.book.unit(unit);
    let last = kept.and_then(|kept| kept.state().readings.get(&key));
    let fresh = last.filter(|last| hearing.now - last.at <= FRESH);
    let watch = Watch {
        who: hearing.member.id.clone(),
        unit: unit.clone(),
        key,
        value,
        below,
        since: hearing.now,
    };
    if let Some(last) = fresh.filter(|last| is_reached(&watch, last.value)) {
        let what = reply
            .voice
            .reading(key, last.value, hearing.fleet.trailers.get(unit));
        let args = [
            ("unit", unit.as_str().into()),
            ("what", what.into()),
            ("time", last.at.into()),
        ];
        reply.say("watch-past", &args);
        return;
    }
    reply.watching(unit, key, value, below);
    let alike = |other: &&Watch| {
        other.who == watch.who
            && other.unit == watch.unit
            && other.key == watch.key
            && other.below == watch.below
    };
    // the same thing asked for again, or with another number, is one watch
    let old = hearing.desk.book.watches().iter().filter(alike).cloned();
    records.extend(old.map(|watch| Record::Unwatch { watch }));
    records.push(Record::Watch { watch });
}

/// Reads the other half of "if 10 goes over 3/4 or pressure drops under 40": a watch of its own, or the words it is not
/// understood by.
pub(super) fn other_half(hearing: &Hearing<'_>) -> Option<Result<Plan, String>> {
    let watches = |plan: &&Plan| matches!(plan.kind, PlanKind::Watch { .. });
    let mut set = hearing.heard.plans.iter().filter(watches);
    let (first, none) = (set.next()?, set.next());
    let half = [" or ", " o ", " u "];
    let rest = half
        .iter()
        .find_map(|word| Some(hearing.text.split_once(word)?.1))?;
    if none.is_some() || !rest.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let unit = first.unit.as_ref().map_or("", UnitName::as_str);
    let text = format!("if {unit} {rest} call me");
    let heard = hearing
        .desk
        .reader
        .hear(&text, hearing.fleet.style.temperature);
    let mut other = heard.plans.into_iter();
    let other = other.find(|plan| watches(&plan) && plan.kind != first.kind);
    Some(other.ok_or_else(|| rest.trim().to_owned()))
}

/// Tells whether the message wants an alarm and sets none: its condition is not understood.
pub(super) fn is_missed(hearing: &Hearing<'_>) -> bool {
    let phrases = &hearing.desk.phrases;
    let says = |list| phrases.holds("watch", list, hearing.text);
    let heard = &hearing.heard;
    let set = |plan: &Plan| matches!(plan.kind, PlanKind::Watch { .. } | PlanKind::CheckMe { .. });
    says("wants")
        && says("on")
        && heard.ask.is_none()
        && heard.command.is_none()
        && heard.entries.iter().all(Entry::is_empty)
        && heard.unclear.is_empty()
        && !heard.plans.is_empty()
        && !heard.plans.iter().any(set)
}

/// Lists the sender's watches where the message asks for them.
pub(super) fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let phrases = &hearing.desk.phrases;
    if !phrases.is("watch", "list", hearing.text) && !phrases.holds("watch", "asks", hearing.text) {
        return;
    }
    let mine = |watch: &&Watch| watch.who == hearing.member.id;
    let mut none = true;
    for watch in hearing.desk.book.watches().iter().filter(mine) {
        none = false;
        let line = told(watch, hearing, reply);
        reply.lines.push(line);
    }
    if none {
        reply.say("watch-none", &[]);
    }
}

/// Drops the sender's watches where the message says so: those on the trailer it names, else all.
pub(super) fn drop(
    hearing: &Hearing<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    if !hearing.desk.phrases.holds("watch", "drop", hearing.text) {
        return false;
    }
    let named = hearing.names();
    let mine: Vec<Watch> = hearing
        .desk
        .book
        .watches()
        .iter()
        .filter(|watch| watch.who == hearing.member.id)
        .filter(|watch| named.is_empty() || named.contains(&watch.unit))
        .cloned()
        .collect();
    if mine.is_empty() {
        reply.say("watch-none", &[]);
    }
    for watch in mine {
        reply.say("never-mind-watch", &[("unit", watch.unit.as_str().into())]);
        records.push(Record::Unwatch { watch });
    }
    true
}

fn told(watch: &Watch, hearing: &Hearing<'_>, reply: &Reply<'_>) -> String {
    let spec = hearing.fleet.trailers.get(&watch.unit);
    let what = reply.voice.reading(watch.key, watch.value, spec);
    let key = if watch.below {
        "watch-set-below"
    } else {
        "watch-set"
    };
    let args = [("unit", watch.unit.as_str().into()), ("what", what.into())];
    reply.voice.say(key, &args)
}

/// Tells whoever asked, when a report reaches what they watch.
pub(super) fn hits(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    for watch in hearing.desk.book.watches() {
        let Some(case) = cases.iter().find(|case| case.unit == watch.unit) else {
            continue;
        };
        let Some(value) = reached(watch, case) else {
            continue;
        };
        records.push(Record::Unwatch {
            watch: watch.clone(),
        });
        let Some(member) = hearing.fleet.crew.get(&watch.who) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let what = voice.reading(watch.key, value, case.spec());
        let by = voice.person(&hearing.member.id).into_owned();
        let text = voice.say(
            "watch-hit",
            &[
                ("unit", watch.unit.as_str().into()),
                ("what", what.into()),
                ("who", by.into()),
            ],
        );
        if watch.who == hearing.member.id {
            reply.opening.push(text);
        } else {
            reply
                .others
                .push(Outgoing::to(&watch.who, text).of_level(Level::Notice));
        }
    }
}

fn reached(watch: &Watch, case: &Case) -> Option<f64> {
    let value = case.report.readings.value(watch.key)?;
    is_reached(watch, value).then_some(value)
}

fn is_reached(watch: &Watch, value: f64) -> bool {
    if watch.below {
        value <= watch.value
    } else {
        value >= watch.value
    }
}
