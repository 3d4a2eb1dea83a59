//! What commands that run a desk share: the fleet's files, the data directory, and salts.

use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use super::CliError;
use super::fleet::{files, report};
use crate::chat::clerk::Window;
use crate::fleet::{self, Fleet, FleetFiles, demo};
use crate::store::Salt;

/// A fleet as read from its files, with a digest that tells whether they changed.
pub(super) struct Files {
    pub(super) digest: String,
    pub(super) fleet: Fleet,
}

impl Files {
    /// Reads a fleet from a folder; its problems go to standard error.
    ///
    /// # Errors
    ///
    /// What is wrong with the folder, or how many problems its files have.
    pub(super) fn read(dir: &Path) -> Result<Self, CliError> {
        let texts = files(dir)?;
        let fleet = report(dir, fleet::read(&texts), &mut std::io::stderr())?;
        Ok(Files { digest: digest(&texts), fleet })
    }

    /// Returns the demo fleet.
    pub(super) fn demo() -> Self {
        Files { digest: digest(&demo::files()), fleet: demo::fleet() }
    }
}

/// Returns a digest of a fleet's three files.
pub(super) fn digest(texts: &FleetFiles) -> String {
    let mut hash = Sha256::new();
    for text in [&texts.fleet, &texts.jobs, &texts.crew] {
        hash.update((text.len() as u64).to_be_bytes());
        hash.update(text.as_bytes());
    }
    hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Loads a fleet into a clerk if its files differ from the last load, and returns the fleet in force.
///
/// # Errors
///
/// That there is no fleet, or that it could not be written down.
pub(super) fn bring_up(window: &Window, files: Option<Files>) -> Result<Fleet, CliError> {
    let failed = |error: crate::chat::clerk::NotDone| CliError::Failed(format!("the fleet was not loaded: {error}"));
    let standing = window.show_blocking().map_err(failed)?;
    match files {
        Some(files) => {
            if standing["fleet_digest"] != files.digest.as_str() {
                window.load_blocking(files.digest, files.fleet.clone()).map_err(failed)?;
            }
            Ok(files.fleet)
        }
        None => serde_json::from_value(standing["fleet"].clone())
            .map_err(|_| CliError::Failed("no fleet was ever loaded here: give `--fleet DIR` once".into())),
    }
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
            None => std::env::temp_dir().join(format!("hosebib-{}-{}", std::process::id(), super::clock::now().timestamp_micros())),
        };
        std::fs::create_dir_all(&path)
            .map_err(|error| CliError::Failed(format!("`{}` cannot be made: {error}. Name another folder with `--data`", path.display())))?;
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
