//! What goes without saying again: advice that stands since it was last told, and advice that another line already gives.
//!
//! Leaving a line out of a reply takes nothing out of the findings. Whatever could hurt somebody is always said.

use chrono::{DateTime, TimeDelta, Utc};

use crate::dialogue::{Talk, Told};
use crate::finding::{Finding, FindingId, Level};

/// How long advice that stands need not be said again to the same person.
const STANDS: TimeDelta = TimeDelta::hours(3);

/// Findings about how a unit is set up: they hold from message to message, with the same numbers.
const STANDING: &[FindingId] = &[
    FindingId::WaterHoseUndersized,
    FindingId::PowerCordDrop,
    FindingId::PowerTooFewCircuits,
    FindingId::PowerGenerator,
    FindingId::CrowdUnderServed,
    FindingId::ColdNoColdPackage,
];

/// Pairs of which the first need not be said where the second is.
const SAID_BY: &[(FindingId, FindingId)] = &[
    (FindingId::TroubleLowFlow, FindingId::WaterUnderPressure),
    (FindingId::WasteBookPumpOut, FindingId::WasteCloseNow),
];

/// Tells whether a finding must be said to this person now, among the others of the same reply.
pub(super) fn is_news(
    finding: &Finding,
    others: &[Finding],
    talk: &Talk,
    now: DateTime<Utc>,
) -> bool {
    if finding.level > Level::Notice {
        return true;
    }
    let by_another = SAID_BY.iter().any(|(quiet, loud)| {
        *quiet == finding.id
            && others
                .iter()
                .any(|other| other.id == *loud && other.unit == finding.unit)
    });
    let told_lately = STANDING.contains(&finding.id)
        && talk.told.iter().any(|told| {
            told.id == finding.id
                && told.unit == finding.unit
                && told.urgency >= finding.urgency
                && now - told.at <= STANDS
        });
    !by_another && !told_lately
}

/// Notes what was told, and forgets what was told too long ago to matter.
pub(super) fn note(findings: &[Finding], talk: &mut Talk, now: DateTime<Utc>) {
    talk.told.retain(|told| now - told.at <= STANDS);
    for finding in findings
        .iter()
        .filter(|finding| STANDING.contains(&finding.id))
    {
        let known = talk.told.iter().any(|told| {
            told.id == finding.id && told.unit == finding.unit && told.urgency >= finding.urgency
        });
        if !known {
            talk.told.push(Told {
                id: finding.id,
                unit: finding.unit.clone(),
                urgency: finding.urgency,
                at: now,
            });
        }
    }
}
