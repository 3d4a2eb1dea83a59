//! What is still to be done before a trailer leaves, one step at a time, and whether it is ready to tow.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::situate::Case;
use super::super::standing;
use super::stand::guards;
use crate::dialogue::Round;
use crate::finding::{Finding, FindingId, Level, Urgency};
use crate::heard::UnitName;
use crate::reply::Arg;
use crate::rules;

/// Asks what is still to be done before leaving; at the end says whether it is ready. False at the end.
pub(super) fn leave(
    hearing: &Hearing<'_>,
    case: &Case,
    round: &mut Round,
    reply: &mut Reply<'_>,
) -> bool {
    let Some(situation) = case.situation() else {
        return false;
    };
    let mut left: Vec<&str> = rules::leaving(&situation);
    let lights = left.iter().position(|code| *code == "lights-checked");
    left.insert(lights.unwrap_or(left.len()), "chocks");
    left.push("breakaway");
    left.retain(|code| !round.confirmed.iter().any(|done| done == code));
    // by whoever did it, in this message or before
    left.retain(|code| {
        let now = |(unit, step): &(UnitName, String)| *unit == case.unit && step == code;
        !reply.confirmed.iter().any(now) && !standing::is_confirmed(hearing, &case.unit, code)
    });
    let next = left
        .iter()
        .find(|code| !round.skipped.iter().any(|skipped| skipped == *code));
    if let Some(next) = next {
        round.step = (*next).to_owned();
        let what = reply.voice.word(&format!("leave-{next}"));
        let answers = reply.voice.word("walk-answer-word");
        let what = format!("{what} {answers}");
        let args = [
            ("unit", Arg::from(case.unit.as_str())),
            ("what", what.into()),
        ];
        reply.step = Some(reply.voice.say("leave-step", &args));
        reply.step_answers = match guards(next) {
            true => &["yes", "no"],
            false => &["yes", "no", "skip"],
        };
        return true;
    }
    let heavy = overweight(hearing, &case.unit);
    if left.is_empty() && heavy.is_none() {
        reply.say("leave-ready", &[("unit", case.unit.as_str().into())]);
        return false;
    }
    let mut names: Vec<String> = left
        .iter()
        .map(|code| reply.voice.word(&format!("value-{code}")))
        .collect();
    names.extend(heavy.map(|finding| reply.voice.name(finding.id, finding.level)));
    let what = reply.voice.all_of(&names);
    reply.say(
        "leave-not-ready",
        &[("unit", case.unit.as_str().into()), ("what", what.into())],
    );
    let decided = standing::in_force(hearing, &case.unit, &reply.voice);
    reply.lines.extend(decided);
    false
}

/// Returns the finding that the trailer is too heavy, where it holds.
fn overweight(hearing: &Hearing<'_>, unit: &UnitName) -> Option<Finding> {
    let case = hearing.asked_about(unit);
    let grave = |finding: &Finding| {
        finding.id == FindingId::TowOverweight
            && finding.level >= Level::Warning
            && finding.urgency == Urgency::Now
    };
    case.findings().into_iter().find(grave)
}
