//! The SHA-256 values that chain lines, bind seals and stand in for personal text.

use std::fmt;

use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use sha2::{Digest, Sha256};

/// A SHA-256 value (FIPS 180-4), written as 64 lower-case hex digits.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Hash([u8; 32]);

impl Hash {
    /// What the first line of a journal is chained to.
    pub const START: Hash = Hash([0; 32]);

    /// Hashes the parts as one run of bytes.
    pub fn of(parts: &[&[u8]]) -> Self {
        let mut state = Sha256::new();
        for part in parts {
            state.update(part);
        }
        Hash(state.finalize().into())
    }

    /// Returns the 32 bytes.
    pub fn bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// Takes 32 bytes that were written by [`Hash::bytes`].
    pub fn from_bytes(bytes: [u8; 32]) -> Self {
        Hash(bytes)
    }

    /// Reads 64 lower-case hex digits; anything else is `None`.
    pub fn from_hex(text: &str) -> Option<Self> {
        let bytes = bytes_of_hex(text)?;
        Some(Hash(bytes.try_into().ok()?))
    }
}

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&hex_of_bytes(&self.0))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for Hash {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&hex_of_bytes(&self.0))
    }
}

impl<'de> Deserialize<'de> for Hash {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Hash::from_hex(&text).ok_or_else(|| D::Error::custom("expected 64 lower-case hex digits"))
    }
}

/// Writes bytes as lower-case hex.
pub(super) fn hex_of_bytes(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let mut text = String::with_capacity(bytes.len() * 2);
    for byte in bytes {
        text.push(char::from(DIGITS[usize::from(byte >> 4)]));
        text.push(char::from(DIGITS[usize::from(byte & 15)]));
    }
    text
}

/// Reads lower-case hex of an even length; upper case is refused, so that a value has one spelling only.
pub(super) fn bytes_of_hex(text: &str) -> Option<Vec<u8>> {
    fn value(digit: u8) -> Option<u8> {
        match digit {
            b'0'..=b'9' => Some(digit - b'0'),
            b'a'..=b'f' => Some(digit - b'a' + 10),
            _ => None,
        }
    }
    let digits = text.as_bytes();
    if !digits.len().is_multiple_of(2) {
        return None;
    }
    digits
        .chunks_exact(2)
        .map(|pair| Some(value(pair[0])? << 4 | value(pair[1])?))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hash_is_sha_256() {
        // FIPS 180-4 example, NIST CSRC "SHA256.pdf", one block message "abc"
        let expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(Hash::of(&[b"a", b"bc"]).to_string(), expected);
        assert_eq!(Hash::from_hex(expected), Some(Hash::of(&[b"abc"])));
    }

    #[test]
    fn hex_has_one_spelling() {
        assert_eq!(bytes_of_hex("00ff"), Some(vec![0, 255]));
        assert_eq!(bytes_of_hex("00FF"), None);
        assert_eq!(bytes_of_hex("0"), None);
        assert_eq!(Hash::from_hex("00"), None);
    }
}
