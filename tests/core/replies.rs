//! The replies: both languages complete and plain, whole replies as they are sent.

mod compose;
mod files;
mod plain;
mod texts;
