//! What is taken where the files say nothing: each default once, and the table of them that the README shows.
//!
//! A default errs towards asking for help too early: tanks are taken small and no cold package is assumed.

use super::model::{
    Battery, Circuit, Cold, Gauge, GaugeKind, Load, PressureLimits, PumpTruck, Room, Site,
    SitePower, SiteWater, Source, TankShape, Trailer,
};
use crate::heard::UnitName;

/// Waste tank, gal.
pub const WASTE_GAL: f64 = 300.0;
/// Fresh tank, gal.
pub const FRESH_GAL: f64 = 150.0;
/// Lamps at every quarter, %.
pub const GAUGE_STEP_PCT: f64 = 25.0;
/// Water pressure, psi.
pub const PRESSURE: PressureLimits = PressureLimits {
    min: 40.0,
    max: 60.0,
    regulator: 45.0,
};
/// Breaker of a circuit that does not say, A.
pub const BREAKER_A: f64 = 20.0;
/// Battery at the 20 h rate, Ah.
pub const BATTERY_AH: f64 = 90.0;
/// Battery kind.
pub const BATTERY_KIND: &str = "flooded";
/// The circuit that feeds the converter; 1 where there is only one.
pub const CONVERTER_CIRCUIT: u8 = 2;
/// Foam on the tanks where a cold package is fitted, in; none otherwise.
pub const COLD_INSULATION_IN: f64 = 1.0;
/// Tank heater where a cold package is fitted, W; none otherwise.
pub const COLD_TANK_HEATER_W: f64 = 400.0;
/// Share of the empty weight that rests on the tongue: within the 10 to 15 % that towing guides ask for.
pub const TONGUE_SHARE: f64 = 0.12;
/// Water per use, gal.
pub const GAL_PER_USE: f64 = 1.0;
/// Hose run, ft.
pub const HOSE_FT: f64 = 50.0;
/// Hose inside diameter, in.
pub const HOSE_IN: f64 = 0.75;
/// Cord run, ft.
pub const CORD_FT: f64 = 25.0;
/// Cord conductor, AWG.
pub const CORD_AWG: u32 = 10;
/// Notice that the pump truck wants, h.
pub(super) const LEAD_H: f64 = 2.5;
/// From the trailer's outlet to where the truck can stand, ft.
pub(super) const OUTLET_TO_ROAD_FT: f64 = 30.0;
/// How long before the doors the crew may be on site, h.
pub const SET_UP_H: f64 = 24.0;
/// People on site.
pub const GUESTS: f64 = 100.0;

/// Makes a trailer of which nothing but its name is known.
pub fn trailer(id: UnitName) -> Trailer {
    Trailer {
        id,
        title: String::new(),
        waste_gal: WASTE_GAL,
        fresh_gal: FRESH_GAL,
        waste_tank: TankShape::Box,
        waste_gauge: Gauge {
            kind: GaugeKind::Lamps,
            step_pct: GAUGE_STEP_PCT,
        },
        pressure_psi: PRESSURE,
        rooms: rooms(),
        circuits: circuits(),
        battery: Battery {
            ah: BATTERY_AH,
            kind: BATTERY_KIND.into(),
            converter_circuit: CONVERTER_CIRCUIT,
        },
        cold: Cold {
            package: false,
            insulation_in: 0.0,
            tank_heater_w: 0.0,
            heater_circuit: None,
        },
        weight_lb: None,
        gal_per_use: GAL_PER_USE,
    }
}

/// Makes a site of which nothing but its id is known.
pub fn site(id: &str) -> Site {
    Site {
        id: id.into(),
        name: id.into(),
        altitude_ft: 0.0,
        time_zone: None,
        water: SiteWater {
            source: Source::House,
            static_psi: None,
            hose_ft: HOSE_FT,
            hose_in: HOSE_IN,
            rise_ft: 0.0,
        },
        power: SitePower {
            source: Source::House,
            cords: None,
            cord_ft: CORD_FT,
            cord_awg: CORD_AWG,
            generator_w: None,
        },
        pump_truck: PumpTruck::default(),
        position: None,
        emergency_address: None,
        gate_code: None,
        contact: None,
        stand: None,
        septic_lid: None,
        notes: None,
    }
}

/// Two rooms: two toilets, a urinal and a sink; two toilets and a sink.
pub fn rooms() -> Vec<Room> {
    let room = |name: &str, urinals| Room {
        name: name.into(),
        toilets: 2,
        urinals,
        sinks: 1,
    };
    vec![room("A", 1), room("B", 0)]
}

/// Four 20 A circuits as most trailers have them (common practice; a nameplate wins).
pub fn circuits() -> Vec<Circuit> {
    let load = |name: &str, amps| Load {
        name: name.into(),
        amps,
        start_amps: None,
        start_w: None,
        group: None,
    };
    let circuit = |loads| Circuit {
        breaker_a: BREAKER_A,
        loads,
    };
    let room = |name: &str| {
        let group = Some(format!("room {name}"));
        let cool = Load {
            start_amps: Some(55.0),
            group: group.clone(),
            ..load(&format!("AC room {name}"), 12.5)
        };
        let heat = Load {
            group,
            ..load(&format!("heat room {name}"), 12.5)
        };
        circuit(vec![cool, heat])
    };
    vec![
        room("A"),
        circuit(vec![load("water heater", 12.0), load("converter", 7.4)]),
        room("B"),
        circuit(vec![load("bay heater", 12.5), load("tank heater", 3.3)]),
    ]
}

/// Returns what a load of this name usually draws at 120 V, A, or `None` where the name tells nothing.
pub fn load_amps(name: &str) -> Option<f64> {
    let name = name.to_lowercase();
    circuits()
        .iter()
        .flat_map(|circuit| &circuit.loads)
        .find(|load| load.name.to_lowercase() == name)
        .map(|load| load.amps)
}

/// One row of the table of defaults.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The table the key stands in: `trailer`, `site`, `job`, `crew`, `fleet`.
    pub table: &'static str,
    /// The key.
    pub key: &'static str,
    /// What is taken where it is missing.
    pub default: String,
}

/// Lists every key that has a default, in the order of the files.
pub fn table() -> Vec<Row> {
    let row = |table: &'static str, key: &'static str, default: String| Row {
        table,
        key,
        default,
    };
    let fixed = |table, key, default: &str| row(table, key, default.into());
    let limits = format!(
        "{{ min = {}, max = {}, regulator = {} }}",
        PRESSURE.min, PRESSURE.max, PRESSURE.regulator
    );
    let circuits = format!(
        "four of {BREAKER_A} A: AC or heat room A; water heater and converter; \
         AC or heat room B; bay heater and tank heater"
    );
    let battery = format!(
        "{{ ah = {BATTERY_AH}, kind = \"{BATTERY_KIND}\" }}, its converter on the circuit that lists it, \
         else on {CONVERTER_CIRCUIT}, or on 1 where it is the only one"
    );
    let cold = format!(
        "{{ package = false }}; with a package {COLD_INSULATION_IN} in of foam and {COLD_TANK_HEATER_W} W, \
         on the circuit that lists the tank heater"
    );
    let weight = format!(
        "none: no towing check by weight; the tongue alone {:.0} % of empty",
        TONGUE_SHARE * 100.0
    );
    let water = format!(
        "{{ source = \"house\", hose_ft = {HOSE_FT}, hose_in = {HOSE_IN}, rise_ft = 0 }}, \
         static_psi not known"
    );
    let power = format!(
        "{{ source = \"house\", cord_ft = {CORD_FT}, cord_awg = {CORD_AWG} }}, \
         cords and generator_w not known"
    );
    let truck = format!("{{ lead_h = {LEAD_H}, outlet_to_road_ft = {OUTLET_TO_ROAD_FT} }}");
    let card = "position, emergency_address, gate_code, contact, stand, septic_lid, notes";
    let hours = "from the doors' opening to their closing; in a job over 24 h every day \
                 from `from`'s time of day to `to`'s";
    vec![
        fixed("fleet", "company", "none"),
        fixed("fleet", "time_zone", "\"UTC\""),
        fixed("fleet", "units", "\"us\""),
        fixed("fleet", "temperature", "\"F\"; \"C\" with metric units"),
        fixed("fleet", "clock", "24"),
        fixed("fleet", "language", "\"en\""),
        fixed("fleet", "quiet_hours", "none"),
        fixed(
            "fleet",
            "digest_at",
            "none: the digest comes when asked for",
        ),
        fixed("fleet", "keep_texts_days", "none: kept for good"),
        fixed("fleet", "keep_photos_days", "none: kept for good"),
        fixed("trailer", "title", "none"),
        row(
            "trailer",
            "waste_gal",
            format!("{WASTE_GAL}, or what the cylinder holds"),
        ),
        row("trailer", "fresh_gal", FRESH_GAL.to_string()),
        fixed("trailer", "waste_tank", "{ shape = \"box\" }"),
        row(
            "trailer",
            "waste_gauge",
            format!("{{ kind = \"lamps\", step_pct = {GAUGE_STEP_PCT} }}"),
        ),
        row("trailer", "pressure_psi", limits),
        fixed(
            "trailer",
            "rooms",
            "A: 2 toilets, 1 urinal, 1 sink; B: 2 toilets, 1 sink",
        ),
        row("trailer", "circuits", circuits),
        row("trailer", "battery", battery),
        row("trailer", "cold", cold),
        row("trailer", "weight_lb", weight),
        row("trailer", "gal_per_use", format!("{GAL_PER_USE:.1}")),
        fixed("site", "name", "its id"),
        fixed("site", "altitude_ft", "0"),
        fixed("site", "time_zone", "the fleet's"),
        row("site", "water", water),
        row("site", "power", power),
        row("site", "pump_truck", truck),
        fixed("site", card, "none"),
        row("job", "guests", GUESTS.to_string()),
        fixed("job", "alcohol", "false"),
        row("job", "set_up_h", SET_UP_H.to_string()),
        fixed("job", "hours", hours),
        fixed(
            "job",
            "crew",
            "none: whoever arrives with one of its trailers",
        ),
        fixed("crew", "name", "the id"),
        fixed("crew", "role", "\"driver\""),
        fixed(
            "crew",
            "language",
            "none: answered in the language they write in",
        ),
        fixed("crew", "chat_user", "none: joins by invite"),
    ]
}

/// Prints the table of defaults in Markdown.
pub fn markdown() -> String {
    let mut text = String::from("| table | key | where it is missing |\n|---|---|---|\n");
    for row in table() {
        text.push_str(&format!(
            "| {} | `{}` | {} |\n",
            row.table,
            row.key.replace(", ", "`, `"),
            row.default
        ));
    }
    text
}
