//! Advice that is asked for: the answer with its caution where one is known, no report made of it, and a plain word where
//! none is.

use super::{Crew, words_to};

#[test]
fn what_must_not_be_done_is_answered_with_no_and_reports_nothing() {
    for (who, text) in [
        ("tobin", "can i put a propane heater inside 12"),
        ("tobin", "12 dump it in the ditch ok?"),
        ("tobin", "can i put a 30 amp fuse instead of 15"),
        ("tobin", "can i backfeed it"),
        ("tobin", "is it ok to reset the breaker on 12 a third time"),
        ("lupe", "puedo meter el brazo al tanque de la 6"),
        (
            "lupe",
            "puedo poner un calentador de propano adentro de la 6",
        ),
        ("lupe", "puedo remolcar la 6 con negras, está cerquita"),
    ] {
        let mut crew = Crew::new(false);
        let turn = crew.takes(who, text);
        let reply = words_to(&turn, who);
        assert!(
            reply.starts_with("No.") || reply.starts_with("No,"),
            "{text}: {reply}"
        );
        assert!(
            !reply.contains("Logged") && !reply.contains("Anotado"),
            "{text}: {reply}"
        );
        assert_eq!(words_to(&turn, "nadia"), "", "{text}");
    }
}

#[test]
fn a_danger_told_beside_what_is_asked_is_one() {
    for (who, text) in [
        ("tobin", "can i tape the breaker. someone got shocked at 12"),
        ("tobin", "can i use a heat gun, 12 is on fire"),
        ("tobin", "12 is on fire, can i put a propane heater inside?"),
        ("tobin", "can i tape the breaker and someone got shocked"),
        (
            "tobin",
            "how do i reset the gfci and the lady just passed out",
        ),
        (
            "tobin",
            "where do i park n some lady fell on the steps of 12",
        ),
        ("tobin", "whats the gate code theres a fire in 12"),
        ("tobin", "who do i call cuz somebody got shocked"),
        (
            "tobin",
            "how do i level 12 and jack is sinking w juno under it",
        ),
        ("lupe", "cómo reseteo el gfci y se desmayó una señora"),
        ("lupe", "dónde me estaciono pero huele a gas en la 6"),
        (
            "lupe",
            "puedo encintar la pastilla? le dio toques a uno en la 6",
        ),
    ] {
        let mut crew = Crew::new(false);
        let turn = crew.takes(who, text);
        let danger = if who == "lupe" { "PELIGRO" } else { "DANGER" };
        let reply = words_to(&turn, who);
        assert!(reply.starts_with(danger), "{text}: {reply}");
        assert!(words_to(&turn, "nadia").contains("DANGER"), "{text}");
    }
}

#[test]
fn what_only_might_happen_is_no_danger() {
    for (who, text) in [
        ("tobin", "who do i call when someone gets hurt"),
        (
            "tobin",
            "what do i do if the gfci trips and someone gets shocked",
        ),
        (
            "tobin",
            "should i close 12 and tell the guests theres no water",
        ),
        ("lupe", "a quién llamo si alguien se cae y se desmaya"),
    ] {
        let turn = Crew::new(false).takes(who, text);
        assert!(!words_to(&turn, "nadia").contains("DANGER"), "{text}");
    }
}

#[test]
fn wet_hands_unplug_nothing() {
    for (who, text, no) in [
        ("tobin", "can i unplug it standing in water", "No."),
        ("tobin", "ok to plug it in with wet hands?", "No."),
        ("lupe", "puedo desconectarla con las manos mojadas", "No."),
    ] {
        let reply = Crew::new(false).hears(who, text);
        assert!(reply.starts_with(no), "{text}: {reply}");
    }
}

#[test]
fn towing_with_waste_is_answered_while_the_leaving_check_waits() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "packing up 12");
    let reply = crew.hears("tobin", "its just 3 miles, ok if i tow with waste in");
    assert!(reply.starts_with("No, not on a road"), "{reply}");
}

#[test]
fn what_nobody_here_knows_is_said_so_and_no_status_is_read_out() {
    for (who, text, wanted) in [
        (
            "tobin",
            "can i stand on the fender",
            "I cannot tell whether that is safe",
        ),
        (
            "tobin",
            "how do i open the awning",
            "I cannot tell whether that is safe",
        ),
        (
            "lupe",
            "puedo subirme a la salpicadera",
            "No puedo decir si eso es seguro",
        ),
        (
            "lupe",
            "cómo abro el toldo",
            "No puedo decir si eso es seguro",
        ),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, "12 pressure 50");
        let reply = crew.hears(who, text);
        assert!(reply.starts_with(wanted), "{text}: {reply}");
        assert!(!reply.contains("psi"), "{text}: {reply}");
    }
}

#[test]
fn a_breaker_that_somebody_switched_off_has_not_tripped_and_was_not_reset() {
    for text in [
        "12 flipped the breaker off",
        "12 i turned off the breaker",
        "bajé el breaker de la 12",
        "apagué la pastilla de la 12",
    ] {
        let reply = Crew::new(false).hears("tobin", text);
        for wrong in ["breaker reset", "breaker trips", "repuesto", "se bota"] {
            assert!(!reply.contains(wrong), "{text}: {reply}");
        }
    }
}
