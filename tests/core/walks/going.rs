//! Packing up and going: what is told by a word, what ends with it, and what is still said on the way.

use hosebib::finding::TaskKind;
use hosebib::heard::{Event, Fault, UnitName};

use super::{Crew, none_is};

/// A trailer that stood open, with its leaving list begun.
fn packing(who: &str) -> Crew {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 arrived");
    crew.hears("nadia", "12 in service");
    crew.hears(who, "packing up 12");
    crew
}

#[test]
fn a_step_of_leaving_is_told_by_a_word() {
    let mut wrong = Vec::new();
    let rows = [
        ("unplugged", Event::PowerOff),
        ("unplugged it", Event::PowerOff),
        ("all unplugged, cords in", Event::PowerOff),
        ("desconectada", Event::PowerOff),
        ("all packed", Event::Stowed),
        ("todo guardado", Event::Stowed),
        ("everything's in", Event::Stowed),
        ("yanked the cords", Event::PowerOff),
        ("fresh is dumped", Event::FreshDrained),
    ];
    for (text, event) in rows {
        let mut crew = packing("tobin");
        let told = crew.hears("tobin", text);
        if !crew.has_done("12", event) || !told.contains("12, ") {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    for text in ["not unplugged yet", "16 unplugged", "unplugged?"] {
        let mut crew = packing("tobin");
        let told = crew.hears("tobin", text);
        if crew.has_done("12", Event::PowerOff) {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, rows.len() + 3);
}

#[test]
fn ready_to_roll_is_answered_by_the_list() {
    let mut wrong = Vec::new();
    let texts = [
        "ready to roll",
        "12 ready to roll",
        "ready to go with 12",
        "12 lista para salir",
    ];
    for text in texts {
        for hitched in [false, true] {
            let mut crew = packing("tobin");
            if hitched {
                crew.hears("tobin", "12 closed, hitched");
            }
            let told = crew.hears("tobin", text);
            let list = told.contains("12, leaving, ") || told.contains("12, salida, ");
            if told.contains("Not logged") || told.contains("No anotado") || !list {
                wrong.push(format!("{text:?} hitched {hitched}: {told}"));
            }
        }
    }
    none_is(&wrong, texts.len() * 2);
}

/// Tells all that is to be done before 12 leaves.
fn ready(crew: &mut Crew) {
    for text in [
        "12 closed, waste pumped, fresh drained",
        "12 water off, power off, heater off, stowed",
        "12 hitched, jacks up, chocks out",
        "12 lights ok",
        "12 breakaway tested",
    ] {
        crew.hears("tobin", text);
    }
}

#[test]
fn what_is_not_ready_is_not_logged_as_gone() {
    let texts = [
        "12 left",
        "12 leaving",
        "12 rolling out",
        "12 departed",
        "left the site with 12",
        "salí con la 12",
        "12 rolling, all good",
    ];
    let mut wrong = Vec::new();
    for text in texts {
        let mut crew = packing("tobin");
        crew.hears("tobin", "12 closed, hitched, waste pumped");
        let told = crew.hears("tobin", text);
        let listed = told.contains("Still to do on 12") || told.contains("Falta en la 12");
        if crew.has_done("12", Event::Left) || !listed {
            wrong.push(format!("{text:?} held: {told}"));
        }
        // the road is the truth, whatever is open
        let told = crew.hears("tobin", "12 on the road");
        if !crew.has_done("12", Event::Left) {
            wrong.push(format!("{text:?} on the road: {told}"));
        }
        let mut crew = packing("tobin");
        ready(&mut crew);
        let told = crew.hears("tobin", text);
        if !crew.has_done("12", Event::Left) {
            wrong.push(format!("{text:?} ready: {told}"));
        }
        let mut crew = packing("tobin");
        crew.hears("tobin", "12 hitched");
        crew.hears("nadia", "override 12 gate closes at ten");
        let told = crew.hears("tobin", text);
        if !crew.has_done("12", Event::Left) {
            wrong.push(format!("{text:?} let go: {told}"));
        }
    }
    none_is(&wrong, texts.len());
}

#[test]
fn rolling_without_issues_is_rolling() {
    let mut wrong = Vec::new();
    let texts = [
        "Rolling, no issues",
        "rolling, no problems",
        "12 rolling, all good",
        "vamos saliendo, sin problemas",
    ];
    for text in texts {
        let mut crew = packing("tobin");
        ready(&mut crew);
        let told = crew.hears("tobin", text);
        if !crew.has_done("12", Event::Left) {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    let mut crew = packing("tobin");
    crew.hears("tobin", "12 closed, hitched");
    crew.hears("tobin", "not rolling yet");
    assert!(!crew.has_done("12", Event::Left));
    none_is(&wrong, texts.len());
}

#[test]
fn a_smashed_lamp_holds_it_back_from_the_road() {
    let mut wrong = Vec::new();
    let rows = [
        ("tobin", "12 tail light smashed"),
        ("tobin", "12 cracked a taillight backing out"),
        ("tobin", "12 dead tail light"),
        ("lupe", "la 12 luz trasera rota"),
        ("lupe", "12 calavera quebrada"),
    ];
    for (who, text) in rows {
        let mut crew = Crew::new(false);
        let told = crew.hears(who, text);
        let unit = UnitName::new("12");
        let kept = crew.desk.book().unit(&unit);
        if !kept.is_some_and(|kept| kept.state().has(Fault::TowLightsFault)) {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    none_is(&wrong, rows.len());
}

#[test]
fn a_left_blinker_has_left_nothing() {
    let mut crew = packing("tobin");
    let told = crew.hears("tobin", "left blinker is out");
    assert!(!crew.has_done("12", Event::Left), "{told}");
    assert!(told.contains("tow light out"), "{told}");
}

#[test]
fn empty_waste_at_leaving_is_a_pump_out_that_is_asked_about() {
    for text in [
        "12 waste empty, fresh drained, leaving",
        "12 negras vacías, limpias drenadas, ya la saco",
    ] {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 arrived");
        crew.hears("tobin", "12 tank 3/4, in service");
        crew.hears("tobin", "12 closed");
        let told = crew.hears("tobin", text);
        let unit = UnitName::new("12");
        let open = crew.desk.book().tasks().open_on(&unit);
        let pump_out = open.into_iter().any(|task| task.kind == TaskKind::PumpOut);
        assert!(!pump_out, "{told}");
        assert!(
            !told.contains("nobody pumped") && !told.contains("nadie vació"),
            "{told}"
        );
        assert!(
            told.contains("gallons") || told.contains("galones"),
            "{told}"
        );
        // its breakaway is not tested
        assert!(!crew.has_done("12", Event::Left), "{told}");
    }
}

#[test]
fn what_only_its_stand_needed_ends_when_it_leaves_and_repairs_stay() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "16 arrived");
    crew.hears("tobin", "16 in service, temp 25");
    crew.hears("tobin", "16 fan dead");
    let unit = UnitName::new("16");
    let kinds = |crew: &Crew| -> Vec<TaskKind> {
        let open = crew.desk.book().tasks().open_on(&unit);
        open.into_iter().map(|task| task.kind).collect()
    };
    assert!(kinds(&crew).contains(&TaskKind::Heater));
    let told = crew.hears("tobin", "16 left the site, already on the road");
    assert!(told.contains("as the trailer leaves"), "{told}");
    assert!(!kinds(&crew).contains(&TaskKind::Heater));
    assert!(kinds(&crew).contains(&TaskKind::Repair));
}

#[test]
fn a_truck_that_is_booked_is_asked_about_when_the_trailer_has_left() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 arrived");
    crew.hears("tobin", "12 tank 3/4, in service");
    crew.hears("tobin", "called the truck for 12, he comes at 19:00");
    let told = crew.hears("tobin", "left the site with 12, we are on the road");
    assert!(
        told.contains("still booked") && told.contains("Cancel it?"),
        "{told}"
    );
}

#[test]
fn after_draining_nobody_is_told_to_fill_or_to_heat() {
    let mut crew = Crew::new(false);
    crew.hears("nadia", "6 arrived");
    crew.hears("nadia", "6 in service, temp 25");
    crew.hears("tobin", "6 closed");
    for text in [
        "6 fresh drained",
        "6 fresh empty, waste empty",
        "6 power off",
        "6 hitched, fresh empty",
    ] {
        let told = crew.hears("tobin", text);
        let fills = ["Fill it", "refill before", "Turn on"]
            .iter()
            .any(|word| told.contains(word));
        assert!(!fills, "{text}: {told}");
    }
}

#[test]
fn who_is_hurt_on_the_road_is_given_no_address_of_the_site_that_was_left() {
    for hours in [0, 3] {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 arrived");
        let before = crew.hears("tobin", "12 someone got hurt");
        assert!(before.contains("Say you are at"), "{before}");
        let mut crew = Crew::new(false);
        crew.hears("nadia", "12 arrived");
        crew.hears("tobin", "left the site with 12, already on the road");
        crew.now += chrono::TimeDelta::hours(hours);
        let told = crew.hears("tobin", "12 someone got hurt");
        assert!(!told.contains("Say you are at"), "{told}");
        assert!(told.contains("nearest exit or mile"), "{told}");
    }
}

#[test]
fn water_where_the_card_says_there_is_none_is_asked_about_and_logged() {
    for (who, text) in [("tobin", "6 water on"), ("lupe", "6 agua conectada")] {
        let mut crew = Crew::new(false);
        crew.hears("nadia", "6 arrived");
        let told = crew.hears(who, text);
        assert!(
            told.contains("no water") || told.contains("no hay agua"),
            "{told}"
        );
        assert!(crew.has_done("6", Event::WaterOn), "{told}");
    }
    let mut crew = Crew::new(false);
    crew.hears("nadia", "12 arrived");
    let told = crew.hears("tobin", "12 water on");
    assert!(!told.contains("says it has no water"), "{told}");
}
