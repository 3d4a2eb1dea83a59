//! Sentences and chunks, and which of them ask.

use crate::words::concept::{AskWord, Concept, Mark, State};
use crate::words::item::{Item, What};

/// The most items in a sentence, and in a chunk: far more than people write.
const LONGEST_SENTENCE: usize = 240;

const LONGEST_CHUNK: usize = 120;

/// How a sentence is put.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::words) struct Sentence {
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
pub(in crate::words) fn segment(items: &mut [Item]) {
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
            // "so i'm whispering: 38 is open": talk before it is of nothing behind it
            What::Sign(':') if is_talk(&items[..at], chunk) => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
                chunk += 1;
            }
            What::Sign('-') if !items[at].glued || !next_glued => {
                items[at].sentence = sentence;
                items[at].chunk = chunk;
            }
            What::Is(Concept::Mark(mark))
                if matches!(mark, Mark::But | Mark::Sorry)
                    || mark == Mark::So && opens_what_was_done(&items[at + 1..]) =>
            {
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

/// Tells whether the chunk that these items end in holds words, and nothing that can be of a report.
fn is_talk(before: &[Item], chunk: usize) -> bool {
    const FEWEST: usize = 2;
    let here = before.iter().rev().take_while(|i| i.chunk == chunk);
    let word = |i: &Item| matches!(i.what, What::Word { .. });
    let on = |i: &Item| matches!(i.what, What::Is(Concept::State(State::On | State::Down)));
    let of_talk =
        |i: &Item| word(i) || on(i) || i.is_filler() || i.is(Mark::So) || i.is(Mark::Call);
    here.clone().all(of_talk) && here.filter(|i| word(i)).count() >= FEWEST
}

/// "low is supposed to be 18 so i drained the fresh on 9": what somebody did about it stands by itself.
fn opens_what_was_done(after: &[Item]) -> bool {
    let mut said = after.iter().skip_while(|i| i.is_filler());
    after.first().is_some_and(Item::is_filler)
        && said
            .next()
            .is_some_and(|i| matches!(i.what, What::Is(Concept::Event(_))))
}

/// Finds the sentences and which of them ask.
pub(in crate::words) fn sentences(items: &[Item]) -> Vec<Sentence> {
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

/// Tells whether a chunk ends in a word that asks: "12 pumped yet", which the neighbours settle.
fn asks_at_its_end(chunk: &[Item]) -> bool {
    let said = |i: &&Item| !matches!(i.what, What::Sign(_) | What::Break);
    let last = chunk.iter().rev().find(said);
    last.is_some_and(|i| i.is(Mark::AskedYet))
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
                || items[at..first].iter().any(|i| i.what == What::Sign('¿'));
            match items[first].what {
                What::Is(Concept::Mark(Mark::Query | Mark::Who)) => return Some(first),
                What::Is(Concept::Ask(AskWord::Why | AskWord::When | AskWord::Advice)) => {
                    return Some(first);
                }
                What::Is(Concept::Mark(Mark::Aux)) if sentence.marked => return Some(first),
                // "12 is 104 volts ok"
                What::Units(_)
                    if items.get(first + 1).is_some_and(|n| {
                        n.chunk == chunk && n.what == What::Is(Concept::Ask(AskWord::Advice))
                    }) && items
                        .get(first + 2)
                        .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some())) =>
                {
                    return Some(first + 1);
                }
                // "12 is it level enough": a trailer, and what is asked of it
                What::Units(_)
                    if items.get(first + 1).is_some_and(|n| {
                        n.chunk == chunk && n.is(Mark::Query) && n.end > n.first + 1
                    }) =>
                {
                    return Some(first + 1);
                }
                // "está bien 62 psi en la 9?"
                What::Is(Concept::State(State::Ok))
                    if sentence.marked
                        && items
                            .get(first + 1)
                            .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some())) =>
                {
                    return Some(first);
                }
                _ if opened => return Some(first),
                // "12 pumped yet"
                _ if asks_at_its_end(&items[first..end]) => return Some(first),
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
