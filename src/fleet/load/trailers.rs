//! `[defaults]` and `[[trailer]]`.

use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;

use super::{given_twice, parts};
use crate::fleet::defaults;
use crate::fleet::model::{TankShape, Trailer};
use crate::fleet::section::Section;
use crate::fleet::sheet::{Sheet, Spot};
use crate::heard::UnitName;

/// A trailer with the places of the values that must fit each other.
#[derive(Clone)]
struct Draft {
    trailer: Trailer,
    waste_gal: Option<Spot>,
    tank: Option<Spot>,
    converter: Option<Spot>,
    heater: Option<Spot>,
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
        insulation: false,
        heater_w: false,
    };
    if let Some(mut section) = section.table("defaults", "the trailers' defaults") {
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
        if let Some(shape) = parts::tank_shape(&mut table) {
            trailer.waste_tank = shape;
            draft.tank = spot(section, "waste_tank");
        }
        table.finish();
    }
    if let Some(mut table) = section.table("waste_gauge", "a gauge") {
        parts::gauge(&mut table, &mut trailer.waste_gauge);
        table.finish();
    }
    if let Some(mut table) = section.table("pressure_psi", "pressure limits") {
        parts::pressure(&mut table, &mut trailer.pressure_psi);
        table.finish();
    }
    let before = section.problem_count();
    if let Some(rooms) = section.tables("rooms", "a room") {
        trailer.rooms = rooms
            .into_iter()
            .enumerate()
            .map(|(i, table)| parts::room(i, table))
            .collect();
        // a room that could not be read would look like one without fixtures
        if section.problem_count() == before {
            parts::check_rooms(section, &trailer.rooms);
        }
    }
    if let Some(circuits) = section.tables("circuits", "a circuit") {
        let count = section.list_length("circuits");
        if !(1..=4).contains(&count) {
            let found = format!("{count} circuits");
            section.report("circuits", "one to four circuits", found);
        }
        trailer.circuits = circuits.into_iter().map(parts::circuit).collect();
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
        trailer.weight_lb = parts::weight(&mut table).or(trailer.weight_lb);
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
        let expected = format!("a circuit from 1 to {count}, as many as it has");
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
