//! An answer is taken for what it says and for nothing else: to this step, to later ones, on the check's own trailer, in
//! its time.

use chrono::TimeDelta;
use hosebib::heard::{Event, Fault, UnitName};

use super::{Crew, at_step, none_is};

impl Crew {
    /// Tells whether an event is on record for a trailer.
    pub(super) fn has_done(&self, unit: &str, event: Event) -> bool {
        let kept = self.desk.book().unit(&UnitName::new(unit));
        kept.is_some_and(|kept| kept.state().when(event).is_some())
    }
}

#[test]
fn what_does_not_fit_the_question_is_asked_about() {
    let mut wrong = Vec::new();
    let mut crew = Crew::new(false);
    // "Are two cords on one GFCI?"
    assert!(at_step(&mut crew, Fault::GfciTrip, 2));
    let before = crew.place("tobin");
    let texts = [
        "yes its wet outside",
        "outside, yes its wet",
        "yes the breaker is on",
        "no the outlet is fine",
        "yes it is raining",
        "no, the light is on",
        "sí, está mojado afuera",
        "si, el foco prende",
        "no, la bomba no",
        "yes hose is loose",
    ];
    for text in texts {
        let would = crew.would("tobin", text);
        if would.place != before || would.faults {
            wrong.push(format!("{text:?}: {}", would.told));
        }
    }
    for text in [
        "yes two on one",
        "yes both on the same",
        "no one each",
        "no, cada uno tiene el suyo",
        "yes boss",
        "no they are not",
        "yes two cords on that gfci",
    ] {
        let would = crew.would("tobin", text);
        if would.place == before {
            wrong.push(format!("{text:?} is not taken: {}", would.told));
        }
    }
    none_is(&wrong, texts.len() + 7);
}

#[test]
fn that_the_fault_still_stands_is_no_bar_to_a_yes() {
    let mut wrong = Vec::new();
    let texts = [
        "yes but cold",
        "yes but still cold",
        "yes, its cold",
        "sí pero sigue fría",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        assert!(at_step(&mut crew, Fault::NoHotWater, 0));
        let told = crew.hears("tobin", text);
        if crew.place("tobin").is_none_or(|place| place.1 != 1) {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn lights_that_work_elsewhere_end_no_check() {
    let mut wrong = Vec::new();
    let texts = [
        "the other lights in there work fine",
        "the rest of them work",
        "the other room lights work",
        "los otros sí prenden",
        "las demas luces funcionan",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 no lights in room A");
        let told = crew.hears("tobin", text);
        if crew.place("tobin").is_none() || told.contains("fixed") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn what_later_steps_ask_is_not_asked_again() {
    let mut wrong = Vec::new();
    let texts = [
        "breaker is on, no gfci, cords all in",
        "site breaker is on. there is no gfci. all plugged in",
        "no gfci, everything is plugged in and the breaker is on",
        "el breaker está arriba, no hay gfci, todos conectados",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 no power");
        let told = crew.hears("tobin", text);
        let asks = crew.hears("tobin", "no");
        if !asks.contains("step 5") || !told.contains("site breaker") {
            wrong.push(format!("{text:?}: {told} {asks}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn an_answer_past_a_step_that_guards_somebody_waits_for_it() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 got a shock off the steps");
    let told = crew.hears("tobin", "unit is closed and the site knows");
    assert!(told.contains("step 1"), "{told}");
    let told = crew.hears("tobin", "power is off, nobody hurt");
    assert!(told.contains("licensed electrician go on"), "{told}");
}

#[test]
fn the_checks_own_trailer_is_meant_unless_another_is_named() {
    let mut wrong = Vec::new();
    let texts = [
        "unplugged it and it holds now",
        "unplugged all, it holds",
        "desconecté todo y aguanta",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 gfci tripped");
        crew.hears("tobin", "16 tank 1/4");
        let told = crew.hears("tobin", text);
        let moved = crew.place("tobin").is_some_and(|place| place.1 == 1);
        let power = ["12", "16"]
            .iter()
            .any(|unit| crew.has_done(unit, Event::PowerOff));
        if !moved || power {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn a_denial_counts_where_it_stands_before_the_answer() {
    let mut wrong = Vec::new();
    let rows = [
        ("sin nada conectado sí aguanta", Some(1)),
        ("holds with nothing on it", Some(1)),
        ("it holds, no problem", Some(1)),
        ("still holds", Some(1)),
        ("it does not hold", None),
        ("nothing plugged in and it still pops", None),
    ];
    for (text, step) in rows {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 gfci tripped");
        let told = crew.hears("tobin", text);
        if crew.place("tobin").map(|place| place.1) != step {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, rows.len());
}

#[test]
fn what_is_thawed_is_looked_at_for_splits_before_it_is_over() {
    let mut crew = Crew::new(false);
    assert!(at_step(&mut crew, Fault::Frozen, 3));
    let told = crew.hears("tobin", "its thawed");
    assert!(told.contains("Is there a split or a drip?"), "{told}");
}

#[test]
fn a_load_that_trips_it_is_named_at_any_step() {
    let mut crew = Crew::new(false);
    assert!(at_step(&mut crew, Fault::GfciTrip, 2));
    let told = crew.hears("tobin", "trips when i plug in the water heater");
    assert!(told.contains("the water heater is at fault"), "{told}");
}

#[test]
fn a_breaker_that_is_on_was_not_reset() {
    for text in [
        "12 breaker is on",
        "12 breaker 2 is on",
        "12 el breaker está arriba",
    ] {
        let mut crew = Crew::new(false);
        let told = crew.hears("tobin", text);
        assert!(!crew.has_done("12", Event::BreakerReset), "{text}: {told}");
    }
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 breaker back on");
    assert!(crew.has_done("12", Event::BreakerReset));
}

#[test]
fn an_answer_long_after_the_question_is_asked_again_before_it_counts() {
    let mut wrong = Vec::new();
    let texts = ["yes", "no", "yep", "sí", "its open", "both open", "nope"];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 no water");
        let before = crew.place("tobin");
        crew.now += TimeDelta::minutes(50);
        let told = crew.hears("tobin", text);
        let again = told.contains("no water, step 1") || told.contains("sin agua, paso 1");
        if crew.place("tobin") != before || !again {
            wrong.push(format!("{text:?}: {told}"));
        }
        let told = crew.hears("tobin", text);
        if crew.place("tobin") == before {
            wrong.push(format!("{text:?} does not count the second time: {told}"));
        }
    }
    // so is a bare number; one with its name is a report
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 weak water");
    crew.now += TimeDelta::minutes(50);
    let told = crew.hears("tobin", "52");
    if !told.contains("weak water, step 1") {
        wrong.push(format!("52: {told}"));
    }
    none_is(&wrong, texts.len() + 1);
}

#[test]
fn a_step_of_leaving_that_was_asked_long_ago_is_asked_again_too() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 in service");
    crew.hears("tobin", "packing up 12");
    crew.now += TimeDelta::minutes(50);
    let told = crew.hears("tobin", "yes");
    assert!(
        told.contains("asked") && !crew.has_done("12", Event::Closed),
        "{told}"
    );
    crew.hears("tobin", "yes");
    assert!(crew.has_done("12", Event::Closed));
}

#[test]
fn what_is_about_something_else_is_not_eaten_by_an_old_check() {
    let mut wrong = Vec::new();
    let texts = [
        "nice weather",
        "thanks",
        "ok",
        "see you tomorrow",
        "gracias",
        "ya comimos",
        "16 fresh 1/2",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 no hot water");
        crew.now += TimeDelta::minutes(60);
        let before = crew.place("tobin");
        let told = crew.hears("tobin", text);
        let next = crew.hears("tobin", text);
        if crew.place("tobin") != before || next.contains("step") || next.contains("paso") {
            wrong.push(format!("{text:?}: {told} {next}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn who_asks_for_the_question_gets_it() {
    let mut wrong = Vec::new();
    let texts = [
        "whats the question",
        "what's the question?",
        "what was the question",
        "where were we",
        "where are we?",
        "which step was it",
        "cual era la pregunta",
        "¿cuál era la pregunta?",
        "en qué íbamos",
        "qué me preguntaste",
        "repeat the question",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 no hot water");
        for wait in [0, 90] {
            crew.now += TimeDelta::minutes(wait);
            let told = crew.hears("tobin", text);
            if !told.contains("step 1") && !told.contains("paso 1") {
                wrong.push(format!("{text:?} after {wait} min: {told}"));
            }
        }
        let told = Crew::new(false).hears("tobin", text);
        if !told.contains("No check is open") && !told.contains("No hay revisión") {
            wrong.push(format!("{text:?} with nothing open: {told}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn what_is_skipped_twice_is_left_to_somebody_who_can_look_unless_somebody_is_in_danger() {
    let mut wrong = Vec::new();
    let faults = [
        (Fault::NoHotWater, 0, false),
        (Fault::Frozen, 0, false),
        (Fault::Leak, 0, false),
        (Fault::LockJam, 0, false),
        (Fault::Shock, 0, true),
        (Fault::Spill, 0, true),
        (Fault::PersonTrapped, 0, true),
    ];
    for (fault, step, stays) in faults {
        let mut crew = Crew::new(false);
        assert!(at_step(&mut crew, fault, step), "{fault}");
        crew.hears("tobin", "skip");
        let told = crew.hears("tobin", "skip");
        if crew.place("tobin").is_some() != stays {
            wrong.push(format!("{fault}: {told}"));
        }
        if !stays && crew.desk.book().tasks().open().next().is_none() {
            wrong.push(format!("{fault} opens no task: {told}"));
        }
    }
    none_is(&wrong, faults.len());
}

#[test]
fn lights_that_flicker_have_a_course_of_their_own() {
    let mut wrong = Vec::new();
    let texts = [
        ("tobin", "12 lights flickering"),
        ("tobin", "lights keep blinking in 12"),
        ("tobin", "12 lights going on and off"),
        ("lupe", "parpadean las luces en la 12"),
        ("lupe", "la 12 luces parpadeando"),
    ];
    for (who, text) in texts {
        let mut crew = Crew::new(false);
        let told = crew.hears(who, text);
        let asks = told.contains("lights flicker, step 1") || told.contains("parpadean, paso 1");
        let stops = crew.hears(who, if who == "lupe" { "sí" } else { "yes" });
        let off = stops.contains("All breakers off now") || stops.contains("todos los breakers");
        if !asks || !off {
            wrong.push(format!("{text:?}: {told} {stops}"));
        }
    }
    none_is(&wrong, texts.len());
    let mut crew = Crew::new(false);
    let told = crew.hears("tobin", "12 no lights");
    assert!(told.contains("no lights, step 1"), "{told}");
}

#[test]
fn ice_underfoot_is_no_frozen_pipe() {
    let mut wrong = Vec::new();
    let texts = [
        "steps on 16 are icy",
        "16 ice all over the ramp",
        "16 steps frozen over",
        "the stairs at 16 are slick with ice",
        "16 walkway is black ice",
        "los escalones de la 16 tienen hielo",
        "la rampa de la 16 está resbalosa",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        let told = crew.hears("juno", text);
        let says = told.contains("Ice underfoot") || told.contains("Hielo donde se pisa");
        if !says || told.contains("flame") || told.contains("step 1") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    for text in [
        "16 hose frozen",
        "16 steps are not icy",
        "16 ramp salted, no ice",
        "16 cooler has ice",
    ] {
        let told = Crew::new(false).hears("juno", text);
        if told.contains("Ice underfoot") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, texts.len() + 4);
}

#[test]
fn a_reading_from_before_the_trouble_is_asked_again() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 static 52");
    crew.now += TimeDelta::minutes(15);
    crew.hears("tobin", "12 no water");
    let told = crew.hears("tobin", "both open");
    assert!(told.contains("read the pressure"), "{told}");
    // one of a few minutes ago counts, with its age
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 static 52");
    crew.hears("tobin", "12 no water");
    crew.now += TimeDelta::minutes(2);
    let told = crew.hears("tobin", "both open");
    assert!(
        told.contains("ago: water 52 psi") && told.contains("step 3"),
        "{told}"
    );
}

#[test]
fn a_heater_far_under_its_nameplate_is_not_called_on() {
    for text in ["12 heater on, 1 amp", "12 heater on, circuit 4 at 1 amp"] {
        let told = Crew::new(false).hears("tobin", text);
        assert!(
            told.contains("element or a thermostat is out"),
            "{text}: {told}"
        );
    }
    let told = Crew::new(false).hears("tobin", "12 heater on, circuit 4 at 14 amps");
    assert!(!told.contains("thermostat"), "{told}");
    let mut crew = Crew::new(false);
    assert!(at_step(&mut crew, Fault::NoHeat, 6));
    let told = crew.hears("tobin", "1 amp");
    assert!(told.contains("far too little"), "{told}");
}

#[test]
fn first_words_come_again_in_a_line_until_it_gets_worse() {
    let mut wrong = Vec::new();
    let rows = [
        (
            "tobin",
            "12 smells like gas",
            "still smells like gas",
            "12 gas smell is getting worse",
            "flame",
        ),
        (
            "tobin",
            "12 is on fire",
            "12 still on fire",
            "12 fire is spreading",
            "goes back in",
        ),
        (
            "lupe",
            "12 huele a gas",
            "sigue oliendo a gas",
            "12 huele a gas más fuerte",
            "flama",
        ),
    ];
    for (who, first, again, worse, keeps) in rows {
        let mut crew = Crew::new(false);
        let full = crew.hears(who, first);
        let short = crew.hears(who, again);
        let anew = crew.hears(who, worse);
        let shorter = short.len() * 2 < full.len() && short.contains(keeps);
        let signal = short.contains("DANGER") || short.contains("PELIGRO");
        if !shorter || !signal || anew.len() <= short.len() {
            wrong.push(format!("{first:?}: {full}\n{short}\n{anew}"));
        }
    }
    none_is(&wrong, rows.len());
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 smells like gas");
    let told = crew.hears("tobin", "everyone is out");
    assert!(told.contains("Nobody back in"), "{told}");
}
