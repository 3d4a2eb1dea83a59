//! Phrases: tokens become items, each standing for one thing, with numbers read whole and joined to their measures.

use std::ops::Range;

use super::concept::{Concept, Mark, Noun, Spoken, Unit};
use super::lex::{Kind, Token};
use super::normal::plain;
use super::vocab::{UNKNOWN, Vocab, WordId};
use crate::heard::ShortAnswer;

/// What an item stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum What {
    /// A phrase of the vocabulary.
    Is(Concept),
    /// A number.
    Number(Number),
    /// Two numbers with a dash or "to" between them.
    Range(f64, f64, Option<Unit>),
    /// A time of day, in minutes.
    Clock(u16),
    /// A number with a use of its own.
    Labelled,
    /// A task named by number.
    Task(u32),
    /// A circuit named by number.
    Circuit(u8),
    /// Something that may name a trailer.
    Code,
    /// Something that names one: an index into the groups.
    Units(usize),
    /// Neither word nor number.
    Garbled,
    /// A word that is ordinary, or not ours.
    Word { ordinary: bool },
    /// A sign.
    Sign(char),
    /// The end of a line.
    Break,
    /// Taken up by another item.
    Gone,
}

/// How a number was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// Without a point, unsigned.
    Whole,
    /// With a point or a sign.
    Decimal,
    /// As a part of one.
    Part,
    /// Full or empty.
    Level,
}

/// A number with its measure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// Its value; a part of one for [`Form::Part`], a percentage for [`Form::Level`].
    pub value: f64,
    /// How it was written.
    pub form: Form,
    /// Its measure, where one was said.
    pub unit: Option<Unit>,
    /// True where it is only a bound: over, under, almost.
    pub bound: bool,
}

/// A piece of the message that stands for one thing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Item {
    /// What it stands for.
    pub what: What,
    /// Its first token.
    pub first: usize,
    /// The token after its last.
    pub end: usize,
    /// Which sentence it is in.
    pub sentence: usize,
    /// Which chunk: a stretch without a comma or the like.
    pub chunk: usize,
    /// True where nothing parts it from the item before.
    pub glued: bool,
}

impl Item {
    /// Tells whether it is `mark`.
    pub(super) fn is(&self, mark: Mark) -> bool {
        self.what == What::Is(Concept::Mark(mark))
            || match mark {
                Mark::Now => self.what == What::Is(Concept::Mark(Mark::Morning)),
                Mark::Again => self.what == What::Is(Concept::Mark(Mark::Twice)),
                Mark::At => self.what == What::Is(Concept::Mark(Mark::For)),
                Mark::Filler => self.what == What::Is(Concept::Mark(Mark::So)),
                _ => false,
            }
    }

    /// Returns the noun it is, if it is one.
    pub(super) fn noun(&self) -> Option<Noun> {
        match self.what {
            What::Is(Concept::Noun(noun)) => Some(noun),
            _ => None,
        }
    }

    /// Returns the number it is, if it is one.
    pub(super) fn number(&self) -> Option<Number> {
        match self.what {
            What::Number(number) => Some(number),
            _ => None,
        }
    }

    /// Tells whether it says nothing by itself, and can stand between a noun and its number.
    pub(super) fn is_filler(&self) -> bool {
        matches!(
            self.what,
            What::Is(Concept::Mark(
                Mark::Filler
                    | Mark::So
                    | Mark::Says
                    | Mark::About
                    | Mark::Aux
                    | Mark::Now
                    | Mark::Morning
                    | Mark::Of
                    | Mark::Article
                    | Mark::Clock
            )) | What::Sign(':' | '=' | '-' | '(' | ')' | '\'' | '"' | '_' | '|' | '[' | ']' | '*')
                | What::Gone
        )
    }
}

/// A spelling that was mended: which token, and what it was read as.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Mended {
    /// The token.
    pub token: usize,
    /// What it was read as.
    pub read: String,
}

/// The items of a message.
#[derive(Debug, Default)]
pub(super) struct Items {
    /// The items, in order.
    pub list: Vec<Item>,
    /// Spellings that were mended and belong to a phrase.
    pub mended: Vec<Mended>,
    /// True where a greeting opened the message.
    pub greeted: bool,
    /// Words of each language met: English, Spanish.
    pub languages: [u32; 2],
    /// The tokens that are words which no phrase has.
    pub strange: Vec<usize>,
}

/// Groups tokens into items.
pub(super) fn items(text: &str, tokens: &[Token], vocab: &Vocab) -> Items {
    let mut out = Items::default();
    let words = look_up(text, tokens, vocab, &mut out);
    let mut taken = vec![false; tokens.len()];
    out.list.reserve(tokens.len());
    for at in 0..tokens.len() {
        if taken[at] {
            continue;
        }
        let what = match tokens[at].kind {
            Kind::Word => word(text, tokens, vocab, &words, at, &mut taken),
            kind => without_words(kind),
        };
        let mut end = at + 1;
        // only a phrase has more tokens: one that leaves a gap has taken those behind it before
        while taken[at] && end < tokens.len() && taken[end] {
            end += 1;
        }
        out.list.push(Item {
            what,
            first: at,
            end,
            sentence: 0,
            chunk: 0,
            glued: tokens[at].glued,
        });
    }
    by_what_else_is_said(&mut out.list);
    out.mended.retain(|m| taken[m.token]);
    if out.languages[0] > out.languages[1] {
        english_once(text, tokens, &mut out.list);
    }
    out.greeted = drop_greeting(&mut out.list);
    super::number::join(text, tokens, &mut out.list);
    out
}

/// Reads a word: a measure that touches its number, else the longest phrase that it opens, whose tokens are then taken.
fn word(
    text: &str,
    tokens: &[Token],
    vocab: &Vocab,
    words: &[[Option<WordId>; 3]],
    at: usize,
    taken: &mut [bool],
) -> What {
    let token = tokens[at];
    let spelt = &text[token.start..token.end];
    let touches = token.glued
        && at > 0
        && matches!(
            tokens[at - 1].kind,
            Kind::Number { .. } | Kind::Range(..) | Kind::Fraction(_)
        );
    if let Some(unit) = touches.then(|| vocab.glued(spelt)).flatten() {
        return What::Is(Concept::Unit(unit));
    }
    if let Some(found) = vocab.longest(&words[at..words.len().min(at + 24)]) {
        for bit in 0..64 {
            if found.mask & (1 << bit) != 0 {
                taken[at + bit] = true;
            }
        }
        return What::Is(found.concept);
    }
    let sign = !spelt.starts_with(char::is_alphanumeric) && !matches!(spelt, "&" | "@" | "%" | "~");
    match sign {
        true => What::Sign('\u{fffd}'),
        false => What::Word {
            ordinary: words[at].iter().flatten().any(|id| *id != UNKNOWN),
        },
    }
}

/// Returns what a token is that no phrase has.
fn without_words(kind: Kind) -> What {
    let number = |value, form| {
        What::Number(Number {
            value,
            form,
            unit: None,
            bound: false,
        })
    };
    match kind {
        Kind::Number {
            value,
            whole: true,
            signed: false,
        } => number(value, Form::Whole),
        Kind::Number { value, .. } => number(value, Form::Decimal),
        Kind::Fraction(value) => number(value, Form::Part),
        Kind::Range(from, to) => What::Range(from, to, None),
        Kind::Clock(minutes) => What::Clock(minutes),
        Kind::Labelled => What::Labelled,
        Kind::Code => What::Code,
        Kind::Garbled => What::Garbled,
        Kind::Sign(c) => What::Sign(c),
        Kind::Break => What::Break,
        Kind::Word => What::Word { ordinary: false },
    }
}

/// Times in words and dictated signs; "before" and "after" alone answer a question, elsewhere a time follows them.
fn by_what_else_is_said(items: &mut [Item]) {
    let said = items
        .iter()
        .filter(|i| !matches!(i.what, What::Sign(_) | What::Break))
        .count();
    for item in items {
        item.what = match item.what {
            What::Is(Concept::Time(minutes)) => What::Clock(minutes),
            What::Is(Concept::Mark(Mark::DictatedQuery)) => What::Sign('?'),
            What::Is(Concept::Mark(Mark::Before)) if said == 1 => {
                What::Is(Concept::Answer(ShortAnswer::Before))
            }
            What::Is(Concept::Mark(Mark::After)) if said == 1 => {
                What::Is(Concept::Answer(ShortAnswer::After))
            }
            What::Is(Concept::Mark(Mark::Before | Mark::After)) => {
                What::Is(Concept::Mark(Mark::Clock))
            }
            what => what,
        };
    }
}

/// "gfci tripped once": eleven only where the rest is Spanish.
fn english_once(text: &str, tokens: &[Token], items: &mut [Item]) {
    for item in items {
        if item.what == What::Is(Concept::Spoken(Spoken::Number(11.0)))
            && text[tokens[item.first].start..tokens[item.end - 1].end] == *"once"
        {
            item.what = What::Word { ordinary: true };
        }
    }
}

/// "hey 12 psi 55", "good morning, 12 arrived": what opens a message as courtesy says nothing of what follows.
fn drop_greeting(items: &mut Vec<Item>) -> bool {
    let greets = items.iter().take_while(|i| i.is(Mark::Call)).count();
    if greets == 0 {
        return false;
    }
    let signs = items[greets..]
        .iter()
        .take_while(|i| matches!(i.what, What::Sign(',' | '!' | '.' | '\u{fffd}')))
        .count();
    let rest = &items[greets + signs..];
    if rest
        .iter()
        .any(|i| !i.is(Mark::Call) && !matches!(i.what, What::Sign(_) | What::Break))
    {
        items.drain(..greets + signs);
    }
    true
}

/// Finds the words of the vocabulary that each token may be: as spelt, without accents, without an ending, mended.
fn look_up(
    text: &str,
    tokens: &[Token],
    vocab: &Vocab,
    out: &mut Items,
) -> Vec<[Option<WordId>; 3]> {
    let mut words = Vec::with_capacity(tokens.len());
    let mut buffer = String::new();
    for (at, token) in tokens.iter().enumerate() {
        let mut ids = [None; 3];
        if token.kind == Kind::Word {
            let mut spelt = &text[token.start..token.end];
            let marked = spelt.contains('\'').then(|| vocab.id(spelt)).flatten();
            if spelt.contains('\'') {
                buffer.clear();
                buffer.extend(spelt.chars().filter(|c| *c != '\''));
                spelt = &buffer;
            }
            let bare;
            let without = if spelt.is_ascii() {
                spelt
            } else {
                bare = plain(spelt);
                bare.as_str()
            };
            ids[0] = vocab.id(spelt);
            if without != spelt {
                // no word of English alone has an accent: etá is not eta
                ids[1] = vocab.id(without).filter(|id| vocab.languages(*id) != 1);
            }
            // "iss" is no plural of "is"
            if without.len() > 3 {
                ids[2] = without.strip_suffix('s').and_then(|stem| vocab.id(stem));
            }
            // pullin, rollin: the ending as it is said
            if ids.iter().all(Option::is_none) && without.len() > 4 && without.ends_with("in") {
                ids[2] = vocab.id(&format!("{without}g"));
            }
            // halfish, fiftyish: about so much
            if ids.iter().all(Option::is_none)
                && let Some(id) = without.strip_suffix("ish").and_then(|stem| vocab.id(stem))
                && matches!(vocab.meaning(id), Some(Concept::Spoken(_)))
            {
                ids[2] = Some(id);
            }
            if ids.iter().all(Option::is_none)
                && without.len() > 2
                && let Some((id, read)) = vocab.mend(without)
            {
                ids[2] = Some(id);
                out.mended.push(Mended {
                    token: at,
                    read: read.to_string(),
                });
            }
            if ids.iter().flatten().all(|id| !vocab.in_a_phrase(*id)) {
                out.strange.push(at);
            }
            // "10 fan's dead": of the fan, and no ten fans
            let stem = text[token.start..token.end].strip_suffix("'s");
            if let Some(stem) = stem
                .filter(|_| marked.is_none())
                .and_then(|stem| vocab.id(stem))
                && vocab
                    .meaning(stem)
                    .is_some_and(|is| matches!(is, Concept::Noun(_)))
            {
                ids = [Some(stem), ids[0], ids[1]];
            }
            // `we're` is not `were`: a spelling with its apostrophe goes first
            if let Some(id) = marked {
                let alike = ids[0].filter(|plain| vocab.meaning(*plain) == vocab.meaning(id));
                ids = [Some(id), alike, None];
            }
            if let Some(id) = ids.iter().flatten().next() {
                match vocab.languages(*id) {
                    1 => out.languages[0] += 1,
                    2 => out.languages[1] += 1,
                    _ => {}
                }
            }
        }
        if ids == [None; 3] && !matches!(token.kind, Kind::Sign(_) | Kind::Break) {
            ids[0] = Some(UNKNOWN);
        }
        words.push(ids);
    }
    words
}

/// Returns the items of the sentence that `at` stands in. Sentences are numbered in order and of bounded length, so this
/// does not grow with the message.
pub(super) fn sentence_around(items: &[Item], at: usize) -> Range<usize> {
    let sentence = items[at].sentence;
    let start = at
        - items[..at]
            .iter()
            .rev()
            .take_while(|i| i.sentence == sentence)
            .count();
    let rest = items[at..]
        .iter()
        .take_while(|i| i.sentence == sentence)
        .count();
    start..at + rest
}

/// Tells the part of a spoken number that an item is.
pub(super) fn spoken(item: &Item) -> Option<Spoken> {
    match item.what {
        What::Is(Concept::Spoken(part)) => Some(part),
        _ => None,
    }
}
