//! What was logged, said back in words, so that a misreading is seen.

use super::voice::{Arg, Voice};
use crate::fleet::{GaugeKind, TankShape, Trailer};
use crate::heard::{Entry, Event, Fault, ReadingKey, Taps};
use crate::physics::tank::cylinder_fill;
use crate::quantity::Measure;

impl Voice<'_> {
    /// Says what an entry reports: `arrived, chocked; water 95 psi, waste 3/4 (about 375 gal); no hot water`.
    ///
    /// With the trailer's spec, a tank level is given in gallons too.
    pub fn readings(&self, entry: &Entry, spec: Option<&Trailer>) -> String {
        let mut groups = Vec::with_capacity(4);
        let events = entry
            .events
            .iter()
            .map(|event| self.coded("event", event.code()));
        groups.push(events.collect::<Vec<_>>().join(", "));
        groups.push(self.numbers(entry, spec).join(", "));
        groups.push(self.faults(&entry.faults));
        let hazards = entry.hazards.iter().map(|code| self.hazard(code));
        groups.push(hazards.collect::<Vec<_>>().join(", "));
        let mut over = vec![self.faults(&entry.cleared)];
        over.extend(entry.hazards_over.iter().map(|code| self.hazard(code)));
        over.retain(|name| !name.is_empty());
        if !over.is_empty() {
            let over = over.join(", ");
            groups.push(self.say("logged-cleared", &[("faults", over.into())]));
        }
        groups.retain(|group| !group.is_empty());
        groups.join("; ")
    }

    /// Returns the few words for a fault: `no hot water`.
    pub fn fault(&self, fault: Fault) -> String {
        self.coded("fault", fault.code())
    }

    /// Returns the few words for what can hurt somebody and is no fault: `a relief valve that blows`.
    pub fn hazard(&self, code: &str) -> String {
        self.coded("name-site-unsafe", code)
    }

    /// Returns the few words for an event: `filter cleaned or changed`.
    pub fn event(&self, event: Event) -> String {
        self.coded("event", event.code())
    }

    /// Says the text of a coded word: `event-waste-pumped`.
    pub(super) fn coded(&self, family: &str, code: &str) -> String {
        let mut key = String::with_capacity(family.len() + code.len() + 1);
        key.push_str(family);
        key.push('-');
        key.extend(
            code.chars()
                .map(|c| if c == '_' || c == '.' { '-' } else { c }),
        );
        self.word(&key)
    }

    /// Names faults; a smell of gas is no second smell.
    fn faults(&self, faults: &[Fault]) -> String {
        let gas = faults.contains(&Fault::GasSmell);
        let named = faults
            .iter()
            .filter(|fault| !(gas && **fault == Fault::Odor))
            .map(|fault| self.coded("fault", fault.code()));
        named.collect::<Vec<_>>().join(", ")
    }

    fn numbers(&self, entry: &Entry, spec: Option<&Trailer>) -> Vec<String> {
        let readings = &entry.readings;
        let mut said = Vec::with_capacity(readings.values.len() + 2);
        for (key, value) in &readings.values {
            let mut text = self.reading(*key, *value, spec);
            if *key == ReadingKey::PressurePsi
                && let Some(taps) = readings.taps
            {
                text.push(' ');
                self.write(&mut text, taps_key(taps), &[]);
            }
            said.push(text);
        }
        if let Some(taps) = readings.taps
            && !readings.values.contains_key(&ReadingKey::PressurePsi)
        {
            said.push(self.word(taps_key(taps)));
        }
        for current in &readings.amps {
            let amps = Arg::Number(current.amps, Measure::Amp);
            said.push(match current.circuit {
                Some(circuit) => self.say(
                    "reading-amps-circuit",
                    &[("circuit", Arg::Count(circuit.into())), ("value", amps)],
                ),
                None => self.say("reading-amps", &[("value", amps)]),
            });
        }
        if let Some(circuits) = &readings.circuits_live {
            let numbers: Vec<String> = circuits.iter().map(u8::to_string).collect();
            said.push(self.say(
                "reading-circuits-live",
                &[
                    ("count", circuits.len().into()),
                    ("circuits", self.all_of(&numbers).into()),
                ],
            ));
        }
        said
    }

    /// Says one reading with its name and unit: `waste 3/4 (about 375 gal)`.
    pub fn reading(&self, key: ReadingKey, value: f64, spec: Option<&Trailer>) -> String {
        let text_key = reading_key(key);
        let gallons = spec.and_then(|spec| gallons(key, value, spec));
        match key {
            ReadingKey::WastePct | ReadingKey::FreshPct => {
                let level = Arg::from(self.level(value));
                match gallons {
                    Some((gal, floor)) => {
                        let gal = self.number(gal, Measure::Gal);
                        let floor = if floor { "yes" } else { "no" };
                        let args = [
                            ("level", level),
                            ("gallons", gal.into()),
                            ("floor", floor.into()),
                        ];
                        self.say(&format!("{text_key}-gal"), &args)
                    }
                    None => self.say(text_key, &[("level", level)]),
                }
            }
            ReadingKey::Cords | ReadingKey::Guests | ReadingKey::StallsOut => {
                self.say(text_key, &[("value", Arg::Count(value.round() as i64))])
            }
            other => self.say(text_key, &[("value", Arg::Number(value, measure(other)))]),
        }
    }

    /// Prints a tank level the way crews read gauges: `empty`, `3/4`, `full`; in percent between the marks.
    pub fn level(&self, pct: f64) -> String {
        const MARKS: [(f64, &str); 9] = [
            (12.5, "1/8"),
            (25.0, "1/4"),
            (100.0 / 3.0, "1/3"),
            (37.5, "3/8"),
            (50.0, "1/2"),
            (62.5, "5/8"),
            (200.0 / 3.0, "2/3"),
            (75.0, "3/4"),
            (87.5, "7/8"),
        ];
        if pct == 0.0 {
            return self.word("level-empty");
        }
        if pct == 100.0 {
            return self.word("level-full");
        }
        match MARKS.iter().find(|(mark, _)| (mark - pct).abs() < 0.1) {
            Some((_, fraction)) => (*fraction).to_owned(),
            None => self.number(pct, Measure::Pct),
        }
    }
}

fn taps_key(taps: Taps) -> &'static str {
    match taps {
        Taps::Shut => "taps-shut",
        Taps::Running => "taps-running",
    }
}

/// Returns the gallons that a gauge reading stands for, and whether they are the least there can be.
fn gallons(key: ReadingKey, pct: f64, spec: &Trailer) -> Option<(f64, bool)> {
    let (tank, gauge, shape) = match key {
        ReadingKey::WastePct => (spec.waste_gal, Some(spec.waste_gauge.kind), spec.waste_tank),
        ReadingKey::FreshPct => (spec.fresh_gal, None, TankShape::Box),
        _ => return None,
    };
    if tank <= 0.0 || pct == 0.0 {
        return None;
    }
    // between the lamps it is somebody's estimate, whatever the gauge
    let step = spec.waste_gauge.step_pct;
    let on_lamp = step > 0.0 && (pct / step - (pct / step).round()).abs() < 0.01;
    let floor = gauge == Some(GaugeKind::Lamps) && on_lamp && pct < 100.0;
    let fill = match shape {
        TankShape::Box => pct / 100.0,
        // the gauge of a lying cylinder shows depth, which is not volume
        TankShape::Cylinder { .. } => cylinder_fill(pct / 100.0),
    };
    Some((tank * fill, floor))
}

fn reading_key(key: ReadingKey) -> &'static str {
    match key {
        ReadingKey::PressurePsi => "reading-pressure",
        ReadingKey::SupplyPsi => "reading-supply",
        ReadingKey::FlowGpm => "reading-flow",
        ReadingKey::HoseFt => "reading-hose",
        ReadingKey::WastePct => "reading-waste",
        ReadingKey::WasteGal => "reading-waste-held",
        ReadingKey::FreshPct => "reading-fresh",
        ReadingKey::FreshGal => "reading-fresh-held",
        ReadingKey::PumpedGal => "reading-pumped",
        ReadingKey::AirF => "reading-air",
        ReadingKey::InsideF => "reading-inside",
        ReadingKey::LowF => "reading-low",
        ReadingKey::HumidityPct => "reading-humidity",
        ReadingKey::WindMph => "reading-wind",
        ReadingKey::SlopePct => "reading-slope",
        ReadingKey::Volts => "reading-volts",
        ReadingKey::VoltsHigh => "reading-volts-high",
        ReadingKey::VoltsLow => "reading-volts-low",
        ReadingKey::BatteryV | ReadingKey::BatteryPct => "reading-battery",
        ReadingKey::Cords => "reading-cords",
        ReadingKey::CordFt => "reading-cord",
        ReadingKey::CordAwg => "reading-cord-gauge",
        ReadingKey::FuelGal | ReadingKey::FuelPct => "reading-fuel",
        ReadingKey::Guests => "reading-guests",
        ReadingKey::EtaMin => "reading-eta",
        ReadingKey::StallsOut => "reading-stalls-out",
    }
}

/// Returns the unit of measure in which a reading is held.
pub(super) fn measure(key: ReadingKey) -> Measure {
    match key {
        ReadingKey::PressurePsi | ReadingKey::SupplyPsi => Measure::Psi,
        ReadingKey::FlowGpm => Measure::Gpm,
        ReadingKey::HoseFt | ReadingKey::CordFt => Measure::Ft,
        ReadingKey::CordAwg => Measure::Awg,
        ReadingKey::WastePct
        | ReadingKey::FreshPct
        | ReadingKey::HumidityPct
        | ReadingKey::SlopePct
        | ReadingKey::BatteryPct
        | ReadingKey::FuelPct => Measure::Pct,
        ReadingKey::WasteGal
        | ReadingKey::FreshGal
        | ReadingKey::PumpedGal
        | ReadingKey::FuelGal => Measure::Gal,
        ReadingKey::AirF | ReadingKey::InsideF | ReadingKey::LowF => Measure::DegF,
        ReadingKey::WindMph => Measure::Mph,
        ReadingKey::Volts | ReadingKey::VoltsHigh | ReadingKey::VoltsLow | ReadingKey::BatteryV => {
            Measure::Volt
        }
        ReadingKey::Cords | ReadingKey::Guests | ReadingKey::StallsOut => Measure::Count,
        ReadingKey::EtaMin => Measure::Minute,
    }
}
