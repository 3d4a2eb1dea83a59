//! Folds any Unicode text to one plain form, keeping for each byte where it came from.
//!
//! Full-width letters and digits, fraction signs, minus and dash variants become their plain forms; zero-width and
//! direction marks and markup vanish; letters become lower case. Accents are kept: they tell `llego` from `llegó`.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// The longest tag that is taken for markup, in characters.
const LONGEST_TAG: usize = 48;

/// A folded text and the way back to the original.
#[derive(Debug, Default)]
pub(super) struct Normal {
    /// The folded text.
    pub text: String,
    /// For each byte of `text`, the byte of the original it came from; one more at the end.
    at: Vec<u32>,
}

impl Normal {
    /// Folds `original`.
    pub(super) fn new(original: &str) -> Normal {
        let mut normal = Normal {
            text: String::with_capacity(original.len() + 8),
            at: Vec::with_capacity(original.len() + 9),
        };
        normal.fold(original);
        normal.at.push(original.len() as u32);
        normal
    }

    /// Returns the piece of the original that `start..end` of the folded text came from.
    pub(super) fn original<'t>(&self, original: &'t str, start: usize, end: usize) -> &'t str {
        let from = self.at.get(start).copied().unwrap_or(0) as usize;
        let to = self.at.get(end).copied().unwrap_or(0) as usize;
        original.get(from..to.max(from)).unwrap_or_default().trim()
    }

    fn push(&mut self, c: char, from: usize) {
        self.text.push(c);
        for _ in 0..c.len_utf8() {
            self.at.push(from as u32);
        }
    }

    fn push_str(&mut self, s: &str, from: usize) {
        for c in s.chars() {
            self.push(c, from);
        }
    }

    fn fold(&mut self, original: &str) {
        let mut rest = original.char_indices().peekable();
        while let Some((from, c)) = rest.next() {
            if c.is_ascii() {
                match c {
                    '<' => {
                        if let Some(length) = tag_length(&original[from..]) {
                            let line = original[from..from + length].starts_with("<br")
                                || original[from..].starts_with("</p");
                            while rest.peek().is_some_and(|(i, _)| *i < from + length) {
                                rest.next();
                            }
                            self.push(if line { '\n' } else { ' ' }, from);
                        } else {
                            self.push(c, from);
                        }
                    }
                    '\0'..='\x08' | '\x0b' | '\x0c' | '\x0e'..='\x1f' | '\x7f' => {
                        self.push(' ', from)
                    }
                    '\r' => self.push('\n', from),
                    // an apostrophe inside a word, else a mark of code
                    '`' => {
                        let inside = self.text.ends_with(char::is_alphabetic)
                            && rest.peek().is_some_and(|(_, next)| next.is_alphabetic());
                        self.push(if inside { '\'' } else { ' ' }, from);
                    }
                    // **bold**; a single star takes back
                    '*' if rest.next_if(|(_, next)| *next == '*').is_some() => {
                        while rest.next_if(|(_, next)| *next == '*').is_some() {}
                        self.push(' ', from);
                    }
                    _ if rest
                        .peek()
                        .is_some_and(|(_, next)| is_combining_mark(*next)) =>
                    {
                        let mut cluster = String::from(c);
                        while let Some((_, mark)) =
                            rest.next_if(|(_, next)| is_combining_mark(*next))
                        {
                            if cluster.len() < 32 {
                                cluster.push(mark);
                            }
                        }
                        let folded: String = cluster.nfkc().flat_map(char::to_lowercase).collect();
                        self.push_str(&folded, from);
                    }
                    _ => self.push(c.to_ascii_lowercase(), from),
                }
                continue;
            }
            self.fold_wide(c, from);
        }
    }

    fn fold_wide(&mut self, c: char, from: usize) {
        match c {
            // zero-width, direction marks, variation selectors, soft hyphen, byte-order mark
            '\u{200b}'..='\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{2064}'
            | '\u{2066}'..='\u{206f}'
            | '\u{fe00}'..='\u{fe0f}'
            | '\u{1f3fb}'..='\u{1f3ff}'
            | '\u{feff}'
            | '\u{00ad}'
            | '\u{061c}' => {}
            '\u{2010}' | '\u{2011}' | '\u{2012}' | '\u{2212}' | '\u{fe63}' | '\u{ff0d}' => {
                self.push('-', from)
            }
            '\u{2013}' | '\u{2014}' | '\u{2015}' => self.push_dash(from),
            '\u{2018}' | '\u{2019}' | '\u{201b}' | '\u{2032}' | '\u{00b4}' | '\u{02bc}' => {
                self.push('\'', from)
            }
            '\u{201c}'..='\u{201f}' | '\u{00ab}' | '\u{00bb}' | '\u{2033}' => self.push('"', from),
            '\u{2026}' => self.push_str("...", from),
            '\u{2044}' | '\u{2215}' => self.push('/', from),
            '\u{2022}' | '\u{25cf}' | '\u{25aa}' | '\u{00b7}' => self.push('\n', from),
            '\u{2028}' | '\u{2029}' | '\u{85}' => self.push('\n', from),
            '\u{00ba}' | '\u{02da}' => self.push('\u{b0}', from),
            '\u{b0}' => self.push('\u{b0}', from),
            '\u{2248}' => self.push('~', from),
            '\u{2753}' | '\u{2754}' => self.push('?', from),
            _ if c.is_whitespace() => self.push(' ', from),
            _ => {
                let mut folded = String::new();
                for part in std::iter::once(c).nfkc() {
                    for lower in part.to_lowercase() {
                        folded.push(if lower == '\u{2044}' { '/' } else { lower });
                    }
                }
                // `2½` is two and a half, not twenty-one halves
                if folded.starts_with(|p: char| p.is_ascii_digit())
                    && folded.contains('/')
                    && self.text.ends_with(|p: char| p.is_ascii_digit())
                {
                    self.push(' ', from);
                }
                self.push_str(&folded, from);
            }
        }
    }

    /// A long dash is a minus where one could stand (`–8F` after a space), else a dash.
    fn push_dash(&mut self, from: usize) {
        self.push('-', from);
    }
}

/// Returns the length of the markup tag that `text` opens with, if it does.
fn tag_length(text: &str) -> Option<usize> {
    let inside = text.strip_prefix('<')?;
    let first = inside.chars().next()?;
    if !(first.is_ascii_alphabetic() || first == '/') {
        return None;
    }
    inside
        .char_indices()
        .take(LONGEST_TAG)
        .find(|(_, c)| *c == '>' || *c == '\n' || *c == '<')
        .filter(|(_, c)| *c == '>')
        .map(|(i, _)| i + 2)
}

/// Takes the accents off a word; `ñ` becomes `n`.
pub(super) fn plain(word: &str) -> String {
    // most of what the word files hold needs no tables
    if word.is_ascii() {
        return word.to_owned();
    }
    word.nfd().filter(|c| !is_combining_mark(*c)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn unusual_characters_fold_to_plain_ones() {
        assert_eq!(Normal::new("ｕｎｉｔ　１２　ｐｓｉ").text, "unit 12 psi");
        assert_eq!(Normal::new("−5 ¾ 2½").text, "-5 3/4 2 1/2");
        assert_eq!(Normal::new("a\u{200b}b").text, "ab");
        assert_eq!(Normal::new("<b>12</b> 3<4").text, " 12  3<4");
        assert_eq!(Normal::new("llego\u{301}").text, "llegó");
        assert_eq!(Normal::new("**12** psi `54`").text, " 12  psi  54 ");
        assert_eq!(Normal::new("*54, don`t").text, "*54, don't");
        assert_eq!(Normal::new("３／４").text, "3/4");
    }

    #[test]
    fn a_piece_of_the_folded_text_leads_back_to_the_original() {
        let original = "ｐｓｉ ５５!";
        let normal = Normal::new(original);
        assert_eq!(normal.original(original, 4, 6), "５５");
    }
}
