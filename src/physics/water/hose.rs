//! Pressure lost in a hose, in its fittings and in climbing.

use uom::si::f64::{KinematicViscosity, Length, Pressure, Velocity, VolumeRate};

use super::super::units::{
    GPM_PER_CFS, GRAVITY_FT_S2, PSI_PER_FT, ft_s, ft2_per_s, in_ft, in_ft2_per_s, in_gpm, inch,
    psi, within,
};

/// Hazen-Williams coefficient of smooth rubber or plastic (EPANET 2.2 manual, table for plastic).
pub const C_SMOOTH: f64 = 140.0;
/// Loss coefficient of two couplings, a regulator's body and a clean filter (common practice, no source).
pub const FITTINGS_K: f64 = 10.0;

/// Power of the flow in Hazen-Williams.
pub(super) const FLOW_EXPONENT: f64 = 1.852;

/// Returns the wall roughness of smooth plastic, 0.00006 in (from memory).
pub fn roughness_smooth() -> Length {
    inch(6e-5)
}

/// Returns the kinematic viscosity of water at 68 °F, 1.1e-5 ft²/s (from memory).
pub fn viscosity_68f() -> KinematicViscosity {
    ft2_per_s(1.1e-5)
}

/// How the Darcy friction factor of turbulent flow is found.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Friction {
    /// Colebrook's implicit equation.
    #[default]
    Colebrook,
    /// Swamee and Jain's explicit form with EPANET's cubic between laminar and turbulent flow.
    SwameeJain,
}

/// A run of hose from the spigot to the trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Length.
    pub length: Length,
    /// Inside diameter.
    pub bore: Length,
    /// Rise from spigot to trailer; downhill is negative.
    pub rise: Length,
    /// Loss coefficient of fittings, regulator and filter.
    pub fittings_k: f64,
    /// Hazen-Williams coefficient.
    pub c: f64,
}

impl Line {
    /// Makes a smooth hose with the usual fittings ([`FITTINGS_K`], [`C_SMOOTH`]).
    pub fn new(length: Length, bore: Length, rise: Length) -> Self {
        Line {
            length,
            bore,
            rise,
            fittings_k: FITTINGS_K,
            c: C_SMOOTH,
        }
    }

    /// Returns what the line takes at `flow`: hose by Hazen-Williams, fittings and rise.
    pub fn loss(&self, flow: VolumeRate) -> Pressure {
        hose_loss(self.length, flow, self.bore, self.c)
            + minor_loss(self.fittings_k, flow, self.bore)
            + elevation_loss(self.rise)
    }
}

/// Returns the pressure lost to friction by Hazen-Williams: h = 4.727·L·q^1.852 / (C^1.852·D^4.871), in ft, ft³/s and ft.
///
/// Source: EPANET 2.2 user manual. Bores under 0.05 in count as 0.05, C under 1 as 1; the sign of the flow is dropped.
pub fn hose_loss(length: Length, flow: VolumeRate, bore: Length, c: f64) -> Pressure {
    let q = in_gpm(flow).abs() / GPM_PER_CFS;
    let d = bore_ft(bore);
    let head = 4.727 * in_ft(length).max(0.0) * q.powf(FLOW_EXPONENT)
        / (within(c, 1.0, 1000.0).powf(FLOW_EXPONENT) * d.powf(4.871));
    psi(PSI_PER_FT * head)
}

/// Returns how many times as much a hose of bore `a` loses as one of bore `b` at the same flow: (b/a)^4.871.
///
/// Source: Hazen-Williams, as [`hose_loss`].
pub fn hose_loss_ratio(a: Length, b: Length) -> f64 {
    (bore_ft(b) / bore_ft(a)).powf(4.871)
}

/// Returns the pressure lost to friction by Darcy-Weisbach: h = f·(L/D)·V²/2g, f = 64/Re below Re 2000.
///
/// Source: Colebrook 1939, or Swamee and Jain as EPANET 2.2 has it.
pub fn hose_loss_darcy(
    length: Length,
    flow: VolumeRate,
    bore: Length,
    roughness: Length,
    viscosity: KinematicViscosity,
    friction: Friction,
) -> Pressure {
    let d = bore_ft(bore);
    let v = speed(flow, bore);
    let re = reynolds(flow, bore, viscosity);
    if re <= 0.0 {
        return psi(0.0);
    }
    let relative = within(in_ft(roughness) / d, 0.0, 0.05);
    let f = friction_factor(re, relative, friction);
    let head = f * in_ft(length).max(0.0) / d * v * v / (2.0 * GRAVITY_FT_S2);
    psi(PSI_PER_FT * head)
}

/// Returns the pressure lost in fittings: h = K·V²/2g (definition of the loss coefficient).
pub fn minor_loss(k: f64, flow: VolumeRate, bore: Length) -> Pressure {
    let v = speed(flow, bore);
    psi(PSI_PER_FT * k.max(0.0) * v * v / (2.0 * GRAVITY_FT_S2))
}

/// Returns what a climb costs, 0.4333 psi a foot; downhill gives a negative loss (hydrostatics, EPANET's constant).
pub fn elevation_loss(rise: Length) -> Pressure {
    psi(PSI_PER_FT * in_ft(rise))
}

/// Returns the mean speed of `flow` in a round bore (continuity).
pub fn velocity(flow: VolumeRate, bore: Length) -> Velocity {
    ft_s(speed(flow, bore))
}

/// Returns the Reynolds number V·D/ν.
pub fn reynolds(flow: VolumeRate, bore: Length, viscosity: KinematicViscosity) -> f64 {
    speed(flow, bore) * bore_ft(bore) / in_ft2_per_s(viscosity).max(1e-9)
}

fn bore_ft(bore: Length) -> f64 {
    in_ft(bore).max(0.05 / 12.0)
}

/// Returns the speed in ft/s.
fn speed(flow: VolumeRate, bore: Length) -> f64 {
    let d = bore_ft(bore);
    in_gpm(flow).abs() / GPM_PER_CFS / (std::f64::consts::FRAC_PI_4 * d * d)
}

/// Returns the Darcy friction factor; `relative` is roughness over diameter.
fn friction_factor(re: f64, relative: f64, friction: Friction) -> f64 {
    if re < 2000.0 {
        return 64.0 / re;
    }
    match friction {
        Friction::Colebrook => colebrook(re, relative),
        Friction::SwameeJain if re >= 4000.0 => swamee_jain(re, relative),
        Friction::SwameeJain => dunlop(re, relative),
    }
}

/// Solves 1/√f = −2·log10(ε/3.7D + 2.51/(Re·√f)) by fixed point, which contracts at every turbulent Re.
fn colebrook(re: f64, relative: f64) -> f64 {
    let mut x = 1.0 / swamee_jain(re, relative).sqrt();
    for _ in 0..12 {
        x = -2.0 * (relative / 3.7 + 2.51 * x / re).log10();
    }
    1.0 / (x * x)
}

fn swamee_jain(re: f64, relative: f64) -> f64 {
    0.25 / (relative / 3.7 + 5.74 / re.powf(0.9)).log10().powi(2)
}

/// EPANET's cubic between Re 2000 and 4000 (Dunlop 1991, in the EPANET 2.2 user manual).
fn dunlop(re: f64, relative: f64) -> f64 {
    let r = re / 2000.0;
    let y2 = relative / 3.7 + 5.74 / 4000_f64.powf(0.9);
    let y3 = -0.868_59 * y2.ln();
    let fa = y3.powi(-2);
    let fb = fa * (2.0 - 0.005_142_15 / (y2 * y3));
    let x1 = 7.0 * fa - fb;
    let x2 = 0.128 - 17.0 * fa + 2.5 * fb;
    let x3 = -0.128 + 13.0 * fa - 2.0 * fb;
    let x4 = r * (0.032 - 3.0 * fa + 0.5 * fb);
    x1 + r * (x2 + r * (x3 + x4))
}
