//! The reader over the example files: exact meaning, wrong values, the unclear flag.

mod any_text;
mod figures;
mod forms;
mod outside;
mod score;
mod slips;

use std::fs;
use std::path::Path;

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};

use score::{every_file, score, values};

#[test]
fn the_example_files_read_as_their_gold_says() {
    let reader = Reader::new();
    let mut total_wrong = 0;
    let mut low = Vec::new();
    for file in every_file() {
        let score = score(&reader, &file);
        println!(
            "{file:<24} {:>4} messages  exact {:>5.1} %  wrong values {}  unclear flag {:>5.1} %",
            score.messages,
            score.share(score.exact),
            score.wrong_values.len(),
            score.share(score.flag_right)
        );
        for miss in &score.misses {
            println!("  {miss}");
        }
        for wrong in &score.wrong_values {
            println!("  WRONG VALUE {wrong}");
        }
        total_wrong += score.wrong_values.len();
        let least = if file.contains("tricky") {
            95.0
        } else if file.contains("es") {
            97.0
        } else {
            98.0
        };
        if score.share(score.exact) < least {
            low.push(format!(
                "{file}: {:.1} % exact, at least {least} expected",
                score.share(score.exact)
            ));
        }
    }
    assert_eq!(
        total_wrong, 0,
        "a wrong value logged is worse than a question"
    );
    assert!(low.is_empty(), "{low:?}");
}

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
            let Some(sentence) = &entry.sentence else {
                if matches!(entry.is.split(' ').next(), Some("event" | "fault")) && !entry.accents {
                    // the spellings are their own sentences
                    let bare: Vec<&String> = entry
                        .say
                        .iter()
                        .filter(|s| !s.contains(['(', '[', '*']))
                        .collect();
                    let code = entry.is.split(' ').nth(1).unwrap();
                    for say in bare {
                        let got = to_json(say, &reader.hear(say, TemperatureScale::F)).to_string();
                        if !got.contains(&format!("\"{code}\"")) {
                            wrong.push(format!(
                                "{file}: {say:?} is not read as {}: {got}",
                                entry.is
                            ));
                        }
                    }
                }
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

#[test]
fn words_of_the_language_are_not_taken_for_ours() {
    let reader = Reader::new();
    for text in [
        "12 lever 95",
        "14 tanker 3/4",
        "I presume 12 is fine",
        "a small box for 9",
        "we all slept well at 12",
    ] {
        assert_eq!(values(&reader, text), Vec::<String>::new(), "{text:?}");
        assert!(
            reader.hear(text, TemperatureScale::F).taken.is_empty(),
            "{text:?}"
        );
    }
    assert_eq!(
        reader.hear("12 presure 55", TemperatureScale::F).taken[0].read,
        "pressure"
    );
}

#[test]
fn bare_answers_are_kept_for_the_open_question() {
    use hosebib::heard::ShortAnswer;
    let reader = Reader::new();
    let answer = |text: &str| {
        reader
            .hear(text, TemperatureScale::F)
            .answer
            .unwrap_or_default()
    };
    assert_eq!(answer("14").number, Some(14.0));
    assert_eq!(answer("14").unit.unwrap().as_str(), "14");
    assert_eq!(
        answer("psi").measure.as_deref(),
        Some("psi").or(answer("psi").noun.as_deref())
    );
    assert_eq!(answer("waste").noun.as_deref(), Some("waste"));
    assert_eq!(answer("yes").word, Some(ShortAnswer::Yes));
    assert_eq!(answer("sí").word, Some(ShortAnswer::Yes));
    assert_eq!(answer("no").word, Some(ShortAnswer::No));
    assert_eq!(answer("before").word, Some(ShortAnswer::Before));
    assert_eq!(
        answer("before the regulator").word,
        Some(ShortAnswer::Before)
    );
    assert!(reader.hear("yes", TemperatureScale::F).unclear.is_empty());
    assert!(!reader.hear("14", TemperatureScale::F).unclear.is_empty());
}

#[test]
fn needs_and_watches_are_kept_for_the_desk() {
    use hosebib::heard::{Need, PlanKind};
    let reader = Reader::new();
    let heard = reader.hear("need a pump-out on 12 before noon", TemperatureScale::F);
    assert!(
        matches!(&heard.plans[0].kind, PlanKind::Need { need: Need::PumpOut, by: Some(by) } if by == "12:00"),
        "{:?}",
        heard.plans
    );
    assert_eq!(heard.plans[0].unit.as_ref().unwrap().as_str(), "12");
    let heard = reader.hear("if 12 hits 3/4 call me", TemperatureScale::F);
    assert!(
        matches!(heard.plans[0].kind, PlanKind::Watch { key: hosebib::heard::ReadingKey::WastePct, value, below: false } if value == 75.0),
        "{:?}",
        heard.plans
    );
    assert!(!heard.set_aside.is_empty());
}
