//! The methods that the bot uses.

use std::time::{Duration, Instant};

use serde_json::{Value, json};

use super::{Sent, Shared, State};

pub(super) struct Outcome {
    pub(super) status: u16,
    pub(super) body: Value,
}

pub(super) fn call(method: &str, body: &Value, shared: &Shared) -> Outcome {
    match method {
        "getme" => ok(
            json!({"id": 123_456, "is_bot": true, "first_name": "Hosebib", "username": "hosebib_bot",
                "can_read_all_group_messages": shared.lock().reads_groups}),
        ),
        "getwebhookinfo" => {
            let state = shared.lock();
            ok(json!({"url": state.webhook, "pending_update_count": state.updates.len()}))
        }
        "getupdates" => updates(body, shared),
        "sendmessage" => {
            let outcome = send(body, &mut shared.lock());
            shared.news.notify_all();
            outcome
        }
        _ => error(404, "Not Found"),
    }
}

pub(super) fn flood(seconds: u64) -> Outcome {
    let what = format!("Too Many Requests: retry after {seconds}");
    let body = json!({"ok": false, "error_code": 429, "description": what, "parameters": {"retry_after": seconds}});
    Outcome { status: 429, body }
}

/// Long polling. An offset confirms what is below it; one further than 10 past the end is taken as none (the server's
/// source, tdlib `TQueue::get` and `Client::do_get_updates`). A newer poll ends an older one with 409.
fn updates(body: &Value, shared: &Shared) -> Outcome {
    let mut state = shared.lock();
    if !state.webhook.is_empty() {
        return error(
            409,
            "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first",
        );
    }
    if body.get("allowed_updates").is_none() {
        state.offences.push("a poll without allowed_updates".into());
    }
    let offset = body["offset"].as_i64();
    if let Some(offset) = offset.filter(|offset| *offset <= state.next_update + 10) {
        state.updates.retain(|(id, _)| *id >= offset);
    }
    let limit = usize::try_from(body["limit"].as_u64().unwrap_or(100))
        .expect("a small number")
        .clamp(1, 100);
    let timeout = body["timeout"].as_u64().unwrap_or(0);
    if timeout > 10 {
        state.offences.push(format!("a poll of {timeout} s"));
    }
    let end = Instant::now() + Duration::from_secs(timeout);
    state.polls += 1;
    let poll = state.polls;
    shared.news.notify_all();
    loop {
        if state.polls != poll {
            return error(
                409,
                "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running",
            );
        }
        let now = Instant::now();
        if !state.updates.is_empty() || now >= end {
            let batch: Vec<Value> = state
                .updates
                .iter()
                .take(limit)
                .map(|(_, update)| update.clone())
                .collect();
            return ok(batch.into());
        }
        let wait = (end - now).min(Duration::from_millis(50));
        state = shared
            .news
            .wait_timeout(state, wait)
            .unwrap_or_else(std::sync::PoisonError::into_inner)
            .0;
        if shared.closed.load(std::sync::atomic::Ordering::SeqCst) {
            return error(500, "closed");
        }
    }
}

fn send(body: &Value, state: &mut State) -> Outcome {
    let (Some(chat), Some(text)) = (body["chat_id"].as_i64(), body["text"].as_str()) else {
        state
            .offences
            .push(format!("a message without chat or text: {body}"));
        return error(400, "Bad Request: message text is empty");
    };
    if let Some(to) = state.moved.get(&chat) {
        let what = "Bad Request: group chat was upgraded to a supergroup chat";
        let body = json!({"ok": false, "error_code": 400, "description": what, "parameters": {"migrate_to_chat_id": to}});
        return Outcome { status: 400, body };
    }
    if state.blocked.contains(&chat) {
        return error(403, "Forbidden: bot was blocked by the user");
    }
    if let Some(until) = state.floods.get(&chat).copied() {
        let left = until.saturating_duration_since(Instant::now());
        if !left.is_zero() {
            // told before, so this is an offence, unless it is the first
            state
                .offences
                .push(format!("chat {chat} was written to {left:?} too early"));
            return flood(left.as_secs() + 1);
        }
    }
    if text.trim().is_empty() {
        state.offences.push("an empty message".into());
        return error(400, "Bad Request: message text is empty");
    }
    if text.encode_utf16().count() > 4096 {
        state
            .offences
            .push("a message of more than 4096 units".into());
        return error(400, "Bad Request: message is too long");
    }
    let answers = body["reply_parameters"]["message_id"].as_i64();
    let known = state.messages.get(&chat).copied().unwrap_or(0);
    if answers.is_some_and(|answers| answers > known)
        && body["reply_parameters"]["allow_sending_without_reply"] != true
    {
        return error(400, "Bad Request: message to be replied not found");
    }
    state.sent.push(Sent {
        chat,
        text: text.to_owned(),
        answers,
    });
    let number = state.next_message(chat);
    ok(
        json!({"message_id": number, "date": 0, "chat": {"id": chat, "type": "private", "first_name": "P"}, "text": text}),
    )
}

fn ok(result: Value) -> Outcome {
    Outcome {
        status: 200,
        body: json!({"ok": true, "result": result}),
    }
}

fn error(status: u16, what: &str) -> Outcome {
    Outcome {
        status,
        body: json!({"ok": false, "error_code": status, "description": what}),
    }
}
