//! `hosebib forget`: taking out what a person wrote, or what is older than the fleet keeps.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use chrono::TimeDelta;

use super::shown::counted;
use super::{CliError, beside, clock, data};
use crate::chat::clerk::{Forget, Forgotten};
use crate::chat::socket::{self, Request};

/// Arguments of `hosebib forget`.
#[derive(Debug, clap::Args)]
#[command(group(clap::ArgGroup::new("what").required(true).args(["crew", "older_than"])))]
pub(super) struct Args {
    /// Take out everything that this crew member wrote and was told; readings, events and times stay
    crew: Option<String>,
    /// Take out what anybody wrote and was told so many days ago and earlier; without a number, as the fleet's
    /// keep_texts_days says
    #[arg(long, value_name = "DAYS", num_args = 0..=1, value_parser = clap::value_parser!(u32).range(1..=36_500))]
    older_than: Option<Option<u32>>,
    /// The data directory; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let what = match (&args.crew, args.older_than) {
        (Some(crew), _) => Forget::Person(id_of(&args.data, crew)?),
        (None, days) => {
            let days = match days.flatten() {
                Some(days) => days,
                None => kept(&args.data)?,
            };
            Forget::Before(clock::now() - TimeDelta::days(days.into()))
        }
    };
    let Forgotten { texts, held } = forget(&args.data, &what)?;
    // what was typed into a console chat lies beside the journal; mostly there is none
    let _ = std::fs::remove_file(args.data.join(super::chat::HISTORY));
    let mut out = std::io::stdout();
    let went = counted(texts, "text");
    match &what {
        Forget::Person(who) if texts == 0 && held == 0 => {
            return Err(CliError::Failed(format!(
                "no text of `{who}` is kept in `{}`: check the id against crew.toml",
                args.data.display()
            )));
        }
        Forget::Person(who) => writeln!(
            out,
            "{went} of `{who}` taken out; what they reported stays. Backups made before keep the words.{}",
            still_here(&args.data, who)?
        )?,
        Forget::Before(before) => writeln!(
            out,
            "{went} from before {} taken out. Backups made before keep them.",
            before.format("%Y-%m-%d %H:%MZ")
        )?,
    }
    if held > 0 {
        writeln!(
            out,
            "{} kept, held by an incident: a dispatcher sees them with \"incidents\", and lets them go with \"release incident\". Run this again after that.",
            counted(held, "turn")
        )?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Finds the id of somebody on the crew list by id or name in any case; else what was typed, which may be of somebody who is
/// gone.
fn id_of(dir: &Path, typed: &str) -> Result<String, CliError> {
    let fleet = beside::fleet(dir)?;
    let crew = fleet.as_ref().map(|fleet| &fleet.crew);
    if crew.is_some_and(|crew| crew.contains_key(typed)) {
        return Ok(typed.to_owned());
    }
    let same = |other: &str| other.to_lowercase() == typed.to_lowercase();
    let members = crew.into_iter().flat_map(|crew| crew.values());
    let called: Vec<&str> = members
        .filter(|member| same(&member.id) || same(&member.name))
        .map(|member| member.id.as_str())
        .collect();
    match called[..] {
        [one] => Ok(one.to_owned()),
        [] => Ok(typed.to_owned()),
        _ => Err(CliError::Usage(format!(
            "`{typed}` may be {}: give one of these ids",
            called.join(" or ")
        ))),
    }
}

fn forget(dir: &Path, what: &Forget) -> Result<Forgotten, CliError> {
    let request = match what {
        Forget::Person(crew) => Request::Forget { crew: crew.clone() },
        Forget::Before(before) => Request::ForgetBefore { before: *before },
    };
    if let Some(answer) = socket::ask(dir, &request).map_err(CliError::Failed)? {
        return serde_json::from_value(answer).map_err(|_| {
            CliError::Failed("the running bot is of another release: restart it".into())
        });
    }
    let clerk = data::clerk(dir)?;
    let outcome = clerk.window().forget_blocking(what.clone());
    clerk.stop().map_err(data::not_done)?;
    outcome.map_err(data::not_done)
}

fn kept(dir: &Path) -> Result<u32, CliError> {
    let days = beside::fleet(dir)?.and_then(|fleet| fleet.keep_texts_days);
    days.ok_or_else(|| {
        CliError::Failed(
            "the fleet sets no keep_texts_days, so texts are kept for good: set it in fleet.toml, or give the days after `--older-than`"
                .into(),
        )
    })
}

/// Says that somebody is still on the crew list, where they are: their name and number stay then.
fn still_here(dir: &Path, who: &str) -> Result<&'static str, CliError> {
    let fleet = beside::fleet(dir)?;
    Ok(
        match fleet.is_some_and(|fleet| fleet.crew.contains_key(who)) {
            true => {
                " They are still on the crew list: their name and chat number stay until crew.toml is loaded without them."
            }
            false => "",
        },
    )
}
