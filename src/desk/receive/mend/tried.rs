//! A number tried in the place of each reading of a report.

use super::Told;
use crate::desk::receive::Hearing;
use crate::dialogue::Mend;
use crate::heard::ReadingKey;
use crate::quantity::{PSI_PER_BAR, TemperatureScale, c_from_f, rounded};

/// A number that corrects another is of its size, up to this ratio.
const LIKE_SIZE: f64 = 2.5;
/// Temperatures have no ratio: this far apart, °F.
const LIKE_WARMTH: f64 = 60.0;

impl Hearing<'_> {
    /// Tries a number in the place of every reading: those of the old one's size, and the others.
    pub(super) fn values(&self, right: &str, told: &[Told]) -> (Vec<Mend>, Vec<Mend>) {
        let mut near = Vec::new();
        let mut far = Vec::new();
        for (unit, _, entry) in told {
            for (key, was) in &entry.readings.values {
                let Some(value) = self.tried(*key, *was, right) else {
                    continue;
                };
                let way = Mend::Value {
                    unit: unit.clone(),
                    key: *key,
                    was: *was,
                    value,
                };
                if alike(*key, *was, value) {
                    near.push(way);
                } else {
                    far.push(way);
                }
            }
            for current in &entry.readings.amps {
                let circuit = current.circuit.unwrap_or(1);
                let heard = self.desk.reader.hear(
                    &format!(
                        "circuit {circuit} {} amps",
                        right.trim_end_matches("amps").trim()
                    ),
                    self.fleet.style.temperature,
                );
                let [read] = heard.entries.as_slice() else {
                    continue;
                };
                if let [amps] = read.readings.amps.as_slice() {
                    let way = Mend::Amps {
                        unit: unit.clone(),
                        circuit: current.circuit,
                        amps: amps.amps,
                    };
                    if alike(ReadingKey::FlowGpm, current.amps, amps.amps) {
                        near.push(way);
                    } else {
                        far.push(way);
                    }
                }
            }
        }
        (near, far)
    }

    /// "perdón, centígrados": the number of each reading as it was told, in another measure.
    pub(super) fn in_measure(&self, measure: &str, told: &[Told]) -> Vec<Mend> {
        use ReadingKey as K;
        let celsius = self.fleet.style.temperature == TemperatureScale::C;
        let mut ways = Vec::new();
        for (unit, _, entry) in told {
            for (key, was) in &entry.readings.values {
                let number = match key {
                    K::AirF | K::InsideF | K::LowF if celsius => c_from_f(*was),
                    _ => *was,
                };
                let right = format!("{} {measure}", rounded(number));
                let value = self.tried(*key, *was, &right);
                ways.extend(
                    value
                        .filter(|value| (value - was).abs() > 0.05)
                        .map(|value| Mend::Value {
                            unit: unit.clone(),
                            key: *key,
                            was: *was,
                            value,
                        }),
                );
            }
        }
        ways
    }

    /// Reads a number as another value of one reading; none where it cannot be one.
    fn tried(&self, key: ReadingKey, was: f64, right: &str) -> Option<f64> {
        let bare = right.trim().trim_start_matches(['-', '+', '−']);
        let bare = !bare.is_empty()
            && bare
                .chars()
                .all(|c| c.is_ascii_digit() || c == '.' || c == ',');
        let by_marks = |pct: f64| (pct / 12.5).fract() == 0.0 || (pct * 3.0 / 100.0).fract() < 0.02;
        let (before, after) = match key {
            // "4.5 bares", then "3.2": a correction keeps the unit it mends
            ReadingKey::PressurePsi if bare && in_bars(was, right.trim().parse().ok()?) => {
                ("pressure ", " bar")
            }
            ReadingKey::PressurePsi => ("pressure ", if bare { " psi" } else { "" }),
            ReadingKey::SupplyPsi => ("supply ", if bare { " psi" } else { "" }),
            // a level told by the gauge's marks is mended by them
            ReadingKey::WastePct | ReadingKey::FreshPct | ReadingKey::FuelPct
                if bare && by_marks(was) && !by_marks(right.trim().parse().ok()?) =>
            {
                return None;
            }
            ReadingKey::WastePct => ("waste ", if bare { "%" } else { "" }),
            ReadingKey::FreshPct => ("fresh ", if bare { "%" } else { "" }),
            ReadingKey::FuelPct => ("fuel ", if bare { "%" } else { "" }),
            ReadingKey::BatteryPct => ("battery ", if bare { "%" } else { "" }),
            ReadingKey::WasteGal => ("waste ", if bare { " gal" } else { "" }),
            ReadingKey::FreshGal => ("fresh ", if bare { " gal" } else { "" }),
            ReadingKey::FuelGal => ("fuel ", if bare { " gal" } else { "" }),
            ReadingKey::PumpedGal => ("pumped ", if bare { " gal" } else { "" }),
            ReadingKey::HoseFt => ("hose ", if bare { " ft" } else { "" }),
            ReadingKey::CordFt => ("cord ", if bare { " ft" } else { "" }),
            ReadingKey::CordAwg => ("cord ", if bare { " gauge" } else { "" }),
            ReadingKey::FlowGpm => ("flow ", ""),
            ReadingKey::AirF => ("outside ", ""),
            ReadingKey::InsideF => ("inside temp ", ""),
            ReadingKey::LowF => ("low tonight ", ""),
            ReadingKey::HumidityPct => ("humidity ", ""),
            ReadingKey::WindMph => ("wind ", ""),
            ReadingKey::SlopePct => ("slope ", if bare { "%" } else { "" }),
            ReadingKey::Volts | ReadingKey::VoltsHigh | ReadingKey::VoltsLow => {
                ("outlet ", if bare { " volts" } else { "" })
            }
            ReadingKey::BatteryV => ("battery ", if bare { " volts" } else { "" }),
            ReadingKey::Cords => ("cords ", ""),
            ReadingKey::Guests => ("guests ", ""),
            ReadingKey::EtaMin => ("eta ", if bare { " min" } else { "" }),
            ReadingKey::StallsOut => ("", if bare { " stalls out" } else { "" }),
        };
        let text = format!("{before}{right}{after}");
        let heard = self.desk.reader.hear(&text, self.fleet.style.temperature);
        match heard.entries.as_slice() {
            [entry] if heard.unclear.is_empty() && entry.readings.values.len() == 1 => {
                entry.readings.value(key)
            }
            _ => None,
        }
    }
}

/// Tells whether a number is of the size of a pressure only in bar.
fn in_bars(was_psi: f64, value: f64) -> bool {
    let key = ReadingKey::PressurePsi;
    !alike(key, was_psi, value) && alike(key, was_psi, value * PSI_PER_BAR)
}

/// Tells whether a number is of the size of the one it would mend.
fn alike(key: ReadingKey, was: f64, value: f64) -> bool {
    match key {
        ReadingKey::WastePct
        | ReadingKey::FreshPct
        | ReadingKey::FuelPct
        | ReadingKey::BatteryPct
        | ReadingKey::HumidityPct => true,
        ReadingKey::AirF | ReadingKey::InsideF | ReadingKey::LowF => {
            (was - value).abs() <= LIKE_WARMTH
        }
        _ => {
            let (was, value) = (was.abs().max(1.0), value.abs().max(1.0));
            was / value <= LIKE_SIZE && value / was <= LIKE_SIZE
        }
    }
}
