//! The Telegram Bot API: messages fetched by our own polling loop, replies sent from queues of our own.
//!
//! teloxide gives the bot, the requests and the types. Its dispatcher is not used: it confirms messages before they were
//! worked through. Here the offset moves past a message only once the clerk says that it is on disk.

mod api;
mod buttons;
pub mod checkup;
mod limits;
mod menu;
mod parse;
mod photo;
mod poll;
mod queue;
mod send;
mod split;
mod token;

use std::time::Duration;

use teloxide::payloads::GetMe;
use tokio::sync::{mpsc, watch};
use tracing::{info, warn};

pub use api::{Api, Refusal};
pub use limits::Limits;
pub use token::{NotAToken, Token};

use super::clerk::{Parcel, Window};

/// The name of this network in message keys.
pub const NETWORK: &str = "telegram";

/// The longest wait between two tries after a failure.
const LONGEST_PAUSE: Duration = Duration::from_secs(5);

/// Reads one update that was received at `received`, as polling does; none where it brings no message. `username` is the
/// bot's own.
pub fn inbound(
    update: &serde_json::Value,
    username: Option<&str>,
    received: chrono::DateTime<chrono::Utc>,
) -> Option<crate::desk::Inbound> {
    match parse::read(update, username, received) {
        parse::Brought::Message(inbound) => Some(inbound),
        parse::Brought::Moved { .. } | parse::Brought::Nothing(_) => None,
    }
}

/// Waits after failures in a row: 1, 2, 4, then 5 s each time, so that an outage is over for us soon after it is over.
#[derive(Debug, Default)]
struct Pause {
    failures: u32,
}

impl Pause {
    fn next(&mut self) -> Duration {
        let pause = Duration::from_secs(1 << self.failures.min(3)).min(LONGEST_PAUSE);
        self.failures += 1;
        pause
    }

    fn reset(&mut self) {
        self.failures = 0;
    }
}

/// What the bot is called, as the network says.
#[derive(Debug, Clone, Default)]
pub struct Me {
    /// Its name for mentions, without the `@`.
    pub username: Option<String>,
}

/// Asks the network who this bot is, again and again while the network fails.
///
/// # Errors
///
/// [`Refusal::Token`] when the token is refused: that will not mend itself. `None` when stopped.
pub async fn who_am_i(api: &Api, stop: &mut watch::Receiver<bool>) -> Result<Option<Me>, Refusal> {
    let mut pause = Pause::default();
    loop {
        let request = GetMe::new();
        let outcome = tokio::select! {
            outcome = api.call(&request) => outcome,
            _ = stop.wait_for(|stop| *stop) => return Ok(None),
        };
        let wait = match outcome {
            Ok(me) => {
                let username = me
                    .get("username")
                    .and_then(|name| name.as_str())
                    .map(str::to_owned);
                return Ok(Some(Me { username }));
            }
            Err(Refusal::Token) => return Err(Refusal::Token),
            Err(Refusal::Flood(wait)) => wait,
            Err(error) => {
                warn!("the network cannot be reached yet: {error}");
                pause.next()
            }
        };
        tokio::select! {
            () = tokio::time::sleep(wait) => {}
            _ = stop.wait_for(|stop| *stop) => return Ok(None),
        }
    }
}

/// Fetches messages and sends replies until `stop` turns true or the clerk is gone.
///
/// `clock` says what time a message is received at; `parcels` is where the clerk puts what is to be sent.
pub async fn serve(
    api: Api,
    me: Me,
    window: Window,
    parcels: mpsc::UnboundedReceiver<Parcel>,
    limits: Limits,
    clock: fn() -> chrono::DateTime<chrono::Utc>,
    stop: watch::Receiver<bool>,
) {
    if let Some(username) = &me.username {
        window.named(username);
    }
    let menu = tokio::spawn(menu::set(api.clone()));
    let sender = send::run(api.clone(), window.clone(), parcels, limits, stop.clone());
    let poller = poll::run(api, me, window, clock, stop);
    info!("serving");
    // the sender ends when `stop` turns true or the clerk is gone; there is nothing to fetch for after that
    tokio::pin!(sender);
    tokio::select! {
        () = &mut sender => {}
        () = poller => sender.await,
    }
    menu.abort();
}
