//! The clerk: one thread that owns the desk, the journal and the store. Transports hand it jobs and wait for its word.
//!
//! A batch of messages is worked through, written as one line a turn, and synced once. Only then does the clerk say that
//! it was taken, only then do replies go out, and the index follows after that. When a write or sync fails, nothing was
//! taken and nothing is said; what is known is folded anew from snapshot and journal, as if the batch had never come.

mod batch;
mod erase;
mod forget;
mod held;
mod letter;
mod look_up;
mod outbox;
mod photos;
mod state;
mod trouble;
mod turns;
mod work;
mod write;

use std::path::Path;
use std::sync::{Arc, mpsc};
use std::thread::JoinHandle;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use thiserror::Error;
use tokio::sync::oneshot;

pub use forget::{Forget, Forgotten};
pub use held::is_held_by;
pub use letter::{Button, Parcel, ParcelId, PressAnswer};
pub use look_up::entries;
pub use photos::{MOST_BYTES, PHOTOS, PhotoLost};
pub use turns::Turns;

use super::metrics::{Metrics, Standing};
use crate::desk::Inbound;
use crate::fleet::{Fleet, Role};
use crate::heard::Language;
use crate::store::{self, Disk, Note, Salt, Store, StoreError};
use work::Work;

/// How many turns go by between two snapshots.
pub const SNAPSHOT_EVERY: u64 = 5_000;

/// How a clerk is set up.
pub struct Setup {
    /// Where salts come from.
    pub salt: Box<dyn Salt>,
    /// What time it is.
    pub clock: Box<dyn Fn() -> DateTime<Utc> + Send>,
    /// Where outgoing messages go once they are on disk.
    pub deliver: Box<dyn FnMut(Parcel) + Send>,
    /// True where a message that was not taken comes again by itself, as on the chat network.
    pub comes_again: bool,
    /// What the journal is written through.
    pub disk: Box<dyn Disk>,
    /// How many turns go by between two snapshots.
    pub snapshot_every: u64,
    /// Where it counts what it does.
    pub metrics: Metrics,
}

/// Why a clerk could not begin.
#[derive(Debug, Error)]
pub enum OpenError {
    /// The store would not open.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// What it holds cannot be read.
    #[error("{0}: install the release that wrote it, or restore a backup")]
    Unreadable(String),
}

/// Why a job was not done.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum NotDone {
    /// It could not be written down; nothing of it counts. Try again later.
    #[error("{0}")]
    NotLogged(String),
    /// It is written down and could not be carried out yet; it is tried again by itself.
    #[error("it is noted, and tried again later: {0}")]
    Later(String),
    /// What was asked for cannot be done, in these words.
    #[error("{0}")]
    Refused(String),
    /// The clerk has ended.
    #[error("the service has stopped")]
    Gone,
}

/// Why a message will not be sent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum GivenUp {
    /// Its chat cannot be written to.
    Unreachable,
    /// The network refuses the message as such, in these words.
    Refused(String),
}

/// Whom to invite from the command line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Invite {
    /// What they may do once they joined.
    pub role: Role,
    /// How they are called.
    pub name: String,
    /// The language they are answered in.
    pub language: Language,
}

/// An invite that was written down.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Invited {
    /// The code that lets them in; it is told once and kept nowhere.
    pub code: String,
    /// The bot's name on the chat network, where a bot runs that knows it.
    pub bot: Option<String>,
}

pub(super) type Answer<R> = oneshot::Sender<Result<R, NotDone>>;

impl From<StoreError> for NotDone {
    fn from(error: StoreError) -> Self {
        NotDone::NotLogged(error.to_string())
    }
}

/// What the clerk can be asked to do.
pub(super) enum Job {
    Batch(Vec<Inbound>, Answer<()>),
    Sent {
        id: ParcelId,
        part: u32,
        of: u32,
        message: i64,
    },
    GivenUp {
        id: ParcelId,
        why: GivenUp,
    },
    /// A picture was fetched, or cannot be.
    Photo {
        key: String,
        fetched: Result<Vec<u8>, PhotoLost>,
    },
    Moved {
        from: i64,
        to: i64,
    },
    Load {
        digest: String,
        fleet: Box<Fleet>,
        answer: Answer<()>,
    },
    Invite(Invite, Answer<Invited>),
    /// The network has told the bot's name.
    Named(String),
    /// Nothing named stands for what the fleet says is too old.
    Forget(Option<Forget>, Answer<Forgotten>),
    Show(Answer<Value>),
    Standing(Answer<Standing>),
    NextDue(Answer<Option<DateTime<Utc>>>),
    Fleet(Answer<Option<Arc<Fleet>>>),
    Stop(Answer<()>),
}

/// The clerk's own thread, and the way to it.
pub struct Clerk {
    window: Window,
    thread: JoinHandle<()>,
}

impl Clerk {
    /// Opens a data directory, folds what it holds, hands over what still waits to be sent, and begins.
    ///
    /// Returns the clerk and what was found and mended while opening.
    ///
    /// # Errors
    ///
    /// [`OpenError`].
    pub fn open<T: Turns>(dir: &Path, setup: Setup) -> Result<(Self, Vec<Note>), OpenError> {
        let mut store_setup = store::Setup::new(setup.salt, Box::new(entries), T::FORMAT);
        store_setup.disk = setup.disk;
        let (store, opened) = Store::open(dir, store_setup)?;
        let notes = opened.notes.clone();
        // a process that never lives long enough for one of its own must not fold ever more turns at each start
        let snapshot_at = opened.snapshot.as_ref().map_or(0, |book| book.head.seq);
        let state = state::State::<T>::fold(opened).map_err(OpenError::Unreadable)?;
        let mut work = Work::new(
            dir,
            store,
            state,
            setup.clock,
            setup.deliver,
            setup.comes_again,
            setup.snapshot_every,
            snapshot_at,
            setup.metrics,
        );
        work.send_all();
        work.fetch_photos();
        let (jobs, inbox) = mpsc::channel();
        let thread = std::thread::Builder::new()
            .name("clerk".into())
            .spawn(move || work.run(&inbox))
            .map_err(|source| {
                OpenError::Unreadable(format!("no thread can be started: {source}"))
            })?;
        Ok((
            Clerk {
                window: Window { jobs },
                thread,
            },
            notes,
        ))
    }

    /// Returns a way to hand the clerk jobs.
    pub fn window(&self) -> Window {
        self.window.clone()
    }

    /// Stops the clerk: a snapshot is saved and the directory is let go.
    ///
    /// # Errors
    ///
    /// [`NotDone`] when the clerk had ended before, or the snapshot could not be saved; nothing logged is lost then.
    pub fn stop(self) -> Result<(), NotDone> {
        let (answer, told) = oneshot::channel();
        let outcome = match self.window.jobs.send(Job::Stop(answer)) {
            Ok(()) => told.blocking_recv().unwrap_or(Err(NotDone::Gone)),
            Err(_) => Err(NotDone::Gone),
        };
        // a panic of the thread is said by its answer's absence
        let _ = self.thread.join();
        outcome
    }
}

/// A way to hand the clerk jobs. Copies of it all lead to the same clerk.
#[derive(Clone)]
pub struct Window {
    jobs: mpsc::Sender<Job>,
}

impl Window {
    /// Hands over messages; when this returns `Ok`, all of them are on disk or were before.
    ///
    /// # Errors
    ///
    /// [`NotDone`]: none of them counts.
    pub async fn batch(&self, inbound: Vec<Inbound>) -> Result<(), NotDone> {
        self.ask(|answer| Job::Batch(inbound, answer)).await
    }

    /// Hands over messages and blocks until they are on disk; not for use inside an async task.
    ///
    /// # Errors
    ///
    /// As [`Window::batch`].
    pub fn batch_blocking(&self, inbound: Vec<Inbound>) -> Result<(), NotDone> {
        self.ask_blocking(|answer| Job::Batch(inbound, answer))
    }

    /// Loads a fleet; `digest` tells its files from others.
    ///
    /// # Errors
    ///
    /// [`NotDone`]: the fleet before stays in force.
    pub async fn load(&self, digest: String, fleet: Fleet) -> Result<(), NotDone> {
        self.ask(|answer| Job::Load {
            digest,
            fleet: Box::new(fleet),
            answer,
        })
        .await
    }

    /// Loads a fleet, blocking.
    ///
    /// # Errors
    ///
    /// As [`Window::load`].
    pub fn load_blocking(&self, digest: String, fleet: Fleet) -> Result<(), NotDone> {
        self.ask_blocking(|answer| Job::Load {
            digest,
            fleet: Box::new(fleet),
            answer,
        })
    }

    /// Invites somebody; returns the code to give them.
    ///
    /// # Errors
    ///
    /// [`NotDone`]: nobody is invited.
    pub async fn invite(&self, invite: Invite) -> Result<Invited, NotDone> {
        self.ask(|answer| Job::Invite(invite, answer)).await
    }

    /// Invites somebody, blocking.
    ///
    /// # Errors
    ///
    /// As [`Window::invite`].
    pub fn invite_blocking(&self, invite: Invite) -> Result<Invited, NotDone> {
        self.ask_blocking(|answer| Job::Invite(invite, answer))
    }

    /// Tells what the bot is called on the chat network, for links into the chat.
    pub fn named(&self, bot: &str) {
        self.tell(Job::Named(bot.to_owned()));
    }

    /// Takes out texts, but for those that an incident holds.
    ///
    /// # Errors
    ///
    /// [`NotDone::Later`] where the wish is written down and some or all texts are still there.
    pub async fn forget(&self, what: Forget) -> Result<Forgotten, NotDone> {
        self.ask(|answer| Job::Forget(Some(what), answer)).await
    }

    /// Takes out texts, blocking.
    ///
    /// # Errors
    ///
    /// As [`Window::forget`].
    pub fn forget_blocking(&self, what: Forget) -> Result<Forgotten, NotDone> {
        self.ask_blocking(|answer| Job::Forget(Some(what), answer))
    }

    /// Takes out the texts that are older than the fleet keeps, once a day at most and in the small hours; ask often.
    ///
    /// # Errors
    ///
    /// As [`Window::forget`].
    pub async fn retain(&self) -> Result<Forgotten, NotDone> {
        self.ask(|answer| Job::Forget(None, answer)).await
    }

    /// Returns how things stand: `turns`, `fleet_digest`, `crew`, `trailers`, `waiting`, `unreachable`, `logging`,
    /// and `bot`, its name on the chat network.
    ///
    /// # Errors
    ///
    /// [`NotDone::Gone`].
    pub async fn show(&self) -> Result<Value, NotDone> {
        self.ask(Job::Show).await
    }

    /// Returns how things stand in numbers.
    ///
    /// # Errors
    ///
    /// [`NotDone::Gone`].
    pub async fn standing(&self) -> Result<Standing, NotDone> {
        self.ask(Job::Standing).await
    }

    /// Returns the next instant at which there is something to do, blocking.
    ///
    /// # Errors
    ///
    /// [`NotDone::Gone`].
    pub fn next_due_blocking(&self) -> Result<Option<DateTime<Utc>>, NotDone> {
        self.ask_blocking(Job::NextDue)
    }

    /// Returns how things stand, blocking.
    ///
    /// # Errors
    ///
    /// [`NotDone::Gone`].
    pub fn show_blocking(&self) -> Result<Value, NotDone> {
        self.ask_blocking(Job::Show)
    }

    /// Returns the fleet in force, blocking; none before any was loaded.
    ///
    /// # Errors
    ///
    /// [`NotDone::Gone`].
    pub fn fleet_blocking(&self) -> Result<Option<Arc<Fleet>>, NotDone> {
        self.ask_blocking(Job::Fleet)
    }

    /// Tells that the network accepted one part of a message, under its number `message`.
    pub fn sent(&self, id: ParcelId, part: u32, of: u32, message: i64) {
        self.tell(Job::Sent {
            id,
            part,
            of,
            message,
        });
    }

    /// Tells that a message will not be sent.
    pub fn given_up(&self, id: ParcelId, why: GivenUp) {
        self.tell(Job::GivenUp { id, why });
    }

    /// Hands over a picture that was fetched, or tells why it cannot be.
    pub fn photo(&self, key: &str, fetched: Result<Vec<u8>, PhotoLost>) {
        self.tell(Job::Photo {
            key: key.to_owned(),
            fetched,
        });
    }

    /// Tells that a group has a new number.
    pub fn moved(&self, from: i64, to: i64) {
        self.tell(Job::Moved { from, to });
    }

    fn tell(&self, job: Job) {
        // a clerk that has ended finds the message in its outbox when it begins again
        let _ = self.jobs.send(job);
    }

    async fn ask<R>(&self, job: impl FnOnce(Answer<R>) -> Job) -> Result<R, NotDone> {
        let (answer, told) = oneshot::channel();
        self.jobs.send(job(answer)).map_err(|_| NotDone::Gone)?;
        told.await.unwrap_or(Err(NotDone::Gone))
    }

    fn ask_blocking<R>(&self, job: impl FnOnce(Answer<R>) -> Job) -> Result<R, NotDone> {
        let (answer, told) = oneshot::channel();
        self.jobs.send(job(answer)).map_err(|_| NotDone::Gone)?;
        told.blocking_recv().unwrap_or(Err(NotDone::Gone))
    }
}
