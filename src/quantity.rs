//! The few quantities the trade uses: their units of measure, and how they are printed for a crew.
//!
//! A recorded reading is a plain number in the unit its [`crate::heard::ReadingKey`] names, rounded to 0.001, and limits
//! are compared in that unit. `uom` types are for the formulas in [`crate::physics`], where mixing units would hurt.

use serde::{Deserialize, Serialize};

/// Pounds per square inch in one bar.
pub const PSI_PER_BAR: f64 = 14.5038;
/// Pounds per square inch in one kilopascal.
pub const PSI_PER_KPA: f64 = 0.145038;
/// Pounds per square inch in one kilogram-force per square centimetre.
pub const PSI_PER_KG_CM2: f64 = 14.2233;
/// Litres in one US gallon.
pub const LITRES_PER_GAL: f64 = 3.78541;
/// Feet in one metre.
pub const FT_PER_M: f64 = 3.28084;
/// Miles an hour in one kilometre an hour.
pub const MPH_PER_KMH: f64 = 0.621371;
/// Miles an hour in one metre a second.
pub const MPH_PER_MS: f64 = 2.236936;
/// Miles an hour in one knot.
pub const MPH_PER_KNOT: f64 = 1.150779;
/// Pounds in one kilogram.
pub const LB_PER_KG: f64 = 2.204623;

/// Rounds to 0.001, the precision that records keep.
pub fn rounded(value: f64) -> f64 {
    let r = (value * 1000.0).round() / 1000.0;
    if r == 0.0 { 0.0 } else { r } // no minus zero
}

/// Converts a temperature in degrees Celsius to degrees Fahrenheit.
pub fn f_from_c(celsius: f64) -> f64 {
    celsius * 1.8 + 32.0
}

/// Converts a temperature in degrees Fahrenheit to degrees Celsius.
pub fn c_from_f(fahrenheit: f64) -> f64 {
    (fahrenheit - 32.0) / 1.8
}

/// The system of units in which a fleet's replies are printed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Units {
    /// Gallons, feet, psi.
    #[default]
    Us,
    /// Litres, metres, bar.
    Metric,
}

/// A scale for temperatures.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum TemperatureScale {
    /// Degrees Fahrenheit.
    #[default]
    F,
    /// Degrees Celsius.
    C,
}

/// How a fleet wants numbers and times printed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Style {
    /// Gallons or litres, and so on.
    pub units: Units,
    /// Degrees Fahrenheit or Celsius.
    pub temperature: TemperatureScale,
    /// True for a 12 h clock.
    pub twelve_hour: bool,
}

/// The unit of measure in which a number is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs)] // each is the unit it names
pub enum Measure {
    Psi,
    Gpm,
    Gal,
    Pct,
    PctPerHour,
    DegF,
    /// A difference of temperatures in °F, which has no zero to shift.
    DegFDiff,
    Mph,
    Mile,
    Ft,
    Inch,
    Volt,
    Amp,
    AmpHour,
    Watt,
    Hour,
    Minute,
    Second,
    Lb,
    PerHour,
    Milliamp,
    /// American wire gauge.
    Awg,
    /// A bare number: guests, stalls, cords.
    Count,
}

impl Style {
    /// Prints `value`, held in `measure`, with its unit, as a person would say it: `95 psi`, `6.6 bar`, `-5 °F`.
    ///
    /// Non-finite values print as `?`; nothing here panics.
    pub fn show(&self, value: f64, measure: Measure) -> String {
        if !value.is_finite() {
            return "?".into();
        }
        let metric = self.units == Units::Metric;
        match measure {
            Measure::Psi if metric => unit(value / PSI_PER_BAR, 1, "bar"),
            Measure::Psi => unit(value, if value.abs() < 10.0 { 1 } else { 0 }, "psi"),
            Measure::Gpm if metric => unit(value * LITRES_PER_GAL, 0, "L/min"),
            Measure::Gpm => unit(value, 1, "gpm"),
            Measure::Gal if metric => unit(value * LITRES_PER_GAL, 0, "L"),
            Measure::Gal => unit(value, if value.abs() < 10.0 { 1 } else { 0 }, "gal"),
            Measure::Pct => unit(value, if value.abs() < 10.0 { 1 } else { 0 }, "%"),
            Measure::PctPerHour => unit(value, 1, "%/h"),
            Measure::DegF => match self.temperature {
                TemperatureScale::F => unit(value, 0, "°F"),
                TemperatureScale::C => unit(c_from_f(value), 0, "°C"),
            },
            Measure::DegFDiff => match self.temperature {
                TemperatureScale::F => unit(value, 0, "°F"),
                TemperatureScale::C => unit(value / 1.8, 0, "°C"),
            },
            Measure::Mph if metric => unit(value / MPH_PER_KMH, 0, "km/h"),
            Measure::Mph => unit(value, 0, "mph"),
            Measure::Mile if metric => unit(value / MPH_PER_KMH, near(value), "km"),
            Measure::Mile => unit(value, near(value), "mi"),
            Measure::Ft if metric => unit(value / FT_PER_M, 0, "m"),
            Measure::Ft => unit(value, 0, "ft"),
            Measure::Inch if metric => unit(value * 25.4, 0, "mm"),
            Measure::Inch => unit(value, 3, "in"),
            Measure::Volt => unit(value, if value.abs() < 20.0 { 2 } else { 0 }, "V"),
            Measure::Amp => unit(value, 1, "A"),
            Measure::AmpHour => unit(value, 0, "Ah"),
            Measure::Watt => unit(value, 0, "W"),
            Measure::Hour => hours(value),
            Measure::Minute if value >= 90.0 => hours(value / 60.0),
            Measure::Minute => unit(value, 0, "min"),
            Measure::Second => unit(value, 0, "s"),
            Measure::Lb if metric => unit(value / LB_PER_KG, 0, "kg"),
            Measure::Lb => unit(value, 0, "lb"),
            Measure::PerHour => unit(value, 0, "/h"),
            Measure::Milliamp => unit(value, 1, "mA"),
            Measure::Awg => format!("{} AWG", plain(value, 0)),
            Measure::Count => plain(value, 0),
        }
    }
}

/// Prints a number with at most `digits` decimals and no trailing zeros, thousands parted by commas.
pub fn plain(value: f64, digits: usize) -> String {
    let mut text = format!("{:.*}", digits, value);
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" {
        text = "0".into();
    }
    let (sign, rest) = match text.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", text.as_str()),
    };
    let (whole, fraction) = match rest.split_once('.') {
        Some((w, f)) => (w, Some(f)),
        None => (rest, None),
    };
    let mut grouped = String::new();
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(c);
    }
    match fraction {
        Some(f) => format!("{sign}{grouped}.{f}"),
        None => format!("{sign}{grouped}"),
    }
}

fn unit(value: f64, digits: usize, name: &str) -> String {
    format!("{} {name}", plain(value, digits))
}

/// How many decimals a distance has: it is told to the tenth while it is short.
fn near(miles: f64) -> usize {
    usize::from(miles.abs() < 10.0)
}

/// Prints a span of hours the way people say it: minutes under an hour and a half, then hours and minutes, then hours.
fn hours(value: f64) -> String {
    let minutes = (value * 60.0).round();
    if minutes < 0.0 {
        return format!("-{}", hours(-value));
    }
    if minutes < 90.0 {
        unit(minutes, 0, "min")
    } else if value < 10.0 {
        let tens = (minutes / 5.0).round() * 5.0;
        let (h, m) = ((tens / 60.0).floor(), tens % 60.0);
        if m == 0.0 {
            unit(h, 0, "h")
        } else {
            format!("{} h {} min", plain(h, 0), plain(m, 0))
        }
    } else if value < 72.0 {
        unit(value, 0, "h")
    } else {
        format!("{} d", plain(value / 24.0, 1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const US: Style = Style {
        units: Units::Us,
        temperature: TemperatureScale::F,
        twelve_hour: false,
    };
    const METRIC: Style = Style {
        units: Units::Metric,
        temperature: TemperatureScale::C,
        twelve_hour: false,
    };

    #[test]
    fn numbers_print_as_people_say_them() {
        assert_eq!(US.show(95.0, Measure::Psi), "95 psi");
        assert_eq!(METRIC.show(95.0, Measure::Psi), "6.6 bar");
        assert_eq!(US.show(-5.0, Measure::DegF), "-5 °F");
        assert_eq!(METRIC.show(-4.0, Measure::DegF), "-20 °C");
        assert_eq!(US.show(4170.0, Measure::Lb), "4,170 lb");
        assert_eq!(US.show(0.25, Measure::Hour), "15 min");
        assert_eq!(US.show(2.42, Measure::Hour), "2 h 25 min");
        assert_eq!(US.show(-3.67, Measure::Hour), "-3 h 40 min");
        assert_eq!(US.show(f64::NAN, Measure::Hour), "?");
        assert_eq!(plain(-0.2, 0), "0");
    }

    #[test]
    fn rounding_keeps_three_decimals_and_no_minus_zero() {
        assert_eq!(rounded(19.999_999_999_999_943), 20.0);
        assert_eq!(rounded(-0.000_1).to_string(), "0");
    }
}
