//! A danger on the road: help is not sent to the site that the plan has the trailer at, the crew say where they are.

use super::answer::Reply;
use super::hazard;
use super::receive::Hearing;
use crate::book::Stage;
use crate::finding::{Finding, FindingId, Level};
use crate::heard::{Event, Fault, UnitName};

/// Dangers that go where the trailer goes. Somebody hurt may be at the site that it has just left.
const TRAVELS: &[Fault] = &[Fault::Fire, Fault::BurntSmell, Fault::Runaway];

/// Tells whether a danger is on the road: by the sender's words, or since the trailer that it is on has left.
pub(super) fn is_there(hearing: &Hearing<'_>, danger: &Finding) -> bool {
    let mut travels = TRAVELS.iter().map(|fault| FindingId::of_fault(*fault));
    let unit = danger.unit.as_ref();
    is_told(hearing, unit)
        || travels.any(|id| id == danger.id) && unit.is_some_and(|unit| has_left(hearing, unit))
}

/// Tells whether the sender is on the road with this trailer, by their words now or within the hour.
pub(super) fn is_told(hearing: &Hearing<'_>, unit: Option<&UnitName>) -> bool {
    hearing.desk.phrases.holds("road", "says", hearing.text)
        && !hearing.desk.phrases.holds("road", "not", hearing.text)
        || hazard::told_lately(hearing, "road-loose", unit)
}

/// Tells whether the last that was told of a trailer's whereabouts is that it left.
fn has_left(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let Some(kept) = hearing.desk.book.unit(unit) else {
        return false;
    };
    let state = kept.state();
    let left = state.when(Event::Left);
    state.stage() == Stage::Hitched && left.is_some() && left >= state.when(Event::Hitched)
}

/// Takes the site's address out of what is said of a danger on the road.
pub(super) fn without_the_site(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut changed = false;
    let danger = |finding: &&mut Finding| finding.level == Level::Danger;
    for finding in reply.findings.iter_mut().filter(danger) {
        let Some(short) = finding.action.strip_suffix("-at") else {
            continue;
        };
        if is_there(hearing, finding) {
            // there is no source to cut the power at, and traffic to keep out of
            let road = format!("{short}-road");
            finding.action = match reply.voice.knows(&road) {
                true => road.into(),
                false => short.to_owned().into(),
            };
            changed = true;
        }
    }
    if changed {
        reply.say("on-a-road", &[]);
    }
}
