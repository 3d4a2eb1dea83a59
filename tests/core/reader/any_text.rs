//! No text panics, and reading is deterministic.

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use proptest::prelude::*;
use std::sync::LazyLock;

static READER: LazyLock<Reader> = LazyLock::new(Reader::new);

/// Pieces that the grammar cares for, thrown together.
fn salad() -> impl Strategy<Value = String> {
    let piece = prop::sample::select(vec![
        "12",
        "unit",
        "#",
        "psi",
        "55",
        "-",
        "5",
        "3/4",
        "¾",
        "tank",
        "full",
        "not",
        "no",
        "and",
        ",",
        ".",
        "\n",
        "?",
        "if",
        "sorry",
        "*",
        "was",
        "now",
        "yesterday",
        "\"",
        "14",
        "-",
        "to",
        "between",
        "50-60",
        "2,5",
        "bar",
        "1,200",
        "litros",
        "half",
        "minus",
        "below",
        "at",
        "1045",
        "5:50 am",
        "la",
        "de",
        "a",
        "y",
        "noventa",
        "cinco",
        "hundred",
        "point",
        "done",
        "41",
        "R-204",
        "B7",
        "$120",
        "555-0142",
        "°",
        "%",
        "'",
        "(",
        ")",
        "leak",
        "pumped",
        "hours",
        "both",
        "all",
        "units",
        "or",
        "of",
        "cords",
        "circuit",
        "amps",
        "12v",
        "lights",
        "on",
        "off",
        "<b>",
        "\u{200b}",
        "🚽",
        "over",
    ]);
    prop::collection::vec(piece, 0..40).prop_map(|p| p.join(" "))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_panics_and_reading_is_deterministic(text in any::<String>()) {
        let one = READER.hear(&text, TemperatureScale::F);
        prop_assert_eq!(&one, &READER.hear(&text, TemperatureScale::F));
        to_json(&text, &one);
    }

    #[test]
    fn no_salad_of_our_own_words_panics(text in salad()) {
        let heard = READER.hear(&text, TemperatureScale::C);
        for entry in &heard.entries {
            prop_assert!(!entry.is_empty());
            for value in entry.readings.values.values() {
                prop_assert!(value.is_finite());
            }
        }
    }
}

#[test]
fn every_spelling_is_read_alone_and_beside_a_number() {
    use hosebib::words::WordFile;
    for file in ["en.toml", "es.toml"] {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("grammar/words")
            .join(file);
        let words = WordFile::parse(file, &std::fs::read_to_string(path).unwrap()).unwrap();
        // each alone and beside a number in one of four ways, in turn: neighbours in the file mean the same
        let says = words.word.iter().flat_map(|entry| &entry.say);
        for (turn, say) in says.enumerate() {
            let plain = say.replace(['(', ')', '[', ']', '|', '*'], " ");
            let beside = match turn % 4 {
                0 => format!("{plain} 12"),
                1 => format!("12 {plain}"),
                2 => format!("{plain} 3/4"),
                _ => format!("is 12 {plain}?"),
            };
            for text in [plain, beside] {
                to_json(&text, &READER.hear(&text, TemperatureScale::F));
            }
        }
    }
}

/// Each shape at a length past every limit of a sentence, and all of them in one message at the longest length that is
/// promised. That the time grows with the length alone is what `cargo bench --bench reading` shows.
#[test]
fn sixty_four_kibibytes_of_anything_are_read() {
    let shapes = [
        "12 ",
        "psi 55, ",
        "\"",
        "((((",
        "-5",
        "🚽",
        "<b",
        "no not ",
        "a ",
        "1,000,",
        "twelve hundred and ",
        "e\u{301}\u{301}",
        "12-14 ",
        "12, 14 and ",
        "12 tank 3/4. ",
        "12 leak ",
        "12 is low, ",
    ];
    let repeated = |piece: &str, bytes: usize| piece.repeat(bytes.div_ceil(piece.len()));
    for piece in shapes {
        READER.hear(&repeated(piece, 12 * 1024), TemperatureScale::F);
    }
    let all: String = shapes
        .iter()
        .map(|piece| repeated(piece, 64 * 1024 / shapes.len()))
        .collect();
    assert!(all.len() >= 64 * 1024 - shapes.len());
    let heard = READER.hear(&all, TemperatureScale::F);
    assert_eq!(heard, READER.hear(&all, TemperatureScale::F));
}
