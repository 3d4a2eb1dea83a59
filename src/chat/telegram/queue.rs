//! Which message goes next: a queue a chat, in order; dangers before the rest; no chat waits for another.

use std::collections::{BTreeMap, VecDeque};
use std::time::Duration;

use tokio::time::Instant;

use super::limits::{Limits, Supply};
use super::{Pause, split};
use crate::chat::clerk::{Parcel, ParcelId};
use crate::finding::Level;

/// One message as the network takes it: a parcel, or one part of a long one.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Piece {
    /// The parcel; none for a word that is not kept.
    pub(super) id: Option<ParcelId>,
    /// The chat.
    pub(super) chat: i64,
    /// What to say.
    pub(super) text: String,
    /// Which part it is, from 0.
    pub(super) part: u32,
    /// Of how many.
    pub(super) of: u32,
    /// The number of the message it answers.
    pub(super) answers: Option<i32>,
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

struct Chat {
    dangers: VecDeque<Entry>,
    rest: VecDeque<Entry>,
    supply: Supply,
    group: Option<Supply>,
    /// The network asked to wait, or an error has to be waited out.
    not_before: Option<Instant>,
    pause: Pause,
    /// True while one is on its way, and whether that is a danger.
    on_its_way: Option<bool>,
}

struct Entry {
    order: u64,
    piece: Piece,
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
            .and_then(|key| super::parse::message_number(key, chat));
        let danger = parcel.level == Some(Level::Danger);
        for (part, text) in (0..).zip(parts).skip(parcel.parts_sent as usize) {
            self.counter += 1;
            // only the first part quotes what it answers
            let answers = answers.filter(|_| part == 0);
            let entry = Entry {
                order: self.counter,
                piece: Piece {
                    id: parcel.id,
                    chat,
                    text,
                    part,
                    of,
                    answers,
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

impl Chat {
    fn new(number: i64, limits: &Limits, now: Instant) -> Self {
        Chat {
            dangers: VecDeque::new(),
            rest: VecDeque::new(),
            supply: Supply::new(limits.chat, now),
            group: (number < 0).then(|| Supply::new(limits.group, now)),
            not_before: None,
            pause: Pause::default(),
            on_its_way: None,
        }
    }

    /// Returns whether the next is a danger, its order, and when it may go. None while one is on its way.
    fn ready(&self, now: Instant) -> Option<(bool, u64, Instant)> {
        if self.on_its_way.is_some() {
            return None;
        }
        let not_before = self.not_before.unwrap_or(now).max(now);
        if let Some(entry) = self.dangers.front() {
            return Some((true, entry.order, not_before));
        }
        let entry = self.rest.front()?;
        let group = self.group.map_or(now, |group| group.next(now));
        Some((
            false,
            entry.order,
            not_before.max(self.supply.next(now)).max(group),
        ))
    }

    fn start(&mut self, now: Instant) -> Piece {
        let danger = !self.dangers.is_empty();
        self.on_its_way = Some(danger);
        self.not_before = None;
        self.supply.take(now);
        if let Some(group) = &mut self.group {
            group.take(now);
        }
        let queue = if danger { &self.dangers } else { &self.rest };
        queue.front().expect("something was ready").piece.clone()
    }

    fn take_out(&mut self) -> Option<Entry> {
        if self.on_its_way.take()? {
            self.dangers.pop_front()
        } else {
            self.rest.pop_front()
        }
    }

    fn is_rested(&self, now: Instant) -> bool {
        let waits = self.not_before.is_some_and(|until| until > now);
        let group = self.group.is_none_or(|group| group.next(now) <= now);
        !waits && group && self.supply.next(now) <= now
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parcel(turn: u64, text: &str, level: Option<Level>) -> Parcel {
        Parcel {
            id: Some(ParcelId { turn, index: 0 }),
            to: "dana".into(),
            text: text.into(),
            level,
            ..Parcel::default()
        }
    }

    fn queues() -> (Queues, Instant) {
        let now = Instant::now();
        (Queues::new(Limits::default(), now), now)
    }

    fn sent(queues: &mut Queues, now: Instant) -> Option<String> {
        match queues.next(now) {
            Next::Send(piece) => Some(piece.text),
            _ => None,
        }
    }

    #[test]
    fn a_recalled_message_is_not_sent_and_one_on_its_way_keeps_its_place() {
        let (mut queues, now) = queues();
        queues.put(&parcel(1, "first", None), 7, now);
        queues.put(&parcel(2, "second", None), 7, now);
        queues.put(&parcel(3, "third", None), 7, now);
        assert_eq!(sent(&mut queues, now).as_deref(), Some("first"));
        for turn in [1, 2] {
            queues.recall(ParcelId { turn, index: 0 });
        }
        queues.accepted(7);
        let later = now + Duration::from_secs(60);
        assert_eq!(sent(&mut queues, later).as_deref(), Some("third"));
    }

    #[test]
    fn one_chat_keeps_its_order_and_waits_for_each_outcome() {
        let (mut queues, now) = queues();
        queues.put(&parcel(1, "first", None), 7, now);
        queues.put(&parcel(2, "second", None), 7, now);
        assert_eq!(sent(&mut queues, now).as_deref(), Some("first"));
        assert_eq!(queues.next(now), Next::Nothing);
        queues.failed(7, now);
        assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(1)));
        let later = now + Duration::from_secs(1);
        assert_eq!(
            sent(&mut queues, later).as_deref(),
            Some("first"),
            "a failed one goes again before the next"
        );
        queues.accepted(7);
        assert_eq!(sent(&mut queues, later).as_deref(), Some("second"));
    }

    #[test]
    fn a_slow_chat_does_not_hold_another() {
        let (mut queues, now) = queues();
        queues.put(&parcel(1, "slow", None), 7, now);
        queues.put(&parcel(2, "quick", None), 8, now);
        assert_eq!(sent(&mut queues, now).as_deref(), Some("slow"));
        queues.wait(7, Duration::from_secs(30), now);
        assert_eq!(sent(&mut queues, now).as_deref(), Some("quick"));
        queues.accepted(8);
        assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(30)));
    }

    #[test]
    fn a_danger_overtakes_its_own_chat_and_all_others() {
        let (mut queues, now) = queues();
        for turn in 0..40 {
            queues.put(
                &parcel(turn, "digest", None),
                7 + i64::try_from(turn).unwrap(),
                now,
            );
        }
        while sent(&mut queues, now).is_some() {}
        queues.put(&parcel(50, "later", None), 90, now);
        queues.put(&parcel(51, "danger", Some(Level::Danger)), 90, now);
        assert_eq!(
            sent(&mut queues, now).as_deref(),
            Some("danger"),
            "the supply is used up, a danger goes all the same"
        );
    }

    #[test]
    fn a_danger_obeys_the_networks_own_wait() {
        let (mut queues, now) = queues();
        queues.put(&parcel(1, "danger", Some(Level::Danger)), 7, now);
        assert!(sent(&mut queues, now).is_some());
        queues.wait(7, Duration::from_secs(9), now);
        assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(9)));
    }

    #[test]
    fn a_long_text_goes_in_parts_and_begins_where_it_was_left() {
        let (mut queues, now) = queues();
        let text = format!("{}\n{}", "a".repeat(4000), "b".repeat(4000));
        let mut long = parcel(1, &text, None);
        long.parts_sent = 1;
        queues.put(&long, 7, now);
        match queues.next(now) {
            Next::Send(piece) => assert_eq!(
                (piece.part, piece.of, piece.text.as_bytes()[0]),
                (1, 2, b'b')
            ),
            other => panic!("{other:?}"),
        }
        long.parts_sent = 0;
        queues.put(&long, 8, now);
        assert!(sent(&mut queues, now).is_some());
        queues.given_up(8);
        assert_eq!(
            queues.len(),
            1,
            "with one part given up, the rest of it goes too"
        );
    }

    #[test]
    fn what_waits_for_a_group_follows_it() {
        let (mut queues, now) = queues();
        queues.put(&parcel(1, "one", None), -5, now);
        queues.put(&parcel(2, "two", None), -5, now);
        assert_eq!(sent(&mut queues, now).as_deref(), Some("one"));
        queues.moved(-5, -1005, now);
        match queues.next(now) {
            Next::Send(piece) => assert_eq!((piece.chat, piece.text.as_str()), (-1005, "one")),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn quiet_chats_are_forgotten_and_tired_ones_are_not() {
        let (mut queues, now) = queues();
        for turn in 0..3 {
            queues.put(&parcel(turn, "x", None), 7, now);
            sent(&mut queues, now);
            queues.accepted(7);
        }
        queues.tidy(now);
        assert_eq!(queues.chats.len(), 1);
        queues.tidy(now + Duration::from_secs(5));
        assert!(queues.chats.is_empty());
    }
}
