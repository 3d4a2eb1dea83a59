//! The message files hold to each other and to the code.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use hosebib::finding::{Caution, FindingId, TaskKind};
use hosebib::heard::{Event, Fault, ReadingKey};
use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

use super::plain::Tongue;
use super::texts::Texts;

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
        28,
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
fn every_text_is_said_somewhere() {
    let project = Path::new(env!("CARGO_MANIFEST_DIR"));
    let english = Texts::read(Tongue::English).shapes;
    let mut code: String = speaking_sources()
        .iter()
        .map(|path| {
            let source = std::fs::read_to_string(path).expect("a source file");
            // what a file's own tests say does not count
            let code = source.split("#[cfg(test)]\nmod tests").next();
            code.unwrap_or_default().to_owned()
        })
        .collect();
    // the names of sums stand in a file of their own
    let sums = std::fs::read_to_string(project.join("grammar/replies/sums.toml"));
    code.push_str(&sums.expect("the sums"));
    let texts =
        std::fs::read_to_string(project.join("grammar/replies/en.ftl")).expect("the English texts");
    let is_key = |text: &str| {
        let part = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        !text.is_empty() && text.chars().all(part)
    };
    let quoted: BTreeSet<&str> = code.split('"').collect();
    // each code has its text by a rule: `event-left`, `caution-slip`, `tow-overweight`
    let mut codes: BTreeSet<String> = FindingId::ALL
        .iter()
        .flat_map(|id| {
            let code = id.code().replace('.', "-");
            [format!("name-{code}"), code]
        })
        .collect();
    codes.extend(Event::ALL.iter().map(|event| format!("event-{event}")));
    codes.extend(Fault::ALL.iter().map(|fault| format!("fault-{fault}")));
    codes.extend(TaskKind::ALL.iter().map(|kind| format!("task-{kind}")));
    codes.extend(
        Caution::ALL
            .iter()
            .map(|caution| format!("caution-{caution}")),
    );
    // a family is said by its first part, `format!("help-{}")`, and some have endings, `push_str("-site")`
    let families: BTreeSet<&str> = quoted
        .iter()
        .filter_map(|piece| piece.split_once('{'))
        .map(|(family, _)| family)
        .filter(|family| family.ends_with('-') && is_key(family))
        .collect();
    let endings: Vec<&str> = quoted
        .iter()
        .filter_map(|piece| piece.rsplit('}').next())
        .filter(|ending| ending.starts_with('-') && ending.len() > 1 && is_key(ending))
        .collect();
    let said = |key: &str| {
        quoted.contains(key)
            || codes.contains(key)
            || texts.contains(&format!("{{ {key} }}"))
            || families.iter().any(|family| key.starts_with(family))
    };
    let ended = |key: &str| -> Vec<String> {
        let ends = endings.iter();
        ends.filter_map(|ending| key.strip_suffix(ending).map(String::from))
            .collect()
    };
    let unused: Vec<&String> = english
        .keys()
        .filter(|key| {
            let once = ended(key);
            let twice = once.iter().flat_map(|key| ended(key));
            !said(key)
                && !once.iter().any(|key| said(key))
                && !twice.into_iter().any(|key| said(&key))
        })
        .collect();
    assert!(unused.is_empty(), "nothing says {unused:#?}");
}

#[test]
fn every_reason_the_reader_gives_for_asking_back_has_a_text() {
    let english = Texts::read(Tongue::English).shapes;
    let reader = Reader::new();
    let mut missing = BTreeSet::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/examples");
    for file in std::fs::read_dir(folder)
        .expect("the examples are there")
        .flatten()
        .filter(|file| {
            file.path()
                .extension()
                .is_some_and(|ending| ending == "jsonl")
        })
    {
        let lines = std::fs::read_to_string(file.path()).expect("a file of examples");
        for line in lines.lines() {
            let example: serde_json::Value = serde_json::from_str(line).expect("a line of JSON");
            let text = example["text"].as_str().expect("each example has a text");
            let heard = reader.hear(text, TemperatureScale::F);
            missing.extend(
                heard
                    .unclear
                    .into_iter()
                    .map(|remark| format!("unclear-{}", remark.why)),
            );
        }
    }
    // those that no example happens to need
    for path in sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/words")) {
        let source = std::fs::read_to_string(&path).expect("a source file");
        for (at, call) in source.match_indices("Unclear(\"") {
            let why = source[at + call.len()..]
                .split('"')
                .next()
                .unwrap_or_default();
            missing.insert(format!("unclear-{why}"));
        }
    }
    missing.retain(|key| !english.contains_key(key));
    assert!(missing.is_empty(), "no text for {missing:?}");
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
    "address", "age", "by", "circuit", "code", "company", "count", "due", "fault", "faults",
    "first", "folder", "formula", "from", "hints", "id", "ids", "kind", "language", "last",
    "limit", "link", "meaning", "name", "names", "origin", "pairs", "promised", "quote", "read",
    "reason", "role", "row", "rows", "senders", "signal", "since", "site", "source", "stage",
    "stages", "task", "tasks", "time", "to", "trouble", "typed", "unit", "units", "value", "was",
    "ways", "what", "who", "word", "words",
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
