//! What a short message could be as an answer to something the bot asked.

use super::concept::{Concept, Mark, Noun};
use super::item::{Item, What};
use super::unit::Group;
use crate::heard::{Answer, ShortAnswer};

/// The most items that a bare answer has.
const LONGEST: usize = 5;

/// Reads a message as a possible answer.
pub(super) fn find(items: &[Item], groups: &[Group]) -> Option<Answer> {
    let words: Vec<&Item> = items
        .iter()
        .filter(|i| {
            !matches!(i.what, What::Sign(_) | What::Break)
                && !i.is(Mark::Filler)
                && !i.is(Mark::Article)
        })
        .collect();
    if words.is_empty() || words.len() > LONGEST {
        return None;
    }
    let mut answer = Answer::default();
    for item in &words {
        match item.what {
            What::Is(Concept::Answer(word)) => answer.word = answer.word.or(Some(word)),
            What::Is(Concept::Mark(Mark::No)) if words.len() <= 2 => {
                answer.word = answer.word.or(Some(ShortAnswer::No))
            }
            What::Is(Concept::Unit(unit)) => answer.measure = Some(unit.code().into()),
            What::Is(Concept::Noun(Noun::BeforeRegulator)) => {
                answer.word = Some(ShortAnswer::Before)
            }
            What::Is(Concept::Noun(Noun::AfterRegulator)) => answer.word = Some(ShortAnswer::After),
            What::Is(Concept::Noun(noun)) => {
                answer.noun = answer.noun.or_else(|| Some(noun.answer_code().into()))
            }
            What::Number(n) => {
                answer.number = answer.number.or(Some(n.value));
                if let Some(unit) = n.unit {
                    answer.measure = Some(unit.code().into());
                }
            }
            What::Is(Concept::Level(level)) => answer.number = answer.number.or(Some(level)),
            What::Units(g) => {
                let name = groups[g].names.last()?;
                answer.unit = Some(name.clone());
                if let Ok(value) = name.as_str().parse() {
                    answer.number = answer.number.or(Some(value));
                }
            }
            What::Labelled => {}
            _ if answer.word.is_some() => {}
            _ => return None,
        }
    }
    (answer != Answer::default()).then_some(answer)
}
