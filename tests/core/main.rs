//! Tests of everything that does no I/O. They run without any feature: `cargo test --no-default-features`.
#![allow(clippy::unwrap_used, clippy::print_stdout, clippy::print_stderr)] // a test that fails may say so as it likes

mod conversations;
mod desks;
mod fleet;
mod forecast;
mod grammar;
mod mangled;
mod physics;
mod reader;
mod replies;
mod rules;
mod scenarios;
mod speak;
mod tidy;
mod walks;
