//! How many cords a trailer needs, and into which circuits.

use super::question::warn;
use super::reply::Reply;
use super::topic::sounds_like_one;
use super::whole::asked_of;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::settle;
use crate::desk::situate::Case;
use crate::desk::walk;
use crate::finding::{Caution, FindingId};
use crate::heard::{Entry, Event, ReadingKey, UnitName};
use crate::reply::Arg;
use crate::rules;

/// Takes the cords out of a message that asks how the power is hooked up: so many are there, and none is live yet.
/// Returns the trailer they were told of, and how many; none where it asks no such thing.
pub(in crate::desk) fn asked_to_hook_up(
    hearing: &mut Hearing<'_>,
) -> Option<(Option<UnitName>, Option<f64>)> {
    let asks = |list| hearing.desk.phrases.holds("hook-up", list, hearing.text);
    // "can 12 run on one cord" tells of no cord
    let supposes = || asks("runs") && asks("power") && sounds_like_one(hearing.text);
    let few = outlets_told(hearing);
    let plans = asks("plan") || asks("asks") && asks("power") || supposes() || few.is_some();
    if !plans || hearing.heard.command.is_some() {
        return None;
    }
    let mut told = None;
    for entry in &mut hearing.heard.entries {
        let cords = entry.readings.values.remove(&ReadingKey::Cords);
        told = told.or(cords.map(|cords| (entry.unit.clone(), cords)));
    }
    hearing.heard.entries.retain(|entry| !entry.is_empty());
    hearing.heard.ask = None;
    hearing.drop_what_is_not_now();
    if few.is_some() {
        // how many are live is not asked of cords that are only planned
        hearing.heard.unclear.clear();
    }
    Some(match told {
        Some((unit, cords)) => (unit, Some(cords)),
        None => (None, few),
    })
}

/// How many words may stand between a number and its outlets: "one 20 amp circuit".
const BETWEEN: usize = 2;

/// Reads "only got 2 outlets", "they only have one circuit", "plan for 12 with 3 cords": how many there are, where nothing
/// else is reported.
fn outlets_told(hearing: &Hearing<'_>) -> Option<f64> {
    let phrases = hearing.desk.phrases;
    let says = |list| phrases.holds("hook-up", list, hearing.text);
    let reports = hearing.heard.entries.iter().any(|entry| !entry.is_empty());
    // "only one cord, what do i plug in"
    let few = says("few") && (says("outlets") || says("asks") && says("cords"));
    let plan = says("plans") && (says("outlets") || says("cords"));
    if reports || !(few || plan) {
        return None;
    }
    let folded = plain(hearing.text);
    let words: Vec<&str> = folded.split(' ').collect();
    let is = |list, at: usize| {
        words
            .get(at)
            .is_some_and(|w| phrases.is("hook-up", list, w))
    };
    (0..words.len()).find_map(|at| {
        let counts = [("one", 1.0), ("two", 2.0), ("three", 3.0)];
        let (_, count) = counts.into_iter().find(|(list, _)| is(list, at))?;
        let cords = plan || says("asks");
        let near = |gap| is("outlets", at + 1 + gap) || cords && is("cords", at + 1 + gap);
        (0..=BETWEEN).any(near).then_some(count)
    })
}

/// How is the power hooked up? With so many cords, where they were told; nothing is logged.
pub(in crate::desk) fn hook_up(
    hearing: &Hearing<'_>,
    (unit, told): &(Option<UnitName>, Option<f64>),
    reply: &mut Reply<'_>,
) {
    // "2 outlets at 12": here it is no hour
    let named = unit.clone().or_else(|| asked_of(hearing));
    let unit = named
        .as_ref()
        .or_else(|| hearing.talk.unit_at(hearing.inbound.at))
        .and_then(|name| settle::known(&hearing.fleet, name))
        .cloned();
    let Some(unit) = unit else {
        reply.asks = Some(hearing.which_unit());
        return;
    };
    let case = hearing.asked_about(&unit);
    let line = reply.voice.word("answer-hook-up");
    reply.first.push(line);
    let told = told.filter(|cords| *cords >= 1.0);
    // what is planned is planned for a trailer that stands there
    let stands = case.now.stage().is_on_site();
    let supposed = told.map(|cords| {
        let mut entry = Entry::default();
        entry.events.extend((!stands).then_some(Event::Arrived));
        entry.readings.set(ReadingKey::Cords, cords);
        hearing.as_if_told(&case, entry)
    });
    let few = supposed.iter().flat_map(Case::findings);
    let few: Vec<_> = few
        .filter(|found| found.id == FindingId::PowerTooFewCircuits)
        .collect();
    if few.is_empty() {
        cords(&case, reply);
    } else {
        for finding in &few {
            let line = reply.voice.finding(finding, false);
            reply.first.push(line);
        }
        warn(&[Caution::NoBypass, Caution::LocalCode], reply);
    }
    if let Some(supposed) = supposed {
        walk::tell_plug_in(std::slice::from_ref(&supposed), reply);
        reply.lines.push(reply.voice.word("answer-hook-up-then"));
    }
}

/// How many cords, and into which circuits?
pub(super) fn cords(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some((situation, spec)) = case.situation().zip(case.spec()) else {
        return Vec::new();
    };
    let feed = rules::circuits_to_feed(&situation);
    let names: Vec<String> = feed.iter().map(u8::to_string).collect();
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("count", feed.len().into()),
        ("names", reply.voice.all_of(&names).into()),
        ("circuit", u32::from(spec.battery.converter_circuit).into()),
    ];
    let line = reply.voice.say("answer-cords", &args);
    reply.first.push(line);
    let offered = case.site().and_then(|site| site.power.cords);
    if let Some(offered) = offered {
        let line = reply
            .voice
            .say("answer-cords-offered", &[("count", offered.into())]);
        reply.first.push(line);
    }
    warn(&[Caution::NoBypass, Caution::LocalCode], reply);
    vec![FindingId::PowerTooFewCircuits]
}
