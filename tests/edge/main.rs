//! Tests of the edges: the store, the command line, the chat network, the README.

mod cli;
mod fleet_files;
mod kill;
mod readme;
mod store;
mod telegram;
