//! Walking a whole journal and listing every damaged place, rather than stopping at the first.

use std::collections::HashSet;
use std::fs;
use std::path::Path;

use chrono::{DateTime, Utc};

use super::directory;
use super::error::{Damage, StoreError};
use super::hash::Hash;
use super::journal::Head;
use super::reader::read_line;
use super::segment::{self, Seal};

/// What a walk over a journal found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// How many segments there are.
    pub segments: usize,
    /// How many turns read well.
    pub turns: u64,
    /// The last turn that read well.
    pub head: Head,
    /// When that turn was received.
    pub last: Option<DateTime<Utc>>,
    /// Every damaged place.
    pub damage: Vec<Damage>,
    /// The bytes of an unfinished last line: one being written, or one that the next start cuts off.
    pub unfinished: u64,
}

/// Walks a data directory's journal, without a lock, also beside a running bot: every line, the chain, seals, lengths,
/// and that no message's key comes twice.
///
/// # Errors
///
/// The sentence that says why the directory cannot be read; damage is no error but part of the report.
pub fn verify(dir: &Path) -> Result<Report, StoreError> {
    directory::look(dir)?;
    let folder = segment::folder(dir);
    let mut walk = Walk {
        report: Report {
            segments: 0,
            turns: 0,
            head: Head::EMPTY,
            last: None,
            damage: Vec::new(),
            unfinished: 0,
        },
        next: 1,
        prev: Some(Hash::START),
        keys: HashSet::new(),
    };
    let firsts = segment::list(&folder)?;
    for (index, &first) in firsts.iter().enumerate() {
        walk.segment(
            &segment::path(&folder, first),
            first,
            index + 1 == firsts.len(),
        )?;
    }
    Ok(walk.report)
}

struct Walk {
    report: Report,
    /// The turn to come next.
    next: u64,
    /// The hash it must follow; `None` behind a damaged line.
    prev: Option<Hash>,
    keys: HashSet<Hash>,
}

impl Walk {
    fn segment(&mut self, path: &Path, first: u64, is_last: bool) -> Result<(), StoreError> {
        self.report.segments += 1;
        if first != self.next {
            let what = if first > self.next {
                format!("turns {} to {} before it are missing", self.next, first - 1)
            } else {
                format!("turn {} is expected, its name says {first}", self.next)
            };
            self.damage(path, None, what);
            self.next = first;
            self.prev = None;
        }
        let bytes = fs::read(path).map_err(StoreError::io("read", path))?;
        let mut offset = 0;
        let mut seal = None;
        for (number, piece) in (1..).zip(bytes.split_inclusive(|&byte| byte == b'\n')) {
            let Some(line) = piece.strip_suffix(b"\n") else {
                if is_last && seal.is_none() {
                    self.report.unfinished = piece.len() as u64;
                } else {
                    self.damage(path, Some(number), "it does not end in a newline".into());
                }
                continue;
            };
            if seal.is_some() {
                self.damage(path, Some(number), "a line stands behind the seal".into());
            } else if Seal::opens(line) {
                seal = Some(self.seal(path, number, line, first, offset));
            } else {
                self.line(path, number, line)?;
            }
            offset += piece.len() as u64;
        }
        if seal.is_none() && !is_last {
            self.damage(
                path,
                None,
                "it is closed, but does not end in a seal".into(),
            );
        }
        if let Some(Some(seal)) = seal {
            self.next = seal.last + 1;
            self.prev = Some(seal.hash);
        }
        Ok(())
    }

    fn line(&mut self, path: &Path, number: u64, bytes: &[u8]) -> Result<(), StoreError> {
        let seq = self.next;
        self.next += 1;
        match read_line(bytes, path, number, seq, self.prev) {
            Ok(line) => {
                self.prev = Some(line.hash);
                self.report.turns += 1;
                self.report.head = Head {
                    seq,
                    hash: line.hash,
                };
                self.report.last = Some(line.at);
                if let Some(key) = &line.key
                    && !self.keys.insert(Hash::of(&[key.as_bytes()]))
                {
                    let what = "its message is recorded already, further up".to_owned();
                    self.damage(path, Some(number), what);
                }
                Ok(())
            }
            Err(StoreError::Damaged(damage)) => {
                self.report.damage.push(damage);
                self.prev = None;
                Ok(())
            }
            Err(error) => Err(error),
        }
    }

    fn seal(
        &mut self,
        path: &Path,
        number: u64,
        line: &[u8],
        first: u64,
        length: u64,
    ) -> Option<Seal> {
        let Some(seal) = Seal::read(line) else {
            self.damage(path, Some(number), "its seal is damaged".into());
            return None;
        };
        let fits = seal.first == first
            && seal.last + 1 == self.next
            && seal.length == length
            && self.prev.is_none_or(|prev| prev == seal.hash);
        if !fits {
            self.damage(path, Some(number), "its seal does not fit its lines".into());
        }
        Some(seal)
    }

    fn damage(&mut self, path: &Path, line: Option<u64>, what: String) {
        self.report.damage.push(Damage {
            file: path.to_owned(),
            line,
            what,
        });
    }
}
