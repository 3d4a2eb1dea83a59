//! Reading is total: any text, and any mangled message of a crew, is read without a panic, and what comes of it holds.
#![no_main]

mod check;
mod mangle;

use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;
use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;

static READER: LazyLock<Reader> = LazyLock::new(Reader::new);

fuzz_target!(|data: &[u8]| {
    let Some((kind, rest)) = data.split_first() else {
        return;
    };
    let text = match kind % 2 {
        0 => String::from_utf8_lossy(rest).into_owned(),
        _ => mangle::message(rest),
    };
    let scale = match kind / 2 % 2 {
        0 => TemperatureScale::F,
        _ => TemperatureScale::C,
    };
    check::reading(&READER, &text, scale);
});
