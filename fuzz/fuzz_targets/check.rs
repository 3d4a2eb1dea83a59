//! What must hold of the reading of any text, whoever made it up.

use hosebib::heard::{Heard, ReadingKey};
use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};

/// Reads `text` and holds what comes of it against what must be true of every reading.
pub(crate) fn reading(reader: &Reader, text: &str, scale: TemperatureScale) -> Heard {
    let heard = reader.hear(text, scale);
    for entry in &heard.entries {
        assert!(
            !entry.is_empty(),
            "{text:?} gives an entry with nothing in it"
        );
        for (key, value) in &entry.readings.values {
            let most = most(*key);
            let least = if most < 200.0 && temperature(*key) {
                -60.0
            } else {
                0.0
            };
            assert!(
                (least..=most).contains(value),
                "{text:?} logs {key} {value}, outside of {least} to {most}"
            );
        }
        for amps in &entry.readings.amps {
            assert!((0.0..=60.0).contains(&amps.amps), "{text:?} logs {amps:?}");
            assert!(
                amps.circuit.is_none_or(|n| (1..=4).contains(&n)),
                "{text:?} logs {amps:?}"
            );
        }
        let name = entry.unit.as_ref().map_or("-", |unit| unit.as_str());
        assert!(!name.is_empty(), "{text:?} names a trailer by nothing");
    }
    // what is asked about or set aside is quoted, and only what was written can be
    for remark in heard.unclear.iter().chain(&heard.set_aside) {
        assert!(!remark.why.is_empty(), "{text:?}: {remark:?}");
        assert!(
            text.contains(&remark.text),
            "{text:?} has no {:?}",
            remark.text
        );
    }
    for taken in &heard.taken {
        assert!(
            text.contains(&taken.typed),
            "{text:?} has no {:?}",
            taken.typed
        );
    }
    to_json(text, &heard);
    heard
}

fn temperature(key: ReadingKey) -> bool {
    matches!(
        key,
        ReadingKey::AirF | ReadingKey::InsideF | ReadingKey::LowF
    )
}

/// The most that a reading can be; outside of it a number is asked about and not logged.
fn most(key: ReadingKey) -> f64 {
    use ReadingKey as K;
    match key {
        K::PressurePsi | K::SupplyPsi => 250.0,
        K::FlowGpm | K::StallsOut => 20.0,
        K::HoseFt | K::CordFt => 5_000.0,
        K::WastePct | K::FreshPct | K::BatteryPct | K::FuelPct | K::HumidityPct | K::SlopePct => {
            100.0
        }
        K::WasteGal | K::FreshGal | K::PumpedGal | K::FuelGal => 20_000.0,
        K::AirF | K::InsideF | K::LowF => 130.0,
        K::WindMph => 120.0,
        K::Volts | K::VoltsHigh | K::VoltsLow => 300.0,
        K::BatteryV => 16.0,
        K::Cords => 4.0,
        K::Guests => 200_000.0,
        K::CordAwg => 18.0,
        K::EtaMin => 720.0,
    }
}
