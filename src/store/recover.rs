//! Bringing index and journal together: at opening, after each batch, and whenever the index turns out to be unusable.

use std::fs;
use std::path::{Path, PathBuf};

use super::closed;
use super::directory::Held;
use super::error::StoreError;
use super::index::{Index, IndexError, Indexed, MemoryIndex, Snapshot};
use super::journal::{Head, Journal, Position};
use super::line::Line;
use super::note::Note;
use super::reader::Lines;
use super::redact;
use super::segment;
use super::{BATCH, CHECKED_A_TIME, CHECKED_AT_OPEN, Entries, IndexKind, Opened, Setup, Store};

/// Opens a data directory; see [`Store::open`].
pub(super) fn open(dir: &Path, setup: Setup) -> Result<(Store, Opened), StoreError> {
    let held = Held::take(dir)?;
    redact::settle(dir)?;
    let mut notes = Vec::new();
    let existed = index_path(dir).exists();
    let mark = closed::take(dir)?;
    let (mut index, state) = match open_index(setup.index, &index_path(dir)) {
        Ok((index, state)) => match mark.and_then(|mark| mark.misfit(state.last.seq)) {
            Some(why) if existed && setup.index != IndexKind::Memory => (None, Err(why)),
            _ => (Some(index), Ok(state)),
        },
        Err(IndexError::Damaged(why)) => (None, Err(why)),
        Err(IndexError::Disk(why)) => return Err(StoreError::Index(why)),
    };
    let from = state.as_ref().map_or(0, State::settled) + 1;
    let journal = Journal::open(dir, setup.disk, setup.segment_bytes, from, &mut notes)?;
    let usable = match &state {
        Ok(state) => fits(dir, journal.head(), state)?,
        Err(why) => Err(why.clone()),
    };
    let head = journal.head();
    let usable = match (usable, &mut index) {
        (Ok(()), Some(index)) => {
            let new = index.last().is_ok_and(|last| last.seq == 0);
            if new && head.seq > 0 && setup.index != IndexKind::Memory {
                Err(if existed { "was empty" } else { "was missing" }.to_owned())
            } else {
                Ok(())
            }
        }
        (usable, _) => usable,
    };
    let mut store = Store {
        held,
        journal,
        kind: setup.index,
        index,
        entries: setup.entries,
        salt: setup.salt,
        snapshot_format: setup.snapshot_format,
        pending: Default::default(),
        pending_keys: Default::default(),
    };
    match usable {
        Ok(()) => {
            let caught_up = catch_up(&mut store)?;
            if let Err(why) = caught_up {
                notes.push(rebuild(&mut store, why)?);
            }
        }
        Err(why) => notes.push(rebuild(&mut store, why)?),
    }
    let opened = hand_over(&mut store, notes)?;
    Ok((store, opened))
}

/// Applies what is pending; see [`Store::follow`].
pub(super) fn follow(store: &mut Store) -> Result<Vec<Note>, StoreError> {
    let mut notes = reopen(store)?;
    let mut mended = false;
    let certain = store.journal.synced().seq;
    while let Some(index) = &mut store.index {
        let batch: Vec<Indexed> = store
            .pending
            .iter()
            .take(BATCH)
            .take_while(|(line, _)| line.seq <= certain)
            .map(|(line, position)| indexed(line, *position, &store.entries))
            .collect();
        let outcome = if batch.is_empty() {
            index.check(CHECKED_A_TIME)
        } else {
            index.apply(&batch)
        };
        match outcome {
            Ok(()) if batch.is_empty() => break,
            Ok(()) => forget_pending(store, batch.len()),
            Err(error) if mended => {
                store.index = None;
                return Err(StoreError::Index(error.to_string()));
            }
            Err(error) => {
                notes.extend(mend(store, error)?);
                mended = true;
            }
        }
    }
    Ok(notes)
}

/// Asks the index; where it turns out to be damaged, rebuilds it and asks once more.
pub(super) fn ask<T>(
    store: &mut Store,
    mut question: impl FnMut(&mut dyn Index) -> Result<T, IndexError>,
) -> Result<T, StoreError> {
    reopen(store)?;
    for last_try in [false, true] {
        let Some(index) = &mut store.index else { break };
        match question(index.as_mut()) {
            Ok(answer) => return Ok(answer),
            Err(error) if last_try => return Err(StoreError::Index(error.to_string())),
            Err(error) => {
                mend(store, error)?;
            }
        }
    }
    Err(StoreError::Index("it is not open".into()))
}

/// Hands over the snapshot and what came after it.
pub(super) fn hand_over(store: &mut Store, mut notes: Vec<Note>) -> Result<Opened, StoreError> {
    let snapshot = match ask(store, |index| index.snapshot()) {
        Err(StoreError::Index(why)) => {
            // a book can be folded without the index, and has to be while a disk is full
            notes.push(Note::SnapshotUnusable {
                why: format!("cannot be read ({why})"),
            });
            None
        }
        Err(error) => return Err(error),
        Ok(Some(snapshot)) if snapshot.format != store.snapshot_format => {
            notes.push(Note::SnapshotUnusable {
                why: format!(
                    "is of format {}, this release keeps format {}",
                    snapshot.format, store.snapshot_format
                ),
            });
            None
        }
        Ok(other) => other,
    };
    let after = snapshot
        .as_ref()
        .map_or(Head::EMPTY, |snapshot| snapshot.head);
    Ok(Opened {
        lines: Lines::after(store.held.path(), after, store.journal.head().seq)?,
        snapshot,
        notes,
    })
}

/// Sets the index aside and makes it anew from the whole journal.
pub(super) fn rebuild(store: &mut Store, why: String) -> Result<Note, StoreError> {
    store.index = None;
    let dir = store.held.path().to_owned();
    let aside = set_aside(&dir)?;
    let (index, _) = open_index(store.kind, &index_path(&dir))
        .map_err(|error| StoreError::Index(error.to_string()))?;
    use_index(store, index)?;
    let turns = store.journal.synced().seq;
    Ok(Note::IndexRebuilt { why, aside, turns })
}

/// Takes an index into use and brings it up to the journal's last turn.
pub(super) fn use_index(store: &mut Store, index: Box<dyn Index>) -> Result<(), StoreError> {
    store.index = Some(index);
    catch_up(store)?.map_err(StoreError::Index)
}

/// What an index says of itself.
struct State {
    last: Head,
    snapshot: Option<Snapshot>,
}

impl State {
    /// The turn up to which neither index nor snapshot needs the journal.
    fn settled(&self) -> u64 {
        let snapshot = self
            .snapshot
            .as_ref()
            .map_or(0, |snapshot| snapshot.head.seq);
        snapshot.min(self.last.seq)
    }
}

/// Returns where the index lies.
pub(super) fn index_path(dir: &Path) -> PathBuf {
    dir.join("index")
}

/// Opens the index that lies at a path, and checks one that is not too large for that.
fn open_index(kind: IndexKind, path: &Path) -> Result<(Box<dyn Index>, State), IndexError> {
    let mut index = connect(kind, path)?;
    if index.unchecked() <= CHECKED_AT_OPEN {
        index.check(u64::MAX)?;
    }
    let state = State {
        last: index.last()?,
        snapshot: index.snapshot()?,
    };
    Ok((index, state))
}

/// Opens the index that lies at a path, unchecked.
pub(super) fn connect(kind: IndexKind, path: &Path) -> Result<Box<dyn Index>, IndexError> {
    Ok(match kind {
        #[cfg(feature = "store")]
        IndexKind::Sled => Box::new(super::SledIndex::open(path)?),
        IndexKind::Memory => {
            let _ = path;
            Box::new(MemoryIndex::default())
        }
    })
}

/// Holds what the index says of itself against the journal; the inner error says why it does not fit.
fn fits(dir: &Path, head: Head, state: &State) -> Result<Result<(), String>, StoreError> {
    let snapshot = state.snapshot.as_ref().map(|snapshot| snapshot.head);
    for known in [Some(state.last), snapshot].into_iter().flatten() {
        if known.seq > 0 && head.seq == 0 {
            // no restoring of a backup leaves this: going on would start an empty book over a lost one
            return Err(StoreError::damaged(
                &segment::folder(dir),
                None,
                format!("all its {} turns are missing", known.seq),
            ));
        }
        if known.seq > head.seq {
            return Ok(Err(format!(
                "stood at turn {} where the journal ends at {} (if no older journal was put back on purpose, turns are missing)",
                known.seq, head.seq
            )));
        }
        if known.seq == 0 {
            continue;
        }
        let hash = if known.seq == head.seq {
            Some(head.hash)
        } else {
            Lines::one(dir, known.seq)?.map(|line| line.hash)
        };
        if hash != Some(known.hash) {
            return Ok(Err(format!("was made from another turn {}", known.seq)));
        }
    }
    Ok(Ok(()))
}

/// Walks everything that the index or the snapshot still needs, checks it, and applies what the index has not got.
///
/// The inner error says why the index cannot take it in.
fn catch_up(store: &mut Store) -> Result<Result<(), String>, StoreError> {
    let Some(index) = &mut store.index else {
        return Ok(Err("is not open".into()));
    };
    let dir = store.held.path();
    let state = match (index.last(), index.snapshot()) {
        (Ok(last), Ok(snapshot)) => State { last, snapshot },
        (Err(error), _) | (_, Err(error)) => return damaged(error),
    };
    let start = match &state.snapshot {
        Some(snapshot) if snapshot.head.seq < state.last.seq => snapshot.head,
        Some(_) => state.last,
        None => Head::EMPTY,
    };
    let mut batch = Vec::new();
    let mut lines = Lines::after(dir, start, store.journal.synced().seq)?;
    while let Some(line) = lines.next() {
        let line = line?;
        if line.seq > state.last.seq {
            batch.push(indexed(&line, lines.position(), &store.entries));
        }
        if batch.len() == BATCH {
            if let Err(error) = index.apply(&batch) {
                return damaged(error);
            }
            batch.clear();
        }
    }
    if let Err(error) = index.apply(&batch) {
        return damaged(error);
    }
    let certain = store.journal.synced().seq;
    let done = store
        .pending
        .iter()
        .take_while(|(line, _)| line.seq <= certain)
        .count();
    forget_pending(store, done);
    Ok(Ok(()))
}

fn damaged(error: IndexError) -> Result<Result<(), String>, StoreError> {
    match error {
        IndexError::Damaged(why) => Ok(Err(why)),
        IndexError::Disk(why) => Err(StoreError::Index(why)),
    }
}

/// Opens the index again after the disk under it failed.
fn reopen(store: &mut Store) -> Result<Vec<Note>, StoreError> {
    if store.index.is_some() {
        return Ok(Vec::new());
    }
    redact::resume(store.held.path())?;
    match open_index(store.kind, &index_path(store.held.path())) {
        Ok((index, state)) => {
            store.index = Some(index);
            let outcome = match fits(store.held.path(), store.journal.synced(), &state)? {
                Ok(()) => catch_up(store)?,
                misfit => misfit,
            };
            match outcome {
                Ok(()) => Ok(Vec::new()),
                Err(why) => Ok(vec![rebuild(store, why)?]),
            }
        }
        Err(IndexError::Damaged(why)) => Ok(vec![rebuild(store, why)?]),
        Err(IndexError::Disk(why)) => Err(StoreError::Index(why)),
    }
}

/// Rebuilds a damaged index; opens one anew whose disk failed, since sled stays in error after a full disk.
fn mend(store: &mut Store, error: IndexError) -> Result<Vec<Note>, StoreError> {
    store.index = None;
    match error {
        IndexError::Damaged(why) => Ok(vec![rebuild(store, why)?]),
        IndexError::Disk(_) => reopen(store),
    }
}

/// Renames the index's directory; `None` where there is none.
fn set_aside(dir: &Path) -> Result<Option<PathBuf>, StoreError> {
    let path = index_path(dir);
    if !path.exists() {
        return Ok(None);
    }
    let aside = (1..)
        .map(|number: u32| dir.join(format!("index.damaged-{number}")))
        .find(|aside| !aside.exists())
        .expect("numbers do not run out before names do");
    fs::rename(&path, &aside).map_err(StoreError::io("rename", &path))?;
    Ok(Some(aside))
}

fn forget_pending(store: &mut Store, count: usize) {
    for (line, _) in store.pending.drain(..count) {
        if let Some(key) = line.key {
            store.pending_keys.remove(&key);
        }
    }
}

/// Says what an index keeps of a line.
pub(super) fn indexed(line: &Line, position: Position, entries: &Entries) -> Indexed {
    let entries = entries(line);
    Indexed {
        head: Head {
            seq: line.seq,
            hash: line.hash,
        },
        position,
        seen: entries.seen,
        check_ins: entries
            .check_ins
            .into_iter()
            .map(|(unit, at, _)| (unit, at))
            .collect(),
        fleet: entries.fleet.map(|fleet| fleet.to_string().into_bytes()),
    }
}

#[cfg(test)]
mod tests;
