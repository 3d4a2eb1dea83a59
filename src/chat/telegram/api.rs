//! One request to the Bot API and what came of it.
//!
//! Requests are teloxide's payloads, sent with its bot's client. Its own way of sending them is left aside: it sleeps ten
//! seconds on a server error before it says so, and it does not hand on the error code that tells a second poller or a
//! blocked bot from the rest.

use std::time::Duration;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use teloxide::Bot;
use teloxide::requests::Payload;
use thiserror::Error;

use super::Token;
use crate::chat::metrics::Metrics;

/// How long to wait on a flood answer that does not say how long.
const UNSAID_WAIT: Duration = Duration::from_secs(5);

/// Why a request did not do what was asked.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Refusal {
    /// Too much was sent: wait this long (429).
    #[error("the network asks to wait {} s", .0.as_secs())]
    Flood(Duration),
    /// The group lives on under another number.
    #[error("the group has a new number")]
    Moved(i64),
    /// The bot cannot write to this chat: blocked, thrown out, never started (403, or 400 for a chat not found).
    #[error("the chat cannot be written to: {0}")]
    Unreachable(String),
    /// Somebody else polls with the same token, or a webhook is set (409).
    #[error("another program fetches this bot's messages: {0}")]
    Conflict(String),
    /// The token is refused (401, 404).
    #[error("the network refuses the bot's token")]
    Token,
    /// The request as such is refused; it will not be better the next time.
    #[error("the network refuses the request: {0}")]
    Rejected(String),
    /// A server error, a broken connection, an answer that is no answer: try again.
    #[error("the network does not answer as it should: {0}")]
    Unwell(String),
}

impl Refusal {
    /// Returns the word for it in counts.
    fn kind(&self) -> &'static str {
        match self {
            Refusal::Flood(_) => "flood",
            Refusal::Moved(_) => "moved",
            Refusal::Unreachable(_) => "unreachable",
            Refusal::Conflict(_) => "conflict",
            Refusal::Token => "token",
            Refusal::Rejected(_) => "rejected",
            Refusal::Unwell(_) => "unwell",
        }
    }
}

/// A way to the Bot API.
#[derive(Clone)]
pub struct Api {
    bot: Bot,
    token: Token,
    metrics: Metrics,
}

#[derive(Deserialize)]
struct Envelope {
    ok: bool,
    #[serde(default)]
    result: Value,
    error_code: Option<u16>,
    description: Option<String>,
    parameters: Option<Parameters>,
}

#[derive(Deserialize)]
struct Parameters {
    retry_after: Option<u64>,
    migrate_to_chat_id: Option<i64>,
}

impl Api {
    /// Makes a way to the network's own servers, or to a self-hosted one at `url`.
    ///
    /// # Errors
    ///
    /// Says why `url` cannot be one, or why there can be no HTTP client.
    pub fn new(token: Token, url: Option<&str>) -> Result<Self, String> {
        let client = teloxide::net::default_reqwest_settings()
            .build()
            .map_err(|error| {
                format!(
                    "no HTTP client can be set up: {}",
                    token.redact(&error.to_string())
                )
            })?;
        let mut bot = Bot::with_client(token.secret(), client);
        if let Some(url) = url {
            let problem = |why: &str| {
                format!("`--api-url {url}` is not the address of a Bot API server: {why}")
            };
            // a trailing slash would make an empty path segment before the token
            let parsed = url
                .trim_end_matches('/')
                .parse()
                .map_err(|error| problem(&format!("{error}")))?;
            bot = bot.set_api_url(parsed);
            let parsed = bot.api_url();
            if !matches!(parsed.scheme(), "http" | "https") || parsed.host_str().is_none() {
                return Err(problem("expected `http://` or `https://` and a host"));
            }
        }
        let metrics = Metrics::default();
        Ok(Api {
            bot,
            token,
            metrics,
        })
    }

    /// Counts each request into these metrics.
    #[must_use]
    pub fn counted(mut self, metrics: Metrics) -> Self {
        self.metrics = metrics;
        self
    }

    /// Sends one request and returns its result as raw JSON.
    ///
    /// # Errors
    ///
    /// [`Refusal`], with the token taken out.
    pub async fn call<P: Payload + Serialize>(&self, payload: &P) -> Result<Value, Refusal> {
        let outcome = self.call_dated(payload).await;
        let what = outcome.as_ref().err().map_or("ok", Refusal::kind);
        self.metrics.asked(P::NAME, what);
        outcome.map(|(result, _)| result)
    }

    /// Sends one request and returns its result with what time it is at the server, where the answer tells.
    pub(super) async fn call_dated<P: Payload + Serialize>(
        &self,
        payload: &P,
    ) -> Result<(Value, Option<DateTime<Utc>>), Refusal> {
        let body =
            serde_json::to_vec(payload).map_err(|error| Refusal::Rejected(error.to_string()))?;
        let mut url = self.bot.api_url();
        url.path_segments_mut()
            .expect("the address has a host, checked when it was set")
            .extend([&format!("bot{}", self.token.secret()), P::NAME]);
        let request = self
            .bot
            .client()
            .post(url)
            .header("content-type", "application/json")
            .body(body);
        let broken = |what: String| Refusal::Unwell(self.token.redact(&what));
        let response = request
            .send()
            .await
            .map_err(|error| broken(chain(&error.without_url())))?;
        let status = response.status().as_u16();
        let date = response.headers().get("date");
        let date = date
            .and_then(|date| date.to_str().ok())
            .and_then(|date| DateTime::parse_from_rfc2822(date).ok())
            .map(|date| date.to_utc());
        let bytes = response
            .bytes()
            .await
            .map_err(|error| broken(chain(&error.without_url())))?;
        let Ok(envelope) = serde_json::from_slice::<Envelope>(&bytes) else {
            return Err(Refusal::Unwell(format!(
                "status {status} without a readable answer"
            )));
        };
        if envelope.ok && status < 500 {
            Ok((envelope.result, date))
        } else {
            Err(refusal(envelope, status))
        }
    }
}

impl Api {
    /// Fetches a file from where the network says it keeps it; none where it is larger than `most` bytes.
    pub(super) async fn download(
        &self,
        path: &str,
        most: usize,
    ) -> Result<Option<Vec<u8>>, Refusal> {
        let mut url = self.bot.api_url();
        url.path_segments_mut()
            .expect("the address has a host, checked when it was set")
            .extend(["file", &format!("bot{}", self.token.secret())])
            .extend(path.split('/'));
        let broken = |what: String| Refusal::Unwell(self.token.redact(&what));
        let request = self.bot.client().get(url);
        let mut response = request
            .send()
            .await
            .map_err(|error| broken(chain(&error.without_url())))?;
        match response.status().as_u16() {
            200 => {}
            status @ 400..500 => return Err(Refusal::Rejected(format!("status {status}"))),
            status => return Err(Refusal::Unwell(format!("status {status}"))),
        }
        let mut bytes = Vec::new();
        while let Some(chunk) = response
            .chunk()
            .await
            .map_err(|error| broken(chain(&error.without_url())))?
        {
            if bytes.len() + chunk.len() > most {
                return Ok(None);
            }
            bytes.extend_from_slice(&chunk);
        }
        Ok(Some(bytes))
    }
}

fn refusal(envelope: Envelope, status: u16) -> Refusal {
    let what = envelope.description.unwrap_or_default();
    if let Some(parameters) = envelope.parameters {
        if let Some(chat) = parameters.migrate_to_chat_id {
            return Refusal::Moved(chat);
        }
        if let Some(seconds) = parameters.retry_after {
            return Refusal::Flood(Duration::from_secs(seconds));
        }
    }
    match envelope.error_code.unwrap_or(status) {
        401 | 404 => Refusal::Token,
        403 => Refusal::Unreachable(what),
        400 if what.contains("chat not found") || what.contains("user is deactivated") => {
            Refusal::Unreachable(what)
        }
        409 => Refusal::Conflict(what),
        429 => Refusal::Flood(UNSAID_WAIT),
        400..500 => Refusal::Rejected(what),
        code => Refusal::Unwell(format!("status {code} {what}")),
    }
}

/// Prints an error with what lies under it.
fn chain(error: &dyn std::error::Error) -> String {
    let mut text = error.to_string();
    let mut source = error.source();
    while let Some(under) = source {
        text.push_str(": ");
        text.push_str(&under.to_string());
        source = under.source();
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refused(json: &str, status: u16) -> Refusal {
        refusal(serde_json::from_str(json).unwrap(), status)
    }

    #[test]
    fn refusals_are_told_apart() {
        // shapes and texts as the Bot API documentation, "Making requests", and its server give them
        let flood = r#"{"ok":false,"error_code":429,"description":"Too Many Requests: retry after 7","parameters":{"retry_after":7}}"#;
        assert_eq!(refused(flood, 429), Refusal::Flood(Duration::from_secs(7)));
        let moved = r#"{"ok":false,"error_code":400,"description":"Bad Request: group chat was upgraded to a supergroup chat","parameters":{"migrate_to_chat_id":-1001}}"#;
        assert_eq!(refused(moved, 400), Refusal::Moved(-1001));
        let blocked = r#"{"ok":false,"error_code":403,"description":"Forbidden: bot was blocked by the user"}"#;
        assert!(matches!(refused(blocked, 403), Refusal::Unreachable(_)));
        let twice = r#"{"ok":false,"error_code":409,"description":"Conflict: terminated by other getUpdates request"}"#;
        assert!(matches!(refused(twice, 409), Refusal::Conflict(_)));
        let token = r#"{"ok":false,"error_code":401,"description":"Unauthorized"}"#;
        assert_eq!(refused(token, 401), Refusal::Token);
        let long =
            r#"{"ok":false,"error_code":400,"description":"Bad Request: message is too long"}"#;
        assert!(matches!(refused(long, 400), Refusal::Rejected(_)));
        let broken = r#"{"ok":false,"error_code":502,"description":"Bad Gateway"}"#;
        assert!(matches!(refused(broken, 502), Refusal::Unwell(_)));
    }

    #[test]
    fn an_address_that_is_none_is_refused() {
        let token = || Token::parse("123456:AAbb_cc-dd").unwrap();
        for url in ["", "localhost", "ftp://localhost", "mailto:me"] {
            assert!(Api::new(token(), Some(url)).is_err(), "{url}");
        }
        assert!(Api::new(token(), Some("http://127.0.0.1:8081/")).is_ok());
    }
}
