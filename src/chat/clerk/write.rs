//! Writing down, and what follows when that fails: what is known is dropped and folded anew.

use std::time::Instant;

use tracing::{error, info, warn};

use super::NotDone;
use super::letter::{Letter, Note};
use super::state::State;
use super::turns::Turns;
use super::work::{Work, value};
use crate::book::Personal;
use crate::desk::Outgoing;
use crate::store::{Draft, StoreError};

impl<T: Turns> Work<T> {
    /// Writes turns and brings them to the disk; where that fails, everything known is folded anew.
    pub(super) fn write(&mut self, drafts: &[Draft]) -> Result<(), NotDone> {
        self.mend()?;
        let begun = Instant::now();
        let outcome = self
            .store
            .prepare(drafts)
            .and_then(|prepared| self.store.commit(prepared));
        match outcome {
            Ok(_) => {
                self.metrics.committed(drafts, begun.elapsed());
                self.unsynced.clear();
                if self.trouble.is_over() {
                    info!("logging works again");
                }
                Ok(())
            }
            Err(error) => {
                self.metrics.not_committed();
                self.fall_back(&error);
                Err(NotDone::NotLogged(error.to_string()))
            }
        }
    }

    /// Writes what the clerk itself decided, with what it says about it.
    pub(super) fn write_notes(&mut self, notes: Vec<Note>, outgoing: Vec<Outgoing>) {
        let now = (self.clock)();
        let draft = Draft {
            key: None,
            at: now,
            records: notes.iter().map(Note::value).collect(),
            outgoing: outgoing
                .into_iter()
                .map(|out| value(&Letter::new(out)))
                .collect(),
        };
        let turn_number = self.store.head().seq + 1;
        if self.write(std::slice::from_ref(&draft)).is_ok() {
            notes
                .iter()
                .for_each(|note| self.state.outbox.note(now, note));
            self.put(turn_number, &draft);
            self.send_from(turn_number);
        }
    }

    /// Writes down which sends were accepted, without a sync: lost, it costs a message sent twice.
    pub(super) fn write_sent(&mut self, notes: Vec<Note>) {
        if notes.is_empty() {
            return;
        }
        let now = (self.clock)();
        let mut all = Vec::with_capacity(notes.len());
        for note in notes {
            let to = match &note {
                Note::Sent { id, .. } => self
                    .state
                    .outbox
                    .letter(*id)
                    .map(|letter| letter.to.clone()),
                _ => None,
            };
            self.state.outbox.note(now, &note);
            all.push(note);
            if let Some(who) = to.filter(|who| self.state.outbox.is_unreachable(who)) {
                let note = Note::Reachable {
                    who: Personal::new(who),
                };
                self.state.outbox.note(now, &note);
                all.push(note);
            }
        }
        let records = all.iter().map(Note::value).collect();
        self.unsynced.extend(all);
        let draft = Draft {
            key: None,
            at: now,
            records,
            outgoing: Vec::new(),
        };
        let outcome = self
            .store
            .prepare(&[draft])
            .and_then(|prepared| self.store.commit_unsynced(prepared));
        if let Err(error) = outcome {
            self.fall_back(&error);
        }
    }

    /// Drops what is known after a failed write: it may hold what the journal does not.
    pub(super) fn fall_back(&mut self, error: &StoreError) {
        if self.trouble.begins() {
            error!("nothing can be logged: {error}");
        }
        self.stale = true;
        self.wishes.set_back();
    }

    /// Folds what is known anew where a failed write has made it doubtful.
    pub(super) fn mend(&mut self) -> Result<(), NotDone> {
        if !self.stale {
            return Ok(());
        }
        let folded = self
            .store
            .fold_anew()
            .map_err(|error| error.to_string())
            .and_then(State::fold);
        self.state = folded.map_err(|error| {
            if self.trouble.begins() {
                error!("what is known cannot be folded anew: {error}");
            }
            NotDone::NotLogged(error)
        })?;
        self.stale = false;
        // what the network accepted stays accepted, whether or not that could be written
        let now = (self.clock)();
        for note in &self.unsynced {
            self.state.outbox.note(now, note);
        }
        let again = std::mem::take(&mut self.unsynced);
        self.write_sent(again);
        if self.stale {
            Err(NotDone::NotLogged("the disk still fails".into()))
        } else {
            Ok(())
        }
    }

    /// Goes by this from here on, which was folded from every turn on the disk.
    pub(super) fn know(&mut self, known: State<T>) {
        self.state = known;
        self.unsynced.clear();
        // what followed from these was done at the time
        self.state.outbox.stale();
        self.state.outbox.recalled();
    }

    /// Lets the index follow, and saves a snapshot when enough has happened.
    pub(super) fn follow(&mut self) {
        match self.store.follow() {
            Ok(notes) => notes.iter().for_each(|note| warn!("{note}")),
            Err(error) => warn!("the index does not follow yet: {error}"),
        }
        let due = !self.stale && self.store.head().seq >= self.snapshot_at + self.snapshot_every;
        if due && let Err(error) = self.save_snapshot() {
            warn!("no snapshot could be saved: {error}");
        }
    }

    pub(super) fn save_snapshot(&mut self) -> Result<(), StoreError> {
        if self.stale || self.store.head().seq == self.snapshot_at {
            return Ok(());
        }
        if let Err(error) = self.store.sync() {
            self.fall_back(&error);
            return Err(error);
        }
        let head = self.store.head();
        // tried again only after as many turns, whether it worked or not
        self.snapshot_at = head.seq;
        self.store.save_snapshot(head, self.state.snapshot())
    }
}
