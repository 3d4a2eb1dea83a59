//! The book: everything known, folded from records.
//!
//! A [`Record`] is what was decided in a turn; applying records in order gives the [`Book`], and the same records always
//! give the same book. State about a trailer is folded by the time a thing was written or said to have happened, so a
//! message that arrives two hours late takes its place in the past. Folding applies what was decided: it never reads raw
//! text and never runs a rule again.

mod ahead;
mod apply;
mod incidents;
mod lessons;
mod offers;
mod people;
mod record;
mod refusals;
mod standing;
mod state;
mod tasks;
mod taught;
mod unit;

pub use ahead::{
    Ahead, AheadChange, Alone, Held, HeldOf, Listing, Road, Stand, WasteStand, Weather,
};
pub use apply::{Alarm, Book, HeardFrom, Sent};
pub use incidents::{Hold, Incident, IncidentChange, Incidents};
pub use lessons::{Lesson, Lessons};
pub use offers::{Bears, Offer, Offers, Pressed};
pub use people::{CrewChange, Invite, People, Spent};
pub use record::{AlarmChange, Message, MessageKey, Personal, Record, Report, TaskChange, Unread};
pub use refusals::{Attempt, Refusals};
pub use standing::{ClearedNotes, DoneStep, Override, Standing, StandingNote, TakesBack};
pub use state::{Latest, PowerState, PressureRead, Stage, TankNote, UnitState, WaterState, Word};
pub use tasks::{Task, TaskState, Tasks};
pub use taught::{Taught, TaughtWords};
pub use unit::UnitBook;
