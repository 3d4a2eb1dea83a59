//! What a statement counts for: denied, planned, conditional, asked, past, quoted, doubted.

mod day;
mod denial;
mod sentence;

use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Item, What};
pub(super) use day::{Day, clock};
use denial::denials;
pub(super) use sentence::{Sentence, segment, sentences};

/// Why a piece was understood and not logged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Aside {
    /// It has not happened yet.
    Plan,
    /// It depends.
    Condition,
    /// It was asked, not said.
    Question,
    /// It was so, and may not be now.
    Past,
    /// It belongs to an earlier day.
    EarlierDay,
    /// Somebody else's words.
    Quotation,
}

impl Aside {
    /// Returns the stable code of the reason.
    pub(super) fn code(self) -> &'static str {
        match self {
            Aside::Plan => "plan",
            Aside::Condition => "condition",
            Aside::Question => "question",
            Aside::Past => "past",
            Aside::EarlierDay => "earlier-day",
            Aside::Quotation => "quotation",
        }
    }
}

/// How one item counts.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Scope {
    /// Why it is not logged.
    pub aside: Option<Aside>,
    /// Said to have been so, which spares things done.
    pub was: bool,
    /// The sender is not sure.
    pub doubt: bool,
    /// Denied.
    pub denied: bool,
    /// The earlier time it is given for by a word.
    pub day: Option<Day>,
}

/// Tells for each item how it counts.
pub(super) fn scopes(items: &[Item], sentences: &[Sentence]) -> Vec<Scope> {
    let mut scope = vec![Scope::default(); items.len()];
    quotations(items, &mut scope);
    for sentence in sentences {
        let range = sentence.start..sentence.end;
        if let Some(from) = sentence.asks_from {
            let end = question_ends(items, sentence, from);
            set(&mut scope, from..end, Aside::Question);
        } else if sentence.marked {
            // what only ends as a question is a report its sender is not sure of
            let last = items[range.clone()]
                .iter()
                .rev()
                .find(|i| !matches!(i.what, What::Sign(_) | What::Break));
            if let Some(chunk) = last.map(|i| i.chunk) {
                for i in range.clone().filter(|i| items[*i].chunk == chunk) {
                    scope[i].doubt = true;
                }
            }
        }
        for at in range.clone() {
            let chunk_end = || {
                (at..sentence.end)
                    .find(|i| items[*i].chunk != items[at].chunk)
                    .unwrap_or(sentence.end)
            };
            let chunk_start = || {
                (sentence.start..at)
                    .rev()
                    .take_while(|i| items[*i].chunk == items[at].chunk)
                    .last()
                    .unwrap_or(at)
            };
            match items[at].what {
                // "la 18 si": yes
                What::Is(Concept::Mark(Mark::If))
                    if at > 0
                        && matches!(items[at - 1].what, What::Units(_))
                        && items.get(at + 1).is_none_or(|n| {
                            n.chunk != items[at].chunk
                                || matches!(n.what, What::Sign(_) | What::Break)
                        }) => {}
                // "no hay jabón, pero si hay": says nothing that could depend; "huele, y si huele": what was said holds
                What::Is(Concept::Mark(Mark::If)) if affirms(items, sentence, at, chunk_end()) => {}
                What::Is(Concept::Mark(Mark::If)) => {
                    let from = if ordered_before(items, sentence, at) {
                        sentence.start
                    } else {
                        at
                    };
                    let end = condition_ends(items, sentence, at);
                    set(&mut scope, from..end, Aside::Condition)
                }
                What::Is(Concept::Mark(Mark::Expected)) => {
                    set(&mut scope, chunk_start()..chunk_end(), Aside::Plan)
                }
                // "plan for tomorrow: ...": all that the colon opens
                What::Is(Concept::Mark(Mark::Plan))
                    if (at + 1..sentence.end).take(3).any(|i| {
                        items[i].what == What::Sign(':') && items[i].chunk == items[at].chunk
                    }) =>
                {
                    set(&mut scope, at..sentence.end, Aside::Plan)
                }
                What::Is(Concept::Mark(
                    Mark::Plan | Mark::Underway | Mark::Request | Mark::Order,
                )) => set(&mut scope, at..chunk_end(), Aside::Plan),
                // "at 1430 waste on 12 was 60": of a time of its own, which the entry carries
                What::Is(Concept::Mark(Mark::Past)) if timed(items, at, &range) => {}
                What::Is(Concept::Mark(Mark::Past)) => {
                    let end = chunk_end();
                    // "came over while I was eating and says there is no water": what is said is of now
                    let stop = (at..end)
                        .find(|i| items[*i].is(Mark::Now) || items[*i].is(Mark::Says))
                        .unwrap_or(end);
                    // "80 psi earlier": what went before it
                    let last = items[at + 1..end]
                        .iter()
                        .all(|i| i.is_filler() || matches!(i.what, What::Sign(_) | What::Break));
                    let from = if last { chunk_start() } else { at };
                    for s in &mut scope[from..stop] {
                        s.was = true;
                    }
                }
                What::Is(Concept::Mark(Mark::DoubtSaid)) => {
                    let from = clause_start(items, sentence.start, at);
                    for s in &mut scope[from..sentence.end] {
                        s.doubt = true;
                    }
                }
                // "maybe half an hour": about so long
                What::Is(Concept::Mark(Mark::Doubt))
                    if items.get(at + 1).is_some_and(|n| {
                        let eta = items.get(at + 2).and_then(Item::noun) == Some(Noun::Eta);
                        n.number().is_some_and(|n| {
                            matches!(n.unit, Some(Unit::Minute | Unit::Hour))
                                || n.unit.is_none() && eta
                        })
                    }) => {}
                What::Is(Concept::Mark(Mark::Doubt)) => {
                    // "maybe a leak" doubts what follows, "a leak maybe" what went before
                    let (start, end) = (chunk_start(), chunk_end());
                    let last = items[at + 1..end].iter().all(|i| {
                        matches!(i.what, What::Sign(_) | What::Break | What::Gone) || i.is_filler()
                    });
                    let alone = (start..at).all(|i| {
                        items[i].is_filler()
                            || matches!(items[i].what, What::Sign(_) | What::Break)
                            || items[i].is(Mark::Pronoun)
                            || items[i].is(Mark::But)
                    });
                    let from = if last && alone {
                        sentence.start
                    } else if last {
                        clause_start(items, start, at)
                    } else {
                        at
                    };
                    for s in &mut scope[from..end] {
                        s.doubt = true;
                    }
                }
                _ => {}
            }
        }
        denials(items, range, &mut scope);
    }
    day::days(items, sentences, &mut scope);
    scope
}

/// Tells whether what was so at `at` has a clock time of its own, on this day, and nothing is told of now.
fn timed(items: &[Item], at: usize, sentence: &std::ops::Range<usize>) -> bool {
    let here = || sentence.clone().map(|i| &items[i]);
    let clock = here().any(|i| i.chunk == items[at].chunk && matches!(i.what, What::Clock(_)));
    clock
        && !here().any(|i| i.is(Mark::Now) || i.is(Mark::Yesterday) || i.is(Mark::LastNight))
        && here().filter(|i| i.number().is_some()).count() == 1
}

/// Tells whether an "if" only affirms, as `si` for `sí`: nothing follows that could come about, or what was said before.
fn affirms(items: &[Item], sentence: &Sentence, at: usize, end: usize) -> bool {
    let tied = at > 0 && (items[at - 1].is(Mark::And) || items[at - 1].is(Mark::But));
    let said: Vec<What> = items[at + 1..end]
        .iter()
        .filter(|i| !i.is_filler() && !matches!(i.what, What::Sign(_) | What::Break))
        .map(|i| i.what)
        .collect();
    let before = |what: &What| {
        items[sentence.start..at].iter().any(|i| i.what == *what)
            && matches!(
                what,
                What::Is(Concept::State(_) | Concept::Fault(_) | Concept::Event(_))
            )
    };
    tied && match said.as_slice() {
        [] => true,
        [one] => before(one),
        _ => false,
    }
}

/// "the 14 is at 55 and the 16 I'm not sure": the start of the clause that "and" opens with a trailer of its own.
fn clause_start(items: &[Item], start: usize, at: usize) -> usize {
    let opens = |i: &usize| {
        items[*i].is(Mark::And)
            && items[i + 1..at]
                .iter()
                .take(2)
                .any(|n| matches!(n.what, What::Units(_)))
    };
    let another = items[start..at]
        .iter()
        .filter(|i| matches!(i.what, What::Units(_)))
        .count()
        > 1;
    (start..at)
        .rev()
        .find(opens)
        .filter(|_| another)
        .unwrap_or(start)
}

/// Returns where a question ends: with its sentence where that is marked, else where a chunk opens as statements do:
/// "what do I do with 22, it's leaking".
fn question_ends(items: &[Item], sentence: &Sentence, from: usize) -> usize {
    if sentence.marked {
        return sentence.end;
    }
    let states = |i: &usize| {
        items[*i].chunk != items[i - 1].chunk
            && (items[*i].is(Mark::Filler)
                || items[*i].is(Mark::Pronoun)
                || items[*i].is(Mark::Article)
                || matches!(
                    items[*i].what,
                    What::Units(_)
                        | What::Number(_)
                        | What::Is(
                            Concept::Noun(_)
                                | Concept::State(_)
                                | Concept::Event(_)
                                | Concept::Fault(_)
                        )
                ))
    };
    (from + 1..sentence.end)
        .find(states)
        .unwrap_or(sentence.end)
}

/// Returns where a condition ends: with its sentence, or where a later chunk tells how it is now: "if it goes over half
/// I'll pump it, the tank is at 30% now".
fn condition_ends(items: &[Item], sentence: &Sentence, at: usize) -> usize {
    let now = (at + 1..sentence.end)
        .find(|i| items[*i].is(Mark::Now) && items[*i].chunk != items[at].chunk);
    let told = now.filter(|now| {
        let here = |i: &usize| items[*i].chunk == items[*now].chunk;
        (sentence.start..sentence.end).filter(here).any(|i| {
            items[i].number().is_some() || matches!(items[i].what, What::Is(Concept::Level(_)))
        })
    });
    told.and_then(|now| (at..=now).find(|i| items[*i].chunk == items[now].chunk))
        .unwrap_or(sentence.end)
}

/// "shut 9 down if it dips under 30": a condition after what opens its sentence as orders do.
fn ordered_before(items: &[Item], sentence: &Sentence, at: usize) -> bool {
    let said = |i: &usize| !matches!(items[*i].what, What::Sign(_) | What::Break);
    (sentence.start..at).find(said).is_some_and(|first| {
        items[first].chunk == items[at].chunk
            && matches!(
                items[first].what,
                What::Is(Concept::Event(_) | Concept::State(_))
            )
    })
}

fn set(scope: &mut [Scope], range: std::ops::Range<usize>, aside: Aside) {
    for s in &mut scope[range] {
        s.aside.get_or_insert(aside);
    }
}

fn quotations(items: &[Item], scope: &mut [Scope]) {
    let mut open: Option<usize> = None;
    for at in 0..items.len() {
        match items[at].what {
            What::Sign('"') => match open.take() {
                Some(from) => set(scope, from..at + 1, Aside::Quotation),
                None => open = Some(at),
            },
            What::Sign('>') if at == 0 || items[at - 1].what == What::Break => {
                let end = (at..items.len())
                    .find(|i| items[*i].what == What::Break)
                    .unwrap_or(items.len());
                set(scope, at..end, Aside::Quotation);
            }
            What::Is(Concept::Mark(Mark::Forwarded)) => {
                set(scope, at..items.len(), Aside::Quotation)
            }
            _ => {}
        }
    }
}
