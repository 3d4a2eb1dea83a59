//! The reader over the example files: exact meaning, wrong values, the unclear flag.

use super::compare::{compared, every_file, examples, same_ask, same_entries, soft, wrong_values};
use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use serde_json::Value;

/// What the reader made of one example file.
#[derive(Debug, Default)]
pub(super) struct Score {
    pub(super) messages: usize,
    pub(super) exact: usize,
    pub(super) wrong_values: Vec<String>,
    pub(super) flag_right: usize,
    misses: Vec<String>,
}

impl Score {
    pub(super) fn share(&self, part: usize) -> f64 {
        100.0 * part as f64 / self.messages.max(1) as f64
    }
}

pub(super) fn score(reader: &Reader, file: &str) -> Score {
    let mut score = Score::default();
    for example in examples(file) {
        let text = example["text"].as_str().unwrap();
        let heard = reader.hear(text, TemperatureScale::F);
        let got = to_json(text, &heard);
        let gold = &example["gold"];
        let entries: Vec<Value> = got["entries"]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(compared)
            .collect();
        let want: Vec<Value> = gold["entries"]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(compared)
            .collect();
        let soft = |part: &str| soft(&example, part);
        let unclear = !got["unclear"].as_array().unwrap().is_empty();
        let flag = unclear == gold["unclear_expected"].as_bool().unwrap_or(false);
        let entries_right = same_entries(&entries, &want);
        let ask = same_ask(&got["ask"], &gold["ask"]);
        score.messages += 1;
        score.flag_right += usize::from(flag || soft("unclear"));
        let exact = (entries_right || soft("entries")) && ask && (flag || soft("unclear"));
        score.exact += usize::from(exact);
        let wrong = wrong_values(&entries, &want);
        if !wrong.is_empty() && !soft("entries") {
            score
                .wrong_values
                .push(format!("{}: {}", example["id"], wrong.join(", ")));
        }
        if !exact || std::env::var("SOFT").is_ok() && !(entries_right && flag) {
            score.misses.push(format!(
                "{} {:?}\n    got  {} ask {} unclear {}\n    want {} ask {} unclear {}",
                example["id"].as_str().unwrap_or("?"),
                text,
                serde_json::to_string(&entries).unwrap(),
                got["ask"],
                got["unclear"],
                serde_json::to_string(&want).unwrap(),
                gold["ask"],
                gold["unclear_expected"],
            ));
        }
    }
    score
}

/// The least share of messages that must be exact, in percent, over all example files of a kind.
const LEAST: [(&str, f64); 3] = [("English", 98.0), ("Spanish", 97.0), ("tricky", 95.0)];

fn kind(file: &str) -> &'static str {
    if file.contains("tricky") {
        "tricky"
    } else if file.contains("es.") {
        "Spanish"
    } else {
        "English"
    }
}

#[test]
fn the_example_files_read_as_their_gold_says() {
    let reader = Reader::new();
    let mut total_wrong = 0;
    let mut kinds = LEAST.map(|(name, _)| (name, 0, 0));
    for file in every_file() {
        let score = score(&reader, &file);
        println!(
            "{file:<24} {:>4} messages  exact {:>5.1} %  wrong values {}  unclear flag {:>5.1} %",
            score.messages,
            score.share(score.exact),
            score.wrong_values.len(),
            score.share(score.flag_right)
        );
        for miss in &score.misses {
            println!("  {miss}");
        }
        for wrong in &score.wrong_values {
            println!("  WRONG VALUE {wrong}");
        }
        total_wrong += score.wrong_values.len();
        for (name, messages, exact) in &mut kinds {
            if *name == kind(&file) {
                *messages += score.messages;
                *exact += score.exact;
            }
        }
    }
    assert_eq!(
        total_wrong, 0,
        "a wrong value logged is worse than a question"
    );
    for ((name, messages, exact), (_, least)) in kinds.into_iter().zip(LEAST) {
        let share = 100.0 * exact as f64 / messages as f64;
        println!("{name}: {messages} messages, {share:.1} % exact");
        assert!(
            share >= least,
            "{name}: {share:.1} % exact, at least {least} expected"
        );
    }
}
