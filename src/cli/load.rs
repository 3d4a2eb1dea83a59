//! A fleet's files on their way to the clerk.

use std::path::Path;

use super::CliError;
use super::fleet;
use crate::fleet::{Fleet, FleetFile, FleetFiles};
use crate::store::Hash;

/// A fleet that was read without a problem, and what tells its files from others.
pub(super) struct Loaded {
    pub(super) digest: String,
    pub(super) fleet: Fleet,
}

/// Reads the fleet in a folder; every problem becomes one line of the error.
///
/// # Errors
///
/// Files that cannot be read, or every problem in them.
pub(super) fn read(dir: &Path) -> Result<Loaded, CliError> {
    let files = fleet::files(dir)?;
    let digest = digest(&files);
    let fleet = crate::fleet::read(&files).map_err(|problems| {
        let lines: Vec<String> = problems.iter().map(ToString::to_string).collect();
        CliError::Failed(format!(
            "the fleet in `{}` is not loaded until all of this is mended:\n{}",
            dir.display(),
            lines.join("\n")
        ))
    })?;
    Ok(Loaded { digest, fleet })
}

/// Returns the demo fleet, which is compiled in.
pub(super) fn demo() -> Loaded {
    Loaded {
        digest: digest(&crate::fleet::demo::files()),
        fleet: crate::fleet::demo::fleet(),
    }
}

/// Returns what tells a fleet's files from others: the hash of their texts, each behind its length.
pub(super) fn digest(files: &FleetFiles) -> String {
    let mut bytes = Vec::new();
    for file in FleetFile::ALL {
        let text = files.text(file);
        bytes.extend((text.len() as u64).to_be_bytes());
        bytes.extend(text.as_bytes());
    }
    Hash::of(&[&bytes]).to_string()
}
