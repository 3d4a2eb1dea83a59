//! No trailer is called ready to tow before it is: with waste or fresh aboard, or its breakaway untested.

use super::Crew;

/// What was told before, and whether the trailer is ready after that.
type Row = (&'static str, &'static str, bool);

const ALL: &str = "12 closed, water off, heater off, power off, stowed, hitched, jacks up, lights checked, chocks out, breakaway tested";
const TODO: &str = "12 cerrada, agua cerrada, calentador apagado, corriente cortada, todo guardado, enganchada, gatos arriba, luces revisadas, calzas fuera, freno de seguridad probado";

const ROWS: &[Row] = &[
    ("12 waste empty, fresh empty", ALL, true),
    ("12 negras vacías, limpias vacías", TODO, true),
    // up to 5 % is what no pump gets out (common practice, no source)
    ("12 waste 5%, fresh 5%", ALL, true),
    ("12 waste 6%, fresh empty", ALL, false),
    ("12 waste empty, fresh 6%", ALL, false),
    ("12 negras 6%, limpias vacías", TODO, false),
    ("12 waste empty", ALL, false),
    ("12 fresh empty", ALL, false),
    (
        "12 waste empty, fresh empty",
        "12 closed, water off, heater off, power off, stowed, hitched, jacks up, lights checked, chocks out",
        false,
    ),
    (
        "12 waste empty, fresh empty",
        "12 closed, water off, heater off, power off, stowed, hitched, jacks up, lights checked, chocks out, breakaway not tested",
        false,
    ),
    (
        "12 waste empty, fresh empty",
        "12 closed, water off, heater off, power off, stowed, hitched, jacks up, chocks out, breakaway tested",
        false,
    ),
    (
        "12 waste empty, fresh empty",
        "12 closed, water off, heater off, power off, stowed, hitched, jacks up, lights checked, breakaway tested",
        false,
    ),
    (
        "12 waste empty, fresh empty",
        "12 closed, water off, heater off, power off, hitched, jacks up, lights checked, chocks out, breakaway tested",
        false,
    ),
];

fn is_ready(told: &str) -> bool {
    told.contains("is ready to tow") || told.contains("lista para remolcar")
}

#[test]
fn a_trailer_is_called_ready_only_when_all_is_done() {
    let mut wrong = Vec::new();
    for (levels, list, ready) in ROWS {
        let mut crew = Crew::new(false);
        let who = if list.contains("cerrada") {
            "lupe"
        } else {
            "tobin"
        };
        crew.hears("nadia", "12 in service");
        // nobody uses it once it is closed
        crew.hears("nadia", "12 closed");
        crew.hears(who, levels);
        let told = crew.hears(who, list);
        if is_ready(&told) != *ready {
            wrong.push(format!("{levels:?}, {list:?}: {told}"));
        }
    }
    super::none_is(&wrong, ROWS.len());
}

#[test]
fn what_guards_the_road_is_neither_skipped_nor_talked_away() {
    let talk = [
        "skip",
        "ok",
        "will do",
        "did all that tomorrow",
        "sure i think",
        "12 is fine",
        "let me check",
        "ya voy",
        "ahorita",
        "no",
    ];
    let mut wrong = Vec::new();
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 in service");
    crew.hears("tobin", "12 closed");
    crew.hears("tobin", "12 waste empty, fresh empty");
    let told = crew.hears(
        "tobin",
        "12 closed, water off, heater off, power off, stowed, hitched, jacks up, lights checked, chocks out",
    );
    assert!(told.contains("Breakaway: battery good"), "{told}");
    for text in talk {
        let told = crew.hears("tobin", text);
        if is_ready(&told) {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    super::none_is(&wrong, talk.len());
    crew.hears("tobin", "what's next");
    let told = crew.hears("tobin", "yes");
    assert!(is_ready(&told), "{told}");
}

/// What is bad about a trailer on the road, in words of crews, and how the bot names it.
const GEAR: &[(&str, &str, &str)] = &[
    ("tobin", "12 breakaway dead", "breakaway trouble"),
    ("tobin", "breakaway doesnt work on 12", "breakaway trouble"),
    ("tobin", "12 breakaway battery is flat", "breakaway trouble"),
    ("tobin", "right blinker out on 12", "tow light out"),
    ("tobin", "12 brake lights dont work", "tow light out"),
    ("tobin", "12 no tail lights", "tow light out"),
    (
        "tobin",
        "12 hooked up, lights work except right blinker",
        "tow light out",
    ),
    ("tobin", "12 hitch pin missing", "coupler or pin"),
    ("tobin", "12 coupler wont latch", "coupler or pin"),
    (
        "tobin",
        "12 chains not crossed, forgot the pin",
        "chain trouble",
    ),
    ("tobin", "12 no safety chains", "chain trouble"),
    ("tobin", "12 tongue jack stuck", "jack stuck"),
    ("tobin", "12 trailer brakes dragging", "brake trouble"),
    (
        "tobin",
        "leaving with 12, brakes dont work",
        "brake trouble",
    ),
    (
        "lupe",
        "12 el freno de seguridad no sirve",
        "freno de seguridad",
    ),
    (
        "lupe",
        "la direccional de la 12 no prende",
        "luz de remolque",
    ),
    (
        "lupe",
        "12 falta el perno del enganche",
        "enganche o su perno",
    ),
    ("lupe", "12 frenos amarrados", "frenos del remolque"),
];

#[test]
fn what_is_bad_for_the_road_is_named_and_stops_the_tow() {
    let mut wrong = Vec::new();
    for (who, text, names) in GEAR {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 in service");
        let told = crew.hears(who, text);
        let stops = told.contains("Do not tow it") || told.contains("No la remolque");
        if !stops || !told.contains(names) || told.contains("fixed:") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    super::none_is(&wrong, GEAR.len());
}

#[test]
fn what_works_or_was_taken_off_is_no_fault_of_towing() {
    let mut wrong = Vec::new();
    let texts = [
        "12 brakes work",
        "12 tow lights work",
        "12 tongue jack down",
        "12 breakaway tested",
        "12 unhitched, chains off",
        "12 breakaway pin pulled, brakes hold",
        "12 chocks out, lights fine",
        "12 room lights out",
    ];
    for text in texts {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 in service");
        let told = crew.hears("tobin", text);
        if told.contains("Do not tow") || told.contains("fixed: tow") || told.contains("fixed: br")
        {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    super::none_is(&wrong, texts.len());
}

#[test]
fn a_fault_of_towing_stays_on_the_leaving_list_until_it_is_said_fixed() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 in service");
    crew.hears("nadia", "12 closed");
    crew.hears("tobin", "12 waste empty, fresh empty");
    crew.hears("tobin", "12 breakaway dead");
    let told = crew.hears("tobin", ALL);
    assert!(told.contains("Do not tow it"), "{told}");
    assert!(told.contains("The breakaway was reported bad"), "{told}");
    let told = crew.hears("tobin", "can I go anyway");
    assert!(told.contains("must not be towed yet"), "{told}");
    assert!(told.contains("breakaway trouble"), "{told}");
    for text in ["skip", "no"] {
        let told = crew.hears("tobin", text);
        assert!(!is_ready(&told), "{text}: {told}");
    }
    let told = crew.hears("tobin", "12 breakaway fixed");
    assert!(is_ready(&told), "{told}");
}

#[test]
fn lights_and_cords_are_read_by_the_leaving() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "16 in service");
    let told = crew.hears(
        "tobin",
        "16 hooked up to truck, ready to roll, all lights fine, breakaway tested, chocks out, pumped 150 gal, fresh drained",
    );
    assert!(told.contains("tow lights checked"), "{told}");
    assert!(told.contains("hitched"), "{told}");
    assert!(!told.contains("no lights"), "{told}");
    let told = crew.hears("tobin", "16 rolling");
    assert!(told.contains("departure"), "{told}");

    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 in service");
    let told = crew.hears(
        "tobin",
        "12 stabilizers up, cords in, lights good, chocks in the truck",
    );
    for said in [
        "jacks up",
        "power off",
        "tow lights checked",
        "chocks taken out",
    ] {
        assert!(told.contains(said), "{said}: {told}");
    }
    assert!(!told.contains("chocked"), "{told}");
    // while guests use it the lights are those of its rooms
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 in service");
    let told = crew.hears("tobin", "12 lights ok");
    assert!(!told.contains("tow lights"), "{told}");
}

#[test]
fn leaving_beside_the_trailer_is_checked_before_it_rolls() {
    let mut wrong = Vec::new();
    for text in [
        "12 leaving",
        "12 waste 1/4 fresh 1/2 leaving",
        "we're leaving with 12",
    ] {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 in service");
        let told = crew.hears("tobin", text);
        if !told.contains("Do not roll yet") || !told.contains("12, leaving, ") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    // on the road it is told to pull over
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 in service");
    let told = crew.hears("tobin", "left the site with 12, on the road");
    assert!(told.contains("It left with these not reported"), "{told}");
    // these ask for the list, and nothing has left
    let starts = [
        "leaving check 12",
        "packing up 12",
        "close up 12",
        "we are done with 12, what do i do",
        "ya acabamos con la 12",
    ];
    for text in starts {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 in service");
        let told = crew.hears("tobin", text);
        let asks = told.contains("12, leaving, ") || told.contains("12, salida, ");
        if !asks || told.contains("departure") || told.contains("salida del sitio") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    super::none_is(&wrong, 3 + starts.len());
}
