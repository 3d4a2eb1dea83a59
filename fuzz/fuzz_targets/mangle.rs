//! A message of the examples, changed as the fuzzer's bytes say: so that it starts from what crews write.

use std::sync::LazyLock;

macro_rules! example_files {
    ($($name:literal),+ $(,)?) => {
        [$(include_str!(concat!("../../grammar/examples/", $name, ".jsonl"))),+]
    };
}

/// Messages of the examples.
static MESSAGES: LazyLock<Vec<String>> = LazyLock::new(|| {
    example_files![
        "en",
        "es",
        "tricky",
        "more-en",
        "more-es",
        "heldout-en",
        "heldout-es",
        "heldout-tricky",
        "heldout2-en",
        "heldout2-es",
        "heldout2-tricky",
        "heldout3-en",
        "heldout3-es",
        "heldout3-tricky",
        "heldout4-en",
        "heldout4-es",
        "heldout4-tricky",
        "heldout5-en",
        "heldout5-es",
        "heldout5-tricky",
        "heldout6-en",
        "heldout6-es",
        "heldout6-tricky",
    ]
    .iter()
    .flat_map(|file| file.lines())
    .map(|line| {
        let example: serde_json::Value = serde_json::from_str(line).expect("one object a line");
        example["text"].as_str().expect("a text").to_owned()
    })
    .collect()
});

/// What the grammar cares for, put in between.
const PIECES: [&str; 80] = [
    " ",
    "\n",
    ".",
    ",",
    ", ",
    "; ",
    "?",
    "!",
    "-",
    "/",
    ":",
    "\"",
    "'",
    "(",
    ")",
    "*",
    "#",
    "%",
    "°",
    "½",
    "=",
    "+",
    "12",
    "14",
    "B7",
    "0",
    "5",
    "95",
    "1,200",
    "2,5",
    "3/4",
    "1045",
    "5:50 pm",
    "-5",
    "12-14",
    "psi",
    "bar",
    "kPa",
    "gal",
    "litros",
    "volts",
    "amps",
    "C",
    "F",
    "ft",
    "not ",
    "no ",
    "if ",
    "was ",
    "sorry ",
    "y ",
    "de ",
    "and ",
    "half ",
    "minus ",
    "hundred ",
    "noventa ",
    "tank ",
    "unit ",
    "circuit ",
    "\u{200b}",
    "🚽",
    "e\u{301}",
    "<b>",
    "yesterday ",
    "last night ",
    "this morning ",
    "ago ",
    "in the morning ",
    "at ",
    "now ",
    "both ",
    "\u{202e}",
    "１２",
    "−",
    "\u{feff}",
    "ñ",
    "İ",
    "\t",
    "99999999999999999999",
];

/// Rows of a keyboard: the keys beside one are its neighbours.
const ROWS: [&str; 4] = ["1234567890-=", "qwertyuiop[]", "asdfghjkl;'", "zxcvbnm,./"];

/// Makes a message of the bytes: two choose it, then three each change it.
pub(crate) fn message(bytes: &[u8]) -> String {
    let (which, changes) = bytes.split_at(bytes.len().min(2));
    let which = which
        .iter()
        .fold(0, |sum, byte| sum * 256 + usize::from(*byte));
    let mut text: Vec<char> = MESSAGES[which % MESSAGES.len()].chars().collect();
    for change in changes.chunks_exact(3) {
        let at = usize::from(change[1]) * text.len() / 256;
        let more = usize::from(change[2]);
        let other = || MESSAGES[(more * 7 + usize::from(change[1])) % MESSAGES.len()].chars();
        let end = text.len().min(at + 1 + more % 12);
        match change[0] % 12 {
            0 => drop(text.splice(at..at, PIECES[more % PIECES.len()].chars())),
            1 if at < text.len() => drop(text.remove(at)),
            2 if at < text.len() => text.insert(at, text[at]),
            3 if at + 1 < text.len() => text.swap(at, at + 1),
            4 => text.truncate(at),
            5 => text.extend(other()),
            // the head of one message, the tail of another
            6 => {
                text.truncate(at);
                text.extend(other().skip(more % 40));
            }
            7 if at < text.len() => text[at] = neighbour(text[at], more),
            8 if at < text.len() => flip_case(&mut text, at),
            // said again
            9 if at < text.len() => drop(text.splice(at..at, text[at..end].to_vec())),
            10 => text.insert(at, any_char(change[1], change[2])),
            11 if at < text.len() => drop(text.drain(at..end)),
            _ => {}
        }
    }
    text.into_iter().collect()
}

fn neighbour(key: char, more: usize) -> char {
    let low = key.to_ascii_lowercase();
    ROWS.iter()
        .find_map(|row| {
            let place = row.find(low)?;
            let beside = if more.is_multiple_of(2) {
                place + 1
            } else {
                place.checked_sub(1)?
            };
            row.chars().nth(beside)
        })
        .unwrap_or(key)
}

fn flip_case(text: &mut Vec<char>, at: usize) {
    let flipped: Vec<char> = if text[at].is_lowercase() {
        text[at].to_uppercase().collect()
    } else {
        text[at].to_lowercase().collect()
    };
    text.splice(at..=at, flipped);
}

/// Any character of the first two planes, by two bytes.
fn any_char(high: u8, low: u8) -> char {
    let plane = u32::from(high & 1) << 16;
    char::from_u32(plane | u32::from(high) << 8 | u32::from(low)).unwrap_or('\u{fffd}')
}
