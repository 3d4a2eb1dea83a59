use hosebib::finding::{Caution, FactValue, FindingId as Id, Level, TaskKind, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{Unit, said, unit};

fn closed_and_pumped() -> Unit {
    unit("9")
        .after("2027-06-05 11:30", said().did(Event::InService))
        .after("2027-06-05 22:05", said().did(Event::Closed))
        .after(
            "2027-06-05 22:20",
            said().did(Event::WastePumped).read(R::PumpedGal, 210.0),
        )
        .after("2027-06-05 22:31", said().did(Event::FreshDrained))
        .after(
            "2027-06-05 22:35",
            said().did(Event::WaterOff).did(Event::HeaterOff),
        )
}

// common practice, no source: nothing aboard, nothing untested, nothing open
#[test]
fn an_empty_trailer_may_go() {
    let found = closed_and_pumped().hears("2027-06-05 22:50", said().did(Event::Hitched));
    found
        .lacks(Id::TowWasteAboard)
        .lacks(Id::TowFreshAboard)
        .lacks(Id::TowOverweight)
        .lacks(Id::SiteSetUpNext);
}

#[test]
fn waste_over_five_percent_stops_the_tow() {
    // trailer 9 holds 300 gal
    let hitched = |gal| {
        closed_and_pumped().hears(
            "2027-06-05 22:50",
            said().did(Event::Hitched).read(R::WasteGal, gal),
        )
    };
    hitched(15.0).lacks(Id::TowWasteAboard);
    let found = hitched(15.3);
    found
        .has(Id::TowWasteAboard, Urgency::Now)
        .at_level(Id::TowWasteAboard, Level::Warning)
        .warns(Id::TowWasteAboard, Caution::TowEmpty);
    assert_eq!(found.task(Id::TowWasteAboard).kind, TaskKind::PumpOut);
}

#[test]
fn tanks_of_which_nobody_spoke_since_the_guests_are_not_empty() {
    unit("9")
        .after(
            "2027-06-05 11:30",
            said()
                .did(Event::InService)
                .read(R::WastePct, 0.0)
                .read(R::FreshPct, 0.0),
        )
        .after("2027-06-05 22:05", said().did(Event::Closed))
        .hears("2027-06-05 22:50", said().did(Event::Hitched))
        .has(Id::TowWasteAboard, Urgency::Now)
        .says(Id::TowWasteAboard, "tow-waste-aboard-unknown")
        .has(Id::TowFreshAboard, Urgency::Soon);
}

// 500 gal of waste and 200 of fresh at 8.34 lb: 7200 + 5838 lb is 3048 over 9990
#[test]
fn full_tanks_are_too_heavy() {
    unit("12")
        .hears(
            "2027-05-29 23:20",
            said()
                .did(Event::Hitched)
                .did(Event::Left)
                .read(R::WastePct, 100.0)
                .read(R::FreshPct, 100.0),
        )
        .has(Id::TowOverweight, Urgency::Now)
        .at_level(Id::TowOverweight, Level::Warning)
        .near(Id::TowOverweight, "over", 3048.0, 1.0)
        .has(Id::TowWasteAboard, Urgency::Now)
        .has(Id::TowFreshAboard, Urgency::Now);
}

// trailer 9 has 690 lb to spare: 82.7 gal
#[test]
fn weight_is_judged_to_the_gallon() {
    let hitched = |gal| {
        closed_and_pumped().hears(
            "2027-06-05 22:50",
            said().did(Event::Hitched).read(R::WasteGal, gal),
        )
    };
    hitched(82.0).lacks(Id::TowOverweight);
    hitched(83.0).has(Id::TowOverweight, Urgency::Now);
}

fn missing(found: &super::support::Found) -> String {
    match &found.fact(Id::TowNotReady, "missing").value {
        FactValue::Text(text) => text.clone(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_of_the_leaving_list_was_never_reported_is_named() {
    let left = unit("12")
        .after(
            "2027-05-29 12:40",
            said()
                .did(Event::WaterOn)
                .did(Event::PowerOn)
                .did(Event::InService)
                .read(R::WastePct, 12.5),
        )
        .hears("2027-05-29 20:00", said().did(Event::Left));
    left.has(Id::TowNotReady, Urgency::Now)
        .has(Id::TowWasteAboard, Urgency::Now)
        .lacks(Id::SiteSetUpNext)
        .warns(Id::TowNotReady, Caution::Breakaway);
    assert_eq!(
        missing(&left),
        "closed, water-off, power-off, stowed, jacks-up, lights-checked"
    );
    let hitched = closed_and_pumped().hears("2027-06-05 22:50", said().did(Event::Hitched));
    hitched.has(Id::TowNotReady, Urgency::Soon);
    assert_eq!(missing(&hitched), "power-off, stowed");
    closed_and_pumped()
        .after(
            "2027-06-05 22:40",
            said().did(Event::PowerOff).did(Event::Stowed),
        )
        .hears("2027-06-05 22:50", said().did(Event::Hitched))
        .lacks(Id::TowNotReady);
}

#[test]
fn in_the_yard_before_its_job_nothing_was_to_be_packed() {
    unit("12")
        .hears("2027-05-29 08:00", said().did(Event::Hitched))
        .lacks(Id::TowNotReady)
        .has(Id::TowWasteAboard, Urgency::Soon);
}

#[test]
fn a_plan_to_tow_with_waste_aboard_is_stopped() {
    unit("12")
        .hears(
            "2027-05-29 22:00",
            said().read(R::WastePct, 75.0).plans("about to hitch up"),
        )
        .has(Id::TowWasteAboard, Urgency::Now)
        .lacks(Id::TowNotReady);
    unit("12")
        .hears(
            "2027-05-29 22:00",
            said()
                .read(R::WastePct, 75.0)
                .plans("bringing towels later"),
        )
        .lacks(Id::TowWasteAboard);
}

// 49 CFR 393.9 (lamps), 393.43 (breakaway), 393.48 (brakes), 393.70 (coupling, chains), from memory; jacks: common practice
#[test]
fn a_fault_of_what_it_is_towed_by_stops_the_tow_until_it_is_over() {
    let gear = Fault::OF_TOWING
        .iter()
        .filter(|fault| Id::of_fault(**fault) == Id::TowNotReady);
    let mut met = 0;
    for fault in gear {
        met += 1;
        let level = match fault {
            Fault::JackFault => Level::Caution,
            _ => Level::Warning,
        };
        let found = unit("12").hears("2027-05-29 20:00", said().wrong(*fault));
        found
            .has(Id::TowNotReady, Urgency::Now)
            .at_level(Id::TowNotReady, level)
            .says(Id::TowNotReady, "tow-not-ready-gear")
            .warns(Id::TowNotReady, Caution::Breakaway)
            .warns(Id::TowNotReady, Caution::RoadLaw);
        assert_eq!(found.task(Id::TowNotReady).kind, TaskKind::Repair);
        let hitched = said()
            .did(Event::WaterOff)
            .did(Event::PowerOff)
            .did(Event::Stowed)
            .did(Event::Hitched);
        let bad = closed_and_pumped().after("2027-06-05 22:40", said().wrong(*fault));
        bad.hears("2027-06-05 22:50", hitched.clone())
            .says(Id::TowNotReady, "tow-not-ready-gear");
        closed_and_pumped()
            .after("2027-06-05 22:40", said().wrong(*fault))
            .after("2027-06-05 22:45", said().over(*fault))
            .hears("2027-06-05 22:50", hitched)
            .lacks(Id::TowNotReady);
    }
    assert_eq!(met, 6);
}
