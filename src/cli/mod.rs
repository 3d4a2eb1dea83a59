//! The command line: arguments, settings, the clock, and the wiring of everything else.
//!
//! This is the one place that prints, reads the clock and the environment, and decides exit codes: 0 for done, 1 for a
//! failure or a bad item in the input, 2 for wrong usage.

mod backup;
mod beside;
mod bot;
mod chat;
mod clock;
mod data;
mod doctor;
mod error;
mod export;
mod fleet;
mod forget;
mod input;
mod invite;
mod load;
mod progress;
mod read;
mod replay;
mod review;
mod serve;
mod shown;
mod stickers;
mod sum;
mod verify;

use std::process::ExitCode;

use clap::{Parser, Subcommand};

pub use error::CliError;

/// A second pair of eyes for restroom-trailer crews.
#[derive(Debug, Parser)]
#[command(name = "hosebib", version, about, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Read messages from standard input and print what each means, one JSON object a line
    Read(read::Args),
    /// Compute quantities: one JSON question a line in, one answer a line out
    Sum(sum::Args),
    /// Check, load or show a fleet
    Fleet(fleet::Args),
    /// Play timed messages through the desk and print what was said
    Replay(replay::Args),
    /// Chat on this console
    Chat(chat::Args),
    /// Serve the crews on the chat network
    Serve(serve::Args),
    /// Walk a data directory and check every record
    Verify(verify::Args),
    /// List what crews wrote that was not understood, grouped, newest first
    Review(review::Args),
    /// Print check-ins, tasks or pump-outs as a table for other programs
    Export(export::Args),
    /// Take out what a person wrote, or what is older than the fleet keeps; readings stay
    Forget(forget::Args),
    /// Make a one-use invite, as for the first dispatcher, also while a bot runs
    Invite(invite::Args),
    /// Draw a sticker for each trailer, to print: its code opens the chat with that trailer set
    Stickers(stickers::Args),
    /// Check what a bot needs: disk, store, fleet, token, clock, network; each fault with its remedy
    Doctor(doctor::Args),
    /// Copy a data directory, also while a bot runs on it, and verify the copy
    Backup(backup::BackUp),
    /// Make a data directory from a backup, and verify it
    Restore(backup::Restore),
}

/// Runs the command line and returns its exit code.
pub fn main() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => error.exit(),
    };
    let outcome = match arguments.command {
        Command::Read(args) => read::run(&args),
        Command::Sum(args) => sum::run(&args),
        Command::Fleet(args) => fleet::run(&args),
        Command::Replay(args) => replay::run(&args),
        Command::Chat(args) => chat::run(&args),
        Command::Serve(args) => serve::run(&args),
        Command::Verify(args) => verify::run(&args),
        Command::Review(args) => review::run(&args),
        Command::Export(args) => export::run(&args),
        Command::Forget(args) => forget::run(&args),
        Command::Invite(args) => invite::run(&args),
        Command::Stickers(args) => stickers::run(&args),
        Command::Doctor(args) => doctor::run(&args),
        Command::Backup(args) => backup::back_up(&args),
        Command::Restore(args) => backup::restore(&args),
    };
    match outcome {
        Ok(code) => code,
        Err(error) => error.report(),
    }
}
