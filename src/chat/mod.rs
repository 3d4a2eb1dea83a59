//! The live service: one clerk who owns what is known and what is on disk, and the transports that bring messages to it
//! and take replies away.
//!
//! A message is worked through, written down and really on disk before its network is told that it arrived; replies go
//! out after that, from an outbox that outlives the process.

pub mod clerk;
pub mod metrics;
mod phrases;
#[cfg(unix)]
pub mod socket;
pub mod telegram;
