//! Emptying personal texts in closed segments, a slice at a time, while turns go on.
//!
//! Each segment is copied without the texts, and an index is made beside the one in use from what the copies hold and what
//! was written since. Only when all are on the disk does a mark say so, and the copies take their places. An interruption
//! before the mark leaves everything as it was; one after it is finished at the next opening.

use std::collections::VecDeque;
use std::fs::{self, File};
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};

use super::error::StoreError;
use super::index::{Index, IndexError, Indexed, Snapshot};
use super::journal::{Head, Position};
use super::line::{Flaw, Line, Stored};
use super::reader::Lines;
use super::segment::{self, Seal};
use super::{BATCH, IndexKind, Store, recover};

/// Texts that are being taken out of the turns committed before this began.
///
/// Dropped before it is finished, it takes its copies away.
pub struct Redaction {
    dir: PathBuf,
    todo: VecDeque<u64>,
    rewriting: Option<Rewriting>,
    /// The turns written since, once all segments are copied.
    since: Option<Lines>,
    /// The index made from the copies; `None` once that is done.
    index: Option<Box<dyn Index>>,
    /// What it still has to take in.
    batch: Vec<Indexed>,
    last: Head,
    emptied: usize,
}

/// A closed segment that is being copied.
struct Rewriting {
    path: PathBuf,
    seal: Seal,
    /// The number of the line read last, from 1.
    number: u64,
    /// How many bytes of lines are still to be read.
    left: u64,
    from: BufReader<File>,
    to: BufWriter<File>,
    written: u64,
    emptied: usize,
}

impl Redaction {
    /// Closes the open segment and begins; see [`Store::begin_redaction`].
    pub(super) fn begin(store: &mut Store) -> Result<Self, StoreError> {
        if is_marked(store.held.path()) {
            // the copies of an earlier one are what holds: they come first
            store.index = None;
        }
        store.close_segment()?;
        store.follow()?;
        let dir = store.held.path();
        let folder = segment::folder(dir);
        segment::clear_unfinished(&folder)?;
        let beside = index_beside(dir);
        remove(&beside)?;
        let index = recover::connect(store.kind, &beside).map_err(of_index)?;
        Ok(Redaction {
            dir: dir.to_owned(),
            todo: segment::list(&folder)?.into(),
            rewriting: None,
            since: None,
            index: Some(index),
            batch: Vec::new(),
            last: Head::EMPTY,
            emptied: 0,
        })
    }

    /// Goes through at most so many lines; see [`Store::redact`].
    pub(super) fn slice(
        &mut self,
        store: &Store,
        lines: usize,
        edit: &mut impl FnMut(&mut Line),
        read: &mut impl FnMut(&Line),
    ) -> Result<bool, StoreError> {
        for _ in 0..lines {
            let Some(rewriting) = &mut self.rewriting else {
                if let Some(first) = self.todo.pop_front() {
                    self.rewriting = Rewriting::begin(&self.dir, first)?;
                    continue;
                }
                match self.since(store.journal.synced().seq)? {
                    Some((line, position)) => {
                        read(&line);
                        self.take_in(store, &line, position)?;
                        continue;
                    }
                    None => return Ok(false),
                }
            };
            if rewriting.left > 0 {
                let (line, position) = rewriting.line(edit)?;
                read(&line);
                self.take_in(store, &line, position)?;
            } else if let Some(done) = self.rewriting.take() {
                self.emptied += done.emptied;
                done.end()?;
            }
        }
        Ok(true)
    }

    /// Returns the next turn written since this began, up to and with `until`.
    fn since(&mut self, until: u64) -> Result<Option<(Line, Position)>, StoreError> {
        if self.last.seq >= until {
            return Ok(None);
        }
        for _ in 0..2 {
            if let Some(lines) = &mut self.since
                && let Some(line) = lines.next()
            {
                return Ok(Some((line?, Lines::position(lines))));
            }
            // they go up to where the journal ended when they were begun
            self.since = Some(Lines::after(&self.dir, self.last, until)?);
        }
        let what = format!("it ends at turn {} of {until}", self.last.seq);
        Err(StoreError::damaged(&segment::folder(&self.dir), None, what))
    }

    fn take_in(
        &mut self,
        store: &Store,
        line: &Line,
        position: Position,
    ) -> Result<(), StoreError> {
        if line.seq != self.last.seq + 1 || line.prev != self.last.hash {
            let place = segment::path(&segment::folder(&self.dir), position.segment);
            let what = format!("turn {} does not follow turn {}", line.seq, self.last.seq);
            return Err(StoreError::damaged(&place, None, what));
        }
        self.last = Head {
            seq: line.seq,
            hash: line.hash,
        };
        let indexed = recover::indexed(line, position, &store.entries);
        self.batch.push(indexed);
        if self.batch.len() >= BATCH {
            self.apply()?;
        }
        Ok(())
    }

    fn apply(&mut self) -> Result<(), StoreError> {
        let batch = std::mem::take(&mut self.batch);
        self.index()?.apply(&batch).map_err(of_index)
    }

    fn index(&mut self) -> Result<&mut Box<dyn Index>, StoreError> {
        let over = || StoreError::Index("it is not open".into());
        self.index.as_mut().ok_or_else(over)
    }

    /// Puts the copies in place; see [`Store::finish_redaction`].
    pub(super) fn finish(
        mut self,
        store: &mut Store,
        snapshot: Option<Vec<u8>>,
    ) -> Result<usize, StoreError> {
        store.sync()?;
        if self.emptied == 0 {
            return Ok(0);
        }
        if self.last != store.journal.synced() {
            return Err(StoreError::Stale {
                after: self.last.seq,
                head: store.journal.synced().seq,
            });
        }
        self.finish_index(store.snapshot_format, snapshot)?;
        let index = self.index.take();
        let in_memory = index.filter(|_| store.kind == IndexKind::Memory);
        if in_memory.is_none() {
            sync(&index_beside(&self.dir))?;
        }
        leave_mark(&self.dir, in_memory.is_none())?;
        // before the first line moves: an index that outlived it would look for lines where they no longer are
        store.index = None;
        put_in_place(&self.dir)?;
        let index = match in_memory {
            Some(index) => index,
            // it was just made: it is checked bit by bit afterwards
            None => {
                recover::connect(store.kind, &recover::index_path(&self.dir)).map_err(of_index)?
            }
        };
        recover::use_index(store, index)?;
        Ok(self.emptied)
    }

    /// Brings the index made from the copies to the disk, with the book as it stands after the last of them.
    fn finish_index(&mut self, format: u32, book: Option<Vec<u8>>) -> Result<(), StoreError> {
        self.apply()?;
        let head = self.last;
        let index = self.index()?;
        if let Some(bytes) = book {
            let snapshot = Snapshot {
                format,
                head,
                bytes,
            };
            index.save_snapshot(&snapshot).map_err(of_index)?;
        }
        index.flush().map_err(of_index)
    }
}

impl Drop for Redaction {
    fn drop(&mut self) {
        if is_marked(&self.dir) {
            return; // the copies are what holds: they are put in place as soon as the disk allows
        }
        self.index = None;
        self.rewriting = None;
        // best effort: the next opening does the same
        let _ = segment::clear_unfinished(&segment::folder(&self.dir));
        let _ = remove(&index_beside(&self.dir));
    }
}

fn of_index(error: IndexError) -> StoreError {
    StoreError::Index(error.to_string())
}

impl Rewriting {
    /// Begins the copy of a segment; `None` for one that is open.
    fn begin(data: &Path, first: u64) -> Result<Option<Self>, StoreError> {
        let folder = segment::folder(data);
        let Some(seal) = segment::seal_of(&folder, first)? else {
            return Ok(None);
        };
        let path = segment::path(&folder, first);
        let from = File::open(&path).map_err(StoreError::io("read", &path))?;
        let new = segment::new_path(&path);
        let to = File::create(&new).map_err(StoreError::io("write", &new))?;
        Ok(Some(Rewriting {
            path,
            number: 0,
            left: seal.length,
            seal,
            from: BufReader::with_capacity(1 << 16, from),
            to: BufWriter::with_capacity(1 << 16, to),
            written: 0,
            emptied: 0,
        }))
    }

    /// Copies one line without the texts that `edit` empties; returns it as it reads now, and where.
    fn line(&mut self, edit: &mut impl FnMut(&mut Line)) -> Result<(Line, Position), StoreError> {
        let mut bytes = Vec::new();
        let read = self
            .from
            .read_until(b'\n', &mut bytes)
            .map_err(StoreError::io("read", &self.path))?;
        self.number += 1;
        let left = self.left.checked_sub(read as u64).filter(|_| read > 0);
        let misfit = || StoreError::damaged(&self.path, None, "its seal does not fit its lines");
        self.left = left.ok_or_else(misfit)?;
        let line = bytes.strip_suffix(b"\n").ok_or_else(misfit)?;
        let mut stored = Stored::read(line).map_err(|flaw| self.flaw(flaw))?;
        let mut wanted = stored.line();
        edit(&mut wanted);
        self.emptied += stored.empty(&wanted).map_err(|what| {
            let place = format!("`{}` line {}", self.path.display(), self.number);
            StoreError::Redaction(format!("{place}: {what}"))
        })?;
        let bytes = stored.bytes();
        let position = Position {
            segment: self.seal.first,
            offset: self.written,
            length: u32::try_from(bytes.len()).unwrap_or(u32::MAX),
        };
        self.write(&bytes)?;
        self.written += bytes.len() as u64 + 1;
        Ok((stored.line(), position))
    }

    fn flaw(&self, flaw: Flaw) -> StoreError {
        match flaw {
            Flaw::Damaged(what) => StoreError::damaged(&self.path, Some(self.number), what),
            Flaw::Newer(found) => StoreError::Newer {
                place: self.path.clone(),
                found,
                known: super::VERSION.into(),
            },
        }
    }

    fn write(&mut self, line: &[u8]) -> Result<(), StoreError> {
        self.to
            .write_all(line)
            .and_then(|()| self.to.write_all(b"\n"))
            .map_err(StoreError::io("rewrite", &self.path))
    }

    /// Seals the copy and brings it to the disk; where nothing was emptied, it is taken away again.
    fn end(mut self) -> Result<(), StoreError> {
        let new = segment::new_path(&self.path);
        if self.emptied == 0 {
            return fs::remove_file(&new).map_err(StoreError::io("delete", &new));
        }
        let seal = Seal {
            length: self.written,
            ..self.seal.clone()
        };
        self.write(&seal.bytes())?;
        self.to
            .flush()
            .and_then(|()| self.to.get_ref().sync_all())
            .map_err(StoreError::io("rewrite", &self.path))
    }
}

/// Finishes at opening what an interruption broke off, or takes away what had not come so far.
pub(super) fn settle(dir: &Path) -> Result<(), StoreError> {
    resume(dir)?;
    remove(&index_beside(dir))
}

/// Goes on putting copies in place where a failing disk broke that off.
pub(super) fn resume(dir: &Path) -> Result<(), StoreError> {
    match is_marked(dir) {
        true => put_in_place(dir),
        false => Ok(()),
    }
}

/// What the mark says where the index beside is to be put in place as well.
const WITH_INDEX: &str = "with index\n";

/// Puts the copies, and the index made from them, in place of what is there. Done twice it does no harm.
fn put_in_place(dir: &Path) -> Result<(), StoreError> {
    let mark = mark(dir);
    let said = fs::read_to_string(&mark).map_err(StoreError::io("read", &mark))?;
    let folder = segment::folder(dir);
    for first in segment::list(&folder)? {
        let path = segment::path(&folder, first);
        let new = segment::new_path(&path);
        if new.exists() {
            fs::rename(&new, &path).map_err(StoreError::io("rewrite", &path))?;
        }
    }
    sync(&folder)?;
    let beside = index_beside(dir);
    if beside.exists() || said != WITH_INDEX {
        delete_indexes(dir)?;
    }
    if beside.exists() {
        let path = recover::index_path(dir);
        fs::rename(&beside, &path).map_err(StoreError::io("rename", &beside))?;
    }
    sync(dir)?;
    fs::remove_file(&mark).map_err(StoreError::io("delete", &mark))?;
    sync(dir)
}

/// The file that says that all copies are on the disk.
fn mark(dir: &Path) -> PathBuf {
    dir.join("index.swap")
}

fn is_marked(dir: &Path) -> bool {
    mark(dir).exists()
}

/// Leaves the mark, once everything else is on the disk; none where that fails.
fn leave_mark(dir: &Path, with_index: bool) -> Result<(), StoreError> {
    let mark = mark(dir);
    let leave = || {
        sync_file(&segment::folder(dir))?;
        sync_file(dir)?;
        // written aside and renamed, so that it is there whole or not at all
        let aside = dir.join("index.swap.new");
        let mut file = File::create(&aside)?;
        file.write_all(if with_index { WITH_INDEX } else { "" }.as_bytes())?;
        file.sync_all()?;
        fs::rename(&aside, &mark)?;
        sync_file(dir)
    };
    leave().map_err(|error| {
        // where even this fails, the next redaction puts the copies in place before it begins
        let _ = fs::remove_file(&mark);
        StoreError::io("write", &mark)(error)
    })
}

/// Returns where the index lies that is made from the copies.
fn index_beside(dir: &Path) -> PathBuf {
    dir.join("index.new")
}

/// Deletes the index and those set aside before, which may hold the texts.
fn delete_indexes(dir: &Path) -> Result<(), StoreError> {
    for entry in fs::read_dir(dir).map_err(StoreError::io("list", dir))? {
        let entry = entry.map_err(StoreError::io("list", dir))?;
        let name = entry.file_name();
        let name = name.to_string_lossy();
        if name == "index" || name.starts_with("index.damaged-") {
            remove(&entry.path())?;
        }
    }
    Ok(())
}

/// Deletes a folder, where it is there.
fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_dir_all(path) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
            Err(StoreError::io("delete", path)(error))
        }
        _ => Ok(()),
    }
}

fn sync(folder: &Path) -> Result<(), StoreError> {
    sync_file(folder).map_err(StoreError::io("sync", folder))
}

fn sync_file(folder: &Path) -> std::io::Result<()> {
    File::open(folder)?.sync_all()
}
