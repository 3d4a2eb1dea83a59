//! The replies: both languages complete and plain, whole replies as they are sent.

mod compose;
mod digest;
mod files;
mod plain;
mod said;
mod sample;
mod texts;
mod wording;
