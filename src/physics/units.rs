//! Makes `uom` quantities from the units that crews speak, and reads them back.
//!
//! What is read back is rounded to 1e-9, so that a limit is met by the number it is stated as: 20 °F through kelvin would
//! come back as 19.999999999999943.

use uom::si::f64::{
    Area, ElectricCurrent, ElectricPotential, ElectricalResistance, Force, HeatTransfer,
    KinematicViscosity, Length, Mass, Power, Pressure, ThermalConductivity,
    ThermodynamicTemperature, Time, Velocity, Volume, VolumeRate,
};
use uom::si::{
    area, electric_current, electric_potential, electrical_resistance, force, heat_transfer,
    kinematic_viscosity, length, mass, power, pressure, thermal_conductivity,
    thermodynamic_temperature, time, velocity, volume, volume_rate,
};

/// Pounds per square inch for each foot of water (the constant of EPANET 2.2).
pub const PSI_PER_FT: f64 = 0.4333;
/// Gallons a minute in one cubic foot a second (EPANET 2.2).
pub const GPM_PER_CFS: f64 = 448.831;
/// Pounds in a US gallon of water or waste (EPA operator arithmetic).
pub const LB_PER_GAL: f64 = 8.34;
/// Cubic inches in a US gallon, exact by definition.
pub const IN3_PER_GAL: f64 = 231.0;
/// Btu an hour in one watt.
pub const BTU_H_PER_W: f64 = 3.412;
/// Standard gravity, ft/s².
pub const GRAVITY_FT_S2: f64 = 32.174;

/// Rounds away what a conversion there and back leaves behind: to 1e-9, and no minus zero.
fn settled(value: f64) -> f64 {
    if value.abs() > 1e6 {
        value
    } else {
        (value * 1e9).round() / 1e9 + 0.0
    }
}

macro_rules! units {
    ($($make:ident, $read:ident, $quantity:ident, $module:ident::$unit:ident, $text:literal;)*) => {$(
        #[doc = concat!("Makes a quantity from ", $text, ".")]
        pub fn $make(value: f64) -> $quantity {
            $quantity::new::<$module::$unit>(value)
        }

        #[doc = concat!("Reads a quantity in ", $text, ".")]
        pub fn $read(quantity: $quantity) -> f64 {
            settled(quantity.get::<$module::$unit>())
        }
    )*};
}

units! {
    psi, in_psi, Pressure, pressure::psi, "pounds per square inch";
    ft, in_ft, Length, length::foot, "feet";
    inch, in_inch, Length, length::inch, "inches";
    metre, in_metre, Length, length::meter, "metres";
    ft2, in_ft2, Area, area::square_foot, "square feet";
    in2, in_in2, Area, area::square_inch, "square inches";
    gal, in_gal, Volume, volume::gallon, "US gallons";
    gpm, in_gpm, VolumeRate, volume_rate::gallon_per_minute, "US gallons a minute";
    deg_f, in_deg_f, ThermodynamicTemperature, thermodynamic_temperature::degree_fahrenheit, "degrees Fahrenheit";
    kelvin, in_kelvin, ThermodynamicTemperature, thermodynamic_temperature::kelvin, "kelvin";
    mph, in_mph, Velocity, velocity::mile_per_hour, "miles an hour";
    ft_s, in_ft_s, Velocity, velocity::foot_per_second, "feet a second";
    hours, in_hours, Time, time::hour, "hours";
    minutes, in_minutes, Time, time::minute, "minutes";
    seconds, in_seconds, Time, time::second, "seconds";
    amps, in_amps, ElectricCurrent, electric_current::ampere, "amperes";
    milliamps, in_milliamps, ElectricCurrent, electric_current::milliampere, "milliamperes";
    volts, in_volts, ElectricPotential, electric_potential::volt, "volts";
    ohms, in_ohms, ElectricalResistance, electrical_resistance::ohm, "ohms";
    watts, in_watts, Power, power::watt, "watts";
    lb, in_lb, Mass, mass::pound, "pounds";
    w_mk, in_w_mk, ThermalConductivity, thermal_conductivity::watt_per_meter_kelvin, "watts a metre and kelvin";
    w_m2k, in_w_m2k, HeatTransfer, heat_transfer::watt_per_square_meter_kelvin, "watts a square metre and kelvin";
    lbf, in_lbf, Force, force::pound_force, "pounds of force";
}

/// Makes a kinematic viscosity from square feet a second.
pub fn ft2_per_s(value: f64) -> KinematicViscosity {
    KinematicViscosity::new::<kinematic_viscosity::square_meter_per_second>(value * 0.092_903_04)
}

/// Reads a kinematic viscosity in square feet a second.
pub fn in_ft2_per_s(quantity: KinematicViscosity) -> f64 {
    quantity.get::<kinematic_viscosity::square_meter_per_second>() / 0.092_903_04
}

/// Clamps to a range, taking what is not a number for the low end, so that a formula stays total.
pub(super) fn within(value: f64, low: f64, high: f64) -> f64 {
    if value.is_nan() {
        low
    } else {
        value.clamp(low, high)
    }
}

/// Reads a piecewise linear table, ordered by its first column; values beyond an end take that end's.
pub(super) fn interpolate(table: &[(f64, f64)], x: f64) -> f64 {
    let after = table.partition_point(|(at, _)| *at < x);
    match (after.checked_sub(1).map(|i| table[i]), table.get(after)) {
        (Some((x0, y0)), Some((x1, y1))) => y0 + (y1 - y0) * (x - x0) / (x1 - x0),
        (None, Some((_, y))) => *y,
        (Some((_, y)), None) => y,
        (None, None) => f64::NAN,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_back_as_they_went_in() {
        for value in [-40.0, -5.0, 0.0, 20.0, 28.0, 32.0, 50.0, 103.4] {
            assert_eq!(in_deg_f(deg_f(value)), value);
            assert_eq!(in_psi(psi(value)), value);
            assert_eq!(in_gal(gal(value)), value);
            assert_eq!(in_hours(hours(value)), value);
        }
    }

    #[test]
    fn tables_interpolate_and_hold_their_ends() {
        let table = [(0.0, 1.0), (10.0, 3.0), (20.0, 3.0)];
        assert_eq!(interpolate(&table, 5.0), 2.0);
        assert_eq!(interpolate(&table, 10.0), 3.0);
        assert_eq!(interpolate(&table, -1.0), 1.0);
        assert_eq!(interpolate(&table, 99.0), 3.0);
    }
}
