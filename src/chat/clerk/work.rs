//! The clerk at work: jobs and the clock's own work, one after the other.

use std::collections::HashSet;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::time::Duration;

use chrono::{DateTime, TimeDelta, Utc};
use serde_json::{Value, json};
use tracing::{error, info, warn};

use super::letter::{Letter, Note, Parcel};
use super::outbox::Edit;
use super::state::State;
use super::trouble::Trouble;
use super::turns::Turns;
use super::{Job, NotDone};
use crate::book::{MessageKey, Personal, Record};
use crate::chat::phrases;
use crate::desk::{Body, Inbound, Outgoing, Sender, Turn};
use crate::fleet::CrewMember;
use crate::heard::Language;
use crate::store::{Draft, Store, StoreError};

/// How long the clerk sleeps at most.
const LONGEST_SLEEP: Duration = Duration::from_secs(600);
/// How long the clock's own work waits after it failed, or after it had nothing to do though it was due.
const TICK_AGAIN: TimeDelta = TimeDelta::seconds(5);

pub(super) struct Work<T> {
    pub(super) store: Store,
    pub(super) state: State<T>,
    pub(super) clock: Box<dyn Fn() -> DateTime<Utc> + Send>,
    pub(super) deliver: Box<dyn FnMut(Parcel) + Send>,
    pub(super) trouble: Trouble,
    snapshot_every: u64,
    snapshot_at: u64,
    /// Notes of accepted sends that were written since the last sync: a failed sync takes them back.
    unsynced: Vec<Note>,
    /// The clock's own work waits until then.
    tick_after: Option<DateTime<Utc>>,
    /// What is known does not fit the journal: it has to be folded anew before anything else.
    stale: bool,
}

/// What becomes of a batch.
#[derive(Default)]
struct Batch {
    keys: HashSet<MessageKey>,
    drafts: Vec<Draft>,
    dangers: Vec<(MessageKey, Outgoing)>,
    /// Taking in a turn broke off half-way.
    half: bool,
}

impl<T: Turns> Work<T> {
    pub(super) fn new(
        store: Store,
        state: State<T>,
        clock: Box<dyn Fn() -> DateTime<Utc> + Send>,
        deliver: Box<dyn FnMut(Parcel) + Send>,
        comes_again: bool,
        snapshot_every: u64,
    ) -> Self {
        let snapshot_at = store.head().seq;
        Work {
            store,
            state,
            clock,
            deliver,
            trouble: Trouble::new(comes_again),
            snapshot_every,
            snapshot_at,
            unsynced: Vec::new(),
            tick_after: None,
            stale: false,
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
                    self.send_from(first);
                }
            }
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
            Job::Forget(what, answer) => {
                let outcome = match what {
                    Some(what) => self.forget(&what),
                    None => self.retain(),
                };
                let _ = answer.send(outcome);
            }
            Job::Fleet(answer) => {
                let _ = answer.send(Ok(self.state.turns.fleet().cloned()));
            }
            Job::Show(answer) => {
                let _ = answer.send(Ok(self.show()));
            }
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

    fn batch(&mut self, inbound: &[Inbound]) -> Result<(), NotDone> {
        self.mend()?;
        let mut batch = Batch::default();
        for inbound in inbound {
            if let Err(error) = self.take(inbound, &mut batch) {
                self.fall_back(&error);
                return Err(NotDone::NotLogged(error.to_string()));
            }
        }
        if batch.drafts.is_empty() {
            return Ok(());
        }
        let outcome = self.write(&batch.drafts);
        if outcome.is_err() {
            self.say_not_logged(inbound, batch.dangers);
        }
        self.stale |= batch.half;
        outcome
    }

    /// Works through one message and takes it in, to be written with the rest of its batch.
    fn take(&mut self, inbound: &Inbound, batch: &mut Batch) -> Result<(), StoreError> {
        if batch.keys.contains(&inbound.key) || self.store.seen(&inbound.key.0)? {
            return Ok(());
        }
        batch.keys.insert(inbound.key.clone());
        let turn_number = self.store.head().seq + 1 + batch.drafts.len() as u64;
        let member = self.state.turns.crew_of(&inbound.from);
        if member.is_none() && inbound.chat.is_some_and(|chat| chat < 0) {
            // others talking in a group are none of our business, and are not told so one by one
            return Ok(());
        }
        let mut inbound = inbound.clone();
        if inbound.replaces.is_some() {
            match self.state.outbox.edit(&inbound.key, words(&inbound.body)) {
                Some(Edit::Nothing) => return Ok(()),
                Some(Edit::Replaces(key)) => inbound.replaces = Some(key),
                None => {}
            }
        }
        let mut half = false;
        let mut draft = match catch_unwind(AssertUnwindSafe(|| {
            let turn = self.state.turns.receive(&inbound);
            half = true;
            self.state.turns.apply(&turn.records);
            half = false;
            turn
        })) {
            Ok(turn) => {
                self.state.outbox.remember(&turn.records);
                let dangers = turn
                    .outgoing
                    .iter()
                    .filter(|out| out.level == Some(crate::finding::Level::Danger));
                batch
                    .dangers
                    .extend(dangers.map(|out| (inbound.key.clone(), out.clone())));
                self.draft(Some(&inbound.key), inbound.received, &turn)
            }
            Err(_) => {
                error!("a message could not be worked through and was set aside");
                batch.half |= half;
                self.set_aside(&inbound, member.as_ref())
            }
        };
        if let Some(member) = member.filter(|member| self.state.outbox.is_unreachable(&member.id)) {
            let note = Note::Reachable {
                who: Personal::new(member.id),
            };
            self.state.outbox.note(inbound.received, &note);
            draft.records.push(note.value());
        }
        self.put(turn_number, &draft);
        batch.drafts.push(draft);
        Ok(())
    }

    fn set_aside(&self, inbound: &Inbound, member: Option<&CrewMember>) -> Draft {
        let who = member.map_or("", |member| member.id.as_str());
        let note = Note::SetAside {
            key: Personal::new(&*inbound.key.0),
            from: who.to_owned(),
            text: Personal::new(words(&inbound.body)),
        };
        let answer = member
            .map(|member| answer_to(inbound, who, phrases::set_aside(self.language_of(member))));
        Draft {
            key: Some(inbound.key.0.clone()),
            at: inbound.received,
            records: vec![note.value()],
            outgoing: answer
                .into_iter()
                .map(|answer| value(&Letter::new(answer)))
                .collect(),
        }
    }

    fn draft(&self, key: Option<&MessageKey>, at: DateTime<Utc>, turn: &Turn) -> Draft {
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
    fn put(&mut self, turn_number: u64, draft: &Draft) {
        let letters: Vec<Letter> = draft
            .outgoing
            .iter()
            .map(|letter| {
                serde_json::from_value(letter.clone()).expect("it was made from a letter")
            })
            .collect();
        self.state.outbox.put(turn_number, &letters);
    }

    /// Writes turns and brings them to the disk; where that fails, everything known is folded anew.
    pub(super) fn write(&mut self, drafts: &[Draft]) -> Result<(), NotDone> {
        self.mend()?;
        let outcome = self
            .store
            .prepare(drafts)
            .and_then(|prepared| self.store.commit(prepared));
        match outcome {
            Ok(_) => {
                self.unsynced.clear();
                if self.trouble.is_over() {
                    info!("logging works again");
                }
                Ok(())
            }
            Err(error) => {
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
    fn write_sent(&mut self, notes: Vec<Note>) {
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
    fn fall_back(&mut self, error: &StoreError) {
        if self.trouble.begins() {
            error!("nothing can be logged: {error}");
        }
        self.stale = true;
    }

    /// Folds what is known anew where a failed write has made it doubtful.
    fn mend(&mut self) -> Result<(), NotDone> {
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

    fn tick_if_due(&mut self) {
        let now = (self.clock)();
        if self.due().is_none_or(|due| due > now) || self.mend().is_err() {
            return;
        }
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
        match self.log(now, &turn) {
            Ok(()) => self.send_from(first),
            Err(_) => self.tick_after = Some(now + TICK_AGAIN),
        }
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
        let now = (self.clock)();
        self.due()
            .map_or(LONGEST_SLEEP, |due| {
                (due - now).to_std().unwrap_or_default()
            })
            .min(LONGEST_SLEEP)
    }

    fn send_from(&mut self, turn_number: u64) {
        let turns = &self.state.turns;
        let chat_of = |who: &str| turns.fleet()?.crew.get(who)?.chat_user;
        for parcel in self.state.outbox.parcels(turn_number, chat_of) {
            (self.deliver)(parcel);
        }
    }

    /// Lets the index follow, and saves a snapshot when enough has happened.
    fn follow(&mut self) {
        match self.store.follow() {
            Ok(notes) => notes.iter().for_each(|note| warn!("{note}")),
            Err(error) => warn!("the index does not follow yet: {error}"),
        }
        if !self.stale && self.store.head().seq >= self.snapshot_at + self.snapshot_every {
            if let Err(error) = self.save_snapshot() {
                warn!("no snapshot could be saved: {error}");
            }
        }
    }

    /// Saves a snapshot though one was saved at this turn, since that one is gone.
    pub(super) fn snapshot_again(&mut self) {
        self.snapshot_at = 0;
        if let Err(error) = self.save_snapshot() {
            warn!("no snapshot could be saved: {error}");
        }
    }

    fn save_snapshot(&mut self) -> Result<(), StoreError> {
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

/// Returns the words of a message, or the name of what else it is.
fn words(body: &Body) -> &str {
    match body {
        Body::Text(text) => text,
        Body::Other(kind) => kind,
    }
}

fn answer_to(inbound: &Inbound, to: &str, text: &str) -> Outgoing {
    Outgoing {
        to: to.to_owned(),
        chat: inbound.chat,
        text: Personal::new(text),
        level: None,
        answers: Some(inbound.key.clone()),
    }
}

fn value<S: serde::Serialize>(of: &S) -> Value {
    serde_json::to_value(of).expect("records and letters are plain data")
}
