//! A whole turn is total: whatever people of the demo's crew write one after another, the desk answers without a panic,
//! and its records fold.
#![no_main]

mod mangle;

use chrono::TimeDelta;
use hosebib::book::MessageKey;
use hosebib::desk::{Body, Desk, Inbound, Sender};
use hosebib::fleet::demo;
use libfuzzer_sys::fuzz_target;

const CREW: [&str; 5] = ["tobin", "lupe", "ines", "nadia", "nobody"];

fuzz_target!(|data: &[u8]| {
    let mut desk = Desk::default();
    let mut at = demo::starts();
    let loaded = desk.load(at, "demo", demo::fleet());
    desk.apply(&loaded.records);
    // a turn is slow beside a message: six of them show what one leaves for the next
    for (number, message) in data.split(|byte| *byte == 0).take(6).enumerate() {
        let Some((who, bytes)) = message.split_first() else {
            continue;
        };
        let text = match who / 16 % 2 {
            0 => String::from_utf8_lossy(bytes).into_owned(),
            _ => mangle::message(bytes),
        };
        at += TimeDelta::minutes(1 + i64::from(who / 32) * 30);
        let tick = desk.tick(at);
        desk.apply(&tick.records);
        let inbound = Inbound {
            key: MessageKey(format!("fuzz:{number}")),
            from: Sender::Crew(CREW[usize::from(who % 16) % CREW.len()].to_owned()),
            chat: None,
            at,
            received: at,
            body: Body::Text(text),
            replaces: None,
        };
        let turn = desk.receive(&inbound);
        desk.apply(&turn.records);
    }
});
