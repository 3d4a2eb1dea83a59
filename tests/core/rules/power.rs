use hosebib::finding::{Caution, FactValue, FindingId as Id, Level, TaskKind, Urgency};
use hosebib::heard::{Event, Fault, LoadPair, ReadingKey as R};

use super::support::{Found, said, unit};

const DAY: &str = "2027-05-29 12:30";

fn volts(volts: f64) -> Found {
    unit("12").hears(DAY, said().read(R::Volts, volts))
}

#[test]
fn a_shock_is_a_danger_said_first() {
    let found = unit("12").hears(DAY, said().read(R::PressurePsi, 95.0).wrong(Fault::Shock));
    assert_eq!(found.ids()[0], Id::PowerShock);
    found
        .has(Id::PowerShock, Urgency::Now)
        .at_level(Id::PowerShock, Level::Danger)
        .warns(Id::PowerShock, Caution::KillPowerAtSource)
        .has(Id::WaterOverPressure, Urgency::Now);
    assert_eq!(found.task(Id::PowerShock).kind, TaskKind::Electrician);
}

// ANSI C84.1 utilization bands (from memory): A 108 to 126, B 104 to 127
#[test]
fn volts_are_judged_by_their_bands() {
    volts(103.9).has(Id::PowerLowVoltage, Urgency::Now);
    volts(104.0).has(Id::PowerLowVoltage, Urgency::Soon);
    volts(107.9).has(Id::PowerLowVoltage, Urgency::Soon);
    volts(108.0).lacks(Id::PowerLowVoltage);
    volts(126.0).lacks(Id::PowerHighVoltage);
    volts(126.1).has(Id::PowerHighVoltage, Urgency::Plan);
    volts(127.0).has(Id::PowerHighVoltage, Urgency::Plan);
    volts(127.1)
        .has(Id::PowerHighVoltage, Urgency::Now)
        .at_level(Id::PowerHighVoltage, Level::Notice);
    volts(103.0).warns(Id::PowerLowVoltage, Caution::CompressorLowVolts);
}

// common practice, no source: over 132 V, or one cord high while another is low
#[test]
fn an_open_neutral_is_a_danger() {
    volts(132.0).at_level(Id::PowerHighVoltage, Level::Notice);
    volts(132.1)
        .at_level(Id::PowerHighVoltage, Level::Danger)
        .warns(Id::PowerHighVoltage, Caution::OpenNeutral);
    let second = |minute| {
        unit("12")
            .after("2027-05-29 12:00", said().read(R::Volts, 104.0))
            .hears(
                &format!("2027-05-29 12:{minute}"),
                said().read(R::Volts, 128.0),
            )
    };
    second("05").at_level(Id::PowerHighVoltage, Level::Danger);
    second("45").at_level(Id::PowerHighVoltage, Level::Notice);
}

// common practice, no source: one cord high while another is low; range A is 108 to 126 V
#[test]
fn two_legs_told_at_once_are_held_against_each_other() {
    let legs =
        |high, low| unit("12").hears(DAY, said().read(R::VoltsHigh, high).read(R::VoltsLow, low));
    legs(138.0, 98.0)
        .at_level(Id::PowerHighVoltage, Level::Danger)
        .says(Id::PowerHighVoltage, "power-high-voltage-split")
        .warns(Id::PowerHighVoltage, Caution::OpenNeutral)
        .warns(Id::PowerHighVoltage, Caution::Electrician);
    legs(126.1, 107.9).at_level(Id::PowerHighVoltage, Level::Danger);
    legs(126.0, 107.9)
        .lacks(Id::PowerHighVoltage)
        .has(Id::PowerLowVoltage, Urgency::Soon);
    legs(126.1, 108.0).has(Id::PowerHighVoltage, Urgency::Plan);
    legs(121.0, 118.0)
        .lacks(Id::PowerHighVoltage)
        .lacks(Id::PowerLowVoltage);
    // read again on one cord: what the two legs were is over
    unit("12")
        .after(
            DAY,
            said().read(R::VoltsHigh, 138.0).read(R::VoltsLow, 98.0),
        )
        .hears("2027-05-29 18:00", said().read(R::Volts, 120.0))
        .lacks(Id::PowerHighVoltage);
}

// CPSC portable generator alert: never indoors, in a tent or under the trailer; 20 ft from doors, windows and vents
#[test]
fn a_generator_that_runs_inside_is_a_danger() {
    unit("12")
        .hears(DAY, said().wrong(Fault::GeneratorInside))
        .at_level(Id::PowerGenerator, Level::Danger)
        .has(Id::PowerGenerator, Urgency::Now)
        .says(Id::PowerGenerator, "power-generator-inside")
        .warns(Id::PowerGenerator, Caution::CarbonMonoxide);
    unit("12")
        .after(DAY, said().wrong(Fault::GeneratorInside))
        .hears("2027-05-29 18:00", said().over(Fault::GeneratorInside))
        .lacks(Id::PowerGenerator);
}

// P1 (NEC 210.20(A)): 80 % of 20 A for more than 3 h; over 20 A now
#[test]
fn current_is_judged_by_the_breaker_and_the_hours() {
    let amps = |amps| unit("12").hears(DAY, said().amps(4, amps));
    amps(16.0).lacks(Id::PowerOverCurrent);
    amps(17.0).has(Id::PowerOverCurrent, Urgency::Plan);
    amps(20.0).has(Id::PowerOverCurrent, Urgency::Plan);
    amps(20.1)
        .has(Id::PowerOverCurrent, Urgency::Now)
        .at_level(Id::PowerOverCurrent, Level::Warning);
    let again = |hour: &str, between: f64| {
        unit("12")
            .after("2027-05-29 12:00", said().amps(4, 17.0))
            .after("2027-05-29 13:30", said().amps(4, between))
            .hears(&format!("2027-05-29 {hour}"), said().amps(4, 17.0))
    };
    again("15:01", 17.0).has(Id::PowerOverCurrent, Urgency::Soon);
    again("15:00", 17.0).has(Id::PowerOverCurrent, Urgency::Plan);
    again("15:01", 12.0).has(Id::PowerOverCurrent, Urgency::Plan);
}

// common practice, no source: circuit 2 with heater and converter at 19.4 A
#[test]
fn heater_and_converter_together_are_too_much_for_hours() {
    let amps = |circuit, amps| unit("12").hears(DAY, said().amps(circuit, amps));
    amps(2, 19.4)
        .has(Id::PowerSharedCircuit, Urgency::Soon)
        .says(Id::PowerSharedCircuit, "power-shared-circuit-converter")
        .lacks(Id::PowerOverCurrent);
    amps(1, 16.5).says(Id::PowerSharedCircuit, "power-shared-circuit-air");
    amps(1, 16.0).lacks(Id::PowerSharedCircuit);
    // bay and tank heater are meant to run together
    amps(4, 16.5).lacks(Id::PowerSharedCircuit);
    amps(2, 21.0)
        .has(Id::PowerSharedCircuit, Urgency::Soon)
        .has(Id::PowerOverCurrent, Urgency::Now);
}

// NEC 210.20(A): AC and heat of one circuit are 25 A on 20 A; the two ACs of this trailer stand on circuits of their own
#[test]
fn loads_said_to_run_together_are_held_against_their_circuit() {
    let told = |pair| unit("12").hears(DAY, said().together(pair));
    told(LoadPair::AirAndHeat)
        .has(Id::PowerSharedCircuit, Urgency::Soon)
        .says(Id::PowerSharedCircuit, "power-shared-circuit-air-told")
        .warns(Id::PowerSharedCircuit, Caution::HotPlug);
    told(LoadPair::HeaterAndConverter).says(
        Id::PowerSharedCircuit,
        "power-shared-circuit-converter-told",
    );
    told(LoadPair::TwoAir).lacks(Id::PowerSharedCircuit);
}

// NEC Table 400.5(A)(1): 14 AWG carries 18 A; the film set's cords are 150 ft of 14 AWG
#[test]
fn a_thin_cord_is_overloaded_over_its_rating() {
    let amps = |amps| unit("9").hears("2027-05-03 06:10", said().amps(2, amps));
    amps(18.1)
        .has(Id::PowerCordOverloaded, Urgency::Now)
        .at_level(Id::PowerCordOverloaded, Level::Warning)
        .warns(Id::PowerCordOverloaded, Caution::HotPlug);
    amps(18.0).lacks(Id::PowerCordOverloaded);
}

// P3 (NEC Chapter 9 Table 8): at 16 A 10 AWG loses 3 % in 91 ft and 5 % in 151 ft
#[test]
fn a_cord_may_lose_three_percent() {
    let run = |ft| unit("12").hears(DAY, said().did(Event::PowerOn).read(R::CordFt, ft));
    run(90.0).lacks(Id::PowerCordDrop);
    run(92.0).has(Id::PowerCordDrop, Urgency::Plan);
    run(150.0).has(Id::PowerCordDrop, Urgency::Plan);
    run(152.0).has(Id::PowerCordDrop, Urgency::Soon);
}

// common practice, no source: falls more than 5 % under load
#[test]
fn volts_that_fall_under_load_are_the_cord() {
    let falls_to = |v| {
        unit("9")
            .after("2027-06-05 12:00", said().read(R::Volts, 122.0))
            .hears("2027-06-05 12:10", said().read(R::Volts, v))
    };
    falls_to(106.0)
        .has(Id::PowerCordDrop, Urgency::Soon)
        .near(Id::PowerCordDrop, "fall", 13.115, 0.01)
        .warns(Id::PowerCordDrop, Caution::HotPlug)
        .has(Id::PowerLowVoltage, Urgency::Soon)
        .lacks(Id::PowerHighVoltage);
    falls_to(116.0).lacks(Id::PowerCordDrop); // 4.9 %
}

// common practice, no source: two AC and a water heater need three, the cold package a fourth at 40 °F
#[test]
fn circuits_needed_go_by_loads_and_weather() {
    let cords = |n, air| {
        unit("12").hears(
            "2027-01-16 10:00",
            said().read(R::Cords, n).read(R::AirF, air),
        )
    };
    let two = cords(2.0, 60.0);
    two.has(Id::PowerTooFewCircuits, Urgency::Soon);
    let text = |fact| match &two.fact(Id::PowerTooFewCircuits, fact).value {
        FactValue::Text(text) => text.clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!(text("feed"), "2, 1");
    assert_eq!(text("left_out"), "AC room B, heat room B");
    cords(3.0, 41.0).lacks(Id::PowerTooFewCircuits);
    cords(3.0, 40.0).says(Id::PowerTooFewCircuits, "power-too-few-circuits-cold");
    cords(4.0, 40.0).lacks(Id::PowerTooFewCircuits);
}

// common practice, no source: the converter's circuit dead
#[test]
fn a_dead_converter_circuit_means_the_battery() {
    let live = |circuits: &[u8]| unit("12").hears(DAY, said().live(circuits));
    live(&[1, 3])
        .has(Id::PowerOnBattery, Urgency::Soon)
        .says(Id::PowerOnBattery, "power-on-battery-circuit");
    live(&[2, 3]).lacks(Id::PowerOnBattery);
    unit("12")
        .hears(DAY, said().read(R::Cords, 2.0))
        .says(Id::PowerOnBattery, "power-on-battery-ask");
    unit("12")
        .hears(DAY, said().read(R::Cords, 4.0))
        .lacks(Id::PowerOnBattery);
    // a battery on charge proves the converter alive
    unit("12")
        .hears(DAY, said().read(R::Cords, 2.0).read(R::BatteryV, 13.6))
        .lacks(Id::PowerOnBattery);
}

#[test]
fn a_site_with_too_few_cords_is_asked_which_are_fed() {
    // the cannery offers two cords, trailer 12 has four circuits
    unit("12")
        .hears("2027-08-21 16:00", said().did(Event::PowerOn))
        .has(Id::PowerOnBattery, Urgency::Soon)
        .has(Id::PowerTooFewCircuits, Urgency::Soon);
    unit("12")
        .hears(DAY, said().did(Event::PowerOn))
        .lacks(Id::PowerOnBattery);
}

// B1 to B4 and T8: 60 uses an hour on 200 Ah last 5.8 h, 250 gal of fresh 4.2 h
#[test]
fn without_power_the_bot_says_which_ends_first() {
    let found = unit("21").hears(
        "2027-07-24 10:40",
        said()
            .did(Event::InService)
            .read(R::FreshPct, 100.0)
            .read(R::WastePct, 0.0),
    );
    found
        .has(Id::PowerOnBattery, Urgency::Soon)
        .says(Id::PowerOnBattery, "power-on-battery-fresh-first")
        .near(Id::PowerOnBattery, "battery_hours", 5.805, 0.3)
        .near(Id::PowerOnBattery, "fresh_hours", 4.167, 0.3)
        .lacks(Id::PowerGenerator);
}

// common practice, no source: 12.45 ok, 12.24 half, 12.06 a quarter, 11.9 flat
#[test]
fn a_battery_is_judged_at_rest() {
    let at = |v| unit("21").hears("2027-07-24 12:00", said().read(R::BatteryV, v));
    at(12.45).lacks(Id::PowerBatteryLow);
    at(13.6).lacks(Id::PowerBatteryLow);
    at(12.44).has(Id::PowerBatteryLow, Urgency::Plan);
    at(12.24).has(Id::PowerBatteryLow, Urgency::Plan);
    at(12.23).has(Id::PowerBatteryLow, Urgency::Soon);
    at(12.06).has(Id::PowerBatteryLow, Urgency::Soon);
    at(12.05).says(Id::PowerBatteryLow, "power-battery-low-act");
    at(11.9).says(Id::PowerBatteryLow, "power-battery-low-act");
    at(11.89).says(Id::PowerBatteryLow, "power-battery-low-flat");
    at(15.0).lacks(Id::PowerHighVoltage);
    at(15.1).says(Id::PowerHighVoltage, "power-high-voltage-battery");
    unit("21")
        .hears("2027-07-24 12:00", said().wrong(Fault::BatteryLow))
        .has(Id::PowerBatteryLow, Urgency::Soon);
}

// P7: trailer 18 runs 4860 W and needs about 6960 W at sea level to start an AC; the fair's set gives 4000 W
#[test]
fn a_generator_is_held_against_what_it_must_start() {
    let sized = |w| {
        unit("18")
            .with(|fleet| {
                let site = fleet.sites.get_mut("pellbrook-fair").expect("the fair");
                site.power.generator_w = Some(w);
                site.altitude_ft = 0.0;
            })
            .hears(
                "2027-07-10 08:20",
                said().did(Event::PowerOn).read(R::Cords, 3.0),
            )
    };
    sized(4000.0)
        .has(Id::PowerGenerator, Urgency::Now)
        .near(Id::PowerGenerator, "running_w", 4860.0, 1.0)
        .near(Id::PowerGenerator, "needed_w", 6960.0, 1.0)
        .warns(Id::PowerGenerator, Caution::CarbonMonoxide);
    sized(5000.0).has(Id::PowerGenerator, Urgency::Soon);
    sized(6960.0).lacks(Id::PowerGenerator);
}
