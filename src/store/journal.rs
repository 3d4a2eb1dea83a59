//! The writing side of the journal: the truth, append-only.
//!
//! A batch of turns is prepared (serialised, salted, hashed) first and committed after that, so that a commit costs what
//! one append and one fdatasync cost. A failed write or sync takes back everything of its batch: the file is cut to where
//! it stood, and where even that fails, nothing more is written until it succeeds.

use std::io;
use std::path::{Path, PathBuf};

use super::error::StoreError;
use super::hash::Hash;
use super::line::{Draft, Line, Stored};
use super::medium::{Appending, Disk};
use super::note::Note;
use super::personal::Salt;
use super::segment::{self, Seal};
use super::tail::OpenSegment;

/// The length in bytes from which a segment is closed, unless settings say otherwise.
pub const SEGMENT_BYTES: u64 = 8 << 20;

/// The last turn of a journal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Head {
    /// Its sequence number; 0 when there is none.
    pub seq: u64,
    /// Its hash.
    pub hash: Hash,
}

impl Head {
    /// The head of an empty journal.
    pub const EMPTY: Head = Head {
        seq: 0,
        hash: Hash::START,
    };
}

/// Where a line stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Position {
    /// The first turn of its segment, which names the file.
    pub segment: u64,
    /// Its offset in bytes.
    pub offset: u64,
    /// Its length in bytes, without the newline.
    pub length: u32,
}

/// A batch of turns, ready to be written behind one certain turn.
#[derive(Debug, Clone)]
pub struct Prepared {
    after: Head,
    lines: Vec<Line>,
    lengths: Vec<u32>,
    bytes: Vec<u8>,
}

impl Prepared {
    /// Returns the turns as they will read.
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// Takes the turns out.
    pub(super) fn into_lines(self) -> Vec<Line> {
        self.lines
    }

    /// Returns the bytes that a commit appends.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }
}

/// The journal of a data directory, open for appending.
pub struct Journal {
    folder: PathBuf,
    disk: Box<dyn Disk>,
    limit: u64,
    /// The segment written to; `None` when the next commit has to start one.
    open: Option<Open>,
    head: Head,
    /// The last turn that is on the disk for certain.
    synced: Head,
}

struct Open {
    first: u64,
    file: Box<dyn Appending>,
    /// Where the good lines end.
    length: u64,
    /// Where those end that are on the disk for certain.
    synced: u64,
    /// Something after `length` failed and is not yet cut off.
    ragged: bool,
}

impl Journal {
    /// Opens the journal in a data directory that the caller holds.
    ///
    /// Checks every closed segment's seal and length and, in the open segment, every turn from `from` on and the last
    /// one. A torn last line is cut off, with a note.
    ///
    /// # Errors
    ///
    /// [`StoreError::Damaged`] with the place; [`StoreError::Newer`]; [`StoreError::ReadOnly`].
    pub fn open(
        data: &Path,
        disk: Box<dyn Disk>,
        limit: u64,
        from: u64,
        notes: &mut Vec<Note>,
    ) -> Result<Self, StoreError> {
        let folder = segment::folder(data);
        segment::clear_unfinished(&folder)?;
        let firsts = segment::list(&folder)?;
        let seals = segment::check_seals(&folder, &firsts)?;
        let mut head = seals.last().map_or(Head::EMPTY, |seal| Head {
            seq: seal.last,
            hash: seal.hash,
        });
        let mut open = None;
        if firsts.len() > seals.len() {
            let first = head.seq + 1;
            let path = segment::path(&folder, first);
            let tail = OpenSegment::read(&path, first, head, from)?;
            head = tail.head;
            let mut file = disk
                .open(&path)
                .map_err(|error| write_error(data, &path, error))?;
            if let Some(note) = tail.mend(file.as_mut(), &path)? {
                notes.push(note);
            }
            // what an earlier process wrote without a sync is relied on from here on
            file.sync().map_err(|source| StoreError::Sync {
                file: path.clone(),
                source,
            })?;
            open = Some(Open {
                first,
                file,
                length: tail.length,
                synced: tail.length,
                ragged: false,
            });
        }
        Ok(Journal {
            folder,
            disk,
            limit,
            open,
            head,
            synced: head,
        })
    }

    /// Returns the last turn.
    pub fn head(&self) -> Head {
        self.head
    }

    /// Returns the last turn that is on the disk for certain.
    pub fn synced(&self) -> Head {
        self.synced
    }

    /// Serialises, salts and hashes turns to be written next.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unwritable`].
    pub fn prepare(&self, drafts: &[Draft], salt: &mut dyn Salt) -> Result<Prepared, StoreError> {
        let mut prepared = Prepared {
            after: self.head,
            lines: Vec::with_capacity(drafts.len()),
            lengths: Vec::with_capacity(drafts.len()),
            bytes: Vec::new(),
        };
        let mut head = self.head;
        for draft in drafts {
            let stored = Stored::new(draft, head.seq + 1, head.hash, salt)
                .map_err(StoreError::Unwritable)?;
            let line = stored.line();
            head = Head {
                seq: line.seq,
                hash: line.hash,
            };
            let bytes = stored.bytes();
            let length = u32::try_from(bytes.len())
                .map_err(|_| StoreError::Unwritable("it is longer than 4 GiB".into()))?;
            prepared.lengths.push(length);
            prepared.bytes.extend_from_slice(&bytes);
            prepared.bytes.push(b'\n');
            prepared.lines.push(line);
        }
        Ok(prepared)
    }

    /// Appends a prepared batch and, when `sync` is asked for, brings it and everything before it to the disk.
    ///
    /// Returns where each line stands. Only a synced batch may be acknowledged.
    ///
    /// # Errors
    ///
    /// [`StoreError::Stale`]; [`StoreError::Write`] (the journal stands where it stood before); [`StoreError::Sync`] (it
    /// stands at [`Journal::synced`]: what was written unsynced before is gone too).
    pub fn commit(&mut self, prepared: &Prepared, sync: bool) -> Result<Vec<Position>, StoreError> {
        self.mend()?;
        if prepared.after != self.head {
            return Err(StoreError::Stale {
                after: prepared.after.seq,
                head: self.head.seq,
            });
        }
        if self
            .open
            .as_ref()
            .is_some_and(|open| open.length >= self.limit)
        {
            self.close_segment()?;
        }
        let open = match &mut self.open {
            Some(open) => open,
            none => none.insert(start_segment(&self.folder, self.disk.as_ref(), self.head)?),
        };
        let path = segment::path(&self.folder, open.first);
        if let Err(source) = open.file.append(&prepared.bytes) {
            open.ragged = true;
            // a failure here is met again, and said, by the next commit
            let _ = open.mend();
            return Err(StoreError::Write { file: path, source });
        }
        let start = open.length;
        open.length += prepared.bytes.len() as u64;
        if let Some(last) = prepared.lines.last() {
            self.head = Head {
                seq: last.seq,
                hash: last.hash,
            };
        }
        let first = open.first;
        if sync {
            self.sync()?;
        }
        let mut offset = start;
        let place = |&length: &u32| {
            let position = Position {
                segment: first,
                offset,
                length,
            };
            offset += u64::from(length) + 1;
            position
        };
        Ok(prepared.lengths.iter().map(place).collect())
    }

    /// Brings what was written to the disk.
    ///
    /// # Errors
    ///
    /// [`StoreError::Sync`]; the journal stands at [`Journal::synced`] then. [`StoreError::Write`] while an earlier failure
    /// cannot be taken back.
    pub fn sync(&mut self) -> Result<(), StoreError> {
        self.mend()?;
        let Some(open) = &mut self.open else {
            return Ok(());
        };
        if open.written_through() {
            return Ok(());
        }
        if let Err(source) = open.file.sync() {
            // After a failed sync the system may hold as clean what never reached the disk, so a second sync proves
            // nothing: the bytes are cut off and have to be written anew.
            open.length = open.synced;
            open.ragged = true;
            let file = segment::path(&self.folder, open.first);
            let _ = open.mend();
            self.head = self.synced;
            return Err(StoreError::Sync { file, source });
        }
        open.synced = open.length;
        self.synced = self.head;
        Ok(())
    }

    /// Seals the open segment; the next commit starts another. Does nothing where there is none or it is empty.
    ///
    /// # Errors
    ///
    /// [`StoreError::Write`], [`StoreError::Sync`]; the segment stays open.
    pub fn close_segment(&mut self) -> Result<(), StoreError> {
        self.mend()?;
        let head = self.head;
        let Some(open) = &mut self.open else {
            return Ok(());
        };
        if open.length == 0 {
            return Ok(());
        }
        let seal = Seal {
            first: open.first,
            last: head.seq,
            length: open.length,
            hash: head.hash,
        };
        let mut line = seal.bytes();
        line.push(b'\n');
        let file = segment::path(&self.folder, open.first);
        if let Err(source) = open.file.append(&line) {
            open.ragged = true;
            let _ = open.mend();
            return Err(StoreError::Write { file, source });
        }
        open.length += line.len() as u64;
        self.sync()?;
        self.open = None;
        Ok(())
    }

    fn mend(&mut self) -> Result<(), StoreError> {
        let Some(open) = &mut self.open else {
            return Ok(());
        };
        open.mend().map_err(|source| StoreError::Write {
            file: segment::path(&self.folder, open.first),
            source,
        })
    }
}

impl Open {
    fn written_through(&self) -> bool {
        self.synced == self.length
    }

    fn mend(&mut self) -> io::Result<()> {
        if self.ragged {
            self.file.cut(self.length)?;
            self.file.sync()?;
            self.ragged = false;
        }
        Ok(())
    }
}

fn start_segment(folder: &Path, disk: &dyn Disk, head: Head) -> Result<Open, StoreError> {
    let first = head.seq + 1;
    let path = segment::path(folder, first);
    let start = || {
        std::fs::create_dir_all(folder)?;
        let mut file = disk.open(&path)?;
        if file.length()? != 0 {
            // left by a start that failed after making the file
            file.cut(0)?;
        }
        disk.sync_directory(folder)?;
        if let Some(data) = folder.parent() {
            disk.sync_directory(data)?;
        }
        Ok(file)
    };
    let file = start().map_err(|source| StoreError::Write {
        file: path.clone(),
        source,
    })?;
    Ok(Open {
        first,
        file,
        length: 0,
        synced: 0,
        ragged: false,
    })
}

fn write_error(data: &Path, path: &Path, source: io::Error) -> StoreError {
    match source.kind() {
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
            StoreError::ReadOnly(data.to_owned())
        }
        _ => StoreError::io("open for writing", path)(source),
    }
}
