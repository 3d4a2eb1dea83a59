//! The bot's token, which must never be seen.

use std::fmt;

use thiserror::Error;

/// A Bot API token. It prints as `(token)` and takes itself out of other texts.
#[derive(Clone, PartialEq, Eq)]
pub struct Token(String);

/// Why a text is not a token. It never repeats the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error(
    "the bot's token is not one: expected digits, a colon and letters, as the network's bot registration gives it"
)]
pub struct NotAToken;

impl Token {
    /// Reads a token; blanks around it do not count.
    ///
    /// # Errors
    ///
    /// [`NotAToken`].
    pub fn parse(text: &str) -> Result<Self, NotAToken> {
        let text = text.trim();
        let (number, secret) = text.split_once(':').ok_or(NotAToken)?;
        let number_holds = !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit());
        let secret_holds = secret.len() >= 8
            && secret
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || b == b'_' || b == b'-');
        if number_holds && secret_holds {
            Ok(Token(text.to_owned()))
        } else {
            Err(NotAToken)
        }
    }

    /// Returns the token itself, for the one place that makes requests.
    pub(crate) fn secret(&self) -> &str {
        &self.0
    }

    /// Takes the token, and its secret half alone, out of a text.
    pub fn redact(&self, text: &str) -> String {
        let half = self
            .0
            .split_once(':')
            .map_or(self.0.as_str(), |(_, half)| half);
        text.replace(&self.0, "(token)").replace(half, "(token)")
    }
}

impl fmt::Debug for Token {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("(token)")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_token_never_prints() {
        let token = Token::parse(" 123456:AAbb_cc-dd \n").unwrap();
        assert_eq!(format!("{token:?}"), "(token)");
        let text = "error for url (http://localhost/bot123456:AAbb_cc-dd/getMe), path AAbb_cc-dd";
        assert_eq!(
            token.redact(text),
            "error for url (http://localhost/bot(token)/getMe), path (token)"
        );
    }

    #[test]
    fn what_is_not_a_token_is_refused_without_repeating_it() {
        for text in [
            "",
            "123456",
            "abc:AAbb_cc-dd",
            "123456:short",
            "123456:has a blank in it",
            "123456:AA/../bb_cc",
        ] {
            let error = Token::parse(text).unwrap_err();
            assert!(text.is_empty() || !error.to_string().contains(text));
        }
    }
}
