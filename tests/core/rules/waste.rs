use chrono::TimeDelta;
use hosebib::finding::{Caution, FindingId as Id, Level, TaskKind, Urgency};
use hosebib::heard::{Event, Fault, ReadingKey as R};

use super::support::{said, unit};

// common practice, no source: 50 % note, 75 % warn; trailer 9 on a film set, 45 people, no hurry
#[test]
fn booking_goes_by_the_level_where_time_is_no_matter() {
    let at = |pct| unit("9").hears("2027-05-03 06:00", said().read(R::WasteGal, 3.0 * pct));
    at(49.9).lacks(Id::WasteBookPumpOut);
    at(50.0).has(Id::WasteBookPumpOut, Urgency::Plan);
    assert!(at(50.0).one(Id::WasteBookPumpOut).urgency == Urgency::Plan);
}

// T7: a lamp at 1/4 is 25 to 50 %; at about 20 %/h 85 % is 2 to 3 h away, the truck wants 6
#[test]
fn a_slow_truck_makes_a_quarter_late() {
    let unit = unit("5").after(
        "2027-04-17 08:40",
        said().did(Event::InService).read(R::WastePct, 0.0),
    );
    let found = unit.hears("2027-04-17 11:00", said().read(R::WastePct, 25.0));
    found
        .has(Id::WasteBookPumpOut, Urgency::Now)
        .lacks(Id::WasteCloseNow);
    let task = found.task(Id::WasteBookPumpOut);
    assert_eq!(task.kind, TaskKind::PumpOut);
    let due = task.due.expect("a time");
    assert!(
        due >= found.at && due <= found.at + TimeDelta::hours(3),
        "{due}"
    );
}

#[test]
fn nothing_is_booked_for_a_tank_that_the_job_cannot_fill() {
    unit("7")
        .hears("2027-05-22 17:30", said().read(R::WastePct, 25.0))
        .lacks(Id::WasteBookPumpOut);
}

// common practice, no source: 85 % by volume stop level, 95 % the whole unit
#[test]
fn stalls_close_at_the_stop_level() {
    let at = |gal| unit("12").hears("2027-05-29 19:00", said().read(R::WasteGal, gal));
    at(424.0).lacks(Id::WasteCloseNow);
    at(425.0)
        .has(Id::WasteCloseNow, Urgency::Now)
        .says(Id::WasteCloseNow, "waste-close-now-stalls")
        .has(Id::WasteBookPumpOut, Urgency::Now);
    at(474.0).says(Id::WasteCloseNow, "waste-close-now-stalls");
    at(475.0).says(Id::WasteCloseNow, "waste-close-now-unit");
}

// common practice, no source: in a lying cylinder a depth of 3/4 is 80.4 % full, 7/8 is 92.8
#[test]
fn depth_in_a_lying_cylinder_becomes_volume() {
    let at = |pct| unit("14").hears("2027-05-15 16:00", said().read(R::WastePct, pct));
    at(75.0)
        .near(Id::WasteBookPumpOut, "level", 80.4, 0.1)
        .lacks(Id::WasteCloseNow);
    at(87.5)
        .has(Id::WasteCloseNow, Urgency::Now)
        .near(Id::WasteCloseNow, "level", 92.8, 0.1);
}

// common practice, no source: the lit lamp is the floor of the level
#[test]
fn a_lamp_is_a_floor() {
    unit("5")
        .hears("2027-04-17 14:00", said().read(R::WastePct, 75.0))
        .has(Id::WasteBookPumpOut, Urgency::Now)
        .lacks(Id::WasteCloseNow)
        .lacks(Id::WasteGaugeDoubtful);
}

#[test]
fn a_level_that_only_the_forecast_puts_over_the_stop_is_to_be_read() {
    unit("12")
        .after(
            "2027-05-29 14:00",
            said().did(Event::InService).read(R::WastePct, 50.0),
        )
        .asked("2027-05-29 20:30")
        .has(Id::WasteCloseNow, Urgency::Soon)
        .says(Id::WasteCloseNow, "waste-close-now-likely-unit");
    unit("12")
        .after(
            "2027-05-29 14:00",
            said().did(Event::InService).read(R::WastePct, 75.0),
        )
        .asked("2027-05-29 15:30")
        .says(Id::WasteCloseNow, "waste-close-now-likely-uncalled");
}

#[test]
fn a_spill_is_a_warning_with_hygiene_first() {
    let found = unit("12").hears("2027-05-29 19:00", said().wrong(Fault::Spill));
    found
        .has(Id::WasteSpill, Urgency::Now)
        .at_level(Id::WasteSpill, Level::Warning)
        .warns(Id::WasteSpill, Caution::SewageHygiene)
        .warns(Id::WasteSpill, Caution::SewageDischarge);
    // over: nothing stands
    unit("12")
        .after("2027-05-29 19:00", said().wrong(Fault::Spill))
        .hears("2027-05-29 20:00", said().over(Fault::Spill))
        .lacks(Id::WasteSpill);
}

// from two gauge steps down without a pump-out; trailer 12's step is 12.5 %
#[test]
fn two_steps_down_without_a_truck_is_unexplained() {
    let falls_to = |pct| {
        unit("12")
            .after("2027-05-29 16:00", said().read(R::WastePct, 75.0))
            .hears("2027-05-29 17:00", said().read(R::WastePct, pct))
    };
    falls_to(50.0).has(Id::WasteDroppedUnexplained, Urgency::Soon);
    falls_to(62.5).lacks(Id::WasteDroppedUnexplained);
    unit("12")
        .after("2027-05-29 16:00", said().read(R::WastePct, 87.5))
        .after("2027-05-29 17:30", said().did(Event::WastePumped))
        .hears("2027-05-29 17:45", said().read(R::WastePct, 12.5))
        .lacks(Id::WasteDroppedUnexplained)
        .lacks(Id::WasteGaugeDoubtful)
        .lacks(Id::WasteCloseNow);
}

// common practice, no source: over 1/4 after a pump-out means a coated probe
#[test]
fn a_gauge_high_after_a_pump_out_is_doubtful() {
    let shows = |pct, at| {
        unit("12")
            .after(
                "2027-05-29 17:30",
                said().did(Event::WastePumped).read(R::PumpedGal, 420.0),
            )
            .hears(at, said().read(R::WastePct, pct))
    };
    shows(50.0, "2027-05-29 17:40")
        .has(Id::WasteGaugeDoubtful, Urgency::Plan)
        .says(Id::WasteGaugeDoubtful, "waste-gauge-doubtful-coated")
        .lacks(Id::WasteDroppedUnexplained)
        .lacks(Id::WasteCloseNow);
    // a look with a light comes before the truck
    shows(75.0, "2027-05-29 17:40")
        .has(Id::WasteBookPumpOut, Urgency::Soon)
        .says(Id::WasteBookPumpOut, "waste-book-pump-out-doubted");
    shows(25.0, "2027-05-29 17:40").lacks(Id::WasteGaugeDoubtful);
    // hours later half is what the guests brought
    shows(50.0, "2027-05-29 22:00").lacks(Id::WasteGaugeDoubtful);
}

// an untold pump-out: what is reckoned with is said as a condition until that is known
#[test]
fn a_level_that_falls_untold_wants_no_truck_before_it_is_known_why() {
    let unit = unit("12")
        .after(
            "2027-05-29 14:00",
            said().did(Event::InService).read(R::WastePct, 12.5),
        )
        .after("2027-05-29 17:00", said().read(R::WastePct, 75.0));
    unit.hears("2027-05-29 18:30", said().read(R::WastePct, 12.5))
        .has(Id::WasteDroppedUnexplained, Urgency::Soon)
        .has(Id::WasteBookPumpOut, Urgency::Soon)
        .says(Id::WasteBookPumpOut, "waste-book-pump-out-fell");
    unit.hears("2027-05-29 18:30", said().read(R::WastePct, 87.5))
        .lacks(Id::WasteDroppedUnexplained)
        .has(Id::WasteBookPumpOut, Urgency::Now);
}

#[test]
fn a_gauge_that_nobody_can_read_is_doubtful() {
    unit("12")
        .hears("2027-05-29 19:00", said().wrong(Fault::GaugeStuck))
        .has(Id::WasteGaugeDoubtful, Urgency::Soon)
        .lacks(Id::WasteCloseNow);
}

// unchanged over 6 open hours though a step was due
#[test]
fn a_gauge_that_does_not_move_over_a_busy_day_is_stuck() {
    let unit = unit("12").after(
        "2027-05-29 13:30",
        said().did(Event::InService).read(R::WastePct, 25.0),
    );
    unit.hears("2027-05-29 21:00", said().read(R::WastePct, 25.0))
        .has(Id::WasteGaugeDoubtful, Urgency::Soon)
        .says(Id::WasteGaugeDoubtful, "waste-gauge-doubtful-stuck");
    unit.hears("2027-05-29 15:00", said().read(R::WastePct, 25.0))
        .lacks(Id::WasteGaugeDoubtful);
}

#[test]
fn past_the_stop_level_no_time_is_told_and_one_task_is_wished() {
    let found = unit("12").hears("2027-05-29 19:00", said().read(R::WasteGal, 430.0));
    found.says(Id::WasteBookPumpOut, "waste-book-pump-out-over");
    assert_eq!(found.task(Id::WasteBookPumpOut).due, Some(found.at));
    assert!(found.one(Id::WasteCloseNow).task.is_none());
}

#[test]
fn a_tank_that_nobody_read_is_said_to_be_unread() {
    let open = said().did(Event::InService).read(R::Guests, 600.0);
    unit("14")
        .hears("2027-07-04 12:30", open.clone())
        .has(Id::WasteBookPumpOut, Urgency::Soon)
        .says(Id::WasteBookPumpOut, "waste-book-pump-out-unread");
    // nobody said that it is open, nor what is in it
    unit("14")
        .hears("2027-07-04 12:30", said().read(R::Guests, 600.0))
        .lacks(Id::WasteBookPumpOut);
}
