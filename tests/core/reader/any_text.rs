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
        for say in words.word.iter().flat_map(|entry| &entry.say) {
            let plain = say.replace(['(', ')', '[', ']', '|', '*'], " ");
            for text in [
                plain.clone(),
                format!("{plain} 12"),
                format!("12 {plain}"),
                format!("{plain} 3/4"),
                format!("is 12 {plain}?"),
            ] {
                to_json(&text, &READER.hear(&text, TemperatureScale::F));
            }
        }
    }
}

#[test]
fn sixty_four_kibibytes_of_anything_are_read() {
    for piece in [
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
    ] {
        let text = piece.repeat(64 * 1024 / piece.len());
        let heard = READER.hear(&text, TemperatureScale::F);
        assert_eq!(heard, READER.hear(&text, TemperatureScale::F));
    }
}
