//! What cold wind and damp heat do to people.

use uom::si::f64::{ThermodynamicTemperature, Velocity};

use super::super::units::{deg_f, in_deg_f, in_mph, within};

/// Returns the wind chill: 35.74 + 0.6215·T − 35.75·V^0.16 + 0.4275·T·V^0.16, T in °F, V in mph. Above 50 °F or under
/// 3 mph it is the air temperature.
///
/// Source: NWS 2001. It acts on skin, not on tanks: nothing unheated goes below the air's temperature.
pub fn wind_chill(air: ThermodynamicTemperature, wind: Velocity) -> ThermodynamicTemperature {
    let (t, v) = (in_deg_f(air), in_mph(wind));
    if t > 50.0 || v < 3.0 {
        return air;
    }
    let w = v.powf(0.16);
    deg_f(35.74 + 0.6215 * t - 35.75 * w + 0.4275 * t * w)
}

/// Returns the heat index in the shade, humidity in % (held to 0..100). Up to 40 °F it is the air temperature.
///
/// Source: NWS technical attachment SR 90-23: Rothfusz's regression with its two adjustments where the simple formula
/// averages 80 °F or more. Full sun can add 15 °F. The air is held to 130 °F, beyond which the fit means nothing.
pub fn heat_index(air: ThermodynamicTemperature, humidity_pct: f64) -> ThermodynamicTemperature {
    let t = in_deg_f(air);
    if t <= 40.0 {
        return air;
    }
    let (t, r) = (t.min(130.0), within(humidity_pct, 0.0, 100.0));
    let simple = 0.5 * (t + 61.0 + 1.2 * (t - 68.0) + 0.094 * r);
    if f64::midpoint(simple, t) < 80.0 {
        return deg_f(simple);
    }
    let mut index = -42.379 + 2.049_015_23 * t + 10.143_331_27 * r
        - 0.224_755_41 * t * r
        - 0.006_837_83 * t * t
        - 0.054_817_17 * r * r
        + 0.001_228_74 * t * t * r
        + 0.000_852_82 * t * r * r
        - 0.000_001_99 * t * t * r * r;
    if r < 13.0 && (80.0..=112.0).contains(&t) {
        index -= (13.0 - r) / 4.0 * ((17.0 - (t - 95.0).abs()) / 17.0).max(0.0).sqrt();
    } else if r > 85.0 && (80.0..=87.0).contains(&t) {
        index += (r - 85.0) / 10.0 * (87.0 - t) / 5.0;
    }
    deg_f(index)
}

/// What a wind chill means for bare skin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ChillBand {
    /// Above 32 °F.
    None,
    /// 32 °F or less: dry gloves.
    Gloves,
    /// −18 °F or less: frostbite within 30 min (NWS chart).
    Frostbite30,
    /// −35 °F or less: frostbite in about 10 min (NWS chart, from memory).
    Frostbite10,
}

impl ChillBand {
    /// Returns the minutes within which bare skin can freeze; none where it does not.
    pub fn frostbite_minutes(self) -> Option<u32> {
        match self {
            ChillBand::None | ChillBand::Gloves => None,
            ChillBand::Frostbite30 => Some(30),
            ChillBand::Frostbite10 => Some(10),
        }
    }
}

/// Returns the band of a wind chill.
pub fn chill_band(chill: ThermodynamicTemperature) -> ChillBand {
    match in_deg_f(chill) {
        f if f <= -35.0 => ChillBand::Frostbite10,
        f if f <= -18.0 => ChillBand::Frostbite30,
        f if f <= 32.0 => ChillBand::Gloves,
        _ => ChillBand::None,
    }
}

/// The NWS classes of heat index.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeatBand {
    /// Under 80 °F.
    None,
    /// 80 to under 90 °F.
    Caution,
    /// 90 to under 103 °F.
    ExtremeCaution,
    /// 103 to under 125 °F.
    Danger,
    /// 125 °F and over.
    ExtremeDanger,
}

/// Returns the class of a heat index (NWS; other pages of the same service cut at 105 and 130).
pub fn heat_band(index: ThermodynamicTemperature) -> HeatBand {
    match in_deg_f(index) {
        f if f >= 125.0 => HeatBand::ExtremeDanger,
        f if f >= 103.0 => HeatBand::Danger,
        f if f >= 90.0 => HeatBand::ExtremeCaution,
        f if f >= 80.0 => HeatBand::Caution,
        _ => HeatBand::None,
    }
}
