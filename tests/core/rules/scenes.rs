//! Whole situations: several topics at once, and quiet days.

use hosebib::finding::{FindingId as Id, Level, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{said, unit};

#[test]
fn a_deep_winter_check_in_speaks_of_water_cold_and_waste_worst_first() {
    let found = unit("12").hears(
        "2027-01-16 17:10",
        said()
            .read(R::PressurePsi, 95.0)
            .read(R::WastePct, 75.0)
            .read(R::AirF, -5.0),
    );
    found
        .has(Id::WaterOverPressure, Urgency::Now)
        .at_level(Id::WaterOverPressure, Level::Warning)
        .has(Id::ColdFreezeSoon, Urgency::Now)
        .has(Id::ColdTankHeaterOn, Urgency::Soon)
        .has(Id::WasteBookPumpOut, Urgency::Now)
        .lacks(Id::ColdNoColdPackage)
        .lacks(Id::ColdWinterize)
        .lacks(Id::WasteCloseNow)
        .lacks(Id::WaterUnderPressure);
    assert_eq!(found.ids()[0], Id::WaterOverPressure);
    let due = found.task(Id::WasteBookPumpOut).due.expect("a time");
    assert!(
        due >= found.at && due <= found.at + chrono::TimeDelta::minutes(80),
        "{due}"
    );
}

#[test]
fn everything_at_its_limit_is_in_order() {
    let found = unit("12").hears(
        "2027-05-29 14:30",
        said()
            .read(R::PressurePsi, 60.0)
            .read(R::Volts, 108.0)
            .amps(1, 16.0)
            .read(R::BatteryV, 13.6)
            .read(R::WastePct, 12.5),
    );
    assert!(found.ids().is_empty(), "{:?}", found.ids());
}

#[test]
fn long_cord_and_hose_inside_their_limits_are_in_order() {
    let found = unit("12").hears(
        "2027-05-29 11:00",
        said()
            .did(Event::PowerOn)
            .did(Event::WaterOn)
            .read(R::Cords, 4.0)
            .read(R::CordFt, 60.0)
            .read(R::HoseFt, 50.0)
            .read(R::PressurePsi, 55.0),
    );
    assert!(found.ids().is_empty(), "{:?}", found.ids());
}

#[test]
fn a_dry_field_late_in_the_day_wants_water_before_anything() {
    unit("21")
        .after("2027-07-24 10:40", said().did(Event::InService))
        .hears(
            "2027-07-24 16:00",
            said()
                .wrong(Fault::PumpRunning)
                .wrong(Fault::BatteryLow)
                .read(R::FreshPct, 8.0),
        )
        .has(Id::WaterFreshEndurance, Urgency::Now)
        .has(Id::TroublePumpRunning, Urgency::Now)
        .has(Id::PowerBatteryLow, Urgency::Soon)
        .lacks(Id::TroublePumpDead)
        .lacks(Id::WasteCloseNow);
}

#[test]
fn a_topic_that_the_message_does_not_touch_is_not_listed_again() {
    let twelve = unit("12").after("2027-05-29 13:00", said().read(R::PressurePsi, 95.0));
    twelve
        .hears("2027-05-29 13:30", said().read(R::Volts, 120.0))
        .lacks(Id::WaterOverPressure);
    twelve
        .asked("2027-05-29 13:30")
        .has(Id::WaterOverPressure, Urgency::Now);
}
