//! Tests of the edges: the store, the command line, the chat network, the README.

#![allow(clippy::unwrap_used, clippy::print_stdout, clippy::print_stderr)]

mod clerk;
mod cli;
mod fleet_files;
mod kill;
mod readme;
mod small_fleet;
mod store;
mod telegram;
