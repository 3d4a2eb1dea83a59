//! Long texts cut into messages of the length the network takes.

/// The longest text of a message, in UTF-16 units (Bot API, sendMessage).
pub(super) const LONGEST: usize = 4096;

/// Cuts a text into parts of at most [`LONGEST`] units: at the last line break that fits, else at the last blank, else
/// anywhere between two characters. A text with nothing to show gives no part.
pub(super) fn split(text: &str) -> Vec<String> {
    split_at(text, LONGEST)
}

fn split_at(text: &str, longest: usize) -> Vec<String> {
    let mut parts = Vec::new();
    let mut rest = text.trim();
    while !rest.is_empty() {
        let end = fitting(rest, longest);
        let cut = if end == rest.len() {
            end
        } else {
            let head = &rest[..end];
            // the break itself may stand just behind what fits
            let at_line = if rest[end..].starts_with('\n') {
                Some(end)
            } else {
                head.rfind('\n')
            };
            at_line
                .or_else(|| head.rfind(' '))
                .filter(|at| *at > 0)
                .unwrap_or(end)
        };
        let part = rest[..cut].trim_end();
        if !part.is_empty() {
            parts.push(part.to_owned());
        }
        rest = rest[cut..].trim_start();
    }
    parts
}

/// Returns how many bytes of a text fit; at least one character.
fn fitting(text: &str, longest: usize) -> usize {
    let mut units = 0;
    for (at, c) in text.char_indices() {
        units += c.len_utf16();
        if units > longest && at > 0 {
            return at;
        }
    }
    text.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_text_is_one_part() {
        assert_eq!(split("Logged.\nThank you."), ["Logged.\nThank you."]);
        assert!(split(" \n ").is_empty());
    }

    #[test]
    fn a_long_text_breaks_at_lines_then_at_blanks_then_anywhere() {
        assert_eq!(
            split_at("one two\nthree\nfour", 14),
            ["one two\nthree", "four"]
        );
        assert_eq!(split_at("one two three", 8), ["one two", "three"]);
        assert_eq!(split_at("abcdef", 4), ["abcd", "ef"]);
        assert_eq!(split_at("abcd\nef", 4), ["abcd", "ef"]);
    }

    #[test]
    fn length_counts_utf_16_units_and_characters_stay_whole() {
        // U+1F6BD takes two units (Unicode Standard, chapter 3.9)
        assert_eq!(split_at("🚽🚽🚽", 4), ["🚽🚽", "🚽"]);
        assert_eq!(split_at("🚽🚽🚽", 3), ["🚽", "🚽", "🚽"]);
        let long = "é🚽 x\n".repeat(3000);
        let parts = split(&long);
        assert!(
            parts
                .iter()
                .all(|part| part.encode_utf16().count() <= LONGEST)
        );
        let shown = |text: &str| {
            text.chars()
                .filter(|c| !c.is_whitespace())
                .collect::<String>()
        };
        assert_eq!(shown(&parts.concat()), shown(&long));
    }
}
