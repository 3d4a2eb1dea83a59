//! Which message goes next: a queue a chat, in order; dangers before the rest; no chat waits for another.

mod chat;

use std::collections::{BTreeMap, VecDeque};
use std::time::Duration;

use tokio::time::Instant;

use self::chat::{Chat, Entry};
use super::limits::{Limits, Supply};
use super::{parse, split};
use crate::chat::clerk::{Button, Parcel, ParcelId};
use crate::finding::Level;

/// One message as the network takes it: a parcel, or one part of a long one.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Piece {
    /// The parcel; none for a word that is not kept.
    pub(super) id: Option<ParcelId>,
    /// The chat.
    pub(super) chat: i64,
    /// The topic of that chat.
    pub(super) topic: Option<i64>,
    /// What to say.
    pub(super) text: String,
    /// Which part it is, from 0.
    pub(super) part: u32,
    /// Of how many.
    pub(super) of: u32,
    /// The number of the message it answers.
    pub(super) answers: Option<i32>,
    /// The likely answers.
    pub(super) buttons: Vec<Button>,
    /// The number of the message whose place it takes.
    pub(super) edits: Option<i32>,
}

/// What to do now.
#[derive(Debug, PartialEq)]
pub(super) enum Next {
    /// Send this; its chat waits for the outcome.
    Send(Piece),
    /// Nothing before then.
    At(Instant),
    /// Nothing at all until something is put in or comes back.
    Nothing,
}

/// Everything that waits to be sent.
pub(super) struct Queues {
    limits: Limits,
    overall: Supply,
    chats: BTreeMap<i64, Chat>,
    /// Numbers what is put in, so that the oldest goes first.
    counter: u64,
}

impl Queues {
    pub(super) fn new(limits: Limits, now: Instant) -> Self {
        Queues {
            limits,
            overall: Supply::new(limits.overall, now),
            chats: BTreeMap::new(),
            counter: 0,
        }
    }

    /// Puts in a parcel for a chat; returns false when it has nothing to say.
    pub(super) fn put(&mut self, parcel: &Parcel, chat: i64, now: Instant) -> bool {
        let parts = split::split(&parcel.text);
        let of = u32::try_from(parts.len()).unwrap_or(u32::MAX);
        if parcel.parts_sent >= of {
            return false;
        }
        let answers = parcel
            .answers
            .as_ref()
            .and_then(|key| parse::message_number(key, chat));
        // a long text does not fit into the place of a short one
        let edits = parcel.edits.filter(|_| of == 1);
        let edits = edits.and_then(|message| i32::try_from(message).ok());
        let danger = parcel.level == Some(Level::Danger);
        for (part, text) in (0..).zip(parts).skip(parcel.parts_sent as usize) {
            self.counter += 1;
            // only the first part quotes what it answers
            let answers = answers.filter(|_| part == 0);
            // and only the last offers answers, where the reader has come to
            let buttons = match part + 1 == of {
                true => parcel.buttons.clone(),
                false => Vec::new(),
            };
            let entry = Entry {
                order: self.counter,
                piece: Piece {
                    id: parcel.id,
                    chat,
                    topic: parcel.topic,
                    text,
                    part,
                    of,
                    answers,
                    buttons,
                    edits,
                },
            };
            let limits = self.limits;
            let chat = self
                .chats
                .entry(chat)
                .or_insert_with(|| Chat::new(chat, &limits, now));
            if danger {
                chat.dangers.push_back(entry)
            } else {
                chat.rest.push_back(entry)
            }
        }
        true
    }

    /// Says what to do now.
    pub(super) fn next(&mut self, now: Instant) -> Next {
        let overall = self.overall.next(now);
        // dangers of any chat, then whatever waits longest
        let mut best: Option<(bool, u64, i64)> = None;
        let mut soonest: Option<Instant> = None;
        for (number, chat) in &self.chats {
            let Some((danger, order, ready)) = chat.ready(now) else {
                continue;
            };
            let ready = if danger { ready } else { ready.max(overall) };
            if ready <= now {
                let candidate = (!danger, order, *number);
                if best.is_none_or(|best| candidate < best) {
                    best = Some(candidate);
                }
            } else if soonest.is_none_or(|soonest| ready < soonest) {
                soonest = Some(ready);
            }
        }
        let Some((_, _, number)) = best else {
            return soonest.map_or(Next::Nothing, Next::At);
        };
        self.overall.take(now);
        let chat = self.chats.get_mut(&number).expect("it was found just now");
        Next::Send(chat.start(now))
    }

    /// Notes that the message on its way to a chat was accepted.
    pub(super) fn accepted(&mut self, chat: i64) {
        if let Some(chat) = self.chats.get_mut(&chat) {
            chat.pause.reset();
            chat.take_out();
        }
    }

    /// Notes that the network asks to wait before the next message to a chat; the one on its way stays first.
    pub(super) fn wait(&mut self, chat: i64, wait: Duration, now: Instant) {
        if let Some(chat) = self.chats.get_mut(&chat) {
            chat.on_its_way = None;
            chat.not_before = Some(now + wait);
        }
    }

    /// Lets what could not take an earlier message's place go as a message of its own.
    pub(super) fn send_anew(&mut self, chat: i64) {
        if let Some(chat) = self.chats.get_mut(&chat) {
            chat.send_anew();
        }
    }

    /// Notes that a send failed and is to be tried again after a while.
    pub(super) fn failed(&mut self, chat: i64, now: Instant) {
        let Some(wait) = self.chats.get_mut(&chat).map(|chat| chat.pause.next()) else {
            return;
        };
        self.wait(chat, wait, now);
    }

    /// Takes out the message on its way, with all parts of the same parcel: it will not be sent.
    pub(super) fn given_up(&mut self, chat: i64) {
        let Some(chat) = self.chats.get_mut(&chat) else {
            return;
        };
        let Some(entry) = chat.take_out() else { return };
        if let Some(id) = entry.piece.id {
            chat.dangers.retain(|other| other.piece.id != Some(id));
            chat.rest.retain(|other| other.piece.id != Some(id));
        }
    }

    /// Takes out a parcel that is not to be sent any more, but for what is on its way already.
    pub(super) fn recall(&mut self, id: ParcelId) {
        for chat in self.chats.values_mut() {
            let on_its_way = chat.on_its_way;
            let keep = |queue: &mut VecDeque<Entry>, danger: bool| {
                let mut first = on_its_way == Some(danger);
                queue.retain(|entry| std::mem::take(&mut first) || entry.piece.id != Some(id));
            };
            keep(&mut chat.dangers, true);
            keep(&mut chat.rest, false);
        }
    }

    /// Moves all that waits for one chat to another.
    pub(super) fn moved(&mut self, from: i64, to: i64, now: Instant) {
        let Some(mut old) = self.chats.remove(&from) else {
            return;
        };
        let limits = self.limits;
        let new = self
            .chats
            .entry(to)
            .or_insert_with(|| Chat::new(to, &limits, now));
        let answered_elsewhere = |mut entry: Entry| {
            entry.piece.chat = to;
            // message numbers do not move along
            entry.piece.answers = None;
            entry.piece.edits = None;
            // nor do topics
            entry.piece.topic = None;
            entry
        };
        // a message on its way to the new chat must stay first in its queue
        let head = new.on_its_way.and_then(|danger| {
            if danger {
                new.dangers.pop_front()
            } else {
                new.rest.pop_front()
            }
        });
        let head_is_danger = new.on_its_way == Some(true);
        for (from, into) in [
            (&mut old.dangers, &mut new.dangers),
            (&mut old.rest, &mut new.rest),
        ] {
            into.extend(from.drain(..).map(answered_elsewhere));
            into.make_contiguous().sort_by_key(|entry| entry.order);
        }
        if let Some(head) = head {
            if head_is_danger {
                new.dangers.push_front(head)
            } else {
                new.rest.push_front(head)
            }
        }
    }

    /// Forgets chats that are quiet and rested, so that the table does not grow for ever.
    pub(super) fn tidy(&mut self, now: Instant) {
        self.chats.retain(|_, chat| {
            !chat.dangers.is_empty() || !chat.rest.is_empty() || !chat.is_rested(now)
        });
    }

    /// Counts what waits or is on its way.
    pub(super) fn len(&self) -> usize {
        self.chats
            .values()
            .map(|chat| chat.dangers.len() + chat.rest.len())
            .sum()
    }
}

#[cfg(test)]
mod tests;
