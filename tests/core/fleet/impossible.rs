use super::faulty::{DAY, job, jobs, says, site, trailer};
use super::{of, problems};

#[test]
fn impossible_tanks_and_gauges() {
    says(
        trailer("waste_gal = -500"),
        "fleet.toml:3: trailer 1, waste_gal: expected 1 to 10000 gal, found `-500`",
    );
    says(
        trailer("fresh_gal = nan"),
        "fleet.toml:3: trailer 1, fresh_gal: expected 0 to 10000 gal, found `nan`",
    );
    says(
        trailer(
            "waste_gal = 600\nwaste_tank = { shape = \"cylinder\", diameter_in = 36, length_in = 96 }",
        ),
        "fleet.toml:3: trailer 1, waste_gal: expected about 423 gal, what a cylinder of 36 by 96 in holds, found 600 gal; the size is the tank's inside, in inches",
    );
    says(
        trailer("waste_tank = { shape = \"cylinder\", diameter_in = 36 }"),
        "fleet.toml:3: trailer 1, waste_tank: expected `length_in`, the tank's inside length in inches, found no such key",
    );
    says(
        trailer("waste_tank = { shape = \"round\" }"),
        "fleet.toml:3: trailer 1, waste_tank, shape: expected one of \"box\", \"cylinder\", found `\"round\"`",
    );
    says(
        trailer("waste_gauge = { step_pct = 30 }"),
        "fleet.toml:3: trailer 1, waste_gauge, step_pct: expected a step that divides 100 %, found `30`; a gauge that shows quarters has steps of 25, one that shows eighths 12.5",
    );
    assert_eq!(
        trailer(
            "waste_gal = 430\nwaste_tank = { shape = \"cylinder\", diameter_in = 36, length_in = 96 }"
        ),
        [""; 0]
    );
    for step in ["12.5", "25", "33.3", "6.25", "50", "10"] {
        assert_eq!(
            trailer(&format!("waste_gauge = {{ step_pct = {step} }}")),
            [""; 0]
        );
    }
}

#[test]
fn impossible_pressures() {
    says(
        trailer("pressure_psi = { min = 60, max = 40 }"),
        "fleet.toml:3: trailer 1, pressure_psi, max: expected min below max, here 60 and 40, found `40`",
    );
    says(
        trailer("pressure_psi = { regulator = 75 }"),
        "fleet.toml:3: trailer 1, pressure_psi, regulator: expected the regulator between min and max, here 75 from 40 to 60 psi, found `75`",
    );
}

#[test]
fn impossible_circuits() {
    says(
        trailer("circuits = [{}, {}, {}, {}, {}]"),
        "fleet.toml:3: trailer 1, circuits: expected one to four circuits, found 5 circuits",
    );
    says(
        trailer("circuits = []"),
        "fleet.toml:3: trailer 1, circuits: expected one to four circuits, found 0 circuits",
    );
    says(
        trailer("circuits = [ { breaker_a = 0 } ]"),
        "fleet.toml:3: trailer 1, circuits 1, breaker_a: expected 1 to 100 A, found `0`",
    );
    says(
        trailer("circuits = [ { loads = [ { name = \"AC\", amps = 12, start_amps = 6 } ] } ]"),
        "fleet.toml:3: trailer 1, circuits 1, loads 1, start_amps: expected at least the running 12 A, found `6`",
    );
    says(
        trailer("circuits = [ { loads = [ { name = \"popcorn\" } ] } ]"),
        "fleet.toml:3: trailer 1, circuits 1, loads 1: expected `amps`, its running amperes at 120 V, found no such key",
    );
    says(
        trailer("circuits = [{}, {}]\nbattery = { converter_circuit = 3 }"),
        "fleet.toml:4: trailer 1, battery, converter_circuit: expected a circuit from 1 to 2, as many as it has, found `3`",
    );
    says(
        trailer("circuits = [{}]\ncold = { package = true, heater_circuit = 4 }"),
        "fleet.toml:4: trailer 1, cold, heater_circuit: expected a circuit from 1 to 1, as many as it has, found `4`",
    );
    says(
        trailer("battery = { converter_circuit = 5 }"),
        "fleet.toml:3: trailer 1, battery, converter_circuit: expected a whole number from 1 to 4, found `5`",
    );
}

#[test]
fn impossible_rooms_batteries_and_weights() {
    says(
        trailer("rooms = [ { name = \"A\", toilets = 1 }, { name = \"a\", toilets = 1 } ]"),
        "fleet.toml:3: trailer 1, rooms: expected rooms of different names, found two called `a`",
    );
    says(
        trailer("battery = { kind = \"lithium\" }"),
        "fleet.toml:3: trailer 1, battery, kind: expected one of \"flooded\", \"agm\", found `\"lithium\"`",
    );
    says(
        trailer("battery = { ah = 0 }"),
        "fleet.toml:3: trailer 1, battery, ah: expected 1 to 5000 Ah, found `0`",
    );
    says(
        trailer("weight_lb = { empty = 7200, gvwr = 6000 }"),
        "fleet.toml:3: trailer 1, weight_lb, gvwr: expected no less than the empty weight, 7200 lb, found `6000`",
    );
    says(
        trailer("weight_lb = { empty = 7200, gvwr = 9000, tongue = 7200 }"),
        "fleet.toml:3: trailer 1, weight_lb, tongue: expected less than the empty weight, 7200 lb, found `7200`",
    );
    says(
        trailer("gal_per_use = 0"),
        "fleet.toml:3: trailer 1, gal_per_use: expected 0.01 to 20 gal, found `0`",
    );
}

#[test]
fn impossible_settings_of_the_fleet() {
    let fleet = |text: &str| problems(&of(text, "", ""));
    says(
        fleet("time_zone = \"Halifax\""),
        "fleet.toml:1: time_zone: expected an IANA time zone, as in \"America/Halifax\", found `\"Halifax\"`; did you mean `America/Halifax`?",
    );
    says(
        fleet("time_zone = \"America/Boston\""),
        "fleet.toml:1: time_zone: expected an IANA time zone, as in \"America/Halifax\", found `\"America/Boston\"`; take one whose clocks are the same: `America/New_York`, `America/Chicago`, `America/Denver`, `America/Phoenix`, `America/Los_Angeles`, `America/Halifax`, `America/Mexico_City`, `America/Puerto_Rico`",
    );
    says(
        fleet("time_zone = \"America/New_Yrok\""),
        "fleet.toml:1: time_zone: expected an IANA time zone, as in \"America/Halifax\", found `\"America/New_Yrok\"`; did you mean `America/New_York`?",
    );
    says(
        fleet("clock = 13"),
        "fleet.toml:1: clock: expected 12 or 24, found `13`",
    );
    says(
        fleet("units = \"imperial\""),
        "fleet.toml:1: units: expected one of \"us\", \"metric\", found `\"imperial\"`",
    );
    says(
        fleet("temperature = \"K\""),
        "fleet.toml:1: temperature: expected one of \"F\", \"C\", found `\"K\"`",
    );
    says(
        fleet("language = \"fr\""),
        "fleet.toml:1: language: expected one of \"en\", \"es\", found `\"fr\"`",
    );
    says(
        fleet("quiet_hours = \"22 to 6\""),
        "fleet.toml:1: quiet_hours: expected two times of day, as in \"06:00-17:00\", found `\"22 to 6\"`",
    );
    says(
        fleet("digest_at = [\"07:00\", \"25:00\"]"),
        "fleet.toml:1: digest_at: expected times of day, as in [\"06:30\", \"18:00\"], found `\"25:00\"`",
    );
    says(
        fleet("keep_texts_days = 0"),
        "fleet.toml:1: keep_texts_days: expected a whole number from 1 to 36500 days, found `0`",
    );
}

#[test]
fn impossible_sites() {
    says(
        site("water = { source = \"well\" }"),
        "jobs.toml:3: site s, water, source: expected one of \"house\", \"hydrant\", \"none\", found `\"well\"`",
    );
    says(
        site("power = { source = \"hydrant\" }"),
        "jobs.toml:3: site s, power, source: expected one of \"house\", \"generator\", \"none\", found `\"hydrant\"`",
    );
    says(
        site("power = { cord_awg = 11 }"),
        "jobs.toml:3: site s, power, cord_awg: expected one of 18, 16, 14, 12, 10, 8, 6, found `11`",
    );
    says(
        site("pump_truck = { lead_h = -1 }"),
        "jobs.toml:3: site s, pump_truck, lead_h: expected 0 to 336 h, found `-1`",
    );
    says(
        site("position = [46.5, 190]"),
        "jobs.toml:3: site s, position: expected latitude and longitude in degrees, as in [46.51, -63.12], found the list `[46.5, 190]`",
    );
    says(
        site("time_zone = \"Mars/Olympus\"")
            .iter()
            .map(|line| line.split(';').next().unwrap_or_default().into())
            .collect(),
        "jobs.toml:3: site s, time_zone: expected an IANA time zone, as in \"America/Halifax\", found `\"Mars/Olympus\"`",
    );
}

#[test]
fn impossible_times() {
    says(
        jobs(&job(
            "s",
            "\"1\"",
            "2027-06-05T12:00:00",
            "2027-06-05T11:00:00",
        )),
        "jobs.toml:10: job s 2027-06-05 12:00, to: expected a time after `from`, 2027-06-05 12:00:00, found `2027-06-05T11:00:00`",
    );
    says(
        jobs(&job(
            "s",
            "\"1\"",
            "2027-06-05T12:00:00",
            "2072-06-05T20:00:00",
        )),
        "jobs.toml:10: job s 2027-06-05 12:00, to: expected a time within five years of `from`, found `2072-06-05T20:00:00`",
    );
    says(
        jobs(&job("s", "\"1\"", "2027-06-05T12:00:00Z", DAY.1)),
        "jobs.toml:9: job at s, from: expected a local date and time from 2000 to 2100, as in 2027-06-05T14:00:00, found `2027-06-05T12:00:00Z`; leave out the offset: it is the site's own time",
    );
    says(
        jobs(&job("s", "\"1\"", "2027-06-05", DAY.1)),
        "jobs.toml:9: job at s, from: expected a local date and time from 2000 to 2100, as in 2027-06-05T14:00:00, found `2027-06-05`; give both the day and the time",
    );
    says(
        jobs(&job("s", "\"1\"", "\"2027-06-05T12:00:00\"", DAY.1)),
        "jobs.toml:9: job at s, from: expected a local date and time from 2000 to 2100, as in 2027-06-05T14:00:00, found `\"2027-06-05T12:00:00\"`; leave out the quotes",
    );
    says(
        jobs(&format!(
            "{}hours = \"01:00-02:00\"",
            job("s", "\"1\"", DAY.0, DAY.1)
        )),
        "jobs.toml:11: job s 2027-06-05 12:00, hours: expected hours that fall between `from` and `to`, found `\"01:00-02:00\"`",
    );
}

#[test]
fn a_local_time_that_the_clocks_skip() {
    // 14 March 2027, second Sunday in March: 2:00 becomes 3:00 (15 U.S.C. 260a)
    says(
        jobs(&job(
            "s",
            "\"1\"",
            "2027-03-14T02:30:00",
            "2027-03-14T20:00:00",
        )),
        "jobs.toml:9: job s 2027-03-14 02:30, from: expected a time that exists in America/New_York, found `2027-03-14T02:30:00`; the clocks go forward past it; the next time there is 2027-03-14T03:00:00",
    );
    assert_eq!(
        jobs(&job(
            "s",
            "\"1\"",
            "2027-11-07T01:30:00",
            "2027-11-07T20:00:00"
        )),
        [""; 0],
        "it comes twice"
    );
}

#[test]
fn two_jobs_of_one_trailer_at_once() {
    let first = job("s", "\"1\", \"2\"", DAY.0, DAY.1);
    says(
        jobs(&format!(
            "{first}{}",
            job("t", "\"2\"", "2027-06-05T19:00:00", "2027-06-05T23:00:00")
        )),
        "jobs.toml:11: job t 2027-06-05 19:00: expected trailer 2 in one place at a time, found it open at s too, from 2027-06-05 19:00 (job s 2027-06-05 12:00 on line 6)",
    );
    let after = job("t", "\"2\"", "2027-06-05T20:00:00", "2027-06-05T23:00:00");
    assert_eq!(
        jobs(&format!("{first}{after}")),
        [""; 0],
        "one ends as the other begins"
    );
}

#[test]
fn only_open_hours_count_as_meeting() {
    let works = job("s", "\"1\"", "2027-06-01T06:00:00", "2027-06-30T17:00:00");
    let evening = |from: &str, to: &str| job("t", "\"1\"", from, to);
    assert_eq!(
        jobs(&format!(
            "{works}{}",
            evening("2027-06-05T18:00:00", "2027-06-05T23:00:00")
        )),
        [""; 0]
    );
    says(
        jobs(&format!(
            "{works}{}",
            evening("2027-06-05T16:00:00", "2027-06-05T23:00:00")
        )),
        "jobs.toml:11: job t 2027-06-05 16:00: expected trailer 1 in one place at a time, found it open at s too, from 2027-06-05 16:00 (job s 2027-06-01 06:00 on line 6)",
    );
}
