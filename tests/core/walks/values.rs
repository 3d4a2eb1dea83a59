//! Values of setting up and leaving as crews text them: taken for the trailer at hand, and for nothing else.

use hosebib::heard::{Event, ReadingKey, UnitName};

use super::Crew;

/// The messages before, the message, the readings and events that it is to leave on trailer 12.
type Row = (
    &'static [&'static str],
    &'static str,
    &'static [(ReadingKey, f64)],
    &'static [Event],
);

use Event::{
    Arrived, Chocked, FreshDrained, JacksDown, Leveled, PowerOn, RegulatorFitted, Unhitched,
    WastePumped, WaterOn,
};
use ReadingKey::{Cords, PressurePsi, PumpedGal, SlopePct, Volts};

const STANDS: &[&str] = &["12 arrived", "leveled, chocked, unhitched, jacks down"];
const FED: &[&str] = &[
    "12 arrived",
    "leveled, chocked, unhitched, jacks down",
    "power on",
    "118",
];
const HITCHED: &[&str] = &["12 in service", "12 closed", "12 hitched"];

const ROWS: &[Row] = &[
    // all in the first message
    (
        &[],
        "12 arrived, leveled and chocked, 4 cords, 118v, water 52",
        &[(Cords, 4.0), (Volts, 118.0), (PressurePsi, 52.0)],
        &[Arrived, Leveled, Chocked],
    ),
    (
        &[],
        "12 llegué, nivelada y calzada, 4 cables, 118v, agua 52",
        &[(Cords, 4.0), (Volts, 118.0), (PressurePsi, 52.0)],
        &[Arrived, Leveled, Chocked],
    ),
    (
        &[],
        "12 on site. level 0.5%. chocked. 2 cords circuit 2 first, 119",
        &[(SlopePct, 0.5), (Cords, 2.0), (Volts, 119.0)],
        &[Arrived, Chocked],
    ),
    // at a step
    (&["12 arrived"], "level 0.5%", &[(SlopePct, 0.5)], &[]),
    (&["12 arrived"], "nivel 0.5%", &[(SlopePct, 0.5)], &[]),
    (
        &["12 arrived"],
        "leveled 0.5, chocked both sides",
        &[(SlopePct, 0.5)],
        &[Leveled, Chocked],
    ),
    (
        STANDS,
        "power on 4 cords 121 volts",
        &[(Cords, 4.0), (Volts, 121.0)],
        &[PowerOn],
    ),
    (
        STANDS,
        "2 cords circuit 2 first, 119",
        &[(Cords, 2.0), (Volts, 119.0)],
        &[],
    ),
    (STANDS, "dos cables", &[(Cords, 2.0)], &[]),
    (
        STANDS,
        "conectada, 4 cables, 121",
        &[(Cords, 4.0), (Volts, 121.0)],
        &[],
    ),
    (STANDS, "power on 121", &[(Volts, 121.0)], &[PowerOn]),
    (
        STANDS,
        "4 cords, 118, water 52",
        &[(Cords, 4.0), (Volts, 118.0), (PressurePsi, 52.0)],
        &[],
    ),
    (FED, "52 static", &[(PressurePsi, 52.0)], &[]),
    (FED, "52 estática", &[(PressurePsi, 52.0)], &[]),
    (FED, "water on 55", &[(PressurePsi, 55.0)], &[WaterOn]),
    (FED, "agua 52", &[(PressurePsi, 52.0)], &[]),
    (
        FED,
        "regulator 45, 52 static",
        &[(PressurePsi, 52.0)],
        &[RegulatorFitted],
    ),
    (
        FED,
        "regulador 45 y agua 52",
        &[(PressurePsi, 52.0)],
        &[RegulatorFitted],
    ),
    (&["12 arrived"], "level 1", &[(SlopePct, 1.0)], &[]),
    // in any order
    (
        &["12 arrived"],
        "water 52, 118 volts, 4 cords, jacks down, unhitched, chocked, leveled",
        &[(PressurePsi, 52.0), (Volts, 118.0), (Cords, 4.0)],
        &[JacksDown, Unhitched, Chocked, Leveled],
    ),
    (
        HITCHED,
        "pumped 300, fresh drained",
        &[(PumpedGal, 300.0)],
        &[WastePumped, FreshDrained],
    ),
    (
        HITCHED,
        "vaciada 300, limpias drenadas",
        &[(PumpedGal, 300.0)],
        &[WastePumped, FreshDrained],
    ),
];

/// Messages in a walk of 12 that leave no value on it: of another trailer, a time, a count, a plan, a question.
const NOT_OF_12: &[(&[&str], &str)] = &[
    (FED, "16 water 52 psi"),
    (FED, "4 power on 118 volts"),
    (FED, "unit 16 static 52"),
    (FED, "water 52 psi on 16"),
    (FED, "la 16 agua 52 psi"),
    (FED, "water on at 9"),
    (FED, "flushed 18 stalls, water good"),
    (FED, "water should be 52?"),
    (FED, "will have water at 45 soon"),
    // its own name is no slope
    (&["12 arrived"], "packing up 12"),
    (&["12 arrived"], "im still by the barn beside 12"),
    (&["12 arrived"], "done here with 16"),
    (STANDS, "power guy comes in 90 minutes"),
    (HITCHED, "pump truck took 45 minutes"),
];

impl Crew {
    /// Returns the values on trailer 12 of those kinds that a walk asks for.
    fn values(&self) -> Vec<(ReadingKey, f64)> {
        let Some(kept) = self.desk.book().unit(&UnitName::new("12")) else {
            return Vec::new();
        };
        let state = kept.state();
        let keys = [PressurePsi, Volts, SlopePct, Cords, PumpedGal];
        let read = |key| match key {
            PressurePsi => state.pressures.last().map(|read| read.psi),
            key => state.value(key),
        };
        keys.into_iter()
            .filter_map(|key| Some((key, read(key)?)))
            .collect()
    }
}

#[test]
fn a_value_is_taken_for_the_trailer_that_is_set_up_or_leaves() {
    let mut wrong = Vec::new();
    for (before, text, values, events) in ROWS {
        let mut crew = Crew::new(false);
        for said in *before {
            crew.hears("tobin", said);
        }
        let told = crew.hears("tobin", text);
        let kept = crew
            .desk
            .book()
            .unit(&UnitName::new("12"))
            .expect("a trailer of the demo");
        for value in *values {
            if !crew.values().contains(value) {
                wrong.push(format!("{text:?} leaves no {value:?}: {told}"));
            }
        }
        let now = crew.now;
        for event in *events {
            if kept.state().when(*event) != Some(now) {
                wrong.push(format!("{text:?} reports no {event}: {told}"));
            }
        }
        if told.contains("no unit") || told.contains("Not logged") || told.contains("No hay unidad")
        {
            wrong.push(format!("{text:?} is not understood: {told}"));
        }
    }
    super::none_is(&wrong, ROWS.len());
}

#[test]
fn what_is_of_another_trailer_a_time_or_a_count_leaves_no_value() {
    let mut wrong = Vec::new();
    for (before, text) in NOT_OF_12 {
        let mut crew = Crew::new(false);
        for said in *before {
            crew.hears("tobin", said);
        }
        let values = crew.values();
        let told = crew.hears("tobin", text);
        if crew.values() != values {
            wrong.push(format!("{text:?}: {told}"));
        }
    }
    super::none_is(&wrong, NOT_OF_12.len());
}
