//! The clerk at work: jobs and the clock's own work, one after the other.

use std::collections::HashSet;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::time::Duration;

use chrono::{DateTime, TimeDelta, Utc};
use serde_json::{Value, json};
use tracing::error;

use super::forget::Wishes;
use super::letter::{Letter, Note, Parcel};
use super::state::State;
use super::trouble::Trouble;
use super::turns::Turns;
use super::{Invite, Invited, Job, NotDone};
use crate::book::{MessageKey, Personal, Record};
use crate::chat::metrics::{Metrics, Standing};
use crate::chat::phrases::Phrases;
use crate::desk::{Means, Sender, Turn};
use crate::fleet::CrewMember;
use crate::heard::Language;
use crate::store::{Draft, Store};

/// How long the clerk sleeps at most.
const LONGEST_SLEEP: Duration = Duration::from_secs(600);
/// How long the clock's own work waits after it failed, or after it had nothing to do though it was due.
const TICK_AGAIN: TimeDelta = TimeDelta::seconds(5);

pub(super) struct Work<T> {
    /// Which texts are to be taken out, and how far that has come: before the store, so that copies are taken away while the
    /// directory is still held.
    pub(super) wishes: Wishes<T>,
    pub(super) store: Store,
    pub(super) state: State<T>,
    pub(super) clock: Box<dyn Fn() -> DateTime<Utc> + Send>,
    pub(super) deliver: Box<dyn FnMut(Parcel) + Send>,
    pub(super) trouble: Trouble,
    pub(super) phrases: Phrases,
    pub(super) snapshot_every: u64,
    /// The turn at which the last one was saved.
    pub(super) snapshot_at: u64,
    /// Notes of accepted sends that were written since the last sync: a failed sync takes them back.
    pub(super) unsynced: Vec<Note>,
    /// The clock's own work waits until then.
    tick_after: Option<DateTime<Utc>>,
    /// The bot's name on the chat network, once the network has told it.
    pub(super) bot: Option<String>,
    /// What is known does not fit the journal: it has to be folded anew before anything else.
    pub(super) stale: bool,
    /// The data directory.
    pub(super) dir: PathBuf,
    /// The pictures that the transport was asked for since this process began.
    pub(super) fetching: HashSet<String>,
    pub(super) metrics: Metrics,
}

impl<T: Turns> Work<T> {
    #[allow(clippy::too_many_arguments)] // they are what a clerk is set up with
    pub(super) fn new(
        dir: &Path,
        store: Store,
        state: State<T>,
        clock: Box<dyn Fn() -> DateTime<Utc> + Send>,
        deliver: Box<dyn FnMut(Parcel) + Send>,
        comes_again: bool,
        snapshot_every: u64,
        snapshot_at: u64,
        metrics: Metrics,
    ) -> Self {
        let wishes = Wishes::new(state.outbox.wishes());
        Work {
            store,
            state,
            clock,
            deliver,
            trouble: Trouble::new(comes_again),
            phrases: Phrases::default(),
            snapshot_every,
            snapshot_at,
            unsynced: Vec::new(),
            tick_after: None,
            bot: None,
            stale: false,
            dir: dir.to_owned(),
            fetching: HashSet::new(),
            metrics,
            wishes,
        }
    }

    /// Does jobs, and the clock's own work in between, until it is told to stop or nobody is left to tell it.
    pub(super) fn run(mut self, jobs: &Receiver<Job>) {
        loop {
            let mut next = match jobs.recv_timeout(self.until_due()) {
                Ok(job) => Some(job),
                Err(RecvTimeoutError::Timeout) => None,
                Err(RecvTimeoutError::Disconnected) => break,
            };
            // accepted sends come in crowds: one line for all that wait
            let mut sent = Vec::new();
            while let Some(Job::Sent {
                id,
                part,
                of,
                message,
            }) = next
            {
                sent.push(Note::Sent {
                    id,
                    part,
                    of,
                    message: Personal::new(message.to_string()),
                });
                next = jobs.try_recv().ok();
            }
            self.write_sent(sent);
            self.point_on();
            if let Some(job) = next {
                if let Job::Stop(answer) = job {
                    let outcome = self
                        .save_snapshot()
                        .map_err(|error| NotDone::NotLogged(error.to_string()));
                    // the directory must be free again when the answer is there
                    drop(self);
                    let _ = answer.send(outcome);
                    return;
                }
                self.handle(job);
            }
            self.tick_if_due();
            self.take_texts_out();
            self.follow();
        }
    }

    /// Hands over everything that waits to be sent.
    pub(super) fn send_all(&mut self) {
        self.send_from(0);
    }

    fn handle(&mut self, job: Job) {
        match job {
            Job::Batch(inbound, answer) => {
                let first = self.store.head().seq + 1;
                let outcome = self.batch(&inbound);
                let taken = outcome.is_ok();
                let _ = answer.send(outcome);
                if taken {
                    self.recall();
                    self.send_from(first);
                    self.fetch_photos();
                }
            }
            Job::Invite(invite, answer) => {
                let outcome = self.invite(&invite);
                let _ = answer.send(outcome);
            }
            Job::Named(bot) => self.bot = Some(bot),
            Job::Load {
                digest,
                fleet,
                answer,
            } => {
                let now = (self.clock)();
                let turn = self.state.turns.load(now, &digest, *fleet);
                let first = self.store.head().seq + 1;
                let outcome = self.log(now, &turn);
                let _ = answer.send(outcome);
                self.send_from(first);
            }
            Job::Forget(Some(what), answer) => self.forget(what, answer),
            Job::Forget(None, answer) => self.retain(answer),
            Job::Fleet(answer) => {
                let _ = answer.send(Ok(self.state.turns.fleet().cloned()));
            }
            Job::Show(answer) => {
                let _ = answer.send(Ok(self.show()));
            }
            Job::NextDue(answer) => {
                let _ = answer.send(Ok(self.state.turns.next_due()));
            }
            Job::Standing(answer) => {
                let _ = answer.send(Ok(self.standing()));
            }
            Job::Photo { key, fetched } => self.photo(&key, fetched),
            Job::GivenUp { id, why } => self.give_up(id, &why),
            Job::Moved { from, to } => {
                let note = Note::Moved {
                    from: Personal::new(from.to_string()),
                    to: Personal::new(to.to_string()),
                };
                self.write_notes(vec![note], Vec::new());
            }
            Job::Sent { .. } | Job::Stop(_) => {}
        }
    }

    /// Lends the desk what its next turn may need from outside.
    pub(super) fn lend(&mut self) {
        let means = Means {
            chance: Some(self.store.chance()),
            bot: self.bot.clone(),
            unreachable: self.state.outbox.unreachable_since().clone(),
        };
        self.state.turns.lend(means);
    }

    fn invite(&mut self, invite: &Invite) -> Result<Invited, NotDone> {
        self.mend()?;
        self.lend();
        let now = (self.clock)();
        let (turn, code) = self
            .state
            .turns
            .invite(now, invite.role, &invite.name, invite.language)
            .map_err(NotDone::Refused)?;
        self.log(now, &turn)?;
        let bot = self.bot.clone();
        Ok(Invited { code, bot })
    }

    /// Takes back from the transport what waits for somebody who was just shut out.
    fn recall(&mut self) {
        for id in self.state.outbox.recalled() {
            (self.deliver)(Parcel::recall(id));
        }
    }

    pub(super) fn draft(&self, key: Option<&MessageKey>, at: DateTime<Utc>, turn: &Turn) -> Draft {
        Draft {
            key: key.map(|key| key.0.clone()),
            at,
            records: turn.records.iter().map(value::<Record>).collect(),
            outgoing: turn
                .outgoing
                .iter()
                .map(|out| value(&Letter::new(out.clone())))
                .collect(),
        }
    }

    /// Puts what a turn sends into the outbox.
    pub(super) fn put(&mut self, turn_number: u64, draft: &Draft) {
        let letters: Vec<Letter> = draft
            .outgoing
            .iter()
            .map(|letter| {
                serde_json::from_value(letter.clone()).expect("it was made from a letter")
            })
            .collect();
        self.state.outbox.put(turn_number, draft.at, &letters);
    }

    fn tick_if_due(&mut self) {
        let now = (self.clock)();
        if self.due().is_none_or(|due| due > now) || self.mend().is_err() {
            return;
        }
        self.lend();
        let Ok(turn) = catch_unwind(AssertUnwindSafe(|| self.state.turns.tick(now))) else {
            error!("the clock's own work failed");
            self.tick_after = Some(now + TICK_AGAIN * 12);
            return;
        };
        if turn.records.is_empty() && turn.outgoing.is_empty() {
            self.tick_after = Some(now + TICK_AGAIN);
            return;
        }
        let first = self.store.head().seq + 1;
        let due = self.state.turns.next_due();
        match self.log(now, &turn) {
            // a tick that leaves the same thing due would otherwise fill the journal
            Ok(()) if self.state.turns.next_due() == due && !turn.unfinished => {
                self.tick_after = Some(now + TICK_AGAIN)
            }
            Ok(()) => self.tick_after = None,
            Err(_) => self.tick_after = Some(now + TICK_AGAIN),
        }
        self.send_from(first);
    }

    /// Writes a turn that no message brought about, and takes it in.
    fn log(&mut self, now: DateTime<Utc>, turn: &Turn) -> Result<(), NotDone> {
        let draft = self.draft(None, now, turn);
        self.write(std::slice::from_ref(&draft))?;
        self.state.turns.apply(&turn.records);
        self.state.outbox.remember(&turn.records);
        self.put(self.store.head().seq, &draft);
        Ok(())
    }

    fn due(&self) -> Option<DateTime<Utc>> {
        let due = self.state.turns.next_due()?;
        Some(self.tick_after.map_or(due, |after| due.max(after)))
    }

    fn until_due(&self) -> Duration {
        if !self.stale && !self.wishes.is_idle() {
            return Duration::ZERO;
        }
        let now = (self.clock)();
        self.due()
            .map_or(LONGEST_SLEEP, |due| {
                (due - now).to_std().unwrap_or_default()
            })
            .min(LONGEST_SLEEP)
    }

    pub(super) fn send_from(&mut self, turn_number: u64) {
        let turns = &self.state.turns;
        let chat_of = |who: &str| turns.fleet()?.crew.get(who)?.chat_user;
        for parcel in self.state.outbox.parcels(turn_number, chat_of) {
            (self.deliver)(parcel);
        }
    }

    fn standing(&self) -> Standing {
        let now = (self.clock)();
        let since = |at: DateTime<Utc>| (now - at).to_std().unwrap_or_default();
        Standing {
            outbox: self.state.outbox.len(),
            outbox_age: self.state.outbox.oldest().map(since).unwrap_or_default(),
            unreachable: self.state.outbox.unreachable(),
            due_lag: self.state.turns.next_due().map(since).unwrap_or_default(),
            open_tasks: self.state.turns.open_tasks(),
            logging: !self.trouble.lasts(),
        }
    }

    fn show(&self) -> Value {
        let fleet = self.state.turns.fleet();
        json!({
            "turns": self.store.head().seq,
            "fleet_digest": self.state.turns.fleet_digest(),
            "trailers": fleet.map_or(0, |fleet| fleet.trailers.len()),
            "crew": fleet.map_or(0, |fleet| fleet.crew.len()),
            "waiting": self.state.outbox.len(),
            "unreachable": self.state.outbox.unreachable(),
            "logging": !self.trouble.lasts(),
            "bot": self.bot,
        })
    }

    pub(super) fn language_of(&self, member: &CrewMember) -> Language {
        member
            .language
            .or(self.state.turns.fleet().map(|fleet| fleet.language))
            .unwrap_or(Language::En)
    }

    pub(super) fn member(&self, sender: &Sender) -> Option<CrewMember> {
        self.state.turns.crew_of(sender)
    }
}

pub(super) fn value<S: serde::Serialize>(of: &S) -> Value {
    serde_json::to_value(of).expect("records and letters are plain data")
}
