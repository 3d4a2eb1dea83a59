//! A danger told inside any guided check comes first, the check keeps its place until it is over, and each danger ends by
//! the words that the bot names for it.

use hosebib::heard::{Fault, UnitName};
use hosebib::rules::steps;

use super::ends::checked;
use super::{Crew, none_is, past, said};

/// What somebody tells beside a step: who, the words, the fault, how the first line opens.
const TOLD: &[(&str, Fault, &str)] = &[
    ("i smell gas", Fault::GasSmell, "DANGER 12"),
    (
        "theres smoke coming out of the panel",
        Fault::Fire,
        "DANGER 12",
    ),
    (
        "theres a burnt smell in here",
        Fault::BurntSmell,
        "DANGER 12",
    ),
    ("the co alarm is going off", Fault::CoAlarm, "DANGER 12"),
    (
        "i feel dizzy and got a headache",
        Fault::GasIllness,
        "DANGER 12",
    ),
    ("i just got shocked by the steps", Fault::Shock, "DANGER 12"),
    (
        "a guest just fell and is bleeding",
        Fault::PersonHurt,
        "DANGER 12",
    ),
    ("the trailer is rolling away", Fault::Runaway, "DANGER 12"),
    (
        "there is a kid locked in a stall",
        Fault::PersonTrapped,
        "WARNING 12",
    ),
    ("huele a gas", Fault::GasSmell, "DANGER 12"),
    ("está saliendo humo del tablero", Fault::Fire, "DANGER 12"),
    (
        "se cayó una señora y está sangrando",
        Fault::PersonHurt,
        "DANGER 12",
    ),
    ("me dio toques el barandal", Fault::Shock, "DANGER 12"),
];

/// Brings somebody to a step of the check of a fault on 12; false where its answers lead elsewhere.
fn at(crew: &mut Crew, fault: Fault, step: usize) -> bool {
    let mut told = crew.hears("tobin", &format!("12 {}", said(fault)));
    for before in &steps(fault)[..step] {
        told = crew.hears("tobin", past(before.key));
    }
    told.contains(&format!("step {}:", step + 1))
}

fn has(crew: &Crew, fault: Fault) -> bool {
    let unit = UnitName::new("12");
    let kept = crew.desk.book().unit(&unit);
    kept.is_some_and(|kept| kept.state().has(fault))
}

#[test]
fn a_danger_told_inside_a_check_comes_first_and_no_word_answers_the_check_before_it_is_over() {
    let mut wrong = Vec::new();
    let mut tried = 0;
    for fault in checked().filter(|fault| !Fault::DANGERS.contains(fault)) {
        for step in [0, 3] {
            if step >= steps(fault).len() {
                continue;
            }
            let mut start = Crew::new(false);
            if !at(&mut start, fault, step) {
                continue;
            }
            let place = start.place("tobin");
            for (text, danger, opens) in TOLD {
                tried += 1;
                let mut crew = Crew {
                    desk: start.desk.clone(),
                    ..start
                };
                let told = crew.hears("tobin", text);
                let spanish = opens
                    .replace("DANGER", "PELIGRO")
                    .replace("WARNING", "ADVERTENCIA");
                let first = told.lines().next().unwrap_or_default();
                let first = first.starts_with(opens) || first.starts_with(&spanish);
                if !first || !has(&crew, *danger) {
                    wrong.push(format!("{fault} step {step}, {text:?}: {told}"));
                    continue;
                }
                // a check of the danger's own is at hand now; else nothing answers the old one
                if steps(*danger).is_empty() {
                    let told = crew.hears("tobin", "shut it off");
                    // a smell is left alone beside gas and what it does
                    let ended = fault == Fault::Odor && crew.place("tobin").is_none();
                    if crew.place("tobin") != place && !ended {
                        wrong.push(format!("{fault} step {step}, {text:?}, moved: {told}"));
                    }
                }
            }
        }
    }
    assert!(tried > 300, "{tried}");
    none_is(&wrong, tried);
}

#[test]
fn a_check_goes_on_where_it_stood_once_the_danger_is_over() {
    let mut wrong = Vec::new();
    let mut tried = 0;
    for fault in checked().filter(|fault| !Fault::DANGERS.contains(fault)) {
        let mut crew = Crew::new(false);
        if !at(&mut crew, fault, 0) {
            continue;
        }
        tried += 1;
        let place = crew.place("tobin");
        crew.hears("tobin", "i smell gas");
        let waits = crew.hears("tobin", "back");
        let over = crew.hears("tobin", "fire dept cleared it");
        let back = crew.hears("tobin", "back");
        // a smell of gas takes the place of a plain one
        let same = crew.place("tobin") == place && back.contains("step 1:");
        if waits.contains("step ") || !(same || fault == Fault::Odor) {
            wrong.push(format!("{fault}:\n{waits}\n{over}\n{back}"));
        }
    }
    none_is(&wrong, tried);
}

/// How each danger is told, with the trailer, in English and Spanish.
const OPENED: &[(Fault, &str, &str)] = &[
    (
        Fault::Shock,
        "12 i got shocked by the steps",
        "la 12 me dio toques",
    ),
    (Fault::Fire, "12 is on fire", "hay fuego en la 12"),
    (Fault::BurntSmell, "12 burnt smell", "la 12 huele a quemado"),
    (
        Fault::GasIllness,
        "12 two people are dizzy",
        "hay gente mareada en la 12",
    ),
    (
        Fault::CoAlarm,
        "12 co alarm going off",
        "suena la alarma de co en la 12",
    ),
    (Fault::GasSmell, "smell gas in 12", "huele a gas en la 12"),
    (
        Fault::GeneratorInside,
        "someone put a propane heater inside 12",
        "hay un calentador de gas adentro de la 12",
    ),
    (
        Fault::PersonHurt,
        "12 somebody fell and is bleeding",
        "se cayó una señora en la 12",
    ),
    (
        Fault::PersonCold,
        "12 juno cant feel her fingers",
        "no siento los dedos, en la 12",
    ),
    (
        Fault::PersonTrapped,
        "somebody is locked in 12",
        "alguien encerrado en la 12",
    ),
    (Fault::Runaway, "12 is rolling away", "la 12 se va rodando"),
];

#[test]
fn each_danger_ends_by_the_words_that_are_named_for_it() {
    let rest = |fault: &&Fault| !OPENED.iter().any(|(of, ..)| of == *fault);
    assert_eq!(Fault::DANGERS.iter().find(rest), None);
    let replies = hosebib::reply::Replies::new();
    let mut wrong = Vec::new();
    for (fault, english, spanish) in OPENED {
        for (who, text) in [("tobin", english), ("lupe", spanish)] {
            let mut crew = Crew::new(false);
            let told = crew.hears(who, text);
            if !has(&crew, *fault) {
                wrong.push(format!("{fault} not logged by {text:?}: {told}"));
                continue;
            }
            let language = match who {
                "tobin" => hosebib::heard::Language::En,
                _ => hosebib::heard::Language::Es,
            };
            for words in quoted(&replies, language, *fault) {
                let mut crew = Crew {
                    desk: crew.desk.clone(),
                    ..crew
                };
                let told = crew.hears(who, &words);
                if has(&crew, *fault) {
                    wrong.push(format!("{fault} not ended by {words:?}: {told}"));
                }
            }
        }
    }
    none_is(&wrong, OPENED.len() * 2);
}

/// Returns the quoted words of the text that says what ends a danger on 12.
fn quoted(
    replies: &hosebib::reply::Replies,
    language: hosebib::heard::Language,
    fault: Fault,
) -> Vec<String> {
    let fleet = hosebib::fleet::demo::fleet();
    let now = super::DAY.parse().expect("an instant");
    let voice = replies.voice(language, fleet.style, fleet.time_zone, now);
    let text = voice.say(&format!("closes-{fault}"), &[("unit", "12".into())]);
    let quoted = text.split('"').skip(1).step_by(2);
    let words: Vec<String> = quoted.map(str::to_owned).collect();
    assert!(!words.is_empty(), "{text}");
    words
}

#[test]
fn people_who_are_well_end_no_danger_of_a_place() {
    let mut wrong = Vec::new();
    let texts = [
        ("tobin", "everyones ok"),
        ("tobin", "all good now"),
        ("tobin", "everybody is fine"),
        ("lupe", "ya está todo bien"),
        ("lupe", "todos estamos bien"),
    ];
    let of_a_place = [
        Fault::Fire,
        Fault::GasIllness,
        Fault::CoAlarm,
        Fault::GasSmell,
    ];
    for (fault, english, spanish) in OPENED.iter().filter(|(of, ..)| of_a_place.contains(of)) {
        for (who, text) in texts {
            let mut crew = Crew::new(false);
            crew.hears(who, if who == "tobin" { english } else { spanish });
            let told = crew.hears(who, text);
            let ends = told.contains("12 fire dept cleared it")
                || told.contains("12 la liberaron los bomberos");
            let again = told.contains("DANGER") || told.contains("PELIGRO");
            if !has(&crew, *fault) || !ends || again {
                wrong.push(format!("{fault}, {text:?}: {told}"));
            }
        }
    }
    // who fell and is well needs no help
    for (who, text) in texts {
        let mut crew = Crew::new(false);
        crew.hears(who, "12 somebody fell and is bleeding");
        let told = crew.hears(who, text);
        if has(&crew, Fault::PersonHurt) {
            wrong.push(format!("hurt, {text:?}: {told}"));
        }
    }
    none_is(&wrong, texts.len() * 5);
}
