//! People's words on a terminal: data, never orders to it.

/// Puts a person's text on one line, with nothing in it that a terminal would obey.
pub(super) fn one_line(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            c if c.is_control() || c.is_whitespace() => ' ',
            // direction marks would turn the rest of the line around
            '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {
                '\u{fffd}'
            }
            c => c,
        })
        .collect()
}

/// Prints a count with its word.
pub(super) fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}
