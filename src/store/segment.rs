//! The journal's files: how they are named, and the seal that ends a closed one.
//!
//! A segment is named after its first turn (`000000000001.jsonl`). A closed one ends in a seal, a line that says which
//! turns it holds, how long they are and what the last one's hash is, so that opening can check a closed segment without
//! reading it.

use std::fs::{self, File};
use std::io::{Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::error::StoreError;
use super::hash::Hash;

/// Bytes at the end of a file that are looked through for a seal; a seal is under 400.
const TAIL: u64 = 1024;

/// How a seal's line begins; no turn's line does.
const OPENING: &[u8] = br#"{"seal":"#;

/// The last line of a closed segment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Seal {
    /// The segment's first turn, as in its name.
    pub(super) first: u64,
    /// Its last turn.
    pub(super) last: u64,
    /// The length of its lines in bytes, the seal left out.
    pub(super) length: u64,
    /// The hash of its last line.
    pub(super) hash: Hash,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SealLine {
    seal: Seal,
    check: Hash,
}

impl Seal {
    /// Returns the seal's line, without a newline.
    pub(super) fn bytes(&self) -> Vec<u8> {
        let line = SealLine {
            seal: self.clone(),
            check: self.check(),
        };
        serde_json::to_vec(&line).expect("numbers and hex print as JSON")
    }

    /// Tells whether a line is meant as a seal.
    pub(super) fn opens(bytes: &[u8]) -> bool {
        bytes.starts_with(OPENING)
    }

    /// Reads a seal's line; `None` when it is not exactly as it was written.
    pub(super) fn read(bytes: &[u8]) -> Option<Self> {
        let line: SealLine = serde_json::from_slice(bytes).ok()?;
        (line.check == line.seal.check() && line.seal.bytes() == bytes).then_some(line.seal)
    }

    fn check(&self) -> Hash {
        Hash::of(&[&serde_json::to_vec(self).expect("numbers and hex print as JSON")])
    }
}

/// Returns the folder of a data directory that holds the segments.
pub(super) fn folder(data: &Path) -> PathBuf {
    data.join("journal")
}

/// Returns the path of the segment whose first turn is `first`.
pub(super) fn path(folder: &Path, first: u64) -> PathBuf {
    folder.join(format!("{first:012}.jsonl"))
}

/// Lists the segments' first turns in order; a folder that is missing holds none.
pub(super) fn list(folder: &Path) -> Result<Vec<u64>, StoreError> {
    let entries = match fs::read_dir(folder) {
        Ok(entries) => entries,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(StoreError::io("list", folder)(error)),
    };
    let mut firsts = Vec::new();
    for entry in entries {
        let name = entry.map_err(StoreError::io("list", folder))?.file_name();
        let first: Option<u64> = name
            .to_str()
            .and_then(|name| name.strip_suffix(".jsonl"))
            .filter(|digits| digits.len() >= 12 && digits.bytes().all(|b| b.is_ascii_digit()))
            .and_then(|digits| digits.parse().ok());
        firsts.extend(first);
    }
    firsts.sort_unstable();
    Ok(firsts)
}

/// Returns the path under which a segment is written anew before it takes its place.
pub(super) fn new_path(path: &Path) -> PathBuf {
    path.with_extension("jsonl.new")
}

/// Deletes what a rewriting that was interrupted has left.
pub(super) fn clear_unfinished(folder: &Path) -> Result<(), StoreError> {
    for first in list(folder)? {
        let path = new_path(&path(folder, first));
        match fs::remove_file(&path) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
                return Err(StoreError::io("delete", &path)(error));
            }
            _ => {}
        }
    }
    Ok(())
}

/// Reads the seal at a file's end and holds it against the file's length and name.
///
/// `Ok(None)` when the file does not end in a seal.
pub(super) fn seal_of(folder: &Path, first: u64) -> Result<Option<Seal>, StoreError> {
    let path = path(folder, first);
    let mut file = File::open(&path).map_err(StoreError::io("open", &path))?;
    let length = file
        .seek(SeekFrom::End(0))
        .map_err(StoreError::io("read", &path))?;
    file.seek(SeekFrom::Start(length.saturating_sub(TAIL)))
        .map_err(StoreError::io("read", &path))?;
    let mut tail = Vec::new();
    file.read_to_end(&mut tail)
        .map_err(StoreError::io("read", &path))?;
    let Some(lines) = tail.strip_suffix(b"\n") else {
        return Ok(None);
    };
    let start = lines
        .iter()
        .rposition(|&byte| byte == b'\n')
        .map_or(0, |at| at + 1);
    let line = &lines[start..];
    if !Seal::opens(line) {
        return Ok(None);
    }
    let Some(seal) = Seal::read(line) else {
        return Err(StoreError::damaged(&path, None, "its seal is damaged"));
    };
    if seal.first != first {
        return Err(StoreError::damaged(
            &path,
            None,
            format!("it holds turns from {}, not from {first}", seal.first),
        ));
    }
    let sealed = seal.length + line.len() as u64 + 1;
    if sealed != length {
        return Err(StoreError::damaged(
            &path,
            None,
            format!("it is {length} bytes long, its seal says {sealed}"),
        ));
    }
    Ok(Some(seal))
}

/// Checks every closed segment's seal and length and that no segment is missing between them; returns the seals.
///
/// The last segment may be open and has no seal then.
pub(super) fn check_seals(folder: &Path, firsts: &[u64]) -> Result<Vec<Seal>, StoreError> {
    let mut seals = Vec::new();
    let mut expected = 1;
    for (index, &first) in firsts.iter().enumerate() {
        let file = path(folder, first);
        if first != expected {
            return Err(StoreError::damaged(
                &file,
                None,
                format!(
                    "turns {expected} to {} before it are missing",
                    first.saturating_sub(1)
                ),
            ));
        }
        match seal_of(folder, first)? {
            Some(seal) => {
                expected = seal.last + 1;
                seals.push(seal);
            }
            None if index + 1 == firsts.len() => {}
            None => {
                return Err(StoreError::damaged(
                    &file,
                    None,
                    "it is closed, but does not end in a seal",
                ));
            }
        }
    }
    Ok(seals)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_flipped_bit_of_a_seal_is_found() {
        let seal = Seal {
            first: 1,
            last: 250,
            length: 90_000,
            hash: Hash::of(&[b"last"]),
        };
        let good = seal.bytes();
        assert_eq!(Seal::read(&good), Some(seal));
        for at in 0..good.len() {
            for bit in 0..8 {
                let mut bad = good.clone();
                bad[at] ^= 1 << bit;
                assert_eq!(Seal::read(&bad), None, "bit {bit} of byte {at}");
            }
        }
    }
}
