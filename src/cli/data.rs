//! What commands that run a desk share: the fleet's files, the data directory, and salts.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::CliError;
use super::load::Loaded;
use crate::chat::clerk::{Clerk, NotDone, SNAPSHOT_EVERY, Setup, Window};
use crate::chat::metrics::Metrics;
use crate::desk::Desk;
use crate::fleet::Fleet;
use crate::store::{Files, Salt};

/// Opens a data directory for a change from the command line; what waits to be sent goes on waiting.
///
/// # Errors
///
/// Why it cannot be opened, and what to do.
pub(super) fn clerk(dir: &Path) -> Result<Clerk, CliError> {
    let setup = Setup {
        salt: Box::new(Random),
        clock: Box::new(super::clock::now),
        deliver: Box::new(|_| {}),
        comes_again: true,
        disk: Box::new(Files),
        snapshot_every: SNAPSHOT_EVERY,
        metrics: Metrics::default(),
    };
    let (clerk, notes) =
        Clerk::open::<Desk>(dir, setup).map_err(|error| CliError::Failed(error.to_string()))?;
    let mut err = std::io::stderr().lock();
    for note in notes {
        writeln!(err, "hosebib: {note}")?;
    }
    Ok(clerk)
}

/// Puts into a sentence what the clerk did not do.
pub(super) fn not_done(error: NotDone) -> CliError {
    CliError::Failed(error.to_string())
}

/// Loads a fleet into a clerk if its files differ from the last load, and returns the fleet in force.
///
/// # Errors
///
/// That there is no fleet, or that it could not be written down.
pub(super) fn bring_up(window: &Window, loaded: Option<Loaded>) -> Result<Arc<Fleet>, CliError> {
    let failed = |error: NotDone| CliError::Failed(format!("the fleet was not loaded: {error}"));
    if let Some(loaded) = loaded {
        let standing = window.show_blocking().map_err(failed)?;
        if standing["fleet_digest"] != loaded.digest.as_str() {
            window
                .load_blocking(loaded.digest, loaded.fleet)
                .map_err(failed)?;
        }
    }
    let none = || CliError::Failed("no fleet was ever loaded here: give `--fleet DIR` once".into());
    window.fleet_blocking().map_err(failed)?.ok_or_else(none)
}

/// A data directory: the one named, or a temporary one that stays for a look after the chat.
pub(super) struct Folder {
    path: PathBuf,
}

impl Folder {
    /// Makes sure that the folder is there.
    ///
    /// # Errors
    ///
    /// That it cannot be made.
    pub(super) fn open(named: Option<&Path>) -> Result<Self, CliError> {
        let path = match named {
            Some(path) => path.to_owned(),
            None => std::env::temp_dir().join(format!(
                "hosebib-{}-{}",
                std::process::id(),
                super::clock::now().timestamp_micros()
            )),
        };
        std::fs::create_dir_all(&path).map_err(|error| {
            CliError::Failed(format!(
                "`{}` cannot be made: {error}. Name another folder with `--data`",
                path.display()
            ))
        })?;
        Ok(Folder { path })
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }
}

/// Salts from the system's random numbers.
pub(super) struct Random;

impl Salt for Random {
    fn salt(&mut self) -> [u8; 16] {
        let mut bytes = [0; 16];
        getrandom::fill(&mut bytes).expect("the system gives random numbers");
        bytes
    }
}
