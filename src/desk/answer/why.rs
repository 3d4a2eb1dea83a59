//! Why: the sum and the source behind the last advice.

use super::reply::Reply;
use crate::desk::receive::Hearing;
use crate::desk::{settle, standing};
use crate::finding::Finding;
use crate::heard::Ask;

pub(super) fn why(hearing: &Hearing<'_>, ask: &Ask, reply: &mut Reply<'_>) {
    let about = match ask {
        Ask::Why { unit: Some(name) } => settle::known(&hearing.fleet, name),
        _ => None,
    };
    // "why pressure" picks the advice by its topic's words; a bare "why" means the worst of the last reply
    let words = hearing.text.to_lowercase();
    let advice: Vec<&Finding> = hearing
        .talk
        .advice
        .iter()
        .filter(|finding| about.is_none() || finding.unit.as_ref() == about)
        .collect();
    let named = |finding: &&&Finding| {
        let name = reply.voice.name(finding.id).to_lowercase();
        let code = finding.id.code().split(['.', '-']);
        code.chain(name.split_whitespace())
            .any(|word| word.len() > 3 && words.contains(word))
    };
    let picked = advice.iter().find(named);
    match picked.or(advice.first()) {
        Some(finding) => {
            let text = reply.voice.why(finding);
            reply.lines.push(text);
            if let Some(unit) = finding
                .unit
                .as_ref()
                .filter(|_| finding.id.topic() == "tow")
            {
                standing::overrides(hearing, unit, reply);
            }
            if picked.is_none() && advice.len() > 1 {
                let names: Vec<String> = advice[1..]
                    .iter()
                    .map(|finding| reply.voice.name(finding.id))
                    .collect();
                let names = reply.voice.one_of(&names);
                reply.say("why-more", &[("names", names.into())]);
            }
        }
        None => reply.say("why-nothing", &[]),
    }
}
