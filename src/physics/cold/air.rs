//! Air around a pipe: its properties, and the heat that still air and wind carry off.

use uom::si::f64::{HeatTransfer, Length, ThermalConductivity, ThermodynamicTemperature, Velocity};

use super::super::units::{deg_f, in_kelvin, in_metre, w_m2k, w_mk};
use super::FREEZING_F;

/// What radiation adds to a surface film near freezing, W/(m²·K) (4·ε·σ·T³ at 0 °C and ε about 1).
pub const RADIATION_W_M2K: f64 = 4.5;
/// Specific heat of air, J/(kg·K).
const CP: f64 = 1005.0;

/// Air at one film temperature.
struct Air {
    /// K.
    kelvin: f64,
    /// W/(m·K).
    conductivity: f64,
    /// Kinematic viscosity, m²/s.
    nu: f64,
    prandtl: f64,
}

/// US Standard Atmosphere 1976 at 101,325 Pa; temperatures are held to 150..400 K.
fn air_at(kelvin: f64) -> Air {
    let t = kelvin.clamp(150.0, 400.0);
    let mu = 1.458e-6 * t.powf(1.5) / (t + 110.4);
    let conductivity = 2.646_38e-3 * t.powf(1.5) / (t + 245.4 * 10_f64.powf(-12.0 / t));
    let rho = 101_325.0 / (287.053 * t);
    Air {
        kelvin: t,
        conductivity,
        nu: mu / rho,
        prandtl: CP * mu / conductivity,
    }
}

fn film(air: ThermodynamicTemperature, surface: ThermodynamicTemperature) -> Air {
    air_at(f64::midpoint(in_kelvin(air), in_kelvin(surface)))
}

/// Returns the thermal conductivity of air (US Standard Atmosphere 1976).
pub fn air_conductivity(air: ThermodynamicTemperature) -> ThermalConductivity {
    w_mk(air_at(in_kelvin(air)).conductivity)
}

/// Returns the film coefficient of wind across a pipe, without radiation.
///
/// Source: Churchill and Bernstein 1977, air at the mean of surface and air temperature. In no wind it falls to bare
/// conduction: see [`outdoor_film`].
pub fn crossflow_film(
    outside: Length,
    wind: Velocity,
    air: ThermodynamicTemperature,
    surface: ThermodynamicTemperature,
) -> HeatTransfer {
    let a = film(air, surface);
    let d = in_metre(outside).max(1e-4);
    let re = wind.value.abs() * d / a.nu;
    let nusselt = 0.3
        + 0.62 * re.sqrt() * a.prandtl.cbrt()
            / (1.0 + (0.4 / a.prandtl).powf(2.0 / 3.0)).powf(0.25)
            * (1.0 + (re / 282_000.0).powf(0.625)).powf(0.8);
    w_m2k(nusselt * a.conductivity / d)
}

/// Returns the film coefficient of still air about a level pipe, without radiation.
///
/// Source: Churchill and Chu 1975, air at the mean of surface and air temperature.
pub fn natural_film(
    outside: Length,
    air: ThermodynamicTemperature,
    surface: ThermodynamicTemperature,
) -> HeatTransfer {
    let a = film(air, surface);
    let d = in_metre(outside).max(1e-4);
    let apart = (in_kelvin(surface) - in_kelvin(air)).abs();
    let rayleigh = 9.806_65 / a.kelvin * apart * d.powi(3) / (a.nu * a.nu) * a.prandtl;
    let nusselt = (0.60
        + 0.387 * rayleigh.powf(1.0 / 6.0)
            / (1.0 + (0.559 / a.prandtl).powf(9.0 / 16.0)).powf(8.0 / 27.0))
    .powi(2);
    w_m2k(nusselt * a.conductivity / d)
}

/// Returns the film coefficient of a pipe at freezing outdoors: the larger of wind and still air, and radiation.
pub fn outdoor_film(
    outside: Length,
    wind: Velocity,
    air: ThermodynamicTemperature,
) -> HeatTransfer {
    let surface = deg_f(FREEZING_F);
    let wind = crossflow_film(outside, wind, air, surface);
    let still = natural_film(outside, air, surface);
    (if wind > still { wind } else { still }) + w_m2k(RADIATION_W_M2K)
}
