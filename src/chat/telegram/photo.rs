//! Fetching a picture: where the network keeps it, then what is in it.

use std::time::Duration;

use serde_json::Value;
use teloxide::payloads::GetFile;
use teloxide::types::FileId;
use tracing::warn;

use super::{Api, Pause, Refusal};
use crate::chat::clerk::{MOST_BYTES, PhotoLost, Window};

/// How often a picture is tried for in one run; what is not fetched then is asked for at the next start.
const TRIES: u32 = 40;

/// Fetches a picture and hands it to the clerk.
pub(super) async fn fetch(api: Api, window: Window, key: String, file: String) {
    let mut pause = Pause::default();
    for _ in 0..TRIES {
        let wait = match once(&api, &file).await {
            Ok(fetched) => return window.photo(&key, fetched),
            // what the network gives out at most is more than what is kept (20 MB, Bot API, getFile)
            Err(Refusal::Rejected(what)) if what.contains("too big") => {
                return window.photo(&key, Err(PhotoLost::TooLarge));
            }
            Err(Refusal::Rejected(_) | Refusal::Unreachable(_)) => {
                return window.photo(&key, Err(PhotoLost::Gone));
            }
            Err(Refusal::Flood(wait)) => wait,
            Err(refusal) => {
                warn!("a photo is not fetched yet: {refusal}");
                pause.next()
            }
        };
        tokio::time::sleep(wait.max(Duration::from_millis(100))).await;
    }
}

async fn once(api: &Api, file: &str) -> Result<Result<Vec<u8>, PhotoLost>, Refusal> {
    let told = api.call(&GetFile::new(FileId(file.to_owned()))).await?;
    let most = MOST_BYTES as u64;
    if told["file_size"].as_u64().is_some_and(|size| size > most) {
        return Ok(Err(PhotoLost::TooLarge));
    }
    let Some(path) = told.get("file_path").and_then(Value::as_str) else {
        return Ok(Err(PhotoLost::Gone));
    };
    let bytes = api.download(path, MOST_BYTES).await?;
    Ok(bytes.ok_or(PhotoLost::TooLarge))
}
