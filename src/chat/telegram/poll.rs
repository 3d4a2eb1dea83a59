//! Fetching messages: the offset moves past a batch only once the clerk has it on disk.

use std::collections::{BTreeSet, HashMap};
use std::time::Duration;

use chrono::{DateTime, Utc};
use serde::Serialize;
use serde_json::Value;
use teloxide::requests::Payload;
use teloxide::types::AllowedUpdate;
use tokio::sync::watch;
use tokio::time::Instant;
use tracing::{debug, error, info, warn};

use super::parse::{self, Brought};
use super::{Api, Me, Pause, Refusal};
use crate::chat::clerk::{NotDone, Window};
use crate::desk::Inbound;

/// How long the network holds a request open when there is nothing, s. Our client gives up on any request after 17 s.
const LONG_POLL_S: u32 = 10;
/// How far apart two requests that bring nothing begin at least: a server that holds none open is not asked on and on.
const APART: Duration = Duration::from_secs(1);
/// How many messages are fetched at once: the most the network gives.
const AT_ONCE: u8 = 100;
/// The kinds of updates that are asked for.
const ALLOWED: [AllowedUpdate; 3] = [
    AllowedUpdate::Message,
    AllowedUpdate::EditedMessage,
    AllowedUpdate::CallbackQuery,
];

/// `getUpdates` with each update left as raw JSON, and room for any offset.
#[derive(Debug, Serialize)]
pub(super) struct Fetch {
    #[serde(skip_serializing_if = "Option::is_none")]
    offset: Option<i64>,
    limit: u8,
    timeout: u32,
    // left out, the setting of whoever polled before would stay in force
    allowed_updates: [AllowedUpdate; 3],
}

impl Fetch {
    /// Makes a request that confirms nothing and is held open for `timeout` seconds where nothing waits.
    pub(super) fn look(timeout: u32) -> Self {
        Fetch {
            offset: None,
            limit: 1,
            timeout,
            allowed_updates: ALLOWED,
        }
    }
}

impl Payload for Fetch {
    type Output = Vec<Value>;
    const NAME: &'static str = "GetUpdates";
}

/// Fetches messages until `stop` turns true or the clerk is gone.
pub(super) async fn run(
    api: Api,
    me: Me,
    window: Window,
    clock: fn() -> DateTime<Utc>,
    mut stop: watch::Receiver<bool>,
) {
    let work = fetch(&api, &me, &window, clock);
    tokio::select! {
        () = work => {}
        // a batch that the clerk has and we do not know of comes again, and is known by its keys
        _ = stop.wait_for(|stop| *stop) => {}
    }
}

async fn fetch(api: &Api, me: &Me, window: &Window, clock: fn() -> DateTime<Utc>) {
    let mut offset = Offset::default();
    let mut pause = Pause::default();
    let mut well = true;
    let mut unlogged = Pause::default();
    let mut since = HashMap::new();
    loop {
        let request = Fetch {
            offset: offset.next,
            limit: AT_ONCE,
            timeout: LONG_POLL_S,
            allowed_updates: ALLOWED,
        };
        let asked = Instant::now();
        let updates = match api.call(&request).await {
            Ok(Value::Array(updates)) => updates,
            Ok(_) => {
                warn!("the network's answer is not a list of messages");
                tokio::time::sleep(pause.next()).await;
                continue;
            }
            Err(refusal) => {
                if std::mem::take(&mut well) || pause.failures.is_multiple_of(60) {
                    say(&refusal);
                }
                let wait = match refusal {
                    Refusal::Flood(wait) => wait,
                    _ => pause.next(),
                };
                tokio::time::sleep(wait).await;
                continue;
            }
        };
        if !std::mem::replace(&mut well, true) {
            info!("the network answers again");
        }
        pause.reset();
        if updates.is_empty() {
            tokio::time::sleep_until(asked + APART).await;
            continue;
        }
        match take(&updates, &mut since, me, window, clock).await {
            Ok(()) => {
                let again = offset.past(&updates);
                since.clear();
                unlogged.reset();
                if again {
                    tokio::time::sleep_until(asked + APART).await;
                }
            }
            Err(NotDone::Gone) => {
                error!("the clerk is gone: no more messages are fetched");
                return;
            }
            // The clerk says what is wrong, once. Nothing was confirmed, so the same comes again with what was written
            // since: a danger among it is answered even while nothing can be logged.
            Err(NotDone::NotLogged(_) | NotDone::Later(_) | NotDone::Refused(_)) => {
                tokio::time::sleep(unlogged.next()).await;
            }
        }
    }
}

/// Hands a batch to the clerk. `since` keeps when each of its updates first came.
async fn take(
    updates: &[Value],
    since: &mut HashMap<i64, DateTime<Utc>>,
    me: &Me,
    window: &Window,
    clock: fn() -> DateTime<Utc>,
) -> Result<(), NotDone> {
    let now = clock();
    let mut inbound: Vec<Inbound> = Vec::with_capacity(updates.len());
    for update in updates {
        let first = parse::update_id(update).map(|id| *since.entry(id).or_insert(now));
        let received = first.unwrap_or(now);
        match parse::read(update, me.username.as_deref(), received) {
            Brought::Message(message) => inbound.push(message),
            Brought::Moved { from, to } => window.moved(from, to),
            Brought::Nothing(why) => debug!("an update is passed over: {why}"),
        }
    }
    debug!(
        "{} updates fetched, {} messages",
        updates.len(),
        inbound.len()
    );
    match inbound.is_empty() {
        true => Ok(()),
        false => window.batch(inbound).await,
    }
}

fn say(refusal: &Refusal) {
    match refusal {
        Refusal::Conflict(_) => {
            error!("{refusal}: stop the other one, or delete its webhook; trying on")
        }
        Refusal::Token => error!("{refusal}: was it replaced? trying on"),
        _ => warn!("{refusal}; trying on"),
    }
}

/// What to ask for next. Numbers of updates can begin anew anywhere, so this is no more than what confirms the batch last
/// taken; what was recorded is known by the messages' own keys.
#[derive(Debug, Default)]
struct Offset {
    next: Option<i64>,
    before: BTreeSet<i64>,
}

impl Offset {
    /// Moves past a batch; returns true where it is the one before once more.
    fn past(&mut self, updates: &[Value]) -> bool {
        let ids: BTreeSet<i64> = updates.iter().filter_map(parse::update_id).collect();
        // the same batch again: its highest number confirmed nothing, so a new count may have begun below it
        let again = ids == self.before;
        let id = if again {
            updates.iter().rev().find_map(parse::update_id)
        } else {
            ids.last().copied()
        };
        self.next = id.map(|id| id.saturating_add(1));
        self.before = ids;
        again
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn updates(ids: &[i64]) -> Vec<Value> {
        ids.iter().map(|id| json!({"update_id": id})).collect()
    }

    #[test]
    fn the_offset_follows_the_batch_wherever_its_numbers_are() {
        let mut offset = Offset::default();
        offset.past(&updates(&[7, 9, 8]));
        assert_eq!(offset.next, Some(10));
        // a new count after a quiet week begins lower
        offset.past(&updates(&[3]));
        assert_eq!(offset.next, Some(4));
        offset.past(&updates(&[900, 4]));
        assert_eq!(offset.next, Some(901));
        offset.past(&updates(&[900, 4]));
        assert_eq!(
            offset.next,
            Some(5),
            "the batch came again, so 901 confirmed nothing"
        );
    }

    #[test]
    fn every_request_says_which_updates_it_wants() {
        let fetch = Fetch {
            offset: None,
            limit: 100,
            timeout: 10,
            allowed_updates: ALLOWED,
        };
        let json = serde_json::to_value(&fetch).unwrap();
        assert_eq!(
            json,
            json!({"limit": 100, "timeout": 10, "allowed_updates": ["message", "edited_message", "callback_query"]})
        );
    }
}
