//! What the tests of replies say things about.

use chrono::{DateTime, TimeZone, Utc};
use chrono_tz::America::Halifax;

use hosebib::book::{Task, TaskState};
use hosebib::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use hosebib::fleet::Trailer;
use hosebib::heard::{Entry, Language, ReadingKey, UnitName};
use hosebib::quantity::{Measure, Style};
use hosebib::reply::{Logged, Replies, Voice};

pub(super) fn at(hour: u32, minute: u32) -> DateTime<Utc> {
    let local = Halifax.with_ymd_and_hms(2027, 1, 16, hour, minute, 0);
    local.single().expect("a local time").with_timezone(&Utc)
}

pub(super) fn voice(replies: &Replies, language: Language) -> Voice<'_> {
    replies.voice(language, Style::default(), Halifax, at(17, 10))
}

pub(super) fn unit(name: &str) -> UnitName {
    UnitName::new(name)
}

pub(super) fn on(name: &str, mut finding: Finding) -> Finding {
    finding.unit = Some(unit(name));
    finding
}

pub(super) fn over_pressure() -> Finding {
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

pub(super) fn pump_out() -> Finding {
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

pub(super) fn task(
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

pub(super) fn trailer() -> Trailer {
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

pub(super) fn report() -> Entry {
    let mut entry = Entry::default();
    entry.readings.set(ReadingKey::PressurePsi, 95.0);
    entry.readings.set(ReadingKey::WastePct, 75.0);
    entry.readings.set(ReadingKey::AirF, -5.0);
    entry
}

pub(super) fn logged<'a>(unit: &'a UnitName, entry: &'a Entry) -> Logged<'a> {
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
