//! What the sender wants back: a status, a forecast, the tasks, help.

use super::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use super::item::{Form, Item, What};
use super::scope::Sentence;
use super::unit::Group;
use crate::heard::{Ask, Need, UnitName};

/// Finds the first ask of the message, and the items it was read from.
pub(super) fn find(
    items: &[Item],
    sentences: &[Sentence],
    groups: &[Group],
) -> Option<(Ask, std::ops::Range<usize>)> {
    let all: Vec<&UnitName> = groups.iter().flat_map(|g| &g.names).collect();
    for sentence in sentences {
        let range = sentence.start..sentence.end;
        let here = &items[range.clone()];
        let named = |items: &[Item]| {
            items.iter().find_map(|i| match i.what {
                What::Units(g) => Some(groups[g].names[0].clone()),
                _ => None,
            })
        };
        // "waste 40 on 12, what should we do with 22?": the trailer of the question
        let unit = sentence
            .asks_from
            .and_then(|from| named(&items[from..sentence.end]))
            .or_else(|| named(here))
            .or_else(|| (all.len() == 1).then(|| all[0].clone()));
        if sentence.marked && is_put_to_a_person(here) {
            continue;
        }
        let first = sentence
            .asks_from
            .filter(|from| how_it_is(&items[*from..sentence.end]));
        if first.is_some() && unit.is_some() {
            return Some((Ask::Status { unit }, range));
        }
        let report_follows = !sentence.marked && reports(&items[sentence.end..]);
        if let Some(ask) = direct(here, sentence, unit.clone(), report_follows) {
            return Some((ask, range));
        }
        let Some(from) = sentence.asks_from else {
            if sentence.marked && unit.is_some() && is_only_a_trailer(here) {
                return Some((Ask::Status { unit }, range));
            }
            continue;
        };
        if here.iter().any(|i| i.is(Mark::Order)) {
            continue;
        }
        let asked = &items[from..sentence.end];
        // who, anyone: people are asked
        if asked.first().is_some_and(|i| i.is(Mark::Who)) || addressed(&items[sentence.start..from])
        {
            continue;
        }
        if let Some(ask) = about(asked, &unit) {
            return Some((ask, range));
        }
    }
    None
}

/// "Joe, how is 12 holding up?": tells whether a sentence is put to a person.
fn is_put_to_a_person(here: &[Item]) -> bool {
    let said = |i: &Item| !matches!(i.what, What::Sign(_) | What::Break) && !i.is(Mark::Call);
    here.iter().position(said).is_some_and(|i| {
        let next = here.get(i + 1);
        here[i].what == (What::Word { ordinary: false })
            && next.is_some_and(|n| n.what == What::Sign(',') || n.is(Mark::Aux))
    })
}

/// "12 ok?": tells whether a sentence names one trailer and says nothing that could be reported of it.
fn is_only_a_trailer(here: &[Item]) -> bool {
    let says = |i: &Item| match i.what {
        What::Number(_) | What::Range(..) | What::Word { ordinary: false } => true,
        What::Is(Concept::State(state)) => !matches!(state, State::Ok | State::On | State::Open),
        What::Is(
            Concept::Event(_)
            | Concept::Fault(_)
            | Concept::Noun(_)
            | Concept::Need(_)
            | Concept::Level(_)
            | Concept::Mark(Mark::Who | Mark::Request | Mark::Plan | Mark::Underway | Mark::Or),
        ) => true,
        _ => false,
    };
    let trailers = here.iter().filter(|i| matches!(i.what, What::Units(_)));
    !here.iter().any(says) && trailers.count() == 1
}

/// Returns what a question is about.
fn about(asked: &[Item], unit: &Option<UnitName>) -> Option<Ask> {
    let has = |word: AskWord| asked.iter().any(|i| i.what == What::Is(Concept::Ask(word)));
    let of_before = asked
        .iter()
        .any(|i| i.is(Mark::Yesterday) || i.is(Mark::LastNight));
    let unit = unit.clone();
    if has(AskWord::Why) {
        Some(Ask::Why { unit })
    } else if has(AskWord::When) && asked.iter().any(fills_or_empties) {
        Some(Ask::Forecast { unit })
    } else if of_before && unit.is_some() || has(AskWord::History) {
        Some(Ask::History { unit })
    } else if has(AskWord::Advice)
        || has(AskWord::Status)
        || unit.is_some() && !asked.iter().any(|i| i.is(Mark::Request))
    {
        Some(Ask::Status { unit })
    } else {
        None
    }
}

/// Tells whether an item speaks of a tank, or of filling or emptying one.
fn fills_or_empties(item: &Item) -> bool {
    matches!(
        item.what,
        What::Is(
            Concept::Level(_)
                | Concept::Ask(AskWord::Fill)
                | Concept::Need(Need::PumpOut | Need::Refill)
                | Concept::Noun(Noun::Pump | Noun::Tank | Noun::Waste | Noun::Fresh)
                | Concept::State(State::Pumped | State::Emptied)
        )
    )
}

/// "how's 9, and what jobs are left?": the first question is how a trailer is.
fn how_it_is(asked: &[Item]) -> bool {
    let chunk = asked.first().map(|i| i.chunk);
    let here: Vec<&Item> = asked
        .iter()
        .take_while(|i| Some(i.chunk) == chunk)
        .filter(|i| !i.is_filler() && !matches!(i.what, What::Sign(_) | What::Break))
        .collect();
    matches!(here.as_slice(), [query, unit] if query.is(Mark::Query) && matches!(unit.what, What::Units(_)))
        && asked.len() > here.len()
}

/// Tells whether a person is addressed by name before the question: "hey Sal", "Sal, have you".
fn addressed(items: &[Item]) -> bool {
    let word = |i: &Item| matches!(i.what, What::Word { .. });
    let strange = |i: &Item| matches!(i.what, What::Word { ordinary: false });
    let words: Vec<&Item> = items
        .iter()
        .filter(|i| !matches!(i.what, What::Sign(_) | What::Break))
        .collect();
    match words.as_slice() {
        [name] => word(name),
        [call, name, ..] if call.is(Mark::Call) => word(name),
        // "Joe, how is 12 holding up?"
        [name, ..] if strange(name) && items.iter().any(|i| i.what == What::Sign(',')) => true,
        all => all.iter().any(|i| i.is(Mark::Call)) && all.iter().any(|i| strange(i)),
    }
}

/// "update on 17!! water is on, pressure 58": tells whether further sentences report, and name no trailer of their own.
fn reports(after: &[Item]) -> bool {
    let named = after.iter().any(|i| matches!(i.what, What::Units(_)));
    let told = |i: &Item| {
        matches!(
            i.what,
            What::Is(Concept::Event(_) | Concept::Fault(_) | Concept::State(_))
        ) || i
            .number()
            .is_some_and(|n| n.form == Form::Part || n.unit.is_some())
    };
    !named && after.iter().any(told) && !after.iter().any(|i| i.what == What::Sign('?'))
}

/// Asks that need no question: "status 12", "tasks", "done 41".
fn direct(
    items: &[Item],
    sentence: &Sentence,
    unit: Option<UnitName>,
    report_follows: bool,
) -> Option<Ask> {
    let facts = items.iter().any(|i| {
        matches!(i.what, What::Is(Concept::Event(_) | Concept::Fault(_)))
            || i.number().is_some_and(|n| {
                n.form == Form::Part || n.unit.is_some_and(|unit| unit != Unit::Other)
            })
    });
    if items.iter().any(|i| i.is(Mark::Order)) {
        return None;
    }
    let mut at = 0;
    while at < items.len() {
        let end = (at..items.len())
            .find(|i| items[*i].chunk != items[at].chunk)
            .unwrap_or(items.len());
        // "done 41 and im going to lunch"
        let and = (at..end).find(|i| items[*i].is(Mark::And)).unwrap_or(end);
        if let Some(task) = done(&items[at..end]).or_else(|| done(&items[at..and])) {
            return Some(Ask::Done { task });
        }
        at = end;
    }
    let words = items
        .iter()
        .filter(|i| {
            !i.is_filler() && !i.is(Mark::Call) && !matches!(i.what, What::Sign(_) | What::Break)
        })
        .count();
    let narrower = |w: AskWord| {
        matches!(
            w,
            AskWord::History | AskWord::Forecast | AskWord::Digest | AskWord::Tasks | AskWord::Why
        )
    };
    let narrow = items
        .iter()
        .any(|i| matches!(i.what, What::Is(Concept::Ask(w)) if narrower(w)));
    for (at, item) in items.iter().enumerate() {
        let What::Is(Concept::Ask(word)) = item.what else {
            continue;
        };
        if word == AskWord::Undo && amid_a_report(items, at) {
            continue;
        }
        // "check on 6: no leaks": what heads a report
        let heads = items
            .get(at + 1)
            .is_some_and(|n| matches!(n.what, What::Units(_)))
            && items.get(at + 2).is_some_and(|n| n.what == What::Sign(':'));
        if word == AskWord::Status && heads {
            continue;
        }
        let ask = match word {
            AskWord::Digest if !facts => Ask::Digest,
            AskWord::Tasks if !facts => Ask::Tasks,
            AskWord::Help => Ask::Help,
            AskWord::HelpWord if words <= 3 && unit.is_none() => Ask::Help,
            AskWord::Status if narrow => continue,
            AskWord::Undo => Ask::Undo,
            AskWord::Why if sentence.asks_from.is_some() => Ask::Why { unit },
            AskWord::Status if unit.is_some() && !facts && !report_follows => Ask::Status { unit },
            AskWord::Status if sentence.asks_from.is_none() && items.len() <= 2 => {
                Ask::Status { unit }
            }
            AskWord::History if !facts => Ask::History { unit },
            AskWord::Forecast if !facts => Ask::Forecast { unit },
            AskWord::Advice => Ask::Status { unit },
            AskWord::Fill if !facts && will_it(&items[..at]) => Ask::Forecast { unit },
            _ => continue,
        };
        return Some(ask);
    }
    None
}

/// "will R-205 make it to friday": what opens a question without its mark.
fn will_it(before: &[Item]) -> bool {
    let mut said = before
        .iter()
        .filter(|i| !i.is_filler() && !i.is(Mark::Call) && !i.is(Mark::Unit));
    said.next().is_some_and(|i| i.is(Mark::Plan))
        && said
            .next()
            .is_some_and(|i| matches!(i.what, What::Units(_)))
        && said.next().is_none()
}

/// "the last crew said 30 was a mess, ignore that, now there is no water": said of talk, with a report after it.
fn amid_a_report(items: &[Item], at: usize) -> bool {
    let talk = items[..at].iter().any(|i| {
        !i.is_filler()
            && !i.is(Mark::Call)
            && !i.is(Mark::Sorry)
            && !matches!(i.what, What::Sign(_) | What::Break)
    });
    talk && items[at + 1..].iter().any(|i| {
        matches!(
            i.what,
            What::Is(Concept::Event(_) | Concept::Fault(_) | Concept::Noun(_))
        )
    })
}

/// "done 41", "close out task 23", "task 41 done".
fn done(items: &[Item]) -> Option<u32> {
    let words: Vec<&Item> = items
        .iter()
        .filter(|i| {
            !i.is_filler() && !i.is(Mark::Call) && !matches!(i.what, What::Sign(_) | What::Break)
        })
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
