//! Findings, records and questions put into words, in the reader's language.
//!
//! The desk decides what to say; this module says it. Every text stands in `grammar/replies/{en,es}.ftl` (Fluent), a
//! key a text; code only picks keys, prints numbers and times, and puts lines in order. Numbers are printed before they
//! go in, since their units are the fleet's choice and not the language's. What people wrote is data: it is quoted,
//! shortened and cleaned of control characters.

mod answer;
mod catalogue;
mod digest;
mod findings;
mod forecast;
mod log;
mod questions;
mod remarks;
mod status;
mod tasks;
mod voice;

pub use answer::{Answer, Context, Logged};
pub use catalogue::Replies;
pub use digest::{DayJob, Digest, DigestRow, DigestTail, Foreseen, look_ahead};
pub use status::{Past, Status};
pub use tasks::{HAS_LEFT, NO_NEED, TAKEN_BACK, TaskNote, TaskTurn};
pub use voice::{Arg, Voice};
