//! `hosebib invite`: a one-use invite from the command line, as the first dispatcher needs one.

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use serde_json::Value;

use super::{CliError, data};
use crate::chat::clerk::{Invite, Invited};
use crate::chat::socket::{self, Request};
use crate::fleet::Role;
use crate::heard::Language;

/// Arguments of `hosebib invite`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// What they may do
    #[arg(long, value_parser = role)]
    role: Role,
    /// How they are called; somebody of this name on the crew list comes back by it, or changes phones
    #[arg(long)]
    name: String,
    /// The language they are answered in
    #[arg(long, value_parser = language)]
    language: Language,
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let invite = Invite {
        role: args.role,
        name: args.name.clone(),
        language: args.language,
    };
    let request = Request::Invite {
        invite: invite.clone(),
    };
    let invited = match socket::ask(&args.data, &request).map_err(CliError::Failed)? {
        Some(answer) => read(answer)?,
        None => {
            let clerk = data::clerk(&args.data)?;
            let outcome = clerk.window().invite_blocking(invite);
            clerk.stop().map_err(data::not_done)?;
            outcome.map_err(data::not_done)?
        }
    };
    let mut out = std::io::stdout().lock();
    let code = &invited.code;
    match &invited.bot {
        Some(bot) => writeln!(out, "https://t.me/{bot}?start={code}")?,
        None => writeln!(out, "/start {code}")?,
    }
    let how = match invited.bot {
        Some(_) => "Open this link on their phone and press Start.",
        None => {
            "Send this line to the bot from their phone, or open https://t.me/BOT?start=CODE with the bot's name and the code."
        }
    };
    writeln!(
        std::io::stderr(),
        "{how} It lets in one person, once, within 72 hours; it is shown only now."
    )?;
    Ok(ExitCode::SUCCESS)
}

fn read(answer: Value) -> Result<Invited, CliError> {
    let broken = |_| CliError::Failed("the running bot is of another release: restart it".into());
    serde_json::from_value(answer).map_err(broken)
}

fn role(text: &str) -> Result<Role, String> {
    match text {
        "driver" => Ok(Role::Driver),
        "tech" => Ok(Role::Tech),
        "dispatcher" => Ok(Role::Dispatcher),
        _ => Err("expected driver, tech or dispatcher".into()),
    }
}

fn language(text: &str) -> Result<Language, String> {
    match text {
        "en" => Ok(Language::En),
        "es" => Ok(Language::Es),
        _ => Err("expected en or es".into()),
    }
}
