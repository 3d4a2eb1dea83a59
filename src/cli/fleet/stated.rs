//! A trailer's spec key by key, and where each value comes from: the file, its `[defaults]`, or what is built in.

use toml::{Table, Value};

use crate::fleet::{Circuit, GaugeKind, Room, TankShape, Trailer, defaults};
use crate::heard::UnitName;

/// One key of a spec.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    /// The key as the file spells it: `pressure_psi.min`, `circuits 2`.
    pub(super) key: String,
    /// Its value, with its unit.
    pub(super) value: String,
    /// Where it comes from.
    pub(super) from: &'static str,
}

const STATED: &str = "stated";
const SHARED: &str = "stated in [defaults]";
const DEFAULT: &str = "default";

/// Lists a trailer's keys, told apart by the text of the `fleet.toml` that states it.
pub(super) fn rows(trailer: &Trailer, text: &str) -> Vec<Row> {
    let file: Table = text
        .trim_start_matches('\u{feff}')
        .parse()
        .unwrap_or_default();
    let own = own_table(&file, &trailer.id);
    let shared = file.get("defaults").and_then(Value::as_table);
    let from = |key: &str| match (own, shared) {
        (Some(own), _) if states(own, key) => STATED,
        (_, Some(shared)) if states(shared, key) => SHARED,
        _ => DEFAULT,
    };
    let circuits = [own, shared]
        .into_iter()
        .flatten()
        .find_map(|table| table.get("circuits")?.as_array());
    values(trailer, circuits.map(Vec::as_slice))
        .into_iter()
        .map(|(key, value)| Row {
            from: from(&key),
            key,
            value,
        })
        .collect()
}

/// Lists a trailer's keys where only the values are known: one that is not as built in must have been stated.
pub(super) fn rows_of_values(trailer: &Trailer) -> Vec<Row> {
    let mut plain = defaults::trailer(trailer.id.clone());
    if trailer.cold.package {
        plain.cold.insulation_in = defaults::COLD_INSULATION_IN;
        plain.cold.tank_heater_w = defaults::COLD_TANK_HEATER_W;
        plain.cold.heater_circuit = Some(4);
    }
    let plain = values(&plain, None);
    values(trailer, None)
        .into_iter()
        .map(|(key, value)| Row {
            from: match plain.iter().any(|(k, v)| *k == key && *v == value) {
                true => "as the default",
                false => STATED,
            },
            key,
            value,
        })
        .collect()
}

fn own_table<'t>(file: &'t Table, id: &UnitName) -> Option<&'t Table> {
    let trailers = file.get("trailer")?.as_array()?;
    trailers.iter().filter_map(Value::as_table).find(|table| {
        let named = match table.get("id") {
            Some(Value::String(text)) => UnitName::new(text),
            Some(Value::Integer(number)) => UnitName::new(&number.to_string()),
            _ => return false,
        };
        named == *id
    })
}

/// Tells whether a table states `key`, which may be `table.key` or `list 2`.
fn states(table: &Table, key: &str) -> bool {
    let (head, rest) = key.split_once(['.', ' ']).unwrap_or((key, ""));
    match table.get(head) {
        Some(Value::Table(inner)) if !rest.is_empty() => inner.contains_key(rest),
        Some(_) => true,
        None => false,
    }
}

/// Lists every key with its value; what `circuits` leave to be filled in is marked.
fn values(trailer: &Trailer, circuits: Option<&[Value]>) -> Vec<(String, String)> {
    let mut rows: Vec<(String, String)> = Vec::new();
    let mut row = |key: &str, value: String| rows.push((key.to_owned(), value));
    row("title", or_none(&trailer.title));
    row("waste_gal", format!("{} gal", trailer.waste_gal));
    row("fresh_gal", format!("{} gal", trailer.fresh_gal));
    match trailer.waste_tank {
        TankShape::Box => row("waste_tank.shape", "box".into()),
        TankShape::Cylinder {
            diameter_in,
            length_in,
        } => {
            row("waste_tank.shape", "cylinder".into());
            row("waste_tank.diameter_in", format!("{diameter_in} in"));
            row("waste_tank.length_in", format!("{length_in} in"));
        }
    }
    let kind = match trailer.waste_gauge.kind {
        GaugeKind::Sight => "sight",
        GaugeKind::Lamps => "lamps",
    };
    row("waste_gauge.kind", kind.into());
    row(
        "waste_gauge.step_pct",
        format!("{} %", trailer.waste_gauge.step_pct),
    );
    let limits = trailer.pressure_psi;
    row("pressure_psi.min", format!("{} psi", limits.min));
    row("pressure_psi.max", format!("{} psi", limits.max));
    row(
        "pressure_psi.regulator",
        format!("{} psi", limits.regulator),
    );
    for (room, n) in trailer.rooms.iter().zip(1..) {
        row(&format!("rooms {n}"), room_value(room));
    }
    for (circuit, n) in trailer.circuits.iter().zip(0..) {
        let stated = circuits.and_then(|circuits| circuits.get(n));
        let value = circuit_value(circuit, stated);
        row(&format!("circuits {}", n + 1), value);
    }
    row("battery.ah", format!("{} Ah", trailer.battery.ah));
    row("battery.kind", trailer.battery.kind.clone());
    row(
        "battery.converter_circuit",
        trailer.battery.converter_circuit.to_string(),
    );
    let cold = &trailer.cold;
    row(
        "cold.package",
        if cold.package { "yes" } else { "no" }.into(),
    );
    row("cold.insulation_in", format!("{} in", cold.insulation_in));
    row("cold.tank_heater_w", format!("{} W", cold.tank_heater_w));
    row(
        "cold.heater_circuit",
        cold.heater_circuit
            .map_or_else(|| "none".into(), |circuit| circuit.to_string()),
    );
    match trailer.weight_lb {
        Some(weight) => {
            row("weight_lb.empty", format!("{} lb", weight.empty));
            row("weight_lb.gvwr", format!("{} lb", weight.gvwr));
            row("weight_lb.tongue", format!("{} lb", weight.tongue));
        }
        None => row("weight_lb", "none: no towing check by weight".into()),
    }
    row("gal_per_use", format!("{} gal", trailer.gal_per_use));
    rows
}

fn or_none(text: &str) -> String {
    if text.is_empty() { "none" } else { text }.into()
}

fn room_value(room: &Room) -> String {
    let count = |count: u32, what: &str| {
        (count > 0).then(|| format!("{count} {what}{}", if count == 1 { "" } else { "s" }))
    };
    let fixtures: Vec<String> = [
        count(room.toilets, "toilet"),
        count(room.urinals, "urinal"),
        count(room.sinks, "sink"),
    ]
    .into_iter()
    .flatten()
    .collect();
    let fixtures = match fixtures.is_empty() {
        true => "nothing".into(),
        false => fixtures.join(", "),
    };
    format!("{}: {fixtures}", room.name)
}

/// Prints a circuit; `stated` is its table in the file.
fn circuit_value(circuit: &Circuit, stated: Option<&Value>) -> String {
    let filled_in = |table: Option<&Value>, key: &str| match table {
        Some(table) if table.get(key).is_none() => " (default)",
        _ => "",
    };
    let load = |n: usize| stated?.get("loads")?.get(n);
    let loads: Vec<String> = circuit
        .loads
        .iter()
        .enumerate()
        .map(|(n, of)| {
            let mut text = format!("{} {} A{}", of.name, of.amps, filled_in(load(n), "amps"));
            if let Some(start) = of.start_amps {
                text.push_str(&format!(" (start {start} A)"));
            }
            if let Some(start) = of.start_w {
                text.push_str(&format!(" (start {start} W)"));
            }
            if let Some(group) = &of.group {
                text.push_str(&format!(" [{group}]"));
            }
            text
        })
        .collect();
    let loads = match loads.is_empty() {
        true => "no load named".into(),
        false => loads.join(", "),
    };
    let breaker = filled_in(stated, "breaker_a");
    format!("{} A{breaker}: {loads}", circuit.breaker_a)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::{FleetFiles, read};

    const FLEET: &str = r#"
[defaults]
pressure_psi = { max = 55 }
[[trailer]]
id = "b3"
fresh_gal = 150
battery = { ah = 100 }
circuits = [ { loads = [ { name = "converter" }, { name = "AC", amps = 11 } ] } ]
[[trailer]]
id = "4"
"#;

    fn row(name: &str, key: &str) -> (String, &'static str) {
        let files = FleetFiles {
            fleet: FLEET.into(),
            ..FleetFiles::default()
        };
        let fleet = read(&files).unwrap();
        let rows = rows(fleet.trailer(&UnitName::new(name)).unwrap(), FLEET);
        let row = rows.into_iter().find(|row| row.key == key).unwrap();
        (row.value, row.from)
    }

    #[test]
    fn each_key_tells_where_its_value_comes_from() {
        let row = |name, key| {
            let (value, from) = row(name, key);
            format!("{value}, {from}")
        };
        // stated, though it is what would be taken anyway
        assert_eq!(row("B3", "fresh_gal"), "150 gal, stated");
        assert_eq!(row("4", "fresh_gal"), "150 gal, default");
        assert_eq!(row("4", "pressure_psi.max"), "55 psi, stated in [defaults]");
        assert_eq!(row("4", "pressure_psi.min"), "40 psi, default");
        assert_eq!(row("B3", "battery.ah"), "100 Ah, stated");
        assert_eq!(row("B3", "battery.kind"), "flooded, default");
    }

    #[test]
    fn what_a_stated_circuit_leaves_open_is_marked() {
        assert_eq!(
            row("B3", "circuits 1").0,
            "20 A (default): converter 7.4 A (default), AC 11 A"
        );
    }
}
