//! Towing and setting up: weights, tongue, tires, slopes, and what stands on the ground.

use uom::si::f64::{Area, Force, Length, Mass, Pressure, ThermodynamicTemperature, Volume};

use super::tank::liquid_weight;
use super::units::{in_deg_f, in_inch, in_lb, in_psi, in2, inch, lb, lbf, psi, within};

/// Minutes that breakaway brakes must hold (49 CFR 393.43(d); the figure from memory).
pub const BREAKAWAY_MIN: f64 = 15.0;
/// Steepest cross slope of an accessible ramp, % (2010 ADA Standards 405.3, 1:48).
pub const CROSS_SLOPE_MAX_PCT: f64 = 100.0 / 48.0;
/// Run for each unit of rise of an accessible ramp (2010 ADA Standards 405.2, 1:12).
pub const RAMP_RUN: f64 = 12.0;
/// Feet of water in one inch of mercury of vacuum.
pub const FT_WATER_PER_INHG: f64 = 1.133;
/// Tongue weight as a share of gross trailer weight, % (tow guides; less sways, more lifts the steering axle).
pub const TONGUE_PCT: (f64, f64) = (10.0, 15.0);

/// Returns how much a trailer with `liquid` aboard is over its rating; negative is spare.
pub fn over_gvwr(empty: Mass, liquid: Volume, gvwr: Mass) -> Mass {
    empty + liquid_weight(liquid) - gvwr
}

/// A weight and where it sits, measured back from the coupler.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Item {
    /// Its weight.
    pub weight: Mass,
    /// Distance behind the coupler.
    pub behind: Length,
}

/// Returns the tongue weight that items make about an axle group `axle` behind the coupler: Σw·(axle − x)/axle (moments).
/// What sits behind the axle unloads the tongue; zero where the axle is at the coupler.
pub fn tongue_weight(axle: Length, items: &[Item]) -> Mass {
    let axle = in_inch(axle);
    if axle <= 0.0 {
        return lb(0.0);
    }
    lb(items
        .iter()
        .map(|item| in_lb(item.weight) * (axle - in_inch(item.behind)) / axle)
        .sum())
}

/// Returns the tongue weight in % of gross; zero for no weight. Under 10 % sways, under 8 % do not tow.
pub fn tongue_pct(gross: Mass, tongue: Mass) -> f64 {
    let gross = in_lb(gross);
    if gross > 0.0 {
        100.0 * in_lb(tongue) / gross
    } else {
        0.0
    }
}

/// Returns the tongue weights that suit a gross weight, 10 to 15 % of it (tow guides).
pub fn tongue_range(gross: Mass) -> (Mass, Mass) {
    let gross = in_lb(gross).max(0.0);
    (
        lb(gross * TONGUE_PCT.0 / 100.0),
        lb(gross * TONGUE_PCT.1 / 100.0),
    )
}

/// Returns a tire's gauge pressure after a change of temperature: (P₁ + 14.696)·T₂/T₁ − 14.696, T from absolute zero.
///
/// Source: gas law at constant volume, at sea level. Temperatures are held above −400 °F.
pub fn tire_after(
    cold: Pressure,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
) -> Pressure {
    const ATMOSPHERE: f64 = 14.696;
    let rankine = |t| in_deg_f(t).max(-400.0) + 459.67;
    psi((in_psi(cold) + ATMOSPHERE) * rankine(to) / rankine(from) - ATMOSPHERE)
}

/// Returns the force that rolls a weight down a grade: W·sin(atan(grade)).
pub fn downhill_force(weight: Mass, grade_pct: f64) -> Force {
    lbf(in_lb(weight) * (grade_pct / 100.0).atan().sin())
}

/// Returns how high the low side must be blocked: track · slope (geometry).
pub fn block_height(track: Length, slope_pct: f64) -> Length {
    inch(in_inch(track).max(0.0) * slope_pct.abs() / 100.0)
}

/// Returns the pad under a jack: load over what the soil bears, `soil_psf` in lb/ft² (IBC Table 1806.2: clay 1,500, sand
/// 2,000, from memory). The soil is held to at least 1 lb/ft².
pub fn jack_pad(load: Mass, soil_psf: f64) -> Area {
    in2(in_lb(load).max(0.0) / soil_psf.max(1.0) * 144.0)
}

/// Returns the run of an accessible ramp for a rise, 1:12 (2010 ADA Standards 405.2).
pub fn ramp_run(rise: Length) -> Length {
    rise * RAMP_RUN
}

/// Returns the height to which a vacuum lifts water, in ft: in Hg × 1.133, less friction (hydrostatics). Held to 29.92 in
/// Hg, a whole atmosphere.
pub fn suction_lift_ft(vacuum_inhg: f64) -> f64 {
    within(vacuum_inhg, 0.0, 29.92) * FT_WATER_PER_INHG
}
