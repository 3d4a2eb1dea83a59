//! How long reading takes: the median over all example messages, and growth with the message's length.

use std::fs;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
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
    criterion.bench_function("compile the vocabulary", |b| b.iter(Reader::new));
}

fn growth(criterion: &mut Criterion) {
    let reader = Reader::new();
    let all = examples().join(" ");
    let mut group = criterion.benchmark_group("length");
    for kib in [1usize, 4, 16, 64] {
        let mut text = String::new();
        while text.len() < kib * 1024 {
            text.push_str(&all);
            text.push(' ');
        }
        let end = (0..=kib * 1024)
            .rev()
            .find(|i| text.is_char_boundary(*i))
            .unwrap_or(0);
        text.truncate(end);
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_with_input(
            BenchmarkId::from_parameter(format!("{kib} KiB")),
            &text,
            |b, text| b.iter(|| reader.hear(black_box(text), TemperatureScale::F)),
        );
        let one_line: String = text
            .chars()
            .map(|c| {
                if matches!(c, '.' | ',' | '\n' | '!' | '?' | ';') {
                    ' '
                } else {
                    c
                }
            })
            .collect();
        group.bench_with_input(
            BenchmarkId::new("no stops", format!("{kib} KiB")),
            &one_line,
            |b, text| b.iter(|| reader.hear(black_box(text), TemperatureScale::F)),
        );
    }
    group.finish();
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).warm_up_time(std::time::Duration::from_millis(300)).measurement_time(std::time::Duration::from_secs(1));
    targets = every_message, growth
}
criterion_main!(benches);
