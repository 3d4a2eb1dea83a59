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
