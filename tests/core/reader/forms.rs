//! Another form of the same message means the same: spaces, case, courtesy, emoji, accents, order, measures.

use std::sync::LazyLock;

use super::compare::{all_examples, meaning, same_entries};
use hosebib::words::Reader;
use serde_json::Value;

/// What is compared of a reading.
type Meaning = (Vec<Value>, Value, bool);

static READER: LazyLock<Reader> = LazyLock::new(Reader::new);

/// Each example's text, read once for all changes of form.
static AS_WRITTEN: LazyLock<Vec<(String, Meaning)>> = LazyLock::new(|| {
    let texts = all_examples().into_iter();
    let texts = texts.map(|(_, example)| example["text"].as_str().unwrap().to_owned());
    texts
        .map(|text| {
            let means = meaning(&READER, &text);
            (text, means)
        })
        .collect()
});

/// Checks that a change of form changes the meaning of at most `spared` examples.
fn unchanged_by(name: &str, spared: usize, change: impl Fn(&str) -> Option<String>) {
    let mut changed = Vec::new();
    let mut tried = 0;
    for (text, means) in AS_WRITTEN.iter() {
        let Some(other) = change(text) else { continue };
        tried += 1;
        let now = meaning(&READER, &other);
        if *means != now {
            changed.push(format!(
                "{text:?}\n    {other:?}\n    {means:?}\n    {now:?}"
            ));
        }
    }
    println!("{name}: {tried} messages, {} changed", changed.len());
    for line in &changed {
        println!("  {line}");
    }
    assert!(
        changed.len() <= spared,
        "{name} changed {} of {tried} messages",
        changed.len()
    );
}

#[test]
fn extra_spaces_do_not_change_the_meaning() {
    unchanged_by("extra spaces", 0, |text| {
        (!text.contains("  ")).then(|| format!("  {}  ", text.replace(' ', "  ")))
    });
}

#[test]
fn case_does_not_change_the_meaning() {
    unchanged_by("upper case", 0, |text| Some(text.to_uppercase()));
}

#[test]
fn polite_words_do_not_change_the_meaning() {
    unchanged_by("thanks", 0, |text| {
        (!text.trim().is_empty() && !text.contains('"')).then(|| format!("{text}. Thanks"))
    });
}

#[test]
fn an_emoji_does_not_change_the_meaning() {
    unchanged_by("emoji", 0, |text| {
        (!text.trim().is_empty()).then(|| format!("{text} 🙂"))
    });
}

#[test]
fn missing_accents_do_not_change_the_meaning() {
    use unicode_normalization::UnicodeNormalization;
    use unicode_normalization::char::is_combining_mark;
    // in these the accent is the word: sí and si, cuánto and cuanto, choqué and choque, llegó and llego
    unchanged_by("no accents", 7, |text| {
        let bare: String = text
            .nfd()
            .filter(|c| !is_combining_mark(*c))
            .nfc()
            .collect();
        (bare != text && !text.contains(['½', '¼', '¾'])).then_some(bare)
    });
}

#[test]
fn the_order_of_independent_clauses_does_not_change_the_meaning() {
    let reader = Reader::new();
    let clauses = [
        "12 pressure 55",
        "14 arrived",
        "no lights in B7",
        "9 waste 3/4",
        "K2 battery 12.4",
        "31 outside -5",
    ];
    for a in clauses {
        for b in clauses {
            let (one, two) = (format!("{a}. {b}"), format!("{b}. {a}"));
            assert_eq!(meaning(&reader, &one), meaning(&reader, &two), "{one:?}");
        }
    }
}

#[test]
fn swapping_unit_names_swaps_the_entries() {
    let reader = Reader::new();
    for text in [
        "12 pressure 55, 14 tank 3/4",
        "leak on 12, 14 has no lights",
        "12 water on. 14 pumped 300 gal",
        "pressure 60 at 12 and 85 at 14",
    ] {
        let swapped = text
            .replace("12", "\0")
            .replace("14", "12")
            .replace('\0', "14");
        let mut want = meaning(&reader, text).0;
        for entry in &mut want {
            let unit = if entry["unit"] == "12" { "14" } else { "12" };
            entry["unit"] = Value::from(unit);
        }
        want.sort_by_key(|e| e["unit"].to_string());
        assert_eq!(meaning(&reader, &swapped).0, want, "{swapped:?}");
    }
}

#[test]
fn the_same_value_in_another_measure_reads_the_same() {
    let reader = Reader::new();
    for (a, b) in [
        ("12 pressure 4 bar", "12 pressure 400 kpa"),
        ("14 outside -5 C", "14 outside 23 F"),
        ("9 pumped 100 gal", "9 pumped 378.541 liters"),
        ("12 hose 30 m", "12 hose 98.4252 ft"),
        ("14 wind 20 mph", "14 wind 32.1869 km/h"),
    ] {
        let (x, y) = (meaning(&reader, a).0, meaning(&reader, b).0);
        assert!(same_entries(&x, &y), "{a:?} {x:?}\n{b:?} {y:?}");
    }
}
