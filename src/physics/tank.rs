//! Tanks: depth and volume, how fast people fill them, and when they must be pumped.

use std::f64::consts::PI;

use uom::si::f64::{Length, Mass, Time, Volume};

use super::units::{IN3_PER_GAL, LB_PER_GAL, gal, hours, in_gal, in_hours, in_inch, lb, within};

/// Level at which stalls are closed and the truck is chased, % by volume (common practice: 15 % covers gauge, slope and
/// surge).
pub const STOP_PCT: f64 = 85.0;
/// What a body adds to each use, with paper, gal (from memory).
pub const BODY_GAL: f64 = 0.1;
/// Uses for each guest and hour: once in four hours (a city's special-event chart).
pub const USES_PER_GUEST_H: f64 = 0.25;
/// What food and alcohol do to that: 1.30 to 1.40 (the same chart).
pub const ALCOHOL_FACTOR: f64 = 1.35;
/// Time kept in hand before a pump-out, h (common practice).
pub const SAFETY_H: f64 = 1.0;

/// Hydrogen sulphide that is immediately dangerous to life or health, ppm (NIOSH).
pub const H2S_IDLH_PPM: f64 = 100.0;
/// Hydrogen sulphide ceiling in general industry, ppm (29 CFR 1910.1000 Table Z-2).
pub const H2S_CEILING_PPM: f64 = 20.0;
/// Hydrogen sulphide 10-min peak in general industry, ppm (29 CFR 1910.1000 Table Z-2).
pub const H2S_PEAK_PPM: f64 = 50.0;
/// Hydrogen sulphide in construction, time-weighted average, ppm (29 CFR 1926.55 App. A).
pub const H2S_CONSTRUCTION_TWA_PPM: f64 = 10.0;
/// Years that pump-out records are kept (40 CFR 503.17(b), land application).
pub const SEPTAGE_LOG_YEARS: f64 = 5.0;

/// Returns what a box holds to `level`: L·W·h/231 (231 in³ in a gallon).
pub fn box_volume(length: Length, width: Length, level: Length) -> Volume {
    gal(in_inch(length).max(0.0) * in_inch(width).max(0.0) * in_inch(level).max(0.0) / IN3_PER_GAL)
}

/// Returns what a lying cylinder with flat ends holds to `level`, which is held to its diameter (circular segment).
pub fn cylinder_volume(diameter: Length, length: Length, level: Length) -> Volume {
    let (d, l) = (in_inch(diameter).max(0.0), in_inch(length).max(0.0));
    if d <= 0.0 {
        return gal(0.0);
    }
    let whole = PI * d * d / 4.0 * l / IN3_PER_GAL;
    gal(whole * cylinder_fill(in_inch(level) / d))
}

/// Returns the share of a lying cylinder's volume below a share of its depth; 0..1 both (circular segment).
///
/// Depth is not volume: three quarters of the depth are 80.4 % full.
pub fn cylinder_fill(depth: f64) -> f64 {
    let x = within(depth, 0.0, 1.0);
    let chord = 1.0 - 2.0 * x;
    within(
        (chord.acos() - chord * 2.0 * (x * (1.0 - x)).sqrt()) / PI,
        0.0,
        1.0,
    )
}

/// Returns the share of a lying cylinder's depth that holds a share of its volume: [`cylinder_fill`] turned round, to
/// 1e-12.
pub fn cylinder_depth(fill: f64) -> f64 {
    let fill = within(fill, 0.0, 1.0);
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for _ in 0..42 {
        let middle = f64::midpoint(low, high);
        if cylinder_fill(middle) < fill {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

/// Returns the weight of water or waste, 8.34 lb a gallon (EPA operator arithmetic).
pub fn liquid_weight(volume: Volume) -> Mass {
    lb(LB_PER_GAL * in_gal(volume).max(0.0))
}

/// Returns uses an hour: guests × uses for each guest and hour × alcohol factor.
pub fn uses_per_h(guests: f64, uses_per_guest_h: f64, alcohol_factor: f64) -> f64 {
    guests.max(0.0) * uses_per_guest_h.max(0.0) * alcohol_factor.max(0.0)
}

/// Returns uses an hour of a crowd at the usual rates ([`USES_PER_GUEST_H`], [`ALCOHOL_FACTOR`]).
pub fn usual_uses_per_h(guests: f64, alcohol: bool) -> f64 {
    let factor = if alcohol { ALCOHOL_FACTOR } else { 1.0 };
    uses_per_h(guests, USES_PER_GUEST_H, factor)
}

/// Returns how fast a waste tank rises, % an hour: uses × (water + body) over the tank (mass balance). Zero for a tank of
/// no size.
pub fn fill_rate_pct_h(uses_per_h: f64, per_use: Volume, body: Volume, tank: Volume) -> f64 {
    let size = in_gal(tank);
    if size > 0.0 {
        100.0 * uses_per_h.max(0.0) * (in_gal(per_use) + in_gal(body)).max(0.0) / size
    } else {
        0.0
    }
}

/// Returns the time until the waste is at `stop_pct`; zero where it is there, none where nothing is used (mass balance).
pub fn time_to_stop(
    tank: Volume,
    level_pct: f64,
    uses_per_h: f64,
    per_use: Volume,
    body: Volume,
    stop_pct: f64,
) -> Option<Time> {
    let rate = fill_rate_pct_h(uses_per_h, per_use, body, tank);
    (rate > 0.0).then(|| hours(((stop_pct - level_pct) / rate).max(0.0)))
}

/// Returns how long the hauler's call can wait: (stop − level)/rate − lead − safety, negative when it is late already;
/// none where the level does not rise.
pub fn time_to_book(
    level_pct: f64,
    rate_pct_h: f64,
    lead: Time,
    safety: Time,
    stop_pct: f64,
) -> Option<Time> {
    (rate_pct_h > 0.0)
        .then(|| hours((stop_pct - level_pct) / rate_pct_h - in_hours(lead) - in_hours(safety)))
}
