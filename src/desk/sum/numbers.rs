//! The numbers of a sum, each with what it is, by its unit of measure or the word beside it.

use serde::Deserialize;
use serde_json::{Map, Value};

use crate::quantity::{FT_PER_M, LB_PER_KG, LITRES_PER_GAL, MPH_PER_KMH, Measure, f_from_c};
use crate::words::psi_in;

/// What a number in the message is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Kind {
    Amps,
    Feet,
    /// Feet, told of a height.
    Rise,
    Gauge,
    Inches,
    Flow,
    Pressure,
    Degrees,
    Wind,
    Percent,
    Gallons,
    Uses,
    Stalls,
    Sinks,
    People,
    Volts,
    Watts,
    Pounds,
    Seconds,
    Hours,
    Bare,
}

impl Kind {
    /// Returns the kind that an input of the registry takes, by its unit.
    pub(super) fn of_unit(unit: &str) -> Kind {
        match unit {
            "A" => Kind::Amps,
            "ft" => Kind::Feet,
            "AWG" | "awg" => Kind::Gauge,
            "in" => Kind::Inches,
            "gpm" => Kind::Flow,
            "psi" => Kind::Pressure,
            "F" => Kind::Degrees,
            "mph" => Kind::Wind,
            "%" => Kind::Percent,
            "gal" => Kind::Gallons,
            "1/h" => Kind::Uses,
            "V" => Kind::Volts,
            "W" => Kind::Watts,
            "lb" => Kind::Pounds,
            "s" => Kind::Seconds,
            "h" => Kind::Hours,
            _ => Kind::Bare,
        }
    }

    /// Returns the key of the text that asks for such a number.
    pub(super) fn key(self) -> &'static str {
        match self {
            Kind::Amps => "sum-need-amps",
            Kind::Feet => "sum-need-feet",
            Kind::Rise => "sum-need-rise",
            Kind::Gauge => "sum-need-gauge",
            Kind::Inches => "sum-need-inches",
            Kind::Flow => "sum-need-flow",
            Kind::Pressure => "sum-need-pressure",
            Kind::Degrees => "sum-need-temperature",
            Kind::Wind => "sum-need-wind",
            Kind::Percent => "sum-need-percent",
            Kind::Gallons => "sum-need-gallons",
            Kind::Uses => "sum-need-per-hour",
            Kind::Stalls => "sum-need-stalls",
            Kind::Sinks => "sum-need-sinks",
            Kind::People => "sum-need-people",
            Kind::Volts => "sum-need-volts",
            Kind::Watts => "sum-need-watts",
            Kind::Pounds => "sum-need-pounds",
            Kind::Seconds => "sum-need-seconds",
            Kind::Hours => "sum-need-hours",
            Kind::Bare => "sum-need-number",
        }
    }

    pub(super) fn measure(self) -> Measure {
        match self {
            Kind::Amps => Measure::Amp,
            Kind::Feet | Kind::Rise => Measure::Ft,
            Kind::Gauge => Measure::Awg,
            Kind::Inches => Measure::Inch,
            Kind::Flow => Measure::Gpm,
            Kind::Pressure => Measure::Psi,
            Kind::Degrees => Measure::DegF,
            Kind::Wind => Measure::Mph,
            Kind::Percent => Measure::Pct,
            Kind::Gallons => Measure::Gal,
            Kind::Uses => Measure::PerHour,
            Kind::Volts => Measure::Volt,
            Kind::Watts => Measure::Watt,
            Kind::Pounds => Measure::Lb,
            Kind::Seconds => Measure::Second,
            Kind::Hours => Measure::Hour,
            Kind::Stalls | Kind::Sinks | Kind::People | Kind::Bare => Measure::Count,
        }
    }
}

/// Fills inputs with numbers: each takes the next of its kind; what is left without a unit fills what is still missing, in
/// order. Returns the inputs, and the numbers that none of them takes.
pub(super) fn pick(
    numbers: &[(f64, Kind)],
    takes: &[(String, Kind)],
) -> (Map<String, Value>, Vec<(f64, Kind)>) {
    let mut left: Vec<(f64, Kind)> = numbers.to_vec();
    let mut given = Map::new();
    for (name, kind) in takes {
        if let Some(place) = left.iter().position(|(_, other)| other == kind) {
            given.insert(name.clone(), Value::from(left.remove(place).0));
        }
    }
    // people come by the hour, and are counted, alike
    let near = |kind: Kind, other: Kind| {
        other == Kind::Bare
            || matches!(
                (kind, other),
                (Kind::People, Kind::Uses)
                    | (Kind::Uses, Kind::People)
                    | (Kind::Pounds, Kind::Pressure)
                    | (Kind::Rise, Kind::Feet)
            )
    };
    for (name, kind) in takes {
        if !given.contains_key(name)
            && !has_usual(*kind, takes)
            && let Some(place) = left.iter().position(|(_, other)| near(*kind, *other))
        {
            given.insert(name.clone(), Value::from(left.remove(place).0));
        }
    }
    (given, left)
}

/// Tells whether an input has a value that is usual: then it is taken only where it is told by its own name.
pub(super) fn has_usual(kind: Kind, takes: &[(String, Kind)]) -> bool {
    let many = takes.len() > 1;
    kind == Kind::Wind || many && matches!(kind, Kind::Volts | Kind::Rise)
}

/// Finds the numbers of a text with what they are.
pub(super) fn numbers(text: &str) -> Vec<(f64, Kind)> {
    let text = text.to_lowercase();
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut found = Vec::new();
    for (i, word) in words.iter().enumerate() {
        let end = word
            .char_indices()
            .find(|(at, c)| !(c.is_ascii_digit() || "./,".contains(*c) || (*at == 0 && *c == '-')))
            .map_or(word.len(), |(at, _)| at);
        let (digits, rest) = word.split_at(end);
        let Some(value) = value(digits) else { continue };
        let rest = rest.trim_matches(|c: char| ",;:".contains(c));
        let next = words.get(i + 1).copied().unwrap_or_default();
        let before = i.checked_sub(1).map_or("", |before| words[before]);
        let named = [rest, next].into_iter().find_map(measure);
        // "rise 20", "20 ft up"
        let behind = i + 1 + usize::from(rest.is_empty());
        let of_it = words.get(behind).copied().is_some_and(is_rise);
        // "100 ft rise 20": of the next number
        let next_has_it = words
            .get(behind + 1)
            .is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()));
        let high = is_rise(before) || of_it && !next_has_it;
        let named = named.map(|(kind, scale)| match kind {
            Kind::Feet if high => (Kind::Rise, scale),
            kind => (kind, scale),
        });
        let (kind, scale) = named.or_else(|| beside(before)).unwrap_or((
            if digits.contains('/') {
                Kind::Inches
            } else {
                Kind::Bare
            },
            Scale::Times(1.0),
        ));
        let value = match scale {
            Scale::Times(factor) => value * factor,
            Scale::Celsius => f_from_c(value),
        };
        found.push((value, kind));
    }
    found
}

/// How a number comes to the unit it is held in.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Scale {
    Times(f64),
    Celsius,
}

fn value(digits: &str) -> Option<f64> {
    let digits = digits.trim_end_matches([',', '.']);
    if let Some((top, bottom)) = digits.split_once('/') {
        let (top, bottom): (f64, f64) = (top.parse().ok()?, bottom.parse().ok()?);
        return (bottom > 0.0).then_some(top / bottom);
    }
    // 1,000 is a thousand, 0,75 three quarters
    let plain = match digits.split_once(',') {
        Some((whole, rest)) if rest.len() == 3 && whole != "0" => digits.replace(',', ""),
        _ => digits.replace(',', "."),
    };
    plain.parse().ok().filter(|value: &f64| value.is_finite())
}

/// Reads a unit of measure: the kind of number, and how it comes to the unit it is held in.
fn measure(word: &str) -> Option<(Kind, Scale)> {
    let times = |kind, factor| Some((kind, Scale::Times(factor)));
    let plain = |kind| times(kind, 1.0);
    match word.trim_matches(|c: char| c.is_ascii_punctuation() && c != '%' && c != '"') {
        "a" | "amp" | "amps" | "amperes" | "ampere" | "amperios" => plain(Kind::Amps),
        "v" | "volt" | "volts" | "voltios" => plain(Kind::Volts),
        "w" | "watt" | "watts" | "vatios" => plain(Kind::Watts),
        "kw" => times(Kind::Watts, 1000.0),
        "ft" | "feet" | "foot" | "pies" | "pie" => plain(Kind::Feet),
        "m" | "metros" | "meters" | "metres" => times(Kind::Feet, FT_PER_M),
        "gauge" | "awg" | "ga" | "calibre" => plain(Kind::Gauge),
        "in" | "inch" | "inches" | "pulgada" | "pulgadas" | "\"" => plain(Kind::Inches),
        "mm" => times(Kind::Inches, 1.0 / 25.4),
        "cm" => times(Kind::Inches, 1.0 / 2.54),
        "gpm" => plain(Kind::Flow),
        "lpm" | "l/min" => times(Kind::Flow, 1.0 / LITRES_PER_GAL),
        "lb" | "lbs" | "pounds" | "libras" => plain(Kind::Pounds),
        "kg" | "kilos" => times(Kind::Pounds, LB_PER_KG),
        "f" | "°f" | "ºf" | "degrees" | "grados" => plain(Kind::Degrees),
        "c" | "°c" | "ºc" => Some((Kind::Degrees, Scale::Celsius)),
        "mph" => plain(Kind::Wind),
        "km/h" | "kmh" | "kph" => times(Kind::Wind, MPH_PER_KMH),
        "%" | "percent" | "pct" | "humidity" | "humedad" | "por" => plain(Kind::Percent),
        "gal" | "gallons" | "gallon" | "galones" => plain(Kind::Gallons),
        "l" | "litros" | "liters" | "litres" => times(Kind::Gallons, 1.0 / LITRES_PER_GAL),
        "uses" | "use" | "usos" | "/h" => plain(Kind::Uses),
        "people" | "personas" | "guests" | "invitados" | "workers" | "employees"
        | "trabajadores" | "obreros" | "empleados" | "gente" => plain(Kind::People),
        "stalls" | "stall" | "toilets" | "tazas" | "banos" | "baños" => plain(Kind::Stalls),
        "sinks" | "taps" | "lavabos" | "llaves" => plain(Kind::Sinks),
        "s" | "sec" | "seconds" | "segundos" => plain(Kind::Seconds),
        "h" | "hours" | "horas" => plain(Kind::Hours),
        word => psi_in(word).and_then(|psi| times(Kind::Pressure, psi)),
    }
}

/// Tells whether a word beside a length makes it a height.
fn is_rise(word: &str) -> bool {
    let word = word.trim_matches(|c: char| c.is_ascii_punctuation());
    matches!(
        word,
        "rise"
            | "climb"
            | "climbs"
            | "up"
            | "uphill"
            | "higher"
            | "elevation"
            | "subida"
            | "sube"
            | "altura"
            | "desnivel"
            | "arriba"
    )
}

/// Reads the word before a number that has no unit of its own.
fn beside(word: &str) -> Option<(Kind, Scale)> {
    let kind = match word {
        "wind" | "viento" => Kind::Wind,
        word if is_rise(word) => Kind::Rise,
        "gauge" | "calibre" | "awg" => Kind::Gauge,
        "temp" | "air" | "outside" | "aire" | "afuera" => Kind::Degrees,
        "humidity" | "humedad" => Kind::Percent,
        _ => return None,
    };
    Some((kind, Scale::Times(1.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_known_by_their_units() {
        assert_eq!(
            numbers("sum drop 16 amps 150 ft 14 gauge"),
            [(16.0, Kind::Amps), (150.0, Kind::Feet), (14.0, Kind::Gauge)]
        );
        assert_eq!(
            numbers("sum hose 100ft 3/4 8 gpm"),
            [(100.0, Kind::Feet), (0.75, Kind::Inches), (8.0, Kind::Flow)]
        );
        assert_eq!(
            numbers("sum freeze 3/4 hose 20F wind 10"),
            [
                (0.75, Kind::Inches),
                (20.0, Kind::Degrees),
                (10.0, Kind::Wind)
            ]
        );
        assert_eq!(
            numbers("sum hose 100 ft rise 20"),
            [(100.0, Kind::Feet), (20.0, Kind::Rise)]
        );
        assert_eq!(
            numbers("sum hose 100 ft 3/4, 20 ft up"),
            [
                (100.0, Kind::Feet),
                (0.75, Kind::Inches),
                (20.0, Kind::Rise)
            ]
        );
        assert_eq!(numbers("sum battery 60 uses an hour"), [(60.0, Kind::Uses)]);
        assert_eq!(numbers("cuenta -20c"), [(f_from_c(-20.0), Kind::Degrees)]);
        assert_eq!(numbers("sum weight 1,000 gal"), [(1000.0, Kind::Gallons)]);
    }

    #[test]
    fn inputs_of_one_kind_take_the_numbers_in_order() {
        let takes = [
            ("cold_psi".to_owned(), Kind::Pressure),
            ("from_F".to_owned(), Kind::Degrees),
            ("to_F".to_owned(), Kind::Degrees),
        ];
        let (given, left) = pick(&numbers("sum tire 80 psi 40 f 90 f 3 gal"), &takes);
        assert_eq!(given["from_F"], 40.0);
        assert_eq!(given["to_F"], 90.0);
        assert_eq!(left, [(3.0, Kind::Gallons)]);
    }
}
