//! Published tables and worked examples about water, power, people and towing, each with its source.

use hosebib::physics::battery::{self, Bank, Living};
use hosebib::physics::crowd::{self, Alcohol};
use hosebib::physics::power::{self, Conductor, Material, Strand, VoltageBand};
use hosebib::physics::tank;
use hosebib::physics::tow;
use hosebib::physics::trouble::{self, ShockEffect};
use hosebib::physics::units::*;
use hosebib::physics::water::{self, Line};

use super::near;

/// Source: NEC (NFPA 70) Chapter 9 Table 8, ohm/kft at 75 °C (copper 14 and 12 solid, aluminium 6: as reproduced).
#[test]
#[expect(clippy::approx_constant)] // 3.14 ohm is a table's figure
fn conductors_are_those_of_table_8() {
    for (awg, ohms) in [
        (18, 7.95),
        (16, 4.99),
        (14, 3.14),
        (12, 1.98),
        (10, 1.24),
        (8, 0.778),
        (6, 0.491),
        (4, 0.308),
        (3, 0.245),
        (2, 0.194),
    ] {
        near(
            power::ohm_per_kft(Conductor::cord(awg)).unwrap(),
            ohms,
            1e-9,
        );
    }
    let solid = |awg| Conductor {
        strand: Strand::Solid,
        ..Conductor::cord(awg)
    };
    near(power::ohm_per_kft(solid(14)).unwrap(), 3.07, 1e-9);
    near(power::ohm_per_kft(solid(12)).unwrap(), 1.93, 1e-9);
    let aluminium = Conductor {
        material: Material::Aluminium,
        ..Conductor::cord(6)
    };
    near(power::ohm_per_kft(aluminium).unwrap(), 0.808, 1e-9);
    assert_eq!(power::ohm_per_kft(Conductor::cord(11)), None);
    // the table's note 2: copper at 20 °C has 82 % of what it has at 75 °C
    let cold = Conductor {
        celsius: 20.0,
        ..Conductor::cord(10)
    };
    near(power::ohm_per_kft(cold).unwrap() / 1.24, 0.822, 0.001);
}

/// Source: NEC Table 400.5(A)(1) column B, as quoted in appliance standards.
#[test]
fn cords_carry_what_table_400_5_allows() {
    for (awg, limit) in [(18, 10.0), (16, 13.0), (14, 18.0), (12, 25.0), (10, 30.0)] {
        assert_eq!(in_amps(power::cord_ampacity(awg, 2).unwrap()), limit);
    }
    assert_eq!(power::cord_ampacity(22, 2), None);
}

/// Source: Ohm's law with Table 8: a compressor that starts at 60 A takes 36 V from 150 ft of 12 AWG, 22 V from 10 AWG.
#[test]
fn a_compressor_starves_on_a_long_thin_cord() {
    let left = |feet, awg| {
        in_volts(power::cord_end_voltage(volts(120.0), amps(60.0), ft(feet), awg).unwrap())
    };
    near(left(50.0, 12), 120.0 - 12.0, 0.2);
    near(left(150.0, 12), 120.0 - 36.0, 0.5);
    near(left(150.0, 10), 120.0 - 22.0, 0.5);
    assert_eq!(
        power::cord_end_voltage(volts(120.0), amps(60.0), ft(50.0), 11),
        None
    );
}

/// Source: ANSI C84.1, utilization voltage (from memory).
#[test]
fn voltage_bands_keep_their_ends() {
    let band = |v| power::voltage_band(volts(v));
    assert_eq!(band(103.9), VoltageBand::BelowRangeB);
    assert_eq!(band(104.0), VoltageBand::RangeBLow);
    assert_eq!(band(108.0), VoltageBand::RangeA);
    assert_eq!(band(126.0), VoltageBand::RangeA);
    assert_eq!(band(126.5), VoltageBand::RangeBHigh);
    assert_eq!(band(127.0), VoltageBand::RangeBHigh);
    assert_eq!(band(127.1), VoltageBand::AboveRangeB);
}

/// Source: UL 489: a breaker need not trip under 135 %; 20 A must within 1 h at 27 A, within 2 min at 40 A.
#[test]
fn a_breaker_is_late_by_design() {
    let trips = |load| power::breaker_must_trip(amps(20.0), amps(load)).map(in_seconds);
    assert_eq!(trips(20.0), None);
    assert_eq!(trips(26.9), None);
    assert_eq!(trips(27.0), Some(3600.0));
    assert_eq!(trips(40.0), Some(120.0));
}

/// Common practice, no source: two conditioners and a water heater take three circuits, the cold package a fourth.
#[test]
fn services_are_those_the_trade_brings() {
    let needed = power::services_needed;
    assert_eq!(needed(0, false, false), 1);
    assert_eq!(needed(2, false, false), 2);
    assert_eq!(needed(2, true, false), 3);
    assert_eq!(needed(2, true, true), 4);
    assert_eq!(needed(3, true, true), 4);
}

/// Source: computed with EPANET 2.2 and scipy: most flow, gpm, that leaves 20 psi at the trailer, level ground, K = 10.
#[test]
fn a_hose_gives_what_its_table_says() {
    for (static_psi, bore, flows) in [
        (40.0, 0.625, [9.0, 6.8, 4.9]),
        (40.0, 0.75, [14.0, 10.8, 7.9]),
        (45.0, 0.75, [15.8, 12.1, 8.9]),
        (50.0, 1.0, [34.3, 27.1, 20.3]),
        (60.0, 0.625, [13.0, 9.9, 7.1]),
        (60.0, 1.0, [39.9, 31.6, 23.7]),
    ] {
        for (length, flow) in [50.0, 100.0, 200.0].into_iter().zip(flows) {
            let line = Line::new(ft(length), inch(bore), ft(0.0));
            let found = water::max_flow(psi(static_psi), &line, psi(20.0));
            near(in_gpm(found), flow, 0.06);
        }
    }
    let line = Line::new(ft(50.0), inch(0.75), ft(0.0));
    let expected = water::expected_flowing_pressure(psi(55.0), &line, gpm(6.0));
    near(in_psi(expected), 51.0, 0.05);
}

/// Source: binomial 99th percentiles by scipy, after Hunter (NBS BMS 65, 1940); Buchberger puts seven toilets between four
/// and five.
#[test]
fn few_fixtures_run_at_once() {
    for (n, p, most) in [
        (8, 0.2, 5),
        (10, 0.15, 4),
        (4, 0.3, 3),
        (12, 0.1, 4),
        (20, 0.1, 6),
        (6, 0.5, 6),
    ] {
        assert_eq!(water::simultaneous_fixtures(n, p, 0.99), most);
    }
    assert_eq!(in_gpm(water::trailer_demand(8, 8)), 15.0);
    // Hunter's curve asks for about twice as much for the same eight and eight (56 fixture units)
    assert!(in_gpm(water::hunter_flush_tank(56.0)) > 29.0);
}

/// Source: worked with the model of `battery` and Peukert: battery hours against uses an hour.
#[test]
fn a_battery_lasts_a_day_for_few_and_an_hour_for_many() {
    let (bank, living) = (Bank::default(), Living::default());
    for (uses, hours) in [(2.0, 27.5), (6.0, 11.6), (50.0, 2.42), (200.0, 1.36)] {
        let found = in_hours(battery::hours_at_uses(&bank, &living, uses).unwrap());
        near(found, hours, 0.01 * hours);
    }
    let left = in_hours(battery::hours_left(&bank, 100.0, amps(9.0)).unwrap());
    near(left, 8.70551 / 2.0, 0.01);
    assert_eq!(
        in_hours(battery::hours_left(&bank, 50.0, amps(9.0)).unwrap()),
        0.0
    );
    // IEEE 485 Table 1 (from memory)
    near(battery::cold_factor(deg_f(40.0)), 1.30, 1e-9);
}

/// Source: circular segment, computed with fluids: a lying cylinder's depth and fill.
#[test]
fn depth_is_not_volume_in_a_lying_cylinder() {
    let fills = [7.2, 19.6, 34.3, 50.0, 65.7, 80.4, 92.8];
    for (eighth, fill) in (1..8).zip(fills) {
        near(
            100.0 * tank::cylinder_fill(f64::from(eighth) / 8.0),
            fill,
            0.06,
        );
    }
}

/// Source: FEMA Special Events Contingency Planning job aids (IS-15, 2005), as reproduced: counts, then the table of
/// durations.
#[test]
fn femas_table_is_whole() {
    let count = |patrons, alcohol, event| {
        let f = crowd::fema_fixtures(patrons, alcohol, hours(event)).unwrap();
        [
            f.male_toilets,
            f.urinals,
            f.male_sinks,
            f.female_toilets,
            f.female_sinks,
        ]
    };
    assert_eq!(count(499.0, Alcohol::No, 9.0), [1, 2, 2, 6, 2]);
    assert_eq!(count(500.0, Alcohol::No, 9.0), [2, 4, 4, 9, 4]);
    assert_eq!(count(1000.0, Alcohol::No, 9.0), [4, 8, 6, 12, 6]);
    assert_eq!(count(2999.0, Alcohol::No, 9.0), [6, 15, 10, 18, 10]);
    assert_eq!(count(4999.0, Alcohol::No, 9.0), [8, 25, 17, 30, 17]);
    assert_eq!(count(499.0, Alcohol::Yes, 9.0), [3, 8, 2, 13, 2]);
    assert_eq!(count(999.0, Alcohol::Yes, 9.0), [5, 10, 4, 16, 4]);
    assert_eq!(count(1999.0, Alcohol::Yes, 9.0), [9, 15, 7, 18, 7]);
    assert_eq!(count(2999.0, Alcohol::Yes, 9.0), [10, 20, 14, 22, 14]);
    assert_eq!(count(4999.0, Alcohol::Yes, 9.0), [12, 30, 20, 40, 20]);
    assert_eq!(count(4999.0, Alcohol::Yes, 8.0), [10, 24, 16, 32, 16]);
    assert_eq!(count(4999.0, Alcohol::Yes, 4.0), [9, 23, 15, 30, 15]);
    assert_eq!(count(4999.0, Alcohol::Yes, 3.9), [9, 21, 14, 28, 14]);
    assert_eq!(crowd::fema_fixtures(5000.0, Alcohol::No, hours(9.0)), None);
}

/// Source: 29 CFR 1926.51(c)(1) Table D-1, with its fall at 200.
#[test]
fn oshas_table_falls_at_two_hundred_and_the_advice_does_not() {
    for (employees, seats, urinals) in [
        (1, 1, 0),
        (20, 1, 0),
        (21, 1, 1),
        (40, 1, 1),
        (41, 2, 2),
        (199, 5, 5),
        (200, 4, 4),
        (240, 5, 5),
        (251, 6, 6),
    ] {
        assert_eq!(
            crowd::osha_fixtures(employees),
            (seats, urinals),
            "{employees}"
        );
    }
}

/// Source: 2010 ADA Standards 213.2 exception 3, rounded up by 104.2.
#[test]
fn five_per_cent_of_portables_are_accessible() {
    for (cluster, accessible) in [(1, 1), (20, 1), (21, 2), (40, 2), (41, 3), (45, 3)] {
        assert_eq!(crowd::ada_accessible(cluster), accessible);
    }
}

/// Source: M/M/c closed form; a simulation gave 134.6 ± 5.8 s for four stalls at 140 an hour.
#[test]
fn a_pooled_line_waits_less_than_two() {
    let wait =
        |stalls, arrivals| in_seconds(crowd::mean_wait(stalls, arrivals, seconds(90.0)).unwrap());
    near(wait(4, 80.0), 7.8, 0.06);
    near(wait(4, 120.0), 45.8, 0.06);
    near(wait(4, 140.0), 132.8, 0.06);
    near(wait(4, 150.0), 311.0, 0.6);
    near(wait(8, 280.0), 57.0, 0.6);
    assert_eq!(crowd::mean_wait(4, 160.0, seconds(90.0)), None);
    // one stall of four out of order at 120 an hour
    assert_eq!(crowd::mean_wait(3, 120.0, seconds(90.0)), None);
}

/// Source: OSHA 3075, effects of current; wet skin 1,000 ohm, dry 100,000 ohm.
#[test]
fn wet_skin_at_mains_voltage_may_kill() {
    let wet = trouble::body_current(volts(120.0), ohms(trouble::WET_SKIN_OHM));
    let dry = trouble::body_current(volts(120.0), ohms(trouble::DRY_SKIN_OHM));
    near(in_milliamps(wet), 120.0, 1e-6);
    near(in_milliamps(dry), 1.2, 1e-6);
    let effect = |ma| trouble::shock_effect(milliamps(ma));
    assert_eq!(effect(0.9), ShockEffect::None);
    assert_eq!(effect(1.2), ShockEffect::FaintTingle);
    assert_eq!(effect(5.0), ShockEffect::SlightShock);
    assert_eq!(effect(6.0), ShockEffect::CannotLetGo);
    assert_eq!(effect(49.9), ShockEffect::CannotLetGo);
    assert_eq!(effect(50.0), ShockEffect::MayKill);
}

/// Source: worked by moments and by the gas law.
#[test]
fn waste_behind_the_axle_takes_the_tongue_away() {
    let item = |weight, behind| tow::Item {
        weight: lb(weight),
        behind: inch(behind),
    };
    let tongue = |items: &[tow::Item]| in_lb(tow::tongue_weight(inch(200.0), items));
    near(tongue(&[item(8000.0, 176.0)]), 960.0, 0.01);
    near(
        tongue(&[item(8000.0, 176.0), item(2085.0, 260.0)]),
        334.5,
        0.01,
    );
    near(
        in_psi(tow::tire_after(psi(65.0), deg_f(70.0), deg_f(20.0))),
        57.5,
        0.06,
    );
    near(in_inch(tow::block_height(inch(82.0), 3.0)), 2.46, 1e-6);
    near(tow::suction_lift_ft(20.0), 22.66, 1e-9);
}
