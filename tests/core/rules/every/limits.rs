//! Findings that a number or what was done before brings up: at the limit, and just inside it. What follows from each, and
//! where its limit comes from, stands with the tests of its topic.

use hosebib::finding::FindingId as Id;
use hosebib::heard::{Event, ReadingKey as R};

use super::super::support::{Found, Said, Unit, said, unit};

/// A finding, a case in which it fires, and the nearest in which it does not.
pub(super) struct Row {
    pub(super) id: Id,
    pub(super) fires: fn() -> Found,
    pub(super) near: fn() -> Found,
}

/// Returns the rows of every topic.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    [WATER, WASTE, WEATHER, POWER, STAND, TOW]
        .into_iter()
        .flatten()
}

const fn row(id: Id, fires: fn() -> Found, near: fn() -> Found) -> Row {
    Row { id, fires, near }
}

const DAY: &str = "2027-05-29 14:00";

/// One reading of trailer 12 on a day of its job.
fn reads(key: R, value: f64) -> Found {
    unit("12").hears(DAY, said().read(key, value))
}

const WATER: &[Row] = &[
    row(
        Id::WaterOverPressure,
        || reads(R::PressurePsi, 60.1),
        || reads(R::PressurePsi, 60.0),
    ),
    row(
        Id::WaterUnderPressure,
        || reads(R::PressurePsi, 39.9),
        || reads(R::PressurePsi, 40.0),
    ),
    row(
        Id::WaterPressureFalling,
        || falls_to(45.0),
        || falls_to(45.1),
    ),
    row(Id::WaterHoseUndersized, || hose(95.0), || hose(90.0)),
    // how much is left sets the urgency; without its own tank as source there is nothing to run out
    row(
        Id::WaterFreshEndurance,
        || unit("21").hears("2027-07-24 16:00", said().read(R::FreshPct, 8.0)),
        || {
            unit("14").hears(
                "2027-05-15 13:00",
                said().did(Event::WaterOn).read(R::FreshPct, 8.0),
            )
        },
    ),
    row(
        Id::WaterBackflow,
        || reads(R::PressurePsi, 19.9),
        || reads(R::PressurePsi, 20.0),
    ),
];

fn falls_to(psi: f64) -> Found {
    unit("12")
        .after(DAY, said().read(R::PressurePsi, 55.0))
        .hears("2027-05-29 17:05", said().read(R::PressurePsi, psi))
}

/// A hose of 3/4 in at 55 psi, for 15 gpm.
fn hose(feet: f64) -> Found {
    let on = said().did(Event::WaterOn).read(R::PressurePsi, 55.0);
    unit("12").hears("2027-05-29 11:00", on.read(R::HoseFt, feet))
}

const WASTE: &[Row] = &[
    row(Id::WasteBookPumpOut, || film_set(50.0), || film_set(49.9)),
    row(
        Id::WasteCloseNow,
        || reads(R::WasteGal, 425.0),
        || reads(R::WasteGal, 424.9),
    ),
    // two steps of its gauge, and one
    row(
        Id::WasteDroppedUnexplained,
        || drops_to(50.0),
        || drops_to(62.5),
    ),
    // over a quarter, and a quarter
    row(
        Id::WasteGaugeDoubtful,
        || pumped_to(37.5),
        || pumped_to(25.0),
    ),
];

/// Trailer 9, which nobody hurries.
fn film_set(pct: f64) -> Found {
    unit("9").hears("2027-05-03 06:00", said().read(R::WasteGal, 3.0 * pct))
}

fn drops_to(pct: f64) -> Found {
    unit("12")
        .after("2027-05-29 16:00", said().read(R::WastePct, 75.0))
        .hears("2027-05-29 17:00", said().read(R::WastePct, pct))
}

fn pumped_to(pct: f64) -> Found {
    let pumped = said().did(Event::WastePumped).read(R::PumpedGal, 420.0);
    unit("12")
        .after("2027-05-29 17:30", pumped)
        .hears("2027-05-29 17:40", said().read(R::WastePct, pct))
}

const WEATHER: &[Row] = &[
    row(
        Id::ColdFreezeSoon,
        || winter("12", 40.0),
        || winter("12", 40.1),
    ),
    row(
        Id::ColdTankHeaterOn,
        || winter("12", 32.0),
        || winter("12", 32.1),
    ),
    row(
        Id::ColdNoColdPackage,
        || winter("7", 40.0),
        || winter("7", 40.1),
    ),
    row(Id::ColdWinterize, || winter("7", 0.0), || winter("7", 0.1)),
    row(Id::ColdCrewCold, || chilled(36.1), || chilled(36.2)),
    row(Id::HeatCrewHeat, || summer(80.0), || summer(79.9)),
];

fn winter(name: &str, air: f64) -> Found {
    unit(name).hears("2027-01-16 17:10", said().read(R::AirF, air))
}

/// A wind of 5 mph, beside which 36 °F feel like 32.
fn chilled(air: f64) -> Found {
    let cold = said().read(R::AirF, air).read(R::WindMph, 5.0);
    unit("21").hears("2027-02-06 09:00", cold)
}

fn summer(air: f64) -> Found {
    let hot = said().read(R::AirF, air).read(R::HumidityPct, 50.0);
    unit("18").hears("2027-08-07 13:00", hot)
}

const POWER: &[Row] = &[
    row(
        Id::PowerLowVoltage,
        || reads(R::Volts, 107.9),
        || reads(R::Volts, 108.0),
    ),
    row(
        Id::PowerHighVoltage,
        || reads(R::Volts, 126.1),
        || reads(R::Volts, 126.0),
    ),
    row(Id::PowerOverCurrent, || amps(4, 16.1), || amps(4, 16.0)),
    row(Id::PowerCordDrop, || cord(92.0), || cord(90.0)),
    row(
        Id::PowerCordOverloaded,
        || thin_cord(18.1),
        || thin_cord(18.0),
    ),
    // the cold package wants a circuit more from 40 °F
    row(
        Id::PowerTooFewCircuits,
        || three_cords(40.0),
        || three_cords(40.1),
    ),
    row(Id::PowerSharedCircuit, || amps(1, 16.1), || amps(1, 16.0)),
    // circuit 2 feeds the converter
    row(Id::PowerOnBattery, || live(&[1, 3]), || live(&[2, 3])),
    row(Id::PowerBatteryLow, || battery(12.44), || battery(12.45)),
    row(
        Id::PowerGenerator,
        || generator(6959.0),
        || generator(6960.0),
    ),
];

fn amps(circuit: u8, amps: f64) -> Found {
    unit("12").hears(DAY, said().amps(circuit, amps))
}

fn cord(feet: f64) -> Found {
    let on = said().did(Event::PowerOn).read(R::CordFt, feet);
    unit("12").hears(DAY, on)
}

/// The film set's cords are of 14 AWG.
fn thin_cord(amps: f64) -> Found {
    unit("9").hears("2027-05-03 06:10", said().amps(2, amps))
}

fn three_cords(air: f64) -> Found {
    let told = said().read(R::Cords, 3.0).read(R::AirF, air);
    unit("12").hears("2027-01-16 10:00", told)
}

fn live(circuits: &[u8]) -> Found {
    unit("12").hears(DAY, said().live(circuits))
}

fn battery(volts: f64) -> Found {
    unit("21").hears("2027-07-24 12:00", said().read(R::BatteryV, volts))
}

/// Trailer 18 needs about 6,960 W to start an AC.
fn generator(watts: f64) -> Found {
    let fair = unit("18").with(|fleet| {
        let site = fleet.sites.get_mut("pellbrook-fair").expect("the fair");
        site.power.generator_w = Some(watts);
        site.altitude_ft = 0.0;
    });
    let on = said().did(Event::PowerOn).read(R::Cords, 3.0);
    fair.hears("2027-07-10 08:20", on)
}

const STAND: &[Row] = &[
    row(Id::CrowdUnderServed, || guests(421.0), || guests(420.0)),
    row(Id::SiteNotLevel, || slope(2.1), || slope(2.0)),
    row(
        Id::SiteNotChocked,
        || unhitched(said()),
        || unhitched(said().did(Event::Chocked)),
    ),
    row(
        Id::SiteSetUpNext,
        || unit("12").hears("2027-05-29 10:10", said().did(Event::Arrived)),
        || {
            unit("12").hears(
                "2027-05-29 10:10",
                said().did(Event::Arrived).did(Event::InService),
            )
        },
    ),
    row(
        Id::SiteWind,
        || reads(R::WindMph, 30.0),
        || reads(R::WindMph, 29.9),
    ),
    // four hours without a word
    row(
        Id::CrewLateCheckIn,
        || silent_until("18:00"),
        || silent_until("17:59"),
    ),
];

fn guests(count: f64) -> Found {
    unit("9").hears("2027-06-05 13:00", said().read(R::Guests, count))
}

fn slope(pct: f64) -> Found {
    unit("9").hears("2027-06-05 10:30", said().read(R::SlopePct, pct))
}

fn unhitched(before: Said) -> Found {
    unit("12")
        .after("2027-05-29 10:20", before)
        .hears("2027-05-29 10:30", said().did(Event::Unhitched))
}

fn silent_until(time: &str) -> Found {
    unit("12")
        .after("2027-05-29 14:00", said().did(Event::InService))
        .ticks(&format!("2027-05-29 {time}"))
}

const TOW: &[Row] = &[
    // 5 % of 300 gal
    row(
        Id::TowWasteAboard,
        || hitched(packed(), R::WasteGal, 15.1),
        || hitched(packed(), R::WasteGal, 15.0),
    ),
    row(
        Id::TowFreshAboard,
        || hitched(packed(), R::FreshPct, 5.1),
        || hitched(packed(), R::FreshPct, 5.0),
    ),
    // 690 lb to spare are 82.7 gal
    row(
        Id::TowOverweight,
        || hitched(packed(), R::WasteGal, 82.8),
        || hitched(packed(), R::WasteGal, 82.7),
    ),
    // all but the power, and all of it
    row(
        Id::TowNotReady,
        || {
            hitched(
                emptied().after("2027-06-05 22:40", said().did(Event::Stowed)),
                R::WasteGal,
                0.0,
            )
        },
        || hitched(packed(), R::WasteGal, 0.0),
    ),
];

fn emptied() -> Unit {
    unit("9")
        .after("2027-06-05 11:30", said().did(Event::InService))
        .after("2027-06-05 22:05", said().did(Event::Closed))
        .after("2027-06-05 22:20", said().did(Event::WastePumped))
        .after("2027-06-05 22:31", said().did(Event::FreshDrained))
        .after(
            "2027-06-05 22:35",
            said().did(Event::WaterOff).did(Event::HeaterOff),
        )
}

fn packed() -> Unit {
    let rest = said().did(Event::PowerOff).did(Event::Stowed);
    emptied().after("2027-06-05 22:40", rest)
}

fn hitched(unit: Unit, key: R, value: f64) -> Found {
    unit.hears(
        "2027-06-05 22:50",
        said().did(Event::Hitched).read(key, value),
    )
}
