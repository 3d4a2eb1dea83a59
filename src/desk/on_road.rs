//! A danger on the road: help is not sent to the site that the plan has the trailer at, the crew say where they are.

use super::answer::Reply;
use super::hazard;
use super::receive::Hearing;
use crate::finding::{Finding, Level};
use crate::heard::UnitName;

/// Tells whether the sender is on the road with this trailer, by their words now or within the hour.
pub(super) fn is_told(hearing: &Hearing<'_>, unit: Option<&UnitName>) -> bool {
    hearing.desk.phrases.holds("road", "says", hearing.text)
        && !hearing.desk.phrases.holds("road", "not", hearing.text)
        || hazard::told_lately(hearing, "road-loose", unit)
}

/// Takes the site's address out of what is said of a danger on the road.
pub(super) fn without_the_site(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut changed = false;
    let danger = |finding: &&mut Finding| finding.level == Level::Danger;
    for finding in reply.findings.iter_mut().filter(danger) {
        let Some(short) = finding.action.strip_suffix("-at") else {
            continue;
        };
        if is_told(hearing, finding.unit.as_ref()) {
            finding.action = short.to_owned().into();
            changed = true;
        }
    }
    if changed {
        reply.say("on-a-road", &[]);
    }
}
