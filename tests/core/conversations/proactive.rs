//! Whatever the bot says unasked is shown in a script, in each language: nobody asked for it, so nobody else would see that
//! it jars.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, Pattern, PatternElement};

/// Where the texts stand that a tick sends.
const SPOKEN_BY: &[&str] = &["src/desk/tick", "src/desk/digest.rs", "src/reply/digest.rs"];
/// Beginnings of keys that are shown elsewhere: signal words, where a trailer stands, what is said to a question.
const PARTS: &[&str] = &["signal-", "stage-", "answer-"];

/// The words between the arguments of a text, in order; one list for each form it can take.
type Forms = Vec<Vec<String>>;

#[test]
fn what_is_said_unasked_is_shown_in_each_language() {
    let project = Path::new(env!("CARGO_MANIFEST_DIR"));
    let said = lines_said(&project.join("tests/core/conversations"));
    let mut never = Vec::new();
    for language in ["en", "es"] {
        let texts = texts(&project.join(format!("grammar/replies/{language}.ftl")));
        for key in keys_spoken(project) {
            let Some(forms) = texts.get(&key) else {
                continue;
            };
            let shown = |form: &Vec<String>| said.iter().any(|line| holds(line, form));
            if !forms.iter().any(shown) {
                never.push(format!("{language}: {key}"));
            }
        }
    }
    assert!(never.is_empty(), "no script shows\n{}", never.join("\n"));
}

/// Returns every line that the bot says in a script.
fn lines_said(folder: &Path) -> BTreeSet<String> {
    let mut said = BTreeSet::new();
    for entry in std::fs::read_dir(folder).expect("the scripts' folder") {
        let path = entry.expect("a readable folder").path();
        if path.extension().is_none_or(|ending| ending != "chat") {
            continue;
        }
        let script = std::fs::read_to_string(&path).expect("a readable script");
        for line in script.lines() {
            let opens = line.starts_with("bot").then(|| line.split_once("> "));
            let words = match opens.flatten() {
                Some((_, words)) => words,
                None if line.starts_with("     ") => line,
                None => continue,
            };
            said.insert(words.trim().to_owned());
        }
    }
    said
}

/// Returns the keys of the texts that stand in the sources of what is said unasked.
fn keys_spoken(project: &Path) -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for place in SPOKEN_BY {
        let place = project.join(place);
        let files: Vec<_> = match place.is_dir() {
            true => std::fs::read_dir(&place)
                .expect("the sources")
                .map(|entry| entry.expect("a readable folder").path())
                .collect(),
            false => vec![place],
        };
        for file in files {
            let source = std::fs::read_to_string(&file).expect("a readable source");
            let source = source.split("#[cfg(test)]\nmod tests").next();
            let quoted = source.unwrap_or_default().split('"').skip(1).step_by(2);
            keys.extend(quoted.map(str::to_owned));
        }
    }
    keys.retain(|key| key.contains('-') && !PARTS.iter().any(|part| key.starts_with(part)));
    keys
}

fn texts(path: &Path) -> BTreeMap<String, Forms> {
    let source = std::fs::read_to_string(path).expect("the message file");
    let tree = fluent_syntax::parser::parse(source.as_str()).expect("a message file that is read");
    let messages = tree.body.iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some((message.id.name.to_owned(), message.value.as_ref()?)),
        _ => None,
    });
    messages
        .map(|(key, pattern)| (key, forms(pattern)))
        .collect()
}

fn forms(pattern: &Pattern<&str>) -> Forms {
    let mut all: Forms = vec![Vec::new()];
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => {
                for form in &mut all {
                    form.push(value.trim().to_owned());
                }
            }
            PatternElement::Placeable { expression } => {
                if let Expression::Select { variants, .. } = expression {
                    let ways: Vec<Forms> = variants.iter().map(|v| forms(&v.value)).collect();
                    all = all
                        .iter()
                        .flat_map(|form| {
                            let ways = ways.iter().flatten();
                            ways.map(move |way| [form.as_slice(), way].concat())
                        })
                        .collect();
                }
            }
        }
    }
    all
}

/// Tells whether a line holds the pieces of a text in their order.
fn holds(line: &str, form: &[String]) -> bool {
    let mut rest = line;
    form.iter().filter(|piece| !piece.is_empty()).all(|piece| {
        let found = rest.find(piece.as_str());
        if let Some(at) = found {
            rest = &rest[at + piece.len()..];
        }
        found.is_some()
    })
}

#[test]
fn a_line_shows_a_text_only_by_all_its_pieces_in_order() {
    let form = ["Call the truck: task".to_owned(), "now".to_owned()];
    assert!(holds(
        "Call the truck: task 1 pump-out 12, call now.",
        &form
    ));
    assert!(!holds("now. Call the truck: task 1", &form));
    assert!(!holds("Call a truck: task 1 now", &form));
}
