//! The hash of the word table.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// A map with a fast hash: keys are short words of our own files, not chosen by an attacker.
pub(in crate::words) type FastMap<K, V> = HashMap<K, V, BuildHasherDefault<Fx>>;

/// The multiply-rotate hash that compilers use for short keys.
#[derive(Debug, Default, Clone, Copy)]
pub(in crate::words) struct Fx(u64);

impl Hasher for Fx {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let mut word = [0; 8];
            word[..chunk.len()].copy_from_slice(chunk);
            self.0 = (self.0.rotate_left(5) ^ u64::from_le_bytes(word))
                .wrapping_mul(0x517c_c1b7_2722_0a95);
        }
    }
}
