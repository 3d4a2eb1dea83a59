use hosebib::finding::{Caution, FindingId as Id, Level, Origin, Urgency};
use hosebib::heard::ReadingKey as R;

use super::support::{Found, said, unit};

fn at(air: f64, humidity: f64) -> Found {
    unit("18").hears(
        "2027-08-07 13:00",
        said().read(R::AirF, air).read(R::HumidityPct, humidity),
    )
}

// US National Weather Service table: 86 °F and 50 % is 88, 94 and 45 is 100, 90 and 70 is 106, 100 and 60 is 129
#[test]
fn the_heat_index_sets_the_urgency() {
    at(86.0, 50.0).has(Id::HeatCrewHeat, Urgency::Plan);
    at(94.0, 45.0).has(Id::HeatCrewHeat, Urgency::Soon).near(
        Id::HeatCrewHeat,
        "heat_index",
        100.0,
        1.0,
    );
    at(90.0, 70.0)
        .has(Id::HeatCrewHeat, Urgency::Now)
        .at_level(Id::HeatCrewHeat, Level::Caution)
        .warns(Id::HeatCrewHeat, Caution::HeatStroke);
    at(100.0, 60.0)
        .has(Id::HeatCrewHeat, Urgency::Now)
        .says(Id::HeatCrewHeat, "heat-crew-heat-stop");
    at(78.0, 50.0).lacks(Id::HeatCrewHeat);
}

#[test]
fn an_unknown_humidity_is_taken_as_dry_and_asked() {
    let found = unit("18").hears("2027-08-07 13:00", said().read(R::AirF, 101.0));
    found
        .has(Id::HeatCrewHeat, Urgency::Soon)
        .says(Id::HeatCrewHeat, "heat-crew-heat-soon-dry")
        .near(Id::HeatCrewHeat, "heat_index", 93.4, 0.3);
    unit("18")
        .hears("2027-08-07 13:00", said().read(R::AirF, 88.0))
        .has(Id::HeatCrewHeat, Urgency::Plan)
        .says(Id::HeatCrewHeat, "heat-crew-heat-plan-dry");
    assert_eq!(
        found.fact(Id::HeatCrewHeat, "humidity").origin,
        Origin::Assumed
    );
}
