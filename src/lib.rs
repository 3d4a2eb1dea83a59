//! hosebib reads what the crews of a restroom-trailer company text in, checks it against each unit's limits and the
//! site, answers with actions and cautions, and remembers.
//!
//! Modules stand in the order of the work: a message becomes [`heard::Heard`] in [`words`], the [`desk`] settles whom it
//! is about and asks [`rules`] what follows, [`reply`] puts that into words, and [`store`] keeps it. A module names only
//! modules above it in this list; everything from [`quantity`] to [`desk`] is free of I/O, clocks and chance.

#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod quantity;

pub mod heard;

pub mod finding;

pub mod words;

pub mod fleet;

pub mod physics;

pub mod dialogue;

pub mod book;

pub mod outlook;

pub mod situation;

pub mod rules;

pub mod reply;

pub mod desk;

pub mod store;

#[cfg(all(feature = "store", feature = "telegram"))]
pub mod chat;

#[cfg(feature = "cli")]
pub mod cli;
