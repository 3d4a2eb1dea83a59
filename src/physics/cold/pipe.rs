//! Standing and trickling water in a hose or pipe.

use std::f64::consts::PI;

use uom::si::f64::{
    HeatTransfer, Length, ThermalConductivity, ThermodynamicTemperature, Time, Velocity, VolumeRate,
};

use super::super::units::{
    BTU_H_PER_W, deg_f, hours, in_deg_f, in_gpm, in_metre, in_w_m2k, in_w_mk, inch, seconds, w_mk,
    within,
};
use super::FREEZING_F;
use super::air::outdoor_film;

/// Share of the time from 32 °F to solid after which flow counts as blocked: slush at a washer or check valve stops it
/// first (common practice, no source).
pub const BLOCKED_SHARE: f64 = 0.25;
/// Water near freezing: density kg/m³, specific heat J/(kg·K), latent heat J/kg.
const WATER: (f64, f64, f64) = (999.8, 4210.0, 333_550.0);

/// A round pipe or hose, bare or in foam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pipe {
    /// Inside diameter.
    pub bore: Length,
    /// Outside diameter, bare.
    pub outside: Length,
    /// Foam thickness; zero for none.
    pub insulation: Length,
    /// Conductivity of the wall.
    pub wall: ThermalConductivity,
    /// Conductivity of the foam.
    pub foam: ThermalConductivity,
}

impl Pipe {
    /// Makes a rubber or plastic hose with its usual outside: wall 0.16, foam 0.04 W/(m·K).
    pub fn hose(bore: Length, insulation: Length) -> Self {
        Pipe {
            bore,
            outside: hose_outside(bore),
            insulation,
            wall: w_mk(0.16),
            foam: w_mk(0.04),
        }
    }

    /// Radii in metres: inner, outer, outer over the foam.
    fn radii(&self) -> (f64, f64, f64) {
        let inner = (in_metre(self.bore) / 2.0).max(1e-4);
        let outer = (in_metre(self.outside) / 2.0).max(inner);
        (inner, outer, outer + in_metre(self.insulation).max(0.0))
    }

    /// Returns the diameter that meets the air.
    fn skin(&self) -> Length {
        self.outside + self.insulation + self.insulation
    }
}

/// Returns a hose's usual outside diameter: its bore and an eighth of an inch of wall either side (common practice).
pub fn hose_outside(bore: Length) -> Length {
    bore + inch(0.25)
}

/// Returns the resistance between water and air for one metre of pipe, m·K/W: wall, foam and film in series.
///
/// Source: conduction through cylinders; ASHRAE Fundamentals ch. 23.
pub fn pipe_resistance(pipe: &Pipe, film: HeatTransfer) -> f64 {
    let (inner, outer, skin) = pipe.radii();
    let wall = (outer / inner).ln() / (2.0 * PI * in_w_mk(pipe.wall).max(1e-4));
    let foam = (skin / outer).ln() / (2.0 * PI * in_w_mk(pipe.foam).max(1e-4));
    wall + foam + 1.0 / (in_w_m2k(film).max(1e-3) * 2.0 * PI * skin)
}

/// Returns the time for standing water to come down to 32 °F: ρ·c·πr²·R'·ln((T₀ − T_a)/(32 − T_a)). None where the air
/// never freezes it; zero where it starts there.
///
/// Source: ASHRAE Fundamentals ch. 23 eq. 1 with the resistance of [`pipe_resistance`].
pub fn pipe_time_to_32f(
    pipe: &Pipe,
    film: HeatTransfer,
    water: ThermodynamicTemperature,
    air: ThermodynamicTemperature,
) -> Option<Time> {
    let (water, air) = (in_deg_f(water), in_deg_f(air));
    if air >= FREEZING_F {
        return None;
    }
    let (inner, ..) = pipe.radii();
    let (rho, c, _) = WATER;
    let fall = ((water.max(FREEZING_F) - air) / (FREEZING_F - air)).ln();
    Some(seconds(
        rho * c * PI * inner * inner * pipe_resistance(pipe, film) * fall,
    ))
}

/// Returns the further time from 32 °F to solid ice: ρ·L·πr²·R'/(32 − T_a), the resistance held. None where the air never
/// freezes it.
///
/// Source: latent heat; the ice's own resistance is left out, which errs early.
pub fn pipe_time_to_solid(
    pipe: &Pipe,
    film: HeatTransfer,
    air: ThermodynamicTemperature,
) -> Option<Time> {
    let kelvin = (FREEZING_F - in_deg_f(air)) / 1.8;
    if kelvin <= 0.0 {
        return None;
    }
    let (inner, ..) = pipe.radii();
    let (rho, _, latent) = WATER;
    Some(seconds(
        rho * latent * PI * inner * inner * pipe_resistance(pipe, film) / kelvin,
    ))
}

/// What becomes of water standing in a hose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// Until it is at 32 °F.
    pub to_32f: Time,
    /// Until flow may be blocked.
    pub blocked: Time,
    /// Until it is solid.
    pub solid: Time,
}

/// Returns when water standing in `hose` freezes outdoors; none at or above 32 °F.
///
/// Films by Churchill and Bernstein or Churchill and Chu with radiation ([`outdoor_film`]), times by [`pipe_time_to_32f`]
/// and [`pipe_time_to_solid`]; blocked is [`BLOCKED_SHARE`] of the way to solid.
pub fn standing_hose(
    hose: &Pipe,
    water: ThermodynamicTemperature,
    air: ThermodynamicTemperature,
    wind: Velocity,
) -> Option<Standing> {
    let film = outdoor_film(hose.skin(), wind, air);
    let to_32f = pipe_time_to_32f(hose, film, water, air)?;
    let more = pipe_time_to_solid(hose, film, air)?;
    Some(Standing {
        to_32f,
        blocked: to_32f + more * BLOCKED_SHARE,
        solid: to_32f + more,
    })
}

/// Returns the temperature at the far end of a trickle: T_a + (T_in − T_a)·exp(−UA/ṁ). With no flow it is the air's.
///
/// `resistance` is that of one metre, m·K/W ([`pipe_resistance`]). Steady flow; heat balance.
pub fn trickle_outlet(
    inlet: ThermodynamicTemperature,
    air: ThermodynamicTemperature,
    length: Length,
    flow: VolumeRate,
    resistance: f64,
) -> ThermodynamicTemperature {
    let (inlet, air) = (in_deg_f(inlet), in_deg_f(air));
    let ua = in_metre(length).max(0.0) / resistance.max(1e-6) * BTU_H_PER_W / 1.8;
    let mass = in_gpm(flow).max(0.0) * 500.4;
    let kept = if mass > 0.0 { (-ua / mass).exp() } else { 0.0 };
    deg_f(air + (inlet - air) * kept)
}

/// Returns the watts a foot that hold water in `hose` at `hold`; zero where the air is as warm.
pub fn watts_per_ft_to_hold(
    hose: &Pipe,
    hold: ThermodynamicTemperature,
    air: ThermodynamicTemperature,
    wind: Velocity,
) -> f64 {
    let apart = (in_deg_f(hold) - in_deg_f(air)).max(0.0) / 1.8;
    let film = outdoor_film(hose.skin(), wind, air);
    apart / pipe_resistance(hose, film) * 0.3048
}

/// Returns the time for standing water in an insulated pipe to reach `to`, the wall and film left out, as ASHRAE prints
/// it.
///
/// ASHRAE Fundamentals ch. 23 eq. 1: θ = ρ·c·π(d₁/2)²·R·ln((t_i − t_a)/(t_f − t_a)), R = 12·ln(d₃/d₂)/(2πk), water 62.4
/// lb/ft³, `k` in Btu·in/(h·ft²·°F). None where the air does not cool it so far; diameters are held to a sane order.
pub fn ashrae_pipe_time(
    bore_in: f64,
    outside_in: f64,
    insulated_in: f64,
    k: f64,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
    air: ThermodynamicTemperature,
) -> Option<Time> {
    let (from, to, air) = (in_deg_f(from), in_deg_f(to), in_deg_f(air));
    if air >= to {
        return None;
    }
    let outside = within(outside_in, 0.01, 1e4);
    let insulated = within(insulated_in, outside, 1e4);
    let r = 12.0 * (insulated / outside).ln() / (2.0 * PI * k.max(1e-3));
    let area = PI * (bore_in.max(0.0) / 24.0).powi(2);
    Some(hours(
        62.4 * area * r * ((from.max(to) - air) / (to - air)).ln(),
    ))
}
