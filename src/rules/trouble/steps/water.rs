//! Checks of the water side: supply, pump, heater, leaks, ice.

use super::{Sought, Step, Then, bad, good, mends, reads};
use crate::finding::TaskKind;
use crate::heard::{Event, Fault, ReadingKey};

const PSI: Sought = Sought::Reading(ReadingKey::PressurePsi);
const FRESH: Sought = Sought::Reading(ReadingKey::FreshPct);

pub(super) const NO_WATER: &[Step] = &[
    good("step-supply-open", "closed-supply", Then::Mend).on_site_water(),
    reads(
        "step-static-pressure",
        "dead-supply",
        PSI,
        5.0,
        500.0,
        Then::Mend,
    )
    .on_site_water(),
    good("step-water-selector", "wrong-mode", Then::Mend),
    reads(
        "step-fresh-level",
        "empty-tank",
        FRESH,
        10.0,
        100.0,
        Then::Mend,
    )
    .on_tank(),
    good(
        "step-lights-work",
        "dead-12v",
        Then::Turn(Fault::BatteryLow),
    ),
    mends("step-pump-fuse", "pump-fuse").by(Event::FuseReplaced),
    bad("step-pump-runs-no-flow", "air-lock", Then::Mend),
    mends("step-inlet-filter", "blocked-inlet").by(Event::FilterServiced),
];

pub(super) const LOW_FLOW: &[Step] = &[
    reads(
        "step-static-pressure",
        "weak-supply",
        PSI,
        40.0,
        500.0,
        Then::Mend,
    )
    .on_site_water(),
    mends("step-inlet-filter", "blocked-inlet").by(Event::FilterServiced),
    bad("step-hose-kink", "kink", Then::Mend).on_site_water(),
    bad("step-hose-size", "thin-hose", Then::Mend).on_site_water(),
    good("step-regulator-setting", "regulator", Then::Mend).on_site_water(),
    bad("step-one-fixture", "aerator", Then::Mend),
    good("step-second-pump", "second-pump", Then::Mend).on_tank(),
];

pub(super) const PUMP_RUNNING: &[Step] = &[
    bad("step-fresh-empty", "dry-run", Then::Mend),
    bad("step-running-fixture", "running-fixture", Then::Mend),
    bad("step-leak-under", "leak", Then::Turn(Fault::Leak)),
    bad(
        "step-tank-rising",
        "check-valve",
        Then::Call(TaskKind::Plumber),
    ),
    bad(
        "step-pump-cycles",
        "small-leak",
        Then::Call(TaskKind::Plumber),
    ),
    good("step-suction-air", "suction", Then::Mend),
];

pub(super) const PUMP_DEAD: &[Step] = &[
    good(
        "step-lights-work",
        "dead-12v",
        Then::Turn(Fault::BatteryLow),
    ),
    reads(
        "step-fresh-level",
        "empty-tank",
        FRESH,
        10.0,
        100.0,
        Then::Mend,
    )
    .on_tank(),
    mends("step-pump-fuse", "pump-fuse").by(Event::FuseReplaced),
];

pub(super) const NO_HOT_WATER: &[Step] = &[
    good("step-heater-full", "dry-heater", Then::Hold),
    good("step-how-long", "not-yet-hot", Then::Mend),
    good("step-heater-circuit", "dead-circuit", Then::Mend),
    good("step-heater-switch", "heater-switch", Then::Mend),
    mends("step-high-limit", "high-limit"),
    reads(
        "step-heater-amps",
        "element",
        Sought::Amps,
        8.0,
        20.0,
        Then::Call(TaskKind::Electrician),
    ),
    good("step-bypass-valves", "bypass", Then::Mend),
];

pub(super) const LEAK: &[Step] = &[
    good("step-clean-water", "sewage", Then::Report(Fault::Spill)),
    good("step-leak-power", "wet-power", Then::Hold),
    good(
        "step-shut-supply",
        "drain-side",
        Then::Call(TaskKind::Plumber),
    ),
    reads(
        "step-static-pressure",
        "over-pressure",
        PSI,
        0.0,
        80.0,
        Then::Mend,
    )
    .on_site_water(),
    mends("step-washer", "washer"),
    bad(
        "step-frozen-last-night",
        "split",
        Then::Call(TaskKind::Plumber),
    ),
];

pub(super) const FROZEN: &[Step] = &[
    good("step-power-off-wet", "wet-power", Then::Hold),
    good("step-outlet-clear", "ice-plug", Then::Mend),
    good("step-open-tap", "shut-tap", Then::Hold),
    good("step-warm-air", "not-thawed", Then::Hold),
    bad("step-splits", "split", Then::Call(TaskKind::Plumber)),
    mends("step-flows-again", "still-frozen"),
];
