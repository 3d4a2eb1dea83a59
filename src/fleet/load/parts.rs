//! The parts of a trailer: tank, gauge, pressure, rooms, circuits, weights.

use crate::fleet::defaults;
use crate::fleet::model::{
    Circuit, Gauge, GaugeKind, Load, PressureLimits, Room, TankShape, Weight,
};
use crate::fleet::section::Section;

pub(super) fn tank_shape(table: &mut Section<'_, '_>) -> Option<TankShape> {
    let cylinder = match table.has("shape") {
        true => table.choice("shape", &[("box", false), ("cylinder", true)])?,
        false => table.has("diameter_in") || table.has("length_in"),
    };
    if !cylinder {
        return Some(TankShape::Box);
    }
    table.needs("diameter_in", "the tank's inside diameter in inches");
    table.needs("length_in", "the tank's inside length in inches");
    let diameter_in = table.number("diameter_in", 1.0..=200.0, "in");
    let length_in = table.number("length_in", 1.0..=1_000.0, "in");
    Some(TankShape::Cylinder {
        diameter_in: diameter_in?,
        length_in: length_in?,
    })
}

pub(super) fn gauge(table: &mut Section<'_, '_>, gauge: &mut Gauge) {
    let kinds = [("sight", GaugeKind::Sight), ("lamps", GaugeKind::Lamps)];
    gauge.kind = table.choice("kind", &kinds).unwrap_or(gauge.kind);
    if let Some(step) = table.number("step_pct", 1.0..=50.0, "% of depth") {
        // thirds are written 33.3, so the steps may miss 100 by a little
        if ((100.0 / step).round() * step - 100.0).abs() > 0.2 {
            let hint = Some(
                "a gauge that shows quarters has steps of 25, one that shows eighths 12.5".into(),
            );
            table.wrong("step_pct", "a step that divides 100 %", hint);
        }
        gauge.step_pct = step;
    }
}

pub(super) fn pressure(table: &mut Section<'_, '_>, limits: &mut PressureLimits) {
    let stated = (
        table.number("min", 1.0..=250.0, "psi"),
        table.number("max", 1.0..=250.0, "psi"),
        table.number("regulator", 1.0..=250.0, "psi"),
    );
    limits.min = stated.0.unwrap_or(limits.min);
    limits.max = stated.1.unwrap_or(limits.max);
    limits.regulator = stated.2.unwrap_or(limits.regulator);
    if limits.min >= limits.max {
        let key = if stated.1.is_some() { "max" } else { "min" };
        table.wrong(
            key,
            format!("min below max, here {} and {}", limits.min, limits.max),
            None,
        );
    } else if stated.2.is_none() && !(limits.min..=limits.max).contains(&limits.regulator) {
        limits.regulator = (limits.min + limits.max) / 2.0;
    } else if !(limits.min..=limits.max).contains(&limits.regulator) {
        let expected = format!(
            "the regulator between min and max, here {} from {} to {} psi",
            limits.regulator, limits.min, limits.max
        );
        table.wrong("regulator", expected, None);
    }
}

/// Reads the room that stands at place `i`, counted from 0; one without a name is called by its letter.
pub(super) fn room(i: usize, mut table: Section<'_, '_>) -> Room {
    let letter = char::from(b'A' + (i.min(25)) as u8);
    let name = table
        .text("name")
        .map_or_else(|| letter.to_string(), String::from);
    let mut count = |key| table.whole(key, 0..=99, "").unwrap_or(0) as u32;
    let (toilets, urinals, sinks) = (count("toilets"), count("urinals"), count("sinks"));
    table.finish();
    Room {
        name,
        toilets,
        urinals,
        sinks,
    }
}

pub(super) fn check_rooms(section: &Section<'_, '_>, rooms: &[Room]) {
    if rooms.iter().all(|room| room.toilets + room.urinals == 0) {
        section.report("rooms", "a toilet or urinal in at least one room", "none");
    }
    for (i, room) in rooms.iter().enumerate() {
        let twin = rooms[..i]
            .iter()
            .any(|other| other.name.eq_ignore_ascii_case(&room.name));
        if twin && !room.name.is_empty() {
            section.report(
                "rooms",
                "rooms of different names",
                format!("two called `{}`", room.name),
            );
        }
    }
}

pub(super) fn circuit(mut table: Section<'_, '_>) -> Circuit {
    let breaker_a = table
        .number("breaker_a", 1.0..=100.0, "A")
        .unwrap_or(defaults::BREAKER_A);
    let loads = table.tables("loads", "a load").unwrap_or_default();
    let loads = loads
        .into_iter()
        .map(|table| load(table, breaker_a))
        .collect();
    table.finish();
    Circuit { breaker_a, loads }
}

fn load(mut table: Section<'_, '_>, breaker_a: f64) -> Load {
    table.needs("name", "what it is, as in name = \"water heater\"");
    let name = table.text("name").unwrap_or_default().to_string();
    let usual = defaults::load_amps(&name);
    if usual.is_none() {
        table.needs("amps", "its running amperes at 120 V");
    }
    let amps = table
        .number("amps", 0.0..=100.0, "A")
        .or(usual)
        .unwrap_or_default();
    if amps > breaker_a {
        table.wrong(
            "amps",
            format!("no more than its breaker's {breaker_a} A"),
            None,
        );
    }
    let start_amps = table.number("start_amps", 0.0..=500.0, "A");
    if start_amps.is_some_and(|start| start < amps) {
        table.wrong("start_amps", format!("at least the running {amps} A"), None);
    }
    let start_w = table.number("start_w", 1.0..=50_000.0, "W");
    let group = table.text("group").map(String::from);
    table.finish();
    Load {
        name,
        amps,
        start_amps,
        start_w,
        group,
    }
}

pub(super) fn weight(table: &mut Section<'_, '_>) -> Option<Weight> {
    table.needs("empty", "its weight with no liquid aboard");
    table.needs("gvwr", "its gross vehicle weight rating");
    let empty = table.number("empty", 1.0..=100_000.0, "lb");
    let gvwr = table.number("gvwr", 1.0..=100_000.0, "lb");
    let tongue = table.number("tongue", 1.0..=20_000.0, "lb");
    let (empty, gvwr) = (empty?, gvwr?);
    let tongue = tongue.unwrap_or((defaults::TONGUE_SHARE * empty).round());
    let weight = Weight {
        empty,
        gvwr,
        tongue,
    };
    if weight.gvwr < weight.empty {
        table.wrong(
            "gvwr",
            format!("no less than the empty weight, {} lb", weight.empty),
            None,
        );
    }
    if weight.tongue >= weight.empty {
        table.wrong(
            "tongue",
            format!("less than the empty weight, {} lb", weight.empty),
            None,
        );
    }
    Some(weight)
}
