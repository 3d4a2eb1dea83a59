//! What the sender wants back: a status, a forecast, the tasks, help.

use super::concept::{AskWord, Concept, Mark};
use super::item::{Form, Item, What};
use super::scope::Sentence;
use super::unit::Group;
use crate::heard::{Ask, UnitName};

/// Finds the first ask of the message, and the items it was read from.
pub fn find(
    items: &[Item],
    sentences: &[Sentence],
    groups: &[Group],
) -> Option<(Ask, std::ops::Range<usize>)> {
    let all: Vec<&UnitName> = groups.iter().flat_map(|g| &g.names).collect();
    for sentence in sentences {
        let range = sentence.start..sentence.end;
        let here = &items[range.clone()];
        let unit = here
            .iter()
            .find_map(|i| match i.what {
                What::Units(g) => Some(groups[g].names[0].clone()),
                _ => None,
            })
            .or_else(|| (all.len() == 1).then(|| all[0].clone()));
        if let Some(ask) = direct(here, sentence, unit.clone()) {
            return Some((ask, range));
        }
        let Some(from) = sentence.asks_from else {
            continue;
        };
        let asked = &items[from..sentence.end];
        if addressed(&items[sentence.start..from]) {
            continue;
        }
        let has = |word: AskWord| asked.iter().any(|i| i.what == What::Is(Concept::Ask(word)));
        let ask = if has(AskWord::Why) {
            Some(Ask::Why { unit: unit.clone() })
        } else if has(AskWord::When) && has(AskWord::Fill)
            || asked
                .iter()
                .any(|i| matches!(i.what, What::Is(Concept::Level(_))))
                && has(AskWord::When)
        {
            Some(Ask::Forecast { unit: unit.clone() })
        } else if asked.iter().any(|i| i.is(Mark::Yesterday)) && unit.is_some()
            || has(AskWord::History)
        {
            Some(Ask::History { unit: unit.clone() })
        } else if has(AskWord::Advice) || has(AskWord::Status) {
            Some(Ask::Status { unit: unit.clone() })
        } else if unit.is_some() && !asked.iter().any(|i| i.is(Mark::Request)) {
            Some(Ask::Status { unit: unit.clone() })
        } else {
            None
        };
        if let Some(ask) = ask {
            return Some((ask, range));
        }
    }
    None
}

/// Tells whether a person is addressed by name before the question.
fn addressed(items: &[Item]) -> bool {
    items.iter().any(|i| i.is(Mark::Call))
        && items
            .iter()
            .any(|i| matches!(i.what, What::Word { ordinary: false }))
}

/// Asks that need no question: "status 12", "tasks", "done 41".
fn direct(items: &[Item], sentence: &Sentence, unit: Option<UnitName>) -> Option<Ask> {
    let facts = items.iter().any(|i| {
        matches!(
            i.what,
            What::Is(Concept::Event(_) | Concept::Fault(_) | Concept::State(_))
        ) || i
            .number()
            .is_some_and(|n| n.unit.is_some() || n.form == Form::Part)
    });
    if let Some(task) = done(items) {
        return Some(Ask::Done { task });
    }
    for item in items {
        let What::Is(Concept::Ask(word)) = item.what else {
            continue;
        };
        let ask = match word {
            AskWord::Digest if !facts => Ask::Digest,
            AskWord::Tasks if !facts => Ask::Tasks,
            AskWord::Help => Ask::Help,
            AskWord::Undo => Ask::Undo,
            AskWord::Why if sentence.asks_from.is_some() => Ask::Why { unit },
            AskWord::Status if unit.is_some() && !facts => Ask::Status { unit },
            AskWord::Status if sentence.asks_from.is_none() && items.len() <= 2 => {
                Ask::Status { unit }
            }
            AskWord::History if !facts => Ask::History { unit },
            AskWord::Forecast if !facts => Ask::Forecast { unit },
            AskWord::Advice => Ask::Status { unit },
            _ => continue,
        };
        return Some(ask);
    }
    None
}

/// "done 41", "close out task 23", "task 41 done".
fn done(items: &[Item]) -> Option<u32> {
    let words: Vec<&Item> = items
        .iter()
        .filter(|i| !i.is_filler() && !matches!(i.what, What::Sign(_) | What::Break))
        .collect();
    let number = |i: &Item| match i.what {
        What::Task(n) => Some(n),
        _ => None,
    };
    let is = |i: &Item, w: AskWord| i.what == What::Is(Concept::Ask(w));
    let finished = |i: &Item| is(i, AskWord::Done) || i.is(Mark::Done);
    match words.as_slice() {
        [first, rest @ ..] if finished(first) => {
            let rest = if rest.first().is_some_and(|i| is(i, AskWord::Task)) {
                &rest[1..]
            } else {
                rest
            };
            match rest {
                [n] => number(n),
                _ => None,
            }
        }
        [task, n, last] if is(task, AskWord::Task) && finished(last) => number(n),
        _ => None,
    }
}
