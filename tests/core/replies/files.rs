//! The message files hold to each other, to the code and to plain language.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use hosebib::finding::{Caution, FindingId, TaskKind};
use hosebib::heard::{Event, Fault, ReadingKey};

use super::plain::{self, Counted, Tongue, count};
use super::texts::Texts;

const TONGUES: [Tongue; 2] = [Tongue::English, Tongue::Spanish];

#[test]
fn both_files_hold_the_same_messages_with_the_same_arguments() {
    let english = Texts::read(Tongue::English).shapes;
    let spanish = Texts::read(Tongue::Spanish).shapes;
    let mut faults = Vec::new();
    for (key, shape) in &english {
        match spanish.get(key) {
            None => faults.push(format!("es.ftl lacks `{key}`")),
            Some(other) if other.args != shape.args => {
                faults.push(format!(
                    "`{key}`: en takes {:?}, es takes {:?}",
                    shape.args, other.args
                ));
            }
            Some(other) => {
                // texts that choose by a word must know the same words; plurals are each language's own
                let words = |shape: &super::texts::Shape| -> BTreeSet<String> {
                    let all = shape.choices.values().flatten();
                    all.filter(|word| !["one", "many", "other"].contains(&word.as_str()))
                        .cloned()
                        .collect()
                };
                if words(shape) != words(other) {
                    faults.push(format!(
                        "`{key}`: en chooses by {:?}, es by {:?}",
                        words(shape),
                        words(other)
                    ));
                }
            }
        }
    }
    faults.extend(
        spanish
            .keys()
            .filter(|key| !english.contains_key(*key))
            .map(|key| format!("en.ftl lacks `{key}`")),
    );
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_code_has_its_text() {
    let english = Texts::read(Tongue::English).shapes;
    let mut keys: Vec<String> = Vec::new();
    keys.extend(Event::ALL.iter().map(|event| format!("event-{event}")));
    keys.extend(Fault::ALL.iter().map(|fault| format!("fault-{fault}")));
    keys.extend(TaskKind::ALL.iter().map(|kind| format!("task-{kind}")));
    keys.extend(
        Caution::ALL
            .iter()
            .map(|caution| format!("caution-{caution}")),
    );
    keys.extend(
        FindingId::ALL
            .iter()
            .map(|id| format!("name-{}", id.code().replace('.', "-"))),
    );
    let missing: Vec<&String> = keys
        .iter()
        .filter(|key| !english.contains_key(*key))
        .collect();
    assert!(missing.is_empty(), "no text for {missing:?}");
    assert_eq!(
        ReadingKey::ALL.len(),
        24,
        "a new reading needs a text in src/reply/log.rs"
    );
}

#[test]
fn every_key_named_in_the_code_has_a_text() {
    let english = Texts::read(Tongue::English).shapes;
    let mut missing = Vec::new();
    for path in speaking_sources() {
        let source = std::fs::read_to_string(&path).expect("a source file");
        // what stands in a file's own tests may be made up
        let source = source.split("#[cfg(test)]").next().unwrap_or_default();
        for call in ["say(\"", "word(\"", "says(\"", ".by(\"", "say_to(\""] {
            for (at, _) in source.match_indices(call) {
                let key = source[at + call.len()..]
                    .split('"')
                    .next()
                    .unwrap_or_default();
                // a single word may be something else than a key
                let is_key = key.contains('-')
                    && key
                        .chars()
                        .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
                if is_key && !english.contains_key(key) {
                    missing.push(format!("{}: `{key}`", path.display()));
                }
            }
        }
    }
    assert!(missing.is_empty(), "no text for\n{}", missing.join("\n"));
}

#[test]
fn no_message_takes_an_argument_that_nobody_gives() {
    let english = Texts::read(Tongue::English).shapes;
    let is_a_fact = |arg: &str| english.contains_key(&format!("fact-{}", arg.replace('_', "-")));
    let mut strays = Vec::new();
    for (key, shape) in &english {
        let topic = key.split('-').next().unwrap_or_default();
        let is_of_a_finding =
            FindingId::ALL.iter().any(|id| id.topic() == topic) || topic == "formula";
        for arg in &shape.args {
            let given = match (key.as_str(), topic) {
                (_, "caution" | "event" | "fault" | "fact" | "origin" | "value" | "name") => false,
                (_, "unclear" | "aside") => {
                    arg == "quote" || (key == "unclear-more" && arg == "count")
                }
                (_, "reading") => [
                    "value", "level", "gallons", "floor", "circuit", "circuits", "count",
                ]
                .contains(&arg.as_str()),
                (_, "forecast") => {
                    ["limit", "likely", "early", "late", "amps", "unit"].contains(&arg.as_str())
                }
                (_, "desk") => {
                    is_a_fact(arg)
                        || ["unit", "name", "near", "value", "limit", "what", "circuit"]
                            .contains(&arg.as_str())
                }
                _ if is_of_a_finding => is_a_fact(arg) || arg == "unit",
                _ => GIVEN.contains(&arg.as_str()),
            };
            if !given {
                strays.push(format!("`{key}` takes `${arg}`"));
            }
        }
    }
    assert!(strays.is_empty(), "{}", strays.join("\n"));
}

/// What the desk and the reply itself put into texts that are not a finding's.
const GIVEN: &[&str] = &[
    "age", "circuit", "count", "first", "folder", "formula", "hints", "id", "last", "meaning",
    "name", "names", "origin", "pairs", "quote", "read", "reason", "signal", "site", "source",
    "stage", "stages", "task", "time", "trouble", "typed", "unit", "units", "value", "fault",
    "what", "who", "word", "words", "faults", "kind",
];

#[test]
fn every_fact_that_rules_name_has_a_text() {
    let english = Texts::read(Tongue::English).shapes;
    let missing: Vec<String> = fact_names()
        .into_iter()
        .filter(|name| !english.contains_key(&format!("fact-{}", name.replace('_', "-"))))
        .collect();
    assert!(missing.is_empty(), "no text for the facts {missing:?}");
}

/// Returns the names that rules give their facts.
fn fact_names() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for folder in ["/src/rules", "/src/desk"] {
        for path in sources(Path::new(&format!(
            "{}{folder}",
            env!("CARGO_MANIFEST_DIR")
        ))) {
            let source = std::fs::read_to_string(&path).expect("a source file");
            for call in [
                "read(",
                "spec(",
                "assumed(",
                "computed(",
                "limit(",
                "number(",
                "time(",
                "text(",
            ] {
                for (at, _) in source.match_indices(call) {
                    let rest = source[at + call.len()..].trim_start();
                    if let Some(name) = rest
                        .strip_prefix('"')
                        .and_then(|rest| rest.split('"').next())
                    {
                        names.insert(name.to_owned());
                    }
                }
            }
        }
    }
    names
}

/// Returns the sources that say something by key.
fn speaking_sources() -> Vec<PathBuf> {
    let folders = ["rules", "reply", "desk", "chat", "cli"].iter();
    folders
        .flat_map(|folder| {
            sources(
                &Path::new(env!("CARGO_MANIFEST_DIR"))
                    .join("src")
                    .join(folder),
            )
        })
        .collect()
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for entry in entries.flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

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
