use hosebib::finding::{Caution, FindingId as Id, Level, TaskKind, Urgency};
use hosebib::heard::{Event, Fault};
use hosebib::rules::{Then, steps};

use super::support::{said, unit};

const DAY: &str = "2027-05-29 19:00";

#[test]
fn every_fault_raises_its_finding_and_no_other_trouble() {
    for fault in Fault::ALL {
        let found = unit("12").hears(DAY, said().wrong(*fault));
        let id = Id::of_fault(*fault);
        found.one(id);
        let troubles = found
            .ids()
            .iter()
            .filter(|id| id.topic() == "trouble")
            .count();
        assert!(troubles <= 1, "{fault}: {:?}", found.ids());
    }
}

#[test]
fn a_healthy_report_raises_no_trouble() {
    let found = unit("12").hears(DAY, said().did(Event::Cleaned));
    assert!(found.ids().is_empty(), "{:?}", found.ids());
}

#[test]
fn a_fault_that_was_mended_is_not_asked_after() {
    let mended = unit("12")
        .after(DAY, said().wrong(Fault::NoLights).wrong(Fault::Odor))
        .after("2027-05-29 19:30", said().over(Fault::NoLights));
    mended
        .asked("2027-05-29 19:40")
        .has(Id::TroubleOdor, Urgency::Soon)
        .lacks(Id::TroubleNoLights);
    // a message on something else does not list it again
    mended
        .hears("2027-05-29 19:40", said().did(Event::Cleaned))
        .lacks(Id::TroubleOdor);
}

#[test]
fn dangers_to_people_come_first() {
    let found = unit("12").hears(
        DAY,
        said()
            .wrong(Fault::NoLights)
            .wrong(Fault::Spill)
            .wrong(Fault::GasIllness),
    );
    assert_eq!(
        found.ids()[..3],
        [Id::TroubleGasIllness, Id::WasteSpill, Id::TroubleNoLights]
    );
    found
        .at_level(Id::TroubleGasIllness, Level::Danger)
        .warns(Id::TroubleGasIllness, Caution::CarbonMonoxide)
        .warns(Id::TroubleGasIllness, Caution::NoEntry);
    for fault in [Fault::HotPlug, Fault::CordDamaged] {
        unit("12")
            .hears(DAY, said().wrong(fault))
            .at_level(Id::of_fault(fault), Level::Warning)
            .has(Id::of_fault(fault), Urgency::Now);
    }
    unit("12")
        .hears(DAY, said().wrong(Fault::Fire))
        .at_level(Id::TroubleFire, Level::Danger);
}

#[test]
fn the_emergency_line_is_told_the_address_where_the_site_has_one() {
    let twelve = unit("12").with(|fleet| {
        let site = fleet.sites.get_mut("chapel-green").expect("the site");
        site.emergency_address = Some("1 Chapel Lane".into());
    });
    twelve
        .hears(DAY, said().wrong(Fault::Fire))
        .says(Id::TroubleFire, "trouble-fire-at");
    twelve
        .hears(DAY, said().wrong(Fault::PersonHurt))
        .says(Id::CrewPersonHurt, "crew-person-hurt-at");
}

#[test]
fn guided_checks_have_their_steps() {
    for fault in [Fault::NoWater, Fault::GfciTrip, Fault::NoHeat, Fault::Leak] {
        assert!(steps(fault).len() >= 5, "{fault}");
    }
    assert_eq!(
        steps(Fault::BreakerTrip)[0].then,
        Then::Call(TaskKind::Electrician)
    );
}

#[test]
fn a_fault_that_is_over_raises_its_finding_no_longer() {
    for fault in Fault::ALL {
        let id = Id::of_fault(*fault);
        if id.topic() != "trouble" && !Fault::DANGERS.contains(fault) {
            continue;
        }
        unit("12")
            .after("2027-05-29 18:00", said().wrong(*fault))
            .hears(DAY, said().over(*fault))
            .lacks(id);
    }
}
