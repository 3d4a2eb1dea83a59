//! The load that trips a breaker or GFCI: found once, it stays off until somebody has tested it.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::situate::Case;
use crate::book::{Personal, Record, StandingNote};
use crate::dialogue::Check;
use crate::finding::{FactValue, Finding, FindingId, TaskKind};
use crate::heard::Fault;

/// What is wrong while a heater stays off.
const HEAT: [FindingId; 2] = [FindingId::TroubleNoHeat, FindingId::TroubleNoHotWater];

/// Names the load, opens the work on it, and leaves a note on the trailer for whoever comes next.
pub(super) fn found(
    hearing: &Hearing<'_>,
    check: &Check,
    load: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let unit = check.unit.as_str();
    let what = reply.voice.word(&format!("load-{load}"));
    reply.say(
        "walk-culprit",
        &[("unit", unit.into()), ("what", what.as_str().into())],
    );
    // what it trips was said when the check began
    let id = FindingId::of_fault(check.fault);
    let findings = std::mem::take(&mut reply.findings);
    let said = |finding: &Finding| finding.id == id && finding.unit.as_ref() == Some(&check.unit);
    let (again, rest): (Vec<_>, Vec<_>) = findings.into_iter().partition(said);
    reply.findings = rest;
    reply.listed.extend(again);
    let found = format!("load-{load}");
    reply
        .board
        .open_found(&check.unit, TaskKind::Electrician, id, found);
    let name = reply.voice.fault(check.fault);
    let text = reply.voice.say(
        "walk-culprit-note",
        &[("what", what.as_str().into()), ("name", name.into())],
    );
    records.push(Record::Note {
        note: StandingNote {
            unit: check.unit.clone(),
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            text: Personal::new(text),
            load: Some(load.to_owned()),
        },
    });
}

/// Takes back advice to switch a heater on that was found to trip what feeds it.
pub(in crate::desk) fn keep_off(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>) {
    for case in cases {
        let Some(load) = heater_kept_off(hearing, case) else {
            continue;
        };
        let of_this = |finding: &Finding| finding.unit.as_ref() == Some(&case.unit);
        let switches_on = |finding: &Finding| {
            let next = finding.facts.find("next").map(|fact| &fact.value);
            let heater = matches!(next, Some(FactValue::Text(step)) if step == "heater");
            of_this(finding) && (finding.id == FindingId::ColdTankHeaterOn || heater)
        };
        let lacks_heat = |finding: &Finding| of_this(finding) && HEAT.contains(&finding.id);
        let told = reply.findings.iter().any(switches_on);
        reply.findings.retain(|finding| !switches_on(finding));
        if told || reply.findings.iter().any(lacks_heat) {
            let what = reply.voice.word(&format!("load-{load}"));
            reply.say(
                "walk-culprit-stays-off",
                &[("unit", case.unit.as_str().into()), ("what", what.into())],
            );
        }
    }
}

/// Returns the heater that was found to trip what feeds a trailer, while that still trips.
pub(super) fn heater_kept_off<'a>(hearing: &'a Hearing<'_>, case: &Case) -> Option<&'a str> {
    let trips = case.now.has(Fault::GfciTrip) || case.now.has(Fault::BreakerTrip);
    let notes = hearing.desk.book.standing().notes(&case.unit).iter();
    let load = notes.filter_map(|note| note.load.as_deref()).next_back();
    load.filter(|load| trips && load.contains("heater"))
}
