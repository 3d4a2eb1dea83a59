//! One line of the journal: one turn, whole or not at all.
//!
//! A line is compact JSON in one fixed spelling: what is read is written again and held against the bytes, so that a
//! flipped bit that leaves the meaning alone (`1e5`, `1E5`) is found like any other.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::hash::Hash;
use super::personal::{self, Salt};

/// The version that this release writes, and the newest that it reads.
pub const VERSION: u16 = 1;

/// What one turn has to say to the journal.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The message's own key (network, chat, message, edit date), where the turn comes from a message. It is kept as a
    /// personal text, since a private chat's number is a person's.
    pub key: Option<String>,
    /// When the turn was received.
    pub at: DateTime<Utc>,
    /// What was decided, for the book to fold.
    pub records: Vec<Value>,
    /// The messages it puts out.
    pub outgoing: Vec<Value>,
}

/// A turn as the journal keeps it.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its place: 1 for the first turn, no gaps.
    pub seq: u64,
    /// The version it was written in.
    pub version: u16,
    /// The message's own key; `None` as well where it was emptied.
    pub key: Option<String>,
    /// When the turn was received.
    pub at: DateTime<Utc>,
    /// What was decided; a personal text is `{"personal": "text"}`, or `{"personal": null}` where it was emptied.
    pub records: Vec<Value>,
    /// The messages it put out.
    pub outgoing: Vec<Value>,
    /// The hash of the line before.
    pub prev: Hash,
    /// The hash of this line, which covers `prev` and the digests of its personal texts.
    pub hash: Hash,
}

impl Line {
    /// Reads the bytes of one line, without its newline, and holds them against the hash in them; the chain is the
    /// reader's to hold.
    ///
    /// # Errors
    ///
    /// What is wrong with the bytes.
    pub fn read(bytes: &[u8]) -> Result<Line, String> {
        match Stored::read(bytes) {
            Ok(stored) => Ok(stored.line()),
            Err(Flaw::Newer(version)) => {
                Err(format!("a later release wrote it: version {version}"))
            }
            Err(Flaw::Damaged(what)) => Err(what),
        }
    }
}

/// Why bytes are not a good line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Flaw {
    /// A later release wrote it.
    Newer(u64),
    /// It is damaged, in these words.
    Damaged(String),
}

/// A line exactly as it stands in the file: personal texts salted, fields in the order of the file.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Stored {
    pub(super) seq: u64,
    version: u16,
    at: DateTime<Utc>,
    key: Value,
    records: Value,
    outgoing: Value,
    prev: Hash,
    hash: Hash,
}

/// What the hash covers.
#[derive(Serialize)]
struct Covered<'a> {
    seq: u64,
    version: u16,
    at: DateTime<Utc>,
    key: Value,
    records: Value,
    outgoing: Value,
    prev: &'a Hash,
}

impl Stored {
    /// Puts a draft into its place.
    pub(super) fn new(
        draft: &Draft,
        seq: u64,
        prev: Hash,
        salt: &mut dyn Salt,
    ) -> Result<Self, String> {
        let key = match &draft.key {
            Some(key) => personal::salted(&serde_json::json!({ "personal": key }), salt)?,
            None => Value::Null,
        };
        let mut list = |values: &[Value]| -> Result<Value, String> {
            values
                .iter()
                .map(|value| personal::salted(value, salt))
                .collect()
        };
        let mut stored = Stored {
            seq,
            version: VERSION,
            at: draft.at,
            key,
            records: list(&draft.records)?,
            outgoing: list(&draft.outgoing)?,
            prev,
            hash: Hash::START,
        };
        stored.hash = stored.computed_hash();
        Ok(stored)
    }

    /// Reads and checks the bytes of one line, without its newline.
    pub(super) fn read(bytes: &[u8]) -> Result<Self, Flaw> {
        let damaged = |what: &str| Flaw::Damaged(what.to_owned());
        let stored: Stored =
            serde_json::from_slice(bytes).map_err(|_| match version_of(bytes) {
                Some(version) if version > u64::from(VERSION) => Flaw::Newer(version),
                _ => damaged("it is not a line of this journal"),
            })?;
        if stored.version > VERSION {
            return Err(stored.newer_or_damaged());
        }
        if stored.bytes() != bytes {
            return Err(damaged("it is not spelled as it was written"));
        }
        for value in [&stored.key, &stored.records, &stored.outgoing] {
            personal::check(value).map_err(Flaw::Damaged)?;
        }
        if stored.computed_hash() != stored.hash {
            return Err(damaged("its contents do not fit its hash"));
        }
        Ok(stored)
    }

    /// Tells a line of a later release from one of ours whose version was damaged: that one's hash fits our version.
    fn newer_or_damaged(mut self) -> Flaw {
        let found = self.version;
        for version in 1..=VERSION {
            self.version = version;
            if self.computed_hash() == self.hash {
                return Flaw::Damaged("its contents do not fit its hash".into());
            }
        }
        Flaw::Newer(found.into())
    }

    /// Returns the line's bytes, without a newline.
    pub(super) fn bytes(&self) -> Vec<u8> {
        serde_json::to_vec(self).expect("values made of JSON print as JSON")
    }

    /// Returns the line as the rest of the program knows it.
    pub(super) fn line(&self) -> Line {
        let list = |value: &Value| match personal::plain(value) {
            Value::Array(items) => items,
            _ => Vec::new(),
        };
        Line {
            seq: self.seq,
            version: self.version,
            key: personal::plain(&self.key)
                .get("personal")
                .and_then(Value::as_str)
                .map(str::to_owned),
            at: self.at,
            records: list(&self.records),
            outgoing: list(&self.outgoing),
            prev: self.prev,
            hash: self.hash,
        }
    }

    /// Empties the personal texts that `wanted` shows as null, and the key where it shows none; returns how many went.
    pub(super) fn empty(&mut self, wanted: &Line) -> Result<usize, String> {
        let mut now = self.line();
        let mut count = 0;
        if wanted.key != now.key {
            if wanted.key.is_some() {
                return Err("a key would be changed, not emptied".into());
            }
            let nothing = serde_json::json!({ "personal": null });
            count += personal::emptied(&mut self.key, &nothing)?;
            now.key = None;
        }
        count += personal::emptied(&mut self.records, &Value::Array(wanted.records.clone()))?;
        count += personal::emptied(&mut self.outgoing, &Value::Array(wanted.outgoing.clone()))?;
        now.records.clone_from(&wanted.records);
        now.outgoing.clone_from(&wanted.outgoing);
        if now != *wanted {
            return Err("a line's place, time or hash would be changed".into());
        }
        Ok(count)
    }

    fn computed_hash(&self) -> Hash {
        let covered = Covered {
            seq: self.seq,
            version: self.version,
            at: self.at,
            key: personal::reduced(&self.key),
            records: personal::reduced(&self.records),
            outgoing: personal::reduced(&self.outgoing),
            prev: &self.prev,
        };
        Hash::of(&[&serde_json::to_vec(&covered).expect("values made of JSON print as JSON")])
    }
}

fn version_of(bytes: &[u8]) -> Option<u64> {
    #[derive(Deserialize)]
    struct Versioned {
        version: u64,
    }
    let versioned: Versioned = serde_json::from_slice(bytes).ok()?;
    Some(versioned.version)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn stored() -> Stored {
        let draft = Draft {
            key: Some("tg:-1001:45:0".into()),
            at: "2027-01-16T21:10:00Z".parse().unwrap(),
            records: vec![
                json!({"said": {"personal": "unit 12 pressure 95"}, "psi": 95.0, "f": 1e-7}),
            ],
            outgoing: vec![json!({"to": {"personal": "tg:77"}, "text": {"personal": "Now …"}})],
        };
        let mut next = 0u128;
        let mut salt = move || {
            next += 1;
            next.to_be_bytes()
        };
        Stored::new(&draft, 1, Hash::START, &mut salt).unwrap()
    }

    #[test]
    fn a_line_reads_back_as_written() {
        let stored = stored();
        let line = Stored::read(&stored.bytes()).unwrap().line();
        assert_eq!(line, stored.line());
        assert_eq!(line.key.as_deref(), Some("tg:-1001:45:0"));
        assert_eq!(
            line.records[0]["said"],
            json!({"personal": "unit 12 pressure 95"})
        );
    }

    #[test]
    fn every_flipped_bit_is_found() {
        let good = stored().bytes();
        for at in 0..good.len() {
            for bit in 0..8 {
                let mut bad = good.clone();
                bad[at] ^= 1 << bit;
                assert!(
                    Stored::read(&bad).is_err(),
                    "bit {bit} of byte {at} passed: {}",
                    String::from_utf8_lossy(&bad)
                );
            }
        }
    }

    #[test]
    fn every_shortening_is_found() {
        let good = stored().bytes();
        for length in 0..good.len() {
            assert!(Stored::read(&good[..length]).is_err(), "{length} bytes");
        }
    }

    #[test]
    fn an_emptied_line_keeps_its_hash_and_reads_back() {
        let mut stored = stored();
        let hash = stored.hash;
        let mut wanted = stored.line();
        wanted.key = None;
        wanted.records[0]["said"]["personal"] = Value::Null;
        wanted.outgoing[0]["to"]["personal"] = Value::Null;
        assert_eq!(stored.empty(&wanted), Ok(3));
        let read = Stored::read(&stored.bytes()).unwrap();
        assert_eq!(read.hash, hash);
        assert_eq!(read.line(), wanted);
        assert!(!String::from_utf8(stored.bytes()).unwrap().contains("1001"));
    }

    #[test]
    fn a_line_of_a_newer_release_says_so() {
        let newer = br#"{"seq":1,"version":9,"shape":"unheard of"}"#;
        assert_eq!(Stored::read(newer).unwrap_err(), Flaw::Newer(9));
    }
}
