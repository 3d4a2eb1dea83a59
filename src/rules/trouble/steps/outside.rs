//! Checks of the stand and the tanks: a spill, a gauge that sticks, a trailer off level.

use super::{Sought, Step, Then, good, mends, reads};
use crate::heard::{Event, ReadingKey};

pub(super) const SPILL: &[Step] = &[
    good("step-unit-closed", "people-near", Then::Hold).tells(Event::Closed),
    good("step-spill-source", "open-source", Then::Hold),
    good("step-spill-drain", "open-drain", Then::Hold),
    good("step-spill-gear", "bare-skin", Then::Hold),
    good("step-spill-up", "left-waste", Then::Hold),
    mends("step-spill-clean", "foul-ground"),
];

pub(super) const GAUGE_STUCK: &[Step] = &[
    mends("step-tap-tank", "stuck-probe"),
    reads(
        "step-look-light",
        "high-waste",
        Sought::Reading(ReadingKey::WastePct),
        0.0,
        74.9,
        super::Then::Mend,
    ),
    mends("step-rinse-probe", "coated-probe"),
];

pub(super) const NOT_LEVEL: &[Step] = &[
    reads(
        "step-slope",
        "slope",
        Sought::Reading(ReadingKey::SlopePct),
        0.0,
        2.0,
        Then::Mend,
    ),
    mends("step-blocks", "low-side"),
    mends("step-move", "bad-pad"),
];
