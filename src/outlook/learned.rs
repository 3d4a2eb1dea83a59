//! What a trailer's own log says of it at a site, beside what the fleet's file states.

use crate::book::Lesson;
use crate::fleet::{Gauge, GaugeKind, Trailer};
use crate::physics::forecast::learn::{self, Haul, InAndOut, Learned};
use crate::physics::forecast::{PRIOR_SPREAD, Tank};
use crate::physics::tank::BODY_GAL;

/// How sure the log must be before the stated kind of gauge is overruled.
const SURE: f64 = 0.9;

/// What a trailer's log teaches.
#[derive(Debug, Clone, PartialEq)]
pub struct Habits {
    /// The water a use takes, gal.
    pub gal_per_use: Learned,
    /// How fast the waste tank fills at this site, as a multiple of what the stated values promise.
    pub pace: Learned,
    /// How far the next event may lie from that (standard deviation of the logarithm).
    pub spread: f64,
    /// How likely the waste gauge shows the floor, as lamps do, 0 to 1.
    pub lamps: f64,
    /// How many readings just before a pump-out tell of the gauge.
    pub gauge_entries: usize,
    stated_gal: f64,
}

impl Habits {
    /// Learns from a trailer's lessons, for a stay at `site`.
    pub fn learn(spec: &Trailer, site: Option<&str>, lessons: &[Lesson]) -> Habits {
        let hauls = |here: bool| -> Vec<Haul> {
            lessons
                .iter()
                .filter(|lesson| (site == Some(lesson.site.as_str())) == here)
                .filter_map(|lesson| {
                    Some(Haul {
                        promised_gal: lesson.promised_gal?,
                        hauled_gal: lesson.hauled_gal,
                    })
                })
                .collect()
        };
        let (pace, spread) = if lessons.is_empty() {
            learn::pace(&[], &[])
        } else {
            learn::pace(&hauls(true), &hauls(false))
        };
        let water: Vec<InAndOut> = lessons
            .iter()
            .filter_map(|lesson| {
                let (fresh_gal, fresh_sd_gal) = lesson.fresh_gal?;
                Some(InAndOut {
                    fresh_gal,
                    fresh_sd_gal,
                    waste_gal: lesson.hauled_gal,
                })
            })
            .collect();
        let shown: Vec<(f64, f64)> = lessons
            .iter()
            .filter_map(|lesson| Some((lesson.shown_pct?, lesson.hauled_gal)))
            .collect();
        Habits {
            gal_per_use: match water.is_empty() {
                true => stated(spec.gal_per_use),
                false => learn::gallons_per_use(spec.gal_per_use, &water),
            },
            pace,
            spread: if lessons.is_empty() {
                PRIOR_SPREAD
            } else {
                spread
            },
            lamps: learn::lamps(&tank(spec, spec.waste_gauge), &shown),
            gauge_entries: shown.len(),
            stated_gal: spec.gal_per_use,
        }
    }

    /// Returns the gauge to read by: the stated one, or the other kind where the log is sure of it.
    pub fn gauge(&self, stated: Gauge) -> Gauge {
        let kind = match self.lamps {
            lamps if lamps > SURE => GaugeKind::Lamps,
            lamps if lamps < 1.0 - SURE => GaugeKind::Sight,
            _ => stated.kind,
        };
        Gauge { kind, ..stated }
    }

    /// Returns how often the unit is used, as a multiple of what its guests promise: the tank's pace less what goes by
    /// another size of use.
    pub fn uses(&self) -> f64 {
        self.pace.value * (self.stated_gal + BODY_GAL) / (self.gal_per_use.value + BODY_GAL)
    }
}

/// Returns a trailer's waste tank, read by `gauge`.
pub(super) fn tank(spec: &Trailer, gauge: Gauge) -> Tank {
    Tank {
        capacity_gal: spec.waste_gal,
        shape: spec.waste_tank,
        gauge,
    }
}

fn stated(value: f64) -> Learned {
    Learned {
        value,
        p10: value,
        p90: value,
        entries: 0,
    }
}
