//! Antifreeze: where mixtures freeze, and the salt a brine takes.

use uom::si::f64::{Mass, ThermodynamicTemperature, Volume};

use super::super::units::{LB_PER_GAL, deg_f, in_gal, interpolate, lb, within};

/// Volume % of propylene glycol against freezing point, °F.
///
/// Source: Lange's Handbook of Chemistry Table 5.13 for 20, 30, 35 and 50 %; 10 and 40 % from memory.
const GLYCOL: [(f64, f64); 7] = [
    (0.0, 32.0),
    (10.0, 26.0),
    (20.0, 20.0),
    (30.0, 9.0),
    (35.0, 3.0),
    (40.0, -6.0),
    (50.0, -28.0),
];

/// Weight % of salt against freezing point, °F, to the eutectic.
///
/// Source: Lange's Handbook of Chemistry Table 5.13 for 5, 15, 20 and 23.3 %; 10 % from memory (CRC Handbook).
const BRINE: [(f64, f64); 6] = [
    (0.0, 32.0),
    (5.0, 26.7),
    (10.0, 20.2),
    (15.0, 12.4),
    (20.0, 2.4),
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
