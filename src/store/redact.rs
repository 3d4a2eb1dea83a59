//! Emptying personal texts in closed segments: each is copied without them, synced and renamed over the old one.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;

use super::error::StoreError;
use super::line::{Flaw, Line, Stored};
use super::segment::{self, Seal};
use super::{Store, recover};

/// Empties what `edit` empties; see [`Store::redact`].
pub(super) fn redact(
    store: &mut Store,
    mut edit: impl FnMut(&mut Line),
) -> Result<usize, StoreError> {
    store.journal.close_segment()?;
    store.follow()?;
    let dir = store.held.path().to_owned();
    let folder = segment::folder(&dir);
    let mut emptied = 0;
    let mut rewritten = false;
    for first in segment::list(&folder)? {
        let path = segment::path(&folder, first);
        let Some(seal) = segment::seal_of(&folder, first)? else {
            continue;
        };
        let (bytes, count) = without_texts(&path, &seal, &mut edit)?;
        if count == 0 {
            continue;
        }
        if !rewritten {
            // Before the first line moves: an index that outlived it would look for lines where they no longer are.
            store.index = None;
            delete_indexes(&dir)?;
            rewritten = true;
        }
        replace(&path, &folder, &bytes)?;
        emptied += count;
    }
    if rewritten {
        recover::rebuild(store, "held personal texts".into())?;
    }
    Ok(emptied)
}

/// Returns a closed segment's bytes without the texts that `edit` empties, and how many those are.
fn without_texts(
    path: &Path,
    seal: &Seal,
    edit: &mut impl FnMut(&mut Line),
) -> Result<(Vec<u8>, usize), StoreError> {
    let bytes = fs::read(path).map_err(StoreError::io("read", path))?;
    let length = usize::try_from(seal.length).unwrap_or(usize::MAX);
    let lines = bytes
        .get(..length)
        .and_then(|lines| lines.strip_suffix(b"\n"))
        .ok_or_else(|| StoreError::damaged(path, None, "its seal does not fit its lines"))?;
    let mut emptied = 0;
    let mut rewritten = Vec::with_capacity(bytes.len());
    for (number, line) in (1..).zip(lines.split(|&byte| byte == b'\n')) {
        let mut stored = Stored::read(line).map_err(|flaw| match flaw {
            Flaw::Damaged(what) => StoreError::damaged(path, Some(number), what),
            Flaw::Newer(found) => StoreError::Newer {
                place: path.to_owned(),
                found,
                known: super::VERSION.into(),
            },
        })?;
        let mut wanted = stored.line();
        edit(&mut wanted);
        emptied += stored.empty(&wanted).map_err(|what| {
            StoreError::Redaction(format!("`{}` line {number}: {what}", path.display()))
        })?;
        rewritten.extend(stored.bytes());
        rewritten.push(b'\n');
    }
    let seal = Seal {
        length: rewritten.len() as u64,
        ..seal.clone()
    };
    rewritten.extend(seal.bytes());
    rewritten.push(b'\n');
    Ok((rewritten, emptied))
}

fn replace(path: &Path, folder: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let new = segment::new_path(path);
    let write = || {
        let mut file = File::create(&new)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&new, path)?;
        File::open(folder)?.sync_all()
    };
    write().map_err(StoreError::io("rewrite", path))
}

/// Deletes the index and those set aside before.
fn delete_indexes(dir: &Path) -> Result<(), StoreError> {
    for entry in fs::read_dir(dir).map_err(StoreError::io("list", dir))? {
        let entry = entry.map_err(StoreError::io("list", dir))?;
        let name = entry.file_name();
        let name = name.to_string_lossy();
        if name == "index" || name.starts_with("index.damaged-") {
            let path = entry.path();
            fs::remove_dir_all(&path).map_err(StoreError::io("delete", &path))?;
        }
    }
    Ok(())
}
