//! Whole replies, as they are sent.

use chrono::{DateTime, TimeZone, Utc};
use chrono_tz::America::Halifax;

use hosebib::book::{Stage, Task, TaskState};
use hosebib::dialogue::About;
use hosebib::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use hosebib::fleet::Trailer;
use hosebib::heard::{
    Amps, Entry, Event, Fault, Language, Plan, PlanKind, ReadingKey, Remark, Taken, Taps, UnitName,
};
use hosebib::outlook::{Outlook, TankOutlook};
use hosebib::quantity::{Measure, Style, TemperatureScale, Units};
use hosebib::reply::{
    Answer, Arg, Context, DigestRow, Logged, Replies, TaskNote, TaskTurn, Voice, digest,
};

fn at(hour: u32, minute: u32) -> DateTime<Utc> {
    let local = Halifax.with_ymd_and_hms(2027, 1, 16, hour, minute, 0);
    local.single().expect("a local time").with_timezone(&Utc)
}

fn voice(replies: &Replies, language: Language) -> Voice<'_> {
    replies.voice(language, Style::default(), Halifax, at(17, 10))
}

fn unit(name: &str) -> UnitName {
    UnitName::new(name)
}

fn on(name: &str, mut finding: Finding) -> Finding {
    finding.unit = Some(unit(name));
    finding
}

fn over_pressure() -> Finding {
    let facts = Facts::new()
        .read("pressure", 95.0, Measure::Psi)
        .limit("limit", 60.0, Measure::Psi)
        .spec("regulator", 45.0, Measure::Psi)
        .by("formula-reading-over-limit", "IPC 604.8");
    let finding = Finding::new(
        FindingId::WaterOverPressure,
        Level::Warning,
        Urgency::Now,
        facts,
    );
    let finding = finding
        .says("water-over-pressure-act")
        .task(TaskKind::Regulator, Some(at(17, 10)));
    on(
        "12",
        finding.cautions(&[Caution::BurstHose, Caution::BleedFirst]),
    )
}

fn pump_out() -> Finding {
    let facts = Facts::new()
        .computed("level", 75.0, Measure::Pct)
        .limit("stop_level", 85.0, Measure::Pct)
        .time("p50", at(19, 40), Origin::Computed)
        .time("p10", at(19, 15), Origin::Computed)
        .spec("lead", 2.5, Measure::Hour);
    let finding = Finding::new(
        FindingId::WasteBookPumpOut,
        Level::Notice,
        Urgency::Now,
        facts,
    );
    let finding = finding
        .says("waste-book-pump-out-now")
        .task(TaskKind::PumpOut, Some(at(19, 15)));
    on("12", finding)
}

fn task(
    id: u32,
    kind: TaskKind,
    due: Option<DateTime<Utc>>,
    call_by: Option<DateTime<Utc>>,
) -> Task {
    serde_json::from_value(serde_json::json!({
        "id": id, "unit": "12", "kind": kind, "due": due, "call_by": call_by, "opened": at(17, 10), "by": "dana",
        "finding": null, "cause": null, "taken_by": null, "state": TaskState::Open, "closed_cause": null,
        "escalated": null,
    }))
    .expect("a task")
}

fn trailer() -> Trailer {
    serde_json::from_value(serde_json::json!({
        "id": "12", "title": "", "waste_gal": 500.0, "fresh_gal": 200.0, "waste_tank": { "shape": "box" },
        "waste_gauge": { "kind": "sight", "step_pct": 12.5 },
        "pressure_psi": { "min": 40.0, "max": 60.0, "regulator": 45.0 }, "rooms": [], "circuits": [],
        "battery": { "ah": 90.0, "kind": "flooded", "converter_circuit": 2 },
        "cold": { "package": false, "insulation_in": 0.0, "tank_heater_w": 0.0, "heater_circuit": null },
        "weight_lb": null, "gal_per_use": 1.0,
    }))
    .expect("a trailer")
}

fn report() -> Entry {
    let mut entry = Entry::default();
    entry.readings.set(ReadingKey::PressurePsi, 95.0);
    entry.readings.set(ReadingKey::WastePct, 75.0);
    entry.readings.set(ReadingKey::AirF, -5.0);
    entry
}

fn logged<'a>(unit: &'a UnitName, entry: &'a Entry) -> Logged<'a> {
    Logged {
        unit,
        site: Some("Heron Mere"),
        entry,
        spec: None,
        at: None,
        too_old: false,
        all_well: false,
    }
}

#[test]
fn a_reply_tells_the_worst_first_then_what_was_logged_then_what_to_send() {
    let replies = Replies::new();
    let (over, pump) = (over_pressure(), pump_out());
    let (regulator, truck) = (
        task(40, TaskKind::Regulator, Some(at(17, 10)), None),
        task(41, TaskKind::PumpOut, Some(at(19, 15)), Some(at(17, 10))),
    );
    let (twelve, entry, spec) = (unit("12"), report(), trailer());
    let answer = Answer {
        findings: vec![&pump, &over],
        logged: vec![Logged {
            spec: Some(&spec),
            ..logged(&twelve, &entry)
        }],
        tasks: vec![
            TaskNote {
                task: &regulator,
                turn: TaskTurn::Opened,
            },
            TaskNote {
                task: &truck,
                turn: TaskTurn::Opened,
            },
        ],
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "\
WARNING 12: Water 95 psi, limit 60 psi. Is that before or after the regulator? Before: fit one set to 45 psi, tap off \
first. After: it does not hold. Swap it. Task 40.
  Stand clear when you open the water. A burst hose or fitting whips.
  Shut the spigot and bleed the pressure at a sink before you open anything.
Now Waste about 75 %. 85 % about 19:40, maybe 19:15. Call the pump truck. Truck on site by 19:15. It wants 2 h 30 min \
notice. Nobody called yet: task 41.
Logged for 12 at Heron Mere: water 95 psi, waste 3/4 (about 375 gal), outside -5 °F.
Send \"why\", \"done 40\" or the new pressure."
    );
    assert_eq!(
        answer.compose(&voice(&replies, Language::Es)),
        "\
ADVERTENCIA 12: Agua a 95 psi, límite 60 psi. ¿Es antes o después del regulador? Antes: ponga uno a 45 psi, con la toma \
cerrada. Después: no aguanta. Cámbielo. Tarea 40.
  Hágase a un lado al abrir el agua. Una manguera o pieza que revienta da latigazos.
  Cierre la toma y saque la presión por un lavabo antes de abrir cualquier pieza.
Ahora Aguas negras como al 75 %. Llegan al 85 % hacia 19:40, quizá 19:15. Llame al camión de vaciado. Camión en \
sitio antes de 19:15. Pide 2 h 30 min de aviso. Nadie ha llamado aún: tarea 41.
Anotado para la 12 en Heron Mere: agua 95 psi, tanque de negras 3/4 (unos 375 gal), afuera -5 °F.
Mande \"por qué\", \"hecho 40\" o la presión nueva."
    );
}

#[test]
fn a_reply_on_two_units_names_each_and_says_a_caution_once() {
    let replies = Replies::new();
    let first = over_pressure();
    let second = on("14", over_pressure());
    let pump = on("14", pump_out());
    let answer = Answer {
        findings: vec![&first, &second, &pump],
        without_hint: true,
        ..Answer::default()
    };
    let text = answer.compose(&voice(&replies, Language::En));
    assert_eq!(text.matches("Stand clear").count(), 1, "{text}");
    assert!(text.contains("\nWARNING 14: "), "{text}");
    assert!(text.contains("\nNow 14: Waste"), "{text}");
}

#[test]
fn what_was_not_understood_is_quoted_with_what_to_send_instead() {
    let replies = Replies::new();
    let (twelve, mut entry) = (unit("12"), Entry::default());
    entry.readings.set(ReadingKey::PressurePsi, 50.0);
    let taken = [Taken {
        typed: "presure".into(),
        read: "pressure".into(),
    }];
    let unclear = [Remark {
        text: "tank 3/4 \u{202e}or\n1/2,".into(),
        why: "two-values".into(),
    }];
    let set_aside = [
        Remark {
            text: "555-0123".into(),
            why: "phone".into(),
        },
        Remark {
            text: "pump it tonight".into(),
            why: "plan".into(),
        },
    ];
    let answer = Answer {
        context: Some(Context::Last(&twelve)),
        logged: vec![Logged {
            site: None,
            all_well: true,
            ..logged(&twelve, &entry)
        }],
        taken: &taken,
        unclear: &unclear,
        set_aside: &set_aside,
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "\
Logged for 12: water 50 psi. No unit named, so taken as 12, your last.
Read \"presure\" as \"pressure\".
Not logged, as it is not done yet: \"pump it tonight\". Tell me when it is done.
Not logged: \"tank 3/4 or 1/2\" gives two values for one reading. Send the right one alone."
    );
}

#[test]
fn a_request_answered_with_a_task_is_not_said_to_be_set_aside() {
    let replies = Replies::new();
    let text = "if 12 hits 3/4 call me";
    let set_aside = [Remark {
        text: text.into(),
        why: "condition".into(),
    }];
    let plans = [Plan {
        unit: Some(unit("12")),
        kind: PlanKind::Watch {
            key: ReadingKey::WastePct,
            value: 75.0,
            below: false,
        },
        text: text.into(),
    }];
    let answer = Answer {
        lines: vec!["I will tell you.".into()],
        set_aside: &set_aside,
        answered: &plans,
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "I will tell you."
    );
}

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
fn hostile_text_is_cut_and_cannot_flood_a_reply() {
    let replies = Replies::new();
    let remarks: Vec<Remark> = (0..1000)
        .map(|_| Remark {
            text: "{ $x } \u{7}".repeat(2000),
            why: "no-place".into(),
        })
        .collect();
    let answer = Answer {
        unclear: &remarks,
        ..Answer::default()
    };
    let text = answer.compose(&voice(&replies, Language::En));
    assert!(
        text.len() < 1500 && text.contains("996 more parts"),
        "{text}"
    );
    assert!(!text.contains('\u{7}'));
}

#[test]
fn one_question_closes_a_reply_with_its_likely_answers() {
    let replies = Replies::new();
    let about = About::WhichUnit {
        entry: report(),
        at: at(17, 10),
        likely: vec![unit("12"), unit("14"), unit("9")],
    };
    let answer = Answer {
        question: Some(&about),
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "Which unit is this for: 12, 14 or 9?"
    );
    assert_eq!(
        answer.compose(&voice(&replies, Language::Es)),
        "¿Para qué unidad es: 12, 14 o 9?"
    );
}

#[test]
fn a_unit_in_good_order_is_told_so() {
    let replies = Replies::new();
    let (twelve, mut entry) = (unit("12"), Entry::default());
    entry.readings.set(ReadingKey::PressurePsi, 50.0);
    entry.readings.taps = Some(Taps::Shut);
    let answer = Answer {
        logged: vec![Logged {
            all_well: true,
            at: Some(at(16, 30)),
            ..logged(&twelve, &entry)
        }],
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "12: all within limits.\nLogged for 12 at Heron Mere, 16:30: water 50 psi with taps shut."
    );
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
        "41 pump-out 12: truck on site by 19:15. dana has it."
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
fn a_forecast_says_how_sure_it_is() {
    let replies = Replies::new();
    let tank = TankOutlook {
        limit_pct: 85.0,
        p10: Some(at(19, 15)),
        p50: Some(at(19, 40)),
        p90: Some(at(20, 20)),
        level_pct: [60.0, 65.0, 70.0],
        rate_pct_h: 10.0,
        could_stay_below: false,
        stuck: false,
        misread: false,
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

fn row<'a>(unit: &'a UnitName, worst: Option<(FindingId, Level, Urgency)>) -> DigestRow<'a> {
    DigestRow {
        unit,
        site: Some("Sleigh Barn at Dovecote Farm"),
        stage: Stage::InService,
        worst,
        more: 0,
        due: None,
        last_word: Some(at(16, 45)),
    }
}

#[test]
fn a_small_fleet_is_listed_whole_worst_first() {
    let replies = Replies::new();
    let (nine, twelve, fourteen) = (unit("9"), unit("12"), unit("14"));
    let over = (FindingId::WaterOverPressure, Level::Warning, Urgency::Now);
    let rows = [
        DigestRow {
            last_word: None,
            site: None,
            stage: Stage::Yard,
            ..row(&nine, None)
        },
        DigestRow {
            due: Some((TaskKind::PumpOut, at(19, 15))),
            ..row(&fourteen, None)
        },
        DigestRow {
            more: 2,
            due: Some((TaskKind::PumpOut, at(19, 15))),
            ..row(&twelve, Some(over))
        },
    ];
    assert_eq!(
        digest(&voice(&replies, Language::En), &rows),
        "\
17:10: 3 units, 2 to look at.
12 Sleigh Barn, open: WARNING water pressure too high +2. 25 min
14 Sleigh Barn, open: pump-out 19:15. 25 min
9, in the yard: in order. no word"
    );
}

#[test]
fn a_fleet_of_two_hundred_fits_a_phone() {
    let replies = Replies::new();
    let units: Vec<UnitName> = (1..=200).map(|n| unit(&format!("R-{n}"))).collect();
    let trouble = (FindingId::TroubleGasIllness, Level::Danger, Urgency::Now);
    for (language, wrong) in [(Language::En, 5), (Language::Es, 60)] {
        let rows: Vec<DigestRow<'_>> = units
            .iter()
            .enumerate()
            .map(|(i, unit)| DigestRow {
                more: 3,
                ..row(unit, (i < wrong).then_some(trouble))
            })
            .collect();
        let text = digest(&voice(&replies, language), &rows);
        assert!(text.lines().count() <= 25, "{text}");
        let widest = text
            .lines()
            .map(|line| line.chars().count())
            .max()
            .unwrap_or_default();
        assert!(widest <= 75, "{widest} characters: {text}");
        let well = (200 - wrong).to_string();
        assert!(
            text.lines().last().is_some_and(|line| line.contains(&well)),
            "{text}"
        );
    }
}
