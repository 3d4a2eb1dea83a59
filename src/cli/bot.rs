//! Which bot it is: its token, and where its network is.

use std::path::PathBuf;

use super::CliError;
use crate::chat::telegram::{Api, Token};

/// The environment variable that holds the bot's token.
pub(super) const TOKEN: &str = "HOSEBIB_TOKEN";

/// Arguments of every command that asks the network. (Not `Args`: clap names a group after each such type, once.)
#[derive(Debug, clap::Args)]
pub(super) struct Bot {
    /// A file that holds the bot's token; without it, the environment variable HOSEBIB_TOKEN does
    #[arg(long, value_name = "FILE")]
    pub(super) token_file: Option<PathBuf>,
    /// The address of a self-hosted Bot API server
    #[arg(long, value_name = "URL")]
    api_url: Option<String>,
}

impl Bot {
    /// Returns the bot's token.
    pub(super) fn token(&self) -> Result<Token, CliError> {
        let text = match &self.token_file {
            Some(file) => std::fs::read_to_string(file).map_err(|error| {
                CliError::Usage(format!(
                    "the token file `{}` cannot be read: {error}; name a file that this user may read and that holds the bot's token",
                    file.display()
                ))
            })?,
            None => std::env::var(TOKEN).map_err(|_| {
                CliError::Usage(format!(
                    "no token: set {TOKEN} or name a file that holds it with `--token-file`"
                ))
            })?,
        };
        Token::parse(&text).map_err(|error| CliError::Usage(error.to_string()))
    }

    /// Returns the way to the network; else why there is none.
    pub(super) fn api(&self, token: Token) -> Result<Api, String> {
        Api::new(token, self.api_url.as_deref())
    }
}
