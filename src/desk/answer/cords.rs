//! How many cords a trailer needs, and into which circuits.

use super::question::warn;
use super::reply::Reply;
use crate::desk::situate::Case;
use crate::finding::{Caution, FindingId};
use crate::reply::Arg;
use crate::rules;

/// How many cords, and into which circuits?
pub(super) fn cords(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let Some((situation, spec)) = case.situation().zip(case.spec()) else {
        return Vec::new();
    };
    let feed = rules::circuits_to_feed(&situation);
    let names: Vec<String> = feed.iter().map(u8::to_string).collect();
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("count", feed.len().into()),
        ("names", reply.voice.all_of(&names).into()),
        ("circuit", u32::from(spec.battery.converter_circuit).into()),
    ];
    let line = reply.voice.say("answer-cords", &args);
    reply.first.push(line);
    let offered = case.site().and_then(|site| site.power.cords);
    if let Some(offered) = offered {
        let line = reply
            .voice
            .say("answer-cords-offered", &[("count", offered.into())]);
        reply.first.push(line);
    }
    warn(&[Caution::NoBypass, Caution::LocalCode], reply);
    vec![FindingId::PowerTooFewCircuits]
}
