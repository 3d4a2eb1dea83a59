//! Each step of each guided check is answered in people's own words, as `tests/data/own-words.toml` gives them, and what
//! answers nothing moves no step that guards somebody.

use std::collections::BTreeMap;

use hosebib::book::{Record, TaskChange};
use hosebib::dialogue::Course;
use hosebib::finding::TaskKind;
use hosebib::heard::{Fault, UnitName};
use hosebib::rules::{Asks, Step, course_steps, steps};
use serde::Deserialize;

use super::{Crew, Place, none_is, past_step, place_of, said};

/// The words by which a step may be answered.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Answers {
    #[serde(default)]
    yes: Vec<String>,
    #[serde(default)]
    no: Vec<String>,
    skip: Vec<String>,
    #[serde(default)]
    si: Vec<String>,
    #[serde(default)]
    nones: Vec<String>,
    salta: Vec<String>,
    #[serde(default)]
    value: Vec<(String, f64)>,
    #[serde(default)]
    valor: Vec<(String, f64)>,
    #[serde(default)]
    aside: Vec<String>,
}

/// What an answer comes to: where the check stands, what is newly logged as wrong and as mended, whether a danger is told,
/// what it makes somebody's work.
#[derive(Debug, PartialEq)]
struct Comes {
    place: Option<Place>,
    wrong: Vec<Fault>,
    danger: bool,
    mended: Vec<Fault>,
    tasks: Vec<TaskKind>,
}

fn table() -> BTreeMap<String, Answers> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/own-words.toml");
    let text = std::fs::read_to_string(path).expect("the table of answers");
    toml::from_str(&text).unwrap_or_else(|error| panic!("{error}"))
}

fn comes(crew: &Crew, text: &str) -> Comes {
    let turn = crew.turn("tobin", text);
    let mut comes = Comes {
        place: crew.place("tobin"),
        wrong: Vec::new(),
        danger: false,
        mended: Vec::new(),
        tasks: Vec::new(),
    };
    let looked_into = |fault: &Fault| {
        let kept = ["12", "6"].map(UnitName::new);
        let mut kept = kept.iter().filter_map(|unit| crew.desk.book().unit(unit));
        kept.any(|kept| kept.state().has(*fault))
    };
    for record in &turn.records {
        match record {
            Record::Talk { who, talk } if who == "tobin" => comes.place = place_of(talk),
            Record::Message(message) => {
                for report in &message.reports {
                    let told = report.entry.faults.iter().filter(|f| !looked_into(f));
                    let (grave, other): (Vec<Fault>, Vec<Fault>) =
                        told.partition(|fault| Fault::DANGERS.contains(fault));
                    comes.danger |= !grave.is_empty();
                    comes.wrong.extend(other);
                    comes.mended.extend(&report.entry.cleared);
                }
            }
            Record::Task {
                change: TaskChange::Opened { task },
                ..
            } => comes
                .tasks
                .extend(task.found.is_some().then_some(task.kind)),
            _ => {}
        }
    }
    comes
}

/// Brings somebody to each step that can be reached: on site water on 12, on its tank on 6.
fn at_each_step(mut then: impl FnMut(&Crew, &'static Step)) {
    let courses = Fault::ALL.iter().map(|fault| (said(*fault), steps(*fault)));
    let flicker = ("lights flicker", course_steps(Course::Flicker));
    let mut seen = Vec::new();
    for (words, course) in courses.chain([flicker]) {
        for unit in ["12", "6"] {
            let mut crew = Crew::new(false);
            let mut told = crew.hears("tobin", &format!("{unit} {words}"));
            for (number, step) in course.iter().enumerate() {
                let here = told.contains(&format!("step {}:", number + 1));
                if here && !seen.contains(&step.key) {
                    seen.push(step.key);
                    then(&crew, step);
                }
                if here {
                    crew.hears("tobin", past_step(step));
                    told = crew.hears("tobin", "repeat");
                }
            }
        }
    }
}

/// Says what an answer was taken for.
fn taken_for(crew: &Crew, came: &Comes) -> String {
    let plain = ["yes", "no", "skip"];
    match plain.into_iter().find(|word| comes(crew, word) == *came) {
        Some(word) => format!("taken for {word}"),
        None if came.place == crew.place("tobin") => format!("asked again: {came:?}"),
        None => format!("{came:?}"),
    }
}

/// Reads a number from the environment.
fn number(name: &str, usual: u64) -> u64 {
    let given = std::env::var(name).ok();
    given.map_or(usual, |text| text.parse().expect("a number"))
}

/// One answer in four, by chance; all of them with `HOSEBIB_WORDS=1`.
#[test]
fn each_step_is_answered_in_peoples_own_words() {
    let table = table();
    let (share, seed) = (number("HOSEBIB_WORDS", 4), number("HOSEBIB_WORDS_SEED", 7));
    println!("one answer in {share}, HOSEBIB_WORDS_SEED={seed}");
    let mut dice = fastrand::Rng::with_seed(seed);
    let (mut wrong, mut tried, mut reached) = (Vec::new(), 0, Vec::new());
    at_each_step(|crew, step| {
        reached.push(step.key);
        let Some(answers) = table.get(step.key) else {
            wrong.push(format!("{} has no answers", step.key));
            return;
        };
        let mut held = |texts: &[String], plain: &str| {
            let wanted = comes(crew, plain);
            for text in texts.iter().filter(|_| dice.u64(..share) == 0) {
                tried += 1;
                let came = comes(crew, text);
                if came != wanted {
                    let (key, taken) = (step.key, taken_for(crew, &came));
                    let told = crew.would("tobin", text).told;
                    wrong.push(format!("{key} {text:?}: {plain}, but {taken}: {told}"));
                }
            }
        };
        held(&answers.yes, "yes");
        held(&answers.si, "yes");
        held(&answers.no, "no");
        held(&answers.nones, "no");
        held(&answers.skip, "skip");
        held(&answers.salta, "skip");
        for (text, value) in answers.value.iter().chain(&answers.valor) {
            held(std::slice::from_ref(text), &value.to_string());
        }
    });
    let gone = table.keys().filter(|key| !reached.contains(&key.as_str()));
    wrong.extend(gone.map(|key| format!("{key} is never reached")));
    none_is(&wrong, tried);
}

#[test]
fn each_step_has_answers_enough_in_both_languages() {
    let table = table();
    at_each_step(|_, step| {
        let answers = &table[step.key];
        let (english, spanish): (&[usize], &[usize]) = match step.asks {
            Asks::For { .. } => (&[answers.value.len()], &[answers.valor.len()]),
            _ => (
                &[answers.yes.len(), answers.no.len()],
                &[answers.si.len(), answers.nones.len()],
            ),
        };
        let key = step.key;
        assert!(english.iter().all(|count| *count >= 3), "{key}");
        assert!(spanish.iter().all(|count| *count >= 2), "{key}");
        assert!(answers.skip.len() >= 3 && answers.salta.len() >= 2, "{key}");
        assert!(!step.guards() || answers.aside.len() >= 3, "{key}");
    });
}

#[test]
fn what_answers_nothing_moves_no_step_that_guards_somebody() {
    let table = table();
    let (mut wrong, mut tried) = (Vec::new(), 0);
    at_each_step(|crew, step| {
        let before = crew.place("tobin");
        for text in &table[step.key].aside {
            tried += 1;
            let came = comes(crew, text);
            let told = came.danger || !came.wrong.is_empty() || !came.mended.is_empty();
            if came.place != before || told {
                wrong.push(format!("{} {text:?}: {came:?}", step.key));
            }
        }
    });
    none_is(&wrong, tried);
}
