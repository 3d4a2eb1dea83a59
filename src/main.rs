//! The `hosebib` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    hosebib::cli::main()
}
