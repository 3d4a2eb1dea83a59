//! `[[site]]`.

use std::collections::BTreeMap;

use super::{given_twice, time_zone};
use crate::fleet::defaults;
use crate::fleet::model::{Site, Source};
use crate::fleet::section::Section;
use crate::fleet::sheet::Sheet;

/// Reads the sites; returns every id given, the faulty sites' too, with the line it stands on.
pub(super) fn read(
    section: &mut Section<'_, '_>,
    sites: &mut BTreeMap<String, Site>,
    sheet: &Sheet<'_>,
) -> BTreeMap<String, usize> {
    let mut seen = BTreeMap::new();
    for mut section in section.tables("site", "a site").unwrap_or_default() {
        section.needs(
            "id",
            "a short name for jobs to point at, as in id = \"mill-yard\"",
        );
        let id = section.id("id");
        if let Some(id) = id {
            section.named(format!("site {id}"));
            let spot = section.spot_of("id");
            match seen.get(id) {
                Some(first) => {
                    let found = given_twice(id, *first);
                    sheet.report(spot, section.place(), "an id of its own", found, None);
                }
                None => {
                    seen.insert(id.to_string(), sheet.line(spot));
                }
            }
        }
        let site = site(&mut section, id.unwrap_or_default());
        section.finish();
        if let Some(id) = id {
            sites.insert(id.into(), site);
        }
    }
    seen
}

fn site(section: &mut Section<'_, '_>, id: &str) -> Site {
    let mut site = defaults::site(id);
    if let Some(name) = section.text("name") {
        site.name = name.into();
    }
    if let Some(feet) = section.number("altitude_ft", -1_500.0..=20_000.0, "ft") {
        site.altitude_ft = feet;
    }
    site.time_zone = time_zone(section);
    if let Some(mut table) = section.table("water", "a water supply") {
        let water = &mut site.water;
        let sources = [
            ("house", Source::House),
            ("hydrant", Source::Hydrant),
            ("none", Source::None),
        ];
        water.source = table.choice("source", &sources).unwrap_or(water.source);
        water.static_psi = table.number("static_psi", 0.0..=250.0, "psi");
        water.hose_ft = table
            .number("hose_ft", 0.0..=5_000.0, "ft")
            .unwrap_or(water.hose_ft);
        water.hose_in = table
            .number("hose_in", 0.25..=6.0, "in")
            .unwrap_or(water.hose_in);
        water.rise_ft = table
            .number("rise_ft", -500.0..=500.0, "ft")
            .unwrap_or(water.rise_ft);
        table.finish();
    }
    if let Some(mut table) = section.table("power", "a power supply") {
        let power = &mut site.power;
        let sources = [
            ("house", Source::House),
            ("generator", Source::Generator),
            ("none", Source::None),
        ];
        power.source = table.choice("source", &sources).unwrap_or(power.source);
        power.cords = table
            .whole("cords", 0..=200, "")
            .and_then(|cords| u32::try_from(cords).ok());
        power.cord_ft = table
            .number("cord_ft", 0.0..=2_000.0, "ft")
            .unwrap_or(power.cord_ft);
        if let Some(awg) = table.whole("cord_awg", 6..=18, "") {
            power.cord_awg = awg as u32;
            if awg % 2 == 1 {
                table.wrong("cord_awg", "one of 18, 16, 14, 12, 10, 8, 6", None);
            }
        }
        power.generator_w = table.number("generator_w", 1.0..=10_000_000.0, "W");
        table.finish();
    }
    if let Some(mut table) = section.table("pump_truck", "what the pump truck needs") {
        let truck = &mut site.pump_truck;
        truck.lead_h = table
            .number("lead_h", 0.0..=336.0, "h")
            .unwrap_or(truck.lead_h);
        let feet = table.number("outlet_to_road_ft", 0.0..=5_000.0, "ft");
        truck.outlet_to_road_ft = feet.unwrap_or(truck.outlet_to_road_ft);
        table.finish();
    }
    site.position = section.pair(
        "position",
        [-90.0..=90.0, -180.0..=180.0],
        "latitude and longitude in degrees, as in [46.51, -63.12]",
    );
    let mut text = |key| section.text(key).map(String::from);
    site.emergency_address = text("emergency_address");
    site.gate_code = text("gate_code");
    site.contact = text("contact");
    site.stand = text("stand");
    site.septic_lid = text("septic_lid");
    site.notes = text("notes");
    site
}
