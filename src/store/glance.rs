//! A quick look at a data directory, without a lock and without changing anything.

use std::fs;
use std::path::Path;

use super::directory::{self, Held};
use super::error::StoreError;
use super::journal::Head;
use super::segment;
use super::tail::OpenSegment;

/// What a quick look found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Glance {
    /// How many segments there are.
    pub segments: usize,
    /// The last turn.
    pub turns: u64,
}

/// Checks every closed segment's seal and length and every line of the open one: what opening would check. A torn last
/// line is no damage.
///
/// # Errors
///
/// The sentence that says why the directory would not open, but for being held.
pub fn glance(dir: &Path) -> Result<Glance, StoreError> {
    directory::look(dir)?;
    let folder = segment::folder(dir);
    let firsts = segment::list(&folder)?;
    let seals = segment::check_seals(&folder, &firsts)?;
    let before = seals.last().map_or(Head::EMPTY, |seal| Head {
        seq: seal.last,
        hash: seal.hash,
    });
    let turns = match firsts.last() {
        Some(&first) if seals.len() < firsts.len() => {
            let path = segment::path(&folder, first);
            OpenSegment::read(&path, first, before, first)?.head.seq
        }
        _ => before.seq,
    };
    Ok(Glance {
        segments: firsts.len(),
        turns,
    })
}

/// Counts the turns a data directory holds, from its last segment alone and without checking any.
///
/// # Errors
///
/// As [`super::read_only`].
pub fn turns(dir: &Path) -> Result<u64, StoreError> {
    directory::look(dir)?;
    let folder = segment::folder(dir);
    let Some(&first) = segment::list(&folder)?.last() else {
        return Ok(0);
    };
    let path = segment::path(&folder, first);
    let bytes = fs::read(&path).map_err(StoreError::io("read", &path))?;
    let lines = bytes
        .split_inclusive(|&byte| byte == b'\n')
        .filter(|line| line.ends_with(b"\n") && !segment::Seal::opens(line));
    Ok(first - 1 + lines.count() as u64)
}

/// Tells whether another process holds a data directory, and which.
///
/// # Errors
///
/// Why it cannot be told.
pub fn holder(dir: &Path) -> Result<Option<StoreError>, StoreError> {
    directory::look(dir)?;
    match Held::take(dir) {
        Ok(_) => Ok(None),
        Err(held @ StoreError::Held { .. }) => Ok(Some(held)),
        Err(error) => Err(error),
    }
}
