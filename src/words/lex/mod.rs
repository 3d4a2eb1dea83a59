//! Cuts a folded text into tokens: words, numbers in every form crews write them, times, dates, phones, prices, names.

mod forms;

use forms::{read_number, read_plain};

/// What a token is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Kind {
    /// Letters, or a sign that stands for a word.
    Word,
    /// A plain number; `whole` where written without a decimal point.
    Number {
        value: f64,
        whole: bool,
        signed: bool,
    },
    /// A fraction of one, or one and a half and the like.
    Fraction(f64),
    /// Two numbers joined by a dash.
    Range(f64, f64),
    /// A time of day, in minutes after midnight.
    Clock(u16),
    /// A date, phone number, price, ordinal or the like: a number with a use of its own.
    Labelled,
    /// Letters and digits that may name a trailer.
    Code,
    /// Letters and digits that make no sense as either.
    Garbled,
    /// A sign.
    Sign(char),
    /// The end of a line.
    Break,
}

/// A piece of the folded text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Token {
    /// What it is.
    pub kind: Kind,
    /// Where it starts in the folded text.
    pub start: usize,
    /// Where it ends.
    pub end: usize,
    /// True where nothing parts it from the token before.
    pub glued: bool,
}

/// Tells the lexer what a run of letters beside digits is.
pub(super) trait Letters {
    /// A measure or noun that may stand right after its number: `55psi`.
    fn is_measure(&self, word: &str) -> bool;
    /// A word of ours that may stand right before its number: `psi55`, `ckt1`.
    fn is_prefix(&self, word: &str) -> bool;
    /// A word that names a trailer: `u12`.
    fn is_unit(&self, word: &str) -> bool;
}

/// Cuts `text` into tokens.
pub(super) fn tokens(text: &str, letters: &impl Letters) -> Vec<Token> {
    let mut lexer = Lexer {
        text,
        at: 0,
        out: Vec::with_capacity(text.len() / 4 + 4),
        letters,
    };
    lexer.run();
    lexer.out
}

struct Lexer<'t, L> {
    text: &'t str,
    at: usize,
    out: Vec<Token>,
    letters: &'t L,
}

impl<L: Letters> Lexer<'_, L> {
    fn run(&mut self) {
        while let Some(c) = self.text[self.at..].chars().next() {
            match c {
                '\n' => self.push(Kind::Break, 1),
                _ if c.is_whitespace() => self.at += c.len_utf8(),
                '0'..='9' => self.number(0),
                // "+12 fresh 1/2": a mark that opens the line
                '+' if self.opens_line() && self.opens_signed() => self.at += 1,
                '-' | '+' if self.opens_signed() => self.number(1),
                '.' if self.next_is_digit(1) && !self.after_digit() => self.number(0),
                '$' | '€' | '£' if self.digit_within(2) => self.price(c.len_utf8()),
                _ if c.is_alphabetic() => self.word(),
                // a hyphen inside a word only parts it: pump-out
                '-' if self.text[..self.at].ends_with(|b: char| b.is_alphabetic())
                    && self.text[self.at + 1..].starts_with(|n: char| n.is_alphabetic()) =>
                {
                    self.at += 1
                }
                // 8's: the ending of a name
                '\'' if self.after_digit()
                    && self.text[self.at + 1..].starts_with('s')
                    && !self.text[self.at + 2..].starts_with(|c: char| c.is_alphanumeric()) =>
                {
                    self.at += 2
                }
                '\'' | '!' | ',' | ';' | '.' | ':' | '?' | '"' | '-' | '(' | ')' | '/' | '#'
                | '%' | '~' | '*' | '=' | '<' | '>' | '[' | ']' | '{' | '}' | '|' | '\\' | '_'
                | '^' | '$' | '¿' | '¡' | '+' | '&' | '@' | '°' => self.sign(c),
                _ => self.push(Kind::Word, c.len_utf8()),
            }
        }
    }

    fn sign(&mut self, c: char) {
        match c {
            '%' | '&' | '~' => self.push(Kind::Word, 1),
            '@' if !self.text[self.at + 1..].starts_with(|c: char| c.is_alphabetic()) => {
                self.push(Kind::Word, 1)
            }
            '°' => {
                let rest = &self.text[self.at + 2..];
                let scale = rest.starts_with(['c', 'f'])
                    && !rest[1..].starts_with(|c: char| c.is_alphanumeric());
                self.push(Kind::Word, if scale { 3 } else { 2 });
            }
            _ => self.push(Kind::Sign(c), c.len_utf8()),
        }
    }

    fn push(&mut self, kind: Kind, length: usize) {
        let start = self.at;
        self.at += length;
        let glued = self.out.last().is_some_and(|before| before.end == start);
        self.out.push(Token {
            kind,
            start,
            end: self.at,
            glued,
        });
    }

    fn after_digit(&self) -> bool {
        self.text[..self.at].ends_with(|c: char| c.is_ascii_digit())
    }

    fn next_is_digit(&self, skip: usize) -> bool {
        self.text[self.at + skip..].starts_with(|c: char| c.is_ascii_digit())
    }

    fn digit_within(&self, chars: usize) -> bool {
        self.text[self.at..]
            .chars()
            .skip(1)
            .take(chars)
            .any(|c| c.is_ascii_digit())
    }

    /// A sign must touch its number, and not what stands before it.
    fn opens_signed(&self) -> bool {
        let rest = &self.text[self.at + 1..];
        let digit = rest.starts_with(|c: char| c.is_ascii_digit())
            || rest.starts_with('.') && rest[1..].starts_with(|c: char| c.is_ascii_digit());
        let before = self.text[..self.at].chars().next_back();
        digit
            && before.is_none_or(|c| {
                c.is_whitespace()
                    || matches!(
                        c,
                        '(' | ':' | '=' | ',' | '~' | '\'' | '"' | '*' | '/' | '@'
                    )
            })
    }

    fn opens_line(&self) -> bool {
        self.text[..self.at].trim_end_matches(' ').is_empty()
            || self.text[..self.at].trim_end_matches(' ').ends_with('\n')
    }

    fn price(&mut self, skip: usize) {
        let rest = &self.text[self.at + skip..];
        let length = rest
            .find(|c: char| !(c.is_ascii_digit() || matches!(c, ',' | '.' | ' ')))
            .unwrap_or(rest.len());
        let length = rest[..length].trim_end_matches([',', '.', ' ']).len();
        let first = rest[..length]
            .trim_start()
            .split(' ')
            .next()
            .map_or(length, |f| {
                length.min(f.len() + rest[..length].len() - rest[..length].trim_start().len())
            });
        self.push(Kind::Labelled, skip + first);
    }

    fn number(&mut self, sign: usize) {
        let rest = &self.text[self.at..];
        let negative = rest.starts_with('-');
        let body = &rest[sign..];
        let (kind, length) = if sign == 0 {
            read_number(body)
        } else {
            let (kind, length) = read_plain(body);
            match kind {
                Kind::Number { value, whole, .. } => {
                    let value = if negative { -value } else { value };
                    (
                        Kind::Number {
                            value,
                            whole,
                            signed: true,
                        },
                        length,
                    )
                }
                other => (other, length),
            }
        };
        let after = &body[length..];
        // letters that touch the digits: a measure, or part of a name, or a slip
        let tail = after
            .find(|c: char| !c.is_alphanumeric())
            .unwrap_or(after.len());
        // 55ish, 55-ish: about 55
        if let Some(ish) = ["ish", "-ish"].into_iter().find(|ish| {
            after.starts_with(ish) && !after[ish.len()..].starts_with(|c: char| c.is_alphanumeric())
        }) {
            return self.push(kind, sign + length + ish.len());
        }
        if matches!(kind, Kind::Fraction(_))
            && matches!(&after[..tail], "s" | "th" | "ths" | "rd" | "rds")
        {
            return self.push(kind, sign + length + tail);
        }
        let plain = matches!(
            kind,
            Kind::Number { .. } | Kind::Range(..) | Kind::Fraction(_)
        );
        if tail > 0 && plain {
            let letters = &after[..tail];
            let word = &letters[..letters.find(|c: char| !c.is_alphabetic()).unwrap_or(tail)];
            if matches!(
                word,
                "st" | "nd" | "rd" | "th" | "ro" | "do" | "er" | "ra" | "da" | "ta" | "to"
            ) {
                return self.push(Kind::Labelled, sign + length + word.len());
            }
            if word == "x" && letters.len() == 1 {
                return self.push(Kind::Labelled, sign + length + 1);
            }
            if let Kind::Number {
                value, whole: true, ..
            } = kind
            {
                let hours = value.clamp(0.0, 24.0) as u16;
                if matches!(word, "am" | "pm" | "a" | "p")
                    && (1.0..=12.0).contains(&value)
                    && (word.len() == 2)
                {
                    return self.push(
                        Kind::Clock(half_day(hours, 0, word)),
                        sign + length + word.len(),
                    );
                }
                if matches!(word, "am" | "pm")
                    && (100.0..=1259.0).contains(&value)
                    && value % 100.0 < 60.0
                {
                    let (h, m) = ((value / 100.0) as u16, (value % 100.0) as u16);
                    return self.push(
                        Kind::Clock(half_day(h, m, word)),
                        sign + length + word.len(),
                    );
                }
                if matches!(word, "hrs" | "hr") && length == 4 && value <= 2359.0 {
                    return self.push(
                        Kind::Clock((value / 100.0) as u16 * 60 + (value % 100.0) as u16),
                        sign + length + word.len(),
                    );
                }
            }
            if !self.letters.is_measure(word)
                && sign == 0
                && matches!(kind, Kind::Number { whole: true, .. })
                && letters.len() <= 3
            {
                // `12b` may be a name, `5o` a slip
                let slip = letters.contains(['o', 'l', 'i']);
                let kind = if slip || letters.len() > 1 {
                    Kind::Garbled
                } else {
                    Kind::Code
                };
                return self.push(kind, length + letters.len());
            }
        }
        self.push(kind, sign + length);
    }

    fn word(&mut self) {
        let rest = &self.text[self.at..];
        if let Some(length) = [
            "w/o", "w/", "n/a", "km/h", "kg/cm2", "kg/cm", "l/min", "gal/min", "m/s", "c/u",
        ]
        .iter()
        .find(|whole| rest.starts_with(**whole))
        .map(|whole| whole.len())
            && (!rest[length..].starts_with(|c: char| c.is_alphabetic()) || length == 2)
        {
            return self.push(Kind::Word, length);
        }
        for (mark, length) in [("a.m.", 4), ("p.m.", 4), ("u.s.", 4)] {
            if rest.starts_with(mark) {
                return self.push(Kind::Word, length);
            }
        }
        let mut end = 0;
        let mut chars = rest.char_indices().peekable();
        while let Some((i, c)) = chars.next() {
            if c.is_alphabetic() {
                end = i + c.len_utf8();
            } else if c == '\'' && chars.peek().is_some_and(|(_, next)| next.is_alphabetic()) {
                continue;
            } else {
                break;
            }
        }
        let word = &rest[..end];
        let after = &rest[end..];
        let digits = |s: &str| s.len() - s.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let dash = usize::from(after.starts_with('-'));
        let run = digits(&after[dash..]);
        if run > 0 && word.is_ascii() {
            let plain = !self.letters.is_unit(word);
            let free =
                word.len() <= 3 && plain && (word.len() == 1 || !self.letters.is_prefix(word));
            if free && (dash == 0 || word.len() <= 3) {
                let mut length = end + dash + run;
                let tail = &rest[length..];
                let extra = tail
                    .find(|c: char| !c.is_alphanumeric())
                    .unwrap_or(tail.len());
                // a letter more belongs to the name: `b7a`
                length += extra;
                let highway = dash == 1 && matches!(word, "i" | "us" | "sr" | "fm" | "hwy");
                let kind = if highway && run <= 3 && extra == 0 {
                    Kind::Labelled
                } else if run <= 5 && extra <= 1 {
                    Kind::Code
                } else {
                    Kind::Garbled
                };
                return self.push(kind, length);
            }
        }
        self.push(Kind::Word, end);
        // "no. 88213": the point belongs to the word
        if matches!(word, "no" | "nos" | "num" | "ext" | "approx" | "nr" | "núm") {
            let rest = &self.text[self.at..];
            if rest.starts_with('.')
                && rest[1..]
                    .trim_start_matches(' ')
                    .starts_with(|c: char| c.is_ascii_digit())
            {
                self.at += 1;
            }
        }
    }
}

fn half_day(hours: u16, minutes: u16, mark: &str) -> u16 {
    let hours = hours % 12 + if mark.starts_with('p') { 12 } else { 0 };
    hours * 60 + minutes
}
