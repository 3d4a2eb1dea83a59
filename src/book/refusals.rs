//! What was refused: counted, so that the dispatchers are told of it now and then, and never word by word.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

/// How many senders are told apart at most.
const MOST_SENDERS: usize = 1_000;

/// What somebody tried.
#[derive(
    Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Attempt {
    /// An unknown sender wrote.
    #[default]
    Message,
    /// A code that nobody gave out.
    ForgedInvite,
    /// An invite that was used before.
    UsedInvite,
    /// An invite that ran out.
    ExpiredInvite,
    /// An invite that a newer one or a shut-out ended.
    WithdrawnInvite,
    /// A button that is not theirs, or not one of ours.
    Press,
    /// An order that their role may not give.
    Order,
}

impl Attempt {
    /// Returns the word for it in texts.
    pub fn code(self) -> &'static str {
        match self {
            Attempt::Message => "message",
            Attempt::ForgedInvite => "forged-invite",
            Attempt::UsedInvite => "used-invite",
            Attempt::ExpiredInvite => "expired-invite",
            Attempt::WithdrawnInvite => "withdrawn-invite",
            Attempt::Press => "press",
            Attempt::Order => "order",
        }
    }
}

/// What was refused, in all and since the dispatchers were last told.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Refusals {
    total: u64,
    since: Option<DateTime<Utc>>,
    last_told: Option<DateTime<Utc>>,
    counts: BTreeMap<Attempt, u64>,
    /// Who tried it.
    senders: BTreeMap<Attempt, BTreeSet<String>>,
}

impl Refusals {
    pub(super) fn take_in(&mut self, at: DateTime<Utc>, who: &str, tried: Attempt) {
        self.total += 1;
        self.since.get_or_insert(at);
        *self.counts.entry(tried).or_default() += 1;
        let senders = self.senders.entry(tried).or_default();
        if senders.len() < MOST_SENDERS {
            senders.insert(who.to_owned());
        }
    }

    pub(super) fn told(&mut self, at: DateTime<Utc>) {
        self.since = None;
        self.last_told = Some(at);
        self.counts.clear();
        self.senders.clear();
    }

    /// Counts everything that was ever refused.
    pub fn total(&self) -> u64 {
        self.total
    }

    /// Returns when the first one was refused of which nobody was told yet.
    pub fn since(&self) -> Option<DateTime<Utc>> {
        self.since
    }

    /// Returns when the dispatchers were last told.
    pub fn last_told(&self) -> Option<DateTime<Utc>> {
        self.last_told
    }

    /// Iterates over what was tried since then, how often and by whom.
    pub fn untold(&self) -> impl Iterator<Item = (Attempt, u64, &BTreeSet<String>)> {
        self.counts
            .iter()
            .filter_map(|(tried, count)| Some((*tried, *count, self.senders.get(tried)?)))
    }
}
