//! A sum asked in chat: "sum drop 16 amps 150 ft 14 gauge". Nothing in such a message is logged.
//!
//! A sum is known by a word of its own, and takes the numbers that follow by their units of measure. What it computes is
//! a quantity of [`crate::physics::sum`], the one that the rules use.

use super::answer::Reply;
use super::receive::Hearing;
use crate::physics::sum::answer_numbers;
use crate::quantity::{FT_PER_M, LITRES_PER_GAL, MPH_PER_KMH, Measure, PSI_PER_BAR, f_from_c};
use crate::reply::Voice;

/// A quantity that can be asked for in chat.
struct ChatSum {
    /// The words it is known by, English and Spanish.
    words: &'static [&'static str],
    /// What it answers with, in order: the quantity, the key of its name, the measure it is printed in.
    answers: &'static [(&'static str, &'static str, Measure)],
    /// The inputs it takes, each with the kind of number it is filled from.
    inputs: &'static [(&'static str, Kind)],
}

/// What a number in the message is, by its unit of measure or the word beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Amps,
    Feet,
    Gauge,
    Inches,
    Gpm,
    Psi,
    DegF,
    Mph,
    Percent,
    Gallons,
    PerHour,
    Stalls,
    Bare,
}

const SUMS: &[ChatSum] = &[
    ChatSum {
        words: &["drop", "caida", "caída"],
        answers: &[
            ("voltage_drop_V", "sum-drop", Measure::Volt),
            ("voltage_drop_pct", "sum-drop-pct", Measure::Pct),
        ],
        inputs: &[
            ("amps", Kind::Amps),
            ("one_way_ft", Kind::Feet),
            ("awg", Kind::Gauge),
        ],
    },
    ChatSum {
        words: &["freeze", "hiela", "helada", "congela"],
        answers: &[
            ("hose_hours_to_32F", "sum-freeze", Measure::Hour),
            ("hose_hours_to_blocked", "sum-blocked", Measure::Hour),
        ],
        inputs: &[
            ("id_in", Kind::Inches),
            ("air_F", Kind::DegF),
            ("wind_mph", Kind::Mph),
        ],
    },
    ChatSum {
        words: &["hose", "manguera"],
        answers: &[("hose_loss_hazen_williams_psi", "sum-hose", Measure::Psi)],
        inputs: &[
            ("length_ft", Kind::Feet),
            ("id_in", Kind::Inches),
            ("flow_gpm", Kind::Gpm),
        ],
    },
    ChatSum {
        words: &["flow", "caudal"],
        answers: &[("max_flow_gpm_at_residual", "sum-flow", Measure::Gpm)],
        inputs: &[
            ("static_psi", Kind::Psi),
            ("length_ft", Kind::Feet),
            ("id_in", Kind::Inches),
        ],
    },
    ChatSum {
        words: &["battery", "bateria", "batería"],
        answers: &[("battery_hours_at_uses", "sum-battery", Measure::Hour)],
        inputs: &[("uses_per_h", Kind::PerHour)],
    },
    ChatSum {
        words: &["chill", "sensacion", "sensación"],
        answers: &[("wind_chill_F", "sum-chill", Measure::DegF)],
        inputs: &[("air_F", Kind::DegF), ("wind_mph", Kind::Mph)],
    },
    ChatSum {
        words: &["heat", "calor"],
        answers: &[("heat_index_F", "sum-heat", Measure::DegF)],
        inputs: &[("air_F", Kind::DegF), ("rh_pct", Kind::Percent)],
    },
    ChatSum {
        words: &["fill", "llenar"],
        answers: &[("fill_time_min", "sum-fill", Measure::Minute)],
        inputs: &[("gal", Kind::Gallons), ("flow_gpm", Kind::Gpm)],
    },
    ChatSum {
        words: &["tank", "waste", "tanque"],
        answers: &[("waste_hours_to_stop", "sum-tank", Measure::Hour)],
        inputs: &[
            ("tank_gal", Kind::Gallons),
            ("level_pct", Kind::Percent),
            ("uses_per_h", Kind::PerHour),
        ],
    },
    ChatSum {
        words: &["queue", "line", "fila"],
        answers: &[("mmc_mean_wait_s", "sum-queue", Measure::Second)],
        inputs: &[("servers", Kind::Stalls), ("arrivals_h", Kind::PerHour)],
    },
    ChatSum {
        words: &["weight", "weigh", "peso"],
        answers: &[("liquid_lb", "sum-weight", Measure::Lb)],
        inputs: &[("gal", Kind::Gallons)],
    },
];

/// Answers a sum, or says how to ask one.
pub(super) fn answer(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let text = hearing.text.to_lowercase();
    let mut words = text
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty())
        .skip(1);
    let Some(sum) = words.find_map(|word| SUMS.iter().find(|sum| sum.words.contains(&word))) else {
        let known: Vec<String> = SUMS
            .iter()
            .map(|sum| reply.voice.word(sum.answers[0].1))
            .collect();
        let known = reply.voice.one_of(&known);
        reply.say("sum-unknown", &[("names", known.into())]);
        reply.say("sum-how", &[]);
        return;
    };
    let numbers = numbers(&text);
    let mut inputs: Vec<(&str, f64)> = Vec::new();
    for (name, kind) in sum.inputs {
        if let Some(value) = pick(&numbers, *kind, sum) {
            inputs.push((name, value));
        }
    }
    let mut told = false;
    for (quantity, name, measure) in sum.answers {
        match answer_numbers(quantity, &inputs) {
            Ok(found) => {
                told = true;
                let value = match found.value.as_f64() {
                    Some(value) => reply.voice.number(value, *measure),
                    None => reply.voice.word("sum-never"),
                };
                let name = reply.voice.word(name);
                reply.say(
                    "sum-result",
                    &[
                        ("name", name.into()),
                        ("value", value.into()),
                        ("source", found.source.into()),
                    ],
                );
                let taken = assumptions(&reply.voice, &found.assumed, sum);
                if !taken.is_empty() && *quantity == sum.answers[0].0 {
                    let taken = reply.voice.all_of(&taken);
                    reply.say("sum-assumed", &[("what", taken.into())]);
                }
            }
            Err(_) if told => {}
            Err(_) => {
                let wanted: Vec<String> = sum
                    .inputs
                    .iter()
                    .filter(|(input, _)| !inputs.iter().any(|(given, _)| given == input))
                    .map(|(_, kind)| reply.voice.word(kind.key()))
                    .collect();
                let wanted = reply.voice.all_of(&wanted);
                if wanted.is_empty() {
                    reply.say("sum-out-of-range", &[]);
                } else {
                    reply.say("sum-missing", &[("what", wanted.into())]);
                }
                reply.say("sum-how", &[]);
                return;
            }
        }
    }
}

/// Says what was taken for want of a number, where the chat could have given one.
fn assumptions(
    voice: &Voice<'_>,
    assumed: &[(&'static str, serde_json::Value)],
    sum: &ChatSum,
) -> Vec<String> {
    let told = assumed.iter().filter_map(|(name, value)| {
        let (_, kind) = sum.inputs.iter().find(|(input, _)| input == name)?;
        let shown = voice.number(value.as_f64()?, kind.measure());
        Some(voice.say(kind.key(), &[]) + " " + &shown)
    });
    told.collect()
}

impl Kind {
    /// Returns the key of the text that asks for such a number.
    fn key(self) -> &'static str {
        match self {
            Kind::Amps => "sum-need-amps",
            Kind::Feet => "sum-need-feet",
            Kind::Gauge => "sum-need-gauge",
            Kind::Inches => "sum-need-inches",
            Kind::Gpm => "sum-need-flow",
            Kind::Psi => "sum-need-pressure",
            Kind::DegF => "sum-need-temperature",
            Kind::Mph => "sum-need-wind",
            Kind::Percent => "sum-need-percent",
            Kind::Gallons => "sum-need-gallons",
            Kind::PerHour => "sum-need-per-hour",
            Kind::Stalls => "sum-need-stalls",
            Kind::Bare => "sum-need-number",
        }
    }

    fn measure(self) -> Measure {
        match self {
            Kind::Amps => Measure::Amp,
            Kind::Feet => Measure::Ft,
            Kind::Gauge => Measure::Awg,
            Kind::Inches => Measure::Inch,
            Kind::Gpm => Measure::Gpm,
            Kind::Psi => Measure::Psi,
            Kind::DegF => Measure::DegF,
            Kind::Mph => Measure::Mph,
            Kind::Percent => Measure::Pct,
            Kind::Gallons => Measure::Gal,
            Kind::PerHour => Measure::PerHour,
            Kind::Stalls | Kind::Bare => Measure::Count,
        }
    }
}

/// Takes the number of a kind; a bare one only where the sum needs no other of that sort.
fn pick(numbers: &[(f64, Kind)], kind: Kind, sum: &ChatSum) -> Option<f64> {
    let of = |wanted| {
        numbers
            .iter()
            .find(|(_, kind)| *kind == wanted)
            .map(|(value, _)| *value)
    };
    of(kind).or_else(|| {
        // one number without a unit can only be the one thing that is still missing
        let missing = sum
            .inputs
            .iter()
            .filter(|(_, other)| of(*other).is_none())
            .count();
        (missing == 1 && kind != Kind::Mph)
            .then(|| of(Kind::Bare))
            .flatten()
    })
}

/// Finds the numbers of a text with what they are.
fn numbers(text: &str) -> Vec<(f64, Kind)> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut found = Vec::new();
    for (i, word) in words.iter().enumerate() {
        let end = word
            .char_indices()
            .find(|(at, c)| !(c.is_ascii_digit() || "./,".contains(*c) || (*at == 0 && *c == '-')))
            .map_or(word.len(), |(at, _)| at);
        let (digits, rest) = word.split_at(end);
        let Some(value) = value(digits) else { continue };
        let rest = rest.trim_matches(|c: char| ",;:\"".contains(c));
        let next = words.get(i + 1).copied().unwrap_or_default();
        let before = i.checked_sub(1).map_or("", |before| words[before]);
        let named = [rest, next].into_iter().find_map(measure);
        let kind = named.or_else(|| beside(before)).unwrap_or((
            if digits.contains('/') {
                Kind::Inches
            } else {
                Kind::Bare
            },
            1.0,
            0.0,
        ));
        let (kind, factor, celsius) = kind;
        found.push((
            if celsius > 0.0 {
                f_from_c(value)
            } else {
                value * factor
            },
            kind,
        ));
    }
    found
}

fn value(digits: &str) -> Option<f64> {
    let digits = digits.trim_end_matches([',', '.']);
    if let Some((top, bottom)) = digits.split_once('/') {
        let (top, bottom): (f64, f64) = (top.parse().ok()?, bottom.parse().ok()?);
        return (bottom > 0.0).then_some(top / bottom);
    }
    digits
        .replace(',', ".")
        .parse()
        .ok()
        .filter(|value: &f64| value.is_finite())
}

/// Reads a unit of measure: the kind of number, the factor to the unit it is held in, and 1 for degrees Celsius.
fn measure(word: &str) -> Option<(Kind, f64, f64)> {
    let plain = |kind| Some((kind, 1.0, 0.0));
    match word.trim_matches(|c: char| c.is_ascii_punctuation() && c != '%' && c != '"') {
        "a" | "amp" | "amps" | "amperes" | "amperios" => plain(Kind::Amps),
        "ft" | "feet" | "foot" | "pies" | "pie" => plain(Kind::Feet),
        "m" | "metros" | "meters" | "metres" => Some((Kind::Feet, FT_PER_M, 0.0)),
        "gauge" | "awg" | "ga" | "calibre" => plain(Kind::Gauge),
        "in" | "inch" | "inches" | "pulgada" | "pulgadas" | "\"" => plain(Kind::Inches),
        "mm" => Some((Kind::Inches, 1.0 / 25.4, 0.0)),
        "gpm" => plain(Kind::Gpm),
        "lpm" | "l/min" => Some((Kind::Gpm, 1.0 / LITRES_PER_GAL, 0.0)),
        "psi" | "libras" => plain(Kind::Psi),
        "bar" => Some((Kind::Psi, PSI_PER_BAR, 0.0)),
        "f" | "°f" | "ºf" | "degrees" | "grados" => plain(Kind::DegF),
        "c" | "°c" | "ºc" => Some((Kind::DegF, 1.0, 1.0)),
        "mph" => plain(Kind::Mph),
        "km/h" | "kmh" => Some((Kind::Mph, MPH_PER_KMH, 0.0)),
        "%" | "percent" | "pct" | "humidity" | "humedad" => plain(Kind::Percent),
        "gal" | "gallons" | "gallon" | "galones" => plain(Kind::Gallons),
        "l" | "litros" | "liters" | "litres" => Some((Kind::Gallons, 1.0 / LITRES_PER_GAL, 0.0)),
        "uses" | "use" | "usos" | "/h" | "an" | "people" | "personas" => plain(Kind::PerHour),
        "stalls" | "toilets" | "tazas" => plain(Kind::Stalls),
        _ => None,
    }
}

/// Reads the word before a number that has no unit of its own.
fn beside(word: &str) -> Option<(Kind, f64, f64)> {
    let kind = match word {
        "wind" | "viento" => Kind::Mph,
        "gauge" | "calibre" | "awg" => Kind::Gauge,
        "temp" | "air" | "outside" => Kind::DegF,
        _ => return None,
    };
    Some((kind, 1.0, 0.0))
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
            [(100.0, Kind::Feet), (0.75, Kind::Inches), (8.0, Kind::Gpm)]
        );
        assert_eq!(
            numbers("sum freeze 3/4 hose 20f wind 10"),
            [(0.75, Kind::Inches), (20.0, Kind::DegF), (10.0, Kind::Mph)]
        );
        assert_eq!(
            numbers("sum battery 60 uses an hour"),
            [(60.0, Kind::PerHour)]
        );
        assert_eq!(numbers("cuenta -20c"), [(-4.0, Kind::DegF)]);
    }
}
