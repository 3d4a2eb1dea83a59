//! A message of the examples, changed as the fuzzer's bytes say: so that it starts from what crews write.

use std::sync::LazyLock;

/// Messages of the examples.
static MESSAGES: LazyLock<Vec<String>> = LazyLock::new(|| {
    [
        include_str!("../../grammar/examples/en.jsonl"),
        include_str!("../../grammar/examples/es.jsonl"),
        include_str!("../../grammar/examples/tricky.jsonl"),
        include_str!("../../grammar/examples/heldout-en.jsonl"),
        include_str!("../../grammar/examples/heldout-es.jsonl"),
        include_str!("../../grammar/examples/heldout-tricky.jsonl"),
        include_str!("../../grammar/examples/heldout2-en.jsonl"),
        include_str!("../../grammar/examples/heldout2-es.jsonl"),
        include_str!("../../grammar/examples/heldout2-tricky.jsonl"),
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
const PIECES: [&str; 64] = [
    " ", "\n", ".", ",", ", ", "; ", "?", "!", "-", "/", ":", "\"", "'", "(", ")", "*", "#", "%",
    "°", "½", "=", "+", "12", "14", "B7", "0", "5", "95", "1,200", "2,5", "3/4", "1045", "5:50 pm",
    "-5", "12-14", "psi", "bar", "kPa", "gal", "litros", "volts", "amps", "C", "F", "ft", "not ",
    "no ", "if ", "was ", "sorry ", "y ", "de ", "and ", "half ", "minus ", "hundred ", "noventa ",
    "tank ", "unit ", "circuit ", "\u{200b}", "🚽", "e\u{301}", "<b>",
];

/// Makes a message of the bytes: two choose it, then three each change it.
pub(crate) fn message(bytes: &[u8]) -> String {
    let (which, changes) = bytes.split_at(bytes.len().min(2));
    let which = which
        .iter()
        .fold(0, |sum, byte| sum * 256 + usize::from(*byte));
    let mut text: Vec<char> = MESSAGES[which % MESSAGES.len()].chars().collect();
    for change in changes.chunks_exact(3) {
        let at = usize::from(change[1]) * text.len() / 256;
        let piece = PIECES[usize::from(change[2]) % PIECES.len()];
        match change[0] % 6 {
            0 => drop(text.splice(at..at, piece.chars())),
            1 if at < text.len() => drop(text.remove(at)),
            2 if at < text.len() => text.insert(at, text[at]),
            3 if at + 1 < text.len() => text.swap(at, at + 1),
            4 => text.truncate(at),
            5 => {
                let other = usize::from(change[2]) * 7 + usize::from(change[1]);
                text.extend(MESSAGES[other % MESSAGES.len()].chars());
            }
            _ => {}
        }
    }
    text.into_iter().collect()
}
