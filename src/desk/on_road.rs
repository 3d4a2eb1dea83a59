//! A danger on the road: help is not sent to the site that the plan has the trailer at, the crew say where they are.

use chrono::TimeDelta;

use super::answer::Reply;
use super::hazard;
use super::receive::Hearing;
use super::situate::site_told;
use crate::book::Stage;
use crate::finding::{Finding, FindingId};
use crate::heard::{Event, Fault, UnitName};

/// Dangers that go where the trailer goes: it is pulled over.
const TRAVELS: &[Fault] = &[Fault::Fire, Fault::BurntSmell, Fault::Runaway];

/// So long after its job a trailer of which nobody wrote may still stand there.
const LINGERS: TimeDelta = TimeDelta::hours(24);

/// Tells whether a danger is away from the site: by the sender's words, or since the trailer that it is told of has left.
/// Wherever somebody is hurt then, nobody knows the address.
pub(super) fn is_there(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let unit = danger.unit.as_ref();
    is_told(hearing, unit)
        || hazard::is_of_the_road(&danger.action)
        || unit.is_some_and(|unit| has_left(hearing, unit))
        || is_unknown(hearing, danger)
}

/// Tells whether nobody knows where the danger is: its sender drives, or the trailer's job is long over.
pub(super) fn is_unknown(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let unit = danger.unit.as_ref();
    unit.is_some_and(|unit| drives(hearing, unit) || is_lost(hearing, unit))
}

/// Tells whether the message says that the trailer is there now.
fn arrives(hearing: &Hearing<'_>) -> bool {
    let mut entries = hearing.heard.entries.iter();
    entries.any(|entry| entry.events.contains(&Event::Arrived))
}

/// Tells whether the sender said that they are on the road with this trailer, or to it, while no job of its is on.
fn drives(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let road = hearing
        .desk
        .book
        .ahead()
        .road(&hearing.member.id, hearing.now);
    let Some(road) = road.filter(|road| road.unit.as_ref().is_none_or(|of| of == unit)) else {
        return false;
    };
    let kept = hearing.desk.book.unit(unit);
    let done = |event| kept.and_then(|kept| kept.state().when(event));
    let there = [Event::Arrived, Event::InService, Event::Unhitched];
    let there = there.into_iter().filter_map(done).max();
    let departed = kept.and_then(|kept| kept.state().departed);
    let job = hearing.fleet.job_of(unit, hearing.now, departed);
    let on = job.is_some_and(|job| {
        let set_up = hearing.fleet.set_up_of(unit, &job.id);
        let here = there.is_some_and(|at| set_up.is_none_or(|set_up| at >= set_up));
        job.is_open(hearing.now) || here && hearing.now <= job.to
    });
    let since = there.is_some_and(|at| at > road.since);
    !on && !since && !arrives(hearing)
}

/// Tells whether the trailer's last job is long over, and nobody said since where it is.
fn is_lost(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let state = hearing.desk.book.unit(unit).map(|kept| kept.state());
    let departed = state.and_then(|state| state.departed);
    if arrives(hearing) || site_told(hearing.desk, unit, hearing.now, departed).is_some() {
        return false;
    }
    let Some(job) = hearing.fleet.job_of(unit, hearing.now, departed) else {
        return false;
    };
    let arrived = state.and_then(|state| state.when(Event::Arrived));
    hearing.now - job.to > LINGERS && arrived.is_none_or(|arrived| arrived <= job.to)
}

/// Tells whether a danger is on the road itself, and not merely somewhere since the trailer left.
fn travels(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let mut travels = TRAVELS.iter().map(|fault| FindingId::of_fault(*fault));
    let unit = danger.unit.as_ref();
    let lost = unit.is_some_and(|unit| is_lost(hearing, unit));
    is_told(hearing, unit)
        || unit.is_some_and(|unit| drives(hearing, unit))
        || !lost && travels.any(|id| id == danger.id)
}

/// Tells whether the sender is on the road with this trailer, by their words now or within the hour.
pub(super) fn is_told(hearing: &Hearing<'_>, unit: Option<&UnitName>) -> bool {
    hearing.desk.phrases.holds("road", "says", hearing.text)
        && !hearing.desk.phrases.holds("road", "not", hearing.text)
        || hazard::told_lately(hearing, "road-loose", unit)
}

/// Tells whether the last that was told of a trailer's whereabouts is that it left, or is home.
fn has_left(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let Some(kept) = hearing.desk.book.unit(unit) else {
        return false;
    };
    let state = kept.state();
    let left = state.when(Event::Left);
    match state.stage() {
        Stage::Yard => true,
        Stage::Hitched => left.is_some() && left >= state.when(Event::Hitched),
        _ => false,
    }
}

/// Takes the site's address out of what is said of a danger on the road.
pub(super) fn without_the_site(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut says = None;
    for finding in &mut reply.findings {
        let short = finding
            .action
            .strip_suffix("-at")
            .unwrap_or(&finding.action);
        let has_address = reply.voice.knows(&format!("{short}-at"));
        if !has_address || !is_there(hearing, finding) {
            continue;
        }
        // on the road there is no source to cut the power at, and traffic to keep out of
        let road = format!("{short}-road");
        let on_road = travels(hearing, finding);
        finding.action = match on_road && reply.voice.knows(&road) {
            true => road.into(),
            false => short.to_owned().into(),
        };
        let known = finding.unit.clone().filter(|_| !on_road);
        says = says.or(Some(known));
    }
    match says {
        Some(Some(unit)) if is_lost(hearing, &unit) => {
            reply.say("place-unknown", &[("unit", unit.as_str().into())])
        }
        Some(Some(unit)) => reply.say("left-no-address", &[("unit", unit.as_str().into())]),
        Some(None) => reply.say("on-a-road", &[]),
        None => {}
    }
}
