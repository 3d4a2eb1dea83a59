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
        "editmessagetext" => {
            let outcome = edit(body, &mut shared.lock());
            shared.news.notify_all();
            outcome
        }
        "answercallbackquery" => {
            let text = |field: &str| body[field].as_str().unwrap_or_default().to_owned();
            shared
                .lock()
                .toasts
                .push((text("callback_query_id"), text("text")));
            shared.news.notify_all();
            ok(true.into())
        }
        "getmycommands" => {
            let language = body["language_code"].as_str().unwrap_or_default();
            let state = shared.lock();
            ok(state.menus.get(language).cloned().unwrap_or(json!([])))
        }
        "setmycommands" => menu(body, &mut shared.lock()),
        "getfile" => {
            let name = body["file_id"].as_str().unwrap_or_default();
            match shared.lock().files.get(name) {
                Some(bytes) => ok(
                    json!({"file_id": name, "file_unique_id": name, "file_size": bytes.len(),
                    "file_path": format!("photos/{name}")}),
                ),
                None => error(
                    400,
                    "Bad Request: wrong file_id or the file is temporarily unavailable",
                ),
            }
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
        if !state.updates.is_empty() || now >= end || state.hurries {
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
    if let Some(refusal) = faulty_text(text, state) {
        return refusal;
    }
    let buttons = match buttons(body, state) {
        Ok(buttons) => buttons,
        Err(refusal) => return refusal,
    };
    let answers = body["reply_parameters"]["message_id"].as_i64();
    let known = state.messages.get(&chat).copied().unwrap_or(0);
    if answers.is_some_and(|answers| answers > known)
        && body["reply_parameters"]["allow_sending_without_reply"] != true
    {
        return error(400, "Bad Request: message to be replied not found");
    }
    let number = state.next_message(chat);
    state.sent.push(Sent {
        chat,
        number,
        topic: body["message_thread_id"].as_i64(),
        text: text.to_owned(),
        answers,
        buttons,
        edits: 0,
    });
    ok(
        json!({"message_id": number, "date": 0, "chat": {"id": chat, "type": "private", "first_name": "P"}, "text": text}),
    )
}

fn faulty_text(text: &str, state: &mut State) -> Option<Outcome> {
    if text.trim().is_empty() {
        state.offences.push("an empty message".into());
        return Some(error(400, "Bad Request: message text is empty"));
    }
    if text.encode_utf16().count() > 4096 {
        state
            .offences
            .push("a message of more than 4096 units".into());
        return Some(error(400, "Bad Request: message is too long"));
    }
    None
}

/// Reads the buttons under a message; each carries 1 to 64 bytes (Bot API, InlineKeyboardButton).
fn buttons(body: &Value, state: &mut State) -> Result<Vec<(String, String)>, Outcome> {
    let rows = body["reply_markup"]["inline_keyboard"].as_array();
    let all = rows
        .into_iter()
        .flatten()
        .filter_map(Value::as_array)
        .flatten();
    let mut buttons = Vec::new();
    for button in all {
        let label = button["text"].as_str().unwrap_or_default();
        let key = button["callback_data"].as_str().unwrap_or_default();
        if key.is_empty() || key.len() > 64 || label.is_empty() {
            state.offences.push(format!("a faulty button: {button}"));
            return Err(error(400, "Bad Request: BUTTON_DATA_INVALID"));
        }
        buttons.push((label.to_owned(), key.to_owned()));
    }
    Ok(buttons)
}

fn edit(body: &Value, state: &mut State) -> Outcome {
    let text = body["text"].as_str().unwrap_or_default();
    if let Some(refusal) = faulty_text(text, state) {
        return refusal;
    }
    let buttons = match buttons(body, state) {
        Ok(buttons) => buttons,
        Err(refusal) => return refusal,
    };
    let of = |sent: &&mut Sent| body["chat_id"] == sent.chat && body["message_id"] == sent.number;
    let Some(sent) = state.sent.iter_mut().find(of) else {
        return error(400, "Bad Request: message to edit not found");
    };
    if sent.text == text && sent.buttons == buttons {
        return error(
            400,
            "Bad Request: message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message",
        );
    }
    sent.text = text.to_owned();
    sent.buttons = buttons;
    sent.edits += 1;
    ok(
        json!({"message_id": sent.number, "date": 0, "edit_date": 1, "text": text,
        "chat": {"id": sent.chat, "type": "private", "first_name": "P"}}),
    )
}

/// Sets a menu: at most 100 commands, each of 1 to 32 of a-z, 0-9 and _, with a description of 1 to 256 (Bot API,
/// BotCommand).
fn menu(body: &Value, state: &mut State) -> Outcome {
    let commands = body["commands"].as_array().cloned().unwrap_or_default();
    for command in &commands {
        let name = command["command"].as_str().unwrap_or_default();
        let fits = (1..=32).contains(&name.len())
            && name
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_');
        let about = command["description"].as_str().unwrap_or_default();
        if !fits || !(1..=256).contains(&about.chars().count()) || commands.len() > 100 {
            state.offences.push(format!("a faulty command: {command}"));
            return error(400, "Bad Request: BOT_COMMAND_INVALID");
        }
    }
    let language = body["language_code"].as_str().unwrap_or_default();
    state.menus.insert(language.to_owned(), commands.into());
    ok(true.into())
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
