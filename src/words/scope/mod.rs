//! What a statement counts for: denied, planned, conditional, asked, past, quoted, doubted.

mod day;
mod denial;
mod sentence;

use std::ops::Range;

use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Item, What};
pub(super) use day::{Day, EITHER_HALF, clock};
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
        questions(items, sentence, &mut scope);
        for at in sentence.start..sentence.end {
            if let What::Is(Concept::Mark(mark)) = items[at].what {
                let word = Word {
                    items,
                    sentence,
                    at,
                };
                word.bears_on(mark, &mut scope);
            }
        }
        denials(items, sentence.start..sentence.end, &mut scope);
    }
    day::days(items, sentences, &mut scope);
    scope
}

/// Marks what a sentence asks, and what only ends as a question: a report its sender is not sure of.
fn questions(items: &[Item], sentence: &Sentence, scope: &mut [Scope]) {
    if let Some(from) = sentence.asks_from {
        let end = question_ends(items, sentence, from);
        return set(scope, from..end, Aside::Question);
    }
    if !sentence.marked {
        return;
    }
    let range = sentence.start..sentence.end;
    let mut back = items[range.clone()].iter().rev();
    if let Some(last) = back.find(|item| !is_stop(item)) {
        for i in range.filter(|i| items[*i].chunk == last.chunk) {
            scope[i].doubt = true;
        }
    }
}

/// A word that says how others count.
struct Word<'a> {
    items: &'a [Item],
    sentence: &'a Sentence,
    at: usize,
}

impl Word<'_> {
    /// Marks what it bears on.
    fn bears_on(&self, mark: Mark, scope: &mut [Scope]) {
        let at = self.at;
        match mark {
            Mark::If if self.says_yes() => {}
            Mark::If => {
                let ordered = ordered_before(self.items, self.sentence, at);
                let from = if ordered { self.sentence.start } else { at };
                let end = condition_ends(self.items, self.sentence, at);
                set(scope, from..end, Aside::Condition);
            }
            Mark::Expected => set(scope, self.chunk_start()..self.chunk_end(), Aside::Plan),
            // "plan for tomorrow: ...": all that the colon opens
            Mark::Plan if self.opens_a_list() => set(scope, at..self.sentence.end, Aside::Plan),
            Mark::Plan | Mark::Underway | Mark::Request | Mark::Order => {
                let from = match mark == Mark::Plan {
                    true => self.planned_before().unwrap_or(at),
                    false => at,
                };
                set(scope, from..self.chunk_end(), Aside::Plan);
            }
            // "at 1430 waste on 12 was 60": of a time of its own, which the entry carries
            Mark::Past if timed(self.items, at, self.sentence.start..self.sentence.end) => {}
            Mark::Past => scope[self.past()].iter_mut().for_each(|s| s.was = true),
            Mark::DoubtSaid => {
                let from = clause_start(self.items, self.sentence.start, at);
                let doubted = &mut scope[from..self.sentence.end];
                doubted.iter_mut().for_each(|s| s.doubt = true);
            }
            // "maybe half an hour": about so long
            Mark::Doubt if self.is_of_a_duration() => {}
            Mark::Doubt => scope[self.doubted()]
                .iter_mut()
                .for_each(|s| s.doubt = true),
            _ => {}
        }
    }

    /// "la 18 si": yes. "no hay jabón, pero si hay": says nothing that could depend; "huele, y si huele": what was said holds.
    fn says_yes(&self) -> bool {
        let of_a_trailer = self.at > 0 && matches!(self.items[self.at - 1].what, What::Units(_));
        let ends = self
            .items
            .get(self.at + 1)
            .is_none_or(|next| next.chunk != self.items[self.at].chunk || is_stop(next));
        of_a_trailer && ends || affirms(self.items, self.sentence, self.at, self.chunk_end())
    }

    /// "24: we winterize it tomorrow": a word of the future that ends its clause bears on what was told right before it,
    /// behind the trailer and the last "and".
    fn planned_before(&self) -> Option<usize> {
        let end = self.chunk_end();
        let mut after = self.items[self.at + 1..end].iter();
        if !after.all(|item| item.is_filler() || is_stop(item)) {
            return None;
        }
        let start = self.chunk_start();
        let parts = |i: &usize| {
            matches!(self.items[*i].what, What::Units(_)) || self.items[*i].is(Mark::And)
        };
        let from = (start..self.at).rev().find(parts).map_or(start, |i| i + 1);
        let told = |i: &usize| !self.items[*i].is_filler() && !self.items[*i].is(Mark::Pronoun);
        let last = (from..self.at).rev().find(told)?;
        let event = matches!(
            self.items[last].what,
            What::Is(Concept::Event(_) | Concept::State(_))
        );
        event.then_some(from)
    }

    fn opens_a_list(&self) -> bool {
        let mut next = self.items[self.at + 1..self.sentence.end].iter().take(3);
        next.any(|item| item.what == What::Sign(':') && item.chunk == self.items[self.at].chunk)
    }

    /// What was so: what follows, or, where it ends its clause, what went before: "80 psi earlier".
    fn past(&self) -> Range<usize> {
        let end = self.chunk_end();
        // "came over while I was eating and says there is no water": what is said is of now
        let stop = (self.at..end)
            .find(|i| self.items[*i].is(Mark::Now) || self.items[*i].is(Mark::Says))
            .unwrap_or(end);
        let mut after = self.items[self.at + 1..end].iter();
        match after.all(|item| item.is_filler() || is_stop(item)) {
            true => self.chunk_start()..stop,
            false => self.at..stop,
        }
    }

    fn is_of_a_duration(&self) -> bool {
        let number = self.items.get(self.at + 1).and_then(Item::number);
        let eta = self.items.get(self.at + 2).and_then(Item::noun) == Some(Noun::Eta);
        number.is_some_and(|n| match n.unit {
            Some(unit) => matches!(unit, Unit::Minute | Unit::Hour),
            None => eta,
        })
    }

    /// "maybe a leak" doubts what follows, "a leak maybe" what went before.
    fn doubted(&self) -> Range<usize> {
        let (start, end) = (self.chunk_start(), self.chunk_end());
        let mut after = self.items[self.at + 1..end].iter();
        if !after.all(|item| is_stop(item) || item.what == What::Gone || item.is_filler()) {
            return self.at..end;
        }
        let mut before = self.items[start..self.at].iter();
        let alone = before.all(|item| {
            item.is_filler() || is_stop(item) || item.is(Mark::Pronoun) || item.is(Mark::But)
        });
        match alone {
            true => self.sentence.start..end,
            false => clause_start(self.items, start, self.at)..end,
        }
    }

    fn chunk_end(&self) -> usize {
        (self.at..self.sentence.end)
            .find(|i| self.items[*i].chunk != self.items[self.at].chunk)
            .unwrap_or(self.sentence.end)
    }

    fn chunk_start(&self) -> usize {
        (self.sentence.start..self.at)
            .rev()
            .take_while(|i| self.items[*i].chunk == self.items[self.at].chunk)
            .last()
            .unwrap_or(self.at)
    }
}

fn is_stop(item: &Item) -> bool {
    matches!(item.what, What::Sign(_) | What::Break)
}

/// Tells whether what was so at `at` has a clock time of its own, on this day, and nothing is told of now.
fn timed(items: &[Item], at: usize, sentence: Range<usize>) -> bool {
    let here = || sentence.clone().map(|i| &items[i]);
    let clock = here().any(|i| i.chunk == items[at].chunk && matches!(i.what, What::Clock(_)));
    clock
        && !here().any(|i| i.is(Mark::Now) || i.is(Mark::Yesterday) || i.is(Mark::LastNight))
        && told_once(here().filter(|i| i.number().is_some()), items[at].chunk)
}

/// Tells whether there is a number, and no second of its kind that may be of another time: "3/8 48 psi" were read together,
/// "60 psi, 52 psi" were not.
fn told_once<'i>(numbers: impl Iterator<Item = &'i Item>, chunk: usize) -> bool {
    let numbers: Vec<&Item> = numbers.collect();
    let kind = |item: &Item| item.number().and_then(|number| number.unit);
    let twice = numbers.iter().enumerate().any(|(i, one)| {
        let mut others = numbers[i + 1..].iter();
        others.any(|other| kind(one) == kind(other) || kind(one).is_none() && kind(other).is_none())
    });
    let together = numbers.len() == 1 || numbers.iter().all(|item| item.chunk == chunk);
    !numbers.is_empty() && !twice && together
}

/// Tells whether an "if" only affirms, as `si` for `sí`: nothing follows that could come about, or what was said before.
fn affirms(items: &[Item], sentence: &Sentence, at: usize, end: usize) -> bool {
    // "pero ahora si"
    let before = (sentence.start..at)
        .rev()
        .find(|i| !items[*i].is(Mark::Now));
    let tied = before.is_some_and(|i| items[i].is(Mark::And) || items[i].is(Mark::But));
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
