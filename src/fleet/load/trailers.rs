//! `[defaults]` and `[[trailer]]`.

use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;

use super::given_twice;
use crate::fleet::defaults;
use crate::fleet::model::{
    Circuit, Gauge, GaugeKind, Load, PressureLimits, Room, TankShape, Trailer, Weight,
};
use crate::fleet::section::{Section, Sheet, Spot};
use crate::heard::UnitName;

/// A trailer with the places of the values that must fit each other.
#[derive(Clone)]
struct Draft {
    trailer: Trailer,
    waste_gal: Option<Spot>,
    tank: Option<Spot>,
    converter: Option<Spot>,
    heater: Option<Spot>,
    circuits: Option<Spot>,
    insulation: bool,
    heater_w: bool,
}

/// Reads the trailers; returns every name given, the faulty trailers' too.
pub(super) fn read(
    section: &mut Section<'_, '_>,
    trailers: &mut BTreeMap<UnitName, Trailer>,
    sheet: &Sheet<'_>,
) -> BTreeSet<String> {
    let mut base = Draft {
        trailer: defaults::trailer(UnitName::new("")),
        waste_gal: None,
        tank: None,
        converter: None,
        heater: None,
        circuits: None,
        insulation: false,
        heater_w: false,
    };
    if let Some(mut section) = section.table("defaults", "a table of trailer keys") {
        section.named("defaults");
        base = keys(&mut section, base);
        section.finish();
    }
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    for mut section in section.tables("trailer", "a trailer").unwrap_or_default() {
        section.needs("id", "the name that crews call it by, as in id = \"12\"");
        let id = section.id("id").map(UnitName::new);
        if let Some(id) = &id {
            section.named(format!("trailer {id}"));
            let line = sheet.line(section.spot_of("id"));
            if let Some(first) = seen.get(id.as_str()) {
                let found = given_twice(id.as_str(), *first);
                sheet.report(
                    section.spot_of("id"),
                    section.place(),
                    "an id of its own",
                    found,
                    None,
                );
            } else {
                seen.insert(id.as_str().into(), line);
            }
        }
        let mut draft = keys(&mut section, base.clone());
        settle(&mut draft, &section, sheet);
        section.finish();
        if let Some(id) = id {
            draft.trailer.id = id.clone();
            trailers.insert(id, draft.trailer);
        }
    }
    seen.into_keys().collect()
}

/// Reads the keys that a trailer and `[defaults]` share.
fn keys(section: &mut Section<'_, '_>, base: Draft) -> Draft {
    let mut draft = base;
    let spot = |section: &Section<'_, '_>, key| section.has(key).then(|| section.spot_of(key));
    let trailer = &mut draft.trailer;
    if let Some(title) = section.text("title") {
        trailer.title = title.into();
    }
    if let Some(gal) = section.number("waste_gal", 1.0..=10_000.0, "gal") {
        trailer.waste_gal = gal;
        draft.waste_gal = spot(section, "waste_gal");
    }
    if let Some(gal) = section.number("fresh_gal", 0.0..=10_000.0, "gal") {
        trailer.fresh_gal = gal;
    }
    if let Some(gal) = section.number("gal_per_use", 0.01..=20.0, "gal") {
        trailer.gal_per_use = gal;
    }
    if let Some(mut table) = section.table("waste_tank", "a tank's shape") {
        if let Some(shape) = tank_shape(&mut table) {
            trailer.waste_tank = shape;
            draft.tank = spot(section, "waste_tank");
        }
        table.finish();
    }
    if let Some(mut table) = section.table("waste_gauge", "a gauge") {
        gauge(&mut table, &mut trailer.waste_gauge);
        table.finish();
    }
    if let Some(mut table) = section.table("pressure_psi", "pressure limits") {
        pressure(&mut table, &mut trailer.pressure_psi);
        table.finish();
    }
    if let Some(rooms) = section.tables("rooms", "a room") {
        trailer.rooms = rooms.into_iter().map(room).collect();
        check_rooms(section, &trailer.rooms);
    }
    if let Some(circuits) = section.tables("circuits", "a circuit") {
        draft.circuits = spot(section, "circuits");
        if !(1..=4).contains(&circuits.len()) {
            let found = format!("{} circuits", circuits.len());
            section.report("circuits", "one to four circuits", found);
        }
        trailer.circuits = circuits.into_iter().map(circuit).collect();
    }
    if let Some(mut table) = section.table("battery", "a battery") {
        let battery = &mut trailer.battery;
        battery.ah = table
            .number("ah", 1.0..=5_000.0, "Ah")
            .unwrap_or(battery.ah);
        if let Some(kind) = table.choice("kind", &[("flooded", "flooded"), ("agm", "agm")]) {
            battery.kind = kind.into();
        }
        if let Some(circuit) = table.whole("converter_circuit", 1..=4, "") {
            battery.converter_circuit = circuit as u8;
            draft.converter = Some(table.spot_of("converter_circuit"));
        }
        table.finish();
    }
    if let Some(mut table) = section.table("cold", "a cold package") {
        let cold = &mut trailer.cold;
        cold.package = table.truth("package").unwrap_or(cold.package);
        if let Some(inches) = table.number("insulation_in", 0.0..=24.0, "in") {
            cold.insulation_in = inches;
            draft.insulation = true;
        }
        if let Some(watts) = table.number("tank_heater_w", 0.0..=10_000.0, "W") {
            cold.tank_heater_w = watts;
            draft.heater_w = true;
        }
        if let Some(circuit) = table.whole("heater_circuit", 1..=4, "") {
            cold.heater_circuit = Some(circuit as u8);
            draft.heater = Some(table.spot_of("heater_circuit"));
        }
        table.finish();
    }
    if let Some(mut table) = section.table("weight_lb", "a trailer's weights") {
        trailer.weight_lb = weight(&mut table).or(trailer.weight_lb);
        table.finish();
    }
    draft
}

/// Fills in what depends on other keys, and checks what must fit together.
fn settle(draft: &mut Draft, section: &Section<'_, '_>, sheet: &Sheet<'_>) {
    let trailer = &mut draft.trailer;
    if let TankShape::Cylinder {
        diameter_in,
        length_in,
    } = trailer.waste_tank
    {
        let volume = PI / 4.0 * diameter_in * diameter_in * length_in / 231.0;
        match draft.waste_gal {
            None => trailer.waste_gal = volume.round(),
            // walls, ends and the maker's rounding; beyond that one of the two figures is wrong
            Some(spot) if (trailer.waste_gal / volume - 1.0).abs() > 0.15 => {
                let place = format!("{}, waste_gal", section.place());
                let expected = format!(
                    "about {volume:.0} gal, what a cylinder of {diameter_in} by {length_in} in holds"
                );
                let hint = Some("the size is the tank's inside, in inches".into());
                sheet.report(
                    spot,
                    place,
                    expected,
                    format!("{} gal", trailer.waste_gal),
                    hint,
                );
            }
            Some(_) => {}
        }
    }
    let count = trailer.circuits.len();
    let beyond = |spot: Spot, key: &str, circuit: u8| {
        let place = format!("{}, {key}", section.place());
        let expected = format!("one of its {count} circuits, counted from 1");
        sheet.report(spot, place, expected, format!("`{circuit}`"), None);
    };
    match draft.converter {
        Some(spot) if usize::from(trailer.battery.converter_circuit) > count => {
            beyond(
                spot,
                "battery, converter_circuit",
                trailer.battery.converter_circuit,
            );
        }
        Some(_) => {}
        None => {
            let listed = trailer.circuit_of("converter").map(|(circuit, _)| circuit);
            let usual = defaults::CONVERTER_CIRCUIT.min(count.max(1) as u8);
            trailer.battery.converter_circuit = listed.unwrap_or(usual);
        }
    }
    match (draft.heater, trailer.cold.heater_circuit) {
        (Some(spot), Some(circuit)) if usize::from(circuit) > count => {
            beyond(spot, "cold, heater_circuit", circuit);
        }
        _ => {}
    }
    if trailer.cold.package {
        if !draft.insulation {
            trailer.cold.insulation_in = defaults::COLD_INSULATION_IN;
        }
        if !draft.heater_w {
            trailer.cold.tank_heater_w = defaults::COLD_TANK_HEATER_W;
        }
        if trailer.cold.heater_circuit.is_none() {
            let listed = trailer
                .circuit_of("tank heater")
                .or_else(|| trailer.circuit_of("bay heater"));
            trailer.cold.heater_circuit = listed
                .map(|(circuit, _)| circuit)
                .or((count == 4).then_some(4));
        }
    }
}

fn tank_shape(table: &mut Section<'_, '_>) -> Option<TankShape> {
    table.needs("shape", "\"box\" or \"cylinder\"");
    let cylinder = table.choice("shape", &[("box", false), ("cylinder", true)])?;
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

fn gauge(table: &mut Section<'_, '_>, gauge: &mut Gauge) {
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

fn pressure(table: &mut Section<'_, '_>, limits: &mut PressureLimits) {
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
    } else if !(limits.min..=limits.max).contains(&limits.regulator) {
        let key = if stated.2.is_some() {
            "regulator"
        } else if stated.1.is_some() {
            "max"
        } else {
            "min"
        };
        let expected = format!(
            "the regulator between min and max, here {} from {} to {} psi",
            limits.regulator, limits.min, limits.max
        );
        table.wrong(key, expected, None);
    }
}

fn room(mut table: Section<'_, '_>) -> Room {
    table.needs("name", "what the room is called, as in name = \"A\"");
    let name = table.text("name").unwrap_or_default().to_string();
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

fn check_rooms(section: &Section<'_, '_>, rooms: &[Room]) {
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

fn circuit(mut table: Section<'_, '_>) -> Circuit {
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
    table.needs("amps", "its running amperes at 120 V");
    let name = table.text("name").unwrap_or_default().to_string();
    let amps = table.number("amps", 0.0..=100.0, "A").unwrap_or_default();
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

fn weight(table: &mut Section<'_, '_>) -> Option<Weight> {
    table.needs("empty", "its weight with no liquid aboard");
    table.needs("gvwr", "its gross vehicle weight rating");
    table.needs("tongue", "the weight on the tongue when empty");
    let empty = table.number("empty", 1.0..=100_000.0, "lb");
    let gvwr = table.number("gvwr", 1.0..=100_000.0, "lb");
    let tongue = table.number("tongue", 1.0..=20_000.0, "lb");
    let weight = Weight {
        empty: empty?,
        gvwr: gvwr?,
        tongue: tongue?,
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
