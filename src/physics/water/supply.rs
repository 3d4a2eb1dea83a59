//! What reaches the trailer: pressure left, flow that a supply can give, and where pressure went.

use uom::si::f64::{Pressure, Time, Volume, VolumeRate};

use super::super::units::{gpm, in_gal, in_gpm, in_psi, minutes, psi};
use super::hose::{
    FLOW_EXPONENT, Friction, Line, elevation_loss, hose_loss, hose_loss_darcy, minor_loss,
    roughness_smooth, viscosity_68f,
};

/// Static pressure above which a pressure-reducing valve is required, psi (IPC 604.8, UPC 608.2).
pub const PRV_LIMIT_PSI: f64 = 80.0;
/// Pressure missing at the trailer that counts as a restriction, psi (common practice, no source).
const RESTRICTION_PSI: f64 = 5.0;
/// Static pressure under which the supply itself is low, psi (common practice, no source).
const SUPPLY_PSI: f64 = 40.0;

/// Which friction formula a residual is reckoned with.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum LossFormula {
    /// Hazen-Williams with the line's own C.
    #[default]
    HazenWilliams,
    /// Darcy-Weisbach with Colebrook, smooth wall, water at 68 °F.
    Darcy,
}

/// Returns the pressure left at the trailer at `flow`: static less hose, fittings and rise. May be negative: the supply
/// cannot give that flow.
///
/// Source: Bernoulli with Hazen-Williams ([`Line::loss`]).
pub fn residual(static_pressure: Pressure, line: &Line, flow: VolumeRate) -> Pressure {
    static_pressure - line.loss(flow)
}

/// As [`residual`], with a choice of friction formula.
pub fn residual_by(
    formula: LossFormula,
    static_pressure: Pressure,
    line: &Line,
    flow: VolumeRate,
) -> Pressure {
    match formula {
        LossFormula::HazenWilliams => residual(static_pressure, line, flow),
        LossFormula::Darcy => {
            static_pressure
                - hose_loss_darcy(
                    line.length,
                    flow,
                    line.bore,
                    roughness_smooth(),
                    viscosity_68f(),
                    Friction::Colebrook,
                )
                - minor_loss(line.fittings_k, flow, line.bore)
                - elevation_loss(line.rise)
        }
    }
}

/// Returns the most flow that leaves `needed` at the trailer; zero where the supply cannot even at rest, 10,000 gpm at
/// most.
///
/// Solves [`residual`] = `needed` by bisection to 1e-6 gpm.
pub fn max_flow(static_pressure: Pressure, line: &Line, needed: Pressure) -> VolumeRate {
    // both losses are powers of the flow, so one gallon a minute tells the rest
    let one = gpm(1.0);
    let friction = in_psi(hose_loss(line.length, one, line.bore, line.c));
    let fittings = in_psi(minor_loss(line.fittings_k, one, line.bore));
    let budget = in_psi(static_pressure - elevation_loss(line.rise) - needed);
    let spare = |q: f64| budget - friction * q.powf(FLOW_EXPONENT) - fittings * q * q;
    if spare(0.0) <= 0.0 {
        return gpm(0.0);
    }
    let (mut low, mut high) = (0.0, 100.0);
    while spare(high) > 0.0 {
        if high >= 10_000.0 {
            return gpm(high);
        }
        (low, high) = (high, high * 10.0);
    }
    while high - low > 1e-6 {
        let middle = f64::midpoint(low, high);
        if spare(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    gpm(f64::midpoint(low, high))
}

/// Returns the outlet pressure of a regulator under flow: the lesser of what reaches it and `set` less its fall-off,
/// `fall_off` in psi for each gpm (1 to 1.5 for a small regulator, from memory; the maker's curve wins).
pub fn regulated(inlet: Pressure, set: Pressure, flow: VolumeRate, fall_off: f64) -> Pressure {
    let held = in_psi(set) - fall_off.max(0.0) * in_gpm(flow).abs();
    psi(in_psi(inlet).min(held).max(0.0))
}

/// Tells whether a pressure-reducing valve is required: above 80 psi static (IPC 604.8, UPC 608.2).
pub fn prv_required(static_pressure: Pressure) -> bool {
    in_psi(static_pressure) > PRV_LIMIT_PSI
}

/// Returns the time to fill `volume` at `flow`; none where nothing flows.
pub fn fill_time(volume: Volume, flow: VolumeRate) -> Option<Time> {
    let q = in_gpm(flow);
    (q > 0.0).then(|| minutes(in_gal(volume).max(0.0) / q))
}

/// Returns what a gauge at the trailer should read at `flow`: [`residual`], not below zero.
pub fn expected_flowing_pressure(
    static_pressure: Pressure,
    line: &Line,
    flow: VolumeRate,
) -> Pressure {
    psi(in_psi(residual(static_pressure, line, flow)).max(0.0))
}

/// Returns the pressure that hose, fittings and rise do not account for: expected less read. Over 5 psi points at a
/// filter, a kink or a half-shut valve; negative means that more came than expected.
pub fn unexplained_loss(
    static_pressure: Pressure,
    line: &Line,
    flow: VolumeRate,
    flowing: Pressure,
) -> Pressure {
    residual(static_pressure, line, flow) - flowing
}

/// Why water is weak.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Restriction {
    /// Static pressure itself is low: spigot half open, regulator set low, other users, a climb.
    Supply,
    /// Static is sound, flowing is low: filter, kink, crushed hose, valve. No flow, no friction, so a gauge read with the
    /// taps shut does not show it.
    Restriction,
    /// Neither.
    Ok,
}

impl Restriction {
    /// Returns its code.
    pub fn code(self) -> &'static str {
        match self {
            Restriction::Supply => "supply",
            Restriction::Restriction => "restriction",
            Restriction::Ok => "ok",
        }
    }
}

/// Tells a weak supply from a restriction: static under 40 psi is the supply; else flowing more than 5 psi under
/// `expected` is a restriction (common practice, no source; the reasoning is "no flow, no friction loss").
pub fn restriction_cause(
    static_pressure: Pressure,
    flowing: Pressure,
    expected: Pressure,
) -> Restriction {
    if in_psi(static_pressure) < SUPPLY_PSI {
        Restriction::Supply
    } else if in_psi(flowing) < in_psi(expected) - RESTRICTION_PSI {
        Restriction::Restriction
    } else {
        Restriction::Ok
    }
}

/// Returns the flow left when a filter's resistance grows `ratio` times: Q/√ratio at the same pressure difference
/// (turbulent restriction, Q ~ √(Δp/K)). Ratios under 1 count as 1.
pub fn flow_after_clog(clean: VolumeRate, ratio: f64) -> VolumeRate {
    clean / ratio.max(1.0).sqrt()
}
