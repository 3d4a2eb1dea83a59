use hosebib::fleet::{FleetFiles, read};
use proptest::prelude::*;

use super::{every_key_files, sample_files};

/// Holds for any text: it reads or it says where it does not.
fn holds(files: &FleetFiles) {
    if let Err(problems) = read(files) {
        assert!(!problems.is_empty());
        for problem in &problems {
            let lines = files.text(problem.file).matches('\n').count() + 1;
            assert!((1..=lines).contains(&problem.line), "{problem}");
            assert!(
                !problem.to_string().contains(['\n', '\r']),
                "one line each: {problem}"
            );
        }
    }
}

/// Replaces, drops, doubles or cuts pieces of a valid file.
fn mutated(text: &str, cuts: &[(prop::sample::Index, u8)]) -> String {
    let mut lines: Vec<String> = text.lines().map(String::from).collect();
    for (index, how) in cuts {
        let i = index.index(lines.len());
        let line = lines[i].clone();
        let (key, value) = line.split_once('=').unwrap_or((&line, ""));
        let tables = [
            "",
            "[[trailer]]",
            "[defaults]",
            "[[site]]",
            "[[job]]",
            "[[crew]]",
            "[trailer]",
        ];
        lines[i] = match how % 16 {
            0 => String::new(),
            1 => format!("{line}\n{line}"),
            2 => format!("{key}= -1e400"),
            3 => format!("{key}= \"\u{202e}`{value}\u{0}\""),
            4 => format!("{key}= 2027-03-14T02:30:00"),
            5 => format!("{key}= 9223372036854775808"),
            6 => format!("{key}= []"),
            7 => format!("{key}= {{}}"),
            8 => format!("{key}= [{{}}, 1, [[]]]"),
            9 => line.chars().rev().collect(),
            10 => line.chars().take(line.chars().count() / 2).collect(),
            11 => format!("é{line}"),
            12 => tables[usize::from(how / 16) % tables.len()].into(),
            13 => format!("{key}= nan"),
            14 => format!("{key}= 9999-12-31T23:59:60Z"),
            _ => format!("{key}= 0xffffffffffffffffffffffffffffffffffffffff"),
        };
    }
    lines.join("\n")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn any_text_at_all(fleet in "\\PC{0,200}", jobs in "(?s).{0,200}", crew in "[\\[\\]a-z0-9=\"\n{}., -]{0,200}", words in "(?s).{0,200}") {
        holds(&FleetFiles {
            fleet,
            jobs,
            crew,
            words,
        });
    }

    #[test]
    fn a_valid_fleet_with_pieces_changed(
        fleet in prop::collection::vec(any::<(prop::sample::Index, u8)>(), 0..6),
        jobs in prop::collection::vec(any::<(prop::sample::Index, u8)>(), 0..6),
        crew in prop::collection::vec(any::<(prop::sample::Index, u8)>(), 0..3),
        words in prop::collection::vec(any::<(prop::sample::Index, u8)>(), 0..3),
        every in any::<bool>(),
    ) {
        let valid = if every { every_key_files() } else { sample_files() };
        holds(&FleetFiles {
            fleet: mutated(&valid.fleet, &fleet),
            jobs: mutated(&valid.jobs, &jobs),
            crew: mutated(&valid.crew, &crew),
            words: mutated(hosebib::fleet::demo::WORDS, &words),
        });
    }
}

#[test]
fn deep_nesting_and_long_lines_are_refused_or_read() {
    for text in [
        "[".repeat(100_000),
        "a.".repeat(50_000) + "b = 1",
        "a = ".to_string() + &"[".repeat(50_000),
        "x".repeat(1_000_000),
        "a = 1\n".repeat(2_000),
    ] {
        holds(&FleetFiles {
            fleet: text.clone(),
            jobs: text.clone(),
            crew: text.clone(),
            words: text,
        });
    }
}
