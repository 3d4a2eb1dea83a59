//! Checks of the electrical side, 120 V and 12 V.

use super::{Sought, Step, Then, bad, good, mends, reads};
use crate::finding::TaskKind;
use crate::heard::{Event, Fault, ReadingKey};

pub(super) const SHOCK: &[Step] = &[
    good("step-power-off-source", "live-metal", Then::Hold).tells(Event::PowerOff),
    bad(
        "step-person-hurt",
        "person-hurt",
        Then::Report(Fault::PersonHurt),
    ),
    good("step-unit-closed", "people-near", Then::Hold).tells(Event::Closed),
];

pub(super) const NO_LIGHTS: &[Step] = &[
    good("step-other-room", "dead-12v", Then::Turn(Fault::BatteryLow)),
    bad("step-one-lamp", "dead-lamp", Then::Mend),
    mends("step-motion-switch", "light-switch"),
    mends("step-room-fuse", "room-fuse").by(Event::FuseReplaced),
    bad(
        "step-fuse-again",
        "short",
        Then::Call(TaskKind::Electrician),
    ),
    mends("step-connector", "connector"),
];

/// Lights that flicker: mains that flicker too are a lost neutral, else the 12 V side is low or loose.
pub(super) const FLICKER: &[Step] = &[
    bad(
        "step-mains-flicker",
        "loose-neutral",
        Then::Call(TaskKind::Electrician),
    )
    .asks_for_danger(),
    reads(
        "step-battery-volts",
        "low-battery",
        Sought::Reading(ReadingKey::BatteryV),
        12.1,
        15.0,
        Then::Mend,
    ),
    mends("step-ground-screw", "loose-ground"),
    mends("step-lamp-socket", "bad-socket"),
];

pub(super) const FUSE_BLOWN: &[Step] = &[
    mends("step-room-fuse", "room-fuse").by(Event::FuseReplaced),
    bad(
        "step-fuse-again",
        "short",
        Then::Call(TaskKind::Electrician),
    ),
];

pub(super) const NO_POWER: &[Step] = &[
    bad("step-others-dark", "wide-outage", Then::Over),
    good("step-site-breaker", "dead-breaker", Then::Mend),
    good("step-cord-seated", "loose-cord", Then::Mend),
    mends("step-site-gfci", "tripped-gfci")
        .by(Event::BreakerReset)
        .resets(),
    reads(
        "step-outlet-volts",
        "dead-outlet",
        Sought::Reading(ReadingKey::Volts),
        104.0,
        132.0,
        Then::Call(TaskKind::Electrician),
    ),
];

pub(super) const BATTERY_LOW: &[Step] = &[
    good("step-battery-switch", "battery-switch", Then::Mend),
    reads(
        "step-battery-volts",
        "flat-battery",
        Sought::Reading(ReadingKey::BatteryV),
        11.9,
        15.0,
        Then::Mend,
    ),
    good("step-main-fuse", "main-fuse", Then::Mend),
    good("step-converter-circuit", "unfed-converter", Then::Mend),
    good(
        "step-converter-hum",
        "dead-converter",
        Then::Call(TaskKind::Repair),
    ),
    mends("step-terminals", "terminals"),
];

pub(super) const GFCI_TRIP: &[Step] = &[
    good(
        "step-unplug-all",
        "bad-gfci",
        Then::Call(TaskKind::Electrician),
    )
    .resets(),
    bad("step-wet-plug", "wet-plug", Then::Mend),
    bad("step-two-cords-one-gfci", "two-cords", Then::Mend),
    bad(
        "step-plug-back",
        "faulty-circuit",
        Then::Call(TaskKind::Electrician),
    ),
    mends("step-holds-now", "second-trip").resets(),
];

pub(super) const BREAKER_TRIP: &[Step] = &[
    bad(
        "step-trips-at-once",
        "short",
        Then::Call(TaskKind::Electrician),
    )
    .resets(),
    reads(
        "step-add-amps",
        "overload",
        Sought::Amps,
        0.0,
        16.0,
        Then::Mend,
    ),
    bad("step-on-start", "starved-compressor", Then::Mend),
    bad("step-after-hours", "long-load", Then::Mend),
    bad("step-shared-breaker", "shared-breaker", Then::Mend),
    mends("step-holds-now", "second-trip").resets(),
];
