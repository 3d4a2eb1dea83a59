//! Cold: what freezes when, what the cold package must do, and what the wind does to people.

mod crew;
mod freeze;
mod package;

use chrono::{DateTime, TimeDelta, Utc};

use super::Rule;
use crate::finding::{Facts, Origin};
use crate::heard::{Event, Fault, ReadingKey};
use crate::quantity::Measure;
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[
    freeze::freeze_soon,
    package::tank_heater_on,
    package::no_cold_package,
    package::winterize,
    crew::crew_cold,
    crew::person_cold,
];

/// Pipes and hoses are thought of from here down, °F (common practice, no source).
const CHILL_F: f64 = 40.0;
/// Water freezes, °F (0 °C at sea level: the ice point of ITS-90, 273.15 K).
pub const FREEZE_F: f64 = 32.0;
/// Without a cold package nothing stays in service from here down, °F (common practice, no source).
const DEEP_F: f64 = 0.0;
/// The wind that is taken where nobody read it, mph.
const WIND_TAKEN_MPH: f64 = 10.0;

/// How cold it is, or is to be tonight.
#[derive(Debug, Clone, Copy)]
struct Cold {
    /// The air read today, else the low that is forecast, °F.
    air_f: f64,
    /// Whether it is only a forecast.
    tonight: bool,
    /// When it was read, where that was the evening before.
    held: Option<DateTime<Utc>>,
}

/// Adds the air to the facts: read here, or taken from the trailer beside it.
fn state_air(s: &Situation<'_>, air_f: f64, facts: Facts) -> Facts {
    match s.air_taken_from() {
        Some(unit) => facts.assumed("air", air_f, Measure::DegF).text(
            "air_from",
            unit.as_str(),
            Origin::Assumed,
        ),
        None => facts.read("air", air_f, Measure::DegF),
    }
}

impl Cold {
    /// The air as read today; where a low is forecast under a milder air, that counts as tonight's.
    fn of(s: &Situation<'_>) -> Option<Cold> {
        let air = s.air_f();
        let low = s.recent(ReadingKey::LowF, TimeDelta::hours(18));
        let cold = |air_f, tonight, held| Cold {
            air_f,
            tonight,
            held,
        };
        match (air, s.frost_held(), low) {
            (Some(air), _, Some(low)) if low < air && air > FREEZE_F => Some(cold(low, true, None)),
            (Some(air), ..) => Some(cold(air, false, None)),
            (None, Some((air, at)), _) => Some(cold(air, false, Some(at))),
            (None, None, Some(low)) => Some(cold(low, true, None)),
            (None, None, None) => None,
        }
    }

    /// Adds the temperature to the facts, under the name that says what it is.
    fn state(self, s: &Situation<'_>, facts: Facts) -> Facts {
        match self.held {
            Some(at) => {
                facts
                    .read("air", self.air_f, Measure::DegF)
                    .time("air_at", at, Origin::Read)
            }
            None if self.tonight => facts.read("low", self.air_f, Measure::DegF),
            None => state_air(s, self.air_f, facts),
        }
    }
}

/// Returns the wind, and whether it was read or taken.
fn wind(s: &Situation<'_>) -> (f64, Origin) {
    match s.wind_mph() {
        Some(told) if s.wind_reported.is_some() => (told, Origin::Report),
        Some(read) => (read, Origin::Read),
        None => (WIND_TAKEN_MPH, Origin::Assumed),
    }
}

/// Tells whether the message bears on freezing.
fn bears(s: &Situation<'_>) -> bool {
    s.touches(
        &[ReadingKey::AirF, ReadingKey::LowF, ReadingKey::WindMph],
        &[
            Event::PowerLost,
            Event::PowerOff,
            Event::HeaterOff,
            Event::WaterOn,
        ],
        &[Fault::NoPower, Fault::NoHeat, Fault::Frozen],
    )
}
