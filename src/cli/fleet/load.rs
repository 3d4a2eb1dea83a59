//! `hosebib fleet load`: into the bot that runs on a data directory, or into the store itself where none does.

use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

use serde_json::Value;

use super::super::CliError;
use super::super::data;
use super::super::load::{self, Loaded};
use super::{checked, files, summary};
use crate::chat::socket::{self, Request};

pub(super) fn run(dir: &Path, data: &Path) -> Result<ExitCode, CliError> {
    let mut out = std::io::stdout().lock();
    let files = files(dir)?;
    let digest = load::digest(&files);
    let fleet = checked(dir, &files, &mut out)?;
    let holds = summary(&fleet);
    let loaded = Loaded { digest, fleet };
    let data_shown = data.display();
    match ask(data, &Request::Show)? {
        Some(standing) if standing["fleet_digest"] == loaded.digest.as_str() => same(&mut out)?,
        Some(_) => {
            let request = Request::Load {
                digest: loaded.digest,
                fleet: Box::new(loaded.fleet),
            };
            if ask(data, &request)?.is_none() {
                let what = format!(
                    "the bot on `{data_shown}` stopped before it had the fleet: load it again"
                );
                return Err(CliError::Failed(what));
            }
            writeln!(out, "loaded into the running bot: {holds}")?;
        }
        None => {
            let clerk = data::clerk(data)?;
            let window = clerk.window();
            let standing = window.show_blocking().map_err(data::not_done)?;
            if standing["fleet_digest"] == loaded.digest.as_str() {
                same(&mut out)?;
            } else {
                data::bring_up(&window, Some(loaded))?;
                writeln!(out, "loaded into `{data_shown}`: {holds}")?;
            }
            clerk.stop().map_err(data::not_done)?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn same(out: &mut dyn Write) -> Result<(), CliError> {
    writeln!(out, "nothing to do: these files are those of the last load")?;
    Ok(())
}

fn ask(data: &Path, request: &Request) -> Result<Option<Value>, CliError> {
    socket::ask(data, request).map_err(CliError::Failed)
}
