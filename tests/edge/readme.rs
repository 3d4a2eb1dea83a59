//! The README says what is so: its exchange is what the bot answers, its table of defaults is the loader's, its commands
//! are known. `UPDATE=1 cargo test --test edge readme` writes the exchange and the table anew.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use hosebib::fleet::defaults;

fn readme() -> (PathBuf, String) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    let text = std::fs::read_to_string(&path).expect("the README");
    (path, text)
}

fn updating() -> bool {
    std::env::var_os("UPDATE").is_some()
}

/// Runs the program with `input` and returns what it printed.
fn hosebib(arguments: &[&str], input: &str) -> String {
    let mut child = Command::new(env!("CARGO_BIN_EXE_hosebib"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("the program starts");
    child
        .stdin
        .take()
        .expect("its input")
        .write_all(input.as_bytes())
        .expect("it reads");
    let output = child.wait_with_output().expect("it ends");
    assert!(output.status.success(), "{arguments:?} failed");
    String::from_utf8(output.stdout).expect("it prints UTF-8")
}

#[test]
fn the_exchange_is_what_the_demo_answers() {
    let (path, text) = readme();
    let from = text.find("```chat\n").expect("the exchange") + "```chat\n".len();
    let to = from + text[from..].find("```").expect("its end");
    let shown = &text[from..to];
    let asked: Vec<&str> = shown
        .lines()
        .filter_map(|line| line.strip_prefix("> "))
        .collect();
    assert!(asked.len() >= 3, "a real exchange has some turns");
    let mut spoken = String::new();
    // one run for each length of the talk, so that each answer is told apart from the next
    let mut before = String::new();
    for n in 1..=asked.len() {
        let all = hosebib(&["chat", "--demo"], &(asked[..n].join("\n") + "\n"));
        let answer = all
            .strip_prefix(before.as_str())
            .expect("the same talk gives the same answers")
            .trim_end();
        spoken.push_str(&format!("> {}\n{answer}\n\n", asked[n - 1]));
        before = all.clone();
    }
    let spoken = format!("{}\n", spoken.trim_end());
    if spoken != shown {
        assert!(
            updating(),
            "the README's exchange differs; it should be:\n{spoken}"
        );
        std::fs::write(path, format!("{}{spoken}{}", &text[..from], &text[to..]))
            .expect("a writable README");
    }
}

#[test]
fn the_table_of_defaults_is_the_loaders() {
    let (path, text) = readme();
    let (begin, end) = ("<!-- defaults: begin -->\n", "<!-- defaults: end -->");
    let from = text.find(begin).expect("where the table begins") + begin.len();
    let to = text.find(end).expect("where it ends");
    let table = defaults::markdown();
    if text[from..to] != table {
        assert!(
            updating(),
            "the README's table of defaults differs; UPDATE=1 writes it"
        );
        std::fs::write(path, format!("{}{table}{}", &text[..from], &text[to..]))
            .expect("a writable README");
    }
}

#[test]
fn every_command_it_names_is_known() {
    let (_, text) = readme();
    let mut named = 0;
    for line in text
        .lines()
        .filter_map(|line| line.strip_prefix("$ hosebib "))
    {
        let words: Vec<&str> = line
            .split('#')
            .next()
            .unwrap_or_default()
            .split_whitespace()
            .collect();
        let mut command: Vec<&str> = words
            .iter()
            .copied()
            .take_while(|word| word.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
            .collect();
        command.retain(|word| !word.starts_with('-'));
        command.truncate(if command.first() == Some(&"fleet") {
            2
        } else {
            1
        });
        let help: Vec<&str> = command.iter().copied().chain(["--help"]).collect();
        let shown = hosebib(&help, "");
        for flag in words.iter().filter(|word| word.starts_with("--")) {
            assert!(
                shown.contains(flag),
                "`{}` knows no `{flag}`",
                command.join(" ")
            );
        }
        named += 1;
    }
    assert!(named >= 5, "only {named} commands found");
}

#[test]
fn the_fleet_it_points_at_is_sound() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-fleet");
    let printed = hosebib(
        &["fleet", "check", folder.to_str().expect("a plain path")],
        "",
    );
    assert!(printed.contains("trailers"), "{printed}");
}

/// Returns the README's first block of a kind.
fn block(text: &str, kind: &str) -> String {
    let (_, rest) = text
        .split_once(&format!("```{kind}\n"))
        .expect("a block of that kind");
    rest.split_once("```").expect("its end").0.to_owned()
}

#[test]
fn the_service_unit_is_one_that_systemd_takes() {
    let (_, text) = readme();
    let folder = tempfile::tempdir().expect("a folder");
    let unit = folder.path().join("hosebib.service");
    let text = block(&text, "ini");
    // what it starts need not be installed here
    let text = text.replace("/usr/local/bin/hosebib", "/bin/true");
    std::fs::write(&unit, text).expect("a writable folder");
    let verified = std::process::Command::new("systemd-analyze")
        .arg("verify")
        .arg(&unit)
        .output();
    match verified {
        Ok(output) => {
            let said = String::from_utf8_lossy(&output.stderr).into_owned();
            let ours: Vec<&str> = said
                .lines()
                .filter(|line| line.contains("hosebib.service"))
                .collect();
            assert!(output.status.success() && ours.is_empty(), "{said}");
        }
        Err(error) => eprintln!("not tried: there is no systemd-analyze here: {error}"),
    }
}

#[test]
fn the_service_unit_and_the_container_start_what_there_is() {
    let (_, text) = readme();
    let unit = block(&text, "ini");
    let started = unit
        .lines()
        .find_map(|line| line.strip_prefix("ExecStart=/usr/local/bin/hosebib "));
    let container = block(&text, "dockerfile");
    let command = container
        .lines()
        .find_map(|line| line.strip_prefix("CMD "))
        .expect("a command");
    let command: Vec<String> = serde_json::from_str(command).expect("a list of words");
    let help = hosebib(&["serve", "--help"], "");
    let words = started
        .expect("it starts something")
        .split(' ')
        .map(str::to_owned);
    for words in [words.collect(), command] {
        assert_eq!(words[0], "serve");
        for flag in words.iter().filter(|word| word.starts_with("--")) {
            assert!(help.contains(flag.as_str()), "`serve` knows no `{flag}`");
        }
    }
}
