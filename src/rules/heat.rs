//! Heat on people.

use chrono::TimeDelta;

use super::Rule;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::heard::ReadingKey;
use crate::physics::cold::{HeatBand, heat_band, heat_index};
use crate::physics::units::{deg_f, in_deg_f};
use crate::quantity::Measure;
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[crew_heat];

/// The humidity that is taken where nobody read it, %: dry, which never makes it hotter than it is.
const DRY_PCT: f64 = 5.0;

/// Plan from a heat index of 80 °F, soon from 90, now from 103; from 125 only emergencies.
fn crew_heat(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(&[ReadingKey::AirF, ReadingKey::HumidityPct], &[], &[]) {
        return None;
    }
    let air = s.air_f()?;
    let (humidity, origin) = match s.recent(ReadingKey::HumidityPct, TimeDelta::hours(6)) {
        Some(read) => (read, Origin::Read),
        None => (DRY_PCT, Origin::Assumed),
    };
    let index = heat_index(deg_f(air), humidity);
    let taken = origin == Origin::Assumed;
    let (urgency, level, says, limit) = match (heat_band(index), taken) {
        (HeatBand::None, _) => return None,
        (HeatBand::Caution, false) => (Urgency::Plan, Level::Notice, "heat-crew-heat-plan", 80.0),
        (HeatBand::Caution, true) => (
            Urgency::Plan,
            Level::Notice,
            "heat-crew-heat-plan-dry",
            80.0,
        ),
        (HeatBand::ExtremeCaution, false) => {
            (Urgency::Soon, Level::Caution, "heat-crew-heat-soon", 90.0)
        }
        (HeatBand::ExtremeCaution, true) => (
            Urgency::Soon,
            Level::Caution,
            "heat-crew-heat-soon-dry",
            90.0,
        ),
        (HeatBand::Danger, false) => (Urgency::Now, Level::Caution, "heat-crew-heat-act", 103.0),
        (HeatBand::Danger, true) => (
            Urgency::Now,
            Level::Caution,
            "heat-crew-heat-act-dry",
            103.0,
        ),
        (HeatBand::ExtremeDanger, _) => {
            (Urgency::Now, Level::Warning, "heat-crew-heat-stop", 125.0)
        }
    };
    let facts = Facts::new()
        .read("air", air, Measure::DegF)
        .number("humidity", humidity, Measure::Pct, origin)
        .computed("heat_index", in_deg_f(index), Measure::DegF)
        .limit("limit", limit, Measure::DegF)
        .by(
            "formula-heat-index",
            "US National Weather Service, SR 90-23 (Rothfusz)",
        );
    let found = Finding::new(FindingId::HeatCrewHeat, level, urgency, facts).says(says);
    Some(if level >= Level::Caution {
        found.cautions(&[Caution::HeatStroke])
    } else {
        found
    })
}
