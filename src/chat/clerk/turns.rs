//! What the clerk asks of the desk, so that the clerk can be tried with a desk that fails on purpose.

use std::sync::Arc;

use chrono::{DateTime, Utc};

use crate::book::{Book, Hold, Record};
use crate::desk::{Desk, Inbound, Means, Sender, Turn};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::Language;

/// Works through messages and instants; the desk, or a stand-in for it.
pub trait Turns: Sized + Send + 'static {
    /// The number of the snapshot's format; a snapshot under any other is not used.
    const FORMAT: u32;

    /// Sets up from a snapshot, or empty.
    ///
    /// # Errors
    ///
    /// Says why the snapshot cannot be read.
    fn restore(snapshot: Option<&[u8]>) -> Result<Self, String>;

    /// Returns a snapshot of everything known.
    fn snapshot(&self) -> Vec<u8>;

    /// Lends what the next turn may need from outside.
    fn lend(&mut self, means: Means);

    /// Works through one message, changing nothing.
    fn receive(&self, inbound: &Inbound) -> Turn;

    /// Takes in what was written down.
    fn apply(&mut self, records: &[Record]);

    /// Returns the next instant at which there is something to do.
    fn next_due(&self) -> Option<DateTime<Utc>>;

    /// Works through what is due by `now`, changing nothing.
    fn tick(&self, now: DateTime<Utc>) -> Turn;

    /// Makes the turn that loads a fleet.
    fn load(&self, at: DateTime<Utc>, digest: &str, fleet: Fleet) -> Turn;

    /// Makes the turn that invites somebody from the command line, and returns the code to give them.
    ///
    /// # Errors
    ///
    /// Says why nobody is invited, and what to do.
    fn invite(
        &self,
        at: DateTime<Utc>,
        role: Role,
        name: &str,
        language: Language,
    ) -> Result<(Turn, String), String>;

    /// Finds who a sender is; none for a stranger.
    fn crew_of(&self, sender: &Sender) -> Option<CrewMember>;

    /// Returns the fleet in force.
    fn fleet(&self) -> Option<&Arc<Fleet>>;

    /// Returns the digest of the files it came from.
    fn fleet_digest(&self) -> &str;

    /// Returns what incidents hold back from being taken out.
    fn holds(&self) -> Vec<Hold>;

    /// Returns how many tasks are open.
    fn open_tasks(&self) -> usize;
}

impl Turns for Desk {
    const FORMAT: u32 = 4;

    fn restore(snapshot: Option<&[u8]>) -> Result<Self, String> {
        let Some(bytes) = snapshot else {
            return Ok(Desk::default());
        };
        let book: Book = serde_json::from_slice(bytes)
            .map_err(|error| format!("the snapshot cannot be read: {error}"))?;
        Ok(Desk::new(book))
    }

    fn snapshot(&self) -> Vec<u8> {
        serde_json::to_vec(self.book()).expect("the book is plain data")
    }

    fn lend(&mut self, means: Means) {
        Desk::lend(self, means);
    }

    fn receive(&self, inbound: &Inbound) -> Turn {
        Desk::receive(self, inbound)
    }

    fn apply(&mut self, records: &[Record]) {
        Desk::apply(self, records);
    }

    fn next_due(&self) -> Option<DateTime<Utc>> {
        Desk::next_due(self)
    }

    fn tick(&self, now: DateTime<Utc>) -> Turn {
        Desk::tick(self, now)
    }

    fn load(&self, at: DateTime<Utc>, digest: &str, fleet: Fleet) -> Turn {
        Desk::load(self, at, digest, fleet)
    }

    fn invite(
        &self,
        at: DateTime<Utc>,
        role: Role,
        name: &str,
        language: Language,
    ) -> Result<(Turn, String), String> {
        Desk::invite(self, at, role, name, language)
    }

    fn crew_of(&self, sender: &Sender) -> Option<CrewMember> {
        Desk::crew_of(self, sender)
    }

    fn fleet(&self) -> Option<&Arc<Fleet>> {
        self.book().fleet()
    }

    fn fleet_digest(&self) -> &str {
        self.book().fleet_digest()
    }

    fn holds(&self) -> Vec<Hold> {
        self.book().incidents().holds().cloned().collect()
    }

    fn open_tasks(&self) -> usize {
        self.book().tasks().open().count()
    }
}
