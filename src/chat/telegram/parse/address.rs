//! What only addresses the bot, taken off a message.

/// Takes off what only addresses the bot: a mention before the words, the slash and the name of a command.
pub(super) fn addressed<'a>(words: &'a str, username: Option<&str>) -> &'a str {
    let mut words = words.trim();
    let Some(name) = username else {
        return words.strip_prefix('/').unwrap_or(words);
    };
    if let Some(rest) = words
        .strip_prefix('@')
        .and_then(|rest| strip_name(rest, name))
    {
        words = rest.trim_start_matches([',', ':']).trim_start();
    }
    let Some(command) = words.strip_prefix('/') else {
        return words;
    };
    match command.split_once('@') {
        // `/digest@hosebib_bot` is nothing but the command
        Some((word, rest))
            if !word.contains(char::is_whitespace) && strip_name(rest, name) == Some("") =>
        {
            word
        }
        _ => command,
    }
}

/// Takes a name off the front where it stands as a whole word, in any case.
fn strip_name<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let head = text.get(..name.len())?;
    let rest = &text[name.len()..];
    let ends = rest
        .chars()
        .next()
        .is_none_or(|c| !c.is_alphanumeric() && c != '_');
    (head.eq_ignore_ascii_case(name) && ends).then_some(rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mentions_and_slashes_are_taken_off() {
        let bot = Some("hosebib_bot");
        assert_eq!(
            addressed("@hosebib_bot unit 12 arrived", bot),
            "unit 12 arrived"
        );
        assert_eq!(addressed("@Hosebib_Bot: digest", bot), "digest");
        assert_eq!(addressed("/digest@hosebib_bot", bot), "digest");
        assert_eq!(addressed("/why", None), "why");
        assert_eq!(
            addressed("@hosebib_botany club", bot),
            "@hosebib_botany club"
        );
        assert_eq!(addressed("tank 3/4", bot), "tank 3/4");
    }
}
