//! What a statement counts for: denied, planned, conditional, asked, past, quoted, doubted.

use super::concept::{AskWord, Concept, Mark, State};
use super::item::{Item, What};

/// The most items in a sentence, and in a chunk: far more than people write.
const LONGEST_SENTENCE: usize = 240;
const LONGEST_CHUNK: usize = 120;

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
}

/// How a sentence is put.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Sentence {
    /// Its first item.
    pub start: usize,
    /// The item after its last.
    pub end: usize,
    /// It ends in a question mark.
    pub marked: bool,
    /// The first item of the part that is a question, where it is one.
    pub asks_from: Option<usize>,
}

/// Numbers sentences and chunks, in place, and returns the sentences' bounds.
pub(super) fn segment(items: &mut [Item]) {
    let (mut sentence, mut chunk) = (0, 0);
    let (mut in_sentence, mut in_chunk) = (0, 0);
    let (mut last_sentence, mut last_chunk) = (0, 0);
    for at in 0..items.len() {
        // endless text is cut up, so that looking around stays cheap
        (in_sentence, in_chunk) = (
            if last_sentence == sentence {
                in_sentence + 1
            } else {
                0
            },
            if last_chunk == chunk { in_chunk + 1 } else { 0 },
        );
        if in_sentence > LONGEST_SENTENCE {
            sentence += 1;
            chunk += 1;
            in_sentence = 0;
        } else if in_chunk > LONGEST_CHUNK {
            chunk += 1;
            in_chunk = 0;
        }
        (last_sentence, last_chunk) = (sentence, chunk);
        let what = items[at].what;
        let next_glued = items.get(at + 1).is_some_and(|n| n.glued);
        match what {
            What::Break | What::Sign('!' | '?' | ';' | '¿' | '¡' | '.') => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
                // a point inside a name or a number was read with it; here it ends something
                let _ = next_glued;
                if matches!(what, What::Sign('¿' | '¡')) {
                    chunk += 1;
                    items[at].chunk = chunk;
                } else {
                    sentence += 1;
                    chunk += 1;
                }
            }
            What::Sign(',' | '(' | ')' | '{' | '}' | '|' | '>') => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
                chunk += 1;
            }
            What::Sign('-') if !items[at].glued || !next_glued => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
            }
            What::Is(Concept::Mark(Mark::But | Mark::Sorry)) => {
                chunk += 1;
                items[at].sentence = sentence;
                items[at].chunk = chunk;
            }
            _ => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
            }
        }
    }
}

/// Finds the sentences and which of them ask.
pub(super) fn sentences(items: &[Item]) -> Vec<Sentence> {
    let mut out = Vec::new();
    let mut start = 0;
    while start < items.len() {
        let id = items[start].sentence;
        let end = (start..items.len())
            .find(|i| items[*i].sentence != id)
            .unwrap_or(items.len());
        let marked = items[start..end].iter().any(|i| i.what == What::Sign('?'));
        let mut sentence = Sentence {
            start,
            end,
            marked,
            asks_from: None,
        };
        sentence.asks_from = asking_part(items, &sentence);
        out.push(sentence);
        start = end;
    }
    out
}

/// Returns where the question starts: at a chunk that opens as questions do.
fn asking_part(items: &[Item], sentence: &Sentence) -> Option<usize> {
    let mut at = sentence.start;
    while at < sentence.end {
        let chunk = items[at].chunk;
        let end = (at..sentence.end)
            .find(|i| items[*i].chunk != chunk)
            .unwrap_or(sentence.end);
        if let Some(first) = (at..end).find(|i| {
            !matches!(items[*i].what, What::Sign(_) | What::Break)
                && !items[*i].is(Mark::Filler)
                && !items[*i].is(Mark::Call)
                && !items[*i].is(Mark::And)
        }) {
            let opened = items[first..end]
                .iter()
                .take(1)
                .any(|i| i.what == What::Sign('¿'))
                || at > 0 && items[at..first].iter().any(|i| i.what == What::Sign('¿'));
            match items[first].what {
                What::Is(Concept::Mark(Mark::Query | Mark::Who)) => return Some(first),
                What::Is(Concept::Ask(AskWord::Why | AskWord::When | AskWord::Advice)) => {
                    return Some(first);
                }
                What::Is(Concept::Mark(Mark::Aux)) if sentence.marked => return Some(first),
                _ if opened => return Some(first),
                _ => {}
            }
        }
        at = end;
    }
    // "62 psi está bien en la 9?": asked of a value, not told
    let asked = (sentence.start..sentence.end).any(|i| {
        items[i].number().is_some_and(|n| n.unit.is_some())
            && items
                .get(i + 1)
                .is_some_and(|n| n.what == What::Is(Concept::State(State::Ok)))
            && items
                .get(i + 2)
                .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)))
    });
    // "Ana is the leak on 14 fixed?": put to a person
    let called = items[sentence.start].what == (What::Word { ordinary: false })
        && items
            .get(sentence.start + 1)
            .is_some_and(|n| n.is(Mark::Aux));
    (sentence.marked && (asked || called)).then_some(sentence.start)
}

/// Tells for each item how it counts.
pub(super) fn scopes(items: &[Item], sentences: &[Sentence]) -> Vec<Scope> {
    let mut scope = vec![Scope::default(); items.len()];
    quotations(items, &mut scope);
    for sentence in sentences {
        let range = sentence.start..sentence.end;
        if let Some(from) = sentence.asks_from {
            set(&mut scope, from..sentence.end, Aside::Question);
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
                What::Is(Concept::Mark(Mark::If)) => {
                    set(&mut scope, at..sentence.end, Aside::Condition)
                }
                // "plan for tomorrow: ...": all that the colon opens
                What::Is(Concept::Mark(Mark::Plan))
                    if (at + 1..sentence.end).take(3).any(|i| {
                        items[i].what == What::Sign(':') && items[i].chunk == items[at].chunk
                    }) =>
                {
                    set(&mut scope, at..sentence.end, Aside::Plan)
                }
                What::Is(Concept::Mark(Mark::Plan | Mark::Request | Mark::Order)) => {
                    set(&mut scope, at..chunk_end(), Aside::Plan)
                }
                What::Is(Concept::Mark(Mark::Yesterday)) => {
                    set(&mut scope, chunk_start()..chunk_end(), Aside::EarlierDay)
                }
                What::Is(Concept::Mark(Mark::Past)) => {
                    let end = chunk_end();
                    let stop = (at..end).find(|i| items[*i].is(Mark::Now)).unwrap_or(end);
                    for s in &mut scope[at..stop] {
                        s.was = true;
                    }
                }
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
                        start
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
    scope
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

/// Marks what "not", "no" and their like deny: the next statement, and what "or" ties to it.
fn denials(items: &[Item], range: std::ops::Range<usize>, scope: &mut [Scope]) {
    for at in range.clone() {
        let no = items[at].is(Mark::No);
        if !(no || items[at].is(Mark::Not)) {
            continue;
        }
        let mut hit = false;
        let mut reach = 0;
        let mut nouns = 0;
        for i in at + 1..range.end {
            if items[i].chunk != items[at].chunk {
                // "no leaks, odors or trips": the list goes on while bare
                break;
            }
            match items[i].what {
                What::Is(
                    Concept::State(_)
                    | Concept::Event(_)
                    | Concept::Fault(_)
                    | Concept::Clears(_)
                    | Concept::Level(_),
                ) => {
                    if hit && !tied(items, at, i) {
                        break;
                    }
                    scope[i].denied = true;
                    hit = true;
                    reach = 0;
                }
                What::Is(Concept::Noun(_)) => {
                    if hit && !tied(items, at, i) {
                        break;
                    }
                    if no {
                        scope[i].denied = true;
                    }
                    nouns += 1;
                    reach = 0;
                }
                What::Is(Concept::Mark(Mark::And)) if hit || nouns > 0 => break,
                What::Is(Concept::Mark(Mark::But)) => break,
                What::Is(Concept::Mark(Mark::No | Mark::Not)) => break,
                What::Sign('-') if !items[i].glued => break,
                What::Number(_) => break,
                _ => {
                    reach += 1;
                    if reach > 5 {
                        break;
                    }
                }
            }
        }
        // "leveled not yet", "leaks: none"
        let last = (at + 1..range.end)
            .take_while(|i| items[*i].chunk == items[at].chunk)
            .all(|i| {
                matches!(
                    items[i].what,
                    What::Is(Concept::Mark(Mark::Yet | Mark::Filler))
                        | What::Sign(_)
                        | What::Break
                        | What::Word { ordinary: false }
                )
            });
        if last && !hit {
            for i in (range.start..at)
                .rev()
                .take_while(|i| items[*i].chunk == items[at].chunk)
            {
                if matches!(
                    items[i].what,
                    What::Is(Concept::State(_) | Concept::Event(_) | Concept::Fault(_))
                ) {
                    scope[i].denied = true;
                    break;
                }
            }
        }
    }
    // "still not", "yet to be": a bare "yet" denies nothing by itself
}

/// Tells whether only "or" and fillers stand between two denied things.
fn tied(items: &[Item], from: usize, to: usize) -> bool {
    let mut or = false;
    let mut i = to;
    while i > from + 1 {
        i -= 1;
        match items[i].what {
            What::Is(Concept::Mark(Mark::Or)) => or = true,
            What::Is(Concept::Mark(Mark::Filler | Mark::Article)) => {}
            What::Is(
                Concept::State(_) | Concept::Event(_) | Concept::Fault(_) | Concept::Noun(_),
            ) => return or || i + 1 == to,
            _ => return false,
        }
    }
    false
}
