//! Reading the journal, also beside a bot that is writing it: no lock, up to the last whole line.

use std::fs::File;
use std::io::{BufRead, BufReader, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};

use super::error::StoreError;
use super::hash::Hash;
use super::journal::{Head, Position};
use super::line::{Flaw, Line, Stored, VERSION};
use super::segment::{self, Seal};

/// Walks a journal's turns in order, checking each line, the chain and the seals on the way.
///
/// It ends after the first error.
#[derive(Debug)]
pub struct Lines {
    folder: PathBuf,
    /// The turn to give next.
    next: u64,
    /// The hash it must follow, where that is known.
    prev: Option<Hash>,
    /// The last turn to give.
    until: u64,
    at: Option<Place>,
    /// Where the line given last stands.
    position: Position,
    done: bool,
}

#[derive(Debug)]
struct Place {
    path: PathBuf,
    first: u64,
    reader: BufReader<File>,
    /// How many bytes were read of it.
    offset: u64,
    /// How many lines.
    lines: u64,
}

impl Lines {
    /// Walks the turns of a data directory that follow `after`, up to and with `until`.
    ///
    /// # Errors
    ///
    /// [`StoreError::Damaged`] where a segment is missing; [`StoreError::Io`].
    pub fn after(data: &Path, after: Head, until: u64) -> Result<Self, StoreError> {
        Self::start(data, after.seq + 1, Some(after.hash), until)
    }

    /// Reads the one turn `seq`, whatever it follows; `None` where the journal does not reach so far.
    pub(super) fn one(data: &Path, seq: u64) -> Result<Option<Line>, StoreError> {
        Self::start(data, seq, None, seq)?.next().transpose()
    }

    /// Returns where the line given last stands.
    pub(super) fn position(&self) -> Position {
        self.position
    }

    fn start(data: &Path, next: u64, prev: Option<Hash>, until: u64) -> Result<Self, StoreError> {
        let folder = segment::folder(data);
        let mut lines = Lines {
            next,
            prev,
            until,
            at: None,
            position: Position {
                segment: 0,
                offset: 0,
                length: 0,
            },
            done: next > until,
            folder,
        };
        if !lines.done {
            lines.seek()?;
        }
        Ok(lines)
    }

    /// Finds the segment that holds the next turn, and the turn in it.
    fn seek(&mut self) -> Result<(), StoreError> {
        let firsts = segment::list(&self.folder)?;
        let Some(&first) = firsts.iter().rev().find(|&&first| first <= self.next) else {
            match firsts.first() {
                Some(&found) => {
                    return Err(StoreError::damaged(
                        &segment::path(&self.folder, found),
                        None,
                        format!("turns {} to {} before it are missing", self.next, found - 1),
                    ));
                }
                None => {
                    self.done = true;
                    return Ok(());
                }
            }
        };
        let mut place = Place::open(&self.folder, first)?;
        let mut skipped = Vec::new();
        while first + place.lines < self.next {
            if !place.line(&mut skipped)? {
                break;
            }
        }
        self.at = Some(place);
        Ok(())
    }

    fn step(&mut self) -> Result<Option<Line>, StoreError> {
        let mut bytes = Vec::new();
        loop {
            let Some(place) = &mut self.at else {
                return Ok(None);
            };
            let before = place.offset;
            if !place.line(&mut bytes)? {
                // either the journal's end, or the bot has just closed this segment: then its seal is there by now
                let next = segment::path(&self.folder, self.next);
                if place.first == self.next || !next.exists() {
                    return Ok(None);
                }
                if !place.line(&mut bytes)? {
                    return Err(StoreError::damaged(
                        &place.path,
                        None,
                        "it is closed, but does not end in a seal",
                    ));
                }
            }
            let line = &bytes[..bytes.len() - 1];
            if Seal::opens(line) {
                self.pass_seal(line.to_owned(), before)?;
                continue;
            }
            let line = read_line(line, &place.path, place.lines, self.next, self.prev)?;
            self.position = Position {
                segment: place.first,
                offset: before,
                length: u32::try_from(bytes.len() - 1).unwrap_or(u32::MAX),
            };
            self.next += 1;
            self.prev = Some(line.hash);
            return Ok(Some(line));
        }
    }

    /// Holds a seal against what was read and goes on to the next segment, where there is one.
    fn pass_seal(&mut self, line: Vec<u8>, length: u64) -> Result<(), StoreError> {
        let place = self.at.take().expect("a seal was read from a segment");
        let seal = Seal::read(&line)
            .ok_or_else(|| StoreError::damaged(&place.path, None, "its seal is damaged"))?;
        let fits = seal.first == place.first
            && seal.last + 1 == self.next
            && seal.length == length
            && self.prev.is_none_or(|prev| prev == seal.hash);
        if !fits {
            return Err(StoreError::damaged(
                &place.path,
                None,
                "its seal does not fit its lines",
            ));
        }
        let next = segment::path(&self.folder, self.next);
        if next.exists() {
            self.at = Some(Place::open(&self.folder, self.next)?);
        } else if let Some(&later) = segment::list(&self.folder)?
            .iter()
            .find(|&&first| first > self.next)
        {
            return Err(StoreError::damaged(
                &segment::path(&self.folder, later),
                None,
                format!("turns {} to {} before it are missing", self.next, later - 1),
            ));
        }
        Ok(())
    }
}

impl Iterator for Lines {
    type Item = Result<Line, StoreError>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.done || self.next > self.until {
            return None;
        }
        let step = self.step().transpose();
        self.done = !matches!(step, Some(Ok(_)));
        step
    }
}

impl Place {
    fn open(folder: &Path, first: u64) -> Result<Self, StoreError> {
        let path = segment::path(folder, first);
        let file = File::open(&path).map_err(StoreError::io("open", &path))?;
        Ok(Place {
            path,
            first,
            reader: BufReader::with_capacity(1 << 16, file),
            offset: 0,
            lines: 0,
        })
    }

    /// Reads one line with its newline; false, and the bytes given back, where there is no whole one.
    fn line(&mut self, bytes: &mut Vec<u8>) -> Result<bool, StoreError> {
        bytes.clear();
        let count = self
            .reader
            .read_until(b'\n', bytes)
            .map_err(StoreError::io("read", &self.path))?;
        if bytes.last() == Some(&b'\n') {
            self.offset += count as u64;
            self.lines += 1;
            return Ok(true);
        }
        self.reader
            .seek(SeekFrom::Start(self.offset))
            .map_err(StoreError::io("read", &self.path))?;
        Ok(false)
    }
}

/// Reads the one line at a position, checking it.
///
/// # Errors
///
/// [`StoreError::Damaged`] when it is not the turn `seq`; [`StoreError::Io`].
pub(super) fn line_at(data: &Path, seq: u64, position: Position) -> Result<Line, StoreError> {
    let path = segment::path(&segment::folder(data), position.segment);
    let mut bytes = vec![0; position.length as usize];
    let mut file = File::open(&path).map_err(StoreError::io("open", &path))?;
    file.seek(SeekFrom::Start(position.offset))
        .and_then(|_| file.read_exact(&mut bytes))
        .map_err(StoreError::io("read", &path))?;
    let number = seq.saturating_sub(position.segment) + 1;
    read_line(&bytes, &path, number, seq, None)
}

/// Reads one line and checks its contents and place.
pub(super) fn read_line(
    bytes: &[u8],
    path: &Path,
    number: u64,
    seq: u64,
    prev: Option<Hash>,
) -> Result<Line, StoreError> {
    let damaged = |what: String| StoreError::damaged(path, Some(number), what);
    let stored = Stored::read(bytes).map_err(|flaw| match flaw {
        Flaw::Newer(found) => StoreError::Newer {
            place: path.to_owned(),
            found,
            known: VERSION.into(),
        },
        Flaw::Damaged(what) => damaged(what),
    })?;
    let line = stored.line();
    if line.seq != seq {
        return Err(damaged(format!(
            "turn {seq} is expected, turn {} found",
            line.seq
        )));
    }
    if prev.is_some_and(|prev| prev != line.prev) {
        return Err(damaged("it does not follow the line before it".into()));
    }
    Ok(line)
}
