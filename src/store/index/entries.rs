//! How an index's entries are spelled as bytes: keys that sort as they are looked up, and values with their checks.

use super::{Found, Snapshot};
use crate::store::hash::Hash;
use crate::store::journal::{Head, Position};

/// The index's own layout; another number means that it is made anew.
const LAYOUT: u8 = 1;

// The first byte of a key says what it leads to. Entries under the two upper-case letters are not part of the tally.
pub(super) const META: &[u8] = b"M";
pub(super) const SNAPSHOT: &[u8] = b"S";
const CHECK_IN: u8 = b'c';
pub(super) const FLEET: &[u8] = b"f";
const SEEN: u8 = b'k';

/// What an index says of itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Meta {
    pub(super) last: Head,
    pub(super) tally: Tally,
}

/// The number of entries, and the sum of their hashes by exclusive or.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Tally {
    pub(super) count: u64,
    sum: u128,
}

impl Tally {
    /// Takes an entry into the tally (`by` 1) or out of it (-1).
    pub(super) fn flip(&mut self, key: &[u8], value: &[u8], by: i64) {
        let length = (key.len() as u64).to_be_bytes();
        let hash = Hash::of(&[&length, key, value]);
        let half: [u8; 16] = hash.bytes()[..16]
            .try_into()
            .expect("half of 32 bytes is 16");
        self.sum ^= u128::from_be_bytes(half);
        self.count = self.count.wrapping_add_signed(by);
    }
}

impl Meta {
    /// Returns the bytes kept under [`META`].
    pub(super) fn bytes(&self) -> Vec<u8> {
        let mut bytes = vec![LAYOUT];
        bytes.extend(self.last.seq.to_be_bytes());
        bytes.extend(self.last.hash.bytes());
        bytes.extend(self.tally.count.to_be_bytes());
        bytes.extend(self.tally.sum.to_be_bytes());
        bytes
    }

    /// Reads them; `None` for those of another layout.
    pub(super) fn read(bytes: &[u8]) -> Option<Self> {
        let (layout, mut rest) = bytes.split_first()?;
        if *layout != LAYOUT {
            return None;
        }
        let meta = Meta {
            last: Head {
                seq: u64::from_be_bytes(piece(&mut rest)?),
                hash: Hash::from_bytes(piece(&mut rest)?),
            },
            tally: Tally {
                count: u64::from_be_bytes(piece(&mut rest)?),
                sum: u128::from_be_bytes(piece(&mut rest)?),
            },
        };
        rest.is_empty().then_some(meta)
    }
}

/// Takes the next `N` bytes off the front.
fn piece<const N: usize>(rest: &mut &[u8]) -> Option<[u8; N]> {
    let (piece, after) = rest.split_first_chunk::<N>()?;
    *rest = after;
    Some(*piece)
}

pub(super) fn seen_key(key: &str) -> Vec<u8> {
    let mut bytes = vec![SEEN];
    bytes.extend(key.as_bytes());
    bytes
}

/// Builds a key that sorts by unit, then time, then turn: lengths first, numbers big-endian, the sign bit turned over.
pub(super) fn check_in_key(unit: &str, at: i64, seq: u64, number: u16) -> Vec<u8> {
    let length = u16::try_from(unit.len()).unwrap_or(u16::MAX);
    let mut bytes = vec![CHECK_IN];
    bytes.extend(length.to_be_bytes());
    bytes.extend(&unit.as_bytes()[..usize::from(length)]);
    bytes.extend((at ^ i64::MIN).to_be_bytes());
    bytes.extend(seq.to_be_bytes());
    bytes.extend(number.to_be_bytes());
    bytes
}

pub(super) fn found_in(key: &[u8], value: &[u8]) -> Option<Found> {
    let mut rest = key.get(key.len().checked_sub(18)?..)?;
    let at = i64::from_be_bytes(piece(&mut rest)?) ^ i64::MIN;
    let seq = u64::from_be_bytes(piece(&mut rest)?);
    let mut rest = value;
    let position = Position {
        segment: u64::from_be_bytes(piece(&mut rest)?),
        offset: u64::from_be_bytes(piece(&mut rest)?),
        length: u32::from_be_bytes(piece(&mut rest)?),
    };
    rest.is_empty().then_some(Found { at, seq, position })
}

pub(super) fn position_bytes(position: Position) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(20);
    bytes.extend(position.segment.to_be_bytes());
    bytes.extend(position.offset.to_be_bytes());
    bytes.extend(position.length.to_be_bytes());
    bytes
}

pub(super) fn snapshot_bytes(snapshot: &Snapshot) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(snapshot.bytes.len() + 76);
    bytes.extend(check_of(snapshot).bytes());
    bytes.extend(snapshot.format.to_be_bytes());
    bytes.extend(snapshot.head.seq.to_be_bytes());
    bytes.extend(snapshot.head.hash.bytes());
    bytes.extend(&snapshot.bytes);
    bytes
}

pub(super) fn read_snapshot(mut rest: &[u8]) -> Option<Snapshot> {
    let check = Hash::from_bytes(piece(&mut rest)?);
    let snapshot = Snapshot {
        format: u32::from_be_bytes(piece(&mut rest)?),
        head: Head {
            seq: u64::from_be_bytes(piece(&mut rest)?),
            hash: Hash::from_bytes(piece(&mut rest)?),
        },
        bytes: rest.to_vec(),
    };
    (check_of(&snapshot) == check).then_some(snapshot)
}

/// Returns the hash that guards a snapshot.
fn check_of(snapshot: &Snapshot) -> Hash {
    Hash::of(&[
        &snapshot.format.to_be_bytes(),
        &snapshot.head.seq.to_be_bytes(),
        snapshot.head.hash.bytes(),
        &snapshot.bytes,
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_sort_by_unit_then_time_then_turn() {
        let keys = [
            check_in_key("12", i64::MIN, 9, 0),
            check_in_key("12", -1, 9, 0),
            check_in_key("12", 0, 2, 0),
            check_in_key("12", 0, 2, 1),
            check_in_key("12", 0, 300, 0),
            check_in_key("12", 1, 1, 0),
            check_in_key("14", i64::MIN, 0, 0),
            check_in_key("120", i64::MIN, 0, 0),
        ];
        assert!(keys.is_sorted());
    }

    #[test]
    fn what_is_written_reads_back() {
        let position = Position {
            segment: 7,
            offset: 1 << 40,
            length: 900,
        };
        let key = check_in_key("12", -5, 8, 1);
        let found = Found {
            at: -5,
            seq: 8,
            position,
        };
        assert_eq!(found_in(&key, &position_bytes(position)), Some(found));
        let head = Head {
            seq: 8,
            hash: Hash::of(&[b"8"]),
        };
        let mut tally = Tally::default();
        tally.flip(b"key", b"value", 1);
        let meta = Meta { last: head, tally };
        assert_eq!(Meta::read(&meta.bytes()), Some(meta));
        let snapshot = Snapshot {
            format: 3,
            head,
            bytes: vec![1, 2, 3],
        };
        let mut bytes = snapshot_bytes(&snapshot);
        assert_eq!(read_snapshot(&bytes), Some(snapshot));
        bytes[80 - 6] ^= 1;
        assert_eq!(read_snapshot(&bytes), None);
    }
}
