//! What only addresses the bot, taken off a message.

/// Takes off what only addresses the bot: a mention before the words, the slash and the name of a command. A command is
/// one word to the network, so `/got_it` stands for "got it".
pub(in crate::chat::telegram) fn addressed(words: &str, username: Option<&str>) -> String {
    let mut words = words.trim();
    let after_name = |text| strip_name(text, username?);
    if let Some(rest) = words.strip_prefix('@').and_then(after_name) {
        words = rest.trim_start_matches([',', ':']).trim_start();
    }
    let Some(command) = words.strip_prefix('/') else {
        return words.to_owned();
    };
    let end = command.find(char::is_whitespace).unwrap_or(command.len());
    let (word, rest) = command.split_at(end);
    let word = match word.split_once('@') {
        Some((word, of)) if after_name(of) == Some("") => word,
        _ => word,
    };
    format!("{}{rest}", word.replace('_', " "))
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
        assert_eq!(addressed("/status@hosebib_bot 12", bot), "status 12");
        assert_eq!(addressed("/got_it", bot), "got it");
        assert_eq!(addressed("/start u-4_a", bot), "start u-4_a");
        assert_eq!(addressed("/why", None), "why");
        assert_eq!(
            addressed("@hosebib_botany club", bot),
            "@hosebib_botany club"
        );
        assert_eq!(addressed("tank 3/4", bot), "tank 3/4");
    }
}
