use hosebib::finding::{Caution, FindingId as Id, Level, Origin, TaskKind, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{said, unit};

const WINTER: &str = "2027-01-16 17:10";

// common practice, no source: 40 note, 32 warn, 28 with wind, 20 in any case
#[test]
fn freezing_grows_urgent_with_the_cold() {
    let at = |air, wind| unit("12").hears(WINTER, said().read(R::AirF, air).read(R::WindMph, wind));
    at(40.1, 0.0).lacks(Id::ColdFreezeSoon);
    at(40.0, 0.0).has(Id::ColdFreezeSoon, Urgency::Plan);
    at(32.1, 0.0).has(Id::ColdFreezeSoon, Urgency::Plan);
    at(32.0, 0.0).has(Id::ColdFreezeSoon, Urgency::Soon);
    at(28.1, 20.0).has(Id::ColdFreezeSoon, Urgency::Soon);
    at(28.0, 4.9).has(Id::ColdFreezeSoon, Urgency::Soon);
    at(28.0, 5.0).has(Id::ColdFreezeSoon, Urgency::Now);
    at(20.1, 0.0).has(Id::ColdFreezeSoon, Urgency::Soon);
    at(20.0, 0.0)
        .has(Id::ColdFreezeSoon, Urgency::Now)
        .warns(Id::ColdFreezeSoon, Caution::HeatTape)
        .warns(Id::ColdFreezeSoon, Caution::NoFlame);
}

// common practice, no source: a bare 3/4 in hose at 20 °F and 10 mph is at 32 °F in 10 min; a quarter of 2.1 h more blocks it
#[test]
fn the_hose_has_its_minutes_and_the_wind_is_said_to_be_taken() {
    let found = unit("12").hears(WINTER, said().read(R::AirF, 20.0));
    found
        .near(Id::ColdFreezeSoon, "hose_min", 10.0, 1.0)
        .near(Id::ColdFreezeSoon, "block_min", 10.0 + 2.1 * 15.0, 3.0)
        .near(Id::ColdFreezeSoon, "wind", 10.0, 0.0)
        .says(Id::ColdFreezeSoon, "cold-freeze-soon-now-wind-taken");
    assert_eq!(
        found.fact(Id::ColdFreezeSoon, "wind").origin,
        Origin::Assumed
    );
}

#[test]
fn a_hose_that_stands_counts_at_28_without_wind() {
    unit("12")
        .after(WINTER, said().did(Event::WaterOn))
        .hears(
            "2027-01-16 18:00",
            said().read(R::AirF, 27.0).read(R::WindMph, 0.0),
        )
        .has(Id::ColdFreezeSoon, Urgency::Now);
}

// common practice, no source: site power lost at 32 °F or less starts the clock: hose, then pump and heater lines, then tanks
#[test]
fn power_lost_at_freezing_starts_the_clock() {
    let at = |air| {
        unit("12")
            .after(
                "2027-01-16 15:00",
                said().read(R::AirF, air).did(Event::HeaterOn),
            )
            .hears("2027-01-16 16:00", said().did(Event::PowerLost))
    };
    let found = at(32.0);
    found
        .has(Id::ColdFreezeSoon, Urgency::Now)
        .warns(Id::ColdFreezeSoon, Caution::HeaterDry);
    assert_eq!(found.task(Id::ColdFreezeSoon).kind, TaskKind::Drain);
    at(30.0)
        .says(Id::ColdFreezeSoon, "cold-freeze-soon-no-power")
        .lacks(Id::ColdTankHeaterOn);
    at(32.1).has(Id::ColdFreezeSoon, Urgency::Plan);
}

#[test]
fn an_air_of_another_day_is_not_guessed() {
    unit("12")
        .after("2027-01-15 15:00", said().read(R::AirF, 10.0))
        .hears("2027-01-16 16:00", said().did(Event::PowerLost))
        .lacks(Id::ColdFreezeSoon);
}

#[test]
fn a_low_to_come_counts_as_the_air_does() {
    let found = unit("12").hears(WINTER, said().read(R::AirF, 45.0).read(R::LowF, 12.0));
    found
        .has(Id::ColdFreezeSoon, Urgency::Now)
        .says(Id::ColdFreezeSoon, "cold-freeze-soon-tonight");
    let low = |low| unit("12").hears(WINTER, said().read(R::AirF, 45.0).read(R::LowF, low));
    low(30.0).has(Id::ColdFreezeSoon, Urgency::Soon);
    unit("12")
        .hears(WINTER, said().read(R::LowF, 41.0))
        .lacks(Id::ColdFreezeSoon);
}

// a package is fitted: heater not reported on, to 32 °F
#[test]
fn the_tank_heater_is_asked_for_at_freezing() {
    let at = |air| unit("12").hears(WINTER, said().read(R::AirF, air));
    at(32.0).has(Id::ColdTankHeaterOn, Urgency::Soon).near(
        Id::ColdTankHeaterOn,
        "circuit",
        4.0,
        0.0,
    );
    at(32.1).lacks(Id::ColdTankHeaterOn);
    unit("12")
        .after("2027-01-16 15:00", said().did(Event::HeaterOn))
        .hears(WINTER, said().read(R::AirF, 10.0))
        .lacks(Id::ColdTankHeaterOn);
}

// off in hard frost with water aboard: its task is due at once, and late tells the dispatcher
#[test]
fn a_heater_that_is_off_in_hard_frost_is_due_at_once() {
    let off = |air| unit("12").hears(WINTER, said().read(R::AirF, air).did(Event::HeaterOff));
    let found = off(20.0);
    found
        .has(Id::ColdTankHeaterOn, Urgency::Soon)
        .says(Id::ColdTankHeaterOn, "cold-tank-heater-on-off");
    assert!(found.task(Id::ColdTankHeaterOn).due.is_some());
    let mild = off(20.1);
    mild.says(Id::ColdTankHeaterOn, "cold-tank-heater-on");
    assert_eq!(mild.task(Id::ColdTankHeaterOn).due, None);
}

// common practice, no source: heater on but its circuit reads 0 A; trailer 3 has its heaters on circuit 3
#[test]
fn a_heater_whose_circuit_draws_nothing_is_off() {
    let reads = |circuit, amps| {
        unit("3")
            .after(
                "2027-01-16 15:00",
                said().did(Event::HeaterOn).read(R::AirF, 10.0),
            )
            .hears("2027-01-16 16:00", said().amps(circuit, amps))
    };
    reads(3, 0.0)
        .has(Id::ColdTankHeaterOn, Urgency::Now)
        .says(Id::ColdTankHeaterOn, "cold-tank-heater-on-dead");
    reads(3, 8.0).lacks(Id::ColdTankHeaterOn);
    reads(2, 0.0).lacks(Id::ColdTankHeaterOn);
}

// none fitted: plan to 40, soon to 32, now to 0, and 0 or less is winterize
#[test]
fn without_a_package_the_trailer_is_drained_in_time() {
    let at = |air| unit("7").hears("2027-12-11 07:15", said().read(R::AirF, air));
    at(40.1).lacks(Id::ColdNoColdPackage);
    at(40.0).has(Id::ColdNoColdPackage, Urgency::Plan);
    at(32.0).has(Id::ColdNoColdPackage, Urgency::Soon);
    at(0.1)
        .has(Id::ColdNoColdPackage, Urgency::Soon)
        .lacks(Id::ColdWinterize);
    at(0.0)
        .has(Id::ColdNoColdPackage, Urgency::Now)
        .has(Id::ColdWinterize, Urgency::Now)
        .warns(Id::ColdWinterize, Caution::HeaterDry)
        .warns(Id::ColdWinterize, Caution::Antifreeze)
        .lacks(Id::ColdTankHeaterOn);
    unit("12")
        .hears(WINTER, said().read(R::AirF, -10.0))
        .lacks(Id::ColdNoColdPackage)
        .lacks(Id::ColdWinterize);
}

#[test]
fn a_winterized_trailer_is_left_in_peace() {
    unit("7")
        .after("2027-12-11 07:00", said().did(Event::Winterized))
        .hears("2027-12-11 07:15", said().read(R::AirF, -10.0))
        .lacks(Id::ColdWinterize)
        .lacks(Id::ColdNoColdPackage)
        .lacks(Id::ColdFreezeSoon);
}

// US National Weather Service chart: 0 °F and 15 mph is −19, 0 °F and 10 mph is −16; frostbite in 30 min from −18 (rounded)
#[test]
fn wind_chill_is_for_people() {
    let at = |air, wind| {
        unit("21").hears(
            "2027-02-06 09:00",
            said().read(R::AirF, air).read(R::WindMph, wind),
        )
    };
    at(0.0, 15.0)
        .has(Id::ColdCrewCold, Urgency::Now)
        .at_level(Id::ColdCrewCold, Level::Caution)
        .near(Id::ColdCrewCold, "chill", -19.0, 0.6)
        .warns(Id::ColdCrewCold, Caution::Frostbite);
    at(0.0, 10.0)
        .has(Id::ColdCrewCold, Urgency::Plan)
        .near(Id::ColdCrewCold, "chill", -16.0, 0.6);
    at(40.0, 5.0).lacks(Id::ColdCrewCold); // 36 by the chart
    at(-25.0, 20.0).says(Id::ColdCrewCold, "cold-crew-cold-stop");
}

#[test]
fn no_heat_in_a_frost_is_about_draining() {
    unit("12")
        .hears(WINTER, said().wrong(Fault::NoHeat).read(R::AirF, 20.0))
        .has(Id::TroubleNoHeat, Urgency::Now)
        .says(Id::TroubleNoHeat, "trouble-no-heat-freezing");
}

// NIOSH 2010-115 (from memory): shivering, numbness and confusion count, whatever the thermometer says
#[test]
fn a_person_who_suffers_from_the_cold_is_a_warning() {
    let cold = || said().wrong(Fault::PersonCold);
    unit("12")
        .hears(WINTER, cold())
        .at_level(Id::ColdCrewCold, Level::Warning)
        .has(Id::ColdCrewCold, Urgency::Now)
        .says(Id::ColdCrewCold, "cold-crew-cold-person")
        .warns(Id::ColdCrewCold, Caution::EmergencyCall)
        .warns(Id::ColdCrewCold, Caution::Frostbite);
    // the person goes before the weather's note
    unit("12")
        .hears(WINTER, cold().read(R::AirF, 30.0))
        .says(Id::ColdCrewCold, "cold-crew-cold-person");
}
