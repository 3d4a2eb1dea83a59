//! A sum asked in chat: "sum drop 16 amps 150 ft 14 gauge". Nothing in such a message is logged.
//!
//! A sum is known by its words (`grammar/replies/sums.toml`) or by the name of its quantity, and takes the numbers that
//! follow by their units of measure. What it computes is a quantity of [`crate::physics::sum`], the one that the rules use.

mod numbers;
mod verdict;
mod words;

use serde_json::{Map, Value};

use self::words::Sum;
pub(super) use self::words::SumWords;
use super::answer::Reply;
use super::phrases::plain;
use super::receive::Hearing;
use crate::physics::sum::{Answer, SumError, answer as compute};
use crate::quantity::{Measure, plain as digits};
use crate::reply::{Arg, Voice};
use numbers::{Kind, has_usual, numbers, pick};

/// How many sums are named to somebody who asks for one that is not known.
const NAMED: usize = 14;
/// Units of the registry that are no unit of measure: the name of the sum says what is counted.
const COUNTED: &[&str] = &[
    "-", "seats", "urinals", "fixtures", "units", "circuits", "stalls", "rolls", "bool",
];

/// Answers a sum, or says how to ask one.
pub(super) fn answer(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let text = plain(hearing.text);
    let Some(sum) = hearing.desk.sum_words.find(&text, hearing.text) else {
        reply.say(
            "sum-unknown",
            &[("names", known(hearing, &reply.voice).into())],
        );
        reply.say("sum-how", &[]);
        return;
    };
    let (given, unused) = pick(&numbers(hearing.text), &sum.takes);
    let mut told: Vec<Answer> = Vec::new();
    for (quantity, name) in &sum.answers {
        match compute(quantity, &given) {
            Ok(found) => {
                tell(&found, name, reply);
                told.push(found);
            }
            Err(_) if !told.is_empty() => {}
            Err(error) => {
                refuse(&error, &sum, &given, reply);
                return;
            }
        }
    }
    assumed(&told, &sum, reply);
    tell_unused(&unused, reply);
    if sum
        .answers
        .iter()
        .any(|(quantity, _)| quantity == verdict::JUDGED)
    {
        verdict::tell(&given, reply);
    }
}

fn tell(found: &Answer, name: &str, reply: &mut Reply<'_>) {
    let value = match (&found.value, measure_of(found.unit)) {
        (Value::Null, _) => reply.voice.word("sum-never"),
        (Value::Number(number), _) if name == "sum-busy" => {
            let share = 100.0 * number.as_f64().unwrap_or(f64::NAN);
            reply.voice.number(share, Measure::Pct)
        }
        (Value::Number(number), Some(measure)) => reply
            .voice
            .number(number.as_f64().unwrap_or(f64::NAN), measure),
        (Value::Number(number), None) => {
            let number = digits(number.as_f64().unwrap_or(f64::NAN), 3);
            match found.unit {
                unit if COUNTED.contains(&unit) => number,
                unit => format!("{number} {unit}"),
            }
        }
        (Value::Array(band), Some(measure)) => {
            let ends: Vec<String> = band
                .iter()
                .filter_map(Value::as_f64)
                .map(|end| reply.voice.number(end, measure))
                .collect();
            ends.join(" / ")
        }
        (Value::Bool(yes), _) => reply.voice.word(if *yes { "sum-yes" } else { "sum-no" }),
        (Value::String(code), _) => code.clone(),
        (other, _) => other.to_string(),
    };
    let name = if reply.voice.knows(name) {
        reply.voice.word(name)
    } else {
        words::in_words(name)
    };
    let source = reply.voice.source(found.source);
    let args = [
        ("name", Arg::from(name)),
        ("value", value.into()),
        ("source", source.into()),
    ];
    reply.say("sum-result", &args);
}

/// Says what was taken for want of a number, where the chat could have given one.
fn assumed(found: &[Answer], sum: &Sum, reply: &mut Reply<'_>) {
    let mut taken: Vec<String> = found
        .iter()
        .flat_map(|found| &found.assumed)
        .filter_map(|(name, value)| {
            let (_, kind) = sum.takes.iter().find(|(input, _)| input == name)?;
            let shown = reply.voice.number(value.as_f64()?, kind.measure());
            Some(format!("{} {shown}", reply.voice.word(kind.key())))
        })
        .collect();
    taken.dedup();
    if !taken.is_empty() {
        let taken = reply.voice.all_of(&taken);
        reply.say("sum-assumed", &[("what", taken.into())]);
    }
}

/// Says which numbers the sum does not take: who gave them reckons with them.
fn tell_unused(unused: &[(f64, Kind)], reply: &mut Reply<'_>) {
    let told = unused.iter().map(|(value, kind)| match kind {
        Kind::Bare => digits(*value, 3),
        kind => reply.voice.number(*value, kind.measure()),
    });
    let told: Vec<String> = told.collect();
    if !told.is_empty() {
        let what = reply.voice.all_of(&told);
        reply.say("sum-unused", &[("what", what.into())]);
    }
}

/// Says what is missing or cannot be.
fn refuse(error: &SumError, sum: &Sum, given: &Map<String, Value>, reply: &mut Reply<'_>) {
    let wanted: Vec<String> = sum
        .takes
        .iter()
        .filter(|(input, kind)| !given.contains_key(input) && !has_usual(*kind, &sum.takes))
        .map(|(input, kind)| match kind {
            Kind::Bare => words::in_words(input),
            kind => reply.voice.word(kind.key()),
        })
        .collect();
    match error {
        SumError::Missing { .. } if sum.needs_a_list => reply.say("sum-list", &[]),
        SumError::Missing { .. } if !wanted.is_empty() => {
            let wanted = reply.voice.all_of(&wanted);
            reply.say("sum-missing", &[("what", wanted.into())]);
        }
        _ => reply.say("sum-out-of-range", &[]),
    }
    reply.say("sum-how", &[]);
}

/// Lists the first sums that are known by words, each once.
fn known(hearing: &Hearing<'_>, voice: &Voice<'_>) -> String {
    let mut names: Vec<String> = Vec::new();
    for key in hearing.desk.sum_words.names() {
        let name = voice.word(key);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names.truncate(NAMED);
    voice.one_of(&names)
}

/// The measure in which an answer is printed, by the registry's unit.
fn measure_of(unit: &str) -> Option<Measure> {
    Some(match unit {
        "psi" => Measure::Psi,
        "gpm" => Measure::Gpm,
        "gal" => Measure::Gal,
        "%" => Measure::Pct,
        "%/h" => Measure::PctPerHour,
        "F" => Measure::DegF,
        "ft" => Measure::Ft,
        "in" => Measure::Inch,
        "V" | "V on a" => Measure::Volt,
        "A" => Measure::Amp,
        "mA" => Measure::Milliamp,
        "W" => Measure::Watt,
        "h" => Measure::Hour,
        "min" => Measure::Minute,
        "s" => Measure::Second,
        "lb" => Measure::Lb,
        "1/h" => Measure::PerHour,
        _ => return None,
    })
}
