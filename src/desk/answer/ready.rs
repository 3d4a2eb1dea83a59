//! Whether a trailer may be towed, and whether guests may be let in.

use super::question::{numbered, presses, to_do, warn};
use super::reply::Reply;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::finding::{Caution, Finding, FindingId};
use crate::heard::{Entry, Plan, PlanKind};
use crate::reply::Arg;
use crate::rules;
use crate::situation::Occasion;

/// May it be towed?
pub(super) fn tow(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let plan = Plan {
        unit: Some(case.unit.clone()),
        kind: PlanKind::Other,
        text: "tow".into(),
    };
    let asked = Case::new(
        hearing.desk,
        &hearing.fleet,
        &case.unit,
        case.at,
        (case.before.clone(), case.now.clone()),
        Entry::default(),
        vec![plan],
        Occasion::Asked,
    );
    let stops: Vec<Finding> = asked
        .findings()
        .into_iter()
        .filter(|finding| finding.id.topic() == "tow")
        .collect();
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let left = asked
        .situation()
        .map(|situation| rules::leaving(&situation))
        .unwrap_or_default();
    let key = match (stops.is_empty(), left.is_empty()) {
        (false, _) => "answer-tow-no",
        (true, false) => "answer-tow-not-yet",
        (true, true) => "answer-tow-yes",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    if !left.is_empty() {
        let names: Vec<String> = left
            .iter()
            .map(|code| reply.voice.word(&format!("value-{code}")))
            .collect();
        let line = reply
            .voice
            .say("answer-tow-left", &[("names", names.join(", ").into())]);
        reply.first.push(line);
    }
    if stops.is_empty() {
        warn(&[Caution::TowEmpty, Caution::Breakaway], reply);
    }
    reply.findings.extend(stops);
    Vec::new()
}

/// May guests be let in?
pub(super) fn open(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let findings = case.findings();
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let first: Vec<&Finding> = findings
        .iter()
        .filter(|finding| presses(finding) || finding.id == FindingId::SiteSetUpNext)
        .collect();
    let key = match (first.is_empty(), &case.now.last_word) {
        (false, _) => "answer-open-no",
        (true, None) => "answer-open-unread",
        (true, Some(_)) => "answer-open-yes",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    let steps: Vec<String> = first.iter().map(|finding| to_do(finding, reply)).collect();
    reply.first.extend(numbered(&steps));
    first.into_iter().map(|finding| finding.id).collect()
}
