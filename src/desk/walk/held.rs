//! A trailer that is said to leave although it is not ready: it stands where it stood until what could hurt somebody on the
//! road is done, a dispatcher decides otherwise, or it is told to be on the road.

use chrono::TimeDelta;

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::settle::Settled;
use super::super::situate::Case;
use super::super::standing;
use super::leave::{open_steps, overweight};
use super::stand::guards;
use crate::dialogue::Way;
use crate::finding::{Finding, FindingId, Level};
use crate::heard::{Event, ReadingKey, UnitName};
use crate::rules;

/// What was done so long before it is told is told of the past.
const PAST: TimeDelta = TimeDelta::minutes(2);

/// Returns the trailers that a message calls gone and that are not let go yet.
pub(in crate::desk) fn held(
    hearing: &Hearing<'_>,
    settled: &Settled,
    cases: &[Case],
) -> Vec<UnitName> {
    let rewrites = hearing.mends() || hearing.inbound.replaces.is_some();
    if hearing.late() || rewrites || is_on_the_road(hearing) {
        return Vec::new();
    }
    let held = cases.iter().filter(|case| {
        case.report.events.contains(&Event::Left)
            && is_of_now(hearing, settled, &case.unit)
            && !has_gone(case)
            && is_unready(hearing, case)
    });
    held.map(|case| case.unit.clone()).collect()
}

/// Takes the departure of what is held out of the reports, and says what lets it go.
pub(in crate::desk) fn hold(held: &[UnitName], settled: &mut Settled, reply: &mut Reply<'_>) {
    for unit in held {
        for (.., entry) in settled.reports.iter_mut().filter(|(of, ..)| of == unit) {
            entry.events.retain(|event| *event != Event::Left);
        }
        // the trailer stays what the message is about
        if settled
            .reports
            .iter()
            .all(|(of, _, entry)| of != unit || entry.is_empty())
        {
            settled.words.push(unit.clone());
        }
        let of_it = |finding: &&mut Finding| {
            finding.id == FindingId::TowNotReady
                && finding.unit.as_ref() == Some(unit)
                && finding.facts.find("missing").is_some()
        };
        // what is open is listed with the rest of the walk, and it has not left
        for finding in reply.findings.iter_mut().filter(of_it) {
            finding.action = "tow-not-ready-held".into();
        }
        reply.held.push(unit.clone());
        reply.say("leave-held", &[("unit", unit.as_str().into())]);
    }
    settled.reports.retain(|(.., entry)| !entry.is_empty());
}

/// Tells whether it is told to be under way, by a word of the road or when it will be there.
fn is_on_the_road(hearing: &Hearing<'_>) -> bool {
    let says = |list| hearing.desk.phrases.holds("leave", list, hearing.text);
    let mut entries = hearing.heard.entries.iter();
    says("road")
        || says("gone")
        || entries.any(|entry| entry.readings.value(ReadingKey::EtaMin).is_some())
}

/// Tells whether a trailer is told to leave now, and not at an earlier time.
fn is_of_now(hearing: &Hearing<'_>, settled: &Settled, unit: &UnitName) -> bool {
    let mut told = settled.reports.iter();
    told.any(|(of, at, entry)| {
        let left = of == unit && entry.events.contains(&Event::Left);
        left && hearing.inbound.at - *at <= PAST
    })
}

/// Tells whether it was on the road already, or comes to stand elsewhere with the same message.
fn has_gone(case: &Case) -> bool {
    let ends = [Event::Arrived, Event::Returned];
    let before = &case.before;
    case.report.events.iter().any(|event| ends.contains(event))
        || before.when(Event::Left).is_some_and(|left| {
            let since = [Event::Arrived, Event::Hitched, Event::InService];
            since.iter().all(|event| before.when(*event) <= Some(left))
        })
}

/// Tells whether something that guards people on the road is open, and nobody who may has decided otherwise.
fn is_unready(hearing: &Hearing<'_>, case: &Case) -> bool {
    let from_site = case.situation().is_some_and(|s| rules::leaves_a_site(&s));
    // wherever it stood, what is aboard is aboard
    let grave = |finding: &Finding| finding.id.topic() == "tow" && finding.level >= Level::Warning;
    let from_site = from_site || case.findings().iter().any(grave);
    let decided = standing::is_ordered(hearing, &case.unit)
        || standing::in_force(hearing, &case.unit, &hearing.voice()).is_some();
    let round = hearing.talk.round.as_ref();
    let round = round.filter(|round| round.unit == case.unit && round.way == Way::Leaving);
    let mut confirmed = round.map_or_else(Vec::new, |round| round.confirmed.clone());
    confirmed.extend(standing::told_done(hearing).map(str::to_owned));
    let open = open_steps(hearing, case, &confirmed);
    from_site
        && !decided
        && (open.iter().any(|code| guards(code)) || overweight(hearing, &case.unit).is_some())
}
