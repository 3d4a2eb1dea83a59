//! The layout is what the contributor guide says: modules name only those before them, the core reaches for no clock, file
//! or chance, files stay small, and the guide names every module and every dependency.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// The core's modules, lowest first: each names only modules before it.
const CORE: [&str; 13] = [
    "quantity",
    "heard",
    "finding",
    "words",
    "fleet",
    "physics",
    "dialogue",
    "book",
    "outlook",
    "situation",
    "rules",
    "reply",
    "desk",
];

/// The edges, which do I/O, on top of the core in this order.
const EDGES: [&str; 3] = ["store", "chat", "cli"];

/// What the core does without, and where it comes from instead.
const BANNED_IN_CORE: [(&str, &str); 20] = [
    ("SystemTime", "the time comes in with the message"),
    ("Instant", "the time comes in with the message"),
    ("Utc::now", "the time comes in with the message"),
    ("Local::now", "the time comes in with the message"),
    ("chrono::Local", "the time zone is the fleet's"),
    ("std::fs", "texts come in as values"),
    ("std::env", "settings come in as values"),
    ("std::net", "messages come in as values"),
    ("std::process", "the core starts nothing"),
    ("std::thread", "one thread, the clerk, runs the core"),
    ("std::io", "the core reads and writes nothing"),
    ("async fn", "the core waits for nothing"),
    (".await", "the core waits for nothing"),
    ("println!", "what is said goes out in the turn"),
    ("print!", "what is said goes out in the turn"),
    ("tracing::", "what is said goes out in the turn"),
    ("rand::", "the core takes no chances"),
    ("fastrand", "the core takes no chances"),
    ("getrandom", "the core takes no chances"),
    ("tokio", "the core waits for nothing"),
];

/// What is nowhere to be left in a source file.
const BANNED_ANYWHERE: [&str; 5] = [
    "todo!",
    "unimplemented!",
    "dbg!",
    "#[ignore",
    "allow(dead_code)",
];

/// The longest a source file may be, in lines.
const LONGEST: usize = 700;

/// Files that are longer, and why. One that has come well under the limit leaves the list.
const LONGER: [(&str, &str); 0] = [];

/// The most packages that `Cargo.lock` may list: what it had when the cap was set, and a few. Raise it knowingly.
const MOST_PACKAGES: usize = 370;

fn project(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

fn guide() -> String {
    text(&project("DEVELOPERS.md"))
}

/// Returns every Rust file under a folder, in order.
fn sources(folder: &str) -> Vec<PathBuf> {
    let mut folders = vec![project(folder)];
    let mut found = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("a readable folder") {
            let path = entry.expect("a readable folder").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// Returns a file's path as the guide and this test write it.
fn name(path: &Path) -> String {
    let inside = path
        .strip_prefix(env!("CARGO_MANIFEST_DIR"))
        .expect("a file of the project");
    inside.to_string_lossy().replace('\\', "/")
}

/// Returns the modules that lead to a file: `rules`, `water`, `low` for `src/rules/water/low.rs`.
fn module_path(file: &str) -> Vec<&str> {
    let inside = file.strip_prefix("src/").expect("a file of src");
    let inside = inside.strip_suffix(".rs").expect("a Rust file");
    let mut path: Vec<&str> = inside.split('/').collect();
    if path.last() == Some(&"mod") {
        path.pop();
    }
    path
}

/// Returns the lines of a source that say what the program does: no comments, and no tests, which stand last.
fn code(source: &str) -> Vec<(usize, &str)> {
    let mut lines = Vec::new();
    let mut before_a_test = false;
    for (at, line) in source.lines().enumerate() {
        let bare = line.trim_start();
        if before_a_test && bare.starts_with("mod ") && bare.ends_with('{') {
            break;
        }
        before_a_test = bare == "#[cfg(test)]";
        if !bare.starts_with("//") {
            lines.push((at + 1, line));
        }
    }
    lines
}

/// Returns the top-level modules that a line of a module so deep names: by `crate::`, or by so many `super::` that they
/// lead out of its own.
fn named(line: &str, depth: usize) -> Vec<String> {
    let word = |text: &str| -> String {
        text.chars()
            .take_while(|c| c.is_ascii_alphanumeric() || *c == '_')
            .collect()
    };
    let mut found: Vec<String> = line
        .match_indices("crate::")
        .map(|(at, path)| match &line[at + path.len()..] {
            many if many.starts_with('{') => "{".to_owned(),
            one => word(one),
        })
        .collect();
    let mut rest = line;
    while let Some(at) = rest.find("super::") {
        rest = &rest[at..];
        let mut steps = 0;
        while let Some(after) = rest.strip_prefix("super::") {
            steps += 1;
            rest = after;
        }
        if steps >= depth {
            found.push(word(rest));
        }
    }
    found
}

/// Says what of a source breaks the order of modules.
fn out_of_order(file: &str, source: &str) -> Vec<String> {
    let order: Vec<&str> = CORE.into_iter().chain(EDGES).collect();
    let path = module_path(file);
    let place = |module: &str| order.iter().position(|known| *known == module);
    let Some(own) = place(path[0]) else {
        return vec![format!("{file}: `{}` has no place in the order", path[0])];
    };
    let mut wrong = Vec::new();
    for (at, line) in code(source) {
        for module in named(line, path.len()) {
            match place(&module) {
                Some(other) if other <= own => {}
                Some(_) => wrong.push(format!(
                    "{file}:{at}: `{}` names `{module}`, which comes after it",
                    path[0]
                )),
                None if module == "{" => wrong.push(format!(
                    "{file}:{at}: one `use crate::module` a line, so that the order can be read"
                )),
                None => wrong.push(format!("{file}:{at}: `{module}` is no module of the order")),
            }
        }
    }
    wrong
}

/// Says what of a core source does I/O, or asks for the time or for chance.
fn impure(file: &str, source: &str) -> Vec<String> {
    let mut wrong = Vec::new();
    for (at, line) in code(source) {
        for (banned, instead) in BANNED_IN_CORE {
            let stands_alone = |at: usize| {
                let part_of_a_word = |c: char| c.is_ascii_alphanumeric() || c == '_';
                let before = line[..at].chars().next_back();
                let after = line[at + banned.len()..].chars().next();
                !before.is_some_and(part_of_a_word)
                    && (!banned.ends_with(char::is_alphanumeric)
                        || !after.is_some_and(part_of_a_word))
            };
            if line.match_indices(banned).any(|(at, _)| stands_alone(at)) {
                wrong.push(format!("{file}:{at}: `{banned}` in the core: {instead}"));
            }
        }
    }
    wrong
}

/// Returns what stands between single backticks outside code blocks.
fn quoted(guide: &str) -> BTreeSet<&str> {
    let prose = guide.split("```").step_by(2);
    prose
        .flat_map(|part| part.split('`').skip(1).step_by(2))
        .collect()
}

fn none(wrong: &[String]) {
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_module_names_only_those_before_it() {
    let wrong: Vec<String> = sources("src")
        .iter()
        .map(|path| (name(path), text(path)))
        .filter(|(file, _)| file != "src/lib.rs" && file != "src/main.rs")
        .flat_map(|(file, source)| out_of_order(&file, &source))
        .collect();
    none(&wrong);
}

#[test]
fn an_import_out_of_order_is_seen() {
    for line in [
        "use crate::desk::Desk;",
        "    let turn = crate::desk::Desk::default();",
        "use super::super::desk;",
        "use super::super::super::desk::Turn;",
        "use crate::{heard, desk};",
        "use crate::nowhere;",
    ] {
        assert_eq!(
            out_of_order("src/rules/crowd.rs", line).len(),
            1,
            "not seen: {line}"
        );
    }
    for line in [
        "use crate::heard::Fault;",
        "//! asks [`crate::desk`]",
        "use super::COMMON_PRACTICE;",
        "use crate::rules::first;",
    ] {
        none(&out_of_order("src/rules/crowd.rs", line));
    }
}

#[test]
fn the_library_lists_its_modules_in_their_order() {
    let library = text(&project("src/lib.rs"));
    let listed: Vec<&str> = library
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .collect();
    let order: Vec<&str> = CORE.into_iter().chain(EDGES).collect();
    assert_eq!(listed, order);
}

#[test]
fn the_core_asks_for_no_clock_file_or_chance() {
    let mut seen = 0;
    let mut wrong = Vec::new();
    for path in sources("src") {
        let file = name(&path);
        if CORE.contains(&module_path(&file)[0]) {
            seen += 1;
            wrong.extend(impure(&file, &text(&path)));
        }
    }
    assert!(seen > CORE.len(), "the core was not found");
    none(&wrong);
}

#[test]
fn a_banned_call_is_seen_in_code_and_not_in_tests_or_comments() {
    for line in [
        "let now = Utc::now();",
        "use std::time::Instant;",
        "use std::fs;",
        "println!(\"{x}\");",
        "let n = rand::random::<u8>();",
        "async fn wait() {}",
    ] {
        assert!(
            !impure("src/desk/when.rs", line).is_empty(),
            "not seen: {line}"
        );
    }
    for line in [
        "// Utc::now() would be wrong here",
        "let instants = Instants::new();",
        "let operand::Left(x) = y;",
        "#[cfg(test)]\nmod tests {\n    use std::fs;\n}",
    ] {
        none(&impure("src/desk/when.rs", line));
    }
}

#[test]
fn nothing_is_left_for_later() {
    let own = name(&project(file!()));
    let mut wrong = Vec::new();
    for path in ["src", "tests", "benches"].into_iter().flat_map(sources) {
        let file = name(&path);
        if file == own {
            continue;
        }
        for (at, line) in text(&path).lines().enumerate() {
            for banned in BANNED_ANYWHERE {
                if line.contains(banned) {
                    wrong.push(format!("{file}:{}: `{banned}`", at + 1));
                }
            }
        }
    }
    none(&wrong);
}

#[test]
fn files_are_short_and_named_after_their_topic() {
    let mut wrong = Vec::new();
    for path in ["src", "tests", "benches"].into_iter().flat_map(sources) {
        let file = name(&path);
        let lines = text(&path).lines().count();
        let listed = LONGER.iter().any(|(long, _)| *long == file);
        if lines > LONGEST && !listed {
            wrong.push(format!(
                "{file}: {lines} lines, at most {LONGEST}: split it by topic"
            ));
        }
        if listed && lines < LONGEST * 2 / 3 {
            wrong.push(format!(
                "{file}: {lines} lines: take it off the list of long files"
            ));
        }
        let stem = path.file_stem().unwrap_or_default().to_string_lossy();
        if ["util", "utils", "helper", "helpers", "misc", "common"].contains(&stem.as_ref()) {
            wrong.push(format!("{file}: name it after its topic"));
        }
    }
    for (file, why) in LONGER {
        assert!(!why.is_empty());
        if !project(file).is_file() {
            wrong.push(format!("{file}: on the list of long files, and gone"));
        }
    }
    none(&wrong);
}

#[test]
fn the_guide_maps_every_module() {
    let guide = guide();
    let order: Vec<&str> = CORE.into_iter().chain(EDGES).collect();
    let rows: Vec<&str> = guide
        .lines()
        .filter_map(|line| line.strip_prefix("| `")?.split_once('`'))
        .map(|(first, _)| first.trim_end_matches('/'))
        .filter(|first| order.contains(first))
        .collect();
    assert_eq!(rows, order, "the map of modules, in their order");

    let quoted = quoted(&guide);
    let folders: BTreeSet<String> = sources("src")
        .iter()
        .map(|path| name(path))
        .filter_map(|file| Some(file.strip_prefix("src/")?.rsplit_once('/')?.0.to_owned()))
        .filter(|folder| folder.contains('/'))
        .collect();
    let unnamed: Vec<String> = folders
        .into_iter()
        .filter(|folder| !quoted.contains(folder.as_str()))
        .map(|folder| format!("`{folder}` is not in DEVELOPERS.md"))
        .collect();
    none(&unnamed);
}

#[test]
fn the_guides_name_nothing_that_is_gone() {
    let mut wrong = Vec::new();
    for guide in ["DEVELOPERS.md", "tests/README.md", "src/store/README.md"] {
        let told = text(&project(guide));
        let folders = ["src/", "tests/", "grammar/", "benches/", "demo-fleet/"];
        let gone = quoted(&told)
            .into_iter()
            .filter(|path| folders.iter().any(|folder| path.starts_with(folder)))
            .filter(|path| !path.contains(['*', '<', '{', ' ']))
            .filter(|path| !project(path).exists());
        wrong.extend(gone.map(|path| format!("{guide} names `{path}`, which is not there")));
    }
    none(&wrong);
}

#[test]
fn the_guide_names_every_dependency() {
    let manifest: toml::Table = text(&project("Cargo.toml")).parse().expect("a manifest");
    let guide = guide();
    let quoted = quoted(&guide);
    let unnamed: Vec<String> = ["dependencies", "dev-dependencies"]
        .into_iter()
        .flat_map(|kind| manifest[kind].as_table().expect("a table").keys())
        .filter(|name| !quoted.contains(name.as_str()))
        .map(|name| format!("`{name}` is not in DEVELOPERS.md: say why it is needed"))
        .collect();
    none(&unnamed);
}

#[test]
fn the_guide_gives_every_caution() {
    use hosebib::finding::Caution;
    let guide = guide();
    let quoted = quoted(&guide);
    let unnamed: Vec<String> = Caution::ALL
        .iter()
        .map(|caution| caution.code())
        .filter(|code| !quoted.contains(code))
        .map(|code| format!("`{code}` is not in the table of hazards in DEVELOPERS.md"))
        .collect();
    none(&unnamed);
}

#[test]
fn few_packages_are_built() {
    let packages = text(&project("Cargo.lock")).matches("[[package]]").count();
    assert!(
        packages <= MOST_PACKAGES,
        "{packages} packages in Cargo.lock, at most {MOST_PACKAGES}"
    );
}

/// The calls that hold a phrase list against a text: topic and list follow.
const HELD: [&str; 10] = [
    ".is(",
    ".holds(",
    ".shows(",
    ".opens(",
    ".without(",
    ".after(",
    ".parted(",
    ".ends(",
    ".following(",
    ".before(",
];

/// Returns the topic and the list that a call names, both written out.
fn named_list(behind: &str) -> Option<(&str, &str)> {
    let quoted = |text: &'_ str| -> Option<(usize, usize)> {
        let text = text.strip_prefix('"')?;
        Some((1, text.find('"')? + 1))
    };
    let behind = behind.trim_start();
    let (from, to) = quoted(behind)?;
    let rest = behind[to + 1..].strip_prefix(',')?.trim_start();
    let (start, end) = quoted(rest)?;
    let ends = rest[end + 1..].trim_start().starts_with([',', ')']);
    ends.then_some((&behind[from..to], &rest[start..end]))
}

#[test]
fn every_phrase_list_that_the_sources_name_stands_in_its_file() {
    let file: toml::Table = text(&project("grammar/talk.toml"))
        .parse()
        .expect("valid TOML");
    let stands = |(topic, list): (&str, &str)| {
        let lists = file.get(topic).and_then(toml::Value::as_table);
        lists.is_some_and(|lists| lists.contains_key(list))
    };
    let (mut missing, mut found) = (Vec::new(), 0);
    for path in sources("src/desk") {
        let source = text(&path);
        for call in HELD {
            for (at, _) in source.match_indices(call) {
                let Some(named) = named_list(&source[at + call.len()..]) else {
                    continue;
                };
                found += 1;
                if !stands(named) {
                    missing.push(format!("{}: {named:?}", path.display()));
                }
            }
        }
    }
    assert!(missing.is_empty(), "no such list:\n{}", missing.join("\n"));
    assert!(found > 200, "the calls are written otherwise: {found}");
}
