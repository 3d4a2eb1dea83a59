//! Checks of the rooms: heat, cooling, smell, toilets, doors.

use super::{Sought, Step, Then, bad, good, mends, reads};
use crate::finding::TaskKind;
use crate::heard::{Fault, ReadingKey};

const WASTE: Sought = Sought::Reading(ReadingKey::WastePct);
const VOLTS: Sought = Sought::Reading(ReadingKey::Volts);

pub(super) const NO_HEAT: &[Step] = &[
    good("step-circuit-live", "dead-circuit", Then::Mend),
    good("step-selector", "selector", Then::Mend),
    good("step-thermostat", "thermostat", Then::Mend),
    mends("step-heat-filter", "blocked-grille"),
    reads("step-volts", "low-volts", VOLTS, 108.0, 127.0, Then::Mend),
    good("step-doors-shut", "open-doors", Then::Mend),
    reads(
        "step-heat-amps",
        "no-amps",
        Sought::Amps,
        5.0,
        30.0,
        Then::Call(TaskKind::Electrician),
    ),
];

pub(super) const NO_COOLING: &[Step] = &[
    good("step-fan-runs", "dead-circuit", Then::Mend),
    bad("step-compressor-hums", "starved-compressor", Then::Mend),
    mends("step-cooling-filter", "iced-coil"),
    bad("step-two-ac", "two-ac", Then::Mend),
    reads(
        "step-air-difference",
        "refrigerant",
        Sought::Plain,
        12.0,
        60.0,
        Then::Call(TaskKind::Repair),
    ),
];

pub(super) const ODOR: &[Step] = &[
    bad(
        "step-strong-smell",
        "tank-gas",
        Then::Report(Fault::GasIllness),
    ),
    mends("step-trap", "dry-trap"),
    good("step-vent-fan", "vent", Then::Mend),
    reads(
        "step-waste-level",
        "full-tank",
        WASTE,
        0.0,
        74.9,
        Then::Mend,
    ),
    good("step-flapper", "flapper", Then::Mend),
    good("step-valve-cap", "cap", Then::Mend),
    mends("step-deodorizer", "dose"),
];

pub(super) const TOILET_CLOG: &[Step] = &[
    good(
        "step-one-toilet",
        "main-line",
        Then::Call(TaskKind::Plumber),
    ),
    reads(
        "step-waste-level",
        "full-tank",
        WASTE,
        0.0,
        84.9,
        Then::Mend,
    ),
    mends("step-plunger", "one-toilet"),
    mends("step-pyramid", "pyramid"),
];

pub(super) const TOILET_RUNNING: &[Step] = &[
    mends("step-flush-twice", "debris"),
    mends("step-clean-seal", "seal"),
    good(
        "step-close-stop",
        "stop-valve",
        Then::Call(TaskKind::Plumber),
    ),
];

pub(super) const LOCK_JAM: &[Step] = &[
    bad(
        "step-anyone-inside",
        "someone-inside",
        Then::Report(Fault::PersonTrapped),
    ),
    mends("step-coin-slot", "lock"),
    mends("step-hinge-pins", "door"),
];

pub(super) const PERSON_TRAPPED: &[Step] = &[
    good("step-they-answer", "no-answer", Then::Hold),
    mends("step-coin-slot", "lock"),
    mends("step-hinge-pins", "door"),
];
