//! The word files: each entry reads as it says, and a fleet may add its own.

use super::compare::{all_examples, values};
use hosebib::heard::{Event, Fault, ReadingKey};
use hosebib::quantity::TemperatureScale;
use hosebib::words::{NameOf, Reader, TaughtWord, TeachError, to_json};
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
fn a_companys_own_words_are_read_as_the_keyword_they_are_said_for() {
    let words = [
        TaughtWord::new("Honeypot", "waste"),
        TaughtWord::new("\"sweet barrel\"", "fresh"),
        TaughtWord::new("gone quiet", "no power"),
        TaughtWord::new("melaza", "negras"),
    ];
    let reader = Reader::with_words(&words);
    assert_eq!(values(&reader, "12 honeypot 3/4"), ["\"12\" waste_pct 75"]);
    assert_eq!(values(&reader, "12 HONEYPOT 3/4"), ["\"12\" waste_pct 75"]);
    assert_eq!(
        values(&reader, "melaza de la 12 a 3/4"),
        ["\"12\" waste_pct 75"]
    );
    assert_eq!(
        values(&reader, "12 sweet barrel 1/2"),
        ["\"12\" fresh_pct 50"]
    );
    // a slip of the thumb in it is mended as in any keyword
    assert_eq!(values(&reader, "12 honneypot 3/4"), ["\"12\" waste_pct 75"]);
    let heard = reader.hear("14 gone quiet", TemperatureScale::F);
    assert!(
        heard.entries[0].faults.contains(&Fault::NoPower),
        "{heard:?}"
    );
    assert!(values(&Reader::new(), "12 honeypot 3/4").is_empty());
}

#[test]
fn a_word_that_would_change_other_messages_is_refused_with_its_reason() {
    let reader = Reader::new();
    let names = [
        ("12", NameOf::Trailer),
        ("Bluebell", NameOf::Site),
        ("Tobin", NameOf::Person),
    ];
    let check = |say: &str, means: &str| {
        let word = TaughtWord::new(say, means);
        reader.check_word(&word, names.iter().copied())
    };
    for say in ["honey barrel", "big belly", "barrilote"] {
        assert_eq!(check(say, "waste"), Ok(()), "{say}");
    }
    assert_eq!(check("honeypot", "no hot water"), Ok(()));
    assert_eq!(check("chingadera", "negras"), Ok(()));
    for say in ["pressure", "fresh", "leak", "presión"] {
        assert!(
            matches!(check(say, "waste"), Err(TeachError::Known(_))),
            "{say}"
        );
    }
    assert_eq!(
        check("pressure", "waste"),
        Err(TeachError::Known("pressure".into()))
    );
    for say in ["waste", "black tank", "negras", "honey tank"] {
        assert_eq!(check(say, "waste"), Err(TeachError::Same), "{say}");
    }
    for say in [
        "the",
        "not",
        "house",
        "casi",
        "yes",
        "the tank",
        "no water",
        "half full",
        "tank and",
    ] {
        let got = check(say, "waste");
        let refused = matches!(got, Err(TeachError::Ordinary | TeachError::Known(_)));
        assert!(refused, "{say}: {got:?}");
    }
    for say in ["twelve", "doce", "95", "b7"] {
        assert_eq!(check(say, "waste"), Err(TeachError::Number), "{say}");
    }
    for say in [
        "",
        "?!",
        "a b c d e",
        "(honey|pot)",
        "honey*pot x",
        &"x".repeat(50),
    ] {
        assert_eq!(check(say, "waste"), Err(TeachError::NoWord), "{say}");
    }
    assert_eq!(
        check("presure", "waste"),
        Err(TeachError::SlipOf("pressure".into()))
    );
    assert_eq!(check("presure", "pressure"), Ok(()));
    assert_eq!(
        check("bluebell", "waste"),
        Err(TeachError::Name(NameOf::Site))
    );
    assert_eq!(
        check("TOBIN", "waste"),
        Err(TeachError::Name(NameOf::Person))
    );
    for means in ["twelve", "yes", "not", "undo", "teach"] {
        let got = check("honeypot", means);
        assert!(
            matches!(got, Err(TeachError::NoSuchUse) | Ok(())),
            "{means}: {got:?}"
        );
    }
    let near = |means: &str| match check("honeypot", means) {
        Err(TeachError::UnknownKeyword(near)) => near,
        other => panic!("{means}: {other:?}"),
    };
    assert!(
        near("wastte").contains(&"waste".to_owned()),
        "{:?}",
        near("wastte")
    );
    assert!(
        near("hot watr tap")
            .iter()
            .all(|keyword| !keyword.is_empty())
    );
    assert_eq!(near("zzzzzzzzzzzz"), Vec::<String>::new());
}

#[test]
fn no_example_is_read_otherwise_once_words_are_taught() {
    let taught = [
        TaughtWord::new("honeypot", "waste"),
        TaughtWord::new("sweetwater barrel", "fresh"),
        TaughtWord::new("gone quiet", "no power"),
    ];
    let (plain, own) = (Reader::new(), Reader::with_words(&taught));
    for (_, example) in all_examples() {
        let text = example["text"].as_str().unwrap();
        let read = |reader: &Reader| reader.hear(text, TemperatureScale::F);
        assert_eq!(read(&own), read(&plain), "{text:?}");
    }
}

#[test]
fn a_sites_name_that_holds_a_word_of_ours_reports_nothing() {
    let names = ["Windlass Flat", "windlass-flat", "Quince Terrace", "Flat"];
    let places = Reader::misleading_places(names);
    assert_eq!(places, ["windlass flat"]);
    let reader = Reader::new().with_places(&places);
    let heard = |text| reader.hear(text, TemperatureScale::F);
    assert!(heard("23 at Windlass Flat").entries.is_empty());
    let arrived = heard("23 on site at windlass flat");
    assert!(arrived.entries[0].faults.is_empty(), "{arrived:?}");
    // a tire is flat all the same
    let flat = heard("23 at windlass flat, left tire is flat");
    assert_eq!(flat.entries[0].faults, [Fault::Tire], "{flat:?}");
}

#[test]
fn the_pressure_of_a_tire_and_what_nobody_checked_are_no_reading() {
    let reader = Reader::new();
    for (text, waste) in [
        ("12 tyre pressure 50", None),
        ("65 psi all four tires on 12, waste 1/2", Some(50.0)),
        ("llantas a 65 psi en la 12, tanque a la mitad", Some(50.0)),
        (
            "gate guy said 80 psi at the other tap on 12 but i didnt check",
            None,
        ),
    ] {
        let heard = reader.hear(text, TemperatureScale::F);
        let read = |key| {
            heard
                .entries
                .iter()
                .find_map(|entry| entry.readings.values.get(&key).copied())
        };
        assert_eq!(read(ReadingKey::PressurePsi), None, "{text:?}");
        assert_eq!(read(ReadingKey::WastePct), waste, "{text:?}");
    }
    let heard = reader.hear("12 tank half, 10 left in the fresh", TemperatureScale::F);
    let left = heard
        .entries
        .iter()
        .any(|entry| entry.events.contains(&Event::Left));
    assert!(!left, "{heard:?}");
}
