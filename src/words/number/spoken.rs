//! Numbers in words: ninety five, a hundred and ten, three quarters, one eighteen.

use crate::words::concept::{Concept, Mark, Noun, Spoken};
use crate::words::item::{Form, Item, Number, What, spoken};
use crate::words::lex::Token;

pub(super) fn read_spoken(text: &str, tokens: &[Token], items: &mut Vec<Item>) {
    let mut out: Vec<Item> = Vec::with_capacity(items.len());
    let mut at = 0;
    while at < items.len() {
        let starts = spoken(&items[at]).is_some()
            || matches!(
                items[at].what,
                What::Number(Number {
                    form: Form::Whole,
                    ..
                })
            ) && items.get(at + 1).and_then(spoken).is_some_and(|s| {
                matches!(
                    s,
                    Spoken::Part(_) | Spoken::Parts(_) | Spoken::Hundred | Spoken::Thousand
                )
            });
        if starts {
            if let Some((number, used)) = one_spoken(text, tokens, &items[at..], out.last()) {
                let mut item = items[at];
                item.what = What::Number(number);
                item.end = items[at + used - 1].end;
                out.push(item);
                at += used;
                continue;
            }
            let mut item = items[at];
            item.what = What::Word { ordinary: true };
            out.push(item);
            at += 1;
            continue;
        }
        out.push(items[at]);
        at += 1;
    }
    *items = out;
}

/// Reads one spoken number; returns it with how many items it took.
fn one_spoken(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    before: Option<&Item>,
) -> Option<(Number, usize)> {
    let mut spelling = Spelling {
        text,
        tokens,
        items,
        before,
        value: None,
        round: false,
        used: 0,
    };
    while let Some(item) = items.get(spelling.used) {
        let step = match item.what {
            // "4 hundred", "2 thirds"
            What::Number(number) if spelling.used == 0 => spelling.set(number.value),
            What::Is(Concept::Mark(Mark::And)) => spelling.and(),
            What::Is(Concept::Spoken(word)) => spelling.word(item, word),
            _ => Step::End,
        };
        match step {
            Step::On => {}
            Step::End => break,
            Step::Is(number, used) => return Some((number, used)),
            Step::NoNumber => return None,
        }
    }
    let value = spelling.value.filter(|_| spelling.used > 0)?;
    Some((number(value, Form::Whole), spelling.used))
}

/// What a word does to the number that is being spelled.
enum Step {
    /// It belongs to the number; the next may too.
    On,
    /// The number ended before it.
    End,
    /// It completes the number, which takes so many items.
    Is(Number, usize),
    /// There is no number here after all.
    NoNumber,
}

/// A number that is being spelled, word by word.
struct Spelling<'a> {
    text: &'a str,
    tokens: &'a [Token],
    items: &'a [Item],
    /// What stands before it.
    before: Option<&'a Item>,
    value: Option<f64>,
    /// Whether the last word was a hundred or more, so that a smaller number may follow.
    round: bool,
    /// How many items it has taken.
    used: usize,
}

impl Spelling<'_> {
    /// Takes a word of a number.
    fn word(&mut self, item: &Item, word: Spoken) -> Step {
        match (word, self.value) {
            (Spoken::Part(part), value) => self.part(item, part, value),
            (Spoken::Parts(part), Some(v)) if v >= 1.0 && v * part <= 1.0 => {
                Step::Is(number(v * part, Form::Part), self.used + 1)
            }
            (Spoken::One, None) if self.is_one(item) => self.set(1.0),
            (Spoken::One, None) => Step::NoNumber,
            (Spoken::One, Some(v)) if self.round || v >= 20.0 && v % 10.0 == 0.0 => {
                self.set(v + 1.0)
            }
            (Spoken::Number(n), None) => {
                self.set(n);
                self.round = n >= 100.0;
                Step::On
            }
            (Spoken::Number(n), Some(v)) => self.smaller(v, n),
            (Spoken::Oh, Some(v)) if v < 10.0 => match self.ahead(1) {
                Some(Spoken::Number(n)) if n < 10.0 => {
                    self.used += 1;
                    self.set(v * 100.0 + n)
                }
                _ => Step::End,
            },
            (Spoken::Hundred, v) if v.is_none_or(|v| v < 100.0) => self.times(100.0),
            (Spoken::Thousand, v) if v.is_none_or(|v| v < 1000.0) => self.times(1000.0),
            (Spoken::Point, Some(v)) => self.decimals(v),
            _ => Step::End,
        }
    }

    /// Takes one item, after which the number is this.
    fn set(&mut self, value: f64) -> Step {
        self.value = Some(value);
        self.used += 1;
        Step::On
    }

    fn times(&mut self, factor: f64) -> Step {
        self.set(self.value.unwrap_or(1.0) * factor);
        self.round = true;
        Step::On
    }

    /// Takes a number behind a greater one: "ninety five", "a hundred ten", and dictated "one eighteen".
    fn smaller(&mut self, value: f64, n: f64) -> Step {
        let tens = value >= 20.0 && value % 10.0 == 0.0 && value % 100.0 != 0.0;
        let sum = match n {
            n if tens && n < 10.0 => value + n,
            n if self.round && n < 100.0 => value + n,
            n if value < 10.0 && (10.0..100.0).contains(&n) => value * 100.0 + n,
            _ => return Step::End,
        };
        self.round = false;
        self.set(sum)
    }

    /// Takes an "and": "a hundred and ten", "noventa y cinco", "one and a half".
    fn and(&mut self) -> Step {
        let tens = self.value.is_some_and(|v| v >= 20.0 && v % 10.0 == 0.0)
            && self.spelled(&self.items[self.used]) == "y";
        let filler = self.items.get(self.used + 1);
        let filled = filler.is_some_and(|item| item.is(Mark::Filler));
        let ahead = if filled { 2 } else { 1 };
        match (self.ahead(ahead), self.value) {
            (Some(Spoken::Number(n)), Some(v))
                if !filled && (self.round && n < 100.0 || tens && n < 10.0) =>
            {
                self.round = false;
                self.used += 1;
                self.set(v + n)
            }
            (Some(Spoken::One), Some(v)) if !filled && (self.round || tens) => {
                self.used += 1;
                self.set(v + 1.0)
            }
            (Some(Spoken::Part(0.5)), Some(v)) if v <= 9.0 => {
                Step::Is(number(v + 0.5, Form::Part), self.used + ahead + 1)
            }
            // "cincuenta y dos y medio": in words all through, after a thing that has such numbers
            (Some(Spoken::Part(0.5)), Some(v))
                if (20.0..100.0).contains(&v)
                    && spoken(&self.items[0]).is_some()
                    && self
                        .before
                        .is_some_and(|b| b.noun().is_some() || b.is_filler()) =>
            {
                Step::Is(number(v + 0.5, Form::Decimal), self.used + ahead + 1)
            }
            _ => Step::End,
        }
    }

    /// Takes a fraction: "half", "one quarter"; "de la 3 un tercio" is not three of them.
    fn part(&self, item: &Item, part: f64, value: Option<f64>) -> Step {
        let alone = item.end == item.first + 1;
        match value {
            None => Step::Is(number(part, Form::Part), self.used + 1),
            Some(v) if alone && v >= 1.0 && v * part <= 1.0 && (part < 0.5 || v == 1.0) => {
                Step::Is(number(v * part, Form::Part), self.used + 1)
            }
            Some(_) => Step::End,
        }
    }

    /// Tells whether a "one" is a number: it goes on, it is the name of something, or something is measured by it.
    fn is_one(&self, item: &Item) -> bool {
        let goes_on = match self.ahead(1) {
            Some(Spoken::Number(n)) => (10.0..100.0).contains(&n),
            Some(
                Spoken::Hundred | Spoken::Thousand | Spoken::Oh | Spoken::Point | Spoken::Part(_),
            ) => true,
            _ => false,
        };
        let article = matches!(self.spelled(item), "un" | "una");
        let named = self.before.is_some_and(|b| {
            // "circuit one"; "the outside one" is no number
            matches!(
                b.what,
                What::Is(Concept::Mark(Mark::Unit | Mark::Minus | Mark::Label))
            ) || b.noun().is_some_and(|noun| noun.reading().is_none())
        });
        let measured = match self.items.get(self.used + 1).map(|item| item.what) {
            Some(What::Is(Concept::Unit(_))) => true,
            // "un cable vivo": one that has power; in "un cable" it may be the article
            Some(What::Is(Concept::Noun(Noun::Cords))) if article => {
                let cords = &self.items[self.used + 1];
                cords.end > cords.first + 1
            }
            Some(What::Is(Concept::Noun(Noun::Cord | Noun::Cords))) => !article,
            Some(What::Is(Concept::Mark(Mark::Of))) => self.of_the_cords(),
            _ => false,
        };
        goes_on || measured || named && !article
    }

    /// "one of the cords", "uno de los cables".
    fn of_the_cords(&self) -> bool {
        let mut after = self.items[self.used + 2..].iter().take(3);
        after
            .find(|item| !item.is_filler())
            .is_some_and(|item| item.noun() == Some(Noun::Cords))
    }

    /// Takes the digits behind a point: "forty eight point five".
    fn decimals(&self, whole: f64) -> Step {
        let (mut total, mut place, mut ahead) = (whole, 0.1, 1);
        while let Some(digit @ (Spoken::Number(_) | Spoken::One | Spoken::Oh)) = self.ahead(ahead) {
            let digit = match digit {
                Spoken::Number(n) if n < 10.0 => n,
                Spoken::One => 1.0,
                _ => 0.0,
            };
            total += digit * place;
            place /= 10.0;
            ahead += 1;
        }
        if ahead == 1 {
            // "twelve point sevem": what followed the point is lost
            let bound = Number {
                bound: true,
                ..number(whole, Form::Whole)
            };
            return Step::Is(bound, self.used + 1);
        }
        let value = (total * 1e4).round() / 1e4;
        Step::Is(number(value, Form::Decimal), self.used + ahead)
    }

    /// Returns the word of a number that stands so far ahead.
    fn ahead(&self, by: usize) -> Option<Spoken> {
        self.items.get(self.used + by).and_then(spoken)
    }

    /// Returns the first word of an item, as it was folded.
    fn spelled(&self, item: &Item) -> &str {
        let token = &self.tokens[item.first];
        &self.text[token.start..token.end]
    }
}

fn number(value: f64, form: Form) -> Number {
    Number {
        value,
        form,
        unit: None,
        bound: false,
    }
}
