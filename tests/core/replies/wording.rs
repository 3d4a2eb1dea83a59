//! Plain language over every text with sample values, and Spanish as firm as English.

use hosebib::finding::TaskKind;

use super::plain::{self, Counted, Tongue, count};
use super::texts::Texts;

const TONGUES: [Tongue; 2] = [Tongue::English, Tongue::Spanish];

#[test]
fn no_sentence_is_longer_than_twenty_words() {
    let mut long = Vec::new();
    for tongue in TONGUES {
        let texts = Texts::read(tongue);
        for key in texts.shapes.keys().filter(|key| is_prose(key)) {
            for form in texts.forms(key) {
                for sentence in plain::sentences(&form) {
                    let words = plain::words(sentence).count();
                    if words > 20 {
                        long.push(format!("`{key}` {words} words: {sentence}"));
                    }
                }
            }
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn the_whole_set_reads_easily_in_both_languages() {
    for tongue in TONGUES {
        let texts = Texts::read(tongue);
        let mut whole = Counted::default();
        for key in texts.shapes.keys().filter(|key| is_prose(key)) {
            for form in texts.forms(key) {
                whole.add(&count(&form, tongue));
            }
        }
        match tongue {
            Tongue::English => assert!(whole.grade() <= 8.0, "grade {:.1}", whole.grade()),
            Tongue::Spanish => assert!(whole.ease() >= 60.0, "ease {:.1}", whole.ease()),
        }
    }
}

#[test]
fn no_caution_is_hard_to_read() {
    let mut hard = Vec::new();
    for tongue in TONGUES {
        let texts = Texts::read(tongue);
        for key in texts
            .shapes
            .keys()
            .filter(|key| key.starts_with("caution-"))
        {
            for form in texts.forms(key) {
                let counted = count(&form, tongue);
                match tongue {
                    Tongue::English if counted.grade() > 10.0 => {
                        hard.push(format!("`{key}` grade {:.1}: {form}", counted.grade()))
                    }
                    Tongue::Spanish if counted.ease() < 50.0 => {
                        hard.push(format!("`{key}` ease {:.1}: {form}", counted.ease()))
                    }
                    _ => {}
                }
            }
        }
    }
    assert!(hard.is_empty(), "{}", hard.join("\n"));
}

#[test]
fn both_languages_give_the_same_numbers() {
    let (english, spanish) = (Texts::read(Tongue::English), Texts::read(Tongue::Spanish));
    let mut differ = Vec::new();
    for key in english.shapes.keys() {
        let (en, es) = (english.forms(key).join("\n"), spanish.forms(key).join("\n"));
        if numbers(&en) != numbers(&es) {
            differ.push(format!("`{key}`\n  {en}\n  {es}"));
        }
    }
    assert!(differ.is_empty(), "{}", differ.join("\n"));
}

#[test]
fn spanish_safety_words_are_no_looser() {
    let (english, spanish) = (Texts::read(Tongue::English), Texts::read(Tongue::Spanish));
    let pairs: [(&str, &[&str]); 6] = [
        ("licensed", &["licencia"]),
        ("local code", &["código local"]),
        ("never", &["nunca", "nada de", "ningún"]),
        ("emergency", &["emergencia"]),
        ("can kill", &["matar"]),
        ("dispatcher", &["despachador"]),
    ];
    let mut looser = Vec::new();
    for key in english
        .shapes
        .keys()
        .filter(|key| !key.starts_with("name-") && !key.starts_with("sum-"))
    {
        let en = english.forms(key)[0].to_lowercase();
        let es = spanish.forms(key)[0].to_lowercase();
        for (word, words) in pairs {
            let wanted = en.matches(word).count();
            let given: usize = words.iter().map(|word| es.matches(word).count()).sum();
            if given < wanted {
                looser.push(format!(
                    "`{key}` says `{word}` {wanted} times\n  {en}\n  {es}"
                ));
            }
        }
    }
    assert!(looser.is_empty(), "{}", looser.join("\n"));
}

/// Returns the numbers of a text, each once.
fn numbers(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| !c.is_ascii_digit() && c != '.' && c != ',' && c != ':');
    let parts = parts.map(|part| part.trim_matches(|c: char| !c.is_ascii_digit()).to_owned());
    let mut numbers: Vec<String> = parts.filter(|part| !part.is_empty()).collect();
    numbers.sort();
    numbers.dedup();
    numbers
}

/// Tells whether a message is read as sentences: labels of one or two words that go into others are not.
fn is_prose(key: &str) -> bool {
    let label = [
        "event-", "fault-", "reading-", "day-", "month-", "list-", "name-", "fact-", "value-",
        "origin-", "signal-", "urgency-", "stage-", "level-", "taps-", "hint",
    ];
    !label.iter().any(|family| key.starts_with(family))
        && !TaskKind::ALL
            .iter()
            .any(|kind| key == format!("task-{kind}"))
}
