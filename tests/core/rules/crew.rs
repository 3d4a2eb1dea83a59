use hosebib::finding::{FindingId as Id, Level, TaskKind, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{said, unit};

// 4 h without a word in open hours; doors 13:00 to 23:00
#[test]
fn a_silent_unit_is_late_after_four_open_hours() {
    let open = unit("12").after("2027-05-29 14:00", said().did(Event::InService));
    open.ticks("2027-05-29 17:59").lacks(Id::CrewLateCheckIn);
    let late = open.ticks("2027-05-29 18:00");
    late.has(Id::CrewLateCheckIn, Urgency::Soon);
    assert_eq!(late.task(Id::CrewLateCheckIn).kind, TaskKind::CheckIn);
    open.ticks("2027-05-29 23:30").lacks(Id::CrewLateCheckIn);
    // before the doors nobody is late
    let early = unit("12").after("2027-05-29 08:00", said().did(Event::InService));
    early.ticks("2027-05-29 16:59").lacks(Id::CrewLateCheckIn);
    early
        .ticks("2027-05-29 17:00")
        .has(Id::CrewLateCheckIn, Urgency::Soon);
}

#[test]
fn in_deep_cold_two_hours_are_late() {
    let told = |air| {
        unit("12").after(
            "2027-01-16 12:10",
            said()
                .did(Event::InService)
                .did(Event::HeaterOn)
                .read(R::AirF, air),
        )
    };
    told(0.0)
        .ticks("2027-01-16 14:10")
        .has(Id::CrewLateCheckIn, Urgency::Now);
    told(0.0)
        .ticks("2027-01-16 14:09")
        .lacks(Id::CrewLateCheckIn);
    told(0.1)
        .ticks("2027-01-16 14:10")
        .lacks(Id::CrewLateCheckIn);
}

#[test]
fn a_unit_out_of_service_is_not_missed() {
    unit("12")
        .after("2027-05-29 14:00", said().did(Event::InService))
        .after("2027-05-29 14:30", said().did(Event::Closed))
        .ticks("2027-05-29 20:00")
        .lacks(Id::CrewLateCheckIn);
}

#[test]
fn a_person_down_is_a_danger() {
    let found = unit("12").hears("2027-05-29 14:00", said().wrong(Fault::PersonHurt));
    found
        .has(Id::CrewPersonHurt, Urgency::Now)
        .at_level(Id::CrewPersonHurt, Level::Danger);
}
