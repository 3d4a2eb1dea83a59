//! A tank outdoors: when it freezes and what holds it.

use uom::si::f64::{Area, Length, Power, ThermodynamicTemperature, Time, Velocity, Volume};

use super::super::units::{
    BTU_H_PER_W, LB_PER_GAL, deg_f, ft2, hours, in_deg_f, in_ft2, in_gal, in_inch, in_mph,
    in_watts, watts, within,
};
use super::FREEZING_F;

/// Share of ice at which valves and the dump outlet count as blocked (common practice, no source).
pub const ICE_SHARE: f64 = 0.10;
/// Latent heat of water, Btu/lb.
const LATENT_BTU_LB: f64 = 143.5;

/// A tank of water or waste in the weather, as one lump.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tank {
    /// What is in it.
    pub contents: Volume,
    /// The skin that loses heat.
    pub area: Area,
    /// Resistance of the skin, ft²·h·°F/Btu.
    pub resistance: f64,
    /// What its heater gives.
    pub heater: Power,
}

impl Tank {
    /// Makes the tank of a trailer from its size, how full it is, its foam and the wind.
    ///
    /// The skin is [`wetted_area`], its resistance [`skin_resistance`].
    pub fn outdoors(
        size: Volume,
        level_pct: f64,
        insulation: Length,
        wind: Velocity,
        heater: Power,
    ) -> Self {
        Tank {
            contents: size * (within(level_pct, 0.0, 100.0) / 100.0),
            area: wetted_area(size, level_pct),
            resistance: skin_resistance(insulation, wind),
            heater,
        }
    }

    /// Heat lost for each degree, Btu/(h·°F).
    fn loss(&self) -> f64 {
        in_ft2(self.area).max(1e-6) / self.resistance.max(1e-3)
    }

    /// Returns where it settles: T_a + 3.412·W/UA. At 32 °F or above it never freezes.
    pub fn equilibrium(&self, air: ThermodynamicTemperature) -> ThermodynamicTemperature {
        deg_f(self.settles_f(air))
    }

    fn settles_f(&self, air: ThermodynamicTemperature) -> f64 {
        in_deg_f(air) + BTU_H_PER_W * in_watts(self.heater).max(0.0) / self.loss()
    }

    /// Returns the time from `start` to 32 °F: (8.34·gal/UA)·ln((T₀ − T_eq)/(32 − T_eq)). None where it never gets there,
    /// zero where it starts there.
    ///
    /// Source: lumped heat capacity. It holds for a full tank; valves and outlet stubs freeze long before.
    pub fn time_to_32f(
        &self,
        start: ThermodynamicTemperature,
        air: ThermodynamicTemperature,
    ) -> Option<Time> {
        let settles = self.settles_f(air);
        if settles >= FREEZING_F {
            return None;
        }
        let start = in_deg_f(start).max(FREEZING_F);
        let fall = ((start - settles) / (FREEZING_F - settles)).ln();
        Some(hours(
            LB_PER_GAL * in_gal(self.contents).max(0.0) / self.loss() * fall,
        ))
    }

    /// Returns the further time from 32 °F until the share `ice` of it is frozen: 8.34·gal·143.5·φ/(UA·(32 − T_eq)). None
    /// where it never freezes.
    ///
    /// Source: latent heat 143.5 Btu/lb; the ice's own resistance is left out, which errs early.
    pub fn time_to_ice(&self, ice: f64, air: ThermodynamicTemperature) -> Option<Time> {
        let settles = self.settles_f(air);
        (settles < FREEZING_F).then(|| {
            hours(
                LB_PER_GAL * in_gal(self.contents).max(0.0) * LATENT_BTU_LB * within(ice, 0.0, 1.0)
                    / (self.loss() * (FREEZING_F - settles)),
            )
        })
    }

    /// Returns what holds it at `hold`: UA·(T_h − T_a)/3.412; zero where the air is as warm.
    pub fn heater_to_hold(
        &self,
        hold: ThermodynamicTemperature,
        air: ThermodynamicTemperature,
    ) -> Power {
        watts(self.loss() * (in_deg_f(hold) - in_deg_f(air)).max(0.0) / BTU_H_PER_W)
    }
}

/// Returns the skin of a tank of `size`: 59.3 ft² at 200 gal, growing as volume to the two thirds.
///
/// 59.3 ft² is a box of 60 × 36 × 22 in; other sizes are taken as the same shape (estimate, no source).
pub fn skin_area(size: Volume) -> Area {
    ft2(59.3 * (in_gal(size).max(1.0) / 200.0).powf(2.0 / 3.0))
}

/// Returns the skin that draws heat from the liquid of a part-full tank: half of [`skin_area`], and the other half by the
/// level (estimate, no source: the floor always, the walls and the roof by the level).
pub fn wetted_area(size: Volume, level_pct: f64) -> Area {
    skin_area(size) * (0.5 + 0.5 * within(level_pct, 0.0, 100.0) / 100.0)
}

/// Returns the resistance of a tank's skin, ft²·h·°F/Btu: inside 0.1, wall 0.08, foam 3.6 an inch (k = 0.04 W/(m·K)), and
/// the outside air from 0.68 still to 0.17 at 15 mph, its conductance linear in the wind.
///
/// Source: ASHRAE surface films (from memory).
pub fn skin_resistance(insulation: Length, wind: Velocity) -> f64 {
    let (still, at_15) = (1.0 / 0.68, 1.0 / 0.17);
    let outside = still + (at_15 - still) * within(in_mph(wind), 0.0, 60.0) / 15.0;
    0.1 + 0.08 + 3.6 * in_inch(insulation).max(0.0) + 1.0 / outside
}
