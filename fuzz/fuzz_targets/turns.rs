//! A whole turn is total: whatever people of the demo's crew write one after another, the desk answers without a panic,
//! and its records fold.
#![no_main]

mod mangle;

use chrono::TimeDelta;
use hosebib::book::MessageKey;
use hosebib::desk::{Desk, Inbound, Sender};
use hosebib::fleet::{Fleet, demo};
use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;

const CREW: [&str; 5] = ["tobin", "lupe", "ines", "nadia", "nobody"];

static FLEET: LazyLock<Fleet> = LazyLock::new(demo::fleet);

fuzz_target!(|data: &[u8]| {
    let mut desk = Desk::default();
    let mut at = demo::starts();
    let loaded = desk.load(at, "demo", FLEET.clone());
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
        // what the bot says by itself takes longer than a turn: only where the clock runs on
        let later = i64::from(who / 32) * 30;
        at += TimeDelta::minutes(1 + later);
        if later > 0 {
            let tick = desk.tick(at);
            desk.apply(&tick.records);
        }
        let inbound = Inbound::says(MessageKey(format!("fuzz:{number}")), Sender::Crew(CREW[usize::from(who % 16) % CREW.len()].to_owned()), at, text);
        let turn = desk.receive(&inbound);
        desk.apply(&turn.records);
    }
});
