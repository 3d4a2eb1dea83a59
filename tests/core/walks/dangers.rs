//! A danger told inside any guided check comes first, the check keeps its place until it is over, and each danger ends by
//! the words that the bot names for it.

use hosebib::heard::{Fault, UnitName};
use hosebib::rules::steps;

use super::ends::checked;
use super::{Crew, none_is, past, said, words_to};

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

#[test]
fn a_trailer_with_an_open_danger_is_used_or_switched_in_no_silence() {
    let of_a_place = [
        Fault::Shock,
        Fault::Fire,
        Fault::BurntSmell,
        Fault::GasSmell,
        Fault::CoAlarm,
        Fault::GeneratorInside,
    ];
    let told = [
        ("tobin", "12 open"),
        ("tobin", "12 reopened"),
        ("tobin", "12 heater on"),
        ("tobin", "12 power on"),
        ("tobin", "turned it back on"),
        ("lupe", "12 abierta"),
        ("lupe", "12 calentador prendido"),
        ("lupe", "ya la volví a prender"),
    ];
    let off = [("tobin", "12 power off"), ("lupe", "12 corriente apagada")];
    let mut wrong = Vec::new();
    for (fault, english, spanish) in OPENED.iter().filter(|(of, ..)| of_a_place.contains(of)) {
        let gas = *fault == Fault::GasSmell;
        for (who, text) in told.iter().chain(off.iter().filter(|_| gas)) {
            let mut crew = Crew::new(false);
            crew.hears(who, if *who == "tobin" { english } else { spanish });
            let turn = crew.takes(who, text);
            let reply = words_to(&turn, who);
            let first = reply.lines().next().unwrap_or_default();
            let first = first.starts_with("DANGER 12") || first.starts_with("PELIGRO 12");
            if !first || !words_to(&turn, "nadia").contains(text) || !has(&crew, *fault) {
                wrong.push(format!("{fault}, {text:?}: {reply}"));
            }
        }
        // a reading is no use of it
        let mut crew = Crew::new(false);
        crew.hears("tobin", english);
        let reply = crew.hears("tobin", "12 tank 1/4");
        if reply.contains("still open") {
            wrong.push(format!("{fault}, a reading: {reply}"));
        }
    }
    none_is(&wrong, told.len() * of_a_place.len());
}

#[test]
fn a_danger_without_a_trailer_is_taken_back_once_it_is_sure() {
    let mut wrong = Vec::new();
    let told = [
        ("tobin", "gas smell", "no, false alarm", "yes"),
        ("tobin", "fire", "false alarm, sorry", "yes"),
        ("lupe", "huele a gas", "falsa alarma", "si"),
        ("lupe", "hay fuego", "no, falsa alarma", "si"),
    ];
    for (who, danger, back, sure) in told {
        let mut crew = Crew::new(false);
        crew.hears(who, danger);
        let turn = crew.takes(who, back);
        let asked = words_to(&turn, who);
        let known = words_to(&turn, "nadia").contains("takes back");
        let mut doubt = Crew {
            desk: crew.desk.clone(),
            ..crew
        };
        let stands = doubt.hears(who, "no");
        let over = crew.hears(who, sure);
        let again = |text: &str| text.contains("DANGER") || text.contains("PELIGRO");
        if !asked.contains('?') || !known || !again(&stands) || again(&over) {
            wrong.push(format!("{danger}, {back:?}: {asked}\n{stands}\n{over}"));
        }
    }
    none_is(&wrong, told.len());
}

#[test]
fn an_emergency_line_that_does_not_answer_is_no_help_that_comes() {
    let mut wrong = Vec::new();
    let told = [
        (
            "tobin",
            "12 somebody fell and is bleeding",
            "911 wont answer",
        ),
        ("tobin", "12 is on fire", "cant get through to 911"),
        ("lupe", "se cayó una señora en la 12", "el 911 no contesta"),
    ];
    for (who, danger, text) in told {
        let mut crew = Crew::new(false);
        crew.hears(who, danger);
        let turn = crew.takes(who, text);
        let reply = words_to(&turn, who);
        let other = reply.contains("another phone") || reply.contains("otro teléfono");
        if !other || !words_to(&turn, "nadia").contains("cannot reach the emergency line") {
            wrong.push(format!("{text:?}: {reply}"));
        }
    }
    none_is(&wrong, told.len());
}

#[test]
fn bare_minutes_take_the_clock_that_was_offered() {
    let mut wrong = Vec::new();
    let told = [
        ("tobin", "crawling under 12", "12, 15 min", true),
        ("tobin", "crawling under 12", "15 min", true),
        ("lupe", "me voy a meter debajo de la 12", "20 minutos", true),
        ("tobin", "crawling under 12", "12 pressure 50", false),
        ("tobin", "crawling under 12", "truck in 15 min", false),
    ];
    for (who, offer, text, runs) in told {
        let mut crew = Crew::new(false);
        crew.hears(who, offer);
        let reply = crew.hears(who, text);
        if crew.desk.book().ahead().alone(who).is_some() != runs {
            wrong.push(format!("{offer:?}, {text:?}: {reply}"));
        }
    }
    none_is(&wrong, told.len());
}

#[test]
fn whoever_said_that_they_drive_is_sent_no_help_to_the_site() {
    let mut wrong = Vec::new();
    let address = "Dovecote Farm Road";
    for (who, road, danger) in [
        (
            "tobin",
            "leaving the yard with 12, eta 45 min",
            "12 brakes smokin",
        ),
        ("tobin", "on my way with 12, eta 40 min", "im hurt"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, road);
        let turn = crew.takes(who, danger);
        let reply = words_to(&turn, who);
        let known = words_to(&turn, "nadia").contains("not known: ask them");
        if reply.contains(address) || !reply.contains("which road") || !known {
            wrong.push(format!("{road:?}, {danger:?}: {reply}"));
        }
        // at the site the address is the site's again
        let mut crew = Crew::new(false);
        crew.hears(who, road);
        crew.hears(who, "here with 12");
        let reply = crew.hears(who, "12 gas smell");
        if !reply.contains(address) {
            wrong.push(format!("{road:?}, arrived: {reply}"));
        }
    }
    none_is(&wrong, 2);
}
