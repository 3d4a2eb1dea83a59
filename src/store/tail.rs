//! The end of the journal at opening: where its good lines end, and what a kill has left behind them.
//!
//! What does not end in a newline was never acknowledged and is cut off; a bad line that does end in one is damage.

use std::path::Path;

use super::error::StoreError;
use super::hash::Hash;
use super::journal::Head;
use super::medium::Appending;
use super::note::Note;
use super::reader::read_line;

/// What opening finds in the segment that is not sealed.
pub(super) struct OpenSegment {
    /// Its last good turn, or the one before it when it has none.
    pub(super) head: Head,
    /// Where its good lines end.
    pub(super) length: u64,
    ending: Ending,
}

enum Ending {
    Whole,
    /// So many bytes of an unfinished line follow.
    Torn(u64),
    /// The last line is whole, but its newline is missing or something else.
    NoNewline,
}

impl OpenSegment {
    /// Reads a segment, checking every turn from `from` on and the last one; `before` is the turn before the segment.
    pub(super) fn read(
        path: &Path,
        first: u64,
        before: Head,
        from: u64,
    ) -> Result<Self, StoreError> {
        let bytes = std::fs::read(path).map_err(StoreError::io("read", path))?;
        let whole = bytes
            .iter()
            .rposition(|&b| b == b'\n')
            .map_or(0, |at| at + 1);
        let mut found = OpenSegment {
            head: before,
            length: whole as u64,
            ending: Ending::Whole,
        };
        let mut lines: Vec<&[u8]> = bytes[..whole].split(|&b| b == b'\n').collect();
        lines.pop();
        for (index, line) in lines.iter().enumerate() {
            let seq = first + index as u64;
            if seq < from && index + 1 < lines.len() {
                continue;
            }
            let known = (seq == found.head.seq + 1).then_some(found.head.hash);
            found.head = check(line, path, index as u64 + 1, seq, known)?;
        }
        let rest = &bytes[whole..];
        if rest.is_empty() {
            return Ok(found);
        }
        let number = lines.len() as u64 + 1;
        let seq = first + lines.len() as u64;
        for line in [rest, &rest[..rest.len() - 1]] {
            if let Ok(head) = check(line, path, number, seq, Some(found.head.hash)) {
                found.head = head;
                found.length += line.len() as u64 + 1;
                found.ending = Ending::NoNewline;
                return Ok(found);
            }
        }
        if let Err(newer @ StoreError::Newer { .. }) = check(rest, path, number, seq, None) {
            return Err(newer);
        }
        found.ending = Ending::Torn(rest.len() as u64);
        Ok(found)
    }

    /// Cuts off a torn line or completes a whole one.
    pub(super) fn mend(
        &self,
        file: &mut dyn Appending,
        path: &Path,
    ) -> Result<Option<Note>, StoreError> {
        let mended = match self.ending {
            Ending::Whole => return Ok(None),
            Ending::Torn(_) => file.cut(self.length),
            Ending::NoNewline => file.cut(self.length - 1).and_then(|()| file.append(b"\n")),
        };
        mended.map_err(|source| StoreError::Write {
            file: path.to_owned(),
            source,
        })?;
        Ok(Some(match self.ending {
            Ending::Torn(bytes) => Note::TornLine {
                file: path.to_owned(),
                bytes,
            },
            _ => Note::NewlineMended {
                file: path.to_owned(),
            },
        }))
    }
}

/// Checks one line's contents and place; `prev` is the hash it must follow, where that is known.
fn check(
    bytes: &[u8],
    path: &Path,
    number: u64,
    seq: u64,
    prev: Option<Hash>,
) -> Result<Head, StoreError> {
    let line = read_line(bytes, path, number, seq, prev)?;
    Ok(Head {
        seq: line.seq,
        hash: line.hash,
    })
}
