//! How long reading takes: the median over all example messages, and growth with the message's length.

use std::fs;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

use criterion::{Criterion, criterion_group, criterion_main};
use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

fn examples() -> Vec<String> {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/examples");
    let mut texts = Vec::new();
    for entry in fs::read_dir(dir).expect("the examples are part of the project") {
        let path = entry.expect("readable").path();
        if path.extension().is_none_or(|e| e != "jsonl") {
            continue;
        }
        let text = fs::read_to_string(path).expect("readable");
        for line in text.lines().filter(|l| !l.trim().is_empty()) {
            let value: serde_json::Value = serde_json::from_str(line).expect("one object a line");
            texts.push(value["text"].as_str().expect("a text").to_string());
        }
    }
    texts
}

#[allow(clippy::print_stdout)]
fn every_message(criterion: &mut Criterion) {
    let reader = Reader::new();
    let texts = examples();
    let mut micros: Vec<f64> = texts
        .iter()
        .map(|text| {
            let rounds = 50;
            let start = Instant::now();
            for _ in 0..rounds {
                black_box(reader.hear(black_box(text), TemperatureScale::F));
            }
            start.elapsed().as_secs_f64() * 1e6 / f64::from(rounds)
        })
        .collect();
    micros.sort_by(f64::total_cmp);
    let at = |share: f64| micros[((micros.len() - 1) as f64 * share) as usize];
    println!(
        "{} messages: median {:.1} µs, p90 {:.1} µs, p99 {:.1} µs (budget: 30 µs at the median)",
        micros.len(),
        at(0.5),
        at(0.9),
        at(0.99)
    );
    criterion.bench_function("one typical message", |b| {
        b.iter(|| {
            reader.hear(
                black_box("unit 12 pressure 95 tank 3/4 temp -5"),
                TemperatureScale::F,
            )
        })
    });
    criterion.bench_function("copy the vocabulary", |b| b.iter(Reader::new));
}

/// The text that growth is measured on, KiB.
const WHOLE_KIB: usize = 64;

/// Prints what a KiB costs in messages of growing length, as they are and as one line without stops. Each length is read
/// as pieces of one and the same text, since some messages cost more than others wherever they stand.
#[allow(clippy::print_stdout)]
fn growth(_: &mut Criterion) {
    let reader = Reader::new();
    let all = examples().join(" ");
    let whole = piece(&all, 0, WHOLE_KIB);
    let no_stops = whole.replace(['.', ',', '\n', '!', '?', ';'], " ");
    println!("pieces of   with stops   as one line without");
    for kib in [1usize, 2, 4, 8, 16, 32, WHOLE_KIB] {
        let [stops, none] = [whole, no_stops.as_str()].map(|text| {
            let mut micros: Vec<f64> = (0..9)
                .map(|_| {
                    let start = Instant::now();
                    for at in 0..WHOLE_KIB / kib {
                        let text = piece(text, at * kib, (at + 1) * kib);
                        black_box(reader.hear(black_box(text), TemperatureScale::F));
                    }
                    start.elapsed().as_secs_f64() * 1e6
                })
                .collect();
            micros.sort_by(f64::total_cmp);
            micros[micros.len() / 2] / WHOLE_KIB as f64
        });
        println!("{kib:>3} KiB {stops:>8.0} µs/KiB {none:>8.0} µs/KiB");
    }
}

/// Returns the text between two places in KiB, cut where characters begin.
fn piece(text: &str, from: usize, to: usize) -> &str {
    let place = |kib: usize| {
        let most = (kib * 1024).min(text.len());
        (0..=most)
            .rev()
            .find(|i| text.is_char_boundary(*i))
            .unwrap_or(0)
    };
    &text[place(from)..place(to)]
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).warm_up_time(std::time::Duration::from_millis(300)).measurement_time(std::time::Duration::from_secs(1));
    targets = every_message, growth
}
criterion_main!(benches);
