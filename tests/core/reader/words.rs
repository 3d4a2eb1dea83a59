//! The word files: each entry reads as it says, and a fleet may add its own.

use super::compare::values;
use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use std::fs;
use std::path::Path;

#[test]
fn phrases_of_crews_are_known() {
    let reader = Reader::new();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/examples/phrases.csv");
    let text = fs::read_to_string(path).unwrap();
    let mut wrong = Vec::new();
    for line in text.lines().skip(1).filter(|l| !l.trim().is_empty()) {
        let mut parts = line.rsplitn(3, ',');
        let (code, _, phrase) = (
            parts.next().unwrap(),
            parts.next().unwrap(),
            parts.next().unwrap(),
        );
        let got = to_json(phrase, &reader.hear(phrase, TemperatureScale::F)).to_string();
        if !got.contains(&format!("\"{code}\"")) {
            wrong.push(format!("{phrase} ({code}): {got}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn each_word_entry_reads_as_it_says_in_its_sentence() {
    use hosebib::words::WordFile;
    let reader = Reader::new();
    let mut wrong = Vec::new();
    for file in ["en.toml", "es.toml"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("grammar/words")
            .join(file);
        let words = WordFile::parse(file, &fs::read_to_string(path).unwrap()).unwrap();
        for entry in &words.word {
            if matches!(entry.is.split(' ').next(), Some("event" | "fault")) && !entry.accents {
                // the spellings are sentences too
                let bare = entry.say.iter().filter(|s| !s.contains(['(', '[', '*']));
                let code = entry.is.split(' ').nth(1).unwrap();
                for say in bare.filter(|_| entry.sentence.is_none()) {
                    let got = to_json(say, &reader.hear(say, TemperatureScale::F)).to_string();
                    if !got.contains(&format!("\"{code}\"")) {
                        wrong.push(format!(
                            "{file}: {say:?} is not read as {}: {got}",
                            entry.is
                        ));
                    }
                }
            }
            let Some(sentence) = &entry.sentence else {
                wrong.push(format!(
                    "{file}: `{}` has no sentence to try it with",
                    entry.is
                ));
                continue;
            };
            let heard = reader.hear(sentence, TemperatureScale::F);
            let got = to_json(sentence, &heard).to_string();
            let right = match entry.is.split_once(' ') {
                Some(("event" | "fault", code)) => got.contains(&format!("\"{code}\"")),
                Some(("noun" | "state" | "measure" | "level", _)) => {
                    !heard.entries.is_empty() || !heard.unclear.is_empty()
                }
                Some(("need", _)) => !heard.plans.is_empty(),
                Some(("number", number)) if number.parse::<f64>().is_ok() => {
                    let pumped = format!("\"pumped_gal\":{number}");
                    got.contains(&pumped)
                }
                Some(("command", _)) => heard.command.is_some(),
                _ => true,
            };
            if !right {
                wrong.push(format!(
                    "{file}: {sentence:?} does not show `{}`: {got}",
                    entry.is
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_fleets_own_words_are_read_and_clashes_are_named() {
    let reader =
        Reader::with_words("[[word]]\nis = \"noun waste\"\nsay = [\"honeypot\"]\n").unwrap();
    assert_eq!(values(&reader, "12 honeypot 3/4"), ["\"12\" waste_pct 75"]);
    let clash =
        Reader::with_words("[[word]]\nis = \"noun waste\"\nsay = [\"pressure\"]\n").unwrap_err();
    assert!(clash.to_string().contains("`pressure`"), "{clash}");
    let unknown =
        Reader::with_words("[[word]]\nis = \"noun whale\"\nsay = [\"moby\"]\n").unwrap_err();
    assert!(unknown.to_string().contains("noun whale"), "{unknown}");
}
