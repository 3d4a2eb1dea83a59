//! What still has to be sent, and the little else that the clerk keeps of its own: who cannot be reached,
//! which groups moved, how a message last read. Folded from the journal like the book.

use std::collections::{BTreeMap, HashSet};

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::forget::Forget;
use super::letter::{Letter, Note, Parcel, ParcelId};
use super::photos::Photos;
use crate::book::{CrewChange, MessageKey, Personal, Record};

/// How many messages are known by their wording at most. An edit of one that is not does what an edit of a message nobody
/// saw does.
const MOST_WORDINGS: usize = 20_000;
/// How many overtaken answers are remembered: they are on their way for seconds.
const MOST_OVERTAKEN: usize = 200;
/// How long a message can be edited on the network, with some to spare (48 h for most, Bot API "editMessageText").
const EDITABLE: TimeDelta = TimeDelta::hours(72);

/// The clerk's own part of the state.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub(super) struct Outbox {
    waiting: Vec<Waiting>,
    unreachable: BTreeMap<String, DateTime<Utc>>,
    moved: BTreeMap<i64, i64>,
    wordings: BTreeMap<String, Wording>,
    /// Which message answered one that can still be edited, by that one's key without its edit date.
    #[serde(default)]
    answers: BTreeMap<String, Answered>,
    /// Answers taken out because an edit was answered, which may have been on their way.
    #[serde(default)]
    overtaken: BTreeMap<ParcelId, Letter>,
    /// Those of them that the network accepted all the same, with their numbers there.
    #[serde(skip)]
    stale: Vec<(Letter, i64)>,
    /// The pictures that people sent.
    #[serde(default)]
    pub(super) photos: Photos,
    /// What was taken out because its reader is shut out, and still may wait with a transport.
    #[serde(skip)]
    recalled: Vec<ParcelId>,
    /// When old texts were last taken out.
    #[serde(default)]
    retained: Option<DateTime<Utc>>,
    /// Which texts are to be taken out and are not yet.
    #[serde(default)]
    wishes: Vec<Forget>,
}

#[derive(Debug, Clone, Serialize, Deserialize)]
struct Waiting {
    id: ParcelId,
    letter: Letter,
    /// How many parts were accepted.
    parts: u32,
    /// Since when it waits.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    since: Option<DateTime<Utc>>,
}

/// The message that answered another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Answered {
    /// Its chat.
    pub(super) chat: i64,
    /// Its number there.
    pub(super) message: i64,
    at: DateTime<Utc>,
}

/// How a message last read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Wording {
    /// The key of its last version.
    pub(super) key: MessageKey,
    /// A digest of its text.
    digest: u64,
    at: DateTime<Utc>,
}

/// What an edit is to the message as it last read.
#[derive(Debug, PartialEq)]
pub(super) enum Edit {
    /// Other words: it replaces the version under this key.
    Replaces(MessageKey),
    /// The same words, or older than what is known.
    Nothing,
}

impl Outbox {
    /// Takes in what turn `turn` put out at `at`.
    pub(super) fn put(&mut self, turn: u64, at: DateTime<Utc>, letters: &[Letter]) {
        for (index, letter) in (0..).zip(letters) {
            self.overtake(letter);
            self.waiting.push(Waiting {
                id: ParcelId { turn, index },
                letter: letter.clone(),
                parts: 0,
                since: Some(at),
            });
        }
    }

    /// Takes in one of the clerk's own notes, written at `at`.
    pub(super) fn note(&mut self, at: DateTime<Utc>, note: &Note) {
        match note {
            Note::Sent {
                id,
                part,
                of,
                message,
            } => {
                if *of == 1 {
                    self.answered(*id, message.text(), at);
                }
                if let Some(letter) = self.overtaken.remove(id)
                    && let Ok(message) = message.text().parse()
                {
                    self.stale.push((letter, message));
                }
                if part + 1 >= *of {
                    self.take_out(*id);
                } else if let Some(waiting) = self.find(*id) {
                    waiting.parts = waiting.parts.max(part + 1);
                }
            }
            Note::GivenUp { id, .. } => self.take_out(*id),
            Note::SetAside { .. } => {}
            Note::PhotoKept { key, file } => self.photos.kept(key, file),
            Note::PhotoGone { key } => self.photos.gone(key),
            Note::Forget { who, before } => {
                if before.is_some() {
                    self.retained = Some(at);
                }
                if let Some(wish) = Forget::of_parts(who.as_deref(), *before) {
                    if matches!(wish, Forget::Before(_)) {
                        self.drop_wish(&wish);
                    }
                    self.wishes.push(wish);
                }
            }
            Note::Forgotten { who, before } => {
                if let Some(wish) = Forget::of_parts(who.as_deref(), *before) {
                    self.drop_wish(&wish);
                }
            }
            Note::Unreachable { who } => {
                self.unreachable.insert(who.text().to_owned(), at);
            }
            Note::Reachable { who } => {
                self.unreachable.remove(who.text());
            }
            Note::Moved { from, to } => {
                if let (Ok(from), Ok(to)) = (from.text().parse(), to.text().parse()) {
                    self.moved.insert(from, to);
                }
            }
        }
    }

    /// Remembers how messages read, to tell an edit from a touch.
    pub(super) fn remember(&mut self, records: &[Record]) {
        for record in records {
            self.photos.take_in(record);
            let message = match record {
                Record::Message(message) => message,
                Record::Crew { change, .. } => {
                    self.follow_crew(change);
                    continue;
                }
                _ => continue,
            };
            if self.wordings.len() >= MOST_WORDINGS {
                self.forget_wordings(message.received);
            }
            let network = MessageKey(message.network.text().to_owned());
            let wording = Wording {
                key: network.clone(),
                digest: digest(message.text.text()),
                at: message.received,
            };
            self.wordings.insert(network.unedited().to_owned(), wording);
        }
    }

    /// Takes out the answer to a message whose edit is answered now, where it waits still: it is true no longer.
    fn overtake(&mut self, letter: &Letter) {
        let Some(key) = letter.answers.as_ref() else {
            return;
        };
        let key = MessageKey(key.text().to_owned());
        let is_edit = edited_at(&key) > 0;
        let of_the_same = |waiting: &&Waiting| {
            let answers = waiting.letter.answers.as_ref();
            let answers = answers.map(|key| MessageKey(key.text().to_owned()));
            waiting.letter.to == letter.to
                && waiting.parts == 0
                && answers.is_some_and(|other| other.unedited() == key.unedited())
        };
        if is_edit {
            let waiting = self.waiting.iter().filter(of_the_same);
            let overtaken: Vec<ParcelId> = waiting.map(|waiting| waiting.id).collect();
            for id in overtaken {
                if let Some(letter) = self.letter(id).cloned() {
                    self.overtaken.insert(id, letter);
                }
                self.take_out(id);
                self.recalled.push(id);
            }
            while self.overtaken.len() > MOST_OVERTAKEN {
                self.overtaken.pop_first();
            }
        }
    }

    /// Remembers under which number the network keeps the answer to a message.
    fn answered(&mut self, id: ParcelId, message: &str, at: DateTime<Utc>) {
        let Some(letter) = self.letter(id) else {
            return;
        };
        let key = letter.answers.as_ref().map(Personal::text);
        let (Some(key), Some(chat), Ok(message)) = (key, letter.chat(), message.parse()) else {
            return;
        };
        let key = MessageKey(key.to_owned()).unedited().to_owned();
        let chat = self.current(chat);
        if self.answers.len() >= MOST_WORDINGS {
            self.answers.retain(|_, answer| at - answer.at < EDITABLE);
        }
        // where nothing is old enough to go, an edit of this one is answered anew
        if self.answers.len() < MOST_WORDINGS {
            self.answers.insert(key, Answered { chat, message, at });
        }
    }

    /// Returns the answers that reached their chat although an edit was answered meanwhile, since this was last asked.
    pub(super) fn stale(&mut self) -> Vec<(Letter, i64)> {
        std::mem::take(&mut self.stale)
    }

    /// Returns the message that answered the one under a key, or an earlier version of it.
    pub(super) fn answer_to(&self, key: &MessageKey) -> Option<Answered> {
        self.answers.get(key.unedited()).copied()
    }

    /// Takes out what waits for somebody who is no longer served; who joined anew can be reached.
    fn follow_crew(&mut self, change: &CrewChange) {
        if let CrewChange::Joined { who, .. } = change {
            self.unreachable.remove(who);
        }
        if let Some(who) = change.shuts_out() {
            let theirs = self.waiting_for(who);
            theirs.iter().for_each(|id| self.take_out(*id));
            self.recalled.extend(theirs);
        }
    }

    /// Returns what was taken out since this was last asked.
    pub(super) fn recalled(&mut self) -> Vec<ParcelId> {
        std::mem::take(&mut self.recalled)
    }

    /// Tells what an edit under `key` that reads `text` does to the message it edits.
    pub(super) fn edit(&self, key: &MessageKey, text: &str) -> Option<Edit> {
        let last = self.wordings.get(key.unedited())?;
        if last.digest == digest(text) || edited_at(key) < edited_at(&last.key) {
            return Some(Edit::Nothing);
        }
        Some(Edit::Replaces(last.key.clone()))
    }

    /// Returns the chat that messages for `chat` go to now.
    pub(super) fn current(&self, chat: i64) -> i64 {
        // a group moves once; the bound only keeps a damaged table from going round for ever
        let mut chat = chat;
        for _ in 0..8 {
            match self.moved.get(&chat) {
                Some(next) => chat = *next,
                None => break,
            }
        }
        chat
    }

    /// Tells whether a person cannot be written to.
    pub(super) fn is_unreachable(&self, who: &str) -> bool {
        self.unreachable.contains_key(who)
    }

    /// Returns the letter under an id while it waits.
    pub(super) fn letter(&self, id: ParcelId) -> Option<&Letter> {
        let at = self
            .waiting
            .binary_search_by_key(&id, |waiting| waiting.id)
            .ok()?;
        Some(&self.waiting[at].letter)
    }

    /// Returns everything that waits from turn `since` on, in order, each for the chat that `chat_of` finds for it.
    pub(super) fn parcels(&self, since: u64, chat_of: impl Fn(&str) -> Option<i64>) -> Vec<Parcel> {
        let start = self
            .waiting
            .partition_point(|waiting| waiting.id.turn < since);
        self.waiting[start..]
            .iter()
            .map(|waiting| {
                let chat = waiting
                    .letter
                    .chat()
                    .or_else(|| chat_of(&waiting.letter.to));
                waiting.letter.parcel(
                    waiting.id,
                    chat.map(|chat| self.current(chat)),
                    waiting.parts,
                )
            })
            .collect()
    }

    /// Returns what waits.
    pub(super) fn waiting(&self) -> HashSet<ParcelId> {
        self.waiting.iter().map(|waiting| waiting.id).collect()
    }

    /// Returns what waits for a person.
    pub(super) fn waiting_for(&self, who: &str) -> Vec<ParcelId> {
        let theirs = self
            .waiting
            .iter()
            .filter(|waiting| waiting.letter.to == who);
        theirs.map(|waiting| waiting.id).collect()
    }

    /// Returns when old texts were last taken out.
    pub(super) fn retained(&self) -> Option<DateTime<Utc>> {
        self.retained
    }

    /// Returns which texts are to be taken out and are not yet.
    pub(super) fn wishes(&self) -> &[Forget] {
        &self.wishes
    }

    /// Drops a wish that was carried out, and those before it that it comprises. One written since for the same person
    /// stays: it is about what they wrote since as well.
    fn drop_wish(&mut self, done: &Forget) {
        let same = |wish: &Forget| match (wish, done) {
            (Forget::Before(wish), Forget::Before(done)) => wish <= done,
            _ => wish == done,
        };
        match done {
            Forget::Before(_) => self.wishes.retain(|wish| !same(wish)),
            Forget::Person(_) => {
                if let Some(first) = self.wishes.iter().position(same) {
                    self.wishes.remove(first);
                }
            }
        }
    }

    /// Counts what waits.
    pub(super) fn len(&self) -> usize {
        self.waiting.len()
    }

    /// Returns who cannot be written to, and since when.
    pub(super) fn unreachable_since(&self) -> &BTreeMap<String, DateTime<Utc>> {
        &self.unreachable
    }

    /// Returns since when the message waits that has waited longest.
    pub(super) fn oldest(&self) -> Option<DateTime<Utc>> {
        self.waiting
            .iter()
            .filter_map(|waiting| waiting.since)
            .min()
    }

    /// Counts the people and groups that cannot be written to.
    pub(super) fn unreachable(&self) -> usize {
        self.unreachable.len()
    }

    /// Forgets what can no longer be edited and, where that is not enough, the older half.
    fn forget_wordings(&mut self, now: DateTime<Utc>) {
        self.wordings
            .retain(|_, wording| now - wording.at < EDITABLE);
        if self.wordings.len() >= MOST_WORDINGS / 2 {
            let mut times: Vec<_> = self.wordings.values().map(|wording| wording.at).collect();
            times.sort_unstable();
            let middle = times[times.len() / 2];
            self.wordings.retain(|_, wording| wording.at > middle);
        }
    }

    fn find(&mut self, id: ParcelId) -> Option<&mut Waiting> {
        let at = self
            .waiting
            .binary_search_by_key(&id, |waiting| waiting.id)
            .ok()?;
        Some(&mut self.waiting[at])
    }

    fn take_out(&mut self, id: ParcelId) {
        if let Ok(at) = self.waiting.binary_search_by_key(&id, |waiting| waiting.id) {
            self.waiting.remove(at);
        }
    }
}

/// Returns the edit date in a key; 0 where the message was not edited.
fn edited_at(key: &MessageKey) -> i64 {
    key.0
        .rsplit_once(':')
        .and_then(|(_, date)| date.parse().ok())
        .unwrap_or(0)
}

/// FNV-1a (Fowler, Noll and Vo, IETF draft-eastlake-fnv): stable between releases, unlike the standard hasher.
fn digest(text: &str) -> u64 {
    text.trim()
        .bytes()
        .fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
            (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
        })
}
