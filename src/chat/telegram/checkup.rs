//! What can be asked of the network before a bot serves: who it is, what time it is there, who else fetches its messages.

use chrono::{DateTime, Utc};
use serde_json::Value;
use teloxide::payloads::{GetMe, GetWebhookInfo};

use super::poll::Fetch;
use super::{Api, Refusal};

/// How long a look for another program lasts, s: one that was sent away comes back within 5 s ([`super::LONGEST_PAUSE`]).
const LOOK_S: u32 = 6;

/// What the network says of a bot.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Identity {
    /// Its name for mentions, without the `@`.
    pub username: Option<String>,
    /// Whether it sees everything that is written in its groups; false in privacy mode.
    pub reads_groups: bool,
    /// What time it is at the network, to the second, where the answer tells.
    pub time: Option<DateTime<Utc>>,
}

/// What the network says of a bot's webhook.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Webhook {
    /// Where messages are handed to; none where they are fetched.
    pub url: Option<String>,
    /// How many messages wait.
    pub waiting: u64,
}

/// Asks who the bot is.
///
/// # Errors
///
/// [`Refusal`].
pub async fn identity(api: &Api) -> Result<Identity, Refusal> {
    let (me, time) = api.call_dated(&GetMe::new()).await?;
    Ok(Identity {
        username: me["username"].as_str().map(str::to_owned),
        reads_groups: me["can_read_all_group_messages"] == true,
        time,
    })
}

/// Asks whether a webhook is set.
///
/// # Errors
///
/// [`Refusal`].
pub async fn webhook(api: &Api) -> Result<Webhook, Refusal> {
    let info: Value = api.call(&GetWebhookInfo::new()).await?;
    let url = info["url"].as_str().filter(|url| !url.is_empty());
    Ok(Webhook {
        url: url.map(str::to_owned),
        waiting: info["pending_update_count"].as_u64().unwrap_or(0),
    })
}

/// Fetches without confirming anything, for as long as another program that was sent away by it needs to come back: then
/// it is this look that is sent away.
///
/// # Errors
///
/// [`Refusal::Conflict`] where another program fetches this bot's messages; any other [`Refusal`].
pub async fn look_for_others(api: &Api) -> Result<(), Refusal> {
    api.call(&Fetch::look(LOOK_S)).await.map(|_| ())
}
