//! Words about help and alarms: who is well again of several, help that is there, and how a dispatcher takes note.

use super::{Crew, words_to};

#[test]
fn one_who_is_well_again_is_not_all_who_were_hurt() {
    for (who, hurt, well, all) in [
        (
            "tobin",
            ["12 a guest fell", "12 abel is bleeding"],
            "hes ok now",
            "12 hurt is over",
        ),
        (
            "lupe",
            ["se cayó una señora en la 6", "abel está sangrando en la 6"],
            "ya está bien",
            "6 herida atendida",
        ),
    ] {
        let mut crew = Crew::new(false);
        for told in hurt {
            crew.hears(who, told);
        }
        let reply = crew.hears(who, well);
        assert!(
            reply.contains("who is") || reply.contains("¿a quién"),
            "{reply}"
        );
        assert!(
            !reply.contains("fixed") && !reply.contains("arreglad"),
            "{reply}"
        );
        let unit = &all[..all.find(' ').expect("a trailer")];
        let status = crew.hears("nadia", &format!("status {unit}"));
        assert!(status.contains("someone hurt"), "{status}");
        crew.hears(who, all);
        let status = crew.hears("nadia", &format!("status {unit}"));
        assert!(!status.contains("someone hurt"), "{status}");
    }
}

#[test]
fn one_who_was_hurt_alone_and_is_well_is_answered_once() {
    for (who, hurt, well) in [
        ("tobin", "12 abel is bleeding", "hes ok now"),
        ("lupe", "abel está sangrando en la 6", "ya está bien"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, hurt);
        let reply = crew.hears(who, well);
        assert!(!reply.starts_with("No"), "{reply}");
        assert!(
            reply.contains("looked after") || reply.contains("atendid"),
            "{reply}"
        );
    }
}

#[test]
fn help_that_is_there_is_no_trailer_that_arrived() {
    for (who, text) in [
        ("tobin", "ambulance is here"),
        ("tobin", "12 fire dept is here"),
        ("lupe", "ya llegó la ambulancia a la 6"),
        ("lupe", "ya llegaron los bomberos a la 6"),
    ] {
        let turn = Crew::new(false).takes(who, text);
        let reply = words_to(&turn, who);
        assert!(
            !reply.contains("arrived") && !reply.contains("llegó"),
            "{text}: {reply}"
        );
        let told = words_to(&turn, "nadia");
        assert!(told.contains("an emergency"), "{text}: {told}");
    }
}

#[test]
fn a_dispatcher_takes_note_of_an_alarm_in_any_words_that_say_so() {
    for noted in [
        "copy",
        "10-4",
        "roger",
        "ok",
        "on it",
        "heard",
        "yep",
        "10-4 calling him",
        "i called 911",
        "enterada",
        "le estoy llamando",
        "ya llamé al 911",
    ] {
        let mut crew = Crew::new(false);
        crew.hears("abel", "tobin got shocked on 12");
        let reply = crew.hears("nadia", noted);
        assert!(
            reply.contains("electric shock") || reply.contains("toque"),
            "{noted}: {reply}"
        );
        let again = crew.hears("nadia", "got it");
        assert!(
            again.contains("Nothing is waiting") || again.contains("Nada espera"),
            "{noted}: {again}"
        );
    }
}

#[test]
fn what_is_no_note_leaves_the_alarm_as_it_is() {
    for other in ["ok did somebody call 911", "no copy", "ok 16 pressure 50"] {
        let mut crew = Crew::new(false);
        crew.hears("abel", "tobin got shocked on 12");
        crew.hears("nadia", other);
        let noted = crew.hears("nadia", "got it");
        assert!(noted.contains("electric shock"), "{other}: {noted}");
    }
}

#[test]
fn a_false_alarm_of_another_leaves_the_danger_and_alarms_nobody_anew() {
    for calls_off in ["false alarm on the shock", "it was static", "falsa alarma"] {
        let mut crew = Crew::new(false);
        crew.hears("abel", "tobin got shocked on 12");
        crew.hears("tobin", "status 12");
        let turn = crew.takes("tobin", calls_off);
        let reply = words_to(&turn, "tobin");
        assert!(
            reply.starts_with("Only who reported") || reply.starts_with("Solo quien"),
            "{calls_off}: {reply}"
        );
        assert_eq!(words_to(&turn, "nadia"), "", "{calls_off}");
        let status = crew.hears("nadia", "status 12");
        assert!(status.contains("electric shock"), "{status}");
    }
}

#[test]
fn a_dispatcher_who_reported_somebody_hurt_is_answered_on_other_things() {
    let mut crew = Crew::new(false);
    crew.hears(
        "nadia",
        "a guest slipped on the steps at 12, says her wrist hurts",
    );
    let reply = crew.hears("nadia", "whats dangerous right now");
    assert!(reply.contains("DANGER someone hurt"), "{reply}");
    let reply = crew.hears("nadia", "the band wants two more mirrors");
    assert!(!reply.contains("second danger"), "{reply}");
    crew.hears(
        "nadia",
        "incident 12 guest slipped on the ice by the steps 5pm",
    );
    let reply = crew.hears("nadia", "12 hurt is over");
    assert!(reply.contains("12: taken as looked after"), "{reply}");
    let reply = crew.hears("nadia", "12 hurt is over");
    assert!(
        reply.contains("no report of somebody hurt is open"),
        "{reply}"
    );
}
