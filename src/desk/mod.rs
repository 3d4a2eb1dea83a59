//! The desk: one turn, from a message to what it changes and what is answered. The core's only entrance.
//!
//! [`Desk::receive`] and [`Desk::tick`] change nothing: they return a [`Turn`] of records and outgoing messages. Whoever
//! owns the desk writes the records down and only then hands them to [`Desk::apply`]. The desk holds no clock and does no
//! I/O; the same records always give the same desk.

mod ahead;
mod aid;
mod alarm;
mod answer;
mod assign;
mod choices;
mod command;
mod crew;
mod days;
mod digest;
mod door;
mod errand;
mod gallons;
mod hazard;
mod held;
mod holder;
mod inbound;
mod incident;
mod joined;
mod lone;
mod on_road;
mod orders;
mod others;
mod photo;
mod phrases;
mod place;
mod receive;
mod relay;
mod repeat;
mod settle;
mod silent;
mod sites;
mod situate;
mod standing;
mod sum;
mod tasks;
mod teach;
mod tick;
mod truck;
mod walk;
mod watch;
mod when;
mod withdrawn;
mod worry;

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::{DateTime, Utc};

pub use door::sticker_code;
pub use inbound::{Body, Choice, Inbound, Outgoing, Photo, Place, Press, Sender, Turn};

use self::tick::Agenda;
use crate::book::{Book, Record};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::Language;
use crate::reply::{Replies, Voice};
use crate::words::{Reader, TaughtWord};

/// The desk: what is known, and the means to read and to answer.
#[derive(Clone)]
pub struct Desk {
    book: Book,
    agenda: Agenda,
    reader: Reader,
    words: Vec<TaughtWord>,
    /// Names of sites that the reader passes over.
    places: Vec<String>,
    replies: Replies,
    answers: &'static walk::Answers,
    values: &'static walk::Values,
    phrases: &'static phrases::Phrases,
    questions: &'static answer::Questions,
    why_words: &'static answer::WhyWords,
    sum_words: &'static sum::SumWords,
    means: Means,
}

/// What a turn may need that the core has not got: chance, and the bot's name. It is lent before the turn and is no part
/// of what is known.
#[derive(Clone, Default)]
pub struct Means {
    /// Bytes that nobody can guess, used for one turn only; without them nobody is invited.
    pub chance: Option<[u8; 16]>,
    /// The bot's name on the chat network, for links into the chat.
    pub bot: Option<String>,
    /// Who cannot be written to there, by crew id, and since when.
    pub unreachable: BTreeMap<String, DateTime<Utc>>,
}

impl Default for Desk {
    fn default() -> Self {
        Desk::new(Book::default())
    }
}

impl Desk {
    /// Sets up a desk over a book.
    pub fn new(book: Book) -> Self {
        let mut desk = Desk {
            agenda: Agenda::of(&book),
            book,
            reader: Reader::new(),
            words: Vec::new(),
            places: Vec::new(),
            replies: Replies::new(),
            answers: walk::Answers::built_in(),
            values: walk::Values::built_in(),
            phrases: phrases::Phrases::built_in(),
            questions: answer::Questions::built_in(),
            means: Means::default(),
            why_words: answer::WhyWords::built_in(),
            sum_words: sum::SumWords::built_in(),
        };
        desk.learn_words();
        desk
    }

    /// Lends what the next turn may need from outside.
    pub fn lend(&mut self, means: Means) {
        self.means = means;
    }

    /// Returns what is known.
    pub fn book(&self) -> &Book {
        &self.book
    }

    /// Returns the reader, which knows the company's own words.
    pub fn reader(&self) -> &Reader {
        &self.reader
    }

    /// Works through one message and says what follows, without changing anything.
    pub fn receive(&self, inbound: &Inbound) -> Turn {
        let mut turn = receive::receive(self, inbound);
        choices::seal(self, &mut turn, inbound.received);
        turn
    }

    /// Makes the turn that invites somebody from the command line, and returns the code to give them.
    ///
    /// # Errors
    ///
    /// Says why nobody is invited, and what to do.
    pub fn invite(
        &self,
        at: DateTime<Utc>,
        role: Role,
        name: &str,
        language: Language,
    ) -> Result<(Turn, String), String> {
        crew::invite_from_outside(self, at, role, name, language)
    }

    /// Takes in the records of a turn that was written down.
    pub fn apply(&mut self, records: &[Record]) {
        for record in records {
            self.agenda.apply(&mut self.book, record);
        }
        let own_words = |record: &Record| {
            matches!(
                record,
                Record::Fleet { .. } | Record::Taught { .. } | Record::Untaught { .. }
            )
        };
        if records.iter().any(own_words) {
            self.learn_words();
        }
    }

    /// Returns the next instant at which the desk has something to do by itself.
    pub fn next_due(&self) -> Option<DateTime<Utc>> {
        tick::next_due(self)
    }

    /// Works through what is due by `now`, without changing anything.
    pub fn tick(&self, now: DateTime<Utc>) -> Turn {
        let mut turn = tick::tick(self, now);
        choices::seal(self, &mut turn, now);
        turn
    }

    /// Makes the turn that loads a fleet.
    pub fn load(&self, at: DateTime<Utc>, digest: &str, fleet: Fleet) -> Turn {
        let record = Record::Fleet {
            at,
            digest: digest.to_owned(),
            fleet: Box::new(fleet),
        };
        Turn {
            at,
            records: vec![record],
            ..Turn::empty(at)
        }
    }

    /// Makes the reader know the company's own words, those in force now.
    fn learn_words(&mut self) {
        let words = teach::in_force(&self.book);
        let sites = self.book.fleet().map(|fleet| &fleet.sites);
        let sites = sites.into_iter().flat_map(|sites| sites.values());
        let named = sites.flat_map(|site| [site.name.as_str(), site.id.as_str()]);
        let places = Reader::misleading_places(named);
        // compiling the vocabulary takes as long as reading hundreds of messages
        if words != self.words || places != self.places {
            self.reader = Reader::with_words(&words).with_places(&places);
            self.words = words;
            self.places = places;
        }
    }

    /// Returns the fleet in force at `at`; an empty one before any was loaded.
    pub(crate) fn fleet_at(&self, at: DateTime<Utc>) -> Arc<Fleet> {
        self.book.fleet_at(at).cloned().unwrap_or_default()
    }

    /// Finds who a sender is: a crew id as such, a chat user by the number the crew file gives.
    pub fn crew_of(&self, sender: &Sender) -> Option<CrewMember> {
        let fleet = self.book.fleet()?;
        match sender {
            Sender::Crew(id) => fleet.crew.get(id).cloned(),
            Sender::ChatUser(user) => fleet
                .crew
                .values()
                .find(|member| member.chat_user == Some(*user))
                .cloned(),
        }
    }

    /// Returns the voice a person is answered in: the crew file's language, else the one they write in, else the fleet's.
    pub(crate) fn voice_for<'a>(
        &'a self,
        member: &CrewMember,
        written: Option<Language>,
        fleet: &'a Fleet,
        now: DateTime<Utc>,
    ) -> Voice<'a> {
        let known = self.book.talk(&member.id).and_then(|talk| talk.language);
        let language = member
            .language
            .or(written)
            .or(known)
            .unwrap_or(fleet.language);
        self.replies
            .voice(language, fleet.style, fleet.time_zone, now)
            .naming(fleet)
    }
}
