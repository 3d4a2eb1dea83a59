//! Whatever JSON the chat network sends, one update is read without a panic.
#![no_main]

use hosebib::chat::telegram;
use hosebib::fleet::demo;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|data: &[u8]| {
    if let Ok(update) = serde_json::from_slice(data) {
        telegram::inbound(&update, Some("hosebib_bot"), demo::starts());
    }
});
