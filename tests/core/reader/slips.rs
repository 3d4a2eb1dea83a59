//! Slips of the thumb seldom log a value that was not meant.

use super::compare::{all_examples, values};
use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

const NEIGHBOURS: [(&str, &str); 26] = [
    ("a", "qsz"),
    ("b", "vgn"),
    ("c", "xdv"),
    ("d", "sfec"),
    ("e", "wrd"),
    ("f", "dgrv"),
    ("g", "fhtb"),
    ("h", "gjyn"),
    ("i", "uok"),
    ("j", "hkum"),
    ("k", "jlim"),
    ("l", "kop"),
    ("m", "njk"),
    ("n", "bmh"),
    ("o", "ipl"),
    ("p", "ol"),
    ("q", "wa"),
    ("r", "etf"),
    ("s", "adwx"),
    ("t", "ryg"),
    ("u", "yij"),
    ("v", "cbf"),
    ("w", "qes"),
    ("x", "zcs"),
    ("y", "tuh"),
    ("z", "xa"),
];

/// One slip of the thumb in the letters of a word that touches no digit.
fn slip(text: &str, chance: &mut fastrand::Rng) -> Option<String> {
    let chars: Vec<char> = text.chars().collect();
    let free: Vec<usize> = (0..chars.len())
        .filter(|i| {
            let whole = |mut j: usize, step: isize| loop {
                let next = j as isize + step;
                if next < 0
                    || next as usize >= chars.len()
                    || !(chars[next as usize].is_alphanumeric() || chars[next as usize] == '-')
                {
                    return true;
                }
                j = next as usize;
                if chars[j].is_ascii_digit() {
                    return false;
                }
            };
            chars[*i].is_ascii_alphabetic() && whole(*i, 1) && whole(*i, -1)
        })
        .collect();
    if free.is_empty() {
        return None;
    }
    let at = free[chance.usize(..free.len())];
    let mut out = chars.clone();
    match chance.u8(..4) {
        0 => {
            let near = NEIGHBOURS
                .iter()
                .find(|(c, _)| c.starts_with(chars[at].to_ascii_lowercase()))?
                .1;
            out[at] = near.chars().nth(chance.usize(..near.len()))?;
        }
        1 => {
            out.remove(at);
        }
        2 => out.insert(at, chars[at]),
        _ if at + 1 < chars.len() && chars[at + 1].is_ascii_alphabetic() => out.swap(at, at + 1),
        _ => return None,
    }
    Some(out.into_iter().collect())
}

#[test]
fn a_slip_of_the_thumb_seldom_logs_a_value_that_was_not_meant() {
    let reader = Reader::new();
    let seed = 1107;
    let mut chance = fastrand::Rng::with_seed(seed);
    let (mut mutants, mut wrong) = (0, Vec::new());
    for (_, example) in all_examples() {
        let text = example["text"].as_str().unwrap();
        let meant = values(&reader, text);
        for _ in 0..12 {
            let Some(mutant) = slip(text, &mut chance) else {
                continue;
            };
            mutants += 1;
            let got = values(&reader, &mutant);
            // a value whose trailer was lost is asked about, and is no other value
            let bare: Vec<String> = meant
                .iter()
                .map(|m| format!("null {}", m.split_once(' ').unwrap().1))
                .collect();
            if let Some(value) = got.iter().find(|v| !meant.contains(v) && !bare.contains(v)) {
                wrong.push(format!("{mutant:?} logs {value}, {text:?} has {meant:?}"));
            }
        }
    }
    let share = 100.0 * wrong.len() as f64 / mutants as f64;
    println!(
        "seed {seed}: {mutants} mutants, {} log a value that was not meant: {share:.2} %",
        wrong.len()
    );
    for line in wrong.iter().take(400) {
        println!("  {line}");
    }
    assert!(
        share <= 0.5,
        "{share:.2} % of the mutants log a wrong value"
    );
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
