//! The reader's figures over all example files, printed as tables:
//! `cargo test --test core figures -- --nocapture`. `HOSEBIB_SLIPS` says how many slips a message, in place of
//! one for every third; `HOSEBIB_SLIP_SEED` draws others, several where commas part them.

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use serde_json::Value;

use super::compare::{all_examples, compared, every_file, same_reading, soft};
use super::outside::{Found, parsers};
use super::score::{Score, score};
use super::slips::{AT_MOST, Keys, Namer, slips};

#[test]
fn figures_of_the_reader_hold_what_it_promises() {
    let reader = Reader::new();
    let wrong = exactness(&reader);
    beside_others(&reader);
    let share = slipped(&reader);
    assert_eq!(wrong, 0, "a wrong value logged is worse than a question");
    assert!(share <= AT_MOST, "{share:.2} % of slips log a wrong value");
}

/// Prints how exactly each file is read; returns how many messages log a wrong value.
fn exactness(reader: &Reader) -> usize {
    println!(
        "{:<24}{:>9}{:>9}{:>14}{:>15}",
        "file", "messages", "exact", "wrong values", "flag right"
    );
    let line = |name: &str, score: &Score| {
        println!(
            "{name:<24}{:>9}{:>7.1} %{:>14}{:>13.1} %",
            score.messages,
            score.share(score.exact),
            score.wrong_values.len(),
            score.share(score.flag_right)
        );
    };
    let mut all = Score::default();
    for file in every_file() {
        let score = score(reader, &file);
        line(&file, &score);
        all.messages += score.messages;
        all.exact += score.exact;
        all.flag_right += score.flag_right;
        all.wrong_values.extend(score.wrong_values);
    }
    line("all", &all);
    all.wrong_values.len()
}

/// Prints what the reader finds of the messages' values beside what general-purpose parsers find.
fn beside_others(reader: &Reader) {
    let others = parsers();
    let names = ["hosebib", others[0].name, others[1].name];
    println!("\nvalues alone, whatever their trailer; messages with debatable entries left out");
    println!("{:<48}{:>10}{:>20}{:>24}", "", names[0], names[1], names[2]);
    for (group, fits) in GROUPS {
        let mut found = [Found::default(); 3];
        for (file, example) in all_examples() {
            if !fits(&file) || soft(&example, "entries") {
                continue;
            }
            let gold = readings(example["gold"]["entries"].as_array().unwrap());
            let id = example["id"].as_str().unwrap();
            let theirs: Vec<_> = others.iter().filter_map(|o| o.compare(id, &gold)).collect();
            let [one, two] = theirs[..] else { continue };
            let ours = ours(reader, &example, &gold);
            for (found, (count, stray)) in found.iter_mut().zip([ours, one, two]) {
                found.take_in(gold.len(), count, stray);
            }
        }
        row(
            &format!("{group}: readings found, of {}", found[0].readings),
            found,
            |f| percent(f.found, f.readings),
        );
        row(
            &format!("{group}: messages right, of {}", found[0].messages),
            found,
            |f| percent(f.right, f.messages),
        );
        row(
            &format!("{group}: messages with another value"),
            found,
            |f| f.stray.to_string(),
        );
    }
}

type Fits = fn(&str) -> bool;

const GROUPS: [(&str, Fits); 3] = [
    ("English", |file| {
        !file.contains("tricky") && file.ends_with("en.jsonl")
    }),
    ("Spanish", |file| file.ends_with("es.jsonl")),
    ("tricky", |file| file.contains("tricky")),
];

fn row(what: &str, found: [Found; 3], cell: impl Fn(Found) -> String) {
    let [ours, one, two] = found.map(cell);
    println!("{what:<48}{ours:>10}{one:>20}{two:>24}");
}

fn percent(part: usize, whole: usize) -> String {
    format!("{:.1} %", 100.0 * part as f64 / whole.max(1) as f64)
}

/// Takes the compared values out of entries.
fn readings(entries: &[Value]) -> Vec<(String, f64)> {
    let mut all = Vec::new();
    for entry in entries.iter().filter_map(compared) {
        for (key, value) in entry["readings"].as_object().unwrap() {
            match value.as_array() {
                Some(list) => {
                    all.extend(
                        list.iter()
                            .map(|item| (key.clone(), item["amps"].as_f64().unwrap())),
                    );
                }
                None => all.push((key.clone(), value.as_f64().unwrap())),
            }
        }
    }
    all
}

/// Holds our own reading against a message's readings as theirs is, but for the kind of reading, which ours has to name.
fn ours(reader: &Reader, example: &Value, gold: &[(String, f64)]) -> (usize, bool) {
    let text = example["text"].as_str().unwrap();
    let got = to_json(text, &reader.hear(text, TemperatureScale::F));
    let mut left: Vec<&(String, f64)> = gold.iter().collect();
    let mut stray = false;
    for (key, value) in readings(got["entries"].as_array().unwrap()) {
        let is =
            |(k, v): &(String, f64)| *k == key && same_reading(&key, &value.into(), &(*v).into());
        match left.iter().position(|reading| is(reading)) {
            Some(at) => drop(left.remove(at)),
            None => stray |= !gold.iter().any(is),
        }
    }
    (gold.len() - left.len(), stray)
}

/// Prints what slips of the thumb lead to; returns the greatest share that logs a value that was not meant, in percent.
fn slipped(reader: &Reader) -> f64 {
    let numbers = |name: &str, usual: &str| -> Vec<u64> {
        let text = std::env::var(name).unwrap_or_else(|_| usual.to_owned());
        let number = |part: &str| {
            part.trim()
                .parse()
                .unwrap_or_else(|_| panic!("{name}: expected a number, found `{part}`"))
        };
        text.split(',').map(number).collect()
    };
    // the short form asks one slip of every third message
    let full = std::env::var_os("HOSEBIB_SLIPS").is_some();
    let every = if full { 1 } else { 3 };
    let each = usize::try_from(numbers("HOSEBIB_SLIPS", "1")[0]).unwrap();
    let namer = Namer::new(reader);
    let line = |name: &str, keys: Keys, seed: u64| {
        let found = slips(&namer, keys, (every, each), seed);
        println!(
            "{name:<36}{:>10}{:>13}{:>7.2} %{:>16}",
            found.mutants,
            found.wrong.len(),
            found.share(),
            found.trailer_lost
        );
        if keys == Keys::Words {
            found.wrong.iter().for_each(|line| println!("  {line}"));
        }
        found.share()
    };
    let mut worst = 0.0_f64;
    for seed in numbers("HOSEBIB_SLIP_SEED", "1107") {
        println!("\none keystroke wrong: neighbour key, dropped, doubled, swapped; seed {seed}");
        println!(
            "{:<36}{:>10}{:>22}{:>16}",
            "keys", "messages", "value not meant", "trailer lost"
        );
        let limit = format!("letters of words, at most {AT_MOST} %");
        worst = worst.max(line(&limit, Keys::Words, seed));
        line("letters that touch a digit too", Keys::Letters, seed);
        line("letters, digits and signs, no limit", Keys::All, seed);
    }
    worst
}
