//! The token, and what the chat network says.

use std::os::unix::fs::PermissionsExt;
use std::path::Path;

use chrono::TimeDelta;

use super::super::{bot, clock};
use super::{Args, CliError, Report};
use crate::chat::socket::{self, Request};
use crate::chat::telegram::checkup::{self, Identity};
use crate::chat::telegram::{Api, Refusal, Token};

/// A clock further off than this needs mending: late words would be put in the wrong place.
const FAR_OFF_S: i64 = 60;
/// Closer than this is as good as right, given whole seconds and the way there and back.
const NEAR_S: i64 = 5;

pub(super) fn check(args: &Args, report: &mut Report) -> Result<(), CliError> {
    let Some(token) = token(args.bot.token_file.as_deref(), report)? else {
        return Ok(());
    };
    let api = match args.bot.api(token) {
        Ok(api) => api,
        Err(error) => return report.bad("network", error),
    };
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()?;
    runtime.block_on(ask(args, &api, report))
}

/// Finds the token; none where the network cannot be asked without one.
fn token(file: Option<&Path>, report: &mut Report) -> Result<Option<Token>, CliError> {
    let text = match file {
        Some(file) => match std::fs::read_to_string(file) {
            Ok(text) => text,
            Err(error) => {
                let said = format!(
                    "the token file `{}` cannot be read: {error}: check its path and who may read it",
                    file.display()
                );
                report.bad("token", said)?;
                return Ok(None);
            }
        },
        None => match std::env::var(bot::TOKEN) {
            Ok(text) => text,
            Err(_) => {
                let said = format!(
                    "none given, so the network is not checked: set {} or name a file with `--token-file`",
                    bot::TOKEN
                );
                report.note("token", said)?;
                return Ok(None);
            }
        },
    };
    match Token::parse(&text) {
        Ok(token) => {
            match file.filter(|file| others_may_read(file)) {
                Some(file) => report.note(
                    "token",
                    format!(
                        "looks like one, but others on this machine may read it: `chmod 600 {}`",
                        file.display()
                    ),
                )?,
                None => report.good("token", "looks like one")?,
            }
            Ok(Some(token))
        }
        Err(error) => {
            report.bad("token", error.to_string())?;
            Ok(None)
        }
    }
}

fn others_may_read(file: &Path) -> bool {
    std::fs::metadata(file).is_ok_and(|found| found.permissions().mode() & 0o077 != 0)
}

async fn ask(args: &Args, api: &Api, report: &mut Report) -> Result<(), CliError> {
    let identity = match checkup::identity(api).await {
        Ok(identity) => identity,
        Err(Refusal::Token) => {
            return report.bad(
                "network",
                "it refuses the token: check it against the bot's registration, or have a new one issued there",
            );
        }
        Err(error) => {
            return report.bad(
                "network",
                format!(
                    "{error}: check this machine's way to the internet, a proxy, and `--api-url`"
                ),
            );
        }
    };
    let name = identity.username.as_deref().unwrap_or("without a name");
    report.good("network", format!("it knows the bot as @{name}"))?;
    time(&identity, report)?;
    groups(&identity, report)?;
    others(args, api, report).await
}

fn time(identity: &Identity, report: &mut Report) -> Result<(), CliError> {
    let Some(there) = identity.time else {
        return report.note("clock", "not checked: the server does not tell its time");
    };
    let ahead: TimeDelta = clock::now() - there;
    let seconds = ahead.num_seconds().abs();
    let way = match ahead < TimeDelta::zero() {
        true => "behind",
        false => "ahead of",
    };
    let said = format!("this machine is {seconds} s {way} the network");
    if seconds > FAR_OFF_S {
        report.bad(
            "clock",
            format!("{said}: switch on time synchronisation (`timedatectl set-ntp true`)"),
        )
    } else if seconds > NEAR_S {
        report.note(
            "clock",
            format!("{said}: see that time synchronisation is on"),
        )
    } else {
        report.good("clock", "this machine's and the network's agree")
    }
}

fn groups(identity: &Identity, report: &mut Report) -> Result<(), CliError> {
    if identity.reads_groups {
        return report.good("groups", "the bot sees all that is written in its groups");
    }
    report.note(
        "groups",
        "privacy mode is on: in a group the bot sees only commands, mentions of it and answers to it, so \"12 pressure 95\" \
         written there does not reach it. Private chats are not touched by this. To change it, switch privacy mode off at \
         the bot's registration (`/setprivacy`), then take the bot out of the group and put it back",
    )
}

/// Looks for a webhook and for another program that fetches the same messages.
async fn others(args: &Args, api: &Api, report: &mut Report) -> Result<(), CliError> {
    match checkup::webhook(api).await {
        Ok(webhook) => match webhook.url {
            Some(url) => {
                // what follows the host may be a secret
                let host = url.split('/').nth(2).unwrap_or("somewhere").to_owned();
                return report.bad(
                    "webhook",
                    format!(
                        "one is set (to {host}), so no message can be fetched: call deleteWebhook once with this token"
                    ),
                );
            }
            None => report.good(
                "webhook",
                format!(
                    "none is set; {} messages wait to be fetched",
                    webhook.waiting
                ),
            )?,
        },
        Err(error) => report.bad("webhook", format!("{error}: try again"))?,
    }
    let runs_here = args
        .data
        .as_deref()
        .is_some_and(|dir| matches!(socket::ask(dir, &Request::Show), Ok(Some(_))));
    if runs_here {
        return report.note(
            "second program",
            "not looked for, since the bot that runs here would be disturbed: its own log says so (409)",
        );
    }
    match checkup::look_for_others(api).await {
        Ok(()) => report.good("second program", "no other program fetches this bot's messages"),
        Err(Refusal::Conflict(_)) => report.bad(
            "second program",
            "another program fetches this bot's messages: stop it, or have a new token issued if you do not know it",
        ),
        Err(error) => report.bad("second program", format!("{error}: try again")),
    }
}
