//! Lines of standard input, whatever comes: none is kept that is longer than anything a crew writes.

use std::io::{self, BufRead, Read};

/// The longest message that is read, bytes: far more than any crew types, and the reader's own measure.
pub(super) const LONGEST: usize = 64 * 1024;

/// The longest line that holds a message in JSON, bytes: every byte may stand there as `\u00XX`.
pub(super) const LONGEST_JSON: usize = 6 * LONGEST + 4096;

/// One line, without its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Typed {
    Text(String),
    /// It cannot be read; says why and what to do.
    Unreadable(String),
}

/// Reads line after line.
pub(super) struct Lines<R> {
    input: R,
    longest: usize,
    line: Vec<u8>,
}

impl<R: BufRead> Lines<R> {
    /// Reads lines of at most `longest` bytes.
    pub(super) fn new(input: R, longest: usize) -> Self {
        Lines {
            input,
            longest,
            line: Vec::new(),
        }
    }

    /// Reads the next line; none at the end.
    pub(super) fn next(&mut self) -> io::Result<Option<Typed>> {
        self.line.clear();
        // with room for the line's end, `\r\n`
        let most = self.longest as u64 + 2;
        let count = (&mut self.input)
            .take(most)
            .read_until(b'\n', &mut self.line)?;
        if count == 0 {
            return Ok(None);
        }
        let ended = self.line.ends_with(b"\n");
        let line = self.line.strip_suffix(b"\n").unwrap_or(&self.line);
        let line = line.strip_suffix(b"\r").unwrap_or(line);
        if line.len() > self.longest || (!ended && count as u64 == most) {
            if !ended {
                self.skip()?;
            }
            return Ok(Some(Typed::Unreadable(format!(
                "the line is longer than {} kB: send it in parts",
                self.longest / 1024
            ))));
        }
        Ok(Some(match std::str::from_utf8(line) {
            Ok(text) => Typed::Text(text.to_owned()),
            Err(_) => Typed::Unreadable("the line is not UTF-8 text: save it as UTF-8".into()),
        }))
    }

    /// Passes over the rest of a line.
    fn skip(&mut self) -> io::Result<()> {
        loop {
            let buffer = self.input.fill_buf()?;
            if buffer.is_empty() {
                return Ok(());
            }
            match buffer.iter().position(|byte| *byte == b'\n') {
                Some(end) => {
                    self.input.consume(end + 1);
                    return Ok(());
                }
                None => {
                    let all = buffer.len();
                    self.input.consume(all);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(bytes: &[u8]) -> Vec<Typed> {
        let mut lines = Lines::new(bytes, 4);
        std::iter::from_fn(|| lines.next().unwrap()).collect()
    }

    fn text(text: &str) -> Typed {
        Typed::Text(text.to_owned())
    }

    #[test]
    fn a_line_of_just_the_longest_is_read_with_any_end() {
        for end in ["\n", "\r\n", ""] {
            assert_eq!(all(format!("abcd{end}").as_bytes()), [text("abcd")]);
        }
    }

    #[test]
    fn a_longer_line_is_said_once_and_the_next_is_read() {
        for longer in ["abcde", "abcdef", "abcdefg", "abcdefghijklmnop"] {
            for end in ["\n", "\r\n"] {
                let lines = all(format!("{longer}{end}next\n").as_bytes());
                assert!(
                    matches!(&lines[..], [Typed::Unreadable(_), Typed::Text(next)] if next == "next"),
                    "{longer}{end:?}: {lines:?}"
                );
            }
            assert!(matches!(
                &all(longer.as_bytes())[..],
                [Typed::Unreadable(_)]
            ));
        }
    }

    #[test]
    fn bytes_that_are_no_text_are_said_and_the_next_line_is_read() {
        let lines = all(b"\xff\xfe\nok\n");
        assert!(matches!(&lines[..], [Typed::Unreadable(_), Typed::Text(ok)] if ok == "ok"));
    }

    #[test]
    fn nothing_is_no_line_and_an_empty_line_is_one() {
        assert_eq!(all(b""), []);
        assert_eq!(all(b"\n\r\n"), [text(""), text("")]);
    }
}
