//! Sending: what the clerk put out goes to the network, and the clerk is told what became of it.

use std::time::Duration;

use serde_json::Value;
use teloxide::payloads::{
    AnswerCallbackQuery, AnswerCallbackQuerySetters, EditMessageText, EditMessageTextSetters,
    SendMessage, SendMessageSetters,
};
use teloxide::types::{
    CallbackQueryId, ChatId, LinkPreviewOptions, MessageId, ReplyParameters, ThreadId,
};
use tokio::sync::{mpsc, watch};
use tokio::task::JoinSet;
use tokio::time::Instant;
use tracing::{debug, error, info, warn};

use super::queue::{Next, Piece, Queues};
use super::{Api, Limits, Refusal, buttons, photo};
use crate::chat::clerk::{GivenUp, Parcel, Window};

/// How many requests are on their way at once.
const AT_ONCE: usize = 24;
/// How long what is on its way may still take after `stop`.
const LAST_WAIT: Duration = Duration::from_secs(5);
/// How often quiet chats are forgotten.
const TIDY_EVERY: Duration = Duration::from_secs(300);

type Outcome = (Piece, Result<Value, Refusal>);

/// Sends until `stop` turns true; what is on its way then is waited for a little.
pub(super) async fn run(
    api: Api,
    window: Window,
    mut parcels: mpsc::UnboundedReceiver<Parcel>,
    limits: Limits,
    mut stop: watch::Receiver<bool>,
) {
    let mut queues = Queues::new(limits, Instant::now());
    let mut on_their_way: JoinSet<Outcome> = JoinSet::new();
    let mut tidied = Instant::now();
    loop {
        let now = Instant::now();
        if now - tidied >= TIDY_EVERY {
            queues.tidy(now);
            tidied = now;
        }
        let mut wake = now + TIDY_EVERY;
        while on_their_way.len() < AT_ONCE {
            match queues.next(now) {
                Next::Send(piece) => {
                    let api = api.clone();
                    on_their_way.spawn(async move {
                        let outcome = match piece.edits {
                            Some(message) => api.call(&edit(&piece, message)).await,
                            None => api.call(&request(&piece)).await,
                        };
                        (piece, outcome)
                    });
                }
                Next::At(at) => {
                    wake = at;
                    break;
                }
                Next::Nothing => break,
            }
        }
        tokio::select! {
            parcel = parcels.recv() => match parcel {
                Some(parcel) => take(parcel, &api, &mut queues, &window),
                // the clerk has ended; what was not sent is in its outbox
                None => break,
            },
            Some(outcome) = on_their_way.join_next() => {
                if let Ok((piece, outcome)) = outcome {
                    settle(&piece, outcome, &mut queues, &window);
                }
            }
            () = tokio::time::sleep_until(wake) => {}
            _ = stop.wait_for(|stop| *stop) => break,
        }
    }
    let last = async {
        while let Some(outcome) = on_their_way.join_next().await {
            if let Ok((piece, outcome)) = outcome {
                settle(&piece, outcome, &mut queues, &window);
            }
        }
    };
    if tokio::time::timeout(LAST_WAIT, last).await.is_err() {
        warn!("stopped before the network said whether the last messages were accepted");
    }
    if queues.len() > 0 {
        info!("{} messages wait for the next start", queues.len());
    }
}

fn take(parcel: Parcel, api: &Api, queues: &mut Queues, window: &Window) {
    if let Some((key, file)) = parcel.fetch {
        tokio::spawn(photo::fetch(api.clone(), window.clone(), key, file));
        return;
    }
    if let Some(press) = parcel.press {
        // it is no message, so no queue; lost, a button looks busy for a while and that is all
        let api = api.clone();
        tokio::spawn(async move {
            let answer = AnswerCallbackQuery::new(CallbackQueryId(press.id)).text(press.text);
            if let Err(refusal) = api.call(&answer).await {
                debug!("a press is not answered: {refusal}");
            }
        });
        return;
    }
    if let Some(id) = parcel.id.filter(|_| parcel.is_recall()) {
        queues.recall(id);
        return;
    }
    let given_up = match parcel.chat {
        None => GivenUp::Unreachable,
        Some(chat) if queues.put(&parcel, chat, Instant::now()) => return,
        Some(_) => GivenUp::Refused("it is empty".into()),
    };
    if let Some(id) = parcel.id {
        window.given_up(id, given_up);
    }
}

fn no_preview() -> LinkPreviewOptions {
    LinkPreviewOptions {
        is_disabled: true,
        url: None,
        prefer_small_media: false,
        prefer_large_media: false,
        show_above_text: false,
    }
}

fn edit(piece: &Piece, message: i32) -> EditMessageText {
    let request = EditMessageText::new(ChatId(piece.chat), MessageId(message), &piece.text)
        .link_preview_options(no_preview());
    match buttons::under(piece) {
        Some(keyboard) => request.reply_markup(keyboard),
        None => request,
    }
}

fn request(piece: &Piece) -> SendMessage {
    let request =
        SendMessage::new(ChatId(piece.chat), &piece.text).link_preview_options(no_preview());
    let request = match piece.answers {
        Some(message) => request.reply_parameters(
            ReplyParameters::new(MessageId(message)).allow_sending_without_reply(),
        ),
        None => request,
    };
    let topic = piece.topic.and_then(|topic| i32::try_from(topic).ok());
    let request = match topic {
        Some(topic) => request.message_thread_id(ThreadId(MessageId(topic))),
        None => request,
    };
    match buttons::under(piece) {
        Some(keyboard) => request.reply_markup(keyboard),
        None => request,
    }
}

fn settle(piece: &Piece, outcome: Result<Value, Refusal>, queues: &mut Queues, window: &Window) {
    let now = Instant::now();
    let chat = piece.chat;
    let given_up = match outcome {
        Ok(message) => {
            queues.accepted(chat);
            if let Some(id) = piece.id {
                let number = message
                    .get("message_id")
                    .and_then(Value::as_i64)
                    .unwrap_or(0);
                window.sent(id, piece.part, piece.of, number);
            }
            return;
        }
        Err(Refusal::Flood(wait)) => return queues.wait(chat, wait, now),
        Err(Refusal::Moved(to)) => {
            window.moved(chat, to);
            return queues.moved(chat, to, now);
        }
        Err(refusal @ (Refusal::Unwell(_) | Refusal::Token | Refusal::Conflict(_))) => {
            warn!("a message is not sent yet: {refusal}");
            return queues.failed(chat, now);
        }
        Err(Refusal::Rejected(what)) if piece.edits.is_some() => {
            // it says so already, or what only points to another message has nowhere to stand
            if what.contains("message is not modified") || piece.answers.is_none() {
                debug!("an edit changes nothing: {what}");
                queues.accepted(chat);
                if let (Some(id), Some(message)) = (piece.id, piece.edits) {
                    window.sent(id, piece.part, piece.of, message.into());
                }
            } else {
                debug!("an answer cannot be edited any more: {what}");
                queues.send_anew(chat);
            }
            return;
        }
        Err(Refusal::Unreachable(_)) => GivenUp::Unreachable,
        Err(Refusal::Rejected(what)) => {
            error!("the network refuses a message: {what}");
            GivenUp::Refused(what)
        }
    };
    queues.given_up(chat);
    if let Some(id) = piece.id {
        window.given_up(id, given_up);
    }
}
