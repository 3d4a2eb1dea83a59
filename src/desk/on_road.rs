//! A danger on the road: help is not sent to the site that the plan has the trailer at, the crew say where they are.

use super::answer::Reply;
use super::hazard;
use super::receive::Hearing;
use crate::book::Stage;
use crate::finding::{Finding, FindingId};
use crate::heard::{Event, Fault, UnitName};

/// Dangers that go where the trailer goes: it is pulled over.
const TRAVELS: &[Fault] = &[Fault::Fire, Fault::BurntSmell, Fault::Runaway];

/// Tells whether a danger is away from the site: by the sender's words, or since the trailer that it is told of has left.
/// Wherever somebody is hurt then, nobody knows the address.
pub(super) fn is_there(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let unit = danger.unit.as_ref();
    is_told(hearing, unit)
        || hazard::is_of_the_road(&danger.action)
        || unit.is_some_and(|unit| has_left(hearing, unit))
}

/// Tells whether a danger is on the road itself, and not merely somewhere since the trailer left.
fn travels(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let mut travels = TRAVELS.iter().map(|fault| FindingId::of_fault(*fault));
    is_told(hearing, danger.unit.as_ref()) || travels.any(|id| id == danger.id)
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
        Some(Some(unit)) => reply.say("left-no-address", &[("unit", unit.as_str().into())]),
        Some(None) => reply.say("on-a-road", &[]),
        None => {}
    }
}
