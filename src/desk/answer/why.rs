//! Why: the sum and the source behind the last advice.
//!
//! "Why pressure" picks the advice by its topic's words, which stand in `grammar/replies/why.toml`; a bare "why" means the
//! worst of the last reply.

use chrono::TimeDelta;
use serde::Deserialize;
use std::sync::LazyLock;

use super::reply::Reply;
use crate::desk::phrases::{PhraseList, Words, plain};
use crate::desk::receive::Hearing;
use crate::desk::{settle, standing};
use crate::dialogue::Told;
use crate::finding::{Finding, FindingId};
use crate::heard::{Ask, UnitName};

const WORDS: &str = include_str!("../../../grammar/replies/why.toml");

/// The numbers of advice that was told longer ago than this are worked out anew: they would be taken for those of now.
const FRESH: TimeDelta = TimeDelta::minutes(15);

/// The words by which advice is meant.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::desk) struct WhyWords {
    word: Vec<Meant>,
}

/// Words, and the findings they can mean, in order.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Meant {
    says: PhraseList,
    of: Vec<FindingId>,
}

impl WhyWords {
    /// Returns those of the built-in file, which is parsed once.
    pub(in crate::desk) fn built_in() -> &'static WhyWords {
        static BUILT_IN: LazyLock<WhyWords> =
            LazyLock::new(|| toml::from_str(WORDS).expect("the built-in words are read by a test"));
        &BUILT_IN
    }

    /// Picks the advice that a text names; none where it names none of it.
    fn pick<'a>(&self, text: &str, advice: &[&'a Finding]) -> Option<&'a Finding> {
        self.meant(text).find_map(|meant| {
            meant
                .of
                .iter()
                .find_map(|id| advice.iter().find(|finding| finding.id == *id).copied())
        })
    }

    /// Tells whether a text has a word of any advice.
    fn names_any(&self, text: &str) -> bool {
        self.meant(text).next().is_some()
    }

    fn meant(&self, text: &str) -> impl Iterator<Item = &Meant> {
        let words = Words::of(text);
        self.word
            .iter()
            .filter(move |meant| words.hold_any(&meant.says))
    }
}

/// Answers why: by the word of its topic, else the worst of the last advice.
pub(super) fn why(hearing: &Hearing<'_>, ask: &Ask, reply: &mut Reply<'_>) {
    let about = match ask {
        Ask::Why { unit: Some(name) } => settle::known(&hearing.fleet, name),
        _ => None,
    };
    let text = plain(hearing.text);
    let words = &hearing.desk.why_words;
    let advice: Vec<&Finding> = hearing
        .talk
        .advice
        .iter()
        .filter(|finding| about.is_none() || finding.unit.as_ref() == about)
        .collect();
    if let Some(finding) = words
        .pick(&text, &advice)
        .or(own_name(&text, &advice, reply))
    {
        return tell(hearing, finding, reply);
    }
    // advice that this person was not given lately may hold all the same
    let unit =
        about.or_else(|| settle::known(&hearing.fleet, hearing.talk.unit_at(hearing.inbound.at)?));
    if let Some(unit) = unit.filter(|_| words.names_any(&text) || advice.is_empty()) {
        let found = standing_findings(hearing, unit);
        let all: Vec<&Finding> = found.iter().collect();
        let picked = words.pick(&text, &all);
        if let Some(finding) = picked.or(all.first().copied().filter(|_| !words.names_any(&text))) {
            return tell(hearing, finding, reply);
        }
    }
    let names = |advice: &[&Finding], reply: &Reply<'_>| {
        let names: Vec<String> = advice
            .iter()
            .map(|finding| reply.voice.name(finding.id, finding.level))
            .collect();
        reply.voice.one_of(&names)
    };
    match advice.split_first() {
        None => reply.say("why-nothing", &[]),
        Some(_) if words.names_any(&text) => {
            let names = names(&advice, reply);
            reply.say("why-not-that", &[("names", names.into())]);
        }
        Some((first, rest)) => {
            tell(hearing, first, reply);
            if !rest.is_empty() {
                let names = names(rest, reply);
                reply.say("why-more", &[("names", names.into())]);
            }
        }
    }
}

/// Picks advice by a word of the name it goes by in lists.
fn own_name<'a>(text: &str, advice: &[&'a Finding], reply: &Reply<'_>) -> Option<&'a Finding> {
    let words = Words::of(text);
    let named = |finding: &&&Finding| {
        let name = plain(&reply.voice.name(finding.id, finding.level));
        name.split(' ')
            .any(|word| word.len() > 3 && words.hold(word))
    };
    advice.iter().find(named).copied()
}

fn standing_findings(hearing: &Hearing<'_>, unit: &UnitName) -> Vec<Finding> {
    hearing.asked_about(unit).findings()
}

/// Returns a finding as it stands now, where it was told long before; none where it holds no more, or is fresh.
fn as_of_now(hearing: &Hearing<'_>, finding: &Finding) -> Option<Finding> {
    let unit = finding.unit.as_ref()?;
    let of_it = |told: &&Told| told.id == finding.id && told.unit.as_ref() == Some(unit);
    let told = hearing
        .talk
        .told
        .iter()
        .filter(of_it)
        .map(|told| told.at)
        .max();
    told.filter(|told| hearing.now - *told > FRESH)?;
    let found = standing_findings(hearing, unit);
    found.into_iter().find(|now| now.id == finding.id)
}

fn tell(hearing: &Hearing<'_>, finding: &Finding, reply: &mut Reply<'_>) {
    let fresh = as_of_now(hearing, finding);
    let finding = fresh.as_ref().unwrap_or(finding);
    let text = reply.voice.why(finding);
    reply.lines.push(text);
    if let Some(unit) = finding
        .unit
        .as_ref()
        .filter(|_| finding.id.topic() == "tow")
    {
        standing::overrides(hearing, unit, reply);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Facts, Level, Urgency};

    fn picked(text: &str, ids: &[FindingId]) -> Option<FindingId> {
        let found: Vec<Finding> = ids
            .iter()
            .map(|id| Finding::new(*id, Level::Notice, Urgency::Soon, Facts::new()))
            .collect();
        let advice: Vec<&Finding> = found.iter().collect();
        WhyWords::built_in()
            .pick(&plain(text), &advice)
            .map(|finding| finding.id)
    }

    #[test]
    fn a_word_of_the_topic_picks_its_advice() {
        use FindingId as F;
        let all = [
            F::WaterOverPressure,
            F::ColdCrewCold,
            F::ColdFreezeSoon,
            F::WasteBookPumpOut,
            F::ColdTankHeaterOn,
        ];
        for (text, wanted) in [
            ("why tank", F::WasteBookPumpOut),
            ("why the truck", F::WasteBookPumpOut),
            ("why the tank heater", F::ColdTankHeaterOn),
            ("why pressure", F::WaterOverPressure),
            ("por qué presión", F::WaterOverPressure),
            ("¿por qué el tanque?", F::WasteBookPumpOut),
            ("why is it freezing", F::ColdFreezeSoon),
            ("por qué frío", F::ColdFreezeSoon),
            ("why gloves", F::ColdCrewCold),
        ] {
            assert_eq!(picked(text, &all), Some(wanted), "{text}");
        }
        assert_eq!(picked("why battery", &all), None);
        assert_eq!(picked("why", &all), None);
    }
}
