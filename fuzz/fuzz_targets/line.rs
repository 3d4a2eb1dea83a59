//! Whatever bytes stand in a journal, a line is read or refused without a panic, and a record that reads folds.
#![no_main]

use hosebib::book::{Book, Record};
use hosebib::store::Line;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|data: &[u8]| {
    if let Ok(line) = Line::read(data) {
        assert!(line.seq > 0 || line.records.len() < data.len());
    }
    // behind the hash, which no fuzzer finds: the records themselves
    if let Ok(record) = serde_json::from_slice::<Record>(data) {
        Book::default().apply(&record);
    }
});
