use hosebib::finding::{Caution, FactValue, FindingId as Id, Level, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{Found, said, unit};

// common practice, no source: over 2 % warn, over 3 % act
#[test]
fn slope_counts_over_two_percent() {
    let slope = |pct| unit("9").hears("2027-06-05 10:30", said().read(R::SlopePct, pct));
    slope(2.0).lacks(Id::SiteNotLevel);
    slope(2.1).has(Id::SiteNotLevel, Urgency::Soon);
    slope(3.0).has(Id::SiteNotLevel, Urgency::Soon);
    slope(3.1).has(Id::SiteNotLevel, Urgency::Now);
    unit("9")
        .hears("2027-06-05 10:30", said().wrong(Fault::NotLevel))
        .has(Id::SiteNotLevel, Urgency::Soon);
    unit("9")
        .after("2027-06-05 10:30", said().wrong(Fault::NotLevel))
        .hears("2027-06-05 10:50", said().did(Event::Leveled))
        .lacks(Id::SiteNotLevel);
}

// common practice, no source: chock both sides before unhitching
#[test]
fn an_unhitched_trailer_without_chocks_is_a_warning() {
    let loose = said().did(Event::Unhitched).did(Event::JacksDown);
    unit("12")
        .hears("2027-05-29 10:30", loose.clone())
        .has(Id::SiteNotChocked, Urgency::Now)
        .at_level(Id::SiteNotChocked, Level::Warning)
        .warns(Id::SiteNotChocked, Caution::RollAway)
        .lacks(Id::SiteNotLevel);
    unit("12")
        .after("2027-05-29 10:20", said().did(Event::Chocked))
        .hears("2027-05-29 10:30", loose)
        .lacks(Id::SiteNotChocked);
}

#[test]
fn wind_counts_from_thirty_miles_an_hour() {
    let wind = |mph| unit("18").hears("2027-08-07 13:00", said().read(R::WindMph, mph));
    wind(29.9).lacks(Id::SiteWind);
    wind(30.0).has(Id::SiteWind, Urgency::Soon);
    wind(39.9).has(Id::SiteWind, Urgency::Soon);
    wind(40.0).has(Id::SiteWind, Urgency::Now);
}

fn steps(found: &Found) -> String {
    let text = |fact: &str| match found.one(Id::SiteSetUpNext).facts.find(fact) {
        Some(fact) => match &fact.value {
            FactValue::Text(text) => text.clone(),
            other => panic!("{other:?}"),
        },
        None => String::new(),
    };
    format!("{} | {}", text("next"), text("then"))
}

// common practice, no source: place, level, chock, unhitch, jacks, power (converter's circuit first), volts, water, test, photos, in service
#[test]
fn setting_up_goes_in_order_and_skips_what_is_done() {
    let mut twelve = unit("12");
    let arrived = twelve.hears("2027-05-29 10:10", said().did(Event::Arrived));
    arrived.has(Id::SiteSetUpNext, Urgency::Plan);
    assert_eq!(
        steps(&arrived),
        "level | chock, unhitch, jacks, power, volts, water, pressure, test, photos"
    );
    twelve = twelve.after("2027-05-29 10:10", said().did(Event::Arrived));
    let leveled = said().did(Event::Leveled).did(Event::Chocked);
    let next = twelve.hears("2027-05-29 10:20", leveled);
    assert_eq!(
        steps(&next),
        "unhitch | jacks, power, volts, water, pressure, test, photos"
    );
    twelve = twelve.after(
        "2027-05-29 10:40",
        said()
            .did(Event::Leveled)
            .did(Event::Chocked)
            .did(Event::Unhitched)
            .did(Event::JacksDown),
    );
    twelve
        .hears("2027-05-29 10:50", said().did(Event::PowerOn))
        .says(Id::SiteSetUpNext, "site-set-up-next-volts");
    twelve
        .hears("2027-05-29 11:30", said().did(Event::InService))
        .lacks(Id::SiteSetUpNext);
}

#[test]
fn a_strong_hydrant_wants_its_regulator_before_the_hose() {
    let set = said()
        .did(Event::Arrived)
        .did(Event::Leveled)
        .did(Event::Chocked)
        .did(Event::JacksDown)
        .did(Event::PowerOn)
        .read(R::Volts, 120.0);
    let found = unit("12").hears("2027-06-12 10:10", set);
    found.says(Id::SiteSetUpNext, "site-set-up-next-regulator");
    assert_eq!(steps(&found), "regulator | water, pressure, test, photos");
}

#[test]
fn a_dry_field_without_power_is_filled_and_lives_on_the_battery() {
    let set = said()
        .did(Event::Arrived)
        .did(Event::Leveled)
        .did(Event::Chocked)
        .did(Event::JacksDown);
    unit("21")
        .hears("2027-07-24 08:00", set)
        .says(Id::SiteSetUpNext, "site-set-up-next-fill-no-power")
        .warns(Id::SiteSetUpNext, Caution::AirGap);
}
