//! What one voice says: readings, times, tasks, forecasts, reasons.

use chrono_tz::America::Halifax;

use hosebib::book::TaskState;
use hosebib::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use hosebib::heard::{Amps, Entry, Event, Fault, Language, ReadingKey, Remark};
use hosebib::outlook::{Outlook, TankOutlook};
use hosebib::quantity::{Measure, Style, TemperatureScale, Units};
use hosebib::reply::{Arg, Replies, TaskNote, TaskTurn};

use super::sample::{at, on, report, task, trailer, voice};

#[test]
fn an_unknown_reason_still_gets_an_answer() {
    let replies = Replies::new();
    let remark = Remark {
        text: "blorp".into(),
        why: "no-such-reason".into(),
    };
    let said = voice(&replies, Language::En).unclear(&remark);
    assert!(said.starts_with("Not logged: \"blorp\"."), "{said}");
}

#[test]
fn an_entry_is_said_back_in_words() {
    let replies = Replies::new();
    let mut entry = Entry {
        events: vec![Event::Arrived, Event::Chocked],
        ..Entry::default()
    };
    entry.readings.set(ReadingKey::FreshPct, 66.7);
    entry.readings.set(ReadingKey::WastePct, 0.0);
    entry.readings.set(ReadingKey::Cords, 1.0);
    entry.readings.amps = vec![
        Amps {
            circuit: Some(2),
            amps: 12.5,
        },
        Amps {
            circuit: None,
            amps: 7.0,
        },
    ];
    entry.readings.circuits_live = Some(vec![1, 3]);
    entry.faults = vec![Fault::NoHotWater];
    entry.cleared = vec![Fault::Leak];
    assert_eq!(
        voice(&replies, Language::En).readings(&entry, None),
        "arrived, chocked; waste empty, fresh 2/3, 1 cord live, circuit 2 at 12.5 A, 7 A, circuits 1 and 3 live; \
         no hot water; fixed: leak"
    );
}

#[test]
fn a_lamp_gauge_gives_the_least_that_can_be_aboard() {
    let replies = Replies::new();
    let mut spec = trailer();
    spec.waste_gauge.kind = hosebib::fleet::GaugeKind::Lamps;
    let said = voice(&replies, Language::En).reading(ReadingKey::WastePct, 75.0, Some(&spec));
    assert_eq!(said, "waste 3/4 (at least 375 gal)");
}

#[test]
fn a_lying_cylinder_holds_less_at_a_quarter_of_its_depth() {
    let replies = Replies::new();
    let mut spec = trailer();
    spec.waste_tank = hosebib::fleet::TankShape::Cylinder {
        diameter_in: 36.0,
        length_in: 96.0,
    };
    // 19.6 % of the volume at a quarter of the depth: area of a circular segment
    let said = voice(&replies, Language::En).reading(ReadingKey::WastePct, 25.0, Some(&spec));
    assert_eq!(said, "waste 1/4 (about 98 gal)");
}

#[test]
fn numbers_follow_the_fleet_and_words_the_reader() {
    let replies = Replies::new();
    let style = Style {
        units: Units::Metric,
        temperature: TemperatureScale::C,
        twelve_hour: true,
    };
    let voice = replies.voice(Language::Es, style, Halifax, at(17, 10));
    assert_eq!(
        voice.readings(&report(), None),
        "agua 6.6 bar, tanque de negras 3/4, afuera -21 °C"
    );
    assert_eq!(voice.time(at(19, 40)), "7:40 pm");
}

#[test]
fn another_day_is_named() {
    let replies = Replies::new();
    let voice = voice(&replies, Language::En);
    let day = chrono::TimeDelta::days(1);
    assert_eq!(voice.time(at(7, 15) + day), "Sun 07:15");
    assert_eq!(voice.time(at(7, 15) + day * 9), "Mon 25 Jan 07:15");
    assert_eq!(voice.time(at(7, 15) - day), "Fri 07:15");
}

#[test]
fn a_task_is_not_a_truck() {
    let replies = Replies::new();
    let english = voice(&replies, Language::En);
    let mut truck = task(41, TaskKind::PumpOut, Some(at(19, 15)), Some(at(17, 45)));
    assert_eq!(
        english.task(&truck),
        "41 pump-out 12: truck on site by 19:15, call by 17:45. Nobody called yet."
    );
    truck.taken_by = Some("dana".into());
    assert_eq!(
        english.task(&truck),
        "41 pump-out 12: truck on site by 19:15, call by 17:45. dana has it. Nobody called yet."
    );
    truck.state = TaskState::Dropped("client cancelled".into());
    let note = TaskNote {
        task: &truck,
        turn: TaskTurn::Closed,
    };
    assert_eq!(
        english.task_note(note),
        "Task 41 pump-out 12: dropped, \"client cancelled\"."
    );
}

#[test]
fn why_shows_the_sum_and_says_what_was_assumed() {
    let replies = Replies::new();
    let facts = Facts::new()
        .read("air", -5.0, Measure::DegF)
        .assumed("wind", 10.0, Measure::Mph)
        .computed("chill", -22.4, Measure::DegF)
        .limit("limit", -18.0, Measure::DegF)
        .by("formula-wind-chill", "NWS 2001");
    let finding = on(
        "12",
        Finding::new(FindingId::ColdCrewCold, Level::Caution, Urgency::Now, facts),
    );
    assert_eq!(
        voice(&replies, Language::En).why(&finding),
        "\
Why 12: cold for the crew.
  outside air: -5 °F (read on site)
  wind: 10 mph (assumed, nobody told me)
  wind chill: -22 °F (worked out)
  limit: -18 °F (the limit)
  Sum: wind chill from air and wind; it acts on skin, not on tanks
  Source: NWS 2001"
    );
    let mut practice = finding.clone();
    practice.facts.source = Some("common practice, no source".into());
    let said = voice(&replies, Language::Es).why(&practice);
    assert!(
        said.ends_with("Fuente: uso común, sin fuente publicada"),
        "{said}"
    );
    assert!(
        said.contains("viento: 10 mph (supuesto, nadie me lo dijo)"),
        "{said}"
    );
}

#[test]
fn codes_in_facts_are_said_in_words() {
    let replies = Replies::new();
    let facts = Facts::new().text("missing", "jacks-up, closed", Origin::Computed);
    let finding = on(
        "16",
        Finding::new(FindingId::TowNotReady, Level::Caution, Urgency::Now, facts),
    );
    let said = voice(&replies, Language::Es).finding(&finding, false);
    assert!(
        said.starts_with("ATENCIÓN 16: Aún sin reportar: gatos arriba, cerrada."),
        "{said}"
    );
}

#[test]
fn what_the_desk_finds_in_a_message_opens_with_no_urgency() {
    let replies = Replies::new();
    let facts = Facts::new()
        .text("name", "21", Origin::Read)
        .text("near", "12, 31", Origin::Spec);
    let finding = Finding::new(
        FindingId::DeskUnknownUnit,
        Level::Notice,
        Urgency::Now,
        facts,
    );
    assert_eq!(
        voice(&replies, Language::En).finding(&finding, false),
        "There is no unit 21. Nothing logged for it. Did you mean 12, 31?"
    );
}

#[test]
fn a_danger_to_a_person_opens_without_a_unit() {
    let replies = Replies::new();
    let finding = Finding::new(
        FindingId::CrewPersonHurt,
        Level::Danger,
        Urgency::Now,
        Facts::new(),
    );
    let finding = finding.cautions(&[Caution::EmergencyCall]);
    let said = voice(&replies, Language::Es).finding(&finding, true);
    assert!(said.starts_with("PELIGRO: Llame a emergencias."), "{said}");
    assert!(
        said.ends_with(
            "\n  Si hay herida, quemadura o mareo, o no contesta: llame a emergencias. No cuelgue."
        ),
        "{said}"
    );
}

#[test]
fn a_forecast_says_how_sure_it_is() {
    let replies = Replies::new();
    let tank = TankOutlook {
        limit_pct: 85.0,
        p10: Some(at(19, 15)),
        p50: Some(at(19, 40)),
        p90: Some(at(20, 20)),
        level_pct: [60.0, 65.0, 70.0],
        likely_pct: 65.0,
        rate_pct_h: 10.0,
        could_stay_below: false,
        stuck: false,
        misread: false,
        unread: false,
    };
    let english = voice(&replies, Language::En);
    let say = |waste: TankOutlook| {
        english.forecast(&Outlook {
            waste: Some(waste),
            ..Outlook::default()
        })
    };
    assert_eq!(
        say(tank.clone()),
        "Waste at 85 % about 19:40 (19:15 to 20:20)."
    );
    let open = TankOutlook {
        p90: None,
        could_stay_below: true,
        ..tank.clone()
    };
    assert_eq!(
        say(open),
        "Waste at 85 % about 19:40, not before 19:15. It could stay below 85 %."
    );
    let never = TankOutlook {
        p10: None,
        p50: None,
        p90: None,
        stuck: true,
        ..tank.clone()
    };
    assert_eq!(
        say(never),
        "Waste should stay below 85 % for this job. The gauge has not moved as it should. Do not trust it."
    );
    let full = TankOutlook {
        level_pct: [85.0, 90.0, 95.0],
        likely_pct: 90.0,
        ..tank
    };
    assert_eq!(say(full), "Waste is at 85 % or over by now.");
}

#[test]
fn replies_can_move_to_the_thread_that_owns_the_desk() {
    fn is_send<T: Send>(_: &T) {}
    is_send(&Replies::new());
}

#[test]
fn a_missing_key_prints_itself() {
    let replies = Replies::new();
    let voice = voice(&replies, Language::Es);
    assert_eq!(
        voice.say("no-such-text", &[("x", Arg::Count(1))]),
        "no-such-text"
    );
}
