//! Voltage at the trailer: which band a reading is in, and what a lost neutral does.

use uom::si::f64::{ElectricPotential, ElectricalResistance};

use super::super::units::{in_ohms, in_volts, volts};

/// Least distance of a running generator from doors, windows and vents, ft (CPSC portable generator safety alert).
pub const GENERATOR_DISTANCE_FT: f64 = 20.0;
/// Voltage above which an open neutral is suspected, V (common practice: outside every band of ANSI C84.1).
pub const OPEN_NEUTRAL_V: f64 = 132.0;

/// Where a 120 V reading at the point of use lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum VoltageBand {
    /// Under 104 V.
    BelowRangeB,
    /// 104 to under 108 V.
    RangeBLow,
    /// 108 to 126 V.
    RangeA,
    /// Over 126 to 127 V.
    RangeBHigh,
    /// Over 127 V.
    AboveRangeB,
}

impl VoltageBand {
    /// Returns its code.
    pub fn code(self) -> &'static str {
        match self {
            VoltageBand::BelowRangeB => "below-range-b",
            VoltageBand::RangeBLow => "range-b-low",
            VoltageBand::RangeA => "range-a",
            VoltageBand::RangeBHigh => "range-b-high",
            VoltageBand::AboveRangeB => "above-range-b",
        }
    }
}

/// Returns the band a voltage at the trailer lies in.
///
/// Source: ANSI C84.1, utilization voltage, 2016 on (from memory). A reading should be taken under load.
pub fn voltage_band(reading: ElectricPotential) -> VoltageBand {
    let v = in_volts(reading);
    if v < 104.0 {
        VoltageBand::BelowRangeB
    } else if v < 108.0 {
        VoltageBand::RangeBLow
    } else if v <= 126.0 {
        VoltageBand::RangeA
    } else if v <= 127.0 {
        VoltageBand::RangeBHigh
    } else {
        VoltageBand::AboveRangeB
    }
}

/// Returns the share of its rated power that a resistive load gives at `actual` volts: (V/V_rated)². Zero where `rated`
/// is not positive.
pub fn resistive_power_fraction(actual: ElectricPotential, rated: ElectricPotential) -> f64 {
    let rated = in_volts(rated);
    if rated > 0.0 {
        (in_volts(actual) / rated).powi(2)
    } else {
        0.0
    }
}

/// Returns the voltage on load `a` when the neutral between two legs is lost: line·R_a/(R_a + R_b).
///
/// Series divider; zero where both resistances are.
pub fn open_neutral_leg(
    line: ElectricPotential,
    a: ElectricalResistance,
    b: ElectricalResistance,
) -> ElectricPotential {
    let (a, b) = (in_ohms(a).max(0.0), in_ohms(b).max(0.0));
    if a + b > 0.0 {
        volts(in_volts(line) * a / (a + b))
    } else {
        volts(0.0)
    }
}
