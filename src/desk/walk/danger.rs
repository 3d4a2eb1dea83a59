//! While somebody is in danger nothing else is talked of: advice that follows from what was done to make it safe waits.

use chrono::TimeDelta;

use super::super::answer::Reply;
use super::super::hazard;
use super::super::receive::{Hearing, keeps_out, say_first};
use super::super::situate::Case;
use super::{Check, GUARD_LASTS};
use crate::dialogue::{STEP_LASTS, Told};
use crate::finding::{Finding, FindingId, Level, Urgency};
use crate::heard::{Fault, UnitName};
use crate::rules::steps;

/// Holds back what a message brings up on a trailer where somebody is in danger, unless the sender tells a new reading or a
/// new fault: "unplugged it" is no time to drain a hose. It still holds, and is listed.
pub(in crate::desk) fn hold_back(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>) {
    for case in cases {
        let told = &case.report;
        if !told.readings.is_empty() || !told.faults.is_empty() || !is_open(hearing, case) {
            continue;
        }
        let waits = |finding: &Finding| {
            finding.unit.as_ref() == Some(&case.unit) && finding.level < Level::Warning
        };
        let findings = std::mem::take(&mut reply.findings);
        let (held, rest): (Vec<_>, Vec<_>) = findings.into_iter().partition(waits);
        reply.findings = rest;
        // what freezes does not wait to be known: in a line now, in full when the check has ended
        let freezes = |finding: &Finding| {
            finding.id == FindingId::ColdFreezeSoon && finding.urgency == Urgency::Now
        };
        if held.iter().any(freezes) {
            let unit = case.unit.as_str();
            reply.say("danger-freeze-waits", &[("unit", unit.into())]);
        }
        reply.listed.extend(held);
    }
}

/// Holds back what is done about an ordinary fault on a trailer that everybody is kept out of, so that no check of it starts:
/// nobody goes in to reset a breaker beside gas. The danger is said first, unless it is `said` already.
pub(in crate::desk) fn hold_faults(
    cases: &[Case],
    said: impl Fn(&UnitName) -> bool,
    reply: &mut Reply<'_>,
) {
    for case in cases {
        let open = keeps_out(|fault| case.now.has(fault));
        // a smell beside gas has words of its own
        let gas = open.contains(&Fault::GasSmell) || open.contains(&Fault::GasIllness);
        let mut faults = case.report.faults.clone();
        let other = |fault: &Fault| Fault::DANGERS.contains(fault) || gas && *fault == Fault::Odor;
        faults.retain(|fault| !other(fault));
        if open.is_empty() || faults.is_empty() {
            continue;
        }
        let here = |finding: &Finding| finding.unit.as_ref() == Some(&case.unit);
        let of_one = |finding: &Finding, faults: &[Fault]| {
            let mut ids = faults.iter().map(|fault| FindingId::of_fault(*fault));
            here(finding) && ids.any(|id| id == finding.id)
        };
        let waits = |finding: &Finding| finding.level < Level::Warning && of_one(finding, &faults);
        let findings = std::mem::take(&mut reply.findings);
        let (held, rest): (Vec<_>, Vec<_>) = findings.into_iter().partition(waits);
        reply.findings = rest;
        faults.retain(|fault| held.iter().any(|found| of_one(found, &[*fault])));
        if faults.is_empty() {
            continue;
        }
        reply.listed.extend(held);
        // its task and its alarm stay: only nobody goes to it now
        let freezes = |finding: &&mut Finding| {
            here(finding)
                && faults.contains(&Fault::NoPower)
                && finding.id == FindingId::ColdFreezeSoon
                && finding.urgency == Urgency::Now
        };
        for finding in reply.findings.iter_mut().filter(freezes) {
            finding.action = "cold-freeze-soon-danger".into();
        }
        let anew = reply.findings.iter().any(|found| of_one(found, &open));
        if !anew && !said(&case.unit) {
            let key = match open.contains(&Fault::GasSmell) {
                true => "danger-fault-gas",
                false => "danger-fault",
            };
            say_first(key, &case.unit, &open, reply);
        }
        let names: Vec<String> = faults.iter().map(|f| reply.voice.fault(*f)).collect();
        let what = reply.voice.all_of(&names);
        let args = [("unit", case.unit.as_str().into()), ("what", what.into())];
        reply.say("danger-fault-waits", &args);
    }
}

/// Tells whether a danger was told since a step was asked, and stands: until it is over, no word answers the step. Where the
/// check is that of a danger itself, it goes on.
pub(super) fn stands_between(hearing: &Hearing<'_>, check: &Check) -> bool {
    let stands = |told: &&Told| {
        let since = told.at > check.asked && hearing.now - told.at <= GUARD_LASTS;
        let unit = told.unit.as_ref().filter(|_| since);
        unit.is_some_and(|unit| {
            let dangers = hearing.dangers_on(unit);
            let mut of_it = dangers.iter().map(|fault| FindingId::of_fault(*fault));
            let of_a_hazard =
                || told.id == FindingId::SiteUnsafe && !hazards(hearing, unit).is_empty();
            of_it.any(|id| id == told.id) || of_a_hazard()
        })
    };
    !Fault::DANGERS.contains(&check.fault) && hearing.talk.told.iter().find(stands).is_some()
}

/// Returns the codes of the hazards of a trailer that stand and are a danger.
fn hazards(hearing: &Hearing<'_>, unit: &UnitName) -> Vec<String> {
    let kept = hearing.desk.book.unit(unit);
    let codes = kept.map(|kept| kept.state().hazards.keys().cloned());
    let codes = codes.into_iter().flatten();
    codes.filter(|code| hazard::is_a_danger(code)).collect()
}

/// Returns by name what stands on a trailer and can hurt somebody badly.
pub(super) fn standing(hearing: &Hearing<'_>, unit: &UnitName, reply: &Reply<'_>) -> Vec<String> {
    let faults = hearing.dangers_on(unit).into_iter();
    let mut names: Vec<String> = faults.map(|fault| reply.voice.fault(fault)).collect();
    let codes = hazards(hearing, unit).into_iter();
    names.extend(codes.map(|code| reply.voice.word(&format!("name-site-unsafe-{code}"))));
    names
}

/// Lists with the turn what stands on a trailer and can hurt somebody, where it is told in other words.
pub(in crate::desk) fn list_standing(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    reply: &mut Reply<'_>,
) {
    let dangers: Vec<FindingId> = hearing
        .dangers_on(unit)
        .iter()
        .map(|fault| FindingId::of_fault(*fault))
        .collect();
    for finding in hearing.asked_about(unit).pressing() {
        let of_it = dangers.contains(&finding.id) || finding.id == FindingId::SiteUnsafe;
        let same = |told: &Finding| told.id == finding.id && told.unit == finding.unit;
        let told = reply.findings.iter().chain(&reply.listed).any(same);
        if of_it && !told {
            reply.listed.push(finding);
        }
    }
}

/// Says what was held back once the check of a danger has ended: what the cold does to a trailer without power.
pub(super) fn tell_what_waited(hearing: &Hearing<'_>, open: &[Check], reply: &mut Reply<'_>) {
    let same =
        |check: &Check, other: &Check| check.unit == other.unit && check.fault == other.fault;
    let over = |check: &&Check| !open.iter().any(|other| same(check, other));
    let mut over = hearing.talk.checks.iter().filter(over);
    let Some(check) = over.find(|check| Fault::DANGERS.contains(&check.fault)) else {
        return;
    };
    let of_it = |finding: &Finding| {
        finding.unit.as_ref() == Some(&check.unit) && finding.id == FindingId::ColdFreezeSoon
    };
    let findings = hearing.asked_about(&check.unit).findings();
    let waited = findings
        .into_iter()
        .find(|finding| of_it(finding) && finding.urgency == Urgency::Now);
    if let Some(waited) = waited.filter(|_| !reply.findings.iter().any(of_it)) {
        reply.listed.retain(|finding| !of_it(finding));
        let due = |_: &UnitName| TimeDelta::zero();
        reply.board.open_for(std::slice::from_ref(&waited), due);
        reply.findings.push(waited);
    }
}

/// Tells whether a danger on this trailer was open before the message: its check, or where none guides through it, what
/// was told of it a short while ago.
fn is_open(hearing: &Hearing<'_>, case: &Case) -> bool {
    let checked = |check: &&Check| check.unit == case.unit && Fault::DANGERS.contains(&check.fault);
    let lasts = |since, at_most: TimeDelta| hearing.now - since <= at_most;
    let mut checks = hearing.talk.checks.iter().filter(checked);
    let unguided = |fault: &&Fault| steps(**fault).is_empty();
    let lately = |fault: &Fault| {
        let since = case.before.faults.get(fault);
        since.is_some_and(|since| lasts(*since, GUARD_LASTS)) && case.now.has(*fault)
    };
    checks.any(|check| lasts(check.asked, STEP_LASTS))
        || Fault::DANGERS.iter().filter(unguided).any(lately)
}
