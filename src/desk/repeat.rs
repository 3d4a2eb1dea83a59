//! What goes without saying again: advice that stands since it was last told, and advice that another line already gives.
//!
//! Leaving a line out of a reply takes nothing out of the findings. Whatever could hurt somebody is always said.

use chrono::{DateTime, TimeDelta, Utc};

use crate::dialogue::{Talk, Told};
use crate::finding::{FactValue, Finding, FindingId, Level, Origin};
use crate::heard::{Heard, UnitName};

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
    // both at once are one lost neutral, and nobody is to look for a thicker cord
    (FindingId::PowerLowVoltage, FindingId::PowerHighVoltage),
];

/// Topics whose findings rest on readings. What else somebody reports again is a new event: it tripped again.
const READ: &[&str] = &["water", "waste", "cold", "heat", "power", "crowd"];
/// How long what nobody changed goes by name to the person who was told.
const UNCHANGED: TimeDelta = TimeDelta::hours(1);

/// First words that were said in full a moment ago, and what of them is said again.
const AGAIN: &[(FindingId, &str)] = &[
    (FindingId::TroubleFire, "again-fire"),
    (FindingId::TroubleGasIllness, "again-gas-illness"),
    (FindingId::TroubleOdor, "again-gas-smell"),
    (FindingId::PowerShock, "again-shock"),
    (FindingId::CrewPersonHurt, "again-person-hurt"),
    (FindingId::TroublePersonTrapped, "again-person-trapped"),
    (FindingId::TroubleRunaway, "again-runaway"),
    (FindingId::WasteSpill, "again-spill"),
    (FindingId::TroubleHotPlug, "again-hot-plug"),
    (FindingId::TroubleCordDamaged, "again-cord-damaged"),
    (FindingId::TowWasteAboard, "again-waste-aboard"),
    (FindingId::SiteNotChocked, "again-not-chocked"),
    (FindingId::SiteUnsafe, "again-unsafe"),
];
/// What a second word of may be news that somebody's life hangs on: always told in full.
const ALWAYS_FULL: &[FindingId] = &[
    FindingId::CrewPersonHurt,
    FindingId::TroublePersonTrapped,
    FindingId::TroubleRunaway,
];
/// How long first words that could save somebody are remembered well enough for a line of them to do.
const JUST_TOLD: TimeDelta = TimeDelta::minutes(20);

/// Returns a finding as it is told again while nothing has changed: its essential caution in a line. None where it is told
/// in full.
pub(super) fn again(finding: &Finding, talk: &Talk, now: DateTime<Utc>) -> Option<Finding> {
    let (_, says) = AGAIN.iter().find(|(id, _)| *id == finding.id)?;
    let told = told_of(finding, talk).filter(|told| now - told.at <= JUST_TOLD)?;
    // people still inside, a live plug: what to do now depends on the act
    let act = finding.id == FindingId::SiteUnsafe && finding.level == Level::Danger;
    let same = told.says == gist(finding) && !ALWAYS_FULL.contains(&finding.id) && !act;
    (finding.level >= Level::Warning && same).then(|| Finding {
        action: (*says).into(),
        cautions: Vec::new(),
        ..finding.clone()
    })
}

/// Returns what is said again of a danger that nobody guides through, to a message on which there is nothing else to say;
/// `stands` tells whether it is still reported.
pub(super) fn still_open(
    talk: &Talk,
    now: DateTime<Utc>,
    stands: impl Fn(&UnitName, FindingId) -> bool,
) -> Option<(&UnitName, &'static str)> {
    talk.told.iter().rev().find_map(|told| {
        let (_, says) = AGAIN.iter().find(|(id, _)| *id == told.id)?;
        let unit = told.unit.as_ref()?;
        (now - told.at <= JUST_TOLD && stands(unit, told.id)).then_some((unit, *says))
    })
}

/// How a finding is told to somebody.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Telling {
    /// In full, with its cautions.
    Full,
    /// By its name, among what stands unchanged.
    Named,
    /// Not at all: another line says it, or it stands for the whole job.
    Silent,
}

/// Tells how a finding is to be told to this person now, among the others of the same reply.
///
/// What could kill is told in full each time. Other advice that this person was told within the hour, about the same
/// numbers, goes by name, unless the message reads one of them (`read`) again.
pub(super) fn telling(
    finding: &Finding,
    others: &[Finding],
    read: &[f64],
    talk: &Talk,
    now: DateTime<Utc>,
) -> Telling {
    if finding.level <= Level::Notice {
        let by_another = SAID_BY.iter().any(|(quiet, loud)| {
            *quiet == finding.id
                && others
                    .iter()
                    .any(|other| other.id == *loud && other.unit == finding.unit)
        });
        // another number of cords is fed otherwise
        let news = finding.id == FindingId::PowerTooFewCircuits
            && told_of(finding, talk).is_some_and(|told| told.says != gist(finding));
        let stands = STANDING.contains(&finding.id) && is_told(finding, talk, now, STANDS) && !news;
        if by_another || stands {
            return Telling::Silent;
        }
    }
    let of_a_reading = READ.contains(&finding.id.topic());
    let asks = finding.action.ends_with("-ask") || finding.action.contains("-ask-");
    let in_talk = |told: &Told| told.says == gist(finding) && now - told.at <= UNCHANGED;
    let unchanged = told_of(finding, talk).is_some_and(in_talk);
    let read_again = numbers(finding).any(|number| read.contains(&number));
    if finding.level < Level::Warning && of_a_reading && unchanged && !read_again && !asks {
        Telling::Named
    } else {
        Telling::Full
    }
}

/// Tells whether this person was told of it within the hour, no less urgent than now.
pub(super) fn told_lately(finding: &Finding, talk: &Talk, now: DateTime<Utc>) -> bool {
    is_told(finding, talk, now, UNCHANGED)
}

fn is_told(finding: &Finding, talk: &Talk, now: DateTime<Utc>, within: TimeDelta) -> bool {
    told_of(finding, talk)
        .is_some_and(|told| told.urgency >= finding.urgency && now - told.at <= within)
}

fn told_of<'t>(finding: &Finding, talk: &'t Talk) -> Option<&'t Told> {
    talk.told
        .iter()
        .find(|told| told.id == finding.id && told.unit == finding.unit)
}

/// Returns what a finding says, by its text and the numbers that were read for it: a new reading is news.
fn gist(finding: &Finding) -> String {
    let mut gist = finding.action.to_string();
    for number in numbers(finding) {
        gist.push_str(&format!(" {number}"));
    }
    gist
}

/// The numbers that were read for a finding.
fn numbers(finding: &Finding) -> impl Iterator<Item = f64> {
    finding
        .facts
        .items
        .iter()
        .filter(|fact| fact.origin == Origin::Read)
        .filter_map(|fact| match fact.value {
            FactValue::Number(number, _) => Some(number),
            _ => None,
        })
}

/// Notes what was told in full, and forgets what was told too long ago to matter.
pub(super) fn note(findings: &[Finding], read: &[f64], talk: &mut Talk, now: DateTime<Utc>) {
    talk.told.retain(|told| now - told.at <= STANDS);
    let news: Vec<&Finding> = findings
        .iter()
        .filter(|finding| telling(finding, findings, read, talk, now) == Telling::Full)
        .collect();
    for finding in news {
        talk.told
            .retain(|told| told.id != finding.id || told.unit != finding.unit);
        talk.told.push(Told {
            id: finding.id,
            unit: finding.unit.clone(),
            urgency: finding.urgency,
            says: gist(finding),
            at: now,
        });
    }
}

/// Returns every number that a message reads.
pub(super) fn read_in(heard: &Heard) -> Vec<f64> {
    let plain = heard
        .entries
        .iter()
        .flat_map(|entry| entry.readings.values.values().copied());
    let amps = heard
        .entries
        .iter()
        .flat_map(|entry| entry.readings.amps.iter().map(|read| read.amps));
    plain.chain(amps).collect()
}
