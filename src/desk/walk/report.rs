//! What an answer to a step of setting up or leaving reports.

use crate::dialogue::{Round, Way};
use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, Taps};

/// Returns what a yes to the step reports; with `all`, what its text names after it too.
pub(super) fn events_of(round: &Round, all: bool) -> Entry {
    let events: &[Event] = match (round.way, round.step.as_str()) {
        (Way::SetUp, "level") if all => &[
            Event::Leveled,
            Event::Chocked,
            Event::Unhitched,
            Event::JacksDown,
        ],
        (Way::SetUp, "chock") if all => &[Event::Chocked, Event::Unhitched],
        (Way::SetUp, "level") => &[Event::Leveled],
        (Way::SetUp, "chock") => &[Event::Chocked],
        (Way::SetUp, "unhitch") => &[Event::Unhitched],
        (Way::SetUp, "jacks") => &[Event::JacksDown],
        (Way::SetUp, "power") => &[Event::PowerOn],
        (Way::SetUp, "regulator") => &[Event::RegulatorFitted],
        (Way::SetUp, "water") => &[Event::WaterOn],
        (Way::SetUp, "fill") => &[Event::FreshFilled],
        (Way::SetUp, "heater") => &[Event::HeaterOn],
        (Way::Leaving, "closed") => &[Event::Closed],
        (Way::Leaving, "waste") => &[Event::WastePumped],
        (Way::Leaving, "fresh") => &[Event::FreshDrained],
        (Way::Leaving, "water-off") => &[Event::WaterOff],
        (Way::Leaving, "heater-off") => &[Event::HeaterOff],
        (Way::Leaving, "power-off") => &[Event::PowerOff],
        (Way::Leaving, "stowed") => &[Event::Stowed],
        (Way::Leaving, "jacks-up") => &[Event::JacksUp],
        (Way::Leaving, "lights-checked") => &[Event::LightsChecked],
        _ => &[],
    };
    // a yes to what was reported bad says that it is mended
    let mended = Fault::from_code(&round.step).filter(|_| round.way == Way::Leaving);
    Entry {
        events: events.to_vec(),
        cleared: mended.into_iter().collect(),
        ..Entry::default()
    }
}

/// Returns what a bare number reports at the step; none where the step wants none, or it cannot be.
pub(super) fn number_of(round: &Round, number: f64) -> Option<Entry> {
    let key = match (round.way, round.step.as_str()) {
        (Way::SetUp, "level") => ReadingKey::SlopePct,
        (Way::SetUp, "volts") => ReadingKey::Volts,
        (Way::SetUp, "pressure" | "water") => ReadingKey::PressurePsi,
        (Way::Leaving, "waste") => ReadingKey::WastePct,
        (Way::Leaving, "fresh") => ReadingKey::FreshPct,
        (Way::SetUp, "heater") if Amps::PLAUSIBLE.contains(&number) => {
            let mut entry = Entry::default();
            entry.readings.amps.push(Amps {
                circuit: None,
                amps: number,
            });
            return Some(entry);
        }
        _ => return None,
    };
    // "1/4" is a quarter of the tank, and not a quarter of a percent
    let is_level = matches!(key, ReadingKey::WastePct | ReadingKey::FreshPct);
    let number = match is_level && number > 0.0 && number < 1.0 {
        true => number * 100.0,
        false => number,
    };
    if !key.plausible().contains(&number) {
        return None;
    }
    let mut entry = Entry::default();
    entry.readings.set(key, number);
    if key == ReadingKey::PressurePsi {
        entry.readings.taps = Some(Taps::Shut);
    }
    Some(entry)
}
