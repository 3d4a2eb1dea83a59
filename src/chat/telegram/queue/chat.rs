//! The queue of one chat: in order, dangers before the rest, one message on its way at a time.

use std::collections::VecDeque;

use tokio::time::Instant;

use super::super::Pause;
use super::super::limits::{Limits, Supply};
use super::Piece;

/// What waits for one chat, and how soon it may go.
pub(super) struct Chat {
    pub(super) dangers: VecDeque<Entry>,
    pub(super) rest: VecDeque<Entry>,
    pub(super) supply: Supply,
    pub(super) group: Option<Supply>,
    /// The network asked to wait, or an error has to be waited out.
    pub(super) not_before: Option<Instant>,
    pub(super) pause: Pause,
    /// True while one is on its way, and whether that is a danger.
    pub(super) on_its_way: Option<bool>,
}

/// A piece and its place in the order of all.
pub(super) struct Entry {
    pub(super) order: u64,
    pub(super) piece: Piece,
}

impl Chat {
    pub(super) fn new(number: i64, limits: &Limits, now: Instant) -> Self {
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
    pub(super) fn ready(&self, now: Instant) -> Option<(bool, u64, Instant)> {
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

    pub(super) fn start(&mut self, now: Instant) -> Piece {
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

    /// Makes the one on its way a message of its own, to be sent again.
    pub(super) fn send_anew(&mut self) {
        let queue = match self.on_its_way.take() {
            Some(true) => &mut self.dangers,
            Some(false) => &mut self.rest,
            None => return,
        };
        if let Some(entry) = queue.front_mut() {
            entry.piece.edits = None;
        }
    }

    pub(super) fn take_out(&mut self) -> Option<Entry> {
        if self.on_its_way.take()? {
            self.dangers.pop_front()
        } else {
            self.rest.pop_front()
        }
    }

    pub(super) fn is_rested(&self, now: Instant) -> bool {
        let waits = self.not_before.is_some_and(|until| until > now);
        let group = self.group.is_none_or(|group| group.next(now) <= now);
        !waits && group && self.supply.next(now) <= now
    }
}
