use chrono::NaiveTime;
use hosebib::fleet::{
    Fleet, FleetFiles, GaugeKind, OpenHours, Role, Source, TankShape, defaults, read,
};
use hosebib::heard::Language;
use hosebib::quantity::{TemperatureScale, Units};

use super::{at, every_key_files, loads, of, sample_files, unit};

fn time(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).expect("a time of day")
}

#[test]
fn the_sample_fleet_loads() {
    let fleet = loads(&sample_files());
    let sizes = (
        fleet.trailers.len(),
        fleet.sites.len(),
        fleet.jobs.len(),
        fleet.crew.len(),
    );
    assert_eq!(sizes, (8, 19, 20, 6));
    let twelve = &fleet.trailers[&unit("12")];
    assert_eq!(
        (twelve.stalls(), twelve.toilets(), twelve.sinks()),
        (8, 6, 4)
    );
    assert_eq!(
        twelve.circuit_of("tank heater").map(|(circuit, _)| circuit),
        Some(4)
    );
    let wedding = fleet
        .jobs
        .iter()
        .find(|job| job.id.site == "tern-boathouse")
        .expect("a job");
    assert_eq!(wedding.from, at("2027-01-16T12:00:00-06:00"));
    assert_eq!(wedding.to, at("2027-01-16T23:30:00-06:00"));
    assert!(fleet.jobs.is_sorted_by_key(|job| job.from));
}

#[test]
fn every_key_is_read() {
    let fleet = loads(&every_key_files());
    assert_eq!(fleet.company, "Every Key Restrooms");
    assert_eq!(fleet.time_zone, chrono_tz::Europe::Madrid);
    assert_eq!(fleet.style.units, Units::Metric);
    assert_eq!(fleet.style.temperature, TemperatureScale::F);
    assert!(fleet.style.twelve_hour);
    assert_eq!(fleet.language, Language::Es);
    assert_eq!(fleet.quiet_hours, Some((time(22, 0), time(6, 0))));
    assert_eq!(fleet.digest_at, [time(6, 30), time(18, 30)]);
    assert_eq!(
        (fleet.keep_texts_days, fleet.keep_photos_days),
        (Some(400), Some(30))
    );

    let trailer = &fleet.trailers[&unit("R-204")];
    assert_eq!(trailer.id, unit("R-204"));
    assert_eq!(trailer.title, "every key");
    assert_eq!((trailer.waste_gal, trailer.fresh_gal), (423.0, 180.5));
    assert_eq!(
        trailer.waste_tank,
        TankShape::Cylinder {
            diameter_in: 36.0,
            length_in: 96.0
        }
    );
    assert_eq!(
        (trailer.waste_gauge.kind, trailer.waste_gauge.step_pct),
        (GaugeKind::Lamps, 12.5)
    );
    let limits = trailer.pressure_psi;
    assert_eq!(
        (limits.min, limits.max, limits.regulator),
        (30.0, 70.0, 40.0)
    );
    assert_eq!(trailer.rooms.len(), 1);
    assert_eq!(
        (
            trailer.rooms[0].toilets,
            trailer.rooms[0].urinals,
            trailer.rooms[0].sinks
        ),
        (3, 1, 2)
    );
    let cool = &trailer.circuits[0].loads[0];
    assert_eq!(
        (cool.amps, cool.start_amps, cool.start_w),
        (12.5, Some(55.0), Some(3600.0))
    );
    assert_eq!(cool.group.as_deref(), Some("air"));
    assert_eq!(trailer.circuits[1].breaker_a, 15.0);
    assert_eq!(
        (trailer.battery.ah, trailer.battery.kind.as_str()),
        (200.0, "flooded")
    );
    assert_eq!(trailer.battery.converter_circuit, 2);
    assert_eq!(
        (trailer.cold.package, trailer.cold.insulation_in),
        (true, 1.5)
    );
    assert_eq!(
        (trailer.cold.tank_heater_w, trailer.cold.heater_circuit),
        (400.0, Some(2))
    );
    let weight = trailer.weight_lb.expect("weights");
    assert_eq!(
        (weight.empty, weight.gvwr, weight.tongue),
        (6900.0, 9000.0, 900.0)
    );
    assert_eq!(trailer.gal_per_use, 0.9);

    let site = &fleet.sites["mill"];
    assert_eq!((site.name.as_str(), site.altitude_ft), ("The mill", -12.0));
    assert_eq!(site.time_zone, Some(chrono_tz::Atlantic::Canary));
    assert_eq!(
        (site.water.source, site.water.static_psi),
        (Source::Hydrant, Some(95.0))
    );
    assert_eq!(
        (site.water.hose_ft, site.water.hose_in, site.water.rise_ft),
        (120.0, 1.0, -6.5)
    );
    assert_eq!(
        (site.power.source, site.power.cords),
        (Source::Generator, Some(3))
    );
    assert_eq!(
        (
            site.power.cord_ft,
            site.power.cord_awg,
            site.power.generator_w
        ),
        (40.0, 8, Some(7000.0))
    );
    assert_eq!(
        (site.pump_truck.lead_h, site.pump_truck.outlet_to_road_ft),
        (4.0, 55.0)
    );
    assert_eq!(site.position, Some((28.1, -15.4)));
    let card = [
        &site.emergency_address,
        &site.gate_code,
        &site.contact,
        &site.stand,
        &site.septic_lid,
        &site.notes,
    ];
    let card: Vec<&str> = card.into_iter().filter_map(Option::as_deref).collect();
    assert_eq!(
        card,
        [
            "1 Mill Lane",
            "0042",
            "the miller",
            "on the slab",
            "by the wheel",
            "dog"
        ]
    );

    let job = &fleet.jobs[0];
    // Canary time is UTC+1 in summer: the site's own zone counts, not the fleet's
    assert_eq!(job.from, at("2027-05-03T05:00:00Z"));
    assert_eq!(job.open, OpenHours::Daily(time(7, 0), time(17, 0)));
    assert_eq!((job.guests, job.alcohol, job.set_up_h), (45.0, true, 6.0));
    assert_eq!(job.crew, ["tam"]);
    assert_eq!(job.trailers, [unit("R-204"), unit("2")]);
    assert_eq!(
        fleet.jobs[1].from,
        at("2027-06-05T12:00:00Z"),
        "TOML allows a space for the T"
    );

    let pia = &fleet.crew["pia"];
    assert_eq!((pia.name.as_str(), pia.role), ("Pía", Role::Dispatcher));
    assert_eq!(
        (pia.language, pia.chat_user),
        (Some(Language::Es), Some(123_456_789))
    );
}

#[test]
fn what_is_not_stated_is_the_default() {
    let fleet = loads(&of(
        "[[trailer]]\nid = \"1\"",
        "[[site]]\nid = \"s\"\n[[job]]\nsite = \"s\"\ntrailers = [\"1\"]\nfrom = 2027-06-05T14:00:00\nto = 2027-06-05T20:00:00",
        "[[crew]]\nid = \"tam\"",
    ));
    assert_eq!(fleet.trailers[&unit("1")], defaults::trailer(unit("1")));
    assert_eq!(fleet.sites["s"], defaults::site("s"));
    let trailer = &fleet.trailers[&unit("1")];
    assert_eq!(trailer.waste_tank, TankShape::Box);
    assert_eq!(
        (trailer.waste_gauge.kind, trailer.waste_gauge.step_pct),
        (GaugeKind::Lamps, 25.0)
    );
    let limits = trailer.pressure_psi;
    assert_eq!(
        (limits.min, limits.max, limits.regulator),
        (40.0, 60.0, 45.0)
    );
    assert_eq!(trailer.circuits.len(), 4);
    assert!(
        trailer
            .circuits
            .iter()
            .all(|circuit| circuit.breaker_a == 20.0)
    );
    assert_eq!(
        (trailer.battery.ah, trailer.battery.kind.as_str()),
        (90.0, "flooded")
    );
    assert_eq!(trailer.battery.converter_circuit, 2);
    assert_eq!((trailer.cold.package, trailer.gal_per_use), (false, 1.0));
    let site = &fleet.sites["s"];
    assert_eq!((site.water.hose_ft, site.water.hose_in), (50.0, 0.75));
    assert_eq!((site.power.cord_ft, site.power.cord_awg), (25.0, 10));
    assert_eq!(site.pump_truck.lead_h, 2.5);
    assert_eq!(fleet.jobs[0].set_up_h, 24.0);
    assert_eq!(fleet.jobs[0].open, OpenHours::Through);
    let tam = &fleet.crew["tam"];
    assert_eq!(
        (tam.name.as_str(), tam.role, tam.language),
        ("tam", Role::Driver, None)
    );
}

#[test]
fn three_empty_files_are_a_fleet_with_nobody_in_it() {
    assert_eq!(loads(&FleetFiles::default()), Fleet::default());
}

#[test]
fn the_defaults_table_fills_in_any_trailer_key_and_a_trailer_overrides_leaf_by_leaf() {
    let fleet = loads(&every_key_files());
    let two = &fleet.trailers[&unit("2")];
    assert_eq!(two.title, "like the others");
    assert_eq!(
        (two.waste_gal, two.fresh_gal, two.gal_per_use),
        (250.0, 120.0, 0.5)
    );
    assert_eq!(
        (two.waste_gauge.kind, two.waste_gauge.step_pct),
        (GaugeKind::Sight, 33.3)
    );
    assert_eq!(two.pressure_psi.regulator, 50.0);
    assert_eq!((two.rooms.len(), two.circuits.len()), (2, 2));
    assert_eq!(two.battery.ah, 150.0, "its own");
    assert_eq!(two.battery.kind, "agm", "from the defaults");
    assert_eq!(two.cold.insulation_in, 2.0);
    assert_eq!(two.weight_lb.map(|weight| weight.gvwr), Some(7000.0));
}

fn trailer(keys: &str) -> hosebib::fleet::Trailer {
    let fleet = loads(&of(&format!("[[trailer]]\nid = \"1\"\n{keys}"), "", ""));
    fleet.trailers[&unit("1")].clone()
}

#[test]
fn the_converter_is_on_the_circuit_that_lists_it_else_on_the_second_else_on_the_only_one() {
    let converter = |circuits: &str| {
        trailer(&format!("circuits = [{circuits}]"))
            .battery
            .converter_circuit
    };
    assert_eq!(converter("{}"), 1);
    assert_eq!(converter("{}, {}, {}"), 2);
    assert_eq!(
        converter("{}, {}, { loads = [ { name = \"converter\" } ] }"),
        3
    );
}

#[test]
fn a_cold_package_heats_the_circuit_that_lists_the_tank_heater() {
    let cold = trailer("cold = { package = true }").cold;
    assert_eq!(
        (cold.insulation_in, cold.tank_heater_w, cold.heater_circuit),
        (1.0, 400.0, Some(4))
    );
    let three = "cold = { package = true }\ncircuits = [{}, {}, { loads = [ { name = \"Tank heater\" } ] }]";
    assert_eq!(trailer(three).cold.heater_circuit, Some(3));
    assert_eq!(
        trailer("cold = { package = true }\ncircuits = [{}]")
            .cold
            .heater_circuit,
        None
    );
}

#[test]
fn a_cylinder_alone_says_how_much_it_holds() {
    // 36 in by 96 in: pi/4 x 36^2 x 96 = 97,716 in3; 231 in3 to the gallon (NIST Handbook 44, appendix C)
    let tank = trailer("waste_tank = { shape = \"cylinder\", diameter_in = 36, length_in = 96 }");
    assert_eq!(tank.waste_gal, 423.0);
}

#[test]
fn metric_fleets_mean_celsius_unless_they_say_otherwise() {
    let scale = |text: &str| loads(&of(text, "", "")).style.temperature;
    assert_eq!(scale("units = \"metric\""), TemperatureScale::C);
    assert_eq!(scale("units = \"us\""), TemperatureScale::F);
    assert_eq!(
        scale("units = \"metric\"\ntemperature = \"F\""),
        TemperatureScale::F
    );
}

#[test]
fn windows_line_ends_and_a_byte_order_mark_change_nothing() {
    let plain = sample_files();
    let marked = |text: &str| format!("\u{feff}{}", text.replace('\n', "\r\n"));
    let windows = of(
        &marked(&plain.fleet),
        &marked(&plain.jobs),
        &marked(&plain.crew),
    );
    assert_eq!(loads(&windows), loads(&plain));
}

#[test]
fn a_fleet_survives_being_stored() {
    let fleet = loads(&every_key_files());
    let stored = serde_json::to_string(&fleet).expect("a fleet is JSON");
    let back: Fleet = serde_json::from_str(&stored).expect("it reads back");
    assert_eq!(back, fleet);
    assert_eq!(back.jobs_of(&unit("2")).len(), 2, "the index is made anew");
}

#[test]
fn the_table_of_defaults_names_every_key_and_tells_the_truth() {
    let rows = defaults::table();
    for key in [
        "waste_gal",
        "waste_tank",
        "waste_gauge",
        "pressure_psi",
        "rooms",
        "circuits",
        "battery",
        "cold",
        "weight_lb",
        "gal_per_use",
        "water",
        "power",
        "pump_truck",
        "set_up_h",
        "crew",
        "hours",
        "guests",
        "role",
        "quiet_hours",
    ] {
        assert!(rows.iter().any(|row| row.key == key), "{key}");
    }
    // what the table gives in the files' own form, written out, is what is taken where nothing is written
    let written: String = rows
        .iter()
        .filter(|row| {
            row.table == "trailer"
                && ["waste_tank", "waste_gauge", "pressure_psi", "gal_per_use"].contains(&row.key)
        })
        .map(|row| format!("{} = {}\n", row.key, row.default))
        .collect();
    assert_eq!(trailer(&written), trailer(""));
    assert!(
        defaults::markdown()
            .lines()
            .all(|line| line.matches(" | ").count() == 2 || line.starts_with("|--"))
    );
}

#[test]
fn reading_twice_gives_the_same() {
    assert_eq!(read(&sample_files()), read(&sample_files()));
}
