//! What the tanks hold, as last told: gauge readings turned into volume, gallons, fills, drains and pump-outs.

use chrono::{DateTime, Utc};

use crate::book::TankNote;
use crate::heard::{Event, Fault, ReadingKey};
pub(super) use crate::outlook::waste_volume;
use crate::situation::Situation;

/// A tank's level as somebody told it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Told {
    /// When.
    pub(super) at: DateTime<Utc>,
    /// % by volume: for a lamp gauge the least it can be.
    pub(super) pct: f64,
}

/// Returns the waste level as last told: a gauge, gallons or a pump-out. None where nothing was, or the gauge sticks.
pub(super) fn waste_told(s: &Situation<'_>) -> Option<Told> {
    s.now.tanks.iter().rev().find_map(|(at, note)| {
        let pct = match note {
            TankNote::Waste(_) if s.now.has(Fault::GaugeStuck) => return None,
            TankNote::Waste(pct) => waste_volume(s.spec, *pct),
            TankNote::WasteGal(gal) => share(*gal, s.spec.waste_gal)?,
            TankNote::Pumped(_) => 0.0,
            _ => return None,
        };
        Some(Told { at: *at, pct })
    })
}

/// Returns the fresh level as last told: a gauge, gallons, a fill or a drain.
pub(super) fn fresh_told(s: &Situation<'_>) -> Option<Told> {
    s.now.tanks.iter().rev().find_map(|(at, note)| {
        let pct = match note {
            TankNote::Fresh(pct) => *pct,
            TankNote::FreshGal(gal) => share(*gal, s.spec.fresh_gal)?,
            TankNote::Filled => 100.0,
            TankNote::Drained => 0.0,
            _ => return None,
        };
        Some(Told { at: *at, pct })
    })
}

/// Tells whether this message itself reads the waste level.
pub(super) fn reads_waste(s: &Situation<'_>) -> bool {
    let values = &s.report.readings.values;
    values.contains_key(&ReadingKey::WastePct) || values.contains_key(&ReadingKey::WasteGal)
}

/// Tells whether this message itself tells the fresh level.
pub(super) fn reads_fresh(s: &Situation<'_>) -> bool {
    let values = &s.report.readings.values;
    values.contains_key(&ReadingKey::FreshPct)
        || values.contains_key(&ReadingKey::FreshGal)
        || s.says(Event::FreshFilled)
}

fn share(gal: f64, tank_gal: f64) -> Option<f64> {
    (tank_gal > 0.0).then(|| 100.0 * gal / tank_gal)
}
