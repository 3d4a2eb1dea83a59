//! Cuts a folded text into tokens: words, numbers in every form crews write them, times, dates, phones, prices, names.

mod forms;

use super::senses::Sense;
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
    /// A word of the word files: `w/o`.
    fn is_word(&self, word: &str) -> bool;
    /// A spelling with a sense that the lexer asks for: the `th` of `4th`.
    fn has(&self, word: &str, sense: Sense) -> bool;
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
        let body = &self.text[self.at + sign..];
        let (kind, length) = match sign {
            0 => read_number(body),
            _ => self.signed(body),
        };
        let after = &body[length..];
        // letters that touch the digits: a measure, or part of a name, or a slip
        let tail = after
            .find(|c: char| !c.is_alphanumeric())
            .unwrap_or(after.len());
        let (kind, taken) = self
            .about(kind, after)
            .or_else(|| self.name_that_is(kind, &after[..tail], &after[tail..]))
            .or_else(|| self.parts_of_one(kind, &after[..tail]))
            .or_else(|| self.with_its_ending(kind, length, &after[..tail]))
            .or_else(|| self.name_or_slip(kind, sign, &after[..tail]))
            .unwrap_or((kind, 0));
        self.push(kind, sign + length + taken);
    }

    /// Reads a number behind its sign.
    fn signed(&self, body: &str) -> (Kind, usize) {
        let negative = self.text[self.at..].starts_with('-');
        let (kind, length) = read_plain(body);
        let Kind::Number { value, whole, .. } = kind else {
            return (kind, length);
        };
        let value = if negative { -value } else { value };
        let signed = true;
        let kind = Kind::Number {
            value,
            whole,
            signed,
        };
        (kind, length)
    }

    /// 55ish, 55-ish: about 55.
    fn about(&self, kind: Kind, after: &str) -> Option<(Kind, usize)> {
        let dash = usize::from(after.starts_with('-'));
        let word = &after[dash..];
        let word = &word[..word
            .find(|c: char| !c.is_alphanumeric())
            .unwrap_or(word.len())];
        self.letters
            .has(word, Sense::AboutEnding)
            .then_some((kind, dash + word.len()))
    }

    /// "17s back in the yard": a trailer that opens what is said of it, without its apostrophe. "30s later" is a time.
    fn name_that_is(&self, kind: Kind, letters: &str, after: &str) -> Option<(Kind, usize)> {
        let opens = self
            .out
            .last()
            .is_none_or(|before| matches!(before.kind, Kind::Break | Kind::Sign('.' | ';')));
        let whole = matches!(kind, Kind::Number { whole: true, .. });
        let next = after.trim_start_matches(' ');
        let next = &next[..letters_of(next)];
        let of_time = self.letters.has(next, Sense::AfterSeconds);
        // "the plug on one of 5s cords": what follows is a thing that a trailer has
        let has_it = self.letters.has(next, Sense::OfATrailer);
        let name = opens && !next.is_empty() && !of_time || has_it;
        (whole && letters == "s" && name).then_some((kind, 1))
    }

    /// The 3/4ths, the 1/3rd.
    fn parts_of_one(&self, kind: Kind, letters: &str) -> Option<(Kind, usize)> {
        let part = matches!(kind, Kind::Fraction(_));
        (part && self.letters.has(letters, Sense::PartEnding)).then_some((kind, letters.len()))
    }

    /// 4th, 2x, 7pm, 730am, 1430hrs.
    fn with_its_ending(&self, kind: Kind, digits: usize, letters: &str) -> Option<(Kind, usize)> {
        let plain = matches!(
            kind,
            Kind::Number { .. } | Kind::Range(..) | Kind::Fraction(_)
        );
        if !plain || letters.is_empty() {
            return None;
        }
        let word = leading_word(letters);
        if self.letters.has(word, Sense::OrdinalEnding) {
            return Some((Kind::Labelled, word.len()));
        }
        if letters == "x" {
            return Some((Kind::Labelled, 1));
        }
        let Kind::Number {
            value, whole: true, ..
        } = kind
        else {
            return None;
        };
        let (h, m) = ((value / 100.0) as u16, (value % 100.0) as u16);
        let half = matches!(word, "am" | "pm");
        if half && (1.0..=12.0).contains(&value) {
            return Some((Kind::Clock(half_day(value as u16, 0, word)), word.len()));
        }
        if half && (100.0..=1259.0).contains(&value) && m < 60 {
            return Some((Kind::Clock(half_day(h, m, word)), word.len()));
        }
        let whole_day = digits == 4 && value <= 2359.0;
        (whole_day && self.letters.has(word, Sense::HourEnding))
            .then(|| (Kind::Clock(h * 60 + m), word.len()))
    }

    /// `12b` may be a name, `5o` a slip.
    fn name_or_slip(&self, kind: Kind, sign: usize, letters: &str) -> Option<(Kind, usize)> {
        let bare = sign == 0 && matches!(kind, Kind::Number { whole: true, .. });
        let of_few = (1..=3).contains(&letters.len());
        if !bare || !of_few || self.letters.is_measure(leading_word(letters)) {
            return None;
        }
        let slip = letters.contains(['o', 'l', 'i']) || letters.len() > 1;
        let kind = if slip { Kind::Garbled } else { Kind::Code };
        Some((kind, letters.len()))
    }

    fn word(&mut self) {
        let rest = &self.text[self.at..];
        if let Some(length) = self.slashed(rest).or_else(|| dotted(rest)) {
            return self.push(Kind::Word, length);
        }
        let end = letters_of(rest);
        let word = &rest[..end];
        if let Some((kind, length)) = self.named(rest, end) {
            return self.push(kind, length);
        }
        if let Some(sign) = self.dictated(word) {
            return self.push(Kind::Sign(sign), end);
        }
        self.push(Kind::Word, end);
        // "no. 88213": the point belongs to the word
        let rest = &self.text[self.at..];
        let number = |rest: &str| {
            rest.trim_start_matches(' ')
                .starts_with(|c: char| c.is_ascii_digit())
        };
        if rest.starts_with('.') && number(&rest[1..]) && self.letters.has(word, Sense::Shortened) {
            self.at += 1;
        }
    }

    /// Returns the mark that a dictated word stands for: `comma`, `period`.
    fn dictated(&self, word: &str) -> Option<char> {
        if self.letters.has(word, Sense::SaidComma) {
            return Some(',');
        }
        let before = self.out.last()?;
        let of_time = before.kind == Kind::Word
            && self
                .letters
                .has(&self.text[before.start..before.end], Sense::NoStop);
        let stop = !of_time && self.letters.has(word, Sense::SaidStop);
        stop.then_some('.')
    }

    /// `w/o`, `km/h`, `kg/cm2`: a word of ours with a slash in it, or at its end as in `w/12`.
    fn slashed(&self, rest: &str) -> Option<usize> {
        let slash = letters_of(rest);
        if !rest[slash..].starts_with('/') {
            return None;
        }
        let after = &rest[slash + 1..];
        let tail = after
            .find(|c: char| !c.is_alphanumeric())
            .unwrap_or(after.len());
        [slash + 1 + tail, slash + 1]
            .into_iter()
            .find(|length| self.letters.is_word(&rest[..*length]))
    }

    /// `b7`, `r-204`, `u12a`: a name of letters and digits; `i-70`, a road.
    fn named(&self, rest: &str, end: usize) -> Option<(Kind, usize)> {
        let (word, after) = (&rest[..end], &rest[end..]);
        let digits = |s: &str| s.len() - s.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let dash = usize::from(after.starts_with('-'));
        let run = digits(&after[dash..]);
        let of_few = run > 0 && word.is_ascii() && word.len() <= 3;
        let free = of_few
            && !self.letters.is_unit(word)
            && (word.len() == 1 || !self.letters.is_prefix(word));
        if !free {
            return None;
        }
        // a letter more belongs to the name: `b7a`
        let tail = &rest[end + dash + run..];
        let extra = tail
            .find(|c: char| !c.is_alphanumeric())
            .unwrap_or(tail.len());
        let road = dash == 1 && self.letters.has(word, Sense::Road);
        let kind = if road && run <= 3 && extra == 0 {
            Kind::Labelled
        } else if run <= 5 && extra <= 1 {
            Kind::Code
        } else {
            Kind::Garbled
        };
        Some((kind, end + dash + run + extra))
    }
}

/// Returns the letters that a run of letters and digits opens with.
fn leading_word(letters: &str) -> &str {
    let end = letters.find(|c: char| !c.is_alphabetic());
    &letters[..end.unwrap_or(letters.len())]
}

/// Returns the length of the word that `rest` opens with, apostrophes inside it counted.
fn letters_of(rest: &str) -> usize {
    let mut end = 0;
    let mut chars = rest.char_indices().peekable();
    while let Some((i, c)) = chars.next() {
        if c.is_alphabetic() {
            end = i + c.len_utf8();
        } else if c != '\'' || !chars.peek().is_some_and(|(_, next)| next.is_alphabetic()) {
            break;
        }
    }
    end
}

/// `a.m.`, `u.s.`: two letters with their points.
fn dotted(rest: &str) -> Option<usize> {
    ["a.m.", "p.m.", "u.s.", "a. m.", "p. m."]
        .into_iter()
        .find(|mark| rest.starts_with(mark))
        .map(str::len)
}

fn half_day(hours: u16, minutes: u16, mark: &str) -> u16 {
    let hours = hours % 12 + if mark.starts_with('p') { 12 } else { 0 };
    hours * 60 + minutes
}
