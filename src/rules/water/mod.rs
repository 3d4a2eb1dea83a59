//! Water: pressure too high, too low or falling, a hose too thin, a tank running out.

mod fresh;
mod low;
mod over;
mod supply;

use super::Rule;
use crate::book::PressureRead;
use crate::heard::{ReadingKey, Taps};
use crate::situation::{Occasion, Situation};
use chrono::TimeDelta;

pub(super) const RULES: &[Rule] = &[
    over::over_pressure,
    low::under_pressure,
    low::pressure_falling,
    low::backflow,
    low::no_backflow_device,
    supply::hose_undersized,
    fresh::fresh_endurance,
];

/// Returns the last pressure at the trailer where the message bears on it: one it reads, or, asked, one of the last day.
fn pressure<'a>(s: &'a Situation<'_>) -> Option<&'a PressureRead> {
    let last = s.now.pressures.last()?;
    let bears = match s.occasion {
        Occasion::Report => s
            .report
            .readings
            .values
            .contains_key(&ReadingKey::PressurePsi),
        Occasion::Asked | Occasion::Tick => s.at - last.at <= TimeDelta::hours(24),
    };
    bears.then_some(last)
}

/// Returns whether water flowed when a pressure was read, where that was said.
fn flowing(read: &PressureRead) -> Option<bool> {
    match (read.taps, read.flow_gpm) {
        (Some(Taps::Running), _) => Some(true),
        (_, Some(gpm)) if gpm > 0.0 => Some(true),
        (Some(Taps::Shut), _) | (None, Some(_)) => Some(false),
        (None, None) => None,
    }
}

/// Returns the last pressure read with the taps shut.
fn static_read(s: &Situation<'_>) -> Option<f64> {
    let shut = s
        .now
        .pressures
        .iter()
        .rev()
        .find(|read| flowing(read) == Some(false));
    shut.map(|read| read.psi)
}
