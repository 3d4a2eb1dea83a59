//! Conductors: resistance, voltage lost in a cord, and what a cord may carry.

use uom::si::f64::{ElectricCurrent, ElectricPotential, Length};

use super::super::units::{amps, ft, in_amps, in_ft, in_volts, volts, within};

/// What a conductor is made of.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Material {
    /// Copper.
    #[default]
    Copper,
    /// Aluminium.
    Aluminium,
}

/// How a conductor is built.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Strand {
    /// Stranded, uncoated: a flexible cord.
    #[default]
    Stranded,
    /// Stranded, tinned (copper only).
    StrandedCoated,
    /// Solid, uncoated.
    Solid,
    /// Solid, tinned (copper only).
    SolidCoated,
}

/// A conductor of a given gauge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conductor {
    /// American wire gauge.
    pub awg: u32,
    /// Its metal.
    pub material: Material,
    /// Its build.
    pub strand: Strand,
    /// Its temperature, °C.
    pub celsius: f64,
}

impl Conductor {
    /// Makes the conductor of a flexible cord: stranded uncoated copper at 75 °C.
    pub fn cord(awg: u32) -> Self {
        Conductor {
            awg,
            material: Material::Copper,
            strand: Strand::Stranded,
            celsius: 75.0,
        }
    }
}

/// Ohms for 1,000 ft at 75 °C, direct current: AWG, then copper stranded, stranded coated, solid, solid coated, then
/// aluminium stranded, solid. Zero where the table has none.
///
/// Source: NEC (NFPA 70) Chapter 9 Table 8; uncoated copper and aluminium seen in reproductions, coated copper and the
/// other aluminium from memory.
#[expect(
    clippy::approx_constant,
    reason = "3.14 ohm is a table's figure, not pi"
)]
const TABLE_8: [(u32, [f64; 6]); 10] = [
    (18, [7.95, 8.45, 7.77, 8.08, 13.1, 12.8]),
    (16, [4.99, 5.29, 4.89, 5.08, 8.21, 8.05]),
    (14, [3.14, 3.26, 3.07, 3.19, 5.17, 5.06]),
    (12, [1.98, 2.05, 1.93, 2.01, 3.25, 3.18]),
    (10, [1.24, 1.29, 1.21, 1.26, 2.04, 2.00]),
    (8, [0.778, 0.809, 0.764, 0.786, 1.28, 1.26]),
    (6, [0.491, 0.510, 0.0, 0.0, 0.808, 0.0]),
    (4, [0.308, 0.321, 0.0, 0.0, 0.508, 0.0]),
    (3, [0.245, 0.254, 0.0, 0.0, 0.403, 0.0]),
    (2, [0.194, 0.201, 0.0, 0.0, 0.319, 0.0]),
];

/// Returns a conductor's resistance in ohms for 1,000 ft, one way; none for a gauge or build the table has not got.
///
/// Source: NEC Chapter 9 Table 8, brought from 75 °C by its note R₂ = R₁·[1 + α(T₂ − 75)], α 0.00323 copper, 0.00330
/// aluminium. Temperatures are held to −60..250 °C.
pub fn ohm_per_kft(conductor: Conductor) -> Option<f64> {
    let (_, row) = TABLE_8.iter().find(|(awg, _)| *awg == conductor.awg)?;
    let (column, alpha) = match (conductor.material, conductor.strand) {
        (Material::Copper, Strand::Stranded) => (0, 0.003_23),
        (Material::Copper, Strand::StrandedCoated) => (1, 0.003_23),
        (Material::Copper, Strand::Solid) => (2, 0.003_23),
        (Material::Copper, Strand::SolidCoated) => (3, 0.003_23),
        (Material::Aluminium, Strand::Stranded) => (4, 0.003_30),
        (Material::Aluminium, Strand::Solid) => (5, 0.003_30),
        (Material::Aluminium, _) => return None,
    };
    let at_75 = row[column];
    let celsius = within(conductor.celsius, -60.0, 250.0);
    (at_75 > 0.0).then_some(at_75 * (1.0 + alpha * (celsius - 75.0)))
}

/// Returns the voltage lost in a cord, out and back: 2·L·I·R/1000; none for a gauge outside 18 to 2 AWG.
///
/// Source: Ohm's law with NEC Chapter 9 Table 8 at 75 °C; a cold cord loses less.
pub fn cord_drop(current: ElectricCurrent, one_way: Length, awg: u32) -> Option<ElectricPotential> {
    let r = ohm_per_kft(Conductor::cord(awg))?;
    Some(volts(
        2.0 * in_ft(one_way).max(0.0) * in_amps(current).max(0.0) * r / 1000.0,
    ))
}

/// Returns the voltage lost in a cord in % of `supply`; none as [`cord_drop`], or without a supply.
///
/// NEC 210.19(A) informational note advises at most 3 % in a branch and 5 % in all; that is advice, not law.
pub fn cord_drop_pct(
    current: ElectricCurrent,
    one_way: Length,
    awg: u32,
    supply: ElectricPotential,
) -> Option<f64> {
    let supply = in_volts(supply);
    let drop = in_volts(cord_drop(current, one_way, awg)?);
    (supply > 0.0).then(|| 100.0 * drop / supply)
}

/// Returns the voltage to expect at the far end of a cord: the supply less [`cord_drop`], not below zero; none as there.
pub fn cord_end_voltage(
    supply: ElectricPotential,
    current: ElectricCurrent,
    one_way: Length,
    awg: u32,
) -> Option<ElectricPotential> {
    let left = in_volts(supply) - in_volts(cord_drop(current, one_way, awg)?);
    Some(volts(left.max(0.0)))
}

/// Returns the longest cord that loses no more than `pct` of `supply` at `current`; none as [`cord_drop`], or where no
/// current flows.
///
/// Source: [`cord_drop`] solved for the length.
pub fn max_cord_length(
    current: ElectricCurrent,
    awg: u32,
    pct: f64,
    supply: ElectricPotential,
) -> Option<Length> {
    let r = ohm_per_kft(Conductor::cord(awg))?;
    let current = in_amps(current);
    (current > 0.0).then(|| {
        ft(pct.max(0.0) / 100.0 * in_volts(supply).max(0.0) * 1000.0 / (2.0 * current * r))
    })
}

/// Flexible-cord ampacity, A: AWG, with three current-carrying conductors (column A), with two (column B).
///
/// Source: NEC Table 400.5(A)(1); column B 18 to 12 seen, the rest from memory.
const CORD_AMPACITY: [(u32, f64, f64); 9] = [
    (18, 7.0, 10.0),
    (16, 10.0, 13.0),
    (14, 15.0, 18.0),
    (12, 20.0, 25.0),
    (10, 25.0, 30.0),
    (8, 35.0, 40.0),
    (6, 45.0, 55.0),
    (4, 60.0, 70.0),
    (2, 80.0, 95.0),
];

/// Returns what a flexible cord may carry, by its current-carrying conductors (one or two: column B; three: column A;
/// more: column A derated as NEC Table 400.5(A)(3)); none for a gauge the table has not got.
///
/// A cord may carry more than the plug, outlet or breaker at its ends: the least of them rules.
pub fn cord_ampacity(awg: u32, current_carrying: u32) -> Option<ElectricCurrent> {
    let (_, three, two) = CORD_AMPACITY.iter().find(|(gauge, ..)| *gauge == awg)?;
    let allowed = match current_carrying {
        0..=2 => *two,
        3 => *three,
        4..=6 => three * 0.8,
        7..=9 => three * 0.7,
        _ => three * 0.5,
    };
    Some(amps(allowed))
}
