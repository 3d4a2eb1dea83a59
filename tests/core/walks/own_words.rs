//! Plain answers in one's own words, and numbers as people write them.

use hosebib::heard::Fault;

use super::{Crew, at_step, every};

#[test]
fn a_plain_answer_in_ones_own_words_advances() {
    const YES: &[&str] = &[
        "yes",
        "Yes.",
        "yep",
        "yup",
        "yeah",
        "yea",
        "yess",
        "yesss",
        "yse",
        "ya it is",
        "yes it is",
        "yes sir",
        "yeah it is",
        "uh huh",
        "affirmative",
        "correct",
        "sure is",
        "sure does",
        "yes boss",
        "ok yes",
        "yes thanks",
        "it is",
        "they are",
        "si",
        "sí",
        "SI",
        "si señor",
        "sip",
        "simon",
        "asi es",
        "claro que si",
        "si esta",
        "afirmativo",
        "sí, ya",
        "si jefe",
        "yep all of it",
        "yes they are",
        "well yes",
        "hey yes",
        "yes, done",
    ];
    const NO: &[&str] = &[
        "no",
        "No.",
        "nope",
        "nah",
        "nop",
        "nooo",
        "naw",
        "negative",
        "no sir",
        "not yet",
        "no it isnt",
        "it isn't",
        "its not",
        "no its not",
        "not really",
        "no boss",
        "ok no",
        "no thanks",
        "it is not",
        "nel",
        "para nada",
        "todavía no",
        "aún no",
        "no está",
        "no esta",
        "no señor",
        "negativo",
        "no, jefe",
        "well no",
        "doesnt",
        "it doesn't",
        "no way",
        "no it doesnt",
        "hey no",
        "not at all",
        "tampoco",
        "no hay",
        "no ya no",
        "nah man",
        "no, not yet",
    ];
    use hosebib::rules::Asks;
    let mut wrong = Vec::new();
    let mut crew = Crew::new(false);
    let mut seen = std::collections::BTreeSet::new();
    for fault in hosebib::heard::Fault::ALL {
        for (number, step) in hosebib::rules::steps(*fault).iter().enumerate() {
            if !matches!(step.asks, Asks::IfGood | Asks::IfBad) {
                continue;
            }
            if !seen.insert(step.key) || !at_step(&mut crew, *fault, number) {
                continue;
            }
            let before = crew.place("tobin");
            for (texts, yes) in [(YES, true), (NO, false)] {
                for text in every(2, number, texts) {
                    let would = crew.would("tobin", text);
                    let told = &would.told;
                    let stays = step.guards() && step.asks == Asks::IfGood && !yes;
                    let moved = would.place != before
                        || told.contains("DANGER")
                        || told.contains("WARNING");
                    if moved == stays
                        && !(stays && moved && matches!(step.then, hosebib::rules::Then::Report(_)))
                    {
                        wrong.push(format!("{fault} {} {text:?}: {told}", step.key));
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn a_number_is_taken_as_people_write_it() {
    const PSI: &[&str] = &[
        "52",
        "52 psi",
        "52psi",
        "its 52",
        "it's 52",
        "about 52",
        "around 52 psi",
        "like 52",
        "reads 52",
        "gauge says 52",
        "static 52",
        "52 static",
        "52 pounds",
        "52 lbs",
        "~52",
        "52.",
        "ok 52",
        "yes 52",
        "showing 52",
        "sitting at 52",
        "marca 52",
        "como 52",
        "52 libras",
        "tengo 52",
        "unos 52",
        "la presion esta en 52",
        "pressure 52",
        "pressure is 52 psi",
        "52ish",
        "got 52",
        "52 right now",
        "its 52 now",
        "its at 52",
        "we are at 52",
        "da 52",
        "presión 52",
        "agua 52 psi",
        "water 52",
        "psi 52",
        "it reads 52 psi",
    ];
    let mut wrong = Vec::new();
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 weak water");
    for text in PSI {
        let would = crew.would("tobin", text);
        if !would.told.contains("52 psi with taps shut")
            || would.place.is_none_or(|place| place.1 != 1)
        {
            wrong.push(format!("{text:?}: {}", would.told));
        }
    }
    assert!(wrong.is_empty(), "{}:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn no_just_one_is_no_answer_against_one_alone() {
    let mut crew = Crew::new(false);
    assert!(at_step(&mut crew, Fault::NoLights, 1));
    let told = crew.would("tobin", "no just one lamp").told;
    assert!(!told.contains("So it is not"), "{told}");
    let told = crew.hears("tobin", "no, several of them");
    assert!(told.contains("So it is not one lamp"), "{told}");
}

#[test]
fn work_told_with_what_it_came_to_ends_the_check() {
    let mut crew = Crew::new(false);
    assert!(at_step(&mut crew, Fault::NoLights, 2));
    let told = crew.would("tobin", "cleaned it works now").told;
    assert!(told.contains("That ends the check on 12"), "{told}");
    // of a trailer that is named it may be anything
    let told = crew.would("tobin", "10 cleaned, works now").told;
    assert!(!told.contains("That ends the check on 12"), "{told}");
}
