//! Antifreeze: where mixtures freeze, and the salt a brine takes.

use uom::si::f64::{Mass, ThermodynamicTemperature, Volume};

use super::super::units::{LB_PER_GAL, deg_f, in_gal, interpolate, lb, within};

/// Volume % of propylene glycol against freezing point, °F.
///
/// Source: Lange's Handbook of Chemistry, 15th ed., Table 5.13 (its minus signs from 40 % on are lost in a scan; the
/// Celsius column and the trend put them back).
const GLYCOL: [(f64, f64); 11] = [
    (0.0, 32.0),
    (5.0, 30.0),
    (10.0, 28.0),
    (15.0, 25.0),
    (20.0, 20.0),
    (25.0, 16.0),
    (30.0, 9.0),
    (35.0, 3.0),
    (40.0, -5.0),
    (45.0, -16.0),
    (50.0, -28.0),
];

/// Weight % of salt against freezing point, °F, to the eutectic.
///
/// Source: Lange's Handbook of Chemistry, 15th ed., Table 5.13; 10 to 14 % from memory (CRC Handbook).
const BRINE: [(f64, f64); 25] = [
    (0.0, 32.0),
    (1.0, 31.0),
    (2.0, 30.0),
    (3.0, 28.9),
    (4.0, 27.8),
    (5.0, 26.7),
    (6.0, 25.5),
    (7.0, 24.2),
    (8.0, 22.9),
    (9.0, 21.6),
    (10.0, 20.2),
    (11.0, 18.8),
    (12.0, 17.3),
    (13.0, 15.7),
    (14.0, 14.1),
    (15.0, 12.4),
    (16.0, 10.6),
    (17.0, 8.7),
    (18.0, 6.7),
    (19.0, 4.6),
    (20.0, 2.4),
    (21.0, 0.0),
    (22.0, -2.5),
    (23.0, -5.2),
    (23.3, -6.0),
];

/// Returns where water with `vol_pct` of propylene glycol freezes, linear between the table's rows, 0 to 50 %.
pub fn glycol_freezes(vol_pct: f64) -> ThermodynamicTemperature {
    deg_f(interpolate(&GLYCOL, vol_pct))
}

/// Returns where brine with `wt_pct` of sodium chloride freezes, linear between the table's rows, 0 to 23.3 %; more salt
/// than that does not dissolve in the cold.
pub fn brine_freezes(wt_pct: f64) -> ThermodynamicTemperature {
    deg_f(interpolate(&BRINE, wt_pct))
}

/// Returns the salt that makes `water` a brine of `wt_pct`: w·8.34·gal/(1 − w) (mass balance); 0 to 26 %.
pub fn salt_for_brine(water: Volume, wt_pct: f64) -> Mass {
    let w = within(wt_pct, 0.0, 26.0) / 100.0;
    lb(w * LB_PER_GAL * in_gal(water).max(0.0) / (1.0 - w))
}
