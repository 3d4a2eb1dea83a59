//! Each step of setting up and of leaving is answered in people's own words, as `tests/data/own-words-rounds.toml` gives them.

use std::collections::BTreeMap;

use hosebib::book::Record;
use hosebib::dialogue::{Round, Way};
use hosebib::heard::{Event, Fault, ReadingKey};
use serde::Deserialize;

use super::{Crew, none_is};

/// The words by which a step may be answered.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Answers {
    #[serde(default)]
    yes: Vec<String>,
    #[serde(default)]
    no: Vec<String>,
    #[serde(default)]
    skip: Vec<String>,
    #[serde(default)]
    si: Vec<String>,
    #[serde(default)]
    nones: Vec<String>,
    #[serde(default)]
    salta: Vec<String>,
    #[serde(default)]
    value: Vec<(String, f64)>,
    #[serde(default)]
    valor: Vec<(String, f64)>,
    /// What is done of it save for something: the step stays open.
    #[serde(default)]
    part: Vec<String>,
    #[serde(default)]
    aside: Vec<String>,
    asks: Vec<String>,
}

/// Steps that are not skipped: they guard somebody, or read what must be known.
const NEVER_SKIPPED: &[&str] = &[
    "set-up-chock",
    "set-up-regulator",
    "leave-waste",
    "leave-fresh",
    "leave-lights-checked",
    "leave-breakaway",
];

/// What a message comes to: where the round stands, and what it reports.
#[derive(Debug)]
struct Comes {
    step: Option<String>,
    skipped: bool,
    confirmed: bool,
    events: Vec<Event>,
    values: Vec<(ReadingKey, f64)>,
    faults: Vec<Fault>,
    told: String,
}

fn table() -> BTreeMap<String, Answers> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/data/own-words-rounds.toml"
    );
    let text = std::fs::read_to_string(path).expect("the table of answers");
    toml::from_str(&text).unwrap_or_else(|error| panic!("{error}"))
}

fn key_of(round: &Round) -> String {
    let way = match round.way {
        Way::SetUp => "set-up",
        Way::Leaving => "leave",
    };
    format!("{way}-{}", round.step)
}

fn round_of(crew: &Crew) -> Option<Round> {
    crew.desk.book().talk("tobin")?.round.clone()
}

fn comes(crew: &Crew, text: &str) -> Comes {
    let turn = crew.turn("tobin", text);
    let before = round_of(crew).expect("a round");
    let mut after = Some(before.clone());
    let mut comes = Comes {
        step: None,
        skipped: false,
        confirmed: false,
        events: Vec::new(),
        values: Vec::new(),
        faults: Vec::new(),
        told: super::words_to(&turn, "tobin"),
    };
    for record in &turn.records {
        match record {
            Record::Talk { who, talk } if who == "tobin" => after = talk.round.clone(),
            Record::Confirmed { step, .. } => comes.confirmed |= *step == before.step,
            Record::Message(message) => {
                for report in &message.reports {
                    comes.events.extend(&report.entry.events);
                    let values = &report.entry.readings.values;
                    comes
                        .values
                        .extend(values.iter().map(|(key, value)| (*key, *value)));
                    comes.faults.extend(&report.entry.faults);
                }
            }
            _ => {}
        }
    }
    comes.skipped = after
        .as_ref()
        .is_some_and(|round| round.skipped.contains(&before.step));
    comes.step = after.map(|round| key_of(&round));
    comes
}

/// How a step is passed.
fn past(step: &str) -> &'static str {
    match step {
        "volts" => "118",
        "pressure" => "50",
        "chock" => "chocked both sides",
        "regulator" => "regulator fitted",
        "waste" => "waste pumped",
        "fresh" => "fresh drained",
        "water" => "water on",
        "lights-checked" => "lights checked",
        _ => "yes",
    }
}

/// Brings somebody to each step that can be reached: of trailers on site water, on their tank, in the cold.
fn at_each_step(mut then: impl FnMut(&Crew, &str)) {
    let mut seen: Vec<String> = Vec::new();
    let starts: &[&[&str]] = &[
        &["12 arrived"],
        &["6 arrived"],
        &["16 arrived"],
        &["10 arrived"],
        &["12 arrived", "12 temp 38"],
        &[
            "12 arrived",
            "12 temp 38",
            "12 water on, power on, heater on, in service",
            "packing up 12",
        ],
    ];
    for start in starts {
        let mut crew = Crew::new(false);
        for text in *start {
            crew.hears("tobin", text);
        }
        for _ in 0..20 {
            let Some(round) = round_of(&crew) else { break };
            let key = key_of(&round);
            if !seen.contains(&key) {
                seen.push(key.clone());
                // the step is what was asked last
                let mut here = Crew::new(false);
                here.desk = crew.desk.clone();
                (here.now, here.said) = (crew.now, crew.said);
                here.hears("tobin", "repeat");
                then(&here, &key);
            }
            crew.hears("tobin", past(&round.step));
            if round_of(&crew).is_some_and(|now| now.step == round.step) {
                crew.hears("tobin", "done");
            }
        }
    }
}

#[test]
fn each_step_of_setting_up_and_leaving_is_answered_in_peoples_own_words() {
    let table = table();
    let (mut wrong, mut tried, mut reached) = (Vec::new(), 0, Vec::new());
    at_each_step(|crew, key| {
        reached.push(key.to_owned());
        let Some(answers) = table.get(key) else {
            wrong.push(format!("{key} has no answers"));
            return;
        };
        let guards = NEVER_SKIPPED.contains(&key);
        let mut hold = |texts: &[String], what: &str, right: &dyn Fn(&Comes) -> bool| {
            for text in texts {
                tried += 1;
                let came = comes(crew, text);
                if !right(&came) {
                    wrong.push(format!("{key} {text:?}: {what}, but {came:?}"));
                }
            }
        };
        let stays = |came: &Comes| came.step.as_deref() == Some(key);
        let quiet = |came: &Comes| came.events.is_empty() && came.values.is_empty();
        let unread = |came: &Comes| {
            came.told.contains("could not place") || came.told.contains("no pude ubicar")
        };
        let goes_on = |came: &Comes| {
            let way = key.split('-').next();
            came.step
                .as_ref()
                .is_none_or(|step| step.split('-').next() == way)
        };
        let moves = [Event::Arrived, Event::Left, Event::Returned];
        let done = |came: &Comes| {
            let moved = came.events.iter().any(|event| moves.contains(event));
            let clean = !came.skipped && came.faults.is_empty() && !moved;
            !stays(came) && goes_on(came) && clean
        };
        let not_done = |came: &Comes| {
            stays(came) && quiet(came) && !unread(came) && !came.confirmed
                || !came.faults.is_empty() && !came.confirmed
        };
        let passed = |came: &Comes| match guards {
            true => stays(came) && quiet(came),
            false => (came.skipped || came.step.is_none()) && quiet(came),
        };
        hold(&answers.yes, "done", &done);
        hold(&answers.si, "done", &done);
        hold(&answers.no, "not done", &not_done);
        hold(&answers.nones, "not done", &not_done);
        hold(&answers.skip, "skipped", &passed);
        hold(&answers.salta, "skipped", &passed);
        for (text, value) in answers.value.iter().chain(&answers.valor) {
            let read = |came: &Comes| {
                let mut values = came.values.iter();
                values.any(|(_, read)| (read - value).abs() < 0.01) && came.faults.is_empty()
            };
            hold(std::slice::from_ref(text), "read", &read);
        }
        hold(&answers.part, "open still", &|came| {
            stays(came) && !unread(came)
        });
        hold(&answers.aside, "nothing", &|came| {
            stays(came) && quiet(came)
        });
        // what is asked of the step is no question of how things stand
        let explained = |came: &Comes| {
            let status = came.told.starts_with("12:") || came.told.starts_with("6:");
            let silent = quiet(came) && came.faults.is_empty() && !unread(came);
            stays(came) && silent && !status && came.told.len() > 60
        };
        hold(&answers.asks, "explained", &explained);
    });
    let gone = table.keys().filter(|key| !reached.contains(key));
    wrong.extend(gone.map(|key| format!("{key} is never reached")));
    none_is(&wrong, tried);
}
